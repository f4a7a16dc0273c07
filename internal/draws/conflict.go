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
	// Without holds, for each reading, the most probable draw with that one
	// left out.
	Without []Best
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
	// mendsMuch is how much of that makes a reading worth a longer search.
	// Common practice, no published source.
	mendsMuch = 0.6
)

// FindConflict reports whether the readings disagree with each other or with
// what is assumed: whether even the most probable draw has a chance below
// [ConflictBelow]. Each reading is then left out in turn and the most probable
// draw searched anew. Whoever conditions without the first one asks again with
// those that remain: a second one may be wrong too.
//
// workers is as in [Options]. It fails as [Condition] does.
func FindConflict(dims int, m Model, readings []Reading, workers int) (Conflict, bool, error) {
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
	all := every(len(readings))
	here := s.overSteps(s.descend(s.middle, all), all)
	best := s.bestOf(here, all)
	if best.P >= ConflictBelow {
		return Conflict{Best: best, Runs: s.runs}, false, nil
	}
	c := Conflict{Best: best, Without: s.leaveOut(here)}
	c.Runs = s.runs
	mended := func(j int) float64 { return best.ChiSquare - c.Without[j].ChiSquare }
	order := make([]int, len(readings))
	for j := range order {
		order[j] = j
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(mended(b), mended(a)) })
	c.Readings = order[:1]
	if len(order) > 1 && mended(order[1]) >= nearlyAsGood*mended(order[0]) {
		c.Readings = order[:2]
	}
	for i, z := range best.Z {
		if math.Abs(z) > PushedBeyond {
			c.Pushed = append(c.Pushed, i)
		}
	}
	slices.SortStableFunc(c.Pushed, func(a, b int) int {
		return cmp.Compare(math.Abs(best.Z[b]), math.Abs(best.Z[a]))
	})
	return c, true, nil
}

// leaveOut searches anew without each reading in turn, from the most probable
// draw with all; over steps only for those whose absence mends much already.
func (s *search) leaveOut(here place) []Best {
	n := len(s.readings)
	places, counts := make([]place, n), make([][]bool, n)
	least, slope := here.sum(nil), s.slopes(here)
	for j := range places {
		counts[j] = every(n)
		counts[j][j] = false
		places[j] = s.descendBy(here, slope, counts[j])
		least = min(least, places[j].sum(counts[j]))
	}
	all := make([]Best, n)
	for j, p := range places {
		if here.sum(nil)-p.sum(counts[j]) >= mendsMuch*(here.sum(nil)-least) {
			p = s.overSteps(p, counts[j])
		}
		all[j] = s.bestOf(p, counts[j])
	}
	return all
}
