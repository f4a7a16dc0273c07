package cellfit

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/internal/pattern"
)

// columns finds the first row of numbers, reads the titles above it, and
// decides which column is what.
func (p *parser) columns(lines [][]byte) error {
	var titles, marked [][]string // marked: behind a # that may be a comment's
	var first [][]byte            // fields of the first row of numbers
	var rows [][]float64
	var widest wide
	width := 0
	for i, line := range lines {
		line = bytes.TrimSpace(line)
		if len(line) == 0 {
			continue
		}
		fields := split(nil, line, p.sep)
		if line[0] == '#' {
			if len(rows) == 0 {
				marked = append(marked, texts(fields))
			}
			continue
		}
		if values, ok := p.numbers(fields); ok {
			if len(rows) == 0 {
				p.header, width, first = i, len(fields), fields
			}
			if len(fields) == width && len(rows) < 400 {
				rows = append(rows, values)
			}
			if len(fields) > widest.columns && !slices.ContainsFunc(values, math.IsNaN) {
				widest = wide{len(fields), i + 1}
			}
			continue
		}
		if len(rows) > 0 || unfilled(fields, p.comma) {
			continue
		}
		titles = append(titles, texts(fields))
	}
	if len(rows) == 0 {
		return ReadError{p.o.Name, 0, 0, "no row of numbers in the first 64 KB", p.wanted()}
	}
	if ends := len(first) - 1; len(first[ends]) == 0 { // every row may end in a separator
		for i, t := range titles {
			if len(t) == ends {
				titles[i] = append(t, "")
			}
		}
	}
	if err := p.cut(slices.Concat(titles, marked), widest, rows); err != nil {
		return err
	}
	// Only titles over as many columns as there are numbers count.
	titles = slices.DeleteFunc(titles, func(t []string) bool { return len(t) != width && len(t) != width+1 })
	if len(titles) == 0 {
		titles = p.titlesBehindMarks(marked, width)
	}
	p.use = make([]heading, width)
	names := make([]string, width)
	if len(titles) > 0 {
		names = mergeUnits(titles, width)
		for j := range p.use {
			p.use[j] = readHeading(names[j])
		}
	} else {
		p.guess(rows)
	}
	p.findDate(first)
	return p.choose(names)
}

func texts(fields [][]byte) []string {
	out := make([]string, len(fields))
	for j, f := range fields {
		out[j] = string(f)
	}
	return out
}

// titlesBehindMarks finds the last line behind a # that names time, volts and
// amps over as many columns as there are numbers. The # may itself be the title
// of a column that counts the rows.
func (p *parser) titlesBehindMarks(marked [][]string, width int) [][]string {
	for _, t := range slices.Backward(marked) {
		if len(t) == width+1 && t[0] == "#" {
			t = t[1:]
		}
		if len(t) != width {
			continue
		}
		if t[0] != "#" {
			t[0] = strings.TrimSpace(strings.TrimLeft(t[0], "#"))
		}
		if p.named(t) {
			return [][]string{t}
		}
	}
	return nil
}

// findDate looks for a date in a column of its own beside a clock in another.
func (p *parser) findDate(first [][]byte) {
	p.date = -1
	for j, h := range p.use {
		if h.what != timeColumn || !isDate(first[j]) {
			continue
		}
		for k, other := range p.use {
			if _, clock := hoursMinutes(first[k], p.comma); other.what == timeColumn && clock && k != j {
				p.date, p.need = j, max(p.need, j+1)
				p.use[j].what = unknownColumn
				return
			}
		}
	}
}

// numbers reads a row if at least two of its fields are numbers and the first
// is a number or a time.
func (p *parser) numbers(fields [][]byte) ([]float64, bool) {
	values := make([]float64, len(fields))
	good := 0
	for i, f := range fields {
		x, ok := parseNumber(f, p.comma)
		if !ok {
			x, _, _, ok = withUnit(f, p.comma)
		}
		if !ok {
			if x, ok = hoursMinutes(f, p.comma); !ok {
				x, ok = p.calendar(f)
				p.clock.layout = ""
			}
		}
		if !ok {
			x = math.NaN()
		} else {
			good++
		}
		values[i] = x
	}
	return values, good >= 2 && 2*good >= len(fields)-1
}

// clockUnit is how a clock is written where its unit should stand.
var clockUnit = pattern.New(`^h+:m+(:s+)?(\.s+)?$`)

// mergeUnits joins the title line with a line of units below it.
func mergeUnits(titles [][]string, width int) []string {
	last := titles[len(titles)-1]
	names := make([]string, width)
	copy(names, last)
	if len(titles) < 2 {
		return names
	}
	allUnits := true
	for _, s := range last {
		s = strings.ToLower(strings.Trim(s, "()[]\"' "))
		if _, ok := units.Get()[s]; !ok && s != "" && !clockUnit.Get().MatchString(s) {
			allUnits = false
		}
	}
	if allUnits {
		for j := range names {
			names[j] = titles[len(titles)-2][j] + " (" + strings.Trim(last[j], "()[]\"' ") + ")"
		}
	}
	return names
}

// guess tells untitled columns by their numbers: the first that always rises is
// time, else the first that never falls; of the others the positive one that varies least is volts.
func (p *parser) guess(rows [][]float64) {
	type about struct {
		rising   bool // from every row to the next
		falling  bool // somewhere
		lo, hi   float64
		constant bool
		counting bool // the rows, one by one
	}
	all := make([]about, len(p.use))
	for j := range all {
		a := about{rising: true, counting: len(rows) > 1, lo: math.Inf(1), hi: math.Inf(-1)}
		for i, row := range rows {
			a.lo, a.hi = min(a.lo, row[j]), max(a.hi, row[j])
			if i > 0 && !(row[j] > rows[i-1][j]) {
				a.rising = false
				a.falling = a.falling || row[j] != rows[i-1][j]
			}
			a.counting = a.counting && (i == 0 || row[j] == rows[i-1][j]+1)
		}
		a.constant = a.lo == a.hi
		a.rising = a.rising && !a.constant
		all[j] = a
	}
	volts, time := -1, -1
	for j, a := range all {
		// A count of the rows rises too, but time is the other one.
		if a.rising && (time < 0 || all[time].counting) {
			time = j
		}
	}
	if time < 0 && p.o.WithoutVolts && len(all) == 2 {
		time = 0
	}
	for j, a := range all {
		if !a.falling && !a.constant && time < 0 {
			time = j
		}
	}
	if time >= 0 {
		p.use[time] = heading{what: timeColumn, scale: 1}
	}
	for j, a := range all {
		if j == time || !(a.lo > 0.3) || p.o.WithoutVolts && len(all) == 2 {
			continue
		}
		if volts < 0 || a.hi/a.lo < all[volts].hi/all[volts].lo && !a.constant {
			volts = j
		}
	}
	if volts >= 0 {
		p.use[volts] = heading{what: voltColumn, scale: 1}
	}
	for j := range all {
		if j != time && j != volts && !all[j].counting {
			p.use[j] = heading{what: ampColumn, scale: 1}
			break
		}
	}
	p.log.Notes = append(p.log.Notes, "The file has no titles; which column is what was worked out from the numbers.")
}

// wanted says what rows should be there.
func (p *parser) wanted() string {
	if p.o.WithoutVolts {
		return "rows of time and amps"
	}
	return "rows of time, volts and amps"
}

// choose keeps the best column of each quantity.
func (p *parser) choose(names []string) error {
	for q := range p.index {
		p.index[q] = -1
	}
	claims := map[quantity]int{}
	for j, h := range p.use {
		if h.what == unknownColumn {
			continue
		}
		claims[h.what]++
		if k := p.index[h.what]; k < 0 || h.rank > p.use[k].rank {
			p.index[h.what] = j
		}
	}
	for _, q := range []quantity{timeColumn, voltColumn, ampColumn} {
		if p.index[q] < 0 && q == voltColumn && p.o.WithoutVolts {
			continue
		}
		if p.index[q] < 0 {
			got := "no column for " + quantityNames[q]
			if said := strings.Join(names, ", "); strings.Trim(said, ", ") != "" {
				got += " among: " + string(clip([]byte(said)))
			}
			return ReadError{p.o.Name, p.header, 0, got, "titles such as time (s), voltage (V), current (A)"}
		}
		p.need = max(p.need, p.index[q]+1)
	}
	for q, at := range p.index {
		p.hold.has[q] = at >= 0
	}
	c := &p.log.Columns
	c.HeaderLines, c.DecimalComma = p.header, p.comma
	c.Separator = map[byte]string{',': "comma", ';': "semicolon", '\t': "tab", '|': "bar", 0: "blanks"}[p.sep]
	said := func(q quantity) string {
		if p.index[q] < 0 {
			return ""
		}
		if s := strings.TrimSpace(names[p.index[q]]); s != "" {
			return s
		}
		return fmt.Sprintf("column %d", p.index[q]+1)
	}
	for _, q := range []quantity{voltColumn, ampColumn} {
		if claims[q] > 1 {
			p.log.Notes = append(p.log.Notes, fmt.Sprintf("Of %d columns that could hold %s, %q was taken.", claims[q], quantityNames[q], said(q)))
		}
	}
	c.Time, c.Volts, c.Amps, c.Temp = said(timeColumn), said(voltColumn), said(ampColumn), said(tempColumn)
	return nil
}
