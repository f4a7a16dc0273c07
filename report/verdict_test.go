package report_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// Who asks whether a child may ride is not told of a charger where the battery
// itself is the trouble.
func TestTheVerdictNamesWhatIsNotInOrder(t *testing.T) {
	charging := answer.Finding{Topic: answer.TopicCharge, Item: answer.Charger, Title: "Said."}
	battery := answer.Finding{Topic: answer.TopicCharge, Item: answer.Battery, Title: "Said.", Decides: []string{answer.KeyMeasuredRestVoltage}}
	burns := answer.Finding{Topic: answer.TopicCharge, Item: answer.Charger, Harm: answer.House, Title: "Said."}
	winter := answer.Finding{Topic: answer.TopicCharge, Item: answer.Battery, Title: "Said.", Change: answer.KeepCharged}
	wire := answer.Finding{Topic: answer.TopicPath, Item: answer.Wire, Title: "Said."}
	for _, tt := range []struct {
		level answer.Level
		list  []answer.Finding
		want  string
	}{
		{answer.Danger, []answer.Finding{charging}, "NO: do not charge it like this: 1 danger."},
		{answer.Danger, []answer.Finding{battery}, "NO: nobody uses or charges this battery: 1 danger."},
		{answer.Danger, []answer.Finding{battery, wire}, "NO: no child may ride it like this: 2 dangers."},
		{answer.FixFirst, []answer.Finding{charging}, "NOT YET: its charging is not in order."},
		{answer.FixFirst, []answer.Finding{winter}, "NOT YET: the way it is put away is not in order."},
		{answer.Danger, []answer.Finding{winter}, "NO: do not put it away like this: 1 danger."},
		{answer.Danger, []answer.Finding{winter, charging}, "NO: do not charge it like this: 2 dangers."},
		{answer.FixFirst, []answer.Finding{battery}, "NOT YET: its battery is not in order."},
		{answer.FixFirst, []answer.Finding{charging, battery}, "NOT YET: its battery is not in order."},
		{answer.FixFirst, []answer.Finding{burns, battery}, "NOT YET: 2 things to put right first (fire: 1)."},
		{answer.FixFirst, []answer.Finding{battery, charging}, "NOT YET: its battery is not in order."},
		{answer.FixFirst, []answer.Finding{wire}, "NOT YET: 1 thing to put right first."},
	} {
		a := fine()
		a.Verdict, a.Findings = tt.level, tt.list
		for i := range a.Findings {
			a.Findings[i].Level = tt.level
		}
		if first, _, _ := strings.Cut(written(t, a, report.Options{}), "\n"); first != tt.want {
			t.Errorf("%q, want %q", first, tt.want)
		}
	}
}

// Three lines are often all that is passed on: they are as sure as the answer is, no
// more and no less.
func TestTheFirstLinesAreAsSureAsTheHeadline(t *testing.T) {
	a := fine()
	a.Verdict, a.Headline = answer.FixFirst, [3]string{"x", "Possibly: It is hot: it melts.", "To be safe: Cool it."}
	a.Findings = []answer.Finding{{Level: answer.FixFirst, Title: "It is hot: it melts.", Certainty: answer.Possible, Share: 0.3}}
	if lines, err := report.Lead(a); err != nil || lines[1] != "Why: Possibly: It is hot: it melts." || lines[2] != "Next: To be safe: Cool it." {
		t.Errorf("%q, %v", lines, err)
	}
	if few, err := report.InFew(a, nil); err != nil || few != "NOT YET: Possibly: It is hot" {
		t.Errorf("%q, %v", few, err)
	}
	if text := written(t, a, report.Options{Format: report.FormatJSON}); !strings.Contains(text, `"Possibly: It is hot: it melts."`) {
		t.Error("JSON says it otherwise")
	}
}

// The first lines end with a sentence or a clause; where that takes it they go on on a
// second line, and never in dots.
func TestTheFirstLinesAreWhole(t *testing.T) {
	for _, tt := range []struct {
		hedge     answer.Certainty
		why, next string
		want      [2]string
	}{
		{answer.Plain, "No fuse: a short circuit burns the wire before anything opens, so that the loom burns.", "Part them. Charge each by itself to full on its own charger.", [2]string{
			"Why: No fuse.", "Next: Part them.",
		}},
		{answer.Possible, "No fuse: a short circuit burns the wire before anything opens, so that the loom burns.", "Fit one.", [2]string{
			"Why: Possibly: No fuse.", "Next: Fit one.",
		}},
		{answer.Plain, `"volts under load (original battery) = 7 V" fits nothing that the labels may mean.`, `Take this reading once more: "volts under load (original battery) = 7 V".`, [2]string{
			"Why: \"volts under load (original battery) = 7 V\" fits nothing\n  that the labels may mean.", "Next: Take this reading once more.",
		}},
		{
			answer.Likely, "A weak cell is driven backwards when the added cutoff opens; the pack's volts still look right then.",
			"To be safe: Take the battery out of the vehicle to charge it, and charge it where nothing burns.",
			[2]string{
				"Why: Likely: A weak cell is driven backwards when the added\n  cutoff opens; the pack's volts still look right then.",
				"Next: To be safe: Take the battery out of the vehicle to charge\n  it, and charge it where nothing burns.",
			},
		},
	} {
		a := fine()
		a.Verdict, a.Findings = answer.FixFirst, []answer.Finding{{Level: answer.FixFirst, Title: tt.why, Certainty: tt.hedge, Share: 0.6}}
		a.Headline = [3]string{"x", tt.hedge.Hedge() + tt.why, tt.next}
		lines, err := report.Lead(a)
		if err != nil || [2]string(lines[1:]) != tt.want {
			t.Errorf("%q (%v), want %q", lines[1:], err, tt.want)
		}
		for _, o := range []report.Options{{}, {Short: true}} {
			if text := written(t, a, o); !strings.Contains(text, strings.Join(tt.want[:], "\n")+"\n") {
				t.Errorf("%+v: not in\n%s", o, text)
			}
		}
	}
}

// A child that is too young for it is no fault of the vehicle: the page says so first, even
// before a danger, and not that no change was found.
func TestAChildThatIsTooYoungStandsFirst(t *testing.T) {
	young := answer.Finding{Level: answer.FixFirst, Harm: answer.Child, Title: "A child of 1 is too young.", OfAge: true}
	watch := answer.Finding{Level: answer.Watch, Title: "It is old."}
	fix := answer.Finding{Level: answer.FixFirst, Title: "It is hot."}
	for _, tt := range []struct {
		verdict  answer.Level
		findings []answer.Finding
		want     string
	}{
		{answer.FixFirst, []answer.Finding{young}, "NOT YET: the child is too young for it."},
		{answer.FixFirst, []answer.Finding{young, watch, watch}, "NOT YET: the child is too young for it; 2 to watch."},
		{answer.FixFirst, []answer.Finding{fix, young, watch}, "NOT YET: the child is too young for it; 1 more to put right."},
		{answer.Danger, []answer.Finding{{Level: answer.Danger, Title: "It burns."}, fix, young}, "NO: no child may ride it like this: 1 danger, 2 to put right."},
	} {
		a := fine()
		a.Verdict, a.Findings, a.Sought = tt.verdict, tt.findings, true
		page := written(t, a, report.Options{})
		if !strings.HasPrefix(strings.Join(strings.Fields(page), " "), tt.want) || !strings.Contains(page, "1. Child: "+young.Title) {
			t.Errorf("want %q and the child first in\n%s", tt.want, page)
		}
		if strings.Contains(page, "No set of changes") || strings.Count(page, young.Title) > 2 { // why, and the first reason
			t.Errorf("too much is told in\n%s", page)
		}
	}
}

// Where nothing has to be put right another battery is no way out, and not the next step.
func TestAnotherBatteryIsNoWayOutOfWhatIsToBeWatched(t *testing.T) {
	for level, title := range map[answer.Level]string{answer.Watch: "WITH ANOTHER BATTERY", answer.FixFirst: "THE WAY OUT"} {
		a := danger()
		a.Verdict, a.Headline, a.Findings = level, [3]string{"x", "It is worn.", "Replace it."}, []answer.Finding{{Level: level, Title: "It is worn.", Advice: "Replace it."}}
		a.Ways = []answer.Way{{Title: "A new battery of the same kind", Verdict: answer.Watch}}
		if text := written(t, a, report.Options{}); !strings.Contains(text, title) {
			t.Errorf("%v: want %q in\n%s", level, title, text)
		}
		if text := written(t, a, report.Options{Short: true}); strings.Contains(text, "See the page") != (level == answer.FixFirst) {
			t.Errorf("%v: the next step in\n%s", level, text)
		}
	}
}

// None of the ways out helps: then that is said, and nothing where none was sought.
func TestItIsSaidThatNoWayOutWasFound(t *testing.T) {
	const none = "No set of changes that was tried puts all of it right."
	for _, o := range []report.Options{{}, {Full: true}} {
		for _, sought := range []bool{true, false} {
			a := danger()
			a.Sought = sought
			if got := strings.Contains(written(t, a, o), none); got != sought {
				t.Errorf("sought %v: said %v", sought, got)
			}
		}
	}
}

// How long it lasts is never told without its range in the first line: the likely value
// goes where both have no room.
func TestTheFirstLineKeepsTheRange(t *testing.T) {
	for _, tt := range []struct {
		watches           int
		low, likely, high float64
		charged           float64
		level             answer.Level
		want              string
	}{
		{3, 27, 36, 50, 1, answer.Watch, "YES, WITH CARE: 3 things to watch. It lasts 36 min (27 to 50)."},
		{16, 16, 39, 66, 1, answer.Watch, "YES, WITH CARE: 16 to watch. It lasts 16 min to 1 h 6 min."},
		{14, 4. / 60, 4, 44, 1, answer.Watch, "YES, WITH CARE: 14 to watch. It lasts 4 min (4 s to 44 min)."},
		{16, 5, 15, 32, 0.43, answer.Watch, "YES, WITH CARE: 16 to watch. Not full, it lasts 5 to 32 min."},
		{16, 0.5, 3, 6, 0, answer.Watch, "YES, WITH CARE: 16 to watch. Not full, it lasts 30 s to 6 min."},
		{16, 1 + 40./60, 4, 7, 0.33, answer.Watch, "YES, WITH CARE: 16 to watch. Not full: 1 min 40 s to 7 min."},
		{20, 2.2, 3.6, 5.3, 0.33, answer.Watch, "YES, WITH CARE: 20 to watch. Not full: 2 min 10 s to 5 min 20 s."},
		{0, 16, 39, 66, 1, answer.Fine, "YES: as far as these figures go. It lasts 16 min to 1 h 6 min."},
	} {
		a := fine()
		a.Verdict, a.Ride.StartsCharged, a.Ride.PedalMin = tt.level, tt.charged, tt.likely
		a.Ranges = map[string]answer.Range{"ride.pedal_min": {Low: tt.low, Likely: tt.likely, High: tt.high}}
		for range tt.watches {
			a.Findings = append(a.Findings, answer.Finding{Level: answer.Watch, Title: "It is old."})
		}
		if lines, err := report.Lead(a); err != nil || lines[0] != tt.want {
			t.Errorf("%q, %v, want %q", lines[0], err, tt.want)
		}
	}
}

// Who asked for a time that it hardly ever lasts reads that in the first line, with the
// pauses as it was asked, and how far it goes is told to be in the time asked.
func TestAWishThatIsNotMetStandsInTheFirstLine(t *testing.T) {
	for _, tt := range []struct {
		share float64
		want  string
	}{
		{0, "YES, WITH CARE: 1 to watch. Not 1 h as asked: 14 min (11 to 18)."},
		{0.3, "YES, WITH CARE: 1 thing to watch. It lasts 10 min (8 to 14)."},
	} {
		a := fine()
		wanted := 60.
		a.Verdict, a.Ride.StartsCharged, a.Ride.DistanceKm = answer.Watch, 1, 2
		a.Ride.WantedMin, a.Ride.EndShare = &wanted, []answer.Named{{Name: string(answer.EndWanted), Share: tt.share}}
		a.Ride.LastsPedalMin, a.Ride.LastsClockMin = 10, 14
		a.Ranges = map[string]answer.Range{
			"ride.lasts_pedal_min": {Low: 8, Likely: 10, High: 14}, "ride.lasts_clock_min": {Low: 11, Likely: 14, High: 18},
		}
		a.Findings = []answer.Finding{{Level: answer.Watch, Title: "It is old."}}
		page := written(t, a, report.Options{})
		if first, _, _ := strings.Cut(page, "\n"); first != tt.want {
			t.Errorf("%q, want %q", first, tt.want)
		}
		if !strings.Contains(page, "2 km in the 1 h asked") {
			t.Errorf("how far it goes is not told to be in the time asked:\n%s", page)
		}
	}
}

// A battery that is empty is not full either.
func TestWhatIsInTheBatteryStandsBeforeTheMinutes(t *testing.T) {
	for charged, want := range map[float64]string{0: "Charged now        0 %; what follows is for that", 0.43: "Charged now        43 %; what follows is for that", 1: ""} {
		a := fine()
		a.Ride.StartsCharged = charged
		if text := written(t, a, report.Options{}); strings.Contains(text, "Charged now") != (want != "") || !strings.Contains(text, want) {
			t.Errorf("charged %g: want %q in\n%s", charged, want, text)
		}
	}
}

// What spoils a battery that is left flat is told on the page, whether it rides or not, but
// for where it is the first reason and where nobody charges it any more.
func TestABatteryThatSpoilsFlatIsToBeChargedToday(t *testing.T) {
	const line = "Left so flat       it loses capacity for good: charge it today"
	low := answer.Finding{Level: answer.FixFirst, Topic: answer.TopicCharge, Item: answer.Battery, Title: "It rests low."}
	for _, c := range []struct {
		name   string
		spoils bool
		stuck  float64
		of     answer.Finding
		want   bool
	}{
		{"flat", true, 0, low, true},
		{"flat, and it does not move", true, 1, low, true},
		{"lithium", false, 0, low, false},
		{"the first reason", true, 0, answer.Finding{Level: answer.Watch, Title: "It is flat.", Today: true}, false},
		{"finished", true, 0, answer.Finding{Level: answer.Danger, Title: "It is dead.", Finished: true, NeverRidden: true}, false},
	} {
		a := fine()
		a.Verdict, a.Findings = c.of.Level, []answer.Finding{c.of}
		a.Ride.StartsCharged, a.Ride.SpoilsFlat, a.Draws.Stuck = 0.2, c.spoils, c.stuck
		if got := written(t, a, report.Options{}); strings.Contains(got, line) != c.want {
			t.Errorf("%s: told %v, want %v:\n%s", c.name, !c.want, c.want, got)
		}
	}
}
