// Package solve finds where something crosses zero: the one root search of this
// module.
//
// The method is Chandrupatla's (Advances in Engineering Software 28 (1997) 145):
// inverse quadratic interpolation where three values say that it will work, and
// the middle of the bracket elsewhere. Where two guesses have not halved the
// bracket its middle comes next, so whatever the function does at most three
// times the evaluations of plain halving are needed. A bracket is kept
// throughout: kinks, jumps and rounding do no harm. Nothing is allocated.
package solve

import "math"

// Bracket is an interval in which a function goes from not positive, at Lo, to
// positive, at Hi. Lo may be the greater number: then the function falls.
type Bracket struct {
	Lo, Hi   float64
	FLo, FHi float64 // the function's values there
}

// Crossing narrows the interval from lo, where f is not positive, to hi, where
// it is positive, until its ends are no further apart than width (a width below
// what float64 can tell apart ends there). What f is at the two ends is taken
// as promised, whatever rounding says; what is not a number counts as not
// positive.
func Crossing(lo, hi, width float64, f func(x float64) float64) Bracket {
	return Narrow(Bracket{lo, hi, f(lo), f(hi)}, width, f)
}

// Narrow is [Crossing] for who knows the values at the ends already.
func Narrow(b Bracket, width float64, f func(x float64) float64) Bracket {
	b.FLo, b.FHi = min(b.FLo, 0), max(b.FHi, 0)
	guesses, goal := 0, 0.0 // how many since the bracket was twice goal
	share := secant(b.FLo, b.FHi)
	for {
		span := b.Hi - b.Lo
		x := b.Lo + span/2
		if !(math.Abs(span) > width) || x == b.Lo || x == b.Hi {
			return b
		}
		if math.Abs(span) <= goal || guesses == 0 {
			guesses, goal = 0, math.Abs(span)/2
		}
		if share >= 0 && guesses < 2 {
			guesses++
			// Off the ends, so that the bracket closes from both sides.
			margin := max(width, 0x1p-52*math.Abs(x)) / math.Abs(span) / 2
			x = b.Lo + span*min(max(share, margin), 1-margin)
		} else {
			guesses = 0
		}
		old := b
		if y := f(x); y > 0 {
			b.Hi, b.FHi = x, y
			share = 1 - inverse(b.Hi, b.Lo, old.Hi, b.FHi, b.FLo, old.FHi)
		} else {
			b.Lo, b.FLo = x, min(y, 0)
			share = inverse(b.Lo, b.Hi, old.Lo, b.FLo, b.FHi, old.FLo)
		}
		if math.IsNaN(share) {
			share = -1
		}
	}
}

// secant is the share of the way from low to high at which a line is zero.
func secant(low, high float64) float64 {
	if share := -low / (high - low); share >= 0 && share <= 1 {
		return share
	}
	return 0.5
}

// inverse is the share of the way from x1, the newest place, to x2, across the
// zero, at which the inverse parabola through both and x3, where x1 was before,
// is zero; not a number where the three values do not promise that it helps.
func inverse(x1, x2, x3, f1, f2, f3 float64) float64 {
	xi, phi := (x1-x2)/(x3-x2), (f1-f2)/(f3-f2)
	if !(phi*phi < xi && (1-phi)*(1-phi) < 1-xi) {
		return math.NaN()
	}
	return f1/(f2-f1)*f3/(f2-f3) + (x3-x1)/(x2-x1)*f1/(f3-f1)*f2/(f3-f2)
}

// Edge narrows the interval from lo, where yes is false, to hi, where it is
// true, to at most width, and returns its ends. It halves: a condition says
// nothing of how far away its edge is, so use [Crossing] where there is a number.
func Edge(lo, hi, width float64, yes func(x float64) bool) (before, after float64) {
	for math.Abs(hi-lo) > width {
		half := lo + (hi-lo)/2
		if half == lo || half == hi {
			break
		}
		if yes(half) {
			hi = half
		} else {
			lo = half
		}
	}
	return lo, hi
}
