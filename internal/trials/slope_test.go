package trials_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/report"
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

// A slope is the steepest climb, not the whole garden: minutes for climbing all the time are
// told as such, and beside them stand those on the level, the same that a setup without the
// slope is told.
func TestMinutesOfAClimbStandBesideThoseOnTheLevel(t *testing.T) {
	t.Parallel()
	page := func(a *answer.Assessment) string {
		var out strings.Builder
		if err := report.Write(&out, a, report.Options{}); err != nil {
			t.Fatal(err)
		}
		return out.String()
	}
	flat := readWith(t, labelsOnly().with("vehicle.slope", `"0 %"`).toml(), some)
	if flat.Ride.LevelPedalMin != nil || strings.Contains(page(flat), "phill") || strings.Contains(page(flat), "On the level") {
		t.Errorf("no slope, and yet:\n%s", page(flat))
	}
	climb := readWith(t, labelsOnly().with("vehicle.slope", `"4 %"`).toml(), some)
	if climb.Ride.LevelPedalMin == nil || !(climb.Ride.LastsPedalMin < *climb.Ride.LevelPedalMin) {
		t.Fatalf("%.1f min uphill, %v on the level", climb.Ride.LastsPedalMin, climb.Ride.LevelPedalMin)
	}
	near(t, "minutes on the level", *climb.Ride.LevelPedalMin, flat.Ride.LastsPedalMin, 1e-9)
	for _, want := range []string{"Uphill it lasts", ", uphill all the time\n", "\nOn the level  ", "; up and down lies between\n"} {
		if !strings.Contains(page(climb), want) {
			t.Errorf("lacks %q:\n%s", want, page(climb))
		}
	}
}

// Wheels of hard plastic pull a child up a gentle lawn in most vehicles: what the rear
// wheels carry is more than half, and more of it on a climb. Nobody published in how many;
// people do drive them on such lawns.
func TestMostStockVehiclesClimbAGentleLawnSomeOnlySpin(t *testing.T) {
	t.Parallel()
	stuck := func(ground, slope string) float64 {
		s := labelsOnly().with("motors.can", "", "motors.rated_voltage", "", "vehicle.ground", ground, "vehicle.slope", slope)
		return readWith(t, s.toml(), 512).Draws.Stuck
	}
	flat, gentle, steep := stuck(`"short grass"`, `"0 %"`), stuck(`"short grass"`, `"5 %"`), stuck(`"short grass"`, `"20 %"`)
	if flat > 0.1 || gentle > 0.33 || gentle < 0.05 || steep < 0.8 {
		t.Errorf("%.2f stand on a flat lawn, %.2f on 5 %%, %.2f on 20 %%", flat, gentle, steep)
	}
	if wet := stuck(`"wet grass"`, `"5 %"`); wet < 2*gentle {
		t.Errorf("%.2f stand on 5 %% of wet grass, %.2f on dry", wet, gentle)
	}
}
