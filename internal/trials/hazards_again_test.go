package trials_test

import (
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/wiring"
)

// againHazards are forty setups whose levels were written down before any of them
// was tried.
func againHazards() []hazard {
	const flat = charge.CodeDeeplyFlat + "|" + charge.CodeDeadBlock
	return []hazard{
		{name: "a 12 V lithium block of which the label says no more", base: "labels", set: "-pack.chemistry; pack.label=12 V 10 Ah lithium", least: danger, codes: cutNone, why: "whichever lithium it is, nothing disconnects it", from: overDeep},
		{name: "lithium, 12 V, 10 Ah, with a fuse and its wire", base: "labels", set: "pack.chemistry=lithium; pack.label=12 V 10 Ah; fuse.form=small blade; fuse.rating=20 A; wire.gauge=14 AWG; wire.insulation=105 C", least: danger, codes: cutNone, why: "whichever lithium it is, nothing disconnects it", from: overDeep},
		{name: "two tool packs joined at 20.8 and 18.0 V, both measured", base: "lithium", set: "pack.joined=parallel; -pack.charge; -charger; measured.rest_voltage=20.8 V; measured.second_rest_voltage=18 V", least: danger, codes: battery.CodeParallelEqualising, why: "tens of amps into a pack that takes five", from: equalising},
		{name: "a full tool pack joined to one of 9 V", base: "lithium", set: "pack.joined=parallel; -pack.charge; -charger; measured.rest_voltage=20.8 V; measured.second_rest_voltage=9 V", least: danger, codes: charge.CodeTooLow + "|" + charge.CodeNeverRecharge, why: "1.8 V per cell: never charge it, least of all so", from: overDeep},
		{name: "a tool pack joined to one of 24 V", base: "lithium", set: "pack.joined=parallel; -charger; measured.second_rest_voltage=24 V", least: danger, codes: wantOvercharged, why: "4.8 V per cell, or another pack", from: overFull},
		{name: "a full block joined to one of 6 V", base: "labels", set: "pack.joined=parallel; measured.rest_voltage=12.8 V; measured.second_rest_voltage=6 V", least: fixFirst, codes: flat + "|" + battery.CodeParallelEqualising, why: "three dead cells", from: blockSheets},
		{name: "a pair of which one block has 2 V", base: "pair", set: "pack.label=12 V 12 Ah; pack.joined=series; -pack.charge; measured.rest_voltage=12.8 V; measured.second_rest_voltage=2 V", least: danger, codes: charge.CodeDeadBlock, why: "a dead block boils on the charger of the pair", from: blockStore},
		{name: "a pair at 12.8 and 10.2 V", base: "pair", set: "pack.label=12 V 12 Ah; pack.joined=series; -pack.charge; measured.rest_voltage=12.8 V; measured.second_rest_voltage=10.2 V", least: fixFirst, codes: battery.CodeSeriesUnequalCharge, why: "the empty one is driven backwards", from: weakCell},
		{name: "iron phosphate packs at 13.4 and 12.6 V side by side", base: "iron", set: "pack.joined=parallel; -pack.charge; -charger; measured.rest_voltage=13.4 V; measured.second_rest_voltage=12.6 V; measured.hours_rested=12 h", least: fixFirst, codes: battery.CodeParallelEqualising, why: "full onto nearly empty", from: equalising},
		{name: "a block and an iron phosphate pack side by side", base: "labels", set: "pack.joined=parallel; pack.second.label=12.8 V 10 Ah; pack.second.chemistry=lifepo4", least: danger, codes: battery.CodeParallelMixedChemistry, why: "unlike cells plus to plus", from: toyMixed},
		{name: "a 12 V and a 6 V block side by side", base: "labels", set: "pack.joined=parallel; pack.second.label=6 V 4 Ah", least: danger, codes: battery.CodeParallelUnlikeVolts, why: "no charge makes their volts alike", from: toyMixed},
		{name: "9 Ah and 4 Ah in a row", base: "labels24", set: "pack.label=12 V 9 Ah; pack.joined=series; pack.second.label=12 V 4 Ah", least: fixFirst, codes: battery.CodeUnlikePacks + "|" + battery.CodeSeriesUnequalCharge, why: "the small one is emptied and driven backwards", from: toyMixed},
		{name: "iron phosphate behind a module of 83 mA", base: "iron", set: "cutoff.module.standby_current=83 mA", least: danger, codes: idle, why: "what is left after a ride lasts hours", from: modulePower},
		{name: "a block of 80 C after a drive", base: "labels", set: "measured.pack_temperature=80 C", least: danger, codes: battery.CodeTooHot, why: "above 71 C", from: toySurface},
		{name: "a tool pack of 62 C outside", base: "lithium", set: "measured.pack_temperature=62 C", least: fixFirst, codes: battery.CodeTooHot, why: "above 54 C", from: touching},
		{name: "6 V, no brake, a drive of 6 %", base: "labels6", set: "vehicle.slope=6 %; vehicle.brake=none", least: danger, codes: drive.CodeRollsBack, why: "it rolls away with a child of three", from: freeWheel},
		{name: "11 km/h on the level and no brake", base: "labels24", set: "measured.top_speed=11 km/h; vehicle.slope=0 %; vehicle.brake=none", least: danger, codes: drive.CodeNoBrake, why: "fast, and it runs on for twenty metres", from: freeWheel},
		{name: "a tool pack on the 12 V board of a remote-controlled car", base: "board", set: "pack.chemistry=li-ion; pack.label=20 V max 4 Ah; cutoff.pack.opens_at=15 V; pack.watches_cells=true; vehicle.remote_control=true", least: fixFirst, codes: drive.CodeBoardOvervoltage, why: "21 V on a board for 12 V", from: practice},
		{name: "radio and steering on a tool pack", base: "swap", set: "vehicle.accessories=on the pack", least: fixFirst, codes: drive.CodeAccessoryVolts, why: "21 V on what was made for 12 V", from: practice},
		{name: "a 30 A breaker on 18 AWG", base: "labels", set: "fuse.form=auto-reset breaker; fuse.rating=30 A; wire.gauge=18 AWG; wire.insulation=80 C", least: danger, codes: wiring.CodeFuseAboveWire, why: "twice its ampacity", from: cfrFuse},
		{name: "25 A on 18 AWG of unknown insulation, in a vehicle with its own battery", base: "labels", set: "fuse.form=small blade; fuse.rating=25 A; fuse.distance_from_pack=5 cm; wire.gauge=18 AWG", least: fixFirst, codes: wiring.CodeFuseAboveWire, why: "18 AWG stands 15 A of a fuse at 80 C; owners put in larger fuses", from: cfrFuse},
		{name: "60 A on 14 AWG behind iron phosphate", base: "iron", set: "fuse.form=large blade; fuse.rating=60 A; wire.gauge=14 AWG; wire.insulation=80 C", least: danger, codes: wiring.CodeFuseAboveWire, why: "more than twice its ampacity", from: cfrFuse},
		{name: "a fuse two metres down the wire", base: "block", set: "fuse.distance_from_pack=2 m", least: fixFirst, codes: wiring.CodeFuseTooFar, why: "ten times the distance of the rule", from: cfrFuse},
		{name: "four 12 V blocks on 24 V contacts", base: "labels24", set: "pack.label=48 V (four 12 V) 7 Ah; controller.kind=contacts", least: danger, codes: welds, why: "twice the volts", from: cpscWeld},
		{name: "a tool pack on its charger through the old jack", base: "lithium", set: "charger.jack=vehicle", least: danger, codes: charge.CodeVehicleJack, why: "past its protection", from: toolPacks},
		{name: "iron phosphate on the vehicle's old charger and jack", base: "iron", set: "charger.made_for=lead-acid; charger.voltage=14.7 V; charger.jack=vehicle", least: danger, codes: charge.CodeVehicleJack, why: "past its protection", from: practice},
		{name: "an adaptor that gives AC, on a block", base: "labels", set: "charger.label=12 V AC 1 A", least: danger, codes: charge.CodeGivesAC, why: "alternating current on a battery", from: cpscCharger},
		{name: "2.5 A into 4.5 Ah", base: "labels6", set: "charger.label=7.2 V 2.5 A DC; charger.made_for=lead-acid; charger.stops=by itself; charger.jack=vehicle", least: fixFirst, codes: charge.CodeCurrentTooHigh, why: "0.56 C, the sheets allow 0.3", from: blockSheets},
		{name: "2.5 A into 4.5 Ah, told to be charged with 15 A", base: "labels6", set: "pack.max_charge_current=15 A; charger.label=7.2 V 2.5 A DC; charger.made_for=lead-acid; charger.stops=by itself; charger.jack=vehicle", least: fixFirst, codes: charge.CodeCurrentTooHigh, why: "no block prints 3.3 C for charging", from: blockSheets},
		{name: "1 A into a block that prints 0.2 A", base: "labels6", set: "pack.max_charge_current=0.2 A; charger.label=7.2 V 1 A DC; charger.made_for=lead-acid; charger.stops=by itself; charger.jack=vehicle", least: fixFirst, codes: charge.CodeCurrentTooHigh, why: "five times what it prints, though no more than other blocks stand", from: blockSheets},
		{name: "iron phosphate charged at -5 C", base: "iron", set: "outing.air=-5 C; outing.charged_at=-5 C; pack.temperature=-5 C", least: danger, codes: cold, why: "lithium plates out", from: gates},
		{name: "a tool pack charged at 52 C", base: "lithium", set: "outing.air=52 C; pack.temperature=52 C", least: fixFirst, codes: hot, why: "above the sheets' 50 C", from: cellSheets},
		{name: "two years old, 7 km/h measured", base: "labels", set: "rider.age=2 years; rider.mass=12 kg; measured.top_speed=7 km/h", least: fixFirst, codes: drive.CodeTooYoung, why: "what is made from 18 months reaches 5.6 km/h", from: speedClaims},
		{name: "four years old, 14 km/h measured", base: "labels24", set: "rider.age=4 years; rider.mass=17 kg; measured.top_speed=14 km/h", least: danger, codes: drive.CodeFastForARideOn, why: "nothing was found that is made for that", from: speedClaims},
		{name: "100 kg on a rated load of 30 kg", base: "labels", set: "rider.mass=100 kg; rider.age=40 years; vehicle.rated_load=30 kg", least: danger, codes: wantOverload, why: "beyond three times, to which toys are tried", from: riderLimit},
		{name: "140 A blocked through 18 AWG and 40 A", base: "block", set: "measured.blocked_current=140 A; wire.gauge=18 AWG; wire.insulation=60 C; fuse.form=small blade; fuse.rating=40 A", least: danger, codes: wiring.CodeFuseAboveWire + "|" + wiring.CodeShortBurnsWire, why: "four times its ampacity", from: cfrFuse},
		{name: "five lithium cells on a bench down to 12.5 V", base: "bench18", set: "-cutoff; load.until=12.5 V", least: fixFirst, codes: useless, why: "2.5 V on average, the weakest below", from: cellSheets},
		{name: "a cutoff of 10 V on five lithium cells", base: "lithium", set: "cutoff.module.opens_at=10 V", least: danger, codes: cutoff.CodeBelowHarm, why: "2 V per cell", from: overDeep},
		{name: "a cutoff of 7 V on four iron phosphate cells", base: "iron", set: "cutoff.module.opens_at=7 V", least: danger, codes: cutoff.CodeBelowHarm, why: "1.75 V per cell, the sheets end at 2.0 V", from: ironSheets},
		{name: "a block at 8.4 V after a day", base: "block", set: "-pack.charge; measured.rest_voltage=8.4 V; measured.hours_rested=24 h", least: fixFirst, codes: flat, why: "two cells are gone, or it is drained to nothing", from: blockSheets},
		{name: "a 6 V block of 1.2 V", base: "labels6", set: "measured.rest_voltage=1.2 V; measured.hours_rested=24 h", least: danger, codes: charge.CodeDeadBlock, why: "it cannot come back, and boils on a charger", from: blockStore},
		{name: "five lithium cells at 12 V at rest", base: "lithium", set: "-pack.charge; measured.rest_voltage=12 V; measured.hours_rested=12 h", least: danger, codes: charge.CodeTooLow + "|" + charge.CodeNeverRecharge, why: "2.4 V per cell", from: overDeep},
		{name: "a tool pack and a converter, and nothing else told", base: "swap", set: "controller.converter_voltage=12 V; controller.converter_limit=40 A", least: danger, codes: cutNone, why: "nothing disconnects it", from: overDeep},
		{name: "a nickel pack on a lead-acid charger", base: "labels", set: "pack.chemistry=nimh; pack.label=12 V 5 Ah NiMH; charger.label=14.4 V 1 A DC; charger.made_for=lead-acid", least: fixFirst, codes: wrong, why: "it does not notice when nickel is full", from: practice},
	}
}

// againSound are twenty that an experienced helper would let a child ride.
func againSound() []soundRig {
	const (
		guarded = "cutoff.pack.opens_at=10 V; pack.watches_cells=true; original.pack.label=12 V 7 Ah; original.pack.chemistry=agm; "
		iron12  = "pack.chemistry=lifepo4; pack.label=12.8 V 10 Ah LiFePO4; " + guarded
		itsOwn  = "charger.label=14.6 V 2 A DC; charger.made_for=lifepo4; charger.stops=by itself; charger.jack=pack; "
		ironWhy = "the same volts, its own protection, a fuse below the wire's"
	)
	return []soundRig{
		{"iron phosphate for the block, by labels", "labels", iron12 + "fuse.form=small blade; fuse.rating=25 A; wire.gauge=14 AWG; wire.insulation=80 C; " + itsOwn, ironWhy, ironSheets},
		{"iron phosphate of 6.4 V for a 6 V block", "labels6", "pack.chemistry=lifepo4; pack.label=6.4 V 6 Ah LiFePO4; cutoff.pack.opens_at=5 V; pack.watches_cells=true; original.pack.label=6 V 4.5 Ah; original.pack.chemistry=agm; fuse.form=small blade; fuse.rating=15 A; wire.gauge=18 AWG; wire.insulation=105 C", ironWhy, ironSheets},
		{"iron phosphate of 25.6 V for a pair", "labels24", "pack.chemistry=lifepo4; pack.label=25.6 V 10 Ah LiFePO4; cutoff.pack.opens_at=20 V; pack.watches_cells=true; original.pack.label=24 V (two 12 V) 9 Ah; original.pack.chemistry=agm; fuse.form=small blade; fuse.rating=30 A; wire.gauge=12 AWG; wire.insulation=105 C; vehicle.claimed_speed=8 km/h", ironWhy, ironSheets},
		{"24 V, motors that brake, 4 %", "labels24", "vehicle.brake=motors; vehicle.slope=4 %; vehicle.claimed_speed=8 km/h", asMade, practice},
		{"a remote-controlled car at 4 km/h, three years", "board", "vehicle.brake=motors; vehicle.claimed_speed=4 km/h; vehicle.remote_control=true; rider.age=3 years; rider.mass=14 kg", asMade, speedClaims},
		{"two equal blocks in a row and a charger for the pair", "pair", "pack.label=12 V 12 Ah; pack.joined=series; -pack.charge; measured.rest_voltage=12.8 V; measured.second_rest_voltage=12.78 V; measured.hours_rested=12 h", "equal, and charged as they were sold", blockSheets},
		{"two equal blocks in a row and a charger for one", "pair", "pack.label=12 V 12 Ah; pack.joined=series; charger.voltage=14.7 V", "each charged by itself", blockSheets},
		{"two equal blocks side by side", "block", "pack.joined=parallel; -charger; -pack.charge; measured.rest_voltage=12.8 V; measured.second_rest_voltage=12.79 V; measured.hours_rested=12 h", "nothing flows between them", equalising},
		{"done properly, 38 C after a drive", "proper", "measured.pack_temperature=38 C; vehicle.brake=motors", "hand-warm", touching},
		{"a block parted from the vehicle for the winter", "labels", "storage.from=2026-11-01; storage.until=2027-03-31; storage.temperature=8 C; storage.connected=false; pack.charge=100 %", "full, cool, disconnected", blockSheets},
		{"the vehicle's own adaptor on a timer, driving blocked", "labels", "charger.label=12 V 700 mA DC; charger.made_for=lead-acid; charger.came_with_pack=true; charger.stops=timer; charger.timer=12 h; charger.jack=vehicle; charger.blocks_driving=true", asMade, practice},
		{"6 V, three years, 13 kg, lawn", "labels6", "rider.age=3 years; rider.mass=13 kg; vehicle.ground=short grass", asMade, claims},
		{"12 Ah for 7 Ah on 16 AWG", "labels", fuse25 + wire16 + "pack.label=12 V 12 Ah; original.pack.label=12 V 7 Ah; original.pack.chemistry=agm", "the same kind and volts", practice},
		{"a block that holds 60 %", "labels", fuse25 + "pack.health=60 %", "old; shorter rides", practice},
		{"four small motors, 6 A and 11.9 V measured", "board", "motors.count=4; motors.can=390; measured.loaded_current=6 A; measured.loaded_voltage=11.9 V", asMade, practice},
		{"45 kg on a rated load of 60 kg", "pair", "rider.mass=45 kg; rider.age=6 years; vehicle.rated_load=60 kg; vehicle.seats=2", "two children within the label", riderLimit},
		{"a block as made behind a 20 A breaker", "block", "fuse.form=auto-reset breaker; fuse.rating=20 A", asMade, practice},
		{"iron phosphate put away at 60 %", "iron", "pack.charge=60 %; storage.from=2026-11-01; storage.until=2027-03-31; storage.temperature=10 C; storage.connected=false", "half full, cool, parted", ironSheets},
		{"done properly, motors that brake, 3 %", "proper", "vehicle.brake=motors; vehicle.slope=3 %", "softer on everything", practice},
		{"seven years, 25 kg, 7 km/h measured", "labels", fuse25 + "rider.age=7 years; rider.mass=25 kg; measured.top_speed=7 km/h", "the usual claim", speedClaims},
	}
}
