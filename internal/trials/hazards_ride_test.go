package trials_test

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
)

const (
	speeds  = drive.CodeFastForARideOn + "|" + drive.CodeTooYoung + "|" + drive.CodeWayToStop + "|" + drive.CodeFasterThanOriginal
	geared  = "vehicle.ground=asphalt; " // on a hard surface, gears fast enough for the speed
	stalled = judge.CodeDoesNotGo + "|" + judge.CodeBarelyMoves + "|" + drive.CodeCannotStart + "|" + drive.CodeSpinsOnTheSpot + "|" + drive.CodeStallsSoon + "|" + judge.CodeCannotKeepGoing
)

// speedHazards are speeds for the age of the child.
func speedHazards() []hazard {
	fast := func(name, base, speed, age string, least answer.Level, why string) hazard {
		return hazard{name: name, base: base, set: "measured.top_speed=" + speed + "; rider.age=" + age, least: least, codes: speeds, why: why, from: speedClaims + "; " + reaction}
	}
	unaged := func(h hazard) hazard { h.set += "; -rider.age"; return h }
	const labels = "labels"
	return []hazard{
		fast("18 km/h measured with a child of three", labels, "18 km/h", "3 years", danger, "more than twice what is made for any child of three; five times the energy of 8 km/h"),
		fast("16 km/h measured with a child of three", labels, "16 km/h", "3 years", danger, "twice what is made for it; four times the energy"),
		fast("16 km/h measured with a child of five", labels, "16 km/h", "5 years", danger, "twice the usual claim; a quarter above the fastest vehicle found"),
		fast("20 km/h measured with a child of six", labels, "20 km/h", "6 years", danger, "half above the fastest vehicle found"),
		fast("25 km/h measured with a child of eight", labels, "25 km/h", "8 years", danger, "a moped's speed on toy wheels without a brake"),
		fast("30 km/h measured with a child of twelve", labels, "30 km/h", "12 years", danger, "the same"),
		fast("18 km/h measured on a tool pack with a child of three", "lithium", "18 km/h", "3 years", danger, "as above, changed"),
		fast("10 km/h measured with a child of two", labels, "10 km/h", "2 years", danger, "a child of two neither reacts nor steers at a runner's pace"),
		fast("8 km/h measured with a child of two", labels, "8 km/h", "2 years", fixFirst, "the slowest class is made for that age"),
		fast("6 km/h measured with a child of one and a half", labels, "6 km/h", "1.5 years", fixFirst, "vehicles from 18 months do 3 to 5.6 km/h"),
		fast("12 km/h measured with a child of four", labels, "12 km/h", "4 years", fixFirst, "half above the usual claim"),
		fast("12 km/h measured with a child of three", labels, "12 km/h", "3 years", fixFirst, "half above the usual claim"),
		fast("14 km/h measured with a child of five", labels, "14 km/h", "5 years", fixFirst, "above the fastest vehicle found"),
		unaged(fast("18 km/h measured, age not told", labels, "18 km/h", "5 years", fixFirst, "too fast for any age that rides these")),
		fast("12 km/h measured with a 6 V vehicle and a child of three", "labels6", "12 km/h", "3 years", fixFirst, "three times its class"),
		{
			name: "gears of 30:1 with a child of three, everything told", base: "block", set: geared + "gears.ratio=30:1; rider.age=3 years; rider.mass=14 kg; motors.stall_current=60 A", least: danger, codes: speeds,
			why: "about 17 km/h, computed of told figures only", from: speedClaims,
		},
		{
			name: "gears of 45:1 with a child of four, everything told", base: "block", set: geared + "gears.ratio=45:1; rider.age=4 years; rider.mass=16 kg; motors.stall_current=60 A", least: fixFirst, codes: speeds,
			why: "about 12 km/h", from: speedClaims,
		},
		{
			name: "a tool pack doubles the speed for a child of four", base: "proper", set: contacts + "rider.age=4 years; vehicle.ground=asphalt; gears.ratio=90:1; original.controller.kind=contacts", least: fixFirst, codes: speeds,
			why: "1.7 times the volts: three times the energy of a bump", from: "E goes with v2 (computed); speed 1.9 times for 1.85 times the volts, seen",
		},
		{
			name: "a child of one as driver", base: "block", set: "rider.age=1 years; rider.mass=10 kg", least: fixFirst, codes: drive.CodeTooYoung,
			why: "no vehicle with a pedal is made for it", from: "owner's post: the slowest from 18 months (copy)",
		},
	}
}

// rideHazards are loads, slopes and drives that end badly.
func rideHazards() []hazard {
	return []hazard{
		{
			name: "60 kg on a 6 V one-seater", base: "labels6", set: "rider.mass=60 kg; rider.age=14 years", least: fixFirst, codes: wantOverload,
			why: "twice the rated load", from: riderLimit,
		},
		{
			name: "an adult of 90 kg on a 12 V one-seater", base: "labels", set: "rider.mass=90 kg; rider.age=35 years", least: fixFirst, codes: wantOverload,
			why: "three times the rated load of its class", from: riderLimit,
		},
		{
			name: "an adult of 90 kg on a 12 V tractor, everything told", base: "block", set: "rider.mass=90 kg; rider.age=35 years", least: fixFirst, codes: wantOverload,
			why: "axles, seat and gears are made for a child", from: riderLimit,
		},
		{
			name: "three children of 100 kg on a 24 V two-seater", base: "labels24", set: "rider.mass=100 kg", least: fixFirst, codes: wantOverload,
			why: "1.7 times the rated load", from: riderLimit,
		},
		{
			name: "a climb of 30 %", base: "block", set: "vehicle.slope=30 %", least: danger, codes: wantSteep,
			why: "it tips or rolls back with the child: twice the slope of the stability test", from: tipping,
		},
		{
			name: "a climb of 30 % by labels", base: "labels", set: "vehicle.slope=30 %", least: danger, codes: wantSteep,
			why: "the same", from: tipping,
		},
		{
			name: "a climb of 25 % with a current limit", base: "lithium", set: "vehicle.slope=25 %", least: fixFirst, codes: stalled,
			why: "it stops half way and rolls back", from: tipping,
		},
		{
			name: "a climb of 20 % on grass", base: "block", set: "vehicle.slope=20 %; vehicle.ground=short grass", least: fixFirst, codes: wantSteep + "|" + stalled,
			why: "above 10 degrees no such vehicle was tested", from: tipping,
		},
		{
			name: "a path that climbs by 30 % on the way back", base: "block", set: "vehicle.slope=30 %", least: danger, codes: wantSteep,
			why: "nothing but the motors brakes it: it runs away", from: tipping,
		},
		{
			name: "a path that climbs by 15 % on the way back", base: "block", set: "vehicle.slope=15 %", least: fixFirst, codes: wantSteep,
			why: "it runs faster than the motors drive it, and tool-pack electronics may cut the braking off", from: tipping,
		},
		{
			name: "sand that it cannot drive on", base: "labels6", set: "vehicle.ground=sand", least: fixFirst, codes: stalled,
			why: "blocked motors burn", from: motorHeat,
		},
		{
			name: "10 Ohm in the controller", base: "block", set: "controller.resistance=10 Ohm", least: fixFirst, codes: stalled + "|" + drive.CodeStallsSoon,
			why: "it cannot move, and the switch gets hot", from: practice,
		},
		{
			name: "a lithium pack of 24 V on 6 V motors", base: "labels6", set: "controller.kind=chopper; controller.max_voltage=36 V; pack.chemistry=li-ion; pack.label=25.2 V max 4 Ah; pack.cells_in_series=6; cutoff.pack.opens_at=19 V", least: fixFirst, codes: drive.CodeMotorHot + "|" + boardVolts,
			why: "four times the volts on the brushes", from: motorHeat,
		},
		{
			name: "18 V on 12 V motors, plain contacts, long grass", base: "lithium", set: contacts + "vehicle.ground=long grass", least: fixFirst, codes: drive.CodeMotorHot + "|" + drive.CodePlasticSoftens + "|" + drive.CodeBlockedHeat,
			why: "2.8 times the heat of what they were made for", from: motorHeat,
		},
		{
			name: "a controller asked for four times its peak", base: "lithium", set: noConverter + "-controller.current_limit; -controller.ramp; controller.continuous_current=5 A; controller.peak_current=10 A", least: fixFirst, codes: drive.CodeLaunchOverControllerPeak + "|" + drive.CodeBlockedOverController,
			why: "its transistors go at the first start", from: practice,
		},
		{
			name: "a speed control that reverses at once at full speed", base: "lithium", set: noConverter + "-controller.current_limit; -controller.ramp; controller.reverses=at once; controller.peak_current=40 A", least: watch, codes: drive.CodeReversal,
			why: "volts and back-EMF add: more than blocked wheels", from: "wrong reverse above 30 A (copy)",
		},
	}
}

// heatHazards are packs and places that are too hot or too cold.
func heatHazards() []hazard {
	return []hazard{
		{
			name: "a tool pack at 85 C", base: "lithium", set: "pack.temperature=85 C", least: danger, codes: battery.CodeTooHot,
			why: "above what cells stand and what a child may touch", from: toySurface + "; " + cellSheets,
		},
		{
			name: "a tool pack at 76 C", base: "lithium", set: "pack.temperature=76 C", least: danger, codes: battery.CodeTooHot,
			why: "above 71 C", from: toySurface,
		},
		{
			name: "a block at 76 C", base: "block", set: "pack.temperature=76 C", least: danger, codes: battery.CodeTooHot,
			why: "above 71 C", from: toySurface,
		},
		{
			name: "a tool pack that starts at 62 C", base: "lithium", set: "pack.temperature=62 C; outing.air=40 C", least: watch, codes: battery.CodeTooHot + "|" + charge.CodeTooHot,
			why: "hot to the touch, and nothing may charge it before it has cooled", from: toySurface + "; " + jeita,
		},
		{
			name: "a tool pack at -25 C", base: "lithium", set: "pack.temperature=-25 C; outing.air=-25 C", least: fixFirst, codes: battery.CodeTooCold,
			why: "below what its cells may give current at", from: cellSheets,
		},
		{
			name: "a block at -35 C", base: "block", set: "pack.temperature=-35 C; outing.air=-35 C", least: fixFirst, codes: battery.CodeTooCold,
			why: "below what it may give current at", from: "data sheets of 7.2 and 20 Ah blocks: -15 to 50 C (copy)",
		},
		{
			name: "a tool pack at 62 C in cool air", base: "lithium", set: "pack.temperature=62 C", least: watch, codes: charge.CodeTooHot + "|" + battery.CodeTooHot,
			why: "above 60 C no charging at all; it cools if it is left alone", from: jeita,
		},
		{
			name: "30 A out of a tool pack in a closed shell", base: "bench18", set: "load.current=30 A; fuse.form=large blade; fuse.rating=50 A; pack.housing=closed shell; pack.strings=2; pack.max_current=60 A; wire.gauge=8 AWG; outing.air=30 C", least: fixFirst, codes: battery.CodeTooHot + "|" + battery.CodeCurrentLasting,
			why: "15 A from each cell in a shell without air took power cells from 25 to 75 C", from: "tayvoy.com: 15 to 16 A to 75 C in an insulated housing (copy)",
		},
	}
}

// storageHazards are winters that ruin a pack or a shed.
func storageHazards() []hazard {
	winter := "storage.from=2026-11-01; storage.until=2027-03-31; "
	summer := "storage.from=2026-05-01; storage.until=2026-10-31; "
	return []hazard{
		{
			name: "full lithium in a shed at 70 C", base: "lithium", set: summer + "storage.temperature=70 C", least: danger, codes: wantStoredHot,
			why: "above every cell's storage limit, full: it swells and vents", from: "cell specifications: storage to 60 C at most (memory)",
		},
		{
			name: "full lithium in a shed at 58 C", base: "lithium", set: summer + "storage.temperature=58 C", least: fixFirst, codes: wantStoredHot + "|" + charge.CodeStoredTooFull + "|" + charge.CodeStoredRunsEmpty,
			why: "at the limit, full, for months", from: "cell specifications: storage to 60 C at most (memory)",
		},
		{
			name: "a block in a shed at 58 C", base: "block", set: summer + "storage.temperature=58 C", least: fixFirst, codes: wantStoredHot + "|" + charge.CodeStoredRunsEmpty + "|" + charge.CodeStoredNeedsTopUp,
			why: "storage ends at 40 C; it loses its charge in weeks", from: "data sheets of 7.2 and 20 Ah blocks: storage -15 to 40 C (copy)",
		},
		{
			name: "an empty block in frost", base: "block", set: winter + "pack.charge=5 %; storage.temperature=-15 C", least: fixFirst, codes: charge.CodeStoredMayFreeze,
			why: "discharged acid is nearly water: the block bursts", from: "density against freezing point, from memory",
		},
		{
			name: "a block put away nearly empty", base: "block", set: winter + "pack.charge=20 %; storage.temperature=10 C", least: fixFirst, codes: charge.CodeStoredNotFull + "|" + charge.CodeStoredRunsEmpty + "|" + charge.CodeStoredNeedsTopUp,
			why: "below 2 V per cell for a winter: hard sulphate", from: blockStore,
		},
		{
			name: "a block left on a board that draws 15 mA", base: "block", set: winter + "-cutoff; controller.standby_current=15 mA; storage.temperature=10 C", least: watch, codes: charge.CodeStoredConnected + "|" + charge.CodeStoredRunsEmpty + "|" + cutoff.CodeIdleWeek + "|" + cutoff.CodeIdleMonth,
			why: "7 Ah last 19 days; nothing says whether it stays connected for the winter", from: "Ah over A (computed)",
		},
		{
			name: "a tool pack put away at 5 %", base: "lithium", set: winter + "pack.charge=5 %; storage.temperature=10 C; cutoff.module.standby_current=1 mA", least: fixFirst, codes: charge.CodeStoredRunsEmpty + "|" + charge.CodeStoredNeedsTopUp + "|" + charge.CodeStoredConnected,
			why: "self-discharge and electronics take it below the last rung before spring", from: "cell specifications: 2 to 3 % a month (copy)",
		},
		{
			name: "a tool pack left on a board that draws 15 mA", base: "lithium", set: winter + "-cutoff; cutoff.controller.opens_at=16.5 V; controller.standby_current=15 mA; storage.temperature=10 C", least: fixFirst, codes: idle + "|" + charge.CodeStoredConnected + "|" + charge.CodeStoredRunsEmpty,
			why: "5 Ah last 14 days; then it is charged again in spring", from: overDeep,
		},
	}
}

// benchHazards are loads that are no vehicle.
func benchHazards() []hazard {
	return []hazard{
		{
			name: "five lithium cells discharged on a bench without a cutoff", base: "bench18", set: "-cutoff", least: danger, codes: cutNone,
			why: "nobody watches", from: overDeep,
		},
		{
			name: "five lithium cells discharged on a bench to 5 V", base: "bench18", set: "-cutoff; load.until=5 V", least: danger, codes: useless,
			why: "one volt per cell", from: overDeep,
		},
		{
			name: "five lithium cells discharged on a bench to 11 V", base: "bench18", set: "-cutoff; load.until=11 V", least: fixFirst, codes: useless,
			why: "2.2 V per cell", from: overDeep,
		},
		{
			name: "a bench load without a fuse on lithium", base: "bench18", set: "-fuse; fuse.form=none", least: danger, codes: noFuse + "|" + judge.CodeBareBench,
			why: "a slipped clip burns", from: cfrFuse,
		},
		{
			name: "a bench load beyond the pack", base: "bench", set: "load.current=2000 A; fuse.rating=5 A", least: fixFirst,
			why: "it cannot give that", from: blockSheets,
		},
		{
			name: "a bench load beyond its fuse", base: "bench", set: "load.current=20 A", least: fixFirst, codes: fuseOpens,
			why: "four times the rating", from: blade,
		},
		{
			name: "30 A from a tool pack that may give 10", base: "bench18", set: "load.current=30 A; pack.max_current=10 A; fuse.form=large blade; fuse.rating=40 A; wire.gauge=8 AWG", least: danger, codes: battery.CodeCurrentLasting + "|" + battery.CodeTooHot,
			why: "three times what its maker allows, to the end", from: cellSheets,
		},
	}
}
