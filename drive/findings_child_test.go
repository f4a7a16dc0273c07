package drive_test

import (
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
		{"a load above the usual", given(drive.LoadCheck{RiderKg: 36, UsualKg: 30}.Findings()), levels{drive.CodeOverloaded: answer.FixFirst}},
		{"a load within the label's", given(drive.LoadCheck{RiderKg: 29, RatedKg: 30, UsualKg: 25}.Findings()), nil},
		{"a slope that it rolls down", given(drive.SlopeCheck{GradeN: 60, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.Watch}},
		{"a slope downhill", given(drive.SlopeCheck{GradeN: -40, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.Watch}},
		{"a steep slope downhill", given(drive.SlopeCheck{GradeN: -60, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.FixFirst}},
		{"a slope steeper than any test", given(drive.SlopeCheck{GradeN: 80, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.FixFirst}},
		{"a slope to tip on", given(drive.SlopeCheck{GradeN: 120, RollN: 15, ToyKg: 15, AllKg: 45}.Findings()), levels{drive.CodeRollsBack: answer.Danger}},
		{"a battery of 36 V", given(drive.ToyCheck{NominalV: 36}.Findings()), levels{drive.CodeAboveToyVolts: answer.FixFirst}},
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
		{drive.CodeOverloaded, answer.Child, answer.FixFirst, answer.Rider, answer.LoadLess, rating, "a load above the label's", "a load within the label's"},
		{drive.CodeRollsBack, answer.Child, answer.Danger, answer.Rider, answer.LoadLess, own, "a slope to tip on", "a slope that the ground holds"},
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
