package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// A way out that the page has no room for is named at its end: its first lines speak of it.
func TestThePageNamesTheWaysThatItHasNoRoomFor(t *testing.T) {
	left := 0
	for n := range 12 {
		a := danger()
		for range 3 {
			way := answer.Way{Title: "Keep it", Verdict: answer.Watch, Wiring: true}
			for range n {
				way.Steps = append(way.Steps, strings.Repeat("a part that takes words ", 4))
			}
			a.Ways = append(a.Ways, way)
			text := written(t, a, report.Options{})
			for i := range a.Ways {
				letter := "ABC"[i : i+1]
				if strings.Contains(text, "\n"+letter+". YES") {
					continue
				}
				left++
				if _, end, _ := strings.Cut(text, "\nFull report: "); !strings.Contains(end, letter) {
					t.Errorf("with %d ways of %d steps nothing is said of way %s:\n%s", len(a.Ways), n, letter, text)
				}
			}
		}
	}
	if left < 6 {
		t.Errorf("only %d ways had no room: the pages show nothing", left)
	}
}
