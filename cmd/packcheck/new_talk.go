package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"time"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// interimDraws is how many vehicles stand behind a verdict in between: few, so
// that nobody waits. The page at the end has the usual number.
const interimDraws = 128

// longestReply is the longest answer that is read, in bytes.
const longestReply = 4096

// talk is one conversation: plain lines, one question at a time, nothing that a
// screen reader or a pipe could stumble over.
type talk struct {
	in   *bufio.Scanner
	out  io.Writer
	echo bool // nobody sees what is typed: a pipe

	base   *setup.Setup      // empty, in the folder of the file that was gone on from
	given  map[string]string // keys and their texts, as setup.Of takes them
	passed map[string]bool   // questions that nobody could answer
	past   []moment          // for going back
	at     int               // which of these is asked again; behind the last, a new one
	a      *answer.Assessment
	known  map[string]string // what a was computed from
	told   string            // the verdict told last
	judged bool              // the first questions are behind
	urged  bool              // it was said that the label is needed
	over   bool              // the input has ended
	begun  bool              // it was said how to answer
	ended  bool              // somebody has said stop
}

// moment is a question that is behind, how things stood before it, and what its
// answer has set.
type moment struct {
	asked  interview.Question
	given  map[string]string
	passed map[string]bool
	sets   map[string]string
}

func newTalk(in io.Reader, out io.Writer) *talk {
	lines := bufio.NewScanner(in)
	lines.Buffer(make([]byte, 0, 512), longestReply)
	w, isFile := in.(io.Writer)
	return &talk{
		in: lines, out: out, echo: !isFile || !isTerminal(w),
		base: &setup.Setup{Dir: "."}, given: map[string]string{}, passed: map[string]bool{},
	}
}

// errStopped ends a conversation before its end.
var errStopped = errors.New("stopped")

// ask asks until nothing is left to ask, somebody says stop, or the input ends.
func (t *talk) ask() error {
	if t.ended {
		return nil
	}
	if !t.begun {
		t.introduce()
	}
	more := false // what hardly matters is asked too
	for {
		q, ok := t.next()
		if !ok {
			return t.in.Err()
		}
		if t.judged && q.Why == "" && !more {
			t.say("")
			t.say("What is left to ask hardly moves the answer.")
			line, err := t.read("Ask on? Say yes, or leave the line empty for the answer.")
			switch {
			case err != nil:
				return t.in.Err()
			case folded(line) == "back" && t.back():
				continue
			case !isYes(line):
				return nil
			}
			more = true
		}
		switch err := t.put(q); {
		case errors.Is(err, errStopped):
			return nil
		case err != nil:
			return err
		}
	}
}

// introduce says how to answer.
func (t *talk) introduce() {
	t.begun = true
	t.say("One thing is asked at a time. Where nobody knows, leave the line empty. ? tells how to look it up, back goes to the question before, stop ends with the answer so far.")
}

// next brings the answer so far up to date and picks the question. The first ones
// are asked in their order, before there is any answer.
func (t *talk) next() (interview.Question, bool) {
	t.judged = false
	if t.again() {
		return t.past[t.at].asked, true
	}
	passed := func(key string) bool { return t.passed[key] }
	list := interview.Next(t.given, nil, passed)
	left := map[string]bool{}
	for _, q := range list {
		left[q.Key] = true
	}
	for _, q := range interview.First() {
		if left[q.Key] {
			return list[0], true
		}
	}
	if !t.hasBattery() {
		if t.urged {
			return interview.Question{}, false
		}
		t.urged = true
		t.say("")
		t.say("At least the volts of the battery are needed: without them there is no answer.")
		delete(t.passed, answer.KeyPackLabel)
		return t.next()
	}
	t.judged = true
	t.judge()
	if list = interview.Next(t.given, t.a, passed); len(list) == 0 {
		t.say("")
		t.say("Nothing is left to ask.")
		return interview.Question{}, false
	}
	return list[0], true
}

// judge computes the answer so far and tells it where it has changed.
func (t *talk) judge() {
	if t.a != nil && maps.Equal(t.known, t.given) {
		return
	}
	s, err := t.setup()
	if err != nil {
		return
	}
	a, err := packcheck.AssessWith(context.Background(), s, packcheck.Options{Draws: interimDraws})
	if err != nil {
		t.say("These figures cannot be computed together: " + err.Error() + ". Go back and look at the last ones once more.")
		return
	}
	t.a, t.known = a, maps.Clone(t.given)
	lines, err := report.Lead(a)
	if told := lines[0] + "\n" + lines[1]; err == nil && told != t.told {
		t.told = told
		t.say("")
		t.say("So far " + lines[0])
		t.say(lines[1])
	}
}

// put asks one question until it is answered, passed or left.
func (t *talk) put(q interview.Question) error {
	t.say("")
	t.say(fmt.Sprintf("%d. %s", t.at+1, q.Asks))
	if q.Why != "" {
		t.say("Asked because: " + q.Why + ".")
	}
	for i, c := range q.Choices {
		t.say(fmt.Sprintf("  %d: %s", i+1, c.Says))
	}
	stands := q.InWords(t.given)
	if open := len(q.Choices) == 0 || q.Choices[0].Value == interview.Same; open || len(q.Fills) > 0 {
		t.say("  For example: " + q.Example)
	}
	if stands != "" {
		t.say("  Left empty: it stays " + stands)
		t.say("  " + forget + ": nobody knows any more")
	} else {
		t.say("  Left empty: " + q.Usual)
	}
	for {
		line, err := t.read("")
		switch {
		case errors.Is(err, io.EOF):
			return errStopped
		case err != nil:
			return err
		}
		switch folded(line) {
		case "?", "how", "help":
			t.say(q.How)
			if len(q.Choices) > 0 {
				t.say("For example: " + q.Example)
			}
			continue
		case "back":
			if !t.back() {
				t.say("This is the first question.")
				continue
			}
			return nil
		case "stop", "quit", "exit":
			return errStopped
		}
		if stands != "" && (interview.Unknown(line) || folded(line) == forget) {
			t.leave(q, folded(line) == forget)
			return nil
		}
		sets, others, err := t.understood(q, line)
		if err != nil {
			text := "Not understood: " + err.Error() + "."
			if n := len(q.Choices); n > 1 {
				text += fmt.Sprintf(" A number from 1 to %d will do.", n)
			}
			t.say(text + " An empty line goes on.")
			continue
		}
		t.done(q, sets)
		t.given = others
		t.take(q, sets, interview.Unknown(line))
		return nil
	}
}

// forget takes an answer out that stood in the file.
const forget = "forget"

// leave keeps what stands there, or takes it out.
func (t *talk) leave(q interview.Question, out bool) {
	if !out {
		var sets map[string]string
		again := t.again()
		if again {
			sets = t.past[t.at].sets
		}
		t.done(q, sets)
		if !again { // the part of it that is open is not asked for ever
			t.passed[q.Key] = true
		}
		t.say("It stays.")
		return
	}
	left := without(t.undone(), q)
	t.done(q, nil)
	t.given = left
	t.passed[q.Key] = true
	t.say("Taken out.")
}

// done puts a question behind; one that was asked again keeps its place.
func (t *talk) done(q interview.Question, sets map[string]string) {
	if t.again() {
		t.past[t.at].sets = sets
		delete(t.passed, q.Key)
	} else {
		t.past = append(t.past, moment{q, maps.Clone(t.given), maps.Clone(t.passed), sets})
	}
	t.at = len(t.past)
}

// without is what is given but for the answer to a question.
func without(given map[string]string, q interview.Question) map[string]string {
	out := maps.Clone(given)
	for _, key := range q.Keys() {
		delete(out, key)
	}
	return out
}

// understood reads a reply beside what is given, and returns what it sets and what
// stays. It takes the place of the answer that somebody went back to; where an earlier
// answer to the same question contradicts it, that goes.
func (t *talk) understood(q interview.Question, line string) (sets, stay map[string]string, err error) {
	stay = t.undone()
	line = interview.Dated(q, line, stay, time.Now())
	if sets, err = interview.FillIn(t.base, q, line, stay); err == nil {
		return sets, stay, nil
	}
	if alone := without(stay, q); len(alone) < len(stay) {
		if sets, again := interview.FillIn(t.base, q, line, alone); again == nil {
			return sets, alone, nil
		}
	}
	if t.again() { // it may stand beside what was told before it
		before := t.past[t.at]
		if sets, again := interview.FillIn(t.base, q, line, before.given); again == nil {
			t.say("What was told after it does not go with that, and is asked again.")
			t.given, t.passed, t.past = before.given, before.passed, t.past[:t.at]
			return sets, maps.Clone(before.given), nil
		}
	}
	return nil, nil, err
}

// take keeps an answer and says how it was understood.
func (t *talk) take(q interview.Question, sets map[string]string, unknown bool) {
	if len(sets) == 0 {
		t.passed[q.Key] = true
		if unknown {
			t.say("Passed.")
		} else {
			t.say("Taken: " + q.Usual + ".")
		}
		return
	}
	maps.Copy(t.given, sets)
	if text := t.reading(q.Key); text != "" {
		t.say("Read as: " + text + ".")
		return
	}
	text := "Taken: " + q.InWords(sets) + "."
	if sets[q.Key] == "" && slices.Contains(t.openKeys(), q.Key) {
		text += " The rest is still open."
	}
	t.say(text)
	if young := interview.TooYoung(sets); young != "" {
		t.say(young + " The questions go on; stop ends them.")
	}
}

// openKeys are the keys that may still be asked for.
func (t *talk) openKeys() []string {
	var keys []string
	for _, q := range interview.Next(t.given, nil, func(key string) bool { return t.passed[key] }) {
		keys = append(keys, q.Key)
	}
	return keys
}

// reading says what a label was understood to mean; empty for any other key.
func (t *talk) reading(key string) string {
	if pack := interview.LabelRead(t.base, key, t.given); pack != nil {
		return pack.Reading
	}
	return ""
}

// back goes to the question before, whose answer stands until another takes its place;
// false where there is none.
func (t *talk) back() bool {
	if t.at == 0 {
		return false
	}
	t.at--
	return true
}

// undone is what is given, without the answer that somebody went back to.
func (t *talk) undone() map[string]string {
	out := maps.Clone(t.given)
	if !t.again() {
		return out
	}
	for key := range t.past[t.at].sets {
		delete(out, key)
		if text, was := t.past[t.at].given[key]; was {
			out[key] = text
		}
	}
	return out
}

// again reports whether a question is asked that somebody went back to.
func (t *talk) again() bool { return t.at < len(t.past) }
