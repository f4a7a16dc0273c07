package drive

import (
	"errors"
	"fmt"
	"math"
)

// Vehicle is everything that the controller drives: motors, gears, wheels,
// mass and ground. All motors are alike and turn together.
type Vehicle struct {
	Motor          Motor
	Motors         int     // all of them, >= 1
	MotorsInSeries int     // motors in one chain, >= 1, divides Motors; 1 = all in parallel
	GearRatio      float64 // motor turns per wheel turn, > 0
	GearEfficiency float64 // share of motor torque that reaches the wheels, (0, 1]
	WheelRadiusM   float64 // driven wheels, > 0
	MassKg         float64 // all that moves: vehicle, rider, pack
	RollN          float64 // rolling resistance, see RollingN
	GradeN         float64 // slope force, positive uphill, see SlopeN
	DragNS2PerM2   float64 // air drag is this times speed squared, see DragCoefficient
	GripN          float64 // most the driven wheels can push, see GripLimitN; 0 = not limited
}

// Check reports the first field that no vehicle can have.
func (v Vehicle) Check() error {
	for _, f := range [...]struct {
		name  string
		value float64
	}{
		{"motor torque constant", v.Motor.TorqueConstant},
		{"motor winding resistance", v.Motor.WindingOhm},
		{"gear ratio", v.GearRatio},
		{"gear efficiency", v.GearEfficiency},
		{"wheel radius", v.WheelRadiusM},
		{"mass", v.MassKg},
	} {
		if !(f.value > 0) || math.IsInf(f.value, 1) {
			return fmt.Errorf("drive: %s %v is not above zero", f.name, f.value)
		}
	}
	for _, f := range [...]struct {
		name  string
		value float64
	}{
		{"motor no-load current", v.Motor.NoLoadA},
		{"winding inductance", v.Motor.WindingH},
		{"rotor inertia", v.Motor.RotorInertiaKgM2},
		{"rolling resistance", v.RollN},
		{"drag", v.DragNS2PerM2},
		{"grip", v.GripN},
	} {
		if !(f.value >= 0) || math.IsInf(f.value, 1) {
			return fmt.Errorf("drive: %s %v is below zero or not a number", f.name, f.value)
		}
	}
	switch {
	case math.IsNaN(v.GradeN) || math.IsInf(v.GradeN, 0):
		return fmt.Errorf("drive: slope force %v is not a number", v.GradeN)
	case v.GearEfficiency > 1:
		return fmt.Errorf("drive: gear efficiency %v is above 1", v.GearEfficiency)
	case v.Motors < 1 || v.MotorsInSeries < 1:
		return errors.New("drive: at least one motor is needed")
	case v.Motors%v.MotorsInSeries != 0:
		return fmt.Errorf("drive: %d motors cannot form chains of %d", v.Motors, v.MotorsInSeries)
	}
	return nil
}

// Equivalent is all motors and gears seen as one motor that pushes along the
// ground. It is a small value so that inner loops can keep it at hand.
//
//	bus volts  = Ohm i + Henry di/dt + VoltPerMS v
//	wheel push = NewtonPerA i - LossN - (InertiaKg - mass) dv/dt
//
// with i the total motor-side current and v the wheels' rolling speed.
type Equivalent struct {
	Ohm        float64 // all motors as wired, at the winding temperature
	Henry      float64
	VoltPerMS  float64 // back-emf per m/s of wheel speed
	NewtonPerA float64 // wheel force per ampere of total motor-side current, after the gears
	LossN      float64 // the motors' own no-load friction as a force at the wheels
	RotorKg    float64 // rotor inertia as a mass at the wheels, after the gears
	InertiaKg  float64 // vehicle mass and RotorKg
}

// Equivalent lumps the motors as wired, their gears and wheels at a winding
// temperature in degrees C. With n motors, s of them in each chain, gear ratio
// G, gear efficiency h and wheel radius r:
//
//	Ohm        = R s/(n/s)        Henry = L s/(n/s)
//	VoltPerMS  = s K G/r          NewtonPerA = h s K G/r
//	LossN      = h n K I0 G/r
//	RotorKg    = h n J (G/r)^2    InertiaKg = mass + RotorKg
//
// The rotors and their friction sit before the gears, so what they take has
// never to pass the gears: both are multiplied by h.
func (v Vehicle) Equivalent(windingC float64) Equivalent {
	m := v.Motor
	return lump{
		motors: v.Motors, inSeries: v.MotorsInSeries,
		ohm: m.OhmAt(windingC), henry: m.WindingH, constant: m.TorqueConstant,
		noLoadA: m.NoLoadA, rotor: m.RotorInertiaKgM2,
		ratio: v.GearRatio, efficiency: v.GearEfficiency, radius: v.WheelRadiusM, mass: v.MassKg,
	}.equivalent()
}

// lump is what [Vehicle] and [LaunchCase] have in common.
type lump struct {
	motors, inSeries                     int
	ohm, henry, constant, noLoadA, rotor float64
	ratio, efficiency, radius, mass      float64
}

func (l lump) equivalent() Equivalent {
	series, all := float64(l.inSeries), float64(l.motors)
	asWired := series * series / all // series over number of chains
	perM := l.ratio / l.radius       // motor rad per metre
	rotor := l.efficiency * all * l.rotor * perM * perM
	return Equivalent{
		Ohm:        l.ohm * asWired,
		Henry:      l.henry * asWired,
		VoltPerMS:  series * l.constant * perM,
		NewtonPerA: l.efficiency * series * l.constant * perM,
		LossN:      l.efficiency * all * l.constant * l.noLoadA * perM,
		RotorKg:    rotor,
		InertiaKg:  l.mass + rotor,
	}
}

// chains returns how many chains of motors lie in parallel.
func (v Vehicle) chains() float64 { return float64(v.Motors) / float64(v.MotorsInSeries) }

// MotorRadS returns the motor speed in rad/s at a vehicle speed in m/s.
func (v Vehicle) MotorRadS(speedMS float64) float64 { return speedMS * v.GearRatio / v.WheelRadiusM }

// WheelMS returns the rolling speed in m/s of a wheel behind a gear at
// a motor speed in rad/s: n/g pi D in the trade's units.
func (v Vehicle) WheelMS(motorRadS float64) float64 {
	return motorRadS / v.GearRatio * v.WheelRadiusM
}
