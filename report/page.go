package report

import (
	"bytes"
	"strings"

	"example.org/packcheck/answer"
)

// The most that the page holds: lines of text, and characters of the dialects
// for forums, whose posts end somewhere.
const (
	PageLines      = 60
	PageCharacters = 4000
)

// room is how much of everything the page has place for.
type room struct {
	title       int // characters
	why, whyLen int // reasons, and the characters of each
	figures     int
	ways        int
	steps       int // of each way, or of what to do first
	stepLen     int
	ask, askLen int
	together    int // characters of how the steps of a way go together
}

// rooms are the layouts that are tried, the roomiest first. What nobody may
// miss (the answer, dangers, safety) is in all of them, and what is to be fitted
// stands whole as long as any layout has place for it. So does a question, where there is
// one: it may save buying anything. Own choice.
func rooms() []room {
	const whole, order = 400, 90 // the order in which the parts sit before why their amps differ
	return []room{
		{title: 120, why: 5, whyLen: 230, figures: 8, ways: 3, steps: 8, stepLen: 190, ask: 5, askLen: 400, together: whole},
		{title: 120, why: 5, whyLen: 230, figures: 8, ways: 3, steps: 8, stepLen: 190, ask: 3, askLen: 400, together: whole},
		{title: 120, why: 5, whyLen: 180, figures: 8, ways: 3, steps: 8, stepLen: 190, ask: 3, askLen: 230, together: whole},
		{title: 120, why: 5, whyLen: 118, figures: 8, ways: 3, steps: 8, stepLen: 190, ask: 3, askLen: 190, together: whole},
		{title: 120, why: 5, whyLen: 118, figures: 7, ways: 3, steps: 8, stepLen: 190, ask: 2, askLen: 190, together: whole},
		{title: 60, why: 5, whyLen: 118, figures: 6, ways: 3, steps: 8, stepLen: 190, ask: 2, askLen: 118, together: whole},
		{title: 60, why: 5, whyLen: 118, figures: 5, ways: 2, steps: 8, stepLen: 190, ask: 2, askLen: 118, together: whole},
		{title: 60, why: 5, whyLen: 118, figures: 5, ways: 2, steps: 8, stepLen: 190, ask: 1, askLen: 118, together: whole},
		{title: 60, why: 5, whyLen: 61, figures: 5, ways: 2, steps: 8, stepLen: 190, ask: 1, askLen: 118, together: whole},
		{title: 60, why: 5, whyLen: 61, figures: 5, ways: 2, steps: 8, stepLen: 190, ask: 1, askLen: 118, together: order},
		{title: 60, why: 5, whyLen: 61, figures: 5, ways: 2, steps: 8, stepLen: 190, ask: 1, askLen: aLine, together: order},
		{title: 60, why: 5, whyLen: 61, figures: 4, ways: 2, steps: 8, stepLen: 190, ask: 1, askLen: 118, together: order},
		{title: 60, why: 5, whyLen: 61, figures: 5, ways: 2, steps: 8, stepLen: 118, ask: 1, askLen: 118, together: whole},
		{title: 60, why: 4, whyLen: 118, figures: 5, ways: 2, steps: 8, stepLen: 190, ask: 1, askLen: 118, together: whole},
		{title: 60, why: 4, whyLen: 61, figures: 5, ways: 2, steps: 8, stepLen: 190, ask: 1, askLen: aLine, together: order},
		{title: 60, why: 4, whyLen: 118, figures: 4, ways: 2, steps: 8, stepLen: 190, ask: 1, askLen: 118},
		{title: 60, why: 5, whyLen: 61, figures: 5, ways: 2, steps: 8, stepLen: 118, ask: 1, askLen: aLine},
		{title: 60, why: 4, whyLen: 61, figures: 4, ways: 2, steps: 8, stepLen: 118, ask: 1, askLen: aLine},
		{title: 60, why: 3, whyLen: 61, figures: 4, ways: 2, steps: 8, stepLen: 118, ask: 1, askLen: aLine},
		{title: 60, why: 5, whyLen: 61, figures: 5, ways: 1, steps: 8, stepLen: 118, ask: 1, askLen: aLine, together: whole},
		{title: 60, why: 5, whyLen: 61, figures: 5, ways: 2, steps: 4, stepLen: 56, ask: 1, askLen: aLine, together: whole},
		{title: 40, why: 5, whyLen: 50, figures: 3, ways: 1, steps: 3, stepLen: 40, ask: 1, askLen: 40},
		{title: 20, why: 5, whyLen: 30, figures: 0, ways: 1, steps: 1, stepLen: 30, ask: 1, askLen: 30},
	}
}

// buildPage makes the answer on one page: the verdict, why, the few figures
// that people ask for, ways out, what to find out next, how sure it is, safety.
// Of several layouts it takes the roomiest that fits everywhere, so that all
// dialects hold the same.
func buildPage(a *answer.Assessment) *document {
	b := newBuilder(a)
	var doc *document
	for _, r := range rooms() {
		doc = b.page(r)
		if fitsPage(doc) {
			break
		}
	}
	return doc
}

// fitsPage reports whether a document keeps the measures of the page in every
// dialect.
func fitsPage(doc *document) bool {
	if n := bytes.Count(finish(doc.render(&textDialect{})), []byte("\n")); n > PageLines {
		return false
	}
	return len(finish(doc.render(&markdownDialect{}))) <= PageCharacters &&
		len(finish(doc.render(&bbcodeDialect{}))) <= PageCharacters
}

// page is the page in one layout.
func (b *builder) page(r room) *document {
	lead, _ := b.lead()
	var more []string
	doc := &document{lead: lead, title: cut(clean(b.a.Title), r.title)}
	for _, s := range []section{b.why(r), b.few(r), b.waysOut(r), b.ask(r), b.sure(), b.safety()} {
		if !s.empty() {
			doc.sections = append(doc.sections, s)
		}
		if s.more != "" {
			more = append(more, s.more)
		}
	}
	if last := len(doc.sections) - 1; len(more) > 0 {
		doc.sections[last].after = append(doc.sections[last].after, "Full report: "+strings.Join(more, ", ")+".")
	}
	explainWords(doc)
	return doc
}
