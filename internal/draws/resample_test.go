package draws_test

import (
	"math"
	"slices"
	"testing"

	"example.org/packcheck/internal/draws"
)

func TestResamplePicksByWeight(t *testing.T) {
	for _, c := range []struct {
		weight []float64
		n      int
		want   []int
	}{
		{[]float64{0.5, 0.25, 0.25}, 4, []int{0, 0, 1, 2}},
		{[]float64{2, 0, 1, 1}, 4, []int{0, 0, 2, 3}},
		{[]float64{1, 1, 1, 1}, 2, []int{0, 1}},
		{[]float64{1, 0, 1}, 3, []int{0, 0, 2}},
		{[]float64{0, 1, 0}, 3, []int{1, 1, 1}},
		{[]float64{0, 0}, 3, nil},
		{[]float64{math.NaN(), 1}, 2, []int{1, 1}},
		{[]float64{1}, 0, nil},
		{nil, 3, nil},
	} {
		if got := draws.Resample(c.weight, c.n); !slices.Equal(got, c.want) {
			t.Errorf("%v, %d: %v, want %v", c.weight, c.n, got, c.want)
		}
	}
}

func TestEveryDrawIsPickedWithinOneOfItsShare(t *testing.T) {
	weight := make([]float64, 300)
	var total float64
	for i, z := range draws.Points(len(weight), 1) {
		weight[i] = math.Exp(2 * z[0])
		total += weight[i]
	}
	for _, n := range []int{1, 64, 256, 5000} {
		count := make([]int, len(weight))
		for _, i := range draws.Resample(weight, n) {
			count[i]++
		}
		for i, w := range weight {
			if share := float64(n) * w / total; math.Abs(float64(count[i])-share) >= 1 {
				t.Errorf("%d picks: draw %d is picked %d times, its share is %.2f", n, i, count[i], share)
			}
		}
	}
}

// Every 16th Sobol point lies in one corner; the picked ones must not.
func TestPickedDrawsAreSpreadAsAllAre(t *testing.T) {
	const dims = 40
	z := draws.Points(1024, dims)
	for name, weight := range map[string][]float64{
		"equal":    figureOf(z, func([]float64) float64 { return 1 }),
		"unequal":  figureOf(z, func(z []float64) float64 { return 1 + 1e-6*z[dims-1] }),
		"halfgone": figureOf(z, func(z []float64) float64 { return math.Exp(z[dims-1]) }),
	} {
		for _, n := range []int{64, 256} {
			picked := draws.Resample(weight, n)
			var worst, squares float64
			for d := range dims - 1 {
				var mean float64
				for _, i := range picked {
					mean += z[i][d] / float64(n)
				}
				worst = max(worst, math.Abs(mean)*math.Sqrt(float64(n)))
				squares += mean * mean * float64(n) / (dims - 1)
			}
			// means of independent picks: 1 and, of 39, about 3 at worst
			if worst > 3.5 || squares > 2 {
				t.Errorf("%s, %d picks: means up to %.1f/sqrt(n), mean square %.1f/n", name, n, worst, squares)
			}
		}
	}
}
