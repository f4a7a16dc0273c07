package report

import (
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// builder turns one assessment into a document.
type builder struct {
	a *answer.Assessment
	figures
	topics []answer.Topic // those that a section was made of
}

func newBuilder(a *answer.Assessment) *builder {
	return &builder{a: a, figures: figures{ranges: a.Ranges, system: a.System}}
}

// build makes the full report. The order of the sections is the order in which
// somebody has to decide: what the ride is like, what may break or burn, what
// to do, and what all of it rests on.
func build(a *answer.Assessment) *document {
	b := newBuilder(a)
	lines, whole := b.lead()
	doc := &document{lead: lines, preface: append(whole, b.preface()...)}
	for _, s := range []section{
		b.byPart(),
		b.ride(), b.speed(), b.pack(), b.launch(), b.path(), b.cutoff(), b.charge(), b.original(),
		b.storage(), b.readings(), b.measured(), b.other(),
		b.changes(), b.buy(), b.habits(), b.assumed(), b.measure(), b.cautions(), b.sources(),
	} {
		if s.title != "" {
			doc.sections = append(doc.sections, s)
		}
	}
	return doc
}

// verdictName is what the first line begins with.
const verdictName = "Verdict"

// wholeName is the name of a lead line where it is printed once more, whole.
func wholeName(name string) string { return name + " in full" }

// headline returns verdict, largest risk and next step, whole. What was left
// empty is made up for from the findings.
func (b *builder) headline() [3]fact {
	risk, next := "none found; the cautions still hold", "read the cautions"
	if len(b.a.Findings) > 0 {
		worst := slices.MaxFunc(b.a.Findings, func(x, y answer.Finding) int { return int(x.Level) - int(y.Level) })
		risk = orElse(clean(worst.Title), risk)
		next = orElse(clean(worst.Advice), next)
	}
	return [3]fact{
		{verdictName, b.verdict()},
		{"Risk", orElse(clean(b.a.Headline[1]), risk)},
		{"Next", orElse(clean(b.a.Headline[2]), next)},
	}
}

// lead is the part that must be right when it is all that anybody reads: three
// lines, one each. What does not fit its line comes back once more, whole.
func (b *builder) lead() (lines, whole []fact) {
	for _, f := range b.headline() {
		text := oneLine(f.name, f.value)
		lines = append(lines, fact{f.name, text})
		if text != f.value {
			whole = append(whole, fact{wholeName(f.name), f.value})
		}
	}
	return lines, whole
}

// verdict puts the level in front of the verdict's own words.
func (b *builder) verdict() string {
	text := clean(b.a.Headline[0])
	if text == "" {
		return levelWord(b.a.Verdict)
	}
	return levelWord(b.a.Verdict) + ": " + text
}

// preface says what was judged and how its unknowns were drawn.
func (b *builder) preface() []fact {
	var facts []fact
	if title := clean(b.a.Title); title != "" {
		facts = append(facts, fact{"Setup", title})
	}
	return append(facts, b.drawn()...)
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
