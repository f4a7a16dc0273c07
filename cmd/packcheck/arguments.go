package main

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/urfave/cli/v3"
)

// flagsFirst moves flags in front of the file name, because the library takes
// whatever follows the first file name for file names too, without a word. It
// refuses flags that do not exist and flags without their value, so that the
// error can say what would be right.
//
// A command is recognised as the first argument that is no flag; its own flags
// may stand anywhere behind it.
func flagsFirst(app *cli.Command, args []string) ([]string, error) {
	flags, rest, err := split(app.Flags, args, true)
	if err != nil {
		return nil, err
	}
	if len(rest) == 0 {
		return flags, nil
	}
	command := app.Command(rest[0])
	if command == nil {
		all, files, err := split(app.Flags, args, false)
		if slices.ContainsFunc(all, asksForHelp) {
			return []string{"--" + flagHelp}, err // with a name behind it, the library looks for a topic
		}
		return slices.Concat(all, []string{"--"}, files), err
	}
	if len(flags) > 0 && !slices.ContainsFunc(flags, asksForHelp) {
		return nil, fmt.Errorf("%s does not go with %q: put the options of a command behind its name; a setup file of that name is ./%s",
			flags[0], command.Name, command.Name)
	}
	own, operands, err := split(command.Flags, rest[1:], false)
	return slices.Concat(flags, []string{command.Name}, own, []string{"--"}, operands), err
}

// split parts flags, with their values, from what is no flag. With leading set
// it stops at the first argument that is no flag and returns all from there on
// as operands.
func split(known []cli.Flag, args []string, leading bool) (flags, operands []string, err error) {
	for i := 0; i < len(args); i++ {
		arg := args[i]
		switch {
		case arg == "--":
			return flags, append(operands, args[i+1:]...), nil
		case !looksLikeFlag(arg): // "-" and "-10 C" are none
			if leading {
				return flags, args[i:], nil
			}
			operands = append(operands, arg)
			continue
		}
		name, value, hasValue := strings.Cut(strings.TrimLeft(arg, "-"), "=")
		flag, err := lookUp(known, name, arg)
		if err != nil {
			return nil, nil, err
		}
		flags = append(flags, arg)
		if flag == nil || hasValue || !takesValue(flag) {
			if err := rightValue(flag, name, value, hasValue); err != nil {
				return nil, nil, err
			}
			continue
		}
		i++
		if i == len(args) || looksLikeFlag(args[i]) {
			return nil, nil, fmt.Errorf("--%s needs a value behind it", name)
		}
		if err := rightValue(flag, name, args[i], true); err != nil {
			return nil, nil, err
		}
		flags = append(flags, args[i])
	}
	return flags, operands, nil
}

// rightValue says of a value that an option cannot take what would be right.
func rightValue(f cli.Flag, name, value string, has bool) error {
	switch f.(type) {
	case *cli.IntFlag:
		if _, err := strconv.Atoi(value); has && err != nil {
			return fmt.Errorf("--%s %s: want a whole number", name, value)
		}
	case *cli.BoolFlag:
		if _, err := strconv.ParseBool(value); has && err != nil {
			return fmt.Errorf("--%s=%s: want no value behind it", name, value)
		}
	}
	return nil
}

// looksLikeFlag reports whether an argument is no value: "-" is a stream and
// "-10 C" a quantity.
func looksLikeFlag(arg string) bool {
	return len(arg) > 1 && arg[0] == '-' && !strings.ContainsRune("0123456789.,", rune(arg[1]))
}

// lookUp finds a flag by its name without dashes; nil is the help flag of a
// command, which the library adds by itself.
func lookUp(known []cli.Flag, name, arg string) (cli.Flag, error) {
	var names []string
	for _, f := range known {
		if slices.Contains(f.Names(), name) {
			return f, nil
		}
		names = append(names, "--"+f.Names()[0])
	}
	if asksForHelp("--" + name) {
		return nil, nil
	}
	if len(names) == 0 {
		return nil, fmt.Errorf("unknown option %s (this command has none)", arg)
	}
	return nil, fmt.Errorf("unknown option %s (there are %s)", arg, strings.Join(names, ", "))
}

func asksForHelp(arg string) bool {
	return slices.Contains([]string{"-h", "--h", "-help", "--help"}, arg)
}

// takesValue reports whether a flag is followed by a value.
func takesValue(f cli.Flag) bool {
	_, isSwitch := f.(*cli.BoolFlag)
	return !isSwitch
}

// oneFile returns the only operand.
func oneFile(c *cli.Command) (string, error) {
	switch files := c.Args().Slice(); {
	case len(files) == 0:
		return "", errors.New("which setup file? Give its name, or - for standard input (packcheck --help shows an example)")
	case len(files) > 1:
		return "", fmt.Errorf("one setup file at a time, not %d: %s", len(files), strings.Join(files, ", "))
	case files[0] == "":
		return "", errors.New("the name of the setup file is empty")
	default:
		return files[0], nil
	}
}

// noFile refuses operands where a command has none.
func noFile(c *cli.Command) error {
	if c.Args().Present() {
		return fmt.Errorf("%s takes no file name: %s", c.Name, c.Args().First())
	}
	return nil
}
