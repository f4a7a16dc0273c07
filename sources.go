package packcheck

import (
	"cmp"
	"slices"
	"strings"

	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/finding"
	"example.org/packcheck/setup"
)

// sourcesOf returns the sources that an answer rests on: those of its
// findings, of its assumptions and of its cautions, sorted by ID.
func sourcesOf(p *setup.Parts, findings []finding.Finding, more []string) []finding.Source {
	ids := map[string]bool{}
	add := func(list string) {
		for _, id := range strings.FieldsFunc(list, func(r rune) bool { return r == ',' || r == ' ' }) {
			ids[id] = true
		}
	}
	for _, f := range findings {
		add(f.Source)
	}
	for _, a := range p.Assumed {
		add(a.Source)
	}
	for _, id := range more {
		add(id)
	}
	c := p.Pack.Profile
	for _, id := range []string{c.Rest.Source, c.Resistance.Source, c.Capacity.Source, c.Wells.Source, c.LadderSource} {
		add(id)
	}
	var out []finding.Source
	for id := range ids {
		out = append(out, sourceByID(p, id))
	}
	slices.SortFunc(out, func(a, b finding.Source) int { return cmp.Compare(a.ID, b.ID) })
	return out
}

// sourceByID finds a source wherever it is defined. An ID that nobody defines
// is kept, so that a report shows it rather than hides it.
func sourceByID(p *setup.Parts, id string) finding.Source {
	if s, ok := p.Source(id); ok {
		return s
	}
	for _, list := range [][]finding.Source{Sources(), drive.Sources(), cutoff.Sources(), charge.Sources()} {
		if i := slices.IndexFunc(list, func(s finding.Source) bool { return s.ID == id }); i >= 0 {
			return list[i]
		}
	}
	return finding.Source{ID: id, Text: "not listed", Known: "unknown"}
}
