package draws

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat/distuv"
)

// Best is the most probable draw, as far as the search went.
type Best struct {
	Z         []float64 // clipped at [Clip]
	Predicted []float64 // what it foretells of the readings
	Residual  []float64 // (read - predicted) / error of each reading
	ChiSquare float64   // squares of the residuals and of z, together
	Degrees   int       // of freedom: the number of readings
	P         float64   // chance of a greater ChiSquare when all is as assumed
	Runs      int       // how often the model was asked
	slope     [][]float64
}

const (
	// halfStep of a slope, in standard deviations of an unknown: wide enough to
	// see past figures that the model rounds. Common practice, no published
	// source; tried on vehicles.
	halfStep = 0.4
	// searchSteps of the search at most; the 3rd or 4th seldom changes a digit.
	searchSteps = 6
	// settled is a change of the chi-square that no decision feels.
	settled = 0.02
	// startTries is how many draws are tried where the middle one does not run.
	startTries = 64
)

// MostProbable searches the draw that makes the readings, with normal errors,
// and itself most probable: the least sum of squares of the residuals and of
// z, by Gauss-Newton steps that are shortened until they improve, from the
// middle of what is assumed. Where all is nearly linear and as assumed, the sum
// has a chi-square law with as many degrees of freedom as there are readings.
//
// workers is as in [Options]. It fails as [Condition] does.
func MostProbable(dims int, m Model, readings []Reading, workers int) (Best, error) {
	if err := check(dims, m, readings); err != nil {
		return Best{}, err
	}
	s := search{dims: dims, model: m, readings: readings, workers: workersOf(workers)}
	if len(readings) == 0 {
		return Best{Z: make([]float64, dims), P: 1}, nil
	}
	start := s.at(make([]float64, dims))
	if !start.runs {
		for i, z := range Points(startTries, dims) {
			if p := s.at(z); p.runs && (i == 0 || !start.runs || p.total < start.total) {
				start = p
			}
		}
	}
	if !start.runs {
		return Best{}, ErrStandsStill
	}
	all := make([]bool, len(readings))
	for j := range all {
		all[j] = true
	}
	return s.from(start, all), nil
}

// search looks for most probable draws of one question.
type search struct {
	dims     int
	model    Model
	readings []Reading
	workers  int
	runs     int
}

// place is a draw that was run.
type place struct {
	z, predicted, residual []float64
	total                  float64 // squares of all residuals and of z
	runs                   bool
}

// at runs one draw.
func (s *search) at(z []float64) place {
	out, ok := rows(1, len(s.readings)), make([]bool, 1)
	runAll(s.model, [][]float64{z}, out, ok, 1)
	s.runs++
	p := place{z: z, predicted: out[0], runs: ok[0], total: math.Inf(1)}
	if p.runs {
		p.residual = make([]float64, len(s.readings))
		for j, r := range s.readings {
			p.residual[j] = (r.Value - out[0][j]) / r.Err
		}
		p.total = p.sum(nil)
	}
	return p
}

// sum is the sum of squares with the readings that count; nil means all.
func (p place) sum(counts []bool) float64 {
	total := floats.Dot(p.z, p.z)
	for j, r := range p.residual {
		if counts == nil || counts[j] {
			total += r * r
		}
	}
	return total
}

// from searches from a draw that runs, by the readings that count alone.
func (s *search) from(start place, counts []bool) Best {
	before := s.runs
	here := start
	var slope [][]float64
	for range searchSteps {
		slope = s.slopes(here)
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
	degrees := 0
	for _, c := range counts {
		if c {
			degrees++
		}
	}
	b := Best{
		Z: here.z, Predicted: here.predicted, Residual: here.residual, slope: slope,
		ChiSquare: here.sum(counts), Degrees: degrees, P: 1, Runs: s.runs - before,
	}
	if degrees > 0 {
		b.P = distuv.ChiSquared{K: float64(degrees)}.Survival(b.ChiSquare)
	}
	return b
}

// shortened takes the Gauss-Newton step from here, halved until it improves.
func (s *search) shortened(here place, slope [][]float64, counts []bool) (place, bool) {
	var rowsOf [][]float64
	var innovation, noise []float64
	for j, row := range slope {
		if counts[j] {
			rowsOf = append(rowsOf, row)
			innovation = append(innovation, here.residual[j]+floats.Dot(row, here.z))
			noise = append(noise, 1)
		}
	}
	target := make([]float64, s.dims)
	if len(rowsOf) > 0 {
		for j, u := range solveInnovation(gramOf(rowsOf), noise, innovation) {
			floats.AddScaled(target, u, rowsOf[j])
		}
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

// slopes of the predictions, in their errors, by each unknown: from both sides
// where both run, from one where only that does, none where neither does.
func (s *search) slopes(here place) [][]float64 {
	k := len(s.readings)
	z, out, ok := rows(2*s.dims, s.dims), rows(2*s.dims, k), make([]bool, 2*s.dims)
	for i := range z {
		copy(z[i], here.z)
		z[i][i/2] += halfStep * float64(1-2*(i%2))
		z[i][i/2] = max(-Clip, min(Clip, z[i][i/2]))
	}
	runAll(s.model, z, out, ok, s.workers)
	s.runs += len(z)
	slope := rows(k, s.dims)
	for i := range s.dims {
		high, low := 2*i, 2*i+1
		above, below := out[high], out[low]
		zAbove, zBelow := z[high][i], z[low][i]
		if !ok[high] {
			above, zAbove = here.predicted, here.z[i]
		}
		if !ok[low] {
			below, zBelow = here.predicted, here.z[i]
		}
		if zAbove <= zBelow {
			continue
		}
		for j, r := range s.readings {
			slope[j][i] = (above[j] - below[j]) / (zAbove - zBelow) / r.Err
		}
	}
	return slope
}
