package reckon

import (
	"math"
	"sync"
	"sync/atomic"

	"example.org/packcheck/answer"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/internal/ride"
)

// table is what the draws came to: one column a draw.
type table struct {
	weight []float64
	values [][]float64 // by metric and draw; NaN where the draw has no such figure
	ends   []ending    // how the ride ends, a wanted time counted
	lasts  []ending    // and without it
	fates  []fate
	were   []fate // the same of the original

	judged judgedTable
	runs   int
}

// fate is what keeps a draw from a ride to the end. That it does not get going, and that it
// barely moves, are findings as well, which mean the same.
type fate struct{ stuck, crawls, burnt, cutShort bool }

func fateOf(s *ride.Seen) fate {
	stuck := s.Stuck() || s.SpinsOn()
	return fate{stuck, !stuck && s.Crawls(), s.Burnt(), s.CutShort()}
}

// judgedTable is the draws of which everything was judged. Draws with readings
// are picked by their weights, so that a draw may count several times.
type judgedTable struct {
	at       []int     // place in the drawn
	weight   []float64 // sum 1
	values   [][]float64
	findings [][]answer.Finding
	foretold [][]float64 // by candidate and draw, see [candidate]
	opens    []string
	match    []string
	week     []string
	advised  []*cutoff.Advice
	fuses    []fused
	err      float64 // standard error of a share of a half

	fates []fate
	over  map[answer.Fate]float64 // by how much more of all draws have a fate than of these
}

// compute evaluates every draw and judges some of them.
func (e *engine) compute(d *drawn, o Options) (*table, error) {
	j := pick(d)
	place := map[int]int{}
	for i, at := range j.at {
		place[at] = i
	}
	t := newTable(e, d.weight, j)
	err := o.each(len(d.z), func(i int) error {
		at, judged := place[i]
		if !judged {
			return t.evaluate(e, d, i, column{i, -1, computed})
		}
		return t.evaluate(e, d, i, column{i, at, complete})
	})
	t.finish(d, len(d.z))
	t.judged.sayWhyNone()
	return t, err
}

// computeJudged evaluates only the draws that are judged: they then stand for all.
func (e *engine) computeJudged(d *drawn, o Options, deep depth) (*table, error) {
	j := pick(d)
	t := newTable(e, j.weight, j)
	err := o.each(len(j.at), func(k int) error { return t.evaluate(e, d, j.at[k], column{k, k, deep}) })
	t.finish(d, len(j.at))
	return t, err
}

// newTable makes an empty table of so many draws as there are weights.
func newTable(e *engine, weight []float64, j judgedTable) *table {
	n, k := len(weight), len(j.at)
	t := &table{
		weight: weight, values: rows(len(metrics.Get()), n), ends: make([]ending, n), lasts: make([]ending, n),
		fates: make([]fate, n), were: make([]fate, n), judged: j,
	}
	to := &t.judged
	to.values, to.findings = rows(len(metrics.Get()), k), make([][]answer.Finding, k)
	to.foretold = rows(len(e.candidates), k)
	to.opens, to.match, to.week, to.advised = make([]string, k), make([]string, k), make([]string, k), make([]*cutoff.Advice, k)
	to.fuses, to.fates = make([]fused, k), make([]fate, k)
	return t
}

// column is where a draw stands in a table: among all, and among what is judged as
// deeply as that.
type column struct {
	all, judged int
	deep        depth
}

// evaluate computes the draw i into a column of the table.
func (t *table) evaluate(e *engine, d *drawn, i int, to column) error {
	judged, at, j := to.deep != computed, to.judged, &t.judged
	v, err := e.vehicleOf(d.z[i], d.original(i), d.conflict, to.deep)
	if err != nil {
		return err
	}
	for m, figure := range metrics.Get() {
		if figure.judged && !judged {
			continue
		}
		value := figure.of(v)
		if judged {
			j.values[m][at] = value
		}
		if !figure.judged {
			t.values[m][to.all] = value
		}
	}
	t.ends[to.all], t.lasts[to.all] = endingOf(&v.Seen.Outing), endingOf(&v.Seen.Lasts)
	t.fates[to.all] = fateOf(&v.Seen)
	if v.Was != nil {
		t.were[to.all] = fateOf(v.Was)
	}
	if judged {
		j.findings[at], j.fates[at] = v.Judged.Findings, t.fates[to.all]
		j.opens[at], j.match[at], j.week[at] = v.Judged.Cutoff.First, v.Judged.Charging.Match, v.Judged.Cutoff.Week
		j.advised[at], j.fuses[at] = v.Judged.Cutoff.Advised, fusedOf(v)
	}
	if to.deep == complete {
		for c := range e.candidates {
			j.foretold[c][at] = e.candidates[c].foretell(e, e.slots[c], v, d.z[i])
		}
	}
	return nil
}

// finish counts what no single draw tells.
func (t *table) finish(d *drawn, runs int) {
	t.withoutCrawling()
	t.runs = d.runs + runs
	over := func(holds func(fate) bool) float64 {
		return shareOf(t.fates, t.weight, holds) - shareOf(t.judged.fates, t.judged.weight, holds)
	}
	t.judged.over = map[answer.Fate]float64{
		answer.FateStuck: over(func(f fate) bool { return f.stuck }), answer.FateCrawls: over(func(f fate) bool { return f.crawls }),
	}
}

// share is the weight of the draws that something holds of.
func (t *table) share(list []fate, holds func(fate) bool) float64 {
	return shareOf(list, t.weight, holds)
}

func shareOf(list []fate, weight []float64, holds func(fate) bool) float64 {
	sum := 0.0
	for i, f := range list {
		if holds(f) {
			sum += weight[i]
		}
	}
	return sum
}

// tell puts the shares of the fates into an answer.
func (t *table) tell(d *answer.DrawFigures) {
	d.Stuck = t.share(t.fates, func(f fate) bool { return f.stuck })
	d.Crawls = t.share(t.fates, func(f fate) bool { return f.crawls })
	d.Burnt = t.share(t.fates, func(f fate) bool { return f.burnt })
	d.CutShort = t.share(t.fates, func(f fate) bool { return f.cutShort })
}

// withoutCrawling takes minutes and distance of the draws that barely move out of the
// ranges, where most do ride: nobody rides so to the end, and how many they
// are is told. The original's minutes are counted likewise.
func (t *table) withoutCrawling() {
	leave := func(list []fate, lasts func(*metric) bool) {
		if t.share(list, func(f fate) bool { return f.crawls || f.stuck }) >= 0.5 {
			return
		}
		for m := range metrics.Get() {
			if !lasts(&metrics.Get()[m]) {
				continue
			}
			for i, f := range list {
				if f.crawls {
					t.values[m][i] = math.NaN()
				}
			}
		}
	}
	leave(t.fates, func(m *metric) bool { return m.lasting })
	leave(t.were, func(m *metric) bool { return m.lasted })
}

// pick chooses the draws that are judged.
func pick(d *drawn) (j judgedTable) {
	j.at, j.weight = d.some(mostJudged)
	j.err = 0.5 / math.Sqrt(min(effective(j.weight), effective(d.weight)))
	return j
}

func rows(n, columns int) [][]float64 {
	all := make([]float64, n*columns)
	out := make([][]float64, n)
	for i := range out {
		out[i] = all[i*columns : (i+1)*columns]
	}
	return out
}

// each calls f for 0 to n-1 on several goroutines and returns the error of the
// lowest number that has one, so that the answer does not depend on them. Once the
// call is done f is not called any more, and the error says why.
func (o Options) each(n int, f func(int) error) error {
	errs := make([]error, n)
	var next atomic.Int64
	var wait sync.WaitGroup
	work := func() {
		for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
			if errs[i] = o.done(); errs[i] == nil {
				errs[i] = f(i)
			}
		}
	}
	for range min(o.Workers, n) - 1 {
		wait.Go(work)
	}
	work() // the caller is one of the workers
	wait.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
