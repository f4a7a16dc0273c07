package draws_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"

	"example.org/packcheck/internal/draws"
)

func TestFirstPointsOfALongerListAreTheShorterList(t *testing.T) {
	long := draws.Points(1024, 110)
	for _, n := range []int{1, 7, 256, 1000} {
		short := draws.Points(n, 110)
		for i := range short {
			if !slices.Equal(short[i][:101], long[i][:101]) {
				t.Fatalf("point %d of %d differs from that of 1024", i, n)
			}
		}
	}
}

// Coordinates 1, 2, 10, 50 and 101 of some points as scipy 1.10.1 gives them:
// scipy.stats.qmc.Sobol(101, scramble=False).random(1024).
func TestUnscrambledPointsAreThoseOfScipy(t *testing.T) {
	got := draws.PlainSobol(1024, 101)
	for i, want := range map[int][5]float64{
		0:    {},
		1:    {0.5, 0.5, 0.5, 0.5, 0.5},
		100:  {0.4140625, 0.2578125, 0.6953125, 0.6640625, 0.0390625},
		777:  {0.6923828125, 0.9365234375, 0.3232421875, 0.9521484375, 0.8427734375},
		1023: {0.0009765625, 0.7529296875, 0.8505859375, 0.8232421875, 0.2373046875},
	} {
		for k, d := range []int{0, 1, 9, 49, 100} {
			if got[i][d] != want[k] {
				t.Errorf("point %d, coordinate %d: %v, scipy has %v", i, d+1, got[i][d], want[k])
			}
		}
	}
}

// Each axis cut into n equal chances holds one of the first n = 2^k points in
// each piece (the defining property of a (0, m, 1)-net in base 2).
func TestEveryAxisIsFilledEvenly(t *testing.T) {
	for _, n := range []int{256, 1024} {
		z := draws.Points(n, 101)
		for d := range 101 {
			held := make([]int, n)
			for i := range z {
				u := 0.5 * math.Erfc(-z[i][d]/math.Sqrt2)
				held[min(n-1, int(u*float64(n)))]++
			}
			// What is clipped is put into one piece, so the ends are left out.
			for piece := n / 100; piece < n-n/100; piece++ {
				if held[piece] != 1 {
					t.Fatalf("%d points, unknown %d: piece %d holds %d points", n, d, piece, held[piece])
				}
			}
		}
	}
}

func TestNoUnknownLeavesTheClip(t *testing.T) {
	most := 0.0
	for _, row := range draws.Points(4096, 60) {
		for _, z := range row {
			most = max(most, math.Abs(z))
		}
	}
	if most != draws.Clip {
		t.Errorf("the farthest z of 4096 points is %v, want exactly the clip %v", most, draws.Clip)
	}
}

// Independent numbers have a root mean square correlation of 1/sqrt(n); the
// largest of the 1,770 pairs of 60 unknowns is about 3.5 times that, 4 times in
// one trial of ten.
func TestNoTwoUnknownsGoTogether(t *testing.T) {
	const n, dims = 1024, 60
	z := draws.Points(n, dims)
	columns := make([][]float64, dims)
	for d := range columns {
		for i := range z {
			columns[d] = append(columns[d], z[i][d])
		}
	}
	var worst, squares, pairs float64
	for a := range dims {
		for b := range a {
			r := stat.Correlation(columns[a], columns[b], nil) * math.Sqrt(n)
			worst = max(worst, math.Abs(r))
			squares += r * r
			pairs++
		}
	}
	t.Logf("correlations times sqrt(n): largest %.2f, root mean square %.2f", worst, math.Sqrt(squares/pairs))
	if worst > 4 {
		t.Errorf("largest correlation %.2f/sqrt(n), want at most 4/sqrt(n)", worst)
	}
	if rms := math.Sqrt(squares / pairs); rms > 0.5 {
		t.Errorf("root mean square correlation %.2f/sqrt(n), want half of that of independent numbers", rms)
	}
}

// crooked functions of the unknowns, each with its 10, 50 and 90 % points.
type testFunction struct {
	name          string
	of            func(z []float64) float64
	p10, p50, p90 float64
}

// testFunctions are normal or log-normal, so that their points are known:
// quantiles of the standard normal law at 10 and 90 % are -+1.2815516.
func testFunctions(dims int) []testFunction {
	const q = 1.2815516
	weighted := func(name string, weight func(i int) float64) testFunction {
		var squares float64
		for i := range dims {
			squares += weight(i) * weight(i)
		}
		return testFunction{name, func(z []float64) float64 {
			var s float64
			for i, v := range z {
				s += weight(i) * v
			}
			return s / math.Sqrt(squares)
		}, -q, 0, q}
	}
	product := weighted("", func(i int) float64 { return math.Pow(0.9, float64(i)) })
	return []testFunction{
		weighted("sum", func(int) float64 { return 1 }),
		weighted("sum led by the first", func(i int) float64 { return math.Pow(0.8, float64(i)) }),
		weighted("sum led by the last", func(i int) float64 { return math.Pow(0.8, float64(dims-i)) }),
		{
			"product", func(z []float64) float64 { return math.Exp(0.5 * product.of(z)) },
			math.Exp(-0.5 * q), 1, math.Exp(0.5 * q),
		},
	}
}

// The error of a range that 1,024 draws give, as the docs of the caller state
// it: 4 % of the range's width at worst, 3 % for most.
func TestQuantilesOfSumsAndProductsComeOutAtOneThousandPoints(t *testing.T) {
	for _, dims := range []int{5, 20, 40, 60} {
		z := draws.Points(1024, dims)
		for _, f := range testFunctions(dims) {
			values := make([]float64, len(z))
			for i := range z {
				values[i] = f.of(z[i])
			}
			got := draws.SpreadOf(values, nil)
			for _, e := range []float64{got.P10 - f.p10, got.P50 - f.p50, got.P90 - f.p90} {
				if e /= f.p90 - f.p10; math.Abs(e) > 0.04 {
					t.Errorf("%d unknowns, %s: %+.3f of the width off", dims, f.name, e)
				}
			}
		}
	}
}

func TestPointsBeatRandomNumbersByAThird(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 3))
	var ours, theirs float64
	for _, dims := range []int{5, 20, 40, 60} {
		for _, n := range []int{256, 512, 1024} {
			z := draws.Points(n, dims)
			for _, f := range testFunctions(dims) {
				ours += squaredError(f, z) * float64(n)
				for range 10 {
					for i := range z {
						for d := range z[i] {
							z[i][d] = random.NormFloat64()
						}
					}
					theirs += squaredError(f, z) * float64(n) / 10
				}
				z = draws.Points(n, dims)
			}
		}
	}
	if ratio := math.Sqrt(ours / theirs); ratio > 0.67 {
		t.Errorf("root mean square error of the 10, 50, 90 %% points is %.2f of that of random numbers", ratio)
	} else {
		t.Logf("root mean square error %.2f of that of random numbers", ratio)
	}
}

func squaredError(f testFunction, z [][]float64) float64 {
	values := make([]float64, len(z))
	for i := range z {
		values[i] = f.of(z[i])
	}
	got, width := draws.SpreadOf(values, nil), f.p90-f.p10
	a, b, c := (got.P10-f.p10)/width, (got.P50-f.p50)/width, (got.P90-f.p90)/width
	return a*a + b*b + c*c
}

func BenchmarkPoints(b *testing.B) {
	for b.Loop() {
		draws.Points(1024, 40)
	}
}
