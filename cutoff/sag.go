package cutoff

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/solve"
)

// CodeOpensAtLaunch is the finding on a launch that opens a cutoff although the
// pack is not empty.
const CodeOpensAtLaunch = "cutoff-opens-at-launch"

// CodeEndsRide is the finding on a cutoff that ends a ride that has hardly begun.
const CodeEndsRide = "cutoff-ends-the-ride"

// StillCharge is the share of its charge from which on a battery is not empty that a
// cutoff takes off the load. Own choice.
const StillCharge = 0.3

// noRideS is with how many seconds of the pedal down a ride is none. Own choice.
const noRideS = 60.0

// EndsRide is the finding on a device that ended the ride after so many seconds with
// the pedal down, where that is no ride and the pack still has its charge.
func EndsRide(where Place, pedalS, chargeLeft float64) (answer.Finding, bool) {
	if !(pedalS < noRideS && chargeLeft >= StillCharge) {
		return answer.Finding{}, false
	}
	keys := keysOf(where)
	f := onCutoff(answer.Finding{
		Code: CodeEndsRide, Level: answer.FixFirst, Harm: answer.Part, Gravity: 2, Unit: "s", Found: pedalS, Limit: noRideS, Want: answer.Above,
		Source: "cutoff-practice", EndsRides: true, Change: answer.FitCutoff, Decides: []string{keys.opensAt, keys.delay},
		Title:  fmt.Sprintf("Within a minute %s ends the ride although the battery is not empty.", where.cutoff()),
		Advice: "Fit a cutoff that opens at fewer volts or waits longer, as far as the battery allows, or soften the launch.",
	})
	if where == Controller {
		f.Item = answer.Board
	}
	return f, true
}

// What is allowed for when a delay is chosen (source "cutoff-practice").
const (
	delayMargin = 1.5  // times the longest sag
	leastDelayS = 2.0  // of an advised delay
	mostDelayS  = 15.0 // what asks for more has another remedy
	delaysPerS  = 1.0  // an advised delay is rounded up to whole seconds: what can be set; own choice
)

// LongestDelayS is the longest delay with which an advised setting still protects. To which
// delays a device can be set nobody publishes, so that a setting does with any from what
// rides through the launch up to this, which leaves room above the most that is asked for.
// Own choice.
const LongestDelayS = 20.0

// Sag is what a launch does to the voltage that a device sees.
type Sag struct {
	LowestV float64 // lowest volts during the launch
	// SecondsBelow returns the longest unbroken time that the launch holds
	// the voltage at or below v. It must not fall with rising v. A nil
	// function stands for a launch that never sags.
	SecondsBelow func(v float64) float64
}

// below returns the seconds below v, 0 for the zero Sag.
func (s Sag) below(v float64) float64 {
	if s.SecondsBelow == nil {
		return 0
	}
	return s.SecondsBelow(v)
}

// RideThrough is how a device takes a launch.
type RideThrough struct {
	OpensEarly bool    // the launch itself opens it
	BelowS     float64 // seconds that the launch holds the volts at or below OpensAtV
	// WouldDelayS is the delay that would ride through, with a margin; WouldOpenAtV
	// the opening voltage that would, at the delay that the device has. Zero
	// for what is not needed.
	WouldDelayS, WouldOpenAtV float64
	Findings                  []answer.Finding
}

// ThroughLaunch decides whether the launch opens the device although the pack
// is not empty, and which delay or voltage would ride it through. The sag is
// that at the device's own place.
func ThroughLaunch(d Device, s Sag) RideThrough {
	r := RideThrough{BelowS: s.below(d.OpensAtV)}
	if s.SecondsBelow == nil || s.LowestV > d.OpensAtV || r.BelowS < d.DelayS {
		return r
	}
	r.OpensEarly = true
	r.WouldDelayS = roundUp(delayMargin*r.BelowS, delaysPerS)
	r.WouldOpenAtV = s.highestRidden(d)
	if r.BelowS < d.DelayS*(1+timeHair) {
		return r // by a hair only
	}
	keys := keysOf(d.Where)
	f := onCutoff(answer.Finding{
		Code: CodeOpensAtLaunch, Level: answer.Watch, Harm: answer.Wear, Unit: "s", Found: r.BelowS, Limit: d.DelayS, Source: "cutoff-practice",
		Title:  fmt.Sprintf("The launch alone makes %s open although the pack is not empty.", d.Where.cutoff()),
		Advice: fmt.Sprintf("A delay of %.3g s would ride through the launch.", r.WouldDelayS),
		Change: answer.FitCutoff, Decides: []string{keys.opensAt, keys.delay},
	})
	if d.Where == Controller {
		f.Item = answer.Board
	}
	if d.DelayS == 0 { // nothing lets any launch through
		f.Level = answer.FixFirst
	}
	if r.WouldDelayS > mostDelayS {
		f.Advice = "The sag lasts too long for a delay: soften the launch, or use a pack that holds its volts."
	}
	r.Findings = []answer.Finding{f}
	return r
}

// highestRidden returns the highest opening voltage at which the launch stays
// below for a shorter time than the device's delay, with the margin; for a
// device without a delay, just under the lowest volts.
func (s Sag) highestRidden(d Device) float64 {
	highest, _ := solve.Edge(0, d.OpensAtV, sagWithinV, func(v float64) bool {
		return v >= s.LowestV && delayMargin*s.below(v) >= d.DelayS
	})
	return math.Floor(highest*100) / 100
}

// sagWithinV is how exactly an opening voltage is found before it is rounded.
const sagWithinV = 1e-9

// roundUp rounds up to a whole number of steps, so many to the unit.
func roundUp(x, perUnit float64) float64 {
	return math.Ceil(x*perUnit-1e-9) / perUnit
}
