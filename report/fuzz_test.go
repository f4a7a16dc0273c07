package report_test

import (
	"encoding/xml"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// FuzzText puts any string wherever the assessment holds one, and any number
// wherever a finding holds one.
func FuzzText(f *testing.F) {
	f.Add("", 0.0, 0)
	f.Add(strings.Repeat("long ", 60), 1e300, 3)
	f.Add(strings.Repeat("x", 300), -1e-300, 7)
	f.Add("``` ~~~~ [/code] </pre> \x00\x1b[2J \u202e \U0001F69C \xff\xfe ......... @@@a", 1.0/3, 14)
	f.Fuzz(func(t *testing.T, s string, v float64, where int) {
		a := danger()
		a.Title, a.Headline = s, [3]string{"danger " + s, s, s}
		a.Pack.Chemistry, a.Pack.Reading, a.Ride.EndedBy, a.Cutoff.OpensFirst = s, s, s, s
		a.Path.Elements[0].Name, a.Measured[0].Name, a.Charge.Match, a.Launch.AboveS[0].Part = s, s, s, s
		finding := &a.Findings[uint(where)%uint(len(a.Findings))]
		finding.Title, finding.Advice, finding.Unit, finding.Source, finding.Guess = s, s, s, s, s
		finding.Topic, finding.Item, finding.Certainty, finding.Share = answer.Topic(s), answer.Item(s), answer.Certainty(where%4), v
		finding.Found, finding.Limit = v, -v
		a.Pack.MassKg, a.Ride.PedalMin, a.Cutoff.ChatterCount = v, v, where
		a.Ranges["ride.distance_km"] = answer.Range{Low: -v, Likely: 0, High: v}
		a.Readings[0].Name, a.Readings[0].Unit, a.Readings[0].Text, a.Readings[0].Explains = s, s, s, s
		a.Readings[0].Error, a.Readings[0].Before.Low = v, -v
		a.Conflict.Words, a.Conflict.Readings[0], a.Conflict.P, a.Conflict.Pushed[0].Key = s, s, v, s
		a.Draws.Stuck, a.Draws.Inside, a.Draws.ShareErr, a.Ride.EndShare[0].Name = v, v, v, s
		a.Buy[0].Item, a.Charge.Right, a.Charge.Left[0].After, a.Measure[0].Key = s, s, s, s
		a.Assumed = append(a.Assumed, answer.Assumed{Key: s, Value: s, Why: s})
		a.Cautions = append(a.Cautions, s)
		switch where % 3 { // one length at a time: they take long together
		case 0:
			if !strings.Contains(s, "N") && !strings.Contains(s, "I") && !strings.ContainsAny(s, "<%") {
				checkPage(t, "page", a)
			}
			return
		case 1:
			if text := htmlOf(t, courses(a)); xml.Unmarshal([]byte(text), new(any)) != nil {
				t.Error("HTML is not well formed")
			}
			return
		}
		for _, short := range []bool{false, true} {
			for _, format := range report.Formats() {
				text := written(t, a, report.Options{Format: format, Short: short, Full: true})
				switch {
				case !utf8.ValidString(text):
					t.Errorf("%s is not UTF-8", format)
				case short && strings.Count(text, "\n") > 10:
					t.Errorf("short %s has more than ten lines:\n%s", format, text)
				case short && format == report.FormatText:
					checkShortSafety(t, "short", text)
				}
				if format == report.FormatText && !strings.Contains(s, "N") && !strings.Contains(s, "I") &&
					!strings.ContainsAny(s, "<%") {
					columns := report.FullColumns
					if short {
						columns = report.Columns
					}
					checkText(t, "text", columns, text)
				}
			}
		}
	})
}
