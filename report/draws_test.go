package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// Own rules for words, no outside source; the shares at which a certainty
// begins are those of [answer.Certainty].

func TestASharePrintsAsPeopleSayIt(t *testing.T) {
	for _, tt := range []struct {
		certainty answer.Certainty
		share     float64
		want      string
	}{
		{answer.Plain, 1, "WATCH: Said."},
		{answer.Plain, 0.9, "WATCH: Said."},
		{answer.Likely, 0.89, "WATCH: Likely, in 9 of 10 vehicles like this: Said."},
		{answer.Likely, 0.5, "WATCH: Likely, in 5 of 10 vehicles like this: Said."},
		{answer.Possible, 0.49, "WATCH: Possibly, in 5 of 10 vehicles like this: Said."},
		{answer.Possible, 0.3, "WATCH: Possibly, in 3 of 10 vehicles like this: Said."},
		{answer.Possible, 0.1, "WATCH: Possibly, in 1 of 10 vehicles like this: Said."},
		{answer.Rare, 0.098, "WATCH: Seldom, in 1 of 11 vehicles like this: Said."},
		{answer.Rare, 0.094, "WATCH: Seldom, in 1 of 11 vehicles like this: Said."},
		{answer.Rare, 0.084, "WATCH: Seldom, in 1 of 12 vehicles like this: Said."},
		{answer.Rare, 0.05, "WATCH: Seldom, in 1 of 20 vehicles like this: Said."},
		{answer.Rare, 0.034, "WATCH: Seldom, in 1 of 30 vehicles like this: Said."},
		{answer.Rare, 0.02, "WATCH: Seldom, in 1 of 50 vehicles like this: Said."},
		{answer.Rare, 0.0008, "WATCH: Seldom, in fewer than 1 of 1000 vehicles like this: Said."},
	} {
		a := fine()
		a.Findings = []answer.Finding{{
			Level: answer.Watch, Title: "Said.", Topic: answer.TopicPath, Item: answer.Wire, Certainty: tt.certainty, Share: tt.share,
		}}
		text := flat(t, a)
		for _, want := range []string{"* " + tt.want} {
			if !strings.Contains(text, want) {
				t.Errorf("%v %v: lacks %q", tt.certainty, tt.share, want)
			}
		}
	}
}

// On a bench there is no vehicle to speak of.
func TestABenchLoadIsNoVehicle(t *testing.T) {
	a := bench()
	a.Findings = []answer.Finding{{Level: answer.Watch, Title: "Said.", Topic: answer.TopicPack, Certainty: answer.Rare, Share: 0.034}}
	text := flat(t, a)
	if !strings.Contains(text, "Seldom, in 1 of 30 setups like this: Said.") || strings.Contains(text, "vehicles like this") {
		t.Error("speaks of vehicles")
	}
}

func TestTheDrawsAreToldOnce(t *testing.T) {
	for name, tt := range map[string]struct {
		change     func(*answer.Assessment)
		want, lack string
	}{
		"as drawn": {
			func(*answer.Assessment) {},
			"Draws: 8 of 10 vehicles like this lie in a range; 1024 drawn, 256 of them judged (a share may be off by 7 in 100); " +
				"it does not get going (1 of 12); the motors burn out on the way (1 of 50)", "rough",
		},
		"rough":          {func(a *answer.Assessment) { a.Draws.Rough = true }, "; the ranges are rough", ""},
		"always going":   {func(a *answer.Assessment) { a.Draws.Stuck = 0 }, "the motors burn out on the way (1 of 50)", "get going"},
		"mostly burning": {func(a *answer.Assessment) { a.Draws.Burnt = 0.97 }, "the motors burn out on the way (all but 1 of 30)", ""},
		"nobody drew":    {func(a *answer.Assessment) { a.Draws = answer.DrawFigures{} }, "Bramble Lane", " drawn"},
	} {
		a := danger()
		tt.change(a)
		text := flat(t, a)
		if !strings.Contains(text, tt.want) || tt.lack != "" && strings.Contains(text, tt.lack) {
			t.Errorf("%s: want %q without %q, got %q", name, tt.want, tt.lack, text)
		}
	}
}

// The end of most draws is not the end of all.
func TestWhatElseMayEndTheRideIsToldWithItsShare(t *testing.T) {
	a := danger()
	a.Ride.EndShare = []answer.Named{
		{Name: string(answer.EndEmpty), Share: 0.04}, {Name: string(answer.EndCutoff), Share: 0.96}, {Name: string(answer.EndFuse)},
	}
	if text := flat(t, a); !strings.Contains(text, "Over all draws: a cutoff opens (all but 1 of 25); the pack is empty (1 of 25). Distance") {
		t.Error("lacks the ends with their shares, the most frequent first")
	}
	a.Ride.EndShare, a.Cutoff.OpensShare = a.Ride.EndShare[1:], nil
	if strings.Contains(flat(t, a), "Over all draws") {
		t.Error("tells of shares where there is one end only")
	}
}

func TestEndsWithoutWordsAreNamedAllTheSame(t *testing.T) {
	for end, want := range map[answer.End]string{
		answer.EndCutoff: "a cutoff opens", answer.EndEmpty: "the pack is empty", answer.EndFuse: "the fuse opens",
		answer.EndStandstill: "it comes to a standstill", answer.EndWanted: "the time asked for is over",
		answer.EndVoltage: "the end voltage is reached", answer.EndPattern: "the pattern is over",
		answer.EndCannotGive: "the pack cannot give that current", answer.EndTooLong: "it lasts longer than is followed",
		"another": "another", "": "not known",
	} {
		a := danger()
		a.Ride.EndedBy, a.Ride.End, a.Ride.EndShare = "", end, nil
		a.Ride.LastsUntil, a.Ride.LastsEnd = "", end
		text := flat(t, a)
		for _, want := range []string{"Ended by: " + want + ". As you asked"} {
			if !strings.Contains(text, want) {
				t.Errorf("%q: lacks %q", end, want)
			}
		}
	}
}

// An empty pack that still holds a third of its charge would puzzle anybody.
func TestChargeThatCannotBeHadIsSaidToBeSo(t *testing.T) {
	a := danger()
	a.Ride.ChargeLeft = 0.34
	const want = "not to be had at this current"
	if strings.Contains(flat(t, a), want) {
		t.Error("says so although a wanted time ended the ride")
	}
	a.Ride.End = answer.EndEmpty
	if !strings.Contains(flat(t, a), want) {
		t.Error("does not say so")
	}
}

// A week that does no harm in most draws may do some in others.
func TestHarmWithinAWeekIsToldWhereSomeDrawsHaveIt(t *testing.T) {
	for name, tt := range map[string]struct {
		likely *float64
		low    float64
		want   bool
	}{
		"never in most":   {nil, 3, true},
		"later in most":   {ptr(9.0), 3, true},
		"sooner in most":  {ptr(5.0), 3, false}, // then the words say it
		"later in all":    {ptr(41.0), 8, false},
		"later, no range": {ptr(41.0), 0, false},
	} {
		a := danger()
		a.Cutoff.IdleDaysToHarm = tt.likely
		if tt.low > 0 {
			a.Ranges["cutoff.idle_days_to_harm"] = answer.Range{Low: tt.low, Likely: 41, High: 60}
		}
		a.Cutoff.LeftForAWeek = "A week in the toy does no harm."
		if got := strings.Contains(flat(t, a), "In some draws it comes to harm within the week"); got != tt.want {
			t.Errorf("%s: said %v, want %v", name, got, tt.want)
		}
		if got := strings.Contains(flat(t, a), a.Cutoff.LeftForAWeek); got == tt.want {
			t.Errorf("%s: a week that may do harm is said to do none: %v", name, got)
		}
	}
}

func TestAFuseThatNobodyKnowsIsNotSaidToBeMissing(t *testing.T) {
	a := danger()
	if !strings.Contains(flat(t, a), "Cleared in: never: nothing opens it") {
		t.Error("does not say that nothing opens")
	}
	a.Path.FuseUnknown = true
	if !strings.Contains(flat(t, a), "Cleared in: not known: no fuse was described") {
		t.Error("does not say that it is not known")
	}
}

// Ten lines are few: what becomes of some draws gives way to the speed.
func TestAShortReportTellsOfTheDrawsThatDoNotRide(t *testing.T) {
	a := fine()
	a.Draws.Stuck, a.Draws.Burnt = 0.084, 0
	if text := written(t, a, report.Options{Short: true}); !strings.Contains(text, "\nDraws: it does not get going (1 of 12)\n") {
		t.Errorf("does not tell of them: %s", text)
	}
	if text := written(t, noDangers(), report.Options{Short: true}); !strings.Contains(text, "\nSpeed: ") {
		t.Errorf("has no speed: %s", text)
	}
}

// noDangers is an assessment whose short report has room for figures.
func noDangers() *answer.Assessment {
	a := danger()
	a.Verdict, a.Headline[1], a.Headline[2], a.Findings = answer.FixFirst, "It is slow.", "Wait.", a.Findings[1:3]
	return a
}
