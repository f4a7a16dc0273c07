package battery_test

import (
	"math"
	"testing"
)

// A cold pack at a high current warms and empties: all that a step takes at its
// beginning changes on the way.
func TestALongStepEndsWhereShortOnesDo(t *testing.T) {
	for _, name := range names {
		for _, tempC := range []float64{-5, 20} {
			m := model(t, name, 5, 10)
			const amps, totalS = 20.0, 480.0
			short, want := m.Over(0.25), m.StateAt(0.9, tempC)
			for range int(totalS / 0.25) {
				short.Advance(&want, amps, tempC)
			}
			for _, dtS := range []float64{4, 16} {
				long, s := m.Over(dtS), m.StateAt(0.9, tempC)
				for range int(totalS / dtS) {
					long.AdvanceLong(&s, amps, tempC)
				}
				if v, wantV := m.TerminalV(&s, amps), m.TerminalV(&want, amps); math.Abs(v/wantV-1) > 5e-4 || math.Abs(s.TempC-want.TempC) > 0.02 {
					t.Errorf("%s from %g degC in steps of %g s: %.4f V and %.3f degC, want %.4f V and %.3f degC", name, tempC, dtS, v, s.TempC, wantV, want.TempC)
				}
			}
		}
	}
}
