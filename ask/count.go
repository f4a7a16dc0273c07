package ask

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// In what share of the batteries a finding must hold, as everywhere in this
// module.
const (
	likelyShare   = 0.5
	possibleShare = 0.1
	rareShare     = 0.02 // where a child or a house may be hurt
)

// counted takes over the worst of what was found on many batteries: a finding
// that holds in half of them or more as it is, one that holds in a tenth one level
// milder, below that only what may hurt a child or a house, to be watched. told
// says what of it is put into words; what else has to be put right is said behind it.
func (a *Answer) counted(found [][]answer.Finding, guess bool, told func(answer.Finding) string) {
	byCode := map[string][]answer.Finding{}
	for _, fs := range found {
		seen := map[string]bool{}
		for _, f := range fs {
			if !seen[f.Code] {
				seen[f.Code] = true
				byCode[f.Code] = append(byCode[f.Code], f)
			}
		}
	}
	var out []answer.Finding
	for _, code := range slices.Sorted(maps.Keys(byCode)) {
		all := byCode[code]
		slices.SortStableFunc(all, func(a, b answer.Finding) int { return cmp.Compare(a.Found, b.Found) })
		f := all[len(all)/2]
		f.Share, f.Level = float64(len(all))/float64(len(found)), commonest(all)
		switch {
		case f.Share >= likelyShare:
		case f.Share >= possibleShare:
			f.Level = max(f.Level-1, answer.Fine)
		case f.Share >= rareShare && f.Harm >= answer.House:
			f.Level = min(f.Level, answer.Watch)
		default:
			continue
		}
		if f.Level > answer.Fine {
			out = append(out, f)
		}
	}
	if len(out) == 0 {
		return
	}
	answer.Sort(out)
	slices.SortStableFunc(out, func(f, g answer.Finding) int { // as bad: what holds in most of them first
		return cmp.Or(cmp.Compare(g.Level, f.Level), cmp.Compare(min(g.Share, likelyShare), min(f.Share, likelyShare)))
	})
	a.tell(out[0], guess, told)
	a.holdsFor(out[0].Share)
	for _, f := range out[1:] {
		if f.Level >= answer.FixFirst {
			a.say("%s", f.Title)
			a.holdsFor(f.Share)
			a.cite(f.Source)
		}
	}
}

// holdsFor says in how many batteries the sentence before it holds, where that is not most.
func (a *Answer) holdsFor(share float64) {
	if share < likelyShare {
		a.say("That holds for %s of the batteries that this may be.", percent(share))
	}
}

// whole puts all that a finding says into words.
func whole(f answer.Finding) string { return strings.TrimSpace(f.Title + " " + f.Advice) }

// advice puts only what to do into words.
func advice(f answer.Finding) string { return f.Advice }

// title puts only what is wrong into words.
func title(f answer.Finding) string { return f.Title }

// commonest is the level that at least half of the findings have or exceed.
func commonest(all []answer.Finding) answer.Level {
	var levels []answer.Level
	for _, f := range all {
		levels = append(levels, f.Level)
	}
	slices.Sort(levels)
	return levels[len(levels)/2]
}
