package report

import "strings"

// theBattery begins the names of what an old battery may suffer from.
const theBattery = "the battery is "

// measured sets what was measured beside what was computed, and says what it
// tells. A line without figures holds its words alone.
func (b *builder) measured() section {
	if len(b.a.Measured) == 0 {
		return section{}
	}
	s := section{title: "What you measured"}
	var guesses []string
	for _, m := range b.a.Measured {
		name, says := clean(m.Name), clean(m.Says)
		measured, computed := clean(m.Measured), clean(m.Computed)
		if what, is := strings.CutPrefix(name, theBattery); is && measured+computed == "" {
			guesses = append(guesses, what+": "+strings.TrimRight(says, "."))
			continue
		}
		var figures []string
		if measured != "" {
			figures = append(figures, "measured "+measured)
		}
		if computed != "" {
			figures = append(figures, "computed "+computed)
		}
		value := strings.Join(figures, ", ")
		if value != "" {
			value = sentence(value)
		}
		if says != "" {
			value = strings.TrimSpace(value + " " + sentence(capital(says)))
		}
		s.facts = append(s.facts, fact{capital(orElse(name, "figure")), orElse(value, notKnown)})
	}
	if len(guesses) > 0 {
		s.facts = append(s.facts, fact{"The battery is", strings.Join(guesses, "; ")})
	}
	return s
}
