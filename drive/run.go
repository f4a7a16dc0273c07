package drive

import "math"

// tolerance is how large the last terms of a series may become, as a share of each state;
// what comes behind them is less. Made a thousand times smaller it moves currents, volts,
// speeds and forces by less than 5e-4 of themselves, times by less than 5e-3, and what is
// summed up over the run by less than 1e-2; a test over many launches holds that.
const tolerance = 1e-4

// mostPieces ends a run that gets nowhere. A launch takes some ten to twenty pieces, one
// with a branch that is faster than the windings some tens of thousands.
const mostPieces = 200000

// Launch runs a start from rest for durationS seconds, calling trace (which
// may be nil) at the beginning and four times in each piece that is looked at, closer
// together where more happens. It allocates nothing.
//
// # Equations
//
// With n motors in chains of s and the lumped values of [Equivalent] (ohm R,
// inductance L, back-emf constant k, push constant N, no-load friction F0,
// rotor mass Mr), motor-side current i, wheel speed w, vehicle speed v,
// polarisation volts V1, V2 and duties a (controller) and m (pack's module):
//
//	a = min(1, t/ramp_s)   m = min(1, t/module_ramp_s)   1 without a ramp
//	battery current  b = a m i
//	bus volts        B = m (ocv_v - V1 - V2 - b r0_ohm) - a i path_ohm
//	L di/dt  = a B - R i - k w
//	dVj/dt   = (Sj - Vj)/(Rj Cj),   Sj = b Rj,
//	                                or knee_v asinh(b Rj / knee_v) where there is a knee
//
// Held, until N i > F0 + roll_n + grade_n: w = v = 0. Rolling resistance and
// the motors' own friction hold a standing vehicle, and a slope cannot roll it
// backwards: the pedal is pressed before it is let go. Rolling:
//
//	(mass_kg + Mr) dv/dt = N i - F0 - roll_n - grade_n - drag v^2,   w = v
//
// until the push on the ground, P = mass_kg dv/dt + roll_n + grade_n + drag
// v^2, passes grip_n. Spinning, until w comes down to v again:
//
//	Mr dw/dt = N i - F0 - grip_n
//	mass_kg dv/dt = grip_n - roll_n - grade_n - drag v^2   (not below v = 0)
//
// Where i reaches limit_a the controller lowers a so that i stays there, until
// the full duty of the moment can no longer hold it. The limit is on the sum
// of all motors' currents, on the motors' side.
//
// Current may flow backwards, as it does through contacts and synchronous
// choppers: a vehicle that rolls faster than its duty asks for charges the pack.
// The gears are taken as driven by the motors throughout; a launch downhill,
// where the wheels drive them, brakes less here than it really does.
//
// The chopper is averaged over its period; contacts bounce, gear backlash and
// brush drop are not modelled, and the teeth's first hit with them is harder
// than PeakPinionNM says.
func Launch(c *LaunchCase, durationS float64, trace func(LaunchSample)) LaunchResult {
	return launch(c, durationS, tolerance, trace)
}

func launch(c *LaunchCase, durationS, tol float64, trace func(LaunchSample)) LaunchResult {
	if c.Check() != nil || !(durationS > 0) || math.IsInf(durationS, 1) {
		return LaunchResult{Incomplete: true}
	}
	p := newPlant(c)
	steady := c.Steady()
	w := watch{limits: c.Limits, steadyA: steady.BatteryA}
	w.out.SteadyMS, w.out.SteadyBatteryA = steady.SpeedMS, steady.BatteryA
	w.out.LowestBusV = c.OCVV
	var d dense
	if trace != nil {
		trace(p.sample(0, &d.y0))
	}
	for n := 0; d.t < durationS; n++ {
		if n == mostPieces || !p.advance(&d, &w, durationS, tol, trace) {
			return LaunchResult{Incomplete: true}
		}
	}
	w.finish(c, p.sample(d.t, &d.y0))
	w.out.Spinning = p.motion == spinning
	return w.out
}

// MovesOff reports whether a launch gets the vehicle going, which is known as soon as
// it does: [LaunchResult.Moved] without what comes behind it.
func MovesOff(c *LaunchCase, durationS float64) bool {
	if c.Check() != nil || !(durationS > 0) || math.IsInf(durationS, 1) {
		return false
	}
	p, w := newPlant(c), watch{}
	var d dense
	for n := 0; d.t < durationS && n < mostPieces && p.advance(&d, &w, durationS, tolerance, nil); n++ {
		if w.out.Moved {
			return true
		}
	}
	return false
}

// advance looks at one piece of the solution, up to the next event if there is one, and
// leaves d ready for the piece after it. It reports false when no series holds long
// enough.
func (p *plant) advance(d *dense, w *watch, endS, tol float64, trace func(LaunchSample)) bool {
	stop := p.nextCorner(d.t, endS)
	if d.reach-d.from <= 1e-9*d.reach && !p.expand(d, stop-d.t, tol) {
		return false
	}
	p.cut(d)
	d.look()
	happened, share := p.eventIn(d)
	if happened != nothing {
		if share < 1 {
			d.h = max(d.h*share, 1e-12)
			d.look()
		}
		if happened == limitReached {
			d.end()[motorAmps] = p.limit // to the last digit
		}
	}
	w.see(p, d)
	if trace != nil {
		for k := range parts - 1 {
			trace(p.sample(d.t+float64(k+1)/parts*d.h, &d.seen[k]))
		}
	}
	d.from += d.h
	if d.t += d.h; d.t > stop-1e-13*stop {
		d.t, d.reach = stop, 0
	}
	d.y0 = *d.end()
	if happened != nothing {
		p.enter(happened, &d.y0)
		d.reach = 0
		w.out.Slipped = w.out.Slipped || p.motion == spinning
		if happened == limitLeft {
			w.limitLeft(p.sample(d.t, &d.y0))
		}
	}
	if trace != nil {
		trace(p.sample(d.t, &d.y0))
	}
	return !math.IsNaN(d.y0[motorAmps])
}

// pushOn is the force between driven wheels and ground.
func (p *plant) pushOn(y *state) float64 {
	drive := p.push*y[motorAmps] - p.loss
	switch p.motion {
	case held:
		return max(0, drive)
	case spinning:
		return p.grip
	default:
		ground := p.base + p.drag*y[wheelSpeed]*y[wheelSpeed]
		return ground + p.mass*(drive-ground)/(p.mass+p.rotor)
	}
}

func (p *plant) pushAt(d *dense, s float64) float64 {
	y := d.all(s)
	return p.pushOn(&y)
}

// momentOf returns what the watch looks at.
func (p *plant) momentOf(t float64, y *state) (batteryA, motorA, busSag float64) {
	motorA = y[motorAmps]
	if p.full {
		return motorA, motorA, y[firstBranch] + y[secondBranch] + motorA*p.feedOhm - p.ocv
	}
	u := p.supplyAt(t, y)
	return u.batteryA, motorA, -p.busV(u, y)
}

// quantityAt is one of them.
func (p *plant) quantityAt(d *dense, s float64, q quantity) float64 {
	if p.full && q != busSag {
		return d.at(motorAmps, s)
	}
	y := d.all(s)
	return p.quantityOf(d.t+s*d.h, &y, q)
}

func (p *plant) quantityOf(t float64, y *state, q quantity) float64 {
	if q == motorCurrent {
		return y[motorAmps]
	}
	u := p.supplyAt(t, y)
	if q == batteryCurrent {
		return u.batteryA
	}
	return -p.busV(u, y)
}

func (p *plant) busV(u supply, y *state) float64 {
	return u.module*(p.ocv-y[firstBranch]-y[secondBranch]-u.batteryA*p.r0) - u.own*y[motorAmps]*p.path
}

func (p *plant) sample(t float64, y *state) LaunchSample {
	u := p.supplyAt(t, y)
	return LaunchSample{
		TimeS: t, BatteryA: u.batteryA, MotorA: y[motorAmps],
		PackV: p.ocv - y[firstBranch] - y[secondBranch] - u.batteryA*p.r0,
		BusV:  p.busV(u, y), Duty: u.own,
		SpeedMS: y[vehicleSpeed], WheelMS: y[wheelSpeed], WheelN: p.pushOn(y),
	}
}

// finish closes a result at the end of the run.
func (w *watch) finish(c *LaunchCase, end LaunchSample) {
	w.out.EndMS, w.out.EndBatteryA = end.SpeedMS, end.BatteryA
	for ; w.nextMark < speedTimes; w.nextMark++ {
		w.out.SpeedMS[w.nextMark] = end.SpeedMS
	}
	// The end of the last piece may be a last digit beyond it.
	for _, at := range [...]*float64{&w.out.PeakBatteryAtS, &w.out.PeakMotorAtS, &w.out.LowestBusAtS} {
		*at = min(*at, end.TimeS)
	}
	perPinion := c.WheelRadiusM / (c.GearEfficiency * c.GearRatio * float64(c.Motors))
	w.out.PeakPinionNM = w.out.PeakWheelN * perPinion
}
