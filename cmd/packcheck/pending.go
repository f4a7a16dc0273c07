package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// sameFile reports whether two names lead to one file, which need not exist.
func sameFile(a, b string) bool {
	ia, erra := os.Stat(a)
	ib, errb := os.Stat(b)
	if erra == nil && errb == nil {
		return os.SameFile(ia, ib)
	}
	return resolved(a) == resolved(b)
}

// resolved returns the absolute name with links followed as far as they lead.
func resolved(name string) string {
	if whole, err := filepath.EvalSymlinks(name); err == nil {
		name = whole
	} else if dir, err := filepath.EvalSymlinks(filepath.Dir(name)); err == nil {
		name = filepath.Join(dir, filepath.Base(name))
	}
	if abs, err := filepath.Abs(name); err == nil {
		return abs
	}
	return filepath.Clean(name)
}

// pendingFile is a file that is complete under another name, or a device that
// has been written to and cannot be taken back.
type pendingFile struct {
	target string // the name asked for
	path   string // where links of it lead
	temp   string // where the bytes are; empty when there is nothing to move
	free   bool   // there was no file of the name
}

// fill writes a file beside its target. What is no ordinary file, such as a
// pipe or a terminal, is written to directly.
func fill(target string, write func(io.Writer) error) (*pendingFile, error) {
	p := &pendingFile{target: target, path: resolved(target)}
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(p.path); err == nil {
		switch {
		case info.IsDir():
			return nil, fmt.Errorf("%s is a folder", target)
		case !info.Mode().IsRegular():
			f, err := os.OpenFile(p.path, os.O_WRONLY, 0)
			if err != nil {
				return nil, err
			}
			return p, pour(f, write)
		}
		mode = info.Mode().Perm()
	}
	_, err := os.Lstat(p.path)
	p.free = errors.Is(err, fs.ErrNotExist)
	f, err := os.CreateTemp(filepath.Dir(p.path), ".packcheck-*")
	if err != nil {
		if cause := (&fs.PathError{}); errors.As(err, &cause) { // the made-up name would puzzle
			err = fmt.Errorf("cannot write %s: %w", target, cause.Err)
		}
		return nil, err
	}
	p.temp = f.Name()
	if err := errors.Join(f.Chmod(mode), pour(f, write)); err != nil {
		p.drop()
		return nil, err
	}
	return p, nil
}

// pour writes through a buffer and closes the file.
func pour(f *os.File, write func(io.Writer) error) error {
	w := bufio.NewWriter(f)
	err := write(w)
	if err == nil {
		err = w.Flush()
	}
	return errors.Join(err, f.Close())
}

// keep moves the file to its place.
func (p *pendingFile) keep() error {
	if p.temp == "" {
		return nil
	}
	if p.free { // and must still be: a link is not made over a file
		switch err := os.Link(p.temp, p.path); {
		case err == nil:
			p.drop()
			p.temp = ""
			return nil
		case errors.Is(err, fs.ErrExist):
			return fmt.Errorf("cannot write %s: there is a file of that name by now", p.target)
		}
	}
	if err := os.Rename(p.temp, p.path); err != nil {
		return fmt.Errorf("cannot write %s: %w", p.target, errors.Unwrap(err))
	}
	p.temp = ""
	return nil
}

// drop removes what was not kept.
func (p *pendingFile) drop() {
	if p.temp != "" {
		os.Remove(p.temp)
	}
}

// pendingFiles are files that belong together.
type pendingFiles []*pendingFile

// keep moves the files to their places, as far as that goes.
func (list pendingFiles) keep() error {
	for _, p := range list {
		if err := p.keep(); err != nil {
			return err
		}
	}
	return nil
}

// drop removes what was not kept.
func (list pendingFiles) drop() {
	for _, p := range list {
		p.drop()
	}
}
