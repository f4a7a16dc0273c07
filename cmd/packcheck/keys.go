package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v2"

	"example.org/packcheck/setup"
)

// keysCommand lists what a setup file may hold.
func keysCommand(std streams) *cli.Command {
	return &cli.Command{
		Name: "keys",
		CustomHelpTemplate: `packcheck keys lists every table and key that a setup file may hold,
each with an example. It has no options and takes no file.
`,
		Action: func(c *cli.Context) error {
			if err := noFile(c); err != nil {
				return err
			}
			return writeKeys(std.out)
		},
	}
}

// writeKeys writes the keys in the form of a setup file. Every line is a
// comment, because some keys exclude each other.
func writeKeys(w io.Writer) error {
	var b strings.Builder
	b.WriteString("# Everything that a setup file may hold, each with an example. Copy the\n" +
		"# lines that you can fill in and leave out the others.\n")
	about := map[string]string{}
	for _, t := range setup.Tables() {
		about[t.Name] = t.Doc
	}
	table := ""
	for _, k := range setup.Keys() {
		if k.Table != table {
			table = k.Table
			fmt.Fprintf(&b, "\n# [%s]  %s\n", table, about[table])
		}
		fmt.Fprintf(&b, "#   %-35s  %s\n", k.Name+" = "+k.Quoted(), k.Doc)
		if len(k.Words) > 0 {
			fmt.Fprintf(&b, "#   %-35s  one of: %s\n", "", strings.Join(k.Words, ", "))
		}
	}
	b.WriteString("\n# The same tables may stand under original, as in [original.pack]: the\n" +
		"# vehicle as it left the factory.\n")
	_, err := io.WriteString(w, b.String())
	return err
}
