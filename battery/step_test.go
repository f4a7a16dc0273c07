package battery_test

import (
	"math"
	"runtime"
	"sync"
	"testing"
	"unsafe"

	"example.org/packcheck/battery"
)

func TestAdvanceAllocatesNothing(t *testing.T) {
	m := model(t, "agm", 6, 7)
	step, s := m.Over(1), m.StateAt(1, 25)
	if n := testing.AllocsPerRun(1000, func() {
		step.Advance(&s, 3, 25)
		_ = m.TerminalV(&s, 3)
		_ = m.WeakestCellV(&s, 3)
	}); n != 0 {
		t.Errorf("%g allocations per step", n)
	}
}

func BenchmarkAdvance(b *testing.B) {
	for _, name := range []string{"agm", "li-ion"} {
		b.Run(name, func(b *testing.B) {
			m := model(b, name, 5, 4)
			step, s := m.Over(1), m.StateAt(1, 25)
			b.ReportAllocs()
			for b.Loop() {
				step.Advance(&s, 0.001, 20)
			}
		})
	}
}

// BenchmarkTenThousandHours is ten thousand outings of an hour, 25 s driving
// and 10 s pausing in steps of a second, on all processors.
func BenchmarkTenThousandHours(b *testing.B) {
	m := model(b, "agm", 6, 12)
	b.ReportAllocs()
	for b.Loop() {
		var wait sync.WaitGroup
		workers := runtime.GOMAXPROCS(0)
		for w := range workers {
			wait.Go(func() {
				step := m.Over(1)
				for k := w; k < 10_000; k += workers {
					s := m.StateAt(1, 20)
					for second := range 3600 {
						amps := 7.0
						if second%35 >= 25 {
							amps = 0
						}
						step.Advance(&s, amps, 20)
					}
				}
			})
		}
		wait.Wait()
	}
}

func TestAnotherPackOfOneProfileIsTheSameAsAFreshOne(t *testing.T) {
	one := model(t, "li-ion", 3, 2)
	spec := battery.Spec{CellsInSeries: 5, CapacityAh: 5, Health: 0.8}
	with, err := one.With(spec)
	if err != nil {
		t.Fatal(err)
	}
	spec.Profile = profile(t, "li-ion")
	fresh := modelOf(t, spec)
	for _, z := range []float64{0, 0.1, 0.5, 1} {
		a, b := with.StateAt(z, 10), fresh.StateAt(z, 10)
		if a != b || with.TerminalV(&a, 20) != fresh.TerminalV(&b, 20) {
			t.Errorf("at %g: %g V and %g V", z, with.TerminalV(&a, 20), fresh.TerminalV(&b, 20))
		}
	}
	if _, err := one.With(battery.Spec{}); err == nil {
		t.Error("a spec without cells is taken")
	}
}

// The profile's tables are shared, so a pack of a known profile is a few
// figures and no more.
func TestAnotherPackOfOneProfileIsSmall(t *testing.T) {
	m := model(t, "agm", 6, 7)
	if size := unsafe.Sizeof(*m); size > 500 {
		t.Errorf("a Model has %d bytes", size)
	}
	spec := battery.Spec{CellsInSeries: 6, CapacityAh: 7, RateHours: 10, Health: 0.7, WellRatio: 1.2}
	var other battery.Model
	if n := testing.AllocsPerRun(100, func() {
		if err := m.Into(&other, spec); err != nil {
			t.Fatal(err)
		}
	}); n != 0 {
		t.Errorf("%g allocations to put a pack in place of another", n)
	}
	if n := testing.AllocsPerRun(100, func() {
		if _, err := m.With(spec); err != nil {
			t.Fatal(err)
		}
	}); n > 1 {
		t.Errorf("%g allocations for a pack", n)
	}
}

func TestAPackPutInPlaceOfAnotherIsLikeAFreshOne(t *testing.T) {
	m := model(t, "gel", 6, 7)
	other := *model(t, "li-ion", 3, 2)
	spec := battery.Spec{CellsInSeries: 3, CapacityAh: 12, Health: 0.6, ResistanceOhm: 0.02}
	if err := m.Into(&other, spec); err != nil {
		t.Fatal(err)
	}
	spec.Profile = profile(t, "gel")
	fresh := modelOf(t, spec)
	a, b := other.Discharge(other.StateAt(1, 5), 6, 5, 5), fresh.Discharge(fresh.StateAt(1, 5), 6, 5, 5)
	if a != b || other.Spec().Profile.Name != "gel" {
		t.Errorf("%+v, afresh %+v", a, b)
	}
	if err := m.Into(&other, battery.Spec{CellsInSeries: -1, CapacityAh: 7}); err == nil {
		t.Error("a pack of less than no cells is taken")
	}
	if c := other.Discharge(other.StateAt(1, 5), 6, 5, 5); c != a {
		t.Error("a faulty spec has changed the pack")
	}
}

// Wells that are given say how steeply capacity falls with current: the same
// total with half the available share gives less at a high current and as much
// at a very low one.
func TestASmallerAvailableShareMakesCapacityFallFaster(t *testing.T) {
	m := model(t, "agm", 6, 7)
	steep, err := m.With(battery.Spec{CellsInSeries: 6, CapacityAh: 7, WellC: m.Wells().C / 2})
	if err != nil {
		t.Fatal(err)
	}
	gives := func(m *battery.Model, amps float64) float64 { return m.Discharge(m.StateAt(1, 25), amps, 0, 25).Ah }
	if usual, less := gives(m, 14), gives(steep, 14); less > 0.8*usual {
		t.Errorf("at 14 A %.2f Ah against %.2f Ah", less, usual)
	}
	if usual, same := gives(m, 0.001), gives(steep, 0.001); math.Abs(same/usual-1) > 0.001 {
		t.Errorf("at 1 mA %.3f Ah against %.3f Ah", same, usual)
	}
}

func BenchmarkAnotherPackOfOneProfile(b *testing.B) {
	m := model(b, "agm", 6, 7)
	spec := battery.Spec{CellsInSeries: 6, CapacityAh: 7, RateHours: 10, Health: 0.7}
	b.Run("With", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := m.With(spec); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("Into", func(b *testing.B) {
		var other battery.Model
		b.ReportAllocs()
		for b.Loop() {
			if err := m.Into(&other, spec); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkDischarge(b *testing.B) {
	for _, n := range []string{"agm", "li-ion"} {
		m := model(b, n, 6, 7)
		b.Run(n, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				m.UsableAh(7)
			}
		})
	}
}

// The zero value of a step is one of no time: whoever forgot to ask a model for it gets back
// what was there, and no panic.
func TestAStepOfNoTimeMovesNothing(t *testing.T) {
	var step battery.Step
	was := battery.State{Y1Ah: 3, Y2Ah: 2, V1: 0.1, V2: 0.2, TempC: 20}
	now, end, s := battery.Look{Ohm: 0.1}, battery.Look{Ohm: 0.2}, was
	step.Advance(&s, 5, 10)
	step.AdvanceFrom(&now, &s, 5, 10)
	step.Warm(&s, 5)
	step.Straighten(&now, &end, &s, 5, 1)
	if swing := step.SwingOhm(&now); s != was || swing != 0 {
		t.Errorf("%+v, want %+v; a swing of %g Ohm", s, was, swing)
	}
}
