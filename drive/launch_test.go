package drive_test

import (
	"math"
	"testing"

	"example.org/packcheck/drive"
)

// bare is a launch without polarisation, drag, friction or grip: linear, so
// that closed forms exist.
func bare() drive.LaunchCase {
	return drive.LaunchCase{
		OCVV: 12, R0Ohm: 0.05, PathOhm: 0.03, Motors: 2, MotorsInSeries: 1,
		WindingOhm: 0.3, WindingH: 2e-4, TorqueConstant: 0.008,
		GearRatio: 100, GearEfficiency: 0.6, WheelRadiusM: 0.125, MassKg: 40,
	}
}

func launched(t *testing.T, c drive.LaunchCase, durationS float64) drive.LaunchResult {
	t.Helper()
	r := drive.Launch(&c, durationS, nil)
	if r.Incomplete {
		t.Fatalf("launch given up: %v", c.Check())
	}
	return r
}

// Closed form: a blocked motor is a resistor and an inductor.
func TestBlockedLaunchIsTheRLRise(t *testing.T) {
	c := bare()
	c.GradeN = 1e6
	ohm, tau := 0.05+0.03+0.15, 1e-4/(0.05+0.03+0.15)
	worst := 0.0
	r := drive.Launch(&c, 0.05, func(s drive.LaunchSample) {
		worst = math.Max(worst, math.Abs(s.MotorA+12/ohm*math.Expm1(-s.TimeS/tau)))
	})
	if r.Moved || r.Incomplete {
		t.Fatalf("%+v", r)
	}
	near(t, "greatest distance from V/R (1 - exp(-t/tau)), A", worst, 0, 1e-4*12/ohm)
	near(t, "final current is V/R", r.PeakBatteryA, 12/ohm, 1e-4*12/ohm)
}

// Closed form: one branch of polarisation behind a blocked motor.
func TestPolarisationLowersTheBlockedCurrentWithItsTimeConstant(t *testing.T) {
	c := bare()
	c.GradeN = 1e6
	c.RC[0] = drive.Branch{Ohm: 0.04, Farad: 50}
	ohm := 0.05 + 0.03 + 0.15
	end := 12 / (ohm + 0.04)
	tau := 0.04 * 50 * ohm / (ohm + 0.04)
	drive.Launch(&c, 5, func(s drive.LaunchSample) {
		if s.TimeS > 0.02 {
			near(t, "A", s.MotorA, end+(12/ohm-end)*math.Exp(-s.TimeS/tau), 0.02)
		}
	})
}

// Closed form: current and speed are the two exponentials of a linear circuit.
func TestContactLaunchIsTwoExponentials(t *testing.T) {
	c := bare()
	e := c.Equivalent()
	ohm := e.Ohm + 0.08
	// L i” + R i' + k N/M i = 0
	half := ohm / (2 * e.Henry)
	gap := math.Sqrt(half*half - e.VoltPerMS*e.NewtonPerA/(e.InertiaKg*e.Henry))
	fast, slow := half+gap, half-gap
	at := math.Log(fast/slow) / (fast - slow)
	current := func(t float64) float64 { return 12 / e.Henry * (math.Exp(-slow*t) - math.Exp(-fast*t)) / (fast - slow) }
	speed := func(t float64) float64 {
		return 12 / e.VoltPerMS * (1 - (fast*math.Exp(-slow*t)-slow*math.Exp(-fast*t))/(fast-slow))
	}
	r := launched(t, c, 6)
	near(t, "peak, A", r.PeakBatteryA, current(at), 1e-4*current(at))
	near(t, "time of the peak, s", r.PeakBatteryAtS, at, 2e-3*at)
	near(t, "lowest bus, V", r.LowestBusV, 12-0.08*current(at), 1e-3)
	for k, when := range drive.SpeedTimesS() {
		if when <= 6 {
			near(t, "speed, m/s", r.SpeedMS[k], speed(when), 2e-4*speed(6))
		}
	}
	near(t, "final speed is that of steady running", r.EndMS, r.SteadyMS, 1e-3*r.SteadyMS)
	near(t, "when 90 % were reached", speed(r.To90S), 0.9*r.SteadyMS, 1e-3*r.SteadyMS)
	// Two exponentials squared and summed: what a fuse sees.
	pulse := math.Pow(12/e.Henry/(fast-slow), 2) * (1/(2*slow) + 1/(2*fast) - 2/(slow+fast))
	near(t, "pulse, A2s", r.SurgeA2S, pulse, 1e-3*pulse)
	near(t, "charge above steady, C", r.ExtraC, e.InertiaKg*speed(6)/e.NewtonPerA, 1e-3*e.InertiaKg*speed(6)/e.NewtonPerA)
}

// Closed form: a held current is a constant force.
func TestLimitedLaunchWithoutDragIsAConstantForceStart(t *testing.T) {
	c := bare()
	c.LimitA, c.RollN, c.NoLoadA, c.RotorInertiaKgM2 = 15, 12, 1.2, 8e-6
	e := c.Equivalent()
	a := (e.NewtonPerA*15 - e.LossN - 12) / e.InertiaKg
	r := drive.Launch(&c, 6, func(s drive.LaunchSample) {
		if s.Duty < 0.999 && s.MotorA > 14.9999 {
			near(t, "speed, m/s", s.SpeedMS, a*s.TimeS, 1e-3*a)
		}
	})
	near(t, "speed after 1 s, m/s", r.SpeedAt(1), a, 1e-3*a)
	near(t, "motor current never passes its limit, A", r.PeakMotorA, 15, 1e-9)
	near(t, "push on the ground, N", r.PeakWheelN, 40*a+12, 1e-3*(40*a+12))
	near(t, "torque of a pinion", r.PeakPinionNM, r.PeakWheelN*0.125/(0.6*100*2), 1e-9)
}

func TestTimeAboveALimitIsWhatTheTraceShows(t *testing.T) {
	c := bare()
	e := c.Equivalent()
	r := launched(t, c, 6)
	c.Limits = drive.Limits{PackA: 20, JointA: 10, SwitchA: 1e4, ControllerContinuousA: 25, ControllerPeakA: r.PeakMotorA * 1.001}
	got := launched(t, c, 6).Above
	// After the first milliseconds the current falls as one exponential.
	half := (e.Ohm + 0.08) / (2 * e.Henry)
	gap := math.Sqrt(half*half - e.VoltPerMS*e.NewtonPerA/(e.InertiaKg*e.Henry))
	falls := func(a float64) float64 { return math.Log(12/e.Henry/(2*gap)/a) / (half - gap) }
	rises := func(a float64) float64 { return -math.Log1p(-a*2*gap*e.Henry/12) / (half + gap) } // the slow part still whole
	for a, s := range map[float64]float64{20: got.PackS, 10: got.JointS, 25: got.ControllerContinuousS} {
		near(t, "seconds above", s, falls(a)-rises(a), 2e-3*falls(a))
	}
	if got.SwitchS != 0 || got.ControllerPeakS != 0 {
		t.Errorf("never above these: %+v", got)
	}
}

func TestSlowerRampGivesALowerPeakAndTheSameEnd(t *testing.T) {
	last := math.Inf(1)
	for _, ramp := range []float64{0, 0.05, 0.2, 0.5, 1, 2, 4} {
		c := netlistCase(t, "ramp")
		c.RampS = ramp
		r := launched(t, c, 10)
		if r.PeakBatteryA >= last {
			t.Errorf("ramp of %v s: peak %.2f A, not below %.2f", ramp, r.PeakBatteryA, last)
		}
		last = r.PeakBatteryA
		near(t, "speed in the end", r.EndMS, 2.85, 0.01)
	}
	// Yet a ramp bounds nothing: blocked, the current is V/R whatever the ramp.
	c := netlistCase(t, "ramp")
	c.GradeN = 1e6
	near(t, "blocked behind a ramp, A", launched(t, c, 2).PeakMotorA, 20.4/(0.055+0.035+0.16), 3)
	c.LimitA = 30
	near(t, "blocked behind a limit, A", launched(t, c, 2).PeakMotorA, 30, 1e-6)
}

func TestLaunchGetsHarderWithVoltsAndSofterWithResistance(t *testing.T) {
	lastPeak, lastSpeed := 0.0, 0.0
	for volt := 6.0; volt < 30; volt += 1.5 {
		c := netlistCase(t, "contacts")
		c.OCVV = volt
		r := launched(t, c, 6)
		if r.PeakBatteryA <= lastPeak || r.EndMS <= lastSpeed {
			t.Errorf("%v V: %v A, %v m/s not above %v, %v", volt, r.PeakBatteryA, r.EndMS, lastPeak, lastSpeed)
		}
		lastPeak, lastSpeed = r.PeakBatteryA, r.EndMS
	}
	lastPeak = math.Inf(1)
	for ohm := 0.0; ohm < 0.5; ohm += 0.02 {
		c := netlistCase(t, "contacts")
		c.PathOhm = ohm
		r := launched(t, c, 6)
		if r.PeakBatteryA >= lastPeak {
			t.Errorf("%v Ohm: %v A not below %v", ohm, r.PeakBatteryA, lastPeak)
		}
		lastPeak = r.PeakBatteryA
	}
	lastTime := 0.0
	for mass := 20.0; mass < 120; mass += 10 {
		c := netlistCase(t, "contacts")
		c.MassKg = mass
		r := launched(t, c, 20)
		if r.To90S <= lastTime {
			t.Errorf("%v kg: 90 %% after %v s, not later than %v", mass, r.To90S, lastTime)
		}
		lastTime = r.To90S
	}
}

// Common practice: a lithium pack hits harder at launch than sealed lead-acid
// of the same voltage, because it is stiffer.
func TestLithiumHitsHarderThanLeadAcidOfTheSameVoltage(t *testing.T) {
	lithium, lead := netlistCase(t, "lithium"), netlistCase(t, "lead-acid")
	if lithium.OCVV != lead.OCVV {
		t.Fatal("the pair must have one voltage")
	}
	hard, soft := launched(t, lithium, 6), launched(t, lead, 6)
	if !(hard.PeakBatteryA > 1.2*soft.PeakBatteryA && hard.PeakPinionNM > 1.2*soft.PeakPinionNM) {
		t.Errorf("lithium %.1f A, lead-acid %.1f A", hard.PeakBatteryA, soft.PeakBatteryA)
	}
}

// Lumping must not change anything: n motors as wired are one motor.
func TestMotorsAsWiredAreOneMotor(t *testing.T) {
	two := bare()
	two.NoLoadA, two.RotorInertiaKgM2, two.RollN = 1.2, 8e-6, 12
	one := two
	one.Motors = 1
	one.WindingOhm, one.WindingH = two.WindingOhm/2, two.WindingH/2
	one.NoLoadA, one.RotorInertiaKgM2 = two.NoLoadA*2, two.RotorInertiaKgM2*2
	a, b := launched(t, two, 6), launched(t, one, 6)
	near(t, "peak", a.PeakBatteryA, b.PeakBatteryA, 1e-9)
	near(t, "speed", a.EndMS, b.EndMS, 1e-9)
	near(t, "each of two pinions bears half", a.PeakPinionNM, b.PeakPinionNM/2, 1e-9)
	series := two
	series.MotorsInSeries = 2
	twice := series
	twice.MotorsInSeries, twice.OCVV, twice.R0Ohm, twice.PathOhm = 1, series.OCVV/2, series.R0Ohm/4, series.PathOhm/4
	c, d := launched(t, series, 6), launched(t, twice, 6)
	near(t, "in series: half the current of parallel motors on half the volts", c.PeakBatteryA, d.PeakBatteryA/2, 1e-6*d.PeakBatteryA)
	near(t, "and the same speed", c.EndMS, d.EndMS, 1e-6)
}

func TestGripBoundsThePush(t *testing.T) {
	c := netlistCase(t, "wheelspin")
	r := launched(t, c, 6)
	if !r.Slipped || !r.Moved {
		t.Fatalf("%+v", r)
	}
	near(t, "push, N", r.PeakWheelN, c.GripN, 1e-3*c.GripN)
	c.GripN = 1e5
	free := launched(t, c, 6)
	c.GripN = 0
	same := launched(t, c, 6)
	near(t, "much grip is no limit", free.PeakBatteryA, same.PeakBatteryA, 1e-9)
	c.GripN, c.GradeN = 50, 80
	if r := launched(t, c, 6); r.Moved || !r.Slipped || r.EndMS != 0 {
		t.Errorf("less grip than slope: it spins on the spot: %+v", r)
	}
}

func TestStandingVehicleIsHeld(t *testing.T) {
	c := netlistCase(t, "contacts")
	c.GradeN = 250
	r := launched(t, c, 6)
	if r.Moved || r.EndMS != 0 || r.To90S != 0 {
		t.Errorf("too steep, it must stand and not roll back: %+v", r)
	}
	near(t, "blocked current, A", r.PeakBatteryA, 12.9/(0.032+0.035+0.16), 0.1)
	c.GradeN = -40
	if r := launched(t, c, 6); !r.Moved {
		t.Errorf("downhill it rolls off: %+v", r)
	}
	// The limiter may hold the current below what the ground asks for.
	c = netlistCase(t, "limit")
	c.LimitA = 3
	if r := launched(t, c, 6); r.Moved || math.Abs(r.PeakMotorA-3) > 1e-9 {
		t.Errorf("3 A cannot move it: %+v", r)
	}
}

func TestSpeedAtHoldsBetweenAndBeyondItsMarks(t *testing.T) {
	r := launched(t, netlistCase(t, "contacts"), 3)
	near(t, "before the start", r.SpeedAt(-1), 0, 0)
	near(t, "between marks", r.SpeedAt(1.5), (r.SpeedAt(1)+r.SpeedAt(2))/2, 1e-12)
	near(t, "after the run", r.SpeedAt(8), r.EndMS, 0)
	near(t, "long after", r.SpeedAt(100), r.EndMS, 0)
	near(t, "not a number", r.SpeedAt(math.NaN()), 0, 0)
}

func TestNewLaunchCaseCarriesEverything(t *testing.T) {
	v, p := tractor(), toolPack()
	v.GradeN, v.GripN = 5, 90
	ctl := drive.Controller{Chopper: true, RampS: 0.7, ModuleRampS: 0.3, LimitA: 60, Ohm: 0.01, ContinuousA: 30, PeakA: 50}
	c := drive.NewLaunchCase(v, ctl, p, 60)
	if err := c.Check(); err != nil {
		t.Fatal(err)
	}
	near(t, "warm winding", c.WindingOhm, v.Motor.OhmAt(60), 1e-12)
	near(t, "controller counts with the path", c.PathOhm, p.PathOhm+0.01, 1e-12)
	if c.Equivalent() != v.Equivalent(60) {
		t.Errorf("%+v, want %+v", c.Equivalent(), v.Equivalent(60))
	}
	if c.RampS != 0.7 || c.ModuleRampS != 0.3 || c.LimitA != 60 || c.GripN != 90 || c.GradeN != 5 || c.Limits.ControllerPeakA != 50 || c.RC != p.RC {
		t.Errorf("lost something: %+v", c)
	}
	ctl.Converter = drive.Converter{OutV: 12, LimitA: 25}
	c = drive.NewLaunchCase(v, ctl, p, 20)
	if c.OCVV != 12 || c.R0Ohm != 0 || c.LimitA != 25 || c.PathOhm != 0.01 || c.ModuleRampS != 0 {
		t.Errorf("behind the converter the source is the converter: %+v", c)
	}
}

func TestLaunchRefusesWhatIsNoLaunch(t *testing.T) {
	for want, edit := range map[string]func(*drive.LaunchCase){
		"open-circuit": func(c *drive.LaunchCase) { c.OCVV = 0 },
		"ramp":         func(c *drive.LaunchCase) { c.RampS = math.NaN() },
		"branch":       func(c *drive.LaunchCase) { c.RC[1].Farad = -1 },
		"mass":         func(c *drive.LaunchCase) { c.MassKg = 0 },
		"limit":        func(c *drive.LaunchCase) { c.LimitA = math.Inf(1) },
	} {
		c := bare()
		edit(&c)
		wantError(t, c.Check(), want)
		if r := drive.Launch(&c, 5, nil); !r.Incomplete {
			t.Errorf("%s: computed all the same", want)
		}
	}
	c := bare()
	for _, duration := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if r := drive.Launch(&c, duration, nil); !r.Incomplete {
			t.Errorf("duration %v: computed all the same", duration)
		}
	}
}

func TestLaunchAllocatesNothing(t *testing.T) {
	for _, name := range netlists(t) {
		c := netlistCase(t, name)
		c.Limits = drive.Limits{PackA: 20, ControllerPeakA: 30}
		if n := testing.AllocsPerRun(5, func() { drive.Launch(&c, 10, nil) }); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

func FuzzLaunch(f *testing.F) {
	f.Add(12.0, 0.03, 0.3, 1e-4, 0.008, 40.0, 10.0, 0.0, 0.0, 0.0, 0.0, 100.0)
	f.Add(20.0, 0.0, 0.1, 0.0, 0.02, 80.0, 30.0, 50.0, 60.0, 1.0, 40.0, 60.0)
	f.Add(1e3, 5.0, 1e-4, 1.0, 1.0, 0.1, 0.0, -100.0, 1.0, 1e-9, 1e-3, 1e-2)
	f.Fuzz(func(t *testing.T, volt, ohm, winding, henry, k, mass, roll, grade, grip, ramp, limit, ratio float64) {
		c := drive.LaunchCase{
			OCVV: volt, R0Ohm: ohm, PathOhm: ohm, Motors: 2, MotorsInSeries: 1,
			RC:         [2]drive.Branch{{Ohm: ohm, Farad: 40}, {Ohm: ohm, Farad: 900}},
			WindingOhm: winding, WindingH: henry, TorqueConstant: k, NoLoadA: 1, GearRatio: ratio, GearEfficiency: 0.6,
			WheelRadiusM: 0.125, MassKg: mass, RotorInertiaKgM2: 7e-6, RollN: roll, GradeN: grade, DragNS2PerM2: 0.4,
			GripN: grip, RampS: ramp, LimitA: limit,
		}
		r := drive.Launch(&c, 10, nil)
		if r.Incomplete {
			return
		}
		for _, v := range []float64{r.PeakBatteryA, r.PeakMotorA, r.LowestBusV, r.EndMS, r.SurgeA2S, r.PeakWheelN, r.To90S} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v gave %+v", c, r)
			}
		}
		if r.PeakBatteryAtS > 10 || r.EndMS < 0 {
			t.Fatalf("%+v gave %+v", c, r)
		}
	})
}
