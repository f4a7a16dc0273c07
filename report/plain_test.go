package report_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// What a reader at home must be able to take at its word. Own rules, no
// outside source.

// flat is a text report on one line, so that wraps do not matter.
func flat(t *testing.T, a *answer.Assessment) string {
	t.Helper()
	return strings.Join(strings.Fields(written(t, a, report.Options{Full: true})), " ")
}

func TestNothingIsFoundToBeZeroWhereItIsNotKnown(t *testing.T) {
	for _, tt := range []struct {
		f          answer.Finding
		want, lack string
	}{
		{answer.Finding{Level: answer.Watch, Unit: "m", Limit: 0.178, Reads: answer.AsUnknown}, "(not known, at most 178 mm", "(0"},
		{answer.Finding{Level: answer.Danger, Unit: "V", Limit: 12.5, Want: answer.Above, Reads: answer.AsNone}, "(none, at least 12.5 V", "(0"},
		{answer.Finding{Level: answer.Danger, Unit: "h", Limit: 168, Want: answer.Above, Reads: answer.AsAtOnce}, "(at once, at least 7 days", "(0"},
		{answer.Finding{Level: answer.Danger, Unit: "h", Found: 20, Limit: 168, Want: answer.Above, Reads: answer.AsAtOnce}, "(20 h, at least 7 days", "at once"},
		{answer.Finding{Level: answer.FixFirst, Unit: "A", Found: 20}, "(20 A; s)", "most 0"},
		{answer.Finding{Level: answer.Danger, Unit: "V", Found: -2.36, Want: answer.Above}, "(-2.36 V, at least 0 V", ""},
		{answer.Finding{Level: answer.Danger, Unit: "degC", Found: -5, Want: answer.Above}, "(-5 C, at least 0 C", ""},
		{answer.Finding{Level: answer.Watch, Unit: "degC", Found: 371, Limit: 105}, "(more than 250 C, at most 105 C", "371"},
		{answer.Finding{Level: answer.Watch, Unit: "share", Found: 0.112, Limit: 0.1}, "(11 %, at most 10 %", "times"},
		{answer.Finding{Level: answer.Watch, Unit: "x", Found: 1.52, Limit: 1.2}, "(1.5 times, at most 1.2 times", "%"},
		{answer.Finding{Unit: "m", Found: 3.17, Reads: answer.AsTold}, "INFO: Said.", "3.17"},
		{answer.Finding{Level: answer.FixFirst, Unit: "A", Found: 78.4, Limit: 60}, "(78 A, at most 60 A", "78.4"},
		{answer.Finding{Level: answer.Danger, Unit: "A", Found: 22.9, Limit: 22.5}, "(23 A, at most 22.5 A", ""},
		{answer.Finding{Level: answer.Watch, Unit: "N", Found: 48.2, Limit: 48.2}, "(just 48 N, at most 48 N; s)", "found"},
		{answer.Finding{Level: answer.Danger, Unit: "A", Found: 30.3, Limit: 30}, "(30.3 A, at most 30 A", ""},
		{answer.Finding{Level: answer.Danger, Unit: "A", Found: 30.04, Limit: 30}, "(30.04 A, at most 30 A", "just"},
		{answer.Finding{Level: answer.FixFirst, Unit: "A", Found: 12.4, Limit: 12.3}, "(12.4 A, at most 12.3 A", "(12 A"},
		{answer.Finding{Level: answer.FixFirst, Unit: "A", Found: 12.6, Limit: 12.7, Want: answer.Above}, "(12.6 A, at least 12.7 A", "(13 A"},
		{answer.Finding{Level: answer.FixFirst, Unit: "m/s", Found: 13.2 / 3.6, Limit: 12.9 / 3.6}, "(13.2 km/h, at most 12.9 km/h", "just"},
	} {
		a := fine()
		tt.f.Title, tt.f.Source, tt.f.Topic = "Said.", "s", answer.TopicPath
		a.Findings = []answer.Finding{tt.f}
		text := flat(t, a)
		_, text, _ = strings.Cut(text, ": Said.")
		text, _, _ = strings.Cut(text, "ALL FIGURES")
		if strings.HasPrefix(tt.want, "INFO") {
			text = flat(t, a)
		}
		if !strings.Contains(text, tt.want) {
			t.Errorf("lacks %q in %q", tt.want, text)
		}
		if tt.lack != "" && strings.Contains(text, tt.lack) {
			t.Errorf("holds %q in %q", tt.lack, text)
		}
	}
}

func TestWhatWasMeasuredHoldsNoFigureThatIsNotThere(t *testing.T) {
	a := fine()
	a.Measured = []answer.MeasuredFigure{
		{Name: "the battery is flat", Says: "perhaps"},
		{Name: "the battery is worn", Says: "hardly"},
		{Name: "next test", Says: "Charge it and measure again."},
		{Name: "25 A fuse opened after", Measured: "2 s", Says: "32 to 61 A flowed"},
	}
	text := flat(t, a)
	for _, want := range []string{
		"The battery is flat: Perhaps.", "The battery is worn: Hardly.", "Next test: Charge it and measure again.", "25 A fuse opened after: measured 2 s. 32 to 61 A flowed.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	if strings.Contains(text, "measured not known") || strings.Contains(text, "computed not known") {
		t.Error("speaks of figures that are not there")
	}
}

func TestAChargerThatIsNotShownToSuitIsNotUsed(t *testing.T) {
	const unsettled = "Charger suits: not known: do not use it"
	for match, want := range map[string]string{
		answer.MatchYes:     "Charger suits: yes. Charged to 80 %",
		answer.MatchCare:    "Charger suits: yes, with care: see what was found",
		answer.MatchNo:      "Charger suits: no: do not connect it",
		answer.MatchUnknown: unsettled,
		"another word":      unsettled,
		"":                  unsettled,
		answer.MatchNone:    "No charger was described, so none was judged.",
	} {
		a := fine()
		a.Charge = &answer.ChargeFigures{Match: match, EndVPerCell: ptr(4.2), Right: "made for li-ion, ends at 21 V"}
		for _, want := range []string{want, "The right one: made for li-ion, ends at 21 V."} {
			if text := flat(t, a); !strings.Contains(text, want) {
				t.Errorf("%q: lacks %q", match, want)
			}
		}
	}
}

// The reasons are the titles of findings: they are said once, and said all the
// same where nobody made a finding of them.
func TestWhyAChargerDoesNotSuitIsSaidOnce(t *testing.T) {
	const reason = "Never put this charger on this pack."
	if n := strings.Count(flat(t, danger()), "DANGER (fire): "+reason+" (charger-wrong;"); n != 1 {
		t.Errorf("the finding stands %d times", n)
	}
	if strings.Count(flat(t, danger()), reason) > 1 {
		t.Error("the reason is said beside the finding")
	}
	a := danger()
	a.Findings = nil
	if !strings.Contains(flat(t, a), reason) {
		t.Error("the reason is not said at all")
	}
}

func TestForgottenOnTheChargerIsSaidOncePerOutcome(t *testing.T) {
	text := flat(t, danger())
	for _, want := range []string{"Left plugged in: One night: Some gas is lost.", "Left plugged in: One week, one month: It is gassed dry."} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
}

func TestAVehicleThatDoesNotMoveHasNoRideFigures(t *testing.T) {
	a := danger()
	a.Ranges = nil
	a.Steady.SpeedKmh, a.Ride.DistanceKm, a.Ride.PedalMin, a.Ride.EndedBy = 0, 0, 0, "cannot move"
	a.Draws.Stuck = 0.68
	a.Findings = a.Findings[1:3]
	text := flat(t, a)
	if !strings.Contains(text, "Likely it does not get going with this load on this ground and slope, so there is no ride to time. That is so in 7 of 10 vehicles like this.") {
		t.Error("does not say that it does not move, or in how many draws")
	}
	a.Draws.Stuck = 0.93
	if text := flat(t, a); !strings.Contains(text, "It does not get going with this load") || strings.Contains(text, "Likely it") {
		t.Error("is not sure of what nine of ten do")
	}
	a.Draws.Stuck = 0.68
	if short := written(t, a, report.Options{Short: true}); !strings.Contains(short, "Pedal down: not at all") || strings.Contains(short, "0 s") {
		t.Errorf("the short report times a ride: %s", short)
	}
	for _, bad := range []string{"Pedal down", "0 km/h", "Distance", "Usable here", "Volts lost", "Reversed rolling"} {
		if strings.Contains(text, bad) {
			t.Errorf("holds %q", bad)
		}
	}
}

// What is worth buying is decided where the answer is made.
func TestWhatToBuyIsPrintedAsItWasMade(t *testing.T) {
	a := danger()
	a.Buy = append(a.Buy, answer.Purchase{Item: "Cutoff", Text: "one that opens at 15.5 V"})
	want := "WHAT TO BUY. Fuse: 20 A, the smallest that holds; right at the pack. Charger: one for li-ion cells that ends at 21 V. " +
		"Cutoff: one that opens at 15.5 V. HOW TO USE IT"
	if text := flat(t, a); !strings.Contains(text, want) {
		t.Errorf("lacks %q", want)
	}
	if text := flat(t, fine()); strings.Contains(text, "WHAT TO BUY") {
		t.Error("has a list although there is nothing to buy")
	}
}

// However long a report grows, every source, part, question and assumption stands in it.
func TestTheListOfSourcesIsWholeHoweverLongTheReport(t *testing.T) {
	long := danger()
	for i := range 300 {
		long.Habits = append(long.Habits, fmt.Sprint("Mind a thing of its own that takes a line of the report, number ", i, "."))
	}
	for name, a := range map[string]*answer.Assessment{"usual": danger(), "long": long} {
		text := flat(t, a)
		for _, want := range []string{
			"Primary: cfr-183-455 (33 CFR 183.455, overcurrent protection).", "Copy: child-charts; nobody-cites. Memory: changed-toy; iec-62133 (",
			"PART BY PART. NOT KNOWN: fuse (Not told: kind, amps and place of the fuse).", "wire.insulation: 80 C.",
		} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: lacks %q", name, want)
			}
		}
		for _, s := range a.Sources {
			if !strings.Contains(text, s.ID) && !strings.Contains(text, s.Text) {
				t.Errorf("%s: lacks the source %s", name, s.ID)
			}
		}
		for _, m := range a.Measure {
			if !strings.Contains(text, m.Enter) {
				t.Errorf("%s: does not say where %q is entered", name, m.Asks)
			}
		}
	}
}

func TestWhatMovesNothingStandsLastByTables(t *testing.T) {
	a := danger()
	a.Assumed = append(
		a.Assumed, answer.Assumed{Key: "original.pack.charge", Value: "100 %"}, answer.Assumed{Key: "original.wire.joints", Value: "6"},
		answer.Assumed{Key: "pack.housing", Value: "closed shell"},
	)
	want := "gears.ratio: 60:1 to 110:1. rider.mass: 15 to 24 kg. wire.insulation: 80 C. Of less effect: " +
		"[pack] charge 100 %; housing closed shell. [original.pack] as today charge. [original.wire] joints 6."
	if text := flat(t, a); !strings.Contains(text, want) {
		t.Errorf("lacks %q in %s", want, text)
	}
}
