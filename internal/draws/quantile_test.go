package draws_test

import (
	"encoding/binary"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/packcheck/internal/draws"
)

func TestQuantileByHand(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, c := range []struct {
		name           string
		values, weight []float64
		p, want        float64
	}{
		{"median of three", []float64{30, 10, 20}, nil, 0.5, 20},
		{"median of four", []float64{40, 10, 30, 20}, nil, 0.5, 25},
		// Weights 1, 2, 1: middles at 1/8, 1/2, 7/8; 0.3125 is half way.
		{"between unequal weights", []float64{10, 20, 40}, []float64{1, 2, 1}, 0.3125, 15},
		{"between, on the other side", []float64{10, 20, 40}, []float64{1, 2, 1}, 0.6875, 30},
		{"weights need not add up to 1", []float64{10, 20, 40}, []float64{5, 10, 5}, 0.3125, 15},
		{"before the first middle", []float64{10, 20, 40}, []float64{1, 2, 1}, 0.1, 10},
		{"after the last middle", []float64{10, 20, 40}, []float64{1, 2, 1}, 0.9, 40},
		{"no weight, no say", []float64{10, 20, 40, 1000}, []float64{1, 2, 1, 0}, 1, 40},
		{"a draw without the figure", []float64{10, nan, 20, 40}, []float64{1, 9, 2, 1}, 0.3125, 15},
		{"never ends", []float64{10, inf, inf, inf}, nil, 0.9, inf},
		{"nearer to the end that never comes", []float64{10, inf}, nil, 0.6, inf},
		{"nearer to ten", []float64{10, inf}, nil, 0.4, 10},
		{"one draw", []float64{7}, []float64{0.2}, 0.1, 7},
		{"none", nil, nil, 0.5, nan},
		{"none with the figure", []float64{nan, nan}, nil, 0.5, nan},
		{"no share", []float64{1, 2}, nil, nan, nan},
	} {
		got := draws.Quantile(c.values, c.weight, c.p)
		if got != c.want && !(math.IsNaN(got) && math.IsNaN(c.want)) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

func TestSpreadTellsHowManyDrawsHaveTheFigure(t *testing.T) {
	s := draws.SpreadOf([]float64{1, 2, math.NaN(), 3}, []float64{1, 1, 1, 1})
	if s.Present != 0.75 || s.P50 != 2 {
		t.Errorf("present %v, median %v; want 0.75 and 2", s.Present, s.P50)
	}
}

func TestOrderOfDrawsDoesNotMatterToAQuantile(t *testing.T) {
	values, weight := []float64{3, 1, 4, 1.5, 9, 2.6}, []float64{0.1, 0.3, 0.1, 0.2, 0.05, 0.25}
	want := draws.SpreadOf(values, weight)
	slices.Reverse(values)
	slices.Reverse(weight)
	if got := draws.SpreadOf(values, weight); got != want {
		t.Errorf("%v backwards, %v forwards", got, want)
	}
}

// Crowded, far apart, the same or endless: the middle of the k-th weight is the k-th value.
func TestHoweverValuesLieTheyAreSorted(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 0))
	for name, of := range map[string]func() float64{
		"normal": random.NormFloat64,
		"whole":  func() float64 { return math.Round(random.NormFloat64()) },
		"skewed": func() float64 { return math.Exp(40 * random.NormFloat64()) },
		"same":   func() float64 { return 3 },
		"tiny":   func() float64 { return 1 + 1e-15*random.Float64() },
		"huge":   func() float64 { return math.MaxFloat64 * (2*random.Float64() - 1) },
		"endless": func() float64 {
			if x := random.NormFloat64(); math.Abs(x) < 1 {
				return x
			}
			return math.Inf(1 - 2*random.IntN(2))
		},
	} {
		for round := range 40 {
			values := make([]float64, 1<<(round%10)) // shares of a power of two are exact
			for i := range values {
				values[i] = of()
			}
			for k, want := range slices.Sorted(slices.Values(values)) {
				if got := draws.Quantile(values, nil, (float64(k)+0.5)/float64(len(values))); got != want {
					t.Fatalf("%s, %d of %d: %v, want %v", name, k, len(values), got, want)
				}
			}
		}
	}
}

// floatsFrom reads numbers out of fuzz bytes, eight bytes each.
func floatsFrom(data []byte) []float64 {
	var all []float64
	for ; len(data) >= 8; data = data[8:] {
		all = append(all, math.Float64frombits(binary.LittleEndian.Uint64(data)))
	}
	return all
}

func FuzzQuantileAndResample(f *testing.F) {
	seed := func(v ...float64) []byte {
		var b []byte
		for _, x := range v {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
		}
		return b
	}
	f.Add(seed(3, 1, 2, 2), seed(1, 1, 0.5, 1))
	f.Add(seed(math.NaN(), 1, math.Inf(-1)), seed(1, math.NaN(), 2))
	f.Add(seed(1e308, -1e308), seed(1e-300, 1e300))
	f.Fuzz(func(t *testing.T, valueBytes, weightBytes []byte) {
		values, weight := floatsFrom(valueBytes), floatsFrom(weightBytes)
		n := min(len(values), len(weight))
		values, weight = values[:n], weight[:n]
		for i := range weight {
			if weight[i] > 1e300 { // sums must stay finite
				weight[i] = 1
			}
		}
		any := false
		for i := range values {
			any = any || weight[i] > 0 && !math.IsNaN(values[i])
		}
		last := math.Inf(-1)
		for p := 0.0; p <= 1; p += 1.0 / 64 {
			q := draws.Quantile(values, weight, p)
			if math.IsNaN(q) == any {
				t.Fatalf("%v, %v at %v: %v", values, weight, p, q)
			}
			if any && q < last {
				t.Fatalf("%v, %v: falls from %v to %v at %v", values, weight, last, q, p)
			}
			last = q
		}
		picked := draws.Resample(weight, 9)
		for k, i := range picked {
			if !(weight[i] > 0) || k > 0 && i < picked[k-1] {
				t.Fatalf("%v: picked %v", weight, picked)
			}
		}
		if len(picked) != 9 && slices.ContainsFunc(weight, func(w float64) bool { return w > 0 && !math.IsInf(w, 1) }) {
			t.Fatalf("%v: picked %v", weight, picked)
		}
	})
}

func BenchmarkSpreadOf(b *testing.B) {
	values := make([]float64, 1024)
	for i, z := range draws.Points(len(values), 1) {
		values[i] = z[0]
	}
	for b.Loop() {
		draws.SpreadOf(values, nil)
	}
}
