package trials_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/wiring"
)

// isDead are the findings after which a battery is charged no more.
func isDead(f answer.Finding) bool {
	return slices.Contains([]string{charge.CodeNeverRecharge, charge.CodeDeadBlock, charge.CodeOvercharged, charge.CodeTooLow}, f.Code) && f.Level == answer.Danger
}

// invites are sentences that ask for a battery to be charged or used.
func invites(text string) bool {
	low := strings.ToLower(text)
	for _, s := range []string{"charge it now", "try one charge", "charge it full", "charge it at its", "charge it within", "top it up", "top the pack up", "charge it the same day", "and charge it", "charge the pack"} {
		if strings.Contains(low, s) {
			return true
		}
	}
	return false
}

// contradictions lists what in one answer cannot all be followed.
func contradictions(a *answer.Assessment) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	at := func(level answer.Level, is func(answer.Finding) bool) (answer.Finding, bool) {
		i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Level >= level && is(f) })
		if i < 0 {
			return answer.Finding{}, false
		}
		return a.Findings[i], true
	}
	buys := map[string]string{}
	for _, p := range a.Buy {
		buys[p.Item] = p.Text
	}
	has := func(change answer.Change) func(answer.Finding) bool {
		return func(f answer.Finding) bool { return f.Change == change }
	}
	if dead, is := at(answer.Danger, isDead); is {
		for _, f := range a.Findings {
			if f.Level > answer.Fine && invites(f.Advice) {
				say("%s says that it is charged no more; %s: %s", dead.Code, f.Code, f.Advice)
			}
		}
		for _, text := range slices.Concat(a.Changes, a.Habits, a.Headline[:]) {
			if invites(text) {
				say("%s says that it is charged no more; and yet: %s", dead.Code, text)
			}
		}
		if a.Charge.HoursToFull != nil || buys["Charger"] == "the one that you have suits" {
			say("%s says that it is charged no more; and yet hours to full, or a charger that suits", dead.Code)
		}
	}
	if f, is := at(answer.FixFirst, has(answer.FitCharger)); is {
		if a.Charge.Match == answer.MatchYes || buys["Charger"] == "the one that you have suits" {
			say("%s wants another charger; and yet: match %s, %s", f.Code, a.Charge.Match, buys["Charger"])
		}
	}
	if a.Charge.Match == answer.MatchNo {
		if a.Charge.HoursToFull != nil {
			say("the charger must not be connected, and hours to full are told")
		}
		if _, is := at(answer.FixFirst, func(f answer.Finding) bool { return f.Topic == answer.TopicCharge }); !is {
			say("the charger must not be connected, and no finding says why")
		}
	}
	fuse := buys["Fuse"]
	sizes := a.Path != nil && len(a.Path.FuseSizesA) > 0
	for _, f := range a.Findings {
		if f.Level == answer.Fine || f.Item != answer.Fuse || f.Topic != answer.TopicPath {
			continue
		}
		switch {
		case f.Change == answer.FitFuse && strings.HasPrefix(fuse, "the one that is fitted suits"):
			say("%v %s wants another fuse; and yet: %s", f.Level, f.Code, fuse)
		case f.Change == answer.FitWire && f.Level >= answer.FixFirst && sizes:
			say("%s wants another wire first; and yet ratings suit: %v", f.Code, a.Path.FuseSizesA)
		case f.Change == answer.FitFuse && strings.Contains(f.Advice, "Fit a") && strings.HasPrefix(fuse, "none yet"):
			say("%s: %s; and yet: %s", f.Code, f.Advice, fuse)
		case f.Code == wiring.CodeFuseFits && strings.HasPrefix(fuse, "none yet"):
			say("%s; and yet: %s", f.Title, fuse)
		}
	}
	if f, is := at(answer.FixFirst, has(answer.FitCutoff)); is && buys["Cutoff"] == "the one that is fitted does" {
		say("%s wants another cutoff; and yet: %s", f.Code, buys["Cutoff"])
	}
	if _, is := at(watch, func(f answer.Finding) bool { return f.Code == cutoff.CodeMustLatch }); is && buys["Cutoff"] == "the one that is fitted does" {
		say("one that latches is wanted, and the one that is fitted does")
	}
	if f, is := at(answer.FixFirst, func(f answer.Finding) bool { return f.LimitA > 0 && f.Change == answer.LimitCurrent }); is {
		if low, is := at(answer.FixFirst, func(g answer.Finding) bool {
			return g.LimitA > 0 && g.Change == answer.LimitCurrent && !strings.Contains(strings.Join(a.Changes, " "), fmt.Sprintf("%.0f A", g.LimitA)) && g.LimitA < 0.9*f.LimitA && strings.Contains(g.Advice, fmt.Sprintf("%.0f A", g.LimitA))
		}); is {
			say("%s wants a limit of %.0f A, the list of changes a higher one: %v", low.Code, low.LimitA, a.Changes)
		}
	}
	if hot, is := at(answer.FixFirst, func(f answer.Finding) bool { return f.Code == battery.CodeTooCold }); is {
		if f, is := at(watch, func(f answer.Finding) bool { return f.Code == charge.CodeTooHot && f.Change == answer.WaitBeforeCharge }); is {
			say("%s and %s", hot.Code, f.Code)
		}
	}
	if a.Verdict >= answer.FixFirst {
		next := a.Headline[2]
		if !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
			return (f.Level == a.Verdict || f.Code == a.First().Code) && (f.Advice != "" && strings.HasSuffix(next, f.Advice) || f.Item == answer.Charger && a.ChargerOut() && strings.HasPrefix(next, "Do not use this charger"))
		}) {
			say("the next step is of no finding as grave as the verdict: %s", next)
		}
		if len(a.Changes) == 0 {
			say("something is to be fixed, and nothing is to be changed")
		}
	}
	return out
}

// Each of these answers contradicts itself, so that the search above can fail.
func TestContradictionsAreSeen(t *testing.T) {
	t.Parallel()
	hours, amps := 3.0, 15.0
	for name, a := range map[string]answer.Assessment{
		"charge a dead battery": {
			Charge: &answer.ChargeFigures{}, Habits: []string{answer.HabitPackOff},
			Findings: []answer.Finding{{Code: charge.CodeDeadBlock, Level: answer.Danger}},
		},
		"a charger that suits and must not be used": {
			Charge:   &answer.ChargeFigures{Match: answer.MatchYes},
			Findings: []answer.Finding{{Level: answer.FixFirst, Change: answer.FitCharger}},
		},
		"hours on a charger that is refused": {
			Charge:   &answer.ChargeFigures{Match: answer.MatchNo, HoursToFull: &hours},
			Findings: []answer.Finding{{Level: answer.FixFirst, Topic: answer.TopicCharge}},
		},
		"a rating that suits and wire to be fitted first": {
			Charge: &answer.ChargeFigures{}, Path: &answer.PathFigures{FuseSizesA: []float64{amps}},
			Findings: []answer.Finding{{Level: answer.FixFirst, Item: answer.Fuse, Topic: answer.TopicPath, Change: answer.FitWire}},
		},
		"a fitted fuse that suits and another to be fitted": {
			Charge: &answer.ChargeFigures{}, Buy: []answer.Purchase{{Item: "Fuse", Text: "the one that is fitted suits"}},
			Findings: []answer.Finding{{Level: answer.Watch, Item: answer.Fuse, Topic: answer.TopicPath, Change: answer.FitFuse}},
		},
		"a fitted cutoff that does and another to be fitted": {
			Charge: &answer.ChargeFigures{}, Buy: []answer.Purchase{{Item: "Cutoff", Text: "the one that is fitted does"}},
			Findings: []answer.Finding{{Level: answer.FixFirst, Change: answer.FitCutoff}},
		},
		"a next step of nothing grave": {
			Charge: &answer.ChargeFigures{}, Verdict: answer.FixFirst, Headline: [3]string{"", "", "Sing."}, Changes: []string{"Fit."},
			Findings: []answer.Finding{{Level: answer.FixFirst, Advice: "Fit."}},
		},
	} {
		if len(contradictions(&a)) == 0 {
			t.Errorf("%s: not seen", name)
		}
	}
}
