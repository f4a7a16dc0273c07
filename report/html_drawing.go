package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/answer"
)

// The drawing of the circuit: charger, battery, fuse, wire, board, motors,
// wheels, and who sits on it. Every part has its word, its colour and a shape.

// part is one thing in the drawing.
type part struct {
	name     string
	items    []answer.Item
	picture  string // strokes on a field of 24 by 24
	col, row int
}

// parts are the things in the drawing, in the order in which current flows.
func (p *page) parts() []part {
	list := []part{
		{"Battery", []answer.Item{answer.Battery}, "M2 7h17v10H2z M19 10h3v4h-3 M6 12h4 M8 10v4 M13 12h4", 0, 1},
		{"Fuse", []answer.Item{answer.Fuse}, "M1 12h4 M19 12h4 M5 8h14v8H5z M5 12q3.500-4 7 0t7 0", 1, 1},
		{"Wire", []answer.Item{answer.Wire}, "M1 15c4 0 4-6 8-6s4 6 8 6 3-3 6-3", 2, 1},
	}
	if p.bench() {
		list = append(list, part{"Load", nil, "M5 6h14v12H5z M1 12h4 M19 12h4", 2, 2})
	} else {
		list = append(
			list,
			part{"Switch, board", []answer.Item{answer.Board, answer.Pedal, answer.Accessory}, "M6 6h12v12H6z M9 3v3 M15 3v3 M9 18v3 M15 18v3 M3 9h3 M3 15h3 M18 9h3 M18 15h3", 2, 2},
			part{"Motors", []answer.Item{answer.Motors}, "M4 7h13v10H4z M17 10h3v4h-3 M7 7v10 M1 12h3", 1, 2},
			part{"Gears, wheels", []answer.Item{answer.Gears}, "M12 3a9 9 0 1 0 .01 0z M12 9a3 3 0 1 0 .01 0z M12 3v6 M12 15v6 M3 12h6 M15 12h6", 0, 2},
			part{"Child, speed", []answer.Item{answer.Rider}, "M12 3a3 3 0 1 0 .01 0z M12 9v7 M7 12h10 M12 16l-4 5 M12 16l4 5", 2, 0},
		)
	}
	return append(list, part{"Charger", []answer.Item{answer.Charger}, "M5 8h14v9H5z M9 8V4 M15 8V4 M12 17v4", 0, 0})
}

// worstOf finds the worst finding on one of the parts; nil where there is none.
func (b *builder) worstOf(items ...answer.Item) *answer.Finding {
	var worst *answer.Finding
	for i := range b.a.Findings {
		f := &b.a.Findings[i]
		for _, item := range items {
			if f.Item == item && (worst == nil || f.Level > worst.Level) {
				worst = f
			}
		}
	}
	return worst
}

// state says how a part fares: its style, its word and the level of its mark, the
// same as part by part in the other forms; where nothing was found there is no mark,
// because that is not the same as fine.
func (p *page) state(x part) (class, word string, f *answer.Finding) {
	f = p.worstOf(x.items...)
	switch {
	case len(x.items) == 0:
		return "none", "", nil
	case f == nil && p.undescribed(x):
		return "none", "not described", nil
	case (f == nil || f.Level == answer.Fine) && p.notKnown(x):
		return "none", answer.NotKnown, nil
	case f == nil:
		return "none", "nothing found", nil
	case f.Level == answer.Fine && f.Reads == answer.AsTold:
		return "none", "nothing found", nil
	}
	return levelClass(f.Level), f.Level.String(), f
}

// notKnown reports whether something that matters was not told of one of the things
// that a part stands for.
func (p *page) notKnown(x part) bool {
	return slices.ContainsFunc(p.a.Items, func(v answer.ItemVerdict) bool {
		return v.Word == answer.NotKnown && slices.Contains(x.items, v.Item)
	})
}

// undescribed reports whether the setup says nothing of a part.
func (p *page) undescribed(x part) bool {
	switch x.items[0] {
	case answer.Charger:
		return p.a.Charge == nil || p.a.Charge.Match == answer.MatchNone
	case answer.Fuse, answer.Wire:
		return p.a.Path == nil
	}
	return false
}

// The measures of the drawing, in its own units.
const (
	boxWide, boxHigh = 108, 74
	gapWide, gapHigh = 12, 22
	drawnWide        = 3*boxWide + 2*gapWide + 8
)

// corner is where a part's box begins.
func (x part) corner(top int) (left, y int) {
	return 4 + x.col*(boxWide+gapWide), 4 + (x.row-top)*(boxHigh+gapHigh)
}

func (p *page) drawing() {
	list := p.parts()
	top := 1
	for _, x := range list {
		top = min(top, x.row)
	}
	high := (3-top)*(boxHigh+gapHigh) - gapHigh + 8
	var told []string
	for _, x := range list {
		if _, word, _ := p.state(x); word != "" {
			told = append(told, x.name+": "+word)
		}
	}
	p.WriteString("<section>\n<h2>Part by part</h2>\n<figure>\n")
	p.put(`<svg class="circuit" viewBox="0 0 `+strconv.Itoa(drawnWide)+" "+strconv.Itoa(high)+`" role="img" aria-label="%s">`+"\n", "The circuit. "+strings.Join(told, ". ")+".")
	p.connections(top, list)
	for _, x := range list {
		p.box(x, top)
	}
	p.WriteString("</svg>\n</figure>\n<ul class=\"parts\">\n")
	n := 0
	for _, x := range list {
		class, word, f := p.state(x)
		if f == nil {
			continue
		}
		p.put(`<li class="%s">`, class)
		p.WriteString(`<svg class="sign" viewBox="0 0 20 20" aria-hidden="true">` + mark(f.Level, 10, 10, 9) + "</svg>")
		p.put("<span><b>%s: %s.</b> %s</span></li>\n", p.told.parts[n].name, word, p.told.parts[n].value)
		n++
	}
	p.WriteString("</ul>\n</section>\n")
}

// partTexts are the parts that something was found against, and what, in a few words.
func (p *page) partTexts() []fact {
	var list []fact
	for _, x := range p.parts() {
		if _, _, f := p.state(x); f != nil {
			list = append(list, fact{x.name, sentence(p.opening(f) + firstClause(p.say(f.Title)))})
		}
	}
	return list
}

// box draws one part.
func (p *page) box(x part, top int) {
	left, y := x.corner(top)
	class, word, f := p.state(x)
	fmt.Fprintf(p, `<g class="box %s" transform="translate(%d %d)"><rect width="%d" height="%d" rx="9"/>`, class, left, y, boxWide, boxHigh)
	fmt.Fprintf(p, `<path class="pic" transform="translate(%d 8)" d="%s"/>`, boxWide/2-12, x.picture)
	if f != nil {
		p.WriteString(mark(f.Level, boxWide-14, 14, 9))
	}
	p.put(`<text x="`+strconv.Itoa(boxWide/2)+`" y="48" class="name">%s</text>`, x.name)
	p.put(`<text x="`+strconv.Itoa(boxWide/2)+`" y="64" class="word">%s</text></g>`+"\n", word)
}

// connections draws the wires between the boxes, thick and in one direction;
// the charger's is broken, because it is not always there.
func (p *page) connections(top int, list []part) {
	has := map[string]part{}
	for _, x := range list {
		has[x.name] = x
	}
	line := func(from, to string, class string) {
		a, okA := has[from]
		b, okB := has[to]
		if !okA || !okB {
			return
		}
		ax, ay := a.corner(top)
		bx, by := b.corner(top)
		fmt.Fprintf(p, `<path class="%s" d="M%d %dL%d %d"/>`+"\n", class, ax+boxWide/2, ay+boxHigh/2, bx+boxWide/2, by+boxHigh/2)
	}
	line("Charger", "Battery", "lead broken")
	for _, pair := range [][2]string{{"Battery", "Fuse"}, {"Fuse", "Wire"}, {"Wire", "Switch, board"}, {"Wire", "Load"}, {"Switch, board", "Motors"}, {"Motors", "Gears, wheels"}} {
		line(pair[0], pair[1], "lead")
	}
}

// mark draws the shape of a level: an octagon with a cross, a triangle with a
// bar, a diamond with a dot, a disc with a tick.
func mark(l answer.Level, x, y, r float64) string {
	at := func(format string, offsets ...float64) string {
		points := make([]any, len(offsets))
		for i, o := range offsets {
			base := x
			if i%2 == 1 {
				base = y
			}
			points[i] = decimal(base + o*r)
		}
		return fmt.Sprintf(format, points...)
	}
	body, sign := "", ""
	switch l {
	case answer.Danger:
		body = at("M%s %sL%s %sL%s %sL%s %sL%s %sL%s %sL%s %sL%s %sz", -.41, -1, .41, -1, 1, -.41, 1, .41, .41, 1, -.41, 1, -1, .41, -1, -.41)
		sign = at("M%s %sL%s %sM%s %sL%s %s", -.4, -.4, .4, .4, -.4, .4, .4, -.4)
	case answer.FixFirst:
		body = at("M%s %sL%s %sL%s %sz", 0, -.95, 1, .85, -1, .85)
		sign = at("M%s %sL%s %sM%s %sL%s %s", 0, -.3, 0, .25, 0, .5, 0, .6)
	case answer.Watch:
		body = at("M%s %sL%s %sL%s %sL%s %sz", 0, -1, 1, 0, 0, 1, -1, 0)
		sign = at("M%s %sL%s %s", -.35, 0, .35, 0)
	default:
		body = fmt.Sprintf("M%s %sa%s %s 0 1 0 0.01 0z", decimal(x), decimal(y-r), decimal(r), decimal(r))
		sign = at("M%s %sL%s %sL%s %s", -.45, 0, -.1, .35, .45, -.35)
	}
	return `<path class="mark-body" d="` + body + `"/><path class="mark-sign" d="` + sign + `"/>`
}

// decimal prints a coordinate.
func decimal(v float64) string {
	return strings.TrimSuffix(strings.TrimRight(strconv.FormatFloat(v, 'f', 2, 64), "0"), ".")
}
