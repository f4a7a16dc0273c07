package reckon

import (
	"testing"

	"example.org/packcheck/wiring"
)

// A size is named where one suits most vehicles, and none where none does, whatever
// suits the one in the middle.
func TestTheFuseIsThatOfAVehicleThatAgreesWithMost(t *testing.T) {
	of := func(leastA float64, sizes ...float64) fused {
		return fused{band: &wiring.FuseBand{LeastA: leastA, MostA: 20, StandardA: sizes}}
	}
	for _, c := range []struct {
		name    string
		typical fused
		fuses   []fused
		leastA  float64
	}{
		{"the typical one agrees: a size", of(11, 15), []fused{of(12, 15), of(22), of(9, 10)}, 11},
		{"the typical one agrees: none", of(21), []fused{of(22), of(23), of(9, 10)}, 21},
		{"none suits most", of(11, 15), []fused{of(30), of(24), of(26), of(9, 10)}, 26},
		{"one suits most", of(21), []fused{of(14, 15), of(8, 10), of(12, 15), of(25)}, 12},
		{"half find none: none", of(11, 15), []fused{of(22), of(9, 10)}, 22},
		{"vehicles without a band do not count", of(11, 15), []fused{{}, {}, of(14, 15)}, 11},
	} {
		j := judgedTable{fuses: c.fuses}
		for range c.fuses {
			j.weight = append(j.weight, 1/float64(len(c.fuses)))
		}
		if got := j.middleFuse(c.typical); got.band.LeastA != c.leastA {
			t.Errorf("%s: the fuse of the vehicle that asks for %g A at the least, want that for %g A", c.name, got.band.LeastA, c.leastA)
		}
	}
	if got := (&judgedTable{}).middleFuse(fused{}); got.band != nil {
		t.Error("a fuse without a path")
	}
}
