package ride

import (
	"fmt"
	"math"
	"testing"

	"example.org/packcheck/cutoff"
)

// alike holds two outcomes of the same outing together, to the error of its steps
// (0.1 %, see TestThePedalTimeIsThatOfStepsSixteenTimesFiner); temperatures to 0.5 %
// of what it warms up, because a peak inside a round that is left out is not seen.
func alike(t *testing.T, name string, ambientC float64, got, want Outcome) {
	t.Helper()
	if got.EndedBy != want.EndedBy {
		t.Errorf("%s: ended by %v, want %v", name, got.EndedBy, want.EndedBy)
	}
	for _, f := range []struct {
		what             string
		got, want, share float64
	}{
		{"pedal", got.PedalS, want.PedalS, 0.001},
		{"clock", got.ClockS, want.ClockS, 0.001},
		{"metres", got.DistanceM, want.DistanceM, 0.001},
		{"charge", got.DeliveredAh, want.DeliveredAh, 0.001},
		{"pack", got.HottestC - ambientC, want.HottestC - ambientC, 0.005},
		{"winding", got.WindingC - ambientC, want.WindingC - ambientC, 0.005},
	} {
		if math.Abs(f.got-f.want) > f.share*math.Abs(f.want)+1e-9 {
			t.Errorf("%s: %s %g, want %g", name, f.what, f.got, f.want)
		}
	}
}

func TestAnOutingTakenUpFromAMarkEndsAsOneFromTheStart(t *testing.T) {
	taken := 0
	for name, c := range varied(t) {
		var m Marks
		See(&c, &m)
		c.WantedS = 0
		for _, share := range []float64{0.7, 0.8, 0.85, 0.9, 0.95} {
			d := cutoff.Device{Where: cutoff.Module, OpensAtV: share * c.Pack.FullV(), DelayS: 4}
			other := c
			other.Cutoffs = chain(t, d)
			alike(t, fmt.Sprintf("%s, %.3g V", name, d.OpensAtV), c.AmbientC, m.Run(&other), Run(&other, nil))
		}
		if m.n > 2 {
			taken++
		}
	}
	if taken < 10 {
		t.Errorf("marks were kept in %d cases, want 10 at least", taken)
	}
}

func TestTheWantedTimeIsPartOfTheWholeOuting(t *testing.T) {
	reached := 0
	for name, c := range varied(t) {
		c.WantedS = 0
		whole := Run(&c, nil)
		for _, share := range []float64{0.3, 0.8, 1.5} {
			c.WantedS = share * whole.ClockS
			if c.WantedS == 0 || whole.ClockS == MaxClockS {
				continue
			}
			seen, name := See(&c, nil), fmt.Sprintf("%s, %g", name, share)
			wanted := Run(&c, nil)
			alike(t, name+", wanted", c.AmbientC, seen.Outing, wanted)
			alike(t, name+", whole", c.AmbientC, seen.Lasts, whole)
			if wanted.EndedBy == WantedReached {
				reached++
			}
		}
	}
	if reached < 10 {
		t.Errorf("the wanted time was reached in %d cases, want 10 at least", reached)
	}
}

func TestSeeingACaseAllocatesNothing(t *testing.T) {
	c, m := tractorCase(t), new(Marks)
	c.WantedS = 600
	if n := testing.AllocsPerRun(10, func() { See(&c, m) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}
