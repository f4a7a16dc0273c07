package reckon

import (
	"cmp"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/setup"
)

// mostAsked is how many questions an answer asks.
const mostAsked = 5

// firstLines is on how many of the gravest findings the first lines rest. Own choice.
const firstLines = 3

// asked are the questions for whoever owns the thing: that without which the answer is of
// another vehicle, the guesses that the first lines rest on, then in the order of an interview what would turn the verdict, the one that
// narrows most among the first two. What needs a meter comes after all that needs none, and what is
// hard to find out is not the first where something easier is left, or may put something right. What narrows minutes
// or speed most is among them, see [keepNarrowing].
func (e *engine) asked(s *setup.Setup, a *answer.Assessment, gains []answer.Measurement) []answer.Measurement {
	weighed := *a
	weighed.Measure = gains
	var guesses []string // those that the first lines rest on, and what these lack
	for i := range a.Findings[:min(len(a.Findings), firstLines)] {
		switch f := &a.Findings[i]; {
		case f.Blocks():
			guesses = append(guesses, f.Decides...)
		case f.Guess != "" && f.Change != answer.LookUp: // what was not told is no guess
			guesses = append(guesses, f.Guess)
		}
	}
	rests := func(answers []string) bool {
		return slices.ContainsFunc(answers, func(key string) bool { return slices.Contains(guesses, key) })
	}
	var list []question
	var mended []answer.Change
	for _, q := range interview.Next(s.Values(), &weighed, nil) {
		if q.Why == "" {
			continue // the answer does not hang on it
		}
		m := askedAs(&q)
		m.What, m.Narrows, m.Key = strings.TrimSuffix(q.Asks, "?"), q.Why, q.Key
		answers := q.Keys()
		k := slices.IndexFunc(gains, func(g answer.Measurement) bool { return slices.Contains(answers, g.Key) })
		switch {
		case k >= 0:
			asks := m.Asks
			m = gains[k]
			m.Asks = asks
		case !q.Decides && !rests(answers): // it narrows nothing that was weighed
			continue
		}
		if q.Effort >= interview.Meter && !q.Decides && m.Verdict < leastTurn && a.Verdict >= answer.FixFirst {
			continue // nobody buys a meter for what changes nothing yet
		}
		if q.Mends != answer.ChangeNone && slices.Contains(mended, q.Mends) {
			continue // one question on it is enough
		}
		if e.chargerGoes(a, q.Key) || e.forbids(a, &m) || slices.ContainsFunc(list, func(o question) bool { return o.What == m.What }) {
			continue
		}
		mended = append(mended, q.Mends)
		r := question{m, 1, q.Hard, q.Decides || len(a.Findings) > 0 && slices.Contains(answers, a.Findings[0].Guess), false}
		there := false // what a danger asks for may be
		for i := range a.Findings[:min(len(a.Findings), firstLines)] {
			if f := &a.Findings[i]; f.Topic == answer.TopicCutoff {
				there = there || f.Level == answer.Danger && q.Mends == f.Change
				r.gravest = r.gravest || f.Level >= answer.FixFirst && slices.Contains(answers, f.Guess)
			}
		}
		switch {
		case q.Presses:
			r.rank = -1
		case q.Effort >= interview.Meter:
			r.rank = 2
		case there, rests(answers):
			r.rank = 0
		}
		list = append(list, r)
	}
	slices.SortStableFunc(list, func(a, b question) int { return cmp.Compare(a.rank, b.rank) })
	if k := narrowest(gains, func(key string) int {
		return slices.IndexFunc(list, func(m question) bool { return m.Key == key })
	}); k > 1 && list[k].rank == 1 {
		m := list[k]
		list = slices.Insert(slices.Delete(list, k, k+1), 1, m)
	}
	if len(list) > 0 && list[0].hard && !list[0].gravest { // the first is for who stands beside it, where one of them is
		toFix := a.Verdict >= answer.FixFirst // then for what may put it right, and not for what only narrows
		k := slices.IndexFunc(list, func(m question) bool { return !m.hard && (m.rank == 0 && toFix || m.rank < 2 && !toFix) })
		if k < 0 {
			k = slices.IndexFunc(list, func(m question) bool { return !m.hard && m.rank == 1 && m.decides })
		}
		if k > 0 {
			m := list[k]
			list = slices.Insert(slices.Delete(list, k, k+1), 0, m)
		}
	}
	var out []answer.Measurement
	if a.Conflict != nil {
		for _, key := range a.Conflict.LeftOut {
			if m, is := e.onceMore(s, &weighed, key); is && len(out) < mostAsked {
				out = append(out, m)
			}
		}
	}
	for _, m := range keepNarrowing(list, mostAsked-len(out)) {
		out = append(out, m.Measurement)
	}
	return out
}

// question is one that may be asked.
type question struct {
	answer.Measurement
	rank    int // those of lower rank come first
	hard    bool
	decides bool // it may be dangerous, what is to be fixed may be in order, or the first reason rests on it
	gravest bool // that the battery is drained to ruin, one of the gravest findings, rests on it
}

// gains are the shares by which it narrows what people ask for first: minutes and speed.
func (q *question) gains() [2]float64 { return [2]float64{q.Minutes, q.Speed} }

// keepNarrowing returns the first n of a list. What narrows a range most, and much more
// than any of them, takes the place of the last that narrows none and decides nothing.
func keepNarrowing(list []question, n int) []question {
	if n == 0 || len(list) <= n {
		return list[:min(n, len(list))]
	}
	kept := slices.Clone(list[:n])
	for f := range kept[0].gains() {
		by := func(a, b question) int { return cmp.Compare(a.gains()[f], b.gains()[f]) }
		best, among := slices.MaxFunc(list, by), slices.MaxFunc(kept, by)
		if best.gains()[f] < muchNarrower || among.gains()[f] > best.gains()[f]/2 {
			continue
		}
		for i := n - 1; i > 0; i-- {
			if q := &kept[i]; !q.decides && max(q.Minutes, q.Speed, q.Amps) < leastShrink {
				kept = slices.Delete(kept, i, i+1)
				at := slices.IndexFunc(kept, func(q question) bool { return q.rank > best.rank && q.rank > 1 })
				if at < 0 {
					at = len(kept)
				}
				kept = slices.Insert(kept, at, best)
				break
			}
		}
	}
	return kept
}

// onceMore asks again for a reading that the answer does without, where nothing else
// forbids to drive for it.
func (e *engine) onceMore(s *setup.Setup, a *answer.Assessment, left string) (m answer.Measurement, is bool) {
	key := strings.TrimPrefix(left, "original.")
	unread := s.Values()
	delete(unread, key)
	delete(unread, left)
	for _, q := range interview.Next(unread, a, nil) {
		if q.Key == key {
			m = askedAs(&q)
			m.What, m.Asks, m.Key = strings.TrimSuffix(q.Asks, "?"), "Once more: "+q.Asks, left
			return m, !m.Drives || e.parts.Original != nil || !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
				return f.Level >= answer.FixFirst && f.Topic != answer.TopicMeasured
			})
		}
	}
	return m, false
}

// muchNarrower is the share of a range from which a question goes before all but the
// first. Own choice.
const muchNarrower = 0.2

// narrowest is the place of the question that narrows a range most, -1 where none
// does much.
func narrowest(gains []answer.Measurement, at func(key string) int) int {
	best, place := muchNarrower, -1
	for _, g := range gains {
		if k := at(g.Key); k >= 0 && max(g.Minutes, g.Speed, g.Amps) > best {
			best, place = max(g.Minutes, g.Speed, g.Amps), k
		}
	}
	return place
}

// askedAs is a question as an answer asks it.
func askedAs(q *interview.Question) answer.Measurement {
	return answer.Measurement{Asks: q.Asks, How: q.How, Enter: q.Stands, Drives: q.Drives}
}

// chargerGoes reports whether a question is on a charger that goes whatever the answer: one
// that no look at its label keeps. What it was made for tells what an adaptor's volts mean,
// but alternating current charges nothing.
func (e *engine) chargerGoes(a *answer.Assessment, key string) bool {
	switch key {
	case answer.KeyChargerOutput, answer.KeyChargerStops:
	case answer.KeyChargerMadeFor, answer.KeyChargerCameWithPack:
		if e.parts.Charger.Output != charge.AC {
			return false
		}
	default:
		return false
	}
	return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level >= answer.FixFirst && f.Change == answer.FitCharger && f.Certainty == answer.Plain && f.Guess == "" && !f.Blocks()
	})
}

// forbids reports whether a question would have somebody run what the answer says no
// to. With the battery that it came with it may run; and where a guess at the gears
// makes it too fast, only its speed tells.
func (e *engine) forbids(a *answer.Assessment, m *answer.Measurement) bool {
	switch {
	case !m.Drives || e.parts.Original != nil || a.Verdict < answer.FixFirst:
		return false
	case a.Verdict == answer.Danger:
		return true
	}
	return m.Key != answer.KeyMeasuredTopSpeed || !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level == answer.FixFirst && f.Guess == answer.KeyGearsRatio
	})
}
