package report

import (
	"fmt"
	"strings"
)

// grid is a few columns side by side.
type grid struct {
	letters []string // one for each column
	rows    []gridRow
}

// gridRow is one line of a grid: what it is, and a cell for each column.
type gridRow struct {
	name  string
	cells []cell
}

// cell is a value and what stands below it.
type cell struct{ value, below string }

// text is a cell on one line.
func (c cell) text() string {
	if c.below == "" {
		return c.value
	}
	return c.value + " (" + c.below + ")"
}

// asFacts is the grid as name/value lines: "A 21 min; B 25 min".
func (g *grid) asFacts() []fact {
	var facts []fact
	for _, row := range g.rows {
		var parts []string
		for i, c := range row.cells {
			parts = append(parts, g.letters[i]+" "+c.text())
		}
		facts = append(facts, fact{row.name, strings.Join(parts, "; ")})
	}
	return facts
}

func (m *markdownDialect) grid(g grid) { m.facts(g.asFacts(), false) }

func (b *bbcodeDialect) grid(g grid) { b.facts(g.asFacts(), false) }

// gridNames is the width of the names in front of a grid's columns.
const gridNames = 12

// grid writes narrow columns; what does not fit its cell goes on below.
func (t *textDialect) grid(g grid) {
	t.flush()
	width := (Columns - gridNames) / len(g.letters)
	line := func(name string, cells []string) {
		text := fmt.Sprintf("%-*s", gridNames, name)
		for _, c := range cells {
			text += fmt.Sprintf("%-*s", width, c)
		}
		t.out.WriteString(strings.TrimRight(text, " ") + "\n")
	}
	line("", g.letters)
	for _, row := range g.rows {
		columns := [][]string{inCell(row.name, gridNames-1)}
		for _, c := range row.cells {
			lines := inCell(c.value, width-1)
			if c.below != "" {
				lines = append(lines, inCell(c.below, width-1)...)
			}
			columns = append(columns, lines)
		}
		most := 0
		for _, c := range columns {
			most = max(most, len(c))
		}
		for k := range most {
			at := make([]string, len(columns))
			for i, c := range columns {
				if k < len(c) {
					at[i] = c[k]
				}
			}
			line(at[0], at[1:])
		}
	}
}

// inCell breaks text into lines of a cell; a word that is longer is cut.
func inCell(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(inBox(text)) {
		if line != "" && len(line)+1+len(word) > width {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
		for len(line) > width {
			lines, line = append(lines, line[:width]), line[width:]
		}
	}
	return append(lines, line)
}
