// Package battery computes packs made of cells: discharge, rest, recovery and
// heat, series and parallel strings, and what the label means.
//
// For most uses call [New] with a [Spec], start from [Model.StateAt], and step
// with [Model.Over] and [Step.Advance]; [Model.Discharge] runs a constant
// current to a voltage. [ParseLabel] turns the words on a pack into cells. What
// a vehicle draws is package drive's business: Circuit of package ask makes its
// PackCircuit of a [Model] and a [State].
//
// # Model
//
// Charge lies in two wells (kinetic battery model, Manwell & McGowan, Solar
// Energy 50 (1993) 399), stepped by the closed form: no step-size error. The
// available well's head sets the open-circuit voltage, so capacity falls with
// current and comes back with rest from one mechanism. In series lie an ohmic
// resistance over charge and temperature and two resistor-capacitor branches,
// updated by exact exponentials. A branch may bend, as charge transfer does
// (Butler-Volmer with equal coefficients): in the cold it then gives way to a
// high current. One node carries the pack's temperature:
//
//	v      = U(h) - I R0(h, T) - V1 - V2
//	tau V' = knee asinh(I R(h, T) / knee) - V, or I R - V without a knee
//	m c T' = I (U(z) - U(h) + I R0 + V1 + V2) - h A (T - Ta)
//
// h is the available charge, z all of it. Cold takes capacity away at the
// empty end, and more of it the faster the pack is emptied. All cells are
// equal in the model; the weakest is worked out beside it
// ([Model.WeakestCellV]).
//
// # Assumptions
//
// Currents are constant over a step. Resistance, its temperature factor and
// the heat are taken at the step's beginning, by [Step.AdvanceLong] as they
// change over it. A pack is warm throughout.
// Health scales capacity, and resistance by the profile's rule.
//
// A NaN in a state, a current or the surroundings makes what is computed of it
// NaN, and a pack of such a state counts as empty; an infinite current or
// surroundings do the same. Nothing panics on them.
//
// # Limits
//
// Lead-acid is fitted from 20 h to five minutes; above 1.75 V per cell it
// promises too long a run at high currents. Near empty a cold lithium cell sags
// more, and over longer times, than two branches can tell. How lead-acid takes
// a charge, and what of it goes into gas, is package charge's business.
//
// # Sources
//
// Figures come from package chemistry; limits defined here are listed by
// [Sources]. The tests name the published figure that each check holds.
package battery
