package reckon

import (
	"slices"
	"sync"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/internal/build"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// engine turns points of a setup's world into vehicles. Any number of
// goroutines may use one.
type engine struct {
	world *setup.World
	parts *setup.Parts // with every choice at its likeliest

	candidates []candidate
	slots      []int // place of each candidate's unknown in a point, -1 where there is none

	marks sync.Pool // of *ride.Marks

	scramble uint64 // where the draws lie, see [draws.PointsAt]

	mu     sync.Mutex
	makers map[*setup.Parts]*maker
}

// maker makes the vehicles of one selection of the open choices.
type maker struct {
	parts    *setup.Parts
	now, was *build.Builder // was is nil without an original
	judge    *judge.Judge
}

// newEngine prepares an engine.
func newEngine(s *setup.Setup) (*engine, error) {
	w, err := s.World()
	if err != nil {
		return nil, err
	}
	e := &engine{world: w, parts: w.Likeliest(), makers: map[*setup.Parts]*maker{}}
	e.marks.New = func() any { return new(ride.Marks) }
	e.candidates = candidates(e.parts)
	for _, c := range e.candidates {
		e.slots = append(e.slots, slices.Index(w.Keys(), c.key))
	}
	_, err = e.maker(make([]float64, w.Dims()))
	return e, err
}

// maker returns the maker that the choices of a point select.
func (e *engine) maker(z []float64) (*maker, error) {
	p, err := e.world.Parts(z)
	if err != nil {
		return nil, err
	}
	e.mu.Lock()
	defer e.mu.Unlock()
	if m, ok := e.makers[p]; ok {
		return m, nil
	}
	m := &maker{parts: p}
	if m.now, err = build.New(p); err != nil {
		return nil, err
	}
	if p.Original != nil {
		if m.was, err = build.New(p.Original); err != nil {
			return nil, err
		}
	}
	if m.judge, err = judge.New(p); err != nil {
		return nil, err
	}
	e.makers[p] = m
	return m, nil
}

// Vehicle is one draw with everything that was computed of it.
type Vehicle struct {
	Now      *build.Built
	Seen     ride.Seen
	Original *build.Built // with its battery as that is by now; nil without one
	Was      *ride.Seen
	Judged   *judge.Judged // nil where it was not judged
	Level    *ride.Seen    // how it drives without its climb; nil where it has none, and where it was not judged completely
}

// past is the original of one draw. The ways out of a setup have the same one and
// need not compute it again.
type past struct {
	built *build.Built
	seen  *ride.Seen
}

// asMade is the original of a draw as it left its maker: what a vehicle has lived with
// it has lived with when its battery was new. Where today's is told to be one like it,
// that one was like today's, but for its wear.
func (m *maker) asMade(seen *ride.Seen, pick setup.Pick) (*ride.Seen, error) {
	now, then := &m.parts.Pack, &m.parts.Original.Pack
	fresh := battery.WidthsOf(then.Profile.Family, "new", battery.MakerUnknown).Health
	asNew := func(f *setup.Figure) float64 {
		if f == &now.Health || f == &then.Health {
			return max(pick(f), fresh.Likely)
		}
		return pick(f)
	}
	alike := now.Profile.Title == then.Profile.Title && now.CellsInSeries == then.CellsInSeries &&
		now.Joined == then.Joined && now.CapacityAh.Likely == then.CapacityAh.Likely
	if !alike && pick(&then.Health) >= fresh.Low {
		return seen, nil
	}
	c, err := m.was.Case(asNew)
	if err != nil {
		return nil, err
	}
	if alike {
		if c.Pack, err = m.now.Pack(asNew); err != nil {
			return nil, err
		}
	}
	made := ride.See(&c.Case, nil)
	return &made, nil
}

// depth is how much is made of a draw.
type depth int

// The depths: computed only; judged, but for what would suit in place of a cutoff;
// judged completely.
const (
	computed depth = iota
	unadvised
	complete
)

// vehicle computes one point of the world, and judges it as deeply as asked.
func (e *engine) vehicle(z []float64, conflict *answer.Conflict, deep depth) (*Vehicle, error) {
	return e.vehicleOf(z, new(past), conflict, deep)
}

// vehicleOf is vehicle with the original of the draw, which is computed where
// nobody has.
func (e *engine) vehicleOf(z []float64, was *past, conflict *answer.Conflict, deep depth) (*Vehicle, error) {
	m, err := e.maker(z)
	if err != nil {
		return nil, err
	}
	pick := e.world.Pick(z)
	v := &Vehicle{}
	if v.Now, err = m.now.Case(pick); err != nil {
		return nil, err
	}
	var marks *ride.Marks
	if deep == complete {
		marks = e.marks.Get().(*ride.Marks)
		defer e.marks.Put(marks)
	}
	v.Seen = ride.See(&v.Now.Case, marks)
	if m.was != nil && was.seen == nil {
		if was.built, err = m.was.Case(pick); err != nil {
			return nil, err
		}
		whole := ride.See(&was.built.Case, nil)
		was.seen = &whole
	}
	v.Original, v.Was = was.built, was.seen
	if deep == computed {
		return v, nil
	}
	var made *ride.Seen
	if m.was != nil {
		if made, err = m.asMade(was.seen, pick); err != nil {
			return nil, err
		}
	}
	if err := m.now.WithThinnest(v.Now); err != nil {
		return nil, err
	}
	v.Judged, err = m.judge.Case(judge.Case{Now: v.Now, Seen: v.Seen, Original: v.Original, Was: made, Conflict: conflict, Unadvised: deep == unadvised})
	v.Seen.Marks = nil
	if deep == complete && v.Now.Level != nil {
		level := onTheLevel(v.Now.Case)
		level.WantedS = 0
		seen := ride.Glance(&level)
		v.Level = &seen
	}
	return v, err
}

// glance computes of one point how fast and how long it drives.
func (e *engine) glance(z []float64) (*Vehicle, error) {
	m, err := e.maker(z)
	if err != nil {
		return nil, err
	}
	v := &Vehicle{}
	if v.Now, err = m.now.Case(e.world.Pick(z)); err != nil {
		return nil, err
	}
	v.Seen = ride.Glance(&v.Now.Case)
	return v, nil
}
