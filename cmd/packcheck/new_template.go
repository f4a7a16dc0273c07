package main

import (
	"strings"

	"example.org/packcheck/internal/interview"
	"example.org/packcheck/setup"
)

// template is a setup file to fill in: every key that somebody at home can find
// out, most telling first, with its question. Keys are written whole, so that a
// line needs nothing beside it.
func template() string {
	keys := map[string]setup.Key{}
	for _, k := range setup.Keys() {
		keys[k.Path()] = k
	}
	var b strings.Builder
	about := func(text string) {
		for _, line := range wrapped(text, "") {
			b.WriteString("# " + line + "\n")
		}
	}
	line := func(path, other string) {
		k := keys[strings.TrimPrefix(path, "original.")]
		if other != "" {
			k.Example = other
		}
		b.WriteString("#" + path + " = " + k.Quoted() + "\n")
	}
	about("A setup for packcheck. Take the # away in front of what you know, change what stands behind it, " +
		"and leave the other lines as they are: what is not told is assumed, and the answer says so. " +
		"The first few tell most. packcheck keys lists rarer keys.")
	b.WriteString("\n")
	line("title", "")
	asked := map[string]bool{}
	for _, q := range interview.All() {
		asked[q.Key] = true
	}
	for _, q := range interview.All() {
		b.WriteString("\n")
		about(q.Asks)
		about(q.How)
		if words := values(q); words != "" {
			about("One of: " + words + ".")
		}
		about("Left out: " + q.Usual + ".")
		if strings.HasPrefix(q.Key, "original.") {
			line(q.Key, q.Example) // that of the registry is of today's
		} else {
			line(q.Key, "")
		}
		for _, key := range q.Fills {
			if !asked[key] {
				about("Or, or besides: " + keys[key].Doc + ".")
				line(key, "")
			}
		}
	}
	return b.String()
}

// values lists the choices as they stand in a file, with their words.
func values(q interview.Question) string {
	var out []string
	for _, c := range q.Choices {
		switch c.Value {
		case interview.Same, interview.Nothing:
			continue
		case "yes":
			out = append(out, "true")
			continue
		case "no":
			out = append(out, "false")
			continue
		case c.Says:
			out = append(out, `"`+c.Value+`"`)
			continue
		}
		out = append(out, `"`+c.Value+`" for `+c.Says)
	}
	return strings.Join(out, "; ")
}
