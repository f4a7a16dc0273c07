package charge_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
)

// plugged is a pack on a charger at room temperature, on its own terminals.
func plugged(t testing.TB, chem string, cells int, ah float64, label string) charge.Plugged {
	t.Helper()
	return charge.Plugged{
		Pack: pack(t, chem, cells, ah), Charger: charger(t, label), CellC: 20, AmbientC: 20, Port: charge.PortTerminals,
	}
}

func TestChargersAreMatchedOrRefusedWithTheReason(t *testing.T) {
	const danger, fix, watch = answer.Danger, answer.FixFirst, answer.Watch
	tests := []struct {
		name  string
		p     charge.Plugged
		do    func(*charge.Plugged)
		fit   charge.Fit
		code  string
		level answer.Level
		why   string
	}{
		{
			name: "lead-acid charger on a lead-acid battery", p: plugged(t, "agm", 6, 7, "sealed lead acid charger 14.7V 1A DC centre positive automatic"),
			do:  func(p *charge.Plugged) { p.Jack = charge.CentrePositive },
			fit: charge.Matches, why: "right kind, 14.4 to 15.0 V window, below 0.3C, stops, polarity known",
		},
		{
			name: "its own charger on a tool pack", p: plugged(t, "li-ion", 5, 5, "21V 2A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.ToolPack, p.Charger.SuppliedWithPack, p.Port = true, true, charge.PortPack },
			fit: charge.Matches,
		},
		{
			name: "its own charger that prints the pack's nominal volts and not its kind", p: plugged(t, "li-ion", 5, 4, "18V 2A DC"),
			do:  func(p *charge.Plugged) { p.ToolPack, p.Charger.SuppliedWithPack, p.Port = true, true, charge.PortPack },
			fit: charge.Matches,
		},
		{
			name: "its own that prints whole volts", p: plugged(t, "li-ion", 5, 4, "20V 2A DC"),
			do:  func(p *charge.Plugged) { p.ToolPack, p.Charger.SuppliedWithPack, p.Port = true, true, charge.PortPack },
			fit: charge.Matches,
		},
		{
			name: "an adaptor of 18 V that nobody said came with it", p: plugged(t, "li-ion", 5, 4, "18V 2A DC"),
			do:  func(p *charge.Plugged) { p.ToolPack, p.Port = true, charge.PortPack },
			fit: charge.Refused, code: charge.CodeVoltsTooHigh, level: danger,
		},
		{
			name: "one of 12 V on four iron phosphate cells of no tool, whose own prints what it ends at", p: plugged(t, "lifepo4", 4, 7, "12V 1A DC"),
			do:  func(p *charge.Plugged) { p.Charger.SuppliedWithPack, p.Port = true, charge.PortPack },
			fit: charge.Refused, code: charge.CodeVoltsTooHigh, level: danger,
		},
		{
			name: "a plug that is reversed did not come with the pack", p: plugged(t, "li-ion", 5, 5, "21V 2A DC Li-ion automatic centre positive"),
			do: func(p *charge.Plugged) {
				p.ToolPack, p.Charger.SuppliedWithPack, p.Port = true, true, charge.PortPack
				p.Jack = charge.CentreNegative
			},
			fit: charge.Refused, code: charge.CodePolarityReversed, level: danger,
		},
		{
			name: "nor did one of other volts", p: plugged(t, "li-ion", 5, 5, "42V 2A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.Charger.SuppliedWithPack, p.Port = true, charge.PortPack },
			fit: charge.Refused, code: charge.CodeVoltsTooHigh, level: danger,
		},
		{
			name: "lead-acid charger on a tool pack", p: plugged(t, "li-ion", 4, 4, "lead acid 14.7V 1A DC automatic"),
			fit: charge.Refused, code: charge.CodeWrongChemistry, level: danger,
		},
		{
			name: "lead-acid volts on three lithium cells", p: plugged(t, "li-ion", 3, 4, "lead acid 14.4V 1A DC automatic"),
			fit: charge.Refused, code: charge.CodeVoltsTooHigh, level: danger, why: "14.4 V on 12.6 V: 0.6 V per cell over",
		},
		{
			name: "lead-acid volts on four iron phosphate cells", p: plugged(t, "lifepo4", 4, 4, "lead acid 15.0V 1A DC automatic"),
			fit: charge.Refused, code: charge.CodeVoltsTooHigh, level: danger, why: "15.0 V is 3.75 V per cell, 3.65 is the most",
		},
		{
			name: "iron phosphate charger on four iron phosphate cells", p: plugged(t, "lifepo4", 4, 6, "LiFePO4 14.6V 2A DC automatic"),
			fit: charge.WithCare, code: charge.CodePolarityUnchecked, level: watch, why: "14.6 V is 3.65 V per cell, the published charging voltage",
		},
		{
			name: "tool pack through the vehicle's jack", p: plugged(t, "li-ion", 5, 5, "21V 1A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.Port = charge.PortVehicle },
			fit: charge.Refused, code: charge.CodeVehicleJack, level: danger,
		},
		{
			name: "foreign charger on a tool pack", p: plugged(t, "li-ion", 5, 5, "21V 2A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.ToolPack = true },
			fit: charge.Unproven, code: charge.CodeForeignCharger, level: fix,
		},
		{
			name: "12 V charger on a 24 V string", p: plugged(t, "agm", 12, 12, "lead acid 14.4V 1A DC automatic"),
			fit: charge.Refused, code: charge.CodeVoltsTooLow, level: fix,
		},
		{
			name: "plain 12 V adaptor on a 24 V string", p: plugged(t, "agm", 12, 12, "12V DC 1A lead acid"),
			fit: charge.Refused, code: charge.CodeVoltsTooLow, level: fix,
		},
		{
			name: "24 V charger on a 12 V battery", p: plugged(t, "agm", 6, 7, "lead acid 28.8V 1A DC automatic"),
			fit: charge.Refused, code: charge.CodeVoltsTooHigh, level: danger,
		},
		{
			name: "laptop brick that says so", p: plugged(t, "li-ion", 5, 5, "laptop adapter 19V DC 3.42A"),
			fit: charge.Refused, code: charge.CodePowerSupply, level: danger,
		},
		{
			name: "laptop brick that does not say so", p: plugged(t, "agm", 9, 7, "19 V 3.42 A"),
			fit: charge.Refused, code: charge.CodePowerSupply, level: danger,
		},
		{
			name: "AC adaptor", p: plugged(t, "agm", 6, 7, "AC 12 V 500 mA"),
			fit: charge.Refused, code: charge.CodeGivesAC, level: danger,
		},
		{
			name: "reversed plug", p: plugged(t, "agm", 6, 7, "lead acid 14.4V 1A DC centre negative automatic"),
			do:  func(p *charge.Plugged) { p.Jack = charge.CentrePositive },
			fit: charge.Refused, code: charge.CodePolarityReversed, level: danger,
		},
		{
			name: "two tool packs in series", p: plugged(t, "li-ion", 10, 4, "42V 2A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.Joined = charge.InSeries },
			fit: charge.Refused, code: charge.CodeChargedInSeries, level: danger,
		},
		{
			name: "two tool packs in parallel", p: plugged(t, "li-ion", 5, 4, "21V 2A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.Joined = charge.InParallel },
			fit: charge.Refused, code: charge.CodeChargedInParallel, level: danger,
		},
		{
			name: "two lead-acid blocks in series", p: plugged(t, "agm", 12, 7, "lead acid 28.8V 1A DC automatic"),
			do:  func(p *charge.Plugged) { p.Joined = charge.InSeries },
			fit: charge.Unproven, code: charge.CodeChargedInSeries, level: fix,
		},
		{
			name: "toy adaptor whose real volts nobody knows", p: plugged(t, "agm", 6, 7, "12V 1000Ma lead acid DC"),
			do:  func(p *charge.Plugged) { p.Charger.Stops = charge.StopsNever },
			fit: charge.Unproven, code: charge.CodeVoltsTooHigh, level: fix, why: "12 V printed may stand at 18 V",
		},
		{
			name: "the same, never stopping", p: plugged(t, "agm", 6, 7, "12V 1000Ma lead acid DC"),
			do:  func(p *charge.Plugged) { p.Charger.Stops = charge.StopsNever },
			fit: charge.Unproven, code: charge.CodeNeverStops, level: fix,
		},
		{
			name: "the same, supplied with the vehicle", p: plugged(t, "agm", 6, 7, "12V 1000Ma lead acid DC"),
			do:  func(p *charge.Plugged) { p.Charger.Stops, p.Charger.SuppliedWithPack = charge.StopsNever, true },
			fit: charge.Unproven, code: charge.CodeNeverStops, level: watch,
		},
		{
			name: "lithium charger that never stops", p: plugged(t, "li-ion", 5, 5, "21V 2A DC Li-ion"),
			do:  func(p *charge.Plugged) { p.Charger.Stops = charge.StopsNever },
			fit: charge.Refused, code: charge.CodeNeverStops, level: danger,
		},
		{
			name: "nothing said at all", p: plugged(t, "agm", 6, 7, "14.7 V 1.5 A"),
			fit: charge.Unproven, code: charge.CodePurposeUnknown, level: fix,
		},
		{
			name: "and AC or DC not said", p: plugged(t, "agm", 6, 7, "14.7 V 1.5 A"),
			fit: charge.Unproven, code: charge.CodeOutputUnknown, level: fix,
		},
		{
			name: "AC or DC not said of one for lead-acid", p: plugged(t, "agm", 6, 7, "lead-acid 14.7 V 1.5 A automatic"),
			fit: charge.Unproven, code: charge.CodeOutputUnknown, level: fix, why: "its rectifier may sit in the vehicle",
		},
		{
			name: "AC or DC not said of one for iron phosphate", p: plugged(t, "lifepo4", 4, 10, "14.6 V 2 A LiFePO4 automatic centre positive"),
			do:  func(p *charge.Plugged) { p.Jack = charge.CentrePositive },
			fit: charge.Matches, why: "no charger for lithium gives AC",
		},
		{
			name: "nominal volts on a lithium charger", p: plugged(t, "li-ion", 5, 5, "18V 2A DC Li-ion automatic"),
			fit: charge.Unproven, code: charge.CodeEndVoltsUnknown, level: fix, why: "what nobody told is no danger by itself",
		},
		{
			name: "nominal volts of six cells on three", p: plugged(t, "li-ion", 3, 2, "24 V 2 A DC li-ion automatic"),
			fit: charge.Refused, code: charge.CodeVoltsTooHigh, level: danger, why: "7.7 V a cell by the lowest reading",
		},
		{
			name: "nominal volts of ten cells on five", p: plugged(t, "li-ion", 5, 5, "36 V 2 A DC li-ion automatic"),
			fit: charge.Refused, code: charge.CodeVoltsTooHigh, level: danger,
		},
		{
			name: "nominal volts of eight cells of iron phosphate on four", p: plugged(t, "lifepo4", 4, 10, "24 V 2 A DC LiFePO4 automatic"),
			fit: charge.Refused, code: charge.CodeVoltsTooHigh, level: danger,
		},
		{
			name: "15 V on four of them, which 14.6 V is rounded to", p: plugged(t, "lifepo4", 4, 10, "15 V 2 A DC LiFePO4 automatic"),
			fit: charge.Unproven, code: charge.CodeEndVoltsUnknown, level: fix,
		},
		{
			name: "too much current", p: plugged(t, "agm", 6, 4.5, "lead acid 14.4V 4A DC automatic"),
			fit: charge.Refused, code: charge.CodeCurrentTooHigh, level: fix, why: "0.3C of 4.5 Ah is 1.35 A; 4 A is under three times that",
		},
		{
			name: "far too much current", p: plugged(t, "agm", 6, 4.5, "lead acid 14.4V 10A DC automatic"),
			fit: charge.Refused, code: charge.CodeCurrentTooHigh, level: danger,
		},
		{
			name: "too much for lithium", p: plugged(t, "li-ion", 5, 1.5, "21V 6A DC Li-ion automatic"),
			fit: charge.Refused, code: charge.CodeCurrentTooHigh, level: danger,
		},
		{
			name: "amps not printed", p: plugged(t, "li-ion", 5, 5, "21V DC Li-ion automatic"),
			fit: charge.Unproven, code: charge.CodeCurrentUnknown, level: fix,
		},
		{
			name: "small charger", p: plugged(t, "agm", 6, 20, "lead acid 14.4V 500mA DC automatic"),
			fit: charge.WithCare, code: charge.CodeSlow, level: watch,
		},
		{
			name: "gel on AGM volts", p: plugged(t, "gel", 6, 7, "lead acid 15V 1A DC automatic"),
			fit: charge.Refused, code: charge.CodeVoltsTooHigh, level: fix, why: "2.50 V per cell, gel takes 2.40",
		},
		{
			name: "freezing lithium", p: plugged(t, "li-ion", 5, 5, "21V 2A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.CellC = 0 },
			fit: charge.Refused, code: charge.CodeTooCold, level: danger, why: "TI BQ76942: none at or below 0 degC",
		},
		{
			name: "lithium drained below its last rung", p: plugged(t, "li-ion", 5, 5, "21V 2A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.RestV = 7 },
			fit: charge.Refused, code: charge.CodeNeverRecharge, level: danger, why: "1.4 V per cell, never below 1.5",
		},
		{
			name: "lithium below its pre-charge threshold", p: plugged(t, "li-ion", 5, 5, "21V 2A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.RestV = 13.5 },
			fit: charge.Refused, code: charge.CodeTooLow, level: danger, why: "2.7 V per cell, 3.0 is the threshold: refused, not advised",
		},
		{
			name: "lead-acid that stood flat", p: plugged(t, "agm", 6, 7, "lead acid 14.4V 1A DC automatic"),
			do:  func(p *charge.Plugged) { p.RestV = 9 },
			fit: charge.Unproven, code: charge.CodeDeeplyFlat, level: fix, why: "1.50 V per cell, harmed below 1.60",
		},
		{
			name: "lead-acid with five good cells and a shorted one", p: plugged(t, "agm", 6, 7, "lead acid 14.4V 1A DC automatic"),
			do:  func(p *charge.Plugged) { p.RestV = 10.5 },
			fit: charge.Unproven, code: charge.CodeDeeplyFlat, level: fix, why: "5 x 2.1 V; an empty one rests at 11.8 V",
		},
		{
			name: "lead-acid that is merely empty", p: plugged(t, "agm", 6, 7, "lead acid 14.4V 1A DC automatic"),
			do:  func(p *charge.Plugged) { p.RestV = 11.7 },
			fit: charge.WithCare, code: charge.CodePolarityUnchecked, level: watch, why: "makers' tables: 11.80 V at 0 %",
		},
		{
			name: "lithium charger on nickel", p: plugged(t, "nimh", 15, 3, "21V 1A DC Li-ion automatic"),
			fit: charge.Refused, code: charge.CodeWrongChemistry, level: danger,
		},
		{
			name: "2C on power cells whose sheet prints it", p: plugged(t, "li-ion", 5, 2, "21V 4A DC Li-ion automatic"),
			do: func(p *charge.Plugged) { p.SheetA = 4 }, fit: charge.WithCare, code: charge.CodePolarityUnchecked, level: watch,
		},
		{
			name: "a little more than the sheet prints", p: plugged(t, "li-ion", 5, 2, "21V 4A DC Li-ion automatic"),
			do: func(p *charge.Plugged) { p.SheetA = 3.9 }, fit: charge.Refused, code: charge.CodeCurrentTooHigh, level: danger,
		},
		{
			name: "less printed than such cells mostly take", p: plugged(t, "li-ion", 5, 5, "21V 4A DC Li-ion automatic"),
			do: func(p *charge.Plugged) { p.SheetA = 1 }, fit: charge.Refused, code: charge.CodeCurrentTooHigh, level: danger,
		},
		{
			name: "four times what is printed, of its own charger", p: plugged(t, "li-ion", 5, 5, "21V 4A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.SheetA, p.Charger.SuppliedWithPack = 1, true },
			fit: charge.Refused, code: charge.CodeCurrentTooHigh, level: danger,
		},
		{
			name: "amps of a discharge told as those of a charge", p: plugged(t, "li-ion", 5, 5, "21V 10A DC Li-ion automatic"),
			do: func(p *charge.Plugged) { p.SheetA = 30 }, fit: charge.Refused, code: charge.CodeCurrentTooHigh, level: danger,
		},
		{
			name: "the same of a block", p: plugged(t, "agm", 6, 12, "lead acid 14.4V 15A DC automatic"),
			do: func(p *charge.Plugged) { p.SheetA = 40 }, fit: charge.Refused, code: charge.CodeCurrentTooHigh, level: danger,
			why: "no sheet prints 3.3C: it is judged by 0.3C",
		},
		{
			name: "the sheet of a block that takes 0.4C", p: plugged(t, "agm", 6, 14, "lead acid 14.4V 5.6A DC automatic"),
			do: func(p *charge.Plugged) { p.SheetA = 5.6 }, fit: charge.WithCare, code: charge.CodePolarityUnchecked, level: watch,
		},
		{
			name: "the sheet of cells that are not in it", p: plugged(t, "li-ion", 5, 2, "21V 4A DC Li-ion automatic"),
			do:  func(p *charge.Plugged) { p.SheetA, p.LabelAh = 4, 4 },
			fit: charge.Refused, code: charge.CodeCurrentTooHigh, level: danger, why: "it holds half its label, and takes half of what is printed",
		},
		{
			name: "timer on lead-acid", p: plugged(t, "agm", 6, 7, "lead acid 14.4V 1A DC timer"),
			fit: charge.WithCare, code: charge.CodeTimer, level: watch,
		},
		{
			name: "lead-acid held on float volts", p: plugged(t, "agm", 6, 7, "lead acid 13.6V 1A DC"),
			do:  func(p *charge.Plugged) { p.Charger.Stops = charge.StopsNever },
			fit: charge.WithCare, code: charge.CodePolarityUnchecked, level: watch, why: "float volts may stay on for good",
		},
		{
			name: "part full only", p: plugged(t, "li-ion", 5, 5, "20V 2A DC Li-ion automatic"),
			do: func(p *charge.Plugged) {
				p.Charger.EndLeastV, p.Charger.EndMostV, p.Charger.Regulated = 20.4, 20.6, true
			},
			fit: charge.WithCare, code: charge.CodeVoltsTooLow, level: watch,
		},
	}
	for _, tt := range tests {
		if tt.do != nil {
			tt.do(&tt.p)
		}
		v := charge.Match(tt.p)
		if v.Fit != tt.fit {
			t.Errorf("%s: %v, want %v (%s): %+v", tt.name, v.Fit, tt.fit, tt.why, v.Findings)
		}
		if tt.code == "" {
			if len(v.Findings) != 0 {
				t.Errorf("%s: findings %+v, want none", tt.name, v.Findings)
			}
			continue
		}
		f, ok := find(v.Findings, tt.code)
		if !ok || f.Level != tt.level {
			t.Errorf("%s: want %s at %v (%s), got %+v", tt.name, tt.code, tt.level, tt.why, v.Findings)
		}
		if f.Title == "" || f.Advice == "" || f.Source == "" {
			t.Errorf("%s: half a finding: %+v", tt.name, f)
		}
	}
	if charge.Match(charge.Plugged{}).Fit != charge.Refused {
		t.Error("no pack at all was not refused")
	}
}

// Nothing that is unknown or wrong may ever come out as a plain yes.
func TestOnlyACleanMatchIsAYes(t *testing.T) {
	for _, chem := range []string{"agm", "gel", "li-ion", "lifepo4", "nimh"} {
		for _, label := range []string{
			"12V 1000Ma", "14.7 V 1.5 A", "OUTPUT: 12V DC 1A", "AC 12 V 500 mA", "21V 2A Li-ion", "DC 29.4V==2A", "19 V 3.42 A",
			"lead acid 14.4V 1A DC automatic", "LiFePO4 14.6V 2A DC automatic", "NiMH 18V 1A DC", "1000 mA", "12V",
		} {
			for _, cells := range []int{3, 4, 5, 6, 10, 12} {
				for _, cellC := range []float64{-5, 5, 20, 50, math.NaN()} {
					p := plugged(t, chem, cells, 5, label)
					p.CellC = cellC
					v := charge.Match(p)
					worst := answer.Worst(v.Findings)
					if v.Fit == charge.Matches && worst != answer.Fine ||
						worst == answer.Danger && v.Fit > charge.Unproven ||
						len(v.Findings) == 0 && v.Fit != charge.Matches {
						t.Fatalf("%s x %d, %q, %g degC: %v with %+v", chem, cells, label, cellC, v.Fit, v.Findings)
					}
					if v.Fit == charge.Matches {
						t.Fatalf("%s x %d, %q: a yes without the polarity known", chem, cells, label)
					}
				}
			}
		}
	}
}

func TestPrintedVoltsAreReadAsWhatTheChargerRisesTo(t *testing.T) {
	tests := []struct {
		label       string
		least, most float64
		held        bool
		why         string
	}{
		{"21V 2A Li-ion", 20.79, 21.21, true, "five cells at 4.20 V, 1 % either way"},
		{"12.6V 1A Li-ion", 12.474, 12.726, true, "three cells"},
		{"18V 2A Li-ion", 17, 0, false, "nominal volts: the end is not told, but it lies above them"},
		{"22.2V 2A Li-ion", 22.1, 0, false, "a tenth may be rounded up by less than a whole volt"},
		{"24V 2A LiFePO4", 23, 0, false, ""},
		{"14.6V 5A LiFePO4", 14.454, 14.746, true, "four cells at 3.65 V"},
		{"14.4V 2A LiFePO4", 14.256, 14.544, true, "four cells at 3.60 V, which is what their charge is advised to end at"},
		{"28.8V 2A LiFePO4", 28.512, 29.088, true, "eight of them"},
		{"14.2V 2A LiFePO4", 14.1, 0, false, "no charger for four cells ends so low, and none for three so high"},
		{"14.1V 1A gel", 13.818, 14.382, true, "gel is charged with less"},
		{"14.7V 1A lead acid", 14.406, 14.994, true, "within 14.4 to 15.0 V"},
		{"13.7V 1A lead acid", 13.426, 13.974, true, "a float voltage"},
		{"44.1V 2A lead acid", 43.218, 44.982, true, "36 V, as a charger of its volts is advised"},
		{"36V 2A lead acid", 36, 54, false, "the name of 36 V, and no charging voltage of 30 V"},
		{"58.8V 2A lead acid", 57.624, 59.976, true, "48 V"},
		{"56.4V 2A lead acid", 55.272, 57.528, true, "48 V of gel"},
		{"7.2V 500mA lead acid", 7.056, 7.344, true, "cycle volts of a 6 V block"},
		{"12V 1A lead acid", 12, 18, false, "a plain adaptor rises to one and a half times"},
		{"12V 1A", 12, 18, false, "the same without a word on the battery"},
		{"19V 3.42A power supply", 18.05, 19.95, true, "a supply holds its volts"},
		{"1 A", 0, 0, false, "no volts printed"},
	}
	for _, tt := range tests {
		c := charger(t, tt.label)
		if math.Abs(c.EndLeastV-tt.least) > 1e-9 || math.Abs(c.EndMostV-tt.most) > 1e-9 || c.Regulated != tt.held {
			t.Errorf("%q: %g to %g V, held %v; want %g to %g, %v (%s)", tt.label, c.EndLeastV, c.EndMostV, c.Regulated, tt.least, tt.most, tt.held, tt.why)
		}
		if c.WhyEnd == "" {
			t.Errorf("%q: no reason given", tt.label)
		}
	}
}

func TestSetupWordsNameAPurpose(t *testing.T) {
	for word, want := range map[string]charge.Purpose{
		"agm": charge.ForLeadAcid, "Gel": charge.ForLeadAcid, "li-ion": charge.ForLithiumIon, " lifepo4 ": charge.ForLithiumIronPhosphate,
		"nimh": charge.ForNickel, "lead-acid": charge.ForLeadAcid, "power supply": charge.PowerSupply,
	} {
		if got, ok := charge.PurposeNamed(word); !ok || got != want {
			t.Errorf("%q: %v, %v; want %v", word, got, ok, want)
		}
	}
	if _, ok := charge.PurposeNamed("toaster"); ok {
		t.Error("toaster was taken for a charger")
	}
}

// Every source that a finding or a caution names must be known.
func TestEverySourceIsKnown(t *testing.T) {
	known := map[string]bool{}
	last := ""
	for _, s := range charge.Sources() {
		if s.ID <= last || s.Text == "" || s.Known == "" {
			t.Errorf("source %+v out of order or empty", s)
		}
		known[s.ID], last = true, s.ID
	}
	for _, s := range chemistry.Builtin().Sources() {
		known[s.ID] = true
	}
	check := func(where, ids string) {
		for id := range strings.SplitSeq(ids, ",") {
			if !known[strings.TrimSpace(id)] {
				t.Errorf("%s: unknown source %q", where, id)
			}
		}
	}
	for _, name := range chemistry.Builtin().Names() {
		for _, tool := range []bool{false, true} {
			lines := charge.Cautions(profile(t, name), tool)
			if len(lines) < 6 {
				t.Errorf("%s: only %d cautions", name, len(lines))
			}
			for _, c := range lines {
				check("caution", c.Source)
			}
		}
		for _, label := range []string{"12V 1000Ma", "19V 3A", "21V 9A Li-ion DC", "lead acid 15V 9A", "AC 6V 1A", "18V Li-ion"} {
			for _, c := range []float64{-5, 5, 20, 60} {
				p := plugged(t, name, 6, 5, label)
				p.CellC, p.AmbientC, p.Port, p.Joined, p.ToolPack, p.RestV = c, c, charge.PortVehicle, charge.InSeries, true, 8
				for _, f := range charge.Match(p).Findings {
					check(f.Code, f.Source)
				}
				if l := p.Charger; l.EndSource != "" {
					check(label, l.EndSource)
				}
			}
		}
		s := charge.Store{
			Pack: pack(t, name, 6, 5), Charge: 0.4, From: charge.Date{Year: 2026, Month: 10, Day: 31}, Until: charge.Date{Year: 2027, Month: 4, Day: 15},
			TempC: -30, StandbyA: 0.01, InVehicle: true,
		}
		for _, z := range []float64{0.1, 1} {
			s.Charge = z
			out, err := charge.Keep(s)
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range out.Findings {
				check(f.Code, f.Source)
			}
		}
	}
	for _, v := range []float64{6, 10.5, 11.5, 12.4, 12.8} {
		d, err := charge.Diagnose(charge.Evidence{Pack: pack(t, "agm", 6, 7), RestV: v, HoursRested: 24, LoadedV: v * 0.5, TempC: 20})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range d.Findings {
			check(f.Code, f.Source)
		}
	}
}

// How much starts a fire goes by the kind of cell: a sheet that asks for little makes no
// danger of what other blocks stand, and one that allows much takes none away.
func TestWhatABlocksSheetAllowsMovesTheLimitButNotTheDanger(t *testing.T) {
	for _, c := range []struct {
		sheetA, chargerA float64
		want             answer.Level
	}{
		{0.6, 2, answer.FixFirst},
		{0.6, 6.2, answer.FixFirst},
		{0.6, 6.4, answer.Danger},
		{2.8, 2.8, answer.Fine},
		{2.8, 6.2, answer.FixFirst},
		{2.8, 6.4, answer.Danger},
	} {
		label := fmt.Sprintf("lead acid 14.4V %gA DC automatic", c.chargerA)
		found := onLead(t, label, func(p *charge.Plugged) { p.SheetA = c.sheetA })
		f, _ := find(found, charge.CodeCurrentTooHigh)
		if f.Level != c.want {
			t.Errorf("%g A on 7 Ah of which the sheet allows %g A: %v, want %v", c.chargerA, c.sheetA, f.Level, c.want)
		}
	}
}

// An adaptor that gives alternating current charges nothing: neither its volts nor what it is
// made for count then.
func TestOfAlternatingCurrentNothingElseIsTold(t *testing.T) {
	for _, label := range []string{"AC 12 V 500 mA", "OUTPUT 24VAC 1A", "AC 14.6 V 2 A LiFePO4"} {
		v := charge.Match(plugged(t, "agm", 6, 7, label))
		for _, f := range v.Findings {
			if f.Change == answer.FitCharger && f.Code != charge.CodeGivesAC {
				t.Errorf("%s: told as well: %s", label, f.Title)
			}
		}
		if v.Fit != charge.Refused || !slices.ContainsFunc(v.Findings, func(f answer.Finding) bool { return f.Code == charge.CodeGivesAC }) {
			t.Errorf("%s is not refused for that", label)
		}
	}
}
