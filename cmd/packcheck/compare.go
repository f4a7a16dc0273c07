package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// ownPack is what --pack takes for the battery that the file has.
const ownPack = "own"

// comparing reports whether several setups are asked about.
func comparing(c *cli.Command) bool { return c.NArg() > 1 || len(c.StringSlice(flagPack)) > 1 }

// compare judges several setups side by side: each file with each battery.
func compare(ctx context.Context, c *cli.Command, std streams, format report.Format, verdict *int) error {
	for _, flag := range []string{flagWhole, flagShort, flagTrace, flagTraceLaunch, flagWriteSetup, flagWay} {
		if c.IsSet(flag) {
			return fmt.Errorf("--%s is for one setup, and these are several", flag)
		}
	}
	setups, err := askedForAll(c, std)
	if err != nil {
		return err
	}
	answers, err := packcheck.Compare(ctx, setups, packcheck.Options{Draws: c.Int(flagDraws)})
	if err != nil {
		return asInput(err)
	}
	if answers.Verdict >= answer.FixFirst {
		*verdict = exitFix
	}
	var out strings.Builder
	if err := report.WriteComparison(&out, answers, report.Options{Format: format}); err != nil {
		return err
	}
	_, err = io.WriteString(std.out, painted(out.String(), format, std.direct))
	return err
}

// askedForAll reads all setups that are asked about, with all faults at once.
func askedForAll(c *cli.Command, std streams) ([]*setup.Setup, error) {
	files, labels := c.Args().Slice(), c.StringSlice(flagPack)
	if len(files) == 0 {
		files = []string{""}
	}
	if len(labels) == 0 {
		labels = []string{ownPack}
	}
	if n := len(files) * len(labels); n > packcheck.MostCompared {
		return nil, fmt.Errorf("%d setups side by side (%d files with %d batteries each): at most %d fit", n, len(files), len(labels), packcheck.MostCompared)
	}
	if i := slices.Index(files, stdinName); i >= 0 && slices.Contains(files[i+1:], stdinName) {
		return nil, errors.New("standard input can be read once only")
	}
	changes, faults := changesIn(c)
	var setups []*setup.Setup
	var piped []byte // standard input can be read once only
	for _, name := range files {
		if name == "" && c.Args().Present() {
			return nil, errors.New("the name of a setup file is empty")
		}
		for _, label := range labels {
			one := changes
			switch label = strings.TrimSpace(label); {
			case label == "":
				return nil, errNoLabel()
			case strings.EqualFold(label, ownPack) && name == "" && changes.Set["pack.label"] == "":
				return nil, fmt.Errorf("--%s %s is the battery of a setup file, and there is none", flagPack, ownPack)
			case !strings.EqualFold(label, ownPack):
				one.Pack = label
			}
			in := std.in
			if name == stdinName {
				if piped == nil {
					var err error
					if piped, err = io.ReadAll(io.LimitReader(std.in, 2<<20)); err != nil {
						return nil, withCode(exitInput, fmt.Errorf("reading standard input: %w", err))
					}
				}
				in = bytes.NewReader(piped)
			}
			s, err := read(name, in, one)
			var some setup.Faults
			switch {
			case errors.As(err, &some):
				faults = append(faults, some...)
			case err != nil:
				return nil, err
			default:
				setups = append(setups, s)
			}
		}
	}
	if len(faults) > 0 {
		for _, s := range setups { // what is wrong with the others is told in the same round
			var some setup.Faults
			if _, err := s.Parts(); errors.As(err, &some) {
				faults = append(faults, some...)
			}
		}
		return nil, withCode(exitInput, distinct(faults))
	}
	tellLeftOut(std.err, setups...)
	return setups, nil
}

// distinct drops faults that several setups share.
func distinct(all setup.Faults) setup.Faults {
	var out setup.Faults
	seen := map[setup.Fault]bool{}
	for _, f := range all {
		if !seen[f] {
			out = append(out, f)
		}
		seen[f] = true
	}
	return out
}

// errNoLabel refuses an empty label.
func errNoLabel() error {
	return fmt.Errorf("--%s needs what is printed on the battery, such as --%s \"20 V max 5 Ah\"", flagPack, flagPack)
}
