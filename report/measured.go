package report

import "strings"

// measured tells what else follows from what was measured. A line without
// figures holds its words alone.
func (b *builder) measured() section {
	if len(b.a.Measured) == 0 {
		return section{}
	}
	s := section{title: "What else that tells"}
	for _, m := range b.a.Measured {
		var figures []string
		if measured := clean(m.Measured); measured != "" {
			figures = append(figures, "measured "+measured)
		}
		if computed := clean(m.Computed); computed != "" {
			figures = append(figures, "computed "+computed)
		}
		value := sentence(strings.Join(figures, ", "))
		if says := clean(m.Says); says != "" {
			value = strings.TrimSpace(value + " " + sentence(capital(says)))
		}
		s.facts = append(s.facts, fact{capital(orElse(clean(m.Name), "figure")), orElse(value, notKnown)})
	}
	return s
}
