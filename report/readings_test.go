package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// readingsOf is the section on readings, on one line.
func readingsOf(t *testing.T, a *answer.Assessment) string {
	t.Helper()
	_, text, _ := strings.Cut(flat(t, a), "WHAT YOU READ, AND WHAT WAS FORETOLD. ")
	text, _, _ = strings.Cut(text, " WHAT ELSE THAT TELLS")
	return strings.TrimLeft(text, "- ")
}

func TestAReadingStandsBesideWhatWasForetold(t *testing.T) {
	for _, tt := range []struct {
		name string
		r    answer.Reading
		want string
	}{
		{
			"a usual error",
			answer.Reading{
				Name: "ride time", Text: "25 min", Unit: "s", Value: 1500, Error: 187,
				Before: answer.Range{Low: 1260, Likely: 2400, High: 10380}, After: answer.Range{Low: 1380, Likely: 1530, High: 1680},
			},
			"Ride time: 25 min, give or take 3 min as such readings usually are. Foretold: 21 min to 2 h 50 min by labels alone, 23 to 28 min with all readings.",
		},
		{
			"a stated error",
			answer.Reading{
				Name: "blocked current", Text: "20 to 24 A", Unit: "A", Value: 22, Error: 1.6, Stated: true,
				Before: answer.Range{Low: 33, Likely: 71, High: 129}, After: answer.Range{Low: 20, Likely: 22.1, High: 24},
			},
			"Blocked current: 20 to 24 A. Foretold: 33 to 129 A by labels alone, 20 to 24 A with all readings.",
		},
		{
			"left out, with words",
			answer.Reading{
				Name: "pull", Text: "40 N", Unit: "N", Value: 40, Error: 8, LeftOut: true, Explains: "it would need sand",
				Before: answer.Range{Low: 90, Likely: 120, High: 160}, After: answer.Range{Low: 100, Likely: 120, High: 140},
			},
			"140 N (22 to 31 lbf) with the others. Left out, because it contradicts the others. It would need sand.",
		},
		{
			"nothing was foretold",
			answer.Reading{
				Name: "rest volts", Text: "12.6 V", Unit: "V", Value: 12.6, Error: 0.05,
				Before: answer.Range{Low: 3, Likely: 2, High: 1}, After: answer.Exactly(12.6),
			},
			"Rest volts: 12.6 V, give or take 0.05 V as such readings usually are. Foretold: not known by labels alone, 12.6 V with all readings.",
		},
		{
			"only a number, a new unit, and no name",
			answer.Reading{
				Key: "measured.warmth", Unit: "K/min", Value: 3, Error: 1,
				Before: answer.Range{Low: 1, Likely: 2, High: 4}, After: answer.Range{Low: 2, Likely: 2.5, High: 3},
			},
			"The warmth of the measured: 3 K/min, give or take 1 K/min as such readings usually are. Foretold: 1 to 4 K/min by labels alone, 2 to 3 K/min with all readings.",
		},
		{
			"a temperature",
			answer.Reading{
				Name: "case", Text: "60 C", Unit: "degC", Value: 60, Error: 5,
				Before: answer.Range{Low: 40, Likely: 50, High: 90}, After: answer.Range{Low: 55, Likely: 60, High: 65},
			},
			"Case: 60 C, give or take 5 K as such readings usually are.",
		},
	} {
		a := danger()
		a.Readings, a.Conflict = []answer.Reading{tt.r}, nil
		if text := readingsOf(t, a); !strings.Contains(text, tt.want) {
			t.Errorf("%s: want %q, got %q", tt.name, tt.want, text)
		}
	}
}

func TestAConflictIsToldBeforeTheReadings(t *testing.T) {
	text := readingsOf(t, danger())
	for _, want := range []string{
		"Not all true: top speed; ride time by the clock", "Likeliest wrong: top speed; the answer does without it",
		"Nearly as likely: ride time by the clock", "By mere chance: honest readings disagree this much in 1 of 500",
		"They would need: The ratio of the gears at 42:1, 3.1 standard deviations from its middle",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	if !strings.HasPrefix(text, "Top speed and ride time cannot both be true.") {
		t.Errorf("does not begin with the conflict: %q", text)
	}
	a := danger()
	a.Conflict = &answer.Conflict{Readings: []string{"measured.top_speed"}, Likeliest: "measured.pull_force", P: 1e-9}
	text = readingsOf(t, a)
	for _, want := range []string{"Not all of these readings can be true.", "wrong: the pull force of the", "in fewer than 1 of 1000"} {
		if !strings.Contains(text, want) {
			t.Errorf("bare conflict: lacks %q in %q", want, text)
		}
	}
	if strings.Contains(text, "Nearly as likely") || strings.Contains(text, "They would need") {
		t.Error("bare conflict: speaks of what is not there")
	}
	if text := flat(t, fine()); strings.Contains(text, "WHAT YOU READ") {
		t.Error("a section without readings")
	}
}

func TestTheNextMeasurementSaysWhatItBrings(t *testing.T) {
	for name, tt := range map[string]struct {
		m          answer.Measurement
		want, lack string
	}{
		"all":     {answer.Measurement{Minutes: 0.42, Speed: 0.1, Amps: 0.55, Verdict: 0.21}, "What. How. (Narrows: time 42 %, speed 10 %, amps at a start 55 %, verdict 21 %.)", ""},
		"verdict": {answer.Measurement{Verdict: 0.084, Speed: 0.01}, "How. (Narrows: verdict 8.4 %.)", "speed 1 %"},
		"nothing": {answer.Measurement{Minutes: 0.02}, "What. How. WHAT WAS ASSUMED", "Narrows"},
	} {
		a := danger()
		tt.m.What, tt.m.How, tt.m.Key = "what", "How", "measured.x"
		a.Measure = []answer.Measurement{tt.m}
		text := flat(t, a)
		if !strings.Contains(text, tt.want) || tt.lack != "" && strings.Contains(text, tt.lack) {
			t.Errorf("%s: want %q without %q in %q", name, tt.want, tt.lack, text)
		}
	}
}

// A reading that the printed figures do not hold is named beside how sure they are; one that
// they hold, or that was left out, is not.
func TestThePageNamesAReadingThatItsFiguresDoNotHold(t *testing.T) {
	a := fine()
	r := answer.Reading{
		Key: "measured.top_speed", Name: "top speed", Text: "9 km/h", Unit: "m/s", Value: 2.5, Error: 0.25,
		After: answer.Range{Low: 2, Likely: 2.2, High: 2.4}, Fits: true, Explains: "the box claims 7 km/h",
	}
	page := func() string {
		a.Readings = []answer.Reading{r}
		return strings.Join(strings.Fields(written(t, a, report.Options{})), " ")
	}
	const says = "Top speed: read 9 km/h, computed 7.2 to 8.6 km/h"
	if text := page(); !strings.Contains(text, says) || !strings.Contains(text, "the box claims 7 km/h.") {
		t.Errorf("lacks %q:\n%s", says, text)
	}
	r.After.High = 2.6
	if text := page(); strings.Contains(text, "Top speed: read") {
		t.Errorf("it lies inside:\n%s", text)
	}
	r.After.High, r.LeftOut = 2.4, true
	if text := page(); strings.Contains(text, "Top speed: read") {
		t.Errorf("it was left out:\n%s", text)
	}
}
