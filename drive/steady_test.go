package drive_test

import (
	"math"
	"testing"

	"example.org/packcheck/drive"
)

// tractor is the children's tractor of the Bramble Lane allotments: two motors
// in parallel, plain gears, a five-year-old on short grass.
func tractor() drive.Vehicle {
	return drive.Vehicle{
		Motor: drive.Motor{
			TorqueConstant: 0.0075, WindingOhm: 0.32, WindingH: 1.6e-4, NoLoadA: 1.4, RotorInertiaKgM2: 7e-6,
			Thermal: drive.ThermalFromTimes(drive.ThermalTimes{WindingToAirKPerW: 6.5, WindingShare: 0.3, WindingTauS: 25, CaseTauS: 600, LimitC: 120}),
		},
		Motors: 2, MotorsInSeries: 1, GearRatio: 110, GearEfficiency: 0.6, WheelRadiusM: 0.125, MassKg: 38,
		RollN: 26, DragNS2PerM2: 0.35,
	}
}

func agm() drive.PackCircuit {
	return drive.PackCircuit{OCVV: 12.9, R0Ohm: 0.032, RC: [2]drive.Branch{{Ohm: 0.012, Farad: 40}, {Ohm: 0.02, Farad: 900}}, PathOhm: 0.035}
}

func toolPack() drive.PackCircuit {
	return drive.PackCircuit{OCVV: 20.4, R0Ohm: 0.055, RC: [2]drive.Branch{{Ohm: 0.02, Farad: 50}, {Ohm: 0.015, Farad: 2500}}, PathOhm: 0.035}
}

// Sources: J. B. Gupta, Elements of Electric Drives, Ex. 18 and 17, p. 235, and
// Ex. 21, p. 236 (read in worked copies).
func TestChopperExamplesFromTextbooks(t *testing.T) {
	m := drive.Motor{TorqueConstant: 4, WindingOhm: 0.1}
	r := run(fan(m, 600, 537.15*rpm), drive.Controller{Chopper: true, LimitA: 150}, drive.Source{OCVV: 400})
	near(t, "Ex. 18: duty", r.Duty, 0.6, 0.0005)
	near(t, "Ex. 18: input, kW", r.BatteryA*r.BusV/1000, 36.0, 0.05)
	near(t, "Ex. 18: speed, rpm", r.SpeedMS/rpm, 537, 0.5)
	near(t, "Ex. 18: torque, N m", r.WheelN, 600, 0.5)
	near(t, "Ex. 18: supply current is duty times motor current, A", r.BatteryA, 90, 0.09)

	m = drive.Motor{TorqueConstant: (200 - 100*0.02) / (940 * rpm), WindingOhm: 0.02}
	r = run(fan(m, m.TorqueConstant*100, 500*rpm), drive.Controller{Chopper: true, LimitA: 100}, drive.Source{OCVV: 200})
	near(t, "Ex. 17: duty", r.Duty, 0.5366, 0.00005)

	m = drive.Motor{TorqueConstant: 1, WindingOhm: 0.2}
	r = run(fan(m, 25, 100), drive.Controller{Chopper: true, LimitA: 25}, drive.Source{OCVV: 220})
	near(t, "Ex. 21: on time, ms", 1e3*drive.Pulses{Duty: r.Duty, FrequencyHz: 200}.OnS(), 2.39, 0.005)
}

func TestPulseExamplesFromTextbooks(t *testing.T) {
	// J. B. Gupta, Ex. 15, p. 234: 10 A of ripple at 15 Hz.
	near(t, "ripple, A", drive.Pulses{BusV: 400, Duty: 0.25, FrequencyHz: 15, Henry: 0.5}.RippleA(), 10, 0.05)
	// Gupta, Ex. 12, p. 226: 10 Ohm at duty 0.4 looks like 25 Ohm.
	near(t, "seen Ohm, resistor", drive.Pulses{Duty: 0.4}.SeenOhm(10, false), 25, 0.05)
	// The smooth-current form, from memory, must agree with steady running.
	m := drive.Motor{TorqueConstant: 1e-9, WindingOhm: 10}
	r := drive.BlockedWheels(bench(m, 0), drive.Controller{Chopper: true, LimitA: 4}, drive.PackCircuit{OCVV: 100}, drive.HeatState{WindingC: 20}, 20)
	near(t, "seen Ohm, motor", 100/r.BatteryA, drive.Pulses{Duty: 0.4}.SeenOhm(10, true), 1e-6)
	// P. C. Sen, Ex. 4.13, p. 195: the least duty of a 120 V, 20 A, 0.5 Ohm motor is 0.083.
	m = drive.Motor{TorqueConstant: 0.05 / rpm, WindingOhm: 0.5}
	r = drive.BlockedWheels(bench(m, 0), drive.Controller{Chopper: true, LimitA: 20}, drive.PackCircuit{OCVV: 120}, drive.HeatState{WindingC: 20}, 20)
	near(t, "least duty", r.BatteryA/r.MotorA, 0.083, 0.0005)
}

// Common practice: the printed no-load speed does not predict speed on the
// ground. Both motors are 12 V motors of one can size.
func TestMotorWithTheHigherPrintedSpeedIsSlowerOnTheGround(t *testing.T) {
	eager := mustMotor(t, drive.MotorLabel{RatedV: 12, NoLoadRadS: 15500 * rpm, NoLoadA: 1.2, WindingOhm: 0.75})
	calm := mustMotor(t, drive.MotorLabel{RatedV: 12, NoLoadRadS: 14000 * rpm, NoLoadA: 1.2, WindingOhm: 0.25})
	v := tractor()
	v.Motor = eager
	fast := run(v, drive.Controller{}, agm().Steady())
	v.Motor = calm
	slow := run(v, drive.Controller{}, agm().Steady())
	if !(slow.SpeedMS > fast.SpeedMS*1.1) || fast.Stuck {
		t.Errorf("printed 15500 rpm: %.2f m/s, printed 14000 rpm: %.2f m/s", fast.SpeedMS, slow.SpeedMS)
	}
	// Computed trade figure: equal no-load speed, 12 V, 10 A: 0.14 Ohm keeps 88 %
	// of the speed, 0.5 Ohm keeps 58 %.
	for ohm, want := range map[float64]float64{0.14: 0.88, 0.5: 0.58} {
		m := drive.Motor{TorqueConstant: 0.008, WindingOhm: ohm}
		near(t, "share of speed kept", m.SpeedRadS(12, 10*0.008)/m.NoLoadRadS(12), want, 0.005)
	}
}

func TestSteadyRunningClosesEveryBalance(t *testing.T) {
	for _, c := range []struct {
		name string
		edit func(*drive.Vehicle, *drive.Controller)
	}{
		{"plain", func(*drive.Vehicle, *drive.Controller) {}},
		{"slope", func(v *drive.Vehicle, _ *drive.Controller) { v.GradeN = 40 }},
		{"downhill", func(v *drive.Vehicle, _ *drive.Controller) { v.GradeN = -60 }},
		{"series", func(v *drive.Vehicle, _ *drive.Controller) { v.MotorsInSeries = 2 }},
		{"no drag", func(v *drive.Vehicle, _ *drive.Controller) { v.DragNS2PerM2 = 0 }},
		{"limit", func(v *drive.Vehicle, c *drive.Controller) { v.DragNS2PerM2, c.LimitA = 30, 15 }},
		{"controller with resistance", func(_ *drive.Vehicle, c *drive.Controller) { c.Ohm = 0.02 }},
	} {
		v, ctl := tractor(), drive.Controller{}
		c.edit(&v, &ctl)
		s := agm().Steady()
		r := run(v, ctl, s)
		e := v.Equivalent(drive.ReferenceC)
		near(t, c.name+": bus volts", r.BusV, s.OCVV-(s.Ohm+ctl.Ohm)*r.BatteryA, 1e-9)
		near(t, c.name+": motor volts", r.Duty*r.BusV, e.Ohm*r.MotorA+e.VoltPerMS*r.SpeedMS, 1e-9)
		near(t, c.name+": force", r.WheelN, v.RollN+v.GradeN+v.DragNS2PerM2*r.SpeedMS*r.SpeedMS, 1e-9)
		near(t, c.name+": motor speed", r.MotorRadS, r.SpeedMS*110/0.125, 1e-9)
		heat := (s.Ohm+ctl.Ohm)*r.BatteryA*r.BatteryA + 2*r.CopperW
		// Whatever side drives, the gears keep their share of what goes in.
		friction := e.LossN / v.GearEfficiency * r.SpeedMS
		shafts, wheels := e.VoltPerMS*r.SpeedMS*r.MotorA-friction, r.WheelN*r.SpeedMS
		gears := (1 - v.GearEfficiency) * math.Max(shafts, -wheels)
		near(t, c.name+": power", s.OCVV*r.BatteryA, heat+friction+gears+wheels, 1e-7)
		near(t, c.name+": no-load loss", 2*r.NoLoadW, friction, 1e-9)
		if c.name == "limit" && !(r.Duty < 1 && math.Abs(r.MotorA-15) < 1e-9) {
			t.Errorf("limit: duty %v, %v A", r.Duty, r.MotorA)
		}
	}
}

// Kirchhoff: plain contacts cannot chop, however many of the volts the source takes.
func TestContactsBehindATiredPackPassAllOfTheMotorsCurrent(t *testing.T) {
	for name, edit := range map[string]func(*drive.Vehicle){
		"crawling":    func(v *drive.Vehicle) { v.GradeN = 60 },
		"held":        func(v *drive.Vehicle) { v.GradeN = 900 },
		"wheels spin": func(v *drive.Vehicle) { v.GradeN, v.GripN = 100, 80 },
	} {
		v := tractor()
		edit(&v)
		e := v.Equivalent(drive.ReferenceC)
		s := drive.Source{OCVV: 12.9, Ohm: 2 * e.Ohm}
		r := run(v, drive.Controller{}, s)
		near(t, name+": battery current, A", r.BatteryA, r.MotorA, 1e-12)
		if r.Stuck != (name != "crawling") || r.Slipping != (name == "wheels spin") {
			t.Errorf("%s: %+v", name, r)
		}
		near(t, name+": volts round the loop", s.OCVV, (s.Ohm+e.Ohm)*r.MotorA+e.VoltPerMS*r.WheelMS, 1e-9)
	}
}

func TestSteadyRunningTellsStuckAndSpinning(t *testing.T) {
	v := tractor()
	v.GradeN = 900
	r := run(v, drive.Controller{}, agm().Steady())
	want := 12.9 / (agm().Steady().Ohm + v.Equivalent(20).Ohm)
	if !r.Stuck || r.SpeedMS != 0 {
		t.Errorf("a wall of a slope: %+v", r)
	}
	near(t, "stuck current is the blocked one, A", r.BatteryA, want, 1e-9)

	v.GradeN, v.GripN = 150, 100
	r = run(v, drive.Controller{}, agm().Steady())
	if !r.Slipping || !r.Stuck || !(r.WheelMS > 0) || r.SpeedMS != 0 {
		t.Errorf("wet grass uphill: %+v", r)
	}
	v.GripN = 200
	if r = run(v, drive.Controller{}, agm().Steady()); r.Slipping || r.Stuck {
		t.Errorf("dry grass uphill: %+v", r)
	}
}

func TestConverterHoldsTheBoardsVoltsAndTakesPowerFromThePack(t *testing.T) {
	v := tractor()
	direct := run(v, drive.Controller{}, drive.Source{OCVV: 12})
	c := drive.Controller{Converter: drive.Converter{OutV: 12, LimitA: 40, Efficiency: 0.9}}
	r := run(v, c, toolPack().Steady())
	near(t, "speed behind the converter", r.SpeedMS, direct.SpeedMS, 1e-9)
	near(t, "board volts", r.BusV, 12, 1e-9)
	s := toolPack().Steady()
	near(t, "power in, W", (s.OCVV-s.Ohm*r.BatteryA)*r.BatteryA*0.9, 12*direct.BatteryA, 1e-6)
	if !(r.BatteryA < direct.BatteryA) {
		t.Error("a higher pack voltage must take less current for the same power")
	}
	low := run(v, c, drive.Source{OCVV: 11, Ohm: 0.1})
	near(t, "of a pack below the converter's output comes through what is not lost", low.BusV, 0.9*(11-0.1*low.BatteryA), 1e-9)
	for _, speed := range [...]func(volts float64) float64{
		func(volts float64) float64 { return run(v, c, drive.Source{OCVV: volts, Ohm: 0.1}).SpeedMS },
		func(volts float64) float64 {
			l := drive.NewLaunchCase(v, c, drive.PackCircuit{OCVV: volts, R0Ohm: 1e-9}, 20)
			return drive.Launch(&l, 3, nil).EndMS
		},
	} {
		last := speed(11)
		for volts := 11.01; volts < 16; volts += 0.01 {
			now := speed(volts)
			if now < last*(1-1e-9) || now > last*1.002 {
				t.Errorf("at %.2f V: from %g to %g m/s; nothing jumps as a converter comes to regulate", volts, last, now)
			}
			last = now
		}
	}
	c.Converter.LimitA = 5
	if r := run(v, c, toolPack().Steady()); !r.Stuck {
		t.Errorf("a converter that cannot give the running current leaves it standing: %+v", r)
	}
}

func TestMoreVoltsAreFasterAndMoreLoadIsSlower(t *testing.T) {
	last := 0.0
	for volt := 6.0; volt <= 36; volt += 0.5 {
		r := run(tractor(), drive.Controller{}, drive.Source{OCVV: volt, Ohm: 0.08})
		if r.SpeedMS <= last {
			t.Errorf("at %v V %.3f m/s, not above %.3f", volt, r.SpeedMS, last)
		}
		last = r.SpeedMS
	}
	last = math.Inf(1)
	for roll := 0.0; roll < 400; roll += 10 {
		v := tractor()
		v.RollN = roll
		r := run(v, drive.Controller{}, agm().Steady())
		if r.SpeedMS > last || r.SpeedMS == last && !r.Stuck {
			t.Errorf("with %v N %.3f m/s, not below %.3f", roll, r.SpeedMS, last)
		}
		last = r.SpeedMS
	}
}
