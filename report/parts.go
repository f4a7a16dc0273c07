package report

import (
	"math"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// The sections about the parts: pack, path, cutoffs and storage.

func (b *builder) pack() section {
	p := b.a.Pack
	cells := orElse(clean(p.Chemistry), notKnown) + ", " + b.one(plain, float64(p.CellsInSeries)) + " in series, " +
		b.one(plain, float64(p.Strings)) + " side by side"
	if reading := b.say(p.Reading); reading != "" {
		cells += "; label read as " + reading
	}
	s := section{title: "Battery", facts: []fact{
		{"Cells", cells},
		{"Volts", b.span("pack.full_v", volts, p.FullV) + " full and rested, " + b.span("pack.nominal_v", volts, p.NominalV) + " nominal, " +
			b.span("pack.empty_v", volts, p.EmptyV) + " empty"},
		{"Rated capacity", b.span("pack.rated_ah", ampHours, p.RatedAh)},
	}}
	if b.noRide() == "" {
		s.facts = append(
			s.facts,
			fact{"Usable here", b.rough("pack.usable_ah", ampHours, p.UsableAh) + "; " + b.rough("pack.usable_wh", wattHrs, p.UsableWh)},
		)
	}
	s.facts = append(
		s.facts,
		fact{"Resistance after 10 s", b.rough("pack.resistance_ohm", ohms, p.ResistanceOhm)},
		fact{"Short at its posts", b.rough("pack.short_circuit_a", amps, p.ShortCircuitA)},
		fact{"Weight", b.rough("pack.mass_kg", kilos, p.MassKg)},
	)
	return b.topic(s, answer.TopicPack)
}

func (b *builder) path() section {
	s := section{title: "Wire and fuse"}
	p := b.a.Path
	if p == nil {
		if !b.bench() {
			s.text = []string{"Not known: the setup does not describe the way from battery to motors."}
		}
		return b.topic(s, answer.TopicPath)
	}
	s.facts = []fact{
		{"Fuse must be", b.fuseBand(p)},
	}
	if len(p.FuseSizesA) > 0 && p.FuseLeastA != nil && p.FuseMostA != nil {
		s.facts = append(s.facts, fact{"Standard sizes", b.list(amps, p.FuseSizesA)})
	}
	s.facts = append(
		s.facts,
		fact{"Wire carries", b.span("path.ampacity_a", amps, p.AmpacityA)},
		fact{"In all", b.rough("path.resistance_ohm", ohms, p.ResistanceOhm)},
	)
	if !b.stuck() { // what blocked or spinning wheels take is no running
		s.facts = append(s.facts, fact{"Volts lost", b.rough("path.drop_v", volts, p.DropV) + " = " +
			b.rough("path.drop_pct", percent, p.DropPct)})
	}
	var parts []string
	heat := " as heat" // said once
	for _, e := range p.Elements {
		value := b.one(ohms, about(e.Ohm))
		switch {
		case e.Ohm == 0:
			value = "resistance not known, not counted"
		case !b.stuck():
			value += ", " + b.one(volts, about(e.DropV)) + ", " + b.one(watts, about(e.HeatW)) + heat
			heat = ""
		}
		parts = append(parts, orElse(clean(e.Name), "part")+" "+value)
	}
	if len(parts) > 0 {
		s.facts = append(s.facts, fact{"Of that", strings.Join(parts, "; ")})
	}
	unopened := "never: nothing opens it"
	if p.FuseUnknown {
		unopened = "not known: no fuse was described"
	}
	s.facts = append(
		s.facts,
		fact{"Short in the wire", b.rough("path.short_circuit_a", amps, p.ShortCircuitA)},
		fact{"Cleared in", b.maybeRough("path.short_circuit_clear_s", seconds, p.ShortCircuitClearS, unopened)},
		fact{"Wire stands it", b.maybeRough("path.wire_limit_s", seconds, p.WireLimitS, notKnown)},
	)
	return b.topic(s, answer.TopicPath)
}

// fuseBand is the allowed band of fuse ratings in words.
func (b *builder) fuseBand(p *answer.PathFigures) string {
	if p.FuseLeastA == nil || p.FuseMostA == nil {
		return "no rating suits this wire and this load"
	}
	least := b.span("path.fuse_least_a", amps, *p.FuseLeastA)
	most := b.span("path.fuse_most_a", amps, *p.FuseMostA)
	return "at least " + least + ", at most " + most
}

// opensFirst says in words what disconnects the pack, and what it means when
// nothing does.
func opensFirst(place string) string {
	if place == answer.OpensNothing {
		return opener(place) + ": the pack can be drained to ruin"
	}
	return opener(place)
}

// opener says in words what disconnects the pack.
func opener(place string) string {
	switch place {
	case answer.OpensPack:
		return "the pack's own electronics"
	case answer.OpensModule:
		return "the added module"
	case answer.OpensController:
		return "the vehicle's controller"
	case answer.OpensNothing:
		return "nothing"
	case "":
		return notKnown
	}
	return clean(place)
}

func (b *builder) cutoff() section {
	c := b.a.Cutoff
	s := section{title: "What stops the drain", facts: []fact{{"Opens first", opensFirst(c.OpensFirst)}}}
	if shares := outcomes(c.OpensShare, opener); shares != "" {
		s.facts = append(s.facts, fact{overDraws, shares})
	}
	if c.OpensAtCharge != nil {
		s.facts = append(s.facts, fact{"Charge left then", b.span("cutoff.opens_at_charge", share, *c.OpensAtCharge)})
	}
	left := "Left on"
	if b.bench() {
		left = "Left, load off"
	}
	s.facts = append(
		s.facts,
		fact{"Weakest cell", b.weakestCell(c.WeakestCellV)},
		fact{"Cuts in and out", chatter(b, c.ChatterCount)},
		fact{left, b.leftOn(c.IdleDaysToHarm)},
	)
	if week := clean(c.LeftForAWeek); week != "" {
		if b.harmedSooner(c.IdleDaysToHarm) {
			week = "In some draws it comes to harm within the week, in most it does not."
		}
		s.facts = append(s.facts, fact{"Left for a week", week})
	}
	if c.Advised != nil && len(b.a.Buy) == 0 { // otherwise what to buy says it
		s.facts = append(s.facts, fact{"Setting that suits", b.advised(c.Advised)})
	}
	return b.topic(s, answer.TopicCutoff)
}

// harmedSooner reports whether the pack comes to harm within a week in some
// draws, although it does not in most.
func (b *builder) harmedSooner(toHarm *float64) bool {
	const week = 7
	r, spread := b.ranges[pathToHarm]
	return spread && r.Valid() && r.Low < week && (toHarm == nil || *toHarm >= week)
}

// pathToHarm is where the spread of the days until harm stands.
const pathToHarm = "cutoff.idle_days_to_harm"

// leftOn says how long the pack stands being left in the vehicle.
func (b *builder) leftOn(toHarm *float64) string {
	r, spread := b.ranges[pathToHarm]
	switch {
	case toHarm == nil:
		return b.maybeSpan(pathToHarm, days, nil, "harm not reached")
	case *toHarm <= 0 && (!spread || r.High <= 0):
		return "harmed already when the ride ends"
	}
	if spread && r.Valid() && !r.IsExact() {
		return b.span(pathToHarm, days, *toHarm) + " until harm"
	}
	return quantity.Digits(math.Floor(*toHarm), 2) + " days until harm" // weeks beside days would have to be compared
}

// weakestCell says how low the weakest cell gets, and what a voltage below
// nothing means.
func (b *builder) weakestCell(v float64) string {
	const path = "cutoff.weakest_cell_v"
	text := b.span(path, volts, v)
	if r, spread := b.ranges[path]; v < 0 || spread && r.Low < 0 {
		text += "; below 0 it is driven backwards"
	}
	return text
}

// advised says a cutoff's setting in words. One that stays open is always
// right; a closing voltage is for a device that cannot.
func (b *builder) advised(adv *answer.AdvisedCutoff) string {
	text := "opens at " + b.one(volts, adv.OpensAtV) + " after " + b.rangeOf(seconds, answer.Between(adv.DelayS, max(adv.DelayS, adv.LongestS))).ends + " and stays open"
	switch {
	case adv.MustLatch:
		text += " until it is reset by hand"
	case adv.ClosesAtV != 0:
		text += "; if it cannot, closes again only at " + b.one(volts, adv.ClosesAtV)
	}
	if adv.StandbyA > 0 {
		text += "; once open it draws " + b.one(amps, adv.StandbyA) + " at most"
	}
	return text
}

func chatter(b *builder, count int) string {
	switch count {
	case 0:
		return "no"
	case 1:
		return "once"
	}
	return b.one(plain, float64(count)) + " times"
}

func (b *builder) storage() section {
	s := section{}
	if st := b.a.Storage; st != nil {
		s.facts = []fact{
			{"Best put away at", b.span("storage.store_at", share, st.StoreAt)},
			{"Left at the end", b.span("storage.charge_left", share, st.ChargeLeft) + " of a full charge, if it is put away as it is now and nothing is done"},
		}
		for _, d := range st.Dates {
			s.items = append(s.items, clean(d.Date)+": "+clean(d.Do))
		}
	}
	s = b.topic(s, answer.TopicStorage)
	if !s.empty() {
		s.title = "While it is put away"
	}
	return s
}

// capital gives text a capital first letter.
func capital(text string) string {
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
