package report

import (
	"strings"

	"example.org/packcheck/answer"
)

// Part names a piece of the HTML page.
type Part string

// The parts, in the order in which the page has them.
const (
	PartBand    Part = "band" // the answer, why and what next in a line each
	PartWhy     Part = "why"
	PartDrawing Part = "drawing"
	PartFigures Part = "figures"
	PartCourses Part = "courses" // what happens over time
	PartToDo    Part = "todo"    // ways out or what to do first, and what to buy
	PartAsk     Part = "ask"
	PartSure    Part = "sure"
	PartSafety  Part = "safety"
	PartFolded  Part = "folded" // everything else
)

// piece is a part with what writes it.
type piece struct {
	part  Part
	write func()
}

// pieces are the parts below the band.
func (p *page) pieces() []piece {
	return []piece{
		{PartWhy, p.reasonList},
		{PartDrawing, p.drawing},
		{PartFigures, p.figuresAndBars},
		{PartCourses, p.courses},
		{PartToDo, p.toDo},
		{PartAsk, p.questions},
		{PartSure, p.howSure},
		{PartSafety, p.safetyList},
		{PartFolded, p.folded},
	}
}

// pageTitle is what the page is about.
func pageTitle(a *answer.Assessment) string {
	if title := strings.TrimSpace(a.Title); title != "" {
		return title
	}
	return "Battery and vehicle"
}

// HTMLPart is a piece of the page, markup that is safe to set into a page with
// the rules of [HTMLStyle]; empty where there is nothing to tell.
type HTMLPart struct {
	Part   Part
	Markup string
}

// HTMLParts returns the HTML page in pieces, for a page that has things of its own
// around them: the same bytes that [Write] sets into a whole one. The words of the
// answer ("NO") come by themselves, too. Errors are those of [Write].
func HTMLParts(a *answer.Assessment, explain func(code string) (answer.Explanation, bool)) (parts []HTMLPart, word string, err error) {
	return HTMLPartsTried(a, explain, nil)
}

// HTMLStyle is the style sheet of the HTML page and of columns side by side, for
// screens and paper.
func HTMLStyle() string { return style + sideRules }

// HTMLSafety is the safety section that stands where nothing is computed yet.
func HTMLSafety() string {
	p := &page{builder: newBuilder(withCautions(&answer.Assessment{}))}
	p.told.cautions = p.a.Cautions
	p.safetyList()
	return p.String()
}
