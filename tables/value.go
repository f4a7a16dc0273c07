package tables

import (
	"math"

	"example.org/packcheck/internal/portable"
)

// Value is a figure with its spread: Low <= Likely <= High, all in the unit
// that the name of the field gives, and the ID of its source.
//
// The zero Value means that the table has no such figure.
type Value struct {
	Low, Likely, High float64
	Source            string
}

// Known reports whether the table has this figure at all.
func (v Value) Known() bool { return v.Source != "" }

// Scale returns v with every number multiplied by factor (>= 0).
func (v Value) Scale(factor float64) Value {
	v.Low *= factor
	v.Likely *= factor
	v.High *= factor
	return v
}

// Point is one point of a curve.
type Point struct{ X, Y float64 }

// logInterpolate reads a curve of positive numbers, ascending in X, on
// logarithmic axes. Below the first point it continues with the power below,
// above the last with the power above.
func logInterpolate(curve []Point, x, below, above float64) float64 {
	first, last := curve[0], curve[len(curve)-1]
	switch {
	case x <= first.X:
		return first.Y * portable.Pow(x/first.X, below)
	case x >= last.X:
		return last.Y * portable.Pow(x/last.X, above)
	}
	i := 1
	for curve[i].X < x {
		i++
	}
	a, b := curve[i-1], curve[i]
	if x == b.X {
		return b.Y // exactly the printed figure
	}
	share := math.Log(x/a.X) / math.Log(b.X/a.X)
	return a.Y * portable.Pow(b.Y/a.Y, share)
}

// linearInterpolate reads a curve ascending in X on linear axes and holds the
// end values outside it.
func linearInterpolate(curve []Point, x float64) float64 {
	first, last := curve[0], curve[len(curve)-1]
	switch {
	case x <= first.X:
		return first.Y
	case x >= last.X:
		return last.Y
	}
	i := 1
	for curve[i].X < x {
		i++
	}
	a, b := curve[i-1], curve[i]
	return a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)
}
