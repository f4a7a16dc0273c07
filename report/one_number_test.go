package report_test

import (
	"regexp"
	"slices"
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
const figureNames = "Pedal down|With the pauses|As you asked|Distance|Speed|Amps at a start|Charged full in|Unplug after|Under load|It lasts"

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

// The ratio of a finding's sentence is that of the figures, and a figure of those
// vehicles alone that have a finding is told as theirs, beside that of all.
func TestAFindingsFigureIsThatOfTheFiguresOrToldAsOfSome(t *testing.T) {
	a := danger()
	a.Original.SpeedRatio = ptr(1.794)
	a.Ranges["original.speed_ratio"] = answer.Range{Low: 1.581, Likely: 1.794, High: 2.152}
	a.Findings = append(
		a.Findings,
		answer.Finding{Code: "faster", Level: answer.FixFirst, Harm: answer.Child, Title: "It goes 1.8 times as fast as the original.", Found: 1.7944, Limit: 1.1, Unit: "x"},
		answer.Finding{Code: "fast", Level: answer.FixFirst, Harm: answer.Child, Title: "Its speed is too much.", Found: 11.4 / 3.6, Limit: 2.7, Unit: "m/s", Certainty: answer.Likely, Share: 0.52},
		answer.Finding{Code: "worn", Level: answer.Watch, Title: "The pack holds 73 % of what it held.", Found: 0.73, Limit: 0.8, Unit: "share", Want: answer.Above, Certainty: answer.Possible, Share: 0.2},
	)
	for _, o := range lengths() {
		text := strings.Join(strings.Fields(written(t, a, o)), " ")
		if n := ratios(text); len(n) > 1 {
			t.Errorf("the ratio of speeds is %v in %s", n, text)
		}
		for _, f := range ofSome(text) {
			t.Errorf("%q is not told as of some", f)
		}
	}
	full := strings.Join(strings.Fields(written(t, a, report.Options{Full: true})), " ")
	for _, want := range []string{"speed 1.8 (1.6 to 2.2)", "Likely, in 5 of 10: Its speed is too much. (11 km/h in these, at most 9.7 km/h;"} {
		if !strings.Contains(full, want) {
			t.Errorf("lacks %q: %s", want, full)
		}
	}
	for _, unmarked := range []string{"* FIX FIRST (child): Likely (5 of 10): Its speed is too much. (11 km/h, right: at most", "* WATCH: Likely, in 5 of 10: It is fast. (11 km/h, at most"} {
		if len(ofSome(unmarked)) == 0 {
			t.Errorf("the test does not see %q", unmarked)
		}
	}
	if len(ratios("It goes 1.8 times as fast as the original. Now over then: speed 1.79 (1.58 to 2.15)")) < 2 {
		t.Error("the test does not see a ratio with two numbers")
	}
}

// ratios are the ratios of speeds that a report tells of all vehicles.
func ratios(text string) []string {
	var seen []string
	for _, m := range regexp.MustCompile(`(?:It goes|Now over then: speed) ([\d.]+)`).FindAllStringSubmatch(text, -1) {
		if !slices.Contains(seen, m[1]) {
			seen = append(seen, m[1])
		}
	}
	return seen
}

// ofSome are the figures in the brackets of findings that hold in some vehicles, where
// nothing says that they are of those.
func ofSome(text string) []string {
	var list []string
	for _, m := range regexp.MustCompile(`\* [A-Z ]+(?: \([a-z]+\))?: (?:Likely|Possibly|Seldom)[^:]*: [^()]*\((-?\d[^,;)]*)[,;)]`).FindAllStringSubmatch(text, -1) {
		if !strings.HasSuffix(m[1], " in these") {
			list = append(list, m[1])
		}
	}
	return list
}
