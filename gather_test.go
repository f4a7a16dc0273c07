package packcheck

import (
	"strings"
	"testing"

	"example.org/packcheck/finding"
)

func TestADoubtIsOneLevelMilderAndSaysSo(t *testing.T) {
	likely := []finding.Finding{
		{Code: "a", Level: finding.Watch, Title: "a"},
		{Code: "b", Level: finding.FixFirst, Title: "b"},
	}
	corner := []finding.Finding{
		{Code: "a", Level: finding.Danger, Title: "a"},   // worse: fix first
		{Code: "b", Level: finding.FixFirst, Title: "b"}, // no worse than what is likely
		{Code: "c", Level: finding.Danger, Title: "c"},   // new: fix first
		{Code: "d", Level: finding.Watch, Title: "d"},    // new: watch
		{Code: "e", Level: finding.Fine, Title: "e"},     // nothing to say
	}
	want := map[string]finding.Level{"a": finding.FixFirst, "b": finding.FixFirst, "c": finding.FixFirst, "d": finding.Watch}
	got := gather(likely, corner)
	if len(got) != len(want) {
		t.Errorf("%d findings, want %d", len(got), len(want))
	}
	for _, f := range got {
		if f.Level != want[f.Code] {
			t.Errorf("%s: %v, want %v", f.Code, f.Level, want[f.Code])
		}
		if doubt := strings.HasPrefix(f.Title, doubtful); doubt != (f.Code != "b") {
			t.Errorf("%s: title %q", f.Code, f.Title)
		}
	}
}

func TestAGuessIsNeverADangerAndNeverFine(t *testing.T) {
	for l := finding.Watch; l <= finding.Danger; l++ {
		got := gather(nil, []finding.Finding{{Code: "x", Level: l}})
		if len(got) != 1 || got[0].Level == finding.Danger || got[0].Level == finding.Fine {
			t.Errorf("%v at a corner became %v", l, got)
		}
	}
}
