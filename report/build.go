package report

import (
	"bytes"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// builder turns one assessment into a document.
type builder struct {
	a *answer.Assessment
	figures
	tight  int            // how far a full report has drawn together, for want of room
	topics []answer.Topic // those that a section was made of
}

func newBuilder(a *answer.Assessment) *builder {
	return &builder{a: a, figures: figures{ranges: a.Ranges, system: a.System}}
}

// build makes the full report: what was found, what to do about it, every figure
// with its range, what to find out next, and what all of it rests on. Nothing is
// said twice: what a finding asks for stands in the list of changes.
func build(a *answer.Assessment) *document {
	var doc *document
	for tight := loose; tight <= tightest; tight++ {
		b := newBuilder(a)
		b.tight = tight
		doc = b.full()
		if bytes.Count(finish(doc.render(&textDialect{wide: doc.wide})), []byte("\n")) < fullLines {
			break
		}
	}
	return doc
}

// fullLines is how long a full report may be before it draws together. Own choice.
const fullLines = 250

// How a full report that grows too long draws together: titles run on into their
// sections, then small sections into one another, at last all of them.
const (
	loose = iota
	runOn
	dense
	tightest
)

func (b *builder) full() *document {
	a := b.a
	lines, _ := b.lead() // findings and changes hold them whole
	doc := &document{lead: lines, title: clean(a.Title), on: b.tight >= dense, wide: true}
	add := func(list ...section) {
		for _, s := range list {
			s.on = s.on || b.tight >= tightest
			if s.title != "" && !s.empty() {
				doc.sections = append(doc.sections, s)
			}
		}
	}
	add(b.findings()...)
	add(b.items(), b.changes(), b.allWays(), b.buy(), b.habits(), b.figureSection())
	for i, s := range []section{
		b.ride(), b.speed(), b.launch(), b.pack(), b.path(), b.cutoff(), b.charge(), b.original(),
		b.storage(), b.readings(), b.measured(), b.other(),
	} {
		s.sub, s.flow = true, true
		s.on = i == 0 || len(s.facts) <= fewFacts // the first behind the title of all
		add(s)
	}
	add(b.measure(), b.assumed(), b.sources(), b.cautions())
	if s := usedWords(doc); !s.empty() {
		doc.sections = slices.Insert(doc.sections, 0, s)
	}
	return doc
}

// fewFacts is how many facts make no paragraph of their own where room is short.
const fewFacts = 7

// figureSection begins the figures and says what a range is.
func (b *builder) figureSection() section {
	return section{title: "All figures", flow: true, sub: b.tight >= dense, facts: b.drawn()}
}

// wholeName is the name of a lead line where it is printed once more, whole.
func wholeName(name string) string { return name + " in full" }

// The names of the second and third line.
const whyName, nextName = "Why", "Next"

// headline returns verdict, gravest reason and next step, whole. What was left
// empty is made up for from the findings.
func (b *builder) headline() [3]fact {
	risk, next := "none found; the cautions still hold", "read the cautions"
	if len(b.a.Findings) > 0 {
		worst := slices.MaxFunc(b.a.Findings, func(x, y answer.Finding) int { return int(x.Level) - int(y.Level) })
		risk = orElse(b.say(worst.Title), risk)
		next = orElse(b.say(worst.Advice), next)
	}
	return [3]fact{
		b.verdict(),
		{whyName, orElse(b.say(b.a.Headline[1]), risk)},
		{nextName, orElse(b.say(b.a.Headline[2]), next)},
	}
}

// say makes a sentence of the answer fit to print: clean, and with the user's
// units in front.
func (b *builder) say(text string) string { return usersFirst(clean(text), b.system) }

// lead is the part that must be right when it is all that anybody reads: three
// lines, where it takes that to be whole of two lines of text. What does not fit its line comes back once more, whole.
func (b *builder) lead() (lines, whole []fact) {
	for i, f := range b.headline() {
		text := oneLine(f.name, f.value)
		if i > 0 {
			text = inLead(f.name, b.leastOf(i), f.value)
		}
		lines = append(lines, fact{f.name, text})
		if text != f.value {
			whole = append(whole, fact{wholeName(f.name), f.value})
		}
	}
	return lines, whole
}

// leastOf is with how few characters a clause of a lead line says enough: a reason, behind
// how sure it is, with as few as "No fuse".
func (b *builder) leastOf(line int) int {
	if line != 1 {
		return leastClause
	}
	if first := b.a.First(); first != nil {
		return len(first.Certainty.Hedge()) + leastSentence
	}
	return leastSentence
}

// sentence ends text with a full stop unless it has an end of its own.
func sentence(text string) string {
	if text == "" || strings.ContainsAny(text[len(text)-1:], ".!?") {
		return text
	}
	return text + "."
}

func orElse(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// list joins numbers of one kind: "20, 25 and 30 A".
func (f figures) list(u unit, values []float64) string {
	texts := make([]string, len(values))
	for i, v := range values {
		texts[i] = f.one(u, v)
		if i < len(values)-1 { // the last one carries the unit for all
			texts[i] = quantity.Digits(v*u.per, 3)
		}
	}
	return strings.Join(texts, ", ")
}
