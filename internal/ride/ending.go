package ride

import (
	"math"

	"example.org/packcheck/cutoff"
	"example.org/packcheck/internal/solve"
)

const (
	// closer is into how many parts a step is taken in which the outing may end.
	closer = 8
	// noticedS is how long the pedal stays down on a vehicle that does not
	// start. Our own choice: what ends such an outing is not a matter of time.
	noticedS = 0.4
	// whenS is how exactly the moment of an end is found.
	whenS = 1e-3
)

// mayEnd reports whether something may end the outing within a step; where it
// says no the cutoffs have been through it.
func (o *outing) mayEnd(d *draft) bool {
	if d.cannot || d.look.Empty || o.c.UntilV > 0 && d.endV <= o.c.UntilV ||
		d.held && (d.stuck || d.stopsS < d.dtS) || o.c.Fused && d.fuse.MustHaveOpened() {
		return true
	}
	if o.chain.Len() == 0 {
		return false
	}
	if min(d.beginV, d.endV) > o.packOpens && min(d.beginBus, d.endBus) > o.busOpens &&
		(d.turnS == 0 || d.turnV > o.packOpens && d.turnBus > o.busOpens) {
		o.chain.Step(cutoff.Sample{PackV: d.endV, BusV: d.endBus, DtS: d.dtS})
		return false
	}
	chain := o.chain
	if o.watch(&chain, d) <= d.dtS || chain.Counting() {
		return true
	}
	o.chain = chain
	return false
}

// closely takes a step in parts, and the part in which the outing ends as far
// as that moment.
func (o *outing) closely(s *slot) End {
	part := newSlot(o.c, s.dtS/closer)
	for range closer {
		var d draft
		o.plan(&d, &part)
		chain := o.chain
		at, end := o.endIn(&d, &chain)
		if end == StillGoing {
			o.chain = chain
			o.take(&d)
			continue
		}
		if end == CutoffOpened {
			o.chain = chain
		}
		if at > 0 {
			last := newSlot(o.c, at)
			o.plan(&d, &last)
			o.take(&d)
		}
		return end
	}
	return StillGoing
}

// endIn returns when and how a step ends the outing. The chain is taken through
// the step.
func (o *outing) endIn(d *draft, chain *cutoff.Chain) (atS float64, end End) {
	atS = math.Inf(1)
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
	if o.chain.Len() > 0 {
		if s := o.watch(chain, d); s <= d.dtS {
			first(max(s, 1e-9), CutoffOpened) // with the load still on
		}
	}
	for _, e := range [...]End{CannotSupply, PackEmpty, VoltageReached, FuseOpened} {
		if past := o.past(d, e); past > 0 {
			first(o.crossing(e, d.dtS, past), e)
		}
	}
	return atS, end
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
	b := solve.Narrow(solve.Bracket{Lo: atOnceS, Hi: dtS, FLo: began, FHi: past}, whenS, pastAt)
	if e == CannotSupply {
		return b.Lo
	}
	return b.Hi
}

// watch takes a chain of cutoffs through a step and returns when it opened,
// +Inf when it did not. The volts are taken along straight lines from the
// step's beginning to where the current leaves its cap and on to the end.
func (o *outing) watch(chain *cutoff.Chain, d *draft) float64 {
	if d.turnS == 0 {
		return o.watchLine(chain, 0, d.dtS, d.beginV, d.endV, d.beginBus, d.endBus)
	}
	if s := o.watchLine(chain, 0, d.turnS, d.beginV, d.turnV, d.beginBus, d.turnBus); !math.IsInf(s, 1) {
		return s
	}
	return o.watchLine(chain, d.turnS, d.dtS, d.turnV, d.endV, d.turnBus, d.endBus)
}

// watchLine is watch along one straight line: parted where a device's volts
// are crossed, each part is all above or all below for every device.
func (o *outing) watchLine(chain *cutoff.Chain, fromS, toS, v0, v1, bus0, bus1 float64) float64 {
	share := 0.0
	for share < 1 {
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
		mid := (share + next) / 2
		sample := cutoff.Sample{PackV: v0 + (v1-v0)*mid, BusV: bus0 + (bus1-bus0)*mid, DtS: (next - share) * (toS - fromS)}
		if left := chain.UntilTrip(sample); chain.Step(sample) {
			return fromS + share*(toS-fromS) + left
		}
		share = next
	}
	return math.Inf(1)
}
