package trials_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/wiring"
)

// What must never pass, each on a setup that is sound without it.
func TestWhatIsUnsafeIsNeverFineOrWatch(t *testing.T) {
	t.Parallel()
	sound := doneProperly(t)
	if a := assess(t, sound); a.Verdict > answer.Watch {
		t.Fatalf("the sound setup is %v: %+v", a.Verdict, a.Findings[0])
	}
	block := soundBlock(t)
	if a := assess(t, block); a.Verdict > answer.Watch {
		t.Fatalf("the sound lead-acid setup is %v: %+v", a.Verdict, a.Findings[0])
	}
	contacts := onContacts(t).with("fuse.form", `"small blade"`, "fuse.rating", `"20 A"`, "fuse.distance_from_pack", `"100 mm"`)
	noConverter := sound.with("controller.converter_voltage", "", "controller.converter_limit", "")
	for _, c := range []struct {
		name  string
		s     sheet
		codes string // one of them must be found ...
		least answer.Level
	}{
		{"18 V pack on 12 V contacts", contacts, drive.CodeContactsMayWeld, answer.Danger},
		{"18 V pack, labels only", labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"18 V 5 Ah"`), drive.CodeContactsMayWeld, answer.FixFirst}, // nobody told what switches the motors
		{"20 V max pack, labels only", labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`), drive.CodeContactsMayWeld, answer.FixFirst},
		{"24 V of lead-acid on 12 V contacts", labelsOnly().with("pack.label", `"24 V (two 12 V)"`), drive.CodeContactsMayWeld, answer.FixFirst},
		{"two 12 V blocks joined on 12 V contacts", labelsOnly().with("pack.joined", `"series"`), drive.CodeContactsMayWeld, answer.FixFirst},
		{"18 V pack on a 12 V chopper", noConverter.with("controller.max_voltage", `"15 V"`), drive.CodeBoardOvervoltage, answer.Danger},
		{"18 V pack on a chopper of unknown volts", noConverter.with("controller.max_voltage", ""), drive.CodeBoardOvervoltage + "," + drive.CodeBoardVoltsUnknown, answer.FixFirst},
		{"chopper for 15 to 25 V", noConverter.with("controller.max_voltage", `"15 to 25 V"`), drive.CodeBoardOvervoltage, answer.FixFirst},
		{"a part that may stand less than the pack gives", noConverter.with("vehicle.weakest_part_voltage", `"16 to 25 V"`), drive.CodeBoardOvervoltage, answer.FixFirst},
		{"no fuse", sound.without("fuse").with("fuse.form", `"none"`), wiring.CodeNoFuse, answer.Danger},
		{"nothing said of a fuse", sound.without("fuse"), wiring.CodeFuseUnknown, answer.FixFirst},
		{"30 A fuse on 18 AWG 60 C wire", sound.with("wire.gauge", `"18 AWG"`, "wire.insulation", `"60 C"`, "fuse.rating", `"30 A"`), wiring.CodeFuseAboveWire, answer.Danger},
		{"30 A fuse on wire of 12 to 18 AWG", sound.with("wire.gauge", `"12 to 18 AWG"`, "wire.insulation", `"60 C"`, "fuse.rating", `"30 A"`), wiring.CodeFuseAboveWire, answer.FixFirst},
		{"40 A fuse on wire of unknown insulation", sound.with("wire.gauge", `"14 AWG"`, "wire.insulation", "", "fuse.rating", `"40 A"`), wiring.CodeFuseAboveWire, answer.FixFirst},
		{"fuse for 32 V on a pack of 42 V", sound.with("pack.label", `"36 V 5 Ah"`, "pack.cells_in_series", "10", "controller.max_voltage", `"50 V"`, "cutoff.module.opens_at", `"33 V"`, "charger.voltage", `"42 V"`), wiring.CodeFuseVoltage, answer.FixFirst},
		{"fuse two metres from the pack", sound.with("fuse.distance_from_pack", `"2 m"`), wiring.CodeFuseTooFar, answer.FixFirst},
		{"lithium without a cutoff", sound.without("cutoff.module"), cutoff.CodeNone, answer.Danger},
		{"lithium cut off at 10 V", sound.with("cutoff.module.opens_at", `"10 V"`), cutoff.CodeBelowHarm, answer.Danger},
		{"a cutoff that waits for an hour", sound.with("cutoff.module.delay", `"1 h"`), cutoff.CodeNeverOpens + "," + cutoff.CodePastSaving, answer.Danger},
		{"a cutoff that a ride hardly begins under", sound.with("cutoff.module.opens_at", `"19.5 V"`, "cutoff.module.delay", `"0 s"`), cutoff.CodeEndsRide, answer.FixFirst},
		{"a cutoff that only draws current", sound.with("cutoff.module.opens_at", "", "cutoff.module.delay", ""), cutoff.CodeNone, answer.Danger},
		{"a cutoff module that empties the pack within a week", sound.with("cutoff.module.standby_current", `"50 mA"`), cutoff.CodeIdleWeek, answer.Danger},
		{"a cutoff module that may", sound.with("cutoff.module.standby_current", `"0 to 50 mA"`), cutoff.CodeIdleWeek, answer.FixFirst},
		{"lead-acid charger on lithium", sound.with("charger.made_for", `"lead-acid"`, "charger.voltage", `"14.7 V"`, "charger.came_with_pack", "false"), charge.CodeWrongChemistry, answer.Danger},
		{"lead-acid charger on lithium, said to have come with it", sound.with("charger.made_for", `"lead-acid"`), charge.CodeWrongChemistry, answer.Danger},
		{"24 V charger on lithium of 18 V", sound.with("charger.voltage", `"29.4 V"`, "charger.came_with_pack", "false"), charge.CodeVoltsTooHigh + "," + charge.CodeEndVoltsUnknown, answer.Danger},
		{"a charger that never stops on lithium", sound.with("charger.stops", `"never"`, "charger.came_with_pack", "false"), charge.CodeNeverStops, answer.Danger},
		{"a laptop supply", sound.with("charger.made_for", `"power supply"`), charge.CodePowerSupply, answer.Danger},
		{"an AC adaptor", sound.with("charger.output", `"ac"`), charge.CodeGivesAC, answer.Danger},
		{"the vehicle's jack for a tool pack", sound.with("charger.jack", `"vehicle"`), charge.CodeVehicleJack, answer.Danger},
		{"20 A into a 5 Ah tool pack", sound.with("charger.current", `"20 A"`), charge.CodeCurrentTooHigh, answer.Danger},
		{"10 A into a 5 Ah tool pack, of a charger from elsewhere", sound.with("charger.current", `"10 A"`, "charger.came_with_pack", "false"), charge.CodeCurrentTooHigh, answer.Danger},
		{"10 A into a look-alike of 5 Ah, of a charger that came with it", sound.with("charger.current", `"10 A"`, "pack.maker", `"look-alike"`), charge.CodeCurrentTooHigh, answer.FixFirst},
		{"10 A into 5 Ah of energy cells, of a charger that came with them", sound.with("charger.current", `"10 A"`, "pack.cells", `"energy"`), charge.CodeCurrentTooHigh, answer.FixFirst},
		{"12 V charger on a 24 V string", block.with("pack.label", `"24 V 7 Ah"`, "vehicle.design_voltage", `"24 V"`, "motors.rated_voltage", `"24 V"`, "cutoff.module.opens_at", `"21 V"`), charge.CodeVoltsTooLow, answer.FixFirst},
		{"24 V charger on a 12 V block", block.with("charger.voltage", `"29.4 V"`), charge.CodeVoltsTooHigh, answer.FixFirst},
		{"charging lithium below freezing", sound.with("outing.air", `"-3 C"`, "outing.charged_at", `"-3 C"`), charge.CodeTooCold + "," + charge.CodePlaceNoGood, answer.Danger},
		{"charging lithium where it may freeze", sound.with("outing.air", `"-10 to 20 C"`, "outing.charged_at", `"-10 to 20 C"`), charge.CodeTooCold + "," + charge.CodePlaceNoGood, answer.FixFirst},
		{"charging lithium at 55 C", sound.with("outing.air", `"55 C"`, "outing.charged_at", `"55 C"`), charge.CodeTooHot + "," + charge.CodePlaceNoGood, answer.Danger},
		{"a pack asked for three times its lasting current", sound.with("pack.max_current", `"2 A"`), battery.CodeCurrentLasting, answer.Danger},
		{"a pack asked for three times its peak", labelsOnly().with("pack.max_current", `"4 A"`), drive.CodeLaunchOverPack + "," + battery.CodeCurrentPeak + "," + battery.CodeCurrentLasting, answer.FixFirst},
		{"a pack that may stand little", sound.with("pack.max_current", `"2 to 10 A"`), battery.CodeCurrentLasting, answer.FixFirst},
		{"a controller asked for more than its peak", sound.with("controller.continuous_current", `"5 A"`, "controller.peak_current", `"10 A"`), drive.CodeLaunchOverControllerPeak, answer.FixFirst},
		{"a child of two", sound.with("rider.age", `"2 years"`), drive.CodeWayToStop + "," + drive.CodeTooYoung, answer.FixFirst},
		{"children of two to six", sound.with("rider.age", `"2 to 6 years"`), drive.CodeWayToStop + "," + drive.CodeTooYoung, answer.FixFirst},
		{"twelve kilometres an hour", sound.with("gears.ratio", `"45:1"`), drive.CodeFastForARideOn, answer.FixFirst},
		{"cells that rest at one volt", sound.without("original.pack", "original.controller").with("pack.charge", "", "measured.rest_voltage", `"5 V"`), charge.CodeNeverRecharge, answer.Danger},
		{"cells that rest at nothing", sound.without("original.pack", "original.controller").with("pack.charge", "", "measured.rest_voltage", `"0 V"`), charge.CodeNeverRecharge, answer.Danger},
		{"cells that rest at one volt, no charger described", sound.without("original.pack", "original.controller", "charger").with("pack.charge", "", "measured.rest_voltage", `"5 V"`), charge.CodeNeverRecharge, answer.Danger},
		{"an empty pack", sound.with("pack.charge", `"0 %"`), cutoff.CodePastSaving + "," + cutoff.CodeWeakCellHarmed, answer.FixFirst},
		{"two tool packs in series", sound.with("pack.joined", `"series"`), battery.CodeSeriesElectronics, answer.FixFirst},
		{"an empty block in the cold", labelsOnly().with("pack.charge", `"0 %"`, "outing.air", `"-40 C"`), battery.CodeTooCold, answer.FixFirst},
		{"an old block measured in the cold", labelsOnly().with("measured.rest_voltage", `"12 V"`, "outing.air", `"-40 C"`), battery.CodeTooCold, answer.FixFirst},
		{"a slope that it cannot climb", sound.with("vehicle.slope", `"30 %"`), drive.CodeCannotStart + "," + drive.CodeSpinsOnTheSpot, answer.FixFirst},
		{"10 Ohm in the controller", sound.with("controller.resistance", `"10 Ohm"`), judge.CodeCannotKeepGoing + "," + drive.CodeCannotStart + "," + drive.CodeStallsSoon, answer.FixFirst},
		{"a bench load beyond the pack", benchLoad().with("load.current", `"2000 A"`, "cutoff.module.opens_at", `"10.5 V"`), judge.CodeCannotSupply, answer.FixFirst},
		{"a bench power beyond the pack", benchLoad().with("load.current", "", "load.power", `"20 kW"`, "cutoff.module.opens_at", `"10.5 V"`), judge.CodeCannotSupply, answer.FixFirst},
		{"24 V charger said to have come with an 18 V pack", sound.with("charger.voltage", `"24 V"`), charge.CodeVoltsTooHigh + "," + charge.CodeEndVoltsUnknown, answer.FixFirst},
		{"lead-acid volts said to have come with it", sound.with("charger.voltage", `"14.7 V"`), charge.CodeVoltsTooLow + "," + charge.CodeEndVoltsUnknown, answer.FixFirst},
		{"a reversed plug said to have come with it", sound.with("charger.polarity", `"centre negative"`, "charger.jack_polarity", `"centre positive"`), charge.CodePolarityReversed, answer.Danger},
		{"a charger of 20 to 25 V", sound.with("charger.voltage", `"20 to 25.2 V"`), charge.CodeVoltsTooHigh, answer.Danger},
		{"lithium with a fifth of its charge left in it", sound.with("pack.health", `"20 %"`), judge.CodePackWorn, answer.FixFirst},
		{"lithium stored full in a hot shed", sound.with("storage.from", "2026-05-01", "storage.until", "2026-10-31", "storage.temperature", `"60 C"`), charge.CodeStoredRunsEmpty, answer.Danger},
		{"lithium stored where it may get hot", sound.with("storage.from", "2026-05-01", "storage.until", "2026-10-31", "storage.temperature", `"0 to 60 C"`), charge.CodeStoredRunsEmpty, answer.FixFirst},
		{"a bench load said to have no fuse", benchLoad().with("fuse.form", `"none"`, "cutoff.module.opens_at", `"10.5 V"`), wiring.CodeNoFuse + "," + judge.CodeBareBench, answer.Danger},
		{"a bench load beyond its fuse", benchLoad().with("load.current", `"20 A"`, "fuse.rating", `"5 A"`, "cutoff.module.opens_at", `"10.5 V"`), judge.CodeFuseEndsRide, answer.FixFirst},
		{"a label that can mean several kinds of cell", soundBlock(t).with("pack.chemistry", "", "pack.label", `"12 V 2 Ah"`), judge.CodeCellsAssumed, answer.FixFirst},
		{"a bench load that only pauses", benchLoad().with("outing.pause", `"10 s"`), cutoff.CodeNone, answer.FixFirst},
	} {
		a := assessed(t, c.name, c.s.toml())
		if a == nil {
			t.Errorf("%s: refused", c.name)
			continue
		}
		consistent(t, c.name, a)
		if a.Verdict < answer.FixFirst || has(a, strings.Split(c.codes, ",")...) < c.least {
			var found []string
			for _, f := range a.Findings {
				found = append(found, f.Level.String()+" "+f.Code)
			}
			t.Errorf("%s: %v, %s not found as %v among %s", c.name, a.Verdict, c.codes, c.least, strings.Join(found, ", "))
		}
	}
}
