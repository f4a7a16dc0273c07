package wiring_test

import (
	"math"
	"testing"

	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

// What nobody made with New carries nothing and opens never: it must not look like a fuse.
func TestZeroValuesProtectNothing(t *testing.T) {
	var c wiring.Curve
	if b := c.Opens(1e6); !math.IsInf(b.EarliestS, 1) || !math.IsInf(b.LatestS, 1) || !math.IsInf(c.HoldsA(), 1) || !math.IsInf(c.MustOpenA(), 1) {
		t.Errorf("the zero curve opens: %+v, holds %g A, must open at %g A", b, c.HoldsA(), c.MustOpenA())
	}
	var s wiring.FuseState
	s.Step(&c, 1e3, 10)
	if s.MayHaveOpened() || s.MustHaveOpened() {
		t.Error("a state of the zero curve has opened")
	}
	var p wiring.Path
	if a := p.Weakest(20).Ampacity.AmpsA; a != 0 {
		t.Errorf("a path without wire carries %g A", a)
	}
	form, err := tables.Builtin().Fuse("small blade")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := p.Allowed(nil, form, wiring.Demand{RunningA: 10}, 20); err == nil {
		t.Error("a path without wire has a fuse that fits")
	}
	if _, err := wiring.Assess(wiring.Case{Path: &p, Pack: wiring.PackEnd{FullV: 12, Ohm: 0.1}, Demand: wiring.Demand{RunningA: 10}}); err == nil {
		t.Error("a path without wire was judged")
	}
}
