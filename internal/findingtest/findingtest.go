// Package findingtest holds findings against what every one of them owes, for
// the tests of the packages that make them.
package findingtest

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/policy"
)

// Whole reports half a finding, and one whose level is not that of its harm.
func Whole(t testing.TB, f answer.Finding) {
	t.Helper()
	if f.Code == "" || f.Title == "" || f.Advice == "" || f.Topic == "" {
		t.Errorf("%s: half a finding: %+v", f.Code, f)
	}
	ok := false
	switch f.Harm {
	case answer.Wear:
		ok = f.Level <= answer.Watch
	case answer.Part:
		ok = f.Level == answer.FixFirst
	case answer.House, answer.Child:
		ok = f.Level >= answer.FixFirst
	}
	if !ok {
		t.Errorf("%s: %v although the harm is %v", f.Code, f.Level, f.Harm)
	}
}

// Cited reports sources of a finding that are not among the known ones.
func Cited(t testing.TB, f answer.Finding, known []answer.Source) {
	t.Helper()
	for id := range strings.SplitSeq(f.Source, ",") {
		id = strings.TrimSpace(id)
		if !slices.ContainsFunc(known, func(s answer.Source) bool { return s.ID == id }) {
			t.Errorf("%s: unknown source %q", f.Code, id)
		}
	}
}

// AllFired reports codes of the package under test that no row has fired.
func AllFired(t testing.TB, fired map[string]bool) {
	t.Helper()
	codes, err := policy.Codes(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, code := range codes {
		if !fired[code] {
			t.Errorf("%s is fired by no row", code)
		}
	}
}
