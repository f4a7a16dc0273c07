package reckon_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/reckon"
)

// Own rules, no outside source: what a reader of the list must be able to
// count on.
func TestEachChangeIsListedOnceAndStandsAlone(t *testing.T) {
	fix := func(c answer.Change, topic answer.Topic, advice string) answer.Finding {
		return answer.Finding{Code: "x", Level: answer.FixFirst, Topic: topic, Change: c, Advice: advice}
	}
	limit := func(a float64, advice string) answer.Finding {
		f := fix(answer.LimitCurrent, answer.TopicLaunch, advice)
		f.LimitA = a
		return f
	}
	danger := fix(answer.FitCharger, answer.TopicCharge, "Do not connect them.")
	danger.Level = answer.Danger
	none := answer.ChangeNone
	for name, c := range map[string]struct {
		list []answer.Finding
		want []string
	}{
		"nothing milder than fix first": {[]answer.Finding{{Level: answer.Watch, Advice: "Feel it."}}, nil},
		"one speed limit": {
			[]answer.Finding{fix(answer.LimitSpeed, answer.TopicSpeed, "5 km/h"), fix(answer.LimitSpeed, answer.TopicSpeed, "8 km/h")},
			[]string{"5 km/h"},
		},
		"the lowest current limit, not the first":  {[]answer.Finding{limit(60, "60 A"), limit(30, "30 A"), limit(0, "softer")}, []string{"30 A"}},
		"a limit with a number before one without": {[]answer.Finding{limit(0, "some limit"), limit(40, "40 A")}, []string{"40 A"}},
		"one controller against welding and for the limit": {
			[]answer.Finding{limit(60, "60 A."), fix(answer.FitController, answer.TopicLaunch, "Controller."), limit(0, "x")},
			[]string{"Controller. 60 A."},
		},
		"advice on charging says so": {[]answer.Finding{fix(none, answer.TopicCharge, "Read it.")}, []string{"Charging: Read it."}},
		"two doubts about the charger": {
			[]answer.Finding{
				{Level: answer.FixFirst, Change: answer.FitCharger, Topic: answer.TopicCharge, Advice: "Read it.", Decides: []string{answer.KeyChargerLabel, answer.KeyChargerOutput}},
				{Level: answer.FixFirst, Change: answer.FitCharger, Topic: answer.TopicCharge, Advice: "Ask.", Decides: []string{answer.KeyChargerLabel, answer.KeyChargerMadeFor}},
				{Level: answer.FixFirst, Change: answer.FitCharger, Topic: answer.TopicCharge, Advice: "Ask again.", Decides: []string{answer.KeyChargerMadeFor}},
			},
			[]string{"Do not use this charger before this is settled: AC or DC; for what kind of battery it is. Better, get one that is made for this pack."},
		},
		"a danger and a doubt about the charger": {
			[]answer.Finding{fix(answer.FitCharger, answer.TopicCharge, "Read it."), danger},
			[]string{"Do not use this charger with this pack. Get one that is made for this pack."},
		},
		"what to do with a charger that must not be used": {
			[]answer.Finding{danger, {Level: answer.FixFirst, Change: answer.LookUp, Topic: answer.TopicCharge, Item: answer.Charger, Advice: "Unplug it in time."}},
			[]string{"Charging: " + danger.Advice},
		},
		"what to look up of one that may be": {
			[]answer.Finding{{Level: answer.FixFirst, Change: answer.LookUp, Topic: answer.TopicCharge, Item: answer.Charger, Advice: "Unplug it in time."}},
			[]string{"Charging: Unplug it in time."},
		},
		"a wait among changes": {
			[]answer.Finding{fix(answer.WaitBeforeCharge, answer.TopicCharge, "Wait."), fix(none, answer.TopicPath, "Renew.")}, []string{"Renew."},
		},
		"nothing but a wait": {[]answer.Finding{fix(answer.WaitBeforeCharge, answer.TopicCharge, "Wait.")}, []string{"Charging: Wait."}},
		"less weight, and an easier ground": {
			[]answer.Finding{fix(answer.LoadLess, answer.TopicRide, "Let less ride."), fix(answer.LoadLess, answer.TopicRide, "Keep to level ground.")},
			[]string{"Let less ride.", "Keep to level ground."},
		},
		"what stands, and what crawls": {
			[]answer.Finding{
				{Level: answer.FixFirst, Change: answer.LoadLess, Fate: answer.FateCrawls, Advice: "Let go soon."},
				{Level: answer.FixFirst, Change: answer.LoadLess, Fate: answer.FateStuck, Advice: "Let go at once."},
			},
			[]string{"Let go at once."},
		},
		"what crawls alone": {[]answer.Finding{{Level: answer.FixFirst, Change: answer.LoadLess, Fate: answer.FateCrawls, Advice: "Let go soon."}}, []string{"Let go soon."}},
		"the same words twice": {
			[]answer.Finding{fix(none, answer.TopicPath, "Renew it."), fix(none, answer.TopicPath, "Renew it.")}, []string{"Renew it."},
		},
	} {
		if got := reckon.Changes(&answer.Assessment{Findings: c.list}); !slices.Equal(got, c.want) {
			t.Errorf("%s: got %q, want %q", name, got, c.want)
		}
	}
}

// Whoever is told to get another charger is told which.
func TestTheChargerToGetIsNamedWithTheStep(t *testing.T) {
	bad := answer.Finding{Level: answer.Danger, Change: answer.FitCharger, Topic: answer.TopicCharge, Advice: "No."}
	for _, tt := range []struct {
		right *answer.AdvisedCharger
		want  string
	}{
		{&answer.AdvisedCharger{Brief: "for lead-acid, 14.7 V, at most 2.1 A, stops by itself"}, "Do not use this charger with this pack. Get one for lead-acid, 14.7 V, at most 2.1 A, stops by itself."},
		{&answer.AdvisedCharger{Brief: "only the pack maker's own charger", Own: true}, "Do not use this charger with this pack. Get the pack maker's own."},
	} {
		a := &answer.Assessment{Findings: []answer.Finding{bad, bad}, Charge: &answer.ChargeFigures{Advised: tt.right}}
		if got := reckon.Changes(a); !slices.Equal(got, []string{tt.want}) {
			t.Errorf("got %q, want %q", got, tt.want)
		}
	}
}

// Whoever is told to fit a cutoff is told which.
func TestTheCutoffToFitIsNamedWithTheStep(t *testing.T) {
	a := fewDraws(t, map[string]string{"pack.label": "36 V 5 Ah", "pack.chemistry": "li-ion", "load.power": "150 W"})
	if a.Cutoff.Advised == nil || len(a.Changes) == 0 || !strings.HasPrefix(a.Changes[0], fmt.Sprintf("Fit a low-voltage cutoff that opens at %.3g V after ", a.Cutoff.Advised.OpensAtV)) {
		t.Errorf("advised %+v, told %q", a.Cutoff.Advised, a.Changes)
	}
}

func TestHabitsAreSaidOnceEach(t *testing.T) {
	list := []answer.Finding{{Habit: answer.HabitKeepClear}, {}, {Habit: answer.HabitLetGo}, {Habit: answer.HabitKeepClear}}
	if got, want := reckon.Habits(&answer.Assessment{Findings: list}), []string{answer.HabitKeepClear, answer.HabitLetGo}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// Of two pieces of advice on a fuse the one that names its size is told.
func TestTheFuseToFitIsNamedByItsSize(t *testing.T) {
	fuse := func(level answer.Level, unit, advice string) answer.Finding {
		return answer.Finding{Level: level, Topic: answer.TopicPath, Item: answer.Fuse, Change: answer.FitFuse, Unit: unit, Advice: advice}
	}
	list := []answer.Finding{fuse(answer.Danger, "s", "Fit a smaller one."), fuse(answer.FixFirst, "A", "Fit a 20 A fuse.")}
	if got, want := reckon.Changes(&answer.Assessment{Findings: list}), []string{"Fit a 20 A fuse."}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	if got, want := reckon.Changes(&answer.Assessment{Findings: list[:1]}), []string{"Fit a smaller one."}; !slices.Equal(got, want) {
		t.Errorf("alone: got %q, want %q", got, want)
	}
}
