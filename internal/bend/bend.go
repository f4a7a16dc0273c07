// Package bend has the one curve along which a polarisation branch gives way to
// a high current: the inverse hyperbolic sine of the Butler-Volmer equation
// with equal coefficients, cheap enough for every step of every case.
package bend

import "math"

// Settled returns the volts at which a branch settles that would settle at
// straightV, were it straight: kneeV asinh(straightV/kneeV). With no knee it is
// straight.
func Settled(straightV, kneeV float64) float64 {
	if kneeV == 0 {
		return straightV
	}
	return kneeV * Asinh(straightV/kneeV)
}

// Steep returns how many volts for each ampere more a branch settles higher.
func Steep(straightOhm, amps, kneeV float64) float64 {
	if kneeV == 0 {
		return straightOhm
	}
	x := straightOhm * amps / kneeV
	return straightOhm / math.Sqrt(1+x*x)
}

// near and far bound the two ratios of polynomials; beyond far stands the
// logarithm, which no pack that still works comes to.
const (
	near = 4
	far  = 24
)

// Coefficients for the least relative error: of asinh(x)/x in x squared up to
// near (2.6e-7), of asinh(x) in x from near to far (3.1e-7). Fitted for this
// package by weighted least squares to math.Asinh; the test holds the error.
const (
	p1, p2, p3, p4 = 1.04294687307, 0.263989537139, 0.0151724176669, 9.62845283767e-05
	q1, q2, q3, q4 = 1.20960563816, 0.390662458138, 0.0339686027833, 0.000519554023556

	r0, r1, r2, r3 = -0.192655292693, 1.4613138926, 0.225488120646, 0.00342344552485
	s1, s2, s3     = 0.657440843277, 0.053981443344, 0.000499674772373
)

// Asinh returns the inverse hyperbolic sine to a relative error below 1e-6,
// for every float64.
func Asinh(x float64) float64 {
	u := x * x
	if u < near*near {
		return x * (1 + u*(p1+u*(p2+u*(p3+u*p4)))) / (1 + u*(q1+u*(q2+u*(q3+u*q4))))
	}
	return large(x)
}

// large is Asinh from near on, either way.
func large(x float64) float64 {
	a := math.Abs(x)
	switch {
	case a < far:
		a = (r0 + a*(r1+a*(r2+a*r3))) / (1 + a*(s1+a*(s2+a*s3)))
	case a < 1e100:
		a = math.Log(2*a) + 1/(4*a*a) // what follows is below 3e-7
	default:
		return math.Asinh(x) // 2a must not overflow; also what is not a number
	}
	return math.Copysign(a, x)
}
