package draws

import (
	"cmp"
	"math"
	"slices"
)

// Conflict says which readings do not go together with what is assumed.
type Conflict struct {
	// Readings are the positions of those whose absence mends most, the best
	// first: more than one when the next mends within 20 % as much (a guess,
	// no published source).
	Readings []int
	// LeftOut are those without which the others agree, in the order in which they
	// were left out: the first of Readings, and whichever mended most after it.
	LeftOut []int
	// Pushed are the unknowns that lie more than [PushedBeyond] standard
	// deviations from the middle in the most probable draw with all readings,
	// the farthest first: what is not as assumed, if the readings are right.
	Pushed []int
	Best   Best // with all readings
	Runs   int  // how often the model was asked, altogether
}

const (
	// ConflictBelow is the chance below which readings are in conflict.
	ConflictBelow = 0.01 // common practice, no published source: a false alarm in a hundred
	// PushedBeyond is where an unknown counts as pushed to its end.
	PushedBeyond = 2.0 // common practice, no published source: the outer twentieth
	// nearlyAsGood is how much of the best mending the second must reach.
	nearlyAsGood = 0.8
	// mendsSome is how much of that makes a reading worth new slopes, mendsMuch how
	// much makes it worth looking over steps. Common practice, no published source.
	mendsSome, mendsMuch = 0.4, 0.6
)

// FindConflict reports whether the readings disagree with each other or with
// what is assumed: whether even the most probable draw has a chance below
// [ConflictBelow]. Each reading is then left out in turn and the most probable
// draw sought without it, from where the one with all was found. The one whose
// absence mends most stays out, and so on until the others agree: a second one may
// be wrong too.
//
// The search begins in the middle of what is assumed and from draws that are known to come
// near to the readings, from each of these among what the choices pick there. choices and
// workers are as in [Options]. It fails as [Condition] does.
func FindConflict(dims int, m Model, readings []Reading, from [][]float64, choices []Choice, workers int) (Conflict, bool, error) {
	if err := check(dims, m, readings); err != nil {
		return Conflict{}, false, err
	}
	if len(readings) == 0 {
		return Conflict{Best: Best{Z: make([]float64, dims), P: 1}}, false, nil
	}
	s := search{dims: dims, model: m, readings: readings, workers: workersOf(workers)}
	if err := s.start(); err != nil {
		return Conflict{}, false, err
	}
	counts := every(len(readings))
	here := s.descend(s.middle, counts)
	for _, c := range choices { // no slope shows what lies beyond a cut
		s.held = append(s.held, c.Unknown)
	}
	for _, z := range from {
		if near := s.at(z); near.runs {
			here = s.better(here, s.descend(near, counts), counts)
		}
	}
	s.held = nil
	here = s.overSteps(here, counts)
	c := Conflict{Best: s.bestOf(here, counts)}
	for count(counts) > 0 && s.chance(here, counts) < ConflictBelow {
		list := s.leaveOut(here, counts)
		if c.LeftOut == nil {
			c.Readings = suspects(list)
			c.Pushed = pushed(here.z)
		}
		worst := list[0]
		c.LeftOut = append(c.LeftOut, worst.reading)
		here, counts = worst.place, worst.counts
	}
	c.Runs = s.runs
	return c, len(c.LeftOut) > 0, nil
}

// suspects are the readings whose absence mends most, or nearly so.
func suspects(list []absence) []int {
	if len(list) > 1 && list[1].mends >= nearlyAsGood*list[0].mends {
		return []int{list[0].reading, list[1].reading}
	}
	return []int{list[0].reading}
}

// pushed are the unknowns far from the middle, the farthest first.
func pushed(z []float64) (far []int) {
	for i, v := range z {
		if math.Abs(v) > PushedBeyond {
			far = append(far, i)
		}
	}
	slices.SortStableFunc(far, func(a, b int) int { return cmp.Compare(math.Abs(z[b]), math.Abs(z[a])) })
	return far
}

// absence is what becomes of the most probable draw where one more reading is left
// out.
type absence struct {
	place
	reading int
	counts  []bool
	mends   float64 // by how much the sum of squares falls
}

// leaveOut seeks the most probable draw without each reading in turn, of those that
// count; the one that mends most comes first. It goes on only with those whose
// absence mends so much already that they may be the one.
func (s *search) leaveOut(here place, counts []bool) []absence {
	var list []absence
	slope := s.slopes(here)
	for j, counted := range counts {
		if !counted {
			continue
		}
		a := absence{place: here, reading: j, counts: slices.Clone(counts)}
		a.counts[j] = false
		a.moved(here, counts, s.along(here, slope, a.counts))
		list = append(list, a)
	}
	further := func(share float64, search func(*absence) place) {
		least := share * slices.MaxFunc(list, func(a, b absence) int { return cmp.Compare(a.mends, b.mends) }).mends
		for i := range list {
			if a := &list[i]; a.mends >= least {
				a.moved(here, counts, search(a))
			}
		}
	}
	if len(list) > 1 { // without any reading nothing is to be found
		further(mendsSome, func(a *absence) place { return s.descend(a.place, a.counts) })
		further(mendsMuch, func(a *absence) place { return s.overSteps(a.place, a.counts) })
	}
	slices.SortStableFunc(list, func(a, b absence) int { return cmp.Compare(b.mends, a.mends) })
	return list
}

// moved takes in where a search has come to.
func (a *absence) moved(here place, counts []bool, to place) {
	a.place, a.mends = to, here.sum(counts)-to.sum(a.counts)
}
