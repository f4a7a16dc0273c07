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
	drawsPerUnknown = 3.0
)

// fit returns the proposal that a regression of the residuals on the unknowns
// gives, near what the readings say. Each alternative of a choice is a column
// of its own behind those of the unknowns, whose own column stays empty.
func (s *sampler) fit() proposal {
	w := s.tempered()
	columns := s.dims
	for _, a := range s.choices {
		columns += len(a.share)
	}
	centre, middle, x := make([]float64, columns), make([]float64, len(s.readings)), make([]float64, columns)
	for i, wi := range w {
		if wi > 0 {
			s.columnsOf(x, s.z[i])
			floats.AddScaled(centre, wi, x)
			floats.AddScaled(middle, wi, s.residual[i])
		}
	}
	s.slope = s.regress(w, centre, middle, x)

	p := proposal{choices: s.choices, innovation: middle, slope: make([][]float64, len(s.readings))}
	for j, row := range s.slope {
		p.innovation[j] -= floats.Dot(row, centre)
		p.slope[j] = make([]float64, s.dims)
		floats.AddScaled(p.slope[j], -1, row[:s.dims]) // of the prediction, no longer of the residual
	}
	for c := range s.choices {
		a := &s.choices[c]
		p.chance = append(p.chance, a.chances(s.z, w))
		shift := rows(len(a.share), len(s.readings))
		for j, row := range s.slope {
			var mean float64
			for n := range a.share {
				shift[n][j] = a.effect(row, n)
				mean += p.chance[c][n] * shift[n][j]
			}
			p.innovation[j] += mean
			for n := range a.share {
				shift[n][j] -= mean
			}
		}
		p.shift = append(p.shift, shift)
	}
	p.finish(s.options.Freedom, s.strained)
	return p
}

// columnsOf sets x to what a draw is regressed on: the unknowns, 0 for choices,
// then a standardized indicator for each alternative.
func (s *sampler) columnsOf(x, z []float64) {
	copy(x, z)
	for c := range s.choices {
		a := &s.choices[c]
		x[a.unknown] = 0
		picked := a.of(z[a.unknown])
		for n, share := range a.share {
			x[a.first+n] = -share / a.scale[n]
		}
		x[a.first+picked] += 1 / a.scale[picked]
	}
}

// effect is what a row of slopes says of one alternative.
func (a *alternatives) effect(row []float64, picked int) float64 {
	sum := row[a.first+picked] / a.scale[picked]
	for n, share := range a.share {
		sum -= row[a.first+n] * share / a.scale[n]
	}
	return sum
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

// regress returns the slope of each residual by weighted ridge regression,
// held to that of the round before; x is for its own use.
func (s *sampler) regress(w, centre, middle, x []float64) [][]float64 {
	d, k := len(centre), len(s.readings)
	slope := rows(k, d)
	if d == 0 {
		return slope
	}
	spread := mat.NewSymDense(d, nil)
	raw := spread.RawSymmetric()
	cross := mat.NewDense(d, k, nil)
	for i, wi := range w {
		if wi == 0 {
			continue
		}
		s.columnsOf(x, s.z[i])
		floats.Sub(x, centre)
		for a, xa := range x {
			floats.AddScaled(raw.Data[a*raw.Stride+a:a*raw.Stride+d], wi*xa, x[a:])
			row := cross.RawRowView(a)
			for j, r := range s.residual[i] {
				row[j] += wi * xa * (r - middle[j])
			}
		}
	}
	for a := range d {
		spread.SetSym(a, a, spread.At(a, a)+ridge)
		for j := range s.slope {
			cross.Set(a, j, cross.At(a, j)+ridge*s.slope[j][a])
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
