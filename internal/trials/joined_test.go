package trials_test

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/ask"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/setup"
	"example.org/packcheck/wiring"
)

// Twelve volts or twenty-four is no detail: what the label leaves open must
// stand among the faults.
func TestBlocksThatMayBeWiredEitherWayAreAFaultToFixFirst(t *testing.T) {
	for _, c := range []struct {
		label   string
		unclear bool
	}{
		{"2 x 12 V 7 Ah", true},
		{"12 V 7 Ah x 2", true},
		{"12V 7Ah, 2 pcs", true},
		{"24 V (two 12 V 7 Ah)", false},
		{"two 12 V 7 Ah in parallel", false},
		{"12 V 14 Ah (two 12 V 7 Ah)", false},
		{"12 V 7 Ah", false},
	} {
		a := assess(t, benchLoad().with("pack.label", `"`+c.label+`"`))
		if got := has(a, judge.CodeBlocksUnclear) == answer.FixFirst; got != c.unclear {
			t.Errorf("%s: to fix first %v, want %v", c.label, got, c.unclear)
		}
	}
}

// Twice two would be four blocks that nobody has.
func TestALabelOfTwoBlocksIsNotJoinedOnceMore(t *testing.T) {
	err := refused(t, benchLoad().with("pack.label", `"2 x 12 V 7 Ah"`, "pack.joined", `"series"`))
	if err == nil || !strings.Contains(err.Error(), `pack.joined: read "series"`) || !strings.Contains(err.Error(), "names 2 blocks already") {
		t.Errorf("got %v", err)
	}
}

// twoBlocks is two 12 V blocks in series.
func twoBlocks() sheet {
	return benchLoad().with("pack.joined", `"series"`, "load.until", `"21 V"`, "outing.air", `"20 C"`, "measured.hours_rested", `"12 h"`)
}

// charged is the charge that the outing begins with.
func charged(t testing.TB, a *answer.Assessment) string {
	t.Helper()
	for _, as := range a.Assumed {
		if as.Key == "pack.charge" {
			return as.Value + ": " + as.Why
		}
	}
	return "not assumed"
}

// noted reports whether a note holds the words.
func noted(a *answer.Assessment, words string) bool {
	return slices.ContainsFunc(a.Notes, func(n answer.Note) bool { return strings.Contains(n.Text, words) })
}

// 12.6 V on one block and 25.2 V on both are one and the same reading.
func TestARestVoltageOfTwoPacksInSeriesMayBeOfOneOrOfBoth(t *testing.T) {
	single := assess(t, benchLoad().with("outing.air", `"20 C"`, "measured.hours_rested", `"12 h"`, "measured.rest_voltage", `"12.6 V"`))
	want := charged(t, single)
	for _, c := range []struct{ read, note string }{
		{"12.6 V", `measured.rest_voltage "12.6 V" is taken as read on one of the two packs. If it was read over both in series, each stands at only 6.3 V, below what harms it: then do not charge them.`},
		{"25.2 V", `measured.rest_voltage "25.2 V" is taken as read over both packs in series, 12.6 V each: one alone cannot have so much.`},
	} {
		a := assess(t, twoBlocks().with("measured.rest_voltage", `"`+c.read+`"`))
		if got := charged(t, a); got != want || !strings.Contains(got, "measured") {
			t.Errorf("%s: charge %s, want %s", c.read, got, want)
		}
		if !noted(a, c.note) {
			t.Errorf("%s: no note %q in %+v", c.read, c.note, a.Notes)
		}
		if has(a, charge.CodeDeeplyFlat) > answer.Fine {
			t.Errorf("%s: a sound pair is called deeply flat", c.read)
		}
	}
}

// Whatever the volts, there is an answer or a fault that names them; rest and
// load may have been read at different places.
func TestNoVoltsOfTwoPacksInSeriesAreWithoutAnAnswer(t *testing.T) {
	for _, chem := range []struct{ name, label, until string }{
		{"agm", "12 V 7 Ah", "21 V"}, {"li-ion", "20 V max 5 Ah", "30 V"}, {"lifepo4", "12.8 V 7 Ah", "22 V"}, {"nimh", "9.6 V 3 Ah", "16 V"},
	} {
		for _, v := range []string{"0 V", "1 V", "9 V", "12.6 V", "16 V", "19 V", "21 V", "25.2 V", "30 V", "42 V", "60 V"} {
			s := twoBlocks().with("pack.chemistry", `"`+chem.name+`"`, "pack.label", `"`+chem.label+`"`, "load.until", `"`+chem.until+`"`,
				"measured.rest_voltage", `"`+v+`"`)
			var faults setup.Faults
			if err := refused(t, s); err != nil && (!errors.As(err, &faults) || !strings.Contains(err.Error(), `measured.rest_voltage: read "`+v+`"`)) {
				t.Errorf("%s at %s: %v", chem.name, v, err)
			}
		}
	}
	mixed := twoBlocks().with("measured.rest_voltage", `"12.7 V"`, "measured.loaded_voltage", `"23 V"`, "measured.loaded_current", `"10 A"`)
	same := mixed.with("measured.rest_voltage", `"25.4 V"`)
	if a, b := assess(t, mixed), assess(t, same); a.Pack.ResistanceOhm != b.Pack.ResistanceOhm {
		t.Errorf("rest read on one pack: %g Ohm, on both: %g Ohm", a.Pack.ResistanceOhm, b.Pack.ResistanceOhm)
	}
	err := refused(t, mixed.with("measured.loaded_voltage", `"13 V"`))
	if err == nil || !strings.Contains(err.Error(), `measured.loaded_voltage: read "13 V"; want at most measured.rest_voltage`) {
		t.Errorf("more volts under load than at rest: %v", err)
	}
}

// A pack's own electronics know nothing of the other pack; what stands behind
// both sees both.
func TestACutoffInThePackHasTheVoltsOfOneAndAnyOtherOfBoth(t *testing.T) {
	s := sheet{
		"pack.chemistry": `"li-ion"`, "pack.label": `"20 V max 5 Ah"`, "pack.joined": `"series"`, "pack.health": `"100 %"`,
		"load.current": `"10 A"`, "outing.air": `"20 C"`,
	}
	opens := func(table, volts string) *answer.Assessment {
		return assess(t, s.with("cutoff."+table+".opens_at", `"`+volts+`"`, "cutoff."+table+".delay", `"1 s"`, "cutoff."+table+".standby_current", `"0 A"`))
	}
	want := opens("module", "30 V")
	for _, c := range []struct {
		table, volts string
		code         string // found, "" = none of these
	}{
		{"pack", "15 V", ""},
		{"controller", "30 V", ""},
		{"pack", "10 V", cutoff.CodeBelowHarm},
		{"module", "15 V", cutoff.CodeBelowHarm},
		{"controller", "15 V", cutoff.CodeBelowHarm},
		{"pack", "30 V", cutoff.CodeAboveFull},
	} {
		a := opens(c.table, c.volts)
		for _, code := range []string{cutoff.CodeBelowHarm, cutoff.CodeAboveFull} {
			if found := has(a, code) > answer.Fine; found != (code == c.code) {
				t.Errorf("cutoff.%s at %s: %s is %v", c.table, c.volts, code, found)
			}
		}
		if c.code == "" && a.Ride.PedalMin != want.Ride.PedalMin {
			t.Errorf("cutoff.%s at %s opens after %g min, want %g min", c.table, c.volts, a.Ride.PedalMin, want.Ride.PedalMin)
		}
	}
}

// The key list must say which keys speak of one pack.
func TestTheKeysSayWhatTheyMeanOfTwoPacks(t *testing.T) {
	want := map[string]string{
		"pack.joined":           "[pack] and [cutoff.pack] then describe one of them, every other table sees both",
		"measured.rest_voltage": "of two packs in series it may be that of one or of both",
		"load.until":            "of both packs where two are in series",
	}
	for _, k := range setup.Keys() {
		if words := want[k.Table+"."+k.Name]; words != "" {
			delete(want, k.Table+"."+k.Name)
			if !strings.Contains(k.Doc, words) {
				t.Errorf("%s.%s: %q lacks %q", k.Table, k.Name, k.Doc, words)
			}
		}
	}
	if len(want) > 0 {
		t.Errorf("no such keys: %v", want)
	}
}

// What one pack's electronics draw, both packs' draw: joined, the ride of each
// does not change, and the days until each is harmed are those of one (a little
// fewer, since the weakest of ten cells is weaker than that of five).
func TestJoinedPacksStandAsLongAsOne(t *testing.T) {
	s := sheet{
		"pack.chemistry": `"li-ion"`, "pack.label": `"20 V max 5 Ah"`, "load.current": `"10 A"`,
		"cutoff.pack.opens_at": `"15 V"`, "cutoff.pack.delay": `"1 s"`, "cutoff.pack.standby_current": `"5 mA"`,
	}
	days := func(a *answer.Assessment) float64 { return *a.Cutoff.IdleDaysToHarm }
	one, thirsty := assess(t, s), assess(t, s.with("cutoff.pack.standby_current", `"10 mA"`))
	alone := days(one)
	for _, two := range []sheet{
		s.with("pack.joined", `"series"`),
		s.with("pack.joined", `"parallel"`, "load.current", `"20 A"`),
	} {
		a := assess(t, two)
		near(t, two["pack.joined"]+": minutes", a.Ride.PedalMin, one.Ride.PedalMin, 5e-3)
		if now := days(a); now > alone || now < (alone+days(thirsty))/2 {
			t.Errorf("%s: %.4g days, one alone %.4g, one that draws twice as much %.4g", two["pack.joined"], now, alone, days(thirsty))
		}
	}
}

// Two packs about to be joined are judged alike whether they are asked about by
// themselves or in a vehicle.
func TestTwoPacksAreJudgedAlikeAloneAndInAVehicle(t *testing.T) {
	t.Parallel()
	for _, row := range []struct{ how, first, second, label, other string }{
		{"parallel", "12.8 V", "12.2 V", "12 V 7 Ah", "12 V 9 Ah"},
		{"parallel", "12.8 V", "12.2 V", "12 V 7 Ah", "12 V 7 Ah"},
		{"parallel", "12.8 V", "12.5 V", "12 V 7 Ah", "12 V 7 Ah"},
		{"parallel", "12.8 V", "12.78 V", "12 V 7 Ah", "12 V 7 Ah"},
		{"series", "12.8 V", "12.2 V", "12 V 7 Ah", "12 V 9 Ah"},
	} {
		one := ask.Battery{Label: row.label, Chemistry: "agm"}
		two := one
		two.Label = row.other
		alone, err := ask.Join{A: one, B: two, AV: voltsOf(t, row.first), BV: voltsOf(t, row.second), Series: row.how == "series"}.Answer()
		if err != nil {
			t.Fatal(err)
		}
		want := answer.Fine
		if alone.Level != nil {
			want = *alone.Level
		}
		a := assess(t, labelsOnly().with("pack.label", quoted(row.label), "pack.joined", quoted(row.how),
			"pack.second.label", quoted(row.other), "measured.rest_voltage", quoted(row.first), "measured.second_rest_voltage", quoted(row.second),
			"vehicle.design_voltage", map[string]string{"series": `"24 V"`, "parallel": `"12 V"`}[row.how]))
		if got := has(a, battery.CodeParallelEqualising, battery.CodeSeriesUnequalCharge, battery.CodeUnlikePacks, battery.CodeParallelMixedChemistry); got != want {
			t.Errorf("%s at %s and %s at %s in %s: %v alone, %v in a vehicle", row.label, row.first, row.other, row.second, row.how, want, got)
		}
	}
}

func quoted(s string) string { return strconv.Quote(s) }

func voltsOf(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(strings.TrimSuffix(text, " V"), 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Which of two packs is called the first is the reader's choice: in series the emptier ends
// the ride, in parallel what both hold is shared.
func TestWhichOfTwoPacksWasReadFirstChangesNothing(t *testing.T) {
	t.Parallel()
	for _, row := range []struct{ how, volts, first, second, least, most string }{
		{"series", "24 V", "12.9 V", "12.2 V", "12.2 V", "12.2 V"},
		{"parallel", "12 V", "12.9 V", "12.2 V", "12.2 V", "12.9 V"},
	} {
		of := func(first, second string) *answer.Assessment {
			return assess(t, labelsOnly().with("pack.label", `"12 V 7 Ah"`, "pack.joined", quoted(row.how), "vehicle.design_voltage", quoted(row.volts),
				"measured.rest_voltage", quoted(first), "measured.second_rest_voltage", quoted(second), "measured.hours_rested", `"12 h"`))
		}
		a, b := of(row.first, row.second), of(row.second, row.first)
		if !reflect.DeepEqual(a.Ride, b.Ride) || a.Verdict != b.Verdict || charged(t, a) != charged(t, b) || len(a.Findings) != len(b.Findings) {
			t.Errorf("%s: %+v %v %s; the other way about %+v %v %s", row.how, a.Ride, a.Verdict, charged(t, a), b.Ride, b.Verdict, charged(t, b))
		}
		least, most := of(row.least, row.least).Ride.StartsCharged, of(row.most, row.most).Ride.StartsCharged
		if got := a.Ride.StartsCharged; row.how == "series" && got != least || row.how == "parallel" && !(got > least && got < most) {
			t.Errorf("%s: begins with %g, the packs with %g and %g", row.how, got, least, most)
		}
	}
}

// Nor does it matter which of two unlike packs is called the first: what both hold, weigh
// and resist is that of the two.
func TestWhichOfTwoUnlikePacksIsTheFirstChangesNothing(t *testing.T) {
	t.Parallel()
	for _, how := range []string{"series", "parallel"} {
		for _, row := range []struct {
			chemistry     string
			first, second [2]string // label and health
		}{
			{"agm", [2]string{"12 V 7 Ah"}, [2]string{"12 V 12 Ah"}},
			{"agm", [2]string{"12 V 7 Ah", "100 %"}, [2]string{"12 V 7 Ah", "40 %"}},
			{"agm", [2]string{"12 V 7 Ah", "90 %"}, [2]string{"12 V 12 Ah", "30 %"}},
			{"li-ion", [2]string{"20 V max 4 Ah", "95 %"}, [2]string{"20 V max 8 Ah", "70 %"}},
		} {
			of := func(first, second [2]string) *answer.Assessment {
				s := sheet{
					"rider.age": `"5 years"`, "vehicle.design_voltage": `"24 V"`, "pack.chemistry": quoted(row.chemistry), "pack.joined": quoted(how),
					"pack.label": quoted(first[0]), "pack.second.label": quoted(second[0]),
					"gears.ratio": `"120:1"`, // what was made with two such blocks in series would tell of its motors by the first
				}
				if first[1] != "" {
					s = s.with("pack.health", quoted(first[1]), "pack.second.health", quoted(second[1]))
				}
				return assess(t, s)
			}
			a, b := of(row.first, row.second), of(row.second, row.first)
			what := fmt.Sprintf("%s %v and %v: ", how, row.first, row.second)
			near(t, what+"minutes", b.Ride.PedalMin, a.Ride.PedalMin, 5e-3)
			near(t, what+"speed", b.Steady.SpeedKmh, a.Steady.SpeedKmh, 5e-3)
			near(t, what+"mass", b.Pack.MassKg, a.Pack.MassKg, 1e-9)
			near(t, what+"Ah", b.Pack.RatedAh, a.Pack.RatedAh, 5e-3)
			if x, y := codesOf(a), codesOf(b); x != y {
				t.Errorf("%s%s; the other way about %s", what, x, y)
			}
		}
	}
}

// Two kinds of cells in one circuit are what no vehicle was sold with, whichever is called
// the first: what has to be put right is the same, and minutes lie near each other. They are
// not the same: what labels and age leave open is drawn for the first one's kind.
func TestTwoKindsOfCellsAreNoBatteryThatAVehicleWasMadeWith(t *testing.T) {
	t.Parallel()
	for _, row := range [][2][2]string{ // chemistry and label of both
		{{"agm", "12 V 7 Ah"}, {"lifepo4", "12.8 V 10 Ah"}},
		{{"agm", "12 V 7 Ah"}, {"lifepo4", "12.8 V 5 Ah"}},
		{{"agm", "12 V 7 Ah"}, {"gel", "12 V 7 Ah"}},
	} {
		of := func(first, second [2]string) *answer.Assessment {
			return assess(t, sheet{
				"rider.age": `"5 years"`, "vehicle.design_voltage": `"24 V"`, "vehicle.ground": `"short grass"`, "motors.count": "2", "motors.can": `"775"`,
				"pack.joined": `"series"`, "pack.chemistry": quoted(first[0]), "pack.label": quoted(first[1]),
				"pack.second.chemistry": quoted(second[0]), "pack.second.label": quoted(second[1]),
			})
		}
		a, b := of(row[0], row[1]), of(row[1], row[0])
		what := fmt.Sprintf("%v and %v: ", row[0], row[1])
		near(t, what+"minutes", b.Ride.PedalMin, a.Ride.PedalMin, 0.2)
		count := func(a *answer.Assessment) (n int) {
			for _, f := range a.Findings {
				if f.Level >= answer.FixFirst {
					n++
				}
			}
			return n
		}
		for _, code := range []string{battery.CodeUnlikePacks, wiring.CodeFuseUnknown, cutoff.CodeNone, battery.CodeSeriesUnequalCharge} {
			if x, y := has(a, code), has(b, code); x != y {
				t.Errorf("%s%s is %v; the other way about %v", what, code, x, y)
			}
		}
		if has(a, cutoff.CodeNone) < answer.FixFirst || a.Verdict != b.Verdict || count(a) < 3 {
			t.Errorf("%s%v, %v, %d to put right", what, a.Verdict, b.Verdict, count(a))
		}
	}
}

// codesOf are the codes and levels of all findings, sorted.
func codesOf(a *answer.Assessment) string {
	var list []string
	for _, f := range a.Findings {
		list = append(list, f.Code+" "+f.Level.String())
	}
	slices.Sort(list)
	return strings.Join(list, ", ")
}

// In series the volts of both add up, whatever their cells and whichever is the first: six
// cells of lead-acid at 2.14 V and four of iron phosphate at 3.40 V rest full at 26.4 V
// (Kirchhoff; the ladders of the profiles, whose sources stand there).
func TestTwoKindsOfCellsInSeriesHaveTheVoltsOfBoth(t *testing.T) {
	t.Parallel()
	for _, row := range []struct {
		first, second        [2]string // chemistry and label
		full, nominal, empty float64
	}{
		{[2]string{"agm", "12 V 7 Ah"}, [2]string{"lifepo4", "12.8 V 10 Ah"}, 26.44, 24.8, 20.5},
		{[2]string{"agm", "12 V 12 Ah"}, [2]string{"lifepo4", "12.8 V 7 Ah"}, 26.44, 24.8, 20.5},
		{[2]string{"agm", "12 V 7 Ah"}, [2]string{"li-ion", "20 V max 5 Ah"}, 33.84, 30, 25.5},
		{[2]string{"nimh", "9.6 V 3 Ah"}, [2]string{"gel", "6 V 4 Ah"}, 17.49, 15.6, 13.25},
	} {
		of := func(first, second [2]string) *answer.Assessment {
			return assess(t, labelsOnly().with("vehicle.design_voltage", `"12 V"`, "pack.joined", `"series"`,
				"pack.chemistry", quoted(first[0]), "pack.label", quoted(first[1]),
				"pack.second.chemistry", quoted(second[0]), "pack.second.label", quoted(second[1])))
		}
		for _, a := range []*answer.Assessment{of(row.first, row.second), of(row.second, row.first)} {
			what := fmt.Sprintf("%v and %v, the first %s: ", row.first, row.second, a.Pack.Chemistry)
			near(t, what+"full", a.Pack.FullV, row.full, 2e-3)
			near(t, what+"nominal", a.Pack.NominalV, row.nominal, 2e-3)
			near(t, what+"empty", a.Pack.EmptyV, row.empty, 2e-3)
			if has(a, battery.CodeUnlikePacks) != answer.Danger {
				t.Errorf("%sis no danger", what)
			}
			if got := has(a, drive.CodeAboveToyVolts) > answer.Fine; got != (row.nominal > 25.6) { // two 12.8 V packs are sold as 24 V
				t.Errorf("%sabove what a toy may have: %v", what, got)
			}
			for _, f := range a.Findings {
				if f.Code == drive.CodeBoardOvervoltage && math.Abs(f.Found-row.full) > 0.03*row.full {
					t.Errorf("%sthe board gets %g V, want about %g", what, f.Found, row.full)
				}
			}
		}
	}
}

// Where one pack has more volts empty than the other full, or full more than the other may be
// charged with, no charge makes them alike for good, and
// what comes of it is no guess: it stands first, and nobody is told to charge and join them.
func TestPacksOfUnlikeVoltsAreNeverJoinedSideBySide(t *testing.T) {
	t.Parallel()
	for _, row := range []struct {
		chemistry, first, second string
		apart                    bool
	}{
		{"agm", "12 V 7 Ah", "6 V 4 Ah", true},
		{"", "12 V 7 Ah", "6 V 4 Ah", true},
		{"li-ion", "20 V max 5 Ah", "12 V max 4 Ah", true},
		{"li-ion", "14.8 V 5 Ah", "11.1 V 5 Ah", true}, // 16.8 V fill the one, and are 5.6 V a cell of the other
		{"li-ion", "20 V max 5 Ah", "14.4 V 4 Ah", true},
		{"lifepo4", "12.8 V 7 Ah", "9.6 V 7 Ah", true},
		{"agm", "12 V 7 Ah", "12 V 4 Ah", false},
		{"li-ion", "20 V max 5 Ah", "18 V 4 Ah", false},
	} {
		of := func(first, second string) *answer.Assessment {
			s := labelsOnly().with("vehicle.design_voltage", `"12 V"`, "pack.joined", `"parallel"`, "pack.label", quoted(first), "pack.second.label", quoted(second))
			delete(s, "pack.chemistry")
			if row.chemistry != "" {
				s = s.with("pack.chemistry", quoted(row.chemistry))
			}
			return assess(t, s)
		}
		one, other := of(row.first, row.second), of(row.second, row.first)
		near(t, row.first+" beside "+row.second+": full volts, the other way about", other.Pack.FullV, one.Pack.FullV, 1e-9)
		for _, a := range []*answer.Assessment{one, other} {
			what := fmt.Sprintf("%s %s beside %s: ", row.chemistry, row.first, row.second)
			top := a.Findings[0]
			if first := top.Code == battery.CodeParallelUnlikeVolts && top.Level == answer.Danger && top.Guess == ""; first != row.apart {
				t.Errorf("%sfirst stands %v %s, a guess: %q", what, top.Level, top.Code, top.Guess)
			}
			if a.NeverRidden() != row.apart || a.Urgent() != row.apart {
				t.Errorf("%snever ridden: %v, and to be taken apart today: %v", what, a.NeverRidden(), a.Urgent())
			}
			if has(a, battery.CodeParallelEqualising) > answer.Fine && row.apart {
				t.Errorf("%stold to charge and join them", what)
			}
		}
	}
	for _, q := range []ask.Join{
		{A: ask.Battery{Label: "12 V 7 Ah"}, B: ask.Battery{Label: "6 V 4 Ah"}, AV: 12.9, BV: 6.4},
		{A: ask.Battery{Label: "14.8 V 5 Ah li-ion"}, B: ask.Battery{Label: "11.1 V 5 Ah li-ion"}, AV: 12.4, BV: 12.4},
	} {
		joined, err := q.Answer()
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(append(joined.Words, joined.Caution), " ")
		if joined.Level == nil || *joined.Level != answer.Danger || !strings.Contains(text, "Never join them") || strings.Contains(text, "full on their own") || strings.Contains(text, "within what") {
			t.Errorf("%v: %s", joined.Level, text)
		}
	}
}

// As long as they are joined the fuller of two drives its charge into the other: to part them
// comes before anything that is looked up or bought, also where the other is flat, dead or just
// off the charger, and nobody is told to charge both.
func TestTwoThatStandApartAreParted(t *testing.T) {
	for _, c := range []struct {
		first, second string
		next          string
	}{
		{"12.9 V", "6 V", "Part them, and judge each by its own volts"},
		{"6 V", "12.9 V", "Part them, and judge each by its own volts"},
		{"12.9 V", "10 V", "Part them, and judge each by its own volts"},
		{"12.9 V", "14.6 V", "Part them, and judge each by its own volts"},
		{"12.9 V", "3 V", "Do not charge it: hand it in"},
		{"12.9 V", "11.9 V", "Part them, and charge each by itself to full."},
	} {
		a := assess(t, labelsOnly().with("pack.chemistry", `"agm"`, "pack.label", `"12 V 7 Ah"`, "pack.joined", `"parallel"`,
			"measured.rest_voltage", strconv.Quote(c.first), "measured.second_rest_voltage", strconv.Quote(c.second)))
		if next := a.Headline[2]; !strings.HasPrefix(next, c.next) {
			t.Errorf("%s beside %s: next is %q, want %q", c.first, c.second, next, c.next)
		}
	}
}

// Two lithium packs side by side whose volts nobody read need no other battery: the first way
// out is to charge each and to join them only where both show the same, and what it leads to
// is in order.
func TestTwoPacksWhoseVoltsNobodyReadAreKept(t *testing.T) {
	s := sheet{
		"rider.age": `"8 years"`, "rider.mass": `"25 kg"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"asphalt"`, "vehicle.slope": `"0 %"`,
		"vehicle.brake": `"motors"`, "vehicle.weakest_part_voltage": `"24 V"`, "vehicle.accessories": `"none"`,
		"controller.kind": `"chopper"`, "controller.max_voltage": `"24 V"`, "controller.current_limit": `"20 A"`, "controller.ramp": `"1 s"`, "controller.reverses": `"after a stop"`,
		"wire.gauge": `"12 AWG"`, "wire.insulation": `"105 C"`,
		"fuse.form": `"small blade"`, "fuse.rating": `"25 A"`, "fuse.distance_from_pack": `"50 mm"`, "fuse.max_voltage": `"32 V"`,
		"pack.label": `"12.8 V 6 Ah LiFePO4"`, "pack.joined": `"parallel"`, "pack.watches_cells": `true`, "cutoff.pack.opens_at": `"10 V"`,
		"charger.jack": `"pack"`, "charger.came_with_pack": `true`, "charger.stops": `"by itself"`,
	}
	read, a := waysOf(t, s)
	if a.Verdict != answer.FixFirst || len(a.Ways) == 0 {
		t.Fatalf("%v, %d ways; this test wants something to put right", a.Verdict, len(a.Ways))
	}
	if _, beside := waysOf(t, s.with("original.pack.label", `"12 V 7 Ah"`)); len(beside.Ways) == 0 || !slices.Equal(beside.Ways[0].Steps, a.Ways[0].Steps) {
		t.Errorf("beside the battery that it came with the ways are %+v", beside.Ways)
	}
	w := &a.Ways[0]
	if want := []string{"charge each of the two by itself to full, read both the next day, and join them only at the same volts and if their maker allows it"}; !slices.Equal(w.Steps, want) {
		t.Errorf("the first way is %q, want %q", w.Steps, want)
	}
	if after := walked(t, read, w); after.Verdict >= answer.FixFirst {
		t.Errorf("walked it is %v: %s", after.Verdict, after.Headline[1])
	}
}

// The volts at rest of two joined packs that were both read are of those, also where the
// battery that the vehicle came with is described; all else is read on that one.
func TestVoltsOfBothPacksAreOfThosePacks(t *testing.T) {
	s := benchLoad().with("pack.label", `"12.8 V 6 Ah LiFePO4"`, "pack.chemistry", "", "pack.joined", `"parallel"`,
		"measured.rest_voltage", `"13.3 V"`, "measured.second_rest_voltage", `"13.3 V"`, "measured.hours_rested", `"12 h"`, "charger.came_with_pack", `true`, "charger.jack", `"pack"`)
	for name, sheet := range map[string]sheet{"alone": s, "beside an original": s.with("original.pack.label", `"12 V 7 Ah"`, "original.pack.chemistry", `"agm"`)} {
		a := assess(t, sheet)
		if got := has(a, battery.CodeParallelEqualising); got > answer.Fine {
			t.Errorf("%s: two packs of the same volts: %v, the fuller charges the other", name, got)
		}
		if got := has(a, charge.CodeChargedInParallel); got != answer.Watch {
			t.Errorf("%s: two packs of the same volts that are charged apart: %v", name, got)
		}
	}
}
