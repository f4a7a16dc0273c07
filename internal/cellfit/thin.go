package cellfit

import (
	"math"
	"slices"

	"example.org/packcheck/chemistry"
)

// Thinned leaves points out of a curve as long as what runs through the others
// stays within off(y) of it at every point that it had and halfway between. The
// first and the last point stay. Where off gives 0, nothing is left out.
func Thinned(c chemistry.Curve, off func(y float64) float64) chemistry.Curve {
	if len(c.X) < 3 {
		return c
	}
	was := c.Func()
	var at, want []float64
	for i, x := range c.X {
		if i > 0 {
			between := (c.X[i-1] + x) / 2
			at, want = append(at, between), append(want, was(between))
		}
		at, want = append(at, x), append(want, c.Y[i])
	}
	// worst is how far a curve lies off, in what it may.
	worst := func(c chemistry.Curve) float64 {
		is, most := c.Func(), 0.0
		for i, x := range at {
			most = math.Max(most, math.Abs(is(x)-want[i])/math.Max(off(want[i]), 1e-12))
		}
		return most
	}
	for len(c.X) > 2 {
		best, least := 0, 1.0
		for i := 1; i+1 < len(c.X); i++ {
			if w := worst(without(c, i)); w < least {
				best, least = i, w
			}
		}
		if best == 0 {
			break
		}
		c = without(c, best)
	}
	return c
}

// without is a curve without one of its points.
func without(c chemistry.Curve, i int) chemistry.Curve {
	return chemistry.Curve{X: slices.Delete(slices.Clone(c.X), i, i+1), Y: slices.Delete(slices.Clone(c.Y), i, i+1)}
}
