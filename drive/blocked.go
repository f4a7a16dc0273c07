package drive

import "math"

// Blocked is a vehicle whose wheels cannot turn with the pedal down: against a
// wall, in a rut, or with a twig in the gears.
type Blocked struct {
	BatteryA  float64 // at the first moment: pack not yet polarised, winding as warm as it was
	MotorA    float64 // total, motor side
	PerMotorA float64
	BusV      float64
	WindingW  float64 // heat in one motor's winding at the first moment
	PathW     float64 // heat in wires, joints, switch and controller
	PackW     float64 // heat inside the pack
	WheelN    float64 // push on whatever blocks the wheels
	PinionNM  float64 // torque that one motor's pinion bears

	// ToLimitS is how long the winding stands it: seconds until its insulation's
	// limit. It only counts when ReachesLimit is true; when that is false the
	// winding stays below the limit, or limit or heat data are not known (see
	// HeatKnown).
	ToLimitS     float64
	ReachesLimit bool
	HeatKnown    bool
	CaseC        float64 // the motor's case at that moment

	// BearableA is the motor-side current that the winding stands for ten seconds
	// when a limit holds it there, with no heat leaving the winding, so on the low
	// side; 0 where HeatKnown is false.
	BearableA float64
}

// BlockedWheels works out the circuit with speed zero, currents as V/R unless
// a current limit holds them, and how long one winding stands it from start in
// air of ambientC. Resistance rises as the winding warms, so the current falls
// while the heating goes on; both are followed. The pack is taken as holding
// its first voltage, which errs towards too much heat.
//
// The vehicle must be one that [Vehicle.Check] passes. Of a pack that is below 0 V,
// or no number, all figures are NaN and HeatKnown is false.
func BlockedWheels(v Vehicle, c Controller, p PackCircuit, start HeatState, ambientC float64) Blocked {
	q := blockedCircuit(v, c, p)
	e := v.Equivalent(start.WindingC)
	b := Blocked{}
	b.MotorA, b.BatteryA = q.currents(e.Ohm)
	b.PerMotorA = b.MotorA / v.chains()
	b.BusV = q.volt - q.ohm*b.BatteryA
	if c.Converter.fitted() && c.Converter.Regulates(p.OCVV) {
		out := b.BatteryA
		b.BatteryA, _ = c.Converter.inputA(Source{OCVV: p.OCVV, Ohm: p.R0Ohm + p.PathOhm}, b.BusV, out)
		b.PathW = c.Ohm*out*out + p.PathOhm*b.BatteryA*b.BatteryA
	} else {
		b.PathW = (p.PathOhm + c.Ohm) * b.BatteryA * b.BatteryA
	}
	b.PackW = p.R0Ohm * b.BatteryA * b.BatteryA
	b.WindingW = e.Ohm * b.MotorA * b.MotorA / float64(v.Motors)
	b.WheelN = max(0, e.NewtonPerA*b.MotorA-e.LossN)
	if v.GripN > 0 && b.WheelN > v.GripN {
		b.WheelN = v.GripN // the wheels would spin: only blocked gears bear more
	}
	b.PinionNM = v.Motor.TorqueConstant * max(0, b.PerMotorA-v.Motor.NoLoadA)
	if t := v.Motor.Thermal; t.Known() && t.LimitC > 0 && !math.IsNaN(b.WindingW) {
		b.HeatKnown = true
		b.ToLimitS, b.CaseC, b.ReachesLimit = q.stands(v, start, ambientC)
		b.BearableA = v.bearableA(start.WindingC, blockedFixS)
	}
	return b
}

// bearableA returns the constant motor-side current that takes the windings
// from windingC to their limit in so many seconds. With resistance in
// proportion to z + T, C dT/dt = I^2 R gives
//
//	I^2 = C (z + T)/(R t) ln((z + limit)/(z + T))
func (v Vehicle) bearableA(windingC, seconds float64) float64 {
	t := v.Motor.Thermal
	if windingC >= t.LimitC {
		return 0
	}
	from := copperZeroC + windingC
	joule := t.WindingJPerK * from * math.Log((copperZeroC+t.LimitC)/from)
	return v.chains() * math.Sqrt(joule/(v.Motor.OhmAt(windingC)*seconds))
}

// stalled is the circuit with the motors at rest.
type stalled struct{ volt, ohm, limitA float64 }

func blockedCircuit(v Vehicle, c Controller, p PackCircuit) stalled {
	l := NewLaunchCase(v, c, p, ReferenceC)
	if !isVolts(p.OCVV) {
		l.OCVV = math.NaN()
	}
	return stalled{volt: l.OCVV, ohm: l.R0Ohm + l.PathOhm, limitA: l.LimitA}
}

// currents returns the motor-side and the source-side current.
func (q stalled) currents(motorsOhm float64) (motorA, batteryA float64) {
	motorA = q.volt / (q.ohm + motorsOhm)
	if q.limitA <= 0 || !(motorA > q.limitA) {
		return motorA, motorA
	}
	duty := smallerRoot(q.ohm*q.limitA, q.volt, motorsOhm*q.limitA)
	return q.limitA, duty * q.limitA
}

// stands follows winding and case until the limit.
func (q stalled) stands(v Vehicle, start HeatState, ambientC float64) (seconds, caseC float64, reached bool) {
	t := v.Motor.Thermal
	if start.WindingC >= t.LimitC {
		return 0, start.CaseC, true
	}
	cold := v.Equivalent(0).Ohm
	w := warming{
		q: q, t: t, ambientC: ambientC, perMotor: 1 / float64(v.Motors),
		coldOhm: cold, perC: v.Equivalent(1).Ohm - cold, // copper's resistance is a straight line
	}
	return w.until(start)
}

// Reversal is what happens when the direction is switched while rolling.
type Reversal struct {
	MotorA   float64 // total, motor side
	BatteryA float64
	BusV     float64
	BrakeN   float64 // backward push on the vehicle, not more than the grip
	ShortedA float64 // total current when the motors are merely shorted at that speed
}

// ReverseAt returns the first moment of switching to reverse at a speed with
// full duty: the back-emf now adds to the pack,
//
//	I = (V + E)/R
//
// with all resistances of pack, path and windings, unless a current limit holds
// it; below E/R none can. A chopper's ramp, if it starts anew on reversal, softens the V but not
// the E. Vehicle and pack must be those of [BlockedWheels].
func ReverseAt(v Vehicle, c Controller, p PackCircuit, speedMS, windingC float64) Reversal {
	q := blockedCircuit(v, c, p)
	e := v.Equivalent(windingC)
	emf := e.VoltPerMS * speedMS
	r := Reversal{MotorA: (q.volt + emf) / (q.ohm + e.Ohm), ShortedA: emf / e.Ohm}
	r.BatteryA = r.MotorA
	if q.limitA > 0 && r.MotorA > q.limitA {
		// With no duty at all the back-emf still drives its current through the
		// chopper's freewheeling side, and no limiter can hold that.
		r.MotorA = max(q.limitA, r.ShortedA)
		r.BatteryA = r.MotorA * smallerRoot(q.ohm*r.MotorA, q.volt, e.Ohm*r.MotorA-emf)
	}
	r.BusV = q.volt - q.ohm*r.BatteryA
	// Braking, the gears work backwards and their losses help: divide, not multiply.
	h := v.GearEfficiency
	r.BrakeN = e.NewtonPerA*r.MotorA/(h*h) + e.LossN/(h*h)
	if v.GripN > 0 {
		r.BrakeN = min(r.BrakeN, v.GripN)
	}
	return r
}
