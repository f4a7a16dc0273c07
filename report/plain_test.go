package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// What a reader at home must be able to take at its word. Own rules, no
// outside source.

// flat is a text report on one line, so that wraps do not matter.
func flat(t *testing.T, a *packcheck.Assessment) string {
	t.Helper()
	return strings.Join(strings.Fields(written(t, a, report.Options{})), " ")
}

func TestNothingIsFoundToBeZeroWhereItIsNotKnown(t *testing.T) {
	for _, tt := range []struct {
		f          answer.Finding
		want, lack string
	}{
		{answer.Finding{Code: "fuse-place-unknown", Level: answer.Watch, Unit: "m", Limit: 0.178}, "Found not known, limit 178 mm", "Found 0"},
		{answer.Finding{Code: "cutoff-none", Level: answer.Danger, Unit: "V", Limit: 12.5}, "Found none, limit 12.5 V", "Found 0"},
		{answer.Finding{Code: "idle-harms-within-week", Level: answer.Danger, Unit: "h", Limit: 168}, "Found at once, limit 7 days", "Found 0"},
		{answer.Finding{Code: "breaker-alone", Level: answer.FixFirst, Unit: "A", Found: 20}, "Found 20 A (source", "limit 0"},
		{answer.Finding{Code: "weak-cell-reversed", Level: answer.Danger, Unit: "V", Found: -2.36}, "Found -2.36 V, limit 0 V", ""},
		{answer.Finding{Code: "charge-too-cold", Level: answer.Danger, Unit: "degC", Found: -5}, "Found -5 C (23 F), limit 0 C (32 F)", ""},
		{answer.Finding{Code: "motor-hot", Level: answer.Watch, Unit: "degC", Found: 371, Limit: 105}, "Found more than 250 C (482 F), limit 105 C", "371"},
		{answer.Finding{Code: "drop-large", Level: answer.Watch, Unit: "x", Found: 0.112, Limit: 0.1}, "Found 11 %, limit 10 %", "times"},
		{answer.Finding{Code: "way-to-stop", Unit: "m", Found: 3.17}, "INFO: Said.", "3.17"},
		{answer.Finding{Code: "blocked-over-pack", Level: answer.FixFirst, Unit: "A", Found: 78.4, Limit: 60}, "Found 78 A, limit 60 A", "78.4"},
		{answer.Finding{Code: "fuse-above-wire", Level: answer.Danger, Unit: "A", Found: 22.9, Limit: 22.5}, "Found 23 A, limit 22.5 A", ""},
		{answer.Finding{Code: "wheels-spin", Level: answer.Watch, Unit: "N", Found: 48.2, Limit: 48.2}, "At the limit of 48 N (11 lbf) (source", "Found"},
		{answer.Finding{Code: "x", Level: answer.Danger, Unit: "A", Found: 30.3, Limit: 30}, "Found 30.3 A, limit 30 A", ""},
	} {
		a := fine()
		tt.f.Title, tt.f.Source, tt.f.Topic = "Said.", "s", packcheck.TopicPath
		a.Findings = []answer.Finding{tt.f}
		text := flat(t, a)
		_, text, _ = strings.Cut(text, ": Said.")
		text, _, _ = strings.Cut(text, "What stops the drain")
		if strings.HasPrefix(tt.want, "INFO") {
			text = flat(t, a)
		}
		if !strings.Contains(text, tt.want) {
			t.Errorf("%s: lacks %q in %q", tt.f.Code, tt.want, text)
		}
		if tt.lack != "" && strings.Contains(text, tt.lack) && !strings.HasPrefix(tt.want, "INFO") {
			t.Errorf("%s: holds %q in %q", tt.f.Code, tt.lack, text)
		}
	}
}

func TestWhatWasMeasuredHoldsNoFigureThatIsNotThere(t *testing.T) {
	a := fine()
	a.Measured = []packcheck.MeasuredFigure{
		{Name: "the battery is flat", Says: "perhaps"},
		{Name: "the battery is worn", Says: "hardly"},
		{Name: "next test", Says: "Charge it and measure again."},
		{Name: "25 A fuse opened after", Measured: "2 s", Says: "32 to 61 A flowed"},
	}
	text := flat(t, a)
	for _, want := range []string{
		"The battery is flat: perhaps; worn: hardly", "Next test Charge it and measure again.", "25 A fuse opened after: measured 2 s. 32 to 61 A flowed.",
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
	for match, want := range map[string]string{
		"yes":           "Charger suits yes",
		"no":            "Charger suits no: do not connect it",
		"not shown":     "Charger suits not known: do not use it",
		"unknown":       "Charger suits not known: do not use it",
		"":              "Charger suits not known: do not use it",
		"not described": "No charger was described, so none was judged.",
	} {
		a := fine()
		a.Charge = &packcheck.ChargeFigures{Match: match, EndVPerCell: ptr(4.2), Reasons: []string{"The setup does not describe a charger."}}
		if text := flat(t, a); !strings.Contains(text, want) {
			t.Errorf("%q: lacks %q", match, want)
		}
	}
}

func TestForgottenOnTheChargerIsSaidOncePerOutcome(t *testing.T) {
	a := fine()
	for _, when := range []string{"one night", "one week", "one month"} {
		words := "It is gassed dry."
		if when == "one night" {
			words = "Some gas is lost."
		}
		a.Notes = append(a.Notes, packcheck.Note{Topic: packcheck.TopicCharge, Text: "Left plugged in for " + when + ": " + words})
	}
	text := flat(t, a)
	for _, want := range []string{"Left plugged in One night: Some gas is lost.", "Left plugged in One week, one month: It is gassed dry."} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	if strings.Contains(text, "Note: Left plugged") {
		t.Error("says it again as a note")
	}
}

func TestAVehicleThatDoesNotMoveHasNoRideFigures(t *testing.T) {
	a := danger()
	a.Ranges = nil
	a.Steady.SpeedKmh, a.Ride.DistanceKm, a.Ride.PedalMin, a.Ride.EndedBy = 0, 0, 0, "cannot move"
	text := flat(t, a)
	if !strings.Contains(text, "It does not get going") {
		t.Error("does not say that it does not move")
	}
	if short := written(t, a, report.Options{Short: true}); !strings.Contains(short, "Ride: none") || strings.Contains(short, "0 s") {
		t.Errorf("the short report times a ride: %s", short)
	}
	for _, bad := range []string{"Pedal down", "0 km/h", "Distance", "Usable energy", "Volts lost running", "Reversed at speed"} {
		if strings.Contains(text, bad) {
			t.Errorf("holds %q", bad)
		}
	}
}

func TestWhatToBuyNamesFuseCutoffAndCharger(t *testing.T) {
	buy := func(a *packcheck.Assessment) string {
		_, text, _ := strings.Cut(flat(t, a), "What to buy")
		text, _, _ = strings.Cut(text, "What was assumed")
		return text
	}
	right := packcheck.Note{Topic: packcheck.TopicCharge, Text: "The right charger is made for li-ion and ends at 21 V."}
	for _, tt := range []struct {
		name       string
		change     func(*packcheck.Assessment)
		want, lack string
	}{
		{"sizes of the band", func(*packcheck.Assessment) {}, "Fuse 20, 25, 30, 40 A, the smallest that holds; printed with 21 V or more; right at the pack.", "before you buy"},
		{"an assumed wire", func(a *packcheck.Assessment) {
			a.Assumed = append(a.Assumed, packcheck.Assumed{Key: "wire.gauge", Value: "0.8 to 2 mm2"})
		}, "read the size printed on the wire before you buy: it was taken as 0.8 to 2 mm2", ""},
		{"a band without a standard size", func(a *packcheck.Assessment) { a.Path.FuseSizesA = nil }, "Fuse none yet: no standard size lies between 18.6 A and 47.1 A.", "smallest"},
		{"no band", func(a *packcheck.Assessment) { a.Path.FuseLeastA, a.Path.FuseMostA = nil, nil }, "Fuse none yet: no rating suits", "smallest"},
		{"a fuse that lets the wire burn", func(a *packcheck.Assessment) {
			a.Findings = []answer.Finding{{Code: "fuse-fits"}, {Code: "short-burns-wire", Level: answer.Danger}}
		}, "Fuse 20 A, the smallest in the band; it must be smaller or faster than the one that is fitted", "40 A"},
		{"a fuse that suits", func(a *packcheck.Assessment) { a.Findings = []answer.Finding{{Code: "fuse-fits"}} }, "Fuse the one that is fitted suits", "40 A"},
		{"a fuse that suits only where nothing is amiss", func(a *packcheck.Assessment) {
			a.Findings = []answer.Finding{{Code: "fuse-fits"}, {Code: "fuse-above-wire", Level: answer.FixFirst}}
		}, "Fuse 20, 25, 30, 40 A", "the one that is fitted suits"},
		{"a cutoff that is there", func(*packcheck.Assessment) {}, "Cutoff the one that is fitted does", "15.5 V"},
		{"no cutoff", func(a *packcheck.Assessment) { a.Cutoff.OpensFirst = "nothing" }, "Cutoff one that opens at 15.5 V after 2 s and stays open", "fitted does"},
		{"a cutoff set wrong", func(a *packcheck.Assessment) {
			a.Findings = append(a.Findings, answer.Finding{Code: "cutoff-below-harm", Level: answer.Danger})
		}, "Cutoff one that opens at 15.5 V", "fitted does"},
		{"a charger that does not suit", func(*packcheck.Assessment) {}, "Charger made for li-ion and ends at 21 V.", ""},
		{"a charger that suits", func(a *packcheck.Assessment) { a.Charge.Match = "yes" }, "Charger the one that you have suits", "ends at 21 V"},
		{"contacts that weld", func(a *packcheck.Assessment) {
			a.Findings = append(
				a.Findings,
				answer.Finding{Code: "contacts-may-weld", Level: answer.Danger},
				answer.Finding{Code: "blocked-over-pack", Level: answer.FixFirst, Unit: "A", Limit: 60},
				answer.Finding{Code: "launch-over-joint", Level: answer.Watch, Unit: "A", Limit: 40.7},
			)
		}, "Controller a speed control for 21 V or more with a current limit of 40 A or less.", ""},
	} {
		a := danger()
		a.Findings, a.Notes = nil, []packcheck.Note{right}
		tt.change(a)
		text := buy(a)
		if !strings.Contains(text, tt.want) || tt.lack != "" && strings.Contains(text, tt.lack) {
			t.Errorf("%s: want %q without %q, got %q", tt.name, tt.want, tt.lack, text)
		}
	}
}

func TestTheListOfSourcesIsShortForReadersAndWholeForPrograms(t *testing.T) {
	text := flat(t, danger())
	for _, id := range []string{"cfr-183-455: ", "iec-62133: ", "changed-toy: ", "vehicle-trade: "} {
		if !strings.Contains(text, "- "+id) {
			t.Errorf("the source %q of a finding, a caution or a weighty assumption is not listed", id)
		}
	}
	if strings.Contains(text, "nobody-cites") || !strings.Contains(text, "Left out here: 1. The JSON form of this report holds them all and whole") {
		t.Error("lists what nothing weighty rests on, or does not say that it is left out")
	}
	if !strings.Contains(written(t, danger(), report.Options{Format: report.FormatJSON}), `"nobody-cites"`) {
		t.Error("JSON lacks a source")
	}
}

func TestWhatMovesNothingIsAssumedInOneLine(t *testing.T) {
	a := danger()
	a.Assumed = append(a.Assumed, packcheck.Assumed{Key: "controller.kind", Value: "contacts", Why: "the hardest launch"})
	text := flat(t, a)
	if !strings.Contains(text, "- controller.kind: contacts (the hardest launch)") {
		t.Error("what findings rest on lost its reason")
	}
	if !strings.Contains(text, "- gears.ratio: 60:1 to 110:1 (not given; usual for this can size)") {
		t.Error("a weighty assumption lost its reason")
	}
	if !strings.Contains(text, "Also assumed, as one value or with little effect on time, speed and launch current: pack.charge: 100 %.") {
		t.Error("what moves nothing is not in the line for it")
	}
}
