package battery

import (
	"errors"
	"fmt"
	"math"

	"example.org/packcheck/chemistry"
)

// State is where a pack stands, all of it for the whole pack: charge in Ah,
// branch voltages in V, one temperature. The zero State is an empty pack at
// 0 deg C; start from [Model.StateAt].
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

// Model is a pack ready to be computed. It never changes, so any number of
// goroutines may use one.
type Model struct {
	spec     Spec
	cells    float64 // in series
	wells    Wells
	fullAh   float64               // between Charge 0 and 1
	oneCell  *[gridCells]chargeRow // of the profile, for 1 Ah; shared by models of one profile
	byCharge *[gridCells]chargeRow
	byTemp   *[tempCells]tempCell
	most1Ah  float64 // what the available well holds when overfilled
	most2Ah  float64 // what the bound well holds
	headOf   float64 // 1 / full charge of the available well
	fillOf   float64 // 1 / full charge of both wells
	knee1V   float64 // of the fast branch, see bent
	knee2V   float64 // of the slow branch
	massKg   float64
	coolWK   float64 // heat given off per kelvin, W/K
	heatJK   float64 // heat capacity, J/K
}

// New checks the spec and prepares the model. All that is wrong with the spec
// is reported at once.
func New(spec Spec) (*Model, error) { return prepare(spec, nil) }

// With is [New] for another pack of the same profile: the profile's curves are
// not tabulated anew, which is most of the work. The spec's own profile is not
// looked at.
func (m *Model) With(spec Spec) (*Model, error) {
	spec.Profile = m.spec.Profile
	return prepare(spec, m)
}

// prepare makes a model, with the tables of another one of the same profile
// where there is one.
func prepare(spec Spec, like *Model) (*Model, error) {
	if err := check(&spec); err != nil {
		return nil, err
	}
	p := spec.Profile
	m := &Model{spec: spec, cells: float64(spec.CellsInSeries)}
	if like != nil {
		m.oneCell, m.byTemp = like.oneCell, like.byTemp
	} else {
		m.oneCell, m.byTemp = chargeGrid(p), tempGrid(p)
	}
	newAh := spec.CapacityAh // when new, over the profile's own hours
	if spec.RateHours != p.Capacity.RatedHours {
		share := p.Capacity.HourShare.Func()
		newAh *= share(p.Capacity.RatedHours) / share(spec.RateHours)
	}
	m.fullAh = newAh * spec.Health
	m.wells = Wells{CapacityAh: m.fullAh * p.Capacity.Ratio, C: p.Wells.C, KPerS: p.Wells.KPerS}
	m.headOf = 1 / (m.wells.C * m.wells.CapacityAh)
	m.fillOf = 1 / m.wells.CapacityAh
	over := 0.0
	if p.Rest.OverFullV > 0 {
		over = math.Max(p.Charge.CellMaxV-p.Rest.VoltsAt.At(1), 0) / p.Rest.OverFullV
	}
	m.most1Ah = m.wells.C * m.wells.CapacityAh * (1 + over)
	m.most2Ah = (1 - m.wells.C) * m.wells.CapacityAh
	factor := spec.ResistanceFactor
	if spec.ResistanceOhm > 0 {
		factor = spec.ResistanceOhm * newAh / (m.cells * p.Resistance.OhmAh.At(0.5))
	}
	m.byCharge = scaled(m.oneCell, m.cells, m.cells*factor/newAh)
	m.knee1V, m.knee2V = m.cells*p.Fast.KneeV, m.cells*p.Slow.KneeV
	m.massKg = spec.MassKg
	if m.massKg == 0 {
		m.massKg = m.NominalV() * spec.CapacityAh / p.Mass.WhPerKg / p.Mass.CellShare
	}
	m.heatJK = m.massKg * p.Heat.SpecificJKgK
	m.coolWK = p.Heat.CoolingWM2K * p.Heat.AreaM2PerKg23 * math.Cbrt(m.massKg*m.massKg)
	if spec.ClosedShell {
		m.coolWK *= p.Heat.ShellShare
	}
	return m, nil
}

// check fills in the defaults and says what cannot be computed.
func check(spec *Spec) error {
	var faults []error
	want := func(name string, value, lo, hi float64) {
		if !(value >= lo && value <= hi) {
			faults = append(faults, fmt.Errorf("battery: %s is %g, want %g to %g", name, value, lo, hi))
		}
	}
	orElse := func(value *float64, otherwise float64) {
		if *value == 0 {
			*value = otherwise
		}
	}
	if spec.Strings == 0 {
		spec.Strings = 1
	}
	orElse(&spec.Health, 1)
	orElse(&spec.RateHours, spec.Profile.Capacity.RatedHours)
	orElse(&spec.ResistanceFactor, spec.Profile.Resistance.Growth(spec.Health))
	want("CellsInSeries", float64(spec.CellsInSeries), 1, 1000)
	want("Strings", float64(spec.Strings), 1, 1000)
	want("CapacityAh", spec.CapacityAh, 1e-3, 1e5)
	want("RateHours", spec.RateHours, 1e-3, 1000)
	want("Health", spec.Health, 0.01, 1.5)
	want("ResistanceOhm", spec.ResistanceOhm, 0, 1000)
	want("ResistanceFactor", spec.ResistanceFactor, 0.01, 100)
	want("MassKg", spec.MassKg, 0, 1e5)
	want("MaxCurrentA", spec.MaxCurrentA, 0, 1e6)
	want("WeakestShort", spec.WeakestShort, 0, 0.9)
	if curves := usable(spec.Profile); curves != nil {
		faults = append(faults, curves)
	}
	return errors.Join(faults...)
}

// usable says whether a profile, which anybody may have put together, holds
// what New needs.
func usable(p chemistry.Profile) error {
	curves := []chemistry.Curve{
		p.Rest.VoltsAt, p.Resistance.OhmAh, p.Resistance.TempFactor, p.Fast.OhmAh,
		p.Slow.OhmAh, p.Capacity.TempFactor, p.Capacity.HourShare,
	}
	for _, b := range []chemistry.Branch{p.Fast, p.Slow} {
		curves = append(curves, b.FactorOver(p.Resistance))
		if !(b.KneeV >= 0) || math.IsInf(b.KneeV, 0) {
			return fmt.Errorf("battery: profile %q has a branch that bends at %g V", p.Name, b.KneeV)
		}
	}
	for _, c := range curves {
		if math.IsNaN(c.At(0.5)) {
			return fmt.Errorf("battery: profile %q has a curve that is empty or does not rise in X", p.Name)
		}
	}
	for _, x := range []float64{
		p.NominalV, p.Wells.C, p.Capacity.Ratio, p.Mass.WhPerKg, p.Mass.CellShare, p.Heat.SpecificJKgK,
		p.Heat.CoolingWM2K, p.Heat.AreaM2PerKg23, p.Heat.ShellShare, p.Fast.TauS, p.Slow.TauS,
	} {
		if !(x > 0) || math.IsInf(x, 0) {
			return fmt.Errorf("battery: profile %q has a figure of %g where a positive one is needed", p.Name, x)
		}
	}
	if p.Wells.C > 1 || p.Wells.KPerS < 0 || len(p.End.Volts) == 0 {
		return fmt.Errorf("battery: profile %q has impossible wells or no end voltage", p.Name)
	}
	return nil
}

// Spec returns what the model was made of, with the defaults filled in.
func (m *Model) Spec() Spec { return m.spec }

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
	row := m.at(w.effective(s.Y1Ah*m.headOf, m.filled(s)))
	return row.ohm0 * w.ohm
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
	return w.effective(s.Y1Ah*m.headOf, m.filled(s)) <= 0
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
