package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v3"
)

// topic is one thing that somebody may want to read about, in at most a screen of
// 80 columns.
type topic struct{ name, about, text string }

// topics lists them, in the order of the manual.
func topics() []topic {
	return []topic{
		{"setup", "how to write a setup file", topicSetup},
		{"batteries", "trying another battery, with or without a file", topicBatteries},
		{"compare", "several setups side by side", topicCompare},
		{"report", "how to read the answer", topicReport},
		{"measuring", "what can be measured at home, and what it does", topicMeasuring},
		{"ways", "ways out, and how to save and change one", topicWays},
		{"files", "what is written, and what is never written over", topicFiles},
		{"shell", "completion, colour and the manual page", topicShell},
	}
}

const topicSetup = `A setup file is plain text in TOML: tables in square brackets, and in them a
key, an equals sign and a value in quotes.

    title = "Will the drill's pack do?"

    [rider]
    age = "5 years"

    [pack]
    label = "20 V max 5 Ah"

Write every quantity with its unit, as people write it: "7 Ah", "44 lb",
"14 AWG", "10 in", "41 F", "29,5 kg". A range is "20 to 26 kg". What you do
not know you leave out: it is assumed, over the whole range of what it may be,
and the report says so. Words are everyday ones ("lawn", "sla", "LFP").

The same tables may stand under [original], as in [original.pack]: the vehicle
as it left the factory, which survived that. What is measured with the old
battery goes under [measured].

Every fault of a file is told at once, with its line and what would be right.
packcheck keys lists all keys, packcheck keys pack those of one topic.
`

const topicBatteries = `--pack takes what is printed on a battery and puts it in place of the file's
own, or stands for a whole file:

    packcheck tractor.toml --pack "12 V 7 Ah AGM"
    packcheck --pack "20 V max 4 Ah" --set vehicle.design_voltage="12 V"

Where the label does not tell the kind of cells, it asks for them:
--set pack.chemistry="lifepo4".

All that belongs to the old battery goes with it: the tables [pack],
[cutoff.pack] and [charger], and what was measured with it. What went is said
on standard error. Where the old battery is the one that the vehicle was made
with (the file has an [original] that names no other, or it is a lead-acid
battery of the vehicle's volts), it becomes [original.pack]: the new one is
judged against it, and what was measured stays a reading of the old one.

--set KEY=VALUE is one line of a setup file, on top of it; KEY has its table
in front. No VALUE takes the key out, or the whole table:

    packcheck tractor.toml --set rider.age="3 years" --set charger=
`

const topicCompare = `Several files, or --pack several times, are set side by side, up to four; with
both, each file gets each battery. --pack own is the battery of the file.

    packcheck tractor.toml two-seater.toml
    packcheck tractor.toml --pack own --pack "12 V 7 Ah AGM"

What nobody knows (the ground, the gears, how honest a label is) stands at the
same place of its range in every column, vehicle by vehicle, so that a
difference is one of the setups and not of chance. What was measured counts
for every column that is the same vehicle. Where columns cannot share their
draws, because they were measured apart, the report says so.

"The best" counts those that may be used, where there is one: which lasts
longest, which comes nearest to the original's speed (without an original:
which is fastest), and which starts most gently (fewest amps in the motors).
Wear of two batteries is taken alike: an old one against a new one needs
pack.age or pack.health in each file.

The exit code is 0 where at least one of them may be used.
`

const topicReport = `The first line is the answer: NO (a child or a house may be hurt), NOT YET
(something has to be put right first), YES, WITH CARE or YES. The second is
the gravest reason, the third the next step.

Every figure is likely, with a range in brackets: eight of ten vehicles like
yours lie in it. A finding without a word in front holds in nine of ten of
them; "Likely" in half or more; "Possibly" in a tenth or more. What could hurt
somebody is told from one in fifty. "A guess" says that it rests on something
you did not tell, and what: look at that first. A guess alone is never NO.

--full has everything, --short ten lines. packcheck explain CODE tells more of
a finding; --full has the codes, in brackets.

--format html is for a phone or for paper, markdown and bbcode for forums,
json for programs.
`

const topicMeasuring = `What was measured counts more than any label. Under [measured]:

    ride_time = "25 min"        from full until it stops, by the clock
    top_speed = "5 km/h"        ten metres timed on the flat
    pull_force = "40 N"         a luggage scale pulls the loaded vehicle slowly
    rest_voltage = "12.6 V"     nothing connected, with hours_rested
    loaded_voltage, loaded_current, blocked_current

A range ("20 to 30 min") says how sure you are. All readings count together,
each with its error; readings that cannot all be true are told, and the one
that fits least is left out. The report says what to measure next.

packcheck fit LOG reads the log of a discharge, which tells most of a battery.
`

const topicWays = `Where something has to be put right first, the report shows up to three ways
out, A to C: lists of changes that were computed like the rest. Of a worn
battery whose ride was timed it shows what a new one gives.

    packcheck tractor.toml --write-setup plan.toml --way A

saves one as a setup file; judged again, it gives what the report promised.
Change it, or say --set to it, and judge it anew. What was measured on the old
battery stays as read on the original one where nothing but the battery changes.
What else was measured before the change cannot be kept, and that is said.
`

const topicFiles = `--trace FILE and --trace-launch FILE write tables (CSV), --write-setup FILE a
setup; fit writes what it found, new its answers. All of them are written or
none, and never half a file.

A file that is there already is written over only if it is packcheck's own, of
the same sort, and nobody changed it since. --overwrite lifts that; only with
it, --write-setup may also write over the setup file that was read.

Files that a setup names (a chemistry, tables, a load's pattern) are looked
for in its own folder and below (that of the command for a setup that is no
file), and nowhere else unless --any-folder allows it: a stranger's file shall
not have others read.
`

const topicShell = `Completion of options, keys, questions and codes:

    source <(packcheck completion bash)        in ~/.bashrc
    source <(packcheck completion zsh)         in ~/.zshrc
    packcheck completion fish | source         in config.fish

The manual page:

    packcheck manual >packcheck.1 && man ./packcheck.1

On a terminal the text report has colours, which say nothing that the words do
not say. NO_COLOR=1 turns them off.
`

// topicList is the part of the help that names them.
func topicList() string {
	var b strings.Builder
	for _, t := range topics() {
		fmt.Fprintf(&b, "    %-10s  %s\n", t.name, t.about)
	}
	return b.String()
}

// helpOf is the help of a command.
func helpOf(c *cli.Command) string {
	if c.Name == askName {
		return askHelp()
	}
	return c.CustomHelpTemplate
}

// helpOn returns the help on a topic or a command.
func helpOn(name string, std streams) (string, error) {
	name = strings.ToLower(name)
	var names []string
	for _, t := range topics() {
		if t.name == name {
			return t.text, nil
		}
		names = append(names, t.name)
	}
	for _, c := range commands(std, nil) {
		switch {
		case c.Name == name && c.Name != "help":
			return helpOf(c), nil
		case c.Name != "help":
			names = append(names, c.Name)
		}
	}
	slices.Sort(names)
	return "", fmt.Errorf("no help on %q; there is help on %s", clipped(name), strings.Join(names, ", "))
}
