package drive

import (
	"fmt"
	"math"

	"example.org/packcheck/internal/bend"
)

// Branch is one resistor-capacitor pair of a pack's polarisation. Either value
// zero means that the branch is absent.
type Branch struct {
	Ohm   float64 `json:"ohm"` // at small currents
	Farad float64 `json:"farad"`
	// KneeV bends the branch: under a current I it settles at
	//
	//	KneeV asinh(I Ohm / KneeV)
	//
	// as charge transfer does, and not at I Ohm. 0 = straight.
	KneeV float64 `json:"knee_v,omitempty"`
}

func (b Branch) absent() bool { return b.Ohm == 0 || b.Farad == 0 }

// settled returns the volts at which the branch settles under a current.
func (b Branch) settled(amps float64) float64 { return bend.Settled(amps*b.Ohm, b.KneeV) }

// steep is how steeply the settled volts rise with the current.
func (b Branch) steep(amps float64) float64 { return bend.Steep(b.Ohm, amps, b.KneeV) }

// PackCircuit is the pack and the path at the moment of a launch: volts behind
// resistances, which is all that drive needs to know of a battery.
type PackCircuit struct {
	OCVV    float64   // volts at rest
	R0Ohm   float64   // felt at once
	RC      [2]Branch // felt later
	PathOhm float64   // round trip of wires, joints, switch, fuse
}

// Steady returns the same as a [Source] with all polarisation grown in, for
// small currents where a branch bends.
func (p PackCircuit) Steady() Source { return p.steadyAt(0) }

// steadyAt is Steady for the volts that the branches have under a current.
func (p PackCircuit) steadyAt(amps float64) Source {
	s := Source{OCVV: p.OCVV, Ohm: p.R0Ohm + p.PathOhm}
	for _, b := range p.RC {
		switch {
		case b.absent():
		case amps == 0:
			s.Ohm += b.steep(amps)
		default:
			s.Ohm += b.settled(amps) / amps
		}
	}
	return s
}

// bends reports whether a branch does.
func (p PackCircuit) bends() bool { return p.RC[0].KneeV != 0 || p.RC[1].KneeV != 0 }

// LaunchCase is one start from rest, complete: a stranger can compute the
// launch from these numbers and the equations of [Launch] alone.
type LaunchCase struct {
	OCVV             float64   `json:"ocv_v"`
	R0Ohm            float64   `json:"r0_ohm"`
	RC               [2]Branch `json:"rc"`
	PathOhm          float64   `json:"path_ohm"` // round trip, with the contacts or transistors of the controller
	Motors           int       `json:"motors"`
	MotorsInSeries   int       `json:"motors_in_series"`
	WindingOhm       float64   `json:"winding_ohm"` // one motor, at its temperature
	WindingH         float64   `json:"winding_h"`   // one motor
	TorqueConstant   float64   `json:"torque_constant"`
	NoLoadA          float64   `json:"no_load_a"` // one motor
	GearRatio        float64   `json:"gear_ratio"`
	GearEfficiency   float64   `json:"gear_efficiency"`
	WheelRadiusM     float64   `json:"wheel_radius_m"`
	MassKg           float64   `json:"mass_kg"`
	RotorInertiaKgM2 float64   `json:"rotor_inertia"` // one motor
	RollN            float64   `json:"roll_n"`
	GradeN           float64   `json:"grade_n"` // positive uphill
	DragNS2PerM2     float64   `json:"drag_n_s2_m2"`
	GripN            float64   `json:"grip_n"`                  // 0 = not limited
	RampS            float64   `json:"ramp_s"`                  // 0 = full duty at once
	LimitA           float64   `json:"limit_a"`                 // total motor-side current; 0 = none
	ModuleRampS      float64   `json:"module_ramp_s,omitempty"` // 0 = none

	// Limits are only counted against; they change nothing in the launch.
	Limits Limits `json:"-"`
}

// Limits are currents that some part stands. Zero means not known: no time is
// counted above it.
type Limits struct {
	PackA                 float64 // battery current that it stands for seconds
	PackLastingA          float64 // battery current that it stands for good, where its label tells that; 0 = not told
	JointA                float64 // battery current
	SwitchA               float64 // battery current
	ControllerContinuousA float64 // total motor-side current
	ControllerPeakA       float64 // total motor-side current
}

// NewLaunchCase puts vehicle, controller and pack together, windings at a
// temperature in degrees C. The controller's own limits are entered into
// Limits; those of pack, joints and switch are the caller's to add.
//
// With a converter the launch is that of the board behind it: the source is
// the converter's output (what comes through of the pack where that is too low), its
// limit a limit on the current, and all currents of the result are the board's. The
// converter's limit acts on the bus side; taking it for a motor-side limit is exact at
// full duty and low before.
func NewLaunchCase(v Vehicle, c Controller, p PackCircuit, windingC float64) LaunchCase {
	m := v.Motor
	regulated := c.Converter.fitted() && c.Converter.Regulates(p.OCVV)
	if c.Converter.fitted() && !regulated {
		p = c.Converter.passed(p)
	}
	l := LaunchCase{
		OCVV: p.OCVV, R0Ohm: p.R0Ohm, RC: p.RC, PathOhm: p.PathOhm + c.Ohm,
		Motors: v.Motors, MotorsInSeries: v.MotorsInSeries,
		WindingOhm: m.OhmAt(windingC), WindingH: m.WindingH, TorqueConstant: m.TorqueConstant, NoLoadA: m.NoLoadA,
		GearRatio: v.GearRatio, GearEfficiency: v.GearEfficiency, WheelRadiusM: v.WheelRadiusM,
		MassKg: v.MassKg, RotorInertiaKgM2: m.RotorInertiaKgM2,
		RollN: v.RollN, GradeN: v.GradeN, DragNS2PerM2: v.DragNS2PerM2, GripN: v.GripN,
		RampS: c.RampS, LimitA: c.LimitA, ModuleRampS: c.ModuleRampS,
		Limits: Limits{ControllerContinuousA: c.ContinuousA, ControllerPeakA: c.PeakA},
	}
	if regulated {
		l.OCVV, l.R0Ohm, l.RC, l.PathOhm, l.ModuleRampS = c.Converter.OutV, 0, [2]Branch{}, c.Ohm, 0
		if c.Converter.LimitA > 0 && (l.LimitA == 0 || c.Converter.LimitA < l.LimitA) {
			l.LimitA = c.Converter.LimitA
		}
	}
	return l
}

// Equivalent returns the case's motors and gears seen as one motor.
func (c *LaunchCase) Equivalent() Equivalent {
	return lump{
		motors: c.Motors, inSeries: c.MotorsInSeries,
		ohm: c.WindingOhm, henry: c.WindingH, constant: c.TorqueConstant,
		noLoadA: c.NoLoadA, rotor: c.RotorInertiaKgM2,
		ratio: c.GearRatio, efficiency: c.GearEfficiency, radius: c.WheelRadiusM, mass: c.MassKg,
	}.equivalent()
}

// vehicle returns the case's vehicle for the checks and steady running, its
// winding resistance as if it were the one at 20 degrees C.
func (c *LaunchCase) vehicle() Vehicle {
	return Vehicle{
		Motor: Motor{
			TorqueConstant: c.TorqueConstant, WindingOhm: c.WindingOhm, WindingH: c.WindingH,
			NoLoadA: c.NoLoadA, RotorInertiaKgM2: c.RotorInertiaKgM2,
		},
		Motors: c.Motors, MotorsInSeries: c.MotorsInSeries,
		GearRatio: c.GearRatio, GearEfficiency: c.GearEfficiency, WheelRadiusM: c.WheelRadiusM, MassKg: c.MassKg,
		RollN: c.RollN, GradeN: c.GradeN, DragNS2PerM2: c.DragNS2PerM2, GripN: c.GripN,
	}
}

// pack returns the case's source.
func (c *LaunchCase) pack() PackCircuit {
	return PackCircuit{OCVV: c.OCVV, R0Ohm: c.R0Ohm, RC: c.RC, PathOhm: c.PathOhm}
}

// Steady returns what the launch settles to, pack fully polarised.
func (c *LaunchCase) Steady() Running {
	return SteadyOn(c.vehicle(), Controller{LimitA: c.LimitA}, c.pack(), ReferenceC)
}

// Blocked returns what it comes to with the wheels held, pack not yet polarised.
func (c *LaunchCase) Blocked() Blocked {
	still := HeatState{WindingC: ReferenceC, CaseC: ReferenceC}
	return BlockedWheels(c.vehicle(), Controller{LimitA: c.LimitA}, c.pack(), still, ReferenceC)
}

// Check reports the first number that makes the case no launch.
func (c *LaunchCase) Check() error {
	if !(c.OCVV > 0) || math.IsInf(c.OCVV, 1) {
		return fmt.Errorf("drive: open-circuit voltage %v V is not above zero", c.OCVV)
	}
	for _, f := range [...]struct {
		name  string
		value float64
	}{
		{"pack resistance", c.R0Ohm},
		{"path resistance", c.PathOhm},
		{"first branch resistance", c.RC[0].Ohm},
		{"first branch capacitance", c.RC[0].Farad},
		{"second branch resistance", c.RC[1].Ohm},
		{"second branch capacitance", c.RC[1].Farad},
		{"first branch knee", c.RC[0].KneeV},
		{"second branch knee", c.RC[1].KneeV},
		{"ramp", c.RampS},
		{"module ramp", c.ModuleRampS},
		{"current limit", c.LimitA},
	} {
		if !(f.value >= 0) || math.IsInf(f.value, 1) {
			return fmt.Errorf("drive: %s %v is below zero or not a number", f.name, f.value)
		}
	}
	return c.vehicle().Check()
}
