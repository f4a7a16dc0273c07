package charge_test

import (
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/findingtest"
)

// made is a case that fires a finding, what it must say, and one that does not
// fire it, or less badly.
type made struct {
	name   string
	code   string
	fires  []answer.Finding
	silent []answer.Finding
	level  answer.Level
	harm   answer.Harm
	item   answer.Item
	change answer.Change
	source string // ID of the source of the limit
}

const (
	leadCharger  = "lead acid 14.4V 1A DC automatic"
	lionCharger  = "21V 2A DC Li-ion automatic"
	plainAdaptor = "12V 1000Ma lead acid DC"
)

// onLead is what Match finds on a block of six lead-acid cells, changed by do.
func onLead(t testing.TB, label string, do func(*charge.Plugged)) []answer.Finding {
	t.Helper()
	return matched(plugged(t, "agm", 6, 7, label), do)
}

// onLithium is what Match finds on five lithium cells, changed by do.
func onLithium(t testing.TB, label string, do func(*charge.Plugged)) []answer.Finding {
	t.Helper()
	return matched(plugged(t, "li-ion", 5, 5, label), do)
}

// onNickel is what Match finds on ten cells of nickel, changed by do.
func onNickel(t testing.TB, label string, do func(*charge.Plugged)) []answer.Finding {
	t.Helper()
	return matched(plugged(t, "nimh", 10, 5, label), do)
}

func matched(p charge.Plugged, do func(*charge.Plugged)) []answer.Finding {
	if do != nil {
		do(&p)
	}
	return charge.Match(p).Findings
}

func stored(t testing.TB, chem string, at, tempC float64, do func(*charge.Store)) []answer.Finding {
	t.Helper()
	s := charge.Store{Pack: pack(t, chem, map[string]int{"agm": 6, "li-ion": 5}[chem], 5), Charge: at, TempC: tempC, From: autumn, Until: spring}
	if do != nil {
		do(&s)
	}
	return keep(t, s).Findings
}

func simulated(t testing.TB, endV, amps, ambientC float64) []answer.Finding {
	t.Helper()
	m := pack(t, "agm", 6, 7)
	return simulate(t, charge.Case{Pack: m, Start: m.StateAt(0.1, ambientC), AmbientC: ambientC, CurrentA: amps, EndV: endV, EndA: 1e-9}).Findings
}

func diagnosed(t testing.TB, restV, loadedV, loadedA float64) []answer.Finding {
	t.Helper()
	return diagnose(t, charge.Evidence{RestV: restV, HoursRested: 24, LoadedV: loadedV, LoadedA: loadedA}).Findings
}

// chargerRows is the table of the findings on a charger.
func chargerRows(t testing.TB) []made {
	t.Helper()
	const danger, fix, watch = answer.Danger, answer.FixFirst, answer.Watch
	const house, part, wear = answer.House, answer.Part, answer.Wear
	li, ag, ni := profile(t, "li-ion").Charge.Source, profile(t, "agm").Charge.Source, profile(t, "nimh").Charge.Source
	stops := func(how charge.Stops) func(*charge.Plugged) {
		return func(p *charge.Plugged) { p.Charger.Stops = how }
	}
	supplied := func(how charge.Stops) func(*charge.Plugged) {
		return func(p *charge.Plugged) { p.Charger.Stops, p.Charger.SuppliedWithPack = how, true }
	}
	at := func(port charge.Port) func(*charge.Plugged) { return func(p *charge.Plugged) { p.Port = port } }
	jack := func(want charge.Polarity) func(*charge.Plugged) { return func(p *charge.Plugged) { p.Jack = want } }
	two := func(how charge.Joined) func(*charge.Plugged) { return func(p *charge.Plugged) { p.Joined = how } }
	moves := func(can charge.Driving) func(*charge.Plugged) { return func(p *charge.Plugged) { p.Driving = can } }
	tool := func(p *charge.Plugged) { p.ToolPack = true }
	own := func(p *charge.Plugged) { p.ToolPack, p.Charger.SuppliedWithPack = true, true }
	right, rightLi := onLead(t, leadCharger, nil), onLithium(t, lionCharger, nil)
	return []made{
		{"no purpose", charge.CodePurposeUnknown, onLead(t, "14.7 V 1.5 A DC", nil), right, fix, house, answer.Charger, answer.FitCharger, ag},
		{"lead-acid charger on lithium", charge.CodeWrongChemistry, onLithium(t, leadCharger, nil), rightLi, danger, house, answer.Charger, answer.FitCharger, li},
		{"phosphate charger on lead-acid", charge.CodeWrongChemistry, onLead(t, "LiFePO4 14.6V 2A DC automatic", nil), right, fix, part, answer.Charger, answer.FitCharger, ag},
		{"nickel charger on lead-acid", charge.CodeWrongChemistry, onLead(t, "NiMH 18V 1A DC", nil), right, danger, house, answer.Charger, answer.FitCharger, ag},
		{"tool pack, foreign charger", charge.CodeForeignCharger, onLithium(t, lionCharger, tool), onLithium(t, lionCharger, own), fix, house, answer.Charger, answer.FitCharger, "tool-pack-rule"},
		{"laptop brick", charge.CodePowerSupply, onLithium(t, "laptop adapter 19V DC 3.42A", nil), rightLi, danger, house, answer.Charger, answer.FitCharger, "laptop-volts"},
		{"lithium in the vehicle", charge.CodeVehicleJack, onLithium(t, lionCharger, at(charge.PortVehicle)), onLithium(t, lionCharger, at(charge.PortPack)), danger, house, answer.Charger, answer.ChargeElsewhere, "jack-practice"},
		{"lead-acid in the vehicle", charge.CodeInVehicle, onLead(t, leadCharger, at(charge.PortVehicle)), right, watch, wear, answer.Charger, answer.ChangeNone, "charging-in-toy"},
		{"lead-acid that can be driven meanwhile", charge.CodeDrivesPlugged, onLead(t, leadCharger, moves(charge.DrivingPossible)), onLead(t, leadCharger, moves(charge.DrivingBlocked)), fix, house, answer.Charger, answer.ChargeElsewhere, "charging-in-toy"},
		{"lithium that can be driven meanwhile", charge.CodeDrivesPlugged, onLithium(t, lionCharger, moves(charge.DrivingPossible)), rightLi, danger, house, answer.Charger, answer.ChargeElsewhere, "charging-in-toy"},
		{"two tool packs in series", charge.CodeChargedInSeries, onLithium(t, lionCharger, two(charge.InSeries)), rightLi, danger, house, answer.Battery, answer.ChargeElsewhere, "series-string-rule"},
		{"two blocks in series", charge.CodeChargedInSeries, onLead(t, leadCharger, two(charge.InSeries)), right, fix, part, answer.Battery, answer.ChargeElsewhere, "series-string-rule"},
		{"two blocks, charger made for the pair", charge.CodeChargedInSeries, onLead(t, leadCharger, func(p *charge.Plugged) {
			p.Joined, p.Charger.SuppliedWithPack = charge.InSeries, true
		}), right, watch, wear, answer.Battery, answer.ChargeElsewhere, "series-string-rule"},
		{"two blocks and a charger for the pair", charge.CodeChargedInSeries, onLead(t, leadCharger, func(p *charge.Plugged) {
			p.Joined, p.MadeFor = charge.InSeries, charge.ForPair
		}), right, watch, wear, answer.Battery, answer.ChargeElsewhere, "series-string-rule"},
		{"two blocks and a charger for one", charge.CodeChargedInSeries, onLead(t, leadCharger, func(p *charge.Plugged) {
			p.Joined, p.MadeFor = charge.InSeries, charge.ForOne
		}), right, watch, wear, answer.Battery, answer.ChargeElsewhere, "series-string-rule"},
		{"two tool packs in parallel", charge.CodeChargedInParallel, onLithium(t, lionCharger, two(charge.InParallel)), rightLi, danger, house, answer.Battery, answer.ChargeElsewhere, "series-string-rule"},
		{"two lithium packs, nobody told where they are charged", charge.CodeChargedInParallel, onLithium(t, lionCharger, func(p *charge.Plugged) {
			p.Joined, p.Port = charge.InParallel, charge.PortUnknown
		}), rightLi, fix, house, answer.Battery, answer.ChargeElsewhere, "series-string-rule"},
		{"two lithium packs, each on what came with it, read alike", charge.CodeChargedInParallel, onLithium(t, lionCharger, func(p *charge.Plugged) {
			p.Joined, p.Port, p.Charger.SuppliedWithPack, p.Alike = charge.InParallel, charge.PortUnknown, true, true
		}), rightLi, watch, wear, answer.Battery, answer.ChangeNone, "series-string-rule"},
		{"two lithium packs, each on what came with it, of unknown volts", charge.CodeChargedInParallel, onLithium(t, lionCharger, func(p *charge.Plugged) {
			p.Joined, p.Port, p.Charger.SuppliedWithPack = charge.InParallel, charge.PortUnknown, true
		}), rightLi, fix, house, answer.Battery, answer.ChangeNone, "series-string-rule"},
		{"two lithium packs, each at its own socket", charge.CodeChargedInSeries, onLithium(t, lionCharger, func(p *charge.Plugged) {
			p.Joined, p.Port, p.MadeFor = charge.InSeries, charge.PortPack, charge.ForOne
		}), rightLi, watch, wear, answer.Battery, answer.ChangeNone, "series-string-rule"},
		{"a charger of the pair's volts at the socket of one", charge.CodeChargedInSeries, onLithium(t, lionCharger, func(p *charge.Plugged) {
			p.Joined, p.Port, p.MadeFor = charge.InSeries, charge.PortPack, charge.ForPair
		}), rightLi, danger, house, answer.Battery, answer.FitCharger, "series-string-rule"},
		{"two blocks of lead, each at its own poles", charge.CodeChargedInParallel, onLead(t, leadCharger, func(p *charge.Plugged) {
			p.Joined, p.Port = charge.InParallel, charge.PortPack
		}), right, watch, wear, answer.Battery, answer.ChangeNone, "series-string-rule"},
		{"alternating current", charge.CodeGivesAC, onLead(t, "AC 12 V 500 mA", nil), right, danger, house, answer.Charger, answer.FitCharger, "common-charging"},
		{"AC or DC unknown", charge.CodeOutputUnknown, onLead(t, "lead acid 14.7 V 1.5 A", nil), right, fix, house, answer.Charger, answer.FitCharger, "common-charging"},
		{"reversed plug", charge.CodePolarityReversed, onLead(t, leadCharger+" centre negative", jack(charge.CentrePositive)), onLead(t, leadCharger+" centre positive", jack(charge.CentrePositive)), danger, house, answer.Charger, answer.FitCharger, "common-charging"},
		{"plug unknown", charge.CodePolarityUnchecked, right, onLead(t, leadCharger+" centre positive", jack(charge.CentrePositive)), watch, wear, answer.Charger, answer.LookUp, "common-charging"},
		{"end volts unknown", charge.CodeEndVoltsUnknown, onLithium(t, "18V 2A DC Li-ion automatic", nil), rightLi, fix, house, answer.Charger, answer.FitCharger, li},
		{"nominal volts of twice the cells", charge.CodeVoltsTooHigh, onLithium(t, "36V 2A DC Li-ion automatic", nil), onLithium(t, "18V 2A DC Li-ion automatic", nil), danger, house, answer.Charger, answer.FitCharger, li},
		{"24 V on 12 V", charge.CodeVoltsTooHigh, onLead(t, "lead acid 28.8V 1A DC automatic", nil), right, danger, house, answer.Charger, answer.FitCharger, ag},
		{"a little too high for lead-acid", charge.CodeVoltsTooHigh, matched(plugged(t, "gel", 6, 7, "lead acid 15V 1A DC automatic"), nil), right, fix, part, answer.Charger, answer.FitCharger, profile(t, "gel").Charge.Source},
		{"adaptor on lithium", charge.CodeVoltsTooHigh, matched(plugged(t, "li-ion", 3, 4, "12V 1A DC"), nil), rightLi, danger, house, answer.Charger, answer.FitCharger, li},
		{"adaptor that came with the vehicle", charge.CodeVoltsTooHigh, onLead(t, plainAdaptor, supplied(charge.StopsNever)), right, watch, wear, answer.Charger, answer.FitCharger, ag},
		{"adaptor from elsewhere", charge.CodeVoltsTooHigh, onLead(t, plainAdaptor, stops(charge.StopsNever)), right, fix, part, answer.Charger, answer.FitCharger, ag},
		{"12 V on 24 V", charge.CodeVoltsTooLow, matched(plugged(t, "agm", 12, 12, leadCharger), nil), right, fix, part, answer.Charger, answer.FitCharger, ag},
		{"lithium never full", charge.CodeVoltsTooLow, onLithium(t, lionCharger, func(p *charge.Plugged) {
			p.Charger.EndLeastV, p.Charger.EndMostV = 20.4, 20.6
		}), rightLi, watch, wear, answer.Charger, answer.FitCharger, li},
		{"lithium on volts that are not held", charge.CodeVoltsNotHeld, onLithium(t, "14V 1A DC", nil), rightLi, danger, house, answer.Charger, answer.FitCharger, "plain-adaptor"},
		{"lead-acid on volts that are not held", charge.CodeVoltsNotHeld, onLead(t, "10V 1A DC lead acid", stops(charge.StopsNever)), right, watch, wear, answer.Charger, answer.ChangeNone, "plain-adaptor"},
		{"amps unknown, lithium", charge.CodeCurrentUnknown, onLithium(t, "21V DC Li-ion automatic", nil), rightLi, fix, house, answer.Charger, answer.LookUp, li},
		{"amps unknown, lead-acid", charge.CodeCurrentUnknown, onLead(t, "lead acid 14.4V DC automatic", nil), right, watch, wear, answer.Charger, answer.LookUp, ag},
		{"too many amps", charge.CodeCurrentTooHigh, onLead(t, "lead acid 14.4V 4A DC automatic", nil), onLead(t, "lead acid 14.4V 2.1A DC automatic", nil), fix, part, answer.Charger, answer.FitCharger, ag},
		{"far too many amps", charge.CodeCurrentTooHigh, onLead(t, "lead acid 14.4V 10A DC automatic", nil), right, danger, house, answer.Charger, answer.FitCharger, ag},
		{"too many amps for lithium", charge.CodeCurrentTooHigh, onLithium(t, "21V 6A DC Li-ion automatic", nil), onLithium(t, "21V 5A DC Li-ion automatic", nil), danger, house, answer.Charger, answer.FitCharger, li},
		{"its own charger, a little too many amps", charge.CodeCurrentTooHigh, onLithium(t, "21V 6.5A DC Li-ion automatic", own), onLithium(t, "21V 5A DC Li-ion automatic", own), watch, wear, answer.Charger, answer.LookUp, li},
		{"small charger", charge.CodeSlow, matched(plugged(t, "agm", 6, 20, "lead acid 14.4V 900mA DC automatic"), nil), matched(plugged(t, "agm", 6, 20, "lead acid 14.4V 1A DC automatic"), nil), watch, wear, answer.Charger, answer.ChangeNone, "common-charging"},
		{"timer", charge.CodeTimer, onLead(t, "lead acid 14.4V 1A DC timer", nil), right, watch, wear, answer.Charger, answer.ChangeNone, ag},
		{"stop unknown, lithium", charge.CodeStopUnknown, onLithium(t, "21V 2A DC Li-ion", nil), rightLi, fix, house, answer.Charger, answer.LookUp, li},
		{"stop unknown, lead-acid", charge.CodeStopUnknown, onLead(t, "lead acid 14.4V 1A DC", nil), right, watch, wear, answer.Charger, answer.LookUp, ag},
		{"never stops, lithium", charge.CodeNeverStops, onLithium(t, lionCharger, stops(charge.StopsNever)), rightLi, danger, house, answer.Charger, answer.FitCharger, "lithium-cc-cv"},
		{"never stops, lead-acid", charge.CodeNeverStops, onLead(t, leadCharger, stops(charge.StopsNever)), onLead(t, "lead acid 13.6V 1A DC", stops(charge.StopsNever)), fix, part, answer.Charger, answer.FitCharger, ag},
		{"never stops, nickel full of amps", charge.CodeNeverStops, onNickel(t, "NiMH 14.5V 2A DC", stops(charge.StopsNever)), onNickel(t, "NiMH 14.5V 2A DC", stops(charge.StopsByItself)), fix, house, answer.Charger, answer.FitCharger, ni},
		{"never stops, nickel at a tenth of its ampere-hours", charge.CodeNeverStops, onNickel(t, "NiMH 14.5V 500mA DC", stops(charge.StopsNever)), onNickel(t, "NiMH 14.5V 500mA DC", stops(charge.StopsByItself)), fix, part, answer.Charger, answer.FitCharger, ni},
		{"never stops, nickel, came with the battery", charge.CodeNeverStops, onNickel(t, "NiMH 14.5V 2A DC", supplied(charge.StopsNever)), right, watch, wear, answer.Charger, answer.FitCharger, ni},
		{"never stops, came with the battery", charge.CodeNeverStops, onLead(t, leadCharger, supplied(charge.StopsNever)), right, watch, wear, answer.Charger, answer.FitCharger, ag},
	}
}

// packRows is the table of the findings on a pack that is charged, stored or
// old.
func packRows(t testing.TB) []made {
	t.Helper()
	const danger, fix, watch = answer.Danger, answer.FixFirst, answer.Watch
	const house, part, wear = answer.House, answer.Part, answer.Wear
	li, ag := profile(t, "li-ion"), profile(t, "agm")
	rest := func(p chemistry.Profile, cells int, v float64) []answer.Finding { return charge.JudgeRest(p, cells, v) }
	lithium, lead := pack(t, "li-ion", 5, 5), pack(t, "agm", 6, 7)
	temps := func(cellC, ambientC float64) func(*charge.Plugged) {
		return func(p *charge.Plugged) { p.CellC, p.AmbientC = cellC, ambientC }
	}
	sound := diagnosed(t, 12.8, 12.1, 8)
	left := func(drawsA float64) func(*charge.Store) {
		return func(s *charge.Store) { s.StandbyA, s.InVehicle = drawsA, true }
	}
	return []made{
		{"1.4 V a cell", charge.CodeNeverRecharge, rest(li, 5, 7), rest(li, 5, 7.5), danger, house, answer.Battery, answer.FitPack, li.LadderSource},
		{"2.7 V a cell", charge.CodeTooLow, rest(li, 5, 13.5), rest(li, 5, 15), danger, house, answer.Battery, answer.ChangeNone, "lithium-precharge"},
		{"2 V on a block", charge.CodeDeadBlock, rest(ag, 6, 2), rest(ag, 6, 6.1), danger, house, answer.Battery, answer.FitPack, "common-charging"},
		{"9 V on a block", charge.CodeDeeplyFlat, rest(ag, 6, 9), rest(ag, 6, 11.5), fix, part, answer.Battery, answer.ChangeNone, ag.LadderSource},
		{"21.5 V on five lithium cells", charge.CodeOvercharged, rest(li, 5, 21.5), rest(li, 5, 21.1), fix, house, answer.Battery, answer.ChangeNone, li.LadderSource},
		{"26 V on five lithium cells", charge.CodeOvercharged, rest(li, 5, 26), rest(li, 5, 21.1), danger, house, answer.Battery, answer.ChangeNone, li.LadderSource},
		{"14.5 V at rest on a block", charge.CodeOvercharged, rest(ag, 6, 14.5), rest(ag, 6, 13.3), fix, house, answer.Battery, answer.ChangeNone, ag.LadderSource},
		{"five lithium cells at 9 V under load", charge.CodeFallsFar, charge.JudgeLoaded(li, 5, charge.Loaded{V: 9, RateC: 1}), charge.JudgeLoaded(li, 5, charge.Loaded{V: 15, RateC: 1}), fix, house, answer.Battery, answer.FitPack, li.LadderSource},
		{"a block at 7 V under load", charge.CodeFallsFar, charge.JudgeLoaded(ag, 6, charge.Loaded{V: 7, RateC: 1}), charge.JudgeLoaded(ag, 6, charge.Loaded{V: 10.6, RateC: 1}), fix, part, answer.Battery, answer.FitPack, ag.LadderSource},
		{"10.5 V on a block", charge.CodeDeeplyFlat, rest(ag, 6, 10.5), rest(ag, 6, 11.5), fix, part, answer.Battery, answer.ChangeNone, ag.Rest.Source},
		{"frozen lithium on its charger", charge.CodeTooCold, onLithium(t, lionCharger, temps(-5, 20)), onLithium(t, lionCharger, temps(1, 20)), danger, house, answer.Battery, answer.ChargeElsewhere, li.Charge.Source},
		{"frozen lithium, not yet plugged in", charge.CodeTooCold, charge.WaitFor(lithium, -5, -5).Findings, charge.WaitFor(lithium, 1, 1).Findings, fix, house, answer.Battery, answer.ChargeElsewhere, li.Charge.Source},
		{"frozen lithium that waits in a warm room", charge.CodeTooCold, charge.WaitFor(lithium, -5, 20).Findings, charge.WaitFor(lithium, 1, 20).Findings, fix, house, answer.Battery, answer.WaitBeforeCharge, li.Charge.Source},
		{"frozen block on its charger", charge.CodeTooCold, onLead(t, leadCharger, temps(-5, 20)), charge.WaitFor(lead, -5, 20).Findings, fix, part, answer.Battery, answer.ChargeElsewhere, ag.Charge.Source},
		{"hot from the ride", charge.CodeTooHot, charge.WaitFor(lithium, 60, 22).Findings, charge.WaitFor(lithium, 40, 22).Findings, watch, wear, answer.Battery, answer.WaitBeforeCharge, li.Charge.Source},
		{"hot on the charger", charge.CodeTooHot, onLithium(t, lionCharger, temps(60, 22)), charge.WaitFor(lithium, 60, 22).Findings, danger, house, answer.Battery, answer.WaitBeforeCharge, li.Charge.Source},
		{"hot in a hot shed", charge.CodeTooHot, charge.WaitFor(lithium, 60, 50).Findings, charge.WaitFor(lithium, 60, 22).Findings, fix, house, answer.Battery, answer.ChargeElsewhere, li.Charge.Source},
		{"cool lithium", charge.CodeSlowInCold, charge.WaitFor(lithium, 5, 20).Findings, charge.WaitFor(lithium, 10, 20).Findings, watch, wear, answer.Battery, answer.WarmUp, li.Charge.Source},
		{"a frosty shed, plugged in", charge.CodePlaceNoGood, onLithium(t, lionCharger, temps(20, -5)), onLithium(t, lionCharger, temps(20, 1)), danger, house, answer.Battery, answer.ChargeElsewhere, li.Charge.Source},
		{"a frosty shed", charge.CodePlaceNoGood, charge.WaitFor(lead, 20, -5).Findings, charge.WaitFor(lead, 20, 1).Findings, watch, wear, answer.Battery, answer.ChargeElsewhere, ag.Charge.Source},
		{"too few volts", charge.CodeNeverFull, simulated(t, 12.2, 1, 20), simulated(t, 14.4, 1, 20), watch, wear, answer.Charger, answer.FitCharger, ag.Charge.Source},
		{"too many amps in the heat", charge.CodeHeatsPack, simulated(t, 15, 6, 39), simulated(t, 14.4, 1, 20), fix, part, answer.Battery, answer.ChangeNone, ag.Charge.Source},
		{"half full over the winter", charge.CodeStoredNotFull, stored(t, "agm", 0.5, 8, nil), stored(t, "agm", 0.95, 8, nil), fix, part, answer.Battery, answer.KeepCharged, "lead-sulfation"},
		{"lithium full", charge.CodeStoredTooFull, stored(t, "li-ion", 1, 12, nil), stored(t, "li-ion", 0.6, 12, nil), watch, wear, answer.Battery, answer.ChangeNone, "storage-lithium"},
		{"lithium nearly empty", charge.CodeStoredRunsEmpty, stored(t, "li-ion", 0.1, 12, nil), stored(t, "li-ion", 0.6, 12, nil), danger, house, answer.Battery, answer.KeepCharged, li.Keeping.Source},
		{"lead-acid nearly empty", charge.CodeStoredRunsEmpty, stored(t, "agm", 0.05, 20, nil), stored(t, "agm", 0.6, 12, nil), fix, part, answer.Battery, answer.KeepCharged, ag.Keeping.Source},
		{"lead-acid in the warm", charge.CodeStoredNeedsTopUp, stored(t, "agm", 1, 30, nil), stored(t, "agm", 1, 5, nil), watch, wear, answer.Battery, answer.KeepCharged, ag.Keeping.Source},
		{"lithium left in the toy", charge.CodeStoredConnected, stored(t, "li-ion", 0.5, 12, left(0)), stored(t, "li-ion", 0.5, 12, nil), fix, house, answer.Battery, answer.KeepCharged, "storage-lithium"},
		{"a block left in the toy, board on", charge.CodeStoredConnected, stored(t, "agm", 1, 12, left(0.001)), stored(t, "agm", 1, 12, left(0.00005)), fix, part, answer.Battery, answer.KeepCharged, "storage-lithium"},
		{"a block left in the toy", charge.CodeStoredConnected, stored(t, "agm", 1, 12, left(0)), stored(t, "agm", 1, 12, nil), watch, wear, answer.Battery, answer.KeepCharged, "storage-lithium"},
		{"kept at 70 degrees", charge.CodeStoredTooHot, stored(t, "agm", 1, 70, nil), stored(t, "agm", 1, 20, nil), fix, part, answer.Battery, answer.KeepCharged, "storage-lithium"},
		{"part full in frost", charge.CodeStoredMayFreeze, stored(t, "agm", 0.3, -18, nil), stored(t, "agm", 1, -18, nil), fix, part, answer.Battery, answer.KeepCharged, "lead-freezing"},
		{"flat", charge.CodeOldFlat, diagnosed(t, 11.85, 0, 0), sound, watch, wear, answer.Battery, answer.ChangeNone, "lead-sulfation"},
		{"worn", charge.CodeOldWorn, diagnosed(t, 12.6, 9.5, 8), sound, watch, wear, answer.Battery, answer.ChangeNone, "diagnosis-odds"},
		{"dead cell", charge.CodeOldDeadCell, diagnosed(t, 10.65, 10, 5), sound, fix, part, answer.Battery, answer.ChangeNone, "diagnosis-odds"},
		{"bad contact", charge.CodeOldContact, diagnosed(t, 12.7, 1, 0), sound, fix, house, answer.Wire, answer.ChangeNone, "diagnosis-odds"},
	}
}

func TestFindingsSayWhomTheyHurtAndWhatToChange(t *testing.T) {
	sources := slices.Concat(charge.Sources(), chemistry.Builtin().Sources())
	fired := map[string]bool{}
	for _, row := range slices.Concat(chargerRows(t), packRows(t)) {
		f, ok := find(row.fires, row.code)
		if !ok {
			t.Errorf("%s: %s is not among %+v", row.name, row.code, row.fires)
			continue
		}
		fired[row.code] = true
		if f.Level != row.level || f.Harm != row.harm || f.Item != row.item || f.Change != row.change || f.Source != row.source {
			t.Errorf("%s: %+v, want %+v", row.name, f, row)
		}
		if f.Reads == answer.AsNumber && f.Unit != "" && (f.Found > f.Limit) != (f.Want == answer.Below) {
			t.Errorf("%s: %g is not past %g on the side that is wrong (%v)", row.name, f.Found, f.Limit, f.Want)
		}
		findingtest.Cited(t, f, sources)
		if s, is := find(row.silent, row.code); is && s.Level >= row.level {
			t.Errorf("%s: %s also fires, as badly, where it must not: %+v", row.name, row.code, s)
		}
		for _, f := range slices.Concat(row.fires, row.silent) {
			findingtest.Whole(t, f)
		}
	}
	findingtest.AllFired(t, fired)
}

// What nobody told is no danger by itself.
func TestWhatIsUnknownIsNoDanger(t *testing.T) {
	for _, row := range slices.Concat(chargerRows(t), packRows(t)) {
		for _, f := range row.fires {
			if f.Reads == answer.AsUnknown && f.Level == answer.Danger {
				t.Errorf("%s: %+v", row.name, f)
			}
		}
	}
}
