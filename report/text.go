package report

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/later"
)

// Columns is the most characters that a line of the text report holds, the
// line end not counted; FullColumns, of the full one.
const Columns, FullColumns = 64, 80

// nameColumn is where values begin in the text report's name/value lines.
const nameColumn = 19

// leadHang indents what does not fit on a line of the lead.
const leadHang = 2

// textDialect writes plain ASCII lines, safe inside any code box.
type textDialect struct {
	wide bool // lines of [FullColumns]
	out  bytes.Buffer
	sub  string // a title that the next block begins with
	held string // facts that run on into the notes behind them
	flow bool   // below a title that began a line of prose: what follows runs on
}

func (t *textDialect) bytes() []byte {
	t.flush()
	return t.out.Bytes()
}

func (t *textDialect) lead(facts []fact) {
	for _, f := range facts {
		t.block(f.name+": ", leadHang, f.value)
	}
}

func (t *textDialect) title(text string) { t.block("", leadHang, text) }

// heading is a line in capitals: code boxes have no other way to stand out.
func (t *textDialect) heading(title string) {
	t.flush()
	t.flow = false
	t.out.WriteByte('\n')
	t.block("", 0, strings.ToUpper(title))
}

// subheading waits for the block that it begins, or runs on behind the last one.
func (t *textDialect) subheading(title string, on bool) {
	if !on {
		t.flush()
	}
	t.sub, t.flow = strings.ToUpper(title)+". ", true
}

func (t *textDialect) paragraph(text string) {
	t.run(t.begin() + text)
	if !t.flow {
		t.flush()
	}
}

// run adds to the text that waits for more.
func (t *textDialect) run(text string) {
	if t.held != "" {
		text = t.held + " " + text
	}
	t.held = text
}

// begin hands out the title that waits.
func (t *textDialect) begin() string {
	sub := t.sub
	t.sub = ""
	return sub
}

func (t *textDialect) facts(facts []fact, flow bool) {
	if flow {
		var parts []string
		for _, f := range facts {
			parts = append(parts, f.name+": "+sentence(f.value))
		}
		t.run(t.begin() + strings.Join(parts, " "))
		return
	}
	for _, f := range facts {
		name := inBox(f.name)
		if len(name)+1 > nameColumn {
			t.block("", 2, name+":")
			t.block(strings.Repeat(" ", nameColumn), nameColumn, f.value)
			continue
		}
		t.block(fmt.Sprintf("%-*s", nameColumn, name), nameColumn, f.value)
	}
}

func (t *textDialect) items(items []string, numbered, flow bool) {
	if flow {
		if numbered {
			items = slices.Clone(items)
			for i := range items {
				items[i] = fmt.Sprintf("%d. %s", i+1, items[i])
			}
		}
		t.run(t.begin() + strings.Join(items, " "))
		if !t.flow {
			t.flush()
		}
		return
	}
	for i, item := range items {
		if numbered {
			mark := fmt.Sprintf("%d. ", i+1)
			t.block(mark, len(mark), item)
			continue
		}
		t.block("- ", 2, item)
	}
}

func (t *textDialect) ticks(list tickList) {
	title := strings.TrimSpace(list.title + " " + list.told)
	if list.flow {
		for _, step := range list.steps {
			title += " [ ] " + strings.TrimRight(step, ".") + "."
		}
		t.block("", 2, strings.TrimSpace(title+" "+list.after))
		return
	}
	t.block("", 2, title)
	for _, step := range list.steps {
		t.block("[ ] ", 4, step)
	}
	if list.after != "" {
		t.block("", 0, list.after)
	}
}

func (t *textDialect) judgement(j judgement) {
	text := j.word() + ": " + j.title
	if j.detail != "" {
		text += " " + j.detail
	}
	if j.advice != "" {
		text += " To do: " + j.advice
	}
	t.block("* ", 2, text)
}

func (t *textDialect) notes(texts []string) {
	t.run(t.begin() + "Note: " + strings.Join(texts, " "))
	if !t.flow {
		t.flush()
	}
}

// block writes text behind first, further lines indented by hang.
func (t *textDialect) block(first string, hang int, text string) {
	t.flush()
	columns := Columns
	if t.wide {
		columns = FullColumns
	}
	for _, line := range wrap(first, hang, inBox(text), columns) {
		t.out.WriteString(line)
		t.out.WriteByte('\n')
	}
}

// flush writes facts that no note ran on from.
func (t *textDialect) flush() {
	if held := t.held; held != "" {
		t.held = ""
		t.block("", 0, held)
	}
}

// levelWord is a level as reports print it in front of a finding.
func levelWord(l answer.Level) string { return strings.ToUpper(l.String()) }

// word is what stands in front of a finding.
func (j judgement) word() string {
	word := levelWord(j.level)
	if j.told && j.level == answer.Fine {
		word = "INFO"
	}
	if j.risk != "" {
		word += " (" + j.risk + ")"
	}
	return word
}

// boxBreakers are the character runs that could end the code box somebody
// pastes the text report into, whatever that box is made of.
var boxBreakers = later.Value[*strings.Replacer]{Make: func() *strings.Replacer {
	return strings.NewReplacer("`", "'", "~~~", "---", "[/", "(/", "</", "(/")
}}

// inBox takes the sting out of text that would end a code box.
func inBox(text string) string { return boxBreakers.Get().Replace(text) }

// wrap breaks text at spaces into lines of at most so many characters. The first
// line starts with first, the others with hang spaces. A word that is longer than a
// line is cut.
func wrap(first string, hang int, text string, columns int) []string {
	var lines []string
	line := first
	empty := true // nothing but the indent stands on this line
	next := func() {
		lines = append(lines, strings.TrimRight(line, " "))
		line, empty = strings.Repeat(" ", hang), true
	}
	for _, word := range strings.Fields(text) {
		if !empty && len(line)+1+len(word) > columns {
			next()
		}
		if !empty {
			line += " "
		}
		for len(line)+len(word) > columns {
			room := columns - len(line)
			line, word = line+word[:room], word[room:]
			next()
		}
		line, empty = line+word, false
	}
	return append(lines, strings.TrimRight(line, " "))
}

// oneLine shortens a lead line until it fits.
func oneLine(name, text string) string { return cut(text, Columns-len(name+": ")) }

// inLead shortens a lead line to one line of text, and where no sentence or clause ends on
// it, to two: who reads no more than this must not have to guess how it goes on. A clause
// has so many characters at the least.
func inLead(name string, least int, text string) string {
	line := Columns - len(name+": ")
	if whole, ok := endingFrom(least, text, line); ok {
		return whole
	}
	for room := line + Columns - leadHang; room > line; room-- {
		if whole, ok := endingFrom(least, text, room); ok && leadLines(fact{name, whole}) <= 2 {
			return whole
		}
	}
	return cut(text, line)
}

// cut shortens text to some characters: after a sentence or a clause where one
// ends in time, otherwise between words and with dots to say so.
func cut(text string, room int) string {
	const dots = " ..."
	if whole, ok := ending(text, room); ok {
		return whole
	}
	if room <= len(dots) {
		return ""
	}
	if end := strings.LastIndexByte(text[:room-len(dots)+1], ' '); end > 0 {
		return text[:end] + dots
	}
	return text[:room-len(dots)] + dots // one endless word
}

// shorten is cut with a line more for a sentence that would end in dots, in layouts that have
// room for about a line.
func shorten(text string, room int) string {
	if room >= aLine-aTick {
		for _, r := range []int{room, room + aLine} {
			if whole, ok := ending(text, r); ok {
				return whole
			}
		}
	}
	return cut(text, room)
}

// aLine is how many characters of an item stand on a line of text, aTick how many fewer where
// it has a box to tick.
const aLine, aTick = Columns - 3, 5

// ending shortens text to some characters after a sentence or a clause; ok is false where
// none ends in time.
func ending(text string, room int) (whole string, ok bool) {
	return endingFrom(leastClause, text, room)
}

// leastClause and leastSentence are with how few characters these say enough. Own choice.
const leastClause, leastSentence = 15, 7

// endingFrom is ending with a clause of so many characters or more.
func endingFrom(least int, text string, room int) (whole string, ok bool) {
	if len(text) <= room {
		return text, true
	}
	for end := room - 1; end >= min(leastSentence, room/2); end-- {
		switch {
		case strings.ContainsRune(".!?", rune(text[end])) && text[end+1] == ' ':
			return text[:end+1], true
		case end < min(least, room/2), strings.Count(text[:end], `"`)%2 == 1: // what somebody typed stays whole
		case (text[end] == ';' || text[end] == ':') && text[end+1] == ' ', text[end:end+2] == " (":
			return text[:end] + ".", true
		}
	}
	return "", false
}
