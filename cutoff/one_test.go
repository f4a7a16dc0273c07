package cutoff_test

import (
	"math"
	"testing"

	"example.org/packcheck/cutoff"
)

// Arithmetic: of packs that need these volts and of which half the ride is left up to
// those.
func TestOneSettingSavesTheCellsOfNineInTenAndLeavesMostOfTheRide(t *testing.T) {
	const fullV = 14.0
	pack := func(opens, leaves float64) *cutoff.Advice {
		return &cutoff.Advice{OpensAtV: opens, DelayS: 2, LeavesV: leaves, ClosesAtV: 13, StandbyA: 0.001}
	}
	some := func(n int, a *cutoff.Advice) (list []*cutoff.Advice) {
		for range n {
			list = append(list, a)
		}
		return list
	}
	for name, tt := range map[string]struct {
		lists [][]*cutoff.Advice
		want  float64 // 0 = none does
	}{
		"all alike":                                {[][]*cutoff.Advice{some(20, pack(11, 12.5))}, 11},
		"a few need more":                          {[][]*cutoff.Advice{some(19, pack(11, 12.5)), some(1, pack(12, 12.5))}, 11},
		"many need more, and all have it":          {[][]*cutoff.Advice{some(14, pack(11, 12.5)), some(6, pack(12, 12.6))}, 12},
		"many need more than the others have left": {[][]*cutoff.Advice{some(12, pack(11, 11.5)), some(8, pack(12, 12.6))}, 0},
		"of many none saves the cells":             {[][]*cutoff.Advice{some(16, pack(11, 12.5)), some(4, nil)}, 0},
		"nothing is advised":                       {[][]*cutoff.Advice{some(20, nil)}, 0},
	} {
		var list []*cutoff.Advice
		var weight []float64
		for _, l := range tt.lists {
			list = append(list, l...)
		}
		for range list {
			weight = append(weight, 1/float64(len(list)))
		}
		one, ok := cutoff.One(list, weight, fullV)
		if ok != (tt.want > 0) || one.OpensAtV != tt.want {
			t.Errorf("%s: %v at %g V, want %g V", name, ok, one.OpensAtV, tt.want)
		}
		if ok && (one.StandbyA != 0.001 || !one.MustLatch && one.ClosesAtV <= one.OpensAtV) {
			t.Errorf("%s: %+v", name, one)
		}
	}
}

// What an advised setting leaves is computed, not hoped for: at the volts that leave half
// of the ride half of it is over.
func TestHalfOfTheRideIsLeftAtTheVoltsThatLeaveIt(t *testing.T) {
	for _, chemistry := range []string{"nimh", "lifepo4", "li-ion", "agm"} {
		m := pack(t, chemistry, 6, 5, nil)
		c := under(t, m, 1, 5)
		a := advise(t, cutoff.Wish{Case: c, Where: cutoff.Module})
		whole := follow(t, under(t, m, 1, 5, opens(cutoff.Module, m.EndV(5)))).AtS
		left := follow(t, under(t, m, 1, 5, opens(cutoff.Module, a.LeavesV))).AtS
		if share := left / whole; share < 0.45 || share > 0.55 {
			t.Errorf("%s: at %.2f V %.2f of the ride is over, want a half", chemistry, a.LeavesV, share)
		}
	}
}

// What a setting costs is what the pack is run down to by it, and a higher one costs more.
func TestAHigherSettingCostsMore(t *testing.T) {
	for _, chemistry := range []string{"nimh", "lifepo4", "li-ion", "agm"} {
		m := pack(t, chemistry, 6, 5, nil)
		w := cutoff.Wish{Case: under(t, m, 1, 5), Where: cutoff.Module}
		a := advise(t, w)
		left, seconds := w.Costs(a.OpensAtV)
		if math.Abs(left-a.Charge) > 1e-9 {
			t.Errorf("%s: %g left at the advised setting, which opens at %g", chemistry, left, a.Charge)
		}
		if run := follow(t, under(t, m, 1, 5, opens(cutoff.Module, a.OpensAtV))).AtS; math.Abs(seconds/run-1) > 0.05 {
			t.Errorf("%s: opens after %g s, followed after %g s", chemistry, seconds, run)
		}
		if more, sooner := w.Costs(a.OpensAtV + 0.2); !(more > left && sooner < seconds) {
			t.Errorf("%s: 0.2 V higher leaves %g after %g s, not more than %g after %g s", chemistry, more, sooner, left, seconds)
		}
		if all, at := w.Costs(2 * m.FullV()); all != 1 || at != 0 {
			t.Errorf("%s: above its full volts %g is left after %g s", chemistry, all, at)
		}
	}
}

// Without a weight for each there is no telling, and no panic.
func TestOneSettingWantsAWeightForEach(t *testing.T) {
	two := []*cutoff.Advice{{OpensAtV: 11, LeavesV: 12, StandbyA: 0.001}, {OpensAtV: 11, LeavesV: 12, StandbyA: 0.001}}
	for name, weight := range map[string][]float64{"none": nil, "too few": {1}, "too many": {1, 1, 1}} {
		if a, ok := cutoff.One(two, weight, 14); ok {
			t.Errorf("%s: %+v", name, a)
		}
	}
	if left, s := (cutoff.Wish{}).Costs(11); !math.IsNaN(left) || !math.IsNaN(s) {
		t.Errorf("a wish without a pack leaves %g after %g s", left, s)
	}
}
