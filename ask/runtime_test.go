package ask_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
)

// Nobody told what the battery may give: what such cells can is a guess, which makes no
// danger of any current, and is said to be one.
func TestCurrentAboveAGuessedRatingIsNoDanger(t *testing.T) {
	block, tool := ask.Battery{Label: "12.8 V 10 Ah LiFePO4"}, ask.Battery{Label: "20 V max 5 Ah"}
	for _, q := range []ask.Question{
		ask.Runtime{Battery: block, CurrentA: 20},
		ask.Cutoff{Battery: block, RunningA: 20},
		ask.Runtime{Battery: tool, CurrentA: 60},
		ask.Cutoff{Battery: tool, RunningA: 60},
	} {
		a := answered(t, q)
		if said := strings.Join(a.Words, " "); a.Level == nil || *a.Level != answer.FixFirst || !strings.Contains(said, "is a guess from its kind") {
			t.Errorf("%+v: %v %q", q, a.Level, said)
		}
		for _, s := range a.Sources {
			if s.ID == answer.PartRating {
				t.Errorf("%+v: cites a rating that nobody told", q)
			}
		}
	}
}

// A discharge down to volts that nobody asked the makers for is judged by how it leaves the
// weakest cell, as a report of the same load judges it.
func TestDischargePastTheMakersEndIsJudged(t *testing.T) {
	tool := ask.Battery{Label: "20 V max 5 Ah"}
	for _, c := range []struct {
		name   string
		untilV float64
		want   answer.Level
	}{
		{"to the makers' end", 0, answer.Fine},
		{"to what no cell survives", 5, answer.Danger},
		{"to volts that are above its own", 21, answer.Fine},
	} {
		a := answered(t, ask.Runtime{Battery: tool, CurrentA: 5, UntilV: c.untilV})
		level := answer.Fine
		if a.Level != nil {
			level = *a.Level
		}
		said := strings.Contains(strings.Join(a.Words, " "), "can never be charged again")
		if level != c.want || said != (c.want == answer.Danger) {
			t.Errorf("%s: %v %q", c.name, level, a.Words)
		}
	}
}
