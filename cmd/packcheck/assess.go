package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/urfave/cli/v3"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// The names of the options.
const (
	flagFormat      = "format"
	flagShort       = "short"
	flagWhole       = "full"
	flagDraws       = "draws"
	flagTrace       = "trace"
	flagTraceLaunch = "trace-launch"
	flagVersion     = "version"
	flagHelp        = "help"
)

// assessFlags are the options of the assessment.
func assessFlags() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Local: true, Name: flagFormat, Value: string(report.FormatText)},
		&cli.BoolFlag{Local: true, Name: flagWhole},
		&cli.BoolFlag{Local: true, Name: flagShort},
		&cli.StringSliceFlag{Local: true, Name: flagPack},
		&cli.StringSliceFlag{Local: true, Name: flagSet},
		&cli.IntFlag{Local: true, Name: flagDraws},
		&cli.StringFlag{Local: true, Name: flagTrace},
		&cli.StringFlag{Local: true, Name: flagTraceLaunch},
		&cli.StringFlag{Local: true, Name: flagWriteSetup},
		&cli.StringFlag{Local: true, Name: flagWay},
		&cli.BoolFlag{Local: true, Name: flagOverwrite},
		&cli.BoolFlag{Local: true, Name: flagAnyFolder},
		&cli.BoolFlag{Local: true, Name: flagVersion},
		&cli.BoolFlag{Local: true, Name: flagHelp, Aliases: []string{"h"}},
	}
}

// assess reads one setup, judges it and writes report and traces.
func assess(ctx context.Context, c *cli.Command, std streams, verdict *int) error {
	switch {
	case c.Bool(flagHelp):
		return cli.ShowRootCommandHelp(c.Root())
	case c.Bool(flagVersion):
		_, err := fmt.Fprintln(std.out, version())
		return err
	}
	format, err := report.ParseFormat(c.String(flagFormat))
	if err != nil {
		return err
	}
	if c.Bool(flagWhole) && c.Bool(flagShort) {
		return errors.New("--full and --short do not go together: choose one")
	}
	if err := drawsInRange(c); err != nil {
		return err
	}
	if comparing(c) {
		return compare(ctx, c, std, format, verdict)
	}
	if c.IsSet(flagWay) && !c.IsSet(flagWriteSetup) {
		return fmt.Errorf("--%s goes with --%s FILE, the setup file that the way out is saved to", flagWay, flagWriteSetup)
	}
	name, s, err := askedFor(c, std)
	if err != nil {
		return err
	}
	a, err := packcheck.AssessWith(ctx, s, packcheck.Options{Draws: c.Int(flagDraws), Ways: true})
	if err != nil {
		return asInput(err)
	}
	files := traces(c, s)
	if c.IsSet(flagWriteSetup) {
		saved, err := savedSetup(c, s, a, std)
		if err != nil {
			return err
		}
		files = append(files, saved)
	}
	var out bytes.Buffer
	o := report.Options{Format: format, Full: c.Bool(flagWhole), Short: c.Bool(flagShort), Explain: packcheck.Explain}
	if err := report.Write(&out, a, o); err != nil {
		return err
	}
	if err := writeOutputs(files, []string{name}, c.Bool(flagOverwrite)); err != nil {
		return err
	}
	if a.Verdict >= answer.FixFirst {
		*verdict = exitFix
	}
	_, err = io.WriteString(std.out, painted(out.String(), format, std.direct))
	return err
}

// asInput gives faults of the setup the code of unreadable input: some of them
// show only when words and labels are looked up.
func asInput(err error) error {
	var faults setup.Faults
	if errors.As(err, &faults) {
		return withCode(exitInput, err)
	}
	return err
}

// drawsInRange refuses a number of draws that nothing is computed with; the zero of the
// library stands for the usual number, that of the option for nothing.
func drawsInRange(c *cli.Command) error {
	if n := c.Int(flagDraws); c.IsSet(flagDraws) && (n < packcheck.LeastDraws || n > packcheck.MostDraws) {
		return fmt.Errorf("--%s %d: want %d to %d", flagDraws, n, packcheck.LeastDraws, packcheck.MostDraws)
	}
	return nil
}
