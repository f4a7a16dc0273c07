package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// Of packs that are never joined no report for people tells minutes, speed or what a start
// takes: who reads them would try. Where that holds in few of the vehicles they are told.
func TestOfAPairThatIsNeverJoinedNoRideIsTold(t *testing.T) {
	for _, tt := range []struct {
		name      string
		level     answer.Level
		certainty answer.Certainty
		told      bool
	}{
		{"plainly", answer.Danger, answer.Plain, false},
		{"likely", answer.Danger, answer.Likely, false},
		{"on a guess", answer.FixFirst, answer.Plain, false},
		{"possibly", answer.FixFirst, answer.Possible, true},
	} {
		a := danger()
		level := 40.0
		a.Ride.LevelPedalMin = &level
		a.Findings = []answer.Finding{{
			Level: tt.level, Certainty: tt.certainty, Share: 0.5, Title: "They are joined.", Advice: "Take them apart.", Today: true, NeverRidden: true,
		}}
		for _, o := range []report.Options{{}, {Full: true}, {Short: true}, {Format: report.FormatHTML}} {
			text := written(t, a, o)
			if got := strings.Contains(text, "Pedal down") || strings.Contains(text, "Amps at a start") || strings.Contains(text, "On the level"); got != tt.told {
				t.Errorf("%s, %+v: told %v in\n%s", tt.name, o, got, text)
			}
			if got := strings.Contains(text, "there are no minutes to tell"); got == tt.told && !o.Short { // ten lines have no room for it
				t.Errorf("%s, %+v: why is told: %v", tt.name, o, got)
			}
		}
	}
}
