package drive

import (
	"fmt"
	"math"
	"testing"
)

// seed is a plain repeatable sequence, so that the sweep below is the same
// everywhere.
type seed uint64

func (s *seed) between(low, high float64) float64 {
	*s = *s*6364136223846793005 + 1442695040888963407
	return low + (high-low)*float64(*s>>11)/(1<<53)
}

func (s *seed) oneIn(n float64) bool { return s.between(0, n) < 1 }

// anyCase draws a launch from everything that a ride-on may be.
func anyCase(s *seed) LaunchCase {
	c := LaunchCase{
		OCVV: s.between(5, 42), R0Ohm: s.between(0.01, 0.3), PathOhm: s.between(0.005, 0.15),
		RC:     [2]Branch{{Ohm: s.between(0.005, 0.1), Farad: s.between(5, 200)}, {Ohm: s.between(0.005, 0.1), Farad: s.between(200, 5000)}},
		Motors: 2, MotorsInSeries: 1,
		WindingOhm: s.between(0.08, 1.5), WindingH: math.Pow(10, s.between(-4.5, -3)), TorqueConstant: s.between(0.004, 0.02),
		NoLoadA: s.between(0.3, 2.5), GearRatio: s.between(50, 160), GearEfficiency: s.between(0.35, 0.9),
		WheelRadiusM: s.between(0.08, 0.18), MassKg: s.between(15, 110), RotorInertiaKgM2: math.Pow(10, s.between(-6, -4.4)),
		RollN: s.between(2, 60), DragNS2PerM2: s.between(0, 1),
	}
	if s.oneIn(2) {
		c.RampS = s.between(0.05, 2)
	}
	if s.oneIn(4) {
		c.ModuleRampS = s.between(0.05, 2)
	}
	if s.oneIn(2) {
		c.LimitA = s.between(5, 120)
	}
	if s.oneIn(3) {
		c.MotorsInSeries = 2
	}
	if s.oneIn(3) {
		c.GradeN = s.between(-30, 120)
	}
	if s.oneIn(3) {
		c.GripN = s.between(15, 300)
	}
	if s.oneIn(8) {
		c.RC = [2]Branch{}
	}
	c.Limits = Limits{PackA: s.between(5, 60), ControllerPeakA: s.between(5, 60)}
	return c
}

// The errors that the package states. Shares are of the larger of the figure
// itself and a hundredth of its natural scale.
const (
	statedShare = 5e-4 // currents, volts, speeds, forces
	statedTime  = 5e-3 // times, of themselves and of 10 ms at least
	statedSum   = 1e-2 // charge and pulse above steady running, small differences of large figures
)

// Made a thousand times more exact, the integration must not move any result by
// more than is stated.
func TestStatedErrorHoldsOverManyLaunches(t *testing.T) {
	s := seed(1)
	worst := map[string]float64{}
	for n := range 400 {
		c := anyCase(&s)
		a, b := launch(&c, 8, tolerance, nil), launch(&c, 8, tolerance/1000, nil)
		if a.Incomplete || b.Incomplete {
			t.Fatalf("case %d given up: %+v", n, c)
		}
		if a.Moved != b.Moved || a.Slipped != b.Slipped {
			t.Errorf("case %d: moved %v and %v, slipped %v and %v", n, a.Moved, b.Moved, a.Slipped, b.Slipped)
		}
		e := c.Equivalent()
		amps := c.OCVV / (e.Ohm + c.R0Ohm + c.PathOhm)
		speed := c.OCVV / e.VoltPerMS
		hold := func(what string, a, b, scale, stated float64) {
			off := math.Abs(a-b) / math.Max(math.Abs(b), scale/100)
			worst[what] = math.Max(worst[what], off)
			if !(off <= stated) {
				t.Errorf("case %d: %s %.8g, more exactly %.8g: %.2g apart\n%+v", n, what, a, b, off, c)
			}
		}
		hold("peak battery A", a.PeakBatteryA, b.PeakBatteryA, amps, statedShare)
		hold("peak motor A", a.PeakMotorA, b.PeakMotorA, amps, statedShare)
		hold("lowest bus V", a.LowestBusV, b.LowestBusV, c.OCVV, statedShare)
		hold("peak push N", a.PeakWheelN, b.PeakWheelN, e.NewtonPerA*amps, statedShare)
		for k := range a.SpeedMS {
			hold("speed m/s", a.SpeedMS[k], b.SpeedMS[k], speed, statedShare)
		}
		hold("pulse A2s", a.SurgeA2S, b.SurgeA2S, amps*amps, statedSum)
		hold("extra C", a.ExtraC, b.ExtraC, amps, statedSum)
		hold("seconds above the pack's limit", a.Above.PackS, b.Above.PackS, 1, statedTime)
		hold("seconds above the controller's limit", a.Above.ControllerPeakS, b.Above.ControllerPeakS, 1, statedTime)
		hold("seconds to 90 %", a.To90S, b.To90S, 1, statedTime)
		// A top that is flat to within the stated share has no time of its own.
		if near := launchAt(&c, b.PeakBatteryA, a.PeakBatteryAtS); near > 2*statedShare { // the exact run's own samples miss a little of a top
			hold("time of the peak", a.PeakBatteryAtS, b.PeakBatteryAtS, 1, statedTime)
		}
	}
	for what, off := range worst {
		t.Logf("%-40s worst %.2g", what, off)
	}
}

// launchAt returns how far below peakA, as a share, the battery current of an
// exact run is at a time.
func launchAt(c *LaunchCase, peakA, timeS float64) float64 {
	before, after := LaunchSample{}, LaunchSample{}
	launch(c, 8, tolerance/1000, func(s LaunchSample) {
		if s.TimeS <= timeS {
			before = s
		} else if after.TimeS == 0 {
			after = s
		}
	})
	return 1 - math.Max(before.BatteryA, after.BatteryA)/peakA
}

// fixed integrates a case without events over equal steps.
func fixed(c LaunchCase, endS float64, steps int) (end, middle state) {
	p := newPlant(&c)
	p.motion = rolling
	d := dense{h: endS / float64(steps)}
	for range steps {
		p.step(&d, 1)
		if d.t < endS/3 && d.t+d.h >= endS/3-1e-12 {
			middle = d.all((endS/3 - d.t) / d.h)
		}
		d.t += d.h
		d.y0 = d.y1
	}
	return d.y0, middle
}

// The constants of the method are from memory; were one of them wrong, the
// order would fall to 2 or below.
func TestMethodIsOfOrderFourAndItsPolynomialOfOrderThree(t *testing.T) {
	for name, edit := range map[string]func(*LaunchCase){
		"contacts": func(*LaunchCase) {},
		"ramp":     func(c *LaunchCase) { c.RampS = 1 },
		"both":     func(c *LaunchCase) { c.RampS, c.ModuleRampS = 1, 0.7 },
	} {
		s := seed(7)
		c := anyCase(&s)
		c.RampS, c.ModuleRampS, c.LimitA, c.GripN, c.GradeN = 0, 0, 0, 0, 0
		c.RollN, c.NoLoadA, c.DragNS2PerM2 = 0, 0, 5 // smooth from the start
		c.WindingH, c.RC = 0.01, [2]Branch{{Ohm: 0.05, Farad: 2}, {Ohm: 0.05, Farad: 20}}
		edit(&c)
		const end = 0.3
		exactEnd, exactMiddle := fixed(c, end, 20000)
		var ends, middles [2]float64
		for k, steps := range []int{64, 256} { // a third of the way lies at one share of the step in both
			e, m := fixed(c, end, steps)
			ends[k], middles[k] = apartBy(e, exactEnd), apartBy(m, exactMiddle)
		}
		if order := math.Log2(ends[0]/ends[1]) / 2; order < 3.7 || order > 4.6 {
			t.Errorf("%s: order %.2f (%.3g, %.3g)", name, order, ends[0], ends[1])
		}
		if order := math.Log2(middles[0]/middles[1]) / 2; order < 2.7 {
			t.Errorf("%s: polynomial of order %.2f (%.3g, %.3g)", name, order, middles[0], middles[1])
		}
	}
}

func apartBy(a, b state) float64 {
	sum := 0.0
	for k := range a {
		sum += (a[k] - b[k]) * (a[k] - b[k])
	}
	return math.Sqrt(sum)
}

// While the limiter holds the current the Jacobian is of another form; the
// order tells whether it is right.
func TestMethodKeepsItsOrderUnderTheLimiter(t *testing.T) {
	s := seed(3)
	c := anyCase(&s)
	c.OCVV, c.LimitA, c.MotorsInSeries, c.GripN, c.GradeN, c.RampS, c.ModuleRampS = 20, 20, 1, 0, 0, 0, 3
	c.RC = [2]Branch{{Ohm: 0.08, Farad: 0.5}, {Ohm: 0.05, Farad: 4}}
	c.DragNS2PerM2 = 10
	held := func(steps int) state {
		p := newPlant(&c)
		p.motion, p.limited = rolling, true
		d := dense{t: 2, h: 0.5 / float64(steps)}
		d.y0[motorAmps] = 20
		for range steps {
			p.step(&d, 1)
			d.t += d.h
			d.y0 = d.y1
		}
		if d.y0[motorAmps] != 20 {
			t.Errorf("the limiter lets the current move to %v", d.y0[motorAmps])
		}
		return d.y0
	}
	exact := held(20000)
	if order := math.Log2(apartBy(held(32), exact) / apartBy(held(64), exact)); order < 3.5 || order > 5 {
		t.Errorf("order %.2f", order)
	}
}

// L-stable: however long the step, the electrical side ends where it settles.
func TestOneLongStepSettlesTheElectricalSide(t *testing.T) {
	c := LaunchCase{
		OCVV: 12, R0Ohm: 0.05, PathOhm: 0.05, Motors: 1, MotorsInSeries: 1, WindingOhm: 0.3, WindingH: 1e-4,
		TorqueConstant: 0.01, GearRatio: 100, GearEfficiency: 1, WheelRadiusM: 0.1, MassKg: 30,
	}
	p := newPlant(&c)
	for _, h := range []float64{0.1, 10, 1e3, 1e6} {
		d := dense{h: h}
		p.step(&d, 1)
		// Held at rest; what is left of the start falls with the step's length.
		if off := math.Abs(d.y1[motorAmps] - 30); off > 0.1/h {
			t.Errorf("step of %v s: %v A, want 30", h, d.y1[motorAmps])
		}
	}
}

// What leaves the source must be found again: in resistances, in the field of
// the windings, in gears and friction, in the moving mass.
func TestEnergyIsConserved(t *testing.T) {
	s := seed(42)
	for n := range 60 {
		c := anyCase(&s)
		c.RC[1] = Branch{} // so that a sample shows the one branch's volts
		c.ModuleRampS = 0
		if c.GradeN < 0 {
			c.GradeN = 0
		}
		e := c.Equivalent()
		var last LaunchSample
		var lastPower [2]float64
		first := true
		var given, taken float64
		r := launch(&c, 4, 1e-9, func(s LaunchSample) {
			branch := c.OCVV - c.R0Ohm*s.BatteryA - s.PackV
			friction := (e.LossN/c.GearEfficiency + 0) * s.WheelMS
			shaft := e.VoltPerMS*s.WheelMS*s.MotorA - friction
			in := c.OCVV * s.BatteryA
			out := (c.R0Ohm+c.PathOhm)*s.BatteryA*s.BatteryA + e.Ohm*s.MotorA*s.MotorA +
				friction + (1-c.GearEfficiency)*shaft +
				(s.WheelMS-s.SpeedMS)*s.WheelN + (c.RollN+c.GradeN)*s.SpeedMS + c.DragNS2PerM2*math.Pow(s.SpeedMS, 3)
			if !c.RC[0].absent() {
				out += branch * branch / c.RC[0].Ohm
			}
			if !first {
				dt := s.TimeS - last.TimeS
				given += dt * (in + lastPower[0]) / 2
				taken += dt * (out + lastPower[1]) / 2
			}
			first, last, lastPower = false, s, [2]float64{in, out}
		})
		if r.Incomplete {
			t.Fatal("given up")
		}
		branch := c.OCVV - c.R0Ohm*last.BatteryA - last.PackV
		stored := e.Henry*last.MotorA*last.MotorA/2 + c.RC[0].Farad*branch*branch/2 +
			c.MassKg*last.SpeedMS*last.SpeedMS/2 + e.RotorKg*last.WheelMS*last.WheelMS/2
		if off := math.Abs(given-taken-stored) / given; off > 5e-4 {
			t.Errorf("case %d: %.6g J given, %.6g taken, %.6g stored: %.2g missing\n%+v", n, given, taken, stored, off, c)
		}
	}
}

// Every cached moment of change must be reached exactly.
func TestRampsEndOnAStep(t *testing.T) {
	c := LaunchCase{
		OCVV: 20, R0Ohm: 0.05, PathOhm: 0.03, Motors: 2, MotorsInSeries: 1, WindingOhm: 0.3, WindingH: 1e-4, TorqueConstant: 0.008,
		GearRatio: 110, GearEfficiency: 0.6, WheelRadiusM: 0.125, MassKg: 40, RampS: 0.7, ModuleRampS: 1.3,
	}
	seen := map[string]bool{}
	Launch(&c, 2, func(s LaunchSample) { seen[fmt.Sprintf("%.12f", s.TimeS)] = true })
	for _, want := range []float64{0, 0.7, 1.3, 2} {
		if !seen[fmt.Sprintf("%.12f", want)] {
			t.Errorf("no step ends at %v s", want)
		}
	}
}
