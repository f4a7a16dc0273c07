package report

import (
	"strings"

	"example.org/packcheck/answer"
)

// What the answer rests on: assumptions, cautions and sources.

// moving is the effect from which an assumption moves an answer. Own choice.
const moving = 0.02

// mostAssumed is how many assumptions are listed beside ways out.
const mostAssumed = 9

// assumed lists what moves the answer or decides a finding, the weightiest
// first; how many more there are is said.
func (b *builder) assumed() section {
	s := section{title: "What was assumed, most important first", flow: true}
	var heavy, judged []string
	rest := 0
	for _, a := range b.a.Assumed {
		line := clean(a.Key) + ": " + clean(a.Value)
		switch {
		case a.Effect >= moving:
			heavy = append(heavy, line)
		case a.Decides:
			judged = append(judged, line)
		default:
			rest++
		}
	}
	if len(b.a.Assumed) == 0 {
		s.text = []string{"Nothing: the setup gave every value."}
		return s
	}
	listed := append(heavy, judged...)
	if len(listed) > mostAssumed && len(b.a.Ways) > 0 {
		rest += len(listed) - mostAssumed
		listed = listed[:mostAssumed]
	}
	for _, line := range listed {
		s.items = append(s.items, sentence(line))
	}
	if rest > 0 {
		why := "of less effect on time, speed and first shove"
		if b.stuck() {
			why = "none weighed, because it does not get going"
		}
		s.items = append(s.items, "And "+things(rest, "value")+" more, "+why+": see the JSON form.")
	}
	return s
}

func (b *builder) cautions() section {
	s := section{title: "Cautions", flow: true}
	for _, c := range b.a.Cautions {
		s.items = append(s.items, b.say(c))
	}
	return s
}

// cited are the sources that a report for reading lists with what they are:
// those of what may hurt somebody.
func (b *builder) cited() map[string]bool {
	ids := map[string]bool{}
	for i := range b.a.Findings {
		if f := &b.a.Findings[i]; b.isGrave(f) && (f.Level == answer.Danger || f.Harm >= answer.House) {
			ids[firstSource(f)] = true
		}
	}
	return ids
}

func (b *builder) sources() section {
	s := section{title: "Sources of what may hurt somebody", flow: true}
	cited := b.cited()
	for _, src := range b.a.Sources {
		if !cited[src.ID] {
			continue
		}
		line := clean(src.ID) + ": " + reference(clean(src.Text))
		if known := clean(src.Known); known != "" {
			known, _, _ = strings.Cut(known, ",")
			line += " (" + known + ")"
		}
		s.items = append(s.items, sentence(line))
	}
	if len(b.a.Sources) > 0 {
		s.after = append(s.after, "All other sources: \"packcheck sources\", and the JSON form.")
	}
	return s
}

// A reference is at least so long, because a shorter clause does not name a
// source, and hardly longer than so.
const leastReference, longReference = 12, 60

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
