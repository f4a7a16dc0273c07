package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"reflect"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck/chemistry"
)

// targets are the files that fit is asked to write.
type targets struct {
	cellsFile, packFile string // files; empty = not asked for
	name                string // of the fitted cell in a setup

	outputs []output
	read    []string // files that were read
	force   bool     // with leave to write over others' files
}

// readTargets refuses, before any long work, names that would cost somebody a
// file.
func readTargets(c *cli.Command, about *known, logs []string) (targets, error) {
	t := targets{cellsFile: c.String(flagWriteChemistry), packFile: c.String(flagWritePack)}
	t.name = chemistryName(c.String(flagName), t.cellsFile)
	t.read, t.force = append([]string{about.chemistryFile}, logs...), c.Bool(flagOverwrite)
	for _, x := range []output{
		{flag: flagWriteChemistry, target: t.cellsFile, ours: markedBy(byFit)},
		{flag: flagWritePack, target: t.packFile, ours: markedBy(byFit)},
	} {
		if !c.IsSet(x.flag) {
			continue
		}
		if err := x.check(t.read, t.force); err != nil {
			return t, err
		}
		t.outputs = append(t.outputs, x)
	}
	builtin, _ := chemistry.Builtin().Profile(about.profile.Name)
	switch _, taken := about.set.Profile(t.name); {
	case t.cellsFile == "":
	case !reflect.DeepEqual(builtin, about.profile):
		return t, fmt.Errorf("--%s: a fitted cell is based on a built-in chemistry, and %s is your own", flagWriteChemistry, about.profile.Name)
	case t.packFile != "" && sameFile(t.cellsFile, t.packFile):
		return t, fmt.Errorf("--%s %s: chemistry and pack cannot share a file", flagWritePack, t.packFile)
	case t.name == "":
		return t, fmt.Errorf("--%s: give the fitted cell a name of letters and digits", flagName)
	case taken:
		return t, fmt.Errorf("--%s %s: there is such a chemistry already; give another name", flagName, t.name)
	}
	return t, nil
}

// packTable returns the lines for a setup file in a folder, with the fitted cell
// when that is written too.
func (f *fitted) packTable(folder string) (string, error) {
	var b strings.Builder
	var err error
	if f.cellsFile == "" {
		err = f.WritePack(&b)
	} else {
		err = f.WriteOwnPack(&b, f.name, relative(folder, f.cellsFile))
	}
	return b.String(), err
}

// writeFiles writes what was asked for: all of it or nothing, and never half a
// file.
func (f *fitted) writeFiles() error {
	for i := range f.outputs {
		switch out := &f.outputs[i]; out.flag {
		case flagWriteChemistry:
			out.write = f.writeCell
		case flagWritePack:
			out.write = func(w io.Writer) error {
				text, err := f.packTable(filepath.Dir(resolved(f.packFile)))
				if err != nil {
					return plainly(err)
				}
				return writeMarked(w, byFit, text)
			}
		}
	}
	return writeOutputs(f.outputs, f.read, f.force)
}

// plainly drops the name of the package that an error comes from.
func plainly(err error) error { return errors.New(strings.TrimPrefix(err.Error(), "cellfit: ")) }

// writeCell writes the fitted cell if packcheck would read it again.
func (f *fitted) writeCell(w io.Writer) error {
	var text bytes.Buffer
	if err := f.WriteChemistry(&text, f.name); err != nil {
		return plainly(err)
	}
	if _, err := f.set.Extend(bytes.NewReader(text.Bytes()), f.cellsFile); err != nil {
		return fmt.Errorf("the logs led to a cell that cannot be, so nothing was written: %w", err)
	}
	return writeMarked(w, byFit, text.String())
}

// chemistryName is what a setup calls the fitted cell: the given name, or that
// of the file, in the letters that names may have.
func chemistryName(given, file string) string {
	if given == "" && file != "" {
		base := filepath.Base(file)
		given = strings.TrimSuffix(base, filepath.Ext(base))
	}
	name := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '-':
			return r
		case r >= 'A' && r <= 'Z':
			return r - 'A' + 'a'
		}
		return '-'
	}, given)
	return strings.Trim(name, "-")
}

// relative is the name of the chemistry file as seen from a folder.
func relative(folder, cells string) string {
	if rel, err := filepath.Rel(resolved(folder), resolved(cells)); err == nil {
		return filepath.ToSlash(rel)
	}
	return resolved(cells)
}
