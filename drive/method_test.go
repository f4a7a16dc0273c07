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

// stretch expands over d.h, however inexact that is.
func stretch(p *plant, d *dense) {
	p.expand(d, d.h, math.Inf(1))
	p.cut(d)
	d.h = d.reach
	d.look()
}

// fixed integrates a case without events over equal stretches.
func fixed(p plant, d dense, endS float64, stretches int) state {
	d.h = endS / float64(stretches)
	for range stretches {
		stretch(&p, &d)
		d.t += d.h
		d.y0 = *d.end()
	}
	return d.y0
}

// One term wrong, and the error would fall with a low power of the length, however many
// right ones stand before and behind it.
func TestHalfTheLengthOfAStretchMakesTheErrorSmallerByThePowerOfTheOrder(t *testing.T) {
	for _, x := range []struct {
		name string
		endS float64
		edit func(*LaunchCase)
	}{
		{"contacts", 0.1, func(*LaunchCase) {}},
		{"ramp", 0.3, func(c *LaunchCase) { c.RampS = 1 }},
		{"both ramps", 0.3, func(c *LaunchCase) { c.RampS, c.ModuleRampS = 1, 0.7 }},
		{"bent", 0.07, func(c *LaunchCase) { c.RC[0].KneeV, c.RC[1].KneeV = 3, 2 }},
		{"spinning", 0.06, func(c *LaunchCase) { c.GripN = 30 }},
		{"limiter", 1.5, func(c *LaunchCase) { c.OCVV, c.LimitA, c.ModuleRampS = 40, 8, 9 }},
	} {
		s := seed(7)
		c := anyCase(&s)
		c.RampS, c.ModuleRampS, c.LimitA, c.GripN, c.GradeN, c.MotorsInSeries = 0, 0, 0, 0, 0, 1
		c.RollN, c.NoLoadA, c.DragNS2PerM2 = 0, 0, 5 // smooth from the start
		c.WindingH, c.RC = 0.01, [2]Branch{{Ohm: 0.05, Farad: 2}, {Ohm: 0.05, Farad: 20}}
		x.edit(&c)
		p, d := newPlant(&c), dense{}
		p.motion = rolling
		if c.GripN > 0 {
			p.motion = spinning
		}
		if p.limited = c.LimitA > 0; p.limited {
			d.t, d.y0[motorAmps] = 2, c.LimitA
		}
		exact := fixed(p, d, x.endS, 1000)
		wide, half := apartBy(fixed(p, d, x.endS, 4), exact), apartBy(fixed(p, d, x.endS, 8), exact)
		if power := math.Log2(wide / half); !(power > order-0.5 && power < order+2) {
			t.Errorf("%s: errors %.3g and %.3g: order %.2f", x.name, wide, half, power)
		}
	}
}

// The equations of Launch, written out once more: whatever the series are made of, their
// slopes must be what these say, at any place in any piece.
func TestTheSeriesMeetTheEquations(t *testing.T) {
	s := seed(5)
	seen := map[string]int{}
	for n := range 200 {
		c := anyCase(&s)
		if s.oneIn(3) {
			c.RC[0].KneeV, c.RC[1].KneeV = s.between(0.1, 1), s.between(0.1, 1)
		}
		e := c.Equivalent()
		p, w, d := newPlant(&c), watch{}, dense{}
		for d.t < 8 {
			phase, limited, at := p.motion, p.limited, d.t
			if !p.advance(&d, &w, 8, tolerance, nil) {
				t.Fatalf("case %d given up at %v s", n, d.t)
			}
			seen[fmt.Sprintf("motion %d, limited %t, follows %t", phase, limited, d.x.follows)]++
			for _, share := range []float64{0.2, 0.7} {
				x := d.from - d.h + share*d.h
				var y, f state
				for k := range carried {
					left := d.left(x)
					y[k] = d.terms[k].at(x) + d.fading[k]*left
					f[k] = d.slope(k, x, d.x.fastest.rate*left)
				}
				own, module, i := 1.0, 1.0, y[motorAmps]
				if now := at + share*d.h; now < c.RampS {
					own = now / c.RampS
				}
				if now := at + share*d.h; now < c.ModuleRampS {
					module = now / c.ModuleRampS
				}
				volts := func(own float64) float64 { // across the inductance
					b := own * module * i
					bus := module*(c.OCVV-y[firstBranch]-y[secondBranch]-b*c.R0Ohm) - own*i*c.PathOhm
					return own*bus - e.Ohm*i - e.VoltPerMS*y[wheelSpeed]
				}
				hold := func(what string, got, want, scale float64) {
					if off := math.Abs(got - want); !(off <= 1e-3*scale) {
						t.Errorf("case %d, %.4g s, motion %d, limited %t: %s %.6g, want %.6g", n, at+share*d.h, phase, limited, what, got, want)
					}
				}
				if limited {
					low, high := 0.0, own
					for range 60 {
						if middle := (low + high) / 2; volts(middle) > 0 {
							high = middle
						} else {
							low = middle
						}
					}
					own = low
					hold("limited current, A", i, c.LimitA, 1e-9*c.LimitA)
				} else {
					hold("volts across the inductance", e.Henry*f[motorAmps], volts(own), c.OCVV)
				}
				for k, b := range c.RC {
					if !b.absent() && (b.KneeV == 0 || d.calm || !d.x.follows) { // what dies out meets straight branches
						settles := own * module * i * b.Ohm
						if b.KneeV > 0 {
							settles = b.KneeV * math.Asinh(settles/b.KneeV)
						}
						longer := max(1, b.Ohm*b.Farad/d.h) // than the piece: an error has no time to grow
						hold("volts that a branch has yet to go", f[firstBranch+k]*b.Ohm*b.Farad, settles-y[firstBranch+k], c.OCVV*longer)
					}
				}
				force, mass := 0.0, 1.0
				switch phase {
				case rolling:
					force = e.NewtonPerA*i - e.LossN - c.RollN - c.GradeN - c.DragNS2PerM2*y[wheelSpeed]*y[wheelSpeed]
					mass = c.MassKg + e.RotorKg
				case spinning:
					force, mass = e.NewtonPerA*i-e.LossN-c.GripN, e.RotorKg
				}
				hold("accelerating force, N", mass*f[wheelSpeed], force, e.NewtonPerA*p.scale[motorAmps])
			}
		}
	}
	for _, phase := range []motion{held, rolling, spinning} {
		for _, rest := range []string{"true, follows false", "false, follows true", "false, follows false"} {
			if which := fmt.Sprintf("motion %d, limited %s", phase, rest); seen[which] == 0 {
				t.Errorf("%s does not occur", which)
			}
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

// However long the stretch, the electrical side ends where it settles.
func TestOneLongStretchSettlesTheElectricalSide(t *testing.T) {
	c := LaunchCase{
		OCVV: 12, R0Ohm: 0.05, PathOhm: 0.05, Motors: 1, MotorsInSeries: 1, WindingOhm: 0.3, WindingH: 1e-4,
		TorqueConstant: 0.01, GearRatio: 100, GearEfficiency: 1, WheelRadiusM: 0.1, MassKg: 30,
	}
	p := newPlant(&c)
	for _, h := range []float64{0.1, 10, 1e3, 1e6} {
		d := dense{h: h}
		stretch(&p, &d)
		// Held at rest; what is left of the start falls with its length.
		if off := math.Abs(d.end()[motorAmps] - 30); off > 0.1/h {
			t.Errorf("stretch of %v s: %v A, want 30", h, d.end()[motorAmps])
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
func TestRampsEndWithAPiece(t *testing.T) {
	c := LaunchCase{
		OCVV: 20, R0Ohm: 0.05, PathOhm: 0.03, Motors: 2, MotorsInSeries: 1, WindingOhm: 0.3, WindingH: 1e-4, TorqueConstant: 0.008,
		GearRatio: 110, GearEfficiency: 0.6, WheelRadiusM: 0.125, MassKg: 40, RampS: 0.7, ModuleRampS: 1.3,
	}
	seen := map[string]bool{}
	Launch(&c, 2, func(s LaunchSample) { seen[fmt.Sprintf("%.12f", s.TimeS)] = true })
	for _, want := range []float64{0, 0.7, 1.3, 2} {
		if !seen[fmt.Sprintf("%.12f", want)] {
			t.Errorf("no piece ends at %v s", want)
		}
	}
}
