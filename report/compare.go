package report

import (
	"io"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// WriteComparison writes several answers side by side on one page, in the format
// that the options name; they have no other length. Errors are as in [Write].
func WriteComparison(w io.Writer, c *answer.Comparison, o Options) error {
	if !finished(c) {
		return errUnfinished
	}
	out, err := renderComparison(c, o)
	if err != nil {
		return err
	}
	_, err = w.Write(out)
	return err
}

// finished reports whether a comparison is one that somebody finished.
func finished(c *answer.Comparison) bool {
	return c != nil && c.Schema == answer.ComparisonSchema && len(c.Columns) > 0 && !slices.ContainsFunc(c.Columns, func(col answer.Column) bool { return unfinished(col.Answer) })
}

func renderComparison(c *answer.Comparison, o Options) ([]byte, error) {
	switch o.Format {
	case FormatJSON:
		return wholeJSON(c, o.OneLine)
	case FormatHTML:
		return comparisonHTML(c), nil
	}
	return written(o.Format, comparisonPage(c))
}

// comparer writes a comparison.
type comparer struct {
	*answer.Comparison
	of []*builder // one for each column, in the units of the first
}

func newComparer(c *answer.Comparison) *comparer {
	x := &comparer{Comparison: c}
	for _, col := range c.Columns {
		b := newBuilder(withCautions(col.Answer))
		b.system = c.System
		x.of = append(x.of, b)
	}
	return x
}

// comparisonPage is the page in the roomiest layout that fits.
func comparisonPage(c *answer.Comparison) *document {
	x := newComparer(c)
	var doc *document
	for _, r := range []columnRoom{
		{3, 170, 80, 0},
		{2, 170, 60, 0},
		{2, 115, 60, 0},
		{1, 170, 60, 0},
		{1, 115, 60, 1},
		{1, 115, 60, 2},
		{1, 80, 40, 2},
		{1, 60, 30, 2},
		{1, 40, 20, 3},
		{0, 0, 20, 3},
	} {
		doc = x.page(r)
		if fitsPage(doc) {
			break
		}
	}
	return doc
}

// columnRoom is how much of everything the page has place for.
type columnRoom struct {
	reasons, length, name int // reasons for each column, characters of each, and of a name
	lean                  int // how many of the figures are left out, by how much the others tell of them
}

func (x *comparer) page(r columnRoom) *document {
	doc := &document{title: "Side by side: " + things(len(x.Columns), "setup")}
	for i, f := range x.lead() {
		least := len("A: ") + x.of[x.worst()].leastOf(i)
		doc.lead = append(doc.lead, fact{f.name, inLead(f.name, least, f.value)})
	}
	doc.sections = []section{{title: "Which and why", items: x.each(r)}, x.figures(r.lean)}
	if best := x.best(); len(best) > 0 {
		doc.sections = append(doc.sections, section{title: "The best", text: x.amongUsable(), facts: best})
	}
	if differ := x.against(); len(differ) > 0 && r.lean < 3 {
		doc.sections = append(doc.sections, section{title: "Against " + x.Columns[0].Letter + ", vehicle by vehicle", facts: differ})
	}
	safety := x.of[0].safety()
	safety.more = ""
	doc.sections = append(doc.sections, section{title: "How sure", text: []string{x.sure()}}, safety)
	explainWords(doc)
	return doc
}

// letters lists the columns that may be used, or those that may not.
func (x *comparer) letters(usable bool) []string {
	var list []string
	for _, col := range x.Columns {
		if col.Answer.Verdict < answer.FixFirst == usable {
			list = append(list, col.Letter)
		}
	}
	return list
}

// and joins names as a sentence does.
func and(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + " and " + list[len(list)-1]
}

// first is the column that the first lines speak of: of those with the mildest
// verdict the one that lasts longest, or the first.
func (x *comparer) first() int {
	for _, b := range x.Best {
		if b.For == answer.MeritTime && b.Column >= 0 && x.Columns[b.Column].Answer.Verdict == x.Verdict {
			return b.Column
		}
	}
	for i, col := range x.Columns {
		if col.Answer.Verdict == x.Verdict {
			return i
		}
	}
	return 0
}

// lead answers which may be used, says the gravest reason against one that may
// not, and the next step with the best.
func (x *comparer) lead() [3]fact {
	yes, no := x.letters(true), x.letters(false)
	verdict := fact{answerWord(x.Verdict), ""}
	switch {
	case len(yes) == 0:
		verdict.name, verdict.value = "NO", "none of "+and(no)+" may be used as it is."
		if len(no) == 2 {
			verdict.value = "neither " + no[0] + " nor " + no[1] + " may be used as it is."
		}
		if x.Verdict == answer.FixFirst {
			verdict.name = "NOT YET"
		}
	case len(no) == 0:
		verdict.value = and(yes) + " may each be used."
	default:
		verdict.value = and(yes) + ", as far as these figures go; not " + and(no) + "."
	}
	of := func(i, line int) string {
		return x.Columns[i].Letter + ": " + x.of[i].headline()[line].value
	}
	return [3]fact{verdict, {whyName, of(x.worst(), 1)}, {nextName, of(x.first(), 2)}}
}

// worst is the column whose gravest reason is told: the worst, or where all may be used
// the best.
func (x *comparer) worst() int {
	at, worst := x.first(), answer.Fine
	for i, col := range x.Columns {
		if v := col.Answer.Verdict; v > worst && v >= answer.FixFirst {
			at, worst = i, v
		}
	}
	return at
}

// each is what every column is, its answer, and its gravest reasons.
func (x *comparer) each(r columnRoom) []string {
	var items []string
	for i := range x.Columns {
		items = append(items, strings.Join(x.one(i, r), " "))
	}
	return items
}

// one is what a column is and its answer, and its gravest reasons, each by itself.
func (x *comparer) one(i int, r columnRoom) []string {
	col, b := x.Columns[i], x.of[i]
	texts := []string{col.Letter + ", " + cut(orElse(clean(col.Name), "a setup"), r.name) + ": " + answerWord(col.Answer.Verdict) + "."}
	list := b.reasons()
	for _, f := range list[:min(r.reasons, len(list))] {
		texts = append(texts, b.reason(f, b.opening(f), r.length))
	}
	if more := b.moreDangers(nil, list[min(r.reasons, len(list)):], r.length); more != "" {
		texts = append(texts, more)
	}
	return texts
}

// sure says what the columns rest on.
func (x *comparer) sure() string {
	d := x.Columns[0].Answer.Draws
	text := ""
	for i, b := range x.of {
		if read := b.speedLeftOut(); read != "" {
			text += "The speed of " + x.Columns[i].Letter + " is without the " + read + " that was read. "
		}
	}
	if d.Count > 0 {
		text += quantity.Digits(float64(d.Count), 3) + " " + x.of[0].kindred() + " were computed in each column, not tested"
	}
	if x.SameDraws {
		return text + ": the same ones in all, so that a difference is one."
	}
	text += ", and not the same ones in all: small differences may be chance."
	return text
}
