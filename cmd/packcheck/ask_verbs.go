package main

import (
	"math"
	"strings"

	"example.org/packcheck/ask"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
	"example.org/packcheck/tables"
)

// verb is one question that can be typed.
type verb struct {
	name    string
	about   string // one line
	example string // what stands behind "packcheck ask"
	slots   []slot
	ask     func(g given) ask.Question
}

// question makes the question of what was read.
func (v *verb) question(g given) ask.Question { return v.ask(g) }

// A few slots that many questions have.
func must(s slot) slot { s.needed = true; return s }

func ampSlot(name string) slot    { return quantitySlot(name, quantity.Current, 0.001, 5000) }
func voltSlot(name string) slot   { return quantitySlot(name, quantity.Voltage, 0.01, 200) }
func timeSlot(name string) slot   { return quantitySlot(name, quantity.Duration, 0.001, 315360000) }
func tempSlot(name string) slot   { return quantitySlot(name, quantity.Temperature, -40, 150) }
func shareSlot(name string) slot  { return quantitySlot(name, quantity.Fraction, 0, 1) }
func ohmSlot(name string) slot    { return quantitySlot(name, quantity.Resistance, 0, 10) }
func paceSlot(name string) slot   { return quantitySlot(name, quantity.Speed, 0.05, 30) }
func lengthSlot(name string) slot { return quantitySlot(name, quantity.Length, 0.01, 50) }
func launchSlot() slot            { return quantitySlot("for", quantity.Duration, 0.001, 60) }
func jacketSlot() slot {
	return such(quantitySlot("insulation", quantity.Temperature, 60, 250), "80 C")
}

func standbySlot() slot {
	return such(quantitySlot("standby", quantity.Current, 0.001, 20), "10 mA")
}

// such is a slot with an example of its own.
func such(s slot, example string) slot { s.example = example; return s }

// bounded is a slot with bounds of its own: those of the question.
func bounded(s slot, low, high float64) slot { s.low, s.high = low, high; return s }

// byName is a slot that only NAME=WORD fills.
func byName(s slot) slot { s.named = true; return s }

// ranged is a slot whose range the question itself takes.
func ranged(s slot) slot { s.spread = true; return s }

// batterySlots are what tells a battery.
func batterySlots(needed bool) []slot {
	return []slot{
		{name: "battery", sort: labelSlot, needed: needed, example: "12 V 7 Ah"},
		wordSlot("chemistry", setup.Chemistries()...),
		wordSlot("age", battery.Ages()...),
		wordSlot("maker", "own", "look-alike"),
	}
}

// storeSlot is the time in store.
func storeSlot() slot {
	return such(quantitySlot("time", quantity.Duration, 86400, 315360000), "5 months")
}

// ageByName keeps "2 years" from being the age where a time is asked for.
func ageByName(slots []slot) []slot {
	for i := range slots {
		slots[i].named = slots[i].named || slots[i].name == "age"
	}
	return slots
}

func theBattery(g given) ask.Battery {
	return ask.Battery{Label: g.text("battery"), Chemistry: g.text("chemistry"), Age: g.text("age"), Maker: g.text("maker")}
}

func with(first []slot, more ...slot) []slot { return append(first, more...) }

// between is the range that was typed, in units of so many of its own.
func (g given) between(name string, unit float64) ask.Between {
	if r := g[name]; r.open() {
		return ask.Between{Low: r.low / unit, High: r.high / unit}
	}
	return ask.Between{}
}

func hours(g given, name string) float64 { return g.value(name) / 3600 }

// verbs are all questions, in the order in which the help lists them.
func verbs() []verb {
	return []verb{
		{
			labelVerb, "what a label means", `label "20 V max 5 Ah"`, batterySlots(true),
			func(g given) ask.Question { return ask.Label{Battery: theBattery(g)} },
		},
		{
			"rest", "what resting volts mean", `rest "12.4 V" agm "20 h" "10 C"`,
			with(batterySlots(false), must(voltSlot("volts")), timeSlot("rested"), tempSlot("at"), flagSlot("charged", "charged", "off the charger", "straight off the charger")),
			func(g given) ask.Question {
				return ask.Rest{Battery: theBattery(g), Volts: g.value("volts"), HoursRested: hours(g, "rested"), TempC: g.known("at"), JustCharged: g.has("charged")}
			},
		},
		{
			runtimeVerb, "how long a battery gives a current", `runtime "12 V 7 Ah" "9 A"`,
			with(batterySlots(true), must(ampSlot("load")), bounded(voltSlot("until"), 0.5, 500), tempSlot("at")),
			func(g given) ask.Question {
				return ask.Runtime{Battery: theBattery(g), CurrentA: g.value("load"), UntilV: g.value("until"), TempC: g.known("at")}
			},
		},
		{
			"wire", "which wire carries a current", `wire "20 A" "3 m" "12 V"`,
			[]slot{must(bounded(ampSlot("load"), 0.1, 1000)), lengthSlot("length"), bounded(voltSlot("system"), 1, 200), jacketSlot(), byName(tempSlot("air"))},
			func(g given) ask.Question {
				return ask.Wire{CurrentA: g.value("load"), OneWayM: g.value("length"), SystemV: g.value("system"), InsulationC: g.value("insulation"), AirC: g.known("air")}
			},
		},
		{
			"drop", "what is lost over a length of wire", `drop "14 AWG" "20 A" "3 m" "12 V"`,
			[]slot{{name: "wire", sort: wireSlot, needed: true, example: "14 AWG"}, flagSlot("automotive", "automotive"), must(bounded(ampSlot("load"), 0.01, 5000)), must(lengthSlot("length")), bounded(voltSlot("system"), 1, 200), jacketSlot(), byName(tempSlot("air"))},
			func(g given) ask.Question {
				return ask.Drop{Wire: theWire(g), CurrentA: g.value("load"), OneWayM: g.value("length"), SystemV: g.value("system"), InsulationC: g.value("insulation"), AirC: g.known("air")}
			},
		},
		{
			"fuse", "which fuse for a wire and a load", `fuse "14 AWG" "20 A"`,
			[]slot{{name: "wire", sort: wireSlot, needed: true, example: "14 AWG"}, flagSlot("automotive", "automotive"), must(bounded(ampSlot("load"), 0.1, 1000)), bounded(ampSlot("launch"), 0.1, 5000), launchSlot(), jacketSlot(), wordSlot("form", fuseForms()...), byName(tempSlot("air"))},
			func(g given) ask.Question {
				return ask.Fuse{Wire: theWire(g), RunningA: g.value("load"), LaunchA: g.value("launch"), LaunchS: g.value("for"), InsulationC: g.value("insulation"), Form: g.text("form"), AirC: g.known("air")}
			},
		},
		{
			"opened", "what a fuse saw that opened", `opened "30 A" "8 s"`,
			[]slot{must(bounded(ampSlot("rating"), 0.1, 1000)), must(bounded(timeSlot("after"), 0.001, 86400)), wordSlot("form", fuseForms()...), tempSlot("air")},
			func(g given) ask.Question {
				return ask.Opened{RatingA: g.value("rating"), Seconds: g.value("after"), Form: g.text("form"), AirC: g.known("air")}
			},
		},
		{
			"stopped", "what it was that stopped and came back", `stopped "20 s" lithium`,
			[]slot{
				ranged(bounded(timeSlot("after"), 0.001, 604800)), flagSlot("dead", "dead", "stays dead", "stays off"), flagSlot("unplugged", "unplugged", "power cycled", "on the charger", "until unplugged", "dead until unplugged", "plugged in again"),
				flagSlot("released", "released", "pedal up"), flagSlot("breaker", "breaker"), flagSlot("lithium", "lithium", "tool pack"),
			},
			func(g given) ask.Question {
				return ask.Stopped{Seconds: g.value("after"), StaysDead: g.has("dead"), PowerCycled: g.has("unplugged"), AfterRelease: g.has("released"), Breaker: g.has("breaker"), Lithium: g.has("lithium"), Between: g.between("after", 1)}
			},
		},
		{
			"lost", "volts lost between two readings", `lost "12.6 V" "11.2 V" "15 A"`,
			[]slot{must(bounded(voltSlot("first"), 0.1, 500)), must(bounded(voltSlot("second"), 0.01, 500)), ampSlot("load")},
			func(g given) ask.Question {
				return ask.Lost{FirstV: g.value("first"), SecondV: g.value("second"), CurrentA: g.value("load")}
			},
		},
		{
			"charger", "may a charger be used, hours, when to unplug", `charger "14.7 V 1.5 A for lead-acid" "12 V 7 Ah"`,
			with(
				append([]slot{{name: "charger", sort: chargerSlot, needed: true, example: "14.7 V 1.5 A DC"}}, batterySlots(true)...),
				shareSlot("from"), tempSlot("at"), wordSlot("port", "pack", "terminals", "vehicle"), flagSlot("came", "came with it"),
			),
			func(g given) ask.Question {
				return ask.Charger{Label: g.text("charger"), Battery: theBattery(g), Charge: g.known("from"), AirC: g.known("at"), Port: charge.PortNamed(g.text("port")), CameWithPack: g.has("came")}
			},
		},
		{
			"join", "may two packs be joined now, and what flows", `join "12 V 7 Ah" "12.9 V" "12 V 7 Ah" "12.3 V"`,
			with(
				batterySlots(true), must(bounded(voltSlot("first"), 0.5, 200)), slot{name: "other", sort: labelSlot, example: "12 V 7 Ah"}, must(bounded(voltSlot("second"), 0.5, 200)),
				ohmSlot("lead"), flagSlot("series", "series", "in series"), flagSlot("parallel", "parallel", "in parallel", "side by side"),
			),
			func(g given) ask.Question {
				a, b := theBattery(g), theBattery(g)
				if g.has("other") {
					b.Label = g.text("other")
				}
				return ask.Join{A: a, B: b, AV: g.value("first"), BV: g.value("second"), LeadOhm: g.value("lead"), Series: g.has("series")}
			},
		},
		{
			"cutoff", "where a low-voltage cutoff should open", `cutoff "20 V max 5 Ah" "15 A" "60 A" "1 s"`,
			with(batterySlots(true), bounded(ampSlot("load"), 0.01, 1000), bounded(ampSlot("launch"), 0.01, 5000), launchSlot(), byName(standbySlot()), tempSlot("at")),
			func(g given) ask.Question {
				return ask.Cutoff{Battery: theBattery(g), RunningA: g.value("load"), LaunchA: g.value("launch"), LaunchS: g.value("for"), StandbyA: g.value("standby"), TempC: g.known("at")}
			},
		},
		{
			"idle", "days until ruined at a standby current", `idle "20 V max 5 Ah" "10 mA" "50 %"`,
			with(batterySlots(true), standbySlot(), shareSlot("from"), tempSlot("at")),
			func(g given) ask.Question {
				return ask.Idle{Battery: theBattery(g), StandbyA: g.value("standby"), Charge: g.known("from"), TempC: g.known("at")}
			},
		},
		{
			"winter", "what is left after a time in store, when to top up", `winter "12 V 7 Ah" "5 months" "10 C"`,
			with(ageByName(batterySlots(true)), must(storeSlot()), shareSlot("from"), tempSlot("at"), standbySlot()),
			func(g given) ask.Question {
				return ask.Winter{Battery: theBattery(g), Days: math.Round(g.value("time") / 86400), Charge: g.known("from"), TempC: g.known("at"), StandbyA: g.value("standby")}
			},
		},
		{
			"old", "is the old block flat, worn or badly connected", `old "12 V 7 Ah" "12.6 V" "10.2 V" "9 A" "24 h"`,
			with(batterySlots(true), ranged(must(voltSlot("rest"))), ranged(voltSlot("loaded")), ranged(bounded(ampSlot("load"), 0.01, 5000)), ranged(timeSlot("rested")), tempSlot("at"), flagSlot("charged", "charged", "off the charger")),
			func(g given) ask.Question {
				return ask.Old{
					Battery: theBattery(g), RestV: g.value("rest"), LoadedV: g.value("loaded"), LoadedA: g.value("load"), HoursRested: hours(g, "rested"), TempC: g.known("at"), JustCharged: g.has("charged"),
					RestBetween: g.between("rest", 1), LoadedBetween: g.between("loaded", 1), LoadBetween: g.between("load", 1), RestedBetween: g.between("rested", 3600),
				}
			},
		},
		{
			"speed", "wheel speed from motor, gears and wheel", `speed "15000 rpm" 110:1 "250 mm" "12 V" "18 V"`,
			[]slot{
				must(quantitySlot("motor", quantity.RotationalSpeed, 10.5, 10470)), quantitySlot("gears", quantity.Ratio, 1, 2000),
				{name: "pinion", sort: teethSlot, low: 4, high: 500, example: "15 teeth"},
				{name: "gear", sort: teethSlot, low: 4, high: 2000, example: "90 teeth"},
				must(such(bounded(lengthSlot("wheel"), 0.03, 1.2), "250 mm")), bounded(voltSlot("rated"), 1, 100), bounded(voltSlot("battery"), 1, 100),
			},
			func(g given) ask.Question {
				return ask.Speed{NoLoadRPM: math.Round(g.value("motor") * 30 / math.Pi), Ratio: g.value("gears"), MotorTeeth: g.value("pinion"), WheelTeeth: g.value("gear"), WheelDiameterM: g.value("wheel"), RatedV: g.value("rated"), PackV: g.value("battery")}
			},
		},
		{
			"blocked", "launch and blocked current from ohms", `blocked "0.2 Ohm" "20 V max 5 Ah" "2 motors"`,
			with(
				batterySlots(true), must(bounded(ohmSlot("winding"), 0.005, 100)), ohmSlot("path"), slot{name: "motors", sort: motorsSlot, low: 1, high: 8, example: "2 motors"},
				flagSlot("series", "series", "in series"), flagSlot("parallel", "parallel", "in parallel"),
			),
			func(g given) ask.Question {
				return ask.Blocked{Battery: theBattery(g), WindingOhm: g.value("winding"), PathOhm: g.value("path"), Motors: int(g.value("motors")), InSeries: g.has("series")}
			},
		},
		{
			"hot", "is something too hot, and where it is heading", `hot motor "70 C" "20 min"`,
			with(
				[]slot{must(wordSlot("part", partWords()...)), must(bounded(tempSlot("of"), -40, 300)), bounded(timeSlot("after"), 1, 86400), tempSlot("air")},
				batterySlots(false)...,
			),
			func(g given) ask.Question {
				return ask.Hot{Part: ask.Part(g.text("part")), TempC: g.value("of"), AfterS: g.value("after"), AirC: g.known("air"), Battery: theBattery(g)}
			},
		},
		{
			"pace", "how fast is too fast at an age", `pace "5 years" "8 km/h"`,
			[]slot{must(quantitySlot("age", quantity.Age, 0.5, 18)), paceSlot("speed"), paceSlot("original")},
			func(g given) ask.Question {
				return ask.Pace{AgeYears: g.value("age"), SpeedMS: g.value("speed"), OriginalMS: g.value("original")}
			},
		},
	}
}

// theWire is the size that was read.
func theWire(g given) tables.WireSize {
	r := g["wire"]
	switch {
	case r.gauge && g.has("automotive"):
		return tables.WireSize{System: tables.Automotive, Gauge: int(r.value)}
	case r.gauge:
		return tables.WireSize{System: tables.AWG, Gauge: int(r.value)}
	}
	return tables.WireSize{System: tables.Metric, AreaMM2: r.value}
}

// fuseForms are the names of the forms of fuses, and the words for them.
func fuseForms() []string {
	t := tables.Builtin()
	var words []string
	for _, name := range t.FuseForms() {
		if f, err := t.Fuse(name); err == nil {
			words = append(append(words, strings.ReplaceAll(f.Form, "-", " ")), f.Words...)
		}
	}
	return words
}

func partWords() []string {
	var words []string
	for _, p := range ask.Parts() {
		words = append(words, string(p))
	}
	return words
}
