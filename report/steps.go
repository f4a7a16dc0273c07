package report

import (
	"strings"

	"example.org/packcheck/answer"
)

// What to do: changes, what to buy for them, habits, and the next measurement.

func (b *builder) changes() section {
	s := section{title: "What to change, in this order", numbered: true}
	for _, c := range b.a.Changes {
		s.items = append(s.items, clean(c))
	}
	if len(s.items) == 0 {
		s.text = []string{"Nothing that these figures call for."}
	}
	return s
}

// buy lists what may have to be bought, as somebody would ask for it over a
// counter.
func (b *builder) buy() section {
	s := section{title: "What to buy"}
	for _, p := range b.a.Buy {
		s.facts = append(s.facts, fact{capital(orElse(clean(p.Item), "part")), orElse(clean(p.Text), notKnown)})
	}
	if len(s.facts) == 0 {
		s.text = []string{"Nothing that these figures call for."}
	}
	return s
}

// habits are ways of using the vehicle; they put nothing right.
func (b *builder) habits() section {
	s := section{}
	for _, h := range b.a.Habits {
		s.items = append(s.items, clean(h))
	}
	if len(s.items) > 0 {
		s.title = "How to use it"
	}
	return s
}

func (b *builder) measure() section {
	s := section{title: "What to measure next", numbered: true}
	for _, m := range b.a.Measure {
		line := sentence(capital(clean(m.What)))
		if how := clean(m.How); how != "" {
			line += " " + sentence(how)
		}
		if narrows := clean(m.Narrows); narrows != "" {
			line += " Why: " + sentence(narrows)
		}
		if gain := b.gain(m); gain != "" {
			line += " " + gain
		}
		if key := clean(m.Key); key != "" {
			line += " It is written as " + key + "."
		}
		s.items = append(s.items, line)
	}
	if len(s.items) == 0 {
		s.text = []string{"No single measurement would change this answer much."}
	}
	return s
}

// gain says what a measurement is expected to do.
func (b *builder) gain(m answer.Measurement) string {
	const worthSaying = 0.05 // own choice; less is lost in the error of the draws
	var parts []string
	for _, g := range []struct {
		name  string
		share float64
	}{{"minutes", m.Minutes}, {"speed", m.Speed}, {"launch current", m.Amps}} {
		if g.share >= worthSaying {
			parts = append(parts, g.name+" by "+b.one(share, about(min(1, g.share))))
		}
	}
	text := ""
	if len(parts) > 0 {
		text = "Expected: it narrows " + strings.Join(parts, ", ") + "."
	}
	if m.Verdict >= worthSaying {
		text = strings.TrimSpace(text + " In " + counted(m.Verdict) + " cases the verdict changes.")
	}
	return text
}
