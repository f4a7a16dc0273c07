package setup

import (
	"fmt"
	"strings"

	"example.org/packcheck/internal/quantity"
)

// meantKeys are everyday names of keys, by table; an empty table stands for every
// table that has the key.
var meantKeys = [...]struct{ table, word, key, why string }{
	{"", "weight", "mass", ""},
	{"rider", "years", "age", ""},
	{"rider", "kids", "count", ""},
	{"rider", "children", "count", ""},
	{"rider", "number", "count", ""},
	{"vehicle", "board", "has_board", ""},
	{"vehicle", "remote", "remote_control", ""},
	{"vehicle", "passengers", "seats", ", or rider.count for how many ride"},
	{"motors", "number", "count", ""},
	{"motors", "how_many", "count", ""},
	{"pack", "cell", "cells_in_series", ""},
	{"pack", "two", "joined", ""},
	{"gears", "teeth", "ratio", `, the product of all pairs of gears, such as "12:60 x 12:72"`},
	{"outing", "temp", "air", ""},
	{"outing", "time", "wanted", ""},
	{"outing", "duration", "wanted", ""},
	{"measured", "runtime", "ride_time", ""},
	{"measured", "minutes", "ride_time", ""},
	{"measured", "voltage", "rest_voltage", ", with nothing connected; loaded_voltage is while it drives"},
	{"measured", "volts", "rest_voltage", ", with nothing connected; loaded_voltage is while it drives"},
	{"measured", "current", "loaded_current", ""},
	{"measured", "amps", "loaded_current", ""},
	{"measured", "speed", "top_speed", ""},
	{"cutoff.pack", "voltage", "opens_at", ""},
	{"cutoff.module", "voltage", "opens_at", ""},
	{"cutoff.controller", "voltage", "opens_at", ""},
	{"wire", "thickness", "gauge", ""},
	{"fuse", "distance", "distance_from_pack", ""},
	{"controller", "label", "class", ""},
	{"controller", "type", "kind", ""},
	{"", "kg", "mass", ""},
	{"vehicle", "voltage", "design_voltage", ", the volts that the vehicle was made for; those of the battery are in pack.label"},
	{"vehicle", "volts", "design_voltage", ", the volts that the vehicle was made for; those of the battery are in pack.label"},
	{"vehicle", "wheel_size", "wheel_diameter", ""},
	{"vehicle", "wheel", "wheel_diameter", ""},
	{"vehicle", "top_speed", "claimed_speed", ", or measured.top_speed where it was timed"},
	{"vehicle", "speed", "claimed_speed", ", or measured.top_speed where it was timed"},
	{"vehicle", "max_weight", "rated_load", ""},
	{"vehicle", "surface", "ground", ""},
	{"motors", "voltage", "rated_voltage", ", the volts that the motor's printed figures are for, not those of the battery"},
	{"motors", "volts", "rated_voltage", ", the volts that the motor's printed figures are for, not those of the battery"},
	{"motors", "rpm", "no_load_speed", ""},
	{"motors", "speed", "no_load_speed", ""},
	{"motors", "ohms", "winding_resistance", ""},
	{"motors", "resistance", "winding_resistance", ""},
	{"motors", "size", "can", ""},
	{"pack", "voltage", "label", `, as printed, such as "12 V 7 Ah"`},
	{"pack", "volts", "label", `, as printed, such as "12 V 7 Ah"`},
	{"pack", "ah", "capacity", ""},
	{"pack", "amp_hours", "capacity", ""},
	{"pack", "amps", "max_current", ", the current that its maker allows; ampere-hours are capacity"},
	{"pack", "type", "chemistry", ""},
	{"wire", "size", "gauge", ""},
	{"wire", "awg", "gauge", ""},
	{"wire", "length", "one_way_length", ""},
	{"fuse", "type", "form", ""},
	{"fuse", "amps", "rating", ""},
	{"fuse", "current", "rating", ""},
	{"fuse", "size", "rating", ""},
	{"controller", "voltage", "max_voltage", ", the highest volts that it stands"},
	{"controller", "current", "continuous_current", ""},
	{"charger", "volts", "voltage", ""},
	{"charger", "amps", "current", ""},
	{"charger", "type", "made_for", ""},
	{"gears", "gear_ratio", "ratio", ""},
	{"outing", "temperature", "air", ""},
}

// meantKey returns the key of a table that goes by another everyday name, and
// what has to be said about it.
func meantKey(table, word string) (key, why string) {
	word = strings.ToLower(word)
	for _, m := range meantKeys {
		if m.word == word && (m.table == table || m.table == "" && registry.Get().field(table, m.key) != nil) {
			return m.key, m.why
		}
	}
	return "", ""
}

// wantNotClass says what to do with the class that is printed on a controller,
// such as "24 V 30 A", where the highest volts or a current are asked for: a
// class is neither. Empty where the text is none.
func wantNotClass(f *field, text string) string {
	if f.Table != "controller" || f.kind != quantity.Voltage && f.kind != quantity.Current {
		return ""
	}
	volts, amps, is := classOf(text)
	switch {
	case !is:
		return ""
	case f.Name == "continuous_current":
		return `the current alone, "` + amps + `"; volts and amps together are a nominal class`
	case f.kind == quantity.Current:
		return "a current alone, such as \"" + f.Example + "\"; \"" + volts + " " + amps + "\" is a nominal class, put it under class"
	}
	return "the highest volts that it stands, such as \"" + f.Example + "\"; \"" + volts + " " + amps +
		"\" is a nominal class: put it under class and ask its maker for the highest volts"
}

// classOf parts "24V 30A" into volts and amps.
func classOf(text string) (volts, amps string, is bool) {
	i := strings.IndexAny(text, "Vv")
	if i < 1 {
		return "", "", false
	}
	volts, amps = strings.TrimSpace(text[:i+1]), strings.Trim(text[i+1:], " ,/")
	_, _, errV := quantity.Parse(quantity.Voltage, volts)
	_, _, errA := quantity.Parse(quantity.Current, amps)
	return volts, amps, errV == nil && errA == nil
}

// ofWatts says what to write in the place of "24 V 500 W".
func ofWatts(class string) string {
	i := strings.IndexAny(class, "Vv")
	if i < 1 {
		return ""
	}
	v, w := strings.TrimSpace(class[:i+1]), strings.Trim(class[i+1:], " ,/")
	volts, _, errV := quantity.Parse(quantity.Voltage, v)
	watts, _, errW := quantity.Parse(quantity.Power, w)
	if errV != nil || errW != nil || !(volts.Likely > 0) {
		return ""
	}
	return fmt.Sprintf(`; of watts, what they are at these volts: "%s %s A"`, v, quantity.Digits(watts.Likely/volts.Likely, 2))
}

// checkClass notes a class that is none, or whose amps are not the ones told.
func checkClass(d *decoder, c *Controller) {
	if !c.Class.Given {
		return
	}
	_, amps, is := classOf(c.Class.Text)
	if !is {
		d.fault(c.Class.Line, c.Class.Key, c.Class.Text, `volts and amps as they are printed on it, such as "24 V 30 A"`+ofWatts(c.Class.Text))
		return
	}
	r, _, _ := quantity.Parse(quantity.Current, amps)
	if told := c.ContinuousCurrent; told.Given && (told.Low > farApart*r.High || told.High < r.Low/farApart) {
		d.fault(told.Line, told.Key, told.Text, "about the "+amps+" of "+c.Class.Key+", or another class: they cannot both be true")
	}
}

// voltsBesideSpeed takes the volts of "12V 30000RPM" for the rated ones, or notes
// that they are others.
func voltsBesideSpeed(d *decoder, s *Setup) {
	speed, rated := s.Motors.NoLoadSpeed, &s.Motors.RatedVoltage
	volts, _ := quantity.BesideVolts(speed.Text)
	if !speed.Given || volts == "" {
		return
	}
	f := registry.Get().field("motors", "rated_voltage")
	r, written, err := quantity.ParseIn(f.kind, volts, f.low, f.high)
	switch {
	case err != nil:
		d.fault(speed.Line, speed.Key, speed.Text, "the speed with volts that a motor can be made for, such as \"12V 15000 rpm\"")
	case !rated.Given:
		*rated = Value{
			Range: r, Given: true, Text: volts, Line: speed.Line, System: written.System,
			Key: strings.TrimSuffix(speed.Key, "no_load_speed") + "rated_voltage",
		}
	case r.Low > rated.High || r.High < rated.Low:
		d.fault(rated.Line, rated.Key, rated.Text, volts+", which "+speed.Key+" says, or the speed without volts")
	}
}
