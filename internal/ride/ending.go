package ride

import (
	"math"

	"example.org/packcheck/cutoff"
	"example.org/packcheck/internal/solve"
)

const (
	// splits is into how many parts a step is taken that must be looked at more
	// closely.
	splits = 2
	// noticedS is how long the pedal stays down on a vehicle that does not
	// start. Our own choice: what ends such an outing is not a matter of time.
	noticedS = 0.4
	// Below these lengths an end is searched for within the step, and volts may
	// run along a straight line: where they fall to a cutoff, and where they
	// come back as it is about to open.
	endS, fallS, backS = 1.0, 0.05, 0.002
	// mostParted is how many steps of a round are parted, for what changes much in them
	// or for volts that come across a cutoff's; more than that flickers, and no step is
	// fine enough to tell how it ends. Own choice: the usual rounds part up to a hundred.
	mostParted = 250
	// whenS is how exactly the moment of an end is found.
	whenS = 1e-3
)

// mayEnd reports whether something but the cutoffs may end the outing within a
// step.
func (o *outing) mayEnd(d *draft) bool {
	return d.cannot || d.look.Empty || o.c.UntilV > 0 && d.endV <= o.c.UntilV ||
		d.held && (d.stuck || d.stopsS < d.dtS) || o.c.Fused && d.fuse.MustHaveOpened()
}

// watched reports whether volts come down to where a cutoff takes note.
func (o *outing) watched(d *draft) bool {
	return o.chain.Len() > 0 && (min(d.beginV, d.endV) <= o.packOpens || min(d.beginBus, d.endBus) <= o.busOpens ||
		d.turnS > 0 && (d.turnV <= o.packOpens || d.turnBus <= o.busOpens))
}

// closely takes a step in parts where it is too long for what happens in it,
// and else as far as the outing goes.
func (o *outing) closely(s *slot, d *draft) End {
	chain := o.chain
	at, end, clear := o.endIn(d, &chain)
	if o.parted >= mostParted*o.finer {
		d.rough, clear = false, true
	}
	if d.rough || !clear {
		o.parted++
	}
	if !d.rough && !clear {
		return o.around(s, at)
	}
	if d.rough || end != StillGoing && end != CutoffOpened && s.dtS > endS {
		s.rough = s.rough || d.rough
		part := o.part(s.dtS / splits)
		part.told = s.told.share(1.0 / splits)
		for range splits {
			if end := o.move(&part); end != StillGoing {
				return end
			}
		}
		return StillGoing
	}
	switch end {
	case StillGoing:
		o.chain = chain
		o.take(d)
		return StillGoing
	case CutoffOpened:
		o.chain = chain
	}
	if at > 0 {
		last := newSlot(o.c, at)
		o.plan(d, &last)
		o.take(d)
	}
	return end
}

// around takes a step in three parts: up to a moment that a straight line foretells,
// over it, and on. Where the line was wrong the part that has it is parted again.
func (o *outing) around(s *slot, atS float64) End {
	const half = 1.0 / 16
	from, to := max(atS-half*s.dtS, 0), min(atS+half*s.dtS, s.dtS)
	var part slot
	for _, dtS := range [...]float64{from, to - from, s.dtS - to} {
		if dtS < leastS {
			continue
		}
		part = o.part(dtS)
		part.told = s.told.share(dtS / s.dtS)
		if end := o.move(&part); end != StillGoing {
			return end
		}
	}
	return StillGoing
}

// part is newSlot with a memory for the lengths that were asked for last.
func (o *outing) part(dtS float64) slot {
	for i := range o.parts {
		if o.parts[i].dtS == dtS {
			return o.parts[i]
		}
	}
	s := newSlot(o.c, dtS)
	o.parts[o.oldest] = s
	o.oldest = (o.oldest + 1) % len(o.parts)
	return s
}

// endIn returns when and how a step ends the outing. The chain is taken through
// the step; clear says that the step is short enough for that.
func (o *outing) endIn(d *draft, chain *cutoff.Chain) (atS float64, end End, clear bool) {
	atS, clear = math.Inf(1), true
	first := func(s float64, e End) {
		if s < atS {
			atS, end = s, e
		}
	}
	if d.held && d.stopsS < d.dtS {
		first(d.stopsS, CannotMove)
	}
	if d.held && d.stuck && o.now.speedMS == 0 {
		first(noticedS, CannotMove)
	}
	if chain.Len() > 0 {
		var opensS, crossS float64
		if opensS, crossS, clear = o.watch(chain, d); !clear {
			return crossS, StillGoing, false
		}
		if opensS <= d.dtS {
			first(max(opensS, 1e-9), CutoffOpened) // with the load still on
		}
	}
	for _, e := range [...]End{CannotSupply, PackEmpty, VoltageReached, FuseOpened} {
		if past := o.past(d, e); past > 0 {
			at := 0.0 // a long step is looked at again, in parts, and one of a round that is followed again once more
			if d.dtS <= endS && o.last {
				at = o.crossing(e, d.dtS, past)
			}
			first(at, e)
		}
	}
	return atS, end, clear
}

// past is how far past an end a step leads; not above zero when not past it.
func (o *outing) past(d *draft, e End) float64 {
	switch {
	case e == CannotSupply:
		if d.cannot {
			return 1
		}
	case e == PackEmpty:
		if d.look.Empty {
			return max(-d.look.Left, math.SmallestNonzeroFloat64)
		}
		return -d.look.Left
	case e == VoltageReached && o.c.UntilV > 0:
		if d.endV == o.c.UntilV {
			return math.SmallestNonzeroFloat64
		}
		return o.c.UntilV - d.endV
	case e == FuseOpened && o.c.Fused:
		if d.fuse.MustHaveOpened() {
			return d.fuse.Late()
		}
	}
	return -1
}

// crossing returns the time within a step at which it comes past an end; where
// the pack cannot supply what is asked, the last at which it still can.
func (o *outing) crossing(e End, dtS, past float64) float64 {
	pastAt := func(s float64) float64 {
		part := newSlot(o.c, s)
		var d draft
		o.plan(&d, &part)
		return o.past(&d, e)
	}
	const atOnceS = 1e-9
	began := pastAt(atOnceS)
	if began > 0 {
		return 0
	}
	b := solve.Narrow(solve.Bracket{Lo: atOnceS, Hi: dtS, FLo: began, FHi: past}, whenS/float64(o.finer), pastAt)
	if e == CannotSupply {
		return b.Lo
	}
	return b.Hi
}

// watch takes a chain of cutoffs through a step and returns when it opened and when
// the volts first crossed those of a device, +Inf when they did not. The volts are
// taken along straight lines from the step's beginning to where the current leaves
// its cap and on to the end; clear says that nothing hangs on how straight they are, as
// in a round that will be followed once more.
func (o *outing) watch(chain *cutoff.Chain, d *draft) (opensS, crossS float64, clear bool) {
	counting, dtS := chain.Counting(), d.dtS*float64(o.finer)
	left := chain.UntilTrip(cutoff.Sample{PackV: math.Inf(-1), BusV: math.Inf(-1)})
	if d.turnS == 0 {
		opensS, crossS = watchLine(chain, 0, d.dtS, d.beginV, d.endV, d.beginBus, d.endBus)
	} else {
		opensS, crossS = watchLine(chain, 0, d.turnS, d.beginV, d.turnV, d.beginBus, d.turnBus)
		if math.IsInf(opensS, 1) {
			var again float64
			opensS, again = watchLine(chain, d.turnS, d.dtS, d.turnV, d.endV, d.turnBus, d.endBus)
			crossS = min(crossS, again)
		}
	}
	switch {
	case !o.last || math.IsInf(crossS, 1):
		return opensS, crossS, true
	case left <= d.dtS:
		return opensS, crossS, dtS <= backS
	case !counting && chain.Counting():
		return opensS, crossS, dtS <= fallS
	}
	return opensS, crossS, true
}

// watchLine is [outing.watch] along one straight line: parted where a device's volts
// are crossed, each part is all above or all below for every device.
func watchLine(chain *cutoff.Chain, fromS, toS, v0, v1, bus0, bus1 float64) (opensS, crossS float64) {
	crossS = math.Inf(1)
	for share := 0.0; share < 1; {
		next := 1.0
		for i := range chain.Len() {
			dev := chain.At(i)
			a, b := v0, v1
			if dev.Where == cutoff.Controller {
				a, b = bus0, bus1
			}
			if x := (dev.OpensAtV - a) / (b - a); x > share && x < next {
				next = x
			}
		}
		if next < 1 {
			crossS = min(crossS, fromS+next*(toS-fromS))
		}
		mid := (share + next) / 2
		sample := cutoff.Sample{PackV: v0 + (v1-v0)*mid, BusV: bus0 + (bus1-bus0)*mid, DtS: (next - share) * (toS - fromS)}
		if left := chain.UntilTrip(sample); chain.Step(sample) {
			return fromS + share*(toS-fromS) + left, crossS
		}
		share = next
	}
	return math.Inf(1), crossS
}
