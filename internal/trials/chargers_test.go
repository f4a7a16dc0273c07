package trials_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/report"
)

// reversedPlug is a block charged through its vehicle's jack, with a plug of the other
// polarity, and driven while it charges.
func reversedPlug() sheet {
	return sheet{
		"rider.age": `"4 years"`, "vehicle.design_voltage": `"6 V"`, "vehicle.ground": `"lawn"`, "pack.label": `"6 V 4 Ah"`, "pack.chemistry": `"agm"`,
		"charger.label": `"7.2 V 500 mA DC centre negative"`, "charger.made_for": `"lead-acid"`, "charger.stops": `"never"`,
		"charger.jack_polarity": `"centre positive"`, "charger.jack": `"vehicle"`, "charger.blocks_driving": `false`,
	}
}

// mentioned reports whether a finding is told.
func mentioned(a *answer.Assessment, code string) bool {
	return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool { return f.Code == code })
}

// A new charger goes into the same jack: what hangs on that stays told, and the way says
// what the plug must be.
func TestAnotherChargerGoesIntoTheSameJack(t *testing.T) {
	t.Parallel()
	s, a := waysOf(t, reversedPlug())
	if len(a.Ways) == 0 {
		t.Fatal("no way out")
	}
	w := &a.Ways[0]
	steps := strings.Join(w.Steps, "\n")
	for _, want := range []string{"plug centre positive as jack", "at most 1.2 A, stops by itself", "cuts the motors off"} {
		if !strings.Contains(steps, want) {
			t.Errorf("no %q in\n%s", want, steps)
		}
	}
	after, err := s.With(w.Values())
	if err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]string{
		answer.KeyChargerJack: "vehicle", answer.KeyChargerJackPolarity: "centre positive", answer.KeyChargerPolarity: "centre positive", answer.KeyChargerVoltage: "7.35 V",
	} {
		if got := after.Values()[key]; got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
	if again := walked(t, s, w); again.Verdict != w.Verdict || !mentioned(again, charge.CodeInVehicle) {
		t.Errorf("asked again: %v, promised %v; what hangs on the jack is told: %v", again.Verdict, w.Verdict, mentioned(again, charge.CodeInVehicle))
	}
}

// Whatever battery is put in: a vehicle that drives while it charges still does. Of a jack
// that is closed off nothing stays told.
func TestAnotherBatteryLeavesTheVehiclesJackAsItIs(t *testing.T) {
	t.Parallel()
	base := reversedPlug().with("charger.label", "", "charger.made_for", "", "charger.stops", "")
	if a := assess(t, base); !mentioned(a, charge.CodeDrivesPlugged) || a.Charge.Match != answer.MatchNone {
		t.Errorf("of a jack without a charger nothing is said: %v", a.Charge.Match)
	}
	if a := assess(t, base.with("pack.label", `"6.4 V 6 Ah"`, "pack.chemistry", `"lifepo4"`)); !mentioned(a, charge.CodeVehicleJack) {
		t.Error("lithium on a vehicle's jack is passed over where no charger is told")
	}
	read, a := waysOf(t, reversedPlug().with("vehicle.design_voltage", `"12 V"`, "pack.label", `"20 V max 4 Ah"`, "pack.chemistry", `"li-ion"`))
	if len(a.Ways) == 0 {
		t.Fatal("no way out")
	}
	for i := range a.Ways {
		after, err := read.With(a.Ways[i].Values())
		if err != nil {
			t.Fatal(err)
		}
		if got := after.Values(); got[answer.KeyChargerBlocksDriving] == "false" || (got[answer.KeyChargerJackPolarity] == "") != (got[answer.KeyChargerJack] == "pack") {
			t.Errorf("%s %q leaves %v", a.Ways[i].Title, a.Ways[i].Steps, got)
		}
	}
}

// The limit of a charger is on every page that names one.
func TestTheLimitOfAChargerIsNeverCutOff(t *testing.T) {
	t.Parallel()
	phosphate := sheet{
		"rider.age": `"4 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"lawn"`, "pack.label": `"12.8 V 10 Ah LiFePO4"`,
		"charger.label": `"12 V 1 A"`, "charger.made_for": `"lead-acid"`, "charger.stops": `"never"`, "original.pack.label": `"12 V 7 Ah"`, "original.pack.chemistry": `"agm"`,
	}
	lead := sheet{
		"rider.age": `"3 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"lawn"`, "pack.label": `"12 V 7 Ah"`, "pack.chemistry": `"agm"`,
		"charger.label": `"12 V 10 A DC"`, "charger.made_for": `"lead-acid"`, "charger.stops": `"by itself"`,
	}
	for _, s := range []sheet{phosphate, lead, reversedPlug()} {
		read, a := waysOf(t, s)
		named := false
		for _, f := range []report.Format{report.FormatText, report.FormatMarkdown, report.FormatBBCode} {
			var out bytes.Buffer
			if err := report.Write(&out, a, report.Options{Format: f}); err != nil {
				t.Fatal(err)
			}
			text := strings.Join(strings.Fields(out.String()), " ")
			for _, page := range strings.Split(text, "another charger: ")[1:] {
				named = true
				if !strings.Contains(page[:min(len(page), 120)], "stops by itself") {
					t.Errorf("%v cuts off: %.120s", f, page)
				}
			}
		}
		if !named {
			t.Errorf("%s: no page names a charger", read.Title.Text)
		}
		for i := range a.Ways {
			if again := walked(t, read, &a.Ways[i]); again.Verdict != a.Ways[i].Verdict {
				t.Errorf("%q: promised %v, asked again %v", a.Ways[i].Steps, a.Ways[i].Verdict, again.Verdict)
			}
		}
	}
}

// Of two batteries in series the volts of a charger are told for what hangs on it, and held
// against all cells that do.
func TestOfTwoInSeriesAllCellsCount(t *testing.T) {
	t.Parallel()
	lead := sheet{
		"rider.age": `"8 years"`, "vehicle.design_voltage": `"24 V"`, "vehicle.ground": `"grass"`, "pack.label": `"12 V 9 Ah"`, "pack.chemistry": `"agm"`, "pack.joined": `"series"`,
	}
	if right := assess(t, lead).Charge.Right; !strings.Contains(right, "ends at 14.7 V for each by itself") {
		t.Errorf("nothing told: %s", right)
	}
	for _, s := range []sheet{lead.with("charger.jack", `"vehicle"`), lead.with("charger.label", `"29.4 V 2 A"`, "charger.made_for", `"lead-acid"`)} {
		if right := assess(t, s).Charge.Right; !strings.Contains(right, "ends at 29.4 V for the two in series") {
			t.Errorf("both charged as one: %s", right)
		}
	}
	iron := lead.with("pack.label", `"12.8 V 10 Ah LiFePO4"`, "pack.chemistry", "", "charger.label", `"29.2 V 2 A DC"`, "charger.made_for", `"lifepo4"`, "charger.stops", `"by itself"`)
	a := assess(t, iron)
	if mentioned(a, charge.CodeVoltsTooHigh) || !mentioned(a, charge.CodeChargedInSeries) || a.Verdict != answer.Danger {
		t.Errorf("29.2 V on eight cells of two packs: %v, too high %v", a.Verdict, mentioned(a, charge.CodeVoltsTooHigh))
	}
	if !strings.Contains(a.Charge.Right, "ends at 14.4 V for each by itself") {
		t.Errorf("two packs of lithium: %s", a.Charge.Right)
	}
}

// What nobody told is no danger: packs side by side may each be taken off to be charged.
func TestPacksSideBySideMayBeChargedApart(t *testing.T) {
	t.Parallel()
	base := sheet{
		"rider.age": `"7 years"`, "vehicle.design_voltage": `"24 V"`, "vehicle.ground": `"lawn"`, "pack.label": `"20 V max 5 Ah"`, "pack.joined": `"parallel"`, "pack.maker": `"own"`,
		"pack.watches_cells": `true`, "cutoff.pack.opens_at": `"15 V"`, "measured.rest_voltage": `"20.6 V"`, "measured.second_rest_voltage": `"20.6 V"`, "charger.came_with_pack": `true`,
	}
	for _, s := range []sheet{base, base.with("charger.jack", `"pack"`)} {
		a := assess(t, s)
		if has(a, charge.CodeChargedInParallel) != answer.Watch || !slices.Contains(a.Habits, answer.HabitChargeApart) {
			t.Errorf("%v: %v, %q", s["charger.jack"], has(a, charge.CodeChargedInParallel), a.Habits)
		}
	}
	for key, volts := range map[string]string{"measured.second_rest_voltage": `"20.1 V"`, "measured.rest_voltage": `"20.2 V"`} {
		if a := assess(t, base.with(key, volts)); has(a, charge.CodeChargedInParallel) != answer.FixFirst {
			t.Errorf("%s %s beside 20.6 V: %v", key, volts, has(a, charge.CodeChargedInParallel))
		}
	}
	if a := assess(t, base.with("charger.jack", `"vehicle"`)); has(a, charge.CodeChargedInParallel) != answer.Danger {
		t.Errorf("through the vehicle's jack: %v", has(a, charge.CodeChargedInParallel))
	}
}

// What keeps a charger from being used only because nobody read its label is asked, first of
// all, and nobody is told to buy another before.
func TestALabelThatSettlesItIsAskedFor(t *testing.T) {
	t.Parallel()
	base := sheet{
		"rider.age": `"3 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"lawn"`, "pack.label": `"12 V 7 Ah"`, "pack.chemistry": `"agm"`,
		"charger.label": `"14.7 V 1000 mA"`, "charger.made_for": `"lead-acid"`, "charger.stops": `"by itself"`,
	}
	s, a := waysOf(t, base)
	if len(a.Measure) == 0 || a.Measure[0].Key != answer.KeyChargerOutput {
		t.Errorf("AC or DC is not asked first: %+v", a.Measure)
	}
	if len(a.Ways) == 0 || len(a.Ways[0].Steps) != 1 || !strings.HasPrefix(a.Ways[0].Steps[0], "keep the charger if its label says DC; if not, another: ") {
		t.Fatalf("ways: %+v", a.Ways)
	}
	if set := a.Ways[0].Values(); len(set) != 1 || set[answer.KeyChargerOutput] != "dc" {
		t.Errorf("the way changes %v", set)
	}
	if again := walked(t, s, &a.Ways[0]); again.Verdict != a.Ways[0].Verdict {
		t.Errorf("asked again: %v", again.Verdict)
	}
	for i := range a.Buy {
		if b := &a.Buy[i]; b.Item == "Charger" && !strings.Contains(b.Text, "the one that you have, if") {
			t.Errorf("to buy: %s", b.Text)
		}
	}
	for _, s := range []sheet{base.with("charger.label", `"14.7 V 1000 mA DC"`), base.with("charger.output", `"dc"`)} {
		_, a := waysOf(t, s)
		if slices.ContainsFunc(a.Measure, func(m answer.Measurement) bool { return m.Key == answer.KeyChargerOutput }) {
			t.Errorf("asked although it is told: %v", s)
		}
	}
	// Where another is needed anyhow, no label keeps it.
	_, a = waysOf(t, base.with("charger.label", `"12 V 10 A"`))
	if len(a.Ways) == 0 || !strings.HasPrefix(a.Ways[0].Steps[0], "another charger: ") {
		t.Errorf("ten amps on seven ampere-hours: %+v", a.Ways)
	}
}

// Each finding that has a charger settled first is named where the page says so.
func TestWhatIsToBeSettledOfAChargerIsNamed(t *testing.T) {
	t.Parallel()
	_, a := waysOf(t, sheet{
		"rider.age": `"2 years"`, "vehicle.design_voltage": `"6 V"`, "vehicle.ground": `"parquet"`, "pack.label": `"9.6 V 3 Ah NiMH"`, "charger.label": `"12 V 500 mA"`,
	})
	want := "Do not use this charger before this is settled: AC or DC; for what kind of battery it is; the volts that it rises to."
	if !slices.ContainsFunc(a.Changes, func(c string) bool { return strings.HasPrefix(c, want) }) {
		t.Errorf("changes: %q", a.Changes)
	}
	var out bytes.Buffer
	if err := report.Write(&out, a, report.Options{}); err != nil {
		t.Fatal(err)
	}
	if page := strings.Join(strings.Fields(out.String()), " "); !strings.Contains(page, "Do not use this charger before this is settled: AC or DC") || !strings.Contains(page, "; for what kind of battery it is; the volts that it rises to.") {
		t.Errorf("not on the page:\n%s", out.String())
	}
}

// A charge that takes longer than anybody stays awake is one order: pulled overnight, and gone
// on with next day.
func TestALongChargeIsPausedOvernight(t *testing.T) {
	t.Parallel()
	a := assess(t, sheet{
		"rider.age": `"4 years"`, "vehicle.design_voltage": `"12 V"`, "pack.label": `"12 V 7 Ah"`, "pack.chemistry": `"agm"`, "pack.age": `"new"`,
		"charger.label": `"14.7 V 1 A DC"`, "charger.made_for": `"lead-acid"`, "charger.stops": `"by itself"`, "charger.came_with_pack": `true`,
	})
	for _, full := range []bool{false, true} {
		var out bytes.Buffer
		if err := report.Write(&out, a, report.Options{Full: full}); err != nil {
			t.Fatal(err)
		}
		page := strings.Join(strings.Fields(out.String()), " ")
		_, after, told := strings.Cut(page, "Unplug after")
		if !told || !strings.Contains(after[:min(len(after), 60)], "paused overnight") {
			t.Errorf("full %v: %.60s", full, after)
		}
	}
	if !strings.Contains(strings.Join(a.Cautions, " "), "go on next day where it takes longer") {
		t.Errorf("cautions: %q", a.Cautions)
	}
	hours := 5.0
	if quick := (&answer.ChargeFigures{UnplugAfterH: &hours}); quick.Overnight() {
		t.Error("five hours need no night")
	}
}

// What to buy is for the battery as it is, and says so where a way puts another in: on that
// one it would be dangerous. Where no way keeps the battery nobody buys anything for it.
func TestWhatToBuyIsForTheBatteryThatIsKept(t *testing.T) {
	t.Parallel()
	pair := sheet{
		"rider.age": `"5 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.has_board": `false`, "vehicle.ground": `"short grass"`,
		"motors.count": `2`, "motors.can": `"550"`, "motors.rated_voltage": `"12 V"`,
		"pack.label": `"12 V 7 Ah AGM"`, "pack.joined": `"series"`, "charger.label": `"29.4 V 1.5 A DC for lead-acid"`,
	}
	kept := pair.with("pack.joined", "", "charger.label", `"20 V 2 A"`, "charger.made_for", `"li-ion"`)
	for _, tt := range []struct {
		name string
		of   sheet
		want string
	}{
		{"no way keeps it", pair, "none for the battery as it is now"},
		{"some keep it", kept, "for the battery as it is now, one made for sealed lead-acid"},
	} {
		_, a := waysOf(t, tt.of)
		if len(a.Ways) == 0 {
			t.Fatalf("%s: no way out", tt.name)
		}
		i := slices.IndexFunc(a.Buy, func(p answer.Purchase) bool { return p.Item == "Charger" })
		if i < 0 || !strings.HasPrefix(a.Buy[i].Text, tt.want) {
			t.Errorf("%s: %+v", tt.name, a.Buy)
		}
		for _, f := range []report.Format{report.FormatText, report.FormatMarkdown, report.FormatBBCode, report.FormatHTML} {
			var out bytes.Buffer
			if err := report.Write(&out, a, report.Options{Format: f, Full: true}); err != nil {
				t.Fatal(err)
			}
			if strings.Contains(out.String(), "ends at 29.4 V") {
				t.Errorf("%s: %v names a charger of 29.4 V", tt.name, f)
			}
		}
	}
}

// On the vehicle's jack hangs the string: a charger for one of the two cannot fill it, as the
// question by itself says, and is right only where each is charged alone.
func TestThroughTheVehiclesJackTheStringIsCharged(t *testing.T) {
	t.Parallel()
	pair := sheet{
		"rider.age": `"8 years"`, "vehicle.design_voltage": `"24 V"`, "vehicle.ground": `"short grass"`, "pack.label": `"12 V 9 Ah AGM"`, "pack.joined": `"series"`,
		"charger.label": `"14.7 V 1.5 A DC for lead-acid"`, "charger.stops": `"by itself"`, "charger.blocks_driving": `true`,
	}
	for _, place := range []string{"vehicle", "pack", "terminals"} {
		a := assess(t, pair.with("charger.jack", `"`+place+`"`))
		onString := place == "vehicle"
		if mentioned(a, charge.CodeVoltsTooLow) != onString || (a.Charge.HoursToFull == nil) != onString || (a.Charge.Match == answer.MatchNo) != onString {
			t.Errorf("%s: %s, too low %v, full in %v", place, a.Charge.Match, mentioned(a, charge.CodeVoltsTooLow), a.Charge.HoursToFull)
		}
	}
	_, a := waysOf(t, pair.with("charger.jack", `"vehicle"`))
	if len(a.Ways) == 0 || !strings.Contains(strings.Join(a.Ways[0].Steps, "\n"), "29.4 V for the two in series") {
		t.Errorf("ways: %+v", a.Ways)
	}
}

// An adaptor that may rise to 3 V a cell is kept by no label: report, way out and the question
// by itself say the same of it, whatever battery the vehicle was sold with.
func TestAnAdaptorThatHoldsNoVoltsIsKeptByNoLabel(t *testing.T) {
	t.Parallel()
	gel := sheet{
		"rider.age": `"5 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.has_board": `false`, "vehicle.ground": `"short grass"`,
		"motors.count": `2`, "motors.can": `"550"`, "motors.rated_voltage": `"12 V"`,
		"pack.label": `"12 V 18 Ah gel"`, "pack.joined": `"parallel"`, "charger.label": `"12 V 500 mA"`, "charger.made_for": `"agm"`,
	}
	for _, s := range []sheet{gel, gel.with("pack.label", `"6 V 4.5 Ah lead-acid"`, "pack.joined", `"series"`, "charger.label", `"6 V 500 mA"`, "charger.jack", `"pack"`)} {
		_, a := waysOf(t, s)
		if len(a.Ways) == 0 || !strings.Contains(strings.Join(a.Ways[0].Steps, "\n"), "another charger: for lead-acid") {
			t.Errorf("ways: %+v", a.Ways)
		}
		told := s.with("charger.label", strings.TrimSuffix(s["charger.label"], `"`)+` DC"`, "charger.jack", `"pack"`)
		if got := has(assess(t, told), charge.CodeVoltsTooHigh); got != answer.FixFirst {
			t.Errorf("%v, as DC and at its own jack: %v", s["charger.label"], got)
		}
		if got := has(assess(t, told.with("charger.came_with_pack", `true`)), charge.CodeVoltsTooHigh); got != answer.Watch {
			t.Errorf("%v, that its maker supplied: %v", s["charger.label"], got)
		}
	}
}

// With the vehicle's jack closed off its polarity binds no plug.
func TestAPlugIsNotMatchedToAJackThatIsClosedOff(t *testing.T) {
	t.Parallel()
	iron := sheet{
		"rider.age": `"5 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"short grass"`, "pack.label": `"12.8 V 10 Ah LiFePO4"`, "pack.watches_cells": `true`,
		"cutoff.pack.opens_at": `"10 V"`, "charger.label": `"14.7 V 1.5 A DC centre positive for lead-acid"`, "charger.stops": `"by itself"`, "charger.jack": `"vehicle"`,
		"charger.jack_polarity": `"centre negative"`, "charger.blocks_driving": `true`,
	}
	read, a := waysOf(t, iron)
	found := false
	for i := range a.Ways {
		steps := strings.Join(a.Ways[i].Steps, "\n")
		if !strings.Contains(steps, "close the vehicle's jack off") {
			continue
		}
		found = found || strings.Contains(steps, "another charger: ")
		if strings.Contains(steps, "as jack") {
			t.Errorf("closed off, and matched to it:\n%s", steps)
		}
		if again := walked(t, read, &a.Ways[i]); again.Verdict != a.Ways[i].Verdict || mentioned(again, charge.CodePolarityReversed) {
			t.Errorf("promised %v, asked again %v", a.Ways[i].Verdict, again.Verdict)
		}
	}
	if !found {
		t.Errorf("no way takes another charger and closes the jack off: %+v", a.Ways)
	}
}

// A timer that ends a charge of days after half a day is told as that, and not as the time to
// unplug a battery that is full later.
func TestATimerThatEndsTooEarlyIsStartedAgain(t *testing.T) {
	t.Parallel()
	base := sheet{
		"rider.age": `"6 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.ground": `"short grass"`, "pack.label": `"12 V 35 Ah AGM"`,
		"charger.label": `"14.7 V 300 mA DC for lead-acid"`, "charger.stops": `"timer"`, "charger.timer": `"12 h"`, "charger.jack": `"pack"`,
	}
	for _, s := range []sheet{base, base.with("pack.label", `"12 V 7 Ah AGM"`, "charger.label", `"14.7 V 2 A DC for lead-acid"`)} {
		a := assess(t, s)
		early := s["pack.label"] == base["pack.label"]
		if a.Charge.CutShort() != early {
			t.Errorf("%s: cut short %v", s["pack.label"], a.Charge.CutShort())
		}
		for _, full := range []bool{false, true} {
			var out bytes.Buffer
			if err := report.Write(&out, a, report.Options{Full: full}); err != nil {
				t.Fatal(err)
			}
			page := strings.Join(strings.Fields(out.String()), " ")
			if strings.Contains(page, "not full: start it again next day") != early || strings.Contains(page, "Unplug after") == early {
				t.Errorf("%s, full %v:\n%s", s["pack.label"], full, out.String())
			}
		}
	}
}

// Where only the charger is wrong a way with another one comes before those that buy a battery,
// and these name the right one as well.
func TestAWrongChargerIsMendedByACharger(t *testing.T) {
	t.Parallel()
	read, a := waysOf(t, sheet{
		"rider.age": `"5 years"`, "vehicle.design_voltage": `"12 V"`, "vehicle.has_board": `false`, "vehicle.ground": `"short grass"`,
		"motors.count": `2`, "motors.can": `"550"`, "motors.rated_voltage": `"12 V"`, "pack.label": `"12 V 7 Ah AGM"`, "original.pack.label": `"12 V 7 Ah AGM"`,
		"charger.label": `"20 V 2 A"`, "charger.made_for": `"li-ion"`,
	})
	if len(a.Ways) < 2 || !strings.HasPrefix(a.Ways[0].Title, "Keep this battery") {
		t.Fatalf("ways: %+v", a.Ways)
	}
	for i := range a.Ways {
		w := &a.Ways[i]
		if strings.Contains(w.Title, "its own charger") {
			continue
		}
		if !strings.Contains(strings.Join(w.Steps, "\n"), "another charger: for lead-acid, 14.7 V") {
			t.Errorf("%s %q names no charger", w.Title, w.Steps)
		}
		after, err := read.With(w.Values())
		if err != nil {
			t.Fatal(err)
		}
		if got := after.Values()[answer.KeyChargerVoltage]; got != "14.7 V" {
			t.Errorf("%s saves a charger of %q", w.Title, got)
		}
		if again := walked(t, read, w); again.Verdict != w.Verdict {
			t.Errorf("%s: promised %v, asked again %v", w.Title, w.Verdict, again.Verdict)
		}
	}
}

// The charger that came with another kind of battery is made for that: a way with a lead-acid
// one names its own, whatever else is told of the charger.
func TestTheChargerOfAnotherKindOfBatteryIsNotKeptForLeadAcid(t *testing.T) {
	t.Parallel()
	for _, pack := range []sheet{
		{"pack.label": `"20 V max 5 Ah"`, "pack.chemistry": `"li-ion"`},
		{"pack.label": `"12.8 V 10 Ah"`, "pack.chemistry": `"lifepo4"`},
		{"pack.label": `"14.4 V 3 Ah"`, "pack.chemistry": `"nimh"`},
	} {
		_, a := waysOf(t, sheet{
			"rider.age": `"5 years"`, "vehicle.design_voltage": `"12 V"`, "charger.came_with_pack": `true`,
			"pack.label": pack["pack.label"], "pack.chemistry": pack["pack.chemistry"],
		})
		i := slices.IndexFunc(a.Ways, func(w answer.Way) bool { return strings.HasPrefix(w.Title, "A sealed lead-acid battery") })
		if i < 0 {
			t.Errorf("%s: no way with lead-acid", pack["pack.label"])
			continue
		}
		if w := &a.Ways[i]; !strings.Contains(strings.Join(w.Steps, "\n"), "another charger: for lead-acid, 14.7 V") {
			t.Errorf("%s: %s %q names no charger", pack["pack.label"], w.Title, w.Steps)
		}
	}
}
