package trials_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
	"example.org/packcheck/report"
)

// A lead-acid battery that rests badly may come right: who asks with a whole vehicle is told to
// try the same as who asks of the volts alone, before a new one is bought. One that is dead is
// not tried.
func TestABatteryThatRestsBadlyIsTriedBeforeAnotherIsBought(t *testing.T) {
	for _, c := range []struct {
		chemistry string
		restV     float64
		step      string
	}{
		{"gel", 7, "a new battery of the same kind, unless one charge with somebody beside it puts this one right"},
		{"gel", 11.2, "a new battery of the same kind, unless one charge with somebody beside it puts this one right"},
		{"agm", 7, "a new battery of the same kind, unless one charge with somebody beside it puts this one right"},
		{"agm", 10.6, "a new battery of the same kind, unless one charge with somebody beside it puts this one right"},
		{"agm", 14.5, "a new battery of the same kind, if this one still rests so high after a night off the charger"},
		{"agm", 4, "a new battery of the same kind"},
		{"gel", 2, "a new battery of the same kind"},
		{"lifepo4", 6, "a new battery of the same kind"},
		{"lifepo4", 16, "a new battery of the same kind"},
	} {
		what := fmt.Sprintf("%s at %g V", c.chemistry, c.restV)
		alone, err := ask.Rest{Battery: ask.Battery{Label: "12 V 7 Ah", Chemistry: c.chemistry}, Volts: c.restV}.Answer()
		if err != nil {
			t.Fatal(err)
		}
		_, a := waysOf(t, labelsOnly().with("pack.chemistry", strconv.Quote(c.chemistry), "pack.label", `"12 V 7 Ah"`, "measured.rest_voltage", fmt.Sprintf(`"%g V"`, c.restV)))
		next := a.Headline[2]
		if words := strings.Join(alone.Words, " "); !strings.Contains(words, next) {
			t.Errorf("%s: next is %q; asked of its volts alone: %s", what, next, words)
		}
		if !slices.ContainsFunc(a.Ways, func(w answer.Way) bool { return slices.Contains(w.Steps, c.step) }) {
			t.Errorf("%s: no way with the step %q: %+v", what, c.step, a.Ways)
		}
	}
}

// What is found of the battery that a vehicle came with says so, and what it is, in the first
// lines already.
func TestWhatIsFoundOfTheOldBatteryNamesItAndWhatItIs(t *testing.T) {
	old := labelsOnly().with("pack.chemistry", `"gel"`, "pack.label", `"12 V 7 Ah"`, "original.pack.label", `"12 V 7 Ah"`)
	for _, c := range []struct{ key, value, title string }{
		{"measured.rest_voltage", `"10.6 V"`, "One cell of the battery that it came with is perhaps dead"},
		{"measured.loaded_voltage", `"7 V"`, "Under load the battery that it came with falls below "},
	} {
		a := assess(t, old.with(c.key, c.value))
		if !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool { return strings.HasPrefix(f.Title, c.title) }) {
			t.Errorf("%s = %s: nothing found begins with %q: %+v", c.key, c.value, c.title, a.Findings)
		}
	}
}

// Who comes with a battery that rests badly asks about that: it is the first reason, before a fuse
// that sits too far off, and the first line tells that something else may burn. No charger
// that is out is used for it, and where nobody told the kind of the battery that is asked for
// before the charge.
func TestABatteryThatRestsBadlyIsTheFirstReason(t *testing.T) {
	flat := labelsOnly().with("measured.rest_voltage", `"9.5 V"`)
	far := flat.with("fuse.rating", `"15 A"`, "fuse.distance_from_pack", `"40 cm"`)
	for _, c := range []struct {
		name               string
		s                  sheet
		says               string
		first, next, hides string
	}{
		{"no more than flat", flat, "the battery is not in order;", "The battery rests below its harm limit", "Try one charge", ""},
		{"a fuse far off", far, "not ready to ride (fire: 1);", "The battery rests below its harm limit", "Try one charge", "fire: 1"},
		{"no fuse, a danger", flat.with("fuse.form", `"none"`), "no child may ride it", "There is no fuse", "Look first", ""},
		{"a charger that is out", far.with("charger.current", `"800 mA"`), "not ready to ride (fire: ", "The battery rests below its harm limit", "Do not use this charger. Try one charge", "fire: "},
		{
			"of no told kind", flat.with("pack.chemistry", "", "pack.label", `"24 V 7 Ah"`, "vehicle.design_voltage", `"24 V"`, "measured.rest_voltage", `"18 V"`),
			"not ready to ride (fire: 2);", "The battery rests below its harm limit", "Read it off the pack", "fire: 2",
		},
	} {
		_, a := waysOf(t, c.s)
		if h := a.Headline; !strings.HasPrefix(h[0], c.says) || !strings.HasPrefix(h[1], c.first) || !strings.HasPrefix(h[2], c.next) {
			t.Errorf("%s: %q", c.name, h)
		}
		if got := a.PassedOver(); !strings.HasPrefix(got, c.hides) || (got == "") != (c.hides == "") {
			t.Errorf("%s: passed over %q, want %q", c.name, got, c.hides)
		}
		var page strings.Builder
		if err := report.Write(&page, a, report.Options{}); err != nil {
			t.Fatal(err)
		}
		if line, _, _ := strings.Cut(page.String(), "\n"); strings.Contains(line, "(") != (c.hides != "") || !strings.Contains(line, c.hides) {
			t.Errorf("%s: the first line is %q", c.name, line)
		}
	}
}

// A lead-acid block that was read to be flat is to be charged today: the page says so, and not
// only of one that rests at the volts of an empty one. Lithium does not spoil so.
func TestAFlatBlockIsToBeChargedToday(t *testing.T) {
	for _, c := range []struct {
		s      sheet
		spoils bool
	}{
		{labelsOnly().with("measured.rest_voltage", `"12.0 V"`, "measured.hours_rested", `"12 h"`), true},
		{labelsOnly().with("measured.rest_voltage", `"10.6 V"`), true},
		{labelsOnly().with("pack.charge", `"30 %"`), true},
		{labelsOnly().with("measured.rest_voltage", `"12.7 V"`, "measured.hours_rested", `"12 h"`), false},
		{labelsOnly(), false},
		{labelsOnly().with("pack.chemistry", `"lifepo4"`, "pack.charge", `"30 %"`), false},
	} {
		a := briefly(t, c.s)
		if a.Ride.SpoilsFlat != c.spoils {
			t.Errorf("%v: %g charged, spoils %v", c.s, a.Ride.StartsCharged, a.Ride.SpoilsFlat)
		}
	}
}
