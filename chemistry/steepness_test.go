package chemistry_test

import (
	"math"
	"testing"
)

func TestSteeperLeavesWhatNeedsNoWells(t *testing.T) {
	p := profile(t, "li-ion")
	if got := p.Steeper(1.5, p.Capacity.RatedHours); got.Wells != p.Wells || got.Capacity.Ratio != p.Capacity.Ratio {
		t.Errorf("%+v", got.Wells)
	}
	a := profile(t, "agm")
	for _, by := range []float64{0, -1, math.NaN()} {
		if got := a.Steeper(by, a.Capacity.RatedHours); got.Wells != a.Wells {
			t.Errorf("by %g: %+v", by, got.Wells)
		}
	}
	if got := a.Steeper(1, a.Capacity.RatedHours); math.Abs(got.Wells.C-a.Wells.C) > 1e-12 || math.Abs(got.Wells.KPerS-a.Wells.KPerS) > 1e-15 || math.Abs(got.Capacity.Ratio-a.Capacity.Ratio) > 1e-12 {
		t.Errorf("by 1: %+v", got.Wells)
	}
}

func TestSteeperIsUndoneByItsInverse(t *testing.T) {
	p := profile(t, "agm")
	back := p.Steeper(1.3, p.Capacity.RatedHours).Steeper(1/1.3, p.Capacity.RatedHours)
	if math.Abs(back.Wells.C-p.Wells.C) > 1e-12 || math.Abs(back.Capacity.Ratio-p.Capacity.Ratio) > 1e-12 {
		t.Errorf("%+v, was %+v", back.Wells, p.Wells)
	}
	if steep := p.Steeper(1.3, p.Capacity.RatedHours); !(steep.Wells.C < p.Wells.C) || !(steep.Capacity.Ratio > p.Capacity.Ratio) {
		t.Errorf("steeper: %+v, ratio %g", steep.Wells, steep.Capacity.Ratio)
	}
}
