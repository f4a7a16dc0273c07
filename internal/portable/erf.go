package portable

import "math"

// seriesBelow is where the series of the error function ends and the continued
// fraction of what it lacks to one begins. Both are in M. Abramowitz and I. A.
// Stegun, Handbook of Mathematical Functions (1964): 7.1.6 and 7.1.14.
const seriesBelow = 2

// Erf returns the error function of x, within 1e-15.
func Erf(x float64) float64 {
	switch {
	case math.IsNaN(x):
		return x
	case x < 0:
		return -Erf(-x)
	case x < seriesBelow:
		return erfSeries(x)
	}
	return 1 - erfcFraction(x)
}

// NormalBelow is the chance that a standard normal number lies below x.
func NormalBelow(x float64) float64 { return Erfc(-x/math.Sqrt2) / 2 }

// Erfc returns 1 - [Erf](x), within 1e-15, and within a share of 1e-13 where that is
// small.
func Erfc(x float64) float64 {
	switch {
	case math.IsNaN(x):
		return x
	case x < seriesBelow:
		return 1 - Erf(x)
	}
	return erfcFraction(x)
}

// erfSeries sums 2/sqrt(pi) e^(-x^2) 2^n x^(2n+1) / (1*3*...*(2n+1)).
func erfSeries(x float64) float64 {
	square := float64(x * x)
	term, sum := x, x
	for n := 3.0; term > 1e-18*sum; n += 2 {
		term = float64(term*2*square) / n
		sum += term
	}
	return float64(2 / math.SqrtPi * Exp(-square) * sum)
}

// erfcFraction is e^(-x^2)/sqrt(pi) over x + 1/2 / (x + 2/2 / (x + 3/2 / ...)), from
// a place on where the rest is below the last digit.
func erfcFraction(x float64) float64 {
	if math.IsInf(x, 1) {
		return 0
	}
	const places = 80
	below := x
	for n := places; n > 0; n-- {
		below = x + float64(n)/2/below
	}
	return Exp(-float64(x*x)) / math.SqrtPi / below
}
