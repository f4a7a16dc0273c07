package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// A page that sets the parts among things of its own shows what the whole one does.
func TestHTMLPartsAreTheWholePageInPieces(t *testing.T) {
	for name, a := range pages() {
		whole := htmlOf(t, a)
		parts, word, err := report.HTMLParts(a, func(code string) (answer.Explanation, bool) {
			return answer.Explanation{Code: code, Means: "It means that.", Hurts: "It hurts.", Limit: "From a book.", Do: "Do something."}, true
		})
		if err != nil {
			t.Fatal(err)
		}
		var joined strings.Builder
		for _, p := range parts {
			joined.WriteString(p.Markup)
			if p.Part == report.PartBand {
				joined.WriteString("<main>\n")
			}
		}
		joined.WriteString("</main>\n</body>\n</html>\n")
		if _, body, _ := strings.Cut(whole, "<body>\n"); body != joined.String() {
			t.Errorf("%s: the parts make another page", name)
		}
		if !strings.Contains(whole, `<p class="answer">`+word+"</p>") || !strings.HasPrefix(report.HTMLStyle(), between(whole, "<style>", "</style>")) {
			t.Errorf("%s: the page lacks the word %q or the style", name, word)
		}
	}
	if _, _, err := report.HTMLParts(&answer.Assessment{}, nil); err == nil {
		t.Error("an assessment that nobody finished gives parts")
	}
}

// Where nothing is computed yet, safety stands all the same.
func TestSafetyStandsWithoutAnAnswer(t *testing.T) {
	text := report.HTMLSafety()
	if strings.Count(text, "<li>") < 3 || !strings.Contains(text, "child") || strings.Contains(text, "<details") {
		t.Errorf("the safety lines without an answer are %q", text)
	}
}

// A page that puts a button beside each way out finds it by its title.
func TestEveryWayOutHasATitleOfItsOwn(t *testing.T) {
	a := danger()
	a.Ways = []answer.Way{
		{Title: "One", Verdict: answer.Watch, Steps: []string{"Do this."}},
		{Title: "Two", Verdict: answer.Fine, Steps: []string{"Do that."}},
	}
	parts, _, err := report.HTMLParts(a, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range parts {
		if first, _, _ := strings.Cut(p.Markup, "</section>"); p.Part == report.PartToDo && strings.Count(first, "<h3>") != len(a.Ways) {
			t.Errorf("%d titles for %d ways out", strings.Count(first, "<h3>"), len(a.Ways))
		}
	}
}

// between returns what stands between two marks, the first time.
func between(text, from, to string) string {
	_, rest, _ := strings.Cut(text, from)
	inner, _, _ := strings.Cut(rest, to)
	return inner
}
