package drive

import (
	"fmt"

	"example.org/packcheck/finding"
)

// oldTopMS is 5 mph, the top of what ride-ons were sold with in the 1990s
// (newspaper reports of the recall of 22 October 1998). No standard's number:
// those found could not be read in their own text.
const oldTopMS = 5 * 1609.344 / 3600

// Speed as a multiple of the original's. Own choice.
const (
	speedWatch = 1.1
	speedFix   = 1.4 // a bump has twice the energy
)

// coastDecelMS2 stands in where nothing is known of the brake: the shorted or
// idling motors and hard wheels that slide at friction 0.3, as 0.3 g.
const coastDecelMS2 = 0.3 * GravityMS2

// SpeedCheck is the speed of a vehicle and who drives it.
type SpeedCheck struct {
	SpeedMS    float64
	OriginalMS float64 // 0 = not known
	AgeYears   float64 // of the driver; 0 = not known
	DecelMS2   float64 // braking; 0 = that of sliding hard wheels
}

// Findings judges speed against the original's, against what such vehicles are
// made for, and against the driver's age.
func (k SpeedCheck) Findings() []finding.Finding {
	var out []finding.Finding
	if k.OriginalMS > 0 && k.SpeedMS > speedWatch*k.OriginalMS {
		ratio := k.SpeedMS / k.OriginalMS
		level := finding.Watch
		if ratio > speedFix {
			level = finding.FixFirst
		}
		out = append(out, finding.Finding{
			Code: "faster-than-original", Level: level, Source: srcEnergy, Unit: "x", Found: ratio, Limit: speedWatch,
			Title:  fmt.Sprintf("It goes %.1f times as fast as the original: a bump has %.1f times the energy, and it takes as many times the way to stop.", ratio, BumpRatio(ratio)),
			Advice: "Limit the speed to the original's in the controller.",
		})
	}
	if k.SpeedMS > oldTopMS {
		out = append(out, finding.Finding{
			Code: "fast-for-a-ride-on", Level: finding.FixFirst, Source: srcOldSpeed, Unit: "m/s", Found: k.SpeedMS, Limit: oldTopMS,
			Title:  fmt.Sprintf("At %.1f km/h it is faster than such vehicles are made for (8 km/h).", k.SpeedMS*3.6),
			Advice: "Frame, steering, brakes and seat were made for less. Limit the speed.",
		})
	}
	if k.AgeYears > 0 {
		out = append(out, k.age())
	}
	return out
}

// age says in plain words what the speed means for this driver.
func (k SpeedCheck) age() finding.Finding {
	decel := k.DecelMS2
	if decel <= 0 {
		decel = coastDecelMS2
	}
	reactM, brakeM := Stop{SpeedMS: k.SpeedMS, ReactionS: ReactionS(k.AgeYears), DecelMS2: decel}.Distances()
	f := finding.Finding{
		Code: "way-to-stop", Level: finding.Fine, Source: srcReaction, Unit: "m", Found: reactM + brakeM,
		Title: fmt.Sprintf("A child of %.0f lifts the foot %.1f s late at best: %.1f m pass before it slows, %.1f m until it stands.",
			k.AgeYears, ReactionS(k.AgeYears), reactM, reactM+brakeM),
		Advice: "Count on two or three times that when something surprises the child. Keep clear of roads, water, steps and slopes.",
	}
	if k.AgeYears < 3 {
		f.Level, f.Source = finding.FixFirst, srcUnder3
		f.Title = fmt.Sprintf("A child of %.0f is too young to steer and stop by itself: %.1f m pass until the vehicle stands.", k.AgeYears, reactM+brakeM)
		f.Advice = "Vehicles with a motor are meant for children over 3 years; follow the age on the vehicle's own label."
	}
	return f
}
