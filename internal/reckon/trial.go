package reckon

import (
	"fmt"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// Trial knows what a hidden vehicle of a setup's own world would show, so that
// answers can be held against it: simulation-based calibration, S. Talts,
// M. Betancourt, D. Simpson, A. Vehtari and A. Gelman, Validating Bayesian
// inference algorithms with simulation-based calibration (2018), arXiv
// 1804.06788.
type Trial struct {
	e    *engine
	list []reading
}

// NewTrial prepares trials of a setup. The values of its readings count for
// nothing: they only say what can be read.
func NewTrial(s *setup.Setup) (*Trial, error) {
	e, err := newEngine(s)
	if err != nil {
		return nil, err
	}
	return &Trial{e: e, list: readings(e.parts)}, nil
}

// Dims returns how many standard normal numbers make a vehicle.
func (t *Trial) Dims() int { return t.e.world.Dims() }

// Keys returns the setup key that each of these numbers belongs to.
func (t *Trial) Keys() []string { return t.e.world.Keys() }

// Findings is all that is said of one vehicle of the world: what an answer says
// where every draw is this one.
func (t *Trial) Findings(z []float64) ([]answer.Finding, error) {
	v, err := t.e.vehicle(z, nil, complete)
	if err != nil {
		return nil, err
	}
	j := judgedTable{weight: []float64{1}, findings: [][]answer.Finding{v.Judged.Findings}}
	return count(&j, t.e.guesses(nil)), nil
}

// Figures returns figures of a vehicle by their JSON paths.
func (t *Trial) Figures(z []float64, paths []string) ([]float64, error) {
	list, err := metricsAt(paths)
	if err != nil {
		return nil, err
	}
	v, err := t.e.vehicle(z, nil, computed)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(list))
	for i, m := range list {
		out[i] = m.of(v)
	}
	return out, nil
}

// Shown is what a vehicle shows to somebody who reads without error.
type Shown struct {
	Key, Unit string
	Value     float64
	Err       float64 // standard error that the answer will take; a share unless Linear
	Linear    bool
}

// Show returns all readings of a vehicle; ok is false where it does not run.
func (t *Trial) Show(z []float64) (list []Shown, ok bool) {
	out := make([]float64, len(t.list))
	if !t.e.model(t.list)(0, z, out) {
		return nil, false
	}
	for i := range t.list {
		r := &t.list[i]
		list = append(list, Shown{Key: r.key, Unit: r.unit, Value: r.back(out[i]), Err: r.err, Linear: r.linear})
	}
	return list, true
}

// Drawn is what an answer rests on: figures of its draws with their weights.
type Drawn struct {
	Values   [][]float64 // by path and draw
	Weight   []float64
	Crawls   []bool // barely moves: an answer leaves it out of how long and far a ride is
	Stuck    []bool // does not get going
	Readings []answer.Reading
	Conflict *answer.Conflict
	Runs     int
	Rough    bool
}

// Draw makes the draws of an answer and no more: figures by their JSON paths, of
// at most so many draws.
func Draw(s *setup.Setup, o Options, most int, paths []string) (*Drawn, error) {
	return DrawAt(s, o, 0, most, paths)
}

// DrawAt is Draw with the draws placed otherwise, see [draws.PointsAt].
func DrawAt(s *setup.Setup, o Options, scramble uint64, most int, paths []string) (*Drawn, error) {
	list, err := metricsAt(paths)
	if err != nil {
		return nil, err
	}
	e, o, err := prepare(s, o)
	if err != nil {
		return nil, err
	}
	e.scramble = scramble
	d, err := e.draw(o)
	if err != nil {
		return nil, err
	}
	z, weight := d.z, d.weight
	if len(z) > most {
		z, weight = d.at(resampled(d.weight, most))
	}
	out := &Drawn{
		Values: rows(len(list), len(z)), Weight: weight, Crawls: make([]bool, len(z)), Stuck: make([]bool, len(z)),
		Readings: d.readings, Conflict: d.conflict, Runs: d.runs, Rough: d.rough(),
	}
	return out, o.each(len(z), func(i int) error {
		v, err := e.vehicle(z[i], nil, computed)
		if err != nil {
			return err
		}
		for k, m := range list {
			out.Values[k][i] = m.of(v)
		}
		out.Crawls[i], out.Stuck[i] = v.Seen.Crawls(), v.Seen.Stuck()
		return nil
	})
}

// metricsAt finds figures by their JSON paths; what only judging brings is none
// of them.
func metricsAt(paths []string) ([]*metric, error) {
	var list []*metric
	for _, path := range paths {
		i := slices.IndexFunc(metrics.Get(), func(m metric) bool { return m.path == path && !m.judged })
		if i < 0 {
			return nil, fmt.Errorf("packcheck: no figure %q (want a path as in the ranges of an answer)", path)
		}
		list = append(list, &metrics.Get()[i])
	}
	return list, nil
}
