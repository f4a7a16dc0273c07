package main

import (
	"bytes"
	"fmt"
	"hash/crc32"
	"io"
	"os"
	"slices"
)

// What writes marked files.
const (
	byFit      = "fit"
	byNew      = "new"
	byTemplate = "new --" + flagTemplate
	bySetup    = "--" + flagWriteSetup
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

// markedBy reports of a file whether it is as one of them wrote it.
func markedBy(by ...string) func(name string, _ io.Reader) bool {
	return func(name string, _ io.Reader) bool {
		text, err := os.ReadFile(name)
		if err != nil {
			return false
		}
		first, rest, _ := bytes.Cut(text, []byte{'\n'})
		return slices.ContainsFunc(by, func(by string) bool { return string(first)+"\n" == mark(by, rest) })
	}
}
