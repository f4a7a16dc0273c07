package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// triedOn returns the parts of an answer with something tried on it, or nothing.
func triedOn(t *testing.T, a *answer.Assessment, tried *report.Tried) map[report.Part]string {
	t.Helper()
	parts, _, err := report.HTMLPartsTried(a, nil, tried)
	if err != nil {
		t.Fatal(err)
	}
	out := map[report.Part]string{}
	for _, p := range parts {
		out[p.Part] = p.Markup
	}
	return out
}

func TestWhatIsOnlyTriedSaysSoWhereverItCouldBeTakenForToday(t *testing.T) {
	a := danger()
	tried := &report.Tried{Steps: []string{"a cutoff & <more>", "a fuse"}, Today: "NO"}
	for _, level := range []answer.Level{answer.Fine, answer.Watch, answer.FixFirst, answer.Danger} {
		a.Verdict = level
		plain, shown := triedOn(t, a, nil), triedOn(t, a, tried)
		for _, want := range []string{" of these", " fitted:</p>", "<li>a cutoff &amp; &lt;more&gt;</li>", "Today, without: NO."} {
			if !strings.Contains(shown[report.PartBand], want) || strings.Contains(plain[report.PartBand], want) {
				t.Errorf("%v: the band has %q where it must not, or has it not: %s", level, want, shown[report.PartBand])
			}
		}
		figures := shown[report.PartFigures]
		if !strings.Contains(figures, " with these fitted</span>") || strings.Contains(figures, " now</span>") || !strings.Contains(plain[report.PartFigures], " now</span>") {
			t.Errorf("%v: the legend takes what is tried for what is: %s", level, figures)
		}
		todo := shown[report.PartToDo]
		if !strings.Contains(todo, "<span>a fuse</span>") || strings.Contains(todo, "that is fitted") {
			t.Errorf("%v: what is tried has still to be bought: %s", level, todo)
		}
	}
}

func TestFiguresOfWhatMustNotBeRiddenAreNoPromise(t *testing.T) {
	a := danger()
	for level, want := range map[answer.Level]string{
		answer.Danger: "<h2>As it is now, not for ", answer.FixFirst: "<h2>As it is now, before it is put right</h2>", answer.Watch: "<h2>In figures</h2>",
	} {
		a.Verdict = level
		if got := triedOn(t, a, nil)[report.PartFigures]; !strings.Contains(got, want) {
			t.Errorf("%v: want %q in %s", level, want, got)
		}
	}
}

func TestBesideAWayOutThereIsOneListOfParts(t *testing.T) {
	a := danger()
	a.Buy = []answer.Purchase{{Item: "Fuse", Text: "10, 15 A"}, {Item: "Charger", Text: "only the pack maker's own charger"}}
	if got := triedOn(t, a, nil)[report.PartToDo]; !strings.Contains(got, "10, 15 A") {
		t.Errorf("without a way out the fuse is not to be bought: %s", got)
	}
	a.Ways = []answer.Way{{Title: "One", Verdict: answer.Watch, Steps: []string{"a 10 A fuse"}}}
	got := triedOn(t, a, nil)[report.PartToDo]
	if strings.Contains(got, "10, 15 A") || !strings.Contains(got, "Charger:</b> Only the pack maker") && !strings.Contains(got, "Charger:</b> only the pack maker") {
		t.Errorf("two lists, or no charger: %s", got)
	}
}

func TestOneLineSaysTheAnswerAndWhatItTakes(t *testing.T) {
	a := danger()
	for _, c := range []struct {
		level answer.Level
		tried *report.Tried
		want  string
	}{
		{answer.Watch, &report.Tried{Steps: []string{"a", "b", "c", "d"}, Today: "NO"}, "TRIED: yes with care, only once all 4 are fitted (today: NO)"},
		{answer.Watch, &report.Tried{Steps: []string{"a"}}, "TRIED: yes with care, only once it is fitted"},
		{answer.Danger, &report.Tried{Steps: []string{"a", "b"}, Today: "NO"}, "TRIED: NO, even with all 2 fitted (today: NO)"},
		{answer.Watch, nil, "YES, WITH CARE"},
	} {
		a.Verdict = c.level
		if got, err := report.InFew(a, c.tried); err != nil || got != c.want {
			t.Errorf("%v %v: %q and %v, want %q", c.level, c.tried, got, err, c.want)
		}
	}
	a.Verdict = answer.Danger
	if got, err := report.InFew(a, nil); err != nil || !strings.HasPrefix(got, "NO: ") || len(got) > 100 {
		t.Errorf("%q and %v, want NO and why", got, err)
	}
	if _, err := report.InFew(&answer.Assessment{}, nil); err == nil {
		t.Error("an unfinished answer is told in a line")
	}
}
