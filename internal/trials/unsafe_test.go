package trials_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
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
		{"18 V pack on 12 V contacts", contacts, "contacts-may-weld", answer.Danger},
		{"18 V pack, labels only", labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"18 V 5 Ah"`), "contacts-may-weld", answer.FixFirst}, // nobody told what switches the motors
		{"20 V max pack, labels only", labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`), "contacts-may-weld", answer.FixFirst},
		{"24 V of lead-acid on 12 V contacts", labelsOnly().with("pack.label", `"24 V (two 12 V)"`), "contacts-may-weld", answer.FixFirst},
		{"two 12 V blocks joined on 12 V contacts", labelsOnly().with("pack.joined", `"series"`), "contacts-may-weld", answer.FixFirst},
		{"18 V pack on a 12 V chopper", noConverter.with("controller.max_voltage", `"15 V"`), "board-overvoltage", answer.Danger},
		{"18 V pack on a chopper of unknown volts", noConverter.with("controller.max_voltage", ""), "board-overvoltage,board-volts-unknown", answer.FixFirst},
		{"chopper for 15 to 25 V", noConverter.with("controller.max_voltage", `"15 to 25 V"`), "board-overvoltage", answer.FixFirst},
		{"a part that may stand less than the pack gives", noConverter.with("vehicle.weakest_part_voltage", `"16 to 25 V"`), "board-overvoltage", answer.FixFirst},
		{"no fuse", sound.without("fuse").with("fuse.form", `"none"`), "no-fuse", answer.Danger},
		{"nothing said of a fuse", sound.without("fuse"), "fuse-unknown", answer.FixFirst},
		{"30 A fuse on 18 AWG 60 C wire", sound.with("wire.gauge", `"18 AWG"`, "wire.insulation", `"60 C"`, "fuse.rating", `"30 A"`), "fuse-above-wire", answer.Danger},
		{"30 A fuse on wire of 12 to 18 AWG", sound.with("wire.gauge", `"12 to 18 AWG"`, "wire.insulation", `"60 C"`, "fuse.rating", `"30 A"`), "fuse-above-wire", answer.FixFirst},
		{"40 A fuse on wire of unknown insulation", sound.with("wire.gauge", `"14 AWG"`, "wire.insulation", "", "fuse.rating", `"40 A"`), "fuse-above-wire", answer.FixFirst},
		{"fuse for 32 V on a pack of 42 V", sound.with("pack.label", `"36 V 5 Ah"`, "pack.cells_in_series", "10", "controller.max_voltage", `"50 V"`, "cutoff.module.opens_at", `"33 V"`, "charger.voltage", `"42 V"`), "fuse-voltage", answer.FixFirst},
		{"fuse two metres from the pack", sound.with("fuse.distance_from_pack", `"2 m"`), "fuse-too-far", answer.FixFirst},
		{"lithium without a cutoff", sound.without("cutoff.module"), "cutoff-none", answer.Danger},
		{"lithium cut off at 10 V", sound.with("cutoff.module.opens_at", `"10 V"`), "cutoff-below-harm", answer.Danger},
		{"a cutoff that waits for an hour", sound.with("cutoff.module.delay", `"1 h"`), "cutoff-never-opens,drained-past-saving", answer.Danger},
		{"a cutoff that only draws current", sound.with("cutoff.module.opens_at", "", "cutoff.module.delay", ""), "cutoff-none", answer.Danger},
		{"a cutoff module that empties the pack within a week", sound.with("cutoff.module.standby_current", `"50 mA"`), "idle-harms-within-week", answer.Danger},
		{"a cutoff module that may", sound.with("cutoff.module.standby_current", `"0 to 50 mA"`), "idle-harms-within-week", answer.FixFirst},
		{"lead-acid charger on lithium", sound.with("charger.made_for", `"lead-acid"`, "charger.voltage", `"14.7 V"`, "charger.came_with_pack", "false"), "charger-wrong-chemistry", answer.Danger},
		{"lead-acid charger on lithium, said to have come with it", sound.with("charger.made_for", `"lead-acid"`), "charger-wrong-chemistry", answer.Danger},
		{"24 V charger on lithium of 18 V", sound.with("charger.voltage", `"29.4 V"`, "charger.came_with_pack", "false"), "charger-volts-too-high,charger-end-volts-unknown", answer.Danger},
		{"a charger that never stops on lithium", sound.with("charger.stops", `"never"`, "charger.came_with_pack", "false"), "charger-never-stops", answer.Danger},
		{"a laptop supply", sound.with("charger.made_for", `"power supply"`), "charger-is-power-supply", answer.Danger},
		{"an AC adaptor", sound.with("charger.output", `"ac"`), "charger-gives-ac", answer.Danger},
		{"the vehicle's jack for a tool pack", sound.with("charger.jack", `"vehicle"`), "charge-through-vehicle-jack", answer.Danger},
		{"10 A into a 5 Ah tool pack", sound.with("charger.current", `"10 A"`), "charger-current-too-high", answer.Danger},
		{"12 V charger on a 24 V string", block.with("pack.label", `"24 V 7 Ah"`, "vehicle.design_voltage", `"24 V"`, "motors.rated_voltage", `"24 V"`, "cutoff.module.opens_at", `"21 V"`), "charger-volts-too-low", answer.FixFirst},
		{"24 V charger on a 12 V block", block.with("charger.voltage", `"29.4 V"`), "charger-volts-too-high", answer.FixFirst},
		{"charging lithium below freezing", sound.with("outing.air", `"-3 C"`), "charge-too-cold,charge-place-temperature", answer.Danger},
		{"charging lithium where it may freeze", sound.with("outing.air", `"-10 to 20 C"`), "charge-too-cold,charge-place-temperature", answer.FixFirst},
		{"charging lithium at 55 C", sound.with("outing.air", `"55 C"`), "charge-too-hot,charge-place-temperature", answer.Danger},
		{"a pack asked for three times its lasting current", sound.with("pack.max_current", `"2 A"`), "pack-current-lasting", answer.Danger},
		{"a pack asked for three times its peak", labelsOnly().with("pack.max_current", `"6 A"`), "launch-over-pack,pack-current-peak,pack-current-lasting", answer.FixFirst},
		{"a pack that may stand little", sound.with("pack.max_current", `"2 to 10 A"`), "pack-current-lasting", answer.FixFirst},
		{"a controller asked for more than its peak", sound.with("controller.continuous_current", `"5 A"`, "controller.peak_current", `"10 A"`), "launch-over-controller-peak", answer.FixFirst},
		{"a child of two", sound.with("rider.age", `"2 years"`), "way-to-stop,too-young", answer.FixFirst},
		{"children of two to six", sound.with("rider.age", `"2 to 6 years"`), "way-to-stop,too-young", answer.FixFirst},
		{"twelve kilometres an hour", sound.with("gears.ratio", `"45:1"`), "fast-for-a-ride-on", answer.FixFirst},
		{"cells that rest at one volt", sound.without("original.pack", "original.controller").with("measured.rest_voltage", `"5 V"`), "pack-never-recharge", answer.Danger},
		{"cells that rest at nothing", sound.without("original.pack", "original.controller").with("measured.rest_voltage", `"0 V"`), "pack-never-recharge", answer.Danger},
		{"cells that rest at one volt, no charger described", sound.without("original.pack", "original.controller", "charger").with("measured.rest_voltage", `"5 V"`), "pack-never-recharge", answer.Danger},
		{"an empty pack", sound.with("pack.charge", `"0 %"`), "drained-past-saving,weak-cell-harmed", answer.FixFirst},
		{"two tool packs in series", sound.with("pack.joined", `"series"`), "series-pack-electronics", answer.FixFirst},
		{"an empty block in the cold", labelsOnly().with("pack.charge", `"0 %"`, "outing.air", `"-40 C"`), "pack-too-cold", answer.FixFirst},
		{"an old block measured in the cold", labelsOnly().with("measured.rest_voltage", `"12 V"`, "outing.air", `"-40 C"`), "pack-too-cold", answer.FixFirst},
		{"a slope that it cannot climb", sound.with("vehicle.slope", `"30 %"`), "cannot-start,spins-on-the-spot", answer.FixFirst},
		{"10 Ohm in the controller", sound.with("controller.resistance", `"10 Ohm"`), "cannot-keep-going,cannot-start,stalls-soon", answer.FixFirst},
		{"a bench load beyond the pack", benchLoad().with("load.current", `"2000 A"`, "cutoff.module.opens_at", `"10.5 V"`), "pack-cannot-supply", answer.FixFirst},
		{"a bench power beyond the pack", benchLoad().with("load.current", "", "load.power", `"20 kW"`, "cutoff.module.opens_at", `"10.5 V"`), "pack-cannot-supply", answer.FixFirst},
		{"24 V charger said to have come with an 18 V pack", sound.with("charger.voltage", `"24 V"`), "charger-volts-too-high,charger-end-volts-unknown", answer.FixFirst},
		{"lead-acid volts said to have come with it", sound.with("charger.voltage", `"14.7 V"`), "charger-volts-too-low,charger-end-volts-unknown", answer.FixFirst},
		{"a reversed plug said to have come with it", sound.with("charger.polarity", `"centre negative"`, "charger.jack_polarity", `"centre positive"`), "charger-polarity-reversed", answer.Danger},
		{"a charger of 20 to 25 V", sound.with("charger.voltage", `"20 to 25.2 V"`), "charger-volts-too-high", answer.Danger},
		{"lithium with a fifth of its charge left in it", sound.with("pack.health", `"20 %"`), "pack-worn", answer.FixFirst},
		{"lithium stored full in a hot shed", sound.with("storage.from", "2026-05-01", "storage.until", "2026-10-31", "storage.temperature", `"60 C"`), "stored-runs-empty", answer.Danger},
		{"lithium stored where it may get hot", sound.with("storage.from", "2026-05-01", "storage.until", "2026-10-31", "storage.temperature", `"0 to 60 C"`), "stored-runs-empty", answer.FixFirst},
		{"a bench load said to have no fuse", benchLoad().with("fuse.form", `"none"`, "cutoff.module.opens_at", `"10.5 V"`), "no-fuse,bench-without-fuse", answer.Danger},
		{"a bench load beyond its fuse", benchLoad().with("load.current", `"20 A"`, "fuse.rating", `"5 A"`, "cutoff.module.opens_at", `"10.5 V"`), "fuse-ends-the-ride", answer.FixFirst},
		{"a label that can mean several kinds of cell", soundBlock(t).with("pack.chemistry", "", "pack.label", `"12 V 2 Ah"`), "cells-assumed", answer.FixFirst},
		{"a bench load that only pauses", benchLoad().with("outing.pause", `"10 s"`), "cutoff-none", answer.FixFirst},
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
