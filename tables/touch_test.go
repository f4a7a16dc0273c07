package tables_test

import (
	"math"
	"testing"

	"example.org/packcheck/tables"
)

// ISO 13732-1:2006 (from memory): 51 degC for one minute, 48 for ten, 43 for eight
// hours and longer; 65 to 70 for one second.
func TestBareMetalBurnsSoonerTheHotterItIs(t *testing.T) {
	b := tables.Builtin()
	for _, c := range []struct{ seconds, low, high float64 }{
		{0.2, 65, 70}, {1, 65, 70}, {10, 55, 57}, {60, 51, 51}, {600, 48, 48}, {28800, 43, 43}, {1e6, 43, 43},
	} {
		if v := b.BurnsAfter(c.seconds); math.Abs(v.Low-c.low) > 1e-9 || math.Abs(v.High-c.high) > 1e-9 || v.Source == "" {
			t.Errorf("%g s: %+v, want %g to %g degC", c.seconds, v, c.low, c.high)
		}
	}
	last := math.Inf(1)
	for s := 0.5; s < 40000; s *= 1.3 {
		v := b.BurnsAfter(s)
		if v.Likely > last || v.Low > v.Likely || v.Likely > v.High {
			t.Errorf("%g s: %+v after %g degC", s, v, last)
		}
		last = v.Likely
	}
}

func TestTheTimeInWhichMetalBurnsIsTheThresholdReadBackwards(t *testing.T) {
	b := tables.Builtin()
	for _, c := range []struct{ tempC, seconds float64 }{{90, 1}, {65, 1}, {55, 10}, {51, 60}, {48, 600}, {43, 28800}, {42, math.Inf(1)}, {math.NaN(), math.Inf(1)}} {
		if got := b.BurnsIn(c.tempC); got != c.seconds && !(math.Abs(got/c.seconds-1) < 1e-6) {
			t.Errorf("%g degC: %g s, want %g", c.tempC, got, c.seconds)
		}
	}
}
