package ride

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
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
	a2s, joules           float64 // square of the pack's current over time; what it gives
	lineEndV              float64 // where the electromotive force was taken to end
	pedal                 bool    // it is down
	held                  bool    // ... with full duty, so that what stands still stays so
	rough                 bool    // too much changes for one step
	cannot                bool    // the pack cannot give what is asked of it
}

// foretold is what the next step of one kind will come to, near enough.
type foretold struct {
	known                       bool
	endMS                       float64 // speed at the end
	batteryAs, metres, motorA2s float64
	ohm                         float64 // by how much the pack's is above that of the beginning, in the mean
	emfV                        float64 // by how much the electromotive force ends above its line
}

// share is what a part of the step comes to at first sight.
func (f foretold) share(share float64) foretold {
	return foretold{f.known, f.endMS, f.batteryAs * share, f.metres * share, f.motorA2s * share, f.ohm * share, f.emfV * share * share}
}

// plan works out a step.
func (o *outing) plan(d *draft, s *slot) {
	d.dtS, d.turnS, d.cannot, d.rough = s.dtS, 0, false, false
	standbyA := o.c.StandbyA
	switch {
	case o.phase == Driving:
		d.pedal = true
		o.motionOver(d, s)
		o.draw(d, s, d.firstA+standbyA, d.batteryAs*s.perS+standbyA, d.lastA+standbyA)
		o.lookBack(d, s)
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

// Bounds of what may happen to the vehicle within one step.
const (
	sameAs     = 0.02  // a charge so near to what was foretold, as a share, needs no second look
	mostLost   = 0.12  // of the volts that the speed stands for, lost within the step ...
	mostMissed = 0.005 // ... and by which they may miss their line
	coarsely   = 4     // times that much is borne in rounds before the last ones
	leastShare = 0.03  // speeds below this share of what full volts could do count as that
	roughS     = 0.005 // shorter steps are taken as they are
	fullDuty   = 1 - 1e-9
	mostTold   = 0.25 // of the volts: further no end of a step is believed to lie from its line
	fastest    = 4    // times the speed of free wheels: faster no vehicle is believed to go
)

// motionOver computes a step's motion with the electromotive force along a
// line, the drag at the mean speed and the windings as warm as halfway. These
// are taken from what the same step came to the last time, a round ago; where
// there was none, or it turns out otherwise, once more.
func (o *outing) motionOver(d *draft, s *slot) {
	n, c, m := &o.now, o.c, &o.motion
	full := supply{emfV: n.look.EMFV, ohm: n.look.Ohm + c.PathOhm, duty: duty(&c.Controller, n.pressS)}
	full.emfV = max(full.emfV-c.StandbyA*full.ohm, 0)
	if d.held = full.duty > fullDuty; d.held {
		full.duty, m.dutyPerS = 1, 0
	} else {
		m.dutyPerS = (duty(&c.Controller, n.pressS+s.dtS) - full.duty) * s.perS
	}
	told := s.told
	if !o.believes(&told, s) {
		m.warmed(n.heat.WindingC, n.heat.WindingC, s.perS)
		m.endMS = n.speedMS
		m.run(&d.stretch, full, n.speedMS, n.speedMS, s.dtS)
		told = foretold{true, d.speedMS, d.batteryAs, d.metres, d.motorA2s, 0, 0}
	}
	full.ohm += max(told.ohm, -n.look.Ohm/2) // a round ago the pack had more to lose; a line down to nothing has half
	for range 2 {
		m.warmed(n.heat.WindingC, o.meanC(s, told.motorA2s*s.perS*m.eq.Ohm, told.metres*s.perS*m.rubN), s.perS)
		m.endMS = told.endMS
		mean, end := s.pack.MeanEMF(&n.look, &n.pack, told.batteryAs*s.perS+c.StandbyA)
		mean, end = mean+told.emfV/3, end+told.emfV // what a curve adds grows with the square of the time
		src := full
		src.emfV, src.perS = max(full.emfV+2*mean-end-n.look.EMFV, 0), 2*(end-mean)*s.perS
		m.run(&d.stretch, src, n.speedMS, max(told.metres, 0)*s.perS, s.dtS)
		off := d.batteryAs - told.batteryAs
		d.lineEndV = end
		told.endMS, told.batteryAs, told.metres, told.motorA2s = d.speedMS, d.batteryAs, d.metres, d.motorA2s
		if !(math.Abs(off) > sameAs*math.Abs(d.batteryAs)) {
			break
		}
	}
	s.told = told
	o.warm(d, s, d.motorA2s*s.perS*m.eq.Ohm, d.metres*s.perS*m.rubN)
}

// believes reports whether what was foretold of a step can be: a step that went wrong
// would lead the next one further astray.
func (o *outing) believes(told *foretold, s *slot) bool {
	emf, m := o.now.look.EMFV, &o.motion
	stallA := emf / m.coldOhm
	return told.known && math.Abs(told.emfV) <= mostTold*emf && told.motorA2s*s.perS <= stallA*stallA &&
		math.Abs(told.endMS*m.eq.VoltPerMS) <= fastest*emf && told.metres*s.perS*m.eq.VoltPerMS <= fastest*emf
}

// lookBack looks at a step of driving that was worked out: how far the pack ended
// from what it was taken for, which the same step may know a round later.
func (o *outing) lookBack(d *draft, s *slot) {
	missV := d.look.EMFV - d.lineEndV
	s.told.emfV += missV
	s.told.ohm = (d.look.Ohm - o.now.look.Ohm) / 2
	d.rough = s.dtS*float64(o.finer) > roughS && d.held && o.changesMuch(d, s, missV)
}

// meanC is the windings' mean temperature over a step, the losses those of all
// motors together.
func (o *outing) meanC(s *slot, copperW, otherW float64) float64 {
	if !s.heated {
		return o.now.heat.WindingC
	}
	return s.heat.MeanC(&o.now.heat, copperW*o.motion.perMotor, otherW*o.motion.perMotor, o.c.AmbientC)
}

// changesMuch reports whether more happens to the vehicle within a step than one
// step is good for: sagging volts and warming windings, held against the volts that
// the speed stands for, because a vehicle that hardly moves is soon stopped by
// either; and by how much the volts miss their line, with what the branches may have
// done beside it where the current falls behind a start.
func (o *outing) changesMuch(d *draft, s *slot, missV float64) bool {
	n, m := &o.now, &o.motion
	lostV := math.Abs(m.ohmPerC * (d.heat.WindingC - n.heat.WindingC) * m.holdA)
	if m.outV > 0 && min(d.beginBus, d.endBus)*m.outShare >= m.outV {
		missV = 0 // a converter's output stays what it is
	} else {
		missV = math.Abs(missV) + math.Abs(d.lastA-d.batteryAs*s.perS)*s.pack.SwingOhm(&n.look)
		lostV += math.Abs(n.look.EMFV - d.lineEndV)
	}
	bound := max(m.eq.VoltPerMS*d.speedMS, leastShare*n.look.EMFV) / float64(o.finer)
	if !o.last {
		bound *= coarsely
	}
	if lostV <= mostLost*bound && missV <= mostMissed*bound {
		return false
	}
	rate := m.eq.NewtonPerA * m.eq.VoltPerMS / ((m.eq.Ohm + n.look.Ohm + o.c.PathOhm) * m.eq.InertiaKg)
	acts := min(1, rate*d.dtS)
	return lostV*acts > mostLost*bound || missV*acts > mostMissed*bound
}

// warm works out the motors' temperatures; the losses are those of all motors
// together.
func (o *outing) warm(d *draft, s *slot, copperW, otherW float64) {
	d.heat, d.copperJ, d.otherJ = o.now.heat, 0, 0
	if !s.heated {
		return
	}
	copperW, otherW = copperW*o.motion.perMotor, otherW*o.motion.perMotor
	s.heat.Advance(&d.heat, copperW, otherW, o.c.AmbientC)
	d.copperJ, d.otherJ = copperW*s.dtS, otherW*s.dtS
}

// draw takes charge from the pack: first, mean and last current of the step.
func (o *outing) draw(d *draft, s *slot, beginA, meanA, endA float64) {
	n, c := &o.now, o.c
	d.beginA, d.meanA, d.endA = beginA, meanA, endA
	d.pack = n.pack
	s.pack.AdvanceFrom(&n.look, &d.pack, meanA, c.AmbientC)
	d.a2s = meanA * meanA * d.dtS
	if d.batteryA2s > 0 {
		more := max(d.batteryA2s-d.batteryAs*d.batteryAs/d.dtS, 0)
		s.pack.Warm(&d.pack, more/d.dtS*n.look.Ohm)
		d.a2s += more
	}
	c.Pack.LookInto(&d.look, &d.pack)
	risesA := 0.0
	if d.atS > 0 {
		risesA = d.risesA()
	}
	s.pack.Straighten(&n.look, &d.look, &d.pack, meanA, risesA)
	d.joules = meanA*d.dtS*(n.look.EMFV+d.look.EMFV)/2 - d.a2s*n.look.Ohm
	if meanA > 0 {
		d.joules = max(d.joules, 0) // no passive load turns a pack around
	}
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

// move takes one step: as a whole where nothing can end the outing within it
// and nothing changes too much for one step, else closely.
func (o *outing) move(s *slot) End {
	d := &o.draft
	o.planned++
	o.plan(d, s)
	if d.rough || o.mayEnd(d) || o.watched(d) {
		return o.closely(s, d)
	}
	if o.chain.Len() > 0 {
		o.chain.Step(cutoff.Sample{PackV: d.endV, BusV: d.endBus, DtS: d.dtS})
	}
	o.take(d)
	return StillGoing
}

// take carries a step out.
func (o *outing) take(d *draft) {
	n := &o.now
	if o.marks != nil {
		o.heldThrough(d)
	}
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
	n.a2s += d.a2s
	n.energyJ += d.joules
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
