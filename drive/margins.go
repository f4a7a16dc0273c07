package drive

import (
	"math"

	"example.org/packcheck/answer"
)

// A finding needs more than the error of what it was computed from.
const (
	// amountMargin is for currents, forces, torques, speeds and volts: those of a
	// launch are right within 5e-4 (see tolerance), ratios of two within 1e-3.
	amountMargin = 2e-3
	// timeMargin is for seconds: those of a launch are right within 5e-3.
	timeMargin = 1e-2
	// paceMargin is for speeds against what is made for an age: both are told to two
	// digits, and nobody is too fast at the speed that is made.
	paceMargin = 1e-2
	// degreeMargin in kelvin is what the steps of an outing leave open; own choice.
	degreeMargin = 0.5
)

// over reports whether a computed amount is above its limit for certain.
func over(amount, limit float64) bool { return amount > limit*(1+amountMargin) }

// isNumber reports whether x is finite.
func isNumber(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// faster reports whether a speed is above what is made for an age for certain.
func faster(ms, limitMS float64) bool { return ms > limitMS*(1+paceMargin) }

// longer reports whether a time is above its limit for certain.
func longer(seconds, limitS float64) bool { return seconds > limitS*(1+timeMargin) }

// shorter reports whether a time is below its limit for certain.
func shorter(seconds, limitS float64) bool { return seconds < limitS*(1-timeMargin) }

// hotter reports whether a temperature is above its limit for certain.
func hotter(celsius, limitC float64) bool { return celsius > limitC+degreeMargin }

// wearOrPart is the harm of what wears at first and breaks when it has to be
// fixed.
func wearOrPart(l answer.Level) answer.Harm {
	if l >= answer.FixFirst {
		return answer.Part
	}
	return answer.Wear
}
