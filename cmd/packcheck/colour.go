package main

import (
	"io"
	"os"
	"strings"

	"example.org/packcheck/report"
)

// painted gives a text report colours where somebody looks at it on a terminal.
// They fall on words that say the same without them, and take up no columns.
func painted(text string, format report.Format, to io.Writer) string {
	if format != report.FormatText || !isTerminal(to) || os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb" {
		return text
	}
	return inColour(text)
}

// The escapes of ECMA-48, 8.3.117 (select graphic rendition): bold, and four of
// the eight colours that every terminal has.
const (
	plainAgain = "\x1b[0m"
	bold       = "\x1b[1m"
	red        = "\x1b[1;31m"
	yellow     = "\x1b[1;33m"
	green      = "\x1b[1;32m"
)

// answerColours are those of the words that answer, the longer ones first.
func answerColours() []struct{ word, colour string } {
	return []struct{ word, colour string }{
		{"YES, WITH CARE", green}, {"NOT YET", yellow}, {"YES", green}, {"NO", red},
	}
}

// inColour paints the answer, the headings, and the word danger.
func inColour(text string) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		line, end := strings.TrimSuffix(line, "\n"), "\n"
		switch {
		case b.Len() == 0:
			line = paintAnswer(line)
		case strings.HasPrefix(line, "Why: "), strings.HasPrefix(line, "Next: "):
			name, rest, _ := strings.Cut(line, ":")
			line = bold + name + ":" + plainAgain + rest
		case isCapitals(line):
			line = bold + line + plainAgain
		default:
			for _, behind := range []string{":", " ("} { // "Danger:", "Danger (fire):"
				line = strings.ReplaceAll(line, "Danger"+behind, red+"Danger"+plainAgain+behind)
			}
		}
		b.WriteString(line + end)
	}
	return b.String()
}

func paintAnswer(line string) string {
	for _, a := range answerColours() {
		if rest, is := strings.CutPrefix(line, a.word); is {
			return a.colour + a.word + plainAgain + rest
		}
	}
	return line
}

// isCapitals reports whether a line is a heading of the text report.
func isCapitals(line string) bool {
	letters := false
	for _, r := range line {
		if r >= 'a' && r <= 'z' {
			return false
		}
		letters = letters || r >= 'A' && r <= 'Z'
	}
	return letters && line[0] != ' '
}
