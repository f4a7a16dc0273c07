package cellfit

import (
	"math"
	"sort"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// knots of the four curves over charge. The open-circuit voltage needs them
// dense near empty, where it drops by a volt.
var (
	restKnots = []float64{0, 0.01, 0.02, 0.035, 0.05, 0.075, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 0.98, 1}
	ohmKnots  = []float64{0, 0.03, 0.06, 0.1, 0.15, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 1}
	fastKnots = []float64{0, 0.05, 0.1, 0.25, 0.5, 0.75, 1}
	slowKnots = []float64{0, 0.05, 0.1, 0.25, 0.5, 0.75, 1}
)

// Column offsets of the four curves in the vector of unknowns.
var (
	ohmAt    = len(restKnots)
	fastAt   = ohmAt + len(ohmKnots)
	slowAt   = fastAt + len(fastKnots)
	unknowns = slowAt + len(slowKnots)
)

// hat returns the piecewise linear weights of z among knots: i and i+1 with
// weights 1-f and f. Outside, the end segments are carried on.
func hat(knots []float64, z float64) (i int, f float64) {
	i = sort.SearchFloat64s(knots, z) - 1
	i = min(max(i, 0), len(knots)-2)
	return i, (z - knots[i]) / (knots[i+1] - knots[i])
}

// clampHat is hat with the end values held, for resistances.
func clampHat(knots []float64, z float64) (i int, f float64) {
	i, f = hat(knots, z)
	return i, min(max(f, 0), 1)
}

// shape is what enters the equations non-linearly.
type shape struct {
	fullAh     float64
	tau1, tau2 float64   // s
	kiloJ      float64   // activation energy of resistance, kJ/mol
	unit       []float64 // capacities of further specimens over the first's
	wells      chemistry.WellShape
}

// fullAhOf returns the full charge of a specimen.
func (s shape) fullAhOf(unit int) float64 {
	if unit == 0 {
		return s.fullAh
	}
	return s.fullAh * s.unit[unit-1]
}

// gasConstant is the molar gas constant, kJ/(mol K) (exact since the 2019 SI).
const gasConstant = 8.314462618e-3

// arrhenius is the factor on resistance at tempC against 25 deg C.
func arrhenius(kiloJ, tempC float64) float64 {
	return math.Exp(kiloJ / gasConstant * (1/(math.Max(tempC, -60)+273.15) - 1/298.15))
}

// longestS is the longest time over which charge and temperature are taken as
// constant inside the equations of a branch.
const longestS = 20

// equations writes the rows of the linear system of one log: the voltage of
// each row as a sum over the unknowns. The charge at the first row is given.
func (c *curve) equations(s shape, start float64, row func(i int, coef []float64, volts float64)) {
	coef := make([]float64, unknowns)
	one, two := make([]float64, len(fastKnots)), make([]float64, len(slowKnots))
	wells := battery.Wells{CapacityAh: s.fullAhOf(c.unit), C: s.wells.C, KPerS: s.wells.KPerS}
	q := wells.Full()
	q.AvailableAh *= start
	q.BoundAh *= start
	head := func() float64 { return q.AvailableAh / (wells.C * wells.CapacityAh) }
	l := c.log
	for i := range l.TimeS {
		if i > 0 {
			dt := l.TimeS[i] - l.TimeS[i-1]
			mean := (l.ChargeAh[i] - l.ChargeAh[i-1]) / dt * 3600
			n := int(math.Ceil(dt / longestS))
			if n > 500 {
				n = 500
			}
			part := dt / float64(n)
			e1, e2 := math.Exp(-part/s.tau1), math.Exp(-part/s.tau2)
			temp := arrhenius(s.kiloJ, (c.temp[i]+c.temp[i-1])/2)
			for range n {
				z := head()
				decay(one, e1)
				k, f := clampHat(fastKnots, z)
				one[k] += (1 - e1) * mean * temp * (1 - f)
				one[k+1] += (1 - e1) * mean * temp * f
				decay(two, e2)
				k, f = clampHat(slowKnots, z)
				two[k] += (1 - e2) * mean * temp * (1 - f)
				two[k+1] += (1 - e2) * mean * temp * f
				q = wells.After(q, mean, part)
			}
		}
		clear(coef)
		z := head()
		k, f := hat(restKnots, z)
		coef[k], coef[k+1] = 1-f, f
		temp := arrhenius(s.kiloJ, c.temp[i])
		k, f = clampHat(ohmKnots, z)
		coef[ohmAt+k], coef[ohmAt+k+1] = -l.Amps[i]*temp*(1-f), -l.Amps[i]*temp*f
		for k := range one {
			coef[fastAt+k] = -one[k]
		}
		for k := range two {
			coef[slowAt+k] = -two[k]
		}
		row(i, coef, l.Volts[i]/c.cells)
	}
}

func decay(x []float64, e float64) {
	for i := range x {
		x[i] *= e
	}
}
