package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

func TestTheLeadIsTheFirstThreeLinesOfEveryLength(t *testing.T) {
	for name, a := range fixtures() {
		lines, err := report.Lead(a)
		if err != nil {
			t.Fatal(err)
		}
		want := strings.Join(lines[:], "\n") + "\n"
		for _, o := range []report.Options{{}, {Short: true}, {Full: true}} {
			if got := written(t, a, o); !strings.HasPrefix(got, want) {
				t.Errorf("%s, %+v: the report begins %q, the lead is %q", name, o, got[:len(want)], want)
			}
		}
	}
	if _, err := report.Lead(&answer.Assessment{}); err == nil {
		t.Error("an assessment that nobody finished has a lead")
	}
}
