package interview

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// Next returns all questions that may still be asked, the most useful to the
// verdict so far first: neither given nor passed, and sensible beside what is
// given. An a of nil is no answer yet; the order is then that of the list.
func Next(given map[string]string, a *answer.Assessment, passed func(key string) bool) []Question {
	type ranked struct {
		Question
		use use
	}
	var list []ranked
	for _, r := range questions() {
		if answered(&r, given) || passed != nil && passed(r.Key) || !r.asked(given) {
			continue
		}
		var u use
		if a != nil {
			u = useOf(&r, a)
		}
		r.Why = u.why
		list = append(list, ranked{r.Question, u})
	}
	slices.SortStableFunc(list, func(x, y ranked) int {
		return cmp.Or(cmp.Compare(y.use.weight, x.use.weight), cmp.Compare(x.Effort, y.Effort))
	})
	out := make([]Question, len(list))
	for i, x := range list {
		out[i] = x.Question
	}
	return out
}

// answered reports whether a question's key is given, or one that stands for it.
func answered(r *row, given map[string]string) bool {
	if _, is := given[r.Key]; is {
		return true
	}
	return slices.ContainsFunc(r.instead, func(key string) bool { _, is := given[key]; return is })
}

// use is what a question can do for the answer so far.
type use struct {
	weight float64
	why    string
}

// What counts how much, most first: the steps are far apart, so that a share from
// 0 to 1 orders what stands on one of them. Own choice.
const (
	underDanger   = 8 // a finding of danger may go with what it asks for
	guessUnder    = 6 // what must be fixed first rests on a guess
	mayTurn       = 5 // finding it out is expected to turn the verdict
	untoldHarm    = 4 // it was not told and may be dangerous
	fixedOtherway = 3 // what must be fixed first may be in order already
	narrows       = 2 // it narrows a range
	guessBeneath  = 1 // something to watch rests on a guess
)

// useOf weighs a question.
func useOf(r *row, a *answer.Assessment) use {
	var best use
	take := func(weight float64, why string) {
		if weight > best.weight {
			best = use{weight, why}
		}
	}
	concerns := func(key string) bool {
		return key != "" && (key == r.Key || slices.Contains(r.Fills, key) || slices.Contains(r.settles, key))
	}
	for i := range a.Findings {
		f := &a.Findings[i]
		settles := r.change != answer.ChangeNone && f.Change == r.change
		switch decides := slices.ContainsFunc(f.Decides, concerns); {
		case f.Level == answer.Danger && (settles || concerns(f.Guess)):
			take(underDanger+f.Share, "a danger may hang on it")
		case f.Level == answer.FixFirst && concerns(f.Guess):
			take(guessUnder+f.Share, "what must be fixed first rests on a guess here")
		case f.Level == answer.FixFirst && settles:
			take(fixedOtherway+f.Share, "it may be in order already")
		case f.Reads == answer.AsTold && decides && f.Change == answer.LookUp:
			take(untoldHarm, "it was not told, and it may matter")
		case f.Level == answer.Watch && concerns(f.Guess):
			take(guessBeneath*f.Share, "something to watch rests on a guess here")
		}
	}
	for i, m := range a.Measure {
		if !concerns(m.Key) {
			continue
		}
		rank := 1 / float64(i+1)
		if m.Verdict > 0 {
			take(mayTurn+min(m.Verdict, 1), m.Narrows)
		}
		take(narrows+rank, m.Narrows)
	}
	for _, item := range a.Items {
		if item.Word == answer.NotKnown && slices.ContainsFunc(item.Untold, concerns) {
			take(guessBeneath, fmt.Sprintf("without it nothing can be said of the %s", item.Item))
		}
	}
	for _, x := range a.Assumed {
		if concerns(x.Key) && x.Effect >= leastEffect {
			take(guessBeneath*x.Effect, fmt.Sprintf("%.0f %% of what is open goes with it", 100*x.Effect))
		}
	}
	return best
}

// leastEffect is the share of the spread below which nobody is asked for its
// sake. Own choice, as the least shrinking that a report asks for.
const leastEffect = 0.05

// kept reports whether given has a key of a table.
func kept(given map[string]string, table string) bool {
	for key := range given {
		if strings.HasPrefix(key, table+".") {
			return true
		}
	}
	return false
}
