package main

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/internal/quantity"
)

// slotSort is how a slot reads a word.
type slotSort int

const (
	measure     slotSort = iota // a quantity with its unit
	word                        // one of some words
	labelSlot                   // what is printed on a battery
	chargerSlot                 // what is printed on a charger
	wireSlot                    // a gauge or an area
	teethSlot                   // "15 teeth"
	motorsSlot                  // "2 motors"
)

// slot is one thing that a question takes.
type slot struct {
	name      string
	sort      slotSort
	kind      quantity.Kind
	low, high float64
	words     []string // of a word; the first stands for all where flag is set
	flag      bool     // its being there says all
	needed    bool
	named     bool // only NAME=WORD fills it
	spread    bool // the question takes a range itself, and is not asked once for each end
	example   string
}

func quantitySlot(name string, kind quantity.Kind, low, high float64) slot {
	return slot{name: name, kind: kind, low: low, high: high, example: kind.Example()}
}

func wordSlot(name string, words ...string) slot {
	return slot{name: name, sort: word, words: words}
}

func flagSlot(name string, words ...string) slot {
	return slot{name: name, sort: word, words: words, flag: true}
}

// reading is what a slot was filled with.
type reading struct {
	value     float64
	low, high float64 // of a quantity typed as a range
	text      string
	gauge     bool // of a wire
}

// open reports whether a range was typed.
func (r reading) open() bool { return r.low < r.high }

// given is what was read, by the names of the slots.
type given map[string]reading

func (g given) has(name string) bool      { _, ok := g[name]; return ok }
func (g given) value(name string) float64 { return g[name].value }
func (g given) text(name string) string   { return g[name].text }

// known is nil where nothing was told.
func (g given) known(name string) *float64 {
	if r, ok := g[name]; ok {
		return &r.value
	}
	return nil
}

// read fills the slots with the words that were typed, those first that are named, and says
// all that is wrong with them.
func (v *verb) read(args []string) (given, []string) {
	got := given{}
	var faults []string
	lost := 0 // words that a slot may have been meant for
	words := v.tokens(args)
	named := func(text string) bool { return strings.Contains(text, "=") }
	for _, text := range slices.Concat(slices.DeleteFunc(slices.Clone(words), func(text string) bool { return !named(text) }), slices.DeleteFunc(words, named)) {
		if fault := v.take(got, text); fault != "" {
			faults = append(faults, fault)
			if !named(text) {
				lost++
			}
		}
	}
	var missing []string
	for i := range v.slots {
		if s := &v.slots[i]; s.needed && !got.has(s.name) {
			missing = append(missing, fmt.Sprintf("ask %s: no %s; want %s", v.name, s.name, s.wants()))
		}
	}
	if len(missing) > lost { // else the words that were not understood say what they should have been
		faults = append(faults, missing...)
	}
	return got, slices.Compact(faults)
}

// take fills the slot that a word belongs to: the one that is named, the one
// that has the word, or the first free one that can read it.
func (v *verb) take(got given, text string) string {
	if name, rest, is := strings.Cut(text, "="); is {
		i := slices.IndexFunc(v.slots, func(s slot) bool { return s.name == fold(name) })
		if i < 0 {
			return fmt.Sprintf("ask %s: read %q; want one of the names %s before the =", v.name, clipped(text), v.takes())
		}
		r, err := v.slots[i].parse(rest)
		if err != nil {
			return fmt.Sprintf("ask %s: %s: read %q; want %s", v.name, v.slots[i].name, clipped(rest), wanted(err, &v.slots[i]))
		}
		if got.has(v.slots[i].name) {
			return fmt.Sprintf("ask %s: read %q; want one %s only", v.name, clipped(text), v.slots[i].name)
		}
		got[v.slots[i].name] = r
		return ""
	}
	if is, want := v.voltsOf(got, text); is {
		return want
	}
	var first error
	var firstSlot *slot
	full := ""
	for i := range v.slots {
		s := &v.slots[i]
		if s.named {
			continue
		}
		r, err := s.parse(text)
		if s.sort == labelSlot && err == nil && v.asks(quantity.Voltage) && plainVolts(text) {
			continue // volts by themselves are a reading where one is asked for
		}
		switch {
		case err == nil && got.has(s.name):
			full = s.name
		case err == nil:
			got[s.name] = r
			return ""
		case first == nil && !got.has(s.name) && (nearly(text, s) || s.sort == labelSlot && likeLabel(text)):
			first, firstSlot = err, s
		}
	}
	switch {
	case firstSlot != nil:
		return fmt.Sprintf("ask %s: read %q; want %s", v.name, clipped(text), wanted(first, firstSlot))
	case full != "":
		return fmt.Sprintf("ask %s: read %q; want one %s only", v.name, clipped(text), full)
	}
	if _, _, err := quantity.Parse(quantity.Duration, text); err == nil && v.name == runtimeVerb {
		return fmt.Sprintf("ask %s: read %q; want no time: how long it lasts is what is answered", v.name, clipped(text))
	}
	if want := v.withUnit(got, text); want != "" {
		return fmt.Sprintf("ask %s: read %q; want %s", v.name, clipped(text), want)
	}
	return fmt.Sprintf("ask %s: read %q; want %s", v.name, clipped(text), v.open(got, text))
}

// voltsOf takes a battery's label where a question wants the battery's volts alone: it
// reports whether the text is one, and what is wrong with it.
func (v *verb) voltsOf(got given, text string) (is bool, fault string) {
	i := slices.IndexFunc(v.slots, func(s slot) bool { return s.name == "battery" && s.sort == measure })
	if i < 0 || v.has(labelSlot) || plainVolts(text) || !likeLabel(text) {
		return false, ""
	}
	l, err := battery.ParseLabel(text, "")
	switch s := &v.slots[i]; {
	case err == nil && got.has(s.name):
		return true, fmt.Sprintf("ask %s: read %q; want one %s only", v.name, clipped(text), s.name)
	case err != nil || l.NominalV == 0 || len(l.Others) > 0:
		return true, fmt.Sprintf("ask %s: read %q; want the battery's volts, such as %q", v.name, clipped(text), "18 V")
	default:
		got[s.name] = reading{value: l.NominalV, low: l.NominalV, high: l.NominalV, text: text}
		return true, ""
	}
}

// withUnit is what a number without a unit would be in the slots that are free, those
// that are needed first; empty for anything else.
func (v *verb) withUnit(got given, text string) string {
	if !bare(text) {
		return ""
	}
	for _, needed := range []bool{true, false} {
		for i := range v.slots {
			s := &v.slots[i]
			if s.sort != measure || s.named || s.needed != needed || got.has(s.name) {
				continue
			}
			_, unit, _ := strings.Cut(s.example, " ")
			if _, err := s.parse(text + " " + unit); err == nil {
				return fmt.Sprintf("%s with the unit, such as %q", s.name, text+" "+unit)
			}
		}
	}
	return ""
}

// open lists what a question still takes that a text may have been meant for, what it
// needs first.
func (v *verb) open(got given, text string) string {
	var needed, other []string
	for i := range v.slots {
		switch s := &v.slots[i]; {
		case got.has(s.name) || s.named:
		case s.needed:
			needed = append(needed, s.wants())
		case s.sort != word:
			other = append(other, s.wants())
		case len(s.words) < 4, !hasDigit(text):
			other = append(other, s.wants())
		}
	}
	switch {
	case len(needed) > 0:
		return strings.Join(needed, ", or ")
	case len(other) > 0:
		return strings.Join(other, ", or ")
	}
	return "nothing more"
}

// takes lists the names of the slots, those in brackets that may be left out.
func (v *verb) takes() string {
	var out []string
	for i := range v.slots {
		name := v.slots[i].name
		if !v.slots[i].needed {
			name = "[" + name + "]"
		}
		out = append(out, name)
	}
	return strings.Join(out, " ")
}

// asks reports whether a question takes a quantity of the kind.
func (v *verb) asks(kind quantity.Kind) bool {
	return slices.ContainsFunc(v.slots, func(s slot) bool { return s.sort == measure && s.kind == kind })
}

// wants says what a slot takes.
func (s *slot) wants() string {
	switch s.sort {
	case word:
		if len(s.words) > 6 {
			return fmt.Sprintf("a %s such as %q", s.name, s.words[0])
		}
		return `"` + strings.Join(s.words, `", "`) + `"`
	case labelSlot:
		return fmt.Sprintf("a battery's label such as %q", s.example)
	case chargerSlot:
		return fmt.Sprintf("a charger's label such as %q", s.example)
	case teethSlot, motorsSlot:
		return fmt.Sprintf("%s such as %q (%g to %g)", s.name, s.example, s.low, s.high)
	}
	return fmt.Sprintf("%s such as %q", s.name, s.example)
}

// wanted is what an error says would be right.
func wanted(err error, s *slot) string {
	if qe := (*quantity.Error)(nil); errors.As(err, &qe) {
		return qe.Want
	}
	if s.sort == labelSlot || s.sort == chargerSlot {
		if _, want, found := strings.Cut(err.Error(), "; want "); found {
			return want + " (" + strings.TrimPrefix(strings.TrimSuffix(err.Error(), "; want "+want), "battery: ") + ")"
		}
	}
	return s.wants()
}

// nearly reports whether a word was meant for the slot: it has its unit and is
// only out of bounds.
func nearly(text string, s *slot) bool {
	switch {
	case s.sort == teethSlot || s.sort == motorsSlot:
		wide := bounded(*s, -math.MaxFloat64, math.MaxFloat64)
		_, err := wide.parse(text)
		return err == nil
	case s.sort != measure || bare(text):
		return false
	}
	_, _, err := quantity.ParseIn(s.kind, text, -math.MaxFloat64, math.MaxFloat64)
	return err == nil
}

// likeLabel reports whether a text was meant for a battery's label.
func likeLabel(text string) bool {
	t := fold(text)
	return hasDigit(t) && !plainVolts(t) && (strings.Contains(t, "v ") || strings.HasSuffix(t, "v") || strings.Contains(t, "cca"))
}

// parse reads a word.
func (s *slot) parse(text string) (reading, error) {
	switch s.sort {
	case word:
		return s.parseWord(text)
	case labelSlot:
		_, err := battery.ParseLabel(text, "")
		if _, _, other := quantity.Parse(quantity.Duration, text); other == nil {
			err = errors.New("that is a time") // "20 s", which is no pack of twenty cells here
		}
		return reading{text: text}, err
	case chargerSlot:
		if !charging(text) {
			return reading{}, errors.New("that is no charger")
		}
		_, err := charge.ParseLabel(text)
		return reading{text: text}, err
	case wireSlot:
		return parseWire(text)
	case teethSlot:
		return s.counted(text, "teeth", "tooth", "t")
	case motorsSlot:
		return s.counted(text, "motors", "motor")
	}
	if s.kind == quantity.Duration {
		text = inDigits(text)
	}
	r, _, err := quantity.ParseIn(s.kind, text, s.low, s.high)
	if err == nil && s.kind.Bare() && s.kind != quantity.Age && s.kind != quantity.Ratio && bare(text) {
		err = errors.New("no unit")
	}
	return reading{value: r.Likely, low: r.Low, high: r.High, text: text}, err
}

// parseWord finds a word among those that are right.
func (s *slot) parseWord(text string) (reading, error) {
	plain := func(text string) string { return strings.ReplaceAll(fold(text), "-", " ") } // as setups read them
	t := plain(text)
	for _, w := range s.words {
		if plain(w) == t {
			return reading{text: w}, nil
		}
	}
	return reading{}, errors.New("not one of the words")
}

// parseWire reads a gauge or an area.
func parseWire(text string) (reading, error) {
	if r, _, err := quantity.Parse(quantity.Gauge, text); err == nil && !bare(text) {
		return reading{value: r.Likely, gauge: true}, nil
	}
	r, _, err := quantity.Parse(quantity.Area, text)
	return reading{value: r.Likely}, err
}

// counted reads "15 teeth".
func (s *slot) counted(text string, units ...string) (reading, error) {
	number := strings.TrimRight(fold(text), strings.Join(units, "")+" ")
	unit := strings.TrimSpace(fold(text)[len(number):])
	if !slices.Contains(units, unit) {
		return reading{}, errors.New("no " + units[0])
	}
	r, _, err := quantity.ParseIn(quantity.Count, number, s.low, s.high)
	return reading{value: r.Likely}, err
}

// clipped keeps what was read to a readable length.
func clipped(text string) string { return quantity.Clip(text, quantity.MostRead) }

// fold brings a word into the spelling of the lists.
func fold(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }

// plainVolts reports whether a word is volts and nothing else.
func plainVolts(text string) bool {
	_, _, err := quantity.Parse(quantity.Voltage, text)
	return err == nil
}

// charging reports whether a label is that of a charger: amps, and no charge.
func charging(text string) bool {
	l, err := charge.ParseLabel(text)
	if err != nil || l.PrintedA == 0 && l.MadeFor == charge.PurposeUnknown && l.Output == charge.OutputUnknown {
		return false
	}
	b, err := battery.ParseLabel(text, "")
	return err != nil || b.CapacityAh == 0
}
