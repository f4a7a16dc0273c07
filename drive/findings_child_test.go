package drive_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
)

func given(fs []answer.Finding) func(*testing.T) []answer.Finding {
	return func(*testing.T) []answer.Finding { return fs }
}

// childSituations are who rides, on which slope, and what else hangs on the pack.
func childSituations() []judged {
	type levels = map[string]answer.Level
	return []judged{
		{"a load above the label's", given(drive.LoadCheck{RiderKg: 36, RatedKg: 30}.Findings()), levels{drive.CodeOverloaded: answer.FixFirst}},
		{"a load of thrice the label's", given(drive.LoadCheck{RiderKg: 91, RatedKg: 30}.Findings()), levels{drive.CodeOverloaded: answer.Danger}},
		{"a load above the usual", given(drive.LoadCheck{RiderKg: 36, UsualKg: 30}.Findings()), levels{drive.CodeOverloaded: answer.FixFirst}},
		{"a load within the label's", given(drive.LoadCheck{RiderKg: 29, RatedKg: 30, UsualKg: 25}.Findings()), nil},
		{"a slope that it rolls down", given(drive.SlopeCheck{GradeN: 60, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.FixFirst}},
		{"a gentler slope that it rolls down", given(drive.SlopeCheck{GradeN: 40, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.Watch}},
		{"a slope downhill", given(drive.SlopeCheck{GradeN: -40, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.Watch}},
		{"a steep slope downhill", given(drive.SlopeCheck{GradeN: -60, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.FixFirst}},
		{"a slope steeper than any test", given(drive.SlopeCheck{GradeN: 80, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.FixFirst}},
		{"a slope to tip on", given(drive.SlopeCheck{GradeN: 120, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.Danger}},
		// Free below 1 m/s: EN 71-1:2005+A8:2009, rationale.
		{"a slope without any brake", given(drive.SlopeCheck{GradeN: 60, RollN: 15, ToyKg: 15, AllKg: 45, Brake: drive.BrakeNone}.Findings()), levels{drive.CodeRollsBack: answer.Danger}},
		{"level ground without any brake", given(drive.SlopeCheck{RollN: 15, ToyKg: 15, AllKg: 45, Brake: drive.BrakeNone}.Findings()), nil},
		{"a steep slope with a brake to hold", given(drive.SlopeCheck{GradeN: 60, RollN: 15, ToyKg: 15, AllKg: 45, Brake: drive.BrakePedal}.Findings()), levels{drive.CodeRollsBack: answer.FixFirst}},
		{"a steep slope that the motors creep down", given(drive.SlopeCheck{GradeN: 60, RollN: 15, ToyKg: 15, AllKg: 45, Brake: drive.BrakeMotors, ShortedNSPerM: 500}.Findings()), levels{drive.CodeRollsBack: answer.FixFirst}},
		{"a slope with a brake to hold", given(drive.SlopeCheck{GradeN: 40, RollN: 15, ToyKg: 15, AllKg: 45, Brake: drive.BrakePedal}.Findings()), levels{drive.CodeRollsBack: answer.Watch}},
		{"a slope that the motors creep down", given(drive.SlopeCheck{GradeN: 40, RollN: 15, ToyKg: 15, AllKg: 45, Brake: drive.BrakeMotors, ShortedNSPerM: 26}.Findings()), levels{drive.CodeRollsBack: answer.Watch}},
		{"a slope that the motors run down", given(drive.SlopeCheck{GradeN: 40, RollN: 15, ToyKg: 15, AllKg: 45, Brake: drive.BrakeMotors, ShortedNSPerM: 24}.Findings()), levels{drive.CodeRollsBack: answer.FixFirst}},
		{"a slope that no brake holds, and motors that brake", given(drive.SlopeCheck{GradeN: 130, RollN: 15, ToyKg: 15, AllKg: 90, Brake: drive.BrakeMotors, ShortedNSPerM: 500}.Findings()), levels{drive.CodeRollsBack: answer.FixFirst}},
		{"a steep slope downhill without any brake", given(drive.SlopeCheck{GradeN: -60, RollN: 15, ToyKg: 15, AllKg: 45, Brake: drive.BrakeNone}.Findings()), levels{drive.CodeRollsBack: answer.Danger}},
		{"a slope to tip on with a brake", given(drive.SlopeCheck{GradeN: 120, RollN: 15, ToyKg: 15, AllKg: 45, Brake: drive.BrakePedal}.Findings()), levels{drive.CodeRollsBack: answer.Danger}},
		{"rolling free at 4 km/h", given(drive.SpeedCheck{SpeedMS: 4 / 3.6, AgeYears: 5, Brake: drive.BrakeNone, RollMS2: 0.4}.Findings()), levels{drive.CodeNoBrake: answer.FixFirst, drive.CodeWayToStop: answer.Fine}},
		{"rolling free at 9 km/h", given(drive.SpeedCheck{SpeedMS: 9 / 3.6, AgeYears: 5, Brake: drive.BrakeNone, RollMS2: 0.4}.Findings()), levels{drive.CodeNoBrake: answer.Danger, drive.CodeFastForARideOn: answer.Watch, drive.CodeWayToStop: answer.Fine}},
		{"rolling free at 3 km/h", given(drive.SpeedCheck{SpeedMS: 3 / 3.6, AgeYears: 5, Brake: drive.BrakeNone, RollMS2: 0.4}.Findings()), levels{drive.CodeWayToStop: answer.Fine}},
		{"motors that brake at 4 km/h", given(drive.SpeedCheck{SpeedMS: 4 / 3.6, AgeYears: 5, Brake: drive.BrakeMotors, RollMS2: 0.4}.Findings()), levels{drive.CodeWayToStop: answer.Fine}},
		{"a controller of too few amperes", given(drive.RunningCheck{MotorA: 35, Limits: drive.Limits{ControllerContinuousA: 25}}.Findings()), levels{drive.CodeRunningOverController: answer.FixFirst}},
		{"a controller of enough amperes", given(drive.RunningCheck{MotorA: 20, Limits: drive.Limits{ControllerContinuousA: 25}}.Findings()), nil},
		{"a battery of 36 V", given(drive.ToyCheck{NominalV: 36}.Findings()), levels{drive.CodeAboveToyVolts: answer.FixFirst}},
		{"a battery of 36 V in what was made for it", given(drive.ToyCheck{NominalV: 36, DesignV: 36}.Findings()), levels{drive.CodeAboveToyVolts: answer.FixFirst}},
		{"a battery of 25.2 V", given(drive.ToyCheck{NominalV: 25.2}.Findings()), nil},
		// EN 71-1: a toy of 15 kg must resist 110 N.
		{"a slope that no brake holds", given(drive.SlopeCheck{GradeN: 130, RollN: 15, ToyKg: 15, AllKg: 90}.Findings()), levels{drive.CodeRollsBack: answer.FixFirst}},
		{"a slope that the ground holds", given(drive.SlopeCheck{GradeN: 14, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), nil},
		{"a remote control at twice the speed", given(drive.RemoteCheck{Fitted: true, SpeedMS: 3, OriginalMS: 1.5}.Findings()), levels{drive.CodeRemoteOnFaster: answer.FixFirst}},
		{"a remote control at the old speed", given(drive.RemoteCheck{Fitted: true, SpeedMS: 1.5, OriginalMS: 1.5}.Findings()), nil},
		{"twice the speed without a remote control", given(drive.RemoteCheck{SpeedMS: 3, OriginalMS: 1.5}.Findings()), nil},
		{"a radio on 21 V", given(drive.AccessoryCheck{OnPack: true, FullV: 21, DesignV: 12}.Findings()), levels{drive.CodeAccessoryVolts: answer.FixFirst}},
		{"perhaps a radio on 21 V", given(drive.AccessoryCheck{FullV: 21, DesignV: 12}.Findings()), levels{drive.CodeAccessoryUnread: answer.Watch}},
		{"a radio with a supply of its own", given(drive.AccessoryCheck{Own: true, FullV: 21, DesignV: 12}.Findings()), nil},
		{"a radio on its own volts", given(drive.AccessoryCheck{OnPack: true, FullV: 13, DesignV: 12}.Findings()), nil},
	}
}

// childMeanings is their part of the table.
func childMeanings() []meaning {
	const rating, own, brake = "part-rating", "drive-judgement", "en-71-1-brake"
	return []meaning{
		{drive.CodeNoBrake, answer.Child, answer.Danger, answer.Rider, answer.FitBrake, "en-71-1-free, drive-judgement", "rolling free at 9 km/h", "rolling free at 3 km/h"},
		{drive.CodeOverloaded, answer.Child, answer.Danger, answer.Rider, answer.LoadLess, rating, "a load of thrice the label's", "a load within the label's"},
		{drive.CodeRollsBack, answer.Child, answer.Danger, answer.Rider, answer.LoadLess, own, "a slope to tip on", "a slope that the ground holds"},
		{drive.CodeRunningOverController, answer.Part, answer.FixFirst, answer.Board, answer.FitController, rating, "a controller of too few amperes", "a controller of enough amperes"},
		{drive.CodeAboveToyVolts, answer.Child, answer.FixFirst, answer.Battery, answer.FitPack, "astm-f963-voltage", "a battery of 36 V", "a battery of 25.2 V"},
		{drive.CodeRemoteOnFaster, answer.Child, answer.FixFirst, answer.Rider, answer.LimitSpeed, own, "a remote control at twice the speed", "a remote control at the old speed"},
		{drive.CodeAccessoryVolts, answer.Part, answer.FixFirst, answer.Accessory, answer.FitConverter, own, "a radio on 21 V", "a radio on its own volts"},
		{drive.CodeAccessoryUnread, answer.Wear, answer.Watch, answer.Accessory, answer.LookUp, own, "perhaps a radio on 21 V", "a radio with a supply of its own"},
	}
}

func TestAYoungerChildIsNeverAllowedMoreSpeed(t *testing.T) {
	last := drive.PaceFor(0)
	for age := 0.0; age < 20; age += 0.25 {
		p := drive.PaceFor(age)
		if p.WatchMS < last.WatchMS || p.FixMS < last.FixMS || p.DangerMS < last.DangerMS {
			t.Errorf("at %g years the limits %+v are below those of younger ones, %+v", age, p, last)
		}
		if !(p.WatchMS < p.FixMS && p.FixMS < p.DangerMS) {
			t.Errorf("at %g years the rungs are out of order: %+v", age, p)
		}
		last = p
	}
	if drive.PaceFor(-1) != drive.PaceFor(4) {
		t.Error("an unknown age is not taken as the usual one")
	}
}

// 1 m/s down a slope: the motors turn at 1/r N and drive k N/r V through their
// windings, so that each pushes back with k N/r times that over R.
func TestShortedMotorsBrakeAsTheirOwnVoltageDrivesThem(t *testing.T) {
	v := drive.Vehicle{Motor: drive.Motor{TorqueConstant: 0.006, WindingOhm: 0.2}, Motors: 2, MotorsInSeries: 1, GearRatio: 110, WheelRadiusM: 0.125}
	if got, want := v.ShortedNSPerM(), 278.784; math.Abs(got-want) > 1e-6*want { // 2 x (0.006 x 110/0.125)^2 / 0.2, by hand
		t.Errorf("%g N for each m/s, want %g", got, want)
	}
}

// With nothing that brakes it rolls v^2/(2 a) and what the reaction takes.
func TestTheWayToStopIsToldBrakedAndFree(t *testing.T) {
	for _, c := range []struct {
		brake drive.Brake
		found float64
		words string
	}{
		// 2 m/s, reaction of 5 years 0.465 s: 0.93 m, then 4/(2 x 2.94) = 0.68 m, or 4/(2 x 0.4) = 5 m free.
		{drive.BrakeUnknown, 1.61, "it rolls on for 6 m (19 ft)"},
		{drive.BrakeMotors, 1.61, "At best it stands after 1.6 m (5 ft)"},
		{drive.BrakeNone, 5.93, "Nothing brakes it: it rolls on for 6 m (19 ft)"},
	} {
		for _, f := range (drive.SpeedCheck{SpeedMS: 2, AgeYears: 5, Brake: c.brake, RollMS2: 0.4}).Findings() {
			if f.Code == drive.CodeWayToStop && (math.Abs(f.Found-c.found) > 0.01 || !strings.Contains(f.Title, c.words)) {
				t.Errorf("brake %d: %.2f m, %q, want %.2f and %q", c.brake, f.Found, f.Title, c.found, c.words)
			}
		}
	}
}

func TestALoadNeverReadsLikeTheOneThatIsAllowed(t *testing.T) {
	for _, c := range []struct {
		load drive.LoadCheck
		want string
	}{
		{drive.LoadCheck{RiderKg: 36.4, RatedKg: 29.5}, "36 kg ride on what is made for 30 kg."},
		{drive.LoadCheck{RiderKg: 30.4, RatedKg: 30}, "30.4 kg ride on what is made for 30 kg."},
		{drive.LoadCheck{RiderKg: 30.07, UsualKg: 30}, "30.1 kg may be more than it is made for: such vehicles usually allow 30 kg."},
	} {
		if found := c.load.Findings(); len(found) != 1 || found[0].Title != c.want {
			t.Errorf("%+v: %+v, want %q", c.load, found, c.want)
		}
	}
}

// A child's age is known: what not every vehicle has is the speed, and where it decides
// the words say so.
func TestWhatAChildIsTooYoungForSaysSo(t *testing.T) {
	title := func(k drive.SpeedCheck) string {
		for _, f := range k.Findings() {
			if f.Code == drive.CodeTooYoung {
				return f.Title
			}
		}
		return ""
	}
	slow, fast := drive.SpeedCheck{SpeedMS: 0.8, AgeYears: 2}, drive.SpeedCheck{SpeedMS: 2.2, AgeYears: 2}
	if a, b := title(slow), title(fast); strings.Contains(a, "speed") || !strings.Contains(b, "speed") {
		t.Errorf("slow: %q; fast: %q", a, b)
	}
	fast.Remote = true
	if b := title(fast); !strings.Contains(b, "too fast") || !strings.Contains(b, "remote") {
		t.Errorf("fast, by remote control: %q", b)
	}
	fast.AgeYears = 1
	if b := title(fast); strings.Contains(b, "fast") {
		t.Errorf("at one the speed decides nothing: %q", b)
	}
	fast.AgeYears = 0.5
	if b := title(fast); !strings.Contains(b, "under 1") {
		t.Errorf("at half a year: %q", b)
	}
}

// A speed that prints as none is told as none.
func TestWhatCreepsUnseenHasNoSpeed(t *testing.T) {
	for force, want := range map[float64]string{26: "creeps away at about ", 2000: "creeps away, hardly to be seen."} {
		fs := drive.SlopeCheck{GradeN: 40, RollN: 15, ToyKg: 15, AllKg: 45, Brake: drive.BrakeMotors, ShortedNSPerM: force}.Findings()
		if len(fs) != 1 || !strings.Contains(fs[0].Title, want) {
			t.Errorf("%g N s/m: %+v", force, fs)
		}
	}
}

// Nobody is sent to a battery that does not drive the vehicle.
func TestAVehicleMadeForMoreVoltsThanAToysKeepsThem(t *testing.T) {
	for designV, want := range map[float64]answer.Change{0: answer.FitPack, 24: answer.FitPack, 36: answer.ChangeNone} {
		f := drive.ToyCheck{NominalV: 36, DesignV: designV}.Findings()[0]
		if f.Change != want || f.Advice == "" {
			t.Errorf("made for %g V: %q asks for %q", designV, f.Advice, f.Change)
		}
	}
}
