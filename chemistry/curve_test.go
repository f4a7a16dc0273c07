package chemistry_test

import (
	"math"
	"testing"

	"example.org/packcheck/chemistry"
)

func TestCurveKeepsToItsPoints(t *testing.T) {
	c := chemistry.Curve{X: []float64{0, 1, 2, 3, 10}, Y: []float64{0, 0.1, 2, 2.1, 2.2}}
	f := c.Func()
	for i, x := range c.X {
		if got := f(x); math.Abs(got-c.Y[i]) > 1e-12 {
			t.Errorf("at %g: %g, the table says %g", x, got, c.Y[i])
		}
	}
	before := math.Inf(-1)
	for x := -1.0; x < 11; x += 0.01 {
		y := f(x)
		if y < before-1e-12 {
			t.Fatalf("falls at %g, though the table only rises", x)
		}
		before = y
	}
	if f(-5) != 0 || f(50) != 2.2 {
		t.Errorf("outside the table: %g and %g, want the end values", f(-5), f(50))
	}
	grid := c.Grid(0, 10, 11)
	if len(grid) != 11 || grid[10] != 2.2 || math.Abs(grid[2]-2) > 1e-12 {
		t.Errorf("grid %v", grid)
	}
}

func TestACurveThatIsNoneGivesNaN(t *testing.T) {
	for _, c := range []chemistry.Curve{
		{},
		{X: []float64{1, 1}, Y: []float64{0, 1}},
		{X: []float64{2, 1, 0}, Y: []float64{0, 1, 2}},
		{X: []float64{0, 1}, Y: []float64{0}},
		{X: []float64{0, math.NaN()}, Y: []float64{0, 1}},
	} {
		if y := c.At(0.5); !math.IsNaN(y) {
			t.Errorf("%v at 0.5 gives %g", c, y)
		}
	}
	if y := chemistry.Flat(3).At(99); y != 3 {
		t.Errorf("flat curve gives %g", y)
	}
}
