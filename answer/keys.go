package answer

// Keys of the setup that a finding can name in Decides, as package setup has
// them: table and key in one name.
const (
	KeyRiderAge = "rider.age"

	KeyVehicleMass               = "vehicle.mass"
	KeyVehicleWheelDiameter      = "vehicle.wheel_diameter"
	KeyVehicleGround             = "vehicle.ground"
	KeyVehicleSlope              = "vehicle.slope"
	KeyVehicleDesignVoltage      = "vehicle.design_voltage"
	KeyVehicleWeakestPartVoltage = "vehicle.weakest_part_voltage"

	KeyMotorsCan               = "motors.can"
	KeyMotorsWindingResistance = "motors.winding_resistance"
	KeyMotorsTorqueConstant    = "motors.torque_constant"
	KeyGearsRatio              = "gears.ratio"

	KeyControllerKind              = "controller.kind"
	KeyControllerMaxVoltage        = "controller.max_voltage"
	KeyControllerContinuousCurrent = "controller.continuous_current"
	KeyControllerPeakCurrent       = "controller.peak_current"
	KeyControllerRamp              = "controller.ramp"
	KeyControllerCurrentLimit      = "controller.current_limit"
	KeyControllerReverses          = "controller.reverses"
	KeyControllerResistance        = "controller.resistance"
	KeyControllerInputCapacitance  = "controller.input_capacitance"
	KeyControllerConverterLimit    = "controller.converter_limit"
	KeyCutoffModuleRamp            = "cutoff.module.ramp"

	KeyWireGauge           = "wire.gauge"
	KeyWireArea            = "wire.area"
	KeyWireInsulation      = "wire.insulation"
	KeyWireOneWayLength    = "wire.one_way_length"
	KeyWireJoint           = "wire.joint"
	KeyWireJointResistance = "wire.joint_resistance"

	KeyFuseForm             = "fuse.form"
	KeyFuseRating           = "fuse.rating"
	KeyFuseMaxVoltage       = "fuse.max_voltage"
	KeyFuseDistanceFromPack = "fuse.distance_from_pack"

	KeyMeasuredTopSpeed = "measured.top_speed"

	KeyPackLabel         = "pack.label"
	KeyPackChemistry     = "pack.chemistry"
	KeyPackCells         = "pack.cells_in_series"
	KeyPackCapacity      = "pack.capacity"
	KeyPackMaxCurrent    = "pack.max_current"
	KeyPackTemperature   = "pack.temperature"
	KeyPackCharge        = "pack.charge"
	KeyPackJoined        = "pack.joined"
	KeyPackSelfDischarge = "pack.self_discharge"

	KeyCutoffPackOpensAt        = "cutoff.pack.opens_at"
	KeyCutoffPackDelay          = "cutoff.pack.delay"
	KeyCutoffPackClosesAt       = "cutoff.pack.closes_at"
	KeyCutoffPackStandby        = "cutoff.pack.standby_current"
	KeyCutoffModuleOpensAt      = "cutoff.module.opens_at"
	KeyCutoffModuleDelay        = "cutoff.module.delay"
	KeyCutoffModuleClosesAt     = "cutoff.module.closes_at"
	KeyCutoffModuleStandby      = "cutoff.module.standby_current"
	KeyCutoffControllerOpensAt  = "cutoff.controller.opens_at"
	KeyCutoffControllerDelay    = "cutoff.controller.delay"
	KeyCutoffControllerClosesAt = "cutoff.controller.closes_at"
	KeyCutoffControllerStandby  = "cutoff.controller.standby_current"
	KeyControllerStandby        = "controller.standby_current"

	KeyChargerLabel        = "charger.label"
	KeyChargerMadeFor      = "charger.made_for"
	KeyChargerVoltage      = "charger.voltage"
	KeyChargerCurrent      = "charger.current"
	KeyChargerStops        = "charger.stops"
	KeyChargerOutput       = "charger.output"
	KeyChargerPolarity     = "charger.polarity"
	KeyChargerJackPolarity = "charger.jack_polarity"
	KeyChargerJack         = "charger.jack"

	KeyOutingAir          = "outing.air"
	KeyStorageFrom        = "storage.from"
	KeyStorageUntil       = "storage.until"
	KeyStorageTemperature = "storage.temperature"

	KeyMeasuredRestVoltage   = "measured.rest_voltage"
	KeyMeasuredHoursRested   = "measured.hours_rested"
	KeyMeasuredLoadedVoltage = "measured.loaded_voltage"
	KeyMeasuredLoadedCurrent = "measured.loaded_current"
)
