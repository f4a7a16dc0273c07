package reckon

import (
	"cmp"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/internal/later"
	"example.org/packcheck/setup"
	"example.org/packcheck/tables"
)

// sourcesOf returns the sources that an answer rests on: those of its
// findings, of its assumptions and of its cautions, sorted by ID.
func sourcesOf(p *setup.Parts, a *answer.Assessment) []answer.Source {
	ids := map[string]bool{}
	add := func(list string) {
		for _, id := range strings.FieldsFunc(list, func(r rune) bool { return r == ',' || r == ' ' }) {
			ids[id] = true
		}
	}
	for _, f := range a.Findings {
		add(f.Source)
	}
	for _, x := range a.Assumed {
		add(x.Source)
	}
	for _, id := range a.CautionSources {
		add(id)
	}
	c := p.Pack.Profile
	for _, id := range []string{c.Rest.Source, c.Resistance.Source, c.Capacity.Source, c.Wells.Source, c.LadderSource} {
		add(id)
	}
	var out []answer.Source
	for id := range ids {
		out = append(out, sourceByID(p, id))
	}
	slices.SortFunc(out, func(a, b answer.Source) int { return cmp.Compare(a.ID, b.ID) })
	return out
}

// Sources returns every source that the built-in figures, limits and
// assumptions rest on, one of each ID, sorted by ID.
func Sources() []answer.Source { return slices.Clone(builtin.Get()) }

// builtin are the same, made once, and not to be changed.
var builtin = later.Value[[]answer.Source]{Make: func() []answer.Source {
	all := slices.Concat(
		tables.Builtin().Sources(), chemistry.Builtin().Sources(), battery.Sources(), drive.Sources(),
		cutoff.Sources(), charge.Sources(), setup.Sources(), judge.Sources(), ownSources(),
	)
	// Stable: of one ID the package that stands first above is kept.
	slices.SortStableFunc(all, func(a, b answer.Source) int { return cmp.Compare(a.ID, b.ID) })
	return slices.CompactFunc(all, func(a, b answer.Source) bool { return a.ID == b.ID })
}}

// sourceByID finds a source wherever it is defined, a user's own ones first. An
// ID that nobody defines is kept, so that a report shows it rather than hides
// it.
func sourceByID(p *setup.Parts, id string) answer.Source {
	if s, ok := p.Source(id); ok {
		return s
	}
	list := builtin.Get()
	if i, ok := slices.BinarySearchFunc(list, id, func(s answer.Source, id string) int { return cmp.Compare(s.ID, id) }); ok {
		return list[i]
	}
	return answer.Source{ID: id, Text: "not listed", Known: "unknown"}
}
