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
		if !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool { return f.Level == a.Verdict && f.Advice == next }) {
			say("the next step is of no finding as grave as the verdict: %s", next)
		}
		if len(a.Changes) == 0 {
			say("something is to be fixed, and nothing is to be changed")
		}
	}
	return out
}

func hold(t *testing.T, a *answer.Assessment) {
	t.Helper()
	for _, c := range contradictions(a) {
		t.Errorf("contradiction: %s", c)
	}
}
