package packcheck

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
)

func TestADoubtIsOneLevelMilderAndSaysSo(t *testing.T) {
	likely := []answer.Finding{
		{Code: "a", Level: answer.Watch, Title: "a"},
		{Code: "b", Level: answer.FixFirst, Title: "b"},
	}
	corner := []answer.Finding{
		{Code: "a", Level: answer.Danger, Title: "a"},   // worse: fix first
		{Code: "b", Level: answer.FixFirst, Title: "b"}, // no worse than what is likely
		{Code: "c", Level: answer.Danger, Title: "c"},   // new: fix first
		{Code: "d", Level: answer.Watch, Title: "d"},    // new: watch
		{Code: "e", Level: answer.Fine, Title: "e"},     // nothing to say
	}
	want := map[string]answer.Level{"a": answer.FixFirst, "b": answer.FixFirst, "c": answer.FixFirst, "d": answer.Watch}
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
	for l := answer.Watch; l <= answer.Danger; l++ {
		got := gather(nil, []answer.Finding{{Code: "x", Level: l}})
		if len(got) != 1 || got[0].Level == answer.Danger || got[0].Level == answer.Fine {
			t.Errorf("%v at a corner became %v", l, got)
		}
	}
}
