package trials_test

import (
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
)

// aboardHazards are of riders too heavy, of remote controls and of what does not fit.
func aboardHazards() []hazard {
	return []hazard{
		{name: "a pack longer than its tray", base: "lithium", set: "pack.size=180 x 80 x 80 mm; vehicle.tray=155 x 100 x 100 mm", least: fixFirst, codes: judge.CodePackNotInTray, why: "it stands loose and chafes its wires", from: practice},
		{name: "a block that only lies in its tray", base: "block", set: "pack.size=151 x 65 x 94 mm; vehicle.tray=155 x 100 x 70 mm", least: watch, codes: judge.CodePackOnItsSide, why: "not every sealed block may lie", from: practice},
		{name: "a 775 in the gearbox of a 550", base: "direct", set: "motors.can_diameter=42 mm; vehicle.motor_seat=36 mm", least: fixFirst, codes: judge.CodeMotorNotInSeat, why: "it does not go in", from: practice},
		{name: "a gear of 14 mm on an axle of 12 mm", base: "lithium", set: "gears.bore=14 mm; vehicle.axle=12 mm", least: fixFirst, codes: judge.CodeGearsNotOnAxle, why: "it wobbles and strips", from: practice},
		// needs key vehicle.rated_load
		{
			name: "40 kg on a vehicle for 25 kg", base: "block", set: "rider.mass=40 kg; rider.age=11 years; vehicle.rated_load=25 kg", least: fixFirst, codes: wantOverload,
			why: "1.6 times the rated load", from: riderLimit,
		},
		{
			name: "80 kg on a vehicle for 25 kg", base: "block", set: "rider.mass=80 kg; rider.age=30 years; vehicle.rated_load=25 kg", least: danger, codes: wantOverload,
			why: "three times the rated load: axle and seat give way under the rider", from: "overload test of three times the child's mass, ASTM F963 4.15 (memory)",
		},
		// needs key vehicle.remote_control
		{
			name: "remote control left in place on a tool pack, no converter", base: "lithium", set: noConverter + "vehicle.has_board=true; vehicle.remote_control=true; controller.max_voltage=15 V", least: danger,
			why: "the board that receives it sees 21 V; a lost remote is a lost brake", from: practice,
		},
		{
			name: "remote control at 15 km/h", base: "labels", set: "vehicle.has_board=true; vehicle.remote_control=true; measured.top_speed=15 km/h; rider.age=2 years", least: danger,
			why: "whoever holds it reacts in 0.9 s and has no brake either", from: "AASHTO: unexpected reaction 0.90 s at the median (copy)",
		},
		{
			name: "12 V radio and lights on an 18 V pack", base: "lithium", set: noConverter + "vehicle.accessories=on the pack", least: fixFirst, codes: drive.CodeAccessoryVolts,
			why: "1.75 times the volts: a lamp burns out, a radio may burn, and a steering motor turns harder than it was made for", from: practice,
		},
		{
			name: "12 V lights on 24 V of blocks", base: "block", set: "pack.label=24 V (two 12 V) 7 Ah; cutoff.module.opens_at=21 V; -charger; vehicle.accessories=on the pack", least: fixFirst, codes: drive.CodeAccessoryVolts,
			why: "twice the volts", from: practice,
		},
		{
			name: "a 12 Ah and a 7 Ah block in series", base: "pair", set: "pack.label=12 V 12 Ah; pack.joined=series; pack.second.label=12 V 7 Ah", least: fixFirst, codes: battery.CodeUnlikePacks,
			why: "the weaker one is driven backwards each time", from: toyMixed,
		},
		{
			name: "an old and a new block in series", base: "pair", set: "pack.label=12 V 12 Ah; pack.joined=series; pack.second.label=12 V 12 Ah; pack.second.health=50 %", least: fixFirst, codes: battery.CodeUnlikePacks + "|" + battery.CodeSeriesUnequalCharge,
			why: "the weaker one is driven backwards each time", from: toyMixed,
		},
		{
			name: "a tool pack in parallel with a block", base: "lithium", set: "pack.joined=parallel; pack.second.chemistry=agm; pack.second.label=12 V 7 Ah; -charger", least: danger, codes: battery.CodeParallelMixedChemistry, refused: true,
			why: "one charges the other without end", from: toyMixed,
		},
		{
			name: "two tool packs in parallel at 20.8 and 18.0 V", base: "lithium", set: "pack.joined=parallel; measured.rest_voltage=20.8 V; measured.second_rest_voltage=18.0 V", least: danger, codes: battery.CodeParallelEqualising,
			why: "30 A and more flow from one into the other when they are joined", from: equalising,
		},
		{
			name: "two tool packs in parallel at 20.8 and 20.3 V", base: "lithium", set: "pack.joined=parallel; measured.rest_voltage=20.8 V; measured.second_rest_voltage=20.3 V", least: fixFirst, codes: battery.CodeParallelEqualising + "|" + charge.CodeChargedInParallel,
			why: "5 A, the most that one of them may be charged with", from: equalising,
		},
		{
			name: "two blocks in series at 12.8 and 10.5 V", base: "pair", set: "-pack.charge; measured.rest_voltage=12.8 V; measured.second_rest_voltage=10.5 V", least: fixFirst,
			why: "the second has a dead cell and is driven backwards", from: blockSheets,
		},
		{
			name: "two tool packs in series at 20.8 and 15.0 V", base: "lithium", set: "pack.joined=series; controller.max_voltage=60 V; fuse.max_voltage=58 V; cutoff.module.opens_at=33 V; -charger; measured.rest_voltage=20.8 V; measured.second_rest_voltage=15 V", least: danger, codes: battery.CodeSeriesUnequalCharge,
			why: "one is empty before the ride begins and is driven backwards at once", from: weakCell,
		},
		{
			name: "two tool packs in parallel whose cells nobody watches", base: "lithium", set: "pack.joined=parallel; pack.watches_cells=false; pack.health=60 %", least: watch, codes: weak,
			why: "the weakest cell is driven below its limit although the pack's volts look right", from: weakCell,
		},
	}
}
