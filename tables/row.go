package tables

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/internal/rows"
)

// row is one row while it is being read; it remembers the columns asked for,
// so that a misspelt one is noticed.
type row struct {
	r       *reader
	path    []string
	columns map[string]any
	asked   []string
	origin  string // the row's own source
}

func newRow(r *reader, path []string, columns map[string]any) *row {
	return &row{r: r, path: path, columns: columns}
}

// name is the row's key.
func (w *row) name() string { return w.path[len(w.path)-1] }

// fault notes what was read in a column, as it stands there, and what would be right.
func (w *row) fault(column string, read any, want string) {
	path := w.path
	if column != "" {
		path = append(slices.Clone(path), column)
	}
	w.r.fault(path, read, want)
}

// get returns a column and notes that it was asked for.
func (w *row) get(column string) (any, bool) {
	w.asked = append(w.asked, column)
	v, ok := w.columns[column]
	return v, ok
}

// has reports whether a column is there without asking for it.
func (w *row) has(column string) bool {
	_, ok := w.columns[column]
	return ok
}

// done complains about columns that nobody asked for.
func (w *row) done() {
	for _, column := range slices.Sorted(maps.Keys(w.columns)) {
		if !slices.Contains(w.asked, column) {
			known := slices.Compact(slices.Sorted(slices.Values(w.asked)))
			w.fault(column, column, "one of the columns "+strings.Join(known, ", "))
		}
	}
}

// source reads the row's source and checks that it exists.
func (w *row) source() string {
	w.origin = w.sourceAt(w.columns, "")
	w.asked = append(w.asked, "source")
	return w.origin
}

func (w *row) sourceAt(columns map[string]any, column string) string {
	id, ok := columns["source"].(string)
	if !ok || id == "" {
		w.fault(column, columns["source"], `source = "ID" and a [source.ID] with text and known: a row without a source is not taken in`)
		return ""
	}
	if !w.r.t.sources.Has(id) {
		w.fault(column, id, fmt.Sprintf("the ID of a source that exists (add [source.%s] with text and known)", id))
		return ""
	}
	return id
}

// text reads a string that must be there.
func (w *row) text(column string) string {
	v, ok := w.get(column)
	s, isText := v.(string)
	if !ok || !isText || strings.TrimSpace(s) == "" {
		w.fault(column, v, "a text in quotes")
	}
	return s
}

// textOr reads a string that may be missing.
func (w *row) textOr(column, otherwise string) string {
	if !w.has(column) {
		w.asked = append(w.asked, column)
		return otherwise
	}
	return w.text(column)
}

// texts reads a list of strings that may be missing.
func (w *row) texts(column string) []string {
	v, ok := w.get(column)
	if !ok {
		return nil
	}
	list, ok := v.([]any)
	if !ok {
		w.fault(column, v, `a list of texts, ["a", "b"]`)
		return nil
	}
	out := make([]string, 0, len(list))
	for _, item := range list {
		s, ok := item.(string)
		if !ok || strings.TrimSpace(s) == "" {
			w.fault(column, v, `a list of texts, ["a", "b"]`)
			return nil
		}
		out = append(out, s)
	}
	return out
}

// flag reads true or false; missing means false.
func (w *row) flag(column string) bool {
	v, ok := w.get(column)
	if !ok {
		return false
	}
	b, ok := v.(bool)
	if !ok {
		w.fault(column, v, "true or false")
	}
	return b
}

// span is the range that a number must lie in, ends included.
type span struct{ least, most float64 }

// check turns a TOML number into a float64 inside the span.
func (w *row) check(column string, v any, in span) float64 {
	x := math.NaN()
	switch n := v.(type) {
	case float64:
		x = n
	case int64:
		x = float64(n)
	}
	if !(x >= in.least && x <= in.most) {
		w.fault(column, v, fmt.Sprintf("a number from %g to %g", in.least, in.most))
		return in.least
	}
	return x
}

// number reads a number that must be there.
func (w *row) number(column string, in span) float64 {
	v, _ := w.get(column)
	return w.check(column, v, in)
}

// numberOr reads a number that may be missing.
func (w *row) numberOr(column string, otherwise float64, in span) float64 {
	v, ok := w.get(column)
	if !ok {
		return otherwise
	}
	return w.check(column, v, in)
}

// numbers reads a list that must be there.
func (w *row) numbers(column string, in span) []float64 {
	v, _ := w.get(column)
	list, ok := v.([]any)
	if !ok || len(list) == 0 {
		w.fault(column, v, "a list of numbers, [1, 2, 3]")
		return nil
	}
	out := make([]float64, len(list))
	for i, item := range list {
		out[i] = w.check(column, item, in)
	}
	return out
}

// curve reads two columns of one length as points ascending in the first.
func (w *row) curve(x string, inX span, y string, inY span) []Point {
	xs, ys := w.numbers(x, inX), w.numbers(y, inY)
	if xs == nil || ys == nil {
		return []Point{{X: 1, Y: 1}} // there is a fault already
	}
	if len(xs) != len(ys) {
		w.fault(y, fmt.Sprintf("%d numbers", len(ys)), fmt.Sprintf("as many as %s has: %d", x, len(xs)))
		return []Point{{X: 1, Y: 1}}
	}
	points := make([]Point, len(xs))
	for i := range xs {
		if i > 0 && xs[i] <= xs[i-1] {
			w.fault(x, fmt.Sprintf("%g after %g", xs[i], xs[i-1]), "ascending numbers")
		}
		points[i] = Point{xs[i], ys[i]}
	}
	return points
}

// rising and falling complain about a curve that turns round.
func (w *row) rising(column string, points []Point) []Point {
	for i := 1; i < len(points); i++ {
		if points[i].Y < points[i-1].Y {
			w.fault(column, fmt.Sprintf("%g after %g", points[i].Y, points[i-1].Y), "numbers that do not fall")
		}
	}
	return points
}

func (w *row) falling(column string, points []Point) []Point {
	for i := 1; i < len(points); i++ {
		if points[i].Y > points[i-1].Y {
			w.fault(column, fmt.Sprintf("%g after %g", points[i].Y, points[i-1].Y), "numbers that do not rise")
		}
	}
	return points
}

// value reads [low, likely, high], or { range = [low, likely, high],
// source = "ID" } where the figure has a source of its own. A column that is
// missing gives the zero Value.
func (w *row) value(column string, in span) Value {
	v, ok := w.get(column)
	if !ok {
		return Value{}
	}
	source := w.origin
	if table, ok := v.(map[string]any); ok {
		for _, key := range slices.Sorted(maps.Keys(table)) {
			if key != "range" && key != "source" {
				w.fault(column, key, "range or source")
			}
		}
		source = w.sourceAt(table, column)
		v = table["range"]
	}
	list, ok := v.([]any)
	if !ok || len(list) != 3 {
		w.fault(column, v, "[low, likely, high]")
		return Value{}
	}
	out := Value{
		Low: w.check(column, list[0], in), Likely: w.check(column, list[1], in), High: w.check(column, list[2], in),
		Source: source,
	}
	if out.Low > out.Likely || out.Likely > out.High {
		w.fault(column, v, "low <= likely <= high")
	}
	return out
}

// wanted is value for a column that must be there.
func (w *row) wanted(column string, in span) Value {
	if !w.has(column) {
		w.asked = append(w.asked, column)
		w.fault(column, nil, "[low, likely, high]")
		return Value{}
	}
	return w.value(column, in)
}

// block reads a sub-table, which needs a source of its own; missing gives nil.
func (w *row) block(name string) *row {
	v, ok := w.get(name)
	if !ok {
		return nil
	}
	columns, ok := v.(map[string]any)
	if !ok {
		w.fault(name, v, "a table of columns")
		return nil
	}
	b := newRow(w.r, append(slices.Clone(w.path), name), columns)
	b.source()
	return b
}

// put stores a row unless its name is taken.
func put[V any](w *row, all *rows.Rows[V], v V) {
	if all.Has(w.name()) {
		w.fault("", w.name(), "a name that no row has yet")
		return
	}
	*all = all.With(w.name(), v)
}
