package reckon

import (
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
)

// advice is the setting of a cutoff that does for nine draws of ten: what suits
// the one in the middle would leave the weakest cell harmed in half of them. Nil
// where fewer than half of the draws have any. One that closes again must stay
// below the full pack's volts.
func (j *judgedTable) advice(fullV float64) *answer.AdvisedCutoff {
	opens, delay, closes := none3(len(j.advised))
	have, latch, all := 0.0, 0.0, 0.0
	for i, a := range j.advised {
		all += j.weight[i]
		if a == nil {
			continue
		}
		have += j.weight[i]
		opens[i], delay[i] = a.OpensAtV, a.DelayS
		if a.MustLatch {
			latch += j.weight[i]
		} else {
			closes[i] = a.ClosesAtV
		}
	}
	if have < likelyShare {
		return nil
	}
	out := &answer.AdvisedCutoff{OpensAtV: j.most(opens, tenths), DelayS: j.most(delay, halves)}
	for i := range closes { // what opens earlier recovers higher
		closes[i] += out.OpensAtV - opens[i]
	}
	out.ClosesAtV = j.most(closes, tenths)
	// What no setting protects in a tenth of the draws must not come back by itself.
	if out.MustLatch = latch+all-have >= possibleShare*all || out.ClosesAtV >= fullV; out.MustLatch {
		out.ClosesAtV = 0
	}
	return out
}

// How an advised setting is rounded up: parts of a volt and of a second.
const tenths, halves = 10, 2

// most is what is enough in nine draws of ten, rounded up to whole parts.
func (j *judgedTable) most(values []float64, parts float64) float64 {
	return math.Ceil(draws.Quantile(values, j.weight, highP)*parts-1e-9) / parts
}

// none3 returns three columns of figures that no draw has yet.
func none3(n int) (a, b, c []float64) {
	all := rows(3, n)
	for _, row := range all {
		for i := range row {
			row[i] = math.NaN()
		}
	}
	return all[0], all[1], all[2]
}
