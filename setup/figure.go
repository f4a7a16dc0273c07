package setup

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// Figure is one number that the engine needs, with its spread and where it
// comes from. Two figures with the same Key are one unknown: moving one moves
// the other.
type Figure struct {
	answer.Range        // in the unit that [Figure.Unit] names
	Key          string // "pack.capacity", "original.pack.capacity"
	Known        bool   // false: nothing is known and nothing is assumed; the Range is zero
	Assumed      bool   // a default stands in for what was not given
	Why          string // how it came about, one plain sentence; empty when it was given as it is
	Source       string // ID for [Parts.Source]; empty when it was given as it is
	System       answer.System
	Law          Law // how it is spread between its ends

	kind quantity.Kind
	mix  *mixture // where it is of one of several kinds, and its ends do not say how often
	slot int      // place in a point of the World, from 1; 0 = the figure stands still
}

// Uncertain reports whether the figure can stand at more than one value.
func (f *Figure) Uncertain() bool { return f.Known && !f.IsExact() }

// String prints the figure in both systems, the user's first; "unknown" when
// nothing is known.
func (f *Figure) String() string {
	if !f.Known {
		return "unknown"
	}
	return quantity.FormatRange(f.kind, f.Range, f.System)
}

// printed returns one value of the figure as people write it.
func (f *Figure) printed(value float64) string {
	if f.kind == quantity.NoKind {
		return quantity.Digits(value, 3)
	}
	return quantity.FormatBoth(f.kind, value, f.System)
}

// Choice is one word that the engine needs.
type Choice struct {
	Key     string
	Text    string // empty when not known
	Known   bool
	Assumed bool
	Why     string
	Source  string
}

// Assumption is one default that stands in for something not given.
type Assumption struct {
	Key    string
	Value  string // printed, with its units in both systems
	Why    string // one plain sentence
	Source string // ID for [Parts.Source]
	Firm   bool   // it follows from what was told by its usual reading: nothing rests on a guess for it
}

// Pick chooses one value of a figure; it is how a caller says which of the
// possible vehicles to compute.
type Pick func(*Figure) float64

// Likely is the [Pick] of every figure's likely value.
func Likely(f *Figure) float64 { return f.Range.Likely }

// Forms of fuses that others ask for by name: rows of the fuse table.
const (
	UsualFuseForm = "small blade"        // taken where no form was given
	BreakerForm   = "auto-reset-breaker" // opens and closes again by itself
)

// Unit returns the unit in which the figure is held, in ASCII; empty for plain
// numbers and shares.
func (f *Figure) Unit() string { return f.kind.Unit() }
