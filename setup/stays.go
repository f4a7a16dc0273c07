package setup

import (
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
)

// muchFaster is how many times the volts make of a speed that was read another: a
// reading that tells nothing of it any more. Own choice.
const muchFaster = 1.2

// StaysTooFast reports whether a speed that was read on the vehicle stays a reading of it
// with another battery: it is too fast for who rides, and the motors get about the same
// volts. What cannot slow it does not put it right, and what was read is no guess.
func (p *Parts) StaysTooFast(other *Parts) bool {
	if p.Vehicle == nil || other.Vehicle == nil || p.Pack.unsettled || other.Pack.unsettled || !p.readTooFast() {
		return false
	}
	ratio := other.motorsV() / p.motorsV()
	return ratio >= drive.AsFast && ratio <= muchFaster
}

// readTooFast reports whether the speed that was read has to be put right.
func (p *Parts) readTooFast() bool {
	m := p.Measured
	if m == nil || !m.TopSpeed.Given {
		return false
	}
	k := drive.SpeedCheck{SpeedMS: m.TopSpeed.Likely, Measured: true, Remote: p.Vehicle.Remote}
	if age := &p.Rider.AgeYears; age.Known {
		k.AgeYears = age.Low
	}
	if claim := p.Setup.Vehicle.ClaimedSpeed; claim.Given {
		k.OriginalMS = claim.High
	}
	return slices.ContainsFunc(k.Findings(), func(f answer.Finding) bool { return f.Level >= answer.FixFirst && f.Change == answer.LimitSpeed })
}

// motorsV is what board and motors are fed with, as it is called.
func (p *Parts) motorsV() float64 {
	if outV := &p.Controller.ConverterV; outV.Known {
		return min(outV.Likely, p.PackV())
	}
	return p.PackV()
}
