package trials_test

import (
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/wiring"
)

// typedHazards are setups as people type them, each with the level that was
// written down before it was tried.
func typedHazards() []hazard {
	return []hazard{
		{name: "two 12 V blocks in series on the old pedal switch", base: "labels", set: "pack.label=24 V (two 12 V) 7 Ah; controller.kind=contacts", least: danger, codes: welds, why: "twice the volts on the contacts", from: cpscWeld},
		{name: "three 6 V blocks on the old 12 V pedal switch", base: "labels", set: "pack.label=18 V (three 6 V) 4.5 Ah; controller.kind=contacts", least: danger, codes: welds, why: "18 V on contacts for 12 V is the recalled system", from: cpscWeld},
		{name: "three 12 V blocks on 24 V contacts", base: "labels24", set: "pack.label=36 V (three 12 V) 7 Ah; controller.kind=contacts", least: danger, codes: welds, why: "36 V on contacts for 24 V", from: cpscWeld},
		{name: "a 12 V block on 6 V contacts", base: "labels6", set: "pack.label=12 V 7 Ah; controller.kind=contacts", least: danger, codes: welds, why: "twice the volts", from: cpscWeld},
		{name: "7 km/h claimed, driven at two", base: "labels", set: "vehicle.claimed_speed=7 km/h; rider.age=2 years; rider.mass=12 kg", least: fixFirst, codes: drive.CodeTooYoung, why: "nothing of that speed is made for under three", from: speedClaims},
		{name: "13 km/h claimed, driven at three", base: "labels24", set: "vehicle.claimed_speed=13 km/h; rider.age=3 years; rider.mass=15 kg", least: fixFirst, codes: drive.CodeFastForARideOn, why: "what is made for three reaches 8 km/h", from: speedClaims},
		{name: "a child of one at the pedal", base: "labels6", set: "rider.age=1 years; rider.mass=10 kg", least: fixFirst, codes: drive.CodeTooYoung, why: "the slowest are sold from 18 months", from: speedClaims},
		{name: "a slope of a quarter", base: "labels", set: "vehicle.slope=25 %", least: fixFirst, codes: wantSteep, why: "steeper than any that toys to sit on are tried on", from: tipping},
		{name: "an adaptor that never stops, from elsewhere", base: "labels", set: "charger.label=15 V 500 mA DC; charger.made_for=lead-acid; charger.stops=never; charger.jack=vehicle", least: fixFirst, codes: charge.CodeNeverStops, why: "it gasses the block dry", from: blockSheets},
		{name: "a laptop supply on the block", base: "labels", set: "charger.label=19 V 3.4 A DC; charger.jack=terminals", least: danger, codes: charge.CodePowerSupply, why: "3.2 V per cell without end", from: blockSheets},
		{name: "a 6 V charger on a 12 V block", base: "labels", set: "charger.label=6 V 500 mA DC; charger.made_for=lead-acid; charger.jack=vehicle", least: fixFirst, codes: charge.CodeVoltsTooLow, why: "it charges nothing", from: blockSheets},
		{name: "a 12 V charger on a 6 V block", base: "labels6", set: "charger.label=12 V 1 A DC; charger.made_for=lead-acid; charger.jack=vehicle", least: danger, codes: charge.CodeVoltsTooHigh, why: "twice the volts boil it", from: cpscCharger},
		{name: "put away for the winter a third full", base: "labels", set: "storage.from=2026-11-01; storage.until=2027-03-31; pack.charge=30 %", least: fixFirst, codes: charge.CodeStoredNotFull, why: "it sulfates", from: blockStore},
		{name: "a block at 10.4 V in the morning", base: "labels", set: "measured.rest_voltage=10.4 V; measured.hours_rested=12 h", least: fixFirst, why: "12.7 V less one cell", from: blockSheets},
		{name: "a charged block that falls to 8 V", base: "labels", set: "measured.loaded_voltage=8 V; measured.loaded_current=5 A; measured.rest_voltage=12.7 V; measured.hours_rested=12 h", least: fixFirst, codes: wantSags, why: "makers end at 9.3 V at this rate, and it was full", from: blockSheets},
		{name: "40 A measured on 16 AWG", base: "labels", set: "measured.loaded_current=40 A; measured.loaded_voltage=10 V; wire.gauge=16 AWG; wire.insulation=80 C; fuse.form=small blade; fuse.rating=30 A", least: danger, codes: wiring.CodeWireOverloaded, why: "twice its ampacity for minutes", from: cfrWire},
		{name: "30 A on 20 AWG", base: "labels", set: "fuse.form=small blade; fuse.rating=30 A; wire.gauge=20 AWG; wire.insulation=80 C", least: danger, codes: wiring.CodeFuseAboveWire, why: "three times its ampacity", from: cfrFuse},
		{name: "no fuse on an old vehicle", base: "labels", set: "fuse.form=none; measured.top_speed=5 km/h", least: danger, codes: noFuse, why: "a short makes the wire glow", from: cpscFire},
		{name: "a 25.9 V lithium pack for two 12 V blocks, nothing told", base: "labels24", set: "pack.chemistry=li-ion; pack.label=25.9 V 6 Ah Li-ion", least: danger, codes: cutNone, why: "nothing disconnects it", from: overDeep},
		{name: "a tool pack on a 12 V board, nothing told", base: "board", set: "pack.chemistry=li-ion; pack.label=20 V max 4 Ah", least: danger, codes: cutNone, why: "nothing disconnects it, and 21 V on a board for 12 V", from: overDeep},
		{name: "a 40 V max tool pack on 12 V", base: "swap", set: "pack.label=40 V max 4 Ah", least: danger, codes: cutNone, why: "42 V, and nothing disconnects it", from: toyVolts},
		{name: "a 12 V max tool pack, nothing told", base: "swap", set: "pack.label=12 V max 6 Ah", least: danger, codes: cutNone, why: "nothing disconnects it", from: overDeep},
		{name: "a tool pack on the old pedal switch", base: "swap", set: "controller.kind=contacts", least: danger, codes: welds, why: "18 V on contacts for 12 V", from: cpscWeld},
		{name: "a tool pack with a cutoff and no fuse", base: "swap", set: "cutoff.controller.opens_at=15 V; fuse.form=none", least: danger, codes: noFuse, why: "more than 100 A into a short", from: cfrFuse},
		{name: "a lithium charger of another maker on a tool pack", base: "lithium", set: foreign + "charger.made_for=li-ion; charger.label=21 V 2 A DC; -charger.voltage; -charger.current; charger.stops=by itself; charger.jack=terminals", least: fixFirst, codes: charge.CodeForeignCharger, why: "past the pack's own electronics", from: toolPacks},
		{name: "a 12 V charger on a 24 V pair", base: "pair", set: "charger.voltage=14.7 V", least: fixFirst, codes: charge.CodeVoltsTooLow, why: "it charges nothing", from: blockSheets},
		{name: "a 12 V cutoff on a 24 V pair", base: "pair", set: "cutoff.module.opens_at=10.5 V", least: fixFirst, codes: cutoff.CodeBelowHarm, why: "it opens at 0.9 V per cell", from: blockSheets},
		{name: "a lead-acid charger on LiFePO4", base: "iron", set: "charger.made_for=agm; charger.voltage=14.7 V", least: fixFirst, codes: charge.CodeWrongChemistry, why: "it floats and equalises", from: ironSheets},
		{name: "a block charged in the frost", base: "block", set: "outing.air=-10 C; outing.charged_at=-10 C; pack.temperature=-10 C", least: fixFirst, codes: charge.CodeTooCold, why: "below the sheets' 0 C", from: blockSheets},
	}
}

// typedSound are healthy vehicles and changes as people type them.
func typedSound() []soundRig {
	const tool = "fuse.form=small blade; fuse.distance_from_pack=100 mm; "
	return []soundRig{
		{"a block that rests at 12.7 V", "labels", fuse25 + "measured.rest_voltage=12.7 V; measured.hours_rested=10 h", "full", blockSheets},
		{"25 minutes from a block of three years", "labels", "measured.ride_time=25 min; pack.age=3 years", "old, and used", practice},
		{"a light child of three on grass", "labels", "rider.mass=14 kg; rider.age=3 years; vehicle.ground=short grass", asMade, claims},
		{"9 Ah in the place of 7 Ah", "labels", fuse25 + "pack.label=12 V 9 Ah; original.pack.label=12 V 7 Ah; original.pack.chemistry=agm", "the same kind and volts", practice},
		{"two 7 Ah blocks side by side", "labels", fuse25 + "pack.label=12 V 14 Ah (two 12 V 7 Ah in parallel)", "the same volts, longer ride", practice},
		{"four small motors behind a board", "labels", "motors.count=4; motors.can=390; vehicle.has_board=true; fuse.form=small blade; fuse.rating=10 A", asMade, claims},
		{"a child of eight on a two-seater", "labels", "rider.mass=30 kg; rider.age=8 years; vehicle.seats=2", asMade, riderLimit},
		{"a slope of 8 % on the way", "labels", "vehicle.slope=8 %", "half of what toys to sit on are tried on", tipping},
		{"the adaptor of the vehicle itself, as printed", "labels", "charger.label=12 V 1 A DC; charger.made_for=lead-acid; charger.jack=vehicle", asMade, practice},
		{"a vehicle's own adaptor without an end", "labels", "charger.label=15 V 500 mA DC; charger.made_for=lead-acid; charger.stops=never; charger.jack=vehicle; charger.came_with_pack=true", "its manual gives the hours", practice},
		{"a block at 12.1 V in the morning", "labels", "measured.rest_voltage=12.1 V; measured.hours_rested=12 h", "charge it", blockSheets},
		{"15 A on 18 AWG", "labels", "fuse.form=small blade; fuse.rating=15 A; wire.gauge=18 AWG; wire.insulation=80 C", "at most 150 % of its ampacity", cfrFuse},
		{"the adaptor of a 6 V vehicle", "labels6", "charger.label=6 V 500 mA DC; charger.made_for=lead-acid; charger.came_with_pack=true; charger.jack=vehicle", asMade, practice},
		{"a 6 V block at 6.3 V", "labels6", "measured.rest_voltage=6.3 V; measured.hours_rested=8 h", "charged", blockSheets},
		{"5 km/h claimed, two years", "labels6", "vehicle.claimed_speed=5 km/h; rider.age=2 years", "sold from 18 months", speedClaims},
		{"a full pair of blocks", "labels24", "pack.label=24 V (two 12 V) 7 Ah; measured.rest_voltage=25.6 V; measured.hours_rested=12 h", "2.13 V per cell", blockSheets},
		{"a hot day for two on 24 V", "labels24", "outing.air=38 C", asMade, practice},
		{"a parent with the remote control, 4 km/h, two years", "board", "vehicle.remote_control=true; vehicle.claimed_speed=4 km/h; rider.age=2 years; rider.mass=12 kg", "the parent drives", practice},
		{"a frosty day", "board", "outing.air=-5 C", asMade, practice},
		{"a tool pack done properly, cells watched", "swap", tool + "fuse.rating=30 A; cutoff.pack.opens_at=15 V; pack.watches_cells=true; controller.converter_voltage=12 V; controller.converter_limit=60 A; wire.gauge=12 AWG; wire.insulation=105 C; controller.kind=chopper; controller.current_limit=25 A; controller.ramp=1 s; controller.max_voltage=30 V; controller.reverses=after a stop", "converter, limit, fuse, cutoff", practice},
		{"a 12 V max tool pack, done properly", "swap", tool + "fuse.rating=20 A; pack.label=12 V max 6 Ah; cutoff.pack.opens_at=9 V; pack.watches_cells=true; wire.gauge=14 AWG; wire.insulation=80 C", "the old volts", practice},
		{"three hours wanted", "lithium", "rider.mass=25 kg; outing.wanted=3 h", "it ends earlier, no harm", practice},
		{"a look-alike tool pack on its own charger", "lithium", "pack.maker=look-alike", "holds half of its label", practice},
		{"a frosty day with a warm tool pack", "lithium", "outing.air=0.5 C; pack.temperature=15 C", "discharge from -20 C", cellSheets},
		{"70 minutes measured", "block", "pack.label=12 V 7.2 Ah; measured.ride_time=70 min", "sellers say 45 to 75", practice},
		{"a small charger", "block", "charger.current=0.3 A", "slow, no harm", blockSheets},
		{"a cutoff that closes again at 12.5 V", "block", "cutoff.module.opens_at=10.8 V; cutoff.module.closes_at=12.5 V", "above what a flat block comes back to", practice},
		{"a block without a cutoff, as it was", "block", "-cutoff; original.pack.chemistry=agm; original.pack.label=12 V 7 Ah", asMade, practice},
		{"20 A on 18 AWG for 105 C", "block", "fuse.rating=20 A; wire.gauge=18 AWG; wire.insulation=105 C", "150 % of its ampacity", cfrFuse},
		{"long grass", "proper", "vehicle.ground=long grass", "slower", practice},
		{"done properly, a child of three", "proper", "rider.age=3 years; rider.mass=15 kg", "5 km/h", speedClaims},
		{"done properly, a pack of three years", "proper", "pack.age=3 years; -pack.health", "shorter ride", practice},
	}
}
