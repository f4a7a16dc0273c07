package solve_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/packcheck/internal/solve"
)

var functions = []struct {
	name   string
	lo, hi float64
	root   float64
	f      func(x float64) float64
}{
	{"line", -1, 3, 1, func(x float64) float64 { return x - 1 }},
	{"falling line", 3, -1, 1, func(x float64) float64 { return 1 - x }},
	{"cosine", 3, 0, math.Pi / 2, math.Cos},
	{"cube", -1, 4, 0, func(x float64) float64 { return x * x * x }},
	{"exponential", -50, 5, math.Log(2), func(x float64) float64 { return math.Exp(x) - 2 }},
	{"flat far away", 0, 1, 0.9, func(x float64) float64 { return math.Pow(x/0.9, 80) - 1 }},
	{"kink", 0, 1, 0.3, func(x float64) float64 { return max(x-0.3, 1000*(x-0.3)) }},
	{"jump", 0, 1, 0.7, func(x float64) float64 {
		if x > 0.7 {
			return 1e9
		}
		return -1e-9
	}},
	{"infinite at one end", 0, 1, 0.25, func(x float64) float64 { return math.Log(x) - math.Log(0.25) }},
}

func TestTheCrossingIsInsideAsNarrowABracketAsAskedFor(t *testing.T) {
	for _, c := range functions {
		for _, width := range []float64{1e-2, 1e-6, 1e-12} {
			calls := 0
			b := solve.Crossing(c.lo, c.hi, width, func(x float64) float64 { calls++; return c.f(x) })
			if d := math.Abs(b.Hi - b.Lo); d > width {
				t.Errorf("%s: bracket of %g, asked for %g", c.name, d, width)
			}
			if c.f(b.Lo) > 0 || !(c.f(b.Hi) > 0) {
				t.Errorf("%s: %g at %v and %g at %v", c.name, c.f(b.Lo), b.Lo, c.f(b.Hi), b.Hi)
			}
			if math.Abs(b.Lo-c.root) > width+1e-15 {
				t.Errorf("%s: found at %v, is at %v", c.name, b.Lo, c.root)
			}
			if most := 3 + 3*math.Ceil(math.Log2(math.Abs(c.hi-c.lo)/width)); float64(calls) > most {
				t.Errorf("%s to %g: %d evaluations, want at most %g", c.name, width, calls, most)
			}
		}
	}
}

// Halving needs 40 to come to 1e-12.
func TestASmoothFunctionTakesFarFewerStepsThanHalving(t *testing.T) {
	for _, c := range functions[:5] {
		calls := 0
		solve.Crossing(c.lo, c.hi, 1e-12, func(x float64) float64 { calls++; return c.f(x) })
		if calls > 20 {
			t.Errorf("%s: %d evaluations", c.name, calls)
		}
	}
}

func TestAWidthThatFloatsCannotTellEndsAtNeighbours(t *testing.T) {
	b := solve.Crossing(0, 2, 0, func(x float64) float64 { return x*x - 2 })
	if math.Nextafter(b.Lo, 2) != b.Hi {
		t.Errorf("%v to %v", b.Lo, b.Hi)
	}
	lo, hi := solve.Edge(0, 2, 0, func(x float64) bool { return x*x > 2 })
	if lo != b.Lo || hi != b.Hi {
		t.Errorf("the edge lies at %v to %v, the crossing at %v to %v", lo, hi, b.Lo, b.Hi)
	}
}

func TestWhatIsNotANumberCountsAsNotPositive(t *testing.T) {
	b := solve.Crossing(0, 1, 1e-9, func(x float64) float64 {
		if x < 0.4 {
			return math.NaN()
		}
		return 1
	})
	if math.Abs(b.Hi-0.4) > 1e-8 {
		t.Errorf("crossing at %v, want 0.4", b.Hi)
	}
}

func TestSearchesAllocateNothing(t *testing.T) {
	shift := 0.3
	if n := testing.AllocsPerRun(100, func() {
		solve.Crossing(0, 1, 1e-9, func(x float64) float64 { return x*x - shift })
		solve.Edge(0, 1, 1e-9, func(x float64) bool { return x > shift })
	}); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func ExampleCrossing() {
	b := solve.Crossing(0, 2, 1e-9, func(x float64) float64 { return x*x - 2 })
	fmt.Printf("%.6f\n", b.Hi)
	// Output: 1.414214
}

func BenchmarkCrossing(b *testing.B) {
	for _, c := range functions {
		b.Run(c.name, func(b *testing.B) {
			calls := 0
			for b.Loop() {
				solve.Crossing(c.lo, c.hi, 1e-9, func(x float64) float64 { calls++; return c.f(x) })
			}
			b.ReportMetric(float64(calls)/float64(b.N), "evaluations")
		})
	}
}
