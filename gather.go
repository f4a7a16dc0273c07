package packcheck

import (
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// gathered is findings, each with the topic that it belongs to.
type gathered []answer.Finding

// add puts findings under a topic.
func (g *gathered) add(topic string, fs []answer.Finding) {
	for _, f := range fs {
		f.Topic = topic
		*g = append(*g, f)
	}
}

// doubtful marks a finding that shows only where the unknowns fall badly. It
// stands in front, so that a title cut short still says so.
const doubtful = "Possibly: "

// opening puts words in front of a title.
func opening(words, title string) string {
	first, _, _ := strings.Cut(title, " ")
	if first != "" && strings.ToLower(first[1:]) == first[1:] { // no name or unit in capitals
		title = strings.ToLower(title[:1]) + title[1:]
	}
	return words + title
}

// onceFull opens what does not hold yet, because the battery was measured, or
// said to be, partly charged.
const onceFull = "Once it is full: "

// nearlyFull is the charge from which on a pack is as hard on everything as a
// full one. Own choice.
const nearlyFull = 0.95

// charged adds to the findings of a partly charged pack what comes of it as
// soon as somebody has charged it: launch, speed, wire and fuse.
func charged(list gathered, b, original *builder, u unknowns) (gathered, error) {
	likely := u.likely()
	if b.parts.Pack.Charge.Likely >= nearlyFull {
		return list, nil
	}
	v, err := look(b, original, func(f *setup.Figure) float64 {
		if f.Key == b.parts.Pack.Charge.Key {
			return 1
		}
		return likely(f)
	})
	if err != nil {
		return nil, err
	}
	full, err := v.findings()
	if err != nil {
		return nil, err
	}
	full = slices.DeleteFunc(full, func(f answer.Finding) bool {
		return f.Topic != TopicLaunch && f.Topic != TopicSpeed && f.Topic != TopicPath
	})
	return worseOf(list, full, func(f *answer.Finding) { f.Title = opening(onceFull, f.Title) }), nil
}

// gather joins the findings of the likely case with those of the bad corners.
// What shows only at a corner, or is worse there, is kept one level milder and
// says that it is in doubt: never "fine" on a guess, and never a certain
// danger on one either.
func gather(likely []answer.Finding, corners ...[]answer.Finding) []answer.Finding {
	out := slices.Clone(likely)
	for _, list := range corners {
		out = worseOf(out, list, func(f *answer.Finding) {
			f.Level = milder(f.Level)
			f.Title = opening(doubtful, f.Title)
		})
	}
	found := codes(out)
	out = slices.DeleteFunc(out, func(f answer.Finding) bool {
		return f.Level == answer.Fine && slices.ContainsFunc(against[f.Code], func(code string) bool {
			_, is := found[code]
			return is
		})
	})
	answer.Sort(out)
	return onceEach(out)
}

// codes says where each code is first found.
func codes(list []answer.Finding) map[string]int {
	at := map[string]int{}
	for i, f := range list {
		if _, seen := at[f.Code]; !seen {
			at[f.Code] = i
		}
	}
	return at
}

// worseOf adds to a list what another has, put into words by say, where the
// list does not know the code or takes it more lightly.
func worseOf(out, other []answer.Finding, say func(*answer.Finding)) []answer.Finding {
	at := codes(out)
	for _, f := range other {
		say(&f)
		i, seen := at[f.Code]
		switch {
		case f.Level == answer.Fine:
		case !seen:
			at[f.Code] = len(out)
			out = append(out, f)
		case f.Level > out[i].Level:
			out[i] = f
		}
	}
	return out
}

// onceEach drops what is said in the same words already, of findings that are
// sorted.
func onceEach(list []answer.Finding) []answer.Finding {
	said := map[[2]string]bool{}
	return slices.DeleteFunc(list, func(f answer.Finding) bool {
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
func milder(l answer.Level) answer.Level {
	switch l {
	case answer.Danger:
		return answer.FixFirst
	case answer.Fine:
		return answer.Fine
	default:
		return answer.Watch
	}
}
