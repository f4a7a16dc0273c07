package draws

import (
	"math"

	"example.org/packcheck/internal/portable"
)

// The laws of probability that are needed, with the same bits on every processor.

// ChiSquareBeyond is the chance of a chi-square of a whole number of degrees of
// freedom above x; 1 without any degree, or for an x of 0 or less; NaN for NaN. For
// even degrees it is a Poisson sum, for odd ones that of its halves (M. Abramowitz
// and I. A. Stegun, Handbook of Mathematical Functions (1964): 26.4.4 and 26.4.5).
func ChiSquareBeyond(x float64, degrees int) float64 {
	switch {
	case math.IsNaN(x):
		return x
	case degrees <= 0 || x <= 0:
		return 1
	case math.IsInf(x, 1):
		return 0
	}
	half := x / 2
	term, at := portable.Exp(-half), 1.0 // the term of two degrees, and what the next is divided by
	var sum float64
	if degrees%2 == 1 {
		sum = portable.Erfc(math.Sqrt(half))
		term *= 2 * math.Sqrt(half/math.Pi)
		at = 1.5
	}
	for left := degrees / 2; left > 0; left-- {
		sum += term
		term *= half / at
		at++
	}
	return min(1, sum)
}

// studentQuantile is the quantile at p, between 0 and 1, of Student's law with four
// degrees of freedom ([defaultFreedom]), which has a closed form (W. T. Shaw,
// Journal of Computational Finance 9 (2006) 37-73; the formula from memory).
func studentQuantile(p float64) float64 {
	root := math.Sqrt(4 * p * (1 - p))
	q := math.Cos(math.Acos(root)/3) / root
	return math.Copysign(2*math.Sqrt(max(0, q-1)), p-0.5)
}

// NormalScore is the standard normal that is as rare as a residual of Student's law
// with four degrees of freedom, with which readings are weighed: what one of them
// counts for in a chi-square. At 2.776 and 4.604, the two-sided 5 and 1 % points, it is
// 1.960 and 2.576 (tables of either law). Far out it stays at 8.
func NormalScore(residual float64) float64 {
	t := math.Abs(residual)
	u := t / math.Sqrt(4+t*t)
	beyond := 0.5 - u*(3-u*u)/4 // on one side; a closed form
	const most = 8
	if !(beyond > 1e-15) {
		return math.Copysign(most, residual)
	}
	return math.Copysign(-math.Sqrt2*math.Erfinv(2*beyond-1), residual)
}
