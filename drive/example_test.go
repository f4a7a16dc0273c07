package drive_test

import (
	"fmt"
	"math"

	"example.org/packcheck/drive"
)

// A motor from what a data sheet prints.
func ExampleMotorFromLabel() {
	m, err := drive.MotorFromLabel(drive.MotorLabel{RatedV: 12, NoLoadRadS: 15000 * math.Pi / 30, NoLoadA: 1.5, StallA: 48})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f Ohm, %.5f N m/A\n", m.WindingOhm, m.TorqueConstant)

	_, err = drive.MotorFromLabel(drive.MotorLabel{RatedV: 12, NoLoadRadS: 15000 * math.Pi / 30})
	fmt.Println(err)
	// Output:
	// 0.250 Ohm, 0.00740 N m/A
	// drive: motor winding resistance (or stall current) missing
}

// The children's tractor of the harvest fair on its own battery.
func ExampleSteady() {
	r := drive.Steady(tractor(), drive.Controller{}, agm().Steady(), 50)
	fmt.Printf("%.1f km/h with %.1f A, %.1f V at the motors\n", r.SpeedMS*3.6, r.BatteryA, r.BusV)
	// Output:
	// 5.6 km/h with 9.6 A, 12.0 V at the motors
}

// The same tractor on a five-cell tool pack: contacts, then a chopper with a
// current limit.
func ExampleLaunch() {
	for _, c := range []drive.Controller{{}, {Chopper: true, LimitA: 25}} {
		l := drive.NewLaunchCase(tractor(), c, toolPack(), 20)
		r := drive.Launch(&l, 6, nil)
		fmt.Printf("%.0f A after %.2g s, bus down to %.1f V, %.1f km/h after 1 s\n",
			r.PeakBatteryA, r.PeakBatteryAtS, r.LowestBusV, 3.6*r.SpeedAt(1))
	}
	// Output:
	// 81 A after 0.0023 s, bus down to 13.1 V, 8.7 km/h after 1 s
	// 25 A after 1.5 s, bus down to 17.9 V, 5.0 km/h after 1 s
}

// What a chopper does not do for a 12 V board on an 18 V pack.
func ExampleBoardCheck_Findings() {
	k := drive.BoardCheck{FullV: 21, Controller: drive.Controller{Chopper: true, MaxV: 15}}
	for _, f := range k.Findings() {
		fmt.Printf("%v: %s\n%s\n", f.Level, f.Title, f.Advice)
	}
	// Output:
	// danger: The full pack's 21 V are too much for the controller: it stands 15 V.
	// Use a pack of the right voltage, or a step-down converter before it; or replace every part that sees this voltage. Driving slowly does not help: the controller's input sees the whole pack voltage at any speed.
}
