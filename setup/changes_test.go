package setup_test

import (
	"errors"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/setup"
)

// linesOf returns the faults of an error as lines.
func linesOf(t *testing.T, err error) []string {
	t.Helper()
	var faults setup.Faults
	if !errors.As(err, &faults) {
		t.Fatalf("got %v, want faults", err)
	}
	var lines []string
	for _, f := range faults {
		lines = append(lines, f.Error())
	}
	return lines
}

// What another battery makes of a setup: what belongs to the old one goes, or is
// said of the original where the old one is what the vehicle was made with.
func TestAnotherBatteryTakesTheOldOnesKeysWithIt(t *testing.T) {
	vehicle := map[string]string{"rider.mass": "20 kg", "vehicle.design_voltage": "12 V", "cutoff.module.opens_at": "10.5 V", "measured.pull_force": "40 N"}
	with := func(more map[string]string) map[string]string {
		all := maps.Clone(vehicle)
		maps.Copy(all, more)
		return all
	}
	for name, tt := range map[string]struct{ before, after map[string]string }{
		"as made": {
			with(map[string]string{"pack.label": "12 V 7 Ah", "pack.health": "70 %", "cutoff.pack.opens_at": "10 V", "charger.current": "1 A", "measured.ride_time": "40 min"}),
			with(map[string]string{
				"original.pack.label": "12 V 7 Ah", "original.pack.health": "70 %", "original.cutoff.pack.opens_at": "10 V", "measured.ride_time": "40 min",
			}),
		},
		"changed before, nobody knows from what": {
			with(map[string]string{"pack.label": "20 V max 5 Ah", "pack.second.capacity": "4 Ah", "pack.joined": "parallel", "charger.current": "1 A", "measured.ride_time": "40 min"}),
			with(nil),
		},
		"too fast at the same volts": {
			with(map[string]string{"pack.label": "20 V max 5 Ah", "measured.top_speed": "9 km/h", "measured.ride_time": "40 min"}),
			with(map[string]string{"measured.top_speed": "9 km/h"}),
		},
		"not too fast at the same volts": {
			with(map[string]string{"pack.label": "20 V max 5 Ah", "measured.top_speed": "7 km/h"}),
			with(nil),
		},
		"not too fast for who rides": {
			with(map[string]string{"rider.age": "9 years", "pack.label": "20 V max 5 Ah", "measured.top_speed": "9 km/h"}),
			with(map[string]string{"rider.age": "9 years"}),
		},
		"too fast at more volts": {
			with(map[string]string{"pack.label": "24 V 7 Ah", "measured.top_speed": "9 km/h"}),
			with(nil),
		},
		"too fast at far fewer volts, and faster now": {
			with(map[string]string{"pack.chemistry": "li-ion", "pack.label": "12 V 4 Ah", "measured.top_speed": "9 km/h"}),
			with(nil),
		},
		"too fast through a converter, which stays": {
			with(map[string]string{"pack.label": "24 V 7 Ah", "controller.converter_voltage": "12 V", "measured.top_speed": "9 km/h"}),
			with(map[string]string{"controller.converter_voltage": "12 V", "measured.top_speed": "9 km/h"}),
		},
		"an original battery is told, and what was measured is of it": {
			with(map[string]string{"pack.label": "20 V max 5 Ah", "original.pack.label": "12 V 7 Ah", "measured.top_speed": "5 km/h"}),
			with(map[string]string{"original.pack.label": "12 V 7 Ah", "measured.top_speed": "5 km/h"}),
		},
		"both were measured": {
			with(map[string]string{"pack.label": "20 V max 5 Ah", "original.pack.label": "12 V 7 Ah", "measured.top_speed": "7 km/h", "original.measured.top_speed": "5 km/h"}),
			with(map[string]string{"original.pack.label": "12 V 7 Ah", "original.measured.top_speed": "5 km/h"}),
		},
		"the original had the same battery": {
			with(map[string]string{"pack.label": "18 V 4 Ah", "original.controller.kind": "contacts"}),
			with(map[string]string{"original.pack.label": "18 V 4 Ah", "original.controller.kind": "contacts"}),
		},
	} {
		s, err := setup.Of(tt.before)
		if err != nil {
			t.Fatal(name, err)
		}
		got, err := s.Change(setup.Changes{Pack: "20 V max 4 Ah"})
		if err != nil {
			t.Fatal(name, err)
		}
		want := maps.Clone(tt.after)
		want["pack.label"] = "20 V max 4 Ah"
		if d := cmp.Diff(want, got.Values()); d != "" {
			t.Errorf("%s (-want +got)\n%s", name, d)
		}
		var left []string
		for key := range tt.before {
			_, kept := want[key]
			_, moved := want["original."+key]
			_, was := tt.before["original."+key]
			moved = moved && !was
			if !moved && (!kept || key == "pack.label") {
				left = append(left, key)
			}
		}
		slices.Sort(left)
		if d := cmp.Diff(left, got.LeftOut); d != "" {
			t.Errorf("%s: left out (-want +got)\n%s", name, d)
		}
	}
}

func TestFaultsOfFileAndChangesComeAtOnceUnderTheirOwnNames(t *testing.T) {
	_, err := setup.ReadWith(strings.NewReader("[rider]\nmass = \"-5 kg\"\n[pack]\nlabel = \"12 V\"\n[wire]\narea = \"2.5 mm2\"\n"), "cart.toml", setup.Changes{
		Pack: "7 Ah", PackName: "pack", SetName: "set",
		Set: map[string]string{"wire.gauge": "14 AWG", "vehicle.ground": "lawm", "fuse.amps": "20 A"},
	})
	got := linesOf(t, err)
	for i, begin := range []string{
		"cart.toml:2: rider.mass: ", "pack: pack.label: ", "set: fuse.amps: ", "set: vehicle.ground: ", "set: wire.gauge: ",
	} {
		if !slices.ContainsFunc(got, func(line string) bool { return strings.HasPrefix(line, begin) }) {
			t.Errorf("%d: nothing begins with %q in %q", i, begin, got)
		}
	}
	if len(got) != 5 {
		t.Errorf("%d faults, want 5: %q", len(got), got)
	}
}

// A fault that shows only when labels are looked up goes by the same name.
func TestLateFaultsGoByTheNameOfTheChange(t *testing.T) {
	s, err := setup.Of(map[string]string{"pack.label": "12 V 7 Ah"})
	if err != nil {
		t.Fatal(err)
	}
	if s, err = s.Change(setup.Changes{Set: map[string]string{"vehicle.ground": "lawm"}, SetName: "--set"}); err != nil {
		t.Fatal(err)
	}
	_, err = s.World()
	if got := linesOf(t, err); len(got) != 1 || !strings.HasPrefix(got[0], "--set: vehicle.ground: ") {
		t.Errorf("got %q", got)
	}
}

func TestTakingOutATableTakesAllOfIt(t *testing.T) {
	s, err := setup.Read(strings.NewReader("[pack]\nlabel = \"12 V 7 Ah\"\n[cutoff.module]\nopens_at = \"10 V\"\ndelay = \"2 s\"\n[fuse]\n[original.pack]\nlabel = \"12 V 9 Ah\"\n"), "x")
	if err != nil {
		t.Fatal(err)
	}
	for table, want := range map[string]map[string]string{
		"cutoff.module": {"pack.label": "12 V 7 Ah", "original.pack.label": "12 V 9 Ah", "fuse": setup.NothingTold},
		"original":      {"pack.label": "12 V 7 Ah", "cutoff.module.opens_at": "10 V", "cutoff.module.delay": "2 s", "fuse": setup.NothingTold},
	} {
		got, err := s.With(map[string]string{table: ""})
		if err != nil {
			t.Fatal(table, err)
		}
		if d := cmp.Diff(want, got.Values()); d != "" || got.Cutoff.Module.Given != (table != "cutoff.module") || (got.Original != nil) != (table != "original") || !got.Fuse.Given {
			t.Errorf("%s taken out (-want +got)\n%s", table, d)
		}
	}
	if _, err := s.With(map[string]string{"cutof.module": ""}); err == nil {
		t.Error("taking out what does not exist went unnoticed")
	}
}
