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
