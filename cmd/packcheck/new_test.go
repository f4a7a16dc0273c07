package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/packcheck/setup"
)

// What cannot be written is shown, so that nobody has to answer it all again.
func TestAnswersThatCannotBeKeptAreShown(t *testing.T) {
	taken := filepath.Join(t.TempDir(), "taken.toml")
	if err := os.WriteFile(taken, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := setup.Of(map[string]string{"pack.label": "12 V 7 Ah"})
	if err != nil {
		t.Fatal(err)
	}
	var said strings.Builder
	talk := newTalk(strings.NewReader(""), &said)
	if err := talk.keep(s, answers{name: taken}); err == nil {
		t.Error("a file that could not be written is no error")
	}
	if !strings.Contains(said.String(), `label = "12 V 7 Ah"`) {
		t.Errorf("the answers are lost: %q", said.String())
	}
	if text, _ := os.ReadFile(taken); string(text) != "mine" {
		t.Errorf("somebody's file has become %q", text)
	}
}

func TestNoAnswerBreaksTheTalk(t *testing.T) {
	for name, c := range map[string]struct {
		in   string
		code int
		err  string
	}{
		"control characters": {"12 V\x1b[2J 7 Ah\x07\n\x00\n\xff\xfe\nstop\n", exitFine, ""},
		"an endless line":    {strings.Repeat("9", 100_000), exitInput, "a line has at most"},
		"line ends of two kinds": {
			"12 V 7 Ah\r\n12\r\nstop\r\n", exitFine, "",
		},
	} {
		var out, errs strings.Builder
		code := run([]string{"new"}, strings.NewReader(c.in), &out, &errs)
		if code != c.code || !strings.Contains(errs.String(), c.err) || strings.ContainsAny(errs.String(), "\x1b\x07\x00\r") {
			t.Errorf("%s: code %d, %q", name, code, errs.String())
		}
	}
}

// Whoever follows every question to the end is not asked in circles, and the
// questions before have not changed when somebody goes back.
func TestGoingBackUndoesOneAnswer(t *testing.T) {
	var said strings.Builder
	talk := newTalk(strings.NewReader("12 V 7 Ah\n12\n5\nback\nback\n24 V\none\n6\nstop\n"), &said)
	if err := talk.ask(); err != nil {
		t.Fatal(err)
	}
	if talk.given["vehicle.design_voltage"] != "24 V" || talk.given["rider.age"] != "6 years" || len(talk.given) != 3 {
		t.Errorf("given: %v", talk.given)
	}
	for _, line := range []string{"1. What is printed", "2. How many volts", "3. How old", "3. Is one such battery used"} {
		if !strings.Contains(said.String(), "\n"+line) {
			t.Errorf("%q is not asked: %q", line, said.String())
		}
	}
}
