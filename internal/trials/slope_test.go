package trials_test

import (
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
)

// Who tells how steep it gets does not hear less of how fast it is: the flat and the way
// down are as fast as ever.
func TestASlopeHidesNoSpeed(t *testing.T) {
	t.Parallel()
	on := func(slope string) *answer.Assessment {
		s := sheetOf(t, "../../examples/tractor-tool-pack.toml").with("vehicle.slope", slope)
		return readWith(t, s.toml(), some)
	}
	flat, steep := on(`"0 %"`), on(`"6 %"`)
	if !(steep.Steady.SpeedKmh < flat.Steady.SpeedKmh) {
		t.Fatalf("%.1f km/h uphill, %.1f on the flat", steep.Steady.SpeedKmh, flat.Steady.SpeedKmh)
	}
	for _, code := range []string{drive.CodeFastForARideOn, drive.CodeFasterThanOriginal} {
		of := func(a *answer.Assessment) (f answer.Finding) {
			if i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Code == code }); i >= 0 {
				f = a.Findings[i]
			}
			return f
		}
		a, b := of(flat), of(steep)
		if a.Level < answer.Watch || b.Level < a.Level || b.Share < a.Share {
			t.Errorf("%s: %v in %.0f %% of draws on the flat, %v in %.0f %% with a slope", code, a.Level, 100*a.Share, b.Level, 100*b.Share)
		}
	}
}

// A speed that was read on the flat is judged as it was read, whatever the climb: the way
// to stop from it is the same.
func TestASpeedThatWasReadIsJudgedOnAClimbToo(t *testing.T) {
	t.Parallel()
	stopM := func(slope string) float64 {
		s := labelsOnly().with("vehicle.slope", slope, "measured.top_speed", `"5 km/h"`, "rider.age", `"4 years"`)
		a := readWith(t, s.toml(), some)
		i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Code == drive.CodeWayToStop })
		if i < 0 {
			t.Fatal("nothing of how it stops")
		}
		return a.Findings[i].Found
	}
	near(t, "metres to stop", stopM(`"4 %"`), stopM(`"0 %"`), 1e-9)
}
