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
				long.Straighten(&now, &end, &s, amps, 0)
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

// A start's current falls within a step, and a straightened step knows it.
func TestAStraightenedStepFollowsACurrentThatFalls(t *testing.T) {
	const fromA, toA, dtS, parts = 30.0, 10.0, 6.0, 240
	for _, name := range names {
		m := model(t, name, 5, 10)
		short, want := m.Over(dtS/parts), m.StateAt(0.9, 20)
		for i := range parts {
			short.Advance(&want, fromA+(toA-fromA)*(float64(i)+0.5)/parts, 20)
		}
		off := func(risesA float64) float64 {
			s := m.StateAt(0.9, 20)
			now, step := m.Look(&s), m.Over(dtS)
			step.AdvanceFrom(&now, &s, (fromA+toA)/2, 20)
			end := m.Look(&s)
			step.Straighten(&now, &end, &s, (fromA+toA)/2, risesA)
			return math.Abs(end.EMFV - m.EMF(&want))
		}
		if plain, followed := off(0), off(toA-fromA); plain < 1e-3 || followed > plain/5 {
			t.Errorf("%s: volts off by %.4f, with a mean current by %.4f", name, followed, plain)
		}
	}
}
