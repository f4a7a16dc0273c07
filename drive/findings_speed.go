package drive

import (
	"fmt"
	"math"
	"strings"

	"example.org/packcheck/answer"
)

// What the check of speed finds.
const (
	CodeFasterThanOriginal = "faster-than-original"
	CodeFastForARideOn     = "fast-for-a-ride-on"
	CodeWayToStop          = "way-to-stop"
	CodeTooYoung           = "too-young" // to steer and stop
	CodeNoBrake            = "no-brake"  // nothing stops it when the pedal is let go
)

// oldTopMS is 5 mph, the top of what ride-ons were sold with in the 1990s
// (newspaper reports of the recall of 22 October 1998). No standard's number:
// those found could not be read in their own text.
const oldTopMS = fiveMPH

// AsFast is from which share of another battery's speed, or volts, on a vehicle is no slower
// with this one: less is half of what a speed is usually misread by. Own choice.
const AsFast = 0.95

// Speed as a multiple of the original's. Own choice.
const (
	speedWatch = 1.1
	speedFix   = 1.4 // a bump has twice the energy
)

// coastDecelMS2 stands in where nothing is known of the brake: the shorted or
// idling motors and hard wheels that slide at friction 0.3, as 0.3 g.
const coastDecelMS2 = 0.3 * GravityMS2

// SpeedCheck is the speed of a vehicle and who drives it. A speed or an age that is
// no number is not known.
type SpeedCheck struct {
	SpeedMS    float64
	OriginalMS float64 // 0 = not known
	AgeYears   float64 // of the driver; 0 = not known
	DecelMS2   float64 // braking; 0 = that of sliding hard wheels
	Brake      Brake
	RollMS2    float64 // how rolling resistance alone slows it on the level; 0 = not known
	Measured   bool    // SpeedMS was read on the vehicle, not computed
	Doubted    bool    // other readings contradict it
	Claimed    bool    // it was computed for a vehicle whose maker claims a speed
	Remote     bool    // somebody else drives it by a remote control
	BeforeMS   float64 // what was read with the original battery; 0 = nothing. OriginalMS is computed then
	BeforeBy   string  // key of that reading
}

// Findings judges speed against the original's, against what such vehicles are
// made for, and against the driver's age.
func (k SpeedCheck) Findings() []answer.Finding {
	var out []answer.Finding
	fast := answer.Finding{
		Harm: answer.Child, Topic: answer.TopicSpeed, Item: answer.Rider, Change: answer.LimitSpeed, Gravity: 1,
		Decides: []string{answer.KeyGearsRatio, answer.KeyVehicleWheelDiameter, answer.KeyMotorsTorqueConstant},
	}
	if k.Measured {
		fast.Decides = []string{answer.KeyMeasuredTopSpeed}
	} else if k.Claimed { // gears and wheels are drawn so that they fit it
		fast.Decides = []string{answer.KeyVehicleClaimedSpeed}
	}
	if ratio := k.SpeedMS / k.OriginalMS; k.OriginalMS > 0 && over(ratio, speedWatch) {
		f := fast
		f.Code, f.Level, f.Source, f.Unit, f.Found, f.Limit = CodeFasterThanOriginal, answer.Watch, srcEnergy, "x", ratio, speedWatch
		if !k.Measured {
			f.Decides = nil // gears and wheels are the same before and after
		}
		if over(ratio, speedFix) {
			f.Level = answer.FixFirst
		}
		f.Title = fmt.Sprintf("It goes %.1f times as fast as the original: a bump has %.1f times the energy, and stopping takes as many times the way.", ratio, BumpRatio(ratio))
		f.LimitMS = min(k.OriginalMS, oldTopMS)
		f.Advice = limitSpeed(f.LimitMS)
		out = append(out, f)
	}
	if readMS := k.readBefore(); k.staysAsRead(readMS) {
		k.SpeedMS, k.Measured = readMS, true
		fast.Decides = []string{k.BeforeBy}
	}
	if f, is := k.fast(fast); is {
		out = append(out, f)
	}
	if k.AgeYears > 0 && (isNumber(k.SpeedMS) || k.AgeYears < tooYoungYears) {
		out = append(out, k.driver(fast.Decides))
	}
	return append(out, k.unbraked()...)
}

// readBefore is what was read with the original battery; where other readings or the labels
// contradict it, what this battery makes of it: no speed that was computed knows of it then.
func (k SpeedCheck) readBefore() float64 {
	if ratio := k.SpeedMS / k.OriginalMS; k.Doubted && k.OriginalMS > 0 && isNumber(ratio) {
		return ratio * k.BeforeMS
	}
	return k.BeforeMS
}

// staysAsRead reports whether what was read with the original battery, which is no guess,
// is what the speed is judged by: this battery makes the vehicle no slower, or that is in
// the figure, and what is computed with it is not worse still.
func (k SpeedCheck) staysAsRead(readMS float64) bool {
	if k.Measured || !(readMS > 0) || !k.Doubted && k.SpeedMS < AsFast*k.OriginalMS {
		return false
	}
	age := k.AgeYears
	if !(age > 0) {
		age = -1
	}
	pace := PaceFor(age)
	return pace.rung(readMS) >= max(1, pace.rung(k.SpeedMS))
}

// fast holds the speed against what is made for such a driver. What is known of
// the driver decides as much as what is known of the speed.
func (k SpeedCheck) fast(f answer.Finding) (answer.Finding, bool) {
	age, who := k.AgeYears, childOf(k.AgeYears)
	if !(age > 0) {
		age, who = -1, "a child of unknown age"
		if !over(k.SpeedMS, paceLadder[0].FixMS) { // above that it is too fast at any age
			f.Decides = append(f.Decides, answer.KeyRiderAge)
		}
	}
	pace := PaceFor(age)
	// How much is in the figures; not every draw has the same.
	beside := func(limitMS float64) (what, limit string) { return "Its speed", speedWords(limitMS) }
	switch {
	case k.Measured && k.Doubted: // the condition comes first and is short: reports may tell only how a title begins
		beside = func(limitMS float64) (what, limit string) { return "If read right, its speed", speedWords(limitMS) }
	case k.BeforeBy != "" && k.Measured:
		beside = func(limitMS float64) (what, limit string) {
			what, limit = speedsApart(k.SpeedMS, limitMS)
			return what + ", read with the battery it came with,", limit
		}
	case k.Measured:
		beside = func(limitMS float64) (what, limit string) { return speedsApart(k.SpeedMS, limitMS) }
	}
	f.Code, f.Unit, f.Found, f.Source, f.Ladder, f.Rung = CodeFastForARideOn, "m/s", k.SpeedMS, pace.Source, ladderPace, 1
	f.LimitMS = pace.WatchMS
	f.Advice = limitSpeed(f.LimitMS)
	switch {
	case !isNumber(k.SpeedMS):
		f.Level, f.Limit = answer.Watch, pace.WatchMS
		f = f.Unread(fmt.Sprintf("Whether it is too fast for %s is not known: its speed is not.", who))
	case faster(k.SpeedMS, pace.DangerMS):
		f.Level, f.Limit = answer.Danger, pace.DangerMS
		what, limit := beside(pace.DangerMS)
		f.Title = fmt.Sprintf("%s is a danger to %s: nothing was found that is made to go faster than %s with it.", what, who, limit)
	case faster(k.SpeedMS, pace.FixMS):
		f.Level, f.Limit = answer.FixFirst, pace.FixMS
		what, limit := beside(pace.FixMS)
		f.Title = fmt.Sprintf("%s is too much for %s: what is made for that age reaches %s.", what, who, limit)
	case faster(k.SpeedMS, pace.WatchMS):
		f.Level, f.Limit = answer.Watch, pace.WatchMS
		what, _ := beside(pace.WatchMS)
		f.Title = fmt.Sprintf("%s is brisk for %s.", what, who)
		f.Advice = "Keep to wide, empty, level places; walk beside it at first."
	default:
		return f, false
	}
	return f, true
}

// limitSpeed advises a greatest speed.
func limitSpeed(ms float64) string {
	return "Limit the speed to " + speedWords(ms) + " or less. A controller can do that, or less voltage."
}

// speedWords prints a speed in both everyday units.
func speedWords(ms float64) string { return speedTo(ms, 0) }

// speedsApart prints two speeds so that they read as two in either unit, with more
// digits than people use where they would round alike.
func speedsApart(a, b float64) (string, string) {
	more := 0
	for more < 2 && (speedNumber(a*kmh, more) == speedNumber(b*kmh, more) || speedNumber(a*mph, more) == speedNumber(b*mph, more)) {
		more++
	}
	return speedTo(a, more), speedTo(b, more)
}

// speedTo prints a speed with some digits more than people use.
func speedTo(ms float64, more int) string {
	return speedNumber(ms*kmh, more) + " km/h (" + speedNumber(ms*mph, more) + " mph)"
}

// wayWords prints a way in both everyday units, metres with so many decimals.
func wayWords(m float64, decimals int) string {
	const feet = 1 / 0.3048
	return fmt.Sprintf("%.*f m (%.0f ft)", decimals, m, m*feet)
}

// A metre a second in everyday units.
const kmh, mph = 3.6, 3600 / 1609.344

func speedNumber(v float64, more int) string {
	if v < 9.95 {
		more++
	}
	text := fmt.Sprintf("%.*f", more, v)
	if more > 0 {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// ladderPace is that of a speed for who drives: whom it is too young for needs no word
// on how much too fast.
const ladderPace = "pace"

// childOf names a driver by the age in full years.
func childOf(years float64) string {
	if years < 1 {
		return "a child under 1"
	}
	return fmt.Sprintf("a child of %.0f", math.Floor(years))
}

// tooYoungYears is the age below which nobody means a vehicle with a motor for
// a child (source "en-71-1-2009").
const tooYoungYears = 3

// slowFromYears is the age from which vehicles of walking pace are sold (source
// "ride-on-speed-6v").
const slowFromYears = 1.5

// tooYoung says that a child is too young to drive it: at any speed, or at this one, which
// hangs on some keys.
func (k SpeedCheck) tooYoung(speed []string) answer.Finding {
	who := childOf(k.AgeYears)
	f := answer.Finding{
		Code: CodeTooYoung, Level: answer.FixFirst, Harm: answer.Child, Topic: answer.TopicSpeed, Item: answer.Rider, Source: srcUnder3,
		Unit: "years", Found: k.AgeYears, Limit: tooYoungYears, Want: answer.Above, Habit: answer.HabitKeepClear, Decides: []string{answer.KeyRiderAge},
		Gravity: 2, OfAge: true,
		Title:  "A" + who[1:] + " is too young to steer and stop by itself.",
		Advice: "Do not let so young a child drive it. Vehicles with a motor are meant for children over 3 years; follow the age on the vehicle's own label.",
	}
	most := paceLadder[len(paceLadder)-1].WatchMS
	if k.Remote { // whoever holds it steers and stops
		most = paceLadder[len(paceLadder)-1].FixMS
	}
	switch {
	case k.AgeYears < slowFromYears: // no speed makes it right
		f.Ladder, f.Rung = ladderPace, 2
	case !(k.SpeedMS > 0): // none is known to
	case !over(k.SpeedMS, most):
		f.Level, f.OfAge = answer.Watch, false
		f.Advice = "Walk beside it all the time and keep a hand on it. Follow the age on the vehicle's own label: most with a motor are meant for children over 3 years."
	case k.Remote: // the age is known: it is the speed that not every vehicle has
		f.Change, f.LimitMS, f.OfAge, f.Ladder, f.Rung = answer.LimitSpeed, most, false, ladderPace, 2
		f.Title, f.Advice = "It is too fast for "+who+", whoever holds the remote control.", limitSpeed(most)
	default:
		f.Change, f.LimitMS, f.Ladder, f.Rung = answer.LimitSpeed, most, ladderPace, 2
		f.Title = "At its speed " + who + " is too young to drive it."
	}
	if f.Level == answer.FixFirst && faster(k.SpeedMS, PaceFor(k.AgeYears).DangerMS) && !k.Doubted {
		f.Level, f.Decides = answer.Danger, append(f.Decides, speed...)
	}
	return f
}

// driver says in plain words what the speed means for this driver, or that a
// child is too young to be one. The speed hangs on some keys.
func (k SpeedCheck) driver(speed []string) answer.Finding {
	if k.AgeYears < tooYoungYears {
		return k.tooYoung(speed)
	}
	decel := k.DecelMS2
	if decel <= 0 {
		decel = coastDecelMS2
	}
	free := k.Brake == BrakeNone && k.RollMS2 > 0
	if free {
		decel = k.RollMS2
	}
	reactM, brakeM := Stop{SpeedMS: k.SpeedMS, ReactionS: ReactionS(k.AgeYears), DecelMS2: decel}.Distances()
	f := answer.Finding{
		Code: CodeWayToStop, Level: answer.Fine, Topic: answer.TopicSpeed, Item: answer.Rider, Source: srcReaction,
		Unit: "m", Found: reactM + brakeM, Reads: answer.AsTold, Habit: answer.HabitKeepClear, Decides: []string{answer.KeyRiderAge},
		Title: fmt.Sprintf("At best it stands after %s: a child of %.0f lifts the foot %.1f s late, and %s pass before it slows.",
			wayWords(reactM+brakeM, 1), k.AgeYears, ReactionS(k.AgeYears), wayWords(reactM, 1)),
		Advice: "Keep clear of roads, water, steps and slopes. When something surprises the child, count on two or three times that way.",
	}
	switch {
	case free:
		f.Title = fmt.Sprintf("Nothing brakes it: it rolls on for %s, of which %s pass before a child of %.0f has lifted the foot.",
			wayWords(reactM+brakeM, 0), wayWords(reactM, 1), k.AgeYears)
	case k.Brake == BrakeUnknown && k.RollMS2 > 0:
		_, rollM := Stop{SpeedMS: k.SpeedMS, DecelMS2: k.RollMS2}.Distances()
		f.Title += fmt.Sprintf(" If nothing brakes it, it rolls on for %s.", wayWords(reactM+rollM, 0))
	}
	if k.SpeedMS <= 0 {
		f.Title = "How far it rolls before it stands is not known: it does not get going here."
	}
	return f
}
