// Package interview asks for a setup in plain words: which questions there are,
// which of them is the most useful next, and what an answer means.
//
// For most uses ask [First], then again and again the first of [Next], and put
// what [Fill] returns into the map from key to text that setup.Of takes:
//
//	for _, q := range interview.Next(given, a, passed) {
//		sets, err := interview.Fill(q, text, given)
//
// It prints nothing and knows no terminal: a command and a page ask the same
// questions in the same words. What stands under How is also what a report
// advises to measure.
package interview

import (
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/later"
)

// Question asks for one thing that somebody at home can know or find out.
type Question struct {
	Key     string        // of the setup that it fills in, "original.pack.label"
	Asks    string        // the question, one plain sentence
	How     string        // how to look it up or measure it
	Example string        // one answer that is understood
	Choices []Choice      // answers to choose from; any other text that is right is taken too
	Usual   string        // what is taken when nobody knows, in words
	Fills   []string      // further keys that an answer may fill in
	Effort  Effort        // of finding it out
	Hard    bool          // not for who stands beside it: a maker or a sheet tells, or parts come off
	Stands  string        // where it stands in a setup file: "mass under [rider]"
	Drives  bool          // the vehicle has to run for it
	Why     string        // set by [Next]: why it is asked now; empty where the answer so far does not hang on it
	Mends   answer.Change // what a finding may ask for that is there already
	Decides bool          // set by [Next]: the verdict so far may hang on it
	Presses bool          // set by [Next]: without it the answer is of another vehicle
}

// Keys are all keys of the setup that an answer may fill in.
func (q *Question) Keys() []string { return append([]string{q.Key}, q.Fills...) }

// Choice is one answer to choose.
type Choice struct {
	Value string // what [Fill] takes for it
	Says  string // in words
}

// Effort says how hard something is to find out.
type Effort int

// The efforts, easiest first.
const (
	Look    Effort = iota + 1 // eyes are enough
	Tool                      // a tape, a clock, a bathroom or luggage scale
	Meter                     // an electrical meter
	Project                   // an afternoon
)

// Two answers that mean more than their words.
const (
	Same    = "same" // the battery that it came with is today's
	Nothing = ""     // nothing to fill in
)

// First returns the questions to begin with, in order.
func First() []Question {
	var out []Question
	for _, r := range questions.Get() {
		if r.first {
			out = append(out, r.Question)
		}
	}
	return out
}

// All returns every question there is, in the order in which the list has them.
func All() []Question {
	var out []Question
	for _, r := range questions.Get() {
		out = append(out, r.Question)
	}
	return out
}

// ByKey returns, for every key that can be found out, the question that does it:
// the one asked for it, else one that fills it in besides, else one that makes it
// known all the same. It is one map for all, and not to be changed.
func ByKey() map[string]Question { return byKey.Get() }

// byKey is the list, made once.
var byKey = later.Value[map[string]Question]{Make: func() map[string]Question {
	out := map[string]Question{}
	all := questions.Get()
	for _, keys := range []func(*row) []string{
		func(r *row) []string { return []string{r.Key} },
		func(r *row) []string { return r.Fills },
		func(r *row) []string { return r.settles },
	} {
		for i := range all {
			for _, key := range keys(&all[i]) {
				if _, has := out[key]; !has {
					out[key] = all[i].Question
				}
			}
		}
	}
	return out
}}

// Unknown reports whether an answer says that nobody knows.
func Unknown(text string) bool {
	switch strings.ToLower(strings.Trim(strings.Join(strings.Fields(text), " "), " .!?")) {
	case "", "don't know", "dont know", "do not know", "i don't know", "i dont know", "i do not know", "no idea", "unknown", "not known", "not sure", "skip", "dunno", "idk",
		"no clue", "not a clue", "unsure", "i'm not sure", "im not sure", "can't tell", "cant tell", "cannot tell", "can't say", "i forgot", "forgot", "n/a", "na", "-", "--", "pass", "next":
		return true
	}
	return false
}
