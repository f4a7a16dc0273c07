package ride

import (
	"math"
	"testing"

	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
)

func TestTheSameCaseGivesTheSameOutcome(t *testing.T) {
	c := tractorCase(t)
	if a, b := Run(&c, nil), Run(&c, nil); a != b {
		t.Errorf("two runs differ:\n%+v\n%+v", a, b)
	}
}

func TestATraceChangesNothing(t *testing.T) {
	c := tractorCase(t)
	rows := 0
	traced := Run(&c, func(Sample) { rows++ })
	if traced != Run(&c, nil) {
		t.Error("a traced run differs from an untraced one")
	}
	if rows < 100 {
		t.Errorf("%d rows, want one a step", rows)
	}
}

// The figure that a report prints must not hang on the step length.
func TestHalvingEveryStepMovesTheRideByLessThanHalfAPercent(t *testing.T) {
	ramped := tractorCase(t)
	ramped.Controller = drive.Controller{Chopper: true, RampS: 1.5, LimitA: 35}
	cut := tractorCase(t)
	cut.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Pack, OpensAtV: 15})
	lead := tractorCase(t)
	lead.Pack = pack(t, "agm", 6, 7)
	for name, c := range map[string]Case{"contacts": tractorCase(t), "ramp and limit": ramped, "cutoff": cut, "lead-acid": lead} {
		whole, half := run(&c, nil, 1), run(&c, nil, 0.5)
		near(t, name+": pedal time", whole.PedalS, half.PedalS, 0.005)
		near(t, name+": distance", whole.DistanceM, half.DistanceM, 0.005)
		near(t, name+": charge", whole.DeliveredAh, half.DeliveredAh, 0.005)
	}
}

func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: got %g, want %g within %g %%", what, got, want, 100*share)
	}
}

func chain(t testing.TB, d ...cutoff.Device) cutoff.Chain {
	t.Helper()
	c, err := cutoff.NewChain(d...)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestChargeTakenIsChargeGone(t *testing.T) {
	for _, chem := range []struct {
		name  string
		cells int
		ah    float64
	}{{"li-ion", 5, 5}, {"agm", 6, 7}, {"lifepo4", 4, 6}, {"nimh", 10, 4}} {
		c := tractorCase(t)
		c.Pack = pack(t, chem.name, chem.cells, chem.ah)
		start := c.Pack.StateAt(1, c.PackC)
		out := Run(&c, nil)
		gone := start.Y1Ah + start.Y2Ah - out.State.Y1Ah - out.State.Y2Ah
		near(t, chem.name, out.DeliveredAh, gone, 1e-9)
	}
}

func TestMoreLoadNeverLengthensTheRide(t *testing.T) {
	c := tractorCase(t)
	last := math.Inf(1)
	for kg := 30.0; kg <= 90; kg += 10 {
		c.Vehicle.MassKg = kg
		c.Vehicle.RollN = drive.RollingN(drive.Rolling{MassKg: kg, HardWheelM: 0.006, WheelRadiusM: c.Vehicle.WheelRadiusM})
		out := Run(&c, nil)
		if out.PedalS > last {
			t.Errorf("%g kg rides %g s, longer than the lighter vehicle's %g s", kg, out.PedalS, last)
		}
		last = out.PedalS
	}
}

func TestMoreBenchCurrentNeverLastsLonger(t *testing.T) {
	for _, chem := range []string{"li-ion", "agm"} {
		c := Case{Pack: pack(t, chem, 6, 7), StartCharge: 1, PackC: 25, AmbientC: 25}
		c.UntilV = c.Pack.EmptyV()
		last := math.Inf(1)
		for a := 0.35; a < 30; a *= 1.5 {
			c.Load = Load{Kind: ConstantCurrent, Amount: a}
			out := Run(&c, nil)
			if out.ClockS > last {
				t.Errorf("%s: %g A lasts %g s, longer than less current's %g s", chem, a, out.ClockS, last)
			}
			last = out.ClockS
		}
	}
}

// Common practice, no published source: with the same load, time goes with
// amp-hours. 12 Ah against 1.5 Ah at 18 V is about eight times.
func TestRideTimeGoesWithAmpHours(t *testing.T) {
	c := tractorCase(t)
	c.Pack = pack(t, "li-ion", 5, 12)
	long := Run(&c, nil).PedalS
	c.Pack = pack(t, "li-ion", 5, 1.5)
	short := Run(&c, nil).PedalS
	if ratio := long / short; ratio < 7 || ratio > 10.5 {
		t.Errorf("12 Ah over 1.5 Ah: %.2f times, want about eight", ratio)
	}
}

func TestASecondCutoffNeverMakesThingsWorse(t *testing.T) {
	c := tractorCase(t)
	first := cutoff.Device{Where: cutoff.Pack, OpensAtV: 12.5, DelayS: 1}
	c.Cutoffs = chain(t, first)
	alone := Run(&c, nil)
	for _, v := range []float64{11, 12.5, 14, 15, 16} {
		for _, delay := range []float64{0, 2, 10} {
			c.Cutoffs = chain(t, first, cutoff.Device{Where: cutoff.Module, OpensAtV: v, DelayS: delay})
			both := Run(&c, nil)
			// At rest: the moment of opening may be one of more current.
			cell := func(o Outcome) float64 { return c.Pack.WeakestCellV(&o.State, 0) }
			if cell(both) < cell(alone)-1e-3 || both.ChargeLeft < alone.ChargeLeft-1e-4 {
				t.Errorf("module at %g V, %g s: weakest cell %.3f V with %.4f left, alone %.3f V with %.4f",
					v, delay, cell(both), both.ChargeLeft, cell(alone), alone.ChargeLeft)
			}
		}
	}
}

func TestAHigherCutoffLeavesMoreInThePack(t *testing.T) {
	c := tractorCase(t)
	last := -1.0
	for v := 13.0; v <= 17; v++ {
		c.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Controller, OpensAtV: v, DelayS: 3})
		out := Run(&c, nil)
		if out.EndedBy != CutoffOpened || out.OpenedFirst != cutoff.Controller {
			t.Errorf("%g V: ended by %v in the %v", v, out.EndedBy, out.OpenedFirst)
		}
		if out.ChargeLeft <= last {
			t.Errorf("%g V leaves %g, no more than the lower cutoff's %g", v, out.ChargeLeft, last)
		}
		last = out.ChargeLeft
	}
}

func TestASlopeThatIsTooSteepEndsTheOutingAtOnce(t *testing.T) {
	c := tractorCase(t)
	c.Vehicle.GradeN = 5000
	out := Run(&c, nil)
	if out.EndedBy != CannotMove || out.DistanceM != 0 {
		t.Errorf("ended by %v after %g m, want %v after 0 m", out.EndedBy, out.DistanceM, CannotMove)
	}
}

func TestTheWantedTimeEndsTheOutingOnTheSecond(t *testing.T) {
	c := tractorCase(t)
	for _, want := range []float64{10, 25, 30, 35, 601} {
		c.WantedS = want
		out := Run(&c, nil)
		near(t, "clock", out.ClockS, want, 1e-9)
		if out.EndedBy != WantedReached {
			t.Errorf("%g s: ended by %v", want, out.EndedBy)
		}
		full, part := math.Floor(want/35), math.Mod(want, 35)
		near(t, "pedal", out.PedalS, full*25+math.Min(part, 25), 1e-6)
	}
}

// With the motors' speed settled, the outing's last speed is the one that
// steady running finds for the pack as it then is.
func TestALongDriveSettlesToSteadyRunning(t *testing.T) {
	c := tractorCase(t)
	c.DriveS, c.PauseS, c.WantedS = 60, 0, 60
	c.Vehicle.Motor.Thermal = drive.Thermal{}
	out := Run(&c, nil)
	s := out.State
	steady := drive.Steady(c.Vehicle, c.Controller, drive.Source{
		OCVV: c.Pack.EMF(&s), Ohm: c.Pack.SourceOhm(&s) + c.PathOhm,
	}, 20)
	near(t, "speed", out.FinalSpeed, steady.SpeedMS, 0.005)
}

// A quasi-static start and the full transient with the winding's inductance
// must agree on where they arrive.
func TestTheOutingsStartAgreesWithTheFullLaunch(t *testing.T) {
	for name, ctl := range map[string]drive.Controller{
		"contacts":       {},
		"ramp":           {Chopper: true, RampS: 1.5},
		"limit":          {Chopper: true, LimitA: 30},
		"ramp and limit": {Chopper: true, RampS: 0.8, LimitA: 30},
		"two ramps":      {Chopper: true, RampS: 1, ModuleRampS: 0.7},
	} {
		c := tractorCase(t)
		c.Controller = ctl
		c.DriveS, c.PauseS, c.WantedS = 6, 0, 6
		c.Vehicle.Motor.Thermal = drive.Thermal{}
		out := Run(&c, nil)
		l := c.LaunchCase()
		full := drive.Launch(&l, 6, nil)
		near(t, name+": speed after 6 s", out.FinalSpeed, full.EndMS, 0.01)
	}
}

func TestRunAllocatesNothing(t *testing.T) {
	c := tractorCase(t)
	c.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Pack, OpensAtV: 14})
	if n := testing.AllocsPerRun(10, func() { See(&c, nil) }); n != 0 {
		t.Errorf("%g allocations per case, want none", n)
	}
}

func TestTheRecordedSagIsThatOfTheLaunchAndAllocatesNothing(t *testing.T) {
	c := tractorCase(t)
	c.StartCharge = 0.3
	launch := c.LaunchCase()
	r := drive.Launch(&launch, c.LaunchSeconds(), nil)
	c.StartCharge = 1
	var atPack, atBus cutoff.Recorder
	if n := testing.AllocsPerRun(10, func() { c.RecordSag(0.3, &atPack, &atBus) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
	near(t, "lowest bus volts", atBus.LowestV(), r.LowestBusV, 0.002)
	if !(atPack.LowestV() > atBus.LowestV()) || atBus.SecondsBelow(r.SteadyMS) != 0 || !(atBus.SecondsBelow(100) > c.LaunchSeconds()-0.1) {
		t.Errorf("pack %g V, bus %g V", atPack.LowestV(), atBus.LowestV())
	}
}
