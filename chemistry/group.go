package chemistry

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
)

// document is a chemistry file being read: where keys stand, and the faults
// found so far.
type document struct {
	file   string
	lines  map[string]int
	faults Faults
}

func (d *document) fault(key, read, want string) {
	line, at := 0, key
	for {
		if n, ok := d.lines[at]; ok {
			line = n
			break
		}
		dot := strings.LastIndexByte(at, '.')
		if dot < 0 {
			break
		}
		at = at[:dot]
	}
	d.faults = append(d.faults, Fault{File: d.file, Line: line, Key: key, Read: read, Want: want})
}

// locate notes the line of every table header and key. Keys inside inline
// tables or with quotes are attributed to the line of what holds them, which
// is near enough to find them.
func locate(text string) map[string]int {
	lines := map[string]int{}
	table := ""
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if rest, ok := strings.CutPrefix(line, "["); ok {
			if name, _, ok := strings.Cut(rest, "]"); ok && !strings.ContainsAny(name, "[,\"'") {
				table = strings.TrimSpace(name)
				lines[table] = i + 1
			}
			continue
		}
		if key, _, ok := strings.Cut(line, "="); ok && !strings.HasPrefix(line, "#") {
			key = strings.TrimSpace(key)
			if table != "" {
				key = table + "." + key
			}
			lines[key] = i + 1
		}
	}
	return lines
}

// group is one table of a document, taken apart key by key.
type group struct {
	doc  *document
	key  string
	rows map[string]any
	ask  []string // every key that was asked for, whether there or not
}

// has reports whether a key is still there to be taken.
func (g *group) has(name string) bool {
	g.ask = append(g.ask, name)
	_, ok := g.rows[name]
	return ok
}

// take removes a key and returns its value.
func (g *group) take(name string) (any, bool) {
	ok := g.has(name)
	value := g.rows[name]
	delete(g.rows, name)
	return value, ok
}

// table takes a sub-table; ok is false when it is not there.
func (g *group) table(name string) (*group, bool) {
	value, ok := g.take(name)
	if !ok {
		return nil, false
	}
	rows, ok := value.(map[string]any)
	if !ok {
		g.doc.fault(g.key+"."+name, describe(value), "a table ["+g.key+"."+name+"]")
		return nil, false
	}
	return &group{doc: g.doc, key: g.key + "." + name, rows: maps.Clone(rows)}, true
}

// text takes a string that must be there.
func (g *group) text(name string) string {
	value, ok := g.take(name)
	s, isText := value.(string)
	switch {
	case !ok:
		g.doc.fault(g.key+"."+name, "", "a text")
	case !isText || strings.TrimSpace(s) == "":
		g.doc.fault(g.key+"."+name, describe(value), "a text")
	}
	return s
}

// textOr takes a string that may be missing.
func (g *group) textOr(name, otherwise string) string {
	if !g.has(name) {
		return otherwise
	}
	return g.text(name)
}

// num takes a number that must be there and lie in [lo, hi].
func (g *group) num(name string, lo, hi float64) float64 {
	value, ok := g.take(name)
	if !ok {
		g.doc.fault(g.key+"."+name, "", within(lo, hi))
		return 0
	}
	x, isNumber := number(value)
	if !isNumber || !(x >= lo && x <= hi) {
		g.doc.fault(g.key+"."+name, describe(value), within(lo, hi))
		return 0
	}
	return x
}

// numOr takes a number that may be missing.
func (g *group) numOr(name string, otherwise, lo, hi float64) float64 {
	if !g.has(name) {
		return otherwise
	}
	return g.num(name, lo, hi)
}

// nums takes a list of numbers, each in [lo, hi].
func (g *group) nums(name string, lo, hi float64) []float64 {
	value, ok := g.take(name)
	if !ok {
		g.doc.fault(g.key+"."+name, "", "a list of numbers, each "+within(lo, hi))
		return nil
	}
	list, ok := value.([]any)
	if !ok || len(list) == 0 || len(list) > 1000 {
		g.doc.fault(g.key+"."+name, describe(value), "a list of 1 to 1000 numbers, each "+within(lo, hi))
		return nil
	}
	out := make([]float64, 0, len(list))
	for i, v := range list {
		x, isNumber := number(v)
		if !isNumber || !(x >= lo && x <= hi) {
			g.doc.fault(g.key+"."+name, fmt.Sprintf("value %d is %s", i+1, describe(v)), within(lo, hi))
			return nil
		}
		out = append(out, x)
	}
	return out
}

// texts takes a list of strings.
func (g *group) texts(name string) []string {
	value, ok := g.take(name)
	list, isList := value.([]any)
	if !ok || !isList || len(list) == 0 || len(list) > 1000 {
		g.doc.fault(g.key+"."+name, describe(value), "a list of texts")
		return nil
	}
	out := make([]string, 0, len(list))
	for i, v := range list {
		s, isText := v.(string)
		if !isText {
			g.doc.fault(g.key+"."+name, fmt.Sprintf("value %d is %s", i+1, describe(v)), "a text")
			return nil
		}
		out = append(out, s)
	}
	return out
}

// bounds of the two columns of a curve.
type bounds struct{ xLo, xHi, yLo, yHi float64 }

// curve takes two lists of equal length, the first rising.
func (g *group) curve(xName, yName string, b bounds) Curve {
	before := len(g.doc.faults)
	c := Curve{X: g.nums(xName, b.xLo, b.xHi), Y: g.nums(yName, b.yLo, b.yHi)}
	if len(g.doc.faults) > before {
		return Flat(0)
	}
	if err := c.check(); err != nil {
		g.doc.fault(g.key+"."+xName, err.Error(), "rising values, as many as "+yName+" has")
		return Flat(0)
	}
	return c
}

// curveOrFlat takes a curve, or one number under the second name when the
// first is missing.
func (g *group) curveOrFlat(xName, yName string, b bounds) Curve {
	if !g.has(xName) {
		if _, isList := g.rows[yName].([]any); !isList {
			return Flat(g.num(yName, b.yLo, b.yHi))
		}
	}
	return g.curve(xName, yName, b)
}

// source takes the mandatory source of a group: IDs separated by commas, each
// of which must be known.
func (g *group) source(known func(id string) bool) string {
	value, ok := g.take("source")
	s, isText := value.(string)
	if !ok || !isText || strings.TrimSpace(s) == "" {
		g.doc.fault(g.key+".source", describe(value), "the ID of a [source.ID] table: values without a source do not load")
		return ""
	}
	for id := range strings.SplitSeq(s, ",") {
		if id = strings.TrimSpace(id); !known(id) {
			g.doc.fault(g.key+".source", id, "the ID of a [source.ID] table with text and known")
		}
	}
	return s
}

// done reports the keys that nobody took.
func (g *group) done() {
	for _, name := range slices.Sorted(maps.Keys(g.rows)) {
		want := nearest(name, g.ask)
		if want == "" {
			slices.Sort(g.ask)
			want = "one of " + strings.Join(slices.Compact(g.ask), ", ")
		}
		g.doc.fault(g.key+"."+name, name, want)
	}
}

// number accepts TOML integers and finite floats.
func number(v any) (float64, bool) {
	switch x := v.(type) {
	case int64:
		return float64(x), true
	case float64:
		return x, !math.IsNaN(x) && !math.IsInf(x, 0)
	}
	return 0, false
}

func within(lo, hi float64) string { return fmt.Sprintf("a number from %g to %g", lo, hi) }

// describe names a value that was not wanted, cut to a readable length; nothing where
// there is none.
func describe(v any) string {
	s := fmt.Sprintf("%v", v)
	switch x := v.(type) {
	case nil:
		return ""
	case map[string]any:
		return "a table"
	case []any:
		return fmt.Sprintf("a list of %d", len(x))
	}
	if len(s) > 40 {
		s = strings.ToValidUTF8(s[:40], "") + "..."
	}
	return s
}

// nearest returns the expected name closest to the given one, "" when none is
// close.
func nearest(name string, expected []string) string {
	best, bestCost := "", 4
	for _, e := range expected {
		if cost := edits(strings.ToLower(name), strings.ToLower(e)); cost < bestCost {
			best, bestCost = e, cost
		}
	}
	return best
}

// edits counts the letters to change, add or drop to get from a to b.
func edits(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, diagonal+1, row[j]+1)
		}
	}
	return row[len(b)]
}
