package report

import (
	"maps"
	"slices"
	"strings"

	"example.org/packcheck/answer"
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
	var judged []string
	same := map[string][]string{} // by the table of the original
	rest := map[string][]string{}
	var tables []string
	for _, a := range b.a.Assumed {
		key, value := clean(a.Key), clean(a.Value)
		switch {
		case a.Effect >= moving:
			s.items = alike(s.items, key, value)
			continue
		case a.Decides:
			judged = alike(judged, key, value)
			continue
		}
		dot := max(0, strings.LastIndexByte(key, '.'))
		table, name := key[:dot], strings.TrimPrefix(key[dot:], ".")
		if !slices.Contains(tables, table) {
			tables = append(tables, table)
		}
		if today, is := strings.CutPrefix(key, "original."); is && values[today] == value {
			same[table] = append(same[table], name)
			continue
		}
		rest[table] = append(rest[table], name+" "+value)
	}
	s.items = append(s.items, judged...)
	if len(tables) == 0 {
		return s
	}
	if b.stuck() {
		s.items = append(s.items, "Not weighed, because it does not get going:")
	} else {
		s.items = append(s.items, "Of less effect:")
	}
	for _, table := range tables {
		list := rest[table]
		if len(same[table]) > 0 {
			list = append(list, "as today "+strings.Join(same[table], ", "))
		}
		s.items = append(s.items, sentence("["+table+"] "+strings.Join(list, "; ")))
	}
	return s
}

// alike adds a key with its value to a list; the next key of the same value shares
// its line.
func alike(list []string, key, value string) []string {
	line := ": " + sentence(value)
	if i := len(list) - 1; i >= 0 && strings.HasSuffix(list[i], line) {
		list[i] = strings.TrimSuffix(list[i], line) + ", " + key + line
		return list
	}
	return append(list, key+line)
}

func (b *builder) cautions() section {
	s := section{title: "Cautions", flow: true, sub: b.tight >= runOn}
	for _, c := range b.a.Cautions {
		s.items = append(s.items, b.say(c))
	}
	return s
}

// cited are the sources that a report for reading lists with what they are:
// those of what may hurt somebody; where room is short, of dangers.
func (b *builder) cited() map[string]bool {
	least := answer.Watch
	if b.tight >= dense {
		least = answer.Danger
	}
	ids := map[string]bool{}
	for i := range b.a.Findings {
		if f := &b.a.Findings[i]; b.isGrave(f) && (f.Level == answer.Danger || f.Harm >= answer.House && f.Level >= least) {
			ids[firstSource(f)] = true
		}
	}
	return ids
}

// sources lists every source once, by how they are known: those of what may hurt
// somebody with what they are, the others by their names.
func (b *builder) sources() section {
	s := section{title: "Sources", sub: true, flow: true}
	cited := b.cited()
	groups := map[string][]string{}
	for _, src := range b.a.Sources {
		known, _, _ := strings.Cut(orElse(clean(src.Known), notKnown), ",")
		first := known[:len(known)-len(strings.TrimLeft(known, "abcdefghijklmnopqrstuvwxyz"))]
		if first == "common" {
			first = "common practice"
		}
		id := clean(src.ID)
		if text := reference(clean(src.Text)); cited[src.ID] && text != "" {
			own := strings.HasPrefix(strings.ToLower(text), strings.ReplaceAll(id, "-", " ")) // it is its own name
			if id += " (" + text + ")"; own {
				id = text
			}
		}
		groups[first] = append(groups[first], id)
	}
	if len(groups) > 0 {
		s.text = []string{"By how they are known (\"packcheck sources\" tells more)."}
	}
	for _, known := range slices.Sorted(maps.Keys(groups)) {
		s.items = append(s.items, capital(known)+": "+strings.Join(groups[known], "; ")+".")
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
