package cutoff_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/packcheck/cutoff"
)

// chain makes a chain or fails the test.
func chain(t testing.TB, devices ...cutoff.Device) cutoff.Chain {
	t.Helper()
	c, err := cutoff.NewChain(devices...)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// at is a sample with the same volts everywhere.
func at(v, dtS float64) cutoff.Sample { return cutoff.Sample{PackV: v, BusV: v, DtS: dtS} }

func TestADelayRunsOutInsideAStep(t *testing.T) {
	c := chain(t, cutoff.Device{Where: cutoff.Pack, OpensAtV: 15, DelayS: 2.5})
	if c.Step(at(16, 10)) {
		t.Fatal("opened above its voltage")
	}
	if c.Step(at(15, 2)) {
		t.Fatal("opened after 2.0 of 2.5 s")
	}
	if got := c.UntilTrip(at(15, 0)); math.Abs(got-0.5) > 1e-12 {
		t.Errorf("UntilTrip %g s, want 0.5", got)
	}
	if !c.Step(at(14, 7)) {
		t.Fatal("did not open")
	}
	where, atS, ok := c.First()
	if !ok || where != cutoff.Pack || math.Abs(atS-12.5) > 1e-12 {
		t.Errorf("first %v at %g s (%v), want pack at 12.5 s", where, atS, ok)
	}
}

func TestARecoveryStartsTheDelayAfresh(t *testing.T) {
	c := chain(t, cutoff.Device{Where: cutoff.Module, OpensAtV: 15, DelayS: 2})
	for _, v := range []float64{14, 16, 14, 16, 14} {
		if c.Step(at(v, 1.9)) {
			t.Fatal("opened on sags shorter than its delay")
		}
	}
	if !c.Step(at(14, 0.2)) {
		t.Error("did not open when one sag lasted")
	}
}

func TestTheDeviceWhoseDelayEndsFirstOpens(t *testing.T) {
	tests := []struct {
		name string
		pack cutoff.Device
		ctrl cutoff.Device
		s    cutoff.Sample
		want cutoff.Place
		why  string
	}{
		{
			"shorter delay",
			cutoff.Device{Where: cutoff.Pack, OpensAtV: 15, DelayS: 5},
			cutoff.Device{Where: cutoff.Controller, OpensAtV: 15, DelayS: 1},
			cutoff.Sample{PackV: 14, BusV: 14, DtS: 10},
			cutoff.Controller, "1 s is over before 5 s",
		},
		{
			"same moment",
			cutoff.Device{Where: cutoff.Pack, OpensAtV: 15, DelayS: 1},
			cutoff.Device{Where: cutoff.Controller, OpensAtV: 15, DelayS: 1},
			cutoff.Sample{PackV: 14, BusV: 14, DtS: 10},
			cutoff.Pack, "a tie goes to the one nearest the cells",
		},
		{
			"path drop",
			cutoff.Device{Where: cutoff.Pack, OpensAtV: 15, DelayS: 1},
			cutoff.Device{Where: cutoff.Controller, OpensAtV: 15, DelayS: 3},
			cutoff.Sample{PackV: 15.5, BusV: 14.5, DtS: 10},
			cutoff.Controller, "only the controller sees the drop of the path",
		},
	}
	for _, tt := range tests {
		// Given in the wrong order on purpose.
		c := chain(t, tt.ctrl, tt.pack)
		if !c.Step(tt.s) {
			t.Errorf("%s: stayed closed", tt.name)
			continue
		}
		if where, _, _ := c.First(); where != tt.want {
			t.Errorf("%s: %v opened first, want %v: %s", tt.name, where, tt.want, tt.why)
		}
		if c.Openings() != 1 {
			t.Errorf("%s: %d openings, want 1: the load being gone stops the other", tt.name, c.Openings())
		}
	}
}

func TestALatchStaysOpenAndAClosingVoltageBringsTheLoadBack(t *testing.T) {
	latch := chain(t, cutoff.Device{Where: cutoff.Pack, OpensAtV: 15})
	back := chain(t, cutoff.Device{Where: cutoff.Pack, OpensAtV: 15, ClosesAtV: 17})
	for _, c := range []*cutoff.Chain{&latch, &back} {
		if !c.Step(at(14, 1)) {
			t.Fatal("did not open")
		}
		if !c.Step(at(16.9, 100)) {
			t.Fatal("closed below its closing voltage")
		}
	}
	if !latch.Step(at(21, 1e6)) {
		t.Error("a latch closed by itself")
	}
	if back.Step(at(17, 1)) {
		t.Error("did not close at its closing voltage")
	}
	if back.Recloses() != 1 || back.Open() {
		t.Errorf("recloses %d, open %v; want 1, false", back.Recloses(), back.Open())
	}
	back.Reset()
	if _, _, ok := back.First(); ok || back.Recloses() != 0 || back.Openings() != 0 {
		t.Error("Reset left something behind")
	}
}

func TestWhatStandsBehindAnOpenDeviceHasNoSupply(t *testing.T) {
	c := chain(t,
		cutoff.Device{Where: cutoff.Pack, OpensAtV: 12, ClosesAtV: 13, StandbyA: 20e-6},
		cutoff.Device{Where: cutoff.Module, OpensAtV: 15, StandbyA: 1e-3},
		cutoff.Device{Where: cutoff.Controller, OpensAtV: 14, StandbyA: 20e-3},
	)
	if got, want := c.StandbyA(), 21.02e-3; math.Abs(got-want) > 1e-12 {
		t.Errorf("closed: standby %g A, want %g", got, want)
	}
	c.Step(at(14.5, 1)) // the module opens and latches
	if got, want := c.StandbyA(), 1.02e-3; math.Abs(got-want) > 1e-12 {
		t.Errorf("module open: standby %g A, want %g: it goes on drawing its own", got, want)
	}
	if !c.Step(at(11, 1)) { // weeks later the pack's own board opens too
		t.Fatal("not open")
	}
	if got, want := c.StandbyA(), 20e-6; math.Abs(got-want) > 1e-12 {
		t.Errorf("pack open: standby %g A, want %g", got, want)
	}
	c.Step(at(11, 1))   // the module has lost its supply
	c.Step(at(13.5, 1)) // the pack's board closes: the module starts up without its latch
	if c.Open() {
		t.Error("a device without supply remembered its latch")
	}
}

func TestNotANumberDisconnects(t *testing.T) {
	c := chain(t, cutoff.Device{Where: cutoff.Pack, OpensAtV: 15})
	if !c.Step(at(math.NaN(), 1)) {
		t.Error("a broken reading kept the load on")
	}
}

func TestDevicesOutOfRangeAreErrors(t *testing.T) {
	good := cutoff.Device{Where: cutoff.Pack, OpensAtV: 15}
	for _, tt := range []struct {
		says    string
		devices []cutoff.Device
	}{
		{"two devices", []cutoff.Device{good, good}},
		{"unknown place", []cutoff.Device{{Where: 7, OpensAtV: 15}}},
		{"OpensAtV is 0", []cutoff.Device{{}}},
		{"OpensAtV is NaN", []cutoff.Device{{OpensAtV: math.NaN()}}},
		{"OpensAtV is +Inf", []cutoff.Device{{OpensAtV: math.Inf(1)}}},
		{"DelayS is -1", []cutoff.Device{{OpensAtV: 15, DelayS: -1}}},
		{"StandbyA is -1", []cutoff.Device{{OpensAtV: 15, StandbyA: -1}}},
		{"not above OpensAtV", []cutoff.Device{{OpensAtV: 15, ClosesAtV: 15}}},
	} {
		if _, err := cutoff.NewChain(tt.devices...); err == nil || !strings.Contains(err.Error(), tt.says) {
			t.Errorf("%+v: error %v, want %q in it", tt.devices, err, tt.says)
		}
	}
	var none cutoff.Chain
	if none.Step(at(0, 1e9)) || none.Open() {
		t.Error("no device at all opened")
	}
	if none.At(0) != (cutoff.Device{}) || none.Len() != 0 {
		t.Error("an empty chain has a device")
	}
}

// The same staircase of volts cut into other steps must give the same moment.
func TestCuttingStepsDoesNotMoveTheOpening(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		devices := []cutoff.Device{
			{Where: cutoff.Pack, OpensAtV: 12, DelayS: 4 * rng.Float64()},
			{Where: cutoff.Controller, OpensAtV: 13, DelayS: 6 * rng.Float64()},
		}
		whole, cut := chain(t, devices...), chain(t, devices...)
		for range 40 {
			s := at(11+3*rng.Float64(), 3*rng.Float64())
			a := whole.Step(s)
			parts := 1 + rng.IntN(5)
			part := s
			part.DtS = s.DtS / float64(parts)
			b := false
			for range parts {
				if b = cut.Step(part); b {
					break
				}
			}
			if a != b {
				t.Fatalf("%+v: whole %v, in %d parts %v", s, a, parts, b)
			}
			if a {
				break
			}
		}
		pa, ta, oka := whole.First()
		pb, tb, okb := cut.First()
		if pa != pb || oka != okb || math.Abs(ta-tb) > 1e-9 {
			t.Fatalf("whole: %v at %g s; cut: %v at %g s", pa, ta, pb, tb)
		}
	}
}

// UntilTrip promises the moment at which Step then opens.
func TestUntilTripIsKept(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 500 {
		c := chain(t,
			cutoff.Device{Where: cutoff.Module, OpensAtV: 12, DelayS: 5 * rng.Float64()},
			cutoff.Device{Where: cutoff.Controller, OpensAtV: 13, DelayS: 5 * rng.Float64()},
		)
		c.Step(at(11+3*rng.Float64(), rng.Float64()))
		if c.Open() {
			continue
		}
		s := at(11+3*rng.Float64(), 0)
		left := c.UntilTrip(s)
		if math.IsInf(left, 1) {
			s.DtS = 1e6
			if c.Step(s) {
				t.Fatal("opened although it would never")
			}
			continue
		}
		early, late := c, c
		s.DtS = left * 0.999
		if left > 0 && early.Step(s) {
			t.Fatalf("opened before %g s", left)
		}
		s.DtS = left
		if !late.Step(s) {
			t.Fatalf("not open after %g s", left)
		}
	}
}

func TestChainStepDoesNotAllocate(t *testing.T) {
	c := chain(t,
		cutoff.Device{Where: cutoff.Pack, OpensAtV: 12, DelayS: 1, ClosesAtV: 13},
		cutoff.Device{Where: cutoff.Controller, OpensAtV: 13, DelayS: 2, ClosesAtV: 14},
	)
	v := 11.0
	if n := testing.AllocsPerRun(1000, func() {
		v = 25 - v // 11, 14, 11, ...
		c.Step(cutoff.Sample{PackV: v, BusV: v, DtS: 0.7})
		c.UntilTrip(cutoff.Sample{PackV: v, BusV: v})
	}); n != 0 {
		t.Errorf("%g allocations a step, want 0", n)
	}
}

func BenchmarkChainStep(b *testing.B) {
	c, err := cutoff.NewChain(
		cutoff.Device{Where: cutoff.Pack, OpensAtV: 12, DelayS: 1},
		cutoff.Device{Where: cutoff.Module, OpensAtV: 12.5, DelayS: 1},
		cutoff.Device{Where: cutoff.Controller, OpensAtV: 13, DelayS: 2},
	)
	if err != nil {
		b.Fatal(err)
	}
	s := cutoff.Sample{PackV: 18, BusV: 17, DtS: 0.1}
	b.ReportAllocs()
	for b.Loop() {
		c.Step(s)
	}
}
