package main

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"runtime"

	"github.com/urfave/cli/v3"

	"example.org/packcheck"
)

// The names of the options of batch.
const flagWays = "ways"

const batchHelp = `packcheck batch judges many setups, one after the other, and writes one line
of JSON for each, in their order.

    packcheck batch setups.jsonl > answers.jsonl
    packcheck batch folder/ > answers.jsonl

Each line of the input is an object of keys and what would stand behind them
in a setup file (packcheck keys lists them), or one with a whole file:

    {"id": 17, "pack.label": "12 V 7 Ah", "rider.mass": "20 kg", ...}
    {"id": "b", "toml": "[pack]\nlabel = \"12 V 7 Ah\"\n"}

The id may be anything and comes back with the answer; empty lines are passed
over. In place of a file, - reads standard input, and a folder stands for the
files in it that end in .toml, by name. Files that a setup names are looked for
beside the input.

Each answer is what --format json writes, with the line (or file) of the setup
and its id in front. A setup that is not in order gets a line with "error", a
list of all its faults, and the next one is judged.

Options, before or after the file name
    --draws N    how many vehicles are computed for each (2048 if left out);
                 64 will do for a first sieve
    --ways       search ways out, too; costs about as much again
    --any-folder
                 let setups name files outside the input's folder; not for
                 setups of strangers, which could have others read

Exit code
    0  every setup was judged, whatever the answers
    2  a setup could not be read; its line says why
    3  anything else went wrong
`

// batchCommand judges many setups.
func batchCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:               "batch",
		CustomHelpTemplate: batchHelp,
		Flags: []cli.Flag{
			&cli.IntFlag{Name: flagDraws},
			&cli.BoolFlag{Name: flagWays},
			&cli.BoolFlag{Name: flagAnyFolder},
		},
		Action: func(_ context.Context, c *cli.Command) error {
			name, err := oneFile(c)
			if err != nil {
				return err
			}
			if err := drawsInRange(c); err != nil { // once, and not for every line
				return err
			}
			// The cores work on different setups: that needs no waiting for one another.
			o := packcheck.Options{Draws: c.Int(flagDraws), Ways: c.Bool(flagWays), Workers: 1}
			return batch(name, c.Bool(flagAnyFolder), o, runtime.GOMAXPROCS(0), std)
		},
	}
}

// batch judges the setups of a file, a folder or standard input.
func batch(name string, anyFolder bool, o packcheck.Options, workers int, std streams) error {
	in, err := openInput(name, std.in)
	if err != nil {
		return withCode(exitInput, err)
	}
	defer in.close()
	bar := newProgress(std.err)
	defer bar.clear()

	out := bufio.NewWriter(std.direct)
	done, bad := 0, outcome{}
	err = inOrder(in, workers, func(i item) answered {
		i.anyFolder = anyFolder
		return judgedItem(i, o)
	}, func(a answered) error {
		if _, err := out.Write(a.line); err != nil {
			return fmt.Errorf("cannot write to standard output: %w", err)
		}
		if err := out.Flush(); err != nil { // whoever reads along sees each answer when it is there
			return fmt.Errorf("cannot write to standard output: %w", err)
		}
		done++
		bad.count(a)
		bar.show(fmt.Sprintf("%d setups judged", done), a.share)
		return nil
	})
	if err != nil {
		return err
	}
	return bad.asError(done)
}

// outcome counts what did not come to an answer.
type outcome struct{ unread, failed int }

func (b *outcome) count(a answered) {
	switch a.code {
	case exitInput:
		b.unread++
	case exitOther:
		b.failed++
	}
}

// asError says at the end how many lines hold no answer.
func (b *outcome) asError(of int) error {
	switch {
	case b.failed > 0:
		return fmt.Errorf("%d of %d setups could not be computed and %d could not be read; their lines say why", b.failed, of, b.unread)
	case b.unread > 0:
		return withCode(exitInput, fmt.Errorf("%d of %d setups could not be read; their lines say why", b.unread, of))
	}
	return nil
}

// openInput opens what the setups are read from.
func openInput(name string, stdin io.Reader) (input, error) {
	if name == stdinName {
		return newLines(stdin, "standard input", ".", 0), nil
	}
	info, err := os.Stat(name)
	switch {
	case err != nil:
		return nil, missing(name, err)
	case info.IsDir():
		return newFolder(name)
	}
	return newFile(name, info.Size())
}
