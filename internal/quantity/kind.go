package quantity

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
)

// Kind says what sort of quantity a number is. The zero value is no kind.
type Kind int

// The kinds, each with the unit its numbers are held in.
const (
	NoKind          Kind = iota
	Voltage              // V
	Current              // A
	Resistance           // Ohm
	Charge               // Ah
	Energy               // Wh
	Power                // W
	Mass                 // kg
	Length               // m
	Area                 // mm2
	Gauge                // AWG number; 1/0 is 0, 2/0 is -1 and so on
	Temperature          // degC
	Fraction             // 0 to 1
	Grade                // rise per run
	Duration             // s
	Speed                // m/s
	RotationalSpeed      // rad/s
	TorqueConstant       // N m/A, the same number as V s/rad
	Inertia              // kg m2
	Inductance           // H
	Capacitance          // F
	Force                // N
	Age                  // years
	Ratio                // turns in per turn out
	Count                // whole number
)

// String returns the plain name of the kind, such as "voltage" or "wire area".
func (k Kind) String() string { return k.info().name }

// Unit returns the unit in which numbers of the kind are held, in ASCII; empty
// for fractions, grades, ratios and counts.
func (k Kind) Unit() string { return k.info().held }

// Example returns one well-written text of the kind, such as "7 Ah".
func (k Kind) Example() string { return k.info().example }

// Bounds returns the common sense bounds of the kind in [Kind.Unit]; [Parse]
// refuses what lies outside.
func (k Kind) Bounds() (low, high float64) {
	i := k.info()
	return i.low, i.high
}

// Bare reports whether a number of the kind may stand without a unit.
func (k Kind) Bare() bool { return k.info().bare }

// Known reports whether k is one of the kinds above.
func (k Kind) Known() bool { return k > NoKind && int(k) < len(kinds) }

// KindNamed finds a kind by its plain name; [NoKind] when there is none of it.
func KindNamed(name string) Kind {
	for k := NoKind + 1; k.Known(); k++ {
		if k.String() == name {
			return k
		}
	}
	return NoKind
}

// info returns the kind's row, an empty one for an unknown kind.
func (k Kind) info() *kindInfo {
	if !k.Known() {
		return &kindInfo{name: fmt.Sprintf("kind %d", int(k)), example: "?"}
	}
	return &kinds[k]
}

// kindInfo is all that is known about one kind. The bounds are common sense:
// wide enough for anything near a ride-on vehicle, narrow enough to catch a
// mistaken prefix.
type kindInfo struct {
	name      string // "voltage"
	held      string // unit numbers are held in
	example   string // "12 V"
	low, high float64
	bare      bool // a number alone is understood
	joined    bool // "1 h 30 min" is understood
	units     []unit
}

// System says which family of units a text uses.
type System = answer.System

// The systems, see [answer.System].
const (
	Either    = answer.Either
	Metric    = answer.Metric
	Customary = answer.Customary
)

// Range is a value that is known only between two ends.
type Range = answer.Range

// Written remembers how a person wrote a quantity, so that a report can put
// their units first.
type Written struct {
	Unit   string // the unit as this package spells it, empty for a bare number
	System System
}

// Error says what was read and what would have been right. Both parts are
// plain ASCII apart from what the text itself held.
type Error struct {
	Kind Kind
	Read string // the text, shortened when very long
	Want string // what would be right, with an example
}

// Error returns the one-line form: read "7"; want a charge such as "7 Ah".
func (e *Error) Error() string { return fmt.Sprintf("read %q; want %s", e.Read, e.Want) }

// exampleAt is the kind's example as a number; what cannot be read lies nowhere.
func (k Kind) exampleAt() float64 {
	i := k.info()
	p := parser{kind: k, text: i.example, rest: scan(i.example), low: i.low, high: i.high, example: i.example}
	if r, err := p.whole(); err == nil {
		return r.Likely
	}
	return math.NaN()
}
