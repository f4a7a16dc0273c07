package report

import (
	"strings"

	"example.org/packcheck"
)

// The sections about the parts: pack, path, cutoffs, charger, storage, and
// what the user measured on them.

func (b *builder) pack() section {
	p := b.a.Pack
	s := section{title: "The battery", facts: []fact{
		{"Cells", orElse(clean(p.Chemistry), notKnown) + ", " + b.one(plain, float64(p.CellsInSeries)) + " in series, " +
			b.one(plain, float64(p.Strings)) + " in parallel"},
	}}
	if reading := clean(p.Reading); reading != "" {
		s.facts = append(s.facts, fact{"Label read as", reading})
	}
	s.facts = append(
		s.facts,
		fact{"Volts when full", b.span("pack.full_v", volts, p.FullV)},
		fact{"Nominal volts", b.span("pack.nominal_v", volts, p.NominalV)},
		fact{"Volts when empty", b.span("pack.empty_v", volts, p.EmptyV)},
		fact{"Printed charge", b.span("pack.rated_ah", ampHours, p.RatedAh)},
		fact{"Usable at this load", b.span("pack.usable_ah", ampHours, p.UsableAh)},
		fact{"Usable energy", b.span("pack.usable_wh", wattHrs, p.UsableWh)},
		fact{"Inner resistance", b.span("pack.resistance_ohm", ohms, p.ResistanceOhm)},
		fact{"Short-circuit amps", b.span("pack.short_circuit_a", amps, p.ShortCircuitA)},
		fact{"Weight", b.span("pack.mass_kg", kilos, p.MassKg)},
	)
	return b.topic(s, packcheck.TopicPack)
}

func (b *builder) path() section {
	s := section{title: "Wire and fuse"}
	p := b.a.Path
	if p == nil {
		s.text = []string{"Not known: the setup does not describe the way from pack to motors."}
		return b.topic(s, packcheck.TopicPath)
	}
	s.facts = []fact{
		{"Fuse must be", b.fuseBand(p)},
	}
	if len(p.FuseSizesA) > 0 {
		s.facts = append(s.facts, fact{"Sizes made in that", b.list(amps, p.FuseSizesA)})
	}
	s.facts = append(
		s.facts,
		fact{"Wire carries", b.span("path.ampacity_a", amps, p.AmpacityA)},
		fact{"Resistance in all", b.span("path.resistance_ohm", ohms, p.ResistanceOhm)},
		fact{"Volts lost running", b.span("path.drop_v", volts, p.DropV) + " = " +
			b.span("path.drop_pct", percent, p.DropPct)},
	)
	for _, e := range p.Elements {
		s.facts = append(s.facts, fact{
			capital(orElse(clean(e.Name), "part")),
			b.one(ohms, e.Ohm) + ", " + b.one(volts, e.DropV) + ", " + b.one(watts, e.HeatW) + " as heat",
		})
	}
	s.facts = append(
		s.facts,
		fact{"Short circuit", b.span("path.short_circuit_a", amps, p.ShortCircuitA)},
		fact{"It is cleared in", b.maybeSpan("path.short_circuit_clear_s", seconds, p.ShortCircuitClearS, "never: nothing opens it")},
		fact{"Wire stands it for", b.maybeSpan("path.wire_limit_s", seconds, p.WireLimitS, notKnown)},
	)
	return b.topic(s, packcheck.TopicPath)
}

// fuseBand is the allowed band of fuse ratings in words.
func (b *builder) fuseBand(p *packcheck.PathFigures) string {
	if p.FuseLeastA == nil || p.FuseMostA == nil {
		return "no rating suits this wire and this load"
	}
	least := b.span("path.fuse_least_a", amps, *p.FuseLeastA)
	most := b.span("path.fuse_most_a", amps, *p.FuseMostA)
	return "at least " + least + ", at most " + most
}

// opener says in words what disconnects the pack.
func opener(place string) string {
	switch place {
	case "pack":
		return "the pack's own electronics"
	case "module":
		return "the added module"
	case "controller":
		return "the vehicle's controller"
	case "nothing":
		return "nothing: the pack can be drained to ruin"
	case "":
		return notKnown
	}
	return clean(place)
}

func (b *builder) cutoff() section {
	c := b.a.Cutoff
	s := section{title: "What stops the drain", facts: []fact{{"Opens first", opener(c.OpensFirst)}}}
	if c.OpensAtCharge != nil {
		s.facts = append(s.facts, fact{"Charge left then", b.span("cutoff.opens_at_charge", share, *c.OpensAtCharge)})
	}
	s.facts = append(
		s.facts,
		fact{"Weakest cell at end", b.span("cutoff.weakest_cell_v", volts, c.WeakestCellV)},
		fact{"Cuts in and out", chatter(b, c.ChatterCount)},
		fact{"Left switched on", b.leftOn(c.IdleDaysToHarm)},
	)
	if week := clean(c.LeftForAWeek); week != "" {
		s.facts = append(s.facts, fact{"Left for a week", week})
	}
	if c.Advised != nil {
		s.facts = append(s.facts, fact{"Setting that suits", b.advised(c.Advised)})
	}
	return b.topic(s, packcheck.TopicCutoff)
}

// leftOn says how long the pack stands being left in the vehicle.
func (b *builder) leftOn(toHarm *float64) string {
	const path = "cutoff.idle_days_to_harm"
	r, spread := b.ranges[path]
	switch {
	case toHarm == nil:
		return b.maybeSpan(path, days, nil, "harm not reached")
	case *toHarm <= 0 && (!spread || r.High <= 0):
		return "harmed already when the ride ends"
	}
	return b.span(path, days, *toHarm) + " until harm"
}

// advised says a cutoff's setting in words.
func (b *builder) advised(adv *packcheck.AdvisedCutoff) string {
	text := "open at " + b.one(volts, adv.OpensAtV) + " after " + b.one(seconds, adv.DelayS)
	switch {
	case adv.MustLatch:
		return text + " and stay open until reset by hand"
	case adv.ClosesAtV == 0:
		return text + " and stay open"
	}
	return text + ", close again at " + b.one(volts, adv.ClosesAtV)
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

func (b *builder) charge() section {
	s := section{title: "Charging"}
	c := b.a.Charge
	if c == nil {
		s.text = []string{"No charger was described, so none was judged. Use only the charger that the maker of the pack names for it."}
		return b.topic(s, packcheck.TopicCharge)
	}
	s.facts = []fact{{"Charger suits", chargerSuits(c.Match)}}
	for _, line := range []struct {
		name, key string
		unit      unit
		value     *float64
	}{
		{"To 80 %", "hours_to_80", hours, c.HoursTo80},
		{"To full", "hours_to_full", hours, c.HoursToFull},
		{"Unplug after", "unplug_after_h", hours, c.UnplugAfterH},
		{"End volts per cell", "end_v_per_cell", volts, c.EndVPerCell},
	} {
		if c.Match != "yes" && line.value == nil {
			continue // a charger that does not suit has no hours
		}
		s.facts = append(s.facts, fact{line.name, b.maybeSpan("charge."+line.key, line.unit, line.value, notKnown)})
	}
	for _, r := range c.Reasons {
		s.items = append(s.items, clean(r))
	}
	return b.topic(s, packcheck.TopicCharge)
}

// chargerSuits says in words whether the charger matches the pack.
func chargerSuits(match string) string {
	switch match {
	case "no":
		return "no: do not connect it to this pack"
	case "", "unknown":
		return "not known: do not use it before it is"
	}
	return clean(match)
}

func (b *builder) storage() section {
	st := b.a.Storage
	if st == nil {
		return section{}
	}
	s := section{title: "While it is put away", facts: []fact{
		{"Put away at", b.span("storage.store_at", share, st.StoreAt)},
		{"Left at the end", b.span("storage.charge_left", share, st.ChargeLeft) + " with nothing done"},
	}}
	for _, d := range st.Dates {
		s.items = append(s.items, clean(d.Date)+": "+clean(d.Do))
	}
	return s
}

func (b *builder) measured() section {
	if len(b.a.Measured) == 0 {
		return section{}
	}
	s := section{title: "What you measured"}
	for _, m := range b.a.Measured {
		value := "measured " + orElse(clean(m.Measured), notKnown) + ", computed " + orElse(clean(m.Computed), notKnown) + "."
		if says := clean(m.Says); says != "" {
			value += " " + sentence(capital(says))
		}
		s.facts = append(s.facts, fact{capital(orElse(clean(m.Name), "figure")), value})
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
