package battery

import (
	"math"

	"example.org/packcheck/chemistry"
)

// State is where a pack stands, all of it for the whole pack: charge in Ah,
// branch voltages in V, one temperature. The zero State is an empty pack at
// 0 deg C; start from [Model.StateAt]. Below -40 and above 120 deg C the cells
// are as they are there.
type State struct {
	Y1Ah  float64 // charge in the available well
	Y2Ah  float64 // charge in the bound well
	V1    float64 // voltage across the fast branch, positive while discharging
	V2    float64 // voltage across the slow branch
	TempC float64 // of the cells
}

// Branch is one resistor-capacitor pair as a whole pack has it.
type Branch struct {
	Ohm, Farad float64 // at small currents
	KneeV      float64 // where it bends, see [chemistry.Branch]; 0 = straight
}

// Model is a pack ready to be computed. It never changes (but see
// [Model.Into]), so any number of goroutines may use one.
type Model struct {
	cell     *cell // of the profile; shared by all models with its curves
	spec     figures
	cells    float64 // in series
	ohms     float64 // Ohm of the pack over Ohm*Ah of the profile ...
	ohmics   float64 // ... and that of the ohmic part
	wells    Wells
	fullAh   float64 // between Charge 0 and 1
	most1Ah  float64 // what the available well holds when overfilled
	most2Ah  float64 // what the bound well holds
	headOf   float64 // 1 / full charge of the available well
	fillOf   float64 // 1 / full charge of both wells
	knee1V   float64 // where the fast branch bends
	knee2V   float64 // where the slow one does
	straight bool    // neither bends
	massKg   float64
	coolWK   float64 // heat given off per kelvin, W/K
	heatJK   float64 // heat capacity, J/K
}

// New checks the spec and prepares the model. All that is wrong with the spec
// is reported at once.
func New(spec Spec) (*Model, error) {
	figures := figuresOf(&spec)
	shape := shapeOf(&spec.Profile)
	if err := figures.complete(&spec.Profile, usable(&spec.Profile, &shape)); err != nil {
		return nil, err
	}
	figures.Profile = &spec.Profile
	m := new(Model)
	m.become(tabulated(&shape), figures)
	return m, nil
}

// With is [New] for another pack of the same profile: the profile's curves are
// neither checked nor tabulated anew, which is nearly all of the work. The
// spec's own profile is not looked at.
func (m *Model) With(spec Spec) (*Model, error) {
	other := new(Model)
	if err := m.Into(other, spec); err != nil {
		return nil, err
	}
	return other, nil
}

// Into is [Model.With] without an allocation, for who makes one pack after the
// other: it puts the new pack in place of the one that other was (which may be
// m itself, or the zero Model). Steps made of that one are no longer good. On
// an error other is left as it was.
func (m *Model) Into(other *Model, spec Spec) error {
	figures := figuresOf(&spec)
	if err := figures.complete(m.spec.Profile, nil); err != nil {
		return err
	}
	figures.Profile = m.spec.Profile
	other.become(m.cell, figures)
	return nil
}

// Charging returns the pack as a charge meets it. What age adds to lithium sits in the
// ohmic part while the pack is emptied, but while it is filled the branches have
// grown as much: near full, where the current falls at constant voltage, a cell whose
// first second had grown by 93 % took 1.05 h, 0.86 h with new branches and 0.91 h with
// grown ones; two that had aged less come nearer too (ARTS-Lab, Dataset Cycling with
// Strain Monitoring for Samsung 30Q Cell, CC BY-SA 4.0; three charges of two cells).
func (m *Model) Charging() *Model {
	by := m.spec.Grown
	if by == 1 || m.spec.ResistanceOhm > 0 { // one that was measured has its branches from that
		return m
	}
	f := m.spec
	f.ResistanceFactor, f.OhmicFactor, f.Grown = f.ResistanceFactor*by, f.OhmicFactor/by, 1
	out := new(Model)
	out.become(m.cell, f)
	return out
}

// become makes the model of a cell and figures that were found complete, the
// profile among them.
func (m *Model) become(cell *cell, f figures) {
	p := f.Profile
	*m = Model{cell: cell, spec: f, cells: float64(f.CellsInSeries)}
	newAh := f.CapacityAh // when new, over the profile's own hours
	if f.RateHours != p.Capacity.RatedHours {
		newAh *= cell.hourShare(p.Capacity.RatedHours) / cell.hourShare(f.RateHours)
	}
	m.fullAh = newAh * f.Health
	m.wells = Wells{CapacityAh: m.fullAh * f.WellRatio, C: f.WellC, KPerS: f.WellKPerS}
	m.headOf = 1 / (m.wells.C * m.wells.CapacityAh)
	m.fillOf = 1 / m.wells.CapacityAh
	m.most1Ah = m.wells.C * m.wells.CapacityAh * (1 + cell.over)
	m.most2Ah = (1 - m.wells.C) * m.wells.CapacityAh
	m.ohms = m.cells * f.ResistanceFactor / newAh
	if f.ResistanceOhm > 0 {
		m.ohms = f.ResistanceOhm / cell.halfOhmAh
	}
	m.ohmics = m.ohms * f.OhmicFactor
	m.knee1V, m.knee2V = m.cells*p.Fast.KneeV, m.cells*p.Slow.KneeV
	m.straight = m.knee1V == 0 && m.knee2V == 0
	m.massKg = f.MassKg
	if m.massKg == 0 {
		m.massKg = m.NominalV() * f.CapacityAh / p.Mass.WhPerKg / p.Mass.CellShare
	}
	m.heatJK = m.massKg * p.Heat.SpecificJKgK
	m.coolWK = f.CoolingWM2K * p.Heat.AreaM2PerKg23 * math.Cbrt(m.massKg*m.massKg)
	if f.ClosedShell {
		m.coolWK *= f.ShellShare
	}
}

// Spec returns what the model was made of, with the defaults filled in.
func (m *Model) Spec() Spec { return m.spec.spec() }

// Profile returns the profile that the model was made of. It is shared with
// every pack of that profile and must not be changed; [Model.Spec] has a copy.
func (m *Model) Profile() *chemistry.Profile { return m.spec.Profile }

// Wells returns the pack's two wells.
func (m *Model) Wells() Wells { return m.wells }

// StateAt returns the state of a pack at rest with the given state of charge
// (see [Model.Charge]; held between the very bottom and 1) and cell
// temperature.
func (m *Model) StateAt(charge, tempC float64) State {
	y := max(m.wells.CapacityAh-(1-min(charge, 1))*m.fullAh, 0)
	return State{Y1Ah: m.wells.C * y, Y2Ah: (1 - m.wells.C) * y, TempC: tempC}
}

// Charge returns the state of charge: 1 full, 0 when the capacity of the label
// (times health) has been taken out. Lead-acid holds a little more, so the
// value falls below 0 when it is discharged past its normal end.
func (m *Model) Charge(s State) float64 {
	return 1 - (m.wells.CapacityAh-s.Y1Ah-s.Y2Ah)/m.fullAh
}

// filled is the share of all the charge in both wells.
func (m *Model) filled(s *State) float64 { return (s.Y1Ah + s.Y2Ah) * m.fillOf }

// Filled returns the share of all the charge that is in both wells: 1 full, 0
// at the very bottom.
func (m *Model) Filled(s State) float64 { return m.filled(&s) }

// RestedV returns the voltage the pack settles at when left alone long enough.
func (m *Model) RestedV(s State) float64 {
	w := m.warmth(s.TempC)
	z := m.filled(&s)
	return max(0, m.voltsAt(w.effective(z, z))) // at rest a drained pack has nothing, not less
}

// EMF returns the voltage behind the pack's resistance at this instant:
// open-circuit voltage of the available charge less the branch voltages.
func (m *Model) EMF(s *State) float64 {
	w := m.warmth(s.TempC)
	return m.voltsAt(w.effective(s.Y1Ah*m.headOf, m.filled(s))) - s.V1 - s.V2
}

// SourceOhm returns the pack's ohmic resistance at this instant.
func (m *Model) SourceOhm(s *State) float64 {
	w := m.warmth(s.TempC)
	return m.ohmAt(w.effective(s.Y1Ah*m.headOf, m.filled(s))) * w.ohm
}

// TerminalV returns the voltage at the pack's terminals at the given current
// (A, positive discharging): EMF - current * SourceOhm.
func (m *Model) TerminalV(s *State, currentA float64) float64 {
	emf, ohm := m.Source(s)
	return emf - currentA*ohm
}

// Source returns [Model.EMF] and [Model.SourceOhm] in one look-up.
func (m *Model) Source(s *State) (emfV, ohm float64) {
	w := m.warmth(s.TempC)
	row := m.at(w.effective(s.Y1Ah*m.headOf, m.filled(s)))
	return row.volts - s.V1 - s.V2, row.ohm0 * w.ohm
}

// AvailableAh returns the charge that could be drawn at an extremely high
// current, before resistance is counted.
func (m *Model) AvailableAh(s State) float64 {
	w := m.warmth(s.TempC)
	return max(0, w.effective(s.Y1Ah*m.headOf, m.filled(&s))) * m.wells.C * m.wells.CapacityAh
}

// Empty reports whether no available charge is left.
func (m *Model) Empty(s *State) bool {
	w := m.warmth(s.TempC)
	return !(w.effective(s.Y1Ah*m.headOf, m.filled(s)) > 0)
}

// Branches returns the two resistor-capacitor pairs at this state.
func (m *Model) Branches(s State) [2]Branch {
	w := m.warmth(s.TempC)
	row := m.at(w.effective(s.Y1Ah*m.headOf, m.filled(&s)))
	pair := func(ohm, kneeV, tau float64) Branch {
		if ohm <= 0 {
			return Branch{}
		}
		return Branch{Ohm: ohm, Farad: tau / ohm, KneeV: kneeV * w.knee}
	}
	p := m.spec.Profile
	return [2]Branch{pair(row.ohm1*w.ohm1, m.knee1V, p.Fast.TauS), pair(row.ohm2*w.ohm2, m.knee2V, p.Slow.TauS)}
}

// ShortCircuitA returns the current into a dead short at this state, by the
// ohmic resistance alone.
func (m *Model) ShortCircuitA(s State) float64 {
	emf, ohm := m.Source(&s)
	return max(0, emf) / ohm
}
