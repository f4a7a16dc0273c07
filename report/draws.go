package report

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/answer"
)

// What the draws say: how many of the vehicles that a setup may mean have a
// finding, an end or a fate.

// counted says a share as people do: "3 of 10", "1 of 30", "all but 1 of 20".
// From a tenth on it counts in tenths, below it goes to the nearest of the
// steps in ratio. The steps are an own choice.
func counted(share float64) string {
	const (
		whole = 0.995 // from here on it is all
		most  = 0.95  // from here on the rest is easier to say
		tenth = 0.1   // as [answer.Possible]: no "seldom" stands beside "1 of 10"
	)
	switch {
	case math.IsNaN(share):
		return notKnown
	case share >= whole:
		return "all"
	case share > most:
		return "all but " + counted(1-share)
	case share >= tenth:
		return strconv.Itoa(int(min(9, max(1, math.Round(10*share))))) + " of 10"
	case share <= 0:
		return "none"
	}
	steps := [...]float64{11, 12, 15, 20, 25, 30, 40, 50, 75, 100, 200, 300, 500, 1000}
	one, last := 1/share, steps[len(steps)-1]
	if one > last*1.2 {
		return "fewer than 1 of " + strconv.Itoa(int(last))
	}
	best := slices.MinFunc(steps[:], func(x, y float64) int {
		return cmp.Compare(math.Abs(math.Log(x/one)), math.Abs(math.Log(y/one)))
	})
	return "1 of " + strconv.Itoa(int(best))
}

// kindred names what was drawn.
func (b *builder) kindred() string {
	if b.bench() {
		return "setups like this"
	}
	return "vehicles like this"
}

// shared is a share as every report says it: a word and, in brackets, of how many.
func shared(share float64) string {
	const half, tenth = 0.5, 0.1 // where [counted] begins to count in tenths
	sure := answer.Rare
	switch {
	case share >= half:
		sure = answer.Likely
	case share >= tenth:
		sure = answer.Possible
	}
	return so(sure.Adverb(), share)
}

// so puts a share behind what holds in it.
func so(what string, share float64) string { return what + " (" + counted(share) + ")" }

// opening says in front of a finding's title how sure it is, and in how many: what
// figures the title has are of those. What holds plainly has none.
func (b *builder) opening(f *answer.Finding) string {
	return b.when(f) + b.share(f, capital(f.Certainty.Adverb())+", in ", "")
}

// openingInBrief is [builder.opening] where many stand in a row.
func (b *builder) openingInBrief(f *answer.Finding) string { return b.when(f) + b.share(f, "In ", "") }

// spelled is [builder.opening] that says what the share is of.
func (b *builder) spelled(f *answer.Finding) string {
	return b.when(f) + b.share(f, capital(f.Certainty.Adverb())+", in ", " "+b.kindred())
}

// share says in how many a finding holds that does not hold plainly.
func (b *builder) share(f *answer.Finding, before, behind string) string {
	if f.Certainty == answer.Plain {
		return ""
	}
	return before + counted(f.Share) + behind + ": "
}

// when says of a finding that does not hold yet when it will.
func (b *builder) when(f *answer.Finding) string {
	switch {
	case !f.OnceFull:
		return ""
	case b.a.Finished(): // that one never will be
		return "With another battery of its kind: "
	}
	return "Once it is charged full: "
}

// drawn says what a range is and how many draws stand behind the figures.
// Nothing where nobody drew.
func (b *builder) drawn() []fact {
	d := b.a.Draws
	if d.Count <= 0 {
		return nil
	}
	text := counted(d.Inside) + " " + b.kindred() + " lie in a range; " + b.one(plain, float64(d.Count)) + " drawn"
	if d.Judged > 0 {
		text += ", " + b.one(plain, float64(d.Judged)) + " of them judged"
		if d.ShareErr > 0 { // two standard errors hold 19 of 20
			text += " (a share may be off by " + b.one(plain, math.Ceil(200*d.ShareErr)) + " in 100)"
		}
	}
	if d.Rough {
		text += "; the ranges are rough, because they rest on so few"
	}
	return []fact{{"Draws", strings.Join(append([]string{text}, b.fates(0)...), "; ")}}
}

// fates tells of the draws in which there is no ride to the end, where at least so
// large a share has none.
func (b *builder) fates(least float64) []string {
	var parts []string
	if b.a.NeverRidden() {
		return nil
	}
	if d := b.a.Draws; d.Stuck > least {
		parts = append(parts, so("it does not get going", d.Stuck))
	}
	if d := b.a.Draws; d.Crawls > least {
		parts = append(parts, so("it barely moves", d.Crawls))
	}
	if d := b.a.Draws; d.Burnt > least {
		parts = append(parts, so("the motors burn out on the way", d.Burnt))
	}
	if d := b.a.Draws; d.CutShort > least {
		parts = append(parts, so("it is switched off with 30 % or more left in it", d.CutShort))
	}
	return parts
}

// outcomes says in what share of the draws which answer holds, the most
// frequent first; nothing where there is only one.
func outcomes(list []answer.Named, words func(string) string) string {
	list = slices.Clone(list)
	slices.SortStableFunc(list, func(x, y answer.Named) int { return cmp.Compare(y.Share, x.Share) })
	var parts []string
	for _, n := range list {
		if n.Share > 0 {
			parts = append(parts, so(words(n.Name), n.Share))
		}
	}
	if len(parts) < 2 {
		return ""
	}
	return strings.Join(parts, "; ")
}

// ended says in words what ends a ride or a discharge.
func ended(name string) string {
	switch answer.End(name) {
	case answer.EndCutoff:
		return "a cutoff opens"
	case answer.EndEmpty:
		return "the pack is empty"
	case answer.EndFuse:
		return "the fuse opens"
	case answer.EndStandstill:
		return "it comes to a standstill"
	case answer.EndWanted:
		return "the time asked for is over"
	case answer.EndVoltage:
		return "the end voltage is reached"
	case answer.EndPattern:
		return "the pattern is over"
	case answer.EndCannotGive:
		return "the pack cannot give that current"
	case answer.EndTooLong:
		return "it lasts longer than is followed"
	}
	return orElse(clean(name), notKnown)
}
