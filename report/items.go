package report

import (
	"maps"
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// items says one word of each thing that somebody can point at, the worst first,
// and why: what was not told of it, or the name of the finding above that says it.
func (b *builder) items() section {
	s := section{title: "Part by part", sub: true, flow: true}
	words := map[string][]string{}
	for _, v := range b.a.Items {
		text := orElse(clean(string(v.Item)), "part")
		switch line, code := strings.TrimRight(clean(v.Line), "."), behind(&v); {
		case code != "":
			text += " (" + code + ")"
		case line != "" && v.Word != answer.Fine.String():
			text += " (" + line + ")"
		}
		words[v.Word] = append(words[v.Word], text)
	}
	for _, word := range []string{answer.Danger.String(), answer.FixFirst.String(), answer.Watch.String(), answer.NotKnown, answer.Fine.String()} {
		if list := words[word]; len(list) > 0 {
			s.facts = append(s.facts, fact{strings.ToUpper(word), strings.Join(list, ", ")})
		}
		delete(words, word)
	}
	for _, word := range slices.Sorted(maps.Keys(words)) { // none of ours
		s.facts = append(s.facts, fact{strings.ToUpper(clean(word)), strings.Join(words[word], ", ")})
	}
	return s
}
