package draws

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
			addScaled(centre, wi, x)
			addScaled(middle, wi, s.residual[i])
		}
	}
	s.slope = s.regress(w, centre, middle, x)

	p := proposal{choices: s.choices, innovation: middle, slope: make([][]float64, len(s.readings))}
	for j, row := range s.slope {
		p.innovation[j] -= dot(row, centre)
		p.slope[j] = make([]float64, s.dims)
		addScaled(p.slope[j], -1, row[:s.dims]) // of the prediction, no longer of the residual
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
	spread := newSymmetric(d) // of which the upper half is summed
	for i, wi := range w {
		if wi == 0 {
			continue
		}
		s.columnsOf(x, s.z[i])
		addScaled(x, -1, centre)
		for a, xa := range x {
			addScaled(spread.row(a)[a:], wi*xa, x[a:])
			for j, r := range s.residual[i] {
				slope[j][a] += wi * xa * (r - middle[j])
			}
		}
	}
	for a := range d {
		for b := a; b < d; b++ {
			spread.set(a, b, spread.at(a, b))
		}
		spread.set(a, a, spread.at(a, a)+ridge)
		for j := range s.slope {
			slope[j][a] += ridge * s.slope[j][a]
		}
	}
	l, ok := triangle(spread)
	if !ok {
		return rows(k, d) // unreachable short of an overflow: no slope
	}
	for j := range slope {
		l.solve(slope[j])
	}
	return slope
}
