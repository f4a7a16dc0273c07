package ask

import (
	"cmp"
	"maps"
	"slices"

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
// milder, below that only what may hurt a child or a house, to be watched.
func (a *Answer) counted(found [][]answer.Finding, guess bool) {
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
		share := float64(len(all)) / float64(len(found))
		slices.SortStableFunc(all, func(a, b answer.Finding) int { return cmp.Compare(a.Found, b.Found) })
		f := all[len(all)/2]
		f.Share = share
		f.Level = commonest(all)
		switch {
		case share >= likelyShare:
		case share >= possibleShare:
			f.Level = max(f.Level-1, answer.Fine)
		case share >= rareShare && f.Harm >= answer.House:
			f.Level = min(f.Level, answer.Watch)
		default:
			continue
		}
		out = append(out, f)
	}
	before := len(a.Words)
	a.judged(out, guess)
	if len(a.Words) > before {
		answer.Sort(out)
		if s := out[0].Share; s < likelyShare {
			a.say("That holds for %s of the batteries that this may be.", percent(s))
		}
	}
}

// commonest is the level that at least half of the findings have or exceed.
func commonest(all []answer.Finding) answer.Level {
	var levels []answer.Level
	for _, f := range all {
		levels = append(levels, f.Level)
	}
	slices.Sort(levels)
	return levels[len(levels)/2]
}
