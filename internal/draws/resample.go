package draws

import (
	"math"
	"math/rand/v2"
	"slices"
)

// Resample returns n positions of draws in rising order, each draw as often as
// its weight asks for: within one of n times its share. It always returns the
// same ones. Where all weights are equal, the first draws are taken: of [Points]
// those are themselves evenly spread.
//
// Weights that are not above 0 count as 0. Without any other, or with n below
// 1, there are none.
func Resample(weight []float64, n int) []int {
	var live []int
	var total float64
	equal := true
	for i := range weight {
		if w := weightAt(weight, i); w > 0 {
			live = append(live, i)
			total += w
			equal = equal && w == weight[live[0]]
		}
	}
	if len(live) == 0 || n < 1 || math.IsInf(total, 1) {
		return nil
	}
	picked := make([]int, n)
	if equal {
		for k := range picked {
			picked[k] = live[k%len(live)]
		}
		slices.Sort(picked)
		return picked
	}
	// In their own order every 16th point, say, would lie in the same corner.
	random := rand.New(rand.NewPCG(seedPicks, 0))
	random.Shuffle(len(live), func(a, b int) { live[a], live[b] = live[b], live[a] })
	at, upTo := 0, weight[live[0]]
	for k := range picked {
		want := (float64(k) + 0.5) / float64(n) * total
		for upTo < want && at < len(live)-1 {
			at++
			upTo += weight[live[at]]
		}
		picked[k] = live[at]
	}
	slices.Sort(picked)
	return picked
}
