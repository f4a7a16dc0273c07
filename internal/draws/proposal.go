package draws

import (
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// widening of the errors in a proposal, so that its tails lie outside those of
// the answer. Common practice, no published source; tried on vehicles.
const widening = 1.3

// proposal is the normal law that linear readings would give: mean m,
// precision I + J'N^-1 J, where N holds the widened variances of the readings.
// Only a matrix of the readings is ever inverted.
type proposal struct {
	mean     []float64
	slope    [][]float64 // J: of each prediction, in its errors, by each unknown
	atMean   []float64   // J m
	noise    []float64   // N, by reading
	gain     [][]float64 // column j of K = J'(JJ' + N)^-1, as a row
	constant float64     // half the logarithm of det(I + N^-1 JJ') less |m|^2/2
}

// newProposal makes the law of the slope and of the innovation e, the residual
// that the linear model has at z = 0.
func newProposal(slope [][]float64, innovation []float64, freedom float64) proposal {
	k, dims := len(slope), len(slope[0])
	p := proposal{slope: slope, mean: make([]float64, dims), atMean: make([]float64, k), noise: make([]float64, k)}
	for j := range p.noise {
		p.noise[j] = 1
	}
	gram := gramOf(slope)
	for range steadying {
		u := solveInnovation(gram, p.noise, innovation) // (JJ' + N)^-1 e
		clear(p.mean)
		for j, row := range slope {
			floats.AddScaled(p.mean, u[j], row)
		}
		if math.IsInf(freedom, 1) {
			break
		}
		for j, row := range slope { // what a Student law makes of a residual
			r := innovation[j] - floats.Dot(row, p.mean)
			p.noise[j] = max(1, (freedom+r*r)/(freedom+1))
		}
	}
	for i, v := range p.mean {
		p.mean[i] = max(-Clip, min(Clip, v)) // beyond, no draw differs
	}
	for j, row := range slope {
		p.atMean[j] = floats.Dot(row, p.mean)
		p.noise[j] *= widening * widening
	}
	p.constant = -floats.Dot(p.mean, p.mean) / 2
	inverse, logDet := invert(gram, p.noise)
	p.constant += logDet / 2
	p.gain = rows(k, dims)
	for j := range p.gain {
		for i, row := range slope {
			floats.AddScaled(p.gain[j], inverse.At(i, j), row)
		}
	}
	return p
}

// steadying is how often mean and noise are found from each other.
const steadying = 12

// gramOf is JJ'.
func gramOf(slope [][]float64) *mat.SymDense {
	gram := mat.NewSymDense(len(slope), nil)
	for i := range slope {
		for j := i; j < len(slope); j++ {
			gram.SetSym(i, j, floats.Dot(slope[i], slope[j]))
		}
	}
	return gram
}

// factorize is the Cholesky factor of JJ' + N: always positive definite.
func factorize(gram *mat.SymDense, noise []float64) *mat.Cholesky {
	m := mat.NewSymDense(len(noise), nil)
	m.CopySym(gram)
	for j, n := range noise {
		m.SetSym(j, j, m.At(j, j)+n)
	}
	var c mat.Cholesky
	c.Factorize(m)
	return &c
}

// solveInnovation is (JJ' + N)^-1 e.
func solveInnovation(gram *mat.SymDense, noise, innovation []float64) []float64 {
	var u mat.VecDense
	if err := factorize(gram, noise).SolveVecTo(&u, mat.NewVecDense(len(innovation), innovation)); err != nil {
		return make([]float64, len(innovation)) // unreachable short of an overflow: no step
	}
	return u.RawVector().Data
}

// invert returns (JJ' + N)^-1 and log det(I + N^-1 JJ').
func invert(gram *mat.SymDense, noise []float64) (*mat.SymDense, float64) {
	c := factorize(gram, noise)
	logDet := c.LogDet()
	for _, n := range noise {
		logDet -= math.Log(n)
	}
	inverse := mat.NewSymDense(len(noise), nil)
	if err := c.InverseTo(inverse); err != nil {
		inverse.Zero()
	}
	return inverse, logDet
}

// draw turns normal numbers (x for the unknowns, y for the readings) into a
// draw of the law, in place of x: z = m + x - K(Jx - N^1/2 y).
func (p *proposal) draw(x, y []float64) []float64 {
	for j, row := range p.slope {
		y[j] = math.Sqrt(p.noise[j])*y[j] - floats.Dot(row, x)
	}
	for j, column := range p.gain {
		floats.AddScaled(x, y[j], column)
	}
	floats.Add(x, p.mean)
	return x
}

// logRatio is the logarithm of this law's density over the prior's at z.
func (p *proposal) logRatio(z []float64) float64 {
	l := p.constant + floats.Dot(z, p.mean)
	for j, row := range p.slope {
		d := floats.Dot(row, z) - p.atMean[j]
		l -= d * d / (2 * p.noise[j])
	}
	return l
}
