package trials_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/report"
)

// A vehicle that gets going and yet crawls with its motors near their stall is an
// outcome of its own: it is told in words and with its share, and does not pull
// down the minutes of those that do ride.
func TestAVehicleThatBarelyMovesIsToldApart(t *testing.T) {
	t.Parallel()
	of := func(ground string) *answer.Assessment {
		s := factory{volts: "12 V", label: "12 V 7 Ah", motors: 2, board: told(true), ground: ground, child: "6 years"}
		return readWith(t, s.toml(), 1024)
	}
	tells := func(a *answer.Assessment) bool {
		return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool { return f.Code == judge.CodeBarelyMoves })
	}
	lawn, road := of("short grass"), of("asphalt")
	if d := lawn.Draws; d.Crawls < 0.1 || d.Crawls+d.Stuck > 0.5 || !tells(lawn) {
		t.Errorf("on a lawn %g crawl and %g stand, told %t", d.Crawls, d.Stuck, tells(lawn))
	}
	if m := lawn.Ride.LastsPedalMin; m < 10 {
		t.Errorf("those that ride on a lawn do so for %.1f min: those that crawl are in it", m)
	}
	if road.Draws.Crawls > 0.02 || tells(road) {
		t.Errorf("on asphalt %g crawl", road.Draws.Crawls)
	}
}

// What keeps it from moving comes before what matters only once it moves, and before
// every guess: there is no battery to save in a vehicle that stands.
func TestWhatKeepsItFromMovingComesFirst(t *testing.T) {
	t.Parallel()
	hill := labelsOnly().with("rider.mass", `"25 kg"`, "rider.age", `"8 years"`, "vehicle.ground", `"long grass"`, "vehicle.slope", `"15 %"`, "pack.label", `"12 V 10 Ah"`)
	for name, s := range map[string]sheet{
		"25 kg":           hill,
		"34 kg on 6 V":    hill.with("rider.mass", `"34 kg"`, "vehicle.design_voltage", `"6 V"`, "motors.rated_voltage", "", "pack.label", `"6 V 10 Ah"`),
		"35 kg, 30 rated": hill.with("rider.mass", `"35 kg"`, "vehicle.rated_load", `"30 kg"`),
	} {
		a := assess(t, s)
		if got := has(a, cutoff.CodeNone); got > answer.Watch {
			t.Errorf("%s: nothing disconnects its battery: %v", name, got)
		}
		for _, f := range a.Findings {
			if f.Code == judge.CodeDoesNotGo {
				break
			}
			if f.Harm < answer.Child {
				t.Errorf("%s: %s (%v) comes before that it does not go", name, f.Code, f.Level)
				break
			}
		}
		var page strings.Builder
		if err := report.Write(&page, a, report.Options{}); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(page.String(), "It does not get going here") {
			t.Errorf("%s: its page does not tell that it does not go:\n%s", name, page.String())
		}
	}
}
