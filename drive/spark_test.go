package drive_test

import (
	"math"
	"testing"

	"example.org/packcheck/drive"
)

// Source: C. R. Robertson, Fundamental Electrical and Electronic Principles,
// Ex. 8.1, p. 253: 8 uF, 0.5 MOhm, 200 V.
func TestCapacitorChargeOfRobertsonExample81(t *testing.T) {
	p := drive.PlugIn{Volt: 200, LoopOhm: 0.5e6, InputF: 8e-6}
	s := drive.SparkOf(p)
	near(t, "time constant, s", s.TauS, 4, 1e-12)
	near(t, "first current, uA", s.PeakA*1e6, 400, 1e-9)
	near(t, "volts after 4 s", p.VoltAt(4), 126.4, 0.05)
	near(t, "volts after 3 tau, share", p.VoltAt(12)/200, 0.95, 0.0005)
	near(t, "volts after 4.6 tau, share", p.VoltAt(4.6*4)/200, 0.99, 0.0001)
}

// Sources: inrush and pre-charge notes of resistor makers; computed figures.
func TestPlugInSparkAndItsResistor(t *testing.T) {
	s := drive.SparkOf(drive.PlugIn{Volt: 21, LoopOhm: 0.030, InputF: 1000e-6})
	near(t, "peak, A", s.PeakA, 700, 0.5)
	near(t, "energy, J", s.EnergyJ, 0.22, 0.005)
	near(t, "and the same again lost, J", s.LostJ, s.EnergyJ, 0)
	near(t, "47 Ohm charges 1000 uF in, s", drive.SparkOf(drive.PlugIn{Volt: 21, LoopOhm: 47, InputF: 1000e-6}).ChargedS, 0.235, 1e-9)
	if p := s.Precharge; !(p.LeastOhm <= p.Ohm && p.Ohm <= p.MostOhm) || p.ChargedS < 0.5 || p.ChargedS > 2 {
		t.Errorf("advised resistor is outside its own window: %+v", p)
	}
	near(t, "resistor absorbs C V^2/2, J", s.Precharge.EnergyJ, s.EnergyJ, 0)
}

func TestAdvisedResistorIsAPreferredValueForAnyCapacitor(t *testing.T) {
	for farad := 1e-7; farad < 1; farad *= 1.37 {
		p := drive.SparkOf(drive.PlugIn{Volt: 21, LoopOhm: 0.03, InputF: farad}).Precharge
		if p.ChargedS < 0.5 || p.ChargedS > 2 {
			t.Errorf("%g F: %g Ohm charges in %g s", farad, p.Ohm, p.ChargedS)
		}
		mantissa := p.Ohm / math.Pow(10, math.Floor(math.Log10(p.Ohm)*(1+1e-12)+1e-9))
		found := false
		for _, x := range []float64{1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2} {
			found = found || math.Abs(mantissa/x-1) < 1e-9
		}
		if !found {
			t.Errorf("%g F: %g Ohm is not of the E12 row", farad, p.Ohm)
		}
	}
	if s := drive.SparkOf(drive.PlugIn{Volt: 21, LoopOhm: 0.03}); s != (drive.Spark{}) {
		t.Errorf("no capacitor, no spark: %+v", s)
	}
}
