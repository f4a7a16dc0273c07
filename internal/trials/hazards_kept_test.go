package trials_test

import (
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/drive"
)

// Where the levels of stopping, charging aboard and keeping come from.
const (
	freeWheel = "EN 71-1:2005+A8:2009 rationale: exempt only below 1 m/s (copy)"
	touching  = "test plan built on ASTM F963: 54 C for accessible surfaces (trade forum, one source)"
	onWinter  = "storage.from=2026-11-01; storage.until=2027-03-31; storage.connected=true; "
	plugs     = "charger.label=14.4 V 1 A DC; charger.made_for=lead-acid; charger.stops=by itself; charger.jack=vehicle; charger.blocks_driving=false"
)

// keptHazards are vehicles that nothing stops, that drive while they are charged,
// or that are kept on their battery.
func keptHazards() []hazard {
	return []hazard{
		{name: "a vehicle that rolls free at 9 km/h on a slope", base: "labels", set: "measured.top_speed=9 km/h; vehicle.slope=10 %; vehicle.brake=none", least: danger, codes: drive.CodeNoBrake + "|" + drive.CodeRollsBack, why: "free-wheeling ride-ons need a brake", from: freeWheel},
		{name: "a vehicle that rolls free at 5 km/h on the level", base: "labels", set: "measured.top_speed=5 km/h; vehicle.slope=0 %; vehicle.brake=none", least: fixFirst, codes: drive.CodeNoBrake, why: "a child lets go of the pedal and it runs on", from: freeWheel},
		{name: "no brake on a slope of 8 %", base: "block", set: "vehicle.slope=8 %; vehicle.brake=none", least: danger, codes: drive.CodeRollsBack, why: "it runs away with the child", from: freeWheel},
		{name: "no brake on a path of 8 %", base: "labels24", set: "vehicle.slope=8 %; vehicle.brake=none", least: danger, codes: drive.CodeRollsBack, why: "it runs away with the child", from: freeWheel},
		{name: "a vehicle that drives while it is charged", base: "labels", set: plugs, least: fixFirst, codes: charge.CodeDrivesPlugged, why: "the lead is torn off, or the child drives away on the mains adaptor", from: toyCharging},
		{name: "a changed vehicle that drives while its lithium is charged", base: "lithium", set: foreign + "charger.jack=terminals; charger.blocks_driving=false", least: danger, codes: charge.CodeDrivesPlugged, why: "the cutoff and the charger work against each other", from: toyCharging},
		{name: "iron phosphate charged aboard while somebody drives", base: "iron", set: "charger.jack=terminals; charger.blocks_driving=false", least: danger, codes: charge.CodeDrivesPlugged, why: "the cutoff and the charger work against each other", from: toyCharging},
		{name: "a battery of 75 C after a drive", base: "block", set: "measured.pack_temperature=75 C", least: danger, codes: battery.CodeTooHot, why: "above 71 C", from: toySurface},
		{name: "a motor of 140 C after a drive", base: "block", set: "measured.motor_temperature=140 C", least: fixFirst, codes: drive.CodePlasticSoftens, why: "nylon end bells and gears are soft by then", from: practice},
		{name: "a tool pack of 60 C after a drive", base: "lithium", set: "measured.pack_temperature=60 C", least: fixFirst, codes: battery.CodeTooHot, why: "above the 54 C of accessible batteries, and too hot to charge", from: touching},
		{name: "a block of 58 C after a drive", base: "labels", set: "measured.pack_temperature=58 C", least: fixFirst, codes: battery.CodeTooHot, why: "above the 54 C of accessible batteries, and the sheets' 50 C", from: touching},
		{name: "iron phosphate of 66 C after a drive", base: "iron", set: "measured.pack_temperature=150 F", least: danger, codes: battery.CodeTooHot, why: "above the sheets' 60 C: the cells inside are hotter still", from: ironSheets},
		{name: "a block left connected all winter to a board of 15 mA", base: "block", set: onWinter + "-cutoff; controller.standby_current=15 mA", least: fixFirst, codes: charge.CodeStoredConnected, why: "7 Ah last 19 days of 150", from: "Ah over A (computed)"},
		{name: "a tool pack left connected all winter to a board of 15 mA", base: "lithium", set: onWinter + "controller.standby_current=15 mA; -cutoff; cutoff.controller.opens_at=16.5 V", least: danger, codes: charge.CodeStoredRunsEmpty, why: "dead within two weeks; in spring somebody charges it", from: overDeep},
		{name: "a tool pack left connected all winter to a cutoff module of 83 mA", base: "lithium", set: onWinter + "cutoff.module.standby_current=83 mA", least: danger, codes: charge.CodeStoredRunsEmpty, why: "5 Ah last 60 hours; it goes on drawing after it has opened", from: modulePower},
		{name: "iron phosphate left connected all winter to 10 mA", base: "iron", set: onWinter + "-cutoff; cutoff.controller.opens_at=12 V; controller.standby_current=10 mA", least: danger, codes: charge.CodeStoredRunsEmpty, why: "10 Ah last 42 days; charged in spring it may burn", from: overDeep},
	}
}

// keptSound are the same done as they should be.
func keptSound() []soundRig {
	return []soundRig{
		{"motors that brake, on a slope of 5 %", "block", "vehicle.slope=5 %; vehicle.brake=motors", "it creeps, and is made so", practice},
		{"a brake of its own on a slope of 5 %", "labels", "vehicle.slope=5 %; vehicle.brake=pedal", asMade, practice},
		{"3 km/h without a brake on the level", "labels6", "measured.top_speed=3 km/h; vehicle.slope=0 %; vehicle.brake=none", "below 1 m/s none is asked for", freeWheel},
		{"a vehicle that does not drive on its charger", "labels", plug12 + "charger.blocks_driving=true", "as the standard asks", toyCharging},
		{"a battery of 45 C after a summer's drive", "lithium", "measured.pack_temperature=45 C", "warm, below 54 C", touching},
		{"a winter on a shelf, parted from the vehicle", "block", "storage.from=2026-11-01; storage.until=2027-03-31; storage.temperature=10 C; storage.connected=false", "full, cool, disconnected", blockSheets},
		{"ten days connected to plain contacts", "labels", "storage.from=2026-07-01; storage.until=2026-07-11; storage.connected=true; controller.kind=contacts; controller.standby_current=0 A", "nothing draws", practice},
	}
}
