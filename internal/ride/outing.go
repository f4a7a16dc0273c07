package ride

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/wiring"
)

// moment is everything that changes during an outing. It is a plain value, so
// that a step can be taken back and tried again shorter.
type moment struct {
	pack    battery.State
	look    battery.Look // at the pack, at this instant
	chain   cutoff.Chain
	fuse    wiring.FuseState
	heat    drive.HeatState
	speedMS float64

	clockS, pedalS, metres  float64
	chargeAs, energyJ, a2s  float64
	copperJ, otherJ         float64 // heat in one motor
	peakA, lowPackV, lowBus float64
	hottestC, hottestWindC  float64
	fuseMayAtS              float64
	currentA, packV, busV   float64 // at the end of the last step
}

// outing is one run of the engine. What it does at present is a value and not
// a function, so that steps can stay on the stack.
type outing struct {
	c      *Case
	now    moment
	trace  func(Sample)
	phase  Phase
	motion motion  // while Driving
	amps   float64 // while Loaded: the current, unless the load is a power
	every  bool    // follow every round, however many: for tests
	// settling says that rounds have just been left out: the coming one is not
	// like those before it.
	settling bool
}

// Run follows one case to its end. With a trace, it is called after every
// step; without one Run allocates nothing.
func Run(c *Case, trace func(Sample)) Outcome { return run(c, trace, 1) }

// run is Run with every step scaled, so that tests can halve them.
func run(c *Case, trace func(Sample), stepScale float64) Outcome {
	o := outing{c: c, trace: trace}
	return o.run(stepScale)
}

// run follows the case from its start.
func (o *outing) run(stepScale float64) Outcome {
	c := o.c
	o.now = moment{
		pack:  c.Pack.StateAt(c.StartCharge, c.PackC),
		chain: c.Cutoffs,
		heat:  drive.HeatState{WindingC: c.AmbientC, CaseC: c.AmbientC},

		lowPackV:     math.Inf(1),
		lowBus:       math.Inf(1),
		hottestC:     c.PackC,
		hottestWindC: c.AmbientC,
		fuseMayAtS:   math.Inf(1),
	}
	o.now.look = c.Pack.Look(&o.now.pack)
	var (
		end      End
		launches int
		last     float64
	)
	if c.Load.Kind == NoLoad {
		end, launches, last = o.ride(stepScale)
	} else {
		end = o.bench(stepScale)
	}
	return o.outcome(end, launches, last)
}

// ride drives and pauses in turn.
func (o *outing) ride(stepScale float64) (end End, launches int, lastSpeed float64) {
	var driving, pausing grid
	driving.drive(o.c, stepScale)
	pausing.pause(o.c, stepScale)
	for {
		before := o.now
		launches++
		o.phase = Driving
		o.now.speedMS = 0
		if end = o.press(&driving); end != StillGoing {
			return end, launches, lastSpeed
		}
		lastSpeed = o.now.speedMS
		o.phase = Pausing
		o.now.speedMS = 0
		if end = o.through(&pausing); end != StillGoing {
			return end, launches, lastSpeed
		}
		launches += o.skip(&before)
	}
}

// press is one time the pedal is down.
func (o *outing) press(g *grid) End {
	o.motion = newMotion(&o.c.Vehicle, &o.c.Controller, o.now.heat.WindingC)
	return o.through(g)
}

// through takes every step of a grid.
func (o *outing) through(g *grid) End {
	for i := range g.n {
		s := &g.slots[i]
		for range s.repeat {
			if end := o.step(s); end != StillGoing {
				return end
			}
		}
	}
	return StillGoing
}

// step takes one step. When something ends the outing within it, the step is
// taken back and shortened until the moment is known to a few thousandths of
// the step.
func (o *outing) step(s *slot) End {
	if stop := o.stopS(); o.now.clockS+s.dtS >= stop {
		short := newSlot(o.c, max(stop-o.now.clockS, 1e-9), s.duty)
		end := o.settle(&short)
		if end == StillGoing {
			end = WantedReached
			if stop == MaxClockS {
				end = TooLong
			}
		}
		o.emit()
		return end
	}
	end := o.settle(s)
	o.emit()
	return end
}

// settle takes a step and, when it ends the outing, finds the moment.
func (o *outing) settle(s *slot) End {
	before := o.now
	end := o.move(s)
	if end == StillGoing || end == CannotMove {
		return end
	}
	low, high := 0.0, s.dtS
	for high-low > s.dtS/4096 && high > 1e-3 {
		o.now = before
		middle := (low + high) / 2
		short := newSlot(o.c, middle, s.duty)
		if at := o.move(&short); at == StillGoing {
			low = middle
		} else {
			high, end = middle, at
		}
	}
	o.now = before
	short := newSlot(o.c, high, s.duty)
	if at := o.move(&short); at != StillGoing {
		end = at
	}
	return end
}

// stopS is the clock time at which the outing is over whatever happens.
func (o *outing) stopS() float64 {
	if o.c.WantedS > 0 {
		return min(o.c.WantedS, MaxClockS)
	}
	return MaxClockS
}

// move takes one step, whatever it may end.
func (o *outing) move(s *slot) End {
	switch {
	case o.phase == Driving:
		return o.drive(s)
	case o.phase == Pausing:
		return o.rest(s)
	case o.c.Load.Kind == ConstantPower:
		return o.power(s)
	default:
		return o.current(s)
	}
}

// drive is one step with the pedal down. Where cutoffs watch, it is parted at
// the moment when the current leaves its cap: the volts are lowest there.
func (o *outing) drive(s *slot) End {
	c := o.c
	var st stretch
	o.motionOver(&st, s)
	if c.Cutoffs.Len() > 0 && st.cappedS > 0 && st.cappedS < 0.999*s.dtS {
		first := newSlot(c, st.cappedS, s.duty)
		o.motionOver(&st, &first)
		if end := o.take(&first, &st); end != StillGoing {
			return end
		}
		rest := newSlot(c, s.dtS-first.dtS, s.duty)
		o.motionOver(&st, &rest)
		return o.take(&rest, &st)
	}
	return o.take(s, &st)
}

// motionOver computes a step's motion: once with the pack as it is, to know
// current and speed, and then with the mean of its electromotive force and the
// drag at that speed.
func (o *outing) motionOver(out *stretch, s *slot) {
	n, c := &o.now, o.c
	src := supply{emfV: n.look.EMFV, ohm: n.look.Ohm + c.PathOhm, duty: s.duty}
	src.emfV = max(src.emfV-c.StandbyA*src.ohm, 0)
	o.motion.run(out, src, n.speedMS, n.speedMS, s.dtS)
	if s.dtS < onceBelowS {
		return
	}
	src.emfV = max(src.emfV+s.pack.MeanEMF(&n.look, &n.pack, out.batteryAs/s.dtS+c.StandbyA)-n.look.EMFV, 0)
	o.motion.run(out, src, n.speedMS, out.metres/s.dtS, s.dtS)
}

// take carries a stretch out: vehicle, motors' heat, pack.
func (o *outing) take(s *slot, st *stretch) End {
	n, c, m := &o.now, o.c, &o.motion
	// LossN is what is left of the motors' own friction behind the gears.
	o.warm(s, st.motorA2s/s.dtS*m.eq.Ohm, m.eq.LossN/c.Vehicle.GearEfficiency*st.metres/s.dtS)
	n.speedMS = st.speedMS
	n.metres += st.metres
	n.pedalS += s.dtS
	end := o.draw(s, st.firstA+c.StandbyA, st.batteryAs/s.dtS+c.StandbyA, st.lastA+c.StandbyA)
	if end == StillGoing && st.stuck && s.duty == 1 {
		return CannotMove
	}
	return end
}

// rest is one step with the pedal up.
func (o *outing) rest(s *slot) End {
	o.warm(s, 0, 0)
	return o.draw(s, o.c.StandbyA, o.c.StandbyA, o.c.StandbyA)
}

// warm advances the motors' temperatures; the losses are those of all motors
// together.
func (o *outing) warm(s *slot, copperW, otherW float64) {
	v := &o.c.Vehicle
	if !v.Motor.Thermal.Known() {
		return
	}
	n := float64(v.Motors)
	s.heat.Advance(&o.now.heat, copperW/n, otherW/n, o.c.AmbientC)
	o.now.copperJ += copperW / n * s.dtS
	o.now.otherJ += otherW / n * s.dtS
	o.now.hottestWindC = max(o.now.hottestWindC, o.now.heat.WindingC)
}

// draw takes charge from the pack: first, mean and last current of the step.
// Cutoffs and fuse see what they would see.
func (o *outing) draw(s *slot, firstA, meanA, lastA float64) End {
	n := &o.now
	c := o.c
	firstV := n.look.EMFV - firstA*n.look.Ohm
	s.pack.AdvanceFrom(&n.look, &n.pack, meanA, c.AmbientC)
	n.look = c.Pack.Look(&n.pack)
	lastV := n.look.EMFV - lastA*n.look.Ohm
	firstBus, lastBus := firstV-firstA*c.PathOhm, lastV-lastA*c.PathOhm

	n.clockS += s.dtS
	n.chargeAs += meanA * s.dtS
	n.a2s += (firstA*firstA + 4*meanA*meanA + lastA*lastA) / 6 * s.dtS
	n.energyJ += meanA * s.dtS * (max(firstV, 0) + max(lastV, 0)) / 2 // no passive load turns a pack around
	// Comparisons instead of max and min spare their care for NaN.
	if firstA > n.peakA {
		n.peakA = firstA
	}
	if lastA > n.peakA {
		n.peakA = lastA
	}
	if firstV < n.lowPackV {
		n.lowPackV = firstV
	}
	if lastV < n.lowPackV {
		n.lowPackV = lastV
	}
	if firstBus < n.lowBus {
		n.lowBus = firstBus
	}
	if lastBus < n.lowBus {
		n.lowBus = lastBus
	}
	if n.pack.TempC > n.hottestC {
		n.hottestC = n.pack.TempC
	}
	n.currentA, n.packV, n.busV = lastA, lastV, lastBus

	if n.chain.Len() > 0 {
		if n.chain.Step(cutoff.Sample{PackV: firstV, BusV: firstBus, DtS: s.dtS / 2}) ||
			n.chain.Step(cutoff.Sample{PackV: lastV, BusV: lastBus, DtS: s.dtS / 2}) {
			return CutoffOpened
		}
	}
	if c.Fused {
		n.fuse.Step(&c.Fuse, meanA, s.dtS)
		if n.fuse.MayHaveOpened() {
			n.fuseMayAtS = min(n.fuseMayAtS, n.clockS)
		}
		if n.fuse.MustHaveOpened() {
			return FuseOpened
		}
	}
	if n.look.Empty {
		return PackEmpty
	}
	if c.UntilV > 0 && lastV <= c.UntilV {
		return VoltageReached
	}
	return StillGoing
}

func (o *outing) emit() {
	if o.trace == nil {
		return
	}
	n := &o.now
	o.trace(Sample{
		ClockS: n.clockS, CurrentA: n.currentA, PackV: n.packV, BusV: n.busV,
		SpeedMS: n.speedMS, Charge: o.c.Pack.Charge(n.pack), PackC: n.pack.TempC,
		WindingC: n.heat.WindingC, CaseC: n.heat.CaseC, Phase: o.phase,
	})
}

func (o *outing) outcome(end End, launches int, lastSpeed float64) Outcome {
	n := &o.now
	p := o.c.Pack
	out := Outcome{
		PedalS: n.pedalS, ClockS: n.clockS, DistanceM: n.metres, EndedBy: end,
		DeliveredAh: n.chargeAs / 3600, DeliveredWh: n.energyJ / 3600,
		ChargeLeft: max(0, p.Charge(n.pack)), RestV: p.RestedV(n.pack), EndPackV: n.packV,
		LowestPackV: n.lowPackV, LowestBusV: n.lowBus,
		LowestCellV:  p.WeakestCellV(&n.pack, n.currentA),
		PeakBatteryA: n.peakA, RMSA: math.Sqrt(n.a2s / max(n.clockS, 1e-9)),
		PackC: n.pack.TempC, HottestC: n.hottestC,
		WindingC: n.hottestWindC, CaseC: n.heat.CaseC,
		FuseMayOpen: !math.IsInf(n.fuseMayAtS, 1), FuseMayAtS: n.fuseMayAtS,
		Launches: launches, FinalSpeed: lastSpeed, State: n.pack, Chain: n.chain,
	}
	if end == CutoffOpened {
		if place, _, opened := n.chain.First(); opened {
			out.OpenedFirst = place
		}
	}
	if lastSpeed == 0 {
		out.FinalSpeed = n.speedMS
	}
	o.phase = Ended
	o.emit()
	return out
}
