package main

import (
	"slices"
	"strings"

	"example.org/packcheck/charge"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// labelVerb asks for a label alone: whatever else is typed is print on it.
const labelVerb = "label"

// runtimeVerb asks for a time.
const runtimeVerb = "runtime"

// wholeLabel takes all that is typed for one label, but for the words of the other
// slots.
func (v *verb) wholeLabel(args []string) []string {
	var label, out []string
	for i := 0; i < len(args); i++ {
		n, text := v.phrase(args[i:])
		switch {
		case n > 1:
			out = append(out, text)
			i += n - 1
		case strings.Contains(args[i], "="), v.knows(args[i]):
			out = append(out, args[i])
		case args[i] != "":
			label = append(label, args[i])
		}
	}
	if len(label) == 0 {
		return out
	}
	return append([]string{strings.Join(label, " ")}, out...)
}

// perHour joins a speed in words: "5", "miles", "per", "hour".
func perHour(args []string) []string {
	var out []string
	for i := 0; i < len(args); i++ {
		text := args[i]
		joint, end := fold(at(args, i+1)), fold(at(args, i+2))
		if (joint == "per" || joint == "an") && strings.HasPrefix(end, "hour") {
			for _, far := range []struct{ word, unit string }{{"miles", "mph"}, {"mile", "mph"}, {"km", "km/h"}, {"kilometers", "km/h"}, {"kilometres", "km/h"}} {
				if before, is := strings.CutSuffix(fold(text), far.word); is {
					text = before + far.unit
					i += 2
					break
				}
			}
		}
		out = append(out, text)
	}
	return out
}

// named ties the name of a slot to the value behind it, where the slot can read that:
// "air 40 C" is no insulation.
func (v *verb) named(args []string) []string {
	var out []string
	for i := 0; i < len(args); i++ {
		text := args[i]
		at := slices.IndexFunc(v.slots, func(s slot) bool {
			return s.name == fold(text) && s.sort != labelSlot && s.sort != chargerSlot
		})
		if at >= 0 && !v.knows(text) {
			for n := min(3, len(args)-i-1); n > 0; n-- {
				value := strings.Join(args[i+1:i+1+n], " ")
				if _, err := v.slots[at].parse(value); err == nil {
					text = v.slots[at].name + "=" + value
					i += n
					break
				}
			}
		}
		out = append(out, text)
	}
	return out
}

// idle reports whether a word says nothing by itself: it binds others, or names a
// slot of which the unit tells.
func (v *verb) idle(text string) bool {
	t := fold(text)
	if v.knows(t) {
		return false
	}
	if slices.ContainsFunc(v.slots, func(s slot) bool { return s.name == t }) {
		return true
	}
	return slices.Contains([]string{"a", "after", "and", "at", "back", "battery", "by", "came", "charger", "for", "fuse", "from", "in", "is", "it", "my", "of", "on", "the", "with"}, t)
}

// chargers adds to the label of a charger what is said of it right behind: "DC", "for
// lead-acid", "li-ion". It was not said of the battery.
func chargers(tokens []string) []string {
	var out []string
	for i := 0; i < len(tokens); i++ {
		text := tokens[i]
		if charging(text) {
			for i+1 < len(tokens) && ofCharger(tokens[i+1]) {
				i++
				if _, is := charge.PurposeNamed(tokens[i]); is || slices.Contains(setup.Chemistries(), fold(tokens[i])) {
					text += " for"
				}
				text += " " + tokens[i]
			}
		}
		out = append(out, text)
	}
	return out
}

func ofCharger(text string) bool {
	t := fold(text)
	_, purpose := charge.PurposeNamed(t)
	return purpose || t == "dc" || t == "ac" || slices.Contains(setup.Chemistries(), t)
}

// years reports whether a text is a number of years without the word "old".
func years(text string) bool {
	number := strings.TrimRight(fold(text), "yearsd ")
	return bare(number) && yearWord(strings.TrimSpace(fold(text)[len(number):]))
}

func yearWord(text string) bool {
	return slices.Contains([]string{"year", "years", "yr", "yrs", "y", "month", "months"}, fold(text))
}

// ampsOnly reports whether a text is a number of amps; "7amp hour" is no current.
func ampsOnly(text string) bool {
	_, _, err := quantity.Parse(quantity.Current, text)
	return err == nil && strings.Contains(strings.ToLower(text), "amp")
}

func ampWord(text string) bool { return slices.Contains([]string{"amp", "amps", "ampere"}, fold(text)) }

func hourWord(text string) bool {
	return slices.Contains([]string{"hour", "hours", "hr", "hrs"}, fold(text))
}

// inDigits is a time that people say in a word.
func inDigits(text string) string {
	switch t := fold(text); t {
	case "overnight", "over night", "all night":
		return "8 to 12 h"
	case "day", "week", "month", "hour", "minute", "second":
		return "1 " + t
	case "instantly", "immediately", "at once", "instant":
		return "5 ms to 0.2 s" // faster than anybody can tell
	default:
		return text
	}
}
