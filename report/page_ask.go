package report

import (
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// What to look at or measure.

// toMeasure asks for something to look at or measure, and says how.
func (b *builder) toMeasure(m answer.Measurement) string {
	line := sentence(capital(orElse(b.say(m.Asks), b.say(m.What))))
	if how := b.say(m.How); how != "" {
		line += " " + sentence(how)
	}
	return line
}

// askTitle says when to look: before anything is bought where that is advised.
func (b *builder) askTitle() string {
	if len(b.a.Ways) > 0 {
		return "Look first, before you buy"
	}
	return "Look or measure next"
}

// ask is what to look at or measure next.
func (b *builder) ask(r room) section {
	s := section{title: b.askTitle(), numbered: true}
	shown := b.a.Measure[:min(r.ask, len(b.a.Measure))]
	for _, m := range shown {
		s.items = append(s.items, shorten(b.toMeasure(m), r.askLen))
	}
	if open := b.asksFor(r); open != nil {
		if rest := unasked(open, shown); len(rest) > 0 {
			s.after = append(s.after, "Not told either, though it may matter: "+strings.Join(rest, "; ")+".")
		}
	}
	if note := b.whoRides(shown); note != "" {
		s.after = append(s.after, note)
	}
	return s
}

// asksFor is the finding that something was not told, where the page has room for it and
// asks for things: then it is told once, among the questions. Nil where it does not.
func (b *builder) asksFor(r room) *answer.Finding {
	list := b.reasons()
	i := slices.IndexFunc(list, func(f *answer.Finding) bool { return len(f.Untold) > 0 })
	if i < 0 || i >= r.why || r.ask == 0 || len(b.a.Measure) == 0 {
		return nil
	}
	return list[i]
}

// unasked are the words for what was not told that none of the questions asks for.
func unasked(open *answer.Finding, asked []answer.Measurement) (rest []string) {
	for i, words := range open.Untold {
		if i >= len(open.Decides) || !slices.ContainsFunc(asked, func(m answer.Measurement) bool { return m.Key == open.Decides[i] }) {
			rest = append(rest, clean(words))
		}
	}
	return rest
}

// whoRides says who sits on it while something is measured.
func (b *builder) whoRides(list []answer.Measurement) string {
	drives := slices.ContainsFunc(list, func(m answer.Measurement) bool { return m.Drives })
	switch {
	case !drives || b.bench():
		return ""
	case b.a.Verdict >= answer.FixFirst && b.a.Original == nil:
		return "For that nobody rides yet: weights in the seat, a grown-up beside it."
	case b.a.Verdict >= answer.FixFirst:
		return "With the old battery only, a grown-up beside it."
	}
	return "While it is driven for that, a grown-up walks beside it."
}
