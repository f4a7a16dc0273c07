package trials_test

// aboardHazards are of riders too heavy and of remote controls.
func aboardHazards() []hazard {
	return []hazard{
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
	}
}
