package ride

import (
	"testing"
	"time"

	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
)

// What is left out of an outing of thousands of presses must not show.
func TestSkippedRoundsAreLikeFollowedOnes(t *testing.T) {
	short := func(c Case, driveS, pauseS float64) Case {
		c.DriveS, c.PauseS = driveS, pauseS
		return c
	}
	lead, cut, soft, bench := tractorCase(t), tractorCase(t), tractorCase(t), tractorCase(t)
	lead.Pack = pack(t, "agm", 6, 20)
	cut.Pack = pack(t, "li-ion", 5, 20)
	cut.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Module, OpensAtV: 15, DelayS: 0.2})
	soft.Pack = pack(t, "li-ion", 5, 20)
	soft.Controller = drive.Controller{Chopper: true, RampS: 0.5, LimitA: 25}
	bench.Load = Load{Kind: ConstantPower, Amount: 40}
	fused := cut
	fused.Pack, fused.Fused = pack(t, "li-ion", 5, 60), true
	fused.Fuse = fuse(t, 14).At(30)
	for name, c := range map[string]Case{
		"lead-acid, half a second at a time": short(lead, 0.5, 2),
		"cutoff, a second at a time":         short(cut, 1, 3),
		"soft start, two seconds at a time":  short(soft, 2, 0),
		"bench power in bursts":              short(bench, 1, 2),
		"a fuse that each press warms":       short(fused, 0.5, 0.6),
	} {
		all := outing{c: &c, every: true}
		every, some := all.run(1), Run(&c, nil)
		if every.EndedBy != some.EndedBy {
			t.Errorf("%s: ends with %v, followed throughout with %v", name, some.EndedBy, every.EndedBy)
		}
		near(t, name+": pedal time", some.PedalS, every.PedalS, 0.005)
		near(t, name+": clock time", some.ClockS, every.ClockS, 0.005)
		near(t, name+": distance", some.DistanceM, every.DistanceM, 0.005)
		near(t, name+": charge", some.DeliveredAh, every.DeliveredAh, 0.005)
		near(t, name+": energy", some.DeliveredWh, every.DeliveredWh, 0.005)
		near(t, name+": launches", float64(some.Launches), float64(every.Launches), 0.005)
		near(t, name+": peak", some.PeakBatteryA, every.PeakBatteryA, 0.005)
		near(t, name+": mean square current", some.RMSA, every.RMSA, 0.005)
		near(t, name+": winding", some.WindingC-c.AmbientC, every.WindingC-c.AmbientC, 0.05)
		near(t, name+": pack", some.HottestC-c.AmbientC, every.HottestC-c.AmbientC, 0.05)
	}
}

func TestWhatIsLeftOutOfAnOutingOfTheUsualLengthDoesNotShow(t *testing.T) {
	for name, c := range varied(t) {
		all := outing{c: &c, every: true}
		alike(t, name, c.AmbientC, Run(&c, nil), all.run(1))
	}
}

// A pack far too large for the load, switched on and off for a month.
func TestNoCaseTakesLong(t *testing.T) {
	for _, s := range []struct{ driveS, pauseS, ah float64 }{{0.5, 0, 2000}, {0.5, 0.001, 2000}, {1, 10, 2000}, {0.5, 86400, 100}} {
		c := tractorCase(t)
		c.Pack = pack(t, "agm", 6, s.ah)
		c.DriveS, c.PauseS = s.driveS, s.pauseS
		began := time.Now()
		out := Run(&c, nil)
		if d := time.Since(began); d > time.Second {
			t.Errorf("%+v: %v for %d launches, ended by %v", s, d, out.Launches, out.EndedBy)
		}
		c.Load = Load{Kind: ConstantCurrent, Amount: 0.01}
		began = time.Now()
		if Run(&c, nil); time.Since(began) > time.Second {
			t.Errorf("%+v: %v on the bench", s, time.Since(began))
		}
	}
}
