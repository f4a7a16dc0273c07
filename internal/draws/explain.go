package draws

import (
	"math"
)

// Explainer tells with which unknowns a figure of the draws goes, and where the middle
// of each unknown is.
type Explainer struct {
	weight []float64
	bins   int
	bin    [][]uint8 // of each unknown, of each draw
	median []float64 // of each unknown
}

// binsLeast and binsMost bound the bins of an unknown; one for every
// drawsPerBin effective draws between them. Common practice, no published
// source.
const (
	binsLeast   = 4
	binsMost    = 16
	drawsPerBin = 25
)

// NewExplainer sorts the draws into bins of equal weight by each unknown; z
// and weight are as in [Posterior], weight nil means equal weights. It serves
// any number of figures and may be used by several goroutines at once.
func NewExplainer(z [][]float64, weight []float64) *Explainer {
	n := len(z)
	e := &Explainer{weight: make([]float64, n)}
	var total, squares float64
	for i := range z {
		e.weight[i] = weightAt(weight, i)
		total += e.weight[i]
		squares += e.weight[i] * e.weight[i]
	}
	if n == 0 {
		return e
	}
	e.median = make([]float64, len(z[0]))
	if total == 0 {
		return e
	}
	e.bins = max(binsLeast, min(binsMost, int(total*total/squares/drawsPerBin)))
	var in Sorter
	o := ordered{place: make([]placed, 0, n), upTo: make([]float64, 0, n)}
	e.bin = make([][]uint8, len(z[0]))
	for d := range e.bin {
		e.bin[d] = make([]uint8, n)
		in.place = in.place[:0]
		for i := range z {
			in.place = append(in.place, placed{z[i][d], i})
		}
		in.sort()
		upTo := 0.0
		o.place, o.upTo = o.place[:0], o.upTo[:0]
		for _, p := range in.place {
			w := e.weight[p.at]
			middle := upTo + w/2
			upTo += w
			e.bin[d][p.at] = uint8(min(e.bins-1, int(float64(e.bins)*middle/total)))
			if w > 0 {
				o.place, o.upTo = append(o.place, p), append(o.upTo, upTo)
			}
		}
		o.total = upTo
		e.median[d] = o.at(0.5)
	}
	return e
}

// Median returns the 50 % point of an unknown, see [Quantile].
func (e *Explainer) Median(unknown int) float64 { return e.median[unknown] }

// Explain returns, for each unknown, the share of the spread of a figure that
// goes with it: the variance of the conditional mean over the variance
// (first-order effect; A. Saltelli and others, Global Sensitivity Analysis: The
// Primer, Wiley 2008, 1.2.14). Values beyond the 5 and 95 % points count as
// these, so that a long tail does not outweigh what the 10 to 90 % range shows;
// the shares are those in the scale of the values (hand over logarithms where
// ratios count). What chance alone would give is taken off: 0 to 1, and 0 where
// a share is no more than that. Shares do not add up to 1 where unknowns act
// together or readings tie them to each other. Of 256 [Points] of 40 unknowns two
// may happen to go together with a correlation of 0.3 and lend each other a
// tenth of their shares; of 1,024 a hundredth: ask with those.
//
// values has one figure for each draw; NaN means that it has none, and that
// draw is left out. Infinite values count as the outermost finite one.
func (e *Explainer) Explain(values []float64) []float64 {
	share := make([]float64, len(e.bin))
	value, weight := winsorized(values, e.weight)
	var total, squares, mean float64
	for i, w := range weight {
		total += w
		squares += w * w
		mean += w * value[i]
	}
	if total == 0 {
		return share
	}
	mean /= total
	effective := total * total / squares
	var all float64
	for i, w := range weight {
		all += w * (value[i] - mean) * (value[i] - mean)
	}
	if all == 0 {
		return share
	}
	var sum, in [binsMost]float64
	for d, bin := range e.bin {
		clear(sum[:])
		clear(in[:])
		for i, w := range weight {
			sum[bin[i]] += w * (value[i] - mean)
			in[bin[i]] += w
		}
		var between float64
		filled := 0.0
		for b := range e.bins {
			if in[b] > 0 {
				between += sum[b] * sum[b] / in[b]
				filled++
			}
		}
		if effective <= filled {
			continue
		}
		r := between / all
		// epsilon squared: what remains when the bins' own noise is taken off
		share[d] = max(0, min(1, r-(filled-1)/(effective-filled)*(1-r)))
	}
	return share
}

// winsorized returns the values with those beyond the 5 and 95 % points put
// there, and the weights, 0 where a draw has no value.
func winsorized(values, weight []float64) (value, left []float64) {
	value, left = make([]float64, len(values)), make([]float64, len(values))
	least, most := math.Inf(1), math.Inf(-1)
	for i, v := range values {
		if weight[i] > 0 && !math.IsNaN(v) {
			left[i] = weight[i]
			if !math.IsInf(v, 0) {
				least, most = min(least, v), max(most, v)
			}
		}
	}
	if least > most { // nothing finite: 0 and 1 tell the one end from the other
		least, most = 0, 1
	}
	for i, v := range values {
		value[i] = max(least, min(most, v))
	}
	o := new(Sorter).inOrder(value, left)
	low, high := o.at(0.05), o.at(0.95)
	for i, v := range value {
		value[i] = max(low, min(high, v))
		if left[i] == 0 {
			value[i] = 0 // NaN times no weight would still be NaN
		}
	}
	return value, left
}
