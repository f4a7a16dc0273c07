// Package battery computes packs made of cells: discharge, rest, recovery and
// heat, series and parallel strings, and what the label means.
//
// For most uses call [New] with a [Spec], start from [Model.StateAt], and step
// with [Model.Over] and [Step.Advance]; [Model.Discharge] runs a constant
// current to a voltage. [ParseLabel] turns the words on a pack into cells.
//
// # Model
//
// Charge lies in two wells (kinetic battery model, Manwell & McGowan, Solar
// Energy 50 (1993) 399), stepped by the closed form: no step-size error. The
// available well's head sets the open-circuit voltage, so capacity falls with
// current and comes back with rest from one mechanism. In series lie an ohmic
// resistance over charge and temperature and two resistor-capacitor branches,
// updated by exact exponentials. One node carries the pack's temperature:
//
//	v      = U(h) - I R0(h, T) - V1 - V2
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
// the heat are taken at the step's beginning. A pack is warm throughout.
// Health scales capacity, and resistance by the profile's rule.
//
// # Limits
//
// Lead-acid is fitted from 20 h to five minutes; above 1.75 V per cell it
// promises too long a run at high currents. Resistance does not depend on
// current, so pulses of several C in the cold come out up to a tenth too deep
// or too shallow. The charging voltage of lead-acid is too low by some tenths
// of a volt per block until the end voltage is near.
//
// # Sources
//
// Figures come from package chemistry; limits defined here are listed by
// [Sources]. The tests name the published figure that each check holds.
package battery
