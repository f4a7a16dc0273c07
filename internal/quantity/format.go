package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/packcheck/internal/portable"
)

// Format prints a value, held in the kind's own unit, with the unit of one
// system; Either prints as Metric does. The number has about three digits that
// count, zeros at its end dropped, never an exponent and never "-0". The text is
// ASCII. What is not a number prints as "unknown".
func Format(kind Kind, value float64, system System) string {
	number, unit := split(kind, value, system)
	return glue(kind, number, unit)
}

// Said prints a figure as a sentence holds it: what people read off a scale or a
// thermometer as fine as [Format], everything else with two digits, but never
// coarser than whole units. Reports print the figures of findings the same.
func Said(kind Kind, value float64) string {
	switch kind {
	case Voltage, Temperature, Speed, Force, Mass:
		return Format(kind, value, Metric)
	}
	return Format(kind, About(value), Metric)
}

// Cells is a number of cells in words.
func Cells(n int) string {
	if n == 1 {
		return "1 cell"
	}
	return strconv.Itoa(n) + " cells"
}

// SaidBeside prints a figure and its limit as [Said] does, apart as [Apart] does.
func SaidBeside(kind Kind, value, limit float64) (figure, bound string) {
	if figure, bound = Said(kind, value), Said(kind, limit); figure != bound {
		return figure, bound
	}
	return Apart(kind, value, limit, Metric)
}

// Apart prints a figure and its limit as [Format] does, with up to two digits more
// where they would read alike: nobody understands "13 A, more than 13 A". What is closer
// together still reads alike, and so do times.
func Apart(kind Kind, value, limit float64, system System) (figure, bound string) {
	figure, bound = Format(kind, value, system), Format(kind, limit, system)
	u, digits := shown(kind, max(math.Abs(value), math.Abs(limit)), system)
	if figure != bound || u == nil {
		return figure, bound
	}
	for more := 1; more <= 2; more++ {
		with := func(v float64) string { return glue(kind, Digits(u.from(v), digits+more), u.name) }
		if finer, limit := with(value), with(limit); finer != limit {
			return finer, limit
		}
	}
	return figure, bound
}

// About rounds to two digits, but never coarser than to whole units: what is
// computed from assumed values deserves no more.
func About(v float64) float64 {
	const ten = 10
	if math.Abs(v) >= ten || math.IsNaN(v) {
		return math.Round(v)
	}
	out, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 2, 64), 64)
	if err != nil {
		return v
	}
	return out
}

// FormatBoth prints a value with the units of both systems, the given one
// first: "20 kg (44 lb)" or "44 lb (20 kg)". A kind with only one everyday unit
// prints it once.
func FormatBoth(kind Kind, value float64, first System) string {
	return both(first, func(s System) string { return Format(kind, value, s) })
}

// FormatRange prints a range in both systems, the given one first: "20 to 26 kg
// (44 to 57 lb)". Ends that print alike are printed once.
func FormatRange(kind Kind, r Range, first System) string {
	return both(first, func(s System) string { return FormatRangeOne(kind, r, s) })
}

// FormatRangeOne prints a range in one system: "20 to 26 kg".
func FormatRangeOne(kind Kind, r Range, system System) string {
	_, ends := FormatSpread(kind, r, system)
	return ends
}

// FormatSpread prints the likely value of a range and its ends in one system and one unit,
// that of the larger end: "0.45 mi" and "0.27 to 0.67 mi". Only times keep units of their own.
func FormatSpread(kind Kind, r Range, system System) (likely, ends string) {
	low, high := r.Low, r.High
	if kind == Gauge {
		low, high = high, low // thin to thick, as the area grows
	}
	n1, u1 := split(kind, low, system)
	n2, u2 := split(kind, high, system)
	n, unit := split(kind, r.Likely, system)
	if u, digits := shown(kind, max(math.Abs(low), math.Abs(high)), system); u != nil && u1 != "" && u2 != "" { // both are numbers
		if u1 != u2 {
			n1, n2, u1, u2 = Digits(u.from(low), digits), Digits(u.from(high), digits), u.name, u.name
		}
		if unit != "" && unit != u1 {
			n, unit = Digits(u.from(r.Likely), digits), u.name
		}
	}
	likely = glue(kind, n, unit)
	switch a, b := glue(kind, n1, u1), glue(kind, n2, u2); {
	case a == b:
		return likely, a
	case u1 != "" && u1 == u2 && !strings.Contains(n1+n2, " "): // "6 min to 3 h 10 min"
		return likely, n1 + " to " + b
	default:
		return likely, a + " to " + b
	}
}

// WholeMinutes drops the seconds of a range of many minutes, which is in seconds: nobody
// can use those of "2 min 54 s to 1 h 15 min". What is shorter than two minutes keeps
// tens of them, what is shorter than ten seconds whole ones, and what takes hours has
// tens of minutes; from ten hours on, hours are all that is printed.
func WholeMinutes(r Range) Range {
	const minute, ten, hour = 60, 10, 3600
	if width := r.High - r.Low; width < 4*minute {
		return wholeFives(r, width)
	}
	round := func(s float64) float64 {
		step := float64(minute)
		switch {
		case s >= ten*hour:
			return s
		case s < ten:
			step = 1
		case s < 2*minute:
			step = ten
		case r.High >= 3*hour:
			step = ten * minute
		}
		return math.Round(s/step) * step
	}
	return Range{Low: round(r.Low), Likely: round(r.Likely), High: round(r.High)}
}

// wholeFives drops the odd seconds of a range that is wide in seconds: "2 min 18 s" of 38 s to
// 4 min 24 s. What is shorter than ten seconds keeps its own.
func wholeFives(r Range, width float64) Range {
	const five, ten, wide, wider = 5, 10, 50, 100
	if width < wide {
		return r
	}
	step := float64(five)
	if width >= wider {
		step = ten
	}
	round := func(s float64) float64 {
		if s < ten {
			return math.Round(s)
		}
		return math.Round(s/step) * step
	}
	return Range{Low: round(r.Low), Likely: round(r.Likely), High: round(r.High)}
}

// both joins the two systems' texts, the first system's first.
func both(first System, text func(System) string) string {
	a, b := text(Metric), text(Customary)
	if first == Customary {
		a, b = b, a
	}
	if a == b {
		return a
	}
	return a + " (" + b + ")"
}

// glue joins number and unit.
func glue(kind Kind, number, unit string) string {
	switch {
	case unit == "":
		return number
	case unit == "years" && number == "1":
		return "1 year"
	case unit == "months" && number == "1":
		return "1 month"
	case unit == "days" && number == "1":
		return "1 day"
	case kind == Ratio:
		return number + unit
	}
	return number + " " + unit
}

// split prints a value as number and unit; the unit is empty where the number
// says all.
func split(kind Kind, value float64, system System) (number, unit string) {
	switch {
	case math.IsNaN(value):
		return "unknown", ""
	case math.IsInf(value, 1):
		return "unlimited", ""
	case math.IsInf(value, -1):
		return "less than any", ""
	}
	switch kind {
	case Duration:
		return duration(value)
	case Gauge, Area:
		return wire(kind, value, system)
	case Age:
		switch months := value * 12; {
		case 0 < months && months < 1:
			return Digits(months, 2), "months"
		case months < 24 && math.Abs(value-math.Round(value)) > 0.04:
			return Decimals(months, 0), "months"
		}
		return Digits(value, 2), "years"
	case Ratio:
		return Digits(value, 3), ":1"
	case Temperature:
		// Not by magnitude: 0.04 C is no more exact than 20 C.
		u, _ := shown(kind, value, system)
		degrees, decimals := u.from(value), 0
		if math.Abs(degrees) < 9.95 {
			decimals = 1
		}
		return Decimals(degrees, decimals), u.name
	}
	u, digits := shown(kind, value, system)
	if u == nil {
		return Digits(value, 3), ""
	}
	return Digits(u.from(value), digits), u.name
}

// shown picks the unit in which a value of that size prints, and how many
// digits count.
func shown(kind Kind, value float64, system System) (*unit, int) {
	size := math.Abs(value)
	us := system == Customary
	pick := func(name string) *unit { return kind.find(name) }
	switch kind {
	case Voltage:
		if size < 0.1 { // no meter at home reads tenths of a millivolt
			return pick("V"), 2
		}
		return pick("V"), 3
	case Current:
		switch {
		case size > 0 && size < 1e-3:
			return pick("uA"), 3
		case size > 0 && size < 1:
			return pick("mA"), 3
		}
		return pick("A"), 3
	case Resistance:
		if size > 0 && size < 1 {
			return pick("mOhm"), 3
		}
		return pick("Ohm"), 3
	case Charge:
		if size > 0 && size < 1 {
			return pick("mAh"), 3
		}
		return pick("Ah"), 3
	case Energy:
		return pick("Wh"), 3
	case Power:
		if size > 0 && size < 1 {
			return pick("mW"), 3
		}
		return pick("W"), 3
	case Mass:
		switch {
		case us && size >= pound:
			return pick("lb"), 2
		case us:
			return pick("oz"), 2
		case size > 0 && size < 1:
			return pick("g"), 2
		}
		return pick("kg"), 3
	case Length:
		return length(size, us), 3
	case Temperature:
		if us {
			return pick("F"), 2
		}
		return pick("C"), 2
	case Fraction:
		return pick("%"), 2
	case Grade:
		return pick("%"), 2
	case Speed:
		if us {
			return pick("mph"), 2
		}
		return pick("km/h"), 2
	case RotationalSpeed:
		return pick("rpm"), 3
	case TorqueConstant:
		return pick("N m/A"), 3
	case Inertia:
		if size >= 0.1 {
			return pick("kg m2"), 3
		}
		return pick("g cm2"), 3
	case Inductance:
		switch {
		case size >= 1:
			return pick("H"), 3
		case size < 1e-4:
			return pick("uH"), 3
		}
		return pick("mH"), 3
	case Capacitance:
		if size >= 1 {
			return pick("F"), 3
		}
		return pick("uF"), 3
	case Force:
		if us {
			return pick("lbf"), 2
		}
		return pick("N"), 2
	}
	return nil, 3
}

// length picks the unit for a length: wheels in mm or inches, wires in m or
// feet, rides in m, km, feet or miles.
func length(size float64, us bool) *unit {
	name := ""
	switch {
	case us && size > 0 && size < 3*foot:
		name = "in"
	case us && size < mile/2:
		name = "ft"
	case us:
		name = "mi"
	case size > 0 && size < 1: // no length at all is one of any unit
		name = "mm"
	case size < 1000:
		name = "m"
	default:
		name = "km"
	}
	return Length.find(name)
}

// Digits prints a number with about the given count of digits that matter:
// decimals are chosen from the magnitude, never fewer than the whole number
// has, and zeros at the end of the decimals are dropped. This is the one place
// of the module where a number is rounded for reading.
func Digits(value float64, digits int) string {
	size := math.Abs(value)
	decimals := 0
	if size > 0 && !math.IsInf(size, 0) {
		decimals = min(max(digits-1-int(math.Floor(math.Log10(size))), 0), 9)
	}
	return Decimals(value, decimals)
}

// Decimals prints a number with at most the given count of decimals, zeros at
// the end dropped, "0" instead of "-0". What is not finite prints as "unknown".
func Decimals(value float64, decimals int) string {
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return "unknown"
	}
	// 12.85 is held a hair below itself; without the nudge it would print as
	// 12.8 although everybody rounds it to 12.9.
	value += value * 1e-12
	s := strconv.FormatFloat(value, 'f', max(decimals, 0), 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// wire prints a conductor size: the metric system by its area, US customary by
// its gauge, whichever of the two the value is.
func wire(kind Kind, value float64, system System) (number, unit string) {
	if system == Either && kind == Gauge {
		system = Customary
	}
	if system != Customary {
		if kind == Gauge {
			value = GaugeArea(value)
		}
		return Digits(value, 3), "mm2"
	}
	prefix := ""
	if kind == Area {
		exact := AreaGauge(value)
		value = math.Round(exact)
		if math.Abs(exact-value) > 0.05 {
			prefix = "about "
		}
	}
	if n := math.Round(value); n == value && n < 0 {
		return fmt.Sprintf("%s%d/0", prefix, int(1-n)), "AWG"
	} else if n == 0 && value == 0 {
		return prefix + "1/0", "AWG"
	}
	return prefix + Digits(value, 3), "AWG"
}

// GaugeArea returns the copper area in mm2 of an AWG number (1/0 is 0, 2/0 is
// -1): diameter 0.127 mm x 92^((36-n)/39), ASTM B258.
func GaugeArea(gauge float64) float64 {
	d := 0.127 * portable.Pow(92, (36-gauge)/39)
	return math.Pi / 4 * d * d
}

// AreaGauge returns the AWG number, not rounded, whose wire has the given area
// in mm2: the inverse of [GaugeArea].
func AreaGauge(areaMM2 float64) float64 {
	d := math.Sqrt(areaMM2 * 4 / math.Pi)
	return 36 - 39*math.Log(d/0.127)/math.Log(92)
}

// duration prints seconds the way a person says them.
func duration(s float64) (number, unit string) {
	size := math.Abs(s)
	switch {
	case size == 0:
		return "0", "s"
	case size < 1e-3:
		return Digits(s*1e6, 3), "us"
	case size < 0.9995:
		return Digits(s*1e3, 3), "ms"
	case size < 99.5:
		return Digits(s, 2), "s"
	case size < 599.5:
		return steps(s, minute, "min", 1, "s")
	case size < 59.5*minute:
		return Digits(s/minute, 2), "min"
	case size < 10*hour-30:
		return steps(s, hour, "h", minute, "min")
	case size < 47.5*hour:
		return Digits(s/hour, 2), "h"
	case size < 97.5*day:
		return Digits(s/day, 2), "days"
	}
	return Digits(s/(7*day), 2), "weeks"
}

// steps prints a duration in a large and a small unit, "1 h 30 min"; the small
// one is left out when it is nothing.
func steps(s, large float64, largeName string, small float64, smallName string) (number, unit string) {
	n := math.Round(s / small)
	per := large / small
	whole := math.Trunc(n / per)
	rest := math.Abs(n - whole*per)
	if rest == 0 {
		return Decimals(whole, 0), largeName
	}
	return fmt.Sprintf("%s %s %s %s", Decimals(whole, 0), largeName, Decimals(rest, 0), smallName), ""
}
