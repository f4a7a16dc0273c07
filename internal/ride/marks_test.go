package ride

import (
	"fmt"
	"math"
	"testing"

	"example.org/packcheck/cutoff"
)

// alike holds two outcomes of the same outing together, to the error of its steps
// (0.1 %, see TestThePedalTimeIsThatOfStepsSixteenTimesFiner); temperatures to 0.5 %
// of what it warms up or a hundredth of a kelvin, because a peak inside a round that is left out is not seen.
func alike(t *testing.T, name string, ambientC float64, got, want Outcome) {
	t.Helper()
	if got.EndedBy != want.EndedBy {
		t.Errorf("%s: ended by %v, want %v", name, got.EndedBy, want.EndedBy)
	}
	// Where an outing ends with a press, one more or less of them brings a pause along.
	pauses := 0.0
	if more := got.Launches - want.Launches; want.Launches > 1 && (more == 1 || more == -1) {
		pauses = float64(more) * (want.ClockS - want.PedalS) / float64(want.Launches-1)
	}
	for _, f := range []struct {
		what             string
		got, want, share float64
		hair             float64
	}{
		{"pedal", got.PedalS, want.PedalS, 0.001, 1e-9},
		{"clock", got.ClockS - pauses, want.ClockS, 0.001, 1e-9},
		{"metres", got.DistanceM, want.DistanceM, 0.001, 1e-9},
		{"charge", got.DeliveredAh, want.DeliveredAh, 0.001, 1e-9},
		{"pack", got.HottestC - ambientC, want.HottestC - ambientC, 0.005, 0.01},
		{"winding", got.WindingC - ambientC, want.WindingC - ambientC, 0.005, 0.01},
	} {
		if math.Abs(f.got-f.want) > f.share*math.Abs(f.want)+f.hair {
			t.Errorf("%s: %s %g, want %g", name, f.what, f.got, f.want)
		}
	}
}

// In which round a cutoff opens may hang on millivolts: where those few in hairV more or
// less make another round of it, an outing that is taken up may end in either.
func TestAnOutingTakenUpFromAMarkEndsAsOneFromTheStart(t *testing.T) {
	const hairV = 0.005
	taken, late := 0, 0
	for name, c := range varied(t) {
		var m Marks
		See(&c, &m)
		c.WantedS = 0
		for _, share := range []float64{0.7, 0.8, 0.85, 0.9, 0.95} {
			d := cutoff.Device{Where: cutoff.Module, OpensAtV: share * c.Pack.FullV(), DelayS: 4}
			other := c
			ends := func(offV float64) Outcome {
				d := d
				d.OpensAtV += offV
				other.Cutoffs = chain(t, d)
				return Run(&other, nil)
			}
			want, early, later := ends(0), ends(hairV), ends(-hairV)
			other.Cutoffs = chain(t, d)
			got := m.Run(&other)
			for _, o := range []Outcome{early, later} {
				if math.Abs(got.PedalS-o.PedalS) < math.Abs(got.PedalS-want.PedalS) {
					want = o
				}
			}
			alike(t, fmt.Sprintf("%s, %.3g V", name, d.OpensAtV), c.AmbientC, got, want)
		}
		if m.n > 2 {
			taken++
		}
		if m.n > 6 {
			late++
		}
	}
	if taken < 10 || late < 10 {
		t.Errorf("marks were kept in %d cases, many in %d: want 10 each at least", taken, late)
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
