package report

import (
	"strings"

	"example.org/packcheck/answer"
)

// items says one word of each thing that somebody can point at, and why where no
// finding says it.
func (b *builder) items() section {
	s := section{title: "Part by part", sub: true, flow: true}
	for _, v := range b.a.Items {
		if b.tight >= tightest && v.Word != answer.NotKnown && v.Word != answer.Fine.String() {
			continue // its findings say so
		}
		value := strings.ToUpper(clean(v.Word))
		if line := clean(v.Line); line != "" && (v.Word == answer.NotKnown || v.Word == answer.Fine.String()) { // otherwise a finding says it
			value += ": " + line
		}
		s.facts = append(s.facts, fact{capital(orElse(clean(string(v.Item)), "part")), value})
	}
	return s
}
