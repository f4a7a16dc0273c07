package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck"
	"example.org/packcheck/report"
)

// explainCommand tells more of a finding.
func explainCommand(std streams) *cli.Command {
	return &cli.Command{
		Name: "explain",
		CustomHelpTemplate: `packcheck explain CODE tells in half a page what a finding means, why it
hurts, where its limit comes from and what to do. The codes stand in brackets
behind the findings of packcheck FILE --full; without a code all are listed.
It has no options.
`,
		Action: func(_ context.Context, c *cli.Command) error {
			args := c.Args().Slice()
			switch {
			case len(args) > 1:
				return errors.New("one code at a time: packcheck explain CODE")
			case len(args) == 0:
				_, err := fmt.Fprintln(std.out, strings.Join(findingCodes(), "\n"))
				return err
			}
			e, ok := packcheck.Explain(args[0])
			if !ok {
				return unknownCode(args[0])
			}
			return report.Explanation(std.out, e)
		},
	}
}

// findingCodes are the codes of all findings, sorted.
func findingCodes() []string {
	var codes []string
	for _, e := range packcheck.Explanations() {
		codes = append(codes, e.Code)
	}
	slices.Sort(codes)
	return codes
}

// unknownCode names the codes that share a word with what was asked for.
func unknownCode(asked string) error {
	var near []string
	for _, code := range findingCodes() {
		for _, word := range strings.FieldsFunc(strings.ToLower(asked), func(r rune) bool { return r < 'a' || r > 'z' }) {
			if len(word) > 2 && strings.Contains(code, word) && !slices.Contains(near, code) {
				near = append(near, code)
			}
		}
	}
	if len(near) == 0 || len(near) > 12 {
		return fmt.Errorf("no finding has the code %q; packcheck explain without a code lists all", asked)
	}
	return fmt.Errorf("no finding has the code %q; near it are %s", asked, strings.Join(near, ", "))
}
