package report

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"example.org/packcheck/answer"
)

// page is an HTML page while it is being written. Whatever goes into it is
// either markup of this package or has been through [inHTML].
type page struct {
	*builder
	strings.Builder
	explain func(code string) (answer.Explanation, bool)
	told    told
	tried   *Tried // nil = it is as it stands
}

// told are the first lines and the sections that the page shares with the other
// forms, with their hard words explained.
type told struct {
	head                      []fact
	why, few, ways, ask, sure section
	parts                     []fact   // those that something was found against, by their names
	lines                     []string // the levels in the course of the volts
	cautions                  []string
}

// tell builds what is shared.
func (p *page) tell() {
	r, head := roomy(), p.headline()
	parts, lines, safety := section{facts: p.partTexts()}, section{}, section{}
	if series := p.a.Series; series != nil {
		for _, l := range series.Lines {
			lines.items = append(lines.items, clean(l.Name))
		}
	}
	for _, c := range p.a.Cautions {
		safety.items = append(safety.items, p.say(c))
	}
	doc := &document{sections: []section{{facts: head[:]}, p.why(r), parts, p.few(r), lines, p.waysOut(r), p.ask(r), p.sure(), safety}}
	explainWords(doc)
	s := doc.sections
	p.told = told{s[0].facts, s[1], s[3], s[5], s[6], s[7], s[2].facts, s[4].items, s[8].items}
}

// put writes markup; its arguments are texts and are escaped.
func (p *page) put(markup string, texts ...string) {
	safe := make([]any, len(texts))
	for i, t := range texts {
		safe[i] = inHTML(t)
	}
	fmt.Fprintf(p, markup, safe...)
}

// inHTML makes text stand for itself in HTML, between tags and inside quotes.
// Letters of any script stay; what controls a terminal or the direction of
// writing goes.
func inHTML(text string) string {
	text = strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case r == unicode.ReplacementChar, unicode.Is(unicode.Cc, r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Co, r):
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, ""))
	return htmlSigns().Replace(strings.TrimSpace(text))
}

func htmlSigns() *strings.Replacer {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")
}

// htmlHead begins the page. It loads nothing and runs nothing; a browser is told
// to hold it to that.
const htmlHead = `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8"/>
<meta name="viewport" content="width=device-width, initial-scale=1"/>
<meta name="color-scheme" content="light dark"/>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:"/>
<link rel="icon" href="data:,"/>
<title>`

// htmlStyled follows the title.
const htmlStyled = "</title>\n<style>" + style + "</style>\n</head>\n<body>\n"

// writeHTML makes the page for a phone and for two sheets of paper.
func writeHTML(a *answer.Assessment, o Options) []byte {
	p := &page{builder: newBuilder(a), explain: o.Explain}
	title := pageTitle(a)
	p.WriteString(htmlHead)
	p.put("%s", answerWord(a.Verdict)+": "+title)
	p.WriteString(htmlStyled)
	p.tell()
	p.band(title)
	p.WriteString("<main>\n")
	for _, x := range p.pieces() {
		x.write()
	}
	p.WriteString("</main>\n</body>\n</html>\n")
	return []byte(p.String())
}

// shortHTML is the short report as a page, in as few lines.
func shortHTML(a *answer.Assessment) []byte {
	p := &page{builder: newBuilder(a)}
	p.WriteString(strings.ReplaceAll(htmlHead+answerWord(a.Verdict)+htmlStyled, "\n", ""))
	p.put(`<main class="%s">`, levelClass(a.Verdict))
	for _, f := range buildShort(a).lead {
		p.put("<p><b>%s:</b> %s</p>", f.name, f.value)
	}
	p.WriteString("</main></body></html>\n")
	return []byte(p.String())
}

// band is the answer, with a shape for those who do not see its colour.
func (p *page) band(title string) {
	head := p.told.head
	p.put(`<header class="band %s">`+"\n", levelClass(p.a.Verdict))
	p.WriteString(`<svg class="mark" viewBox="0 0 40 40" aria-hidden="true">` + mark(p.a.Verdict, 20, 20, 18) + "</svg>\n")
	p.WriteString("<div>\n")
	p.once()
	p.put("<p class=\"answer\">%s</p>\n<p class=\"verdict\">%s</p>\n", head[0].name, sentence(capital(head[0].value)))
	p.put("<h1>%s</h1>\n", title)
	p.put("<p><b>Why:</b> %s</p>\n<p><b>Next:</b> %s</p>\n</div>\n</header>\n", head[1].value, head[2].value)
}

// levelClass is the style of a level.
func levelClass(l answer.Level) string {
	switch l {
	case answer.Fine:
		return "fine"
	case answer.Watch:
		return "watch"
	case answer.FixFirst:
		return "fix"
	}
	return "danger"
}

// roomy is the layout of the reasons and steps on a page that scrolls.
func roomy() room {
	const plenty = 1 << 20
	return room{title: plenty, why: 5, whyLen: plenty, figures: 8, ways: 3, steps: plenty, stepLen: plenty, ask: 3, askLen: plenty, together: plenty}
}

// reasonList is why, gravest first.
func (p *page) reasonList() {
	s := p.told.why
	if len(s.items) == 0 {
		return
	}
	p.put("<section>\n<h2>%s</h2>\n", s.title)
	p.paragraphs(s.text)
	p.WriteString("<ol>\n")
	for _, item := range s.items {
		p.put("<li>%s</li>\n", item)
	}
	p.WriteString("</ol>\n")
	if s.more != "" {
		p.put("<p class=\"small screen\">All %s stand below, folded: %s.</p>\n", things(len(p.a.Findings), "finding"), p.levels())
	}
	p.WriteString("</section>\n")
}

// levels counts the findings by their levels, the worst first.
func (p *page) levels() string {
	var parts []string
	for _, l := range []struct {
		level answer.Level
		words string
	}{{answer.Danger, "danger"}, {answer.FixFirst, "to put right"}, {answer.Watch, "to watch"}, {answer.Fine, "fine or to know"}} {
		switch n := p.count(l.level); {
		case n > 0 && l.level == answer.Danger:
			parts = append(parts, things(n, l.words))
		case n > 0:
			parts = append(parts, strconv.Itoa(n)+" "+l.words)
		}
	}
	return strings.Join(parts, ", ")
}

// toDo are lists to tick off: the ways out, or the changes; and what to buy.
func (p *page) toDo() {
	s := p.told.ways
	if !s.empty() {
		p.put("<section>\n<h2>%s</h2>\n", s.title)
		p.paragraphs(s.text)
		p.ticks(s.items)
		for _, list := range s.lists {
			p.tickList(list)
		}
		p.paragraphs(s.after)
		p.WriteString("</section>\n")
	}
	if p.tried != nil && len(p.tried.Steps) > 0 { // none of it is fitted, whatever suits what is tried
		p.WriteString("<section>\n<h2>What to ask for at the counter</h2>\n")
		p.ticks(p.tried.Steps)
		p.charger()
		p.WriteString("</section>\n")
		return
	}
	if len(p.a.Ways) > 0 {
		p.charger()
		return // a way out says of each part what it must be, and was computed with it
	}
	if len(p.a.Buy) > 0 {
		p.WriteString("<section>\n<h2>What to ask for at the counter</h2>\n<dl>\n")
		p.factList(p.buy().facts)
		p.WriteString("</dl>\n</section>\n")
	}
}

// charger is the one thing to ask for that no way out changes.
func (p *page) charger() {
	for _, x := range p.buy().facts {
		if strings.EqualFold(x.name, "charger") {
			p.put("<p><b>%s:</b> %s</p>\n", x.name, sentence(x.value))
		}
	}
}

// tickList is a list to tick off under its title.
func (p *page) tickList(list tickList) {
	p.put("<h3>%s</h3>\n", list.title)
	if list.told != "" {
		p.put("<p class=\"told\">%s</p>\n", list.told)
	}
	p.ticks(list.steps)
	if list.after != "" {
		p.put("<p class=\"small\">%s</p>\n", list.after)
	}
}

// ticks is a list of boxes to tick; they need no script.
func (p *page) ticks(items []string) {
	if len(items) == 0 {
		return
	}
	p.WriteString("<ul class=\"ticks\">\n")
	for _, item := range items {
		p.put("<li><label><input type=\"checkbox\"/> <span>%s</span></label></li>\n", item)
	}
	p.WriteString("</ul>\n")
}

// questions are what to look at or measure next.
func (p *page) questions() {
	s := p.told.ask
	if s.empty() {
		return
	}
	p.put("<section>\n<h2>%s</h2>\n<ol>\n", s.title)
	for _, item := range s.items {
		p.put("<li>%s</li>\n", item)
	}
	p.WriteString("</ol>\n")
	p.paragraphs(s.after)
	p.WriteString("</section>\n")
}

func (p *page) howSure() {
	s := p.told.sure
	if s.empty() {
		return
	}
	p.put("<section>\n<h2>%s</h2>\n<p>%s</p>\n</section>\n", s.title, strings.Join(s.text, " "))
}

// safetyList is never folded.
func (p *page) safetyList() {
	p.WriteString("<section class=\"safety\">\n<h2>Safety</h2>\n<ul>\n")
	for _, c := range p.told.cautions {
		p.put("<li>%s</li>\n", c)
	}
	p.WriteString("</ul>\n</section>\n")
}

// paragraphs writes texts, small.
func (p *page) paragraphs(texts []string) {
	for _, t := range texts {
		p.put("<p class=\"small\">%s</p>\n", t)
	}
}

// factList writes names and values.
func (p *page) factList(facts []fact) {
	for _, f := range facts {
		p.put("<div><dt>%s</dt><dd>%s</dd></div>\n", f.name, f.value)
	}
}
