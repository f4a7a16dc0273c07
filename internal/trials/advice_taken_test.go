package trials_test

import (
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/drive"
)

// taken is a finding that asks for a change, and that change made in the setup as
// its advice says.
type taken struct {
	code   string
	change answer.Change
	base   string
	set    string // fires it
	take   string // the advice, carried out; {1} is the first number of its words, {limit_a} its limit, {fuse}, {opens}, {delay} what the answer advises
	left   answer.Level
	why    string // where something of it is left: why that is right
}

// notInAnswers are findings of the library that no setup brings about.
var notInAnswers = map[string]string{
	battery.CodeLabelUnclear + " look up":             "answers tell it as a note beside the label; packages battery and ask have it",
	drive.CodeBoardVoltsUnknown + " look up":          "a setup always has the volts that its vehicle was made for, told or taken from the battery",
	drive.CodeLaunchUnknown + " look up":              "what a setup may hold can always be computed",
	charge.CodeChargedInParallel + " charger":         "only of two in series do the volts of a charger tell that it is for both",
	charge.CodeVoltsTooHigh + " wait before charging": "no built-in chemistry lowers its volts in the heat before it refuses to be charged at all",
}

// The table of findings in DEVELOPERS.md is made from the code (package policy
// holds it to that), so it names every change that any finding asks for.
func TestEveryChangeThatAFindingAsksForIsCarriedOut(t *testing.T) {
	t.Parallel()
	page, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	have := map[string]bool{}
	for _, row := range takens() {
		if row.left > answer.Fine && row.why == "" || row.left >= answer.FixFirst {
			t.Errorf("%s: something is left, and nobody says why that is right", row.code)
		}
		have[row.code+" "+string(row.change)] = true
	}
	asked := 0
	for line := range strings.SplitSeq(string(page), "\n") {
		cells := strings.Split(line, " | ")
		if len(cells) != 6 || !strings.HasPrefix(line, "| `") {
			continue
		}
		code := strings.Trim(cells[1], "`")
		for change := range strings.SplitSeq(cells[4], " or ") {
			if change == "-" || notInAnswers[code+" "+change] != "" {
				continue
			}
			if asked++; !have[code+" "+change] {
				t.Errorf("no row carries out what %s asks for: %s", code, change)
			}
		}
	}
	if asked < 90 {
		t.Errorf("%d changes in the table of findings: has its form changed?", asked)
	}
}

// Who takes advice must not be told the same again, nor something as grave that
// was not there before. Advice is for the vehicle in the middle: what turns up in
// few of the draws is left to them.
func TestAdviceCarriedOutRemovesItsFinding(t *testing.T) {
	t.Parallel()
	for i, row := range takens() {
		if !tried(i) {
			continue
		}
		t.Run(row.code+" "+string(row.change), func(t *testing.T) {
			t.Parallel()
			checkTaken(t, row)
		})
	}
}

func checkTaken(t *testing.T, row taken) {
	t.Helper()
	r := rigNamed(t, row.base).but(row.set)
	before, err := r.assess(64)
	if err != nil {
		t.Fatal(err)
	}
	i := slices.IndexFunc(before.Findings, func(f answer.Finding) bool {
		return f.Code == row.code && f.Level > answer.Fine && f.Change == row.change
	})
	if i < 0 {
		t.Fatalf("it does not fire: %s", strings.Join(findingsAt(before, watch), ", "))
	}
	f := before.Findings[i]
	take := spelled(row.take, f, before)
	after, err := r.but(take).assess(64)
	if err != nil {
		t.Fatalf("%s: the advice %q cannot be carried out as %q: %v", f.Title, f.Advice, take, err)
	}
	was := map[string]answer.Level{}
	for _, f := range before.Findings {
		was[f.Code] = max(was[f.Code], f.Level)
	}
	for _, g := range after.Findings {
		switch {
		case g.Code == row.code && g.Change == row.change && g.Level > row.left:
			t.Errorf("%q carried out as %q leaves %v (%v before): %s", f.Advice, take, g.Level, f.Level, g.Title)
		case g.Code != row.code && surely(g) && g.Level > was[g.Code] && g.Level >= max(f.Level, answer.FixFirst):
			t.Errorf("%q carried out as %q brings %v %s (%v before) for %v %s: %s / %s", f.Advice, take, g.Level, g.Code, was[g.Code], f.Level, f.Code, g.Title, g.Advice)
		}
	}
}

// spelled puts into a change what the advice says.
func spelled(take string, f answer.Finding, a *answer.Assessment) string {
	for i, number := range regexp.MustCompile(`\d+(\.\d+)?`).FindAllString(f.Advice, -1) {
		take = strings.ReplaceAll(take, fmt.Sprintf("{%d}", i+1), number)
	}
	take = strings.ReplaceAll(take, "{limit_a}", fmt.Sprintf("%.4g A", f.LimitA))
	if a.Path != nil && len(a.Path.FuseSizesA) > 0 {
		take = strings.ReplaceAll(take, "{fuse}", fmt.Sprintf("%g A", a.Path.FuseSizesA[0]))
	}
	if v := a.Cutoff.Advised; v != nil {
		take = strings.ReplaceAll(take, "{opens}", fmt.Sprintf("%g V", v.OpensAtV))
		take = strings.ReplaceAll(take, "{delay}", fmt.Sprintf("%g s", v.DelayS))
	}
	return take
}
