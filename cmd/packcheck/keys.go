package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck/setup"
)

// keyTopic is a part of the keys that belongs together for whoever writes them
// down.
type keyTopic struct {
	name, about string
	tables      []string
}

// keyParts parts all tables into topics.
func keyParts() []keyTopic {
	return []keyTopic{
		{"file", "the setup itself", []string{""}},
		{"child", "who rides", []string{"rider"}},
		{"vehicle", "vehicle, motors and gears", []string{"vehicle", "motors", "gears"}},
		{"controls", "controller, wire, fuse and what disconnects the pack", []string{"controller", "wire", "fuse", "cutoff.pack", "cutoff.module", "cutoff.controller"}},
		{"battery", "the battery that is asked about", []string{"pack", "pack.second"}},
		{"bench", "any other load in place of a vehicle", []string{"load"}},
		{"charging", "the charger and the winter", []string{"charger", "storage"}},
		{"driving", "how it is driven", []string{"outing"}},
		{"readings", "what was measured", []string{"measured"}},
	}
}

// keyTopics are the words by which keys may be asked for.
func keyTopics() []string {
	var list []string
	for _, p := range keyParts() {
		list = append(list, p.name)
	}
	for _, t := range setup.Tables() {
		if table, _, _ := strings.Cut(t.Name, "."); !slices.Contains(list, table) {
			list = append(list, table)
		}
	}
	return list
}

// keysCommand lists what a setup file may hold.
func keysCommand(std streams) *cli.Command {
	return &cli.Command{
		Name: "keys",
		CustomHelpTemplate: `packcheck keys lists every table and key that a setup file may hold, each
with an example; packcheck keys TOPIC those of one topic or table:

` + keyTopicList() + `
It has no options.
`,
		Action: func(_ context.Context, c *cli.Command) error {
			if c.NArg() > 1 {
				return errors.New("one topic at a time: packcheck keys TOPIC")
			}
			topic := strings.ToLower(strings.Trim(c.Args().First(), "[]"))
			if topic != "" && len(tablesOf(topic)) == 0 {
				return fmt.Errorf("no keys on %q; there are keys on %s", clipped(topic), strings.Join(keyTopics(), ", "))
			}
			return writeKeys(std.out, topic)
		},
	}
}

func keyTopicList() string {
	var b strings.Builder
	for _, p := range keyParts() {
		fmt.Fprintf(&b, "    %-10s  %s\n", p.name, p.about)
	}
	return b.String()
}

// tablesOf are the tables of a topic, or the table of that name with those inside
// it.
func tablesOf(topic string) []string {
	var tables []string
	for _, t := range setup.Tables() {
		if t.Name == topic || strings.HasPrefix(t.Name, topic+".") {
			tables = append(tables, t.Name)
		}
	}
	for _, p := range keyParts() {
		if p.name == topic {
			tables = append(tables, p.tables...)
		}
	}
	return tables
}

// keysColumns fits any terminal; what a key means begins at keysDoc where the
// example leaves room.
const keysColumns, keysDoc = 80, 41

// writeKeys writes the keys in the form of a setup file; with a topic only its
// own. Every line is a comment, because some keys exclude each other.
func writeKeys(w io.Writer, topic string) error {
	var b strings.Builder
	b.WriteString("# Everything that a setup file may hold, each with an example. Copy the\n" +
		"# lines that you can fill in and leave out the others.\n")
	about := map[string]string{}
	for _, t := range setup.Tables() {
		about[t.Name] = t.Doc
	}
	only := tablesOf(topic)
	table := ""
	for _, k := range setup.Keys() {
		if topic != "" && !slices.Contains(only, k.Table) {
			continue
		}
		if k.Table != table {
			table = k.Table
			if table != "" {
				b.WriteString("\n" + besideComment("# ["+table+"]", len(table)+6, about[table]))
			}
		}
		b.WriteString(keyLines(k))
	}
	b.WriteString("\n# The same tables may stand under original, as in [original.pack]: the\n" +
		"# vehicle as it left the factory.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// keyLines is one key with its example, what it means, and its words.
func keyLines(k setup.Key) string {
	lines := besideComment("#   "+k.Name+" = "+k.Quoted(), keysDoc, k.Doc)
	if len(k.Words) > 0 {
		lines += besideComment("#", keysDoc, "one of: "+strings.Join(k.Words, ", "))
	}
	return lines
}

// besideComment sets text beside a line of comment, from a column on; where the
// line is longer, below it.
func besideComment(line string, column int, text string) string {
	var b strings.Builder
	if len(line) > column-2 && text != "" {
		b.WriteString(line + "\n")
		line = "#"
	}
	for _, word := range strings.Fields(text) {
		switch {
		case len(line) < column:
			line = fmt.Sprintf("%-*s%s", column, line, word)
		case len(line)+1+len(word) > keysColumns:
			b.WriteString(line + "\n")
			line = fmt.Sprintf("%-*s%s", column, "#", word)
		default:
			line += " " + word
		}
	}
	return b.String() + line + "\n"
}
