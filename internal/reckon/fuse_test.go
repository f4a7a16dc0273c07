package reckon

import (
	"slices"
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
	onWire := func(leastA, wireA float64, sizes ...float64) fused {
		return fused{band: &wiring.FuseBand{LeastA: leastA, MostA: wireA, StandardA: sizes, Limits: []wiring.FuseLimit{{By: "wire", MostA: wireA}}}}
	}
	many := func(n int, f fused) []fused { return slices.Repeat([]fused{f}, n) }
	for _, c := range []struct {
		name    string
		typical fused
		fuses   []fused
		want    []float64
	}{
		{"a size that is too large for the wire of four in ten is not named", onWire(14, 26, 15, 20, 25), slices.Concat(many(6, onWire(14, 26, 15, 20, 25)), many(4, onWire(14, 22, 15, 20))), []float64{15, 20}},
		{"nor are all of them where the smallest is too large for one in ten", onWire(18, 26, 20, 25), slices.Concat(many(9, onWire(18, 26, 20, 25)), many(1, onWire(18, 19))), nil},
		{"one that is too large for one in twenty is named", onWire(18, 24, 20), slices.Concat(many(19, onWire(18, 24, 20)), many(1, onWire(18, 19))), []float64{20}},
		{"where none has the sizes that are left, those of the weakest wire are named", onWire(18, 26, 20, 25), slices.Concat(many(8, onWire(18, 26, 20, 25)), many(2, onWire(9, 12, 10))), []float64{10}},
	} {
		j := judgedTable{fuses: c.fuses}
		for range c.fuses {
			j.weight = append(j.weight, 1/float64(len(c.fuses)))
		}
		if got := j.middleFuse(c.typical); !slices.Equal(got.sizes(), c.want) {
			t.Errorf("%s: %v, want %v", c.name, got.sizes(), c.want)
		}
	}
	if got := (&judgedTable{}).middleFuse(fused{}); got.band != nil {
		t.Error("a fuse without a path")
	}
}

// A fuse to buy is for a vehicle of which much is not known: a size that suits the one in
// the middle is none, unless it suits nearly all.
func TestAFuseToBuySuitsNearlyAllVehicles(t *testing.T) {
	of := func(sizes ...float64) fused { return fused{band: &wiring.FuseBand{StandardA: sizes}} }
	many := func(n int, f fused) []fused { return slices.Repeat([]fused{f}, n) }
	for _, c := range []struct {
		name  string
		fuses []fused
		want  []float64
	}{
		{"the same suits all", many(20, of(10, 15)), []float64{10, 15}},
		{"ten suits half of them, twenty all", slices.Concat(many(10, of(20)), many(10, of(10, 15, 20))), []float64{20}},
		{"each half another", slices.Concat(many(10, of(20)), many(10, of(10, 15))), nil},
		{"one in twenty does without", slices.Concat(many(19, of(10)), many(1, of())), []float64{10}},
		{"three in twenty do not", slices.Concat(many(17, of(10)), many(3, of())), nil},
		{"vehicles without a band do not count", slices.Concat(many(5, of(10)), many(15, fused{})), []float64{10}},
		{"no vehicle has a band", many(3, fused{}), nil},
	} {
		j := judgedTable{fuses: c.fuses}
		for range c.fuses {
			j.weight = append(j.weight, 1/float64(len(c.fuses)))
		}
		if got := j.sizesForNearlyAll(); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
