package battery_test

import (
	"runtime"
	"sync"
	"testing"

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
