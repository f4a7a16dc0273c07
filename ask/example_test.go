package ask_test

import (
	"fmt"

	"example.org/packcheck/ask"
	"example.org/packcheck/drive"
	"example.org/packcheck/tables"
)

// gist shows the figure of an answer.
func gist(a ask.Answer, err error) {
	if err != nil {
		fmt.Println(err)
		return
	}
	level := ""
	if a.Level != nil {
		level = a.Level.String() + ": "
	}
	fmt.Println(level+a.What+":", a.Figure().Text())
}

// Minutes of a 12 V 7 Ah AGM block at 9 A.
func ExampleRuntime() {
	a, err := ask.Runtime{Battery: ask.Battery{Label: "12 V 7 Ah AGM"}, CurrentA: 9}.Answer()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f min (%.0f to %.0f)\n", a.Value, a.Low, a.High)
	fmt.Println(a.Beside[1].What, a.Beside[1].Text())
	// Output:
	// 24 min (15 to 32)
	// Peukert's time 24 min (22 to 33 min)
}

// The setting of a cutoff for a tool pack on the allotment's tractor.
func ExampleCutoff() {
	a, err := ask.Cutoff{Battery: ask.Battery{Label: "20 V max 5 Ah"}, RunningA: 15, LaunchA: 60, LaunchS: 1}.Answer()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Figure().Text(), "delay", a.Beside[0].Text())
	// Output:
	// 16.3 V (14 to 16.3 V) delay 2 s (2 to 20 s)
}

// The inrush of two motors on a five-cell pack.
func ExampleBlocked() {
	gist(ask.Blocked{Battery: ask.Battery{Label: "20 V max 5 Ah"}, WindingOhm: 0.2, Motors: 2}.Answer())
	// Output:
	// fix first: blocked: 95.7 A (57.5 to 129 A)
}

// The same with a whole vehicle: the pack goes into package drive as it is.
func ExampleCircuit() {
	pack, err := ask.Battery{Label: "20 V max 5 Ah", Age: "new"}.Model()
	if err != nil {
		fmt.Println(err)
		return
	}
	vehicle := drive.Vehicle{Motor: drive.Motor{TorqueConstant: 0.0065, WindingOhm: 0.2}, Motors: 2, MotorsInSeries: 1, GearRatio: 110, GearEfficiency: 0.6, WheelRadiusM: 0.125, MassKg: 40, RollN: 15}
	c := drive.NewLaunchCase(vehicle, drive.Controller{}, ask.Circuit(pack, pack.StateAt(1, 20), 0.02), 20)
	fmt.Printf("%.0f A\n", drive.Launch(&c, 3, nil).PeakBatteryA)
	// Output:
	// 94 A
}

func ExampleLabel() {
	gist(ask.Label{Battery: ask.Battery{Label: "20 V max 5 Ah"}}.Answer())
	// Output:
	// empty, nominal, full: 18 V (15 to 21 V)
}

func ExampleRest() {
	gist(ask.Rest{Battery: ask.Battery{Label: "12 V 7 Ah"}, Volts: 12.4, HoursRested: 24}.Answer())
	gist(ask.Rest{Battery: ask.Battery{Label: "20 V max 5 Ah"}, Volts: 7}.Answer())
	// Output:
	// charge: 58 % (52 to 64 %)
	// danger: charge: 0 %
}

func ExampleWire() {
	gist(ask.Wire{CurrentA: 20, OneWayM: 3, SystemV: 12}.Answer())
	// Output:
	// gauge: 14 AWG
}

func ExampleDrop() {
	gist(ask.Drop{Wire: tables.WireSize{System: tables.AWG, Gauge: 14}, CurrentA: 20, OneWayM: 3, SystemV: 12}.Answer())
	// Output:
	// drop: 1.07 V (0.994 to 1.15 V)
}

// Two wires with the same load: one has its fuse, of the other none is right.
func ExampleFuse() {
	for _, gauge := range []int{14, 16} {
		gist(ask.Fuse{Wire: tables.WireSize{System: tables.AWG, Gauge: gauge}, RunningA: 20}.Answer())
	}
	// Output:
	// fuse: 30 A
	// fix first: most that protects the wire: 22.5 A
}

func ExampleOpened() {
	gist(ask.Opened{RatingA: 30, Seconds: 8}.Answer())
	// Output:
	// fix first: current: 45.7 A (37.4 to 55.9 A)
}

func ExampleStopped() {
	a, _ := ask.Stopped{Seconds: 20}.Answer()
	fmt.Println(a.Words[0])
	// Output:
	// First the auto-reset breaker. A bimetal breaker closes again by itself when it has cooled, pedal down or not.
}

func ExampleLost() {
	a, _ := ask.Lost{FirstV: 12.6, SecondV: 11.2, CurrentA: 15}.Answer()
	fmt.Println(a.Words[1])
	// Output:
	// That is 93.3 mOhm and 21 W of heat between the two.
}

func ExampleCharger() {
	gist(ask.Charger{Label: "14.7 V 1.5 A DC for lead-acid", Battery: ask.Battery{Label: "12 V 7 Ah"}}.Answer())
	gist(ask.Charger{Label: "14.7 V 1.5 A DC for lead-acid", Battery: ask.Battery{Label: "20 V max 5 Ah"}}.Answer())
	// Output:
	// watch: hours to full: 16 h (8 to 21 h)
	// danger: a cell wants: 4.2 V
}

func ExampleJoin() {
	b := ask.Battery{Label: "12 V 7 Ah"}
	gist(ask.Join{A: b, AV: 12.9, B: b, BV: 12.3}.Answer())
	gist(ask.Join{A: b, AV: 12.9, B: b, BV: 12.85}.Answer())
	// Output:
	// danger: flows at first: 7.5 A (4.22 to 11.3 A)
	// flows at first: 0.736 A (0.391 to 1.08 A)
}

func ExampleIdle() {
	gist(ask.Idle{Battery: ask.Battery{Label: "20 V max 5 Ah"}, StandbyA: 0.01}.Answer())
	// Output:
	// watch: harmed after: 16 days (8.3 to 20 days)
}

func ExampleWinter() {
	gist(ask.Winter{Battery: ask.Battery{Label: "12 V 7 Ah"}, Days: 150, TempC: new(10.0)}.Answer())
	// Output:
	// charge left: 95 % (88 to 97 %)
}

func ExampleOld() {
	gist(ask.Old{Battery: ask.Battery{Label: "12 V 7 Ah"}, RestV: 12.6, LoadedV: 10.2, LoadedA: 9, HoursRested: 24}.Answer())
	// Output:
	// watch: worn: 72 % (68 to 74 %)
}

func ExampleSpeed() {
	gist(ask.Speed{NoLoadRPM: 15000, Ratio: 100, WheelDiameterM: 0.25}.Answer())
	// Output:
	// wheels up: 7.1 km/h (4.4 mph)
}

func ExampleHot() {
	gist(ask.Hot{Part: ask.HotBattery, TempC: 75}.Answer())
	// Output:
	// danger: battery: 75 C (167 F)
}

func ExamplePace() {
	gist(ask.Pace{AgeYears: 5}.Answer())
	gist(ask.Pace{AgeYears: 5, SpeedMS: 4}.Answer())
	// Output:
	// too fast, from brisk to a danger: 9.7 km/h (8 to 13 km/h)
	// danger: too fast, from brisk to a danger: 9.7 km/h (8 to 13 km/h)
}

// What cannot be answered is an error, all of it at once.
func ExampleQuestion() {
	_, err := ask.Runtime{Battery: ask.Battery{Label: "12 V 600 CCA"}, CurrentA: -9}.Answer()
	fmt.Println(err)
	// Output:
	// ask: CurrentA is -9; want 0.001 to 5000 A
	// pack.label: read "12 V 600 CCA"; want a sealed deep-cycle block, told in ampere-hours such as "12 V 7 Ah" (label "12 V 600 CCA" gives 600 A of starting current: that is a starter battery, made for seconds and spoilt by deep discharges, and mostly with liquid acid, which runs out when it tips over)
}
