package report

import (
	"fmt"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// sideStyle is what a page of columns has beside the common style.
const sideStyle = "<style>\n" + sideRules + "</style>\n"

const sideRules = `.side{width:100%;border-collapse:collapse;table-layout:fixed;font-size:.95rem}
.side th,.side td{text-align:left;vertical-align:top;padding:.25rem .3rem;border-bottom:1px solid var(--grid);overflow-wrap:anywhere}
.side th[scope=row]{font-weight:400;color:var(--soft)}
.side small{display:block;color:var(--soft)}
.side .verdict{font-size:1rem;color:var(--tone)}
.wide{column-span:all}
@media (max-width:30rem){.side{font-size:.82rem}}
`

// comparisonHTML is the comparison as a page for a phone and for paper.
func comparisonHTML(c *answer.Comparison) []byte {
	x := newComparer(c)
	p := &page{builder: x.of[0]}
	head := x.lead()
	texts := x.tell(head[:])
	p.WriteString(htmlHead)
	p.put("%s", head[0].name+": "+things(len(x.Columns), "setup")+" side by side")
	p.WriteString(strings.Replace(htmlStyled, "</head>", sideStyle+"</head>", 1))
	p.put(`<header class="band %s">`+"\n", levelClass(c.Verdict))
	p.WriteString(`<svg class="mark" viewBox="0 0 40 40" aria-hidden="true">` + mark(c.Verdict, 20, 20, 18) + "</svg>\n")
	p.put("<div>\n<p class=\"answer\">%s</p>\n<p class=\"verdict\">%s</p>\n", head[0].name, sentence(capital(head[0].value)))
	p.put("<h1>%s side by side</h1>\n<p><b>Why:</b> %s</p>\n<p><b>Next:</b> %s</p>\n</div>\n</header>\n<main>\n",
		capital(things(len(x.Columns), "setup")), head[1].value, head[2].value)
	x.inner(p, texts)
	p.told.cautions = p.a.Cautions
	p.safetyList()
	p.WriteString("</main>\n</body>\n</html>\n")
	return []byte(p.String())
}

// tell is each column's answer and reasons, with hard words explained there or in the
// first lines, where they are used first.
func (x *comparer) tell(head []fact) []section {
	doc := &document{sections: []section{{facts: head}}}
	for i := range x.Columns {
		doc.sections = append(doc.sections, section{items: x.one(i, columnRoom{5, 1 << 20, 1 << 20, 0})})
	}
	explainWords(doc)
	return doc.sections[1:]
}

// inner is what stands between the band and the safety lines.
func (x *comparer) inner(p *page, each []section) {
	x.table(p)
	p.WriteString("<section>\n<h2>Which and why</h2>\n")
	for _, s := range each {
		p.put("<h3>%s</h3>\n", s.items[0])
		if len(s.items) == 1 {
			continue
		}
		p.WriteString("<ul>\n")
		for _, reason := range s.items[1:] {
			p.put("<li>%s</li>\n", reason)
		}
		p.WriteString("</ul>\n")
	}
	p.WriteString("</section>\n")
	x.bars(p)
	x.merits(p)
	p.put("<section>\n<h2>How sure</h2>\n<p>%s</p>\n</section>\n", x.sure())
}

// HTMLComparison is the page of columns without band and safety lines, for a page
// that has both: markup that is safe to set into one with the rules of [HTMLStyle].
// Errors are those of [WriteComparison].
func HTMLComparison(c *answer.Comparison) (string, error) {
	if !finished(c) {
		return "", errUnfinished
	}
	x := newComparer(c)
	p := &page{builder: x.of[0]}
	x.inner(p, x.tell(nil))
	return p.String(), nil
}

// table sets the columns beside each other, each with the word and the shape of
// its answer.
func (x *comparer) table(p *page) {
	s := x.figures(0)
	p.put("<section class=\"wide\">\n<h2>%s</h2>\n", s.title)
	for _, t := range s.text {
		p.put("<p class=\"small\">%s</p>\n", t)
	}
	p.WriteString("<table class=\"side\">\n<thead>\n<tr><td></td>")
	for _, col := range x.Columns {
		p.put(`<th scope="col">%s <small>%s</small></th>`, col.Letter, clean(col.Name))
	}
	p.WriteString("</tr>\n</thead>\n<tbody>\n")
	for n, row := range s.side.rows {
		p.put(`<tr><th scope="row">%s</th>`, row.name)
		for i, c := range row.cells {
			if n == 0 { // the answer
				l := x.Columns[i].Answer.Verdict
				p.put(`<td class="`+levelClass(l)+`"><svg class="sign" viewBox="0 0 40 40" aria-hidden="true">`+mark(l, 20, 20, 18)+`</svg><b class="verdict">%s</b></td>`, c.value)
				continue
			}
			p.put("<td>%s", c.value)
			if c.below != "" {
				p.put(" <small>%s</small>", c.below)
			}
			p.WriteString("</td>")
		}
		p.WriteString("</tr>\n")
	}
	p.WriteString("</tbody>\n</table>\n</section>\n")
}

// bars draws the ranges of the columns below each other.
func (x *comparer) bars(p *page) {
	p.WriteString("<section>\n<h2>Ranges</h2>\n<div class=\"bars\">\n")
	for _, what := range []struct {
		name string
		of   func(b *page) answer.Range
	}{
		{"Minutes", func(b *page) answer.Range {
			path, value := b.lastsAt()
			return b.spreadOn(path, &value, 1)
		}},
		{"Speed, " + p.speedUnit(), func(b *page) answer.Range {
			if b.a.Steady == nil {
				return answer.Range{}
			}
			return b.spreadOn("steady.speed_kmh", &b.a.Steady.SpeedKmh, b.speeds(1))
		}},
		{capital(startAmps), func(b *page) answer.Range {
			if b.a.Launch == nil {
				return answer.Range{}
			}
			return b.spreadOn("launch.peak_battery_a", &b.a.Launch.PeakBatteryA, 1)
		}},
	} {
		var list []answer.Range
		top := 0.0
		for _, b := range x.of {
			r := what.of(&page{builder: b})
			list, top = append(list, r), max(top, r.High)
		}
		if top > 0 && isNumber(top) {
			x.bar(p, what.name, list, top)
		}
	}
	p.WriteString("</div>\n</section>\n")
}

func (x *comparer) bar(p *page, name string, list []answer.Range, top float64) {
	const left, right, row = 22.0, 352.0, 22
	at := func(v float64) float64 { return left + max(0, v)/(1.04*top)*(right-left) }
	high := row*len(list) + 20
	words := name + "."
	for i, r := range list {
		words += fmt.Sprintf(" %s: likely %s, from %s to %s.", x.Columns[i].Letter, quantity.Digits(r.Likely, 2), quantity.Digits(r.Low, 2), quantity.Digits(r.High, 2))
	}
	p.put("<figure class=\"bar\">\n<figcaption><b>%s</b></figcaption>\n"+fmt.Sprintf(`<svg viewBox="0 0 360 %d" role="img" aria-label="`, high)+"%s\">\n", name, words)
	for _, v := range ticks(0, 1.04*top, 5) {
		fmt.Fprintf(p, `<path class="grid" d="M%s 2V%d"/><text class="tick mid" x="%s" y="%d">%s</text>`+"\n", decimal1(at(v)), high-16, decimal1(at(v)), high-3, quantity.Digits(v, 3))
	}
	for i, r := range list {
		y := row*i + row/2
		p.put(fmt.Sprintf(`<text class="tick" x="4" y="%d">`, y+4)+"%s</text>\n", x.Columns[i].Letter)
		if r.High > 0 {
			fmt.Fprintf(p, `<path class="range now" d="M%s %dH%s"/><path class="likely" d="M%s %dv16"/>`+"\n",
				decimal1(at(r.Low)), y, decimal1(max(at(r.High), at(r.Low)+1)), decimal1(at(r.Likely)), y-8)
		}
	}
	p.WriteString("</svg>\n</figure>\n")
}

// merits are the best in each thing, and what differs from the first column.
func (x *comparer) merits(p *page) {
	if best := x.best(); len(best) > 0 {
		p.WriteString("<section>\n<h2>The best</h2>\n")
		for _, t := range x.amongUsable() {
			p.put("<p class=\"small\">%s</p>\n", t)
		}
		p.WriteString("<dl class=\"few\">\n")
		p.factList(best)
		p.WriteString("</dl>\n</section>\n")
	}
	if differ := x.against(); len(differ) > 0 {
		p.put("<section>\n<h2>Against %s, vehicle by vehicle</h2>\n<dl class=\"few\">\n", x.Columns[0].Letter)
		p.factList(differ)
		p.WriteString("</dl>\n</section>\n")
	}
}
