package report

import (
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// figure is one number of the answer, rounded once: everything that prints it
// prints these texts.
type figure struct {
	likely string // in the user's units
	ends   string // where eight of ten lie, in the user's units; the same as likely where nothing is spread
	other  string // ends once more in the other system's units; empty where there are none
}

// figure rounds the figure at a JSON path to what its range supports. This is
// the one place where a figure with a name is rounded.
func (f figures) figure(path string, u unit, value float64) figure {
	r, ok := f.ranges[path]
	if !ok || !r.Valid() || r.IsExact() {
		return f.alone(u, value)
	}
	ends := f.ends(u, r, f.system)
	out := figure{likely: f.middle(u, r), ends: ends}
	if other := f.ends(u, r, otherSystem(f.system)); other != ends {
		out.other = other
	}
	if !strings.Contains(ends, " to ") {
		out.likely = ends
	}
	return out
}

// alone is a figure that has no spread.
func (f figures) alone(u unit, value float64) figure {
	if !isNumber(value) {
		return figure{likely: notKnown, ends: notKnown}
	}
	value = noDust(value, u.finest) * u.per
	text := quantity.Format(u.kind, value, f.system)
	out := figure{likely: text, ends: text}
	if other := quantity.Format(u.kind, value, otherSystem(f.system)); other != text {
		out.other = other
	}
	return out
}

// whole is the figure with all that is known: the likely value, and in brackets
// the ends in both systems.
func (g figure) whole() string {
	switch {
	case g.likely == g.ends && g.other == "":
		return g.likely
	case g.likely == g.ends:
		return g.likely + " (" + g.other + ")"
	case g.other == "":
		return g.brief()
	}
	return g.likely + " (" + g.spread() + "; " + g.other + ")"
}

// brief is the likely value with the ends behind it, in the user's units.
func (g figure) brief() string {
	if g.likely == g.ends {
		return g.likely
	}
	return g.likely + " (" + g.spread() + ")"
}

// spread is the ends without their unit where the likely value has the same.
func (g figure) spread() string {
	_, unit, one := strings.Cut(g.likely, " ")
	if number, ok := strings.CutSuffix(g.ends, " "+unit); one && ok && !strings.Contains(unit, " ") && strings.Count(number, " ") == 2 {
		return number
	}
	return g.ends
}

// otherSystem is the system that stands second.
func otherSystem(s answer.System) answer.System {
	if s == answer.Customary {
		return answer.Metric
	}
	return answer.Customary
}

// middle prints the likely value no finer than its range supports.
func (f figures) middle(u unit, r answer.Range) string {
	likely, _ := quantity.FormatSpread(u.kind, f.steps(u, r, f.system), f.system)
	return likely
}

// ends prints the two ends of a range in one system. Times of two units, such as
// 3 h 10 min, keep theirs at both ends: "6 to 3 h 10 min" would read as six
// hours.
func (f figures) ends(u unit, r answer.Range, system answer.System) string {
	r = f.steps(u, r, system)
	if u.kind != quantity.Duration {
		return quantity.FormatRangeOne(u.kind, r, system)
	}
	low, high := quantity.Format(u.kind, r.Low, system), quantity.Format(u.kind, r.High, system)
	single := strings.Count(high, " ") == 1
	switch {
	case low == high:
		return low
	case r.Low == 0 && single:
		return "0 to " + high
	case r.Low == 0:
		return "0 min to " + high
	case strings.Count(low+high, " ") > 2:
		return low + " to " + high
	}
	return quantity.FormatRangeOne(u.kind, r, system)
}

// mile is the statute mile in metres, by definition.
const mile = 1609.344

// steps rounds a range to what its width supports, in the quantity package's
// unit. Distances are rounded in the unit that is printed.
func (f figures) steps(u unit, r answer.Range, system answer.System) answer.Range {
	if u.kind == quantity.Length && system == answer.Customary && u.per*r.High >= mile/2 {
		return coarse(r.Scale(u.per/mile), u.finest).Scale(mile)
	}
	r = coarse(r, u.finest).Scale(u.per)
	if u.kind == quantity.Duration {
		r = quantity.WholeMinutes(r)
	}
	return r
}
