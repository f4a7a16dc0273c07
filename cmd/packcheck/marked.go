package main

import (
	"bytes"
	"errors"
	"fmt"
	"hash/crc32"
	"io"
	"io/fs"
	"os"
)

// What writes marked files.
const (
	byFit   = "fit"
	bySetup = "--" + flagWriteSetup
)

// mark is the first line of every TOML file that packcheck writes. The sum of what
// follows tells whether somebody has changed the file since, or made it a part of
// their own.
func mark(by string, text []byte) string {
	return fmt.Sprintf("# Written by packcheck %s (%08x), which writes over it for as long as nobody changes it.\n", by, crc32.ChecksumIEEE(text))
}

// writeMarked writes a file that may be written over later.
func writeMarked(w io.Writer, by, text string) error {
	_, err := io.WriteString(w, mark(by, []byte(text))+text)
	return err
}

// marked reports whether a file is as it was written.
func marked(name, by string) (bool, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return false, err
	}
	first, rest, _ := bytes.Cut(text, []byte{'\n'})
	return string(first)+"\n" == mark(by, rest), nil
}

// replaceable says why a file must not be written over: it is neither new nor as
// fit wrote it. What is no ordinary file, such as a pipe, has nothing to lose.
func replaceable(name string) error {
	switch info, err := os.Stat(name); {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return nil
	}
	switch is, err := marked(name, byFit); {
	case err != nil:
		return err
	case !is:
		return errors.New("there is such a file, and packcheck did not write it as it is now; give another name, or move it away")
	}
	return nil
}
