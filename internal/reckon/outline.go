package reckon

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/setup"
)

// outline is the part of the answer to some draws that a way out is searched by: it
// is that of the draws that are judged. Where they leave nothing to fix first, which
// may be the end of the search, minutes and speed are those of more.
func (e *engine) outline(d *drawn, o Options, deep depth) (*answer.Assessment, *setup.Parts, error) {
	t, err := e.computeJudged(d, o, deep)
	if err != nil {
		return nil, nil, err
	}
	typical, err := e.vehicle(d.median(e.world), d.conflict, complete)
	if err != nil {
		return nil, nil, err
	}
	a := e.found(d, t, typical)
	if a.Path != nil { // a fuse to buy is for whichever of them it turns out to be
		a.Path.FuseSizesA = t.judged.sizesForNearlyAll()
	}
	if a.Verdict < answer.FixFirst {
		err = e.promise(a, d, t, o)
	}
	return a, e.parts, err
}

// promise sets minutes and speed to those of as many draws as a way out is told by, of
// which some were judged.
func (e *engine) promise(a *answer.Assessment, d *drawn, judged *table, o Options) error {
	places, weight := d.some(mostPromised)
	n := len(places)
	if n == len(judged.judged.at) {
		return nil
	}
	column := map[int]int{}
	for k, i := range judged.judged.at {
		column[i] = k
	}
	all := &table{weight: weight, values: rows(len(metrics.Get()), n), fates: make([]fate, n)}
	err := o.each(n, func(at int) error {
		if k, is := column[places[at]]; is {
			for m := range metrics.Get() {
				all.values[m][at] = judged.judged.values[m][k]
			}
			all.fates[at] = judged.fates[k]
			return nil
		}
		v, err := e.glance(d.z[places[at]])
		if err != nil {
			return err
		}
		for m, figure := range metrics.Get() {
			if figure.promised() {
				all.values[m][at] = figure.of(v)
			}
		}
		all.fates[at] = fateOf(&v.Seen)
		return nil
	})
	if err != nil {
		return err
	}
	all.finish(d, n)
	all.tell(&a.Draws)
	for m, figure := range metrics.Get() {
		if figure.promised() {
			figure.fill(a, all.values[m], all.weight, new(draws.Sorter))
		}
	}
	return nil
}

// promised reports whether a way out tells the figure.
func (m *metric) promised() bool { return m.path == minutesPath || m.path == speedPath }
