package drive

import (
	"fmt"
	"testing"
)

func plain() LaunchCase {
	return LaunchCase{
		OCVV: 20.5, R0Ohm: 0.06, RC: [2]Branch{{0.02, 60}, {0.02, 1500}}, PathOhm: 0.03,
		Motors: 2, MotorsInSeries: 1, WindingOhm: 0.3, WindingH: 1.5e-4, TorqueConstant: 0.008, NoLoadA: 1.5,
		GearRatio: 110, GearEfficiency: 0.65, WheelRadiusM: 0.125, MassKg: 45, RotorInertiaKgM2: 8e-6,
		RollN: 15, GradeN: 0, DragNS2PerM2: 0.4, GripN: 0,
	}
}

func TestLook(t *testing.T) {
	for _, ed := range []func(*LaunchCase){
		func(*LaunchCase) {}, func(c *LaunchCase) { c.RampS = 1 },
		func(c *LaunchCase) { c.LimitA = 40 }, func(c *LaunchCase) { c.LimitA = 40; c.RampS = 0.5 },
		func(c *LaunchCase) { c.MotorsInSeries = 2 }, func(c *LaunchCase) { c.GripN = 100 }, func(c *LaunchCase) { c.GradeN = 300 },
		func(c *LaunchCase) { c.GradeN = 800 }, func(c *LaunchCase) { c.GradeN = 300; c.GripN = 200 },
		func(c *LaunchCase) { c.ModuleRampS = 1; c.RampS = 0.5; c.LimitA = 50 },
	} {
		c := plain()
		ed(&c)
		n := 0
		r := Launch(&c, 10, func(LaunchSample) { n++ })
		r2 := launch(&c, 10, tolerance/1000, nil)
		fmt.Printf("steps %d %+v\n     %+v\n", n, r, r2)
	}
}

func BenchmarkLaunch(b *testing.B) {
	c := plain()
	b.ReportAllocs()
	for b.Loop() {
		Launch(&c, 10, nil)
	}
}
