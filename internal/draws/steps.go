package draws

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// elsewhere returns the places into which an unknown is put to look over a step.
func elsewhere() [4]float64 { return [...]float64{-2, -1, 1, 2} }

// beyondSteps looks over steps that no slope shows (another motor family, other
// ground): with one unknown after another put elsewhere from the middle, it
// returns the draws from which, by the slopes of the others, the lowest sums
// are to be reached, the lowest first.
func (s *search) beyondSteps(counts []bool) []place {
	places := elsewhere()
	s.look(places[:])
	chosen := pick(s.middleSlope, counts)
	gram := gramOf(chosen)
	innovation := make([]float64, len(chosen))
	type candidate struct {
		place
		sum   float64
		moved int
	}
	var all []candidate
	for i, p := range s.moved {
		if !p.runs {
			continue
		}
		moved := i / len(places)
		a := 0
		for j, row := range s.middleSlope {
			if counts[j] {
				innovation[a] = p.residual[j] + floats.Dot(row, p.z) - row[moved]*p.z[moved]
				a++
			}
		}
		fixed := mat.NewSymDense(len(chosen), nil) // the moved unknown stays where it was put
		for a := range chosen {
			for b := a; b < len(chosen); b++ {
				fixed.SetSym(a, b, gram.At(a, b)-chosen[a][moved]*chosen[b][moved])
			}
		}
		sum := p.z[moved]*p.z[moved] + floats.Dot(innovation, solve(fixed, innovation))
		all = append(all, candidate{p, sum, moved})
	}
	slices.SortStableFunc(all, func(a, b candidate) int { return cmp.Compare(a.sum, b.sum) })
	var best []place
	var taken []int
	for _, c := range all {
		if len(best) < looks && !slices.Contains(taken, c.moved) {
			best, taken = append(best, c.place), append(taken, c.moved)
		}
	}
	return best
}

// look runs the middle, its slopes, and every unknown put elsewhere, once.
func (s *search) look(places []float64) {
	if s.moved != nil {
		return
	}
	s.middleSlope = s.slopes(s.middle)
	n := s.dims * len(places)
	z, out, ok := rows(n, s.dims), rows(n, len(s.readings)), make([]bool, n)
	for i := range z {
		copy(z[i], s.middle.z)
		z[i][i/len(places)] = places[i%len(places)]
	}
	runAll(s.model, z, out, ok, s.workers)
	s.runs += n
	s.moved = make([]place, n)
	for i := range z {
		if ok[i] {
			s.moved[i] = s.placed(z[i], out[i])
		}
	}
}
