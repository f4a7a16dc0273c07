package draws

import (
	"cmp"
	"math"
	"slices"
)

// Spread is where the middle eight of ten draws lie.
type Spread struct {
	P10, P50, P90 float64 // NaN when no draw has the figure
	Present       float64 // share of the weight whose draws have the figure, 0 to 1
}

// SpreadOf returns the 10, 50 and 90 % points of a figure and the share of the
// draws that have it; NaN stands for a draw that has none. See [Quantile].
func SpreadOf(values, weight []float64) Spread { return new(Sorter).SpreadOf(values, weight) }

// SpreadOf is [SpreadOf] in the room of the figure before.
func (s *Sorter) SpreadOf(values, weight []float64) Spread {
	o := s.inOrder(values, weight)
	return Spread{P10: o.at(0.1), P50: o.at(0.5), P90: o.at(0.9), Present: o.present}
}

// Quantile returns the value below which the share p (0 to 1) of the weight
// lies. Each draw stands in the middle of its own weight and the figure runs
// straight from one to the next, so that equal weights give the usual median
// (definition 5 of R. J. Hyndman and Y. Fan, Sample quantiles in statistical
// packages, Am. Stat. 50 (1996) 361-365); outside the outer two it stays at
// them.
//
// Draws whose value is NaN have no such figure and are left out with their
// weight; weights that are not above 0 count as 0. Infinite values are values:
// between one and its neighbour the nearer is taken. Without any draw left, or
// with p NaN, the answer is NaN.
//
// weight nil means equal weights; otherwise it must be as long as values.
func Quantile(values, weight []float64, p float64) float64 {
	return new(Sorter).inOrder(values, weight).at(p)
}

// ordered holds the draws that have a figure by rising value.
type ordered struct {
	place   []placed
	upTo    []float64 // weight up to and with this draw
	total   float64
	present float64
}

// inOrder sorts the draws that have a figure; what it returns holds until the next call.
func (s *Sorter) inOrder(values, weight []float64) ordered {
	s.take(values, weight)
	o := ordered{place: s.place}
	s.upTo = slices.Grow(s.upTo[:0], len(o.place))
	for _, p := range o.place {
		o.total += weightAt(weight, p.at)
		s.upTo = append(s.upTo, o.total)
	}
	o.upTo = s.upTo
	all := 0.0
	for i := range values {
		all += weightAt(weight, i)
	}
	if all > 0 {
		o.present = min(1, o.total/all)
	}
	return o
}

// weightAt is the weight of a draw; what is not a weight counts as none.
func weightAt(weight []float64, i int) float64 {
	if weight == nil {
		return 1
	}
	if w := weight[i]; w > 0 && !math.IsInf(w, 1) {
		return w
	}
	return 0
}

// middle is the weight below the middle of draw k.
func (o ordered) middle(k int) float64 {
	before := 0.0
	if k > 0 {
		before = o.upTo[k-1]
	}
	return (before + o.upTo[k]) / 2
}

func (o ordered) at(p float64) float64 {
	n := len(o.place)
	if n == 0 || math.IsNaN(p) {
		return math.NaN()
	}
	want := p * o.total
	k, _ := slices.BinarySearchFunc(o.upTo, want, func(u, want float64) int { return cmp.Compare(u, want) })
	k = min(k, n-1) // the draw within whose weight the point lies
	if want < o.middle(k) {
		k--
	}
	switch {
	case k < 0:
		return o.place[0].value
	case k == n-1:
		return o.place[n-1].value
	}
	below, above := o.middle(k), o.middle(k+1)
	return between(o.place[k].value, o.place[k+1].value, (want-below)/(above-below))
}

// between goes from a to b >= a; never beyond either, whatever the rounding.
func between(a, b, share float64) float64 {
	if a == b || math.IsInf(a, 0) || math.IsInf(b, 0) {
		if share < 0.5 {
			return a
		}
		return b
	}
	if step := b - a; !math.IsInf(step, 0) {
		return min(b, a+share*step) // rises with share, also in its last bit
	}
	return 2 * min(b/2, a/2+share*(b/2-a/2))
}
