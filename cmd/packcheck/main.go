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

func main() {
	debug.SetGCPercent(200) // a report lives for milliseconds and hardly needs a collector; twenty thousand draws do
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
	app := newApp(std, &verdict)
	// What nobody named or asked for would cost each start: the library sets every
	// command up, and the help is long.
	if slices.ContainsFunc(args, func(arg string) bool { return asksForHelp(arg) || arg == "help" }) {
		app.CustomRootCommandHelpTemplate = helpText()
	}
	app.Commands = slices.DeleteFunc(app.Commands, func(c *cli.Command) bool { return !slices.Contains(args, c.Name) })
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

// newApp builds the command line. The exit code of an assessment goes to
// verdict.
func newApp(std streams, verdict *int) *cli.Command {
	app := &cli.Command{
		Name:                      "packcheck",
		HideHelpCommand:           true,
		Flags:                     assessFlags(),
		Action:                    func(_ context.Context, c *cli.Command) error { return assess(c, std, verdict) },
		Commands:                  commands(std, verdict),
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
	return []*cli.Command{
		explainCommand(std),
		askCommand(std, verdict),
		newCommand(std, verdict),
		batchCommand(std),
		fitCommand(std),
		keysCommand(std),
		sourcesCommand(std),
		completionCommand(std),
		manualCommand(std),
		helpCommand(std),
	}
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
