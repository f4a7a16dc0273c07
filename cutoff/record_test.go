package cutoff_test

import (
	"math"
	"testing"

	"example.org/packcheck/cutoff"
)

// A sag to 8 V in a second, back to 10 V in two, and a shorter one later.
func TestTheLongestTimeBelowIsThatOfOneSag(t *testing.T) {
	var r cutoff.Recorder
	for _, p := range [][2]float64{{0, 12}, {1, 8}, {3, 10}, {4, 12}, {5, 9}, {6, 12}} {
		r.Add(p[0], p[1])
	}
	for _, tt := range []struct{ volts, seconds float64 }{
		{7.9, 0}, {8, 0}, {9, 1.25}, {10, 2.5}, {11, 3.25}, {12, 6}, {13, 6},
	} {
		if got := r.SecondsBelow(tt.volts); math.Abs(got-tt.seconds) > 1e-12 {
			t.Errorf("%g V: %g s, want %g s", tt.volts, got, tt.seconds)
		}
	}
	if s := r.Sag(); s.LowestV != 8 || s.SecondsBelow(10) != r.SecondsBelow(10) {
		t.Errorf("the sag has %g V at the lowest", s.LowestV)
	}
	r.Reset()
	if r.SecondsBelow(10) != 0 || r.LowestV() != 0 || r.Sag().SecondsBelow != nil {
		t.Error("an empty recorder remembers a sag")
	}
}

// More moments than there is room for: v = 12 - 4 exp(-t/2) is below 10 V for
// 2 ln 2 seconds.
func TestALongLaunchIsThinnedAndNotCutShort(t *testing.T) {
	var r cutoff.Recorder
	for i := range 5000 {
		s := 0.002 * float64(i)
		r.Add(s, 12-4*math.Exp(-s/2))
	}
	if got, want := r.SecondsBelow(10), 2*math.Ln2; math.Abs(got/want-1) > 1e-3 || r.LowestV() != 8 {
		t.Errorf("below 10 V for %g s, want %g; lowest %g V", got, want, r.LowestV())
	}
	if n := testing.AllocsPerRun(100, func() { r.Add(11, 12); r.SecondsBelow(10) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}
