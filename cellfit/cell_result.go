package cellfit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"example.org/packcheck/chemistry"
)

// result writes the solution into a profile.
func (f *fitter) result(s shape, cost func([]float64) float64, x []float64) CellFit {
	p := f.o.Base
	ah := f.o.CapacityAh
	volts := slices.Clone(f.best[:len(restKnots)])
	curveOf := func(at int, knots []float64) chemistry.Curve {
		y := make([]float64, len(knots))
		for k := range knots {
			y[k] = f.best[at+k] * ah
		}
		return chemistry.Curve{X: slices.Clone(knots), Y: y}
	}
	p.Rest.VoltsAt = straight(chemistry.Curve{X: restKnots, Y: volts})
	p.Resistance.OhmAh = curveOf(ohmAt, ohmKnots)
	p.Fast.OhmAh, p.Fast.TauS = curveOf(fastAt, fastKnots), s.tau1
	p.Slow.OhmAh, p.Slow.TauS = curveOf(slowAt, slowKnots), s.tau2
	p.Resistance.ReferenceC = 25
	temps := []float64{-20, -10, 0, 10, 20, 25, 30, 40, 50, 60, 70}
	factors := make([]float64, len(temps))
	for i, t := range temps {
		factors[i] = arrhenius(s.kiloJ, t)
	}
	p.Resistance.TempFactor = chemistry.Curve{X: temps, Y: factors}
	p.Capacity.Ratio = s.fullAh / ah
	if f.o.MeanUnit {
		var sum float64
		for _, c := range f.curves {
			sum += s.fullAhOf(c.unit)
		}
		p.Capacity.Ratio = sum / float64(len(f.curves)) / ah
	}
	p.Wells.C, p.Wells.KPerS = s.wells.C, s.wells.KPerS
	fit := CellFit{
		Profile: p, FullAh: s.fullAh, KiloJ: s.kiloJ,
		UnitAh:        []float64{s.fullAh},
		ChargeAtStart: slices.Clone(f.starts), RMSV: slices.Clone(f.rms),
	}
	for u := range s.unit {
		fit.UnitAh = append(fit.UnitAh, s.fullAhOf(u+1))
	}
	var chol mat.Cholesky
	var cov mat.SymDense
	if chol.Factorize(f.normal) && chol.InverseTo(&cov) == nil {
		for k := range ohmKnots {
			fit.OhmSigma = append(fit.OhmSigma, math.Sqrt(cov.At(ohmAt+k, ohmAt+k))*ah)
		}
	}
	if f.o.FullAh == 0 { // curvature of the cost along the capacity
		const h = 0.01
		up, down := slices.Clone(x), slices.Clone(x)
		up[2] += h
		down[2] -= h
		here := cost(x)
		curvature := (cost(up) - 2*here + cost(down)) / (h * h)
		if curvature > 0 {
			fit.FullAhSigma = s.fullAh * math.Sqrt(2/curvature)
		}
	}
	return fit
}

// straight adds points inside every segment, so that the smooth curve that the
// cell model draws through a table stays close to the straight lines that were
// fitted, also where it bends sharply.
func straight(c chemistry.Curve) chemistry.Curve {
	out := chemistry.Curve{X: []float64{c.X[0]}, Y: []float64{c.Y[0]}}
	for i := 1; i < len(c.X); i++ {
		for _, f := range []float64{0.2, 0.8, 1} {
			out.X = append(out.X, c.X[i-1]+f*(c.X[i]-c.X[i-1]))
			out.Y = append(out.Y, c.Y[i-1]+f*(c.Y[i]-c.Y[i-1]))
		}
	}
	return out
}
