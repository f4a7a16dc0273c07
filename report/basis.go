package report

import (
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// What the answer rests on: assumptions, cautions and sources.

// moving is the effect from which an assumption moves an answer. Own choice.
const moving = 0.02

// assumed lists all that was assumed: what moves the answer or decides a finding
// first, the weightiest first, each by its whole key; the rest by the tables of the
// setup file.
func (b *builder) assumed() section {
	s := section{title: "What was assumed, most important first", flow: true, sub: b.tight >= runOn}
	if len(b.a.Assumed) == 0 {
		s.text = []string{"Nothing: the setup gave every value."}
		return s
	}
	values := map[string]string{}
	for _, a := range b.a.Assumed {
		values[clean(a.Key)] = clean(a.Value)
	}
	var judged, same []string
	rest := map[string][]string{}
	var tables []string
	for _, a := range b.a.Assumed {
		key, value := clean(a.Key), clean(a.Value)
		switch {
		case a.Effect >= moving:
			s.items = append(s.items, sentence(key+": "+value))
			continue
		case a.Decides:
			judged = append(judged, sentence(key+": "+value))
			continue
		}
		if today, is := strings.CutPrefix(key, "original."); is && values[today] == value {
			same = append(same, today)
			continue
		}
		dot := max(0, strings.LastIndexByte(key, '.'))
		table := key[:dot]
		if rest[table] == nil {
			tables = append(tables, table)
		}
		rest[table] = append(rest[table], strings.TrimPrefix(key[dot:], ".")+" "+value)
	}
	s.items = append(s.items, judged...)
	if len(tables)+len(same) == 0 {
		return s
	}
	if b.stuck() {
		s.items = append(s.items, "Not weighed, because it does not get going:")
	} else {
		s.items = append(s.items, "Of less effect:")
	}
	for _, table := range tables {
		s.items = append(s.items, sentence("["+table+"] "+strings.Join(rest[table], "; ")))
	}
	if len(same) > 0 {
		s.items = append(s.items, "[original] the same: "+strings.Join(same, ", ")+".")
	}
	return s
}

func (b *builder) cautions() section {
	s := section{title: "Cautions", flow: true, sub: b.tight >= runOn}
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

// sources lists every source once: those of what may hurt somebody with what they
// are, the others by their names or, where these are too many, by how they are known.
func (b *builder) sources() section {
	s := section{title: "Sources", sub: true, flow: true}
	cited := b.cited()
	others := map[string][]string{}
	var how []string
	for _, src := range b.a.Sources {
		known, _, _ := strings.Cut(orElse(clean(src.Known), notKnown), ",")
		if cited[src.ID] {
			line := clean(src.ID) + ": " + reference(clean(src.Text))
			if name := strings.ReplaceAll(clean(src.ID), "-", " "); strings.HasPrefix(strings.ToLower(clean(src.Text)), name) {
				line = reference(clean(src.Text)) // it is its own name
			}
			if !strings.Contains(strings.ToLower(line), known) {
				line += " (" + known + ")"
			}
			s.items = append(s.items, sentence(line))
			continue
		}
		first := known[:len(known)-len(strings.TrimLeft(known, "abcdefghijklmnopqrstuvwxyz"))]
		if first == "common" {
			first = "common practice"
		}
		if others[first] == nil {
			how = append(how, first)
		}
		others[first] = append(others[first], clean(src.ID))
	}
	slices.Sort(how)
	var rest []string
	for _, known := range how {
		names := strings.Join(others[known], ", ")
		if b.tight >= sourcesCounted {
			names = quantity.Digits(float64(len(others[known])), 3)
		}
		rest = append(rest, known+": "+names)
	}
	if len(rest) > 0 {
		s.items = append(s.items, "The rest, by how they are known (\"packcheck sources\" tells more): "+strings.Join(rest, ". ")+".")
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
