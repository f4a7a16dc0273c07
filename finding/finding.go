// Package finding holds the one small type in which every package of
// packcheck says what it judged: what was found, the limit it was held
// against, where that limit comes from and what to do about it.
//
// The package sits at the very bottom: it imports nothing of this module, and
// every physics package may import it.
package finding

import (
	"cmp"
	"fmt"
	"slices"
)

// Level says how bad a finding is. The zero value is Fine.
type Level int

// The levels, mildest first, so that a larger value is a worse one.
const (
	Fine     Level = iota // nothing to do
	Watch                 // works, but keep an eye on it
	FixFirst              // do not ride before this is changed
	Danger                // somebody may get hurt
)

// levelNames is indexed by Level.
var levelNames = [...]string{"fine", "watch", "fix first", "danger"}

// String returns the level as reports print it: "fine", "watch", "fix first"
// or "danger".
func (l Level) String() string {
	if l < Fine || l > Danger {
		return fmt.Sprintf("level %d", int(l))
	}
	return levelNames[l]
}

// MarshalText makes JSON carry the level's printed name.
func (l Level) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads a printed name back.
func (l *Level) UnmarshalText(text []byte) error {
	i := slices.Index(levelNames[:], string(text))
	if i < 0 {
		return fmt.Errorf("finding: unknown level %q (want fine, watch, fix first or danger)", text)
	}
	*l = Level(i)
	return nil
}

// Finding is one judgement.
//
// Found and Limit are in Unit, one of the SI units of this module ("V", "A",
// "Ohm", "degC", "s", "h", "m", "m/s", "kg", "N", "W", "A2s", "x" for a ratio,
// "" where no number applies). Source is the ID of the [Source] of the limit.
type Finding struct {
	Code   string  `json:"code"`   // stable, lower case with hyphens, never reused
	Level  Level   `json:"level"`  // how bad
	Title  string  `json:"title"`  // one plain sentence
	Found  float64 `json:"found"`  // what this setup has, in Unit
	Limit  float64 `json:"limit"`  // what it was held against, in Unit
	Unit   string  `json:"unit"`   // unit of Found and Limit
	Source string  `json:"source"` // ID of the source of the limit
	Advice string  `json:"advice"` // what to do; empty when there is nothing to do
	Topic  string  `json:"topic"`  // part of the report it belongs to; set where findings are gathered
}

// Source is where a constant, a limit or a table row comes from.
type Source struct {
	ID    string `json:"id"`    // short, lower case with hyphens
	Text  string `json:"text"`  // title, edition or year, clause, table or page
	Known string `json:"known"` // "copy", "primary", "memory", "computed", "common practice" ...
}

// Worst returns the worst level among the findings, Fine when there are none.
func Worst(findings []Finding) Level {
	worst := Fine
	for _, f := range findings {
		worst = max(worst, f.Level)
	}
	return worst
}

// Sort orders findings worst first, then by code, then by title, so that the
// same findings always print in the same order.
func Sort(findings []Finding) {
	slices.SortStableFunc(findings, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(b.Level, a.Level),
			cmp.Compare(a.Code, b.Code),
			cmp.Compare(a.Title, b.Title),
		)
	})
}
