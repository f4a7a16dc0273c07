package ride

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/drive"
	"example.org/packcheck/wiring"
)

// draft is what a step comes to: nothing of the outing changes until it is
// carried out.
type draft struct {
	stretch
	dtS                   float64
	pack                  battery.State
	look                  battery.Look
	heat                  drive.HeatState
	copperJ, otherJ       float64
	fuse                  wiring.FuseState
	beginA, meanA, endA   float64 // of the pack, standby included
	beginV, endV          float64 // of the pack
	beginBus, endBus      float64
	turnS, turnV, turnBus float64 // where the current leaves its cap
	pedal                 bool    // it is down
	held                  bool    // ... with full duty, so that what stands still stays so
	cannot                bool    // the pack cannot give what is asked of it
}

// plan works out a step.
func (o *outing) plan(d *draft, s *slot) {
	d.dtS, d.turnS, d.cannot = s.dtS, 0, false
	standbyA := o.c.StandbyA
	switch {
	case o.phase == Driving:
		d.held = o.motionOver(d, s)
		d.pedal = true
		o.draw(d, s, d.firstA+standbyA, d.batteryAs/s.dtS+standbyA, d.lastA+standbyA)
	case o.phase == Pausing:
		d.stretch, d.held, d.pedal = stretch{stopsS: math.Inf(1)}, false, false
		o.warm(d, s, 0, 0)
		o.draw(d, s, standbyA, standbyA, standbyA)
	case o.c.Load.Kind == ConstantPower:
		o.power(d, s)
	default:
		o.current(d, s)
	}
}

// motionOver computes a step's motion: once with the pack as it is, to know
// current and speed, and then with the mean of its electromotive force, the
// drag at that speed and the windings as warm as halfway. It reports whether
// no soft start is at work.
func (o *outing) motionOver(d *draft, s *slot) (fullDuty bool) {
	n, c, m := &o.now, o.c, &o.motion
	src := supply{emfV: n.look.EMFV, ohm: n.look.Ohm + c.PathOhm, duty: duty(&c.Controller, n.pressS+s.dtS/2)}
	src.emfV = max(src.emfV-c.StandbyA*src.ohm, 0)
	m.warmed(n.heat.WindingC)
	m.run(&d.stretch, src, n.speedMS, n.speedMS, s.dtS)
	if s.dtS >= onceBelowS {
		o.warm(d, s, d.motorA2s/s.dtS*m.eq.Ohm, d.metres/s.dtS*o.rubN())
		m.warmed((n.heat.WindingC + d.heat.WindingC) / 2)
		src.emfV = max(src.emfV+s.pack.MeanEMF(&n.look, &n.pack, d.batteryAs/s.dtS+c.StandbyA)-n.look.EMFV, 0)
		m.run(&d.stretch, src, n.speedMS, d.metres/s.dtS, s.dtS)
	}
	o.warm(d, s, d.motorA2s/s.dtS*m.eq.Ohm, d.metres/s.dtS*o.rubN())
	return src.duty == 1
}

// rubN is the motors' own friction: LossN is what is left of it behind the
// gears.
func (o *outing) rubN() float64 { return o.motion.eq.LossN / o.c.Vehicle.GearEfficiency }

// warm works out the motors' temperatures; the losses are those of all motors
// together.
func (o *outing) warm(d *draft, s *slot, copperW, otherW float64) {
	d.heat, d.copperJ, d.otherJ = o.now.heat, 0, 0
	if !s.heated {
		return
	}
	n := float64(o.c.Vehicle.Motors)
	copperW, otherW = copperW/n, otherW/n
	s.heat.Advance(&d.heat, copperW, otherW, o.c.AmbientC)
	d.copperJ, d.otherJ = copperW*s.dtS, otherW*s.dtS
}

// draw takes charge from the pack: first, mean and last current of the step.
func (o *outing) draw(d *draft, s *slot, beginA, meanA, endA float64) {
	n, c := &o.now, o.c
	d.beginA, d.meanA, d.endA = beginA, meanA, endA
	d.pack = n.pack
	s.pack.AdvanceFrom(&n.look, &d.pack, meanA, c.AmbientC)
	d.look = c.Pack.Look(&d.pack)
	d.beginV, d.endV = n.look.EMFV-beginA*n.look.Ohm, d.look.EMFV-endA*d.look.Ohm
	d.beginBus, d.endBus = d.beginV-beginA*c.PathOhm, d.endV-endA*c.PathOhm
	if d.pedal && d.cappedS > 0 && d.cappedS < d.dtS {
		// So far the pack has moved on as the charge has.
		share := d.cappedAs / d.batteryAs
		turnA := d.cappedA + c.StandbyA
		d.turnS = d.cappedS
		d.turnV = n.look.EMFV + (d.look.EMFV-n.look.EMFV)*share - turnA*n.look.Ohm
		d.turnBus = d.turnV - turnA*c.PathOhm
	}
	if c.Fused {
		d.fuse = n.fuse
		d.fuse.Step(&c.Fuse, meanA, d.dtS)
	}
}

// move takes one step: as a whole where nothing can end the outing within it,
// else closely.
func (o *outing) move(s *slot) End {
	var d draft
	o.plan(&d, s)
	if o.mayEnd(&d) {
		return o.closely(s)
	}
	o.take(&d)
	return StillGoing
}

// take carries a step out.
func (o *outing) take(d *draft) {
	n := &o.now
	n.pack, n.look, n.heat = d.pack, d.look, d.heat
	n.copperJ += d.copperJ
	n.otherJ += d.otherJ
	n.speedMS = d.speedMS
	n.metres += d.metres
	n.clockS += d.dtS
	n.pressS += d.dtS
	if d.pedal {
		n.pedalS += d.dtS
	}
	n.chargeAs += d.meanA * d.dtS
	n.a2s += (d.beginA*d.beginA + 4*d.meanA*d.meanA + d.endA*d.endA) / 6 * d.dtS
	n.energyJ += d.meanA * d.dtS * (max(d.beginV, 0) + max(d.endV, 0)) / 2 // no passive load turns a pack around
	n.see(d.beginA, d.beginV, d.beginBus)
	n.see(d.endA, d.endV, d.endBus)
	if d.turnS > 0 {
		n.see(d.cappedA+o.c.StandbyA, d.turnV, d.turnBus)
	}
	if n.pack.TempC > n.hottestC {
		n.hottestC = n.pack.TempC
	}
	if n.heat.WindingC > n.hottestWindC {
		n.hottestWindC = n.heat.WindingC
	}
	n.currentA, n.packV, n.busV = d.endA, d.endV, d.endBus
	if o.c.Fused {
		n.fuse = d.fuse
		if n.fuse.MayHaveOpened() {
			n.fuseMayAtS = min(n.fuseMayAtS, n.clockS)
		}
	}
}

// see notes the greatest current and the lowest volts. Comparisons instead of
// max and min spare their care for NaN.
func (n *moment) see(amps, packV, busV float64) {
	if amps > n.peakA {
		n.peakA = amps
	}
	if packV < n.lowPackV {
		n.lowPackV = packV
	}
	if busV < n.lowBus {
		n.lowBus = busV
	}
}
