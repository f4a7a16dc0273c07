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

// mark is the first line of every file that fit writes. The sum of what follows
// tells whether somebody has changed the file since, or made it a part of their
// own.
func mark(text []byte) string {
	return fmt.Sprintf("# Written by packcheck fit (%08x), which writes over it for as long as nobody changes it.\n", crc32.ChecksumIEEE(text))
}

// writeMarked writes a file that may be written over later.
func writeMarked(w io.Writer, text string) error {
	_, err := io.WriteString(w, mark([]byte(text))+text)
	return err
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
	text, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	first, rest, _ := bytes.Cut(text, []byte{'\n'})
	if string(first)+"\n" != mark(rest) {
		return errors.New("there is such a file, and packcheck did not write it as it is now; give another name, or move it away")
	}
	return nil
}
