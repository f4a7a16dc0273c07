package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"unicode"

	"example.org/packcheck/internal/interview"
	"example.org/packcheck/setup"
)

// keep writes the answers to a file and says how to go on with them. Where none
// was named or it cannot be written, it asks for one as long as there is somebody
// to ask.
func (t *talk) keep(s *setup.Setup, file answers) error {
	const heading = "# Answers to packcheck new. packcheck keys lists what else may stand here.\n\n"
	var failed error
	for {
		if file.name != "" {
			folder := filepath.Dir(resolved(file.name))
			failed = file.write(func(w io.Writer) error { return writeSetup(w, s, byNew, heading, folder) })
			if failed == nil {
				t.say("Written to " + file.name + ". Change it as you like, and judge it again with: packcheck " + file.name)
				return nil
			}
			t.say("Not written: " + failed.Error() + ".")
		}
		if t.over {
			break
		}
		t.say("")
		line, err := t.read("A file to keep the answers in? Its name, such as tractor.toml, or an empty line for none.")
		if err != nil {
			break
		}
		if file = (answers{name: strings.TrimSpace(line)}); file.name == "" || unnamed(line) {
			return nil
		}
		if isYes(line) {
			file.name = ""
		}
	}
	if failed != nil {
		t.say("The answers were:")
		fmt.Fprint(t.out, heading)
		if _, err := s.WriteTo(t.out); err != nil {
			return err
		}
	}
	return failed
}

// folded is a reply of one word as it is compared.
func folded(line string) string { return strings.ToLower(strings.Trim(line, " .!")) }

// unnamed reports whether somebody wants no file; a file of that name is asked for by its end.
func unnamed(line string) bool {
	switch folded(line) {
	case "no", "n", "none", "stop", "quit", "exit":
		return true
	}
	return interview.Unknown(line)
}

// isYes reports whether somebody wants it.
func isYes(line string) bool {
	switch folded(line) {
	case "yes", "y", "more":
		return true
	}
	return false
}

// read says what is asked for and reads one line; io.EOF where there is no more.
func (t *talk) read(prompt string) (string, error) {
	if prompt != "" {
		t.say(prompt)
	}
	fmt.Fprint(t.out, "> ")
	if !t.in.Scan() {
		t.over = true
		fmt.Fprintln(t.out)
		if err := t.in.Err(); err != nil {
			return "", fmt.Errorf("cannot read the answer (a line has at most %d characters): %w", longestReply, err)
		}
		return "", io.EOF
	}
	line := strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(t.in.Text(), "?"))
	if t.echo {
		t.say(line)
	}
	return line, nil
}

// say writes one statement, in lines that fit anywhere.
func (t *talk) say(text string) {
	indent := text[:len(text)-len(strings.TrimLeft(text, " "))]
	if strings.TrimSpace(text) == "" {
		fmt.Fprintln(t.out)
		return
	}
	text = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r): // the lines of a verdict are wrapped already
			return ' '
		case unicode.IsPrint(r):
			return r
		}
		return '?'
	}, strings.TrimSpace(text))
	for _, line := range wrapped(text, indent) {
		fmt.Fprintln(t.out, line)
	}
}
