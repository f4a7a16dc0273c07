package report

import (
	"bytes"
	"fmt"
	"strings"

	"example.org/packcheck/answer"
)

// Columns is the most characters that a line of the text report holds, the
// line end not counted.
const Columns = 64

// nameColumn is where values begin in the text report's name/value lines.
const nameColumn = 22

// leadHang indents what does not fit on a line of the lead.
const leadHang = 2

// textDialect writes plain ASCII lines, safe inside any code box.
type textDialect struct{ out bytes.Buffer }

func (t *textDialect) bytes() []byte { return t.out.Bytes() }

func (t *textDialect) lead(facts []fact) {
	for _, f := range facts {
		t.block(f.name+": ", leadHang, f.value)
	}
	t.out.WriteByte('\n')
}

func (t *textDialect) heading(title string) {
	fmt.Fprintf(&t.out, "\n%s\n%s\n", title, strings.Repeat("-", len(title)))
}

func (t *textDialect) paragraph(text string) { t.block("", 0, text) }

func (t *textDialect) facts(facts []fact) {
	for _, f := range facts {
		name := inBox(f.name)
		if len(name)+2 > nameColumn {
			t.block("", 2, name+":")
			t.block(strings.Repeat(" ", nameColumn), nameColumn, f.value)
			continue
		}
		t.block(fmt.Sprintf("%-*s", nameColumn, name), nameColumn, f.value)
	}
}

func (t *textDialect) items(items []string, numbered bool) {
	for i, item := range items {
		if numbered {
			mark := fmt.Sprintf("%d. ", i+1)
			t.block(mark, len(mark), item)
			continue
		}
		t.block("- ", 2, item)
	}
}

func (t *textDialect) judgement(j judgement) {
	t.block("* ", 2, j.word()+": "+j.title)
	if j.detail != "" {
		t.block("  ", 2, j.detail)
	}
	if j.advice != "" {
		t.block("  To do: ", 4, j.advice)
	}
}

func (t *textDialect) note(text string) { t.block("Note: ", 2, text) }

// block writes text behind first, further lines indented by hang.
func (t *textDialect) block(first string, hang int, text string) {
	for _, line := range wrap(first, hang, inBox(text)) {
		t.out.WriteString(line)
		t.out.WriteByte('\n')
	}
}

// levelWord is a level as reports print it in front of a finding.
func levelWord(l answer.Level) string { return strings.ToUpper(l.String()) }

// word is what stands in front of a finding.
func (j judgement) word() string {
	if j.told && j.level == answer.Fine {
		return "INFO"
	}
	return levelWord(j.level)
}

// boxBreakers are the character runs that could end the code box somebody
// pastes the text report into, whatever that box is made of.
var boxBreakers = strings.NewReplacer("`", "'", "~~~", "---", "[/", "(/", "</", "(/")

// inBox takes the sting out of text that would end a code box.
func inBox(text string) string { return boxBreakers.Replace(text) }

// wrap breaks text at spaces into lines of at most [Columns] characters. The
// first line starts with first, the others with hang spaces. A word that is
// longer than a line is cut.
func wrap(first string, hang int, text string) []string {
	var lines []string
	line := first
	empty := true // nothing but the indent stands on this line
	next := func() {
		lines = append(lines, strings.TrimRight(line, " "))
		line, empty = strings.Repeat(" ", hang), true
	}
	for _, word := range strings.Fields(text) {
		if !empty && len(line)+1+len(word) > Columns {
			next()
		}
		if !empty {
			line += " "
		}
		for len(line)+len(word) > Columns {
			room := Columns - len(line)
			line, word = line+word[:room], word[room:]
			next()
		}
		line, empty = line+word, false
	}
	return append(lines, strings.TrimRight(line, " "))
}

// oneLine shortens a lead line until it fits: after a sentence or a clause
// where one ends in time, otherwise between words and with dots to say so.
func oneLine(name, text string) string {
	const dots = " ..."
	room := Columns - len(name+": ")
	if len(text) <= room {
		return text
	}
	const least = 20 // a shorter clause says too little
	for end := room - 1; end >= least; end-- {
		switch {
		case text[end] == '.' && text[end+1] == ' ':
			return text[:end+1]
		case (text[end] == ';' || text[end] == ':') && text[end+1] == ' ', text[end:end+2] == " (":
			return text[:end] + "."
		}
	}
	if end := strings.LastIndexByte(text[:room-len(dots)+1], ' '); end > 0 {
		return text[:end] + dots
	}
	return text[:room-len(dots)] + dots // one endless word
}
