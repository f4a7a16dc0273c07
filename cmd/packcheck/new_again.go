package main

import (
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/setup"
)

// begin goes on from the file where it is a setup already, and refuses one that is
// neither that nor a free name.
func (t *talk) begin(file *answers) error {
	t.base.AnyFolder = file.anyFolder
	if file.name == "" {
		return nil
	}
	if info, err := os.Stat(file.name); err != nil || !info.Mode().IsRegular() {
		return file.check()
	}
	s, err := setup.LoadWith(file.name, setup.Changes{AnyFolder: file.anyFolder})
	if err == nil && len(s.Values()) > 0 {
		_, err = s.Parts()
	}
	if faults := (setup.Faults{}); errors.As(err, &faults) {
		err = nil // that there is no battery yet is none
		if left := setup.BesideNoBattery(faults); left != nil {
			err = left
		}
	}
	if err != nil {
		return withCode(exitInput, fmt.Errorf("%w\n%s cannot be gone on from: put that right, or give another name", err, file.name))
	}
	file.own = true
	t.base.Name, t.base.Dir = s.Name, s.Dir
	t.given = s.Values()
	return t.goOn(file)
}

// goOn shows what the file says and asks for it again where somebody wants that.
func (t *talk) goOn(file *answers) error {
	var known []interview.Question
	left := maps.Clone(t.given)
	if len(left) > 0 {
		t.say("Going on from " + file.name + ". It says:")
	}
	for _, q := range interview.All() {
		if text := q.InWords(t.given); text != "" {
			known = append(known, q)
			t.say("  " + q.Beside(t.given).Asks + " " + text)
			for _, key := range q.Keys() {
				delete(left, key)
			}
		}
	}
	for _, key := range slices.Sorted(maps.Keys(left)) {
		t.say("  " + key + ": " + left[key])
	}
	if err := file.check(); err != nil {
		t.say("The file stays as it is, because packcheck did not write it as it is now: at the end another name is asked for, unless --" + flagOverwrite + " was said.")
		file.name = ""
	}
	if len(known) == 0 {
		return nil
	}
	t.say("")
	line, err := t.read("Ask for any of that again? Say yes to go through it, or leave the line empty to go on.")
	if err != nil && !errors.Is(err, io.EOF) {
		return withCode(exitInput, err)
	}
	if !isYes(line) {
		return nil
	}
	t.introduce()
	for t.at < len(known) {
		q := known[t.at]
		err := t.put(q)
		if q.InWords(t.given) != "" { // what of it is open is asked when its turn comes
			delete(t.passed, q.Key)
		}
		switch {
		case errors.Is(err, errStopped):
			t.ended = true
			return nil
		case err != nil:
			return withCode(exitInput, err)
		}
	}
	return nil
}

// setup is what was answered so far as a setup, in the folder of the file that was
// gone on from.
func (t *talk) setup() (*setup.Setup, error) { return t.base.With(t.given) }

// hasBattery reports whether enough is known of the battery for an answer.
func (t *talk) hasBattery() bool {
	return t.given[answer.KeyPackLabel] != "" || t.given["pack.cells_in_series"] != ""
}
