package report_test

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// sentences visits every string of an assessment that is there to be read and
// not to be told apart, with the kind of its field.
func sentences(a *answer.Assessment, visit func(kind string, text *string)) {
	for i := range a.Findings {
		visit("title", &a.Findings[i].Title)
		visit("advice", &a.Findings[i].Advice)
	}
	for i := range a.Notes {
		visit("note", &a.Notes[i].Text)
	}
	for i := range a.Buy {
		visit("buy", &a.Buy[i].Text)
	}
	for i := range a.Changes {
		visit("change", &a.Changes[i])
	}
	for i := range a.Habits {
		visit("habit", &a.Habits[i])
	}
	for i := range a.Readings {
		visit("explains", &a.Readings[i].Explains)
	}
	for i := range a.Measured {
		visit("name", &a.Measured[i].Name)
		visit("says", &a.Measured[i].Says)
	}
	for i := range a.Assumed {
		visit("why", &a.Assumed[i].Why)
	}
	if a.Conflict != nil {
		visit("conflict", &a.Conflict.Words)
	}
	if a.Charge != nil {
		visit("right", &a.Charge.Right)
		for i := range a.Charge.Reasons {
			visit("reason", &a.Charge.Reasons[i])
		}
		for i := range a.Charge.Left {
			visit("left", &a.Charge.Left[i].Words)
		}
	}
	visit("ended by", &a.Ride.EndedBy)
	visit("lasts until", &a.Ride.LastsUntil)
	visit("week", &a.Cutoff.LeftForAWeek)
	visit("label", &a.Pack.Reading)
}

// distinct are all sentences of an assessment, each once, the longest first,
// for one may be part of another.
func distinct(a *answer.Assessment) []string {
	var list []string
	sentences(a, func(_ string, text *string) {
		if *text != "" && !slices.Contains(list, *text) {
			list = append(list, *text)
		}
	})
	slices.SortStableFunc(list, func(x, y string) int { return cmp.Compare(len(y), len(x)) })
	return list
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
	for _, title := range []string{"Warm.", "An uncommonly long wire it is.", "Much is lost."} { // in no order of their words
		a.Findings = append(a.Findings, answer.Finding{Level: answer.Watch, Title: title, Topic: answer.TopicPath, Item: answer.Wire})
	}
	a.Changes = append(a.Changes, "Charging: wait until it is cool.")
	a.Measured = append(a.Measured, answer.MeasuredFigure{Name: "the battery is worn", Says: "hardly"})
	a.Ride.End, a.Ride.EndedBy, a.Ride.ChargeLeft = answer.EndStandstill, "the pack was empty", 0.34
	return a
}

// whole are the assessments that are reworded, by name.
func whole() map[string]func() *answer.Assessment {
	return map[string]func() *answer.Assessment{
		"danger": danger, "tricky": tricky, "unjudged": unjudged, "wide-us": wideUS, "bench": bench, "fine": fine,
	}
}

// unjudged has a reason against the charger that is the title of a finding, but
// of none on the charger.
func unjudged() *answer.Assessment {
	a := danger()
	a.Findings[3].Item = ""
	return a
}

// No sentence decides what a report holds: reworded, all of them and each
// alone, they leave the same sections, changes, shopping list and order, with
// only the words replaced.
func TestRewordedSentencesLeaveTheReportAsItWas(t *testing.T) {
	for name, fresh := range whole() {
		old := distinct(fresh())
		if name == "tricky" && len(old) < 30 {
			t.Errorf("only %d sentences are reworded: the test looks in the wrong place", len(old))
		}
		words := map[string]string{}
		for i, text := range old {
			words[text] = fmt.Sprintf("Zzz%d yyy.", i)
		}
		reword(t, name, fresh, old, words)
		for _, one := range old {
			reword(t, name, fresh, []string{one}, words)
		}
	}
}

// reword replaces old sentences in the assessment and, in the other order, in
// the report, and wants the same bytes of both. Markdown and BBCode have no line
// ends within a sentence.
func reword(t *testing.T, name string, fresh func() *answer.Assessment, old []string, words map[string]string) {
	t.Helper()
	reworded := fresh()
	sentences(reworded, func(_ string, text *string) {
		if slices.Contains(old, *text) {
			*text = words[*text]
		}
	})
	for _, format := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
		want := written(t, fresh(), report.Options{Format: format, Full: true})
		for _, text := range old {
			for _, form := range printedForms(text) {
				want = strings.ReplaceAll(want, form, words[text])
			}
		}
		got := written(t, reworded, report.Options{Format: format, Full: true})
		if want, got := headless(want), headless(got); want != got {
			t.Errorf("%s, %s, %d reworded: the report is another one\n%s", name, format, len(old), firstDifference(want, got))
		}
	}
}

// Nor does it matter whether two fields hold the same sentence: each field in
// words of its own leaves as many sentences in the same places.
func TestSentencesOfTwoFieldsAreNeverHeldAgainstEachOther(t *testing.T) {
	for name, fresh := range whole() {
		reworded := fresh()
		words := map[string]string{}
		sentences(reworded, func(kind string, text *string) {
			if *text == "" {
				return
			}
			key := kind + ": " + *text
			if words[key] == "" {
				words[key] = fmt.Sprintf("Zzz%d yyy.", len(words))
			}
			*text = words[key]
		})
		for _, format := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
			want := headless(written(t, fresh(), report.Options{Format: format, Full: true}))
			for _, text := range distinct(fresh()) {
				for _, form := range printedForms(text) {
					want = strings.ReplaceAll(want, form, "Zzz yyy.")
				}
			}
			got := headless(written(t, reworded, report.Options{Format: format, Full: true}))
			got = regexp.MustCompile(`Zzz\d+ yyy\.`).ReplaceAllString(got, "Zzz yyy.")
			if want != got {
				t.Errorf("%s, %s: the report is another one\n%s", name, format, firstDifference(want, got))
			}
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
	forms := []string{capital + stop, text + stop, capital, text}
	if clause, why, cut := strings.Cut(text, ": "); cut && why != "" {
		forms = append(forms, clause+".") // of a title the first clause
	}
	return forms
}

// headless leaves out the first lines, which are the headline's own words.
func headless(text string) string {
	_, body, _ := strings.Cut(text, "\n\n")
	for _, title := range []string{"## Words\n", "[b]Words[/b]\n"} {
		if before, rest, found := strings.Cut(body, title); found {
			_, after, _ := strings.Cut(strings.TrimLeft(rest, "\n"), "\n\n")
			body = before + after
		}
	}
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
