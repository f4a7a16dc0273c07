package drive

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	said "example.org/packcheck/internal/quantity"
)

// What the checks of rider, slope, remote control and accessories find.
const (
	CodeOverloaded      = "overloaded"          // more rides than the vehicle was made for
	CodeRollsBack       = "rolls-back-on-slope" // nothing holds it once the pedal is up
	CodeRemoteOnFaster  = "remote-on-faster"    // somebody else drives, at more than the original's speed
	CodeAccessoryVolts  = "accessory-overvoltage"
	CodeAccessoryUnread = "accessory-volts-unknown"
	CodeAboveToyVolts   = "above-toy-volts" // more than any toy may have
)

// PaceLimits are the level speeds, in m/s, from which a driver of some age is
// to be watched, slowed down first, and in danger.
type PaceLimits struct {
	WatchMS, FixMS, DangerMS float64
	Source                   string
}

// rung is how far up a speed is: 0 for one that needs no word, 3 for danger.
func (p PaceLimits) rung(ms float64) int {
	n := 0
	for _, limitMS := range []float64{p.WatchMS, p.FixMS, p.DangerMS} {
		if faster(ms, limitMS) {
			n++
		}
	}
	return n
}

// fiveMPH is 5 mph, which prints as 8 km/h in whichever digits.
const fiveMPH = 5 * 1609.344 / 3600

// paceLadder is by the age from which a rung counts, oldest first. What was made
// for an age is the measure: 6 V vehicles from 18 months reach 5.6 km/h, 12 V
// ones 8 km/h, sellers name 5 to 6 mph (9.7 km/h) as the most of any, and the
// fastest that was found to be made for 3 to 8 years has 12.9 km/h. Where no
// vehicle was found, for older drivers, the rungs are own choices.
var paceLadder = [...]struct {
	fromYears float64
	PaceLimits
}{
	{12, PaceLimits{12.9 / 3.6, 16 / 3.6, 25 / 3.6, srcOwn}},
	{8, PaceLimits{9.7 / 3.6, 12.9 / 3.6, 19.4 / 3.6, srcOwn}},
	{5, PaceLimits{fiveMPH, 9.7 / 3.6, 12.9 / 3.6, srcSold + ", " + srcFastest}},
	{3, PaceLimits{6.5 / 3.6, fiveMPH, 12.9 / 3.6, srcOldSpeed + ", " + srcFastest}},
	{0, PaceLimits{4 / 3.6, 5.6 / 3.6, fiveMPH, srcSlow + ", " + srcOldSpeed}},
}

// unknownAgeYears stands in for an age that was not given: the middle of those
// that such vehicles are sold for.
const unknownAgeYears = 4

// PaceFor returns how fast is too fast for a driver of an age in years, 0 and
// up; below 0, or not a number, of unknown age.
func PaceFor(ageYears float64) PaceLimits {
	if !(ageYears >= 0) {
		ageYears = unknownAgeYears
	}
	for _, r := range paceLadder {
		if ageYears >= r.fromYears {
			return r.PaceLimits
		}
	}
	return paceLadder[len(paceLadder)-1].PaceLimits
}

// LoadCheck is who rides against what the vehicle is made for.
type LoadCheck struct {
	RiderKg float64
	RatedKg float64 // most that label or manual allow; 0 = not known
	UsualKg float64 // what vehicles of the class usually allow; 0 = not known
}

// breaksAt is the load, as a multiple of the rated one, up to which toys to ride on
// are tried (ASTM F963, 4.15: three times; from memory).
const breaksAt = 3

// farOverUsual is how far above the usual greatest load of a class a rider is
// beyond any vehicle of it: the loads found within one differ by less. Own choice.
const farOverUsual = 1.5

// Findings judges the load: above the rating frame, wheels and brake are on
// their own.
func (k LoadCheck) Findings() []answer.Finding {
	f := answer.Finding{
		Code: CodeOverloaded, Level: answer.FixFirst, Harm: answer.Child, Topic: answer.TopicRide, Item: answer.Rider, Change: answer.LoadLess,
		Unit: "kg", Found: k.RiderKg, Limit: k.RatedKg, Source: srcRating, LimitKey: answer.KeyVehicleRatedLoad, Decides: []string{answer.KeyVehicleRatedLoad, answer.KeyRiderMass},
		Advice: "Let only as much ride as the vehicle's own label allows: frame, wheels and brake are not made for more.",
	}
	if k.RatedKg <= 0 {
		f.Limit, f.Source = k.UsualKg, srcManuals
		f.Advice = "Keep to the greatest load printed on it or in its manual."
	}
	if !isNumber(k.RiderKg) {
		return []answer.Finding{f.Unread("Whether more rides than it is made for is not known: the weight is not.")}
	}
	if f.Limit <= 0 || !over(k.RiderKg, f.Limit) {
		return nil
	}
	rider, most := said.SaidBeside(said.Mass, math.Round(k.RiderKg), math.Round(f.Limit))
	if rider == most {
		rider, most = said.SaidBeside(said.Mass, k.RiderKg, f.Limit)
	}
	switch {
	case k.RatedKg > 0:
		f.Title = fmt.Sprintf("%s ride on what is made for %s.", rider, most)
	case k.RiderKg > farOverUsual*k.UsualKg: // no vehicle of the class was found that allows it
		f.Decides = []string{answer.KeyRiderMass}
		f.Title = fmt.Sprintf("%s are far more than such vehicles are made for: usually %s.", rider, most)
	default:
		f.Title = fmt.Sprintf("%s may be more than it is made for: such vehicles usually allow %s.", rider, most)
	}
	if k.RatedKg > 0 && over(k.RiderKg, breaksAt*k.RatedKg) {
		f.Level, f.Gravity = answer.Danger, 1
	}
	return []answer.Finding{f}
}

// SlopeCheck is a vehicle standing on the steepest slope that it is used on.
type SlopeCheck struct {
	GradeN float64 // pull of the slope on all that moves; uphill or downhill
	RollN  float64 // what rolling resistance holds
	ToyKg  float64 // the vehicle with its pack, without rider
	AllKg  float64 // with the rider

	Brake         Brake
	ShortedNSPerM float64 // see [Vehicle.ShortedNSPerM]; 0 = not known
}

// Slopes as the sine of their angle: of the 10 degrees that stability is tested
// on, and own choices of where a fall asks for a brake and of where a vehicle
// tips that was tested on less, 15 degrees.
const testedSine, downhillSine, tippingSine = 0.1736, 0.10, 0.2588

// brakeNPerKg and brakeKg are of the force that EN 71-1 asks the motor brake of
// a ride-on for children of 36 months and older to resist: (M + 50) x 1.7 N.
const brakeNPerKg, brakeKg = 1.7, 50

// Findings judges whether it stays when the pedal is let go.
func (k SlopeCheck) Findings() []answer.Finding {
	pull := math.Abs(k.GradeN) - k.RollN
	if isNumber(pull) && (!over(pull, 0) || pull < 1) {
		return nil
	}
	grade := math.Abs(k.GradeN) / (k.AllKg * GravityMS2)
	f := answer.Finding{
		Code: CodeRollsBack, Level: answer.Watch, Harm: answer.Child, Topic: answer.TopicRide, Item: answer.Rider, Change: answer.LoadLess,
		Unit: "N", Found: pull, Limit: brakeNPerKg * (k.ToyKg + brakeKg), Source: srcBrake, Habit: answer.HabitFirmGround,
		Decides: []string{answer.KeyVehicleSlope},
		Title:   "On this slope it rolls away by itself unless its motors brake it when the pedal is up.",
		Advice:  "Try it without a child: let go of the pedal on the slope. If it rolls, keep to the level.",
	}
	if !isNumber(pull) {
		return []answer.Finding{f.Unread("Whether it rolls away on this slope is not known: the pull of the slope is not.")}
	}
	limit := f.Limit
	f = k.rolls(f, pull)
	if f.Level < answer.Danger && over(grade, downhillSine) { // then the slope decides, whatever the motors are
		f.Decides = []string{answer.KeyVehicleSlope}
	}
	switch {
	case f.Level == answer.Danger:
	case over(grade, tippingSine):
		f.Level, f.Unit, f.Found, f.Limit, f.Source = answer.Danger, "", grade, tippingSine, srcOwn
		f.Title = "On this slope it tips or runs away with the child; toys to sit on are tested not to tip over on 10 degrees."
		f.Advice = "Keep off this slope."
	case over(pull, limit):
		f.Level, f.Unit, f.Found, f.Limit, f.Source = answer.FixFirst, "N", pull, limit, srcBrake
		f.Title = "On this slope it rolls away even with the motor brake that the toy standard asks for."
		f.Advice = "Keep off this slope: a brake as strong as the standard asks for does not hold it."
	case over(grade, testedSine):
		f.Level, f.Unit, f.Found, f.Limit, f.Source = answer.FixFirst, "", grade, testedSine, srcStable
		f.Title = "On this slope the vehicle may run away or tip: it is steeper than the 10 degrees that toys to sit on are tested on."
		f.Advice = "Keep to gentler ground."
	case over(grade, downhillSine): // what climbs falls on the way back
		f.Level, f.Unit, f.Found, f.Limit, f.Source = answer.FixFirst, "", grade, downhillSine, srcOwn
		f.Title = "On the way down this slope is steep for a child to keep the vehicle in hand, and it may run away."
		f.Advice = "Keep to gentler ground."
		if k.Brake != BrakePedal {
			f.Advice += " Downhill only the motors brake, and a battery whose electronics switch off may take even that away."
		}
	}
	return []answer.Finding{f}
}

// ToyCheck is the battery of a toy against what any toy may have.
type ToyCheck struct {
	NominalV float64 // of all packs together
	DesignV  float64 // nominal volts that the vehicle was made for; 0 = not known
}

// mostToyV is the greatest nominal voltage of a toy. The hair is for how cells are
// named (own choice): eight of iron phosphate are 25.6 V and seven of lithium-ion 25.2 V,
// both sold as 24 V. Full they have 29.2 and 29.4 V, no more than twelve cells of lead-acid,
// which are 24 V by any name, on their charger.
const mostToyV, toyHairV = 24, 1.6

// Findings judges the voltage that a child can reach.
func (k ToyCheck) Findings() []answer.Finding {
	if k.NominalV <= mostToyV+toyHairV {
		return nil
	}
	f := answer.Finding{
		Code: CodeAboveToyVolts, Level: answer.FixFirst, Harm: answer.Child, Topic: answer.TopicPack, Item: answer.Battery, Change: answer.FitPack,
		Unit: "V", Found: k.NominalV, Limit: mostToyV, Source: srcToyVolts, Decides: []string{answer.KeyPackLabel},
		Title:  volts(k.NominalV) + ": a toy may have 24 V at most where a child can reach.",
		Advice: "Use a battery of at most 24 V.",
	}
	if k.DesignV > mostToyV+toyHairV && k.NominalV <= designMargin*k.DesignV { // fewer volts would not drive it
		f.Change = answer.ChangeNone
		f.Title = volts(k.NominalV) + " is more than a toy may have, which is 24 V: what was made with it is no toy."
		f.Advice = "Keep to the age and the weight that its maker names: toys are what is made for children under 14."
	}
	if !isNumber(k.NominalV) {
		f = f.Unread("Whether it has more volts than a toy may have is not known: the battery's are not.")
	}
	return []answer.Finding{f}
}

// RemoteCheck is a remote control beside a raised speed.
type RemoteCheck struct {
	Fitted     bool // a remote control drives it and still works
	SpeedMS    float64
	OriginalMS float64 // 0 = not known
}

// Findings judges who really drives.
func (k RemoteCheck) Findings() []answer.Finding {
	if !k.Fitted || k.OriginalMS <= 0 || isNumber(k.SpeedMS) && !over(k.SpeedMS, speedWatch*k.OriginalMS) {
		return nil
	}
	f := answer.Finding{
		Code: CodeRemoteOnFaster, Level: answer.FixFirst, Harm: answer.Child, Topic: answer.TopicSpeed, Item: answer.Rider, Change: answer.LimitSpeed,
		Unit: "x", Found: k.SpeedMS / k.OriginalMS, Limit: speedWatch, Source: srcOwn,
		Title:  "Whoever holds the remote control drives it at more than the speed that its steering and brake were made for.",
		Advice: "Limit the speed to the original's, or take the remote control out of use; it loses its reach and its say when the radio does not get the volts that it was made for.",
	}
	if !isNumber(k.SpeedMS) {
		f = f.Unread("Whether the remote control drives it faster than it was made for is not known: its speed is not.")
	}
	return []answer.Finding{f}
}

// AccessoryCheck is what steers, plays and lights on the pack's own volts.
type AccessoryCheck struct {
	OnPack  bool    // they hang on the pack's volts
	Own     bool    // they have a supply of their own, or there are none
	FullV   float64 // what they see
	DesignV float64 // nominal volts that the vehicle was made for; 0 = not known
}

// Findings judges the volts on steering motor, radio and lights.
func (k AccessoryCheck) Findings() []answer.Finding {
	limit := designMargin * k.DesignV
	if k.Own || limit <= 0 || isNumber(k.FullV) && !over(k.FullV, limit) {
		return nil
	}
	f := answer.Finding{
		Code: CodeAccessoryVolts, Level: answer.FixFirst, Harm: answer.Part, Topic: answer.TopicLaunch, Item: answer.Accessory, Change: answer.FitConverter,
		Unit: "V", Found: k.FullV, Limit: limit, Source: srcOwn, Decides: []string{answer.KeyVehicleAccessories},
		Title:  fmt.Sprintf("Steering, radio or lights get %s and were made for %s: they fail, and steering by motor fails while somebody rides.", volts(k.FullV), volts(k.DesignV)),
		Advice: "Feed them through a step-down converter of the volts that they were made for, or disconnect them.",
	}
	if !k.OnPack {
		f.Code, f.Level, f.Harm, f.Change = CodeAccessoryUnread, answer.Watch, answer.Wear, answer.LookUp
		f.Title = fmt.Sprintf("If steering, radio or lights hang on the pack they get %s and were made for %s.", volts(k.FullV), volts(k.DesignV))
		f.Advice = "Look where their wires go: on the pack they need a step-down converter."
	}
	if !isNumber(k.FullV) {
		f = f.Unread("Whether steering, radio or lights get too many volts is not known: the full pack's are not.")
	}
	return []answer.Finding{f}
}
