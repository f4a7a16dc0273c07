// Command findings makes the table of everything that packcheck can find, out of
// the code that finds it, and puts it into DEVELOPERS.md:
//
//	go run ./internal/policy/cmd/findings
//
// Run it at the root of the module after adding or changing a finding; a test
// compares the table with the code.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
)

// document is the file that holds the table, and the lines that it stands between.
const (
	document = "DEVELOPERS.md"
	begins   = "<!-- made by go run ./internal/policy/cmd/findings -->\n"
	ends     = "<!-- end of what is made -->\n"
)

func main() {
	if err := renew(os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "findings:", err)
		os.Exit(1)
	}
}

// renew writes the table into the document.
func renew(w io.Writer) error {
	old, err := os.ReadFile(document)
	if err != nil {
		return err
	}
	made, err := table(".")
	if err != nil {
		return err
	}
	text, err := replaced(string(old), made)
	if err != nil {
		return err
	}
	if err := os.WriteFile(document, []byte(text), 0o644); err != nil {
		return err
	}
	_, err = fmt.Fprintf(w, "%s: %d lines\n", document, strings.Count(made, "\n"))
	return err
}

// replaced returns the document with what stands between the two lines replaced.
func replaced(text, made string) (string, error) {
	before, rest, found := strings.Cut(text, begins)
	_, after, ended := strings.Cut(rest, ends)
	if !found || !ended {
		return "", errors.New(document + " does not have the two lines between which the table stands")
	}
	return before + begins + made + ends + after, nil
}
