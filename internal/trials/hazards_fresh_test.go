package trials_test

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/wiring"
)

// Whole vehicles as their owners write them down, on the rig that holds nothing.
const (
	tractor12 = "vehicle.design_voltage=12 V; motors.count=2; motors.can=550; rider.age=5 years; rider.mass=42 lb; vehicle.ground=asphalt; "
	jeep24    = "vehicle.design_voltage=24 V; motors.count=2; motors.can=775; rider.age=7 years; rider.mass=55 lb; vehicle.seats=2; vehicle.ground=packed dirt; "
	small6    = "vehicle.design_voltage=6 V; motors.count=1; motors.can=380; rider.age=3 years; rider.mass=31 lb; "
	agm7      = "pack.chemistry=agm; pack.label=12 V 7.2 Ah; "
	tool5     = "pack.chemistry=li-ion; pack.label=20 V max 5 Ah; original.pack.chemistry=agm; original.pack.label=12 V 7.2 Ah; "
	phosphate = "pack.chemistry=lifepo4; pack.label=12.8 V 12 Ah LiFePO4; original.pack.chemistry=agm; original.pack.label=12 V 7.2 Ah; "
	ownBoard  = "cutoff.pack.opens_at=10 V; pack.watches_cells=true; "
	blade20   = "fuse.form=small blade; fuse.rating=20 A; fuse.distance_from_pack=10 cm; wire.gauge=14 AWG; wire.insulation=105 C; "
	blade30   = "fuse.form=small blade; fuse.rating=30 A; fuse.distance_from_pack=10 cm; wire.gauge=12 AWG; wire.insulation=105 C; "
	soft      = "controller.kind=chopper; controller.current_limit=20 A; controller.ramp=1 s; controller.max_voltage=36 V; controller.continuous_current=40 A; controller.reverses=after a stop; "
	toolDone  = tool5 + blade30 + soft + "cutoff.pack.opens_at=15 V; pack.watches_cells=true; controller.converter_voltage=12 V; controller.converter_limit=40 A; vehicle.accessories=own supply; "
)

// freshHazards are whole setups whose levels were written down before any was tried.
func freshHazards() []hazard {
	row := func(name, set string, least answer.Level, codes, why, from string) hazard {
		return hazard{name: name, base: blank, set: set, least: least, codes: codes, why: why, from: from}
	}
	return []hazard{
		row("a tool pack clipped onto a tractor with its pedal switch", tractor12+tool5+"controller.kind=contacts; fuse.form=none", danger, welds+"|"+wiring.CodeNoFuse, "21 V on contacts for 12 V, and no fuse", cpscWeld),
		row("iron phosphate of 12.8 V in a 6 V vehicle", small6+"controller.kind=contacts; pack.chemistry=lifepo4; pack.label=12.8 V 6 Ah LiFePO4; "+ownBoard+blade20, danger, welds, "more than twice the volts on the switch", cpscWeld),
		row("30 A on a bell wire", tractor12+agm7+"fuse.form=small blade; fuse.rating=30 A; wire.gauge=20 AWG; wire.insulation=60 C", danger, wiring.CodeFuseAboveWire, "the copper burns first", cfrFuse),
		row("80 A on 12 AWG", tractor12+toolDone+"fuse.form=large blade; fuse.rating=80 A", danger, wiring.CodeFuseAboveWire, "150 % of 45 A are 68 A", cfrFuse),
		row("28 A measured on 18 AWG", tractor12+agm7+"fuse.form=small blade; fuse.rating=30 A; wire.gauge=18 AWG; wire.insulation=80 C; measured.loaded_current=28 A", danger, wiring.CodeWireOverloaded+"|"+wiring.CodeFuseAboveWire, "nearly twice the ampacity of 15 A, and the fuse holds", cfrWire),
		row("a fuse a yard from the pack", tractor12+toolDone+"fuse.distance_from_pack=36 in", fixFirst, wiring.CodeFuseTooFar, "five times the 7 inches", cfrFuse),
		row("a breaker alone on a tool pack", tractor12+toolDone+"fuse.form=auto-reset breaker; fuse.rating=20 A", fixFirst, wiring.CodeBreakerAlone, "it goes on closing into the fault", breakerAlone),
		row("bell wire and a tool pack, no fuse told", tractor12+tool5+soft+"cutoff.pack.opens_at=15 V; wire.gauge=24 AWG", fixFirst, wiring.CodeFuseUnknown+"|"+wiring.CodeWireOverloaded, "the fuse left with the old battery", cpscFire),
		row("9 mph measured at three", tractor12+agm7+"rider.age=3 years; rider.mass=31 lb; measured.top_speed=9 mph", danger, drive.CodeFastForARideOn, "14.5 km/h; nothing is made for that", speedClaims),
		row("7 mph measured at two", small6+"pack.chemistry=agm; pack.label=6 V 12 Ah; rider.age=2 years; rider.mass=27 lb; measured.top_speed=7 mph", danger, drive.CodeTooYoung+"|"+drive.CodeFastForARideOn, "11 km/h", speedClaims),
		row("20 km/h measured at six", jeep24+"pack.chemistry=agm; pack.label=24 V (two 12 V) 9 Ah; rider.age=6 years; measured.top_speed=20 km/h", danger, drive.CodeFastForARideOn, "half as fast again as the fastest that is made", speedClaims),
		row("a drive of 10 % and no brake", tractor12+agm7+"vehicle.slope=10 %; vehicle.brake=none", danger, drive.CodeRollsBack, "it rolls away with the child", freeWheel),
		row("a bank of one in five", tractor12+agm7+"vehicle.slope=20 %; vehicle.brake=motors", fixFirst, wantSteep+"|"+stalled, "steeper than the 10 degrees of the test", tipping),
		row("130 lb on a 6 V vehicle", small6+"pack.chemistry=agm; pack.label=6 V 12 Ah; rider.mass=130 lb; rider.age=13 years", fixFirst, wantOverload, "twice what any of its class allows", riderLimit),
		row("a block of 2.9 V", tractor12+agm7+"measured.rest_voltage=2.9 V; measured.hours_rested=2 days", danger, charge.CodeDeadBlock, "it cannot come back", blockStore),
		row("four lithium cells of 9.2 V", tractor12+"pack.chemistry=li-ion; pack.label=14.8 V 5 Ah Li-ion; cutoff.pack.opens_at=12 V; measured.rest_voltage=9.2 V; measured.hours_rested=1 day", danger, charge.CodeTooLow, "2.3 V each", overDeep),
		row("iron phosphate that rests at 6.9 V", tractor12+"pack.chemistry=lifepo4; pack.label=12.8 V 12 Ah LiFePO4; "+ownBoard+"measured.rest_voltage=6.9 V; measured.hours_rested=1 day", danger, charge.CodeTooLow+"|"+charge.CodeNeverRecharge, "1.7 V each", ironSheets),
		row("a tool pack of 22.1 V", tractor12+"pack.chemistry=li-ion; pack.label=20 V max 5 Ah; cutoff.pack.opens_at=15 V; measured.rest_voltage=22.1 V; measured.hours_rested=6 h", danger, wantOvercharged, "4.42 V each", overFull),
		row("a pair of 12.9 and 11.0 V", jeep24+"pack.chemistry=agm; pack.label=12 V 9 Ah; pack.joined=series; measured.rest_voltage=12.9 V; measured.second_rest_voltage=11.0 V; measured.hours_rested=1 day", fixFirst, battery.CodeSeriesUnequalCharge, "one is empty and is driven backwards", weakCell),
		row("an old block behind a new one", jeep24+"pack.chemistry=agm; pack.label=12 V 9 Ah; pack.health=100 %; pack.joined=series; pack.second.label=12 V 9 Ah; pack.second.health=40 %", fixFirst, battery.CodeUnlikePacks+"|"+battery.CodeSeriesUnequalCharge, "the old one is emptied and driven backwards", toyMixed),
		row("tool packs of 20.5 and 16.5 V side by side", tractor12+"pack.chemistry=li-ion; pack.label=20 V max 5 Ah; pack.joined=parallel; cutoff.pack.opens_at=15 V; measured.rest_voltage=20.5 V; measured.second_rest_voltage=16.5 V", danger, battery.CodeParallelEqualising, "4 V over a tenth of an ohm: 40 A", equalising),
		row("a 12.6 V lithium charger on a block", tractor12+agm7+"charger.label=12.6 V 2 A DC; charger.made_for=li-ion", fixFirst, charge.CodeWrongChemistry+"|"+charge.CodeVoltsTooLow, "made for three lithium cells", practice),
		row("a lead-acid charger on iron phosphate", tractor12+phosphate+ownBoard+blade20+"charger.label=14.7 V 2 A DC; charger.made_for=lead-acid; charger.jack=terminals", fixFirst, charge.CodeWrongChemistry, "it floats and equalises", ironSheets),
		row("iron phosphate charged at 10 F", tractor12+phosphate+ownBoard+blade20+"charger.label=14.6 V 2 A DC; charger.made_for=lifepo4; charger.jack=pack; outing.air=10 F; outing.charged_at=10 F; pack.temperature=10 F", danger, charge.CodeTooCold, "-12 C: lithium plates out", gates),
		row("a tool pack charged in a shed of 136 F", tractor12+toolDone+"charger.came_with_pack=true; charger.jack=pack; outing.air=136 F; outing.charged_at=136 F; pack.temperature=136 F", danger, charge.CodeTooHot, "58 C", gates),
		row("a bell transformer on a block", tractor12+agm7+"charger.label=AC 12 V 1 A", danger, charge.CodeGivesAC, "alternating current", cpscCharger),
		row("a plug with its minus inside", tractor12+agm7+"charger.label=14.4 V 1 A DC centre negative; charger.made_for=lead-acid; charger.jack_polarity=centre positive", danger, charge.CodePolarityReversed, "backwards", practice),
		row("15.5 V on gel", tractor12+"pack.chemistry=gel; pack.label=12 V 9 Ah; charger.label=15.5 V 1 A DC; charger.made_for=lead-acid; charger.stops=never", fixFirst, charge.CodeVoltsTooHigh, "2.58 V per cell for ever", blockSheets),
		row("2 A without end into nickel", tractor12+"pack.chemistry=nimh; pack.label=12 V 4.5 Ah NiMH; charger.label=14.5 V 2 A DC; charger.made_for=nimh; charger.stops=never", fixFirst, charge.CodeNeverStops, "0.4 C: it heats once it is full", practice),
		row("a tool pack charged aboard while it drives", tractor12+toolDone+"charger.label=21 V 2 A DC; charger.made_for=li-ion; charger.jack=terminals; charger.blocks_driving=false", danger, charge.CodeDrivesPlugged, "charger and cutoff work against each other", toyCharging),
		row("12 V for five lithium cells", tractor12+tool5+blade30+soft+"cutoff.module.opens_at=12 V; cutoff.module.delay=2 s", danger, cutoff.CodeBelowHarm, "2.4 V each", overDeep),
		row("iron phosphate of which is told that nothing watches its cells", tractor12+phosphate+blade20+"pack.watches_cells=false", danger, cutoff.CodeNone, "nothing disconnects it", overDeep),
		row("iron phosphate and no word of its board", tractor12+phosphate+blade20, fixFirst, cutoff.CodeNone, "most have one, so that it is a guess that this one has not", overDeep),
		row("a cutoff that draws 83 mA on 2 Ah", tractor12+tool5+"pack.label=20 V max 2 Ah; "+blade30+soft+"cutoff.module.opens_at=16 V; cutoff.module.delay=2 s; cutoff.module.standby_current=83 mA", danger, cutoff.CodeIdleWeek, "what is left lasts hours", modulePower),
		row("a winter on a board of 30 mA", tractor12+agm7+"vehicle.has_board=true; controller.standby_current=30 mA; storage.from=2026-10-15; storage.until=2027-04-01; storage.connected=true", fixFirst, charge.CodeStoredConnected, "7 Ah last ten days", "Ah over A (computed)"),
		row("a tool pack kept at 70 C", tractor12+toolDone+"storage.from=2026-06-15; storage.until=2026-09-01; storage.temperature=70 C", fixFirst, wantStoredHot, "above the sheets' 60 C", cellSheets),
		row("a 16 V controller on a tool pack", tractor12+tool5+blade30+"controller.kind=chopper; controller.max_voltage=16 V; cutoff.pack.opens_at=15 V", danger, boardVolts, "21 V on 16 V", practice),
		row("a converter for 10 A", tractor12+toolDone+"controller.converter_limit=10 A", fixFirst, drive.CodeConverterTooSmall+"|"+drive.CodeCannotStart+"|"+judge.CodeCannotKeepGoing, "two such motors start with several times that", practice),
		row("lights and radio of a tractor on a tool pack", tractor12+toolDone+"vehicle.accessories=on the pack", fixFirst, drive.CodeAccessoryVolts, "21 V on what is made for 12 V", practice),
		row("36 V on 24 V contacts", jeep24+"controller.kind=contacts; pack.chemistry=li-ion; pack.label=36 V 10 Ah Li-ion; cutoff.pack.opens_at=30 V", danger, welds, "42 V full", cpscWeld),
		row("two tool packs in a row behind a 32 V fuse", jeep24+"pack.chemistry=li-ion; pack.label=20 V max 5 Ah; pack.joined=series; cutoff.pack.opens_at=15 V; fuse.form=small blade; fuse.rating=30 A; fuse.max_voltage=32 V", fixFirst, wiring.CodeFuseVoltage, "42 V", blade),
		row("a block that falls to 9.2 V from 12.7", tractor12+agm7+"measured.rest_voltage=12.7 V; measured.hours_rested=12 h; measured.loaded_voltage=9.2 V; measured.loaded_current=8 A", watch, judge.CodePackWorn, "full, and yet far down at 1.1 C: worn out, in a vehicle as it was made", blockSheets),
		row("a block that falls to 7.5 V from 12.7", tractor12+agm7+"measured.rest_voltage=12.7 V; measured.hours_rested=12 h; measured.loaded_voltage=7.5 V; measured.loaded_current=8 A", fixFirst, wantSags+"|"+disagree, "full, and below its maker's end at 1.1 C, 1.30 V a cell", blockSheets),
		row("six minutes from a new 12 Ah block", tractor12+"pack.chemistry=agm; pack.label=12 V 12 Ah; pack.age=new; measured.ride_time=6 min", fixFirst, disagree, "it would have to draw 70 A all the time", "Peukert's law (computed)"),
		row("a motor of 275 F", tractor12+agm7+"measured.motor_temperature=275 F", fixFirst, drive.CodePlasticSoftens, "135 C: gears and end bells are soft", motorHeat),
		row("a block of 65 C after a drive", tractor12+agm7+"measured.pack_temperature=65 C", fixFirst, battery.CodeTooHot, "above the 54 C of accessible batteries", touching),
		row("a tool pack of 52 C on a mild day", tractor12+"pack.chemistry=li-ion; pack.label=20 V max 5 Ah; "+blade30+soft+"cutoff.pack.opens_at=15 V; pack.watches_cells=true; controller.converter_voltage=12 V; controller.converter_limit=40 A; outing.air=15 C; measured.pack_temperature=52 C", fixFirst, judge.CodeHotterThanDriven, "a load that warms it by some 12 K does not warm it by 37", practice),
		row("75 C read with an old block described beside the new pack", tractor12+toolDone+"measured.pack_temperature=75 C", fixFirst, battery.CodeOldHot+"|"+battery.CodeTooHot, "whichever it was read on, something heats it", toySurface),
		row("a pack that holds 30 %", tractor12+toolDone+"pack.health=30 %", fixFirst, judge.CodePackWorn, "cells that are as good as dead", practice),
		row("a 29.4 V charger on one block", tractor12+agm7+"charger.label=29.4 V 2 A DC; charger.made_for=lead-acid; charger.stops=by itself", danger, charge.CodeVoltsTooHigh, "4.9 V per cell", cpscCharger),
		row("the vehicle's lead-acid plug on a tool pack", tractor12+toolDone+"charger.label=14.4 V 1 A DC; charger.made_for=lead-acid; charger.jack=vehicle", danger, charge.CodeVehicleJack+"|"+charge.CodeWrongChemistry, "past its protection", toolPacks),
		row("three lithium cells in a 12 V tractor, no cutoff told", tractor12+"pack.chemistry=li-ion; pack.label=11.1 V 5 Ah Li-ion; "+blade20, danger, cutoff.CodeNone, "nobody described what disconnects it", overDeep),
		row("five lithium cells of 14.0 V", tractor12+"pack.chemistry=li-ion; pack.label=18 V 4 Ah; cutoff.pack.opens_at=15 V; measured.rest_voltage=14.0 V; measured.hours_rested=12 h", fixFirst, charge.CodeTooLow, "2.8 V each", "TI BQ-type chargers precharge below 3.0 V (memory)"),
		row("gears that make a child of four fast", tractor12+agm7+"rider.age=4 years; rider.mass=36 lb; gears.ratio=30:1; vehicle.wheel_diameter=10 in; motors.rated_voltage=12 V; motors.no_load_speed=12000 rpm; motors.stall_current=60 A", fixFirst, drive.CodeFastForARideOn+"|"+drive.CodeMotorHot, "some 15 km/h by its numbers", speedClaims),
		row("a bank of 30 %", tractor12+agm7+"vehicle.slope=30 %; vehicle.brake=pedal", danger, wantSteep, "17 degrees: it tips", tipping),
		row("18 V of nickel on the pedal switch", tractor12+"pack.chemistry=nimh; pack.label=18 V 3 Ah NiMH; controller.kind=contacts; original.pack.chemistry=agm; original.pack.label=12 V 7.2 Ah", danger, welds, "the recalled system", cpscWeld),
		row("30 A on 0.75 mm2", tractor12+agm7+"fuse.form=small blade; fuse.rating=30 A; wire.area=0.75 mm2; wire.insulation=70 C", danger, wiring.CodeFuseAboveWire, "twice the 15 A of the table", vdeWire),
		row("iron phosphate of 15.2 V", tractor12+"pack.chemistry=lifepo4; pack.label=12.8 V 12 Ah LiFePO4; "+ownBoard+"measured.rest_voltage=15.2 V; measured.hours_rested=6 h", danger, wantOvercharged, "3.8 V each at rest", ironSheets),
		row("an empty block in the frost all winter", tractor12+agm7+"pack.charge=5 %; storage.from=2026-11-01; storage.until=2027-03-01; storage.temperature=5 F", fixFirst, charge.CodeStoredMayFreeze+"|"+charge.CodeStoredNotFull, "flat acid freezes, and it sulfates", blockStore),
		row("a 30 A fuse that opened in two seconds", tractor12+agm7+"measured.fuse_rating=30 A; measured.fuse_seconds=2 s", fixFirst, wantFuseOpened, "more than 60 A flowed", blade),
		row("it stops and comes back by itself", tractor12+agm7+"measured.reset_seconds=20 s; measured.restored_by=itself", fixFirst, wantFuseOpened, "too much current, again and again", breakerAlone),
		row("45 lb of force to pull it along", tractor12+agm7+"measured.pull_force=200 N", fixFirst, stalled+"|"+disagree+"|"+drive.CodeMotorHot, "half of its weight: something rubs", practice),
		row("three children of six on one seat", tractor12+agm7+"rider.count=3; rider.age=6 years; -rider.mass", fixFirst, wantOverload, "60 kg where 30 are usual", riderLimit),
		row("12 mph claimed at four", jeep24+"pack.chemistry=agm; pack.label=24 V 7 Ah; rider.age=4 years; rider.mass=36 lb; vehicle.claimed_speed=12 mph", danger, drive.CodeFastForARideOn, "19 km/h", speedClaims),
		row("six joints of 150 mOhm", tractor12+agm7+"wire.joints=6; wire.joint_resistance=150 mOhm; measured.loaded_current=8 A", fixFirst, wiring.CodeJointHot, "10 W in each", cpscFire),
	}
}

// freshSound are whole setups that an experienced helper would let a child ride.
func freshSound() []soundRig {
	row := func(name, set, why, from string) soundRig { return soundRig{name, blank, set, why, from} }
	const (
		plug   = "charger.label=DC 12 V 1000 mA; charger.made_for=lead-acid; charger.came_with_pack=true; charger.jack=vehicle; "
		ironOn = tractor12 + phosphate + ownBoard + blade20
	)
	return []soundRig{
		row("a 12 V tractor in pounds and inches", tractor12+agm7+"vehicle.wheel_diameter=9 in; vehicle.mass=33 lb", asMade, claims),
		row("its plug, as printed", tractor12+agm7+plug, asMade, practice),
		row("its fuse and wire read", tractor12+agm7+"fuse.form=small blade; fuse.rating=25 A; wire.gauge=16 AWG; wire.insulation=105 C", asMade, claims),
		row("12.6 V after a day", tractor12+agm7+"measured.rest_voltage=12.6 V; measured.hours_rested=24 h", "nearly full", blockSheets),
		row("12.9 V two hours off the charger", tractor12+agm7+"measured.rest_voltage=12.9 V; measured.hours_rested=2 h", "full", blockSheets),
		row("11.5 V at 7 A on the way", tractor12+agm7+"measured.loaded_current=7 A; measured.loaded_voltage=11.5 V", "half empty under load", blockSheets),
		row("50 minutes and 2.8 mph at three", tractor12+agm7+"rider.age=3 years; rider.mass=31 lb; measured.ride_time=50 min; measured.top_speed=2.8 mph", "slow and long", speedClaims),
		row("45 A blocked behind 25 A", tractor12+agm7+"fuse.form=small blade; fuse.rating=25 A; wire.gauge=14 AWG; wire.insulation=80 C; measured.blocked_current=45 A", asMade, practice),
		row("a motor of 70 C", tractor12+agm7+"measured.motor_temperature=70 C", "warm, as motors are", motorHeat),
		row("a block of 35 C on a day of 30 C", tractor12+agm7+"outing.air=30 C; measured.pack_temperature=35 C", "hand-warm", touching),
		row("a day of 35 C", tractor12+agm7+"outing.air=35 C", asMade, practice),
		row("a day of 38 F", tractor12+agm7+"outing.air=38 F", asMade, practice),
		row("a block of two years, 25 minutes", tractor12+agm7+"pack.age=2 years; measured.ride_time=25 min", "old, and used", practice),
		row("two 6 V blocks in a 12 V tractor", tractor12+"pack.chemistry=agm; pack.label=12 V (two 6 V) 4.5 Ah", asMade, claims),
		row("a slope of 5 %, motors that brake", tractor12+agm7+"vehicle.slope=5 %; vehicle.brake=motors", asMade, tipping),
		row("50 lb of 65", tractor12+agm7+"rider.mass=50 lb; rider.age=6 years; vehicle.rated_load=65 lb", "within its label", riderLimit),
		row("15 A breaker, as made", tractor12+agm7+"fuse.form=auto-reset breaker; fuse.rating=15 A; wire.gauge=16 AWG", asMade, practice),
		row("put away full and parted", tractor12+agm7+"pack.charge=100 %; storage.from=2026-10-15; storage.until=2027-03-15; storage.temperature=50 F; storage.connected=false", "full, cool, parted", blockSheets),
		row("gel in the place of AGM, its own charger", tractor12+"pack.chemistry=gel; pack.label=12 V 9 Ah; charger.label=14.1 V 1 A DC; charger.made_for=gel; charger.stops=by itself; charger.jack=terminals; original.pack.chemistry=agm; original.pack.label=12 V 7.2 Ah", "the same volts", blockSheets),
		row("12 Ah of the deep-cycle kind, its fuse told", tractor12+blade20+"pack.chemistry=agm-traction; pack.label=12 V 12 Ah; original.pack.chemistry=agm; original.pack.label=12 V 7.2 Ah", "the same volts", blockSheets),
		row("a soft start and a limit on the old block", tractor12+agm7+soft+blade20+"original.controller.kind=contacts", "softer on everything", practice),
		row("a class of controller, a limit and the old block", tractor12+agm7+blade20+"controller.kind=chopper; controller.class=24 V 40 A; controller.current_limit=20 A; controller.ramp=1 s", "softer on everything", practice),
		row("iron phosphate, its own charger", ironOn+"charger.label=14.6 V 2 A DC; charger.made_for=lifepo4; charger.stops=by itself; charger.jack=pack", "the same volts, own protection, a fuse", ironSheets),
		row("iron phosphate, 12.6 V at 6 A on the way", tractor12+"pack.chemistry=lifepo4; pack.label=12.8 V 12 Ah LiFePO4; "+ownBoard+blade20+"measured.loaded_current=6 A; measured.loaded_voltage=12.6 V", "nearly flat curve", ironSheets),
		row("a tool pack done properly, from nothing", tractor12+toolDone, "converter, limit, cutoff, fuse", practice),
		row("a tool pack done properly, 17.6 V at 5 A on the way", "vehicle.design_voltage=12 V; motors.count=2; motors.can=550; rider.age=5 years; rider.mass=42 lb; vehicle.ground=asphalt; pack.chemistry=li-ion; pack.label=20 V max 5 Ah; "+blade30+soft+"cutoff.pack.opens_at=15 V; pack.watches_cells=true; controller.converter_voltage=12 V; controller.converter_limit=40 A; vehicle.accessories=own supply; measured.loaded_current=5 A; measured.loaded_voltage=17.6 V", "half empty under load", cellSheets),
		row("a 6 V vehicle of 12 Ah, two years, 2.5 mph claimed", small6+"pack.chemistry=agm; pack.label=6 V 12 Ah; rider.age=2 years; rider.mass=27 lb; vehicle.claimed_speed=2.5 mph", asMade, speedClaims),
		row("a 6 V vehicle with two motors on grass", small6+"pack.chemistry=agm; pack.label=6 V 10 Ah; motors.count=2; vehicle.ground=short grass", asMade, claims),
		row("a 6 V vehicle on tarmac, its plug", small6+"pack.chemistry=agm; pack.label=6 V 4.5 Ah; vehicle.ground=asphalt; charger.label=6 V 500 mA DC; charger.came_with_pack=true; charger.made_for=lead-acid; charger.jack=vehicle", asMade, practice),
		row("a 24 V two-seater, 5 mph claimed", jeep24+"pack.chemistry=agm; pack.label=24 V 7 Ah; vehicle.claimed_speed=5 mph; vehicle.has_board=true", asMade, claims),
		row("a 24 V two-seater of 9 Ah blocks, children of eight", jeep24+"pack.chemistry=agm; pack.label=24 V (two 12 V) 9 Ah; rider.age=8 years; rider.mass=70 lb; vehicle.claimed_speed=6 mph; fuse.form=small blade; fuse.rating=30 A", asMade, claims),
		row("24 V, its plug of 29 V", jeep24+"pack.chemistry=agm; pack.label=24 V 7 Ah; vehicle.claimed_speed=8 km/h; charger.label=29 V 1 A DC; charger.came_with_pack=true; charger.made_for=lead-acid; charger.stops=by itself; charger.jack=vehicle", asMade, practice),
		row("four small motors behind a board, remote control", "vehicle.design_voltage=12 V; motors.count=4; motors.can=390; vehicle.has_board=true; vehicle.remote_control=true; rider.age=4 years; vehicle.claimed_speed=5 km/h; "+agm7, asMade, claims),
		row("iron phosphate of 25.6 V for two blocks", jeep24+"pack.chemistry=lifepo4; pack.label=25.6 V 12 Ah LiFePO4; cutoff.pack.opens_at=20 V; pack.watches_cells=true; vehicle.claimed_speed=8 km/h; original.pack.chemistry=agm; original.pack.label=24 V (two 12 V) 9 Ah; "+blade30, "the same volts, own protection, a fuse", ironSheets),
		row("half an hour wanted at four", tractor12+agm7+"rider.age=4 years; rider.mass=36 lb; outing.wanted=30 min", asMade, claims),
		row("a glass fuse, as made", tractor12+agm7+"fuse.form=glass tube; fuse.rating=20 A", asMade, practice),
		row("2.5 mm2 behind 25 A", tractor12+agm7+"fuse.form=small blade; fuse.rating=25 A; wire.area=2.5 mm2; wire.insulation=70 C", "below its ampacity of 32 A", vdeWire),
		row("a float charger of 13.8 V left on", tractor12+agm7+"charger.label=13.8 V 0.8 A DC; charger.made_for=lead-acid; charger.stops=never; charger.jack=terminals", "2.30 V per cell is float", blockSheets),
		row("a hand on the motor for 20 s", tractor12+agm7+"measured.motor_touch=20 s", "below 55 C or so", "ISO 13732-1 (memory)"),
		row("two of four years on two seats of 130 lb", tractor12+agm7+"-rider.mass; rider.count=2; rider.age=4 years; vehicle.seats=2; vehicle.rated_load=130 lb", "within its label", riderLimit),
		row("1.5 mm2 behind 15 A", tractor12+agm7+"fuse.form=small blade; fuse.rating=15 A; wire.area=1.5 mm2", "below its ampacity of 24 A", vdeWire),
		row("a mile and a quarter on a charge", tractor12+agm7+"measured.distance=2 km", "half an hour at 4 km/h", practice),
		row("a block of one year, 40 minutes", tractor12+agm7+"pack.age=1 year; measured.ride_time=40 min", asMade, practice),
		row("iron phosphate behind a module of 11.2 V", tractor12+phosphate+"pack.watches_cells=true; cutoff.module.opens_at=11.2 V; cutoff.module.delay=3 s; cutoff.module.standby_current=0.5 mA; "+blade20, "2.8 V per cell, cells watched", ironSheets),
		row("8 years, rubber tyres, 24 V, 8 km/h measured", jeep24+"pack.chemistry=agm; pack.label=24 V 7 Ah; rider.age=8 years; rider.mass=62 lb; vehicle.tyres=rubber; vehicle.ground=asphalt; measured.top_speed=8 km/h", asMade, speedClaims),
	}
}
