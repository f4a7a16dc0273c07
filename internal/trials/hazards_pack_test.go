package trials_test

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/internal/judge"
)

const (
	cutNone   = cutoff.CodeNone
	cutLow    = cutoff.CodeBelowHarm + "|" + cutoff.CodeNone
	weak      = cutoff.CodeWeakCellHarmed + "|" + cutoff.CodeWeakCellReversed
	useless   = cutoff.CodeNeverOpens + "|" + cutoff.CodePastSaving + "|" + cutLow + "|" + weak
	chatters  = cutoff.CodeChatters + "|" + cutoff.CodeMayChatter + "|" + cutoff.CodeMustLatch
	idle      = cutoff.CodeIdleWeek + "|" + cutoff.CodeIdleMonth
	never     = charge.CodeNeverRecharge
	lowRest   = charge.CodeNeverRecharge + "|" + charge.CodeTooLow
	deadBlock = charge.CodeDeadBlock + "|" + charge.CodeNeverRecharge + "|" + charge.CodeDeeplyFlat + "|" + charge.CodeOldDeadCell
)

// cutoffHazards are lithium packs, and a few others, that nothing saves in time.
func cutoffHazards() []hazard {
	return []hazard{
		{
			name: "tool pack without a cutoff", base: "lithium", set: "-cutoff", least: danger, codes: cutNone,
			why: "the protection often sits in the tool; nothing else saves the cells, then the charger sets them on fire", from: "owner's table: under-voltage cut in the pack in 2 of 7 makes (copy); " + overDeep,
		},
		{
			name: "tool pack by labels without a cutoff", base: "swap", set: "", least: danger, codes: cutNone,
			why: "the same; not told counts as none", from: "owner's table: under-voltage cut in the pack in 2 of 7 makes (copy)",
		},
		{
			name: "three lithium cells in a 12 V vehicle without a cutoff", base: "labels", set: "pack.chemistry=li-ion; pack.label=11.1 V 5 Ah Li-ion", least: danger, codes: cutNone,
			why: "a 12 V vehicle drives on at 7 V", from: overDeep,
		},
		{
			name: "LiFePO4 without a cutoff", base: "iron", set: "-cutoff; pack.watches_cells=false", least: danger, codes: cutNone,
			why: "nothing disconnects it", from: ironSheets,
		},
		{
			name: "LiFePO4 of which nobody told a cutoff", base: "iron", set: "-cutoff", least: fixFirst, codes: cutNone,
			why: "most watch their cells themselves: that this one does not is a guess", from: ironSheets,
		},
		{
			name: "LiFePO4 whose label names electronics", base: "iron", set: "-cutoff; pack.label=12.8 V 10 Ah LiFePO4 with BMS", least: fixFirst, codes: cutNone,
			why: "some are inside, and nobody told at what they switch off", from: ironSheets,
		},
		{
			name: "ten lithium cells in a 24 V vehicle without a cutoff", base: "labels24", set: "pack.chemistry=li-ion; pack.label=36 V 5 Ah", least: danger, codes: cutNone,
			why: "the same with more cells", from: overDeep,
		},
		{
			name: "two parallel tool packs without a cutoff", base: "lithium", set: "-cutoff; pack.joined=parallel", least: danger, codes: cutNone,
			why: "the same twice", from: overDeep,
		},
		{
			name: "a module that only draws current", base: "lithium", set: "-cutoff.module.opens_at; -cutoff.module.delay", least: danger, codes: cutNone,
			why: "a switch without a low-voltage setting cuts nothing off", from: practice,
		},
		{
			name: "five cells cut off at 10.5 V, the lead-acid setting", base: "lithium", set: "cutoff.module.opens_at=10.5 V", least: danger, codes: cutLow,
			why: "2.1 V per cell, and less for the weakest", from: overDeep,
		},
		{
			name: "five cells cut off at 10 V", base: "lithium", set: "cutoff.module.opens_at=10 V", least: danger, codes: cutLow,
			why: "2.0 V per cell", from: overDeep,
		},
		{
			name: "five cells cut off at 7.5 V", base: "lithium", set: "cutoff.module.opens_at=7.5 V", least: danger, codes: cutLow,
			why: "1.5 V per cell: never to be charged again", from: overDeep,
		},
		{
			name: "five cells cut off at half a volt", base: "lithium", set: "cutoff.module.opens_at=0.5 V", least: danger, codes: cutLow,
			why: "as good as none", from: overDeep,
		},
		{
			name: "five cells cut off at 12.4 V", base: "lithium", set: "cutoff.module.opens_at=12.4 V", least: fixFirst, codes: cutLow + "|" + weak,
			why: "2.48 V on average: the weakest cell is far below", from: weakCell,
		},
		{
			name: "tool pack whose own protection is set to 5 V", base: "lithium", set: "-cutoff; cutoff.pack.opens_at=5 V", least: danger, codes: cutLow,
			why: "one volt per cell", from: overDeep,
		},
		{
			name: "four cells behind a controller that cuts at 9 V", base: "lithium", set: "-cutoff; cutoff.controller.opens_at=9 V; pack.label=14.8 V 5 Ah; pack.cells_in_series=4; -pack.strings; charger.voltage=16.8 V", least: danger, codes: cutLow,
			why: "2.25 V per cell, and less for the weakest", from: overDeep,
		},
		{
			name: "ten cells cut off at 21 V, the lead-acid setting", base: "lithium", set: "pack.label=36 V 5 Ah; pack.cells_in_series=10; -pack.strings; controller.max_voltage=60 V; fuse.max_voltage=58 V; charger.voltage=42 V; cutoff.module.opens_at=21 V", least: danger, codes: cutLow,
			why: "2.1 V per cell", from: overDeep,
		},
		{
			name: "LiFePO4 cut off at 4 V", base: "iron", set: "cutoff.module.opens_at=4 V", least: danger, codes: cutLow,
			why: "one volt per cell", from: ironSheets,
		},
		{
			name: "LiFePO4 cut off at 7 V", base: "iron", set: "cutoff.module.opens_at=7 V", least: fixFirst, codes: cutLow + "|" + weak,
			why: "1.75 V per cell, below 2.0 V", from: ironSheets,
		},
		{
			name: "five cells cut off somewhere from 10 to 16.5 V", base: "lithium", set: "cutoff.module.opens_at=10 to 16.5 V", least: fixFirst, codes: cutLow + "|" + weak,
			why: "a third of the range harms the cells", from: overDeep,
		},
		{
			name: "a 24 V cutoff on five cells", base: "lithium", set: "cutoff.module.opens_at=21 V", least: fixFirst, codes: cutoff.CodeAboveFull + "|" + judge.CodeEndsAtOnce + "|" + cutoff.CodeOpensAtLaunch + "|" + cutoff.CodeLaunchTooDeep,
			why: "it opens as soon as the pedal goes down", from: practice,
		},
		{
			name: "a cutoff that waits for an hour", base: "lithium", set: "cutoff.module.delay=1 h", least: danger, codes: useless,
			why: "the pack is ruined long before", from: overDeep,
		},
		{
			name: "a cutoff that waits for ten minutes", base: "lithium", set: "cutoff.module.delay=10 min", least: danger, codes: useless,
			why: "10 minutes at several amperes below the last of the charge drive the cells to nothing", from: overDeep,
		},
		{
			name: "a cutoff without latch that closes a tenth of a volt above", base: "lithium", set: "cutoff.module.opens_at=15 V; cutoff.module.closes_at=15.1 V; cutoff.module.delay=0 s", least: fixFirst, codes: chatters,
			why: "the pack recovers by more at once: the vehicle jerks on and off until the cells are empty", from: "three bench reports of latchless modules are not at hand; " + practice,
		},
		{
			name: "a cutoff without latch that closes half a volt above", base: "lithium", set: "cutoff.module.opens_at=15 V; cutoff.module.closes_at=15.5 V; cutoff.module.delay=1 s", least: fixFirst, codes: chatters,
			why: "cells at 3.0 V under load rest at more than 3.1 V", from: "rest curves of four cells: 3.17 V at 5 % (copy)",
		},
		{
			name: "a block cut off without latch", base: "block", set: "cutoff.module.opens_at=10.5 V; cutoff.module.closes_at=11 V", least: watch, codes: chatters,
			why: "a block at 10.5 V under load comes back to 11.8 V", from: blockSheets,
		},
		{
			name: "a cutoff at 19 V without delay", base: "lithium", set: noConverter + "cutoff.module.opens_at=19 V; cutoff.module.delay=0 s; -controller.current_limit; -controller.ramp", least: fixFirst, codes: cutoff.CodeLaunchTooDeep + "|" + judge.CodeEndsAtOnce + "|" + cutoff.CodeOpensAtLaunch,
			why: "every launch sags below it", from: practice,
		},
		{
			name: "a module that draws 10 mA", base: "lithium", set: "cutoff.module.standby_current=10 mA; controller.standby_current=0 A", least: watch, codes: idle,
			why: "what is left after the cutoff lasts days", from: modulePower,
		},
		{
			name: "a module that draws 50 mA", base: "lithium", set: "cutoff.module.standby_current=50 mA", least: fixFirst, codes: idle,
			why: "hours to ruin once it has opened", from: modulePower,
		},
		{
			name: "a module that draws 83 mA", base: "lithium", set: "cutoff.module.standby_current=83 mA", least: fixFirst, codes: idle,
			why: "two hours to ruin once it has opened", from: modulePower,
		},
		{
			name: "a module that draws 0 to 50 mA", base: "lithium", set: "cutoff.module.standby_current=0 to 50 mA", least: watch, codes: idle,
			why: "most of the range ruins the pack within days", from: modulePower,
		},
		{
			name: "a board that draws 50 mA behind a tool pack without a module", base: "lithium", set: "-cutoff; cutoff.controller.opens_at=16.5 V; controller.standby_current=50 mA", least: fixFirst, codes: idle,
			why: "the controller's cutoff does not disconnect the controller", from: practice,
		},
		{
			name: "NiMH driven until it stops", base: "lithium", set: noConverter + "-cutoff; pack.chemistry=nimh; pack.label=18 V 3 Ah NiMH; -pack.cells_in_series; -pack.strings; -pack.capacity; -charger", least: watch, codes: weak + "|" + cutNone + "|" + judge.CodeToAStandstill,
			why: "the weakest of fifteen cells is driven backwards and vents", from: "VARTA handbook p. 49: reversal damages (copy, mirror)",
		},
		{
			name: "an old tool pack cut off at 12.5 V", base: "lithium", set: "cutoff.module.opens_at=12.5 V; pack.health=60 %", least: fixFirst, codes: cutLow + "|" + weak,
			why: "four cells at 3.1 V leave 0.1 V for the fifth", from: weakCell,
		},
	}
}

// restHazards are packs whose volts, as measured, forbid or warn against the
// next charge.
func restHazards() []hazard {
	rest := func(name, base, volts string, least answer.Level, codes, why, from string) hazard {
		return hazard{name: name, base: base, set: "-pack.charge; measured.rest_voltage=" + volts + "; measured.hours_rested=12 h", least: least, codes: codes, why: why, from: from}
	}
	return []hazard{
		rest("12 V block rests at 0 V", "block", "0 V", danger, deadBlock, "shorted or open: a charger boils what is left", practice),
		rest("12 V block rests at 1 V", "block", "1 V", danger, deadBlock, "six dead cells", practice),
		rest("12 V block rests at 2 V", "block", "2 V", danger, deadBlock, "dead cells: charged, the live ones boil and gas", practice),
		rest("12 V block rests at 4 V", "block", "4 V", danger, deadBlock, "two live cells at most: the charger's 14.7 V all fall on these", practice),
		rest("12 V block rests at 6 V", "block", "6 V", fixFirst, deadBlock, "half its cells are dead or it lay flat for months", blockStore),
		rest("12 V block rests at 8 V", "block", "8 V", fixFirst, deadBlock, "two dead cells", practice),
		rest("12 V block rests at 10.4 V", "block", "10.4 V", fixFirst, deadBlock, "one dead cell: five live ones at 2.1 V", "arithmetic on 2.1 V per full cell; "+practice),
		rest("12 V block by labels rests at 2 V", "labels", "2 V", danger, deadBlock, "as above, with labels only", practice),
		rest("gel block rests at 2 V", "block", "2 V; pack.chemistry=gel; charger.made_for=gel", danger, deadBlock, "as above", practice),
		rest("6 V block rests at 1 V", "labels6", "1 V", danger, deadBlock, "three cells at a third of a volt", practice),
		rest("6 V block rests at 4.2 V", "labels6", "4.2 V", fixFirst, deadBlock, "one dead cell of three", practice),
		rest("two 12 V blocks rest at 3 V together", "pair", "3 V", danger, deadBlock, "twelve cells at a quarter of a volt", practice),
		rest("two 12 V blocks rest at 18 V together", "pair", "18 V", fixFirst, deadBlock, "1.5 V per cell: one block is dead or both are ruined", practice),
		rest("12 V block rests at 14.8 V", "block", "14.8 V", fixFirst, charge.CodeOvercharged, "no lead-acid block rests there after 12 hours: it is another battery, perhaps lithium on a lead-acid charger", blockSheets),
		{
			name: "a battery labelled 12 V rests at 25 V", base: "block", set: "-pack.charge; measured.rest_voltage=25 V; measured.hours_rested=12 h", least: danger, codes: wantOvercharged, refused: true,
			why: "it is a 24 V battery, twice the volts of everything", from: blockSheets,
		},
		rest("five lithium cells rest at 0 V", "lithium", "0 V", danger, never, "never to be charged again", overDeep),
		rest("five lithium cells rest at 2 V", "lithium", "2 V", danger, never, "0.4 V per cell", overDeep),
		rest("five lithium cells rest at 5 V", "lithium", "5 V", danger, never, "one volt per cell", overDeep),
		rest("five lithium cells rest at 7 V", "lithium", "7 V", danger, never, "1.4 V per cell", overDeep),
		rest("five lithium cells rest at 8 V", "lithium", "8 V", danger, lowRest, "1.6 V on average leaves the weakest below 1.5 V", overDeep),
		rest("five lithium cells rest at 10 V", "lithium", "10 V", fixFirst, lowRest, "2.0 V per cell: harmed", overDeep),
		rest("five lithium cells rest at 12 V", "lithium", "12 V", fixFirst, lowRest, "2.4 V per cell: harmed", overDeep),
		rest("ten lithium cells rest at 12 V", "lithium", "12 V; pack.label=36 V 5 Ah; pack.cells_in_series=10; -pack.strings; controller.max_voltage=60 V; fuse.max_voltage=58 V; charger.voltage=42 V; cutoff.module.opens_at=33 V", danger, never, "1.2 V per cell", overDeep),
		rest("three lithium cells rest at 4 V", "labels", "4 V; pack.chemistry=li-ion; pack.label=11.1 V 5 Ah Li-ion; cutoff.pack.opens_at=9.6 V", danger, never, "1.3 V per cell", overDeep),
		rest("tool pack by labels rests at 5 V, no charger told", "lithium", "5 V; -charger", danger, never, "somebody will charge it", overDeep),
		rest("five lithium cells rest at 22 V", "lithium", "22 V", danger, wantOvercharged, "4.4 V per cell: overcharged", overFull),
		rest("five lithium cells rest at 23 V", "lithium", "23 V", danger, wantOvercharged, "4.6 V per cell: overcharged, or six cells", overFull),
		rest("five lithium cells rest at 26 V", "lithium", "26 V", danger, wantOvercharged, "5.2 V per cell: another pack or on its way to fire", overFull),
		rest("three lithium cells rest at 14.6 V", "labels", "14.6 V; pack.chemistry=li-ion; pack.label=11.1 V 5 Ah Li-ion; cutoff.pack.opens_at=9.6 V", danger, wantOvercharged, "4.87 V per cell: it was on the lead-acid charger", overFull),
		rest("four LiFePO4 cells rest at 4 V", "iron", "4 V", danger, never, "one volt per cell", ironSheets),
		rest("four LiFePO4 cells rest at 7.6 V", "iron", "7.6 V", fixFirst, lowRest, "1.9 V per cell: below 2.0 V", ironSheets),
		rest("four LiFePO4 cells rest at 16.4 V", "iron", "16.4 V", danger, wantOvercharged, "4.1 V per cell: overcharged, or not LiFePO4", ironSheets),
		{
			name: "five lithium cells at 3 V under load", base: "lithium", set: "measured.loaded_voltage=3 V; measured.loaded_current=8 A", least: danger, codes: wantSags,
			why: "0.6 V per cell while it drives: some run backwards", from: overDeep,
		},
		{
			name: "five lithium cells at 10 V under load", base: "lithium", set: "measured.loaded_voltage=10 V; measured.loaded_current=8 A", least: fixFirst, codes: wantSags + "|" + judge.CodeReadingsDisagree,
			why: "2.0 V per cell while it drives, below every cell's end", from: cellSheets,
		},
		{
			name: "12 V block at 5 V under load", base: "block", set: "measured.loaded_voltage=5 V; measured.loaded_current=8 A", least: fixFirst, codes: wantSags + "|" + judge.CodeReadingsDisagree,
			why: "no block at 8 A is above 7.8 V empty and below it sound", from: blockSheets,
		},
		{
			name: "24 V pair at 11 V under load", base: "pair", set: "measured.loaded_voltage=11 V; measured.loaded_current=10 A", least: fixFirst, codes: wantSags + "|" + judge.CodeReadingsDisagree,
			why: "one block gives nothing and is driven backwards", from: blockSheets,
		},
		{
			name: "lithium cells in nothing but foil", base: "lithium", set: "pack.housing=bare cells", least: fixFirst, codes: judge.CodeBareCells,
			why: "what pierces one sets all of them on fire", from: practice,
		},
		{
			name: "a block with liquid acid under a child", base: "block", set: "pack.label=12 V 14 Ah flooded", least: danger, codes: judge.CodeAcidSpills,
			why: "a children's vehicle tips over, and the acid runs out", from: "49 CFR 173.159 (from memory)",
		},
		{
			name: "one whose chemistry is told so", base: "block", set: "pack.chemistry=flooded", least: danger, codes: judge.CodeAcidSpills,
			why: "the same, in the other place", from: "49 CFR 173.159 (from memory)",
		},
		{
			name: "a car's battery under a child", base: "block", set: "pack.label=12 V 45 Ah car battery", least: fixFirst, codes: judge.CodeAcidSpills,
			why: "it mostly has liquid acid; sealed ones say AGM", from: practice,
		},
		{
			name: "a tool pack of a fifth of its capacity", base: "lithium", set: "pack.health=20 %", least: fixFirst, codes: judge.CodePackWorn,
			why: "lithium that lost four fifths is not to be trusted", from: "pinacia.com storage batteries: replace below 80 % (copy); lithium: " + practice,
		},
		{
			name: "4 minutes out of a new 7 Ah block at 3 A, measured", base: "bench", set: "measured.ride_time=4 min", least: fixFirst, codes: judge.CodePackWorn + "|" + judge.CodeReadingsDisagree,
			why: "two hours are due: the label or the block is bad", from: blockSheets,
		},
	}
}
