package main

import (
	"context"
	"errors"
	"io"

	"github.com/urfave/cli/v3"

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
    back      the question before; an empty line keeps its answer
    stop      end here, with the answer so far

The most useful question comes next: what a danger or a guess hangs on.
Questions go to standard error, the page to standard output, so that
packcheck new >page.txt works, and answers may come from a pipe, one a line.

Where FILE is a setup already, it goes on from there: what it says is shown
and not asked again, unless somebody wants that. It is written over where
packcheck wrote it and nobody changed it since; otherwise another name is
asked for at the end.

    --template    print a setup file to fill in, every line with its
                  question, and ask nothing
    --overwrite   write over FILE, whoever wrote it
    --any-folder  let FILE name files outside its own folder

The exit codes are those of packcheck FILE.
`

// newCommand asks for a setup. The exit code of the judgement goes to verdict.
func newCommand(std streams, verdict *int) *cli.Command {
	return &cli.Command{
		Name:               "new",
		CustomHelpTemplate: newHelp,
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: flagTemplate}, &cli.BoolFlag{Name: flagOverwrite}, &cli.BoolFlag{Name: flagAnyFolder},
		},
		Action: func(_ context.Context, c *cli.Command) error {
			file := answers{overwrite: c.Bool(flagOverwrite), anyFolder: c.Bool(flagAnyFolder)}
			if c.Args().Present() {
				name, err := oneFile(c)
				if err != nil {
					return err
				}
				file.name = name
			}
			if !c.Bool(flagTemplate) {
				return interviewed(std, file, verdict)
			}
			if file.name == "" {
				_, err := io.WriteString(std.out, template())
				return err
			}
			blank := file.output(func(w io.Writer) error { return writeMarked(w, byTemplate, template()) })
			blank.ours = markedBy(byTemplate)
			return writeOutputs([]output{blank}, nil, file.overwrite)
		},
	}
}

// answers is the file that the answers go to.
type answers struct {
	name      string // empty = none was named
	overwrite bool
	anyFolder bool // of the files that it names
	own       bool // it was gone on from, so that nothing of it is lost
}

// output is the file as one that is written. What stands in it is lost, unless it
// was gone on from: then it may be any setup that packcheck wrote.
func (f answers) output(write func(io.Writer) error) output {
	out := output{target: f.name, write: write}
	if f.own {
		out.ours = markedBy(byNew, byTemplate, bySetup)
	}
	return out
}

// check refuses a name that would cost somebody a file.
func (f answers) check() error {
	out := f.output(nil)
	return out.check(nil, f.overwrite)
}

func (f answers) write(write func(io.Writer) error) error {
	return writeOutputs([]output{f.output(write)}, nil, f.overwrite)
}

// interviewed asks, prints the page and writes the answers down.
func interviewed(std streams, file answers, verdict *int) error {
	t := newTalk(std.in, std.err)
	if err := t.begin(&file); err != nil {
		return err
	}
	if err := t.ask(); err != nil {
		return withCode(exitInput, err)
	}
	if len(t.given) == 0 {
		return withCode(exitInput, errors.New("nothing was answered, so there is no answer"))
	}
	s, err := t.setup()
	if err != nil {
		return asInput(err)
	}
	failed := withCode(exitInput, errors.New("without the volts of the battery there is no answer"))
	if t.hasBattery() {
		t.say("")
		failed = page(std.direct, s, verdict)
	}
	// Answers are kept, whatever became of the page.
	return errors.Join(failed, t.keep(s, file))
}

// page judges the setup and prints the answer.
func page(w io.Writer, s *setup.Setup, verdict *int) error {
	a, err := packcheck.AssessWith(context.Background(), s, packcheck.Options{Ways: true})
	if err != nil {
		return asInput(err)
	}
	if a.Verdict >= answer.FixFirst {
		*verdict = exitFix
	}
	return report.Text(w, a)
}
