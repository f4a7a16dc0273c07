package report

import (
	"bytes"
	"fmt"
	"strings"

	"example.org/packcheck/internal/later"
)

// bbcodeDialect writes the few tags that every forum knows: b and list.
type bbcodeDialect struct {
	out   bytes.Buffer
	tight bool // the last block was a heading
}

func (b *bbcodeDialect) bytes() []byte { return b.out.Bytes() }

func (b *bbcodeDialect) lead(facts []fact) {
	for _, f := range facts {
		fmt.Fprintf(&b.out, "[b]%s:[/b] %s\n", inBBCode(f.name), inBBCode(f.value))
	}
}

func (b *bbcodeDialect) title(text string) {
	b.gap()
	fmt.Fprintf(&b.out, "[b]%s[/b]\n", inBBCode(text))
}

func (b *bbcodeDialect) heading(title string) {
	b.gap()
	fmt.Fprintf(&b.out, "[b]%s[/b]\n", inBBCode(title))
	b.tight = true
}

func (b *bbcodeDialect) subheading(title string, _ bool) { b.heading(title) }

func (b *bbcodeDialect) paragraph(text string) {
	b.gap()
	fmt.Fprintf(&b.out, "%s\n", inBBCode(text))
}

// gap puts an empty line between two blocks, except below a heading.
func (b *bbcodeDialect) gap() {
	if b.out.Len() > 0 && !b.tight {
		b.out.WriteByte('\n')
	}
	b.tight = false
}

func (b *bbcodeDialect) facts(facts []fact, _ bool) {
	b.gap()
	b.out.WriteString("[list]\n")
	for _, f := range facts {
		fmt.Fprintf(&b.out, "[*][b]%s:[/b] %s\n", inBBCode(f.name), inBBCode(f.value))
	}
	b.out.WriteString("[/list]\n")
}

func (b *bbcodeDialect) items(items []string, numbered, _ bool) {
	b.gap()
	open := "[list]"
	if numbered {
		open = "[list=1]"
	}
	fmt.Fprintln(&b.out, open)
	for _, item := range items {
		fmt.Fprintf(&b.out, "[*]%s\n", inBBCode(item))
	}
	b.out.WriteString("[/list]\n")
}

func (b *bbcodeDialect) ticks(list tickList) {
	b.gap()
	b.out.WriteString(strings.TrimSpace("[b]"+inBBCode(list.title)+"[/b] "+inBBCode(list.told)) + "\n")
	if len(list.steps) == 0 { // an empty list shows as a stray mark
		return
	}
	b.out.WriteString("[list]\n")
	for _, step := range list.steps {
		fmt.Fprintf(&b.out, "[*]( ) %s\n", inBBCode(step))
	}
	b.out.WriteString("[/list]\n")
	if list.after != "" {
		b.paragraph(list.after)
	}
}

func (b *bbcodeDialect) judgement(j judgement) {
	b.gap()
	fmt.Fprintf(&b.out, "[b]%s:[/b] %s", j.word(), inBBCode(j.title))
	if j.detail != "" {
		fmt.Fprintf(&b.out, " %s", inBBCode(j.detail))
	}
	if j.advice != "" {
		fmt.Fprintf(&b.out, " [b]To do:[/b] %s", inBBCode(j.advice))
	}
	b.out.WriteByte('\n')
}

func (b *bbcodeDialect) notes(texts []string) {
	for _, text := range texts {
		b.gap()
		fmt.Fprintf(&b.out, "[b]Note:[/b] %s\n", inBBCode(text))
	}
}

// bbcodeSigns: BBCode has no escape that every forum knows, so its brackets
// become round ones. The angle signs guard the forums that let HTML through,
// in words, because the others would print an entity as it stands; the space
// in an address keeps forums from making a link of a stranger's text.
var bbcodeSigns = later.Value[*strings.Replacer]{Make: func() *strings.Replacer {
	return strings.NewReplacer(
		"[", "(", "]", ")",
		"<=", "at most ", ">=", "at least ", "->", "to",
		"<", "(", ">", ")", "://", ": //", "www.", "www .",
	)
}}

// inBBCode makes text stand for itself in BBCode.
func inBBCode(text string) string { return bbcodeSigns.Get().Replace(text) }
