package trials_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// FuzzAssess holds the whole way from text to assessment to its promises:
// faults with a reason, or an answer that does not contradict itself.
func FuzzAssess(f *testing.F) {
	files, err := filepath.Glob("../../examples/*.toml")
	if err != nil || len(files) < 3 {
		f.Fatalf("%d examples: %v", len(files), err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	for _, s := range []sheet{
		labelsOnly(), benchLoad(),
		benchLoad().with("load.current", "", "load.power", `"40 to 60 W"`, "outing.pause", `"10 s"`, "wire.gauge", `"16 to 20 AWG"`),
		labelsOnly().with("pack.label", `"24 V (two 12 V)"`, "pack.joined", `"parallel"`, "measured.rest_voltage", `"25 V"`, "measured.loaded_voltage", `"24 V"`, "measured.loaded_current", `"8 A"`),
		labelsOnly().with("pack.chemistry", `"nimh"`, "pack.label", `"9.6 V 3 Ah"`, "charger.label", `"12V 1000Ma"`, "storage.from", "2026-11-01", "storage.until", "2027-03-31"),
		labelsOnly().with("vehicle.slope", `"0 to 20 %"`, "rider.age", `"2 to 9 years"`, "motors.wiring", `"series"`, "controller.ramp", `"0 to 3 s"`),
		{"pack.label": `"5S2P"`, "pack.capacity": `"1e1 Ah"`, "load.current": `"1 A"`, "original.pack.label": `"12 V 7 Ah"`},
	} {
		f.Add(s.toml())
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := packcheck.Read(strings.NewReader(text), "fuzz.toml")
		if err == nil && namesFiles(s) {
			return // would read files of this machine
		}
		var a *answer.Assessment
		if err == nil {
			a, err = packcheck.AssessWith(t.Context(), s, packcheck.Options{Draws: few})
		}
		var faults setup.Faults
		switch {
		case errors.As(err, &faults):
			for _, one := range faults {
				if one.Want == "" || strings.ContainsAny(one.Error(), "\n\r") {
					t.Errorf("fault %q", one.Error())
				}
			}
		case err != nil:
			t.Errorf("neither faults nor an answer: %v", err)
		default:
			consistent(t, "fuzz", a)
			everyFormat(t, "fuzz", a)
		}
	})
}

// namesFiles reports whether a setup brings files along.
func namesFiles(s *setup.Setup) bool {
	if s == nil {
		return false
	}
	return s.Bench.Pattern.Given || s.Pack.ChemistryFile.Given || s.TablesFile.Given || namesFiles(s.Original)
}
