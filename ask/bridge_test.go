package ask_test

import (
	"math"
	"testing"

	"example.org/packcheck/ask"
	"example.org/packcheck/battery"
	"example.org/packcheck/drive"
)

// A circuit of no battery runs nothing, and no launch is computed on it.
func TestACircuitOfNoBatteryIsRefused(t *testing.T) {
	m, err := ask.Battery{Label: "12 V 7 Ah", Chemistry: "agm-traction"}.Model()
	if err != nil {
		t.Fatal(err)
	}
	v := drive.Vehicle{
		Motor:  drive.Motor{TorqueConstant: 0.0075, WindingOhm: 0.32, WindingH: 1.6e-4, NoLoadA: 1.4, RotorInertiaKgM2: 7e-6},
		Motors: 2, MotorsInSeries: 1, GearRatio: 110, GearEfficiency: 0.6, WheelRadiusM: 0.125, MassKg: 38, RollN: 26, DragNS2PerM2: 0.35,
	}
	for _, c := range []struct {
		name string
		p    drive.PackCircuit
		runs bool
	}{
		{"a full block", ask.Circuit(m, m.StateAt(1, 20), 0.02), true},
		{"no battery", ask.Circuit(nil, battery.State{}, 0.02), false},
		{"a block of no charge", ask.Circuit(m, m.StateAt(math.NaN(), 20), 0.02), false},
		{"a block of no temperature", ask.Circuit(m, m.StateAt(1, math.NaN()), 0.02), false},
	} {
		l := drive.NewLaunchCase(v, drive.Controller{}, c.p, 20)
		speedMS := drive.SteadyOn(v, drive.Controller{}, c.p, 20).SpeedMS
		if runs := l.Check() == nil; runs != c.runs || math.IsNaN(speedMS) == c.runs {
			t.Errorf("%s: launch %v, %g m/s", c.name, l.Check(), speedMS)
		}
	}
}
