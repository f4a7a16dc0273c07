package report_test

import (
	"fmt"
	"os"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// An assessment comes from packcheck.Assess; this one is made by hand.
func ExampleShort() {
	a := &answer.Assessment{
		Schema:   answer.Schema,
		Title:    "Bramble Lane tractor",
		Verdict:  answer.FixFirst,
		Headline: [3]string{"not before the fuse is in", "Nothing opens on a short circuit.", "Fit a 30 A fuse at the pack."},
		Steady:   &answer.SteadyFigures{SpeedKmh: 5.2},
		Ride:     answer.RideFigures{PedalMin: 44},
		Ranges:   map[string]answer.Range{"ride.pedal_min": {Low: 35, Likely: 44, High: 58}},
	}
	if err := report.Short(os.Stdout, a); err != nil {
		fmt.Println(err)
	}
	// Output:
	// NOT YET: 0 things to put right first.
	// Why: Nothing opens on a short circuit.
	// Next: Fit a 30 A fuse at the pack.
	// Pedal down: 44 min (35 to 58)
	// Speed: 5.2 km/h
	// Safety: The maker's instructions, local codes and licensed
	//   practice come first. A changed vehicle no longer is the one
	//   that was tested. Try it without a child. Read the full report.
}
