package ride

import (
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
)

// LaunchS is how long a launch is followed once every soft start is over.
const LaunchS = 10

// LaunchSeconds is how long the launch of this case is followed: to where its
// peak has passed, however slow the soft starts are.
func (c *Case) LaunchSeconds() float64 {
	s := LaunchS + c.Controller.ModuleRampS
	if c.Controller.Chopper {
		s += c.Controller.RampS
	}
	return s
}

// start is steady running and one launch; nothing on a bench load. Behind a
// step-down converter the launch is that of the board: its battery currents are
// turned into the pack's by the power at their peak.
func (c *Case) start() (steady drive.Running, launched drive.LaunchResult) {
	if c.Load.Kind != NoLoad {
		return steady, launched
	}
	p := c.Circuit()
	steady = drive.SteadyOn(c.Vehicle, c.Controller, p, c.AmbientC)
	launch := c.launchCase(p)
	launched = drive.Launch(&launch, c.LaunchSeconds(), nil)
	if v := &c.Controller.Converter; v.OutV > 0 && v.Regulates(p.OCVV) {
		c.throughConverter(&launched, launch.OCVV)
	}
	return steady, launched
}

// Circuit is pack and path as the case begins, as package drive wants them.
func (c *Case) Circuit() drive.PackCircuit {
	start := c.Pack.StateAt(c.StartCharge, c.PackC)
	now := c.Pack.Look(&start)
	// A pack that stands empty in the cold drives nothing backwards.
	p := drive.PackCircuit{OCVV: max(now.EMFV, 0), R0Ohm: now.Ohm, PathOhm: c.PathOhm}
	for i, b := range c.Pack.Branches(start) {
		p.RC[i] = drive.Branch(b)
	}
	return p
}

// LaunchCase returns the start from rest of this case: pack rested at its
// starting charge, windings at ambient temperature.
func (c *Case) LaunchCase() drive.LaunchCase { return c.launchCase(c.Circuit()) }

// RecordSag runs the start from rest of this case at a state of charge, and
// records the volts that a cutoff sees at the pack and at the controller; either
// recorder may be nil. Behind a step-down converter the launch is not seen in
// the pack's volts, and nothing is recorded.
func (c *Case) RecordSag(charge float64, atPack, atBus *cutoff.Recorder) {
	for _, r := range [...]*cutoff.Recorder{atPack, atBus} {
		if r != nil {
			r.Reset()
		}
	}
	if c.Controller.Converter.OutV > 0 {
		return
	}
	low := *c
	low.StartCharge = charge
	launch := low.LaunchCase()
	launch.Limits = drive.Limits{} // nobody asks for the seconds above them
	drive.Launch(&launch, low.LaunchSeconds(), func(s drive.LaunchSample) {
		if atPack != nil {
			atPack.Add(s.TimeS, s.PackV)
		}
		if atBus != nil {
			atBus.Add(s.TimeS, s.BusV)
		}
	})
}

func (c *Case) launchCase(p drive.PackCircuit) drive.LaunchCase {
	l := drive.NewLaunchCase(c.Vehicle, c.Controller, p, c.AmbientC)
	l.Limits = c.Limits
	return l
}

// throughConverter turns the board's currents of a launch into the pack's. The
// ratio is that of the peak, where most of the surge is.
func (c *Case) throughConverter(l *drive.LaunchResult, boardV float64) {
	m := motion{outV: boardV, outShare: c.Controller.Converter.Passes()}
	if l.PeakBatteryA <= 0 {
		return
	}
	p := c.Circuit()
	packA := m.drawn(supply{emfV: p.OCVV, ohm: p.R0Ohm + p.PathOhm}, boardV*l.PeakBatteryA)
	ratio := packA / l.PeakBatteryA
	l.PeakBatteryA *= ratio
	l.SurgeA2S *= ratio * ratio
	l.ExtraC *= ratio
	l.SteadyBatteryA *= ratio
	l.EndBatteryA *= ratio
}
