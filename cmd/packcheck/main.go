// Command packcheck judges whether a battery suits a children's battery
// ride-on vehicle: a setup file in, a report out.
//
//	packcheck tractor.toml
//	packcheck tractor.toml --format markdown --short
//	packcheck tractor.toml --trace outing.csv
//
// Run packcheck --help for every option and the exit codes, and packcheck keys
// for what a setup file may hold.
//
// The command only moves bytes: all judging is done by package packcheck, all
// wording of reports by package report.
package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"slices"
	"strings"
	"syscall"
	"unicode"

	"github.com/urfave/cli/v3"
)

// The exit codes.
const (
	exitFine  = 0 // the worst finding is fine or watch
	exitFix   = 1 // the worst finding is fix first or danger
	exitInput = 2 // the input could not be read
	exitOther = 3 // anything else
)

// growth is by how many percent the heap may grow before it is collected: a report lives
// for milliseconds and hardly needs a collector; twenty thousand draws do.
const growth = 200

func main() {
	debug.SetGCPercent(growth)
	os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// streams are what a command talks through. Output is held back until the
// command has succeeded, so that a failure leaves nothing on it.
type streams struct {
	in     io.Reader
	out    io.Writer
	err    io.Writer
	direct io.Writer // standard output itself, for what must not wait
}

// codedError is an error with the exit code that it leads to.
type codedError struct {
	error
	code int
}

// Unwrap returns the error without its code.
func (e codedError) Unwrap() error { return e.error }

// withCode gives an error an exit code; nil stays nil.
func withCode(code int, err error) error {
	if err == nil {
		return nil
	}
	return codedError{err, code}
}

// run is the whole command, apart from the process around it.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	// A reader that goes away must be an error like any other, not the end of
	// the process.
	signal.Ignore(syscall.SIGPIPE)

	var held bytes.Buffer
	code, err := dispatch(args, streams{in: stdin, out: &held, err: stderr, direct: stdout})
	if err == nil {
		if _, werr := stdout.Write(held.Bytes()); werr != nil {
			code, err = exitOther, fmt.Errorf("cannot write to standard output: %w", werr)
		}
	}
	if err != nil {
		complain(stderr, err)
	}
	return code
}

// dispatch runs the command that the arguments name and returns the exit code.
func dispatch(args []string, std streams) (int, error) {
	verdict := exitFine
	// What nobody named or asked for would cost each start: its code is read from the
	// disk, the library sets it up, and the help is long.
	app := appOf(std, &verdict, commandsNamed(std, &verdict, func(name string) bool { return slices.Contains(args, name) }))
	if slices.ContainsFunc(args, func(arg string) bool { return asksForHelp(arg) || arg == "help" }) {
		app.CustomRootCommandHelpTemplate = helpText()
	}
	if c := app.Command(askName); c != nil {
		c.CustomHelpTemplate = strings.ReplaceAll(askHelp(), "{{", "{ {")
	}
	ordered, err := flagsFirst(app, args)
	if err == nil {
		err = app.Run(context.Background(), append([]string{app.Name}, ordered...))
	}
	var coded codedError
	switch {
	case errors.As(err, &coded):
		return coded.code, coded.error
	case err != nil:
		return exitOther, err
	}
	return verdict, nil
}

// newApp builds the command line with every command. The exit code of an assessment
// goes to verdict.
func newApp(std streams, verdict *int) *cli.Command {
	return appOf(std, verdict, commands(std, verdict))
}

func appOf(std streams, verdict *int, commands []*cli.Command) *cli.Command {
	app := &cli.Command{
		Name:                      "packcheck",
		HideHelpCommand:           true,
		Flags:                     assessFlags(),
		Action:                    func(ctx context.Context, c *cli.Command) error { return assess(ctx, c, std, verdict) },
		Commands:                  commands,
		Reader:                    std.in,
		Writer:                    std.out,
		ErrWriter:                 std.err,
		ExitErrHandler:            func(context.Context, *cli.Command, error) {}, // run decides
		DisableSliceFlagSeparator: true,                                          // "Tractor, red" is one value
		OnUsageError:              func(_ context.Context, _ *cli.Command, err error, _ bool) error { return err },
	}
	for _, c := range app.Commands {
		// Without this the library prints the mistake and the whole help to
		// standard output.
		c.OnUsageError = app.OnUsageError
		c.HideHelpCommand = true
	}
	return app
}

// commands lists the commands beside the assessment itself. Each has a file of
// its own.
func commands(std streams, verdict *int) []*cli.Command {
	return commandsNamed(std, verdict, func(string) bool { return true })
}

// commandsNamed builds the commands whose names are wanted, and no other.
func commandsNamed(std streams, verdict *int, wanted func(name string) bool) []*cli.Command {
	var list []*cli.Command
	for _, c := range [...]struct {
		name string
		make func() *cli.Command
	}{
		{"explain", func() *cli.Command { return explainCommand(std) }},
		{askName, func() *cli.Command { return askCommand(std, verdict) }},
		{"new", func() *cli.Command { return newCommand(std, verdict) }},
		{"batch", func() *cli.Command { return batchCommand(std) }},
		{"fit", func() *cli.Command { return fitCommand(std) }},
		{"keys", func() *cli.Command { return keysCommand(std) }},
		{"sources", func() *cli.Command { return sourcesCommand(std) }},
		{"completion", func() *cli.Command { return completionCommand(std) }},
		{"manual", func() *cli.Command { return manualCommand(std) }},
		{"help", func() *cli.Command { return helpCommand(std) }},
	} {
		if wanted(c.name) {
			list = append(list, c.make())
		}
	}
	return list
}

// complain prints an error, one line for each of its lines. What a file held
// may be part of it, so nothing that a terminal would obey goes out.
func complain(w io.Writer, err error) {
	for line := range strings.Lines(err.Error()) {
		line = strings.TrimRight(line, "\r\n")
		line = strings.Map(func(r rune) rune {
			if unicode.IsPrint(r) {
				return r
			}
			return '?'
		}, line)
		fmt.Fprintf(w, "packcheck: %s\n", line)
	}
}
