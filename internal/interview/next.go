package interview

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// Next returns all questions that may still be asked, the most useful to the
// verdict so far first: neither given nor passed, and sensible beside what is
// given. An a of nil is no answer yet; the order is then that of the list.
func Next(given map[string]string, a *answer.Assessment, passed func(key string) bool) []Question {
	if passed == nil {
		passed = func(string) bool { return false }
	}
	p := pool{told: told{given: given}, passed: passed, all: questions.Get()}
	if a != nil {
		p.a = a
		p.usual = map[string]string{}
		for _, x := range a.Assumed {
			p.usual[x.Key] = x.Value
		}
	}
	type ranked struct {
		*row
		use
	}
	var list []ranked
	for i := range p.all {
		r := &p.all[i]
		if p.has(r) || passed(r.Key) || p.bench() && r.drives() || !r.asked(&p.told) {
			continue
		}
		list = append(list, ranked{r, p.useOf(r)})
	}
	slices.SortStableFunc(list, func(x, y ranked) int {
		return cmp.Or(cmp.Compare(y.weight, x.weight), cmp.Compare(x.Effort, y.Effort))
	})
	out := make([]Question, len(list))
	for i, x := range list {
		out[i] = p.put(x.row, x.use)
	}
	return out
}

// put is a question as it is asked now.
func (p *pool) put(r *row, u use) Question {
	q := r.Question
	q.Why, q.Decides, q.Presses = u.why, u.weight >= untold, u.weight >= pressing
	if text, assumed := p.usual[q.Key]; assumed && len(q.Choices) == 0 {
		if strings.HasSuffix(q.Usual, neverFine) {
			text += neverFine
		}
		q.Usual = text
	}
	if r.rest.asks != "" && given(r.Fills...)(&p.told) {
		q.Asks, q.How, q.Example = r.rest.asks, r.rest.how, r.rest.example
	}
	return q.Beside(p.given)
}

// pool is what there is to choose the next question from.
type pool struct {
	told
	passed func(key string) bool
	all    []row              // not to be changed
	a      *answer.Assessment // nil = no answer yet
	usual  map[string]string  // what the answer has assumed, by key
}

// bench reports whether another load stands in place of a vehicle.
func (p *pool) bench() bool { return given("load.current", "load.power", "load.pattern")(&p.told) }

// has reports whether a question is answered: its key, or one that does as well.
func (p *pool) has(r *row) bool {
	return given(r.Key)(&p.told) || given(r.instead...)(&p.told)
}

// tried reports whether one of the questions that a change hangs on was answered or
// passed: the others are then no longer urgent.
func (p *pool) tried(c answer.Change) bool {
	for i := range p.all {
		if r := &p.all[i]; r.Mends == c && (p.has(r) || p.passed(r.Key)) {
			return true
		}
	}
	return false
}

// use is what a question can do for the answer so far.
type use struct {
	weight float64
	why    string
}

// What counts how much, most first: the steps are so far apart that a share from
// 0 to 1 orders what stands on one of them. Own choice.
const (
	pressing    = 10 // without it the answer is of another vehicle
	underDanger = 8  // what a danger asks for may be there already
	blocking    = 7  // what must be fixed first was not told, and may be in order
	guessUnder  = 6  // what must be fixed first rests on a guess
	mayTurn     = 5  // finding it out is expected to turn the verdict
	underFix    = 4  // what must be fixed first may be in order already
	untold      = 3  // it was not told and may be dangerous
	narrowing   = 2  // it narrows a range
	milder      = 1  // something to watch rests on it, or a part of the spread
	fitting     = 0.01
)

// leastTurn is the chance from which on the verdict may turn, far enough from what
// a hundred draws leave to chance; leastEffect the share of the spread below which
// nobody is asked for its sake. Own choice.
const leastTurn, leastEffect = 0.05, 0.05

// mostly is the share of the draws from which on what could burn is asked after though
// it is only watched. Own choice.
const mostly = 0.5

// useOf weighs a question.
func (p *pool) useOf(r *row) use {
	var best use
	take := func(weight float64, why string) {
		if weight > best.weight {
			best = use{weight, why}
		}
	}
	if r.presses != nil {
		if why := r.presses(&p.told); why != "" {
			take(pressing, why)
		}
	}
	if p.a == nil {
		return best
	}
	if r.fits {
		take(fitting, "without it nobody can say whether it fits")
	}
	concerns := func(key string) bool {
		return key != "" && (key == r.Key || slices.Contains(r.Fills, key) || slices.Contains(r.settles, key))
	}
	p.byFindings(r, concerns, take)
	for _, m := range p.a.Measure {
		if !concerns(m.Key) {
			continue
		}
		if m.Verdict >= leastTurn {
			take(mayTurn+m.Verdict/float64(r.Effort), m.Narrows)
		}
		take(narrowing+max(m.Minutes, m.Speed, m.Amps)/float64(r.Effort), m.Narrows)
	}
	for _, item := range p.a.Items {
		if item.Word == answer.NotKnown && slices.ContainsFunc(item.Untold, concerns) {
			take(milder, fmt.Sprintf("without it nothing can be said of the %s", item.Item))
		}
	}
	for _, x := range p.a.Assumed {
		if concerns(x.Key) && x.Effect >= leastEffect {
			take(milder*x.Effect, fmt.Sprintf("%.0f %% of what is open goes with it", 100*x.Effect))
		}
	}
	return best
}

// byFindings weighs a question by what was found.
func (p *pool) byFindings(r *row, concerns func(string) bool, take func(float64, string)) {
	for i := range p.a.Findings {
		f := &p.a.Findings[i]
		mends := r.Mends != answer.ChangeNone && f.Change == r.Mends && !p.tried(r.Mends)
		switch {
		case f.Level == answer.Danger && mends:
			take(underDanger+quarters(f.Share), "what a danger asks for may be there already")
		case f.Level == answer.FixFirst && f.Blocks() && slices.ContainsFunc(f.Decides, concerns):
			take(blocking+quarters(f.Share), "what must be fixed first was not told, and may be in order")
		case f.Level == answer.FixFirst && concerns(f.Guess):
			take(guessUnder+quarters(f.Share), "what must be fixed first rests on a guess here")
		case f.Level == answer.FixFirst && mends:
			take(underFix+quarters(f.Share), "what must be fixed first may be in order already")
		case f.Change == answer.LookUp && slices.ContainsFunc(f.Decides, concerns):
			take(untold, "it was not told, and it may matter")
		case f.Level == answer.Watch && f.Harm == answer.House && f.Share >= mostly && r.Mends == answer.ChangeNone && concerns(f.Guess): // a property of what is there, not whether it is there
			take(untold+quarters(f.Share), "what could burn is only watched because of a guess here")
		case f.Level == answer.Watch && concerns(f.Guess):
			take(milder*f.Share, "something to watch rests on a guess here")
		}
	}
}

// quarters rounds a share: among what holds about as often, the easier goes first.
func quarters(share float64) float64 { return math.Round(4*share) / 5 }
