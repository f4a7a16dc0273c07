package battery

// Modes is a [State] taken apart into what decays by itself, each part at a
// rate of its own: the way in which rounds of the same currents add up can be
// written down for each. Get them from [Model.Modes].
//
// In order: all charge (never decays), charge that the bound well has yet to
// pass on, the voltages of the fast and of the slow branch, the temperature.
type Modes [modes]float64

const modes = 5

// Modes takes a state apart.
func (m *Model) Modes(s *State) Modes {
	return Modes{s.Y1Ah + s.Y2Ah, (1-m.wells.C)*s.Y1Ah - m.wells.C*s.Y2Ah, s.V1, s.V2, s.TempC}
}

// StateOf puts a state together again.
func (m *Model) StateOf(x Modes) State {
	return State{
		Y1Ah: m.wells.C*x[0] + x[1], Y2Ah: (1-m.wells.C)*x[0] - x[1],
		V1: x[2], V2: x[3], TempC: x[4],
	}
}

// ModeRates returns how fast each of the [Modes] decays towards what the
// current of the moment keeps up, 1/s.
func (m *Model) ModeRates() Modes {
	p := m.spec.Profile
	return Modes{0, m.wells.KPrimePerS(), 1 / p.Fast.TauS, 1 / p.Slow.TauS, m.coolWK / m.heatJK}
}
