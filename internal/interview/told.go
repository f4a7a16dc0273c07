package interview

import (
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// Told returns what is given as the answer to a question: the texts in the order of its
// keys, and the keys with them.
func (q *Question) Told(given map[string]string) (texts []string, sets map[string]string) {
	sets = map[string]string{}
	for _, key := range q.Keys() {
		if text := given[key]; text != "" {
			texts, sets[key] = append(texts, text), text
		}
	}
	return texts, sets
}

// InWords is what is given as the answer to a question, as its choices have it; empty
// where nothing is.
func (q *Question) InWords(given map[string]string) string {
	texts, _ := q.Told(given)
	for i, text := range texts {
		for _, c := range q.Choices {
			if c.Value == text || c.Value == "yes" && text == "true" || c.Value == "no" && text == "false" {
				texts[i] = c.Says
			}
		}
	}
	return strings.Join(texts, ", ")
}

// LabelRead is the battery that a label means beside what else is given, in a setup of the
// folder of base: of the vehicle as it is or, by that key, as it was made. It is nil for a
// key of anything else, and where the label cannot be read so.
func LabelRead(base *setup.Setup, key string, given map[string]string) *setup.PackPart {
	original := key == "original."+answer.KeyPackLabel
	if key != answer.KeyPackLabel && !original {
		return nil
	}
	s, err := base.With(given)
	if err != nil {
		return nil
	}
	p, err := s.Parts()
	if err == nil && original {
		p = p.Original
	}
	if err != nil || p == nil {
		return nil
	}
	return &p.Pack
}
