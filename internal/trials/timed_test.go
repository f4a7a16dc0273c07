package trials_test

import (
	"fmt"
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
)

// smallMotors is an untouched vehicle with a board on grass.
func smallMotors() sheet {
	return sheet{
		"rider.age": `"5 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"short grass"`, "vehicle.has_board": "true",
		"motors.count": "2", "pack.label": `"12 V 7 Ah"`, "pack.chemistry": `"agm"`,
	}
}

// Nobody times a ride on which the motors burn or stand from heat: a short one tells of a
// worn block.
func TestAShortRideThatWasTimedTellsOfTheBlockAndNotOfTheMotors(t *testing.T) {
	t.Parallel()
	for _, minutes := range []int{3, 8, 20} {
		a := readWith(t, smallMotors().with("measured.ride_time", fmt.Sprintf(`"%d min"`, minutes)).toml(), 2048)
		if a.Conflict != nil {
			t.Errorf("%d min: %s", minutes, a.Conflict.Words)
		}
		if a.Draws.Burnt > 0.01 {
			t.Errorf("%d min: motors burn in %.2f", minutes, a.Draws.Burnt)
		}
		if !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
			return f.Code == judge.CodePackWorn && f.Share >= 0.5 && f.Harm >= answer.Part
		}) {
			t.Errorf("%d min: nothing says that the pack is worn", minutes)
		}
	}
}

// A dead block and a motor that is hardly warm go together, to a few degrees either way.
func TestATimedRideAndAWarmMotorGoTogether(t *testing.T) {
	t.Parallel()
	for _, minutes := range []int{3, 8} {
		for _, caseC := range []int{25, 44, 50} {
			a := readWith(t, smallMotors().with("measured.ride_time", fmt.Sprintf(`"%d min"`, minutes), "measured.motor_temperature", fmt.Sprintf(`"%d C"`, caseC)).toml(), 2048)
			if a.Conflict != nil {
				t.Errorf("%d min, %d C: %s", minutes, caseC, a.Conflict.Words)
			}
		}
	}
}

// What was read of a motor stays true of the next battery, unless that one spares it: no
// way out goes round it with more volts.
func TestAMotorThatWasReadHotStaysSoWithMoreVolts(t *testing.T) {
	t.Parallel()
	hot := smallMotors().with("vehicle.ground", `"asphalt"`)
	for _, caseC := range []int{105, 150, 250} {
		_, a := waysOf(t, hot.with("measured.motor_temperature", fmt.Sprintf(`"%d C"`, caseC)))
		if has(a, drive.CodePlasticSoftens) < answer.FixFirst {
			t.Errorf("%d C: nothing to be put right", caseC)
		}
		for _, w := range a.Ways {
			t.Errorf("%d C: a way out: %s", caseC, w.Title)
		}
	}
	after := assess(t, hot.likeToday("pack").with("pack.label", `"18 V 5 Ah"`, "pack.chemistry", `"li-ion"`, "measured.motor_temperature", `"110 C"`))
	if has(after, drive.CodePlasticSoftens) < answer.FixFirst {
		t.Error("a motor that was read at 110 C is not told of on half as many volts more")
	}
}
