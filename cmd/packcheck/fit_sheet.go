package main

import (
	"bytes"
	"fmt"
	"strings"

	"example.org/packcheck/report"
)

// sheet is a text in the manner of the reports: name/value lines of printable
// ASCII, no wider than a report.
type sheet struct{ bytes.Buffer }

// factColumn is where values begin.
const factColumn = 22

// heading begins a section.
func (s *sheet) heading(title string) {
	fmt.Fprintf(s, "\n%s\n%s\n", title, strings.Repeat("-", len(title)))
}

// fact writes a name and its value.
func (s *sheet) fact(name, value string) {
	name = plain(name)
	if len(name)+2 > factColumn {
		s.block("", 2, name+":")
		name = ""
	}
	s.block(fmt.Sprintf("%-*s", factColumn, name), factColumn, value)
}

// note writes a remark.
func (s *sheet) note(text string) { s.block("Note: ", 2, text) }

// item writes a point of a list.
func (s *sheet) item(text string) { s.block("- ", 2, text) }

// block breaks text at spaces behind first, further lines indented by hang. A
// word longer than a line is cut.
func (s *sheet) block(first string, hang int, text string) {
	line, bare := first, true
	flush := func() {
		s.WriteString(strings.TrimRight(line, " ") + "\n")
		line, bare = strings.Repeat(" ", hang), true
	}
	for _, word := range strings.Fields(plain(text)) {
		if !bare && len(line)+1+len(word) > report.Columns {
			flush()
		}
		if !bare {
			line += " "
		}
		for bare && len(line)+len(word) > report.Columns {
			room := report.Columns - len(line)
			line, word = line+word[:room], word[room:]
			flush()
		}
		line, bare = line+word, false
	}
	flush()
}

// verbatim writes lines that are to be copied as they are.
func (s *sheet) verbatim(text string) {
	for line := range strings.Lines(text) {
		fmt.Fprintf(s, "    %s\n", strings.TrimRight(line, "\n"))
	}
}

// plain makes text from a file printable: ASCII on one line, nothing that ends
// a code box or that a terminal would obey.
func plain(text string) string {
	text = strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case r < ' ' || r > '~':
			return '?'
		case r == '`':
			return '\''
		}
		return r
	}, text)
	return strings.ReplaceAll(strings.ReplaceAll(text, "</", "(/"), "[/", "(/")
}
