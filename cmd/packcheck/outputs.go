package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// output is a file that was asked for beside what is printed.
type output struct {
	flag, target string // flag is empty where the file is what the command is for
	write        func(io.Writer) error
	// ours reports whether a file is one that packcheck wrote and may write over, nil
	// where none is; about is the new one, nil before it is made.
	ours      func(name string, about io.Reader) bool
	overInput bool // with leave to overwrite even what was read
}

// writeOutputs writes the files that were asked for: all of them or none, and
// never half a file. What packcheck did not write is written over only with force.
func writeOutputs(list []output, inputs []string, force bool) error {
	var pending pendingFiles
	defer func() { pending.drop() }()
	for i := range list {
		out := &list[i]
		if err := out.check(inputs, force); err != nil {
			return err
		}
		for _, o := range pending {
			if sameFile(out.target, o.target) {
				return out.refused(errors.New("two outputs cannot share a file"))
			}
		}
		p, err := fill(out.target, out.write)
		if err != nil {
			return out.refused(err)
		}
		pending = append(pending, p)
		if p.temp != "" && !force {
			if err := out.guard(p.temp); err != nil {
				return err
			}
		}
	}
	return pending.keep()
}

// check refuses, before any long work, a name that would cost somebody a file.
func (out *output) check(inputs []string, force bool) error {
	if out.target == "" || out.target == stdinName {
		return out.refused(errors.New("needs a file name"))
	}
	for _, in := range inputs {
		if in != stdinName && in != "" && sameFile(out.target, in) && !(force && out.overInput) {
			return out.refused(errors.New("would overwrite what was read"))
		}
	}
	folder := filepath.Dir(out.target)
	if _, err := os.Stat(folder); err != nil {
		return out.refused(fmt.Errorf("there is no folder %s", folder))
	}
	if info, err := os.Stat(out.target); err == nil && info.IsDir() {
		return out.refused(errors.New("it is a folder"))
	}
	if force {
		return nil
	}
	return out.guard("")
}

// guard refuses to write over what packcheck did not write, or what somebody has
// changed since. Fresh is the new file, where it is made already. What is no
// ordinary file, such as a pipe, has nothing to lose.
func (out *output) guard(fresh string) error {
	if _, err := os.Lstat(out.target); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	path := resolved(out.target)
	info, err := os.Stat(path)
	if err == nil && !info.Mode().IsRegular() {
		return nil
	}
	var about io.Reader
	if fresh != "" {
		f, err := os.Open(fresh)
		if err != nil {
			return out.refused(err)
		}
		defer f.Close()
		about = f
	}
	if err == nil && out.ours != nil && out.ours(path, about) {
		return nil
	}
	return out.refused(fmt.Errorf("there is a file of that name already, and it is not one to write over; give another name, move it away, or say --%s", flagOverwrite))
}

// refused says which file it is about.
func (out *output) refused(err error) error {
	if out.flag == "" {
		return fmt.Errorf("%s: %w", out.target, err)
	}
	if out.target == "" {
		return fmt.Errorf("--%s: %w", out.flag, err)
	}
	return fmt.Errorf("--%s %s: %w", out.flag, out.target, err)
}
