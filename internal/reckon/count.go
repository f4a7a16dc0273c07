package reckon

import (
	"cmp"
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// The shares at which a finding stands plainly, likely, possibly, and at which
// what could hurt somebody is told all the same.
const (
	plainShare, likelyShare, possibleShare, rareShare = 0.9, 0.5, 0.1, 0.02
)

// held is one finding in all the draws that were judged.
type held struct {
	code string
	item answer.Item
	of   *judgedTable
	in   []instance // by rising draw
	over []instance // what draws that do not have it have higher up on its ladder
}

// instance is the finding as one draw has it, the worst where it has several: the draw,
// the place among its findings, and how bad it is. Such numbers cost the collector
// nothing, pointers would.
type instance struct {
	draw, at int32
	level    answer.Level
}

// finding is read only.
func (h *held) finding(x instance) *answer.Finding { return &h.of.findings[x.draw][x.at] }

func (h *held) weight(x instance) float64 { return h.of.weight[x.draw] }

// count turns the findings of the judged draws into those of the answer: what
// holds in how many, and how bad that is. The guesses say which values nobody gave.
func count(j *judgedTable, g guesses) []answer.Finding {
	byName := map[[2]string]*held{}
	var order []*held
	for i, list := range j.findings {
		for k := range list {
			f := &list[k]
			name := [2]string{f.Code, string(f.Item)}
			h := byName[name]
			if h == nil {
				h = &held{code: f.Code, item: f.Item, of: j, in: make([]instance, 0, len(j.findings))}
				byName[name] = h
				order = append(order, h)
			}
			here := instance{int32(i), int32(k), f.Level}
			switch last := len(h.in) - 1; {
			case last < 0 || h.in[last].draw < here.draw:
				h.in = append(h.in, here)
			case h.in[last].level < f.Level:
				h.in[last] = here
			}
		}
	}
	for _, h := range order {
		h.climb()
	}
	slices.SortStableFunc(order, func(a, b *held) int {
		return cmp.Or(cmp.Compare(a.code, b.code), cmp.Compare(a.item, b.item))
	})
	var out []answer.Finding
	for _, h := range order {
		if f, ok := h.told(g); ok {
			out = append(out, f)
		}
	}
	out = slices.DeleteFunc(out, func(f answer.Finding) bool { // all is well, and yet it is not
		return f.Level == answer.Fine && f.About != "" && slices.ContainsFunc(out, func(o answer.Finding) bool {
			return o.About == f.About && o.Level > answer.Fine
		})
	})
	all := slices.Clone(out)
	out = slices.DeleteFunc(out, func(f answer.Finding) bool { // higher rungs that are as bad say it, of wear wherever they stand
		var above []*held
		for _, o := range all {
			if f.Ladder != "" && o.Ladder == f.Ladder && o.Rung > f.Rung && o.Level >= f.Level {
				above = append(above, byName[[2]string{o.Code, string(o.Item)}])
			}
		}
		return len(above) > 0 && (f.Harm <= answer.Wear || byName[[2]string{f.Code, string(f.Item)}].toldBy(above))
	})
	answer.Sort(out)
	return out
}

// climb notes, for each draw without the finding, the worst that stands above it on
// its ladder: what has come farther has come that far.
func (h *held) climb() {
	first := h.finding(h.in[0])
	if first.Ladder == "" {
		return
	}
	has := h.in
	for i, list := range h.of.findings {
		if len(has) > 0 && int(has[0].draw) == i {
			has = has[1:]
			continue
		}
		worst := -1
		for k := range list {
			if f := &list[k]; f.Ladder == first.Ladder && f.Rung > first.Rung && (worst < 0 || f.Level > list[worst].Level) {
				worst = k
			}
		}
		if worst >= 0 {
			h.over = append(h.over, instance{int32(i), int32(worst), list[worst].Level})
		}
	}
}

// mostTold is in what share of its draws what stands higher on a ladder says what a lower
// rung would. Own choice.
const mostTold = 2.0 / 3

// toldBy reports whether others, higher on its ladder, stand in most of the draws in
// which it holds.
func (h *held) toldBy(above []*held) bool {
	has := make([]bool, len(h.of.findings))
	for _, o := range above {
		for _, x := range o.in {
			has[x.draw] = true
		}
	}
	all, told := 0.0, 0.0
	for _, list := range [...][]instance{h.in, h.over} {
		for _, x := range list {
			all += h.weight(x)
			if has[x.draw] {
				told += h.weight(x)
			}
		}
	}
	return told >= mostTold*all
}

// told is the finding of the answer: the worst level that its shares allow, in
// the words of the draw in the middle of those that are that bad. It is not told
// at all where it holds too seldom.
func (h *held) told(g guesses) (answer.Finding, bool) {
	var best answer.Finding
	found := false
	for level := answer.Fine; level <= answer.Danger; level++ {
		share, middle, ok := h.atLeast(level)
		if !ok {
			continue
		}
		f := *middle
		h.heed(&f)
		f.Share = share
		switch {
		case share >= plainShare:
			f.Certainty = answer.Plain
		case share >= likelyShare:
			f.Certainty = answer.Likely
		case level == answer.Fine: // well in a few draws is not worth a word
			continue
		case share >= possibleShare:
			f.Certainty, f.Level = answer.Possible, milder(f.Level)
		case share >= rareShare && f.Harm >= answer.House:
			f.Certainty, f.Level = answer.Rare, answer.Watch
		default:
			continue
		}
		onAGuess(&f, g)
		// Where both are held back to one level, the worse is what is the matter, as long as
		// it is as certain.
		if !found || f.Level > best.Level || f.Level == best.Level && f.Certainty <= min(best.Certainty, answer.Likely) {
			best, found = f, true
		}
	}
	return best, found
}

// atLeast returns the share of the draws in which it is that bad or worse, and
// of those that are just that bad the one in the middle by what was found; ok is
// false where none is.
func (h *held) atLeast(level answer.Level) (share float64, middle *answer.Finding, ok bool) {
	for _, x := range h.over {
		if x.level >= level {
			share += h.weight(x)
		}
	}
	var just []ranked
	for _, x := range h.in {
		if x.level >= level {
			share += h.weight(x)
		}
		if x.level == level {
			f := h.finding(x)
			just = append(just, ranked{x, f.Found, f.Limit})
		}
	}
	if len(just) == 0 {
		return 0, nil, false
	}
	middle = h.upTo(just, 0.5)
	if middle.Fate != answer.FateNone { // all draws tell it, not those alone that are judged
		share += h.of.over[middle.Fate]
	}
	if middle.Fate == answer.FateCrawls { // what stands has come past crawling, see climb
		share += h.of.over[answer.FateStuck]
	}
	return min(max(share, 0), 1), middle, true
}

// ranked is an instance in an order: by one number, by another where that is the same,
// and by draw.
type ranked struct {
	instance
	by, then float64
}

// upTo orders some, and returns the first by whom so much of their weight is reached.
func (h *held) upTo(list []ranked, share float64) *answer.Finding {
	slices.SortFunc(list, func(a, b ranked) int {
		if c := cmp.Compare(a.by, b.by); c != 0 {
			return c
		}
		return cmp.Or(cmp.Compare(a.then, b.then), cmp.Compare(a.draw, b.draw))
	})
	return h.finding(upTo(list, share, func(r ranked) float64 { return h.weight(r.instance) }).instance)
}

// upTo returns the first of a list in order by whom so much of its weight is reached.
func upTo[T any](list []T, share float64, weight func(T) float64) T {
	all, sum := 0.0, 0.0
	for _, x := range list {
		all += weight(x)
	}
	for _, x := range list {
		if sum += weight(x); sum >= share*all {
			return x
		}
	}
	return list[len(list)-1]
}

// heed puts into a finding of the middle draw the advice that is enough in nine
// draws of ten: what suits the middle one would leave half of them as they are.
// Only draws that ask for the same for the same reason are compared. Of speeds it is the
// one in the middle: each vehicle's own original is its measure.
func (h *held) heed(f *answer.Finding) {
	if f.Reads != answer.AsNumber || onFuseSize(f) {
		return
	}
	asks, share := asksFor, plainShare
	if f.Change == answer.LimitSpeed {
		asks, share = func(g *answer.Finding) float64 { return g.LimitMS }, 0.5
	}
	var alike []ranked
	for _, x := range h.in {
		if g := h.finding(x); x.level == f.Level && g.Change == f.Change && g.Source == f.Source && g.Unit == f.Unit && g.Habit == f.Habit && (g.LimitA > 0) == (f.LimitA > 0) {
			alike = append(alike, ranked{x, asks(g), 0})
		}
	}
	if len(alike) > 0 {
		most := h.upTo(alike, share)
		f.Advice, f.LimitA, f.LimitMS = most.Advice, most.LimitA, most.LimitMS
	}
}

// asksFor is how much a finding asks for: the lower a current limit or the
// farther beyond a limit, the more.
func asksFor(f *answer.Finding) float64 {
	if f.LimitA > 0 {
		return -f.LimitA
	}
	if f.Want == answer.Above {
		return f.Limit - f.Found
	}
	return f.Found - f.Limit
}

// guesses is what findings may rest on that nobody gave.
type guesses struct {
	keys    map[string]bool   // setup keys that stand on an assumption or on nothing
	read    map[string]bool   // of those, what readings tell of: no guess where nearly all draws that fit them agree
	sources map[string]string // what the assumptions rest on, by key
	asMade  bool              // nothing says that the vehicle was changed
	fuse    bool              // which fuse it has, and on which wire, was told
}

// survived reports whether the vehicle has lived with what a finding says of it. How heavy
// a rider is, and on what ground it is to go, nobody else knew; nothing was found that is made
// for a speed that is a danger at the driver's age; a fuse is what owners put in anew, larger
// where the first opened; and a charger that nobody said came with the battery is none that it
// has lived with.
func (g guesses) survived(f *answer.Finding) bool {
	tooFast := f.Change == answer.LimitSpeed && f.Level == answer.Danger
	return g.asMade && f.Fate == answer.FateNone && f.Guess != answer.KeyChargerCameWithPack && f.Guess != answer.KeyRiderMass && !tooFast && !(g.fuse && f.Item == answer.Fuse)
}

// onAGuess holds back what rests on a value that nobody gave: it is no danger,
// and only something to watch where it does not even hold in half of the draws,
// or where the vehicle was made so and somebody else knew the value.
func onAGuess(f *answer.Finding, g guesses) {
	if by := g.sources[f.LimitKey]; by != "" { // nobody has read it off the part
		f.Source = strings.ReplaceAll(f.Source, answer.PartRating, by)
	}
	i := slices.IndexFunc(f.Decides, func(key string) bool { return g.keys[key] && !(g.read[key] && f.Certainty == answer.Plain) })
	if i < 0 {
		return
	}
	f.Guess = f.Decides[i]
	most := answer.FixFirst
	if f.Share < likelyShare || g.survived(f) {
		most = answer.Watch
	}
	f.Level = min(f.Level, most)
}

// milder is one level down, but never fine: nothing is fine on a guess.
func milder(l answer.Level) answer.Level { return max(l-1, answer.Watch) }
