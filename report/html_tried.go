package report

import (
	"strconv"
	"strings"

	"example.org/packcheck/answer"
)

// Tried is a way out that is shown as if it had been done: the page says so
// wherever its answer could be taken for one about the vehicle as it stands.
type Tried struct {
	Steps []string // everything that has to be fitted first, a line each; none = one thing
	Today string   // the answer in a word without it; empty = not known any more
}

// HTMLPartsTried is [HTMLParts] of a vehicle on which something is only tried.
// Errors are those of [Write].
func HTMLPartsTried(a *answer.Assessment, explain func(code string) (answer.Explanation, bool), tried *Tried) (parts []HTMLPart, word string, err error) {
	if unfinished(a) {
		return nil, "", errUnfinished
	}
	a = withCautions(a)
	p := &page{builder: newBuilder(a), explain: explain, tried: tried}
	p.tell()
	for _, x := range append([]piece{{PartBand, func() { p.band(pageTitle(a)) }}}, p.pieces()...) {
		p.Reset()
		x.write()
		parts = append(parts, HTMLPart{x.part, p.String()})
	}
	return parts, answerWord(a.Verdict), nil
}

// InFew is the answer in a line, for where there is no more room: the word, and
// why in a few words; of what is only tried, what it takes and how it stands
// without. Errors are those of [Write].
func InFew(a *answer.Assessment, tried *Tried) (string, error) {
	if unfinished(a) {
		return "", errUnfinished
	}
	word := answerWord(a.Verdict)
	if tried == nil {
		if a.Verdict <= answer.Watch {
			return word, nil
		}
		const fewCharacters = aLine // two lines of a phone, and a third where dots would stand; own choice
		b := newBuilder(a)
		hedge := ""
		if len(a.Findings) > 0 {
			hedge = a.Findings[0].Certainty.Hedge()
		}
		why := strings.TrimPrefix(b.headline()[1].value, hedge)
		return word + ": " + hedge + shorten(firstClause(why), fewCharacters), nil
	}
	text := "TRIED: " + tried.holds(a.Verdict)
	if tried.Today != "" {
		text += " (today: " + clean(tried.Today) + ")"
	}
	return text, nil
}

// holds is the answer with the condition that it holds on.
func (t *Tried) holds(verdict answer.Level) string {
	if verdict >= answer.Danger {
		return "NO, even with " + t.all() + " fitted"
	}
	are := " are"
	if len(t.Steps) < 2 {
		are = " is"
	}
	return strings.ToLower(strings.ReplaceAll(answerWord(verdict), ",", "")) + ", only once " + t.all() + are + " fitted"
}

// all counts what has to be fitted.
func (t *Tried) all() string {
	if n := len(t.Steps); n > 1 {
		return "all " + strconv.Itoa(n)
	}
	return "it"
}

// once stands at the head of the band where something is only tried.
func (p *page) once() {
	t := p.tried
	if t == nil {
		return
	}
	head := "Only once all of these are fitted:"
	if p.a.Verdict >= answer.Danger {
		head = "Even with all of these fitted:"
	}
	if len(t.Steps) == 0 {
		head = "Only tried, not fitted yet:"
	}
	p.put("<div class=\"once\">\n<p>%s</p>\n", head)
	if len(t.Steps) > 0 {
		p.WriteString("<ul>\n")
		for _, step := range t.Steps {
			p.put("<li>%s</li>\n", p.say(step))
		}
		p.WriteString("</ul>\n")
	}
	if t.Today != "" {
		p.put("<p>Today, without: %s.</p>\n", t.Today)
	}
	p.WriteString("</div>\n")
}

// nowName says in a legend which vehicle is drawn.
func (p *page) nowName() string {
	if p.tried != nil {
		return "with these fitted"
	}
	return "now"
}

// standing says of figures which vehicle they are of, where somebody might take
// them for a promise; usual is their title otherwise.
func (p *page) standing(usual string) string {
	use := "not for riding"
	if p.bench() || p.onlyCharging() {
		use = "not for use"
	}
	switch {
	case p.tried != nil && p.a.Verdict >= answer.Danger:
		return usual + ", with these fitted: still " + use
	case p.tried != nil:
		return usual + ", with these fitted"
	case p.a.Verdict >= answer.Danger:
		return "As it is now, " + use
	case p.a.Verdict == answer.FixFirst:
		return "As it is now, before it is put right"
	}
	return usual
}
