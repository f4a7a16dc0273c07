package setup_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/setup"
)

func TestEachFaultNamesLineKeyAndWhatWouldBeRight(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{
			"unknown key near a known one", "[pack]\ncapacty = \"5 Ah\"",
			`f.toml:2: pack.capacty: read "capacty"; want "capacity"`,
		},
		{
			"case of a key counts", "[wire]\nJoints = 3",
			`f.toml:2: wire.Joints: read "Joints"; want "joints"`,
		},
		{
			"key of another table", "[motors]\ncapacity = \"5 Ah\"",
			`f.toml:2: motors.capacity: read "capacity"; want this key in [pack] or [pack.second]`,
		},
		{
			"key near nothing", "[gears]\npurple = 1",
			`f.toml:2: gears.purple: read "purple"; want a key of this table: ratio, efficiency, bore`,
		},
		{
			"key above all tables", "capacity = \"7 Ah\"",
			`f.toml:1: capacity: read "capacity"; want this key in [pack] or [pack.second]`,
		},
		{
			"unknown table near a known one", "[fuze]\nrating = \"30 A\"",
			`f.toml:1: fuze: read "[fuze]"; want [fuse]`,
		},
		{
			"table by another name", "[battery]\nlabel = \"12 V\"",
			`f.toml:1: battery: read "[battery]"; want [pack]`,
		},
		{
			"unknown table inside the original", "[original.cutoff.pak]\nopens_at = \"12 V\"",
			`f.toml:1: original.cutoff.pak: read "[original.cutoff.pak]"; want [original.cutoff.pack]`,
		},
		{
			"table written twice with double brackets", "\n[[charger]]\nlabel = \"x\"\n[pack]\nlabel = \"12 V 7 Ah\"",
			`f.toml:2: charger: read "an array of tables"; want a table, written once as [charger]`,
		},
		{
			"value where a table is due", "pack = 3",
			`f.toml:1: pack: read "3"; want a table, written once as [pack]`,
		},
		{
			"bare number where a unit is due", "[pack]\ncapacity = 5",
			`f.toml:2: pack.capacity: read "5"; want the unit with it, in quotes: "5 Ah"`,
		},
		{
			"no unit in the text", "[pack]\ncapacity = \"5\"",
			`f.toml:2: pack.capacity: read "5"; want a charge with its unit (Ah, mAh), such as "7 Ah"`,
		},
		{
			"wrong unit", "[pack]\ncapacity = \"5 kg\"",
			`f.toml:2: pack.capacity: read "5 kg"; want it under mass, or a charge with its unit (Ah, mAh), such as "7 Ah"; "kg" is no unit of it`,
		},
		{
			"zero cells", "[pack]\ncells_in_series = 0",
			`f.toml:2: pack.cells_in_series: read "0"; want a whole number from 1 to 100`,
		},
		{
			"half a cell", "[pack]\ncells_in_series = 4.5",
			`f.toml:2: pack.cells_in_series: read "4.5"; want a whole number, such as "2"`,
		},
		{
			"over-full charge", "[pack]\ncharge = \"105 %\"",
			`f.toml:2: pack.charge: read "105 %"; want a fraction from 0 % to 100 %`,
		},
		{
			"a way down in place of the steepest climb", "[vehicle]\nslope = \"-10 %\"",
			`f.toml:2: vehicle.slope: read "-10 %"; want a slope from 0 % to 50 %`,
		},
		{
			"negative mass", "[vehicle]\nmass = \"-5 kg\"",
			`f.toml:2: vehicle.mass: read "-5 kg"; want a mass from 500 g to 500 kg`,
		},
		{
			"absurd size in the user's units", "[vehicle]\nwheel_diameter = \"10 ft\"",
			`f.toml:2: vehicle.wheel_diameter: read "10 ft"; want a length from 1.18 in to 3.94 ft`,
		},
		{
			"not a number", "[controller]\nramp = nan",
			`f.toml:2: controller.ramp: read "NaN"; want a number, such as "1 s"`,
		},
		{
			"infinite", "[motors]\ncount = inf",
			`f.toml:2: motors.count: read "+Inf"; want a number, such as 2`,
		},
		{
			"two readings", "[charger]\ncurrent = \"1,000 mA\"",
			`f.toml:2: charger.current: read "1,000 mA"; want "1000 mA"; the mark in "1,000" could part thousands or decimals`,
		},
		{
			"array", "[vehicle]\nmass = [\"5 kg\"]",
			`f.toml:2: vehicle.mass: read "an array"; want a quantity in quotes: "15 kg"`,
		},
		{
			"inline table", "[vehicle]\nmass = {kg = 5}",
			`f.toml:2: vehicle.mass: read "a table"; want a quantity in quotes: "15 kg"`,
		},
		{
			"word in quotes for yes", "[vehicle]\nhas_board = \"yes\"",
			`f.toml:2: vehicle.has_board: read "yes"; want true or false, without quotes`,
		},
		{
			"word not in the list", "[controller]\nkind = \"magic\"",
			`f.toml:2: controller.kind: read "magic"; want "contacts" or "chopper"`,
		},
		{
			"number for a word", "[controller]\nkind = 3",
			`f.toml:2: controller.kind: read "3"; want "contacts" or "chopper"`,
		},
		{
			"empty text", "title = \"\"",
			`f.toml:1: title: read nothing; want a line of at most 200 characters, such as "Tractor for the harvest fair"`,
		},
		{
			"no such day", "[storage]\nfrom = \"2026-02-30\"",
			`f.toml:2: storage.from: read "2026-02-30"; want a day as year-month-day, such as 2026-11-01`,
		},
		{
			"days the wrong way round", "[storage]\nfrom = 2026-11-01\nuntil = 2026-10-01",
			`f.toml:3: storage.until: read "2026-10-01"; want a day after storage.from`,
		},
		{
			"gauge and area", "[wire]\narea = \"2.5 mm2\"\ngauge = 14",
			`f.toml:3: wire.gauge: read "14"; want either this or wire.area, not both`,
		},
		{
			"closes where it opens", "[cutoff.module]\nopens_at = \"15 V\"\ncloses_at = \"15 V\"",
			`f.toml:3: cutoff.module.closes_at: read "15 V"; want more than cutoff.module.opens_at (15 V), or it would chatter`,
		},
		{
			"delay of nothing", "[cutoff.pack]\ndelay = \"2 s\"",
			`f.toml:2: cutoff.pack.delay: read "2 s"; want opens_at beside it`,
		},
		{
			"load beside motors", "[load]\ncurrent = \"5 A\"\n[motors]\ncount = 2",
			`f.toml:3: load: read "[motors] beside [load]"; want [load] alone, or [rider], [vehicle], [motors] and [gears]`,
		},
		{
			"load of two kinds", "[load]\ncurrent = \"5 A\"\npower = \"50 W\"",
			`f.toml:1: load: read "several of them"; want exactly one of current, power and pattern`,
		},
		{
			"load of nothing", "[load]\nuntil = \"10.5 V\"",
			`f.toml:1: load: read nothing; want exactly one of current, power and pattern`,
		},
		{
			"a limit on plain contacts", "[controller]\nkind = \"contacts\"\ncurrent_limit = \"40 A\"",
			`f.toml:3: controller.current_limit: read "40 A"; want kind = "chopper" for this; plain contacts cannot do it`,
		},
		{
			"stall below no load", "[motors]\nno_load_current = \"3 A\"\nstall_current = \"2 A\"",
			`f.toml:3: motors.stall_current: read "2 A"; want more than motors.no_load_current (3 A)`,
		},
		{
			"more driven wheels than wheels", "[vehicle]\nwheels = 3\ndriven_wheels = 4",
			`f.toml:3: vehicle.driven_wheels: read "4"; want at most vehicle.wheels`,
		},
		{
			"rating of no fuse", "[fuse]\nform = \"none\"\nrating = \"30 A\"",
			`f.toml:3: fuse.rating: read "30 A"; want no rating where form is "none"`,
		},
		{
			"more volts under load", "[measured]\nrest_voltage = \"12 V\"\nloaded_voltage = \"12.5 V\"",
			`f.toml:3: measured.loaded_voltage: read "12.5 V"; want at most measured.rest_voltage: a load pulls the voltage down`,
		},
		{
			"quotes forgotten", "[pack]\ncapacity = 7 Ah",
			`f.toml:2: pack.capacity: read "capacity = 7 Ah"; want the value in quotes, such as "5 Ah"`,
		},
		{
			"decimal comma without quotes", "[pack]\ncapacity = 7,2",
			`f.toml:2: pack.capacity: read "capacity = 7,2"; want the value in quotes, such as "5 Ah"`,
		},
		{
			"word without quotes for yes", "[vehicle]\nhas_board = yes",
			`f.toml:2: vehicle.has_board: read "has_board = yes"; want true or false`,
		},
		{
			"value forgotten", "[pack]\ncapacity =\nlabel = \"12 V\"",
			`f.toml:2: pack.capacity: read "capacity ="; want the value in quotes, such as "5 Ah"`,
		},
		{
			"quote left open", "[pack]\nlabel = \"12 V\ncapacity = \"7 Ah\"",
			`f.toml:2: pack.label: read "label = \"12 V"; want a closing quote on the same line`,
		},
		{
			"bracket left open", "[pack\nlabel = \"12 V\"",
			`f.toml:1: read "[pack"; want a table name in square brackets, such as [pack]`,
		},
		{
			"key written twice", "[pack]\nlabel = \"12 V\"\nlabel = \"24 V\"",
			`f.toml:3: pack.label: read "label = \"24 V\""; want each table and key once only`,
		},
		{
			"table written twice", "[pack]\nlabel = \"12 V\"\n[wire]\n[pack]\nstrings = 1",
			`f.toml:4: read "[pack]"; want each table and key once only`,
		},
		{
			"text behind a value", "[pack]\nlabel = \"12 V\" or so",
			`f.toml:2: pack.label: read "label = \"12 V\" or so"; want nothing behind the value but a # comment`,
		},
		{
			"line of a dotted key", "\n\noriginal.pack.colour = \"red\"\n",
			"f.toml:3: original.pack: read nothing; want a label, such as label = \"20 V max 5 Ah\", or chemistry and cells_in_series\n" +
				"f.toml:3: original.pack.colour: read \"colour\"; want a key of this table: chemistry, chemistry_file, label, " +
				"cells_in_series, strings, capacity, rate, resistance, health, tested, tested_over, temperature, charge, age, maker, cells, max_current, max_charge_current, housing, mass, watches_cells, joined, self_discharge, size",
		},
		{
			"line inside an inline table", "\nfuse = { form = \"none\", raiting = \"3 A\" }",
			"f.toml:2: fuse.raiting: read \"raiting\"; want \"rating\"\n" +
				`f.toml:2: fuse.rating: read "3 A"; want no rating where form is "none"`,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, err := read(withBattery(c.text))
			if err == nil {
				t.Fatalf("read %q without a fault: %+v", c.text, s)
			}
			if got := err.Error(); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

// withBattery adds what every setup needs, so that its lack is no fault beside the one
// that is looked at.
func withBattery(text string) string {
	const label = "\nlabel = \"12 V 7 Ah\"\n"
	switch {
	case strings.Contains(text, "label"), strings.HasPrefix(text, "pack ="):
		return text
	case strings.HasPrefix(text, "[pack]"):
		return text + label
	}
	return text + "\n[pack]" + label
}

func TestAllFaultsComeAtOnceInOrderOfTheirLines(t *testing.T) {
	const text = `
[vehicle]
mass = "15 stones"
ground = 3
[pack]
label = 12 V
capacity = "7"
[fuse]
rating = 30 A
[wire]
gauge = "14"
area = "2.5 mm2"
[original.motor]
count = 1
`
	const want = `f.toml:4: vehicle.ground: read "3"; want text in quotes, such as "short grass"
f.toml:6: pack.label: read "label = 12 V"; want the value in quotes, such as "20 V max 5 Ah"
f.toml:7: pack.capacity: read "7"; want a charge with its unit (Ah, mAh), such as "7 Ah"
f.toml:9: fuse.rating: read "rating = 30 A"; want the value in quotes, such as "30 A"
f.toml:12: wire.area: read "2.5 mm2"; want either this or wire.gauge, not both
f.toml:13: original.motor: read "[original.motor]"; want [original.motors]`
	for range 5 { // map order must not show
		_, err := read(text)
		var faults setup.Faults
		if !errors.As(err, &faults) {
			t.Fatalf("got %v, want Faults", err)
		}
		if d := cmp.Diff(want, err.Error()); d != "" {
			t.Fatalf("-want +got\n%s", d)
		}
		var one setup.Fault
		if !errors.As(err, &one) || one.Line != 4 || len(faults.Unwrap()) != 6 {
			t.Fatalf("faults do not unwrap: %+v", one)
		}
	}
}

// Volts that a battery cannot have are refused, with which battery they were taken for.
func TestImpossibleVoltsSayOfWhichBatteryTheyAre(t *testing.T) {
	t.Parallel()
	const own = "[pack]\nlabel = \"20 V max 5 Ah\"\nchemistry = \"li-ion\"\n"
	const was = own + "[original.pack]\nlabel = \"12 V 7 Ah\"\nchemistry = \"agm\"\n"
	for _, c := range []struct{ name, text, wants string }{
		{"one's own", own + "[measured]\nrest_voltage = \"40 V\"\n", "than this battery reads even on its charger"},
		{"typed beside an original", was + "[measured]\nrest_voltage = \"20 V\"\n", "than the original battery reads even on its charger: beside [original.pack], [measured] is of that one"},
		{"typed under the original", was + "[original.measured]\nrest_voltage = \"20 V\"\n", "than the original battery reads even on its charger"},
	} {
		s, err := setup.Read(strings.NewReader("[vehicle]\ndesign_voltage = \"12 V\"\n"+c.text), "x.toml")
		if err == nil {
			_, err = s.Parts()
		}
		if err == nil || !strings.HasSuffix(err.Error(), c.wants) {
			t.Errorf("%s: %v, want %q", c.name, err, c.wants)
		}
	}
}
