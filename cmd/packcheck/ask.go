package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
	"example.org/packcheck/report"
)

// askName is what the command is called.
const askName = "ask"

// askCommand answers one question. The exit code of a judgement goes to verdict.
func askCommand(std streams, verdict *int) *cli.Command {
	return &cli.Command{
		Name:  askName,
		Flags: []cli.Flag{&cli.StringFlag{Name: flagFormat, Value: string(report.FormatText)}},
		Action: func(_ context.Context, c *cli.Command) error {
			format := report.Format(c.String(flagFormat))
			if format != report.FormatText && format != report.FormatJSON {
				return fmt.Errorf("unknown format %q (ask has text and json)", format)
			}
			a, err := answerTo(c.Args().Slice())
			if err != nil {
				return withCode(exitInput, err)
			}
			if a.Level != nil && *a.Level >= answer.FixFirst {
				*verdict = exitFix
			}
			if format == report.FormatJSON {
				return writeAnswerJSON(std.out, &a)
			}
			_, err = io.WriteString(std.out, strings.Join(answerLines(&a), "\n")+"\n")
			return err
		},
	}
}

// answerTo reads a question as it was typed and answers it.
func answerTo(args []string) (ask.Answer, error) {
	all := verbs()
	if len(args) == 0 {
		return ask.Answer{}, fmt.Errorf("ask what? One of %s (packcheck ask --help has an example of each)", verbNames(all))
	}
	i := slices.IndexFunc(all, func(v verb) bool { return v.name == strings.ToLower(args[0]) })
	if i < 0 {
		return ask.Answer{}, fmt.Errorf("ask: read %q; want one of %s", clipped(args[0]), verbNames(all))
	}
	v := all[i]
	got, faults := v.read(args[1:])
	if len(faults) > 0 {
		return ask.Answer{}, fmt.Errorf("%s\nfor example: packcheck ask %s", strings.Join(faults, "\n"), v.example)
	}
	return v.over(got)
}

// mostRanges is how many ranges one question may have: each doubles what is asked.
const mostRanges = 3

// over asks the question, and once more for every end of the ranges typed.
func (v *verb) over(got given) (ask.Answer, error) {
	likely, err := v.question(got).Answer()
	if err != nil {
		return likely, err
	}
	var ranges []string
	for _, name := range slices.Sorted(maps.Keys(got)) {
		spread := slices.ContainsFunc(v.slots, func(s slot) bool { return s.name == name && s.spread })
		if got[name].open() && !spread {
			ranges = append(ranges, name)
		}
	}
	switch {
	case len(ranges) == 0:
		return likely, nil
	case len(ranges) > mostRanges:
		return likely, fmt.Errorf("ask %s: read ranges for %s; want %d ranges at most, and one value for the rest", v.name, strings.Join(ranges, ", "), mostRanges)
	}
	var ends []ask.Answer
	for corner := range 1 << len(ranges) {
		at := maps.Clone(got)
		for i, name := range ranges {
			r := got[name]
			if r.value = r.low; corner>>i&1 == 1 {
				r.value = r.high
			}
			at[name] = r
		}
		a, err := v.question(at).Answer()
		if err != nil {
			return likely, err
		}
		ends = append(ends, a)
	}
	return ask.Over(likely, ends...), nil
}

func verbNames(all []verb) string {
	var names []string
	for _, v := range all {
		names = append(names, v.name)
	}
	return strings.Join(names, ", ")
}

// writeAnswerJSON writes the answer for programs.
func writeAnswerJSON(w io.Writer, a *ask.Answer) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(a)
}

// askHelp lists the questions, each with an example.
func askHelp() string {
	var b strings.Builder
	b.WriteString(`packcheck ask answers one question in twelve lines; no file is needed.

    packcheck ask QUESTION WORDS... [--format json]

Write what you know with its unit: "12 V 7 Ah", "9 A", "14 AWG", "3 m",
"20 min". The order is free where the units tell the words apart; NAME=WORD
settles it where they do not. A range is "20 to 25 A". What is left out is
assumed, and said.

`)
	for _, v := range verbs() {
		fmt.Fprintf(&b, "%-9s %s\n", v.name, v.about)
		fmt.Fprintf(&b, "          packcheck ask %s\n", v.example)
		b.WriteString(strings.Join(wrapped(v.takes(), "          takes "), "\n") + "\n")
	}
	b.WriteString(`
Exit code: 0 answered, 1 the answer is "fix first" or "danger", 2 the
question could not be read.
`)
	return b.String()
}
