package report

import (
	"bytes"
	"fmt"
	"strings"

	"example.org/packcheck/internal/later"
)

// markdownDialect writes CommonMark that needs no extension: headings, lists
// and bold names. Every paragraph is one line, because half of the places that
// take Markdown print a line end as a line break.
type markdownDialect struct{ out bytes.Buffer }

func (m *markdownDialect) bytes() []byte { return m.out.Bytes() }

func (m *markdownDialect) lead(facts []fact) { m.facts(facts, false) }

func (m *markdownDialect) title(text string) {
	m.gap()
	fmt.Fprintf(&m.out, "## %s\n", inMarkdown(text))
}

func (m *markdownDialect) heading(title string) {
	m.gap()
	fmt.Fprintf(&m.out, "### %s\n", inMarkdown(title))
}

func (m *markdownDialect) subheading(title string, _ bool) {
	m.gap()
	fmt.Fprintf(&m.out, "#### %s\n", inMarkdown(title))
}

func (m *markdownDialect) paragraph(text string) {
	m.gap()
	fmt.Fprintf(&m.out, "%s\n", startMarkdown(text))
}

func (m *markdownDialect) facts(facts []fact, _ bool) {
	m.gap()
	for _, f := range facts {
		fmt.Fprintf(&m.out, "- **%s:** %s\n", inMarkdown(f.name), inMarkdown(f.value))
	}
}

func (m *markdownDialect) items(items []string, numbered, _ bool) {
	m.gap()
	for i, item := range items {
		mark := "-"
		if numbered {
			mark = fmt.Sprintf("%d.", i+1)
		}
		fmt.Fprintf(&m.out, "%s %s\n", mark, startMarkdown(item))
	}
}

func (m *markdownDialect) ticks(list tickList) {
	m.gap()
	m.out.WriteString(strings.TrimSpace("**"+startMarkdown(list.title)+"** "+inMarkdown(list.told)) + "\n")
	if len(list.steps) > 0 {
		m.gap()
	}
	for _, step := range list.steps {
		fmt.Fprintf(&m.out, "- \\[ \\] %s\n", inMarkdown(step))
	}
	if list.after != "" {
		m.paragraph(list.after)
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

func (m *markdownDialect) notes(texts []string) {
	for _, text := range texts {
		m.gap()
		fmt.Fprintf(&m.out, "**Note:** %s\n", inMarkdown(text))
	}
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
var markdownSigns = later.Value[*strings.Replacer]{Make: func() *strings.Replacer {
	return strings.NewReplacer(
		`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`,
		"~", `\~`, "|", `\|`, "$", `\$`, "!", `\!`, "^", `\^`,
		"<", "&lt;", ">", "&gt;", "&", "&amp;",
		"://", `\://`, "www.", `www\.`,
	)
}}

// inMarkdown makes text stand for itself inside a line of Markdown.
func inMarkdown(text string) string { return markdownSigns.Get().Replace(text) }

// startMarkdown makes text stand for itself where a line or an item starts.
func startMarkdown(text string) string {
	text = inMarkdown(text)
	at := markAt(text)
	if at < 0 {
		return text
	}
	return text[:at] + `\` + text[at:]
}

// markAt finds the sign that would begin a heading, a list, a rule or a quote
// where a line starts; -1 when there is none.
func markAt(text string) int {
	rest := strings.TrimLeft(text, "#")
	alone := func(rest string) bool { return rest == "" || rest[0] == ' ' }
	const mostLevels, mostDigits = 6, 9 // CommonMark 0.31.2, 4.2 and 5.2
	switch n := len(text) - len(rest); {
	case n > 0 && n <= mostLevels && alone(rest):
		return 0
	case text == "":
		return -1
	case text[0] == '=', (text[0] == '-' || text[0] == '+') && alone(text[1:]), strings.HasPrefix(text, "--"):
		return 0
	}
	rest = strings.TrimLeft(text, "0123456789")
	if n := len(text) - len(rest); n > 0 && n <= mostDigits && rest != "" && (rest[0] == '.' || rest[0] == ')') && alone(rest[1:]) {
		return n
	}
	return -1
}
