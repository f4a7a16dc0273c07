package reckon

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/setup"
)

// IDs of the sources defined here.
const (
	srcCommon    = "common-practice" // defined in package judge
	srcToolPacks = "tool-pack-warnings"
	srcChanged   = "changed-toy"
)

// ownSources are the sources that this package itself defines.
func ownSources() []answer.Source {
	return []answer.Source{
		{ID: srcChanged, Text: "ISO 8124-1, EN 71-1 and ASTM F963 certify a toy as it was tested; a change ends that", Known: "memory"},
		{ID: "series-electronics", Text: "Each pack's electronics are made for its own volts; one that opens in a pair stands under the volts of both; common practice, no published source", Known: "common practice"},
		{ID: srcToolPacks, Text: "IEC 62841-1 and UL 62841-1, general warnings on battery tool use and care, paraphrased", Known: "memory"},
	}
}

// caution is one safety line and where it comes from.
type caution struct{ text, source string }

// cautionsFor returns the safety lines of a setup, the weightiest first. Every
// report carries all of them.
func cautionsFor(p *setup.Parts) []caution {
	list := []caution{{
		"This is computed from labels and assumptions, not tested. What the makers of vehicle, pack and charger say, local codes " +
			"and licensed practice come first.",
		srcCommon,
	}, {
		"A changed vehicle no longer is the one that was tested; who changes it answers for it. " +
			"Do not lend or sell it without saying so.", srcChanged,
	}}
	if p.Bench == nil {
		list = append(list, caution{
			"First run with the wheels off the ground, then without a child, then with an adult beside it. " +
				"Keep a switch in reach that cuts the pack off without the pedal.", srcCommon,
		})
	}
	if p.Pack.ToolPack {
		list = append(list, caution{
			"The makers of tool packs allow them in their own tools only: protection may sit in the tool. " +
				"Never open or bypass a pack.", srcToolPacks,
		})
	}
	list = append(list, caution{
		"If a fuse opens, find out why before fitting another of the same size, never a larger one.",
		"cfr-33-183-455",
	})
	for _, c := range cutoff.Cautions(p.Pack.Profile) {
		list = append(list, caution{c.Text, c.Source})
	}
	for _, c := range charge.Cautions(p.Pack.Profile, p.Pack.ToolPack) {
		if c.Text != charge.MakersFirst { // the first of these says so
			list = append(list, caution{c.Text, c.Source})
		}
	}
	return list
}
