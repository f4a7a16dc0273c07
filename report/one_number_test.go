package report_test

import (
	"regexp"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// One figure has one number, wherever it is printed: every name with its likely
// value and its ends in the user's units, from all lengths and dialects.
func TestNoFigureHasTwoNumbers(t *testing.T) {
	odd := wideUS()
	odd.Ranges["launch.peak_battery_a"] = answer.Range{Low: 71, Likely: 88.4, High: 118.6}
	odd.Ranges["ride.lasts_pedal_min"] = answer.Range{Low: 0, Likely: 61.4, High: 131}
	odd.Ranges["ride.lasts_clock_min"] = answer.Range{Low: 0, Likely: 90.4, High: 191}
	odd.Charge = &answer.ChargeFigures{Match: answer.MatchYes, HoursToFull: ptr(2.23), UnplugAfterH: ptr(3.04)}
	odd.Ranges["charge.hours_to_full"] = answer.Range{Low: 2.11, Likely: 2.23, High: 2.31}
	odd.Findings = nil
	odd.Verdict = answer.Watch
	named := 0
	for name, a := range map[string]*answer.Assessment{"danger": danger(), "fine": fine(), "wide-us": wideUS(), "bench": bench(), "odd": odd} {
		seen := map[string]map[string]bool{}
		for _, o := range lengths() {
			for _, format := range []report.Format{report.FormatText, report.FormatMarkdown, report.FormatBBCode} {
				o.Format = format
				for _, f := range namedNumbers(written(t, a, o)) {
					if seen[f[0]] == nil {
						seen[f[0]] = map[string]bool{}
					}
					seen[f[0]][f[1]] = true
					named++
				}
			}
		}
		for figure, values := range seen {
			if len(values) > 1 {
				t.Errorf("%s: %q has the values %v", name, figure, values)
			}
		}
	}
	if named < 200 {
		t.Errorf("only %d named numbers were seen: the test looks in the wrong place", named)
	}
}

// figureNames are the names under which figures stand in more than one length.
const figureNames = "Pedal down|With the pauses|As you asked|Distance|Speed|First shove|Charged full in|Unplug after|Under load|It lasts"

// namedNumbers are the figures of a report: the name with "likely" or "ends",
// and the value in the units that stand first.
func namedNumbers(text string) [][2]string {
	text = regexp.MustCompile(`\[/?\w*\]|\[\*\]|\*\*|\\`).ReplaceAllString(text, "")
	text = strings.Join(strings.Fields(text), " ")
	const value = `\d[\d.]*(?: to \d[\d.]*)? (?:[A-Za-z][A-Za-z/]*|%)(?: \d+ (?:min|s)\b)?`
	pattern := regexp.MustCompile(`(` + figureNames + `):? (` + value + `)(?: \(([^;)]*))?`)
	var out [][2]string
	for _, m := range pattern.FindAllStringSubmatch(text, -1) {
		name, likely, ends := m[1], m[2], m[3]
		if name == "It lasts" { // the verdict says what the first figure says
			name = "Pedal down"
			if strings.Contains(text, "Under load") {
				name = "Under load"
			}
		}
		out = append(out, [2]string{name + " likely", likely})
		if strings.Contains(ends, " to ") && !strings.Contains(ends, "mi") || strings.Contains(ends, "min") {
			out = append(out, [2]string{name + " ends", ends})
		}
	}
	return out
}
