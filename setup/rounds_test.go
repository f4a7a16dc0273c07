package setup_test

import (
	"errors"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/setup"
)

// wrongs are things wrong with a setup, of every stage at which one is noticed: in
// a key alone, between two keys, when a word or a label is looked up, when the parts
// are held against each other, when a file is read.
var wrongs = map[string]map[string]string{
	"a unit":                   {"rider.mass": "20 bushels"},
	"a size":                   {"vehicle.mass": "5000 kg"},
	"a word of a list":         {"controller.kind": "magic"},
	"a key":                    {"vehicle.colour": "red"},
	"a table":                  {"sail.area": "2 m2"},
	"a table by another name":  {"charger.plug": "round"},
	"a key by another name":    {"gears.gear_ratio": "blue"},
	"a day":                    {"storage.from": "2026-02-30"},
	"a count":                  {"motors.count": "two and a half"},
	"a yes":                    {"vehicle.has_board": "perhaps"},
	"gauge and area":           {"wire.gauge": "14 AWG", "wire.area": "2 mm2"},
	"delay of nothing":         {"cutoff.module.delay": "2 s"},
	"a chatter":                {"cutoff.pack.opens_at": "9 V", "cutoff.pack.closes_at": "9 V"},
	"rating of no fuse":        {"fuse.form": "none", "fuse.rating": "30 A"},
	"more driven wheels":       {"vehicle.wheels": "3", "vehicle.driven_wheels": "4"},
	"stall below no load":      {"motors.no_load_current": "3 A", "motors.stall_current": "2 A"},
	"no timer":                 {"charger.timer": "3 h", "charger.stops": "never"},
	"peak below lasting":       {"controller.continuous_current": "30 A", "controller.peak_current": "20 A"},
	"a ground":                 {"vehicle.ground": "lava"},
	"a can":                    {"motors.can": "banana"},
	"a joint":                  {"wire.joint": "chewing gum"},
	"a form":                   {"fuse.form": "paper clip"},
	"a label":                  {"pack.label": "12 V 9.5 amps"},
	"a chemistry":              {"pack.chemistry": "unobtainium"},
	"another chemistry":        {"pack.label": "12.8 V 7 Ah LiFePO4", "pack.chemistry": "li-ion"},
	"another count of cells":   {"pack.cells_in_series": "9"},
	"another capacity":         {"pack.capacity": "90 Ah"},
	"an age without a mass":    {"rider.age": "60 years", "rider.mass": ""},
	"second of one":            {"pack.second.label": "12 V 5 Ah"},
	"label of a second":        {"pack.joined": "series", "pack.second.label": "12 V 9.5 amps"},
	"a joined pair":            {"pack.label": "24 V (two 12 V 7 Ah)", "pack.joined": "series"},
	"label of the original":    {"original.pack.label": "12 V 600 CCA"},
	"volts of the original":    {"original.pack.label": "24 V 7 Ah"},
	"chemistry of it":          {"original.pack.chemistry": "unobtainium", "original.pack.label": "12 V 7 Ah"},
	"volts it cannot have":     {"measured.rest_voltage": "40 V"},
	"a charge it cannot have":  {"measured.rest_voltage": "11.6 V", "pack.charge": "100 %"},
	"a load that lifts":        {"measured.rest_voltage": "12 V", "measured.loaded_voltage": "13 V"},
	"label of the charger":     {"charger.label": "banana"},
	"volts of the charger":     {"charger.label": "14.4 V 1 A", "charger.voltage": "29 V"},
	"kind of the charger":      {"charger.label": "12.6 V 2 A lithium-ion charger", "charger.made_for": "lead-acid"},
	"one motor's ohms":         {"motors.rated_voltage": "12 V", "motors.winding_resistance": "2 Ohm", "motors.stall_current": "60 A"},
	"a file that is not there": {"tables_file": "nowhere.toml"},
	"cells from nowhere":       {"pack.chemistry_file": "nowhere.toml"},
	"volts beside a speed":     {"motors.no_load_speed": "24V 15000 rpm", "motors.rated_voltage": "12 V"},
	"days the wrong way":       {"storage.from": "2026-11-01", "storage.until": "2026-10-01"},
}

// hides says which faults may rightly keep others from being told, because it cannot
// be known whether they are any.
var hides = []struct {
	these, those []string
	why          string
}{
	{[]string{"a label", "a chemistry", "another chemistry", "another count of cells", "a joined pair"}, ofTheBattery, "it is not known which battery it is"},
	{[]string{"label of the original", "chemistry of it"}, ofTheBattery, "the original battery was measured, and it is not known which that is"},
	{[]string{"volts of the original"}, []string{"a charge it cannot have"}, "the original battery was measured"},
	{[]string{"a chemistry", "another chemistry", "a joined pair", "a label"}, []string{"another count of cells"}, "a label means other cells in another chemistry"},
	{[]string{"a label"}, []string{"another capacity"}, "the label tells none"},
	{[]string{"a joined pair"}, []string{"second of one"}, "there are two where the key stays"},
	{[]string{"a file that is not there"}, []string{"a can", "a form", "a ground", "a joint"}, "it may be a word of that file"},
	{[]string{"cells from nowhere"}, []string{"a chemistry", "chemistry of it"}, "it may be a word of that file"},
}

// ofTheBattery are faults of readings, which rest on the battery that was read.
var ofTheBattery = []string{"volts it cannot have", "a charge it cannot have", "a load that lifts"}

// mayHide reports whether one may hide the other, and notes that it was asked.
func mayHide(a, b string, asked []bool) bool {
	for i, h := range hides {
		if slices.Contains(h.these, a) && slices.Contains(h.those, b) {
			asked[i] = true
			return true
		}
	}
	return false
}

// first is all that one round tells.
func first(values map[string]string) setup.Faults {
	s, err := setup.Of(values)
	if err == nil {
		_, err = s.Parts()
	}
	var all setup.Faults
	errors.As(err, &all)
	return all
}

func TestWhatIsWrongIsToldInOneRoundWhateverElseIs(t *testing.T) {
	base := map[string]string{"pack.label": "12 V 7 Ah", "vehicle.design_voltage": "12 V", "rider.mass": "20 kg"}
	if got := first(base); got != nil {
		t.Fatal(got)
	}
	alone := map[string]setup.Faults{}
	with := func(names ...string) map[string]string {
		all := maps.Clone(base)
		for _, name := range names {
			maps.Copy(all, wrongs[name])
			maps.DeleteFunc(all, func(_, text string) bool { return text == "" })
		}
		return all
	}
	names := slices.Sorted(maps.Keys(wrongs))
	for _, name := range names {
		if alone[name] = first(with(name)); len(alone[name]) == 0 {
			t.Errorf("%s: nothing is wrong with %v", name, wrongs[name])
		}
	}
	pairs, hidden := 0, make([]bool, len(hides))
	for i, a := range names {
		for _, b := range names[i+1:] {
			if shareKey(wrongs[a], wrongs[b]) {
				continue
			}
			pairs++
			told := first(with(a, b))
			for _, pair := range [][2]string{{a, b}, {b, a}} {
				for _, f := range alone[pair[1]] {
					if slices.ContainsFunc(told, func(x setup.Fault) bool { return x.Key == f.Key && x.Read == f.Read }) {
						continue
					}
					if !mayHide(pair[0], pair[1], hidden) {
						t.Errorf("%s hides %s: %v\ntold: %v", pair[0], pair[1], f, told)
					}
				}
			}
			for _, f := range told {
				if !slices.ContainsFunc(append(slices.Clone(alone[a]), alone[b]...), func(x setup.Fault) bool { return x.Key == f.Key }) {
					t.Errorf("%s with %s: %v is told of neither alone", a, b, f)
				}
			}
		}
	}
	for i, h := range hides {
		if !hidden[i] {
			t.Errorf("%v hide nothing of %v", h.these, h.those)
		}
	}
	if pairs < 700 {
		t.Errorf("only %d pairs", pairs)
	}
}

func shareKey(a, b map[string]string) bool {
	for key := range a {
		if _, is := b[key]; is {
			return true
		}
	}
	return false
}

// A file with faults of every stage: mended one after the other, none comes up that
// the first round did not tell.
func TestMendingOneFaultBringsUpNoOther(t *testing.T) {
	var all setup.Faults
	text := `
[driver]
weight = "20 stones"
[vehicle]
design_voltage = "12 V"
ground = "lava"
seats = "two"
[battery]
type = "unobtainium"
label = "12 V 9.5 amps"
[charger]
label = "14.4 V 1 A"
voltage = "29 V"
[original.battery]
label = "24 V 7 Ah"
[fuze]
raiting = "thirty"
`
	mend := []string{
		"[driver]", "[rider]", `weight = "20 stones"`, `mass = "20 kg"`, `"lava"`, `"asphalt"`, `"two"`, "2",
		"[battery]", "[pack]", `type = "unobtainium"`, `chemistry = "agm"`, `"12 V 9.5 amps"`, `"12 V 7 Ah"`,
		`"29 V"`, `"14.4 V"`, "[original.battery]", "[original.pack]", `"24 V 7 Ah"`, `"12 V 7 Ah"`,
		"[fuze]", "[fuse]", `raiting = "thirty"`, `rating = "30 A"`,
	}
	name := filepath.Join(t.TempDir(), "tractor.toml")
	for i := 0; ; i += 2 {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		s, err := setup.Load(name)
		if err == nil {
			_, err = s.Parts()
		}
		var now setup.Faults
		errors.As(err, &now)
		if i == 0 {
			all = now
		}
		for _, f := range now {
			// A table that is called by its right name shows in the keys.
			if !slices.ContainsFunc(all, func(x setup.Fault) bool { return x.Line == f.Line && x.Want == f.Want }) {
				t.Errorf("after %d were mended: %v\nfirst told:\n%v", i/2, f, all)
			}
		}
		if i == len(mend) {
			if err != nil {
				t.Errorf("still wrong: %v", err)
			}
			return
		}
		if !strings.Contains(text, mend[i]) {
			t.Fatalf("%s is not in\n%s", mend[i], text)
		}
		text = strings.Replace(text, mend[i], mend[i+1], 1)
	}
}

// A setup of good form may be unfinished and is gone on from; what its labels mean is
// told by what looks them up, and beside faults of form.
func TestLabelsThatMeanNothingAreToldOnceFormIsInOrder(t *testing.T) {
	banana := setup.Fault{File: "x.toml", Line: 2, Key: "pack.label", Read: "banana"}
	has := func(err error) bool {
		faults, _ := errors.AsType[setup.Faults](err)
		return slices.ContainsFunc(faults, func(f setup.Fault) bool { f.Want = ""; return f == banana })
	}
	const good = "[pack]\nlabel = \"banana\"\n[rider]\nmass = \"20 kg\"\n"
	s, err := setup.Read(strings.NewReader(good), "x.toml")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Parts(); !has(err) {
		t.Errorf("%v", err)
	}
	if _, err := setup.Read(strings.NewReader(strings.Replace(good, "20 kg", "20", 1)), "x.toml"); !has(err) || !strings.Contains(err.Error(), "rider.mass") {
		t.Errorf("beside a fault of form: %v", err)
	}
	if _, err := s.With(map[string]string{"pack.label": "12 V 7 Ah"}); err != nil {
		t.Errorf("it cannot be gone on from: %v", err)
	}
}
