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

	KeyPackMaxCurrent   = "pack.max_current"
	KeyMeasuredTopSpeed = "measured.top_speed"
)
