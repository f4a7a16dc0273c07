package draws_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/packcheck/internal/draws"
)

// figureOf computes a figure of every draw.
func figureOf(z [][]float64, f func(z []float64) float64) []float64 {
	values := make([]float64, len(z))
	for i := range z {
		values[i] = f(z[i])
	}
	return values
}

func TestSharesOfASumAreTheSquaresOfItsFactors(t *testing.T) {
	z := draws.Points(1024, 40)
	// 3, 2 and 1 of sqrt(14): shares 9/14, 4/14, 1/14, and nothing of the other 37.
	// The bins' own noise is about 0.005, their coarseness takes 2 % of a share.
	share := draws.Explain(z, nil, figureOf(z, func(z []float64) float64 { return 3*z[4] - 2*z[17] + z[30] }))
	want := map[int]float64{4: 9. / 14, 17: 4. / 14, 30: 1. / 14}
	for d, got := range share {
		if math.Abs(got-want[d]) > 0.03 {
			t.Errorf("unknown %d has a share of %.3f, want %.3f", d, got, want[d])
		}
	}
}

// Nine bins of 256 draws would explain 0.035 by chance alone.
func TestChanceExplainsNothing(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 2))
	z := make([][]float64, 256)
	for i := range z {
		for range 40 {
			z[i] = append(z[i], random.NormFloat64())
		}
	}
	share := draws.Explain(z, nil, figureOf(z, func(z []float64) float64 { return z[39] }))
	var mean float64
	for _, s := range share[:39] {
		mean += s / 39
	}
	if mean > 0.01 || share[39] < 0.95 {
		t.Errorf("unknowns with nothing to do have a mean share of %.3f, the only one that has %.3f", mean, share[39])
	}
}

// What never ends is taken as the outermost value that does.
func TestAFewDrawsThatNeverEndChangeNoShare(t *testing.T) {
	z := draws.Points(1024, 10)
	sum := func(z []float64) float64 { return z[1] + z[2] }
	plain := draws.Explain(z, nil, figureOf(z, sum))
	endless := draws.Explain(z, nil, figureOf(z, func(z []float64) float64 {
		if sum(z) > 2.5 { // 4 % of them
			return math.Inf(1)
		}
		return sum(z)
	}))
	for d := range plain {
		if math.Abs(plain[d]-endless[d]) > 1e-9 {
			t.Errorf("unknown %d: %.3f, %.3f with draws that never end", d, plain[d], endless[d])
		}
	}
}

func TestAChoiceAndABowAreExplainedAsWellAsASlope(t *testing.T) {
	z := draws.Points(1024, 10)
	for name, f := range map[string]func(z []float64) float64{
		"choice": func(z []float64) float64 { return math.Copysign(1, z[3]-0.5) + 0.01*z[4] },
		"bow":    func(z []float64) float64 { return z[3]*z[3] + 0.01*z[4] },
	} {
		share := draws.Explain(z, nil, figureOf(z, f))
		if share[3] < 0.85 || share[4] > 0.05 {
			t.Errorf("%s: shares %.2f of what decides, %.2f of what does not", name, share[3], share[4])
		}
	}
}

func TestWhatIsNotThereExplainsNothing(t *testing.T) {
	z := draws.Points(256, 3)
	for name, values := range map[string][]float64{
		"the same everywhere": figureOf(z, func([]float64) float64 { return 7 }),
		"nowhere":             figureOf(z, func([]float64) float64 { return math.NaN() }),
	} {
		for d, share := range draws.Explain(z, nil, values) {
			if share != 0 {
				t.Errorf("%s: unknown %d has a share of %v", name, d, share)
			}
		}
	}
	if got := draws.Explain(nil, nil, nil); len(got) != 0 {
		t.Errorf("no draws: %v", got)
	}
}

// After a reading of z0 + z1 the two are tied: each goes with little of their
// sum, and the third with the most of what is left.
func TestSharesFollowTheWeights(t *testing.T) {
	model := func(_ int, z, out []float64) bool {
		out[0] = z[0] + z[1]
		return true
	}
	p, err := draws.Condition(3, model, []draws.Reading{{Value: 0, Err: 0.1}}, draws.Options{Enough: 1000, MostRounds: 40})
	if err != nil {
		t.Fatal(err)
	}
	share := draws.Explain(p.Z, p.Weight, figureOf(p.Z, func(z []float64) float64 { return z[0] + z[1] + z[2] }))
	if share[2] < 0.85 || share[0] > 0.1 || share[1] > 0.1 {
		t.Errorf("shares %.2f, want almost all with the third", share)
	}
}

func BenchmarkExplain(b *testing.B) {
	z := draws.Points(1024, 40)
	e := draws.NewExplainer(z, nil)
	values := figureOf(z, func(z []float64) float64 { return z[0] + z[1]*z[2] })
	for b.Loop() {
		e.Explain(values)
	}
}

func TestTheMedianOfAnUnknownIsItsFiftyPercentPoint(t *testing.T) {
	z := draws.Points(301, 3)
	weight := make([]float64, len(z))
	for i := range weight {
		weight[i] = float64(i % 5) // some count for nothing
	}
	for name, w := range map[string][]float64{"equal weights": nil, "some without weight": weight} {
		e := draws.NewExplainer(z, w)
		for d := range z[0] {
			want := draws.Quantile(figureOf(z, func(z []float64) float64 { return z[d] }), w, 0.5)
			if got := e.Median(d); got != want {
				t.Errorf("%s, unknown %d: %v, want %v", name, d, got, want)
			}
		}
	}
}
