package ride

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

// keep marks the beginning of a round.
func (m *Marks) keep(o *outing, round int) {
	if m == nil || o.c.Load.Kind != NoLoad || m.n == mostMarks || m.n > 0 && round < m.list[m.n-1].round+max(markEvery, round/markShare) {
		return
	}
	m.list[m.n] = roundMark{now: o.now, round: round}
	m.n++
}

// Run is [Run] of the marked case under other cutoffs and without a wanted time.
// It may be nil: then the case is followed from its start.
func (m *Marks) Run(c *Case) Outcome {
	o := outing{c: c}
	if m == nil {
		return o.run(1)
	}
	o.begin()
	for i := m.n - 1; i > 0; i-- {
		if n := &m.list[i].now; n.lowPackV > o.packOpens && n.lowBus > o.busOpens {
			o.from = &m.list[i]
			break
		}
	}
	return o.run(1)
}
