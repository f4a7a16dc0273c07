package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/packcheck/report"
)

// range95 is an estimate of the JSON report.
type range95 struct{ Value, Low, High float64 }

func (r *range95) holds(x float64) bool { return r != nil && r.Low <= x && x <= r.High }

func (r *range95) String() string {
	if r == nil {
		return "not known"
	}
	return fmt.Sprintf("%.4g (%.4g to %.4g)", r.Value, r.Low, r.High)
}

// fitJSONReport is the part of the JSON report that the tests look at.
type fitJSONReport struct {
	CapacityAh *range95 `json:"capacity_ah"`
	FullAh     *range95 `json:"full_ah"`
	Health     *range95
	Peukert    *range95
	MidOhm     *range95 `json:"mid_ohm"`
	Ohms       []struct {
		Charge float64
		Ohm    *range95
		Steps  int
	}
	Runs []struct {
		Log      string
		Ah       float64
		CurrentA float64 `json:"current_a"`
	}
	Pack    string
	Notes   []string
	Assumed []assumption
}

// fitRun runs the command and returns what it wrote.
func fitRun(t testing.TB, stdin string, args ...string) string {
	t.Helper()
	var out, errs strings.Builder
	code := run(append([]string{"fit"}, args...), strings.NewReader(stdin), &out, &errs)
	if code != exitFine || errs.Len() > 0 {
		t.Fatalf("packcheck fit %s: code %d, %s", strings.Join(args, " "), code, errs.String())
	}
	return out.String()
}

func fitInJSON(t testing.TB, stdin string, args ...string) fitJSONReport {
	t.Helper()
	var r fitJSONReport
	if err := json.Unmarshal([]byte(fitRun(t, stdin, append(args, "--format", "json")...)), &r); err != nil {
		t.Fatal(err)
	}
	return r
}

// The engine discharges a battery that it knows; the fit sees the log alone and
// must find the battery again, within what it says of its own uncertainty and
// without making that uselessly wide. Then the written tables go into a setup,
// and its assessment must last as long as the logged discharge did.
func TestFitFindsTheBatteryThatTheEngineDischarged(t *testing.T) {
	for _, c := range []struct {
		name  string
		label string
		v     invented
		temp  bool    // the log has the cells' temperature
		fullR float64 // greatest sensible half widths, relative: of the rated capacity ...
		ohmR  float64 // ... and of the resistance
	}{
		{"tool pack, new", "20 V max 5 Ah", invented{"li-ion", 5, 5, 1, 0.050, 25, 10, 15}, true, 0.12, 0.12},
		{"tool pack, worn, cold", "20 V max 5 Ah", invented{"li-ion", 5, 5, 0.8, 0.090, 10, 8, 15}, true, 0.12, 0.12},
		// A pack that warms itself hides its resistance from whoever does not
		// measure the temperature.
		{"tool pack, worn, no temperature", "20 V max 5 Ah", invented{"li-ion", 5, 5, 0.8, 0.090, 10, 8, 15}, false, 0.12, 0.30},
		// From a run of an hour to the label's twenty is a long way.
		{"lead-acid block, new", "12 V 7 Ah AGM", invented{"agm", 6, 7, 1, 0.030, 25, 5, 10.2}, true, 0.25, 0.12},
		{"lead-acid block, tired", "12 V 7 Ah AGM", invented{"agm", 6, 7, 0.6, 0.070, 20, 4, 10.2}, false, 0.25, 0.12},
		{"iron phosphate", "12.8 V 10 Ah LiFePO4", invented{"lifepo4", 4, 10, 0.9, 0.030, 20, 10, 11}, true, 0.12, 0.12},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, ah, seconds := c.v.engineLog(t, c.temp)
			dir := t.TempDir()
			pack, cells := filepath.Join(dir, "pack.toml"), filepath.Join(dir, "cells.toml")
			r := fitInJSON(t, log, "-", "--full", "--label", c.label, "--air", fmt.Sprintf("%g C", c.v.airC),
				"--cutoff", fmt.Sprintf("%g V", c.v.untilV), "--write-pack", pack, "--write-chemistry", cells)
			for _, f := range []struct {
				what string
				got  *range95
				is   float64
				wide float64 // greatest sensible half width, relative
			}{
				{"capacity to the cutoff", r.CapacityAh, ah, 0.04},
				{"capacity over the rated hours", r.FullAh, c.v.labelAh * c.v.health, c.fullR},
				{"health", r.Health, c.v.health, c.fullR},
				{"resistance", r.MidOhm, c.v.ohm, c.ohmR},
			} {
				t.Logf("%s: %v, is %.4g", f.what, f.got, f.is)
				if !f.got.holds(f.is) || f.got.High-f.got.Low > 2*f.wide*f.is {
					t.Errorf("%s: %v, is %.4g", f.what, f.got, f.is)
				}
			}
			lasts(t, dir, pack, c.v, seconds)
		})
	}
}

// A log that ends shortly before the cutoff, as that of a logger that stops with its
// vehicle, does not make a pack that excludes it.
func TestALogThatEndsShortOfTheCutoffMakesAPackThatDoesWhatItDid(t *testing.T) {
	worn := invented{"li-ion", 5, 5, 0.7, 0.090, 25, 8, 15}
	whole, _, seconds := worn.engineLog(t, true)
	rows := strings.Split(whole, "\n")
	log := strings.Join(rows[:len(rows)-4], "\n")
	dir := t.TempDir()
	pack, cells := filepath.Join(dir, "pack.toml"), filepath.Join(dir, "cells.toml")
	args := []string{"-", "--label", "20 V max 5 Ah", "--air", "25 C", "--write-pack", pack, "--write-chemistry", cells}
	r := fitInJSON(t, log, args...)
	if r.CapacityAh != nil || !r.Health.holds(0.7) {
		t.Errorf("capacity %v, health %v, is 0.70", r.CapacityAh, r.Health)
	}
	text := fitRun(t, log, append(args, "--overwrite")...)
	for _, want := range []string{"Capacity: at least ", "the label; a discharge ended"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	lasts(t, dir, pack, worn, seconds)
}

// One that ends half way bounds the capacity from below only; the page says so where the
// capacity stands, what minutes then rest on, and what to log to know more.
func TestALogThatEndsHalfWayIsToldToBoundFromBelow(t *testing.T) {
	whole, _, _ := invented{"li-ion", 5, 5, 0.7, 0.090, 25, 8, 15}.engineLog(t, true)
	rows := strings.Split(whole, "\n")
	for share, half := range map[float64]bool{0.5: true, 1: false} {
		log := strings.Join(rows[:int(share*float64(len(rows)))], "\n")
		text := strings.Join(strings.Fields(fitRun(t, log, "-", "--label", "20 V max 5 Ah", "--air", "25 C")), " ")
		for _, want := range []string{
			"(a bound from below: how much more there is, the log does not tell)", "Minutes computed from it rest on the label",
			"# The log bounds the capacity from below only", "- Log one discharge from full and rested down to 15 V,",
		} {
			if strings.Contains(text, want) != half {
				t.Errorf("%.0f %% of the log: %q is there %v, want %v, in\n%s", 100*share, want, !half, half, text)
			}
		}
	}
}

// lasts assesses the same discharge with the written tables.
func lasts(t *testing.T, dir, pack string, v invented, seconds float64) {
	t.Helper()
	table, err := os.ReadFile(pack)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(table), `chemistry_file = "cells.toml"`) {
		t.Errorf("the pack does not name the fitted cell:\n%s", table)
	}
	setup := filepath.Join(dir, "setup.toml")
	text := fmt.Sprintf("%s\n[outing]\nair = \"%g C\"\ndrive = \"2 min\"\npause = \"30 s\"\n\n[load]\ncurrent = \"%g A\"\nuntil = \"%g V\"\n", table, v.airC, v.amps, v.untilV)
	if err := os.WriteFile(setup, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	out, _ := judged(t, setup, "--format", "json")
	var a struct {
		Ride struct {
			PedalMin float64 `json:"pedal_min"`
		}
		Ranges map[string]struct{ Low, Likely, High float64 }
	}
	if err := json.Unmarshal([]byte(out), &a); err != nil {
		t.Fatal(err)
	}
	did, m := seconds/60, a.Ranges["ride.pedal_min"]
	t.Logf("lasts %.1f min (%.1f to %.1f), did %.1f", a.Ride.PedalMin, m.Low, m.High, did)
	if m.Low > did || m.High < did || math.Abs(a.Ride.PedalMin/did-1) > 0.05 {
		t.Errorf("with the written pack the discharge lasts %.1f min (%.1f to %.1f), it did %.1f", a.Ride.PedalMin, m.Low, m.High, did)
	}
}

// The report is for the same code boxes as the assessment.
func TestFitReportKeepsToTheColumns(t *testing.T) {
	for _, args := range [][]string{
		{exampleLogFile, "--label", "20 V max 5 Ah"},
		{exampleLogFile, "--chemistry", "li-ion"},
		{exampleLogFile, "--label", "20 V max 5 Ah", "--cutoff", "12 V"},
	} {
		for i, line := range strings.Split(fitRun(t, "", args...), "\n") {
			if len(line) > report.Columns || strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r > '~' }) {
				t.Errorf("%v: line %d is too wide or not ASCII: %q", args, i+1, line)
			}
			for _, bad := range []string{"NaN", "Inf", "%!", "unknown"} {
				if strings.Contains(line, bad) {
					t.Errorf("%v: line %d holds %s: %q", args, i+1, bad, line)
				}
			}
		}
	}
}
