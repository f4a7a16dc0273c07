package trials_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
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
