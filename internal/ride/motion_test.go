package ride

import (
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
)

// One step is as good as hundreds: drag over a long slip, soft starts that move off,
// that come to the grip or to the limit, a converter, windings that warm on the way.
func TestOneStepOfMotionIsLikeHundreds(t *testing.T) {
	for name, s := range map[string]struct {
		controller drive.Controller
		change     func(v *drive.Vehicle)
		fromMS     float64
		dtS        float64
		warmC      float64
	}{
		"slipping":                  {change: func(v *drive.Vehicle) { v.GripN = 35 }, dtS: 2},
		"slipping in the wind":      {change: func(v *drive.Vehicle) { v.GripN, v.DragNS2PerM2 = 35, 2 }, dtS: 3},
		"until it grips":            {change: func(v *drive.Vehicle) { v.GripN = 80 }, dtS: 3},
		"soft start":                {controller: drive.Controller{Chopper: true, RampS: 1.6}, change: func(v *drive.Vehicle) { v.GripN = 0 }, dtS: 0.8},
		"soft start to the grip":    {controller: drive.Controller{Chopper: true, RampS: 1.6}, change: func(v *drive.Vehicle) { v.GripN = 60 }, dtS: 0.8},
		"soft start to the limit":   {controller: drive.Controller{Chopper: true, RampS: 1.6, LimitA: 15}, dtS: 0.8},
		"limit through a converter": {controller: drive.Controller{Chopper: true, LimitA: 24, Converter: drive.Converter{OutV: 12, LimitA: 30}}, dtS: 2},
		"falling behind a start":    {fromMS: 1.5, dtS: 2},
		"windings that warm":        {fromMS: 1.2, dtS: 2, warmC: 20},
	} {
		t.Run(name, func(t *testing.T) {
			c := tractorCase(t)
			c.Controller = s.controller
			if s.change != nil {
				s.change(&c.Vehicle)
			}
			m := newMotion(&c.Vehicle, &c.Controller, 20)
			over := func(n int) (as, metres, a2s, speedMS float64) {
				speedMS = s.fromMS
				h := s.dtS / float64(n)
				for i := range n {
					at := float64(i) * h
					src := supply{emfV: 20, ohm: 0.14, duty: duty(&c.Controller, at)}
					m.dutyPerS = (duty(&c.Controller, at+h) - src.duty) / h
					beginC := 20 + s.warmC*at/s.dtS
					m.warmed(beginC, beginC+s.warmC*h/s.dtS/2, 1/h)
					out, near := stretch{}, speedMS
					m.endMS = speedMS
					for range 4 { // as a step that comes round after round knows itself
						m.run(&out, src, speedMS, near, h)
						near, m.endMS = out.metres/h, out.speedMS
					}
					as, metres, a2s, speedMS = as+out.batteryAs, metres+out.metres, a2s+out.motorA2s, out.speedMS
				}
				return as, metres, a2s, speedMS
			}
			as, metres, a2s, speedMS := over(1)
			wantAs, wantMetres, wantA2s, wantMS := over(400)
			for _, f := range []struct {
				what            string
				got, want, most float64
			}{{"charge", as, wantAs, 3e-3}, {"distance", metres, wantMetres, 7e-3}, {"speed", speedMS, wantMS, 3e-3}, {"squared current", a2s, wantA2s, 7e-3}} {
				if off := f.got/f.want - 1; !(math.Abs(off) <= f.most) {
					t.Errorf("%s: %.5g, want %.5g: off by %.2f %%", f.what, f.got, f.want, 100*off)
				}
			}
		})
	}
}

// What the lengths of steps leave by rounding is no step.
func TestStepsOfAPressAreOfAUsefulLength(t *testing.T) {
	c := tractorCase(t)
	for i := range 4000 {
		c.DriveS = 0.5 + 0.0173*float64(i)
		c.Controller = drive.Controller{Chopper: i%3 > 0, RampS: 0.31 * float64(i%7)}
		var g grid
		g.drive(&c, 1+i%2)
		sum := 0.0
		for k := range g.n {
			if s := &g.slots[k]; !(s.dtS >= leastS) {
				t.Errorf("%g s: a step of %g s", c.DriveS, s.dtS)
			}
			sum += g.slots[k].dtS * float64(g.slots[k].repeat)
		}
		if math.Abs(sum-c.DriveS) > 2*leastS {
			t.Errorf("%g s are parted into %g s", c.DriveS, sum)
		}
	}
}

// Whatever is put together, no figure of an outing is beyond numbers.
func TestNoOutingLeavesTheNumbers(t *testing.T) {
	n := 400
	if os.Getenv("PACKCHECK_SLOW") != "" {
		n = 40000
	}
	r := rand.New(rand.NewPCG(1, 2))
	between := func(lo, hi float64) float64 { return lo * math.Pow(hi/lo, r.Float64()) }
	packs := []*battery.Model{pack(t, "agm", 6, 7), pack(t, "li-ion", 5, 2), pack(t, "lifepo4", 4, 6), pack(t, "nimh", 10, 4)}
	for i := range n {
		c := tractorCase(t)
		c.Pack, c.StartCharge = packs[r.IntN(len(packs))], between(0.05, 1)
		c.PathOhm, c.DriveS, c.PauseS = between(0.01, 1), between(0.5, 200), between(0.5, 60)
		c.PackC, c.StandbyA = -10+50*r.Float64(), between(1e-3, 1)
		c.AmbientC = c.PackC
		v := &c.Vehicle
		v.GripN, v.RollN, v.GradeN, v.DragNS2PerM2 = between(1, 300), between(1, 200), between(0.1, 100), between(0.05, 2)
		v.Motor.WindingOhm *= between(0.1, 10)
		v.Motor.Thermal.WindingJPerK *= between(0.05, 2)
		if r.IntN(2) == 0 {
			c.Controller.Chopper, c.Controller.RampS = true, between(0.05, 10)
		}
		if r.IntN(3) == 0 {
			c.Controller.ModuleRampS = between(0.05, 5)
		}
		if r.IntN(3) == 0 {
			c.Controller.Chopper, c.Controller.LimitA = true, between(1, 100)
		}
		if r.IntN(4) == 0 {
			c.Controller.Converter = drive.Converter{OutV: between(5, 12), LimitA: between(5, 50)}
		}
		if r.IntN(2) == 0 {
			c.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Place(r.IntN(3)), OpensAtV: between(0.5, 1) * c.Pack.FullV(), DelayS: between(0.01, 5)})
		}
		out := Run(&c, nil)
		if out.ClockS == 0 {
			continue // over before it began
		}
		for what, x := range map[string]float64{
			"pedal": out.PedalS, "metres": out.DistanceM, "charge": out.DeliveredAh, "energy": out.DeliveredWh, "volts": out.LowestPackV + out.LowestBusV,
			"amps": out.PeakBatteryA, "mean square": out.RMSA, "pack": out.HottestC, "winding": out.WindingC, "case": out.CaseC, "left": out.ChargeLeft, "speed": out.FinalSpeed,
		} {
			if math.IsNaN(x) || math.Abs(x) > 1e7 {
				t.Errorf("case %d: %s of %g: %+v", i, what, x, c.Controller)
			}
		}
		if out.DistanceM < 0 || out.DeliveredAh < 0 || out.ChargeLeft > c.StartCharge+1e-6 {
			t.Errorf("case %d: %g m, %g Ah, %g left of %g", i, out.DistanceM, out.DeliveredAh, out.ChargeLeft, c.StartCharge)
		}
	}
}
