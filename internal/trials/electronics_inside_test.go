package trials_test

import (
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/cutoff"
)

// An iron-phosphate battery that is sold as a whole mostly has electronics inside that watch
// every cell and switch it off (common practice, no published source). That this one has none
// is a guess as long as nobody told, and a fault where somebody did.
func TestABatteryThatMostlyWatchesItsCellsIsNoDangerUntilSomebodySaysThatItDoesNot(t *testing.T) {
	vehicle := sheet{
		"rider.age": `"5 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"asphalt"`, "motors.count": "2",
		"fuse.form": `"small blade"`, "fuse.rating": `"20 A"`, "wire.gauge": `"14 AWG"`, "wire.insulation": `"80 C"`,
		"pack.label": `"12.8 V 10 Ah LiFePO4"`,
	}
	for _, row := range []struct {
		name string
		set  []string
		none answer.Level // of "nothing disconnects it"; fine = not said
		most answer.Level
	}{
		{"nobody told", nil, answer.FixFirst, answer.FixFirst},
		{"they do", []string{"pack.watches_cells", "true"}, answer.Fine, answer.Watch},
		{"they do not", []string{"pack.watches_cells", "false"}, answer.Danger, answer.Danger},
		{"it switches itself off, and nobody told whether for its weakest cell", []string{"cutoff.pack.opens_at", `"10 V"`}, answer.Fine, answer.FixFirst},
		{"it opens where every cell is harmed", []string{"cutoff.pack.opens_at", `"7 V"`}, answer.Fine, answer.Danger},
		{"bare cells", []string{"pack.housing", `"bare cells"`}, answer.Danger, answer.Danger},
		{"cells that somebody put together", []string{"pack.label", `"4S2P LiFePO4 10 Ah"`}, answer.Danger, answer.Danger},
		{"the same with its volts", []string{"pack.label", `"4S LiFePO4 12.8 V 10 Ah"`}, answer.Danger, answer.Danger},
		{"bare cells by the label", []string{"pack.label", `"12.8 V 10 Ah LiFePO4 bare cells"`}, answer.Danger, answer.Danger},
		{"the same with electronics", []string{"pack.label", `"4S LiFePO4 12.8 V 10 Ah with BMS"`}, answer.FixFirst, answer.FixFirst},
		{"a tool pack", []string{"pack.label", `"12 V max 4 Ah"`, "pack.chemistry", `"li-ion"`}, answer.Danger, answer.Danger},
	} {
		t.Run(row.name, func(t *testing.T) {
			a := assess(t, vehicle.with(row.set...))
			if a.Verdict != row.most {
				t.Errorf("the verdict is %v, want %v", a.Verdict, row.most)
			}
			k := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Code == cutoff.CodeNone })
			switch {
			case k < 0 && row.none != answer.Fine:
				t.Errorf("%s is not said", cutoff.CodeNone)
			case k >= 0 && a.Findings[k].Level != row.none:
				t.Errorf("%s is %v, want %v", cutoff.CodeNone, a.Findings[k].Level, row.none)
			}
			if row.most == answer.FixFirst && (len(a.Measure) == 0 || a.Measure[0].Key != answer.KeyPackWatchesCells) {
				t.Errorf("asked for first: %+v, want %s", a.Measure, answer.KeyPackWatchesCells)
			}
		})
	}
}
