package trials_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/judge"
)

// Keys that are not only stored: what is told changes what is answered.

// 2 V less at the motors than at the battery, at 8 A, are a quarter of an ohm on the
// way: more than what a vehicle has of which nothing was measured.
func TestVoltsAtTheMotorTellWhatTheWayTakes(t *testing.T) {
	t.Parallel()
	both := stock().with("measured.loaded_current", `"8 A"`, "measured.loaded_voltage", `"12 V"`)
	good := readWith(t, both.with("measured.motor_voltage", `"11.9 V"`).toml(), 256)
	bad := readWith(t, both.with("measured.motor_voltage", `"10.6 V"`).toml(), 256)
	ohm := func(a *answer.Assessment) (sum float64) {
		for _, e := range a.Path.Elements {
			sum += e.Ohm
		}
		return sum
	}
	if !(ohm(bad) > 1.2*ohm(good)) {
		t.Errorf("the way has %.3f Ohm with 0.1 V lost, %.3f with 1.4 V", ohm(good), ohm(bad))
	}
}

// Two children of five weigh twice what one does (growth charts: 18.4 kg in the
// middle), and go slower for it.
func TestHowManyRideCounts(t *testing.T) {
	t.Parallel()
	one := stock().without("rider").with("rider.age", `"5 years"`, "vehicle.seats", "2")
	a, b := assess(t, one), assess(t, one.with("rider.count", "2"))
	if x, y := a.Launch.Case.RollN, b.Launch.Case.RollN; !(y > 1.2*x) {
		t.Errorf("one child rolls with %.1f N, two with %.1f N", x, y)
	}
}

// What brought it back tells what it was: electronics see a charger, a breaker that
// waits sees the pedal.
func TestWhatBroughtItBackTellsWhatItWas(t *testing.T) {
	t.Parallel()
	tool := sheetOf(t, examples+"tractor-tool-pack.toml").without("original.pack")
	for by, want := range map[string]string{"charger": "electronics in the pack", "unplugged": "electronics in the pack", "nothing": "one-time fuse"} {
		a := assess(t, tool.with("measured.restored_by", `"`+by+`"`))
		found := ""
		for _, m := range a.Measured {
			if found == "" && strings.HasPrefix(m.Name, "came back") {
				found = m.Says
			}
		}
		if !strings.HasPrefix(found, want) {
			t.Errorf("%s: %q, want %s first", by, found, want)
		}
		if has(a, judge.CodeFuseOpened) < answer.FixFirst {
			t.Errorf("%s: nothing is said of what opened", by)
		}
	}
}

// The class of a controller is the battery that it is for: 24 V 30 A on a tool pack
// of 21 V is let pass, 12 V 30 A is a guess that it is too much, and its amps count.
func TestThePrintedClassOfAControllerCounts(t *testing.T) {
	t.Parallel()
	tool := sheetOf(t, examples+"tractor-tool-pack.toml").without("original.pack").with("controller.kind", `"chopper"`, "vehicle.design_voltage", `"18 V"`)
	worst := func(a *answer.Assessment) answer.Level {
		level := answer.Fine
		for _, f := range a.Findings {
			if f.Item == answer.Board && f.Unit == "V" {
				level = max(level, f.Level)
			}
		}
		return level
	}
	wide, narrow := assess(t, tool.with("controller.class", `"24 V 30 A"`)), assess(t, tool.with("controller.class", `"12 V 30 A"`))
	if got := worst(wide); got >= answer.FixFirst {
		t.Errorf("24 V 30 A: %v", got)
	}
	if got := worst(narrow); got != answer.FixFirst {
		t.Errorf("12 V 30 A: %v, want fix first: no danger on a guess", got)
	}
	for _, x := range narrow.Assumed {
		if x.Key == answer.KeyControllerMaxVoltage {
			return
		}
	}
	t.Error("the highest volts are not listed as assumed")
}

// The teeth of all pairs are the gearing: 60/12 x 72/12 x 44/12 = 110.
func TestTeethAreAGearing(t *testing.T) {
	t.Parallel()
	a := assess(t, stock().with("gears.ratio", `"12:60 x 12:72 x 12:44"`))
	b := assess(t, stock().with("gears.ratio", `"110:1"`))
	if x, y := a.Steady.SpeedKmh, b.Steady.SpeedKmh; math.Abs(x/y-1) > 1e-9 {
		t.Errorf("%.4f km/h by teeth, %.4f by ratio", x, y)
	}
}
