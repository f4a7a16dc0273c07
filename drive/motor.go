package drive

import (
	"errors"
	"fmt"
	"math"
	"strings"
)

// ReferenceC is the temperature in degrees Celsius at which winding resistance
// is given, as data sheets and IEC 60228 do for copper.
const ReferenceC = 20

// copperZeroC is minus the temperature at which copper's resistance, drawn as a
// straight line, reaches zero: R is proportional to 234.5 + T.
// Source: IEC 60949:1988 (beta for copper).
const copperZeroC = 234.5

// FerritePerK is the share of its flux that a ferrite magnet loses per kelvin,
// reversibly. From memory, no published source at hand: off unless the caller
// sets [Motor.MagnetPerK] to it.
const FerritePerK = -0.002

// Motor is one brushed permanent-magnet motor:
//
//	v = R i + L di/dt + K w        (volts at the brushes)
//	torque = K (i - NoLoadA)       (at the shaft)
//
// K is the torque constant in N m/A, which is the same number as the back-emf
// constant in V s/rad. Build one with [MotorFromLabel] or fill it in.
type Motor struct {
	TorqueConstant   float64 // N m/A = V s/rad, > 0
	WindingOhm       float64 // armature and brushes at 20 degrees C, > 0
	WindingH         float64 // inductance, >= 0
	NoLoadA          float64 // current that only turns the motor itself, >= 0
	RotorInertiaKgM2 float64 // >= 0
	MagnetPerK       float64 // change of TorqueConstant per kelvin as a share; 0 = not modelled, see FerritePerK
	Thermal          Thermal // zero = heat not modelled
}

// OhmAt returns the winding resistance at a winding temperature in degrees C,
// by the copper law R proportional to 234.5 + T (IEC 60949:1988).
func (m Motor) OhmAt(windingC float64) float64 {
	return m.WindingOhm * (copperZeroC + windingC) / (copperZeroC + ReferenceC)
}

// WithMagnetAt returns the motor with its torque constant at a magnet
// temperature in degrees C. It changes nothing while MagnetPerK is zero.
func (m Motor) WithMagnetAt(magnetC float64) Motor {
	m.TorqueConstant *= math.Max(0, 1+m.MagnetPerK*(magnetC-ReferenceC))
	return m
}

// WindingRiseK returns how much warmer a copper winding is than it was at
// coldC, from its resistance cold and hot: the rise-by-resistance method.
func WindingRiseK(coldC, coldOhm, hotOhm float64) float64 {
	return (copperZeroC+coldC)*hotOhm/coldOhm - copperZeroC - coldC
}

// StallA returns the current with the shaft held at a voltage, winding cold.
func (m Motor) StallA(volt float64) float64 { return volt / m.WindingOhm }

// StallTorqueNM returns the shaft torque with the shaft held at a voltage,
// winding cold. Data sheets print 5 to 24 % less for real motors (saturation,
// brush drop, heating), so this is the upper end.
func (m Motor) StallTorqueNM(volt float64) float64 {
	return m.TorqueConstant * math.Max(0, m.StallA(volt)-m.NoLoadA)
}

// NoLoadRadS returns the speed at a voltage with nothing on the shaft, in rad/s.
func (m Motor) NoLoadRadS(volt float64) float64 {
	return (volt - m.NoLoadA*m.WindingOhm) / m.TorqueConstant
}

// SpeedRadS returns the speed in rad/s at which the motor gives a shaft torque
// at a voltage, winding cold. Negative when the motor cannot give that torque.
func (m Motor) SpeedRadS(volt, torqueNM float64) float64 {
	return (volt - m.WindingOhm*(m.NoLoadA+torqueNM/m.TorqueConstant)) / m.TorqueConstant
}

// BestEfficiency returns the highest efficiency the motor can reach at a
// voltage and the current it draws there:
//
//	(1 - sqrt(I0/Is))^2  at  sqrt(I0 Is)
//
// with no-load current I0 and stall current Is. Zero when I0 reaches Is.
func (m Motor) BestEfficiency(volt float64) (efficiency, atA float64) {
	stall := m.StallA(volt)
	if m.NoLoadA >= stall {
		return 0, stall
	}
	root := 1 - math.Sqrt(m.NoLoadA/stall)
	return root * root, math.Sqrt(m.NoLoadA * stall)
}

// MotorLabel is what is known of a motor: what its label or data sheet prints,
// what a meter read. Zero means not known.
type MotorLabel struct {
	RatedV           float64 // the voltage that the speed and currents below are for
	NoLoadRadS       float64 // rad/s; rpm times pi/30
	NoLoadA          float64
	StallA           float64
	WindingOhm       float64 // at 20 degrees C
	TorqueConstant   float64 // N m/A = V s/rad
	WindingH         float64 // passed on
	RotorInertiaKgM2 float64 // passed on
	MagnetPerK       float64 // passed on
	Thermal          Thermal // passed on
}

// disagreeRatio is how far apart two ways to the same constant may lie before
// the label is refused as contradictory. Printed stall currents of real motors
// are 5 to 24 % off their own constants, so a quarter must pass; twice cannot
// be meant. Our own choice, no published source.
const disagreeRatio = 1.6

// MotorFromLabel finds a motor's constants from any two or three of no-load
// speed, no-load current, stall current, winding resistance and torque
// constant:
//
//	R = RatedV / StallA
//	K = (RatedV - NoLoadA R) / NoLoadRadS
//	NoLoadA = (RatedV - K NoLoadRadS) / R
//
// Where more is given than needed, a stated resistance or torque constant is
// kept before one that follows. A no-load current that is neither given nor
// follows from the rest is taken as zero, which flatters the motor: fill in a
// typical one where the size is known. The error names what is missing, out of
// range or contradictory.
func MotorFromLabel(l MotorLabel) (Motor, error) {
	if err := l.check(); err != nil {
		return Motor{}, err
	}
	m := Motor{
		TorqueConstant: l.TorqueConstant, WindingOhm: l.WindingOhm, NoLoadA: l.NoLoadA,
		WindingH: l.WindingH, RotorInertiaKgM2: l.RotorInertiaKgM2,
		MagnetPerK: l.MagnetPerK, Thermal: l.Thermal,
	}
	if m.WindingOhm == 0 && l.StallA > 0 {
		m.WindingOhm = l.RatedV / l.StallA
	}
	if m.WindingOhm == 0 && l.NoLoadA > 0 && l.TorqueConstant > 0 && l.NoLoadRadS > 0 {
		m.WindingOhm = (l.RatedV - l.TorqueConstant*l.NoLoadRadS) / l.NoLoadA
	}
	if m.TorqueConstant == 0 && m.WindingOhm > 0 && l.NoLoadRadS > 0 {
		m.TorqueConstant = (l.RatedV - l.NoLoadA*m.WindingOhm) / l.NoLoadRadS
	}
	if m.NoLoadA == 0 && l.TorqueConstant > 0 && l.NoLoadRadS > 0 && m.WindingOhm > 0 {
		m.NoLoadA = (l.RatedV - l.TorqueConstant*l.NoLoadRadS) / m.WindingOhm
	}
	if err := l.missing(m); err != nil {
		return Motor{}, err
	}
	if err := l.contradicted(m); err != nil {
		return Motor{}, err
	}
	return m, nil
}

// check refuses what no motor can have.
func (l MotorLabel) check() error {
	for _, f := range [...]struct {
		name  string
		value float64
	}{
		{"rated voltage", l.RatedV},
		{"no-load speed", l.NoLoadRadS},
		{"no-load current", l.NoLoadA},
		{"stall current", l.StallA},
		{"winding resistance", l.WindingOhm},
		{"torque constant", l.TorqueConstant},
		{"winding inductance", l.WindingH},
		{"rotor inertia", l.RotorInertiaKgM2},
	} {
		if !(f.value >= 0) || math.IsInf(f.value, 1) {
			return fmt.Errorf("drive: motor %s %v is not a positive number", f.name, f.value)
		}
	}
	if l.RatedV == 0 && (l.NoLoadRadS > 0 || l.StallA > 0) {
		return errors.New("drive: motor rated voltage missing: no-load speed and stall current mean nothing without it")
	}
	return nil
}

// missing says what else would have to be known.
func (l MotorLabel) missing(m Motor) error {
	var lack []string
	if m.WindingOhm == 0 {
		lack = append(lack, "winding resistance (or stall current)")
	}
	if m.TorqueConstant == 0 && l.NoLoadRadS == 0 {
		lack = append(lack, "torque constant (or no-load speed)")
	}
	if len(lack) == 0 {
		return nil
	}
	return fmt.Errorf("drive: motor %s missing", strings.Join(lack, " and "))
}

// contradicted says which given figures cannot belong to one motor.
func (l MotorLabel) contradicted(m Motor) error {
	switch {
	case !(m.WindingOhm > 0) || !(m.TorqueConstant > 0) || m.NoLoadA < 0:
		return errors.New("drive: motor figures contradict each other: no-load speed, currents and constants cannot belong to one motor at this rated voltage")
	case l.RatedV > 0 && m.NoLoadA*m.WindingOhm >= l.RatedV:
		return fmt.Errorf("drive: motor no-load current %.3g A is not below its stall current %.3g A", m.NoLoadA, l.RatedV/m.WindingOhm)
	case l.StallA > 0 && apart(l.RatedV/l.StallA, m.WindingOhm):
		return fmt.Errorf("drive: motor stall current %.3g A does not fit winding resistance %.3g Ohm at %.3g V", l.StallA, m.WindingOhm, l.RatedV)
	case l.NoLoadRadS > 0 && apart(l.NoLoadRadS, m.NoLoadRadS(l.RatedV)):
		return fmt.Errorf("drive: motor no-load speed %.4g rad/s does not fit torque constant %.3g N m/A at %.3g V", l.NoLoadRadS, m.TorqueConstant, l.RatedV)
	}
	return nil
}

func apart(a, b float64) bool { return a > b*disagreeRatio || b > a*disagreeRatio }
