package report

import (
	"slices"

	"example.org/packcheck/answer"
)

func (b *builder) charge() section {
	s := section{title: "Charging"}
	c := b.a.Charge
	if c == nil || c.Match == answer.MatchNone {
		s.text = []string{"No charger was described, so none was judged."}
		if c != nil {
			s.facts = b.rightCharger()
		}
		if len(s.facts) == 0 && len(b.a.Buy) == 0 {
			s.text[0] += " Use only the charger that the maker of the pack names for it."
		}
		return b.topic(s, answer.TopicCharge)
	}
	s.facts = []fact{{"Charger suits", chargerSuits(c.Match)}}
	for _, line := range []struct {
		name, key string
		unit      unit
		value     *float64
	}{
		{"Charged to 80 %", "hours_to_80", hours, c.HoursTo80},
		{"Charged full in", "hours_to_full", hours, c.HoursToFull},
		{"Unplug after", "unplug_after_h", hours, c.UnplugAfterH},
	} {
		if c.Match != answer.MatchYes && line.value == nil {
			continue // a charger that does not suit has no hours
		}
		text := b.maybeSpan("charge."+line.key, line.unit, line.value, notKnown)
		if line.value != nil && line.value == c.UnplugAfterH {
			line.name, text = b.unplug(text)
		}
		s.facts = append(s.facts, fact{line.name, text})
	}
	if c.EndVPerCell != nil {
		s.facts = append(s.facts, fact{"Each cell to", b.span("charge.end_v_per_cell", volts, *c.EndVPerCell) + " at most"})
	}
	s.facts = append(append(s.facts, b.rightCharger()...), leftPlugged(c)...)
	if !b.chargerJudged() { // otherwise the findings below are the reasons
		for _, r := range c.Reasons {
			s.items = append(s.items, clean(r))
		}
	}
	return b.topic(s, answer.TopicCharge)
}

// chargerJudged reports whether findings say what is wrong with the charger.
func (b *builder) chargerJudged() bool {
	return slices.ContainsFunc(b.a.Findings, func(f answer.Finding) bool {
		return f.Topic == answer.TopicCharge && f.Item == answer.Charger && f.Level > answer.Fine
	})
}

// chargerSuits says in words whether the charger matches the pack.
func chargerSuits(match string) string {
	switch match {
	case answer.MatchYes:
		return "yes"
	case answer.MatchCare:
		return "yes, with care: see what was found"
	case answer.MatchNo:
		return "no: do not connect it to this pack"
	}
	return "not known: do not use it before what was found is settled"
}

// rightCharger describes the charger that belongs to the pack, unless what to
// buy does.
func (b *builder) rightCharger() []fact {
	c := b.a.Charge
	right := b.say(c.Right)
	if right == "" || len(b.a.Buy) > 0 && c.Match != answer.MatchYes {
		return nil
	}
	return []fact{{"The right one", sentence(right)}}
}

// leftPlugged says what becomes of a pack that is forgotten on the charger.
// Times after which the same has happened share a line.
func leftPlugged(c *answer.ChargeFigures) []fact {
	var facts []fact
	var whens []string
	for _, l := range c.Left {
		when, words := orElse(clean(l.After), notKnown), orElse(clean(l.Words), notKnown)
		if i := len(facts) - 1; i >= 0 && facts[i].value == words {
			whens[i] += ", " + when
			continue
		}
		facts, whens = append(facts, fact{"Left plugged in", words}), append(whens, when)
	}
	for i := range facts {
		facts[i].value = capital(whens[i]) + ": " + facts[i].value
	}
	return facts
}
