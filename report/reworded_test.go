package report_test

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// sentences visits every string of an assessment that is there to be read and
// not to be told apart.
func sentences(a *answer.Assessment, visit func(*string)) {
	for i := range a.Findings {
		visit(&a.Findings[i].Title)
		visit(&a.Findings[i].Advice)
	}
	for i := range a.Notes {
		visit(&a.Notes[i].Text)
	}
	for i := range a.Buy {
		visit(&a.Buy[i].Text)
	}
	for _, list := range [][]string{a.Changes, a.Habits} {
		for i := range list {
			visit(&list[i])
		}
	}
	for i := range a.Readings {
		visit(&a.Readings[i].Explains)
	}
	for i := range a.Measured {
		visit(&a.Measured[i].Name)
		visit(&a.Measured[i].Says)
	}
	for i := range a.Assumed {
		visit(&a.Assumed[i].Why)
	}
	if a.Conflict != nil {
		visit(&a.Conflict.Words)
	}
	if a.Charge != nil {
		visit(&a.Charge.Right)
		for i := range a.Charge.Left {
			visit(&a.Charge.Left[i].Words)
		}
	}
	for _, text := range []*string{&a.Ride.EndedBy, &a.Ride.LastsUntil, &a.Cutoff.LeftForAWeek, &a.Pack.Reading} {
		visit(text)
	}
}

// tricky is an assessment whose sentences begin and end with what once told
// them apart.
func tricky() *answer.Assessment {
	a := danger()
	a.Findings[0].Title = "Possibly: nothing at all opens."
	a.Findings[1].Title = "Likely: it runs away."
	a.Findings[2].Advice = "The right charger is another one."
	a.Findings[5].Title = "The fuse is known to be missing."
	a.Notes = append(
		a.Notes,
		answer.Note{Topic: answer.TopicCharge, Text: "The right charger is made for li-ion."},
		answer.Note{Topic: answer.TopicCharge, Text: "Left plugged in for one week: it is gassed dry."},
		answer.Note{Topic: answer.TopicCharge, Text: a.Findings[3].Title}, // the same as a finding's title
	)
	a.Changes = append(a.Changes, "Charging: wait until it is cool.")
	a.Measured = append(a.Measured, answer.MeasuredFigure{Name: "the battery is worn", Says: "hardly"})
	a.Ride.End, a.Ride.EndedBy, a.Ride.ChargeLeft = answer.EndStandstill, "the pack was empty", 0.34
	return a
}

// No sentence decides what a report holds: reworded, all of them leave the same
// sections, changes, shopping list and order, with only the words replaced.
// That holds for each alone as well.
func TestRewordedSentencesLeaveTheReportAsItWas(t *testing.T) {
	whole := map[string]func() *answer.Assessment{"danger": danger, "tricky": tricky, "wide-us": wideUS, "bench": bench, "fine": fine}
	for name, make := range whole {
		var old []string
		sentences(make(), func(text *string) {
			if *text != "" && !slices.Contains(old, *text) {
				old = append(old, *text)
			}
		})
		reword(t, name, make, old)
		for _, one := range old {
			reword(t, name, make, []string{one})
		}
		if name == "tricky" && len(old) < 30 {
			t.Errorf("only %d sentences were reworded: the test looks in the wrong place", len(old))
		}
	}
}

// reword replaces the old sentences in the assessment and, in the other order,
// in the report, and wants the same bytes of both. Markdown and BBCode have no
// line ends within a sentence.
func reword(t *testing.T, name string, make func() *answer.Assessment, old []string) {
	t.Helper()
	fresh := map[string]string{}
	for i, text := range old {
		fresh[text] = fmt.Sprintf("Zzz%d yyy.", i)
	}
	reworded := make()
	sentences(reworded, func(text *string) {
		if other, ok := fresh[*text]; ok {
			*text = other
		}
	})
	long := slices.Clone(old) // the longest first, for one may be part of another
	slices.SortStableFunc(long, func(x, y string) int { return cmp.Compare(len(y), len(x)) })
	for _, format := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
		want := written(t, make(), report.Options{Format: format})
		for _, text := range long {
			for _, form := range printedForms(text) {
				want = strings.ReplaceAll(want, form, fresh[text])
			}
		}
		got := written(t, reworded, report.Options{Format: format})
		if want, got := headless(want), headless(got); want != got {
			t.Errorf("%s, %s, %d reworded: the report is another one\n%s", name, format, len(old), firstDifference(want, got))
		}
	}
}

// printedForms are the ways in which a report prints a sentence: with a capital,
// with a full stop.
func printedForms(text string) []string {
	capital := strings.ToUpper(text[:1]) + text[1:]
	stop := ""
	if !strings.HasSuffix(text, ".") {
		stop = "."
	}
	return []string{capital + stop, text + stop, capital, text}
}

// headless leaves out the first lines, which are the headline's own words.
func headless(text string) string {
	_, body, _ := strings.Cut(text, "\n\n")
	return body
}

// firstDifference shows the first lines that differ.
func firstDifference(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range min(len(w), len(g)) {
		if w[i] != g[i] {
			return fmt.Sprintf("-%s\n+%s", w[i], g[i])
		}
	}
	return fmt.Sprintf("%d lines and %d", len(w), len(g))
}
