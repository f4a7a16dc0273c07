package ride

import (
	"math"
	"testing"

	"example.org/packcheck/drive"
)

// Nothing gives more than it has: what a bench load or a converter asks for
// beyond that ends the outing, or brings less.

func TestALoadBeyondThePackEndsAtOnce(t *testing.T) {
	for name, c := range map[string]Case{
		"current": {Load: Load{Kind: ConstantCurrent, Amount: 5000}},
		"power":   {Load: Load{Kind: ConstantPower, Amount: 200e3}},
		"pattern": {Load: Load{Kind: CurrentPattern, Pattern: []Demand{{Sec: 60, CurrentA: 5000}}}},
	} {
		c.Pack, c.StartCharge, c.PackC, c.AmbientC = pack(t, "agm", 6, 7), 1, 20, 20
		out := Run(&c, nil)
		if out.EndedBy != CannotSupply || out.DeliveredWh < 0 || out.ClockS > 1 {
			t.Errorf("%s: %v after %g s with %g Wh", name, out.EndedBy, out.ClockS, out.DeliveredWh)
		}
	}
}

// A load that the full pack can just give and the emptier one cannot.
func TestEnergyOfABenchLoadIsNeverNegative(t *testing.T) {
	for _, amps := range []float64{1, 10, 50, 100, 200, 300, 400, 600} {
		c := Case{
			Pack: pack(t, "agm", 6, 7), StartCharge: 1, PackC: 20, AmbientC: 20, PathOhm: 0.01,
			Load: Load{Kind: ConstantCurrent, Amount: amps},
		}
		out := Run(&c, func(s Sample) {
			if s.BusV < -0.05 {
				t.Errorf("%g A: %g V at the load", amps, s.BusV)
			}
		})
		if out.DeliveredWh < -1e-6 {
			t.Errorf("%g A: %g Wh", amps, out.DeliveredWh)
		}
	}
}

func TestABenchLoadThatPausesWithoutDrivingStillRuns(t *testing.T) {
	c := Case{
		Pack: pack(t, "agm", 6, 7), StartCharge: 1, PackC: 20, AmbientC: 20, PauseS: 10,
		Load: Load{Kind: ConstantCurrent, Amount: 3},
	}
	if out := Run(&c, nil); out.EndedBy != PackEmpty || out.PedalS < 3600 {
		t.Errorf("%v after %g s", out.EndedBy, out.PedalS)
	}
}

// Energy into the motors is at most what pack and path let through.
func TestAConverterNeverGivesMoreThanItsSupply(t *testing.T) {
	for _, ohm := range []float64{0.01, 0.1, 0.5, 1, 2, 5, 10} {
		c := tractorCase(t)
		c.PathOhm = ohm
		c.Controller = drive.Controller{Chopper: true, LimitA: 30, Converter: drive.Converter{OutV: 12, LimitA: 40}}
		steady := See(&c, nil).Steady
		out := Run(&c, nil)
		if steady.Stuck != (out.EndedBy == CannotMove && out.DistanceM < 1) {
			t.Errorf("%g Ohm: steady running stuck is %v, the outing ends with %v after %g m", ohm, steady.Stuck, out.EndedBy, out.DistanceM)
		}
		full := c.Pack.StateAt(1, 20)
		emf, r := c.Pack.Source(&full)
		if most := emf / (r + ohm); out.PeakBatteryA > most {
			t.Errorf("%g Ohm: peak of %g A, a short draws %g A", ohm, out.PeakBatteryA, most)
		}
		if !steady.Stuck && out.FinalSpeed > 1.1*steady.SpeedMS {
			t.Errorf("%g Ohm: drives %g m/s, steady running says %g", ohm, out.FinalSpeed, steady.SpeedMS)
		}
	}
}

// A soft start only puts the peak off: the launch is followed until it is over.
func TestTheLaunchIsFollowedThroughTheSlowestSoftStart(t *testing.T) {
	c := tractorCase(t)
	for _, ramp := range []float64{0, 1, 10, 30, 60} {
		c.Controller = drive.Controller{Chopper: true, RampS: ramp}
		r := See(&c, nil)
		if r.Launch.PeakBatteryA < 0.98*r.Steady.BatteryA {
			t.Errorf("ramp of %g s: peak %g A, running %g A", ramp, r.Launch.PeakBatteryA, r.Steady.BatteryA)
		}
		if math.Abs(r.Launch.EndMS-r.Steady.SpeedMS) > 0.05*r.Steady.SpeedMS {
			t.Errorf("ramp of %g s: ends at %g m/s, runs at %g", ramp, r.Launch.EndMS, r.Steady.SpeedMS)
		}
	}
}

// A pack whose resistance fell far during a step of the last round has less to lose
// in this one: it never becomes a source that drives itself.
func TestAStepForetoldToLoseMoreResistanceThanThePackHasStaysASupply(t *testing.T) {
	for _, ohm := range []float64{0, -0.05, -0.2, -1, -100} {
		c := tractorCase(t)
		o := outing{c: &c, phase: Driving}
		o.begin()
		o.motion = newMotion(&c.Vehicle, &c.Controller, c.AmbientC)
		s := newSlot(&c, 17)
		s.told = foretold{known: true, batteryAs: 120, metres: 30, motorA2s: 900, ohm: ohm}
		o.plan(&o.draft, &s)
		d := &o.draft
		if full := o.now.look.EMFV; !(d.endBus > 0 && d.endBus <= full && d.batteryAs > 0 && d.speedMS > 0) {
			t.Errorf("%g Ohm foretold: %g V of %g, %g As, %g m/s", ohm, d.endBus, full, d.batteryAs, d.speedMS)
		}
	}
}
