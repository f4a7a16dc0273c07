package trials_test

import (
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/judge"
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
