package chemistry_test

import (
	"math"
	"testing"

	"example.org/packcheck/chemistry"
)

// What was never filled in is no number, and no panic.
func TestZeroValuesAreNoNumbers(t *testing.T) {
	if v := (chemistry.EndVolts{}).At(1); !math.IsNaN(v) {
		t.Errorf("no end volts at all are %g V", v)
	}
	if s, err := chemistry.Load(nil); err == nil {
		t.Errorf("no folder was read: %v", s.Names())
	}
	rising := chemistry.Curve{X: []float64{0, 1}, Y: []float64{2, 4}}
	for n, want := range map[int][]float64{-1: {}, 0: {}, 1: {2}, 3: {2, 3, 4}} {
		got := rising.Grid(0, 1, n)
		same := len(got) == len(want)
		for i := range want {
			same = same && math.Abs(got[i]-want[i]) < 1e-12
		}
		if !same {
			t.Errorf("%d points are %v, want %v", n, got, want)
		}
	}
}
