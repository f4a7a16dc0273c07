package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// output is a file that was asked for beside the report.
type output struct {
	flag, target string
	write        func(io.Writer) error
	ours         func(name string, about io.Reader) bool // whether a file is one that packcheck wrote; about is the new one
	overInput    bool                                    // with --overwrite even the setup file itself
}

// writeOutputs writes the files that were asked for: all of them or none, and
// never half a file. What packcheck did not write is written over only with force.
func writeOutputs(list []output, input string, force bool) error {
	var pending pendingFiles
	defer func() { pending.drop() }()
	for _, out := range list {
		if err := out.checkTarget(input, force, pending); err != nil {
			return err
		}
		p, err := fill(out.target, out.write)
		if err != nil {
			return fmt.Errorf("--%s: %w", out.flag, err)
		}
		pending = append(pending, p)
		if p.temp != "" && !force {
			if err := out.checkOld(p); err != nil {
				return err
			}
		}
	}
	return pending.keep()
}

// checkTarget refuses names that would cost somebody a file.
func (out *output) checkTarget(input string, force bool, others pendingFiles) error {
	switch {
	case out.target == "" || out.target == stdinName:
		return fmt.Errorf("--%s needs a file name (the report has standard output)", out.flag)
	case input != stdinName && input != "" && sameFile(out.target, input) && !(force && out.overInput):
		return fmt.Errorf("--%s %s would overwrite the setup file", out.flag, out.target)
	}
	for _, o := range others {
		if sameFile(out.target, o.target) {
			return fmt.Errorf("--%s %s: two outputs cannot share a file", out.flag, out.target)
		}
	}
	return nil
}

// checkOld refuses to write over what packcheck did not write.
func (out *output) checkOld(p *pendingFile) error {
	if _, err := os.Stat(p.path); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	fresh, err := os.Open(p.temp)
	if err != nil {
		return err
	}
	defer fresh.Close()
	if out.ours(p.path, fresh) {
		return nil
	}
	return fmt.Errorf("--%s %s: there is such a file, and packcheck did not write it as it is now; give another name, move it away, or say --%s",
		out.flag, out.target, flagOverwrite)
}
