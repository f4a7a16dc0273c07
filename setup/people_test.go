package setup_test

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/setup"
)

// What people write for a chemistry is the chemistry.
func TestChemistriesGoByTheWordsThatPeopleUse(t *testing.T) {
	for _, c := range []struct{ label, words, want string }{
		{"12 V 7 Ah", "sla, SLA, lead acid, Lead-Acid, sealed lead acid, VRLA, agm", "agm"},
		{"12 V 7 Ah gel", "sla, lead acid, gel cell, gel", "gel"}, // a loose word yields to the label
		{"12 V 7 Ah", "gel cell, Gel-Cell", "gel"},
		{"20 V max 5 Ah", "lithium, lithium-ion, Lithium Ion, li ion, li-ion, lipo, LiPo, li-po, lithium polymer", "li-ion"},
		{"12.8 V 10 Ah", "lithium, LFP, lifepo4, LiFePO4, lithium iron phosphate", "lifepo4"},
		{"9.6 V 2 Ah", "NiMH, ni-mh, nickel metal hydride", "nimh"},
	} {
		for word := range strings.SplitSeq(c.words, ", ") {
			p := partsOf(t, map[string]string{"pack.label": c.label, "pack.chemistry": word, "load.current": "5 A"})
			if p.Pack.Chemistry.Text != c.want || p.Pack.Profile.Name != c.want {
				t.Errorf("%q beside %q is %s, want %s", word, c.label, p.Pack.Chemistry.Text, c.want)
			}
		}
	}
	for _, word := range setup.Chemistries() {
		if _, err := setup.Of(map[string]string{"pack.chemistry": word}); err != nil {
			t.Errorf("%q is listed but refused: %v", word, err)
		}
	}
}

// "Lithium" alone does not say which: the two are charged to different volts.
func TestLithiumAloneIsAGuess(t *testing.T) {
	p := partsOf(t, map[string]string{"pack.label": "12 V 10 Ah", "pack.chemistry": "lithium", "load.current": "5 A"})
	if !p.Pack.Chemistry.Assumed || !strings.Contains(p.Pack.Chemistry.Why, "lifepo4") {
		t.Errorf("chemistry %+v", p.Pack.Chemistry)
	}
	p = partsOf(t, map[string]string{"pack.label": "12.8 V 10 Ah", "pack.chemistry": "lithium", "load.current": "5 A"})
	if p.Pack.Chemistry.Assumed {
		t.Errorf("12.8 V tells it: %+v", p.Pack.Chemistry)
	}
}

func partsOf(t *testing.T, values map[string]string) *setup.Parts {
	t.Helper()
	s, err := setup.Of(values)
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Parts()
	if err != nil {
		t.Fatalf("%v: %v", values, err)
	}
	return p
}

func TestQuantitiesAreReadAsPeopleWriteThem(t *testing.T) {
	for _, c := range []struct {
		key, text string
		want      float64
	}{
		{"rider.age", "5 yo", 5},
		{"rider.age", "5 years old", 5},
		{"rider.mass", "38lb", 38 * 0.45359237}, // 1959 agreement
		{"motors.no_load_speed", "12V 30000RPM", 30000 * math.Pi / 30},
		{"motors.no_load_speed", "15000 rpm at 12 V", 15000 * math.Pi / 30},
		{"gears.ratio", "1:115", 115},
		{"gears.ratio", "115:1", 115},
		{"pack.capacity", "12ha", 12},
		{"pack.capacity", "\u201c12 Ah\u201d", 12},
		{"measured.loaded_current", "2.322 A", 2.322},
		{"measured.hours_rested", "2 months", 2 * 365.25 / 12 * 86400},
	} {
		s, err := setup.Of(map[string]string{c.key: c.text})
		if err != nil {
			t.Errorf("%s = %q: %v", c.key, c.text, err)
			continue
		}
		got := map[string]setup.Value{
			"rider.age": s.Rider.Age, "rider.mass": s.Rider.Mass, "motors.no_load_speed": s.Motors.NoLoadSpeed, "gears.ratio": s.Gears.Ratio,
			"pack.capacity": s.Pack.Capacity, "measured.loaded_current": s.Measured.LoadedCurrent, "measured.hours_rested": s.Measured.HoursRested,
		}[c.key]
		if math.Abs(got.Likely-c.want) > 1e-9*c.want {
			t.Errorf("%s = %q reads %g, want %g", c.key, c.text, got.Likely, c.want)
		}
	}
}

// What people say for a part is the part.
func TestPartsGoByTheWordsThatPeopleUse(t *testing.T) {
	for _, c := range []struct{ key, text, want string }{
		{"controller.kind", "esc", "chopper"},
		{"controller.kind", "PWM", "chopper"},
		{"controller.kind", "speed controller", "chopper"},
		{"controller.kind", "pedal switch", "contacts"},
		{"motors.wiring", "in series", "series"},
		{"pack.joined", "side by side", "parallel"},
	} {
		s, err := setup.Of(map[string]string{c.key: c.text, "pack.label": "6 V 12 Ah"})
		if err != nil {
			t.Errorf("%s = %q: %v", c.key, c.text, err)
			continue
		}
		got := map[string]string{"controller.kind": s.Controller.Kind.Text, "motors.wiring": s.Motors.Wiring.Text, "pack.joined": s.Pack.Joined.Text}[c.key]
		if got != c.want {
			t.Errorf("%s = %q is %q, want %q", c.key, c.text, got, c.want)
		}
	}
	p := partsOf(t, map[string]string{"pack.label": "12 V 7 Ah", "motors.count": "two", "vehicle.seats": "Two"})
	if p.Motors.Count.Likely != 2 {
		t.Errorf("two motors are %v", p.Motors.Count.Range)
	}
	s, err := setup.Of(map[string]string{"pack.label": "12 V 7 Ah", "fuse.form": "30 A blade"})
	if err == nil {
		_, err = s.Parts()
	}
	if want := `want "small-blade"; the 30 A belong under rating`; err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("30 A blade: %v, want %s", err, want)
	}
}

// The volts beside a speed are those that it is for.
func TestVoltsBesideASpeedAreTheRatedOnes(t *testing.T) {
	s, err := setup.Of(map[string]string{"motors.no_load_speed": "12V 30000RPM"})
	if err != nil || !s.Motors.RatedVoltage.Given || s.Motors.RatedVoltage.Likely != 12 {
		t.Errorf("rated voltage %+v, %v", s.Motors.RatedVoltage, err)
	}
	again, err := setup.Of(s.Values())
	if err != nil || again.Motors.RatedVoltage.Likely != 12 {
		t.Errorf("written out and read back: %v", err)
	}
	if _, err = setup.Of(map[string]string{"motors.no_load_speed": "12V 30000RPM", "motors.rated_voltage": "6 V"}); err == nil {
		t.Error("12 V beside the speed and 6 V rated cannot both be true")
	}
}

func TestHintsNameTheKeyThatWasMeant(t *testing.T) {
	for _, c := range []struct{ key, text, want string }{
		{"rider.weight", "20 kg", `"mass"`},
		{"vehicle.weight", "20 kg", `"mass"`},
		{"vehicle.voltage", "12 V", `"design_voltage"`},
		{"motors.voltage", "12 V", `"rated_voltage", the volts that the motor's printed figures are for, not those of the battery`},
		{"pack.voltage", "12 V", `"label"`},
		{"pack.ah", "7 Ah", `"capacity"`},
		{"motors.rpm", "15000 rpm", `"no_load_speed"`},
		{"wire.awg", "14 AWG", `"gauge"`},
		{"wire.gauge", "1.5 mm2", "want it under area, or a wire gauge"},
		{"wire.area", "14 AWG", "want it under gauge, or a wire area"},
		{"rider.mass", "4 years", "want it under age, or a mass"},
		{"fuse.amps", "30 A", `"rating"`},
		{"pack.capacity", "9.5 amps", `ampere-hours, such as "9.5 Ah", not amperes`},
		{"controller.max_voltage", "24V 30A", "is a nominal class"},
		{"controller.peak_current", "24V 30A", "is a nominal class"},
		{"controller.continuous_current", "24V 30A", `the current alone, "30A"`},
		{"controller.class", "30 A", `volts and amps as they are printed on it, such as "24 V 30 A"`},
		{"controller.class", "24 V 500 W", `such as "24 V 30 A"; of watts, what they are at these volts: "24 V 21 A"`},
		{"weight", "38lb", `"mass" in [rider] or [vehicle]`},
		{"fuse", "30A", "a key of the table [fuse], such as fuse.rating"},
		{"wire", "14", "a key of the table [wire], such as wire.gauge"},
		{"motors", "2", "a key of the table [motors], such as motors.count"},
		{"charger", "14.4v 1a", "a key of the table [charger], such as charger.label"},
		{"controller", "24V 30A", "a key of the table [controller], such as controller.class"},
		{"original.motors", "2", "a key of the table [motors], such as original.motors.count"},
		{"vehicle.board", "yes", `"has_board"`},
		{"vehicle.remote", "yes", `"remote_control"`},
		{"vehicle.passengers", "2", `"seats", or rider.count for how many ride`},
		{"rider.kids", "2", `"count"`},
		{"motors.number", "2", `"count"`},
		{"pack.two", "series", `"joined"`},
		{"gears.teeth", "12:60", `"ratio", the product of all pairs of gears`},
		{"outing.temp", "70 F", `"air"`},
		{"measured.runtime", "30 min", `"ride_time"`},
		{"measured.voltage", "12.4 V", `"rest_voltage", with nothing connected`},
		{"cutoff.module.voltage", "15 V", `"opens_at"`},
		{"controller.label", "24V 30A", `"class"`},
	} {
		_, err := setup.Of(map[string]string{c.key: c.text})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s = %q: %v\nlacks %s", c.key, c.text, err, c.want)
		}
	}
}

func TestALabelOfAnotherBatterySaysWhyNot(t *testing.T) {
	for label, want := range map[string]string{
		"12 V 600 CCA":  `"12 V 7 Ah" (label "12 V 600 CCA" gives 600 A of starting current: that is a starter battery`,
		"12 V 9.5 amps": `ampere-hours, such as "12 V 9.5 Ah"`,
	} {
		s, err := setup.Of(map[string]string{"pack.label": label, "load.current": "5 A"})
		if err != nil {
			t.Fatal(err)
		}
		if _, err = s.Parts(); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v\nlacks %s", label, err, want)
		}
	}
}

func TestAWordProcessorsFileGetsAPlainSentence(t *testing.T) {
	for text, want := range map[string]string{
		"[pack]\nlabel = \u201c12 V 7 Ah\u201d\n": `f.toml:2: pack.label: read "label = “12 V 7 Ah”"; want straight quotes, not the curly ones of a word processor: "12 V 7 Ah"`,
		"PK\x03\x04\x14\x00":                      `f.toml: read "a word processor's file"; want a plain text file`,
		"{\\rtf1\\ansi [pack]}":                   `f.toml: read "a word processor's file"; want a plain text file`,
	} {
		_, err := setup.Read(strings.NewReader(text), "f.toml")
		if err == nil || !strings.Contains(strings.ReplaceAll(err.Error(), `f.toml: : `, `f.toml: `), strings.TrimPrefix(want, "f.toml")) {
			t.Errorf("%q: %v\nwant %s", text, err, want)
		}
	}
}

// Whatever a refusal says would be right is taken, for every key there is.
func TestWhatARefusalWantsIsTaken(t *testing.T) {
	suggested := regexp.MustCompile(`(?:such as|want|or|,) ("(?:[^"\\]|\\.)*")`)
	wrong := []string{
		"", "x", "7", "-5 kg", "9.5 amps", "12V 30000RPM", "24V 30A", "about", "1,000 A", "1,000 mA", "15.000 rpm", "12.500 V", "1e9 V", "-3", "9e99 Ah",
		"5 to 3 V", "1 to 2", "0.1234567 lightyears", "600 CCA", "1:0", "2026-13-40", "maybe", "40000 AWG", "500 %", "-300 C", "0 mm", "12 kV", "\u201c\u201d",
	}
	seen := 0
	for _, key := range setup.Keys() {
		for _, text := range wrong {
			_, err := setup.Of(beside(key, text))
			for _, f := range faultsOf(err) {
				if f.Key != key.Path() || f.Read != text {
					continue
				}
				for _, m := range suggested.FindAllStringSubmatch("want "+f.Want, -1) {
					typed, err := strconv.Unquote(m[1])
					if err != nil || strings.HasPrefix(f.Want[strings.Index("want "+f.Want, m[0]):], "is no unit") || refersToRead(typed, text) {
						continue
					}
					seen++
					_, err = setup.Of(beside(key, typed))
					for _, again := range faultsOf(err) {
						if again.Key == key.Path() && again.Read == typed {
							t.Errorf("%s = %q: want %s\nbut %q: %v", key.Path(), text, f.Want, typed, again)
						}
					}
				}
			}
		}
	}
	if seen < 500 {
		t.Errorf("only %d suggestions seen: the test looks in the wrong place", seen)
	}
}

// beside is a key with its text and what has to stand beside it.
func beside(key setup.Key, text string) map[string]string {
	values := map[string]string{}
	if strings.HasPrefix(key.Table, "cutoff.") {
		values[key.Table+".opens_at"] = "1 V"
	}
	values[key.Path()] = text
	return values
}

// refersToRead reports whether a quoted text only repeats a part of what was read.
func refersToRead(typed, read string) bool { return strings.Contains(read, typed) || typed == "about" }

func faultsOf(err error) setup.Faults {
	var fs setup.Faults
	if !errors.As(err, &fs) {
		if err != nil {
			panic(fmt.Sprintf("no faults: %v", err))
		}
	}
	return fs
}
