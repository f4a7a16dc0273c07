package draws

import (
	"fmt"
	"math"
	"math/rand/v2"
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
	// Readable is the share of the draws in which it can be read at all; where that is
	// none, nothing changes.
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

// Prospects is what readings that were not taken yet might change: figures of the
// draws, and a verdict on each. It is for one goroutine.
type Prospects struct {
	before weights    // weights without any reading
	order  [][]placed // each figure's draws by rising value
	of     [][]int    // the draws with each verdict
	truths []int      // draws that are taken for the truth in turn
	errors []float64  // ... and by how many standard errors each is then misread
	now    int        // the commonest verdict ...
	right  float64    // ... and its share
	width  []float64  // of each figure
	after  weights    // weights after a reading
	spare  weights    // ... and with another error, while one is sought
	wider  int        // see [Prospects.weigh]
}

// weights are a weight for each draw, and what they come to.
type weights struct {
	weight []float64
	sum    float64
}

// NewProspects sorts what hangs on n draws. figures holds rows of one value for
// each draw, NaN where it has none, in the scale in which their widths count
// (logarithms for widths as ratios). verdict has a class for each draw, 0 and up;
// nil for none. weight is as in [Posterior]; nil means equal weights. It fails
// when the lists differ in length, and on a verdict below 0.
func NewProspects(n int, figures [][]float64, verdict []int, weight []float64) (*Prospects, error) {
	switch {
	case weight != nil && len(weight) != n:
		return nil, fmt.Errorf("%d weights for %d draws", len(weight), n)
	case verdict != nil && len(verdict) != n:
		return nil, fmt.Errorf("%d verdicts for %d draws", len(verdict), n)
	}
	for f, values := range figures {
		if len(values) != n {
			return nil, fmt.Errorf("figure %d has %d values for %d draws", f, len(values), n)
		}
	}
	x := &Prospects{before: newWeights(n), after: newWeights(n), spare: newWeights(n)}
	for i, v := range verdict {
		if v < 0 {
			return nil, fmt.Errorf("draw %d has the verdict %d: want 0 or more", i, v)
		}
		for len(x.of) <= v {
			x.of = append(x.of, nil)
		}
		x.of[v] = append(x.of[v], i)
	}
	for i := range x.before.weight {
		x.before.weight[i] = weightAt(weight, i)
		x.before.sum += x.before.weight[i]
	}
	for f, values := range figures {
		var in Sorter
		in.take(values, weight)
		x.order = append(x.order, in.place)
		x.width = append(x.width, x.widthOf(f, &x.before))
	}
	x.now, x.right = x.commonest(&x.before)
	x.truths = Resample(x.before.weight, trials)
	// The errors are evenly spread over their law, in an order that has nothing to do
	// with that of the draws.
	for _, at := range rand.New(rand.NewPCG(seedErrors, 0)).Perm(trials) {
		x.errors = append(x.errors, studentQuantile((float64(at)+0.5)/trials))
	}
	return x, nil
}

func newWeights(n int) weights { return weights{weight: make([]float64, n)} }

// Expect returns what a reading would probably change. In turn some draws are
// taken for the truth and read with an error; each time the others are weighed
// by how well they foretell that reading.
//
// foretold has the reading that each draw would give, in the scale in which
// err is its standard error (see [Reading]); NaN where it cannot be read, and
// that it cannot be read also tells something. It fails when there are not as many
// of them as draws, on an infinite reading, and on an err that is not a finite
// number above 0.
func (x *Prospects) Expect(foretold []float64, err float64) (Gain, error) {
	switch {
	case !(err > 0) || math.IsInf(err, 0):
		return Gain{}, fmt.Errorf("the reading has a standard error of %v: want a finite number above 0", err)
	case len(foretold) != len(x.before.weight):
		return Gain{}, fmt.Errorf("%d readings foretold for %d draws", len(foretold), len(x.before.weight))
	}
	for i, v := range foretold {
		if math.IsInf(v, 0) {
			return Gain{}, fmt.Errorf("draw %d foretells %v: want a finite number, or NaN where nothing can be read", i, v)
		}
	}
	return x.gain(foretold, err), nil
}

// gain takes draws for the truth in turn.
func (x *Prospects) gain(foretold []float64, err float64) Gain {
	g := Gain{Width: make([]float64, len(x.order)), WrongNow: 1 - x.right}
	readable := 0.0
	for i, w := range x.before.weight {
		if !math.IsNaN(foretold[i]) {
			readable += w
		}
	}
	if x.before.sum > 0 {
		g.Readable = min(1, readable/x.before.sum)
	}
	if readable == 0 { // nobody can take it: nothing changes
		g.WrongThen = g.WrongNow
		for f := range g.Width {
			g.Width[f] = 1
		}
		return g
	}
	counted := make([]float64, len(x.order))
	x.wider = 0
	for k, truth := range x.truths {
		x.weigh(foretold, truth, err, x.errors[k])
		for f := range x.order {
			if w := x.widthOf(f, &x.after); !math.IsNaN(w) {
				g.Width[f] += w
				counted[f]++
			}
		}
		then, right := x.commonest(&x.after)
		g.WrongThen += (1 - right) / float64(len(x.truths))
		if then != x.now {
			g.Turns += 1 / float64(len(x.truths))
		}
	}
	for f := range g.Width {
		g.Width[f] /= counted[f] * x.width[f]
		if math.IsInf(g.Width[f], 0) {
			g.Width[f] = math.NaN()
		}
	}
	return g
}

// How the error of a reading is taken as larger: by such steps, and so many at the most.
const widen, mostWider = 1.5, 35

// weigh sets the weights after a reading of the truth that is off by so many standard
// errors. The truth itself is left out: it would always agree with itself. By how many
// steps the error has to be larger is much the same from one truth to the next: the
// search begins there.
func (x *Prospects) weigh(foretold []float64, truth int, err, off float64) {
	if math.IsNaN(foretold[truth]) {
		x.after.sum = 0
		for i, w := range x.before.weight {
			if !math.IsNaN(foretold[i]) {
				w = 0
			}
			x.after.weight[i] = w
			x.after.sum += w
		}
		return
	}
	read := foretold[truth] + err*off
	enough := x.kernel(&x.after, foretold, truth, read, err)
	for enough && x.wider > 0 {
		x.wider--
		if !x.kernel(&x.spare, foretold, truth, read, err) {
			x.wider++
			return
		}
		x.after, x.spare = x.spare, x.after
	}
	for !enough && x.wider < mostWider {
		x.wider++
		enough = x.kernel(&x.after, foretold, truth, read, err)
	}
}

// kernel sets the weights after a reading with the present error, and reports whether
// enough draws are left.
func (x *Prospects) kernel(to *weights, foretold []float64, truth int, read, err float64) bool {
	wide := err
	for range x.wider {
		wide *= widen
	}
	steep := 1 / wide // a product for each draw, which takes a third less time than a quotient
	var sum, squares float64
	for i, w := range x.before.weight {
		d := (foretold[i] - read) * steep
		if math.IsNaN(d) || i == truth {
			w = 0
		} else {
			s := 1 + d*d/defaultFreedom
			w /= s * s * math.Sqrt(s) // power (4 + 1) / 2
		}
		to.weight[i] = w
		sum += w
		squares += w * w
	}
	to.sum = sum
	return sum*sum >= leastKernel*squares
}

// commonest returns the verdict with the most weight and its share; 1 where
// there are no verdicts.
func (x *Prospects) commonest(w *weights) (kind int, share float64) {
	if len(x.of) == 0 {
		return 0, 1
	}
	most := 0.0
	for v, of := range x.of {
		sum := 0.0
		for _, i := range of {
			sum += w.weight[i]
		}
		if sum > most {
			kind, most = v, sum
		}
	}
	if w.sum == 0 {
		return kind, 1
	}
	return kind, min(1, most/w.sum)
}

// widthOf a figure is that of its 10 to 90 % range, NaN where there is none that is finite.
func (x *Prospects) widthOf(figure int, w *weights) float64 {
	order, total := x.order[figure], w.sum
	if len(order) < len(w.weight) { // some draws do not have it
		total = 0
		for _, p := range order {
			total += w.weight[p.at]
		}
	}
	if total == 0 {
		return math.NaN()
	}
	if d := endOf(order, w.weight, 0.1*total, true) - endOf(order, w.weight, 0.1*total, false); !math.IsInf(d, 0) {
		return d
	}
	return math.NaN()
}

// endOf returns the value beyond which that much weight lies, of all from the least on or
// from the greatest down, see [Quantile]. Only those beyond it are looked at.
func endOf(order []placed, weight []float64, want float64, greatest bool) float64 {
	last, below, beyond := -1, 0.0, 0.0 // the draw before, the weight up to its middle, and with all of it
	for n := range order {
		k := n
		if greatest {
			k = len(order) - 1 - n
		}
		w := weight[order[k].at]
		if w == 0 {
			continue
		}
		middle := beyond + w/2
		if middle < want {
			last, below, beyond = k, middle, beyond+w
			continue
		}
		share := (want - below) / (middle - below)
		switch {
		case last < 0:
			return order[k].value
		case greatest:
			return between(order[k].value, order[last].value, 1-share)
		}
		return between(order[last].value, order[k].value, share)
	}
	return order[last].value
}
