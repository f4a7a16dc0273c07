package report

import (
	"fmt"
	"io"
	"math"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// WriteComparison writes several answers side by side on one page, in the format
// that the options name; they have no other length. Errors are as in [Write].
func WriteComparison(w io.Writer, c *answer.Comparison, o Options) error {
	if c == nil || c.Schema != answer.ComparisonSchema || len(c.Columns) == 0 {
		return errUnfinished
	}
	for _, col := range c.Columns {
		if col.Answer == nil || col.Answer.Schema != answer.Schema || col.Answer.Headline[0] == "" {
			return errUnfinished
		}
	}
	out, err := renderComparison(c, o)
	if err != nil {
		return err
	}
	_, err = w.Write(out)
	return err
}

func renderComparison(c *answer.Comparison, o Options) ([]byte, error) {
	var d dialect
	switch o.Format {
	case FormatJSON:
		return appendJSON(c)
	case FormatHTML:
		return comparisonHTML(c), nil
	case FormatText, "":
		d = &textDialect{}
	case FormatMarkdown:
		d = &markdownDialect{}
	case FormatBBCode:
		d = &bbcodeDialect{}
	default:
		return nil, fmt.Errorf("report: unknown format %q", o.Format)
	}
	return finish(comparisonPage(c).render(d)), nil
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
	for _, f := range x.lead() {
		doc.lead = append(doc.lead, fact{f.name, oneLine(f.name, f.value)})
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
	against := x.first()
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
	worst := answer.Fine
	for i, col := range x.Columns {
		if v := col.Answer.Verdict; v > worst && v >= answer.FixFirst {
			worst, against = v, i
		}
	}
	of := func(i, line int) string {
		return x.Columns[i].Letter + ": " + x.of[i].headline()[line].value
	}
	return [3]fact{verdict, {whyName, of(against, 1)}, {nextName, of(x.first(), 2)}}
}

// each is what every column is, its answer, and its gravest reasons.
func (x *comparer) each(r columnRoom) []string {
	var items []string
	for i, col := range x.Columns {
		b := x.of[i]
		text := col.Letter + ", " + cut(orElse(clean(col.Name), "a setup"), r.name) + ": " + answerWord(col.Answer.Verdict) + "."
		list := b.reasons()
		for _, f := range list[:min(r.reasons, len(list))] {
			text += " " + b.reason(f, r.length)
		}
		shown := list[min(r.reasons, len(list)):]
		if more := b.dangers(shown); more != "" {
			text += " Danger as well: " + more + "."
		}
		items = append(items, text)
	}
	return items
}

// figures are the columns beside each other; lean leaves out what the others
// nearly tell.
func (x *comparer) figures(lean int) section {
	g := grid{}
	row := func(name string, of func(b *builder) (cell, bool)) {
		r := gridRow{name: name}
		some := false
		for _, b := range x.of {
			c, ok := of(b)
			some = some || ok
			if !ok {
				c = cell{value: "-"}
			}
			r.cells = append(r.cells, c)
		}
		if some {
			g.rows = append(g.rows, r)
		}
	}
	spread := func(f figure) (cell, bool) {
		if f.likely == f.ends {
			return cell{value: f.likely}, true
		}
		return cell{f.likely, f.spread()}, true
	}
	for _, col := range x.Columns {
		g.letters = append(g.letters, col.Letter)
	}
	row("Answer", func(b *builder) (cell, bool) { return cell{value: answerWord(b.a.Verdict)}, true })
	row(x.lastsName(), func(b *builder) (cell, bool) {
		if b.stuck() {
			return cell{value: "does not get going"}, true
		}
		return spread(b.lasts())
	})
	moves := func(b *builder) bool { return !b.bench() && !b.stuck() }
	row("Distance", func(b *builder) (cell, bool) {
		c, _ := spread(b.figure("ride.distance_km", kilometr, b.a.Ride.DistanceKm))
		return c, moves(b) && lean < 1
	})
	row("Speed", func(b *builder) (cell, bool) {
		if b.a.Steady == nil || !moves(b) {
			return cell{}, false
		}
		return spread(b.figure("steady.speed_kmh", kmPerH, b.a.Steady.SpeedKmh))
	})
	row("First shove", func(b *builder) (cell, bool) {
		if b.a.Launch == nil {
			return cell{}, false
		}
		return spread(b.figure("launch.peak_battery_a", amps, about(b.a.Launch.PeakBatteryA)))
	})
	row("Motor amps", func(b *builder) (cell, bool) {
		if b.a.Launch == nil || lean > 1 {
			return cell{}, false
		}
		return spread(b.figure("launch.peak_motor_a", amps, about(b.a.Launch.PeakMotorA)))
	})
	for _, fate := range []struct {
		name string
		of   func(answer.DrawFigures) float64
	}{
		{"Gets stuck", func(d answer.DrawFigures) float64 { return d.Stuck }},
		{"Burns out", func(d answer.DrawFigures) float64 { return d.Burnt }},
	} {
		row(fate.name, func(b *builder) (cell, bool) {
			n := fate.of(b.a.Draws)
			return cell{value: counted(n)}, n > 0
		})
	}
	if lean > 0 {
		return x.inGrid(g)
	}
	row("Full volts", func(b *builder) (cell, bool) { return spread(b.figure("pack.full_v", volts, b.a.Pack.FullV)) })
	return x.inGrid(g)
}

func (x *comparer) inGrid(g grid) section {
	s := section{title: "In figures", side: g}
	s.text = []string{"Likely values, with where " + counted(x.Columns[0].Answer.Draws.Inside) + " " + x.of[0].kindred() + " lie:"}
	return s
}

func (x *comparer) lastsName() string {
	for _, b := range x.of {
		if !b.bench() {
			return "Pedal down"
		}
	}
	return "Under load"
}

// amongUsable says which columns the best are the best of.
func (x *comparer) amongUsable() []string {
	yes := x.letters(true)
	switch {
	case len(yes) == 0:
		return []string{"None may be used as it is; of all:"}
	case len(yes) < len(x.Columns):
		return []string{"Of those that may be used (" + and(yes) + "):"}
	}
	return nil
}

// best says which column is the best in what.
func (x *comparer) best() []fact {
	var facts []fact
	if yes := x.letters(true); len(yes) == 1 {
		return nil // it is that one
	}
	for _, b := range x.Best {
		name := map[answer.Merit]string{
			answer.MeritTime: "Lasts longest", answer.MeritSpeed: "Fastest", answer.MeritAsSpeed: "As fast as before",
			answer.MeritGentle: "Gentlest start",
		}[b.For]
		value := "no difference"
		if b.Column >= 0 && b.Column < len(x.Columns) {
			value = x.Columns[b.Column].Letter
			if b.For == answer.MeritAsSpeed {
				value += " comes nearest"
			}
			switch {
			case b.Share > 0 && b.Share < 0.6 && len(x.Columns) == 2:
				value = "hardly a difference"
			case b.Share > 0 && b.Share < 0.995:
				value += ", in " + counted(b.Share)
			}
		}
		facts = append(facts, fact{name, value})
	}
	return facts
}

// against is what the columns differ by from the first.
func (x *comparer) against() []fact {
	var facts []fact
	for i, col := range x.Columns {
		if i == 0 || len(col.Against) == 0 {
			continue
		}
		var parts []string
		for _, d := range []struct {
			path             string
			u                unit
			more, less, same string
			of               string
		}{
			{"ride.lasts_pedal_min", minutes, "longer", "shorter", "about as long", ""},
			{"steady.speed_kmh", kmPerH, "faster", "slower", "about as fast", ""},
			{"launch.peak_motor_a", amps, "more", "less", "about as much", "motors at the start "},
		} {
			r, ok := col.Against[d.path]
			if text := x.difference(d.u, r, d.more, d.less, d.same); ok && text != "" {
				parts = append(parts, d.of+text)
			}
		}
		facts = append(facts, fact{col.Letter, orElse(strings.Join(parts, ", "), "no difference")})
	}
	return facts
}

// difference says one difference with where eight of ten lie, in steps of a tenth
// to a hundredth of what it spreads over.
func (x *comparer) difference(u unit, r answer.Range, more, less, same string) string {
	if r.Low == 0 && r.High == 0 {
		return ""
	}
	width := max(r.High-r.Low, math.Abs(r.Likely)/10, u.finest)
	step := max(u.finest, math.Pow(10, math.Floor(math.Log10(width))-1))
	if u.kind == quantity.Duration && width >= 4*60/u.per {
		step = max(step, 60/u.per) // nobody can use the seconds
	}
	said := func(v float64) string { return quantity.Format(u.kind, math.Abs(v)*u.per, x.System) }
	word := func(v float64) string {
		if v < 0 {
			return less
		}
		return more
	}
	low, likely, high := toStep(r.Low, step), toStep(r.Likely, step), toStep(r.High, step)
	if likely < 0 && high <= 0 { // the smaller one first
		low, high = high, low
	}
	text := said(likely) + " " + word(likely)
	if likely == 0 {
		text = same
	}
	switch {
	case low == high:
		return text
	case low < 0 && high > 0:
		return text + " (" + said(low) + " " + less + " to " + said(high) + " " + more + ")"
	}
	first, last := said(low), said(high)
	if number, unit, _ := strings.Cut(last, " "); strings.Count(unit, " ") == 0 && number != "" {
		first = strings.TrimSuffix(first, " "+unit)
	}
	return text + " (" + first + " to " + last + ")"
}

// sure says what the columns rest on.
func (x *comparer) sure() string {
	d := x.Columns[0].Answer.Draws
	text := ""
	if d.Count > 0 {
		text = quantity.Digits(float64(d.Count), 3) + " " + x.of[0].kindred() + " were computed in each column, not tested"
	}
	if x.SameDraws {
		return text + ": the same ones in all, so that a difference is one."
	}
	text += ", and not the same ones in all: small differences may be chance."
	return text
}
