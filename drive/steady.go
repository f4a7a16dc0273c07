package drive

import "math"

// Source is the pack and the path to the controller seen as one voltage behind
// one resistance. For steady running count the polarisation in: R0 and the
// resistances of all RC branches.
type Source struct {
	OCVV float64
	Ohm  float64 // battery and path
}

// Running is what a vehicle settles to.
type Running struct {
	SpeedMS    float64
	BatteryA   float64
	MotorA     float64 // total, motor side
	PerMotorA  float64
	BusV       float64 // at the motors' side of the controller's input
	Duty       float64 // motor volts over bus volts
	WheelN     float64 // push of the driven wheels on the ground
	WheelMS    float64 // rolling speed of the driven wheels; above SpeedMS when slipping
	Efficiency float64 // work done on the ground over what leaves the pack's inside
	MotorRadS  float64
	CopperW    float64 // heat in one motor's winding
	NoLoadW    float64 // friction and iron heat in one motor
	Stuck      bool    // cannot move: currents are the blocked ones
	Slipping   bool    // the driven wheels spin
}

// Steady solves motors, controller, path and pack together for constant speed
// with the pedal down and every ramp over, windings at windingC. A vehicle
// that cannot move gives Stuck and the blocked currents; one whose wheels spin
// gives Slipping.
//
// With a converter in c, s feeds the converter and the board sees OutV, or what
// comes through of the pack's volts when that is lower; a converter whose limit is
// below what the ground asks for leaves the vehicle Stuck.
//
// The vehicle must be one that [Vehicle.Check] passes. Of a source that is below
// 0 V, or no number, all figures are NaN.
func Steady(v Vehicle, c Controller, s Source, windingC float64) Running {
	if !isVolts(s.OCVV) {
		return notRunning()
	}
	e := v.Equivalent(windingC)
	r := steadyCurve{
		e: e, limitA: c.LimitA, ohm: c.Ohm + s.Ohm, volt: s.OCVV,
		base: v.RollN + v.GradeN, drag: v.DragNS2PerM2, grip: gripOrNone(v.GripN),
		efficiency: v.GearEfficiency,
	}
	if c.Converter.fitted() {
		if out, ok := r.behind(c, s); ok {
			return v.fill(e, out, s.OCVV)
		}
		passes := c.Converter.Passes()
		r.volt, r.ohm = s.OCVV*passes, c.Ohm+s.Ohm*passes
	}
	return v.fill(e, r.solve(), s.OCVV)
}

// isVolts reports whether a source may have so many.
func isVolts(ocvV float64) bool { return ocvV >= 0 && !math.IsInf(ocvV, 1) }

// notRunning is what nobody can compute.
func notRunning() Running {
	nan := math.NaN()
	return Running{
		SpeedMS: nan, BatteryA: nan, MotorA: nan, PerMotorA: nan, BusV: nan, Duty: nan, WheelN: nan, WheelMS: nan,
		Efficiency: nan, MotorRadS: nan, CopperW: nan, NoLoadW: nan,
	}
}

// bentRounds is how often the resistance of branches that bend is taken anew
// around the current that the one before led to.
const bentRounds = 6

// SteadyOn is [Steady] on a pack with all its polarisation grown in.
func SteadyOn(v Vehicle, c Controller, p PackCircuit, windingC float64) Running {
	r := Steady(v, c, p.Steady(), windingC)
	if p.bends() {
		for range bentRounds {
			r = Steady(v, c, p.steadyAt(r.BatteryA), windingC)
		}
	}
	return r
}

// fill adds what follows from speed and currents.
func (v Vehicle) fill(e Equivalent, r Running, ocvV float64) Running {
	r.PerMotorA = r.MotorA / v.chains()
	r.MotorRadS = v.MotorRadS(r.WheelMS)
	r.CopperW = e.Ohm * r.MotorA * r.MotorA / float64(v.Motors)
	r.NoLoadW = v.Motor.TorqueConstant * v.Motor.NoLoadA * r.MotorRadS
	if in := ocvV * r.BatteryA; in > 0 {
		r.Efficiency = r.WheelN * r.SpeedMS / in
	}
	return r
}

func gripOrNone(gripN float64) float64 {
	if gripN > 0 {
		return gripN
	}
	return math.Inf(1)
}

// steadyCurve is the electrical and the mechanical line whose crossing is
// steady running.
type steadyCurve struct {
	e          Equivalent
	volt, ohm  float64 // source with path and controller
	limitA     float64 // 0 = none
	base, drag float64 // ground force = base + drag v^2
	grip       float64
	efficiency float64 // of the gears
	backDriven bool    // e is already that of gears turned by the wheels
}

// solve finds the crossing without a converter.
func (q steadyCurve) solve() Running {
	limit := q.limitA
	if limit <= 0 {
		limit = math.Inf(1)
	}
	blocked := math.Min(limit, q.volt/(q.ohm+q.e.Ohm))
	push := q.e.NewtonPerA*blocked - q.e.LossN
	switch {
	case push <= min(q.base, q.grip):
		return q.bus(Running{MotorA: blocked, WheelN: max(0, push), Stuck: true}, blocked == limit)
	case q.base >= q.grip:
		return q.spinning(0)
	}
	// volt = (ohm + R) i(v) + k v with i(v) = (loss + base + drag v^2)/N.
	total := q.ohm + q.e.Ohm
	speed := positiveRoot(total*q.drag/q.e.NewtonPerA, q.e.VoltPerMS,
		q.volt-total*(q.e.LossN+q.base)/q.e.NewtonPerA)
	limited := q.needA(speed) > limit
	if limited {
		// The limiter holds the current; drag alone then sets the speed.
		speed = math.Sqrt((q.e.NewtonPerA*limit - q.e.LossN - q.base) / q.drag)
	}
	force := q.base + q.drag*speed*speed
	if force < 0 && !q.backDriven {
		// The slope drives the motors through the gears, whose losses now help
		// to brake: divide by the efficiency where driving multiplies.
		q.e.NewtonPerA /= q.efficiency * q.efficiency
		q.e.LossN /= q.efficiency * q.efficiency
		q.backDriven = true
		return q.solve()
	}
	if force > q.grip {
		return q.spinning(math.Sqrt(math.Max(0, q.grip-q.base) / q.drag))
	}
	return q.bus(Running{SpeedMS: speed, WheelMS: speed, MotorA: q.needA(speed), WheelN: force}, limited)
}

// needA is the motor-side current that holds a speed.
func (q steadyCurve) needA(speedMS float64) float64 {
	return (q.e.LossN + q.base + q.drag*speedMS*speedMS) / q.e.NewtonPerA
}

// spinning is the state with the driven wheels slipping at their grip limit.
func (q steadyCurve) spinning(speedMS float64) Running {
	motorA := (q.e.LossN + q.grip) / q.e.NewtonPerA
	wheel := (q.volt - (q.ohm+q.e.Ohm)*motorA) / q.e.VoltPerMS
	return q.bus(Running{
		SpeedMS: speedMS, WheelMS: math.Max(wheel, speedMS), MotorA: motorA, WheelN: q.grip,
		Slipping: true, Stuck: speedMS == 0,
	}, false)
}

// bus finds duty, battery current and bus volts for wheel speed and motor
// current. The duty is full unless the limiter holds the current: then
// duty (volt - ohm duty i) = R i + k v, smaller root. Without it that root would be
// wrong behind a source that takes more than half of the volts.
func (q steadyCurve) bus(r Running, limited bool) Running {
	r.Duty = 1
	if limited {
		need := q.e.Ohm*r.MotorA + q.e.VoltPerMS*r.WheelMS
		r.Duty = math.Min(1, smallerRoot(q.ohm*r.MotorA, q.volt, need))
	}
	r.BatteryA = r.Duty * r.MotorA
	r.BusV = q.volt - q.ohm*r.BatteryA
	return r
}

// behind solves with the converter feeding the board. It reports false when
// the pack is too low for the converter to regulate.
func (q steadyCurve) behind(c Controller, s Source) (Running, bool) {
	q.volt, q.ohm = c.Converter.OutV, c.Ohm
	if c.Converter.LimitA > 0 && (q.limitA <= 0 || c.Converter.LimitA < q.limitA) {
		q.limitA = c.Converter.LimitA
	}
	r := q.solve()
	outA := r.BatteryA
	in, ok := c.Converter.inputA(s, c.Converter.OutV, outA)
	if !ok || !c.Converter.Regulates(s.OCVV-s.Ohm*in) {
		return Running{}, false
	}
	r.BatteryA = in
	return r, true
}

// smallerRoot returns the smaller x >= 0 with a x^2 - b x + c = 0, the point of
// largest possible product where there is none.
func smallerRoot(a, b, c float64) float64 {
	root := b*b - 4*a*c
	if root <= 0 {
		if a <= 0 {
			return 0
		}
		return b / (2 * a)
	}
	return 2 * c / (b + math.Sqrt(root))
}

// positiveRoot returns x with a x^2 + b x = c for a >= 0, b > 0.
func positiveRoot(a, b, c float64) float64 {
	return 2 * c / (b + math.Sqrt(math.Max(0, b*b+4*a*c)))
}
