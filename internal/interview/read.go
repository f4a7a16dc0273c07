package interview

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// Fill returns all keys that an answer fills in, with their texts as setup.Of takes
// them, once they stand beside what is given without a fault: a choice by its
// number, its value or its words, a quantity or a word as people write it. The
// error is one plain sentence: what was read, and what would be right. Given is left
// as it is. Nothing to fill in is no fault: the question then counts as passed.
func Fill(q Question, text string, given map[string]string) (map[string]string, error) {
	return FillIn(&setup.Setup{}, q, text, given)
}

// FillIn is [Fill] for a setup of its own folder, which is empty but for that: files
// that are given by name are looked for there.
func FillIn(base *setup.Setup, q Question, text string, given map[string]string) (sets map[string]string, err error) {
	text = chosen(q, strings.TrimSpace(text))
	if q.Key == "vehicle.slope" && (denied(text) || level(text)) {
		text = "0 %"
	}
	switch {
	case Unknown(text), len(q.Choices) == 0 && denied(text):
		return nil, nil
	case len(text) > longestText:
		return nil, fmt.Errorf("read %q and more; right would be a line of at most %d characters, such as %q", text[:40], longestText, q.Example)
	}
	if want := thickOrThin(q, text); want != "" {
		return nil, fmt.Errorf("read %q; right would be the number with its unit, %s", text, want)
	}
	in := reading{base: base, files: filesOf(given)}
	if text == Same && slices.ContainsFunc(q.Choices, func(c Choice) bool { return c.Value == Same }) {
		sets = sameBattery(given)
	} else if sets, err = in.parted(q, text); err != nil {
		return nil, err
	}
	whole := maps.Clone(given)
	if whole == nil {
		return sets, nil
	}
	maps.Copy(whole, sets)
	if err := in.sound(whole, text); err != nil {
		return nil, err
	}
	return sets, nil
}

// denied reports whether an answer says that there is no such thing: then there is
// nothing to fill in.
func denied(text string) bool {
	switch strings.ToLower(strings.Trim(text, " .!")) {
	case "no", none, "nothing", "nope", "there is none":
		return true
	}
	return false
}

// fewestGauge is the number from which on a bare one is a gauge: below, it may as well be the
// area of a thin wire in mm2, and as a gauge it is that of one thicker than a vehicle has.
// Own choice.
const fewestGauge = 8

// thickOrThin is what a bare number for a wire may mean that has to be asked back; empty for
// any other answer.
func thickOrThin(q Question, text string) string {
	n, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", "."), 64)
	if err != nil || quantity.KindNamed(keyOf(q.Key).What) != quantity.Gauge || n >= fewestGauge {
		return ""
	}
	area := strconv.Quote(text + " mm2")
	if n != math.Trunc(n) {
		return area
	}
	return strconv.Quote(text+" AWG") + " or " + area
}

// level reports whether an answer says that there is no slope.
func level(text string) bool {
	switch strings.ToLower(strings.Trim(text, " .!")) {
	case "flat", "level", "level ground", "flat ground", "no slope", "no slopes", "no hill", "no hills", "it is flat":
		return true
	}
	return false
}

// longestText is the longest text of a setup, in bytes.
const longestText = 200

// chosen turns the words or the number of a choice into its value. A value comes
// before a number: "2" may be both.
func chosen(q Question, text string) string {
	for _, same := range []func(Choice) string{
		func(c Choice) string { return c.Value },
		func(c Choice) string { return c.Says },
	} {
		for _, c := range q.Choices {
			if strings.EqualFold(same(c), text) || same(c) == none && strings.EqualFold(text, "no") {
				return c.Value
			}
		}
	}
	if n, err := strconv.Atoi(strings.TrimSuffix(text, ".")); err == nil && n >= 1 && n <= len(q.Choices) {
		return q.Choices[n-1].Value
	}
	return text
}

// none is the word for what is not there.
const none = "none"

// sameBattery copies today's battery to the original.
func sameBattery(given map[string]string) map[string]string {
	sets := map[string]string{}
	for _, key := range []string{"pack.label", "pack.chemistry", "pack.cells_in_series", "pack.joined"} {
		if text, is := given[key]; is {
			sets["original."+key] = text
		}
	}
	return sets
}

// reading is what an answer is read in: where files are looked for that the setup
// names, and which these are. Their words count when a key is read alone.
type reading struct {
	base  *setup.Setup
	files map[string]string
}

// filesOf are the keys of files, with their names.
func filesOf(given map[string]string) map[string]string {
	out := map[string]string{}
	for path, name := range given {
		if keyOf(path).What == "file" {
			out[path] = name
		}
	}
	return out
}

// parted splits an answer among the keys of the question: all of it for one of
// them, or a piece for each.
func (in reading) parted(q Question, text string) (map[string]string, error) {
	keys := q.Keys()
	first := in.fits(q.Key, text)
	for _, key := range keys {
		if in.fits(key, text) == nil {
			return map[string]string{key: bare(key, text)}, nil
		}
	}
	parts, marked := cuts(text)
	for _, pieces := range parts {
		if sets := in.dealt(keys, pieces); sets != nil {
			return sets, nil
		}
	}
	if len(keys) > 1 && marked { // then the piece that fits nowhere is at fault
		for _, piece := range parts[0] {
			if !slices.ContainsFunc(keys, func(key string) bool { return in.fits(key, piece) == nil }) {
				return nil, in.fits(q.Key, piece)
			}
		}
	}
	return nil, first
}

// mostWords is how many words two short statements may have.
const mostWords = 8

// cuts lists the ways to part an answer in two: at a mark between two statements,
// else between any two words.
func cuts(text string) (list [][]string, marked bool) {
	for _, mark := range []string{", ", "; ", " and ", " / ", "/"} {
		if a, b, ok := strings.Cut(text, mark); ok {
			return [][]string{{a, b}}, true
		}
	}
	words := strings.Fields(text)
	if len(words) > mostWords {
		return nil, false
	}
	for i := 1; i < len(words); i++ {
		list = append(list, []string{strings.Join(words[:i], " "), strings.Join(words[i:], " ")})
	}
	return list, false
}

// dealt gives every piece a key of its own, nil where one fits nowhere.
func (in reading) dealt(keys, pieces []string) map[string]string {
	sets := map[string]string{}
	for _, piece := range pieces {
		i := slices.IndexFunc(keys, func(key string) bool { _, taken := sets[key]; return !taken && in.fits(key, piece) == nil })
		if i < 0 {
			return nil
		}
		sets[keys[i]] = bare(keys[i], piece)
	}
	return sets
}

// fits returns what is wrong with a text behind a key, read alone.
func (in reading) fits(key, text string) error {
	alone := maps.Clone(in.files)
	alone[key] = bare(key, text)
	return in.sound(alone, text)
}

// sound checks a setup as far as it goes and returns its first fault in a
// sentence. That there is no battery yet is none.
func (in reading) sound(values map[string]string, text string) error {
	s, err := in.base.With(accompanied(values))
	if err == nil {
		_, err = s.Parts()
	}
	var faults setup.Faults
	if !errors.As(err, &faults) {
		return err
	}
	left := setup.BesideNoBattery(faults)
	if len(left) == 0 {
		return nil
	}
	f := left[0]
	read, want := f.Read, f.Want
	switch {
	case read == "":
		read = text
	case keyOf(f.Key).What == yesOrNo:
		want = "yes or no"
	case voltless(f.Key, read):
		want = `the volts with it, such as "20 V max 5 Ah"`
	}
	return fmt.Errorf("read %q; right would be %s", read, want)
}

// accompanied adds what a key cannot stand without, so that it can be read alone:
// the delay of a cutoff needs the volts at which it opens.
func accompanied(values map[string]string) map[string]string {
	out := values
	for _, table := range []string{"cutoff.pack.", "cutoff.module.", "cutoff.controller."} {
		if values[table+"opens_at"] == "" && (values[table+"delay"] != "" || values[table+"closes_at"] != "") {
			if out = maps.Clone(values); out != nil {
				out[table+"opens_at"] = "0.5 V"
			}
		}
	}
	return out
}

// voltless reports whether a text is a label of which nothing but the volts is
// missing.
func voltless(key, text string) bool {
	if !strings.HasSuffix(key, "pack.label") {
		return false
	}
	l, err := battery.ParseLabel(text, "")
	return err == nil && l.Chemistry == ""
}

// yesOrNo is what the registry calls it.
const yesOrNo = "yes or no"

// keyOf looks a key up in the registry.
func keyOf(path string) setup.Key {
	path = strings.TrimPrefix(path, "original.")
	for _, k := range setup.Keys() {
		if k.Path() == path {
			return k
		}
	}
	return setup.Key{}
}

// bare puts the unit behind a number alone where only one can be meant, and digits for
// an age in words, so that it is seen what was read.
func bare(key, text string) string {
	if quantity.KindNamed(keyOf(key).What) == quantity.Age {
		if _, _, err := quantity.Parse(quantity.Age, text); err == nil && quantity.InDigits(text) != strings.ToLower(text) {
			text = quantity.InDigits(text)
		}
	}
	if _, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", "."), 64); err != nil {
		return text
	}
	switch quantity.KindNamed(keyOf(key).What) {
	case quantity.Voltage:
		return text + " V"
	case quantity.Current:
		return text + " A"
	case quantity.Age:
		return text + " years"
	case quantity.Charge:
		return text + " Ah"
	case quantity.Gauge:
		return text + " AWG"
	}
	return text
}
