package packcheck

import (
	"slices"
	"strings"

	"example.org/packcheck/finding"
)

// gathered is findings, each with the topic that it belongs to.
type gathered []finding.Finding

// add puts findings under a topic.
func (g *gathered) add(topic string, fs []finding.Finding) {
	for _, f := range fs {
		f.Topic = topic
		*g = append(*g, f)
	}
}

// doubtful marks a finding that shows only where the unknowns fall badly. It
// stands in front, so that a title cut short still says so.
const doubtful = "Possibly: "

// inDoubt marks a title.
func inDoubt(title string) string {
	first, _, _ := strings.Cut(title, " ")
	if first != "" && strings.ToLower(first[1:]) == first[1:] { // no name or unit in capitals
		title = strings.ToLower(title[:1]) + title[1:]
	}
	return doubtful + title
}

// gather joins the findings of the likely case with those of the bad corners.
// What shows only at a corner, or is worse there, is kept one level milder and
// says that it is in doubt: never "fine" on a guess, and never a certain
// danger on one either.
func gather(likely []finding.Finding, corners ...[]finding.Finding) []finding.Finding {
	out := slices.Clone(likely)
	at := map[string]int{}
	for i, f := range out {
		if _, seen := at[f.Code]; !seen {
			at[f.Code] = i
		}
	}
	for _, list := range corners {
		for _, f := range list {
			f.Level = milder(f.Level)
			f.Title = inDoubt(f.Title)
			i, seen := at[f.Code]
			switch {
			case f.Level == finding.Fine:
			case !seen:
				at[f.Code] = len(out)
				out = append(out, f)
			case f.Level > out[i].Level:
				out[i] = f
			}
		}
	}
	out = slices.DeleteFunc(out, func(f finding.Finding) bool {
		return f.Level == finding.Fine && slices.ContainsFunc(against[f.Code], func(code string) bool {
			_, found := at[code]
			return found
		})
	})
	finding.Sort(out)
	return onceEach(out)
}

// onceEach drops what is said in the same words already, of findings that are
// sorted.
func onceEach(list []finding.Finding) []finding.Finding {
	said := map[[2]string]bool{}
	return slices.DeleteFunc(list, func(f finding.Finding) bool {
		key := [2]string{f.Code, f.Title}
		again := said[key]
		said[key] = true
		return again
	})
}

// against lists, for findings that say all is well, those that say it is not:
// where both were found, one likely and one in doubt, only the doubt is told.
var against = map[string][]string{
	"wire-carries": {"wire-overloaded", "wire-thin"},
	"fuse-fits": {
		"fuse-above-wire", "fuse-above-joint", "fuse-ends-the-ride", "short-burns-wire",
		"fuse-none-fits", "fuse-opens-running", "fuse-may-open-at-launch", "fuse-opens-at-launch", "fuse-loaded",
	},
	"short-cleared": {"short-burns-wire"},
}

// milder is the level of a finding that rests on a guess.
func milder(l finding.Level) finding.Level {
	switch l {
	case finding.Danger:
		return finding.FixFirst
	case finding.Fine:
		return finding.Fine
	default:
		return finding.Watch
	}
}
