package report

import "strings"

// items says one word of each thing that somebody can point at, and why where no
// finding says it.
func (b *builder) items() section {
	s := section{title: "Part by part", flow: true}
	for _, v := range b.a.Items {
		value := strings.ToUpper(clean(v.Word))
		if code := clean(v.Code); code != "" {
			value += " (" + code + ")"
		} else if line := clean(v.Line); line != "" {
			value += ": " + line
		}
		s.facts = append(s.facts, fact{capital(orElse(clean(string(v.Item)), "part")), value})
	}
	return s
}
