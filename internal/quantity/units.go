package quantity

import (
	"math"
	"strings"

	"example.org/packcheck/internal/later"
)

// unit is one way to write a kind. A number n in it is n*factor + offset in the
// kind's own unit, or factor/n when it is the reciprocal ("rpm/V").
type unit struct {
	name   string // as this package prints it
	factor float64
	offset float64
	system System
	shape  shape
	also   string // other spellings, parted by spaces
}

// shape is how a unit turns into the kind's own one.
type shape int

const (
	linear     shape = iota
	reciprocal       // factor/n
	angle            // tan(n degrees)
)

// Conversion factors are exact by definition: the international yard and pound
// agreement of 1959 (1 in = 25.4 mm, 1 lb = 0.45359237 kg), the standard
// acceleration of gravity 9.80665 m/s2 (3rd CGPM, 1901), and the mechanical
// horsepower 550 ft lbf/s.
const (
	inch      = 0.0254
	foot      = 12 * inch
	mile      = 5280 * foot
	pound     = 0.45359237
	gravity   = 9.80665
	poundf    = pound * gravity
	minute    = 60
	hour      = 3600
	day       = 24 * hour
	month     = 1.0 / 12 // of a year
	rpm       = math.Pi / 30
	circInch  = 25.4 * 25.4 * math.Pi / 4 // area of a round inch in mm2
	fahrenMul = 5.0 / 9
	fahrenOff = -32 * fahrenMul
)

// kinds is indexed by Kind and never changed. In each row the first unit named
// for a system is the one that an error message suggests.
var kinds = [...]kindInfo{
	NoKind: {name: "nothing", example: "?"},
	Voltage: {name: "voltage", held: "V", example: "12 V", low: 0, high: 1000, units: []unit{
		{name: "V", factor: 1, also: "volt volts vdc"},
		{name: "mV", factor: 1e-3, also: "millivolt millivolts"},
		{name: "kV", factor: 1e3},
	}},
	Current: {name: "current", held: "A", example: "20 A", low: 0, high: 10000, units: []unit{
		{name: "A", factor: 1, also: "amp amps ampere amperes adc"},
		{name: "mA", factor: 1e-3, also: "milliamp milliamps madc"},
		{name: "uA", factor: 1e-6, also: "microamp microamps"},
		{name: "kA", factor: 1e3},
	}},
	Resistance: {name: "resistance", held: "Ohm", example: "80 mOhm", low: 0, high: 10000, units: []unit{
		{name: "Ohm", factor: 1, also: "ohms"},
		{name: "mOhm", factor: 1e-3, also: "mohms milliohm milliohms"},
		{name: "uOhm", factor: 1e-6, also: "uohms microohm microohms"},
		{name: "kOhm", factor: 1e3, also: "kohms kiloohm"},
		{name: "MOhm", factor: 1e6, also: "Mohm Mohms megaohm"},
	}},
	Charge: {name: "charge", held: "Ah", example: "7 Ah", low: 0, high: 10000, units: []unit{
		{name: "Ah", factor: 1, also: "ha amphour amphours ahr amperehour amperehours"},
		{name: "mAh", factor: 1e-3, also: "milliamphour milliamphours"},
	}},
	Energy: {name: "energy", held: "Wh", example: "90 Wh", low: 0, high: 1e6, units: []unit{
		{name: "Wh", factor: 1, also: "watthour watthours"},
		{name: "kWh", factor: 1e3},
		{name: "J", factor: 1.0 / hour, also: "joule joules"},
		{name: "kJ", factor: 1e3 / hour},
	}},
	Power: {name: "power", held: "W", example: "150 W", low: 0, high: 1e6, units: []unit{
		{name: "W", factor: 1, also: "watt watts"},
		{name: "kW", factor: 1e3, also: "kilowatt kilowatts"},
		{name: "mW", factor: 1e-3},
		{name: "hp", factor: 550 * foot * poundf, system: Customary, also: "horsepower"},
	}},
	Mass: {name: "mass", held: "kg", example: "20 kg", low: 0, high: 2000, joined: true, units: []unit{
		{name: "kg", factor: 1, system: Metric, also: "kgs kilo kilos kilogram kilograms"},
		{name: "lb", factor: pound, system: Customary, also: "lbs pound pounds"},
		{name: "g", factor: 1e-3, system: Metric, also: "gram grams"},
		{name: "oz", factor: pound / 16, system: Customary, also: "ounce ounces"},
		{name: "st", factor: 14 * pound, system: Customary, also: "stone stones"},
	}},
	Length: {name: "length", held: "m", example: "1.5 m", low: 0, high: 1000, joined: true, units: []unit{
		{name: "m", factor: 1, system: Metric, also: "metre metres meter meters"},
		{name: "cm", factor: 1e-2, system: Metric, also: "centimetre centimetres centimeter centimeters"},
		{name: "mm", factor: 1e-3, system: Metric, also: "millimetre millimetres millimeter millimeters"},
		{name: "in", factor: inch, system: Customary, also: `" inch inches ''`},
		{name: "ft", factor: foot, system: Customary, also: "' foot feet"},
		{name: "yd", factor: 3 * foot, system: Customary, also: "yard yards"},
		{name: "km", factor: 1e3, system: Metric, also: "kilometre kilometres kilometer kilometers"},
		{name: "mi", factor: mile, system: Customary, also: "mile miles"},
	}},
	Area: {name: "wire area", held: "mm2", example: "2.5 mm2", low: 0.01, high: 1000, units: []unit{
		{name: "mm2", factor: 1, system: Metric, also: "sqmm qmm"},
		{name: "cmil", factor: circInch * 1e-6, system: Customary, also: "cmils"},
		{name: "kcmil", factor: circInch * 1e-3, system: Customary, also: "mcm"},
	}},
	Gauge: {name: "wire gauge", held: "AWG", example: "14 AWG", low: -3, high: 40, bare: true, units: []unit{
		{name: "AWG", factor: 1, system: Customary, also: "ga gage gauge #"},
	}},
	Temperature: {name: "temperature", held: "degC", example: "20 C", low: -60, high: 300, units: []unit{
		{name: "C", factor: 1, system: Metric, also: "degc celsius degcelsius degreesc degreec degreescelsius"},
		{name: "F", factor: fahrenMul, offset: fahrenOff, system: Customary, also: "degf fahrenheit degfahrenheit degreesf degreef degreesfahrenheit"},
		{name: "K", factor: 1, offset: -273.15, system: Metric, also: "kelvin"},
	}},
	Fraction: {name: "fraction", example: "85 %", low: 0, high: 1, bare: true, units: []unit{
		{name: "%", factor: 0.01, also: "percent pct"},
	}},
	Grade: {name: "slope", example: "3 %", low: -0.5, high: 0.5, units: []unit{
		{name: "%", factor: 0.01, also: "percent pct"},
		{name: "deg", shape: angle, also: "degree degrees"},
	}},
	Duration: {name: "time", held: "s", example: "25 s", low: 0, high: 20 * 365 * day, joined: true, units: []unit{
		{name: "s", factor: 1, also: "sec secs second seconds"},
		{name: "min", factor: minute, also: "m mins minute minutes"},
		{name: "h", factor: hour, also: "hr hrs hour hours"},
		{name: "ms", factor: 1e-3, also: "msec millisecond milliseconds"},
		{name: "us", factor: 1e-6, also: "microsecond microseconds"},
		{name: "days", factor: day, also: "d day"},
		{name: "weeks", factor: 7 * day, also: "week wk wks"},
		{name: "months", factor: 365.25 / 12 * day, also: "month mo mos mth mths"},
	}},
	Speed: {name: "speed", held: "m/s", example: "5 km/h", low: 0, high: 60, units: []unit{
		{name: "km/h", factor: 1 / 3.6, system: Metric, also: "kmh kph km/hr kilometersperhour kilometresperhour"},
		{name: "mph", factor: mile / hour, system: Customary, also: "mi/h milesperhour milesanhour mi/hr"},
		{name: "m/s", factor: 1, system: Metric},
		{name: "ft/s", factor: foot, system: Customary, also: "fps"},
	}},
	RotationalSpeed: {name: "turning speed", held: "rad/s", example: "15000 rpm", low: 0, high: 200000 * rpm, units: []unit{
		{name: "rpm", factor: rpm, also: "rev/min r/min"},
		{name: "krpm", factor: 1000 * rpm},
		{name: "rad/s", factor: 1},
	}},
	TorqueConstant: {name: "torque constant", held: "N m/A", example: "0.006 N m/A", low: 1e-6, high: 100, units: []unit{
		{name: "N m/A", factor: 1},
		{name: "mN m/A", factor: 1e-3},
		{name: "V s/rad", factor: 1, also: "v/(rad/s)"},
		{name: "V/krpm", factor: 1 / (1000 * rpm)},
		{name: "mV/rpm", factor: 1e-3 / rpm},
		{name: "rpm/V", factor: 1 / rpm, shape: reciprocal},
		{name: "oz in/A", factor: pound / 16 * gravity * inch, system: Customary, also: "ozfin/a"},
	}},
	Inertia: {name: "moment of inertia", held: "kg m2", example: "80 g cm2", low: 0, high: 100, units: []unit{
		{name: "kg m2", factor: 1},
		{name: "g cm2", factor: 1e-7},
		{name: "kg cm2", factor: 1e-4},
		{name: "g m2", factor: 1e-3},
		{name: "oz in2", factor: pound / 16 * inch * inch, system: Customary},
		{name: "lb in2", factor: pound * inch * inch, system: Customary},
	}},
	Inductance: {name: "inductance", held: "H", example: "0.1 mH", low: 0, high: 10, units: []unit{
		{name: "mH", factor: 1e-3},
		{name: "uH", factor: 1e-6},
		{name: "H", factor: 1, also: "henry"},
		{name: "nH", factor: 1e-9},
	}},
	Capacitance: {name: "capacitance", held: "F", example: "1000 uF", low: 0, high: 10, units: []unit{
		{name: "uF", factor: 1e-6, also: "microfarad microfarads"},
		{name: "mF", factor: 1e-3},
		{name: "F", factor: 1, also: "farad farads"},
		{name: "nF", factor: 1e-9},
		{name: "pF", factor: 1e-12},
	}},
	Force: {name: "force", held: "N", example: "60 N", low: 0, high: 20000, units: []unit{
		{name: "N", factor: 1, system: Metric, also: "newton newtons"},
		{name: "lbf", factor: poundf, system: Customary, also: "lb lbs pound pounds"},
		{name: "kgf", factor: gravity, system: Metric, also: "kg kp"},
		{name: "kN", factor: 1e3, system: Metric},
	}},
	Age: {name: "age", held: "years", example: "5 years", low: 0, high: 120, bare: true, joined: true, units: []unit{
		{name: "years", factor: 1, also: "y yr yrs year yo y/o yearold yearsold yrold yrsold yearsofage"},
		{name: "months", factor: month, also: "mo mos month"},
	}},
	Ratio: {name: "ratio", example: "110:1", low: 0.1, high: 5000, bare: true},
	Count: {name: "count", example: "2", low: 0, high: 10000, bare: true},
}

// base turns a number in the unit into the kind's own unit.
func (u *unit) base(n float64) float64 {
	switch u.shape {
	case reciprocal:
		return u.factor / n
	case angle:
		return math.Tan(n * math.Pi / 180)
	}
	return n*u.factor + u.offset
}

// from turns a number in the kind's own unit into this unit.
func (u *unit) from(v float64) float64 {
	switch u.shape {
	case reciprocal:
		return u.factor / v
	case angle:
		return math.Atan(v) * 180 / math.Pi
	}
	return (v - u.offset) / u.factor
}

// spelling joins the pieces of a unit: blanks, points and the signs of a
// product or a power say nothing that the letters do not.
var spelling = later.Value[*strings.Replacer]{Make: func() *strings.Replacer {
	return strings.NewReplacer(" ", "", ".", "", "*", "", "^", "")
}}

// lookups returns for each kind the two ways to find a unit: as written, and in
// small letters.
var lookups = later.Value[[len(kinds)]lookup]{Make: func() [len(kinds)]lookup {
	var all [len(kinds)]lookup
	for k := range kinds {
		l := lookup{exact: map[string]*unit{}, folded: map[string]*unit{}}
		for i := range kinds[k].units {
			u := &kinds[k].units[i]
			for _, s := range append(strings.Fields(u.also), spelling.Get().Replace(u.name)) {
				l.exact[s] = u
				if strings.HasPrefix(s, "M") {
					continue // mega must not be found from small letters
				}
				l.folded[strings.ToLower(s)] = u
			}
		}
		all[k] = l
	}
	return all
}}

type lookup struct{ exact, folded map[string]*unit }

// find returns the unit of the kind that a text names, nil when there is none.
// Case is forgiven except where a capital M would change milli into mega; for
// amperes and ampere-hours a mega is absurd and labels print "Ma" and "MAH", so
// there it is forgiven too.
func (k Kind) find(text string) *unit {
	if !k.Known() {
		return nil
	}
	l := lookups.Get()[k]
	s := spelling.Get().Replace(text)
	if u := l.exact[s]; u != nil {
		return u
	}
	if strings.HasPrefix(s, "M") {
		switch k {
		case Voltage, Resistance, Power, Inductance, Capacitance:
			return nil
		}
	}
	return l.folded[strings.ToLower(s)]
}

// unitNames lists the kind's units for a message, the most usual ones only.
func (k Kind) unitNames() string {
	var names []string
	for _, u := range k.info().units {
		if len(names) == 4 {
			break
		}
		names = append(names, u.name)
	}
	return strings.Join(names, ", ")
}
