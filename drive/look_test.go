package drive

import (
	"fmt"
	"testing"
)

func TestLook2(t *testing.T) {
	for _, ed := range []func(*LaunchCase){
		func(*LaunchCase) {}, func(c *LaunchCase) { c.RampS = 1 },
		func(c *LaunchCase) { c.GripN = 100 }, func(c *LaunchCase) { c.MotorsInSeries = 2 },
	} {
		c := plain()
		ed(&c)
		for _, tol := range []float64{1e-3, 1e-4, 3e-5, 1e-5, 3e-6, 1e-6, 1e-7, 1e-8, 1e-9} {
			n := 0
			r := launch(&c, 10, tol, func(LaunchSample) { n++ })
			fmt.Printf("%g %d  %.9g %.9g %.9g %.9g %.9g %.9g\n", tol, n, r.PeakBatteryA, r.PeakBatteryAtS, r.PeakMotorAtS, r.LowestBusV, r.SpeedMS[2], r.SpeedMS[4])
		}
	}
	c := plain()
	c.GripN = 100
	n := 0
	launch(&c, 10, 1e-5, func(s LaunchSample) {
		n++
		if n < 40 {
			fmt.Printf("%.9f %.6f %.6f %.6f\n", s.TimeS, s.MotorA, s.WheelMS, s.SpeedMS)
		}
	})
}
