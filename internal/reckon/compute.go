package reckon

import (
	"math"
	"sync"
	"sync/atomic"

	"example.org/packcheck/answer"
)

// table is what the draws came to: one column a draw.
type table struct {
	weight []float64
	values [][]float64 // by metric and draw; NaN where the draw has no such figure
	ends   []ending    // how the ride ends, a wanted time counted
	lasts  []ending    // and without it
	stuck  float64
	crawls float64 // share that barely moves
	burnt  float64

	judged judgedTable
	runs   int
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
	advised  []*answer.AdvisedCutoff
	err      float64 // standard error of a share of a half
}

// compute evaluates every draw and judges some of them.
func (e *engine) compute(d *drawn, o Options) (*table, error) {
	n := len(d.z)
	t := &table{weight: d.weight, values: rows(len(metrics), n), ends: make([]ending, n), lasts: make([]ending, n)}
	j := &t.judged
	j.pick(d)
	k := len(j.at)
	j.values, j.findings = rows(len(metrics), k), make([][]answer.Finding, k)
	j.foretold = rows(len(e.candidates), k)
	j.opens, j.match, j.week, j.advised = make([]string, k), make([]string, k), make([]string, k), make([]*answer.AdvisedCutoff, k)
	place := map[int]int{}
	for i, at := range j.at {
		place[at] = i
	}
	stuck, burnt, crawls := make([]bool, n), make([]bool, n), make([]bool, n)
	err := each(n, o.Workers, func(i int) error {
		at, judged := place[i]
		v, err := e.vehicleOf(d.z[i], d.original(i), d.conflict, judged)
		if err != nil {
			return err
		}
		for m := range metrics {
			if metrics[m].judged && !judged {
				continue
			}
			value := metrics[m].of(v)
			if judged {
				j.values[m][at] = value
			}
			if !metrics[m].judged {
				t.values[m][i] = value
			}
		}
		t.ends[i], t.lasts[i] = endingOf(&v.Seen.Outing), endingOf(&v.Seen.Lasts)
		stuck[i], burnt[i], crawls[i] = v.Seen.Stuck(), v.Seen.Burnt(), v.Seen.Crawls()
		if judged {
			j.findings[at] = v.Judged.Findings
			for c := range e.candidates {
				j.foretold[c][at] = e.candidates[c].foretell(e, e.slots[c], v, d.z[i])
			}
			j.opens[at], j.match[at], j.week[at] = v.Judged.Cutoff.First, v.Judged.Charging.Match, v.Judged.Cutoff.Week
			j.advised[at] = v.Judged.Cutoff.Advised
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	for i, w := range d.weight {
		if stuck[i] {
			t.stuck += w
		}
		if burnt[i] {
			t.burnt += w
		}
		if crawls[i] {
			t.crawls += w
		}
	}
	t.withoutCrawling(crawls)
	t.runs = d.runs + n
	return t, nil
}

// withoutCrawling takes minutes and distance of the draws that barely move out of the
// ranges, where most do ride: nobody rides so to the end, and how many they
// are is told.
func (t *table) withoutCrawling(crawls []bool) {
	if t.crawls+t.stuck >= 0.5 {
		return
	}
	for m := range metrics {
		if !metrics[m].lasting {
			continue
		}
		for i, yes := range crawls {
			if yes {
				t.values[m][i] = none
			}
		}
	}
}

// pick chooses the draws that are judged.
func (j *judgedTable) pick(d *drawn) {
	j.at, j.weight = d.some(mostJudged)
	if !d.weighed {
		j.err = 0.5 / math.Sqrt(float64(len(j.at)))
		return
	}
	squares := 0.0
	for _, w := range j.weight {
		squares += w * w
	}
	j.err = 0.5 * math.Sqrt(max(squares, 1/d.effective))
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
// lowest number that has one, so that the answer does not depend on them.
func each(n, workers int, f func(int) error) error {
	errs := make([]error, n)
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(workers, n) {
		wait.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				errs[i] = f(i)
			}
		})
	}
	wait.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
