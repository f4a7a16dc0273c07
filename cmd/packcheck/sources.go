package main

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"

	"example.org/packcheck"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/finding"
	"example.org/packcheck/tables"
)

// sourcesCommand lists where the built-in figures come from.
func sourcesCommand(std streams) *cli.Command {
	return &cli.Command{
		Name: "sources",
		CustomHelpTemplate: `packcheck sources lists where the built-in figures come from, and how each
is known. It has no options and takes no file.
`,
		Action: func(c *cli.Context) error {
			if err := noFile(c); err != nil {
				return err
			}
			return writeSources(std.out, builtinSources())
		},
	}
}

// builtinSources gathers the sources of every package that has some, one of
// each name, sorted by name.
func builtinSources() []finding.Source {
	all := slices.Concat(
		chemistry.Builtin().Sources(),
		tables.Builtin().Sources(),
		drive.Sources(),
		cutoff.Sources(),
		charge.Sources(),
		packcheck.Sources(),
	)
	slices.SortStableFunc(all, func(a, b finding.Source) int {
		return cmp.Or(cmp.Compare(a.ID, b.ID), cmp.Compare(a.Text, b.Text))
	})
	return slices.CompactFunc(all, func(a, b finding.Source) bool { return a.ID == b.ID && a.Text == b.Text })
}

func writeSources(w io.Writer, sources []finding.Source) error {
	var b strings.Builder
	for _, s := range sources {
		fmt.Fprintf(&b, "%s\n    %s\n", s.ID, strings.Join(strings.Fields(s.Text), " "))
		if s.Known != "" {
			fmt.Fprintf(&b, "    How known: %s\n", s.Known)
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}
