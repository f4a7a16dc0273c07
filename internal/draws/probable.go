package draws

import (
	"math"
	"slices"
)

// Best is the most probable draw, as far as the search went.
type Best struct {
	Z         []float64 // clipped at [Clip]
	Predicted []float64 // what it foretells of the readings
	Residual  []float64 // (read - predicted) / error of each reading
	ChiSquare float64   // squares of the residuals and of z, together
	Degrees   int       // of freedom: the number of readings
	P         float64   // chance of readings that agree less when all is as assumed, their errors of Student's law
	Runs      int       // how often the model was asked until then
}

const (
	// halfStep of a slope, in standard deviations of an unknown: wide enough to
	// see past figures that the model rounds. Common practice, no published
	// source; tried on vehicles.
	halfStep = 0.4
	// slopesAnew is how often the slopes are found at most, stepsAlong how many
	// steps go by the same ones. Common practice, no published source.
	slopesAnew = 5
	stepsAlong = 4
	// settled is a change of the chi-square that no decision feels, worthAnew
	// one for which new slopes are worth their runs. Common practice, no
	// published source.
	settled   = 0.05
	worthAnew = 0.3
	// doubtful is a chance below which the search looks for steps that no slope
	// shows; looks is how many steps it tries, stepsInARow how many of them on
	// top of each other. Common practice, no published source.
	doubtful    = 0.05
	looks       = 3
	stepsInARow = 2
	// startTries is how many draws are tried where the middle one does not run.
	startTries = 64
)

// every reading counts.
func every(n int) []bool {
	all := make([]bool, n)
	for j := range all {
		all[j] = true
	}
	return all
}

// search looks for most probable draws of one question: the one that makes the
// readings, with normal errors, and itself most probable has the least sum of
// squares of the residuals and of z. It is found by Gauss-Newton steps that are
// shortened until they improve, from the middle of what is assumed. Where all is
// nearly linear and as assumed, the sum has a chi-square law with as many degrees
// of freedom as there are readings; of how rare it is residuals count as by Student's
// law (see [NormalScore]).
type search struct {
	dims     int
	model    Model
	readings []Reading
	workers  int
	runs     int

	middle place // where the search starts
	held   []int // unknowns that stay where they are
	views  []*view
}

// place is a draw that was run.
type place struct {
	z, predicted, residual []float64
	runs                   bool
}

// start finds the draw from which to search: the middle, or where that does
// not run, the best of some that do.
func (s *search) start() error {
	s.middle = s.at(make([]float64, s.dims))
	if !s.middle.runs {
		for _, z := range Points(startTries, s.dims) {
			if p := s.at(z); p.runs && (!s.middle.runs || p.sum(nil) < s.middle.sum(nil)) {
				s.middle = p
			}
		}
	}
	if !s.middle.runs {
		return ErrStandsStill
	}
	return nil
}

// at runs one draw.
func (s *search) at(z []float64) place { return s.all([][]float64{z})[0] }

// all runs draws.
func (s *search) all(z [][]float64) []place {
	out, ok := rows(len(z), len(s.readings)), make([]bool, len(z))
	runAll(s.model, z, out, ok, s.workers)
	s.runs += len(z)
	list := make([]place, len(z))
	for i := range z {
		if list[i] = (place{z: z[i]}); ok[i] {
			list[i] = s.placed(z[i], out[i])
		}
	}
	return list
}

// placed is a draw that ran.
func (s *search) placed(z, predicted []float64) place {
	p := place{z: z, predicted: predicted, residual: make([]float64, len(s.readings)), runs: true}
	for j, r := range s.readings {
		p.residual[j] = (r.Value - predicted[j]) / r.Err
	}
	return p
}

// sum is the sum of squares with the readings that count; nil means all.
func (p place) sum(counts []bool) float64 {
	total := dot(p.z, p.z)
	for j, r := range p.residual {
		if counts == nil || counts[j] {
			total += r * r
		}
	}
	return total
}

// bestOf tells of the draw at which a search ended.
func (s *search) bestOf(here place, counts []bool) Best {
	return Best{
		Z: here.z, Predicted: here.predicted, Residual: here.residual,
		ChiSquare: here.sum(counts), Degrees: count(counts), P: s.chance(here, counts), Runs: s.runs,
	}
}

// chance of a greater sum of squares, each residual as rare as it is by Student's law:
// honest readings are off by four errors now and then.
func (s *search) chance(here place, counts []bool) float64 {
	total := dot(here.z, here.z)
	for j, r := range here.residual {
		if counts == nil || counts[j] {
			score := NormalScore(r)
			total += score * score
		}
	}
	return ChiSquareBeyond(total, count(counts))
}

func count(all []bool) (n int) {
	for _, c := range all {
		if c {
			n++
		}
	}
	return n
}

// better is the draw of two that is more probable with the readings that count.
func (s *search) better(a, b place, counts []bool) place {
	if b.sum(counts) < a.sum(counts) {
		return b
	}
	return a
}

// descend takes Gauss-Newton steps until they gain no more, and finds the slopes
// anew in between.
func (s *search) descend(here place, counts []bool) place {
	return s.descendBelow(math.Inf(1), here, counts, s.slopes)
}

// glance is descend with slopes from one side, as far as it may come below a sum: it
// gives up where more is left to gain than the last slopes gained.
func (s *search) glance(below float64, here place, counts []bool) place {
	return s.descendBelow(below, here, counts, s.roughSlopes)
}

func (s *search) descendBelow(below float64, here place, counts []bool, slopes func(place) [][]float64) place {
	for range slopesAnew {
		before := here.sum(counts)
		here = s.along(here, slopes(here), counts)
		gained := before - here.sum(counts)
		if gained < worthAnew || here.sum(counts)-gained > below {
			break
		}
	}
	return here
}

// along takes steps by the slopes of where it begins, which cost one run each.
func (s *search) along(here place, slope [][]float64, counts []bool) place {
	for range stepsAlong {
		next, ok := s.shortened(here, slope, counts)
		if !ok {
			break
		}
		gained := here.sum(counts) - next.sum(counts)
		here = next
		if gained < settled {
			break
		}
	}
	return here
}

// pick returns the slopes of the readings that count.
func pick(slope [][]float64, counts []bool) (chosen [][]float64) {
	for j, row := range slope {
		if counts[j] {
			chosen = append(chosen, row)
		}
	}
	return chosen
}

// shortened takes the Gauss-Newton step from here, halved until it improves.
func (s *search) shortened(here place, slope [][]float64, counts []bool) (place, bool) {
	var innovation []float64
	var rowsOf [][]float64
	for j, row := range slope {
		if counts[j] {
			row = s.free(row)
			rowsOf = append(rowsOf, row)
			innovation = append(innovation, here.residual[j]+dot(row, here.z))
		}
	}
	target := make([]float64, s.dims)
	if len(rowsOf) > 0 {
		for j, u := range solve(gramOf(rowsOf), innovation) {
			addScaled(target, u, rowsOf[j])
		}
	}
	for _, i := range s.held {
		target[i] = here.z[i]
	}
	for share := 1.0; share > 0.05; share /= 2 {
		z := make([]float64, s.dims)
		for i := range z {
			z[i] = max(-Clip, min(Clip, here.z[i]+share*(target[i]-here.z[i])))
		}
		if next := s.at(z); next.runs && next.sum(counts) < here.sum(counts) {
			return next, true
		}
	}
	return here, false
}

// free is a row of slopes without those along what is held.
func (s *search) free(row []float64) []float64 {
	if len(s.held) == 0 {
		return row
	}
	row = slices.Clone(row)
	for _, i := range s.held {
		row[i] = 0
	}
	return row
}

// solve returns (JJ' + I)^-1 e, for the errors as they are.
func solve(gram symmetric, innovation []float64) []float64 {
	noise := make([]float64, len(innovation))
	for j := range noise {
		noise[j] = 1
	}
	inverse, _ := invert(gram, noise)
	u := make([]float64, len(innovation))
	inverse.times(u, innovation)
	return u
}
