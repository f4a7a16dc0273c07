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
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// Question asks for one thing that somebody at home can know or find out.
type Question struct {
	Key     string   // of the setup that it fills in, "original.pack.label"
	Asks    string   // the question, one plain sentence
	How     string   // how to look it up or measure it
	Example string   // one answer that is understood
	Choices []Choice // answers to choose from; any other text that is right is taken too
	Usual   string   // what is taken when nobody knows, in words
	Fills   []string // further keys that an answer may fill in
	Effort  Effort   // of finding it out
	Why     string   // set by [Next]: why it is asked now; empty where the answer so far does not hang on it
}

// Choice is one answer to choose.
type Choice struct {
	Value string // what [Read] takes for it
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

// row is a question with when to ask it and what it can settle.
type row struct {
	Question
	first   bool
	instead []string      // keys that answer it as well
	settles []string      // keys that it makes known although it does not fill them in
	change  answer.Change // what a finding may ask for that is there already, if so answered
	when    func(given map[string]string) bool
}

// asked reports whether the question makes sense beside what is given.
func (r *row) asked(given map[string]string) bool { return r.when == nil || r.when(given) }

// First returns the questions to begin with, in order.
func First() []Question {
	var out []Question
	for _, r := range questions() {
		if r.first {
			out = append(out, r.Question)
		}
	}
	return out
}

// All returns every question there is, in the order in which the list has them.
func All() []Question {
	var out []Question
	for _, r := range questions() {
		out = append(out, r.Question)
	}
	return out
}

// For returns the question that finds out a key: the one that fills it in, or one
// that makes it known all the same.
func For(key string) (Question, bool) {
	all := questions()
	for _, fits := range []func(*row) bool{
		func(r *row) bool { return r.Key == key },
		func(r *row) bool { return slices.Contains(r.Fills, key) },
		func(r *row) bool { return slices.Contains(r.settles, key) },
	} {
		for i := range all {
			if fits(&all[i]) {
				return all[i].Question, true
			}
		}
	}
	return Question{}, false
}

// Unknown reports whether an answer says that nobody knows.
func Unknown(text string) bool {
	switch strings.ToLower(strings.Trim(strings.Join(strings.Fields(text), " "), " .!?")) {
	case "", "don't know", "dont know", "do not know", "i don't know", "i dont know", "i do not know", "no idea", "unknown", "not known", "not sure", "skip", "dunno":
		return true
	}
	return false
}
