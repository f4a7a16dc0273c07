package cellfit

import (
	"fmt"
	"math"
	"slices"
)

// wide is the row of numbers with the most columns, and its line.
type wide struct{ columns, line int }

// cut refuses a table whose numbers were cut in two, or may have been: decimal commas
// with commas between the columns. What is left of such a comma would be read as one
// column and what is right of it as the next. Lines are those that may be titles.
func (p *parser) cut(lines [][]string, widest wide, rows [][]float64) error {
	if p.sep != ',' {
		return nil
	}
	const want = "a semicolon or a tab between the columns where the decimal sign is a comma, or points for decimal signs"
	fewer := 0 // titles of a line that names the columns and has too few of them
	for _, t := range lines {
		switch {
		case !p.named(t):
		case len(t) >= widest.columns:
			return nil
		default:
			fewer = len(t)
		}
	}
	if fewer > 0 {
		return ReadError{p.o.Name, widest.line, 0, fmt.Sprintf("%d columns under %d titles", widest.columns, fewer), want}
	}
	if len(lines) == 0 && widest.columns > 3 && whole(rows) {
		return ReadError{p.o.Name, widest.line, 0, fmt.Sprintf("%d columns of whole numbers without titles", widest.columns), "titles such as time (s), voltage (V), current (A), and " + want}
	}
	return nil
}

// named reports whether titles name all that a log has to have.
func (p *parser) named(titles []string) bool {
	var has [chargeColumn + 1]bool
	for _, title := range titles {
		has[readHeading(title).what] = true
	}
	return has[timeColumn] && has[ampColumn] && (has[voltColumn] || p.o.WithoutVolts)
}

// whole reports whether there is no number but whole ones.
func whole(rows [][]float64) bool {
	return !slices.ContainsFunc(rows, func(row []float64) bool {
		return slices.ContainsFunc(row, func(x float64) bool { return x != math.Trunc(x) })
	})
}

// unfilled reports whether a line is a row of which nothing but a number, its time, was
// noted: that is no line of titles.
func unfilled(fields [][]byte, comma bool) bool {
	noted := 0
	for _, f := range fields {
		if blank(f) {
			continue
		}
		if _, ok := parseNumber(f, comma); !ok {
			return false
		}
		noted++
	}
	return noted == 1 && len(fields) > 1
}
