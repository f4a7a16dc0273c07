package trials_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/wiring"
)

// The rows of the time series are one of the rides that the report tells of:
// inside its ranges, which hardly have a width where next to nothing is open.
func TestTheTraceIsTheRideOfTheReport(t *testing.T) {
	known := benchLoad().with("pack.chemistry", `"nimh"`, "pack.label", `"12 V 3 Ah"`, "load.until", `"10.5 V"`, "pack.health", `"90 %"`, "pack.tested", `true`, "pack.resistance", `"30 mOhm"`, "pack.mass", `"0.6 kg"`, "outing.air", `"20 C"`)
	for name, s := range map[string]sheet{"done properly": doneProperly(t), "labels": labelsOnly(), "wanted": doneProperly(t).with("outing.wanted", `"20 min"`), "bench": benchLoad(), "known": known} {
		loaded, err := packcheck.Read(strings.NewReader(s.toml()), "trace.toml")
		if err != nil {
			t.Fatal(err)
		}
		a, err := packcheck.AssessWith(t.Context(), loaded, packcheck.Options{Draws: some})
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := packcheck.Trace(loaded, &out); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(&out).ReadAll()
		if err != nil || len(rows) < 10 {
			t.Fatalf("%s: %d rows, %v", name, len(rows), err)
		}
		column := map[string]int{}
		for i, head := range rows[0] {
			column[head] = i
		}
		at := func(row []string, head string) float64 {
			v, err := strconv.ParseFloat(row[column[head]], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
		last := rows[len(rows)-1]
		if r := a.Ranges["ride.lasts_pedal_min"]; name == "known" && r.High > 1.05*r.Low {
			t.Fatalf("all is told of it, and it lasts %g to %g min", r.Low, r.High)
		}
		agrees := func(what string, got, likely, off float64) {
			t.Helper()
			path := "ride." + what
			if r, open := a.Ranges[path]; open && (got < r.Low-off || got > r.High+off) || !open && math.Abs(got-likely) > off {
				t.Errorf("%s, %s: the trace says %.4g, the report %.4g, %.4g to %.4g", name, what, got, likely, r.Low, r.High)
			}
		}
		agrees("clock_min", at(last, "time_s")/60, a.Ride.ClockMin, 1e-3*a.Ride.ClockMin)
		agrees("charge_left", max(0, at(last, "charge")), a.Ride.ChargeLeft, 2e-3)
		before, hottest := -1.0, -100.0
		for _, row := range rows[1:] {
			if now := at(row, "time_s"); now < before {
				t.Errorf("%s: time goes back at %g s", name, now)
			} else {
				before = now
			}
			hottest = max(hottest, at(row, "pack_c"))
		}
		agrees("pack_c", hottest, a.Ride.PackC, 0.1)
	}
}

// What the setup does not say is told, whoever assumed it.
func TestHiddenDefaultsAreListed(t *testing.T) {
	full := doneProperly(t).without("original.pack", "original.controller")
	for key, s := range map[string]sheet{
		"fuse.form":                  full.with("fuse.form", ""),
		"pack.chemistry":             full.with("pack.chemistry", ""),
		"pack.rate":                  full.with("pack.rate", ""),
		"pack.max_current":           full.with("pack.max_current", ""),
		"wire.insulation":            full.with("wire.insulation", ""),
		"vehicle.slope":              full.with("vehicle.slope", ""),
		"controller.ramp":            full.with("controller.ramp", "", "controller.current_limit", ""),
		"cutoff.module.delay":        full.with("cutoff.module.delay", ""),
		"outing.drive":               benchLoad().with("outing.pause", `"10 s"`),
		"vehicle.design_voltage":     full.with("vehicle.design_voltage", ""),
		"controller.resistance":      full.with("controller.resistance", ""),
		"vehicle.wheels":             full.with("vehicle.wheels", ""),
		"motors.wiring":              full.with("motors.wiring", ""),
		"gears.efficiency":           full.with("gears.efficiency", ""),
		"motors.no_load_current":     full.with("motors.no_load_current", ""),
		"pack.housing":               full.with("pack.housing", ""),
		"controller.kind":            full.with("controller.kind", ""),
		"motors.torque_constant":     full.with("motors.no_load_speed", ""),
		"motors.rated_voltage":       full.with("motors.rated_voltage", ""),
		"wire.joints":                full.with("wire.joints", ""),
		"wire.one_way_length":        full.with("wire.one_way_length", ""),
		"controller.standby_current": full.with("controller.standby_current", ""),
	} {
		a := assess(t, s)
		if !slices.ContainsFunc(a.Assumed, func(x answer.Assumed) bool { return x.Key == key }) {
			t.Errorf("%s is left out and not listed as assumed", key)
		}
	}
}

// A breaker that came back by itself is taken for the breaker that the setup
// describes.
func TestABreakerThatCameBackIsTheOneThatIsThere(t *testing.T) {
	says := func(s sheet) string {
		for _, m := range assess(t, s.with("measured.reset_seconds", `"45 s"`)).Measured {
			if m.Name == "came back after" {
				return m.Says
			}
		}
		return ""
	}
	plain := labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`)
	breaker := plain.with("fuse.form", `"auto-reset breaker"`, "fuse.rating", `"30 A"`)
	if got := says(breaker); !strings.HasPrefix(got, "auto-reset breaker") {
		t.Errorf("with a breaker in the setup: %s", got)
	}
}

// A fuse that was told of is not one of which nothing is known.
func TestAFuseThatOpenedIsNamedWhereWhatIsInItsPlaceIsNotKnown(t *testing.T) {
	t.Parallel()
	a := assess(t, labelsOnly().without("fuse").with("measured.fuse_rating", `"25 A"`, "measured.fuse_seconds", `"4 s"`))
	for _, f := range a.Findings {
		if f.Code == wiring.CodeFuseUnknown {
			if !strings.Contains(f.Title, "25 A") {
				t.Errorf("%s", f.Title)
			}
			return
		}
	}
	t.Error("what is in the place of the fuse that opened is taken to be known")
}

// What a reading says that others contradict is said with its condition, however short.
func TestASpeedThatOtherReadingsContradictIsTooFastOnlyIfReadRight(t *testing.T) {
	t.Parallel()
	a := assess(t, sheet{
		"rider.age": `"4 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"asphalt"`, "vehicle.claimed_speed": `"4 km/h"`,
		"motors.count": "2", "motors.can": `"550"`, "pack.chemistry": `"agm"`, "pack.label": `"12 V 9 Ah"`,
	}.with("measured.ride_time", `"3 h"`, "measured.top_speed", `"9 km/h"`, "measured.rest_voltage", `"11.4 V"`,
		"measured.hours_rested", `"12 h"`, "measured.loaded_voltage", `"11.2 V"`, "measured.loaded_current", `"20 A"`))
	if a.Conflict == nil || !slices.Contains(a.Conflict.LeftOut, answer.KeyMeasuredTopSpeed) {
		t.Fatalf("the speed is not left out: %+v", a.Conflict)
	}
	for _, f := range a.Findings {
		if f.Code == drive.CodeFastForARideOn && !strings.HasPrefix(f.Title, "If read right, ") {
			t.Errorf("%s", f.Title)
		}
	}
	if has(a, drive.CodeFastForARideOn) < answer.Watch {
		t.Error("the speed is not judged")
	}
}

// Nobody is sent to look for another fuse where what opened came back, as no blown one does.
func TestWhatOpenedAndCameBackIsNoBlownFuse(t *testing.T) {
	t.Parallel()
	opened := labelsOnly().without("fuse").with("measured.fuse_rating", `"25 A"`, "measured.fuse_seconds", `"4 s"`)
	for by, want := range map[string]struct{ blown, back bool }{
		"": {true, false}, "nothing": {true, false}, "itself": {false, true}, "released pedal": {false, true}, "charger": {false, true},
	} {
		s := opened
		if by != "" {
			s = s.with("measured.restored_by", `"`+by+`"`)
		}
		var blown, back bool
		for _, f := range assess(t, s).Findings {
			switch f.Code {
			case judge.CodeFuseOpened:
				blown = blown || strings.HasPrefix(f.Title, "A fuse opened")
				back = back || strings.HasPrefix(f.Title, "Something opened")
				if !strings.Contains(f.Title, "at least") {
					t.Errorf("by %q: the amps are lost: %s", by, f.Title)
				}
			case wiring.CodeFuseUnknown:
				if got := strings.Contains(f.Title, "came back"); got == want.blown {
					t.Errorf("by %q: %s", by, f.Title)
				}
			}
		}
		if blown != want.blown || back != want.back {
			t.Errorf("by %q: told of a blown fuse %v, of what came back %v", by, blown, back)
		}
	}
}

// Fuse, cutoff and charger are for one kind of cell: which it is comes before them.
func TestTheKindOfCellIsTheFirstReasonWhereALabelLeavesItOpen(t *testing.T) {
	t.Parallel()
	a := assess(t, sheet{
		"rider.age": `"7 years"`, "vehicle.design_voltage": `"24 V"`, "vehicle.ground": `"lawn"`, "pack.label": `"24 V 7 Ah"`, "pack.age": `"1 year"`,
		"measured.ride_time": `"40 min"`, "measured.top_speed": `"7 km/h"`,
	})
	if f := a.First(); f == nil || f.Code != judge.CodeCellsAssumed {
		t.Errorf("the first reason is %+v", f)
	}
	if len(a.Measure) == 0 || a.Measure[0].Key != "pack.chemistry" {
		t.Errorf("asked for first: %+v", a.Measure)
	}
}
