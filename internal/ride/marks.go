package ride

import (
	"math"

	"example.org/packcheck/cutoff"
)

// Marks are moments of an outing, the beginnings of some of its rounds. The same
// outing under other cutoffs need only be followed from the last of them before
// one of those would take note. The zero value is ready, and may be used again.
type Marks struct {
	list [mostMarks]roundMark
	n    int
}

// Marks lie this many rounds apart, or one part in this of the rounds so far.
const markEvery, markShare, mostMarks = 4, 16, 64

// roundMark is the beginning of one round.
type roundMark struct {
	now   moment
	round int
}

// setMark marks the beginning of a round, unless the last mark is near.
func (o *outing) setMark(round int) {
	m := o.marks
	if m == nil || o.c.Load.Kind != NoLoad || o.last {
		return
	}
	o.holdAnew()
	if m.n == mostMarks || m.n > 0 && round < m.list[m.n-1].round+max(markEvery, round/markShare) {
		return
	}
	m.list[m.n] = roundMark{now: o.now, round: round}
	m.n++
}

// Run is [Run] of the marked case under other cutoffs and without a wanted time.
// It may be nil: then the case is followed from its start.
func (m *Marks) Run(c *Case) Outcome {
	o := outing{c: c}
	if m == nil || !slow(&c.Cutoffs) {
		return o.run(1)
	}
	o.begin()
	for i := m.n - 1; i > 0; i-- {
		if m.list[i].now.heldV > o.packOpens {
			o.from = &m.list[i]
			break
		}
	}
	return o.run(1)
}

// heldS is the shortest delay of cutoffs that marks serve: those that are advised have
// it at the least.
const heldS = 2

// slow reports whether all cutoffs look at the pack's volts and wait that long.
func slow(chain *cutoff.Chain) bool {
	for i := range chain.Len() {
		if d := chain.At(i); d.Where == cutoff.Controller || d.DelayS < heldS {
			return false
		}
	}
	return true
}

// holding finds the volts that a pack was held at or below for [heldS] without a
// break, or somewhat lower ones: the lowest, of all stretches of that length, of the
// highest volts in each. Only moments are seen; between two the volts lie between
// those of both.
type holding struct {
	timeS, volts [16]float64
	n            int
}

// add takes the volts at a moment in, and returns the lowest that one of the
// stretches that are now over held; +Inf when none is.
func (h *holding) add(timeS, volts float64) float64 {
	lowest, over := math.Inf(1), 0
	for over < h.n && (timeS > h.timeS[over]+heldS || over == 0 && h.n == len(h.timeS)) {
		highest := math.Inf(-1)
		for _, v := range h.volts[over+1 : h.n] {
			highest = max(highest, v)
		}
		if over+1 == h.n { // one step is longer than the stretch
			highest = min(h.volts[over], volts)
		}
		lowest = min(lowest, highest)
		over++
	}
	copy(h.timeS[:], h.timeS[over:h.n])
	copy(h.volts[:], h.volts[over:h.n])
	h.n -= over
	h.timeS[h.n], h.volts[h.n] = timeS, volts
	h.n++
	return lowest
}

// heldThrough takes a step into what the pack was held at.
func (o *outing) heldThrough(d *draft) {
	n, h := &o.now, &o.holding
	n.heldV = min(n.heldV, h.add(n.clockS, d.beginV))
	if d.turnS > 0 {
		n.heldV = min(n.heldV, h.add(n.clockS+d.turnS, d.turnV))
	}
	n.heldV = min(n.heldV, h.add(n.clockS+d.dtS, d.endV))
}

// holdAnew begins a round, which may be taken back: what a stretch across its beginning
// held is no more than the volts there.
func (o *outing) holdAnew() {
	n, h := &o.now, &o.holding
	if h.n == 0 {
		return // the first one
	}
	n.heldV = min(n.heldV, n.packV)
	h.n, h.timeS[0], h.volts[0] = 1, n.clockS, n.packV
}
