package draws

import "slices"

// view is what was seen from a draw. It does not depend on which readings count:
// searches without one after another look from the same draws again.
type view struct {
	from         []float64
	slope, rough [][]float64 // of each reading, in its errors, by each unknown
	moved        []place     // every unknown put elsewhere, by unknown, then by place
}

// viewFrom is what was seen from a draw so far.
func (s *search) viewFrom(here place) *view {
	for _, v := range s.views {
		if slices.Equal(v.from, here.z) {
			return v
		}
	}
	v := &view{from: here.z}
	s.views = append(s.views, v)
	return v
}

// slopes of the predictions, in their errors, by each unknown: from both sides
// where both run, from one where only that does, none where neither does.
func (s *search) slopes(here place) [][]float64 {
	v := s.viewFrom(here)
	if v.slope == nil {
		up, down := s.nudged(here, func(float64) float64 { return halfStep }), s.nudged(here, func(float64) float64 { return -halfStep })
		v.slope = s.between(up, down, here)
	}
	return v.slope
}

// roughSlopes are slopes from the side of the middle alone, for half the runs, unless
// those from both sides are known.
func (s *search) roughSlopes(here place) [][]float64 {
	v := s.viewFrom(here)
	if v.slope != nil {
		return v.slope
	}
	if v.rough == nil {
		inwards := func(z float64) float64 {
			if z > 0 {
				return -halfStep
			}
			return halfStep
		}
		v.rough = s.between(s.nudged(here, inwards), make([]place, s.dims), here)
	}
	return v.rough
}

// nudged runs a draw with each unknown moved a little.
func (s *search) nudged(here place, by func(z float64) float64) []place {
	z := rows(s.dims, s.dims)
	for i := range z {
		copy(z[i], here.z)
		z[i][i] = max(-Clip, min(Clip, here.z[i]+by(here.z[i])))
	}
	return s.all(z)
}

// between are the slopes between two draws for each unknown; in the place of one that
// does not run stands the one between them.
func (s *search) between(one, other []place, here place) [][]float64 {
	slope := rows(len(s.readings), s.dims)
	for i := range s.dims {
		a, b := one[i], other[i]
		if !a.runs {
			a = here
		}
		if !b.runs {
			b = here
		}
		if a.z[i] == b.z[i] {
			continue
		}
		for j, r := range s.readings {
			slope[j][i] = (a.predicted[j] - b.predicted[j]) / (a.z[i] - b.z[i]) / r.Err
		}
	}
	return slope
}

// look runs every unknown put elsewhere from a draw.
func (s *search) look(base place) []place {
	v, places := s.viewFrom(base), elsewhere()
	if v.moved == nil {
		z := rows(s.dims*len(places), s.dims)
		for i := range z {
			copy(z[i], base.z)
			z[i][i/len(places)] = places[i%len(places)]
		}
		v.moved = s.all(z)
	}
	return v.moved
}
