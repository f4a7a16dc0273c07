package draws

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
)

// Gain is what a reading that was not taken yet would probably change.
type Gain struct {
	// Width holds, for each figure, the mean width of its 10 to 90 % range
	// after the reading over that before: 0 to about 1. NaN where the range
	// has no finite width above 0 now.
	Width []float64
	// WrongNow is the chance that the commonest verdict is not the true one;
	// WrongThen the mean of that chance after the reading.
	WrongNow, WrongThen float64
	// Turns is the chance that another verdict is the commonest afterwards.
	Turns float64
	// Readable is the share of the draws in which it can be read at all.
	Readable float64
}

const (
	// trials is how many draws in turn are taken for the truth, each with
	// another error. Common practice, no published source.
	trials = 64
	// leastKernel is the effective number of draws on which the answer after a
	// reading rests: where a precise reading leaves fewer, its error is taken
	// as larger, so that its gain is rather told too small. Common practice,
	// no published source.
	leastKernel = 25
)

// Expect returns what a reading would probably change. In turn some draws are
// taken for the truth and read with an error; each time the others are weighed
// by how well they foretell that reading.
//
// foretold has the reading that each draw would give, in the scale in which
// err is its standard error (see [Reading]); NaN where it cannot be read, and
// that it cannot be read also tells something. figures holds rows of one value
// for each draw, NaN where it has none, in the scale in which their widths
// count (logarithms for widths as ratios). verdict has a class for each draw,
// 0 and up; nil for none. weight is as in [Posterior]; nil means equal weights.
// It fails when the lists differ in length, on an infinite reading, and on an
// err that is not a finite number above 0.
func Expect(foretold []float64, err float64, figures [][]float64, verdict []int, weight []float64) (Gain, error) {
	n := len(foretold)
	switch {
	case !(err > 0) || math.IsInf(err, 0):
		return Gain{}, fmt.Errorf("the reading has a standard error of %v: want a finite number above 0", err)
	case weight != nil && len(weight) != n:
		return Gain{}, fmt.Errorf("%d weights for %d draws", len(weight), n)
	case verdict != nil && len(verdict) != n:
		return Gain{}, fmt.Errorf("%d verdicts for %d draws", len(verdict), n)
	}
	for f, values := range figures {
		if len(values) != n {
			return Gain{}, fmt.Errorf("figure %d has %d values for %d draws", f, len(values), n)
		}
	}
	for i, v := range foretold {
		if math.IsInf(v, 0) {
			return Gain{}, fmt.Errorf("draw %d foretells %v: want a finite number, or NaN where nothing can be read", i, v)
		}
	}
	for i, v := range verdict {
		if v < 0 {
			return Gain{}, fmt.Errorf("draw %d has the verdict %d: want 0 or more", i, v)
		}
	}
	return newExpectation(foretold, err, figures, verdict, weight).gain(), nil
}

// expectation is one reading that might be taken, and what it would touch.
type expectation struct {
	foretold []float64
	err      float64
	weight   []float64
	figures  [][]float64
	order    [][]int // each figure's draws by rising value
	verdict  []int
	after    []float64 // weights after a reading
	tally    []float64 // weight of each verdict
}

func newExpectation(foretold []float64, err float64, figures [][]float64, verdict []int, weight []float64) *expectation {
	n := len(foretold)
	x := &expectation{
		foretold: foretold, err: err, figures: figures, verdict: verdict,
		weight: make([]float64, n), after: make([]float64, n),
	}
	for i := range x.weight {
		x.weight[i] = weightAt(weight, i)
	}
	kinds := 0
	for _, v := range verdict {
		kinds = max(kinds, v+1)
	}
	x.tally = make([]float64, kinds)
	for _, values := range figures {
		order := make([]int, 0, n)
		for i, v := range values {
			if x.weight[i] > 0 && !math.IsNaN(v) {
				order = append(order, i)
			}
		}
		slices.SortFunc(order, func(a, b int) int {
			return cmp.Or(cmp.Compare(values[a], values[b]), cmp.Compare(a, b))
		})
		x.order = append(x.order, order)
	}
	return x
}

// gain takes draws for the truth in turn.
func (x *expectation) gain() Gain {
	g := Gain{Width: make([]float64, len(x.figures))}
	var total, readable float64
	for i, w := range x.weight {
		total += w
		if !math.IsNaN(x.foretold[i]) {
			readable += w
		}
	}
	if total > 0 {
		g.Readable = min(1, readable/total)
	}
	now, right := x.commonest(x.weight)
	g.WrongNow = 1 - right
	truths := Resample(x.weight, trials)
	counted := make([]float64, len(x.figures))
	errors := x.errors()
	for k, truth := range truths {
		x.weigh(truth, errors[k])
		for f := range x.figures {
			if w := x.width(f, x.after); !math.IsNaN(w) {
				g.Width[f] += w
				counted[f]++
			}
		}
		then, right := x.commonest(x.after)
		g.WrongThen += (1 - right) / float64(len(truths))
		if then != now {
			g.Turns += 1 / float64(len(truths))
		}
	}
	for f := range g.Width {
		g.Width[f] /= counted[f] * x.width(f, x.weight)
		if math.IsInf(g.Width[f], 0) {
			g.Width[f] = math.NaN()
		}
	}
	return g
}

// errors are evenly spread over the law of a reading's error, in an order that
// has nothing to do with that of the draws.
func (x *expectation) errors() [trials]float64 {
	var e [trials]float64
	for k, at := range rand.New(rand.NewPCG(seedErrors, 0)).Perm(trials) {
		e[k] = x.err * studentQuantile((float64(at)+0.5)/trials)
	}
	return e
}

// weigh sets the weights after a reading of the truth. The truth itself is left
// out: it would always agree with itself.
func (x *expectation) weigh(truth int, err float64) {
	if math.IsNaN(x.foretold[truth]) {
		for i, w := range x.weight {
			if !math.IsNaN(x.foretold[i]) {
				w = 0
			}
			x.after[i] = w
		}
		return
	}
	read := x.foretold[truth] + err
	for wide := x.err; ; wide *= 1.5 {
		var sum, squares float64
		for i, w := range x.weight {
			d := (x.foretold[i] - read) / wide
			if math.IsNaN(d) || i == truth {
				w = 0
			} else {
				s := 1 + d*d/defaultFreedom
				w /= s * s * math.Sqrt(s) // power (4 + 1) / 2
			}
			x.after[i] = w
			sum += w
			squares += w * w
		}
		if sum*sum >= leastKernel*squares || wide > 1e6*x.err {
			return
		}
	}
}

// commonest returns the verdict with the most weight and its share; 1 where
// there are no verdicts.
func (x *expectation) commonest(weight []float64) (kind int, share float64) {
	if len(x.tally) == 0 {
		return 0, 1
	}
	clear(x.tally)
	var total float64
	for i, v := range x.verdict {
		x.tally[v] += weight[i]
		total += weight[i]
	}
	for v, w := range x.tally {
		if w > x.tally[kind] {
			kind = v
		}
	}
	if total == 0 {
		return kind, 1
	}
	return kind, min(1, x.tally[kind]/total)
}

// width of a figure's 10 to 90 % range, NaN where there is none that is finite.
func (x *expectation) width(figure int, weight []float64) float64 {
	values, order := x.figures[figure], x.order[figure]
	var total float64
	for _, i := range order {
		total += weight[i]
	}
	if total == 0 {
		return math.NaN()
	}
	w := walk{values: values, order: order, weight: weight}
	low := w.to(0.1 * total)
	w = walk{values: values, order: order, weight: weight}
	high := w.to(0.9 * total)
	if d := high - low; !math.IsInf(d, 0) {
		return d
	}
	return math.NaN()
}

// walk goes through sorted draws; see [Quantile].
type walk struct {
	values []float64
	order  []int
	weight []float64
}

// to returns the value below which that much weight lies.
func (w walk) to(want float64) float64 {
	last, lastMiddle, upTo := -1, 0.0, 0.0
	for _, i := range w.order {
		if w.weight[i] == 0 {
			continue
		}
		middle := upTo + w.weight[i]/2
		upTo += w.weight[i]
		if middle >= want {
			if last < 0 {
				return w.values[i]
			}
			return between(w.values[last], w.values[i], (want-lastMiddle)/(middle-lastMiddle))
		}
		last, lastMiddle = i, middle
	}
	return w.values[last]
}
