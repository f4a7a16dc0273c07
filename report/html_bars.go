package report

import (
	"fmt"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// bar is one figure as a range on a line, with the original's below it.
type bar struct {
	name     string
	now, was answer.Range // in the user's unit; was is zero where there is none
}

// figuresAndBars are the few figures that people ask for, and three of them
// drawn.
func (p *page) figuresAndBars() {
	s := p.told.few
	p.put("<section>\n<h2>%s</h2>\n", p.standing(s.title))
	for _, t := range s.text {
		p.put("<p class=\"small\">%s</p>\n", t)
	}
	if len(s.facts) > 0 {
		p.WriteString("<dl class=\"few\">\n")
		p.factList(s.facts)
		p.WriteString("</dl>\n")
	}
	if p.noRide() == "" && !p.bench() {
		p.bars()
	}
	p.WriteString("</section>\n")
}

func (p *page) bars() {
	path, value := p.lastsAt()
	o := p.a.Original
	if o == nil {
		o = &answer.OriginalFigures{}
	}
	list := []bar{{"Minutes, pedal down", p.spreadOn(path, &value, 1), p.spreadOn("original.original_pedal_min", o.OriginalPedalMin, 1)}}
	if st := p.a.Steady; st != nil {
		list = append(list, bar{
			"Speed, " + p.speedUnit(), p.spreadOn("steady.speed_kmh", &st.SpeedKmh, p.speeds(1)), p.spreadOn("original.original_speed_kmh", o.OriginalSpeedKmh, p.speeds(1)),
		})
	}
	if l := p.a.Launch; l != nil {
		list = append(list, bar{capital(startAmps), p.spreadOn("launch.peak_battery_a", &l.PeakBatteryA, 1), p.spreadOn("original.original_launch_a", o.OriginalLaunchA, 1)})
	}
	p.WriteString("<div class=\"bars\">\n")
	for _, x := range list {
		p.bar(x)
	}
	p.WriteString("</div>\n")
}

// spreadOn is the range of a figure, times a factor.
func (p *page) spreadOn(path string, value *float64, by float64) answer.Range {
	switch r, ok := p.ranges[path]; {
	case value == nil || !isNumber(*value):
		return answer.Range{}
	case ok && r.Valid():
		return r.Scale(by)
	}
	return answer.Exactly(*value * by)
}

func (p *page) bar(x bar) {
	top := max(x.now.High, x.was.High)
	if !(top > 0) || !isNumber(top) {
		return
	}
	const left, right = 8.0, 352.0
	at := func(v float64) float64 { return left + max(0, v)/(1.04*top)*(right-left) }
	has := x.was.High > 0
	high := 46
	if has {
		high = 64
	}
	words := fmt.Sprintf("%s. %s likely %s, from %s to %s.", x.name, capital(p.nowName()), quantity.Digits(x.now.Likely, 2), quantity.Digits(x.now.Low, 2), quantity.Digits(x.now.High, 2))
	if has {
		words += fmt.Sprintf(" The original: likely %s, from %s to %s.", quantity.Digits(x.was.Likely, 2), quantity.Digits(x.was.Low, 2), quantity.Digits(x.was.High, 2))
	}
	p.put("<figure class=\"bar\">\n<figcaption><b>%s</b>", x.name)
	p.key("range now", p.nowName())
	if has {
		p.key("range then", "original")
	}
	p.put("</figcaption>\n"+fmt.Sprintf(`<svg viewBox="0 0 360 %d" role="img" aria-label="`, high)+"%s\">\n", words)
	for _, v := range ticks(0, 1.04*top, 5) {
		fmt.Fprintf(p, `<path class="grid" d="M%s 2V%d"/><text class="tick mid" x="%s" y="%d">%s</text>`+"\n", decimal1(at(v)), high-16, decimal1(at(v)), high-3, quantity.Digits(v, 3))
	}
	row := func(r answer.Range, y int, class string) {
		low, likely, end := at(r.Low), at(r.Likely), at(r.High)
		fmt.Fprintf(p, `<path class="range %s" d="M%s %dH%s"/><path class="likely" d="M%s %dv16"/>`+"\n", class, decimal1(low), y, decimal1(max(end, low+1)), decimal1(likely), y-8)
	}
	row(x.now, 14, "now")
	if has {
		row(x.was, 34, "then")
	}
	p.WriteString("</svg>\n</figure>\n")
}
