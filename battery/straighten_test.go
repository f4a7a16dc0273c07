package battery_test

import (
	"math"
	"testing"
)

// A cold pack at a high current warms and empties on the way, and a straightened step
// knows it.
func TestAStraightenedStepEndsWhereShortOnesDo(t *testing.T) {
	plainFails := 0
	for _, name := range names {
		for _, tempC := range []float64{-5, 20} {
			m := model(t, name, 5, 10)
			const amps, totalS, dtS = 20.0, 480.0, 16.0
			short, want := m.Over(0.25), m.StateAt(0.9, tempC)
			for range int(totalS / 0.25) {
				short.Advance(&want, amps, tempC)
			}
			long, s := m.Over(dtS), m.StateAt(0.9, tempC)
			plain := s
			now := m.Look(&s)
			for range int(totalS / dtS) {
				long.Advance(&plain, amps, tempC)
				long.AdvanceFrom(&now, &s, amps, tempC)
				end := m.Look(&s)
				long.Straighten(&now, &end, &s, amps)
				now = end
			}
			off, plainOff := math.Abs(m.TerminalV(&s, amps)/m.TerminalV(&want, amps)-1), math.Abs(m.TerminalV(&plain, amps)/m.TerminalV(&want, amps)-1)
			const most = 5e-4
			if off > most {
				t.Errorf("%s from %g degC: volts off by %.2g", name, tempC, off)
			}
			if plainOff > most {
				plainFails++
			}
			if again := m.Look(&s); math.Abs(again.EMFV-now.EMFV) > 1e-3 {
				t.Errorf("%s from %g degC: looks like %.4f V, is %.4f V", name, tempC, now.EMFV, again.EMFV)
			}
		}
	}
	if plainFails == 0 {
		t.Error("plain steps are as good: these cases do not tell")
	}
}
