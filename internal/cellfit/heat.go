package cellfit

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"example.org/packcheck/battery"
)

// HeatFit is the thermal side of a logged pack.
type HeatFit struct {
	JPerK float64 // heat capacity
	WPerK float64 // cooling
}

// FitHeat finds heat capacity and cooling from logs that carry temperatures.
// The heat is what the model says is lost at the logged current; then
//
//	T(t) - T(0) = 1/C integral P dt - h/C integral (T - Ta) dt
//
// is linear in 1/C and h/C. Logs in which nothing gets warm by three kelvin
// tell nothing; ok is false when none does.
func FitHeat(m *battery.Model, logs []*Log, starts []float64) (fit HeatFit, ok bool) {
	a := mat.NewSymDense(2, nil)
	b := mat.NewVecDense(2, nil)
	for k, l := range logs {
		if l.TempC == nil || spread(l.TempC) < 3 {
			continue
		}
		ambient := l.TempC[0]
		s := m.StateAt(starts[k], l.TempC[0])
		var heat, excess float64
		for i := 1; i < l.Rows(); i++ {
			dt := l.TimeS[i] - l.TimeS[i-1]
			if l.AmbientC != nil {
				ambient = l.AmbientC[i]
			}
			amps := (l.ChargeAh[i] - l.ChargeAh[i-1]) / dt * 3600
			s.TempC = (l.TempC[i] + l.TempC[i-1]) / 2
			rested := m.RestedV(s)
			mid := (l.Volts[i] + l.Volts[i-1]) / 2
			heat += amps * (rested - mid) * dt
			advance(m, &s, dt, amps, ambient)
			excess += ((l.TempC[i]+l.TempC[i-1])/2 - ambient) * dt
			x := [2]float64{heat, -excess}
			for p := range 2 {
				for q := p; q < 2; q++ {
					a.SetSym(p, q, a.At(p, q)+dt*x[p]*x[q])
				}
				b.SetVec(p, b.AtVec(p)+dt*x[p]*(l.TempC[i]-l.TempC[0]))
			}
			ok = true
		}
	}
	var chol mat.Cholesky
	if !ok || !chol.Factorize(a) {
		return HeatFit{}, false
	}
	var x mat.VecDense
	if chol.SolveVecTo(&x, b) != nil || !(x.AtVec(0) > 0) || !(x.AtVec(1) > 0) {
		return HeatFit{}, false
	}
	fit = HeatFit{JPerK: 1 / x.AtVec(0), WPerK: x.AtVec(1) / x.AtVec(0)}
	return fit, !math.IsInf(fit.JPerK, 0)
}
