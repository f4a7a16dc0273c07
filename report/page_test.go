package report_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

// lengths are the lengths in which a report for readers comes.
func lengths() map[string]report.Options {
	return map[string]report.Options{"page": {}, "full": {Full: true}, "short": {Short: true}}
}

// checkPage holds a page against its measures in every dialect (issue of the
// project: 60 lines of 64 columns, 4,000 characters where forums end a post).
func checkPage(t *testing.T, name string, a *answer.Assessment) {
	t.Helper()
	text := written(t, a, report.Options{})
	if n := strings.Count(text, "\n"); n > report.PageLines {
		t.Errorf("%s: %d lines of text, want at most %d\n%s", name, n, report.PageLines, text)
	}
	checkText(t, name, report.Columns, text)
	for _, format := range []report.Format{report.FormatMarkdown, report.FormatBBCode} {
		if n := len(written(t, a, report.Options{Format: format})); n > report.PageCharacters {
			t.Errorf("%s: %d characters of %s, want at most %d", name, n, format, report.PageCharacters)
		}
	}
	flat := strings.Join(strings.Fields(text), " ")
	for _, want := range []string{
		"maker's instructions", "local codes", "licensed practice", "A changed vehicle no longer is the one that was tested",
		"Charge with the charger made for this battery", "fit a larger fuse", "drained flat",
	} {
		if !strings.Contains(flat, want) {
			t.Errorf("%s: the page lacks %q", name, want)
		}
	}
}

func TestThePageKeepsItsMeasures(t *testing.T) {
	for name, a := range fixtures() {
		checkPage(t, name, a)
	}
	for seed := range uint64(200) {
		checkPage(t, fmt.Sprintf("random %d", seed), anyAnswer(seed))
	}
}

// anyAnswer is an assessment of any size: many or no findings, long or no
// texts, any level, with and without ways out, vehicle or bench.
func anyAnswer(seed uint64) *answer.Assessment {
	r := rand.New(rand.NewPCG(seed, 12))
	words := strings.Fields("cutoff contacts winding the a battery is 21.5 V too much; for: this (board) and fuse. Wire! mOhm *bold* [b] <i> _x_ & AGM soft start")
	text := func(most int) string {
		var list []string
		for range r.IntN(most + 1) {
			list = append(list, words[r.IntN(len(words))])
		}
		return strings.Join(list, " ")
	}
	a := danger()
	if r.IntN(4) == 0 {
		a = bench()
	}
	a.Title = text(40)
	if r.IntN(5) == 0 {
		a.Title = strings.Repeat("&<*", r.IntN(200))
	}
	a.Headline = [3]string{"x", text(30), text(30)}
	a.System = []answer.System{answer.Metric, answer.Customary, answer.Either}[r.IntN(3)]
	changes := []answer.Change{answer.ChangeNone, answer.FitFuse, answer.FitWire, answer.FitPack, answer.LimitSpeed, answer.LookUp, answer.FitCharger}
	items := []answer.Item{"", answer.Board, answer.Charger, answer.Fuse, answer.Battery, answer.Item(text(5))}
	a.Findings = nil
	for range r.IntN(40) {
		a.Findings = append(a.Findings, answer.Finding{
			Level: answer.Level(r.IntN(4)), Harm: answer.Harm(r.IntN(4)), Title: text(60), Advice: text(40), Change: changes[r.IntN(len(changes))],
			Item: items[r.IntN(len(items))], Certainty: answer.Certainty(r.IntN(4)), Share: r.Float64(), Guess: []string{"", "rider.mass", text(20)}[r.IntN(3)],
		})
	}
	a.Verdict = answer.Worst(a.Findings)
	a.Changes, a.Ways, a.Measure = nil, nil, nil
	for range r.IntN(12) {
		a.Changes = append(a.Changes, text(50))
	}
	for range r.IntN(4) {
		w := answer.Way{Title: text(20), Verdict: answer.Level(r.IntN(4)), PedalMin: answer.Between(10*r.Float64(), 90), SpeedKmh: answer.Between(3*r.Float64(), 9)}
		for range r.IntN(9) {
			w.Steps = append(w.Steps, text(30))
		}
		a.Ways = append(a.Ways, w)
	}
	for range r.IntN(5) {
		a.Measure = append(a.Measure, answer.Measurement{What: text(15), How: text(40)})
	}
	return a
}

func TestNoLengthDropsADanger(t *testing.T) {
	a := danger()
	a.Findings, a.Headline[1] = nil, "The first of them."
	for i, item := range []answer.Item{answer.Battery, answer.Charger, answer.Fuse, answer.Wire, answer.Board, answer.Gears, answer.Motors} {
		a.Findings = append(a.Findings, answer.Finding{
			Level: answer.Danger, Harm: answer.Child, Item: item, Change: answer.Change(fmt.Sprint("change ", i)), Title: "Bad " + strings.Repeat("luck ", 30) + ".",
		})
		if item == answer.Charger {
			a.Findings[i].Topic = answer.TopicCharge
		}
	}
	for length, o := range lengths() {
		for _, format := range []report.Format{report.FormatText, report.FormatMarkdown, report.FormatBBCode} {
			o.Format = format
			text := strings.Join(strings.Fields(written(t, a, o)), " ")
			told := strings.Count(text, "Bad luck")
			for _, f := range a.Findings {
				if strings.Contains(text, "the "+string(f.Item)) {
					told++
				}
			}
			if told < len(a.Findings) {
				t.Errorf("%s %s: tells of %d dangers, want %d: %s", length, format, told, len(a.Findings), text)
			}
		}
	}
	checkPage(t, "seven dangers", a)
}

// Where dangers share a line it says what they are, not only of which part, the gravest first;
// where there is no room for more, how many are of each.
func TestDangersThatShareALineAreToldApart(t *testing.T) {
	of := func(titles ...string) *answer.Assessment {
		a := danger()
		a.Findings, a.Headline[1] = nil, "The first of them."
		for i, title := range titles {
			f := answer.Finding{Level: answer.Danger, Harm: answer.House, Item: answer.Battery, Title: title, Change: answer.Change(fmt.Sprint("change ", i))}
			if i == len(titles)-1 {
				f.Certainty, f.Share = answer.Likely, 0.6
			}
			a.Findings = append(a.Findings, f)
		}
		return a
	}
	few := of("One.", "Two.", "Three.", "Four.", "Nothing disconnects the pack: it is drained.", "It can never be charged again: it fails.")
	many := of(slices.Repeat([]string{"The pack may burst " + strings.Repeat("and burn ", 12) + "at any time."}, 24)...)
	wide := of("On this slope it rolls away with the child, and nothing brakes it.", "There is no fuse.", "The full pack is too much for the weakest part behind it.", "Nothing disconnects it before it drains to ruin.")
	for _, tt := range []struct {
		a    *answer.Assessment
		o    report.Options
		want string
	}{
		{wide, report.Options{Short: true}, "Danger too: On this slope it rolls away with the child, and nothing brakes it; There is no fuse; The full pack is too much for the weakest part behind it; Likely: Nothing disconnects it before it drains to ruin."},
		{few, report.Options{}, "Danger as well: Nothing disconnects the pack; Likely: It can never be charged again."},
		{many, report.Options{}, "at any time; the battery (18)."},
		{few, report.Options{Short: true}, "Danger too: One; Two; Three; Four; Nothing disconnects the pack; Likely: It can never be charged again."},
		{many, report.Options{Short: true}, "at any time; the battery (23)."},
	} {
		if text := strings.Join(strings.Fields(written(t, tt.a, tt.o)), " "); !strings.Contains(text, tt.want) {
			t.Errorf("%+v: lacks %q in\n%s", tt.o, tt.want, text)
		}
		checkPage(t, "dangers of one part", tt.a)
	}
}

// Dangers of one cause, which the same change to the same thing ends, share a line, so that
// what has another cause is told, too; two of them take two lines as it is.
func TestDangersOfOneCauseLeaveRoomForOthers(t *testing.T) {
	of := func(n int) *answer.Assessment {
		a := danger()
		a.Findings, a.Headline[1] = nil, "The first of them."
		for i, title := range []string{"Nothing disconnects the pack: it is drained.", "It can never be charged again.", "It is left below its limit.", "A cell is driven backwards."}[:n] {
			f := answer.Finding{Level: answer.Danger, Harm: answer.House, Topic: answer.TopicCutoff, Item: answer.Battery, Title: title, Change: answer.FitCutoff}
			if i > 0 {
				f.Certainty, f.Share = answer.Likely, 0.6
			}
			a.Findings = append(a.Findings, f)
		}
		for i, title := range []string{"The fuse is too large.", "The wire is thin.", "The lamp is too weak.", "The joint is warm."} {
			a.Findings = append(a.Findings, answer.Finding{Level: answer.FixFirst, Harm: answer.House, Title: title, Change: answer.Change(fmt.Sprint("change ", i))})
		}
		return a
	}
	long := of(4)
	long.Findings[2].Title = "The pack " + strings.Repeat("is drained and ", 30) + "ruined."
	for _, tt := range []struct {
		a    *answer.Assessment
		want string
	}{
		{of(4), "2. Danger as well: Likely: It can never be charged again; Likely: It is left below its limit; Likely: A cell is driven backwards. 3. Fire: The fuse is too large. 4. Fire: The wire is thin. 5. Fire: The lamp is too weak."},
		{long, "2. Danger as well: Likely: It can never be charged again; and 2 more that the same changes end. 3. Fire: The fuse is too large."},
		{of(2), "2. Danger (fire): Likely, in 6 of 10 vehicles like this: It can never be charged again. 3. Fire: The fuse is too large."},
	} {
		if text := strings.Join(strings.Fields(written(t, tt.a, report.Options{})), " "); !strings.Contains(text, tt.want) {
			t.Errorf("lacks %q in\n%s", tt.want, text)
		}
		checkPage(t, "dangers of one cause", tt.a)
	}
}

// What has to be put right is told before what is to be watched, though another finding
// asks for the same change; of what is to be watched each change is told once.
func TestThePageTellsAllThatHasToBePutRight(t *testing.T) {
	a := fine()
	a.Verdict = answer.FixFirst
	finding := func(level answer.Level, title string, change answer.Change) {
		a.Findings = append(a.Findings, answer.Finding{Level: level, Title: title, Change: change})
	}
	finding(answer.FixFirst, "The wire is thin.", answer.FitWire)
	finding(answer.FixFirst, "The wire is warm.", answer.FitWire)
	finding(answer.FixFirst, "The joint is warm.", answer.FitJoint)
	finding(answer.Watch, "The wire is old.", answer.FitWire)
	finding(answer.Watch, "The fuse is old.", answer.LookUp)
	text := written(t, a, report.Options{})
	for _, want := range []string{"1. The wire is thin.\n2. The joint is warm.\n3. The wire is warm.\n4. The fuse is old.\n", "Full report: 1 more to watch, 2 cautions."} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
	if strings.Contains(text, "wire is old") {
		t.Errorf("tells of the wire once more:\n%s", text)
	}
}

func TestWaysOutStandInPlaceOfTheChanges(t *testing.T) {
	a := danger()
	a.Ways = []answer.Way{
		{Title: "A 12 V battery of the old kind", Steps: []string{"fit it"}, Verdict: answer.Watch, PedalMin: answer.Spread(20, 25, 27), SpeedKmh: answer.Exactly(5.8), WantedShare: ptr(0.6), Harms: 2},
		{Title: "Keep the pack", Steps: []string{"a new switch", "thicker wire"}, Verdict: answer.Fine, PedalMin: answer.Exactly(31), Together: "Switch first."},
	}
	text := written(t, a, report.Options{})
	for _, want := range []string{
		"A. YES, WITH CARE: A 12 V battery of the old kind. Pedal down 25\n  min (20 to 27); 5.8 km/h; 45 min: likely (6 of 10). Still to\n  watch (child, fire): 2.\n[ ] fit it\n", "B. YES: Keep the pack. Pedal down 31 min. Still to watch (child,\n  fire): nothing.\n[ ] a new switch\n[ ] thicker wire\nSwitch first.\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q in\n%s", want, text)
		}
	}
	if strings.Contains(text, a.Changes[1]) {
		t.Error("the changes stand beside the ways out")
	}
	if full := written(t, a, report.Options{Full: true}); !strings.Contains(full, "B. YES: Keep the pack") {
		t.Error("the full report lacks the ways out")
	}
}

func TestThePageHasOnlyWhatMatters(t *testing.T) {
	a := bench()
	a.Measure = nil
	text := written(t, a, report.Options{})
	for _, word := range []string{"Speed", "Pedal", "shove", "Distance", "child", "CHARG"} {
		if strings.Contains(text, word) {
			t.Errorf("a bench load speaks of %q:\n%s", word, text)
		}
	}
}

// A way out whose speeds lie on both sides of what suits the age says how often it is
// too fast; who does its wiring is said once.
func TestAWayOutSaysWhatItsSpeedMeansAndWhoWires(t *testing.T) {
	a := danger()
	way := answer.Way{Title: "Keep it", Steps: []string{"a fuse"}, Verdict: answer.Watch, PedalMin: answer.Exactly(30), SpeedKmh: answer.Spread(3.5, 6, 9.1), Wiring: true}
	way.Pace = &answer.Pace{LimitKmh: 8.05, Share: 0.2}
	below, plain, beyond := way, way, way
	beyond.SpeedKmh = answer.Spread(9, 10, 14)
	below.SpeedKmh, plain.Pace, plain.Wiring = answer.Spread(3.5, 5, 7), nil, false
	for name, tt := range map[string]struct {
		ways                 []answer.Way
		over, beyond, wiring int
	}{
		"straddles": {[]answer.Way{way, way}, 2, 0, 1}, "stays below": {[]answer.Way{below}, 0, 0, 1}, "lies beyond": {[]answer.Way{beyond}, 0, 1, 1},
		"no limit, no wiring": {[]answer.Way{plain}, 0, 0, 0},
	} {
		a.Ways = tt.ways
		for _, o := range []report.Options{{}, {Full: true}, {Format: report.FormatMarkdown}, {Format: report.FormatHTML}} {
			text := strings.Join(strings.Fields(written(t, a, o)), " ")
			if n := strings.Count(text, "6 km/h (3.5 to 9.1); over 8.1 km/h, brisk for a child, in 2 of 10"); n != tt.over {
				t.Errorf("%s %+v: told %d times, want %d: %s", name, o, n, tt.over, text)
			}
			if n := strings.Count(text, "10 km/h (9 to 14); over 8.1 km/h, brisk for a child."); n != tt.beyond {
				t.Errorf("%s %+v: all of it beyond is told %d times, want %d: %s", name, o, n, tt.beyond, text)
			}
			if n := strings.Count(text, "Somebody trained does the wiring; makers' instructions first."); n != tt.wiring {
				t.Errorf("%s %+v: says %d times who wires, want %d", name, o, n, tt.wiring)
			}
		}
	}
}

// Minutes that end because a cutoff opens on a battery that is not empty do not hide it:
// not those of a way out, nor those of the page.
func TestMinutesSayWhatCutsThemShort(t *testing.T) {
	a := danger()
	a.Draws.CutShort = 0.2
	a.Ways = []answer.Way{{Title: "Keep it", Steps: []string{"a cutoff"}, Verdict: answer.Watch, PedalMin: answer.Spread(0.3, 48, 81), CutShort: 0.3, FuseOpens: 0.5}}
	for _, o := range []report.Options{
		{}, {Full: true}, {Format: report.FormatMarkdown}, {Format: report.FormatMarkdown, Full: true}, {Format: report.FormatBBCode}, {Format: report.FormatHTML},
	} {
		text := strings.Join(strings.Fields(written(t, a, o)), " ")
		for _, want := range []string{", cut short in 3 of 10, its fuse may open in 5 of 10", "t is switched off with 30 % or more left in it (2 of 10)"} {
			if !strings.Contains(text, want) {
				t.Errorf("%+v: lacks %q in\n%s", o, want, text)
			}
		}
	}
	if text := written(t, a, report.Options{Format: report.FormatJSON}); strings.Count(text, `"cut_short": 0.2`) != 1 || strings.Count(text, `"cut_short": 0.3`) != 1 {
		t.Errorf("as JSON:\n%s", text)
	}
	a.Draws.CutShort, a.Ways[0].CutShort, a.Ways[0].FuseOpens = 0, 0, 0
	if text := written(t, a, report.Options{}); strings.Contains(text, "cut short") || strings.Contains(text, "its fuse may open") || strings.Contains(text, "switched off with") {
		t.Errorf("nothing is cut short:\n%s", text)
	}
}

// What the first line counts is shown, or the page says where the rest stands.
func TestTheCountsOfThePageAgree(t *testing.T) {
	a := danger()
	a.Findings = nil
	for i := range 21 {
		level := answer.Watch
		if i < 9 {
			level = answer.FixFirst
		}
		a.Findings = append(a.Findings, answer.Finding{Level: level, Title: fmt.Sprintf("Finding %d of it.", i), Change: answer.Change(fmt.Sprint("change ", i))})
	}
	a.Verdict = answer.FixFirst
	text := written(t, a, report.Options{})
	shown := strings.Count(text, " of it.\n")
	if want := fmt.Sprintf("Full report: %d more to put right, 12 to watch", 9-shown); shown != 5 || !strings.Contains(text, "NOT YET: 9 things to put right first, 12 to watch.") || !strings.Contains(text, want) {
		t.Errorf("%d are shown, lacks %q in\n%s", shown, want, text)
	}
	if html := written(t, a, report.Options{Format: report.FormatHTML}); !strings.Contains(html, "All 21 findings stand below, folded: 9 to put right, 12 to watch.") {
		t.Error("the page for a phone does not say where the rest stands")
	}
}

// Ten lines have no room for ways out and questions, so they do not say that these
// stand below, and no danger ends in the middle of its share.
func TestTheShortReportSendsToThePage(t *testing.T) {
	a := danger()
	a.Findings[0].Title, a.Findings[0].Certainty, a.Findings[0].Share = "Drained like this, the pack can never be charged again: it fails.", answer.Likely, 0.6
	a.Headline = [3]string{"x", a.Findings[1].Title, "Look first, as asked below; then take way A."}
	a.Ways = []answer.Way{{Title: "A new battery of the old kind", Steps: []string{"fit it", "charge it"}, Verdict: answer.Watch}}
	text := written(t, a, report.Options{Short: true})
	for _, want := range []string{
		"\nNext: Do not use this charger; see the page for way A.\n", "Danger too: Likely, in 6 of 10: Drained like this, the pack can\n  never be charged again.\n",
		"\nWay A: A new battery of the old kind (2 things).\n",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q in\n%s", want, text)
		}
	}
	if strings.Contains(text, "below") {
		t.Errorf("speaks of what is not there:\n%s", text)
	}
}

// What to look at first stands on the page, however much else does: its first lines send there.
func TestThePageAsksWhateverElseItSays(t *testing.T) {
	a := danger()
	a.Measure = []answer.Measurement{{Key: answer.KeyFuseRating, Asks: "Which fuse is it?", How: "Follow the red wire."}}
	a.Headline[2] = "Look first, as asked below; then take way A or B."
	for n := range 12 {
		way := answer.Way{Title: "Keep it", Verdict: answer.Watch, Wiring: true}
		for range n {
			way.Steps = append(way.Steps, strings.Repeat("a part that takes words ", 4))
		}
		a.Ways = []answer.Way{way, way}
		a.Findings = append(a.Findings, answer.Finding{Level: answer.Danger, Title: fmt.Sprintf("Danger %d of many.", n), Change: answer.Change(fmt.Sprint("change ", n))})
		text := written(t, a, report.Options{})
		if !strings.Contains(text, "LOOK FIRST, BEFORE YOU BUY\n1. Which fuse is it?") || strings.Count(text, "\n") > report.PageLines {
			t.Errorf("with %d steps:\n%s", n, text)
		}
	}
}

// However little room there is, the page says how long, how far, how fast and how hard.
func TestThePageAlwaysSaysHowFar(t *testing.T) {
	a := danger()
	for range 3 {
		a.Ways = append(a.Ways, answer.Way{Title: "Keep it", Steps: []string{"a fuse", "a cutoff", "a converter", "thicker wire"}, Verdict: answer.Watch, PedalMin: answer.Exactly(30), SpeedKmh: answer.Exactly(5), Wiring: true})
	}
	for _, ways := range [][]answer.Way{nil, a.Ways[:1], a.Ways} {
		b := *a
		b.Ways = ways
		text := written(t, &b, report.Options{})
		if !strings.Contains(text, "3.1 km (2.3 to 4)") || !strings.Contains(text, "Speed  ") || !strings.Contains(text, "Pedal down  ") {
			t.Errorf("with %d ways out the page does not say how far it goes:\n%s", len(ways), text)
		}
	}
}

// A load that never pauses is not timed with the pauses.
func TestALoadWithoutPausesIsNotTimedWithThem(t *testing.T) {
	a := bench()
	wanted := 45.0
	a.Ride.WantedMin, a.Ride.ClockMin = &wanted, a.Ride.PedalMin+1
	if text := written(t, a, report.Options{}); !strings.Contains(text, "45 min with the pauses: ") {
		t.Errorf("a load with pauses:\n%s", text)
	}
	a.Ride.ClockMin = a.Ride.PedalMin
	if text := written(t, a, report.Options{}); strings.Contains(text, "with the pauses") || !strings.Contains(text, "45 min: ") {
		t.Errorf("one without:\n%s", text)
	}
}
