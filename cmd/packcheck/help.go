package main

import (
	"context"
	"errors"
	"io"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck/report"
)

// helpText is the answer to --help. It is short enough to read, and starts
// with what somebody needs who has never seen the program.
func helpText() string {
	var formats []string
	for _, f := range report.Formats() {
		formats = append(formats, string(f))
	}
	text := strings.ReplaceAll(help, "TOPICS\n", topicList())
	return strings.ReplaceAll(text, "FORMATS", strings.Join(formats, ", "))
}

const help = `packcheck judges whether a battery suits a children's ride-on vehicle.

Write down what you know in a text file, say tractor.toml, and leave out
what you do not know:

    title = "Will the drill's pack do?"

    [rider]
    age = "5 years"

    [vehicle]
    ground = "lawn"
    design_voltage = "12 V"

    [motors]
    count = 2
    can = "550"

    [pack]
    chemistry = "li-ion"
    label = "20 V max 5 Ah"

Then run

    packcheck tractor.toml

The answer is one page: NO, NOT YET, YES WITH CARE or YES, why, and what
to do. What you left out is assumed, and the page says so.

How to call it
    packcheck FILE [options]     judge the setup in FILE
    packcheck - [options]        the same, from standard input
    packcheck --pack LABEL       the same, of a battery in a usual vehicle
    packcheck FILE FILE ...      up to four side by side, on the same draws
    packcheck new [FILE]         ask for a setup in plain words, no file needed
    packcheck ask QUESTION ...   one question, no file (ask --help lists all)
    packcheck batch FILE         judge many setups, a line of JSON each
    packcheck fit LOG [options]  fit a battery to logged discharges
    packcheck explain CODE       tell more of a finding (--full has the codes)
    packcheck keys [TOPIC]       list everything a setup file may hold
    packcheck sources            list where the built-in figures come from
    packcheck completion SHELL   completion for bash, zsh or fish
    packcheck manual             the manual page
    packcheck help TOPIC         more on one of these:
TOPICS
Options, before or after the file name
    --format NAME         FORMATS
                          (text if left out; html is for a phone or paper)
    --full                everything, in place of one page
    --short               ten lines at most; safety lines stay
    --pack LABEL          another battery in place of FILE's own (its charger
                          and what was read on it go too), or no FILE at all;
                          several are set side by side, with "own" for its own
    --set KEY=VALUE       a line of the setup, as often as needed, such as
                          --set rider.age="3 years"; no VALUE takes it out
    --draws N             how many vehicles are computed (2048 if left out)
    --trace FILE          also write the outing as a table (CSV)
    --trace-launch FILE   also write the first seconds as a table (CSV)
    --write-setup FILE    also save the setup as it is judged
    --way A               save way out A, B or C of the report in its place
    --overwrite           let these write over files that packcheck did not
                          write, or that were changed since
    --any-folder          let a setup name files outside its own folder
    --help                this page
    --version             what was built

Exit code
    0  the worst finding is fine or watch
    1  the worst finding is fix first or danger; of several setups,
       in each of them
    2  the setup could not be read; every fault is listed
    3  anything else went wrong, such as a wrong option

Reports go to standard output, errors to standard error. The report does
not replace the maker's instructions, local codes or licensed practice.
`

// helpCommand lets people say "packcheck help" and "packcheck help TOPIC".
func helpCommand(std streams) *cli.Command {
	return &cli.Command{
		Name:               "help",
		CustomHelpTemplate: help,
		Action: func(_ context.Context, c *cli.Command) error {
			switch c.NArg() {
			case 0:
				return cli.ShowRootCommandHelp(c.Root())
			case 1:
				text, err := helpOn(c.Args().First(), std)
				if err != nil {
					return err
				}
				_, err = io.WriteString(std.out, text)
				return err
			}
			return errors.New("one topic at a time: packcheck help TOPIC")
		},
	}
}
