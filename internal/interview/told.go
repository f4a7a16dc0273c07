package interview

import "strings"

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
