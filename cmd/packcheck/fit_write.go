package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"
)

// packTable returns the lines for a setup file; with a chemistry of its own
// when that has a name.
func (f *fitted) packTable(chemistry, file string) (string, error) {
	var b strings.Builder
	var err error
	if chemistry == "" {
		err = f.WritePack(&b)
	} else {
		err = f.WriteOwnPack(&b, chemistry, file)
	}
	return b.String(), err
}

// writeFiles writes what was asked for: all of it or nothing, and never half a
// file.
func (f *fitted) writeFiles(c *cli.Context, logs []string) error {
	var pending []*pendingFile
	defer func() {
		for _, p := range pending {
			p.drop()
		}
	}()
	cells, pack := c.String(flagWriteChemistry), c.String(flagWritePack)
	name := chemistryName(c.String(flagName), cells)
	if _, taken := f.set.Profile(name); taken && name != "" {
		return fmt.Errorf("--%s %s: there is such a chemistry already; give another name", flagName, name)
	}
	for _, t := range []struct {
		flag  string
		write func(io.Writer) error
	}{
		{flagWriteChemistry, func(w io.Writer) error { return f.WriteChemistry(w, name) }},
		{flagWritePack, func(w io.Writer) error {
			text, err := f.packTable(name, relative(pack, cells))
			if err == nil {
				_, err = io.WriteString(w, text)
			}
			return err
		}},
	} {
		if !c.IsSet(t.flag) {
			continue
		}
		target := c.String(t.flag)
		if err := f.checkFitTarget(t.flag, target, logs, pending); err != nil {
			return err
		}
		p, err := fill(target, t.write)
		if err != nil {
			return fmt.Errorf("--%s: %s", t.flag, strings.TrimPrefix(err.Error(), "cellfit: "))
		}
		pending = append(pending, p)
	}
	for _, p := range pending {
		if err := p.keep(); err != nil {
			return err
		}
	}
	return nil
}

// checkFitTarget refuses names that would cost somebody a file.
func (f *fitted) checkFitTarget(flag, target string, logs []string, others []*pendingFile) error {
	if target == "" || target == stdinName {
		return fmt.Errorf("--%s needs a file name", flag)
	}
	for _, name := range append([]string{f.chemistryFile}, logs...) {
		if name != "" && name != stdinName && sameFile(target, name) {
			return fmt.Errorf("--%s %s would overwrite what was read", flag, target)
		}
	}
	for _, o := range others {
		if sameFile(target, o.target) {
			return fmt.Errorf("--%s %s: chemistry and pack cannot share a file", flag, target)
		}
	}
	return nil
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

// relative is the name of the chemistry file as seen from the pack's.
func relative(pack, cells string) string {
	if rel, err := filepath.Rel(filepath.Dir(resolved(pack)), resolved(cells)); err == nil {
		return filepath.ToSlash(rel)
	}
	return resolved(cells)
}
