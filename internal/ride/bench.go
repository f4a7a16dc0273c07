package ride

import "math"

// Bench steps are chosen from the load: a pack takes about this many to run
// down.
const benchSteps = 500

// bench draws the load until something ends it.
func (o *outing) bench(stepScale float64) End {
	o.phase = Loaded
	switch o.c.Load.Kind {
	case ConstantPower:
		return o.hold(o.c.Load.Amount/o.c.Pack.NominalV(), stepScale)
	case CurrentPattern:
		return o.play(stepScale)
	default:
		o.amps = o.c.Load.Amount
		return o.hold(o.amps, stepScale)
	}
}

// hold repeats one step, pausing where the case says so. About is the current
// that sets the length of a step.
func (o *outing) hold(aboutA, stepScale float64) End {
	c := o.c
	dt := 60.0
	if aboutA > 0 {
		dt = min(dt, 3600*c.Pack.RatedAh()/aboutA/benchSteps)
	}
	dt = max(dt, 0.01) * stepScale
	var on, off grid
	if c.PauseS > 0 && c.DriveS > 0 {
		on.spread(c, c.DriveS, dt, 1)
		off.pause(c, stepScale)
	} else {
		on.add(c, dt, 1, 1)
	}
	for {
		before := o.now
		o.phase = Loaded
		if end := o.through(&on); end != StillGoing {
			return end
		}
		o.phase = Pausing
		if end := o.through(&off); end != StillGoing {
			return end
		}
		if off.n > 0 {
			o.skip(&before)
		}
	}
}

// play draws a pattern once.
func (o *outing) play(stepScale float64) End {
	var g grid
	for _, d := range o.c.Load.Pattern {
		o.amps = d.CurrentA
		g.n = 0
		g.spread(o.c, d.Sec, 30*stepScale, 1)
		if end := o.through(&g); end != StillGoing {
			return end
		}
	}
	return PatternPlayed
}

// current draws a constant current. A pack that would have to go below zero
// volts at the load for it cannot give it.
func (o *outing) current(s *slot) End {
	n := &o.now
	amps := o.amps + o.c.StandbyA
	if o.amps > 0 && n.look.EMFV <= amps*(n.look.Ohm+o.c.PathOhm) {
		return CannotSupply
	}
	if o.amps > 0 {
		n.pedalS += s.dtS
	}
	end := o.draw(s, amps, amps, amps)
	if end == StillGoing && o.amps > 0 && n.busV <= 0 {
		return CannotSupply
	}
	return end
}

// powerRounds is how often the current at a step's end is solved, each time
// behind the mean that the one before leads to.
const powerRounds = 3

// power draws constant watts at the far end of the path. The current is
// solved at the start of the step and again behind it, and the mean is drawn.
func (o *outing) power(s *slot) End {
	watts := o.c.Load.Amount
	first, ok := o.currentFor(watts)
	if !ok {
		return CannotSupply
	}
	n := &o.now
	before, look := n.pack, n.look
	last := first
	for range powerRounds {
		s.pack.AdvanceFrom(&n.look, &n.pack, (first+last)/2, o.c.AmbientC)
		n.look = o.c.Pack.Look(&n.pack)
		last, ok = o.currentFor(watts)
		n.pack, n.look = before, look
		if !ok {
			return CannotSupply
		}
	}
	n.pedalS += s.dtS
	return o.draw(s, first+o.c.StandbyA, (first+last)/2+o.c.StandbyA, last+o.c.StandbyA)
}

// currentFor solves watts = I (emf - I ohm) for the smaller current.
func (o *outing) currentFor(watts float64) (amps float64, ok bool) {
	emf := o.now.look.EMFV
	ohm := o.now.look.Ohm + o.c.PathOhm
	under := emf*emf - 4*ohm*watts
	switch {
	case under < 0 || emf <= 0:
		return 0, false
	case ohm == 0:
		return watts / emf, true
	}
	return (emf - math.Sqrt(under)) / (2 * ohm), true
}
