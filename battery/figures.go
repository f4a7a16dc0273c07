package battery

import (
	"math"

	"example.org/packcheck/internal/solve"
)

// CellsInSeries returns how many cells stand in series.
func (m *Model) CellsInSeries() int { return m.spec.CellsInSeries }

// FullV returns the rested voltage of the full pack.
func (m *Model) FullV() float64 { return m.cells * m.spec.Profile.FullV }

// NominalV returns the nominal voltage.
func (m *Model) NominalV() float64 { return m.cells * m.spec.Profile.NominalV }

// EmptyV returns the voltage of the normal end of a discharge.
func (m *Model) EmptyV() float64 { return m.cells * m.spec.Profile.EmptyV }

// HarmV returns the voltage below which every cell is being harmed.
func (m *Model) HarmV() float64 { return m.cells * m.spec.Profile.HarmV }

// EndV returns the normal end-of-discharge voltage at the given current.
func (m *Model) EndV(currentA float64) float64 {
	return m.cells * m.spec.Profile.End.At(currentA/m.spec.CapacityAh)
}

// RatedAh returns the label capacity.
func (m *Model) RatedAh() float64 { return m.spec.CapacityAh }

// FullAh returns the charge between [Model.Charge] 0 and 1: label, hours that
// it is rated over, and health together.
func (m *Model) FullAh() float64 { return m.fullAh }

// MassKg returns the pack's mass, given or estimated.
func (m *Model) MassKg() float64 { return m.massKg }

// MidOhm returns the ohmic resistance at half charge and the profile's
// reference temperature.
func (m *Model) MidOhm() float64 { return m.ohmAt(0.5) }

// ContinuousA returns the greatest lasting current, given or from the profile.
func (m *Model) ContinuousA() float64 {
	if m.spec.MaxCurrentA > 0 {
		return m.spec.MaxCurrentA
	}
	return m.spec.Profile.Discharge.ContinuousC * m.spec.CapacityAh
}

// BurstA returns the greatest current for five seconds; a lasting limit that
// was given raises or lowers it in the profile's proportion.
func (m *Model) BurstA() float64 {
	d := &m.spec.Profile.Discharge
	return m.ContinuousA() * d.BurstC / d.ContinuousC
}

// Run is a discharge at constant current.
type Run struct {
	Hours, Ah, Wh float64
	End           State
	RanEmpty      bool // the available charge ran out before the voltage was reached
}

// Discharge takes a constant current from the state until the terminal
// voltage falls to endV or no available charge is left, in surroundings of
// ambientC. A current of 0 or less takes nothing: no hours, and the state is the
// End. So it is where something is no number, with NaN for Hours, Ah and Wh.
func (m *Model) Discharge(s State, currentA, endV, ambientC float64) Run {
	if currentA <= 0 {
		return Run{End: s}
	}
	v := m.TerminalV(&s, currentA)
	if !isNumber(v) || !isNumber(s.TempC) || !isNumber(ambientC) || math.IsNaN(endV) {
		return Run{Hours: math.NaN(), Ah: math.NaN(), Wh: math.NaN(), End: s}
	}
	// Steps begin short, for the branches, and double until so many would
	// empty the pack.
	const steps, first = 160, 1. / 64
	wholeS := m.wells.CapacityAh / currentA * 3600 / steps
	dtS := wholeS * first
	step := m.Over(dtS)
	var seconds, wattS float64
	for range 2 * steps {
		if v <= endV || m.Empty(&s) {
			return m.run(seconds, wattS, currentA, s, v > endV)
		}
		before, beforeV := s, v
		step.AdvanceLong(&s, currentA, ambientC)
		v = m.TerminalV(&s, currentA)
		if v > endV && !m.Empty(&s) {
			wattS += currentA * (beforeV + v) / 2 * dtS
			seconds += dtS
			if dtS < wholeS {
				dtS = min(2*dtS, wholeS)
				step = m.Over(dtS)
			}
			continue
		}
		// Either end lies inside this step.
		partS, ranEmpty := dtS, false
		within := func(past func(s *State) float64) {
			after := func(seconds float64) State {
				state, part := before, m.Over(seconds)
				part.AdvanceLong(&state, currentA, ambientC)
				return state
			}
			partS = solve.Crossing(1e-6*dtS, partS, 1e-7*dtS, func(seconds float64) float64 {
				state := after(seconds)
				return past(&state)
			}).Hi
			s = after(partS)
		}
		if v <= endV {
			within(func(s *State) float64 { return endV - m.TerminalV(s, currentA) })
		}
		if m.Empty(&s) {
			ranEmpty = true
			within(func(s *State) float64 {
				w := m.warmth(s.TempC)
				return -w.effective(s.Y1Ah*m.headOf, m.filled(s))
			})
		}
		end := m.TerminalV(&s, currentA)
		wattS += currentA * (beforeV + end) / 2 * partS
		return m.run(seconds+partS, wattS, currentA, s, ranEmpty)
	}
	return m.run(seconds, wattS, currentA, s, false)
}

// isNumber reports whether x is finite.
func isNumber(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

func (m *Model) run(seconds, wattS, currentA float64, s State, empty bool) Run {
	hours := seconds / 3600
	return Run{Hours: hours, Ah: hours * currentA, Wh: wattS / 3600, End: s, RanEmpty: empty}
}

// UsableAh returns what a full pack at 25 deg C gives at a constant current
// before its voltage falls to [Model.EndV] for that current.
func (m *Model) UsableAh(currentA float64) float64 {
	return m.Discharge(m.StateAt(1, 25), currentA, m.EndV(currentA), 25).Ah
}

// UsableWh is [Model.UsableAh] in watt-hours at the terminals.
func (m *Model) UsableWh(currentA float64) float64 {
	return m.Discharge(m.StateAt(1, 25), currentA, m.EndV(currentA), 25).Wh
}
