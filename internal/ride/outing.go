package ride

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/wiring"
)

// moment is everything that changes during an outing but for the cutoffs'
// timers. It is a plain value, so that rounds can be taken back.
type moment struct {
	pack    battery.State
	look    battery.Look // at the pack, at this instant
	fuse    wiring.FuseState
	heat    drive.HeatState
	speedMS float64
	pressS  float64 // since the pedal went down

	clockS, pedalS, metres  float64
	chargeAs, energyJ, a2s  float64
	copperJ, otherJ         float64 // heat in one motor
	peakA, lowPackV, lowBus float64
	hottestC, hottestWindC  float64
	heldV                   float64 // see holding; only where there are marks
	fuseMayAtS              float64
	currentA, packV, busV   float64 // at the end of the last step

	launches    int
	lastSpeedMS float64 // at the end of the last full drive
}

// outing is one run of the engine. What it does at present is a value and not
// a function, so that steps can stay on the stack.
type outing struct {
	c         *Case
	now       moment
	chain     cutoff.Chain
	packOpens float64 // while the volts stay above these, no cutoff opens
	busOpens  float64
	trace     func(Sample)
	untold    []Sample // of rounds that may yet be taken back
	told      int      // how many have been handed to trace
	phase     Phase
	motion    motion
	split     drive.HeatSplit // of the motors' heat, once rounds are left out
	draft     draft           // of the step under way
	parts     [6]slot         // see part
	oldest    int
	amps      float64 // while Loaded: the current, unless the load is a power
	stopS     float64 // clock time at which the outing is over whatever happens
	goOn      bool    // when the wanted time is over, having kept what it comes to
	wanted    Outcome
	holding   holding
	marks     *Marks     // takes moments from which it can be taken up again
	from      *roundMark // where it is taken up, nil at the start
	last      bool       // in the last rounds: their steps are fine enough for the end
	parted    int        // steps of this round that were
	planned   int        // steps so far: for tests
	finer     int        // into how many every step is parted: for tests
	every     bool       // follow every round, however many: for tests
}

// Run follows one case to its end. With a trace, it is called after every
// step; without one Run allocates nothing.
func Run(c *Case, trace func(Sample)) Outcome { return run(c, trace, 1) }

// run is Run with every step scaled by one over a whole number, so that tests
// can halve them.
func run(c *Case, trace func(Sample), stepScale float64) Outcome {
	o := outing{c: c, trace: trace}
	return o.run(stepScale)
}

// run follows the case from its start.
func (o *outing) run(stepScale float64) Outcome {
	c := o.c
	o.begin()
	o.finer = max(1, int(math.Round(1/stepScale)))
	if c.Load.Kind == NoLoad {
		return o.outcome(o.ride())
	}
	return o.outcome(o.bench())
}

// begin is the moment before the first step.
func (o *outing) begin() {
	c := o.c
	o.now = moment{
		pack: c.Pack.StateAt(c.StartCharge, c.PackC),
		heat: drive.HeatState{WindingC: c.AmbientC, CaseC: c.AmbientC},

		lowPackV:     math.Inf(1),
		heldV:        math.Inf(1),
		lowBus:       math.Inf(1),
		hottestC:     c.PackC,
		hottestWindC: c.AmbientC,
		fuseMayAtS:   math.Inf(1),
	}
	o.now.look = c.Pack.Look(&o.now.pack)
	o.chain = c.Cutoffs
	o.packOpens, o.busOpens = o.chain.HighestV()
	o.last = c.Load.Kind != NoLoad
	o.stopS = MaxClockS
	if c.WantedS > 0 {
		o.stopS = min(c.WantedS, MaxClockS)
	}
}

// ride drives and pauses in turn.
func (o *outing) ride() End {
	o.motion = newMotion(&o.c.Vehicle, &o.c.Controller, o.now.heat.WindingC)
	var driving, pausing grid
	driving.drive(o.c, o.finer)
	pausing.pause(o.c, o.finer)
	return o.rounds(&driving, &pausing)
}

// round is the pedal down and up once; on the bench, the load.
func (o *outing) round(on, off *grid) End {
	n := &o.now
	o.phase = Loaded
	if o.c.Load.Kind == NoLoad {
		o.phase = Driving
		n.launches++
	}
	n.speedMS, n.pressS, o.parted = 0, 0, 0
	if end := o.through(on); end != StillGoing {
		return end
	}
	n.lastSpeedMS, n.speedMS = n.speedMS, 0
	o.phase = Pausing
	return o.through(off)
}

// mostHalved is of how many steps in a row no more are made. Own choice.
const mostHalved = 64

// through takes every step of a grid.
func (o *outing) through(g *grid) End {
	for i := range g.n {
		s := &g.slots[i]
		if s.rough && s.repeat < mostHalved { // a round ago, too
			s.halve(o.c)
		}
		for range s.repeat {
			if end := o.step(s); end != StillGoing {
				return end
			}
		}
	}
	return StillGoing
}

// step takes one step, or what the clock leaves of it.
func (o *outing) step(s *slot) End {
	var end End
	if o.now.clockS+s.dtS >= o.stopS {
		now, chain, phase := o.now, o.chain, o.phase
		short := newSlot(o.c, max(o.stopS-o.now.clockS, 1e-9))
		if end = o.move(&short); end == StillGoing {
			end = WantedReached
			if o.stopS == MaxClockS {
				end = TooLong
			}
		}
		if o.goOn && end == WantedReached {
			o.wanted, o.goOn, o.stopS = o.outcome(end), false, MaxClockS
			o.now, o.chain, o.phase = now, chain, phase
			return o.step(s)
		}
	} else {
		end = o.move(s)
	}
	if o.trace != nil {
		o.note()
	}
	return end
}

// note keeps a row for the trace.
func (o *outing) note() {
	n := &o.now
	o.untold = append(o.untold, Sample{
		ClockS: n.clockS, CurrentA: n.currentA, PackV: n.packV, BusV: n.busV,
		SpeedMS: n.speedMS, Charge: o.c.Pack.Charge(n.pack), PackC: n.pack.TempC,
		WindingC: n.heat.WindingC, CaseC: n.heat.CaseC, Phase: o.phase,
	})
}

// tell hands rows to the trace until so many have been.
func (o *outing) tell(upTo int) {
	for ; o.told < upTo; o.told++ {
		o.trace(o.untold[0])
		o.untold = o.untold[1:]
	}
}

// mark is a moment that the outing can be taken back to.
type mark struct {
	now   moment
	chain cutoff.Chain
	rows  int // of the trace by then
}

func (o *outing) mark(m *mark) { m.now, m.chain, m.rows = o.now, o.chain, o.told+len(o.untold) }

func (o *outing) back(m *mark) {
	o.now, o.chain, o.untold = m.now, m.chain, o.untold[:m.rows-o.told]
}

func (o *outing) outcome(end End) Outcome {
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
		Launches: n.launches, FinalSpeed: n.lastSpeedMS, State: n.pack, Chain: o.chain,
	}
	if end == CutoffOpened {
		if place, _, opened := o.chain.First(); opened {
			out.OpenedFirst = place
		}
	}
	if n.lastSpeedMS == 0 {
		out.FinalSpeed = n.speedMS
	}
	o.phase = Ended
	if o.trace != nil {
		o.note()
		o.tell(o.told + len(o.untold))
	}
	return out
}
