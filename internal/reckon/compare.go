package reckon

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/setup"
)

// MostCompared is how many setups fit side by side.
const MostCompared = 4

// Compare answers several setups side by side, on the same draws where they leave
// the same things open. Faults of all of them come at once.
func Compare(setups []*setup.Setup, o Options) (*answer.Comparison, error) {
	o, err := o.check()
	if err != nil {
		return nil, err
	}
	if n := len(setups); n < 2 || n > MostCompared {
		return nil, fmt.Errorf("packcheck: %d setups to compare (want 2 to %d)", n, MostCompared)
	}
	engines, err := enginesOf(setups)
	if err != nil {
		return nil, err
	}
	all, leads, err := drawTogether(setups, engines, o)
	if err != nil {
		return nil, err
	}
	c := &answer.Comparison{Schema: answer.ComparisonSchema, Verdict: answer.Danger, SameDraws: true}
	tables := make([]*table, len(engines))
	for i, e := range engines {
		if tables[i], err = e.compute(all[i], o); err != nil {
			return nil, err
		}
		a, err := e.answer(setups[i], all[i], tables[i])
		if err != nil {
			return nil, err
		}
		col := answer.Column{Letter: string(rune('A' + i)), Answer: conclude(a)}
		if i > 0 && leads[i] == leads[0] {
			col.Against = against(tables[i], tables[0])
		}
		c.SameDraws = c.SameDraws && leads[i] == leads[0]
		c.Columns, c.Verdict = append(c.Columns, col), min(c.Verdict, a.Verdict)
	}
	for i, name := range names(setups) {
		c.Columns[i].Name = name
	}
	c.System = c.Columns[0].Answer.System
	c.Best = bests(c, tables)
	return c, nil
}

// enginesOf prepares an engine for each setup; they share the cells of equal
// batteries.
func enginesOf(setups []*setup.Setup) ([]*engine, error) {
	var engines []*engine
	var faults setup.Faults
	for _, s := range setups {
		e, err := newEngine(s)
		var some setup.Faults
		switch {
		case errors.As(err, &some):
			faults = append(faults, some...)
		case err != nil:
			return nil, err
		}
		engines = append(engines, e)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return engines, nil
}

// against is what every figure of a column differs by from that of the first.
func against(t, first *table) map[string]answer.Range {
	out := map[string]answer.Range{}
	differ := make([]float64, len(t.weight))
	for m, figure := range metrics.Get() {
		if figure.judged {
			continue
		}
		for k := range differ {
			differ[k] = t.values[m][k] - first.values[m][k]
			if t.values[m][k] == first.values[m][k] {
				differ[k] = 0 // both may be without end
			}
		}
		s := draws.SpreadOf(differ, t.weight)
		if r := (answer.Range{Low: s.P10, Likely: s.P50, High: s.P90}); s.Present >= 0.5 && r.Valid() {
			out[figure.path] = r
		}
	}
	return out
}

// merit is how a draw shows what a column may be the best in: larger is better.
type merit struct {
	is   answer.Merit
	path string
	of   func(float64) float64
}

// meritsFor lists what the columns can be compared in. Without an original in
// each, nothing tells which speed is right.
func meritsFor(c *answer.Comparison) []merit {
	same := func(x float64) float64 { return x }
	list := []merit{{answer.MeritTime, minutesPath, same}}
	for _, col := range c.Columns {
		if col.Answer.Launch == nil {
			return list
		}
	}
	pace := merit{answer.MeritAsSpeed, "original.speed_ratio", func(x float64) float64 { return -math.Abs(math.Log(x)) }}
	for _, col := range c.Columns {
		if o := col.Answer.Original; o == nil || o.SpeedRatio == nil {
			pace = merit{answer.MeritSpeed, speedPath, same}
		}
	}
	return append(list, pace, merit{answer.MeritGentle, "launch.peak_motor_a", func(x float64) float64 { return -x }})
}

// bests finds the best column in each thing.
func bests(c *answer.Comparison, tables []*table) []answer.Best {
	var in []int
	usable := c.Verdict < answer.FixFirst
	for i := range c.Columns {
		if a := c.Columns[i].Answer; (!usable || a.Verdict < answer.FixFirst) && !a.NeverRidden() {
			in = append(in, i)
		}
	}
	var out []answer.Best
	for _, m := range meritsFor(c) {
		at := slices.IndexFunc(metrics.Get(), func(x metric) bool { return x.path == m.path })
		values := make([][]float64, len(tables))
		b := answer.Best{For: m.is, Column: -1, Usable: usable}
		best, alike := math.Inf(-1), true
		for _, i := range in {
			values[i] = make([]float64, len(tables[i].weight))
			for k, v := range tables[i].values[at] {
				values[i][k] = m.of(v)
			}
			if middle := draws.Quantile(values[i], tables[i].weight, 0.5); middle > best {
				best, b.Column = middle, i
			}
			alike = alike && slices.Equal(values[i], values[in[0]])
		}
		switch {
		case alike && len(in) > 1:
			b.Column = -1
		case c.SameDraws && len(in) > 1 && b.Column >= 0:
			b.Share = shareOfBest(values, tables[b.Column].weight, in, b.Column)
		}
		out = append(out, b)
	}
	return out
}

// shareOfBest is in which share of the draws a column is no worse than any other.
func shareOfBest(values [][]float64, weight []float64, in []int, best int) (share float64) {
	for k, w := range weight {
		if !slices.ContainsFunc(in, func(i int) bool { return !(values[best][k] >= values[i][k]) }) {
			share += w
		}
	}
	return share
}

// names tells the columns apart: by their batteries where these differ, otherwise
// by their files, otherwise by both.
func names(setups []*setup.Setup) []string {
	labels, files, both := make([]string, len(setups)), make([]string, len(setups)), make([]string, len(setups))
	for i, s := range setups {
		labels[i] = s.Pack.Label.Text
		files[i] = strings.TrimSuffix(filepath.Base(s.Name), filepath.Ext(s.Name))
		both[i] = strings.Trim(labels[i]+", "+files[i], ", ")
	}
	for _, list := range [][]string{labels, files} {
		sorted := slices.Sorted(slices.Values(list))
		if sorted[0] != "" && len(slices.Compact(sorted)) == len(list) {
			return list
		}
	}
	return both
}
