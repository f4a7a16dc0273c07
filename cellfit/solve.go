package cellfit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// solve finds the curves for a shape, and returns twice the negative
// logarithm of how likely all of it is. The charge at each start follows from
// the rest curve, so a few rounds are needed when that one moves.
func (f *fitter) solve(s shape, rounds int) float64 {
	var total float64
	for range rounds {
		f.starts = f.starts[:0]
		for _, c := range f.curves {
			f.starts = append(f.starts, f.startOf(c, s))
		}
		normal := mat.NewSymDense(unknowns, nil)
		right := make([]float64, unknowns)
		f.addPrior(normal, right)
		for i, c := range f.curves {
			f.addCurve(normal, right, c, s, f.starts[i])
		}
		x, cov, ok := f.bounded(normal, right)
		if !ok {
			return math.Inf(1)
		}
		f.best, f.normal = x, cov
	}
	total = f.priorCost()
	f.rms = f.rms[:0]
	for i, c := range f.curves {
		var sum float64
		var plain float64
		c.equations(s, f.starts[i], func(row int, coef []float64, volts float64) {
			d := dot(coef, f.best) - volts
			plain += d * d
			sum += d * d * c.heavy[row]
		})
		total += sum * c.weight * c.weight
		f.rms = append(f.rms, math.Sqrt(plain/float64(c.log.Rows())))
	}
	return total
}

// startOf finds the charge at a log's first row from its voltage, with the
// ohmic drop taken off when a current already flows.
func (f *fitter) startOf(c *curve, s shape) float64 {
	if c.full {
		return 1
	}
	l := c.log
	volts := l.Volts[0] / c.cells
	temp := arrhenius(s.kiloJ, c.temp[0])
	lo, hi := 0.0, 1.0
	for range 40 {
		z := (lo + hi) / 2
		k, w := hat(restKnots, z)
		u := f.best[k]*(1-w) + f.best[k+1]*w
		k, w = clampHat(ohmKnots, z)
		r := f.best[ohmAt+k]*(1-w) + f.best[ohmAt+k+1]*w
		if u-l.Amps[0]*temp*r < volts {
			lo = z
		} else {
			hi = z
		}
	}
	return (lo + hi) / 2
}

// smoothness: how much the deviation of a curve from the prior may bend from
// knot to knot.
const (
	bendV   = 0.006 // V
	bendOhm = 0.25  // of the prior's value
)

// addPrior puts the base profile and the smoothness into the equations.
func (f *fitter) addPrior(normal *mat.SymDense, right []float64) {
	for k := range unknowns {
		w := 1 / (f.sigma[k] * f.sigma[k])
		normal.SetSym(k, k, normal.At(k, k)+w)
		right[k] += w * f.mean[k]
	}
	bend := func(at, n int, size func(k int) float64) {
		for k := at + 1; k < at+n-1; k++ {
			w := 1 / (size(k) * size(k))
			coef := [3]float64{1, -2, 1}
			var target float64
			for a := range 3 {
				target += coef[a] * f.mean[k-1+a]
			}
			for a := range 3 {
				for b := a; b < 3; b++ {
					i, j := k-1+a, k-1+b
					normal.SetSym(i, j, normal.At(i, j)+w*coef[a]*coef[b])
				}
				right[k-1+a] += w * coef[a] * target
			}
		}
	}
	bend(0, len(restKnots), func(k int) float64 {
		if knotOf(k) < 0.15 {
			return 10 * bendV
		}
		return bendV
	})
	ohms := func(k int) float64 {
		if knotOf(k) < 0.2 {
			return 10 * bendOhm * f.mean[k]
		}
		return bendOhm * f.mean[k]
	}
	bend(ohmAt, len(ohmKnots), ohms)
	bend(fastAt, len(fastKnots), ohms)
	bend(slowAt, len(slowKnots), ohms)
}

// priorCost is what the prior thinks of the solution.
func (f *fitter) priorCost() float64 {
	var sum float64
	for k, x := range f.best {
		d := (x - f.mean[k]) / f.sigma[k]
		sum += d * d
	}
	return sum
}

// addCurve adds the rows of one log to the normal equations.
func (f *fitter) addCurve(normal *mat.SymDense, right []float64, c *curve, s shape, start float64) {
	used := make([]int, 0, unknowns)
	raw := normal.RawSymmetric()
	c.equations(s, start, func(rowIndex int, coef []float64, volts float64) {
		w := c.weight * c.weight * c.heavy[rowIndex]
		used = used[:0]
		for k, x := range coef {
			if x != 0 {
				used = append(used, k)
			}
		}
		for a, i := range used {
			wi := w * coef[i]
			right[i] += wi * volts
			row := raw.Data[i*raw.Stride:]
			for _, j := range used[a:] {
				row[j] += wi * coef[j]
			}
		}
	})
}

// leastStep is the least rise of the rest curve from knot to knot, V.
const leastStep = 2e-4

// bounded solves the normal equations for steps of the rest curve instead of
// its values, so that "never falls" and "resistance is positive" are both
// lower bounds; unknowns that would come out below are held at theirs.
func (f *fitter) bounded(normal *mat.SymDense, right []float64) ([]float64, *mat.SymDense, bool) {
	n := len(restKnots)
	steps := mat.NewSymDense(unknowns, nil)
	steps.CopySym(normal)
	rightSteps := slices.Clone(right)
	// x = T y with T a cumulative sum over the rest curve; y is solved for.
	sum := mat.DenseCopyOf(steps)
	for k := n - 2; k >= 0; k-- {
		rightSteps[k] += rightSteps[k+1]
		for j := range unknowns {
			sum.Set(k, j, sum.At(k, j)+sum.At(k+1, j))
		}
	}
	for k := n - 2; k >= 0; k-- {
		for i := range unknowns {
			sum.Set(i, k, sum.At(i, k)+sum.At(i, k+1))
		}
	}
	for i := range unknowns {
		for j := i; j < unknowns; j++ {
			steps.SetSym(i, j, sum.At(i, j))
		}
	}
	lower := slices.Clone(f.lower)
	for k := 1; k < n; k++ {
		lower[k] = leastStep
	}
	held := make([]bool, unknowns)
	for range unknowns {
		a := mat.NewSymDense(unknowns, nil)
		a.CopySym(steps)
		b := slices.Clone(rightSteps)
		for k, h := range held {
			if h {
				const stiff = 1e13
				a.SetSym(k, k, a.At(k, k)+stiff)
				b[k] += stiff * lower[k]
			}
		}
		var chol mat.Cholesky
		if !chol.Factorize(a) {
			return nil, nil, false
		}
		var y mat.VecDense
		if chol.SolveVecTo(&y, mat.NewVecDense(unknowns, b)) != nil {
			// Badly conditioned is not unsolved: the held rows are stiff.
			if y.Len() != unknowns {
				return nil, nil, false
			}
		}
		again := false
		for k := 1; k < unknowns; k++ {
			if !held[k] && y.AtVec(k) < lower[k] {
				held[k], again = true, true
			}
		}
		if again {
			continue
		}
		x := slices.Clone(y.RawVector().Data)
		for k := 1; k < n; k++ {
			x[k] += x[k-1]
		}
		return x, normal, true
	}
	return nil, nil, false
}

func dot(a, b []float64) float64 {
	var sum float64
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}
