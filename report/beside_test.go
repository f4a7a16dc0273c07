package report_test

import (
	"bytes"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// One text has the page and, above the safety lines, what stands beside it; nothing
// of either is left out, and it stays short enough for a forum.
func TestAnAnswerAndWhatStandsBesideItAreOneText(t *testing.T) {
	a, c := danger(), comparison(danger(), fine())
	for _, f := range []report.Format{report.FormatText, report.FormatMarkdown, report.FormatBBCode} {
		var out bytes.Buffer
		if err := report.WriteBeside(&out, a, c, report.Options{Format: f}); err != nil {
			t.Fatal(err)
		}
		flat := func(text string) string { // whatever the mark of a heading is
			return strings.ToLower(strings.Join(strings.Fields(strings.NewReplacer("#", "", "[b]", "", "[/b]", "").Replace(text)), " "))
		}
		got := flat(out.String())
		_, body, _ := strings.Cut(flat(compared(t, c, f)), "which and why") // below its lead and title
		body = strings.TrimRight(body[:strings.LastIndex(body, "safety")], " ")
		whole := flat(written(t, a, report.Options{Format: f}))
		at := strings.LastIndex(whole, "safety")
		if len(body) < 200 || !strings.Contains(got, body) {
			t.Errorf("%s: the comparison is not whole: want %q in %q", f, body, got)
		}
		if !strings.HasPrefix(got, whole[:at]) || !strings.HasSuffix(got, whole[at:]) {
			t.Errorf("%s: the page is not whole: %q", f, got)
		}
		if out.Len() > 2*report.PageCharacters {
			t.Errorf("%s: %d characters", f, out.Len())
		}
	}
	for _, f := range []report.Format{report.FormatJSON, report.FormatHTML, "exe"} {
		if err := report.WriteBeside(&bytes.Buffer{}, a, c, report.Options{Format: f}); err == nil {
			t.Errorf("%s is written", f)
		}
	}
	if report.WriteBeside(&bytes.Buffer{}, &answer.Assessment{}, c, report.Options{}) == nil || report.WriteBeside(&bytes.Buffer{}, a, &answer.Comparison{}, report.Options{}) == nil {
		t.Error("what nobody finished is written")
	}
}
