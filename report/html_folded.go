package report

import (
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// folded is what opens at a touch: all findings with what stands behind them,
// all figures, what was assumed, and the sources.
func (p *page) folded() {
	p.foldedFindings()
	p.foldedFigures()
	p.foldedAssumptions()
	p.foldedSources()
}

func (p *page) foldedFindings() {
	list := slices.Clone(p.a.Findings)
	if len(list) == 0 {
		return
	}
	slices.SortStableFunc(list, func(x, y answer.Finding) int { return int(y.Level) - int(x.Level) })
	p.put("<details>\n<summary>All %s</summary>\n<p class=\"small\">%s</p>\n", things(len(list), "finding"), figuresOfFindings)
	for i := range list {
		f := &list[i]
		j := p.judge(f, p.opening(f)+p.say(f.Title), p.say(f.Advice))
		p.put(`<article class="%s">`+"\n<h3>", levelClass(f.Level))
		p.WriteString(`<svg class="sign" viewBox="0 0 20 20" aria-hidden="true">` + mark(f.Level, 10, 10, 9) + "</svg>")
		p.put("%s: %s</h3>\n", j.word(), j.title)
		if found, right := p.held(f); found != "" {
			p.put("<p>Found: %s.</p>\n", strings.TrimSuffix(found+"; right: "+right, "; right: "))
		}
		if f.Guess != "" {
			p.put("<p>It rests on a guess: %s.</p>\n", everyday(clean(f.Guess)))
		}
		if j.advice != "" {
			p.put("<p><b>To do:</b> %s</p>\n", j.advice)
		}
		p.put("<p class=\"small\">%s</p>\n", p.references(f))
		p.moreOf(f)
		p.WriteString("</article>\n")
	}
	p.WriteString("</details>\n")
}

// references are the name of a finding and the sources of its limit.
func (p *page) references(f *answer.Finding) string {
	text := codeOf(f)
	if source := clean(f.Source); source != "" {
		text += "; source: " + source
	}
	return text
}

// moreOf is the explanation of a finding, folded once more.
func (p *page) moreOf(f *answer.Finding) {
	if p.explain == nil {
		return
	}
	e, ok := p.explain(codeOf(f))
	if !ok {
		return
	}
	p.WriteString("<details class=\"more\">\n<summary>What stands behind it</summary>\n")
	for _, part := range partsOf(e) {
		p.put("<p><b>%s</b> %s</p>\n", part.name, part.value)
	}
	p.WriteString("</details>\n")
}

func (p *page) foldedFigures() {
	p.put("<details>\n<summary>All figures</summary>\n<p>%s</p>\n", strings.Join(p.drawnWords(), " "))
	for _, s := range []section{
		p.ride(), p.speed(), p.launch(), p.pack(), p.path(), p.cutoff(), p.charge(), p.original(), p.storage(), p.readings(), p.measured(), p.other(),
	} {
		if s.title == "" || s.empty() {
			continue
		}
		p.put("<h3>%s</h3>\n", s.title)
		for _, t := range s.text {
			p.put("<p>%s</p>\n", t)
		}
		if len(s.facts) > 0 {
			p.WriteString("<dl>\n")
			p.factList(s.facts)
			p.WriteString("</dl>\n")
		}
		for _, t := range s.items {
			p.put("<p>%s</p>\n", t)
		}
		for _, n := range s.notes {
			p.put("<p class=\"small\">%s</p>\n", n)
		}
	}
	p.WriteString("</details>\n")
}

// drawnWords says how the ranges came about.
func (p *page) drawnWords() []string {
	var out []string
	for _, f := range p.drawn() {
		out = append(out, sentence(capital(f.value)))
	}
	return out
}

func (p *page) foldedAssumptions() {
	if len(p.a.Assumed) == 0 {
		return
	}
	p.put("<details>\n<summary>What was assumed: %s</summary>\n<dl>\n", things(len(p.a.Assumed), "value"))
	for _, x := range p.a.Assumed {
		value := clean(x.Value)
		if why := p.say(x.Why); why != "" {
			value += " - " + why
		}
		p.factList([]fact{{capital(everyday(clean(x.Key))), sentence(value) + " (" + clean(x.Key) + ")"}})
	}
	p.WriteString("</dl>\n</details>\n")
}

func (p *page) foldedSources() {
	if len(p.a.Sources) == 0 {
		return
	}
	p.put("<details>\n<summary>%s</summary>\n<dl>\n", capital(things(len(p.a.Sources), "source")))
	for _, s := range p.a.Sources {
		text := clean(s.Text)
		if known := clean(s.Known); known != "" {
			text += " (how known: " + known + ")"
		}
		p.factList([]fact{{clean(s.ID), text}})
	}
	p.WriteString("</dl>\n</details>\n")
}
