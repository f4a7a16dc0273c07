package reckon_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/reckon"
)

// A label that names electronics inside does not say what they do: that is asked, and what
// hangs on it is no danger on a guess. Where nothing is named, or the label says that there are
// none, nothing is there.
func TestElectronicsOnALabelAreAskedFor(t *testing.T) {
	for _, tt := range []struct {
		label string
		want  answer.Level
	}{
		{"14.4 V 7 Ah li-ion", answer.Danger},
		{"14.4 V 7 Ah li-ion with BMS", answer.FixFirst},
		{"14.4 V 7 Ah li-ion without BMS", answer.Danger},
		{"14.4 V 7 Ah li-ion, BMS not included", answer.Danger},
		{"14.4 V 7 Ah li-ion unprotected", answer.Danger},
		{"14.4 V 7 Ah li-ion protected", answer.FixFirst},
		{"10.8 V 7 Ah li-ion e-bike", answer.FixFirst}, // sold as a whole with some
		{"10.8 V 7 Ah li-ion e-bike, no BMS", answer.Danger},
		{"10.8 V 7 Ah hoverboard", answer.FixFirst},
		{"3S2P 7 Ah e-bike", answer.FixFirst},
		{"3S2P 7 Ah", answer.Danger},
		{"12.8 V 7 Ah LiFePO4", answer.FixFirst}, // sold as a whole it mostly has some
		{"12.8 V 7 Ah LiFePO4 no BMS", answer.Danger},
		{"four 3.2 V 7 Ah LiFePO4 in series", answer.Danger}, // single cells have none
	} {
		a := fewDraws(t, map[string]string{"rider.age": "5 years", "vehicle.design_voltage": "12 V", "motors.count": "2", "pack.label": tt.label, "original.pack.label": "12 V 7 Ah"})
		found := false
		for _, f := range a.Findings {
			if f.Code == cutoff.CodeNone || f.Code == cutoff.CodePastSaving {
				found = true
				if f.Level != tt.want {
					t.Errorf("%s: %q is %v, want %v", tt.label, f.Title, f.Level, tt.want)
				}
			}
		}
		asked := false
		for _, m := range a.Measure {
			asked = asked || m.Key == answer.KeyPackWatchesCells || m.Key == answer.KeyCutoffPackOpensAt
		}
		if !found || !asked {
			t.Errorf("%s: told %v, asked %v", tt.label, found, asked)
		}
	}
}

// Of two packs in series the larger drives the smaller backwards, unless the electronics of
// each open before that: whether they do is told, or a guess on which no danger rests.
func TestElectronicsOfUnequalPacksInSeriesOpenBeforeTheSmallerIsReversed(t *testing.T) {
	for _, tt := range []struct {
		watches string
		want    answer.Level
		guess   string
	}{
		{"", answer.FixFirst, answer.KeyPackWatchesCells},
		{"true", answer.FixFirst, ""},
		{"false", answer.Danger, ""},
	} {
		values := map[string]string{
			"rider.age": "5 years", "vehicle.design_voltage": "24 V", "motors.count": "2", "pack.label": "12.8 V 7 Ah LiFePO4", "pack.joined": "series",
			"pack.charge": "100 %", "pack.second.label": "12.8 V 12 Ah LiFePO4",
		}
		if tt.watches != "" {
			values[answer.KeyPackWatchesCells] = tt.watches
		}
		a := fewDraws(t, values)
		i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Code == battery.CodeSeriesUnequalCharge })
		if i < 0 {
			t.Fatalf("watches cells %q: the two are not called unequal", tt.watches)
		}
		if f := a.Findings[i]; f.Level != tt.want || f.Guess != tt.guess || strings.Contains(f.Title, "backwards") == (tt.watches == "true") {
			t.Errorf("watches cells %q: %v, a guess %q: %s, want %v and %q", tt.watches, f.Level, f.Guess, f.Title, tt.want, tt.guess)
		}
	}
}

// Where all is well once a battery watches its cells, to make sure of that is a way out, and
// stands first: nothing has to be bought.
func TestToMakeSureThatTheCellsAreWatchedIsAWayOutWhereThatIsAllThatIsMissing(t *testing.T) {
	values := map[string]string{ // half the motors grow hot on this slope, and few draws asked for thicker wire besides
		"rider.age": "5 years", "vehicle.design_voltage": "12 V", "vehicle.ground": "short grass", "vehicle.slope": "3 %", "vehicle.has_board": "false",
		"motors.count": "2", "motors.can": "550", "pack.label": "12.8 V 12 Ah LiFePO4", "pack.max_current": "40 A",
		"fuse.form": "small blade", "fuse.rating": "30 A", "fuse.distance_from_pack": "100 mm", "wire.gauge": "12 AWG",
	}
	untold := answered(t, values, reckon.Options{Ways: true})
	values[answer.KeyPackWatchesCells] = "true"
	if told := answered(t, values, reckon.Options{}); told.Verdict != answer.Watch {
		t.Fatalf("told that it does: %v", told.Verdict)
	}
	if w := untold.Ways; len(w) == 0 || w[0].Title != "Keep this battery, and first do this" || !strings.HasPrefix(w[0].Steps[0], "make sure") {
		t.Errorf("the ways out are %+v", w)
	}
}

// Amps that a label names are known: what asks for more is limited, and no guess.
func TestAmpsOnALabelLimitWhatTheBatteryGives(t *testing.T) {
	for _, tt := range []struct {
		label  string
		want   answer.Level
		change answer.Change
	}{
		{"12 V 10 Ah LiFePO4 BMS", answer.Watch, answer.LookUp},
		{"12 V 10 Ah LiFePO4 10 A BMS", answer.FixFirst, answer.LimitCurrent},
	} {
		a := fewDraws(t, map[string]string{
			"rider.age": "4 years", "vehicle.design_voltage": "12 V", "vehicle.ground": "asphalt", "pack.watches_cells": "true", "pack.label": tt.label,
		})
		i := slices.IndexFunc(a.Findings, func(f answer.Finding) bool { return f.Code == drive.CodeBlockedOverPack })
		if i < 0 {
			t.Fatalf("%s: blocked wheels do not ask for more amps than it gives", tt.label)
		}
		if f := a.Findings[i]; f.Level != tt.want || f.Change != tt.change || (f.Guess == "") != (tt.change == answer.LimitCurrent) {
			t.Errorf("%s: %q is %v, %v, a guess %q; want %v, %v", tt.label, f.Title, f.Level, f.Change, f.Guess, tt.want, tt.change)
		}
	}
}
