package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck/internal/cellfit"
)

// The names of the options of fit.
const (
	flagChemistry      = "chemistry"
	flagChemistryFile  = "chemistry-file"
	flagLabel          = "label"
	flagCells          = "cells"
	flagCutoff         = "cutoff"
	flagAir            = "air"
	flagDischarge      = "discharge"
	flagFull           = "full"
	flagWritePack      = "write-pack"
	flagWriteChemistry = "write-chemistry"
	flagName           = "name"
)

const fitHelp = `packcheck fit reads logged discharges and says what the battery is like.

    packcheck fit log.csv --label "20 V max 5 Ah"

A log is a text table (CSV) with time, volts and amps, as loggers and
chargers write it: any common names, units, order, separator and decimal
sign. A temperature and a charge counter are used when they are there.
Several logs of one battery, at several currents, tell more than one.
The best log begins full and rested, switches the load off and on a few
times, and ends when the maker's instructions say that it should.

What is known of the battery
    --label TEXT             what is printed on it; needed for its health
    --chemistry NAME         kind of cell, such as li-ion or agm
    --chemistry-file FILE    a TOML file with a chemistry of your own
    --cells N                cells in series
    --cutoff VOLTS           where a discharge counts as done ("15 V")
    --full                   every log begins with a full battery
    --air TEMP               where a log has no temperature ("20 C")
    --discharge plus|minus   the sign of a discharge current in the logs

What to make of it
    --format NAME            text or json (text if left out)
    --write-pack FILE        a [pack] table to put into a setup file
    --write-chemistry FILE   the fitted cell, for the key chemistry_file
    --name NAME              what to call that cell in a setup file
    --overwrite              write over a file that is there already, even if
                             fit did not write it or somebody changed it

Exit code
    0  done; what the logs do not tell is said
    2  a log or a chemistry file could not be read
    3  anything else went wrong, such as a wrong option
`

// fitCommand fits a battery to logged discharges.
func fitCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:               "fit",
		CustomHelpTemplate: fitHelp,
		Flags: []cli.Flag{
			&cli.StringFlag{Name: flagLabel},
			&cli.StringFlag{Name: flagChemistry},
			&cli.StringFlag{Name: flagChemistryFile},
			&cli.StringFlag{Name: flagCells},
			&cli.StringFlag{Name: flagCutoff},
			&cli.StringFlag{Name: flagAir},
			&cli.StringFlag{Name: flagDischarge},
			&cli.BoolFlag{Name: flagFull},
			&cli.StringFlag{Name: flagFormat, Value: fitText},
			&cli.StringFlag{Name: flagWritePack},
			&cli.StringFlag{Name: flagWriteChemistry},
			&cli.StringFlag{Name: flagName},
			&cli.BoolFlag{Name: flagOverwrite},
		},
		Action: func(_ context.Context, c *cli.Command) error { return fit(c, std) },
	}
}

// The formats of fit.
const (
	fitText = "text"
	fitJSON = "json"
)

// fit reads the logs, finds out what the battery is like and writes it down.
func fit(c *cli.Command, std streams) error {
	format := strings.ToLower(c.String(flagFormat))
	if format != fitText && format != fitJSON {
		return fmt.Errorf("unknown format %q (there are %s and %s)", c.String(flagFormat), fitText, fitJSON)
	}
	files, err := fitFiles(c)
	if err != nil {
		return err
	}
	about, err := readBattery(c)
	if err != nil {
		return err
	}
	to, err := readTargets(c, about, files)
	if err != nil {
		return err
	}
	bar := newProgress(std.err)
	defer bar.clear()
	logs, err := readLogs(files, std.in, about.sign, bar)
	if err != nil {
		return err
	}
	if err := about.countCells(logs); err != nil {
		return err
	}
	o := about.options()
	o.Progress = func(share float64, what string) { bar.show(what, share) }
	found, err := cellfit.Fit(logs, o)
	if err != nil {
		return errors.New(strings.TrimPrefix(err.Error(), "cellfit: "))
	}
	f := fitted{known: about, targets: to, logs: logs, Result: found}
	if err := f.compare(); err != nil {
		return err
	}
	if err := f.writeFiles(); err != nil {
		return err
	}
	bar.clear()
	var out bytes.Buffer
	if format == fitJSON {
		err = f.json(&out)
	} else {
		f.text(&out)
	}
	if err != nil {
		return err
	}
	_, err = std.out.Write(out.Bytes())
	return err
}

// fitFiles returns the names of the logs.
func fitFiles(c *cli.Command) ([]string, error) {
	files := c.Args().Slice()
	if len(files) == 0 {
		return nil, errors.New("which log? Give its name, or - for standard input (packcheck fit --help shows an example)")
	}
	stdins := 0
	for i, f := range files {
		if f == "" {
			return nil, errors.New("the name of a log is empty")
		}
		if f == stdinName {
			stdins++
		}
		for _, g := range files[:i] {
			if f != stdinName && sameFile(f, g) {
				return nil, fmt.Errorf("%s is given twice: one discharge does not count as two", f)
			}
		}
	}
	if stdins > 1 {
		return nil, errors.New("only one log can come from standard input")
	}
	return files, nil
}
