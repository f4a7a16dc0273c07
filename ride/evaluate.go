package ride

import "example.org/packcheck/drive"

// LaunchS is how long a launch is followed.
const LaunchS = 10

// Result is all that one case comes to.
type Result struct {
	Steady drive.Running      // with the pack as it starts, polarisation settled
	Launch drive.LaunchResult // one start from rest, pack rested
	Outing Outcome
}

// Evaluate computes steady running, one launch and the whole outing of a
// case. It allocates nothing. On a bench load only the outing is computed.
func Evaluate(c *Case) Result {
	var r Result
	if c.Load.Kind == NoLoad {
		start := c.Pack.StateAt(c.StartCharge, c.PackC)
		branches := c.Pack.Branches(start)
		src := drive.Source{
			OCVV: c.Pack.EMF(&start),
			Ohm:  c.Pack.SourceOhm(&start) + branches[0].Ohm + branches[1].Ohm + c.PathOhm,
		}
		r.Steady = drive.Steady(c.Vehicle, c.Controller, src, c.AmbientC)
		launch := c.LaunchCase()
		r.Launch = drive.Launch(&launch, LaunchS, nil)
	}
	r.Outing = Run(c, nil)
	return r
}

// LaunchCase returns the start from rest of this case: pack rested at its
// starting charge, windings at ambient temperature. Behind a step-down
// converter the converter's output is the source, and the battery currents of
// the launch are those at its output.
func (c *Case) LaunchCase() drive.LaunchCase {
	start := c.Pack.StateAt(c.StartCharge, c.PackC)
	v := &c.Vehicle
	l := drive.LaunchCase{
		OCVV:             c.Pack.EMF(&start),
		R0Ohm:            c.Pack.SourceOhm(&start),
		PathOhm:          c.PathOhm,
		Motors:           v.Motors,
		MotorsInSeries:   v.MotorsInSeries,
		WindingOhm:       v.Motor.OhmAt(c.AmbientC),
		WindingH:         v.Motor.WindingH,
		TorqueConstant:   v.Motor.TorqueConstant,
		NoLoadA:          v.Motor.NoLoadA,
		GearRatio:        v.GearRatio,
		GearEfficiency:   v.GearEfficiency,
		WheelRadiusM:     v.WheelRadiusM,
		MassKg:           v.MassKg,
		RotorInertiaKgM2: v.Motor.RotorInertiaKgM2,
		RollN:            v.RollN,
		GradeN:           v.GradeN,
		DragNS2PerM2:     v.DragNS2PerM2,
		GripN:            v.GripN,
		ModuleRampS:      c.Controller.ModuleRampS,
	}
	if c.Controller.Chopper {
		l.RampS, l.LimitA = c.Controller.RampS, c.Controller.LimitA
	}
	if conv := c.Controller.Converter; conv.OutV > 0 {
		l.OCVV = min(conv.OutV, l.OCVV)
		l.R0Ohm, l.PathOhm = 0, 0
		if conv.LimitA > 0 && (l.LimitA == 0 || conv.LimitA < l.LimitA) {
			l.LimitA = conv.LimitA
		}
		return l
	}
	for i, b := range c.Pack.Branches(start) {
		l.RC[i] = drive.Branch(b)
	}
	return l
}
