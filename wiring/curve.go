package wiring

import (
	"math"
	"slices"

	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/solve"
	"example.org/packcheck/tables"
)

// Band is when a fuse opens: not before EarliestS, no later than LatestS.
// Both are +Inf where it does not open, LatestS alone where it need not.
type Band struct {
	EarliestS float64
	LatestS   float64
}

// Curve is a fuse's opening times at one temperature. Copying it is cheap;
// its methods do not allocate. The zero Curve is no fuse: it never opens.
type Curve struct {
	ratedA float64 // rating left at the temperature
	floorS float64 // no shorter latest time is credited
	// mustOpenA is the smallest current for which a latest time is given; +Inf where
	// none is.
	mustOpenA float64
	points    []logPoint
	// earliestPower is the power of 1/current with which the earliest time
	// falls above the highest gate.
	earliestPower float64
}

// logPoint is one gate with natural logarithms of all three numbers; +Inf and
// -Inf stand for "need not open" and "no earliest time".
type logPoint struct{ ratio, earliest, latest float64 }

// adiabaticS is the opening time below which so little heat escapes from a
// fuse element that a constant I2t describes it; own choice, on the makers'
// curves the slope is there by then.
const adiabaticS = 1.0

func newCurve(gates []tables.Gate, ratedA, floorS float64) Curve {
	if len(gates) == 0 {
		return Curve{}
	}
	c := Curve{ratedA: ratedA, floorS: floorS, points: make([]logPoint, len(gates)), earliestPower: 2}
	for i, g := range gates {
		c.points[i] = logPoint{math.Log(g.Ratio), math.Log(earliestOf(gates, i)), math.Log(latestOf(g))}
	}
	if last := earliestOf(gates, len(gates)-1); last > adiabaticS {
		// Heat still escapes at the highest gate: at more current the time
		// falls faster than I2t; the third power is on the early side.
		c.earliestPower = 3
	}
	c.mustOpenA = math.Inf(1)
	for _, p := range slices.Backward(c.points) {
		if !math.IsInf(p.latest, 1) {
			c.mustOpenA = ratedA * portable.Exp(p.ratio)
		}
	}
	return c
}

// earliestOf fills the gaps of the earliest times: a gate that gives none
// takes the next one that does (a fuse opens no sooner at less current); past
// the last, constant I2t from that one if it lies in the range where no heat
// escapes, else no earliest time at all.
func earliestOf(gates []tables.Gate, i int) float64 {
	for _, g := range gates[i:] {
		if g.EarliestS > 0 {
			return g.EarliestS
		}
	}
	for j := i - 1; j >= 0; j-- {
		if e := gates[j].EarliestS; e > 0 && e <= adiabaticS {
			x := gates[j].Ratio / gates[i].Ratio
			return min(e*x*x, latestOf(gates[i]))
		} else if e > 0 {
			break
		}
	}
	return 0
}

// latestOf is when a fuse must have opened at a gate, +Inf where it need not.
func latestOf(g tables.Gate) float64 {
	if g.LatestS == 0 {
		return math.Inf(1)
	}
	return g.LatestS
}

// RatedA returns the rating that is left at the curve's temperature.
func (c Curve) RatedA() float64 { return c.ratedA }

// HoldsA returns the largest current that never opens the fuse.
func (c Curve) HoldsA() float64 {
	if len(c.points) == 0 {
		return math.Inf(1)
	}
	return c.ratedA * portable.Exp(c.points[0].ratio)
}

// MustOpenA returns the smallest current for which a latest time is given.
func (c Curve) MustOpenA() float64 {
	if len(c.points) == 0 {
		return math.Inf(1)
	}
	return c.mustOpenA
}

// Opens returns when the fuse opens at a steady current.
//
// At and below the first gate it never does. Between two gates both times are
// interpolated on logarithmic axes. Above the highest one the latest time
// falls with constant I2t, because a fuse needs no more energy when less heat
// escapes, but not below 10 ms (the arc); the earliest time falls with
// constant I2t too, or with the cube of the current where heat still escapes
// at the highest gate. These two continuations are ours, not published.
// Which way the current flows is all one to a fuse. Of a current that is no
// number there is no telling: both times are NaN.
func (c Curve) Opens(currentA float64) Band {
	if len(c.points) == 0 {
		return Band{math.Inf(1), math.Inf(1)}
	}
	x := math.Log(math.Abs(currentA) / c.ratedA)
	last := c.points[len(c.points)-1]
	switch {
	case x <= c.points[0].ratio:
		return Band{math.Inf(1), math.Inf(1)}
	case math.IsNaN(x):
		return Band{math.NaN(), math.NaN()}
	case x >= last.ratio:
		beyond := x - last.ratio
		latest := portable.Exp(last.latest)
		latest = max(latest*portable.Exp(-2*beyond), min(c.floorS, latest))
		return Band{min(portable.Exp(last.earliest-c.earliestPower*beyond), latest), latest}
	}
	i := 1
	for c.points[i].ratio < x {
		i++
	}
	a, b := c.points[i-1], c.points[i]
	share := (x - a.ratio) / (b.ratio - a.ratio)
	band := Band{portable.Exp(between(a.earliest, b.earliest, share)), portable.Exp(between(a.latest, b.latest, share))}
	band.EarliestS = min(band.EarliestS, band.LatestS)
	return band
}

// between interpolates, minding that infinities do not mix: towards a gate
// without an earliest time there is none, short of a gate that must open the
// fuse need not.
func between(a, b, share float64) float64 {
	switch {
	case share >= 1:
		return b
	case math.IsInf(b, -1):
		return b
	case math.IsInf(a, 1):
		return a
	}
	return a + (b-a)*share
}

// currentBy returns the smallest current whose time, taken from the band by
// pick, is at most wanted; +Inf when none is. Times never rise with current.
func (c Curve) currentBy(wantedS float64, pick func(Band) float64) float64 {
	low, high := c.HoldsA(), c.ratedA*1e4
	if pick(c.Opens(high)) > wantedS {
		return math.Inf(1)
	}
	_, enough := solve.Edge(math.Log(low), math.Log(high), 1e-13, func(logA float64) bool {
		return pick(c.Opens(portable.Exp(logA))) <= wantedS
	})
	return portable.Exp(enough)
}

func earliest(b Band) float64 { return b.EarliestS }
func latest(b Band) float64   { return b.LatestS }
