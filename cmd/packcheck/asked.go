package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"slices"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck/setup"
)

// The names of the options that stand for a setup file, or for lines of one.
const (
	flagPack      = "pack"
	flagSet       = "set"
	flagAnyFolder = "any-folder"
)

// stdinName stands for standard input where a file name is asked for.
const stdinName = "-"

// askedFor reads the setup that is asked about: a file, or none where --pack and
// --set tell enough, and what these two change. All faults come at once. The name
// is that of the file, empty where there is none.
func askedFor(c *cli.Command, std streams) (name string, s *setup.Setup, err error) {
	changes, faults := changesIn(c)
	labels := c.StringSlice(flagPack)
	switch {
	case len(labels) == 1 && strings.TrimSpace(labels[0]) == "":
		return "", nil, errNoLabel()
	case len(labels) == 1 && !strings.EqualFold(strings.TrimSpace(labels[0]), ownPack):
		changes.Pack = labels[0]
	}
	if c.Args().Present() || !c.IsSet(flagPack) && !c.IsSet(flagSet) {
		if name, err = oneFile(c); err != nil {
			return "", nil, err
		}
	}
	if name == "" && changes.Pack == "" && changes.Set["pack.label"] == "" && changes.Set["pack.cells_in_series"] == "" {
		faults = append(faults, setup.Fault{File: changes.SetName, Key: "pack", Want: `the battery, as in --pack "20 V max 5 Ah", or a setup file`})
	}
	s, err = read(name, std.in, changes)
	if len(faults) > 0 && err == nil {
		_, err = s.Parts() // what else is wrong with it is told in the same round
	}
	if err = withFaults(withoutNoPack(err, faults), faults); err != nil {
		return name, nil, err
	}
	tellLeftOut(std.err, s)
	return name, s, nil
}

// tellLeftOut says what of the setups went with their own batteries: whole tables
// by their names, what was measured by its keys. That the battery itself went was
// asked for.
func tellLeftOut(w io.Writer, setups ...*setup.Setup) {
	var names []string
	for _, s := range setups {
		for _, key := range s.LeftOut {
			table, _, _ := strings.Cut(key, ".")
			switch {
			case key == "pack.label", key == "pack.chemistry":
				continue
			case table == "cutoff":
				key = "[cutoff.pack]"
			case table != "measured":
				key = "[" + table + "]"
			}
			if !slices.Contains(names, key) {
				names = append(names, key)
			}
		}
	}
	if len(names) > 0 {
		fmt.Fprintf(w, "packcheck: --%s: left out with the battery that was replaced: %s\n", flagPack, strings.Join(names, ", "))
	}
}

// changesIn reads what --set changes; what is not in order is told with the
// faults of the setup.
func changesIn(c *cli.Command) (setup.Changes, setup.Faults) {
	ch := setup.Changes{Set: map[string]string{}, PackName: "--" + flagPack, SetName: "--" + flagSet, AnyFolder: c.Bool(flagAnyFolder), Dir: "."}
	var faults setup.Faults
	for _, arg := range c.StringSlice(flagSet) {
		key, text, ok := strings.Cut(arg, "=")
		key, text = strings.TrimSpace(key), strings.TrimSpace(text)
		before, twice := ch.Set[key]
		switch {
		case !ok || key == "":
			faults = append(faults, setup.Fault{File: ch.SetName, Read: arg, Want: `KEY=VALUE, such as rider.age="5 years" (packcheck keys lists the keys)`})
		case twice && before != text:
			faults = append(faults, setup.Fault{File: ch.SetName, Key: key, Read: text, Want: fmt.Sprintf("one value for it; another --%s says %q", flagSet, before)})
		default:
			ch.Set[key] = unquoted(text)
		}
	}
	return ch, faults
}

// unquoted takes off the quotes that a value has in a file, and that a shell
// left where the whole argument was quoted as well.
func unquoted(text string) string {
	if n := len(text); n > 1 && text[0] == '"' && text[n-1] == '"' && !strings.Contains(text[1:n-1], `"`) {
		return text[1 : n-1]
	}
	return text
}

// withoutNoPack leaves out that there is no battery, where the options say so already.
func withoutNoPack(err error, told setup.Faults) error {
	var faults setup.Faults
	if !slices.ContainsFunc(told, func(f setup.Fault) bool { return f.Key == "pack" }) || !errors.As(err, &faults) {
		return err
	}
	left := slices.DeleteFunc(slices.Clone(faults), func(f setup.Fault) bool { return f.Key == "pack" && f.Read == "" })
	if len(left) == 0 {
		return nil
	}
	return left
}

// withFaults puts the faults of the options to those of the setup.
func withFaults(err error, faults setup.Faults) error {
	if len(faults) == 0 {
		return err
	}
	var more setup.Faults
	if err != nil && !errors.As(err, &more) {
		return err
	}
	return withCode(exitInput, append(faults, more...))
}

// read reads a setup from a file or from standard input, or makes one of the
// changes alone where there is no file.
func read(name string, stdin io.Reader, c setup.Changes) (*setup.Setup, error) {
	var s *setup.Setup
	var err error
	switch name {
	case "":
		s, err = setup.OfWith(nil, "", c)
	case stdinName:
		s, err = setup.ReadWith(stdin, "standard input", c)
	default:
		s, err = setup.LoadWith(name, c)
	}
	return s, withCode(exitInput, missing(name, err))
}

// missing says in plain words that there is no such file; other errors stay.
func missing(name string, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("there is no file %q", name)
	}
	return err
}
