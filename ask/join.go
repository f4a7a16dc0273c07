package ask

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/draws"
)

// Join asks whether two packs may be joined now, and what flows when they are.
type Join struct {
	A, B    Battery
	AV, BV  float64 // rested volts of each now, 0.5 to 200 V
	LeadOhm float64 // of the lead between them, both ways; 0 = none
	Series  bool    // plus to minus; false: plus to plus
}

// Answer returns, for packs side by side, the current in the first moment; for
// packs in series, the share of the charge that the larger one has left when the
// smaller is empty. Where one rests so that it may not simply be charged it returns the volts
// of that one, and the others beside them.
func (q Join) Answer() (Answer, error) {
	var a Answer
	var in inputs
	in.within("AV", q.AV, 0.5, 200, "V")
	in.within("BV", q.BV, 0.5, 200, "V")
	in.within("LeadOhm", q.LeadOhm, 0, 10, "Ohm")
	one, err := q.A.find()
	in.add(err)
	two, err := q.B.find()
	in.add(err)
	if err := in.err(); err != nil {
		return Answer{}, err
	}
	j := q.joint(one.model, two.model)
	flows, found, err := q.drawn(one, two)
	if err != nil {
		return Answer{}, err
	}
	guess := one.guess || two.guess
	unfit, told := q.unfit(one, two), whole
	a.unfit(unfit)
	if len(unfit) > 0 {
		told = title // what to do with two that differ ends in a charge of both
	}
	is := a.is
	if len(unfit) > 0 {
		is = func(f Figure) { a.beside(f) }
	}
	a.Asked = fmt.Sprintf("may %s at %s be joined with %s at %s", q.A.Label, volts(q.AV), q.B.Label, volts(q.BV))
	if q.Series {
		s := j.Series()
		is(exactly("left in the fuller one", s.OverhangAh/math.Max(s.OverhangAh+s.EndsAt, 1e-9), "share"))
		a.beside(exactly("together, nominal", s.NominalV, "V"), exactly("together, full", s.FullV, "V"), exactly("comes out of both", s.EndsAt, "Ah"))
		a.say("In series: %s nominal, %s full; %s come out before the first is empty.", volts(s.NominalV), volts(s.FullV), ampHours(s.EndsAt))
		a.counted(found, guess, told)
		a.cite("string-of-the-smallest")
	} else {
		if q.LeadOhm == 0 {
			a.assume("a lead without resistance")
		}
		first := spread("flows at first", flows, "A", 1e5)
		is(first)
		fuller := "the first into the second"
		into := j.B
		if q.BV > q.AV {
			fuller, into = "the second into the first", j.A
		}
		most := into.Profile().Charge.MaxC * into.RatedAh()
		a.say("Side by side: %s flow at first from %s.", figureWords(first), fuller)
		a.counted(found, guess, told)
		if a.Limit == nil {
			a.Limit = &Limit{What: "may be charged with", Value: most, Unit: "A"}
			if a.Value <= most && !j.Apart() {
				a.say("That is within what it may be charged with.")
			}
		}
		a.cite(into.Profile().Charge.Source)
	}
	switch {
	case len(unfit) > 0:
		a.beware("One that was drained flat, or rests above full, is never joined with a sound one.", "do-not-mix-packs")
	case !q.Series && j.Apart():
		a.beware("Packs of such unlike volts are never joined side by side, however they are charged.", "do-not-mix-packs")
	case one.profile().Family == chemistry.Lithium || two.profile().Family == chemistry.Lithium:
		a.beware("Packs with electronics of their own are joined only where their maker allows it.", "series-electronics")
	default:
		a.beware("Join only two of one kind, size and age, both charged full on their own chargers first.", "do-not-mix-packs")
	}
	return a.checked()
}

// unfit is one of two packs that may not simply be charged at the volts it rests at.
type unfit struct {
	volts float64
	cells int
	guess bool // its chemistry follows from no word on the label
	found answer.Finding
}

// unfit lists those, the worse first: whatever else is found, neither joining nor a charge
// of both mends them.
func (q Join) unfit(one, two *batteries) []unfit {
	var out []unfit
	for _, of := range []struct {
		name  string
		b     *batteries
		volts float64
	}{{"The first", one, q.AV}, {"The second", two, q.BV}} {
		cells := of.b.parts.Pack.CellsInSeries
		for _, f := range charge.JudgeResting(of.b.profile(), cells, charge.Resting{V: of.volts, Name: of.name}) {
			out = append(out, unfit{of.volts, cells, of.b.guess, f})
		}
	}
	slices.SortStableFunc(out, func(x, y unfit) int { return cmp.Compare(y.found.Level, x.found.Level) })
	return out
}

// unfit tells them, if any.
func (a *Answer) unfit(list []unfit) {
	if len(list) == 0 {
		return
	}
	a.say("Do not join them.")
	for _, u := range list {
		a.tell(u.found, u.guess, whole)
	}
	worst := list[0]
	a.is(exactly("rests at", worst.volts, "V"))
	a.Limit = &Limit{What: "may be charged, at rest", Value: worst.found.Limit * float64(worst.cells), Unit: "V", Want: worst.found.Want}
}

// standing is a pack as it stands at so many rested volts.
func standing(m *battery.Model, restV float64) battery.State {
	_, charge, _ := battery.ChargeFromRest(*m.Profile(), restV/float64(m.CellsInSeries()), settledHours, roomC)
	return m.StateAt(charge, roomC)
}

// alike is what two packs of one label have in common, as places of a point: who
// made them and of which cells. How worn they are, and how far each lies from its
// kind, they do not share.
func (q Join) alike(one *batteries) []int {
	if q.A != q.B {
		return nil
	}
	var places []int
	for i, key := range one.world.Keys() {
		if key == "pack.cells" || key == "pack.maker" || key == answer.KeyPackChemistry {
			places = append(places, i)
		}
	}
	return places
}

// joint is both packs as they stand.
func (q Join) joint(a, b *battery.Model) battery.Joint {
	return battery.Joint{
		LeadOhm: q.LeadOhm,
		A:       a, StateA: standing(a, q.AV), ReadAV: q.AV,
		B: b, StateB: standing(b, q.BV), ReadBV: q.BV,
	}
}

// drawn is the spread of the current in the first moment, and what is found, over
// what both may be.
func (q Join) drawn(one, two *batteries) (draws.Spread, [][]answer.Finding, error) {
	var flows []float64
	var found [][]answer.Finding
	za, zb := draws.Points(enoughDraws, one.world.Dims()), draws.Points(2*enoughDraws, two.world.Dims())
	shared := q.alike(one)
	for i := range za {
		for _, k := range shared {
			zb[enoughDraws+i][k] = za[i][k]
		}
		a, err := one.at(za[i])
		if err != nil {
			return draws.Spread{}, nil, err
		}
		b, err := two.at(zb[enoughDraws+i]) // other points: the two are not twins
		if err != nil {
			return draws.Spread{}, nil, err
		}
		j := q.joint(a, b)
		flows = append(flows, j.Parallel().CurrentA)
		if q.Series {
			found = append(found, inSeries(&j, one, two))
		} else {
			found = append(found, j.JudgeParallel())
		}
	}
	return draws.SpreadOf(flows, nil), found, nil
}

// inSeries is what is found of both in series: that nothing opens before the smaller is
// reversed is a guess where both mostly watch their cells, and no danger rests on one.
func inSeries(j *battery.Joint, one, two *batteries) []answer.Finding {
	found := j.JudgeSeries()
	for i := range found {
		if f := &found[i]; f.Code == battery.CodeSeriesUnequalCharge && one.parts.Pack.MayWatch && two.parts.Pack.MayWatch {
			f.Level = min(f.Level, answer.FixFirst)
		}
	}
	return found
}
