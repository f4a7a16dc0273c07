package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/urfave/cli/v3"
)

// manualCommand writes the manual page.
func manualCommand(std streams) *cli.Command {
	return &cli.Command{
		Name: "manual",
		CustomHelpTemplate: `packcheck manual writes the manual page, in the language of man:

    packcheck manual >packcheck.1 && man ./packcheck.1

It has no options and takes no file.
`,
		Action: func(_ context.Context, c *cli.Command) error {
			if err := noFile(c); err != nil {
				return err
			}
			_, err := io.WriteString(std.out, manual(std))
			return err
		},
	}
}

// manual is made of the help, its topics and the help of the commands: nothing is
// said twice, and nothing can be forgotten.
func manual(std streams) string {
	var b strings.Builder
	b.WriteString(".TH PACKCHECK 1 \"\" \"packcheck\" \"User Commands\"\n.SH NAME\n" +
		"packcheck \\- judge whether a battery suits a children's ride\\-on vehicle\n")
	section := func(title, text string) {
		fmt.Fprintf(&b, ".SH %s\n%s", strings.ToUpper(title), roff(text))
	}
	title, text := "Description", ""
	lines := strings.Split(helpText(), "\n")
	for i, line := range lines {
		below := i+1 < len(lines) && strings.HasPrefix(lines[i+1], " ")
		if below && line != "" && line[0] != ' ' { // what stands right above a list
			section(title, text)
			title, text = line, ""
			continue
		}
		text += line + "\n"
	}
	section(title, text)
	for _, t := range topics() {
		section(t.about, t.text)
	}
	for _, c := range commands(std, nil) {
		if c.Name != "help" {
			section("packcheck "+c.Name, helpOf(c))
		}
	}
	return b.String()
}

// roff writes text for man: paragraphs are filled, what is indented stays as it is.
func roff(text string) string {
	var b strings.Builder
	as := false // inside lines that stay as they are
	keep := func(on bool) {
		if on != as {
			b.WriteString(map[bool]string{true: ".PP\n.nf\n", false: ".fi\n"}[on])
		}
		as = on
	}
	gap := false
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\n")
		if line == "" {
			gap = true
			continue
		}
		indented := strings.HasPrefix(line, " ")
		if gap && as && indented {
			b.WriteString("\n") // a blank line between two of them
		}
		before := as
		keep(indented)
		if !indented && (gap || before) {
			b.WriteString(".PP\n")
		}
		gap = false
		line = strings.NewReplacer(`\`, `\e`, `-`, `\-`).Replace(line)
		if line[0] == '.' || line[0] == '\'' {
			line = `\&` + line
		}
		b.WriteString(line + "\n")
	}
	keep(false)
	return b.String()
}
