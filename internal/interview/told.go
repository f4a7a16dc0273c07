package interview

import (
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
	"example.org/packcheck/tables"
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

// Beside is a question as it is asked beside what is given: a reading is of the battery
// that the vehicle came with as soon as that was told and has none of its own.
func (q Question) Beside(given map[string]string) Question {
	was, own := false, false
	for key := range given {
		was = was || strings.HasPrefix(key, "original.pack.")
		own = own || strings.HasPrefix(key, "original.measured.")
	}
	by, of := "with this battery", "the one to be used"
	if was && !own {
		by, of = "with the battery it came with", "the one that it came with"
	}
	q.Asks = strings.NewReplacer(byWhich, by, ofWhich, of).Replace(q.Asks)
	return q
}

// InWords is what is given as the answer to a question, as its choices have it; empty
// where nothing is.
func (q *Question) InWords(given map[string]string) string {
	texts, _ := q.Told(given)
	for i, text := range texts {
		texts[i] = q.Says(text)
	}
	return strings.Join(texts, ", ")
}

// Says is a text of a setup as a choice of a question has it; the text itself where it is
// none of them.
func (q *Question) Says(text string) string {
	name := text
	if q.Key == answer.KeyVehicleGround {
		if ground, err := tables.Builtin().Ground(text); err == nil {
			name = ground.Name
		}
	}
	for _, c := range q.Choices {
		if c.Value == name || c.Value == "yes" && text == "true" || c.Value == "no" && text == "false" {
			return c.Says
		}
	}
	return text
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
