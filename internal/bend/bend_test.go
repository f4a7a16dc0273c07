package bend_test

import (
	"math"
	"testing"

	"example.org/packcheck/internal/bend"
)

func TestTheCheapCurveIsTheTrueOneToAMillionth(t *testing.T) {
	worst, at := 0.0, 0.0
	for x := 1e-12; x < 1e300; x *= 1.0003 {
		for _, x := range []float64{x, -x} {
			if off := math.Abs(bend.Asinh(x)/math.Asinh(x) - 1); !(off <= worst) {
				worst, at = off, x
			}
		}
	}
	t.Logf("worst relative error %.2g at %g", worst, at)
	if !(worst < 1e-6) {
		t.Errorf("relative error %.2g at %g", worst, at)
	}
	if bend.Asinh(0) != 0 || !math.IsInf(bend.Asinh(math.Inf(-1)), -1) || !math.IsNaN(bend.Asinh(math.NaN())) {
		t.Error("nothing, infinity and what is not a number do not stay themselves")
	}
}

func TestTheCurveNeverFalls(t *testing.T) {
	last := bend.Asinh(3.9)
	for x := 3.9; x < 4.1; x += 1e-5 {
		if y := bend.Asinh(x); y < last {
			t.Fatalf("falls from %v to %v at %g", last, y, x)
		} else {
			last = y
		}
	}
}

func TestWithoutAKneeABranchIsStraight(t *testing.T) {
	if v := bend.Settled(0.7, 0); v != 0.7 {
		t.Errorf("settles at %g V", v)
	}
	if v, want := bend.Settled(0.3, 0.1), 0.1*math.Asinh(3); math.Abs(v-want) > 1e-6*want {
		t.Errorf("settles at %g V, want %g", v, want)
	}
}

// BenchmarkAsinh prints what the cheap curve costs over the library's, for
// branches that hardly bend and for such that bend much.
func BenchmarkAsinh(b *testing.B) {
	for _, r := range []struct {
		name string
		upTo float64
	}{{"hardly bent", 0.5}, {"bent", 4}, {"in the cold", 20}} {
		b.Run(r.name, func(b *testing.B) {
			xs := make([]float64, 256)
			for i := range xs {
				xs[i] = r.upTo * float64(i*7%256) / 256
			}
			time := func(f func(float64) float64) float64 {
				sum, began := 0.0, b.Elapsed()
				for range b.N {
					for _, x := range xs {
						sum += f(x)
					}
				}
				if sum < 0 {
					b.Fatal(sum)
				}
				return float64(b.Elapsed() - began)
			}
			cheap := time(bend.Asinh)
			b.ReportMetric(cheap/time(math.Asinh), "cost-over-library")
		})
	}
}

// The slope of the curve, against its own differences.
func TestSteepIsTheSlopeOfSettled(t *testing.T) {
	for _, knee := range []float64{0, 0.02, 0.3} {
		for _, amps := range []float64{-20, -1, 0, 0.5, 5, 40} {
			const ohm, h = 0.03, 0.01
			want := (bend.Settled(ohm*(amps+h), knee) - bend.Settled(ohm*(amps-h), knee)) / (2 * h)
			if got := bend.Steep(ohm, amps, knee); !(math.Abs(got-want) <= 2e-3*ohm) {
				t.Errorf("knee %g V, %g A: %g, want %g", knee, amps, got, want)
			}
		}
	}
}
