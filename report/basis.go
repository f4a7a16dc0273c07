package report

import (
	"strings"
)

// What the answer rests on: assumptions, cautions and sources.

// moving is the effect from which an assumption moves an answer. Own choice.
const moving = 0.02

// assumed lists what moves the answer, and then what findings rest on, with the
// reasons; the rest in a few lines.
func (b *builder) assumed() section {
	s := section{title: "What was assumed, most important first"}
	var judged, rest []string
	for _, a := range b.a.Assumed {
		line := clean(a.Key) + ": " + clean(a.Value)
		reason := line
		if why := clean(a.Why); why != "" {
			reason += " (" + why + ")"
		}
		switch {
		case a.Effect >= moving:
			s.items = append(s.items, reason)
		case a.Decides:
			judged = append(judged, reason)
		default:
			rest = append(rest, line)
		}
	}
	s.items = append(s.items, judged...)
	switch {
	case len(b.a.Assumed) == 0:
		s.text = []string{"Nothing: the setup gave every value."}
		return s
	case len(s.items) > 0:
		s.text = []string{"These values were not given. They move the answer, the first one most, or findings rest on them. " +
			"A finding with a share in front holds only where values like these fall badly."}
	}
	if len(rest) > 0 {
		why := "as one value or with little effect on time, speed and launch current"
		if b.stuck() {
			why = "and none weighed, because it does not get going"
		}
		s.after = []string{"Also assumed, " + why + ": " + strings.Join(rest, "; ") + "."}
	}
	return s
}

func (b *builder) cautions() section {
	s := section{title: "Cautions"}
	for _, c := range b.a.Cautions {
		s.items = append(s.items, clean(c))
	}
	return s
}

// weightiest is how many assumptions have their sources listed.
const weightiest = 5

// cited are the sources that a report for reading lists: those of the findings,
// of the cautions and of the weightiest assumptions.
func (b *builder) cited() map[string]bool {
	ids := map[string]bool{}
	add := func(list string) {
		for _, id := range strings.FieldsFunc(list, func(r rune) bool { return r == ',' || r == ' ' }) {
			ids[id] = true
		}
	}
	for _, f := range b.a.Findings {
		add(f.Source)
	}
	for _, list := range b.a.CautionSources {
		add(list)
	}
	for i, a := range b.a.Assumed {
		if i < weightiest && a.Effect >= moving {
			add(a.Source)
		}
	}
	return ids
}

func (b *builder) sources() section {
	s := section{title: "Sources"}
	cited := b.cited()
	for _, src := range b.a.Sources {
		if !cited[src.ID] {
			continue
		}
		line := clean(src.ID) + ": " + reference(clean(src.Text))
		if known := clean(src.Known); known != "" {
			line += " (how known: " + known + ")"
		}
		s.items = append(s.items, line)
	}
	switch left := len(b.a.Sources) - len(s.items); {
	case len(b.a.Sources) == 0:
		s.title = ""
	case left > 0:
		s.after = []string{"These are the sources of the findings, the cautions and the weightiest assumptions, by name. " +
			"Left out here: " + b.one(plain, float64(left)) + ". The JSON form of this report holds them all and whole, and \"packcheck sources\" lists every source there is."}
	}
	return s
}

// A reference is at least so long, because a shorter clause does not name a
// source, and hardly longer than so.
const leastReference, longReference = 20, 110

// reference cuts a source's text down to what names it; what it says is in
// the JSON form.
func reference(text string) string {
	for i := leastReference; i < len(text)-1; i++ {
		if (text[i] == ':' || text[i] == ';') && text[i+1] == ' ' {
			text = text[:i]
		}
	}
	if len(text) > longReference {
		if i := strings.LastIndex(text[:longReference], ", "); i > leastReference {
			return text[:i] + " ..."
		}
	}
	return text
}
