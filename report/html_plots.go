package report

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// The plots are drawn here and not by a plotting library, so that they take the
// page's own colours by day and by night.

// curve is one line in a plot.
type curve struct {
	name, class string
	x, y        []float64
}

// level is a horizontal line that means something.
type levelLine struct {
	name, class string
	y           float64
}

// plot is a set of curves over one axis.
type plot struct {
	title, x, y string // y with its unit
	curves      []curve
	lines       []levelLine
	alt         string // what it shows, in a sentence
	fromZero    bool
}

// The measures of a plot, in its own units.
const (
	plotWide, plotHigh                    = 360.0, 190.0
	leftEdge, rightEdge, topEdge, lowEdge = 40.0, 350.0, 12.0, 156.0
)

// draw writes a plot as a figure. A plot without points is left out.
func (p *page) draw(g plot) {
	xLow, xHigh, yLow, yHigh, ok := g.extent()
	if !ok {
		return
	}
	xs, ys := ticks(xLow, xHigh, 6), ticks(yLow, yHigh, 5)
	yLow, yHigh = min(yLow, ys[0]), max(yHigh, ys[len(ys)-1])
	px := func(x float64) float64 { return leftEdge + (x-xLow)/(xHigh-xLow)*(rightEdge-leftEdge) }
	py := func(y float64) float64 { return lowEdge - (y-yLow)/(yHigh-yLow)*(lowEdge-topEdge) }
	p.put("<figure class=\"plot\">\n<figcaption><b>%s</b> (%s)", g.title, g.y)
	for _, c := range g.curves {
		p.key(c.class, c.name)
	}
	for _, l := range g.lines {
		p.key(l.class, l.name+" ("+quantity.Digits(l.y, 3)+" "+g.y+")")
	}
	p.put("</figcaption>\n"+`<svg viewBox="0 0 `+decimal(plotWide)+" "+decimal(plotHigh)+`" role="img" aria-label="%s">`+"\n", g.alt)
	for _, y := range ys {
		fmt.Fprintf(p, `<path class="grid" d="M%s %sH%s"/><text class="tick end" x="%s" y="%s">%s</text>`+"\n",
			decimal(leftEdge), decimal(py(y)), decimal(rightEdge), decimal(leftEdge-5), decimal(py(y)+4), quantity.Digits(y, 3))
	}
	for _, x := range xs {
		fmt.Fprintf(p, `<text class="tick mid" x="%s" y="%s">%s</text>`+"\n", decimal(px(x)), decimal(lowEdge+15), quantity.Digits(x, 3))
	}
	p.put(`<text class="tick mid" x="195" y="185">%s</text>`+"\n", g.x)
	for _, c := range g.curves {
		var d strings.Builder
		for i := range c.x {
			letter := "L"
			if i == 0 {
				letter = "M"
			}
			d.WriteString(letter + decimal1(px(c.x[i])) + " " + decimal1(py(c.y[i])))
		}
		fmt.Fprintf(p, `<path class="%s" d="%s"/>`+"\n", c.class, d.String())
	}
	for _, l := range g.lines {
		fmt.Fprintf(p, `<path class="%s" d="M%s %sH%s"/>`+"\n", l.class, decimal(leftEdge), decimal(py(l.y)), decimal(rightEdge))
	}
	p.WriteString("</svg>\n</figure>\n")
}

// key says in front of a plot what a line is, by its colour and its dashes.
func (p *page) key(class, name string) {
	if name == "" {
		return
	}
	p.WriteString(` <span class="key"><svg viewBox="0 0 24 8" aria-hidden="true"><path class="` + class + `" d="M1 4h22"/></svg>`)
	p.put(" %s</span>", name)
}

// extent is what the axes span.
func (g *plot) extent() (xLow, xHigh, yLow, yHigh float64, ok bool) {
	xLow, yLow, xHigh, yHigh = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, c := range g.curves {
		for i := range c.x {
			if !isNumber(c.x[i]) || !isNumber(c.y[i]) {
				return 0, 0, 0, 0, false
			}
			xLow, xHigh = min(xLow, c.x[i]), max(xHigh, c.x[i])
			yLow, yHigh = min(yLow, c.y[i]), max(yHigh, c.y[i])
		}
	}
	for _, l := range g.lines {
		yLow, yHigh = min(yLow, l.y), max(yHigh, l.y)
	}
	xLow = min(0, xLow)
	if g.fromZero {
		yLow = min(0, yLow)
	}
	if yHigh-yLow < 1e-9 {
		yLow, yHigh = yLow-1, yHigh+1
	}
	return xLow, xHigh, yLow, yHigh, xHigh > xLow && isNumber(yLow) && isNumber(yHigh)
}

// ticks are round numbers that span a range, about as many as asked for.
func ticks(low, high float64, about int) []float64 {
	raw := (high - low) / float64(about)
	scale := math.Pow(10, math.Floor(math.Log10(raw)))
	step := 10 * scale
	for _, n := range [...]float64{1, 2, 5} {
		if raw <= n*scale {
			step = n * scale
			break
		}
	}
	first, last := math.Ceil(low/step-1e-9), math.Floor(high/step+1e-9)
	var out []float64
	for n := first; n <= last && len(out) < 20; n++ {
		out = append(out, n*step)
	}
	if len(out) == 0 {
		out = append(out, low)
	}
	return out
}

// decimal1 prints a coordinate to a tenth.
func decimal1(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }

// speeds turns km/h into the user's unit, temperatures deg C.
func (p *page) speeds(kmh float64) float64 {
	if p.system == answer.Customary {
		return kmh * 1000 / mile
	}
	return kmh
}

func (p *page) degrees(c float64) float64 {
	if p.system == answer.Customary {
		return c*9/5 + 32
	}
	return c
}

// speedUnit and degreeUnit name the user's units.
func (p *page) speedUnit() string {
	if p.system == answer.Customary {
		return "mph"
	}
	return "km/h"
}

func (p *page) degreeUnit() string {
	if p.system == answer.Customary {
		return "F"
	}
	return "C"
}

// courses are the plots over time.
func (p *page) courses() {
	s := p.a.Series
	if s == nil || len(s.Outing) < 2 || p.a.NeverRidden() {
		return
	}
	title := "How one ride goes"
	if standing := p.standing(title); standing != title {
		title = standing + ": how one ride would go"
		if p.tried != nil {
			title = standing
		}
	}
	p.put("<section>\n<h2>%s</h2>\n", title)
	p.put("<p class=\"small\">%s</p>\n<div class=\"plots\">\n", p.oneCase(s))
	per, unit := 1.0, "minutes by the clock"
	if s.Outing[len(s.Outing)-1].ClockMin > 300 {
		per, unit = 1./60, "hours by the clock"
	}
	var t, v, winding, casing []float64
	for _, x := range s.Outing {
		t, v = append(t, x.ClockMin*per), append(v, x.PackV)
		winding, casing = append(winding, p.degrees(x.WindingC)), append(casing, p.degrees(x.CaseC))
	}
	volts := plot{title: "Volts of the battery", x: unit, y: "V", curves: []curve{{"", "line now", t, v}}, alt: p.voltsAlt(s)}
	for i, l := range s.Lines {
		class := "line opens"
		if l.Harm {
			class = "line harm"
		}
		volts.lines = append(volts.lines, levelLine{p.told.lines[i], class, l.V})
	}
	p.draw(volts)
	if len(s.Launch) > 1 {
		heat := plot{
			title: "Heat of the motors", x: unit, y: p.degreeUnit(),
			curves: []curve{{"coils inside", "line now", t, winding}, {"case outside", "line then", t, casing}},
			alt:    fmt.Sprintf("The coils get to %s, the case to %s %s.", quantity.Digits(maximum(winding), 2), quantity.Digits(maximum(casing), 2), p.degreeUnit()),
		}
		if s.WindingLimitC > 0 {
			heat.lines = []levelLine{{"coils stand this for long", "line harm", p.degrees(s.WindingLimitC)}}
			heat.alt += fmt.Sprintf(" They stand %s for long.", quantity.Digits(p.degrees(s.WindingLimitC), 3))
		}
		p.draw(heat)
		p.launchPlots(s)
	}
	p.WriteString("</div>\n</section>\n")
}

// oneCase says of the courses that they are of one vehicle, and how it stands to the
// middle of all.
func (p *page) oneCase(s *answer.Series) string {
	text := "One case only, with every unknown at its middle; what counts are the ranges above."
	if last := s.Outing[len(s.Outing)-1].ClockMin; last > 0 && !p.stuck() {
		of, all := "By the clock it lasts ", p.clock()
		if p.bench() {
			of, all = "It lasts ", p.lasts()
		}
		text += " " + of + p.alone(minutes, about(last)).likely + "; the middle of all is " + all.brief() + "."
	}
	if len(s.Launch) > 1 {
		most := 0.
		for _, x := range s.Launch {
			most = max(most, x.BatteryA)
		}
		text += " A start takes " + p.alone(amps, about(most)).likely + " here; the middle of all is " +
			p.figure("launch.peak_battery_a", amps, about(p.a.Launch.PeakBatteryA)).brief() + "."
		text += " A zigzag is the pedal going down and up."
	}
	return text
}

func (p *page) launchPlots(s *answer.Series) {
	var t, amps, speed []float64
	for _, x := range s.Launch {
		t, amps, speed = append(t, x.TimeS), append(amps, x.BatteryA), append(speed, p.speeds(x.SpeedKmh))
	}
	p.draw(plot{
		title: "The first seconds: current", x: "seconds", y: "A", curves: []curve{{"", "line now", t, amps}}, fromZero: true,
		alt: "The current peaks at " + quantity.Digits(maximum(amps), 2) + " A.",
	})
	p.draw(plot{
		title: "The first seconds: speed", x: "seconds", y: p.speedUnit(), curves: []curve{{"", "line now", t, speed}}, fromZero: true,
		alt: "The speed gets to " + quantity.Digits(maximum(speed), 2) + " " + p.speedUnit() + ".",
	})
}

func (p *page) voltsAlt(s *answer.Series) string {
	first, last := s.Outing[0], s.Outing[len(s.Outing)-1]
	text := fmt.Sprintf("From %s to %s V in %s min; ended by: %s.", quantity.Digits(first.PackV, 3), quantity.Digits(last.PackV, 3),
		quantity.Digits(last.ClockMin, 2), clean(s.EndedBy))
	for _, l := range s.Lines {
		text += " At " + quantity.Digits(l.V, 3) + " V: " + clean(l.Name) + "."
	}
	return text
}

func maximum(list []float64) float64 {
	m := math.Inf(-1)
	for _, v := range list {
		m = max(m, v)
	}
	return m
}
