package draws

import (
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

const (
	// ridge holds the slopes to those of the round before, against noise.
	// Common practice, no published source; tried on vehicles.
	ridge = 0.1
	// drawsPerUnknown is how many effective draws a regression wants.
	drawsPerUnknown = 3
)

// fit returns the proposal that a regression of the residuals on the unknowns
// gives, near what the readings say.
func (s *sampler) fit() proposal {
	w := s.tempered()
	centre, middle := make([]float64, s.dims), make([]float64, len(s.readings))
	for i, wi := range w {
		if wi > 0 {
			floats.AddScaled(centre, wi, s.z[i])
			floats.AddScaled(middle, wi, s.residual[i])
		}
	}
	slope := s.regress(w, centre, middle)
	s.slope = slope
	innovation := middle // the residual at z = 0
	for j, row := range slope {
		innovation[j] -= floats.Dot(row, centre)
		for i := range row {
			row[i] = -row[i] // of the prediction, no longer of the residual
		}
	}
	law := newProposal(slope, innovation, s.options.Freedom)
	return law
}

// tempered returns the weights whose likelihood is raised to the greatest
// power up to 1 that leaves enough effective draws for a regression.
func (s *sampler) tempered() []float64 {
	want := min(drawsPerUnknown*float64(s.dims), float64(len(s.raw))/2)
	w := make([]float64, len(s.raw))
	if s.weightsInto(w, 1) >= want {
		return w
	}
	lo, hi := 0.0, 1.0
	for range 30 {
		mid := (lo + hi) / 2
		if s.weightsInto(w, mid) >= want {
			lo = mid
		} else {
			hi = mid
		}
	}
	s.weightsInto(w, lo)
	return w
}

// regress returns the slope of each residual by weighted ridge regression.
func (s *sampler) regress(w, centre, middle []float64) [][]float64 {
	d, k := s.dims, len(s.readings)
	slope := rows(k, d)
	if d == 0 {
		return slope
	}
	spread := mat.NewSymDense(d, nil)
	raw := spread.RawSymmetric()
	cross := mat.NewDense(d, k, nil)
	x := make([]float64, d)
	for i, wi := range w {
		if wi == 0 {
			continue
		}
		floats.SubTo(x, s.z[i], centre)
		for a, xa := range x {
			floats.AddScaled(raw.Data[a*raw.Stride+a:a*raw.Stride+d], wi*xa, x[a:])
			for j, r := range s.residual[i] {
				cross.Set(a, j, cross.At(a, j)+wi*xa*(r-middle[j]))
			}
		}
	}
	for a := range d {
		spread.SetSym(a, a, spread.At(a, a)+ridge)
		for j := range s.slope {
			cross.Set(a, j, cross.At(a, j)-ridge*s.slope[j][a])
		}
	}
	var c mat.Cholesky
	c.Factorize(spread)
	var b mat.Dense
	if err := c.SolveTo(&b, cross); err != nil {
		return slope // unreachable short of an overflow: no slope
	}
	for j := range slope {
		for a := range slope[j] {
			slope[j][a] = b.At(a, j)
		}
	}
	return slope
}
