package trials_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
)

// asPrinted are words that say where a figure comes from.
var asPrinted = []string{"its maker prints", "as printed", "is printed on it as", "as its maker", "as stated", "as you wrote", "as told", "as given"}

// untrue lists what an answer says of where its figures come from that the setup
// does not bear out.
func untrue(a *answer.Assessment, told rig) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	assumed := map[string]bool{}
	for _, x := range a.Assumed {
		assumed[x.Key] = true
		if _, is := told[x.Key]; is && x.Key != "pack.chemistry" && !strings.Contains(x.Why, "measured") {
			say("%s is told (%s) and called assumed: %s, %s", x.Key, told[x.Key], x.Value, x.Why)
		}
		if x.Why == "" || x.Source == "" {
			say("%s is assumed without why or source", x.Key)
		}
	}
	for _, f := range a.Findings {
		if f.Guess != "" {
			if _, is := told[f.Guess]; is && !assumed[f.Guess] {
				say("%s calls %s a guess, which is told", f.Code, f.Guess)
			}
			if f.Level >= answer.Danger {
				say("%s is a danger on the guess of %s", f.Code, f.Guess)
			}
		}
		for _, key := range f.Decides {
			read := key == "pack.health" && f.Certainty == answer.Plain && a.Conflict == nil && // told by what wear shows by
				(told["measured.ride_time"] != "" || told["measured.distance"] != "" || told["measured.loaded_voltage"] != "")
			follows := read || key == "pack.chemistry" || key == "pack.temperature" && told["outing.air"] != "" // by its usual reading
			if assumed[key] && f.Guess == "" && !follows {
				say("%s hangs on %s, which nobody told, and does not say so", f.Code, key)
			}
		}
		if strings.Contains(f.Source, answer.PartRating) && assumed[f.LimitKey] {
			say("%s cites the print of a part for %s, which nobody read", f.Code, f.LimitKey)
		}
		for _, words := range asPrinted {
			if f.Guess != "" && strings.Contains(strings.ToLower(f.Title), words) {
				say("%s says %q of a guess: %s", f.Code, words, f.Title)
			}
		}
	}
	return out
}

func TestWhatIsSaidOfSourcesCanBeUntrue(t *testing.T) {
	t.Parallel()
	f := answer.Finding{Code: "x", Level: answer.Danger, Guess: "pack.max_current", LimitKey: "pack.max_current", Source: answer.PartRating, Title: "It gives 3 A, as its maker prints.", Decides: []string{"pack.max_current"}}
	a := &answer.Assessment{Assumed: []answer.Assumed{{Key: "pack.max_current", Why: "usual", Source: "s"}}, Findings: []answer.Finding{f}}
	if n := len(untrue(a, rig{})); n != 4 { // a danger, a print that nobody read, twice in words
		t.Errorf("%d faults seen, want 4", n)
	}
	f.Guess = ""
	a.Findings = []answer.Finding{f}
	if got := untrue(a, rig{"pack.max_current": "3 A"}); !slices.ContainsFunc(got, func(s string) bool { return strings.Contains(s, "does not say so") }) {
		t.Errorf("a guess that is kept back is not seen: %v", got)
	}
}

// hold reports what contradicts itself in an answer, or the setup.
func hold(t *testing.T, a *answer.Assessment, told rig) {
	t.Helper()
	for _, c := range contradictions(a) {
		t.Errorf("contradiction: %s", c)
	}
	for _, c := range untrue(a, told) {
		t.Errorf("provenance: %s", c)
	}
}
