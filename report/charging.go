package report

import (
	"slices"
	"strings"

	"example.org/packcheck"
	"example.org/packcheck/answer"
)

// What the notes on charging begin with, that get a place of their own.
const (
	rightCharger = "The right charger is " // goes to what to buy
	leftPlugged  = "Left plugged in for "  // goes to the figures
	notDescribed = "not described"         // a match of no charger
	notShown     = "not known: do not use it before what follows is settled"
)

func (b *builder) charge() section {
	s := section{title: "Charging"}
	c := b.a.Charge
	if c == nil || c.Match == notDescribed && len(b.findings(packcheck.TopicCharge)) == 0 {
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
	} {
		if c.Match != "yes" && line.value == nil {
			continue // a charger that does not suit has no hours
		}
		s.facts = append(s.facts, fact{line.name, b.maybeSpan("charge."+line.key, line.unit, line.value, notKnown)})
	}
	if c.EndVPerCell != nil && c.Match != notDescribed { // without a charger it is what a right one would give
		s.facts = append(s.facts, fact{"Takes each cell to", b.span("charge.end_v_per_cell", volts, *c.EndVPerCell) + " at most"})
	}
	s.facts = append(s.facts, b.leftPlugged()...)
	for _, r := range c.Reasons {
		if text := clean(r); !b.titled(packcheck.TopicCharge, text) && c.Match != notDescribed {
			s.items = append(s.items, text)
		}
	}
	return b.topic(s, packcheck.TopicCharge)
}

// chargerSuits says in words whether the charger matches the pack.
func chargerSuits(match string) string {
	switch match {
	case "yes":
		return "yes"
	case "no":
		return "no: do not connect it to this pack"
	case notDescribed:
		return "not judged: none was described"
	}
	return notShown
}

// leftPlugged says what becomes of a pack that is forgotten on the charger.
// Times after which the same has happened share a line.
func (b *builder) leftPlugged() []fact {
	var facts []fact
	var whens []string
	for _, n := range b.a.Notes {
		text := clean(n.Text)
		if n.Topic != packcheck.TopicCharge || !strings.HasPrefix(text, leftPlugged) {
			continue
		}
		when, words, _ := strings.Cut(strings.TrimPrefix(text, leftPlugged), ":")
		words = strings.TrimSpace(words)
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

// placed reports whether a note stands elsewhere than among the notes of its
// topic: in a place of its own, or as the title of a finding.
func (b *builder) placed(n packcheck.Note) bool {
	text := clean(n.Text)
	if n.Topic == packcheck.TopicCharge && (strings.HasPrefix(text, rightCharger) || strings.HasPrefix(text, leftPlugged) && b.a.Charge != nil) {
		return true
	}
	return b.titled(n.Topic, text)
}

// titled reports whether a finding of the topic has this title.
func (b *builder) titled(topic, text string) bool {
	return slices.ContainsFunc(b.a.Findings, func(f answer.Finding) bool { return f.Topic == topic && clean(f.Title) == text })
}
