package reckon

import (
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// Runs are the cases that an answer computes, ready to be computed again alone.
type Runs struct {
	cases  []*Vehicle
	weighs func() error
}

// RunsOf gathers them.
func RunsOf(s *setup.Setup, o Options) (*Runs, error) {
	e, d, o, err := begin(s, o)
	if err != nil {
		return nil, err
	}
	r := &Runs{}
	for _, z := range d.z {
		v, err := e.vehicle(z, nil, computed)
		if err != nil {
			return nil, err
		}
		r.cases = append(r.cases, v)
	}
	list := readings(e.parts)
	r.weighs = func() error {
		if len(list) == 0 {
			return nil
		}
		_, err := draws.Condition(e.world.Dims(), e.model(list), asRead(list), draws.Options{Enough: enough, Workers: o.Workers})
		return err
	}
	return r, nil
}

// Again computes what was gathered: the rides of every draw, with the original
// battery too, and those that weigh the readings.
func (r *Runs) Again() error {
	for _, v := range r.cases {
		ride.See(&v.Now.Case, nil)
		if v.Original != nil {
			ride.See(&v.Original.Case, nil)
		}
	}
	return r.weighs()
}
