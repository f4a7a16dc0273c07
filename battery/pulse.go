package battery

// PulseOhms is a pack's resistance as people measure it: the fall of its
// voltage when a current comes on, over that current, so long after. The later
// it is read, the more there is.
type PulseOhms struct {
	Ohm1ms float64 // about what a meter with a thousand hertz shows; see [Model.PulseOhms]
	Ohm1s  float64 // what a load step read off at once shows
	Ohm10s float64 // what a launch meets
}

// Times of the three readings, s.
const (
	pulse1ms = 0.001
	pulse1s  = 1
	pulse10s = 10
)

// leastPulseC is the current, as a share of the capacity per hour, that stands
// in for none: small enough for every branch to be straight.
const leastPulseC = 0.01

// PulseOhms returns the resistance to a pulse of amps (A, positive discharging;
// 0 = a very small current) from the given state, which should be at rest. It is
// of the whole pack, and only of its cells: leads and tabs come on top.
//
// Where a branch bends (in the cold), a higher current meets less. The cells
// were logged every 0.1 to 1 s: what a cell builds up faster than that counts as
// ohmic, so the figure at 1 ms lies above what a meter shows, by a tenth to a
// half (bench: 13 mOhm at 1 kHz where a pulse of 20 s gives 17).
func (m *Model) PulseOhms(s State, amps float64) PulseOhms {
	return PulseOhms{
		Ohm1ms: m.PulseOhm(s, amps, pulse1ms),
		Ohm1s:  m.PulseOhm(s, amps, pulse1s),
		Ohm10s: m.PulseOhm(s, amps, pulse10s),
	}
}

// PulseOhm is one of [Model.PulseOhms], read at so many seconds (> 0) after the
// current came on.
func (m *Model) PulseOhm(s State, amps, seconds float64) float64 {
	if amps == 0 {
		amps = leastPulseC * m.spec.CapacityAh
	}
	before := m.TerminalV(&s, 0)
	step := m.Over(seconds)
	step.Advance(&s, amps, s.TempC)
	return (before - m.TerminalV(&s, amps)) / amps
}
