package trials_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/judge"
)

// Lengths held against each other are arithmetic: no source but the rule beside them.
func TestWhatDoesNotGoInIsToldAndWhatGoesInIsNot(t *testing.T) {
	t.Parallel()
	const pack, onSide, seat, axle = judge.CodePackNotInTray, judge.CodePackOnItsSide, judge.CodeMotorNotInSeat, judge.CodeGearsNotOnAxle
	for _, c := range []struct {
		name, base, set, code string
		want                  answer.Level
	}{
		{"a block into a tray with room", "block", "pack.size=151 x 65 x 94 mm; vehicle.tray=155 x 100 x 100 mm", pack, answer.Fine},
		{"a block that fills its tray", "block", "pack.size=151 x 65 x 94 mm; vehicle.tray=151 x 65 x 94 mm", pack, answer.Fine},
		{"the same in inches, turned", "block", "pack.size=5.94 x 2.56 x 3.7 in; vehicle.tray=7 x 16 x 10 cm", pack, answer.Fine},
		{"a block 2 mm longer than its tray", "block", "pack.size=153 x 65 x 94 mm; vehicle.tray=151 x 65 x 94 mm", pack, answer.FixFirst},
		{"a block higher than the lid, the tray wide", "block", "pack.size=151 x 65 x 94 mm; vehicle.tray=155 x 100 x 70 mm", onSide, answer.Watch},
		{"a lithium pack laid down", "lithium", "pack.size=151 x 65 x 94 mm; vehicle.tray=155 x 100 x 70 mm", onSide, answer.Fine},
		{"a lithium pack laid down, no finding of the tray", "lithium", "pack.size=151 x 65 x 94 mm; vehicle.tray=155 x 100 x 70 mm", pack, answer.Fine},
		{"a lithium pack too long for any way", "lithium", "pack.size=180 x 80 x 80 mm; vehicle.tray=155 x 100 x 100 mm", pack, answer.FixFirst},
		{"two blocks side by side, 2 x 65 = 130 of 130 mm", "pair", "pack.label=12 V 12 Ah; pack.joined=series; pack.size=151 x 65 x 94 mm; vehicle.tray=151 x 130 x 94 mm", pack, answer.Fine},
		{"two blocks, 2 x 65 = 130 of 128 mm", "pair", "pack.label=12 V 12 Ah; pack.joined=series; pack.size=151 x 65 x 94 mm; vehicle.tray=151 x 128 x 94 mm", pack, answer.FixFirst},
		{"a can of 35.8 mm in 36 mm", "block", "motors.can_diameter=35.8 mm; vehicle.motor_seat=36 mm", seat, answer.Fine},
		{"a can of 42 mm in 36 mm", "block", "motors.can_diameter=4.2 cm; vehicle.motor_seat=36 mm", seat, answer.FixFirst},
		{"a can of 27.7 mm in 36 mm", "block", "motors.can_diameter=27.7 mm; vehicle.motor_seat=36 mm", seat, answer.FixFirst},
		{"a can that is 1 mm narrower", "block", "motors.can_diameter=35 mm; vehicle.motor_seat=36 mm", seat, answer.Fine},
		{"a size 775 in the seat of a 550", "block", "motors.can=775; vehicle.motor_seat=36 mm", seat, answer.FixFirst},
		{"a can longer than its room", "block", "motors.can_length=67 mm; vehicle.motor_room=60 mm", seat, answer.FixFirst},
		{"a can shorter than its room", "block", "motors.can_length=57 mm; vehicle.motor_room=60 mm", seat, answer.Fine},
		{"a bore of 12 on an axle of 12", "block", "gears.bore=12 mm; vehicle.axle=12 mm", axle, answer.Fine},
		{"a bore of 10 on an axle of 12", "block", "gears.bore=10 mm; vehicle.axle=0.5 in", axle, answer.FixFirst},
		{"a bore of 14 on an axle of 12", "block", "gears.bore=14 mm; vehicle.axle=12 mm", axle, answer.FixFirst},
		{"a tray alone", "block", "vehicle.tray=10 x 10 x 10 mm", pack, answer.Fine},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			a := readWith(t, rigNamed(t, c.base).but(c.set).toml(), few)
			if got := has(a, c.code); got != c.want {
				t.Errorf("%s: %v, want %v", c.code, got, c.want)
			}
		})
	}
}

// A changed vehicle of which the sizes were not told is told that nobody judged them,
// and one by one no more.
func TestWhetherItFitsIsSaidNotToBeJudged(t *testing.T) {
	t.Parallel()
	note := func(set string) string {
		for _, n := range readWith(t, rigNamed(t, "swap").but(set).toml(), few).Notes {
			if strings.HasPrefix(n.Text, "Whether it fits") {
				return n.Text
			}
		}
		return ""
	}
	const sizes = "pack.size=100 x 70 x 60 mm; vehicle.tray=155 x 100 x 100 mm"
	for set, want := range map[string]string{
		"":    "Whether it fits into tray, gearbox and axle was not judged.",
		sizes: "Whether it fits into gearbox and axle was not judged.",
		sizes + "; motors.can_diameter=36 mm; vehicle.motor_seat=36 mm; gears.bore=12 mm; vehicle.axle=12 mm": "",
	} {
		if got := note(set); got != want {
			t.Errorf("%q: %q, want %q", set, got, want)
		}
	}
}
