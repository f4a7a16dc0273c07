package ride

import "math"

// Bench steps are chosen from the load: a pack takes about this many to run
// down.
const benchSteps = 500

// bench draws the load until something ends it.
func (o *outing) bench() End {
	o.phase = Loaded
	switch o.c.Load.Kind {
	case ConstantPower:
		return o.hold(o.c.Load.Amount / o.c.Pack.NominalV())
	case CurrentPattern:
		return o.play()
	default:
		o.amps = o.c.Load.Amount
		return o.hold(o.amps)
	}
}

// hold repeats one step, pausing where the case says so. About is the current
// that sets the length of a step.
func (o *outing) hold(aboutA float64) End {
	c := o.c
	dt := 60.0
	if aboutA > 0 {
		dt = min(dt, 3600*c.Pack.RatedAh()/aboutA/benchSteps)
	}
	dt = max(dt, 0.01)
	var on, off grid
	if c.PauseS > 0 && c.DriveS > 0 {
		on.spread(c, c.DriveS, dt, o.finer)
		off.pause(c, o.finer)
	} else {
		on.spread(c, dt, dt, o.finer)
	}
	return o.rounds(&on, &off)
}

// play draws a pattern once.
func (o *outing) play() End {
	var g grid
	for _, d := range o.c.Load.Pattern {
		o.amps = d.CurrentA
		g.n = 0
		g.spread(o.c, d.Sec, 30, o.finer)
		if end := o.through(&g); end != StillGoing {
			return end
		}
	}
	return PatternPlayed
}

// current draws a constant current. A pack that would have to go below zero
// volts at the load for it cannot give it.
func (o *outing) current(d *draft, s *slot) {
	n := &o.now
	amps := o.amps + o.c.StandbyA
	d.stretch, d.heat, d.held, d.pedal = stretch{stopsS: math.Inf(1)}, n.heat, false, o.amps > 0
	o.draw(d, s, amps, amps, amps)
	d.cannot = o.amps > 0 && (n.look.EMFV <= amps*(n.look.Ohm+o.c.PathOhm) || d.endBus <= 0)
}

// powerRounds is how often the current at a step's end is solved, each time
// behind the mean that the one before leads to.
const powerRounds = 3

// power draws constant watts at the far end of the path. The current is
// solved at the start of the step and again behind it, and the mean is drawn.
func (o *outing) power(d *draft, s *slot) {
	n, c := &o.now, o.c
	d.stretch, d.heat, d.held, d.pedal = stretch{stopsS: math.Inf(1)}, n.heat, false, true
	first, ok := o.currentFor(n.look.EMFV, n.look.Ohm)
	last := first
	for range powerRounds {
		if !ok {
			break
		}
		state := n.pack
		s.pack.AdvanceFrom(&n.look, &state, (first+last)/2, c.AmbientC)
		look := c.Pack.Look(&state)
		last, ok = o.currentFor(look.EMFV, look.Ohm)
	}
	if !ok {
		last = first
	}
	o.draw(d, s, first+c.StandbyA, (first+last)/2+c.StandbyA, last+c.StandbyA)
	d.cannot = !ok
}

// currentFor solves watts = I (emf - I ohm) for the smaller current; with the
// greatest power that there is where the watts are beyond it.
func (o *outing) currentFor(emfV, packOhm float64) (amps float64, ok bool) {
	watts, ohm := o.c.Load.Amount, packOhm+o.c.PathOhm
	under := emfV*emfV - 4*ohm*watts
	switch {
	case emfV <= 0:
		return 0, false
	case under < 0:
		return emfV / (2 * ohm), false
	case ohm == 0:
		return watts / emfV, true
	}
	return (emfV - math.Sqrt(under)) / (2 * ohm), true
}
