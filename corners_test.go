package packcheck

import (
	"math"
	"testing"
)

// A sum of figures: every corner is known in advance.
func TestSpreadFindsTheCornersOfASum(t *testing.T) {
	ranges := []Range{{Low: 1, Likely: 2, High: 4}, {Low: -3, Likely: 0, High: 1}, {Low: 5, Likely: 5, High: 5.5}}
	s := spreadOf(len(ranges), 3, func(sides []side) []float64 {
		sum := 0.0
		for i, r := range ranges {
			sum += sides[i].in(r)
		}
		return []float64{sum, -sum, math.NaN()}
	})
	for m, want := range []Range{{Low: 3, Likely: 7, High: 10.5}, {Low: -10.5, Likely: -7, High: -3}} {
		if s.ranges[m] != want {
			t.Errorf("output %d: %v, want %v", m, s.ranges[m], want)
		}
	}
	if s.ranges[2].Valid() {
		t.Errorf("an output that does not exist has the range %v", s.ranges[2])
	}
	if got := s.drivers[0][0].figure; got != 1 {
		t.Errorf("the strongest driver of the sum is figure %d, want 1", got)
	}
}

// Whatever the computation, the range holds the likely value and every value
// that was computed with one figure moved.
func TestARangeHoldsEverythingThatWasComputed(t *testing.T) {
	seen := []float64{}
	s := spreadOf(6, 1, func(sides []side) []float64 {
		x := 1.0
		for i, at := range sides {
			x += math.Sin(float64(i+1)*1.7+float64(at)*float64(i+2)) * (1 + x*0.1)
		}
		seen = append(seen, x)
		return []float64{x}
	})
	for _, x := range seen {
		if x < s.ranges[0].Low || x > s.ranges[0].High {
			t.Errorf("%g was computed, the range is %v", x, s.ranges[0])
		}
	}
}

func TestACornerThatCannotBeComputedIsLeftOut(t *testing.T) {
	s := spreadOf(1, 1, func(sides []side) []float64 {
		if sides[0] == atHigh {
			return []float64{math.NaN()}
		}
		return []float64{float64(sides[0])}
	})
	if want := (Range{Low: -1, Likely: 0, High: 0}); s.ranges[0] != want {
		t.Errorf("range %v, want %v", s.ranges[0], want)
	}
}

func TestLongestBelowCountsTheLongestUnbrokenStretch(t *testing.T) {
	times := []float64{0, 1, 2, 3, 4, 5, 6}
	volts := []float64{12, 8, 12, 8, 8, 12, 12}
	for _, c := range []struct{ u, want float64 }{
		{7, 0},
		{8, 1},      // touches at 1 s for an instant, stays from 3 s to 4 s
		{10, 2},     // from 2.5 s to 4.5 s
		{12, 6},     // all the time
		{11.999, 3}, // nearly from 2 s to 5 s
	} {
		if got := longestBelow(times, volts, c.u); math.Abs(got-c.want) > 0.01 {
			t.Errorf("at or below %g V for %g s, want %g", c.u, got, c.want)
		}
	}
}
