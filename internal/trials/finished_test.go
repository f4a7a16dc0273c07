package trials_test

import (
	"strings"
	"testing"

	"example.org/packcheck/report"
)

// A battery that rests too low for any charge is finished: nobody uses it, it is handed in
// first of all, and what a ride with it would be is not told. (The volts from which on are
// those of the findings; "checks/battery.md", section 3.)
func TestAFinishedBatteryIsNotRidden(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		label, volts, next string
		finished           bool
	}{
		{"20 V max 5 Ah", "6 V", "Keep it away from what burns", true},
		{"12 V 7 Ah AGM", "3 V", "Do not charge it: hand it in and replace it.", true},
		{"12 V 7 Ah AGM", "12.5 V", "", false},
	} {
		a := briefly(t, labelsOnly().with("pack.chemistry", "", "pack.label", `"`+tt.label+`"`, "measured.rest_voltage", `"`+tt.volts+`"`, "measured.hours_rested", `"24 h"`))
		if a.Finished() != tt.finished || a.NeverRidden() != tt.finished || a.Urgent() != tt.finished {
			t.Errorf("%s at %s: finished %v, never ridden %v, today %v", tt.label, tt.volts, a.Finished(), a.NeverRidden(), a.Urgent())
		}
		var text strings.Builder
		if err := report.Text(&text, a); err != nil {
			t.Fatal(err)
		}
		page := text.String()
		lead := strings.Join(strings.SplitN(page, "\n", 4)[:3], "\n")
		if got := strings.HasPrefix(lead, "NO: nobody uses or charges this battery") && strings.Contains(lead, tt.next); got != tt.finished {
			t.Errorf("%s at %s: the first lines are\n%s", tt.label, tt.volts, lead)
		}
		if got := strings.Contains(page, "Once it is charged full"); got && tt.finished {
			t.Errorf("%s at %s: is charged full\n%s", tt.label, tt.volts, page)
		}
	}
}
