package ride

import (
	"testing"

	"example.org/packcheck/drive"
)

// Launch and outing follow the bent branches of a cold lithium pack by different
// methods. (Peaks are not compared: the outing's currents are those of whole
// steps, with wheels that do not spin.)
func TestALaunchInTheColdIsCloseToTheOutingsFirstSeconds(t *testing.T) {
	for _, tempC := range []float64{-10, 0, 20} {
		for _, rampS := range []float64{0.5, 1} {
			c := tractorCase(t)
			c.PackC, c.AmbientC = tempC, tempC
			c.Controller = drive.Controller{Chopper: true, RampS: rampS}
			launch := c.LaunchCase()
			r := drive.Launch(&launch, c.LaunchSeconds(), nil)
			c.WantedS = 6
			speedMS := 0.0
			out := Run(&c, func(s Sample) {
				if s.Phase == Driving {
					speedMS = s.SpeedMS
				}
			})
			near(t, "speed after six seconds", r.SpeedAt(6), speedMS, 0.01)
			near(t, "lowest volts", r.LowestBusV, out.LowestBusV, 0.03)
		}
	}
}
