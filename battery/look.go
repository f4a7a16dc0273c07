package battery

// Look is a pack at one instant: all that an engine reads at the beginning of
// a step, from one look at the tables. Get one from [Model.Look].
type Look struct {
	EMFV  float64 // see [Model.EMF]
	Ohm   float64 // see [Model.SourceOhm]
	Empty bool    // see [Model.Empty]
	Left  float64 // available charge that the temperature leaves, as a share of full; 0 or less is empty

	volts, ohm1, ohm2 float64
	fallV             float64 // from the rested volts of all the charge down to those of the available charge
	head, filled      float64 // share of the available and of all the charge
	perCharge         float64 // how steeply the voltage rises with the charge that the curves are read at, V
	warmth            tempRow
}

// Look reads the pack's curves at a state.
func (m *Model) Look(s *State) Look {
	var l Look
	m.LookInto(&l, s)
	return l
}

// LookInto is [Model.Look] into a place that there is already.
func (m *Model) LookInto(l *Look, s *State) {
	l.warmth = m.warmth(s.TempC)
	w := &l.warmth
	l.head, l.filled = s.Y1Ah*m.headOf, m.filled(s)
	l.Left = w.effective(l.head, l.filled)
	l.Empty = !(l.Left > 0)
	i, f := place(l.Left)
	r := &m.cell.byCharge[i]
	l.volts = m.cells * (r.at.volts + f*r.over.volts)
	l.fallV = 0
	if m.wells.C < 1 {
		l.fallV = m.voltsAt(w.effective(l.filled, l.filled)) - l.volts
	}
	l.EMFV = l.volts - s.V1 - s.V2
	l.Ohm = m.ohmics * (r.at.ohm0 + f*r.over.ohm0) * w.ohm
	l.ohm1 = m.ohms * (r.at.ohm1 + f*r.over.ohm1) * w.ohm1
	l.ohm2 = m.ohms * (r.at.ohm2 + f*r.over.ohm2) * w.ohm2
	l.perCharge = m.cells * r.over.volts * perCharge
}

// AdvanceLong is [Step.Advance] for a step over which resistances and the heat
// change: it takes them along straight lines from the step's beginning to its
// end, and is about as good as sixty short steps in its place.
func (p *Step) AdvanceLong(s *State, currentA, ambientC float64) {
	var begin, end Look
	p.m.LookInto(&begin, s)
	after := *s
	p.AdvanceFrom(&begin, &after, currentA, ambientC)
	p.m.LookInto(&end, &after)

	was := *s
	from1, from2 := p.m.settled(&begin.warmth, begin.ohm1*currentA, begin.ohm2*currentA)
	to1, to2 := p.m.settled(&end.warmth, end.ohm1*currentA, end.ohm2*currentA)
	drop := (begin.Ohm + end.Ohm) / 2 * currentA
	if p.bound {
		filled := (begin.filled + end.filled) / 2
		drop += p.m.voltsAt(begin.warmth.effective(filled, filled)) - (begin.volts+end.volts)/2
	}
	p.move(s, currentA, ambientC, drop, (from1+to1)/2, (from2+to2)/2)
	s.V1 = to1 - (to1-from1)*p.fastM + (was.V1-from1)*p.fast
	s.V2 = to2 - (to2-from2)*p.slowM + (was.V2-from2)*p.slow
}

// MeanEMF returns the electromotive force over the step at a constant current,
// its mean and where it ends: the branches' share is exact, that of the charge
// is taken along the slope of the voltage curve.
func (p *Step) MeanEMF(now *Look, s *State, currentA float64) (meanV, endV float64) {
	settled1, settled2 := p.m.settled(&now.warmth, now.ohm1*currentA, now.ohm2*currentA)
	over1, over2 := s.V1-settled1, s.V2-settled2
	movedAh := (p.keep-1)*s.Y1Ah + p.mix*(s.Y1Ah+s.Y2Ah) - p.use*currentA
	movedV := now.perCharge * now.warmth.moved(now.head, now.filled, movedAh*p.m.headOf, -p.hours*currentA*p.m.fillOf)
	base := now.volts - settled1 - settled2
	meanV = base + movedV/2 - over1*p.fastM - over2*p.slowM
	return meanV, base + movedV - over1*p.fast - over2*p.slow
}
