package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/urfave/cli/v2"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// The names of the options.
const (
	flagTemplate  = "template"
	flagOverwrite = "overwrite"
)

// newHelp is the answer to packcheck new --help.
const newHelp = `packcheck new [FILE] asks in plain words, one thing at a time, and needs no
setup file. Nobody has to know: an empty line goes on. After a few answers
it says how things stand; at the end it prints the page and writes the
answers down as a setup file.

    (empty)   nobody knows; the usual is taken, and the answer says so
    ?         how to look it up
    back      the question before
    stop      end here, with the answer so far

The most useful question comes next: what a danger or a guess hangs on.
Questions go to standard error, the page to standard output, so that
packcheck new >page.txt works, and answers may come from a pipe, one a line.

    --template    print a setup file to fill in, every line with its
                  question, and ask nothing
    --overwrite   write over FILE where there is one

The exit codes are those of packcheck FILE.
`

// newCommand asks for a setup. The exit code of the judgement goes to verdict.
func newCommand(std streams, verdict *int) *cli.Command {
	return &cli.Command{
		Name:               "new",
		CustomHelpTemplate: newHelp,
		Flags:              []cli.Flag{&cli.BoolFlag{Name: flagTemplate}, &cli.BoolFlag{Name: flagOverwrite}},
		Action: func(c *cli.Context) error {
			target := ""
			if c.Args().Present() {
				name, err := oneFile(c)
				if err != nil {
					return err
				}
				target = name
			}
			if err := mayWrite(target, c.Bool(flagOverwrite)); err != nil {
				return err
			}
			if c.Bool(flagTemplate) {
				if target == "" {
					_, err := io.WriteString(std.out, template())
					return err
				}
				return save(target, c.Bool(flagOverwrite), template())
			}
			return interviewed(std, target, c.Bool(flagOverwrite), verdict)
		},
	}
}

// mayWrite refuses, before anything is asked, a file that would cost somebody
// another one.
func mayWrite(target string, overwrite bool) error {
	if target == "" {
		return nil
	}
	if target == stdinName {
		return errors.New("new writes a file: give its name, or none (packcheck new --help)")
	}
	info, err := os.Lstat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if _, err := os.Stat(filepath.Dir(target)); err != nil {
			return fmt.Errorf("there is no folder %s", filepath.Dir(target))
		}
		return nil
	case err != nil:
		return err
	case info.IsDir():
		return fmt.Errorf("%s is a folder", target)
	case !overwrite:
		return fmt.Errorf("there is a file %s already: give another name, or --%s", target, flagOverwrite)
	}
	return nil
}

// save writes a whole file or none. Without leave to overwrite the name must be
// free at that moment.
func save(target string, overwrite bool, text string) error {
	write := func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	}
	if overwrite {
		p, err := fill(target, write)
		if err != nil {
			return err
		}
		defer p.drop()
		return p.keep()
	}
	f, err := os.OpenFile(target, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	switch {
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("there is a file %s already", target)
	case err != nil:
		return fmt.Errorf("cannot write %s: %w", target, errors.Unwrap(err))
	}
	if err := pour(f, write); err != nil {
		os.Remove(target)
		return fmt.Errorf("cannot write %s: %w", target, err)
	}
	return nil
}

// interviewed asks, prints the page and writes the answers down.
func interviewed(std streams, target string, overwrite bool, verdict *int) error {
	t := newTalk(std.in, std.err)
	if err := t.ask(); err != nil {
		return withCode(exitInput, err)
	}
	if len(t.given) == 0 {
		return withCode(exitInput, errors.New("nothing was answered, so there is no answer"))
	}
	s, err := setup.Of(t.given)
	if err != nil {
		return asInput(err)
	}
	failed := withCode(exitInput, errors.New("without the volts of the battery there is no answer"))
	if t.given[answer.KeyPackLabel] != "" {
		t.say("")
		failed = page(std.direct, s, verdict)
	}
	// Answers are kept, whatever became of the page.
	return errors.Join(failed, t.keep(s, target, overwrite))
}

// page judges the setup and prints the answer.
func page(w io.Writer, s *setup.Setup, verdict *int) error {
	a, err := packcheck.AssessWith(s, packcheck.Options{Ways: true})
	if err != nil {
		return asInput(err)
	}
	if a.Verdict >= answer.FixFirst {
		*verdict = exitFix
	}
	return report.Text(w, a)
}
