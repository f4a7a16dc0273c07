package drive_test

import (
	"math"
	"testing"

	"example.org/packcheck/drive"
)

// A launch on a pack whose first branch bends, against the same equations in
// tiny explicit steps.
func TestALaunchOnABranchThatBendsAgreesWithTinySteps(t *testing.T) {
	for _, c := range []struct{ rampS, moduleRampS, limitA float64 }{{0, 0, 0}, {0.8, 0, 0}, {0.5, 0.3, 0}, {0, 0, 25}} {
		p := toolPack()
		p.RC[0] = drive.Branch{Ohm: 0.30, Farad: 1 / 0.30, KneeV: 0.9} // a tool pack at freezing point
		l := drive.LaunchCase{
			OCVV: p.OCVV, R0Ohm: p.R0Ohm, RC: p.RC, PathOhm: p.PathOhm,
			Motors: 2, MotorsInSeries: 1, WindingOhm: 0.3, WindingH: 2e-4, TorqueConstant: 0.0085, NoLoadA: 1.2,
			GearRatio: 110, GearEfficiency: 0.65, WheelRadiusM: 0.14, MassKg: 45, RotorInertiaKgM2: 4e-6,
			RollN: 18, DragNS2PerM2: 0.3, RampS: c.rampS, ModuleRampS: c.moduleRampS, LimitA: c.limitA,
		}
		r := drive.Launch(&l, 4, nil)
		e := l.Equivalent()
		var i, v, v1, v2, peakA float64
		const dt = 2e-5
		for k := 0; k < int(4/dt); k++ {
			at := float64(k) * dt
			duty, module := 1.0, 1.0
			if c.rampS > 0 {
				duty = min(at/c.rampS, 1)
			}
			if c.moduleRampS > 0 {
				module = min(at/c.moduleRampS, 1)
			}
			volts := func(duty float64) float64 { // across the winding
				return duty*(module*(l.OCVV-v1-v2-module*duty*i*l.R0Ohm)-duty*i*l.PathOhm) - e.Ohm*i - e.VoltPerMS*v
			}
			if c.limitA > 0 && i >= c.limitA && volts(duty) > 0 {
				lo, hi := 0.0, duty // the duty that just holds the current
				for range 40 {
					if mid := (lo + hi) / 2; volts(mid) > 0 {
						hi = mid
					} else {
						lo = mid
					}
				}
				duty = lo
			}
			batteryA := duty * module * i
			peakA = max(peakA, batteryA)
			i += dt * volts(duty) / e.Henry
			if c.limitA > 0 {
				i = min(i, c.limitA)
			}
			v1 += dt * (l.RC[0].KneeV*math.Asinh(batteryA*l.RC[0].Ohm/l.RC[0].KneeV) - v1) / (l.RC[0].Ohm * l.RC[0].Farad)
			v2 += dt * (batteryA*l.RC[1].Ohm - v2) / (l.RC[1].Ohm * l.RC[1].Farad)
			force := e.NewtonPerA*i - e.LossN - l.RollN - l.DragNS2PerM2*v*v
			if v > 0 || force > 0 {
				v = max(v+dt*force/(l.MassKg+e.RotorKg), 0)
			}
		}
		if math.Abs(r.PeakBatteryA/peakA-1) > 0.002 || math.Abs(r.EndMS/v-1) > 0.002 {
			t.Errorf("%+v: peak %.3f A, speed after 4 s %.4f m/s; in tiny steps %.3f A, %.4f m/s", c, r.PeakBatteryA, r.EndMS, peakA, v)
		}
		straight := l
		straight.RC[0].KneeV = 0
		if !(drive.Launch(&straight, 4, nil).EndMS < 0.99*r.EndMS) {
			t.Errorf("%+v: a straight branch of that resistance must hold it back more", c)
		}
	}
}
