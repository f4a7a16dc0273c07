package reckon_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// A way out is held against the vehicle as it was made, not against one with the
// same changes: what is kept of the originals rests on that.
func TestAWayOutLeavesTheOriginalAsItWas(t *testing.T) {
	for _, name := range []string{"tractor-tool-pack", "tractor-done-properly"} {
		s, err := setup.Load("../../examples/" + name + ".toml")
		if err != nil {
			t.Fatal(err)
		}
		for change, sets := range map[string]map[string]string{
			"wire":       {"wire.gauge": "8 AWG", "wire.joint_resistance": "0.1 mOhm"},
			"controller": {"controller.kind": "chopper", "controller.current_limit": "5 A", "controller.max_voltage": "30 V"},
			"fuse":       {"fuse.form": "small blade", "fuse.rating": "2 A"},
		} {
			before, after, err := reckon.OriginalsOnAWay(s, 24, sets)
			if err != nil {
				t.Fatal(name, change, err)
			}
			if d := cmp.Diff(before, after); d != "" {
				t.Errorf("%s, another %s (-before +after)\n%s", name, change, d)
			}
		}
	}
}

// The search for ways out runs on several goroutines at once.
func TestWaysOutAreTheSameForOneAndSevenWorkers(t *testing.T) {
	s, err := setup.Load("../../examples/tractor-tool-pack.toml")
	if err != nil {
		t.Fatal(err)
	}
	var first *answer.Assessment
	for _, n := range []int{1, 7} {
		a, err := reckon.Assess(s, reckon.Options{Draws: reckon.LeastDraws, Ways: true, Workers: n})
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = a
		}
		if len(a.Ways) == 0 {
			t.Fatal("no way out is found")
		}
		if d := cmp.Diff(first, a); d != "" {
			t.Errorf("%d workers give another answer than one (-one +%d)\n%s", n, n, d)
		}
	}
}

// Who does not ask which cutoff would suit is told all the same what has to be put
// right, in each vehicle: with no cutoff, with one, and with one that comes back.
func TestWhatHasToBePutRightIsFoundWithoutAdvisingACutoff(t *testing.T) {
	for _, name := range []string{"tractor-tool-pack", "two-seater-tired-blocks"} {
		s, err := setup.Load("../../examples/" + name + ".toml")
		if err != nil {
			t.Fatal(err)
		}
		for change, sets := range map[string]map[string]string{
			"as it is": {},
			"none":     {"cutoff.module.opens_at": "", "cutoff.module.delay": "", "cutoff.module.closes_at": "", "cutoff.module.standby_current": ""},
			"returns":  {"cutoff.module.opens_at": "10 V", "cutoff.module.delay": "1 s", "cutoff.module.closes_at": "11 V"},
			"weak":     {"pack.health": "0.4"},
		} {
			changed, err := s.With(sets)
			if err != nil {
				t.Fatal(name, change, err)
			}
			whole, unadvised, err := reckon.ToPutRight(changed, reckon.LeastDraws)
			if err != nil {
				t.Fatal(name, change, err)
			}
			if d := cmp.Diff(whole, unadvised); d != "" {
				t.Errorf("%s, cutoff %s (-advised +unadvised)\n%s", name, change, d)
			}
		}
	}
}

// What was read of a vehicle stays a reading of it but where a change could make it
// another: a thicker wire slows nothing, and a fuse cools no motor.
func TestAWayOutKeepsTheReadingsThatItCannotChange(t *testing.T) {
	s, err := setup.Of(map[string]string{
		"vehicle.design_voltage": "12 V", "pack.chemistry": "li-ion", "pack.label": "18 V 5 Ah",
		"measured.top_speed": "10 km/h", "measured.motor_temperature": "130 C", "measured.pack_temperature": "62 C",
		"measured.reset_seconds": "20 s", "measured.pull_force": "40 N", "measured.rest_voltage": "18.5 V", "measured.ride_time": "40 min",
	})
	if err != nil {
		t.Fatal(err)
	}
	opened, rest, ride := "measured.reset_seconds", "measured.rest_voltage", "measured.ride_time"
	motor, pack, speed := "measured.motor_temperature", "measured.pack_temperature", "measured.top_speed"
	for _, of := range []struct {
		key  string
		gone []string
	}{
		{"wire.gauge", nil},
		{"fuse.rating", nil},
		{"charger.voltage", nil},
		{"outing.charged_at", nil},
		{"vehicle.remote_control", nil},
		{"cutoff.module.opens_at", []string{ride}},
		{"controller.current_limit", []string{opened, ride}},
		{"controller.converter_voltage", []string{motor, opened, ride, speed}},
		{"pack.health", []string{motor, pack, opened, rest, ride, speed}},
		{"pack.watches_cells", nil},
	} {
		gone, err := reckon.ReadingsGone(s, map[string]string{of.key: "of another"})
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(of.gone, gone); d != "" {
			t.Errorf("%s (-want +got)\n%s", of.key, d)
		}
	}
}

// A vehicle that was read too fast is no slower on thicker wire.
func TestNoWayOutClearsAReadingThatItCannotChange(t *testing.T) {
	s, err := setup.Of(map[string]string{
		"rider.age": "4 years", "vehicle.design_voltage": "12 V", "vehicle.ground": "asphalt", "pack.label": "12 V 7 Ah",
		"wire.gauge": "16 AWG", "wire.insulation": "60 C", "fuse.form": "small blade", "fuse.rating": "40 A", "fuse.distance_from_pack": "50 mm",
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, read := range []map[string]string{
		nil, {"measured.top_speed": "10 km/h"}, {"measured.motor_temperature": "150 C"}, {"measured.reset_seconds": "20 s", "measured.restored_by": "itself"},
	} {
		of, err := s.With(read)
		if err != nil {
			t.Fatal(err)
		}
		a, err := reckon.Assess(of, reckon.Options{Draws: reckon.LeastDraws, Ways: true})
		if err != nil {
			t.Fatal(err)
		}
		if found := len(a.Ways) > 0; found != (read == nil) {
			t.Errorf("read %v: %d ways out", read, len(a.Ways))
		}
	}
}

// Behind a converter a speed control sees the battery no more: its own cutoff goes. And a
// limit that was told is what a start takes, so the converter gives as much.
func TestAConverterThatIsAddedSuitsTheSpeedControlBehindIt(t *testing.T) {
	a := answered(t, map[string]string{
		"rider.age": "7 years", "rider.mass": "24 kg", "vehicle.design_voltage": "12 V", "vehicle.ground": "short grass", "vehicle.has_board": "false",
		"vehicle.brake": "motors", "vehicle.accessories": "own supply", "vehicle.slope": "3 %", "motors.count": "2", "motors.can": "550",
		"controller.kind": "chopper", "controller.max_voltage": "30 V", "controller.continuous_current": "40 A", "controller.current_limit": "30 A",
		"controller.ramp": "1.5 s", "controller.reverses": "after a stop", "wire.gauge": "12 AWG", "wire.insulation": "105 C", "wire.one_way_length": "1 m",
		"fuse.form": "small blade", "fuse.rating": "30 A", "fuse.max_voltage": "32 V", "fuse.distance_from_pack": "50 mm",
		"pack.label": "18 V 8 Ah", "pack.chemistry": "li-ion", "pack.maker": "own", "pack.watches_cells": "true",
		"cutoff.pack.opens_at": "14.5 V", "cutoff.controller.opens_at": "16 V",
		"original.pack.label": "12 V 7 Ah", "original.pack.chemistry": "agm", "original.measured.top_speed": "5.5 km/h", "measured.top_speed": "8.5 km/h",
	}, reckon.Options{Draws: 64, Ways: true})
	found := false
	for _, w := range a.Ways {
		sets := w.Values()
		if sets["controller.converter_voltage"] == "" {
			continue
		}
		found = true
		if own, is := sets["cutoff.controller.opens_at"]; !is || own != "" || sets["controller.converter_limit"] != "30 A" || !strings.Contains(strings.Join(w.Steps, " "), "own cutoff") {
			t.Errorf("%q sets %v", w.Steps, sets)
		}
	}
	if !found {
		t.Errorf("of %d ways none has a converter", len(a.Ways))
	}
}

// A fuse that sits too far away is moved, and nothing is bought for it.
func TestAFuseThatIsTooFarAwayIsMoved(t *testing.T) {
	a := answered(t, map[string]string{
		"rider.age": "5 years", "vehicle.design_voltage": "12 V", "vehicle.ground": "asphalt", "pack.label": "12 V 7 Ah", "wire.gauge": "12 AWG", "wire.insulation": "105 C",
		"fuse.form": "small blade", "fuse.rating": "25 A", "fuse.distance_from_pack": "40 cm",
	}, reckon.Options{Draws: 64, Ways: true})
	if len(a.Ways) == 0 || !slices.Equal(a.Ways[0].Steps, []string{"the fuse moved to within 10 cm of the battery"}) || !a.Ways[0].Wiring {
		t.Errorf("%d ways; the first: %+v", len(a.Ways), a.Ways[:min(1, len(a.Ways))])
	}
}

// What does not slow a vehicle that was read too fast does not clear the reading: another
// battery of as many volts was a way out, because what is computed with it is a guess.
func TestNoBatteryOfAsManyVoltsClearsASpeedThatWasRead(t *testing.T) {
	slow := map[string]string{
		"rider.age": "4 years", "vehicle.design_voltage": "12 V", "vehicle.ground": "asphalt",
		"pack.chemistry": "li-ion", "pack.label": "12 V 4 Ah", "measured.top_speed": "6 km/h",
	}
	s, err := setup.Of(slow)
	if err != nil {
		t.Fatal(err)
	}
	fast, err := s.With(map[string]string{"measured.top_speed": "10 km/h"})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		of   *setup.Setup
		ways bool
	}{{s, true}, {fast, false}} {
		a, err := reckon.Assess(c.of, reckon.Options{Draws: reckon.LeastDraws, Ways: true})
		if err != nil {
			t.Fatal(err)
		}
		if found := len(a.Ways) > 0; found != c.ways {
			t.Errorf("read %s: %d ways out", c.of.Measured.TopSpeed.Text, len(a.Ways))
		}
	}
	for _, c := range []struct {
		sets map[string]string
		gone bool
	}{
		{map[string]string{"pack.age": "new", "pack.health": ""}, false},
		{map[string]string{"pack.chemistry": "agm", "pack.label": "12 V 7 Ah"}, false},
		{map[string]string{"pack.label": "7.2 V 4 Ah"}, true},
		{map[string]string{"controller.converter_voltage": "6 V"}, true},
		{map[string]string{"gears.ratio": "60"}, true},
	} {
		gone, err := reckon.ReadingsGone(fast, c.sets)
		if err != nil {
			t.Fatal(err)
		}
		if slices.Contains(gone, answer.KeyMeasuredTopSpeed) != c.gone {
			t.Errorf("%v: gone are %v", c.sets, gone)
		}
	}
}

// A speed that was read with the battery a vehicle came with is not computed away where
// the one in its place makes it no slower.
func TestASpeedReadWithTheOriginalBatteryStaysTooFast(t *testing.T) {
	s, err := setup.Of(map[string]string{
		"rider.age": "4 years", "vehicle.design_voltage": "12 V", "vehicle.ground": "asphalt",
		"pack.chemistry": "lifepo4", "pack.label": "12.8 V 10 Ah", "original.pack.label": "12 V 7 Ah", "measured.top_speed": "10 km/h",
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		sets map[string]string
		read bool
	}{
		{nil, true},
		{map[string]string{"controller.converter_voltage": "6 V", "original.controller": setup.NothingTold}, false},
	} {
		of, err := s.With(c.sets)
		if err != nil {
			t.Fatal(err)
		}
		a, err := reckon.Assess(of, reckon.Options{Draws: reckon.LeastDraws})
		if err != nil {
			t.Fatal(err)
		}
		read := slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
			return f.Code == drive.CodeFastForARideOn && f.Level == answer.FixFirst && f.Share == 1 && slices.Equal(f.Decides, []string{answer.KeyMeasuredTopSpeed})
		})
		if read != c.read {
			t.Errorf("%v: told as read: %t", c.sets, read)
		}
	}
}

// Nobody buys another battery where the two that are there are only at different charge.
func TestTwoBlocksReadAtDifferentChargeAreChargedAndNotReplaced(t *testing.T) {
	a := answered(t, map[string]string{
		"pack.label": "12 V 7 Ah", "pack.chemistry": "sla", "pack.joined": "parallel", "vehicle.design_voltage": "12 V", "rider.age": "4 years", "vehicle.ground": "lawn",
		"measured.rest_voltage": "12.8 V", "measured.second_rest_voltage": "12.2 V",
	}, reckon.Options{Draws: 256, Ways: true})
	if a.Verdict != answer.Danger || len(a.Ways) == 0 {
		t.Fatalf("%v with %d ways out", a.Verdict, len(a.Ways))
	}
	if w := a.Ways[0]; w.Verdict > answer.Watch || len(w.Steps) != 1 || !strings.Contains(w.Steps[0], "charge each of the two by itself") {
		t.Errorf("the first way out: %v, %q", w.Verdict, w.Steps)
	}
}
