package answer

import (
	"fmt"
	"slices"
	"strings"
)

// Level says how bad a finding is. The zero value is Fine.
type Level int

// The levels, mildest first, so that a larger value is a worse one.
const (
	Fine     Level = iota // nothing to do
	Watch                 // wear and habits: works, but keep an eye on it
	FixFirst              // soon breaks, or cannot do what was asked: do not ride before this is changed
	Danger                // a child or a house may be hurt
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
		return fmt.Errorf("answer: unknown level %q (want fine, watch, fix first or danger)", text)
	}
	*l = Level(i)
	return nil
}

// Harm says who or what suffers when a finding is ignored. The zero value is
// Wear.
type Harm int

// The harms, mildest first.
const (
	Wear  Harm = iota // something ages sooner, or a habit is called for
	Part              // a part of vehicle, pack or charger breaks, or it cannot do what was asked
	House             // fire, or what a fire comes from
	Child             // somebody may be hurt on or by the vehicle
)

// harmNames is indexed by Harm.
var harmNames = [...]string{"wear", "part", "house", "child"}

// String returns the harm in a word: "wear", "part", "house" or "child".
func (h Harm) String() string {
	if h < Wear || h > Child {
		return fmt.Sprintf("harm %d", int(h))
	}
	return harmNames[h]
}

// AtRisk says who or what suffers, where it is more than the vehicle: "child" or "fire";
// empty otherwise.
func (h Harm) AtRisk() string {
	switch h {
	case Child:
		return "child"
	case House:
		return "fire"
	}
	return ""
}

// MarshalText makes JSON carry the harm's printed name.
func (h Harm) MarshalText() ([]byte, error) { return []byte(h.String()), nil }

// UnmarshalText reads a printed name back.
func (h *Harm) UnmarshalText(text []byte) error {
	i := slices.Index(harmNames[:], string(text))
	if i < 0 {
		return fmt.Errorf("answer: unknown harm %q (want wear, part, house or child)", text)
	}
	*h = Harm(i)
	return nil
}

// Certainty says in how many of the vehicles that the setup may mean a finding
// holds. The zero value is Plain.
type Certainty int

// The certainties.
const (
	Plain    Certainty = iota // in nine of ten or more
	Likely                    // in half or more
	Possible                  // in a tenth or more; told one level milder
	Rare                      // in one of fifty or more, told because a child or a house may be hurt
)

// certaintyNames is indexed by Certainty.
var certaintyNames = [...]string{"plain", "likely", "possible", "rare"}

// String returns the certainty in a word.
func (c Certainty) String() string {
	if c < Plain || c > Rare {
		return fmt.Sprintf("certainty %d", int(c))
	}
	return certaintyNames[c]
}

// Adverb is the word in front of what holds so surely: "likely", "possibly" or "seldom",
// empty for Plain.
func (c Certainty) Adverb() string {
	switch c {
	case Likely:
		return "likely"
	case Possible:
		return "possibly"
	case Rare:
		return "seldom"
	}
	return ""
}

// Hedge is that word in front of a sentence, "Possibly: "; empty for Plain.
func (c Certainty) Hedge() string {
	if word := c.Adverb(); word != "" {
		return strings.ToUpper(word[:1]) + word[1:] + ": "
	}
	return ""
}

// MarshalText makes JSON carry the certainty's printed name.
func (c Certainty) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText reads a certainty's word back.
func (c *Certainty) UnmarshalText(text []byte) error {
	i := slices.Index(certaintyNames[:], string(text))
	if i < 0 {
		return fmt.Errorf("answer: unknown certainty %q (want plain, likely, possible or rare)", text)
	}
	*c = Certainty(i)
	return nil
}
