package drive

import (
	"fmt"
	"math"
	"strings"

	"example.org/packcheck/answer"
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
func (k SpeedCheck) Findings() []answer.Finding {
	var out []answer.Finding
	if k.OriginalMS > 0 && k.SpeedMS > speedWatch*k.OriginalMS {
		ratio := k.SpeedMS / k.OriginalMS
		level := answer.Watch
		if ratio > speedFix {
			level = answer.FixFirst
		}
		out = append(out, answer.Finding{
			Code: "faster-than-original", Level: level, Source: srcEnergy, Unit: "x", Found: ratio, Limit: speedWatch,
			Title:  fmt.Sprintf("It goes %.1f times as fast as the original: a bump has %.1f times the energy, and stopping takes as many times the way.", ratio, BumpRatio(ratio)),
			Advice: limitSpeed(min(k.OriginalMS, oldTopMS)),
		})
	}
	if k.SpeedMS > oldTopMS {
		out = append(out, answer.Finding{
			Code: "fast-for-a-ride-on", Level: answer.FixFirst, Source: srcOldSpeed, Unit: "m/s", Found: k.SpeedMS, Limit: oldTopMS,
			Title:  fmt.Sprintf("%s is too fast for a ride-on: frame, steering, brakes and seat were made for %s or less.", speedWords(k.SpeedMS), speedWords(oldTopMS)),
			Advice: limitSpeed(oldTopMS),
		})
	}
	if k.AgeYears > 0 {
		out = append(out, k.age())
	}
	return out
}

// limitSpeed advises a greatest speed.
func limitSpeed(ms float64) string {
	return "Limit the speed to " + speedWords(ms) + " or less. A controller can do that, or less voltage."
}

// speedWords prints a speed in both everyday units.
func speedWords(ms float64) string {
	number := func(v float64) string {
		if v >= 9.95 {
			return fmt.Sprintf("%.0f", v)
		}
		return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0")
	}
	return number(ms*3.6) + " km/h (" + number(ms*3600/1609.344) + " mph)"
}

// age says in plain words what the speed means for this driver.
func (k SpeedCheck) age() answer.Finding {
	decel := k.DecelMS2
	if decel <= 0 {
		decel = coastDecelMS2
	}
	reactM, brakeM := Stop{SpeedMS: k.SpeedMS, ReactionS: ReactionS(k.AgeYears), DecelMS2: decel}.Distances()
	f := answer.Finding{
		Code: "way-to-stop", Level: answer.Fine, Source: srcReaction, Unit: "m", Found: reactM + brakeM,
		Title: fmt.Sprintf("At best it stands after %.1f m: a child of %.0f lifts the foot %.1f s late, and %.1f m pass before it slows.",
			reactM+brakeM, k.AgeYears, ReactionS(k.AgeYears), reactM),
		Advice: "Keep clear of roads, water, steps and slopes. When something surprises the child, count on two or three times that way.",
	}
	if k.SpeedMS <= 0 {
		f.Title = "How far it rolls before it stands is not known: it does not get going here."
	}
	if k.AgeYears < 3 {
		f.Level, f.Source = answer.FixFirst, srcUnder3
		f.Title = fmt.Sprintf("A child of %.0f is too young to steer and stop by itself.", math.Floor(k.AgeYears))
		f.Advice = "Do not let so young a child drive it. Vehicles with a motor are meant for children over 3 years; follow the age on the vehicle's own label."
	}
	return f
}
