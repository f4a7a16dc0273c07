package report_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// However crowded a page is, no charger is named on it without its limits.
func TestACrowdedPageKeepsTheLimitsOfACharger(t *testing.T) {
	const step = "another charger: for lead-acid, 29.4 V for the two in series, at most 2.7 A, stops by itself, plug centre negative as jack"
	long := strings.Repeat("all of what has to be fitted, and how, ", 4)
	for _, others := range []int{0, 3, 6} {
		a := danger()
		for range 12 {
			f := a.Findings[0]
			f.Title = long
			a.Findings = append(a.Findings, f)
		}
		w := answer.Way{Title: long, Steps: append([]string{step}, slices.Repeat([]string{long}, others)...)}
		a.Ways = []answer.Way{w, w, w}
		for _, f := range []report.Format{report.FormatText, report.FormatMarkdown, report.FormatBBCode} {
			text := strings.Join(strings.Fields(written(t, a, report.Options{Format: f})), " ")
			pages := strings.Split(text, "another charger: ")[1:]
			if len(pages) == 0 {
				t.Errorf("%v, %d others: no charger is named", f, others)
			}
			for _, page := range pages {
				if !strings.HasPrefix(page, strings.TrimPrefix(step, "another charger: ")) {
					t.Errorf("%v, %d others: cut off: %.120s", f, others, page)
				}
			}
		}
	}
}
