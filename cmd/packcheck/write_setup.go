package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// The names of the options about setups that are saved.
const (
	flagWriteSetup = "write-setup"
	flagWay        = "way"
)

// savedSetup is the setup file that was asked for: the setup as it is judged, or a
// way out of it.
func savedSetup(c *cli.Command, s *setup.Setup, a *answer.Assessment, std streams) (output, error) {
	if c.IsSet(flagWay) {
		way, err := wayNamed(c.String(flagWay), a)
		if err != nil {
			return output{}, err
		}
		if s, err = s.With(way.Values()); err != nil {
			return output{}, fmt.Errorf("--%s: %w", flagWay, err)
		}
		if way.Carried {
			fmt.Fprintf(std.err, "packcheck: --%s: what was measured before the change and the change makes otherwise is left out, and with it what that told of the vehicle: judged anew, the file may give other figures than the report; measure again once it is done\n", flagWay)
		}
	}
	target := c.String(flagWriteSetup)
	return output{
		flag: flagWriteSetup, target: target, overInput: true,
		write: func(w io.Writer) error { return writeSetup(w, s, bySetup, "", filepath.Dir(resolved(target))) },
		ours:  markedBy(bySetup),
	}, nil
}

// wayNamed finds the way out of a letter, as the report names them.
func wayNamed(letter string, a *answer.Assessment) (*answer.Way, error) {
	var letters []string
	for i := range a.Ways {
		name := string(rune('A' + i))
		if strings.EqualFold(strings.TrimSpace(letter), name) {
			return &a.Ways[i], nil
		}
		letters = append(letters, name)
	}
	switch {
	case len(letters) > 0:
		return nil, fmt.Errorf("--%s %s: the ways out of this setup are %s", flagWay, letter, strings.Join(letters, ", "))
	case a.Verdict < answer.FixFirst:
		return nil, fmt.Errorf("--%s %s: nothing has to be put right first, so there is no way out to save", flagWay, letter)
	}
	return nil, fmt.Errorf("--%s %s: no way out of this setup was found", flagWay, letter)
}

// writeSetup writes a setup for a folder, under a heading of its own: files that it
// names are named as seen from there.
func writeSetup(w io.Writer, s *setup.Setup, by, heading, folder string) error {
	moved := map[string]string{}
	values := s.Values()
	for _, k := range setup.Keys() {
		for _, key := range []string{k.Path(), "original." + k.Path()} {
			if name := values[key]; k.What == "file" && name != "" && !filepath.IsAbs(name) {
				moved[key] = relative(folder, filepath.Join(s.Dir, filepath.FromSlash(name)))
			}
		}
	}
	s, err := s.With(moved)
	if err != nil {
		return err
	}
	var text strings.Builder
	text.WriteString(heading)
	if _, err := s.WriteTo(&text); err != nil {
		return err
	}
	return writeMarked(w, by, text.String())
}
