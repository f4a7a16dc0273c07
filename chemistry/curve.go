package chemistry

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/interp"
)

// Curve is a table of Y over rising X. Between the points it runs along a
// piecewise cubic that never leaves the range of its two neighbours (Fritsch
// & Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300), so a rising table gives
// a rising curve. Outside the table the end values hold.
type Curve struct {
	X, Y []float64
}

// Flat returns the curve that has the same value everywhere.
func Flat(y float64) Curve { return Curve{X: []float64{0}, Y: []float64{y}} }

// Empty reports whether the curve has no points.
func (c Curve) Empty() bool { return len(c.X) == 0 }

// At returns the value at x: exact at the points, the end values outside. It
// is meant for single looks; [Curve.Grid] serves inner loops. An empty curve
// gives NaN.
func (c Curve) At(x float64) float64 {
	if i, ok := slices.BinarySearch(c.X, x); ok && c.check() == nil {
		return c.Y[i] // where most tables are asked
	}
	return c.Func()(x)
}

// Func returns the curve as a function, prepared once. A curve that is not one
// (empty, X not rising, not finite) gives NaN everywhere.
func (c Curve) Func() func(float64) float64 {
	nothing := func(float64) float64 { return math.NaN() }
	if c.check() != nil {
		return nothing
	}
	switch len(c.X) {
	case 1:
		y := c.Y[0]
		return func(float64) float64 { return y }
	case 2:
		var p interp.PiecewiseLinear
		if p.Fit(c.X, c.Y) != nil {
			return nothing
		}
		return p.Predict
	}
	var p interp.FritschButland
	if p.Fit(c.X, c.Y) != nil {
		return nothing
	}
	return p.Predict
}

// Grid returns n values at equal distances from lo to hi (both included); that at lo
// where n is 1, none where it is less.
func (c Curve) Grid(lo, hi float64, n int) []float64 {
	f := c.Func()
	grid := make([]float64, max(n, 0))
	for i := range grid {
		grid[i] = f(lo + (hi-lo)*float64(i)/float64(max(n-1, 1)))
	}
	return grid
}

// check says what is wrong with the curve, nil when it can be used.
func (c Curve) check() error {
	if len(c.X) != len(c.Y) {
		return fmt.Errorf("%d values against %d", len(c.X), len(c.Y))
	}
	if len(c.X) == 0 {
		return fmt.Errorf("no values")
	}
	for i := range c.X {
		if math.IsNaN(c.X[i]) || math.IsInf(c.X[i], 0) || math.IsNaN(c.Y[i]) || math.IsInf(c.Y[i], 0) {
			return fmt.Errorf("value %d is not a finite number", i+1)
		}
		if i > 0 && c.X[i] <= c.X[i-1] {
			return fmt.Errorf("value %d (%g) does not rise above the one before (%g)", i+1, c.X[i], c.X[i-1])
		}
	}
	return nil
}
