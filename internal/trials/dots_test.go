package trials_test

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/report"
)

// Dots say that something is missing, and nobody can read on: reasons, next steps and
// questions are told whole, or by what is a whole clause of them.
func TestNothingOnThePageEndsInDots(t *testing.T) {
	t.Parallel()
	dots := regexp.MustCompile(`[^\n]* \.\.\.(\s|$)[^\n]*`)
	all := maps.Clone(rigs())
	for i, h := range hazards() {
		if r, is := all[h.base]; is && tried(i) {
			all[h.name] = r.but(h.set)
		}
	}
	seen := 0
	for _, name := range slices.Sorted(maps.Keys(all)) {
		a, err := all[name].assess(32)
		if err != nil {
			continue // refused, which tells nothing
		}
		seen++
		for _, o := range []report.Options{{}, {Short: true}} {
			o.Format = report.FormatText
			var text strings.Builder
			if err := report.Write(&text, a, o); err != nil {
				t.Fatal(err)
			}
			for _, line := range dots.FindAllString(text.String(), -1) {
				t.Errorf("%s, short %t: %s", name, o.Short, line)
			}
		}
	}
	if seen < 20 {
		t.Errorf("only %d setups were told", seen)
	}
}
