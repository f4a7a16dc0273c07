package trials_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
)

// likeToday repeats today's tables as those of the original.
func (s sheet) likeToday(tables ...string) sheet {
	out := s.without("original")
	for key, value := range s.without("original") {
		if table, _, _ := strings.Cut(key, "."); slices.Contains(tables, table) {
			out["original."+key] = value
		}
	}
	return out
}

// ratios are all that is compared with the original.
func ratios(a *answer.Assessment) map[string]*float64 {
	return map[string]*float64{
		"speed": a.Original.SpeedRatio, "launch": a.Original.LaunchCurrentRatio, "blocked": a.Original.BlockedCurrentRatio,
		"teeth": a.Original.ToothLoadRatio, "heat": a.Original.MotorHeatRatio, "ride": a.Original.RideRatio, "fault": a.Original.FaultCurrentRatio,
	}
}

// A vehicle that is as it left the factory is once itself in everything, to the
// last bit and in every draw, whatever is not known of it.
func TestAnOriginalLikeTodaysIsOnceTheSame(t *testing.T) {
	for name, base := range map[string]sheet{
		"done properly":      doneProperly(t),
		"labels":             labelsOnly(),
		"labels, two blocks": labelsOnly().with("pack.label", `"24 V (two 12 V)"`, "vehicle.design_voltage", `"24 V"`),
		"tool pack":          labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`, "cutoff.pack.opens_at", `"15 V"`),
		"worn":               labelsOnly().with("pack.health", `"40 to 70 %"`, "cutoff.controller.opens_at", `"10 to 11 V"`, "wire.gauge", `"14 to 18 AWG"`),
	} {
		for _, tables := range [][]string{{"pack"}, {"pack", "cutoff", "controller", "wire", "motors", "vehicle"}} {
			s := base.likeToday(tables...)
			for key, value := range base {
				if strings.HasPrefix(key, "cutoff.") { // goes with its pack
					s["original."+key] = value
				}
			}
			delete(s, "original.vehicle.wheel_width") // told only, of today
			a := briefly(t, s)
			if a.Original == nil {
				t.Fatalf("%s: no original", name)
			}
			for what, ratio := range ratios(a) {
				if ratio == nil || *ratio != 1 {
					t.Errorf("%s, %v: ratio of %s is %v", name, tables, what, value(ratio))
				}
			}
			for path, r := range a.Ranges {
				if strings.HasSuffix(path, "_ratio") {
					t.Errorf("%s, %v: %s has the range %v", name, tables, path, r)
				}
			}
			if has(a, drive.CodeFasterThanOriginal, drive.CodeToothLoad, drive.CodeToothLoadBlocked) > answer.Fine {
				t.Errorf("%s, %v: it is held against itself", name, tables)
			}
		}
	}
}

// An old block was read and a new one like it is asked about: they are two, and
// what is read on the old one tells nothing of the other's wear.
func TestABatteryThatWasReadIsNotTheNewOneLikeIt(t *testing.T) {
	s := labelsOnly().likeToday("pack").with("measured.ride_time", `"15 min"`)
	a := briefly(t, s)
	if r := a.Original.RideRatio; r == nil || *r < 1.1 {
		t.Errorf("the old block lasted 15 min; a new one lasts %.2f times as long", value(r))
	}
}

func value(x *float64) float64 {
	if x == nil {
		return 0
	}
	return *x
}

// What a vehicle has lived with it has lived with when its battery was new: with a new
// one of the old kind it is no faster than it was made, however worn the old one is.
func TestANewBatteryOfTheOldKindIsNotFasterThanTheOriginal(t *testing.T) {
	s := labelsOnly().with("vehicle.ground", `"short grass"`, "motors.rated_voltage", "", "pack.age", `"new"`).likeToday("pack").with("original.pack.age", "")
	for _, read := range []string{"12 min", "15 min"} {
		a := assess(t, s.with("measured.ride_time", `"`+read+`"`))
		if got := has(a, drive.CodeFasterThanOriginal); got > answer.Fine {
			t.Errorf("the old one lasts %s: faster than the original (%v)", read, got)
		}
		if a.Original == nil || !a.Original.Read || *a.Original.OriginalPedalMin > 15 {
			t.Errorf("the old one lasts %s: its minutes are not those that were read: %+v", read, a.Original)
		}
	}
	if got := has(assess(t, s.with("pack.label", `"18 V 9 Ah"`, "pack.chemistry", `"li-ion"`, "measured.ride_time", `"15 min"`)), drive.CodeFasterThanOriginal); got < answer.Watch {
		t.Errorf("with half as many volts more it is not faster than the original: %v", got)
	}
}

// The original's minutes are counted like those of a vehicle that has its battery now,
// also where some barely move with it.
func TestTheOriginalLastsAsLongAsAVehicleWithItsBattery(t *testing.T) {
	old := sheet{
		"rider.age": `"3 years"`, "vehicle.design_voltage": `"6 V"`, "vehicle.ground": `"short grass"`,
		"motors.count": "1", "motors.can": `"380"`, "motors.rated_voltage": `"6 V"`,
		"pack.chemistry": `"agm"`, "pack.label": `"6 V 4 Ah"`,
	}
	s := old.likeToday("pack").with("pack.label", `"12 V 7 Ah"`)
	then := *readWith(t, s.toml(), 512).Original.OriginalPedalMin
	now := readWith(t, old.with("pack.age", `"new"`).toml(), 512).Ride.LastsPedalMin
	if r := then / now; r < 0.85 || r > 1.15 {
		t.Errorf("the original lasts %.1f min, a vehicle with that battery %.1f", then, now)
	}
}

// The block that a vehicle was made for needed no converter, and one is no guess for it.
func TestAConverterForAnotherPackWasNotInTheOriginal(t *testing.T) {
	s := labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`, "original.pack.label", `"12 V 7 Ah"`, "original.pack.chemistry", `"agm"`)
	plain := briefly(t, s).Original.OriginalSpeedKmh
	s = s.with("controller.converter_limit", `"80 A"`)
	got := briefly(t, s.with("controller.converter_voltage", `"12 V"`)).Original.OriginalSpeedKmh
	if math.Abs(value(got)/value(plain)-1) > 0.02 {
		t.Errorf("the original goes %g km/h with a converter for 12 V today, %g without", value(got), value(plain))
	}
	// With fewer volts than its own it had one.
	kept := briefly(t, s.with("controller.converter_voltage", `"6 V"`)).Original.OriginalSpeedKmh
	if !(value(kept) < 0.7*value(plain)) {
		t.Errorf("the original goes %g km/h with a converter for 6 V, %g without", value(kept), value(plain))
	}
}
