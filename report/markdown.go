package report

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
)

// markdownDialect writes CommonMark that needs no extension: headings, lists
// and bold names. Every paragraph is one line, because half of the places that
// take Markdown print a line end as a line break.
type markdownDialect struct{ out bytes.Buffer }

func (m *markdownDialect) bytes() []byte { return m.out.Bytes() }

func (m *markdownDialect) lead(facts []fact) { m.facts(facts) }

func (m *markdownDialect) heading(title string) {
	m.gap()
	fmt.Fprintf(&m.out, "### %s\n", inMarkdown(title))
}

func (m *markdownDialect) paragraph(text string) {
	m.gap()
	fmt.Fprintf(&m.out, "%s\n", startMarkdown(text))
}

func (m *markdownDialect) facts(facts []fact) {
	m.gap()
	for _, f := range facts {
		fmt.Fprintf(&m.out, "- **%s:** %s\n", inMarkdown(f.name), inMarkdown(f.value))
	}
}

func (m *markdownDialect) items(items []string, numbered bool) {
	m.gap()
	for i, item := range items {
		mark := "-"
		if numbered {
			mark = fmt.Sprintf("%d.", i+1)
		}
		fmt.Fprintf(&m.out, "%s %s\n", mark, startMarkdown(item))
	}
}

func (m *markdownDialect) judgement(j judgement) {
	m.gap()
	fmt.Fprintf(&m.out, "**%s:** %s", j.word(), inMarkdown(j.title))
	if j.detail != "" {
		fmt.Fprintf(&m.out, " %s", inMarkdown(j.detail))
	}
	if j.advice != "" {
		fmt.Fprintf(&m.out, " **To do:** %s", inMarkdown(j.advice))
	}
	m.out.WriteByte('\n')
}

func (m *markdownDialect) note(text string) {
	m.gap()
	fmt.Fprintf(&m.out, "*Note:* %s\n", inMarkdown(text))
}

// gap puts an empty line between two blocks.
func (m *markdownDialect) gap() {
	if m.out.Len() > 0 {
		m.out.WriteByte('\n')
	}
}

// markdownSigns are the characters that mean something inside a line of
// Markdown or of the HTML that it may hold. Links that some sites make of bare
// addresses are broken as well: a report should not carry a stranger's link.
var markdownSigns = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`,
	"~", `\~`, "|", `\|`, "$", `\$`, "!", `\!`, "^", `\^`,
	"<", "&lt;", ">", "&gt;", "&", "&amp;",
	"://", `\://`, "www.", `www\.`,
)

// markdownStart matches what would begin a heading, a list, a rule or a quote
// where a line starts.
var markdownStart = regexp.MustCompile(`^(#{1,6}( |$)|[-+]( |$)|-{2,}|=+|\d{1,9}[.)]( |$))`)

// inMarkdown makes text stand for itself inside a line of Markdown.
func inMarkdown(text string) string { return markdownSigns.Replace(text) }

// startMarkdown makes text stand for itself where a line or an item starts.
func startMarkdown(text string) string {
	text = inMarkdown(text)
	start := strings.TrimRight(markdownStart.FindString(text), " ")
	switch {
	case start == "":
		return text
	case strings.HasSuffix(start, ".") || strings.HasSuffix(start, ")"):
		digits := len(start) - 1
		return text[:digits] + `\` + text[digits:]
	}
	return `\` + text
}
