// Package portable has the functions of which the standard library gives other last
// bits on one processor than on another: its exponential is assembly on some, with
// or without fused multiplication, and its power and error function call it. A last
// bit is nothing by itself, but it decides now and then which step comes next, and
// an answer has to be the same on a phone as on a desk.
//
// They are written in plain arithmetic; every product is rounded by itself, which
// the language guarantees for an explicit conversion (The Go Programming Language
// Specification, "Floating-point operators"), so that no compiler may fuse it.
package portable

import "math"

// ln2 in two parts: the high one has trailing zeros, so that its product with a
// whole number below 2^11 is exact (the method of W. J. Cody and W. Waite, Software
// Manual for the Elementary Functions, 1980). ln2High is ln 2 with its last 21 bits
// cleared, ln2Low the rest.
const (
	ln2High = 0x1.62e42feep-01
	ln2Low  = 0x1.a39ef35793c76p-33
)

// Beyond these an exponential is infinite or zero: the logarithms of the largest
// and of the smallest number.
const (
	mostExp  = 709.782712893384
	leastExp = -745.1332191019412
)

// Exp returns e to the power of x; +Inf, 0 and NaN as [math.Exp] does.
func Exp(x float64) float64 {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 1):
		return x
	case x > mostExp:
		return math.Inf(1)
	case x < leastExp:
		return 0
	}
	k := math.Floor(float64(x*math.Log2E) + 0.5)
	high := x - float64(k*ln2High) // exact
	low := float64(k * ln2Low)
	r := high - low
	lost := (high - r) - low // what the last difference rounded off
	// The Taylor series of e^r from its third term, for |r| below 0.35, even and odd
	// powers apart; the first term left out is below 1e-18.
	q := float64(r * r)
	even := 1.0/479001600 + float64(q*(1.0/87178291200))
	even = 1.0/3628800 + float64(q*even)
	even = 1.0/40320 + float64(q*even)
	even = 1.0/720 + float64(q*even)
	even = 1.0/24 + float64(q*even)
	even = 1.0/2 + float64(q*even)
	odd := 1.0/39916800 + float64(q*(1.0/6227020800))
	odd = 1.0/362880 + float64(q*odd)
	odd = 1.0/5040 + float64(q*odd)
	odd = 1.0/120 + float64(q*odd)
	odd = 1.0/6 + float64(q*odd)
	value := 1 + (r + (float64(q*(even+float64(r*odd))) + lost))
	const least = -1021 // below it numbers lose digits, and Ldexp rounds them
	if k < least || k > 1023 {
		return math.Ldexp(value, int(k))
	}
	return value * math.Float64frombits(uint64(int(k)+1023)<<52)
}

// Pow returns x to the power of y. A whole y up to 32 is multiplied out, any other
// power of a positive normal number is e^(y ln x), whose relative error is below
// 3e-16 (1 + |y ln x|); what is left is [math.Pow]'s.
func Pow(x, y float64) float64 {
	const mostWhole = 32
	switch {
	case math.Abs(y) <= mostWhole && y == math.Trunc(y):
		return multiplied(x, int(y))
	case !(x >= 0x1p-1022), math.IsInf(x, 0), math.IsInf(y, 0), math.IsNaN(y):
		return math.Pow(x, y)
	}
	return Exp(float64(y * math.Log(x))) // the logarithm's assembly fuses nothing
}

// multiplied is a whole power.
func multiplied(x float64, n int) float64 {
	if n < 0 {
		return 1 / multiplied(x, -n)
	}
	out := 1.0
	for ; n > 0; n >>= 1 {
		if n&1 == 1 {
			out = float64(out * x)
		}
		x = float64(x * x)
	}
	return out
}
