package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// What was not told stands on the page once: among the questions where it is asked for, with
// what none of them asks, and among the reasons where nothing is asked.
func TestWhatWasNotToldStandsOnThePageOnce(t *testing.T) {
	open := answer.Finding{
		Level: answer.Watch, Harm: answer.House, Change: answer.LookUp, Reads: answer.AsTold,
		Title: "Not told, though it may matter, is the size of the wire; how steep it gets.", Untold: []string{"the size of the wire", "how steep it gets"},
		Decides: []string{answer.KeyWireGauge, answer.KeyVehicleSlope},
	}
	wire := answer.Measurement{What: "wire", Asks: "How thick is the wire?", How: "Read its print.", Key: answer.KeyWireGauge}
	slope := answer.Measurement{What: "slope", Asks: "How steep is it?", How: "Lay a plank on it.", Key: answer.KeyVehicleSlope}
	for _, tt := range []struct {
		name    string
		measure []answer.Measurement
		reason  bool
		rest    string
	}{
		{"all of it is asked", []answer.Measurement{wire, slope}, false, ""},
		{"one thing is not", []answer.Measurement{wire}, false, "Not told either, though it may matter: how steep it gets."},
		{"nothing is asked", nil, true, ""},
	} {
		a := fine()
		a.Verdict, a.Findings, a.Measure = answer.Watch, []answer.Finding{{Level: answer.Watch, Title: "It is old."}, open}, tt.measure
		a.Headline = [3]string{"x", "It is old.", "Feel it."}
		page := written(t, a, report.Options{})
		if got := strings.Contains(page, "2. Not told, though it may"); got != tt.reason {
			t.Errorf("%s: among the reasons %v in\n%s", tt.name, got, page)
		}
		if got := strings.Contains(page, "Not told either"); got != (tt.rest != "") || !strings.Contains(page, tt.rest) {
			t.Errorf("%s: want %q in\n%s", tt.name, tt.rest, page)
		}
		if strings.Contains(page, "more to watch") { // it is shown, wherever it stands
			t.Errorf("%s: more is counted in\n%s", tt.name, page)
		}
	}
}
