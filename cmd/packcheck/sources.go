package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck"
	"example.org/packcheck/answer"
)

// sourcesCommand lists where the built-in figures come from.
func sourcesCommand(std streams) *cli.Command {
	return &cli.Command{
		Name: "sources",
		CustomHelpTemplate: `packcheck sources lists where the built-in figures come from, and how each
is known. It has no options and takes no file.
`,
		Action: func(_ context.Context, c *cli.Command) error {
			if err := noFile(c); err != nil {
				return err
			}
			return writeSources(std.out, packcheck.Sources())
		},
	}
}

func writeSources(w io.Writer, sources []answer.Source) error {
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
