package reckon_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/reckon"
)

// The headline is often all that is read or passed on: what holds in some draws only must
// not look certain there, nor what to do about it.
func TestTheHeadlineIsAsSureAsWhatItTells(t *testing.T) {
	for certainty, want := range map[answer.Certainty][2]string{
		answer.Plain:    {"It is hot.", "Cool it."},
		answer.Likely:   {"Likely: It is hot.", "Cool it."},
		answer.Possible: {"Possibly: It is hot.", "To be safe: Cool it."},
		answer.Rare:     {"Seldom: It is hot.", "To be safe: Cool it."},
	} {
		h := reckon.Headline(&answer.Assessment{
			Verdict:  answer.Watch,
			Findings: []answer.Finding{{Level: answer.Watch, Title: "It is hot.", Advice: "Cool it.", Certainty: certainty}},
		})
		if got := [2]string(h[1:]); got != want {
			t.Errorf("%v: %q, want %q", certainty, got, want)
		}
	}
}

// Where the gravest finding asks for nothing, the next step is as sure as the finding that
// does.
func TestTheNextStepIsAsSureAsItsOwnFinding(t *testing.T) {
	h := reckon.Headline(&answer.Assessment{Verdict: answer.Watch, Findings: []answer.Finding{
		{Level: answer.Watch, Title: "It is hot."},
		{Level: answer.Watch, Title: "It is fast.", Advice: "Slow it.", Certainty: answer.Possible},
	}})
	if h[1] != "It is hot." || h[2] != "To be safe: Slow it." {
		t.Errorf("%q", h)
	}
}

// What is not in order is that of which the reason is told.
func TestTheVerdictAndItsReasonAreOfOneFinding(t *testing.T) {
	charger := answer.Finding{Level: answer.FixFirst, Topic: answer.TopicCharge, Item: answer.Charger, Title: "Wrong charger."}
	battery := answer.Finding{Level: answer.FixFirst, Topic: answer.TopicCharge, Item: answer.Battery, Title: "It rests low.", Decides: []string{answer.KeyMeasuredRestVoltage}}
	for _, c := range []struct {
		list    []answer.Finding
		verdict string
	}{
		{[]answer.Finding{charger}, "charging is not in order"},
		{[]answer.Finding{battery, charger}, "the battery is not in order"},
	} {
		h := reckon.Headline(&answer.Assessment{Verdict: answer.FixFirst, Steady: &answer.SteadyFigures{}, Findings: c.list})
		if !strings.HasPrefix(h[0], c.verdict) || h[1] != c.list[0].Title {
			t.Errorf("%q, want %q for %q", h, c.verdict, c.list[0].Title)
		}
	}
}
