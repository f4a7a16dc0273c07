package report

// everyday says a key of a setup file as somebody would who has never seen one:
// what it is that nobody knows.
func everyday(key string) string {
	switch key {
	case "controller.kind":
		return "what switches the motors"
	case "controller.ramp":
		return "how gently it starts"
	case "controller.current_limit":
		return "whether anything limits the amps"
	case "controller.resistance", "wire.joint_resistance":
		return "how good switch and plugs are"
	case "controller.max_voltage", "vehicle.weakest_part_voltage":
		return "how many volts its electronics stand"
	case "gears.ratio":
		return "the gearing"
	case "gears.efficiency":
		return "how easily the gears turn"
	case "motors.can", "motors.winding_resistance", "motors.torque_constant", "motors.no_load_current", "motors.stall_current":
		return "which motors are inside"
	case "motors.count":
		return "how many motors it has"
	case "motors.wiring":
		return "how the motors are joined"
	case "fuse.rating":
		return "whether there is a fuse, and which"
	case "fuse.form":
		return "what kind of fuse it is"
	case "cutoff.pack.opens_at":
		return "when its own electronics switch the battery off"
	case "fuse.distance_from_pack":
		return "how far the fuse is from the battery"
	case "wire.gauge", "wire.area":
		return "how thick the wire is"
	case "wire.insulation":
		return "how much heat the wire's cover stands"
	case "wire.one_way_length":
		return "how long the wire is"
	case "pack.max_current":
		return "how many amps the battery may give"
	case "pack.cells":
		return "which cells are in the battery"
	case "pack.maker":
		return "who made the battery"
	case "pack.health":
		return "how worn the battery is"
	case "pack.resistance":
		return "how strong the battery is under load"
	case "pack.charge":
		return "how full the battery is"
	case "measured.second_rest_voltage":
		return "how many volts the other of the two has"
	case "pack.temperature", "outing.air":
		return "how warm the day is"
	case "outing.charged_at":
		return "how warm it is where it is charged"
	case "vehicle.wheel_diameter":
		return "how large the wheels are"
	case "vehicle.mass":
		return "what the vehicle weighs"
	case "rider.mass":
		return "what the child weighs"
	case "vehicle.ground":
		return "the ground it runs on"
	case "vehicle.slope":
		return "how steep it gets"
	case "outing.drive", "outing.pause":
		return "how long the pedal is held, and how long the pauses are"
	}
	return keyWords(key)
}
