package main

import (
	"strings"

	"example.org/packcheck/ask"
)

// The most that an answer in text has.
const (
	answerLinesMost = 12
	answerColumns   = 72
)

// moreWords ends words that did not fit.
const moreWords = " ... (more in JSON)"

// answerLines prints an answer: the figure, what it means, what was assumed, the
// one caution. Where there is room the figures beside it follow, and the source
// is told as far as it fits; JSON has all of it.
func answerLines(a *ask.Answer) []string {
	first := a.What + ": " + figureText(a.Figure())
	if a.Level != nil {
		first = strings.ToUpper(a.Level.String()) + ". " + first
	}
	head := wrapped(first, "")
	head = append(head, wrapped(strings.Join(a.Words, " "), "")...)
	var limit, beside, taken []string
	if a.Limit != nil {
		limit = wrapped(a.Limit.What+": "+a.Limit.Want.String()+" "+a.Limit.Text(), "Limit    ")
	}
	var others []string
	for _, f := range a.Beside {
		others = append(others, f.What+" "+figureText(f))
	}
	if len(others) > 0 {
		beside = wrapped(strings.Join(others, "; "), "Beside   ")
	}
	if len(a.Assumed) > 0 {
		taken = wrapped(strings.Join(a.Assumed, "; "), "Assumed  ")
	}
	caution := wrapped(a.Caution, "Caution  ")
	if over := len(head) + len(limit) + len(taken) + len(caution) + 1 - answerLinesMost; over > 0 { // the caution stays
		head = head[:max(len(head)-over, 1)]
		head[len(head)-1] = cut(head[len(head)-1], answerColumns-len(moreWords)) + moreWords
	}
	room := answerLinesMost - len(head) - len(limit) - len(taken) - len(caution) - 1
	for n := len(others) - 1; len(beside) > max(room, 0); n-- { // as many as stand there whole
		beside = nil
		if n > 0 {
			beside = wrapped(strings.Join(others[:n], "; "), "Beside   ")
		}
	}
	out := append(head, limit...)
	out = append(out, beside...)
	out = append(out, taken...)
	out = append(out, caution...)
	return append(out, source(a, answerLinesMost-len(out))...)
}

// source tells the first source as far as there is room, and how many more there
// are.
func source(a *ask.Answer, room int) []string {
	var all []string
	for _, s := range a.Sources {
		all = append(all, s.ID)
	}
	if len(a.Sources) == 0 || room < 1 {
		return nil
	}
	lines := wrapped(a.Sources[0].Text, "Source   ")
	if more := strings.Join(all[1:], ", "); more != "" {
		lines = wrapped(a.Sources[0].Text+"; and "+more, "Source   ")
	}
	if len(lines) > min(room, 2) {
		lines = lines[:min(room, 2)]
		lines[len(lines)-1] = cut(lines[len(lines)-1], answerColumns-4) + " ..."
	}
	return lines
}

// figureText prints a figure in ASCII.
func figureText(f ask.Figure) string { return f.Text() }

// wrapped breaks a text into lines behind a heading.
func wrapped(text, heading string) []string {
	hang := strings.Repeat(" ", len(heading))
	var lines []string
	line := heading
	for _, w := range strings.Fields(text) {
		switch {
		case len(strings.TrimSpace(line)) == 0 || line == heading:
			line += w
		case len(line)+1+len(w) > answerColumns:
			lines = append(lines, line)
			line = hang + w
		default:
			line += " " + w
		}
	}
	if strings.TrimSpace(line) != "" {
		lines = append(lines, line)
	}
	return lines
}

// cut shortens a line at a word.
func cut(line string, columns int) string {
	if len(line) <= columns {
		return line
	}
	if i := strings.LastIndexByte(line[:columns], ' '); i > 0 {
		return line[:i]
	}
	return line[:columns]
}
