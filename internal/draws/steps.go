package draws

import (
	"cmp"
	"slices"
)

// elsewhere returns the places into which an unknown is put to look over a step.
func elsewhere() []float64 { return []float64{-2, -1, 1, 2} }

// step is a draw with one unknown put elsewhere, and the lowest sum that the
// slopes promise from there.
type step struct {
	place
	sum     float64
	unknown int
}

// overSteps looks over steps that no slope shows (another motor family, other
// ground): it descends from the most promising steps away from the middle, then
// from those away from the best of these, as long as that helps.
func (s *search) overSteps(here place, counts []bool) place {
	base := s.middle
	for range stepsInARow {
		if s.chance(here, counts) >= doubtful {
			break
		}
		found := false
		for _, next := range s.promising(base, counts) {
			below := here.sum(counts) - settled
			if there := s.glance(below, next.place, counts); there.sum(counts) < below {
				here, base, found = s.descend(there, counts), next.place, true
			}
		}
		if !found {
			break
		}
	}
	return here
}

// promising returns the steps from which, by the slopes of the other unknowns,
// the lowest sums are to be reached, the lowest first, one for each unknown.
func (s *search) promising(base place, counts []bool) []step {
	slope, moved, places := s.slopes(base), s.look(base), elsewhere()
	chosen := pick(slope, counts)
	gram := gramOf(chosen)
	innovation := make([]float64, len(chosen))
	var all []step
	for i, p := range moved {
		if !p.runs {
			continue
		}
		unknown := i / len(places)
		a := 0
		for j, row := range slope {
			if counts[j] {
				innovation[a] = p.residual[j] + dot(row, p.z) - row[unknown]*p.z[unknown]
				a++
			}
		}
		fixed := newSymmetric(len(chosen)) // the moved unknown stays where it was put
		for a := range chosen {
			for b := a; b < len(chosen); b++ {
				fixed.set(a, b, gram.at(a, b)-chosen[a][unknown]*chosen[b][unknown])
			}
		}
		sum := p.z[unknown]*p.z[unknown] + dot(innovation, solve(fixed, innovation))
		all = append(all, step{p, sum, unknown})
	}
	slices.SortStableFunc(all, func(a, b step) int { return cmp.Compare(a.sum, b.sum) })
	var best []step
	for _, c := range all {
		known := slices.ContainsFunc(best, func(b step) bool { return b.unknown == c.unknown })
		if len(best) < looks && !known {
			best = append(best, c)
		}
	}
	return best
}
