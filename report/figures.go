package report

import (
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// notKnown is what a report prints for a figure that does not exist.
const notKnown = "not known"

// unit is how a figure of the assessment is held: its kind, the factor that
// turns it into the unit in which the quantity package holds that kind, and the
// smallest size that is worth print, in the assessment's unit.
type unit struct {
	kind   quantity.Kind
	per    float64
	finest float64
}

// The units in which the figures of an [answer.Assessment] are held.
var (
	volts    = unit{quantity.Voltage, 1, 1e-3}
	amps     = unit{quantity.Current, 1, 1e-3}
	ohms     = unit{quantity.Resistance, 1, 1e-5}
	watts    = unit{quantity.Power, 1, 1e-3}
	ampHours = unit{quantity.Charge, 1, 1e-2}
	wattHrs  = unit{quantity.Energy, 1, 1e-2}
	kilos    = unit{quantity.Mass, 1, 1e-3}
	share    = unit{quantity.Fraction, 1, 1e-3}
	percent  = unit{quantity.Fraction, 0.01, 0.01}
	degrees  = unit{quantity.Temperature, 1, 0.1}
	seconds  = unit{quantity.Duration, 1, 1e-4}
	minutes  = unit{quantity.Duration, 60, 1. / 60}
	hours    = unit{quantity.Duration, 3600, 1. / 60}
	days     = unit{quantity.Duration, 86400, 1. / 24}
	metres   = unit{quantity.Length, 1, 1e-3}
	kilometr = unit{quantity.Length, 1000, 1e-2}
	kmPerH   = unit{quantity.Speed, 1 / 3.6, 1e-2}
	mPerS    = unit{quantity.Speed, 1, 1e-2}
	newtons  = unit{quantity.Force, 1, 0.1}
	plain    = unit{quantity.Count, 1, 1e-3}
)

// figures prints numbers of one assessment. All rounding is the quantity
// package's.
type figures struct {
	ranges map[string]answer.Range
	system answer.System
}

// one prints a figure that has no spread.
func (f figures) one(u unit, value float64) string {
	if !isNumber(value) {
		return notKnown
	}
	return quantity.FormatBoth(u.kind, noDust(value, u.finest)*u.per, f.system)
}

// isNumber reports whether a figure came out.
func isNumber(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// both prints the ends of a range in both systems.
func (f figures) both(u unit, r answer.Range) string {
	first, second := f.ends(u, r, f.system), f.ends(u, r, otherSystem(f.system))
	if first == second {
		return first
	}
	return first + " (" + second + ")"
}

// noDust makes nothing of what is far smaller than anybody can measure, such as
// the -0.0001 % of charge that a computation leaves in an empty pack.
func noDust(v, finest float64) float64 {
	if math.Abs(v) < finest/2 {
		return 0
	}
	return v
}

// toStep rounds a value to a whole number of steps.
func toStep(v, step float64) float64 {
	n := math.Round(v / step)
	if math.IsNaN(n) || math.IsInf(n, 0) {
		return v
	}
	return n * step
}

// joules prints an energy too small for watt-hours.
func (f figures) joules(value *float64) string {
	if value == nil {
		return notKnown
	}
	return f.inUnit(*value, "J")
}

// span prints the figure at a JSON path: as a range where the unknowns move
// it, as one number where they do not.
func (f figures) span(path string, u unit, value float64) string {
	return f.figure(path, u, value).whole()
}

// rough is span for a figure that rests on assumed values: where it has no
// spread of its own it gets two digits.
func (f figures) rough(path string, u unit, value float64) string {
	return f.span(path, u, about(value))
}

// maybeRough is rough for a figure that may not exist.
func (f figures) maybeRough(path string, u unit, value *float64, absent string) string {
	if value == nil {
		return f.maybeSpan(path, u, nil, absent)
	}
	return f.rough(path, u, *value)
}

// coarse rounds a range to about a hundredth of its width, in the unit that it
// is held in: "71 to 118 A, likely 88 A", never "88.4 A" in the middle of so
// wide a guess. An end far smaller than the width keeps two digits, so that it
// does not become nothing, unless it is smaller than the finest step.
func coarse(r answer.Range, finest float64) answer.Range {
	width := r.High - r.Low
	if width <= 0 || math.IsInf(width, 0) {
		return answer.Range{Low: noDust(r.Low, finest), Likely: noDust(r.Likely, finest), High: noDust(r.High, finest)}
	}
	round := func(v float64) float64 {
		size := min(width, max(math.Abs(v), finest))
		return toStep(v, max(finest, math.Pow(10, math.Floor(math.Log10(size))-1)))
	}
	return answer.Range{Low: round(r.Low), Likely: round(r.Likely), High: round(r.High)}
}

// maybeSpan is span for a figure that does not exist in half of the draws or
// more. Where the others have it, theirs is printed with that said.
func (f figures) maybeSpan(path string, u unit, value *float64, absent string) string {
	if value != nil {
		return f.span(path, u, *value)
	}
	if r, ok := f.ranges[path]; ok && r.Valid() {
		return absent + " in half of the draws or more; otherwise " + f.both(u, r)
	}
	return absent
}

// ratio prints a ratio to the original, as the sentences of findings do: with two
// digits.
func (f figures) ratio(path string, value *float64) string {
	if value == nil {
		return notKnown
	}
	r, ok := f.ranges[path]
	if !ok || !r.Valid() {
		r = answer.Exactly(*value)
	}
	low, likely, high := quantity.Digits(about(r.Low), 2), quantity.Digits(about(r.Likely), 2), quantity.Digits(about(r.High), 2)
	if low == high {
		return likely
	}
	return likely + " (" + low + " to " + high + ")"
}

// unitNamed finds the units of findings and readings that have an everyday form. What is not
// listed prints as the number and the unit as given.
func unitNamed(name string) (unit, bool) {
	switch name {
	case "V":
		return volts, true
	case "A":
		return amps, true
	case "Ohm":
		return ohms, true
	case "W":
		return watts, true
	case "Ah":
		return ampHours, true
	case "Wh":
		return wattHrs, true
	case "kg":
		return kilos, true
	case "degC":
		return degrees, true
	case "s":
		return seconds, true
	case "min":
		return minutes, true
	case "h":
		return hours, true
	case "d", "days":
		return days, true
	case "m":
		return metres, true
	case "km":
		return kilometr, true
	case "km/h":
		return kmPerH, true
	case "m/s":
		return mPerS, true
	case "N":
		return newtons, true
	case "%":
		return percent, true
	case "share":
		return share, true
	}
	return unit{}, false
}

// apart prints a finding's number and its limit with the digits that tell them apart.
func (f figures) apart(found, limit float64, name string) (figure, bound string) {
	if u, ok := unitNamed(name); ok && isNumber(found) && isNumber(limit) {
		return quantity.Apart(u.kind, noDust(found, u.finest)*u.per, noDust(limit, u.finest)*u.per, f.system)
	}
	return f.inUnit(found, name), f.inUnit(limit, name)
}

// inUnit prints a finding's number, in the user's units.
func (f figures) inUnit(value float64, name string) string {
	if !isNumber(value) {
		return notKnown
	}
	if name == "s" && value >= 86400 {
		return "more than a day" // nobody counts the seconds of what never happens
	}
	if u, ok := unitNamed(name); ok {
		return f.alone(u, value).likely
	}
	number := quantity.Digits(value, 3)
	switch name {
	case "":
		return number
	case "x":
		return number + " times"
	}
	return number + " " + clean(name)
}
