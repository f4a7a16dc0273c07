package drive

// Branch is one resistor-capacitor pair of a pack's polarisation. Either value
// zero means that the branch is absent.
type Branch struct {
	Ohm   float64 `json:"ohm"`
	Farad float64 `json:"farad"`
}

// LaunchCase is one start from rest, complete: a stranger can compute the
// launch from these numbers and the equations here alone.
type LaunchCase struct {
	OCVV             float64   `json:"ocv_v"`
	R0Ohm            float64   `json:"r0_ohm"`
	RC               [2]Branch `json:"rc"`
	PathOhm          float64   `json:"path_ohm"` // round trip, with contacts or transistors of the controller
	Motors           int       `json:"motors"`
	MotorsInSeries   int       `json:"motors_in_series"`
	WindingOhm       float64   `json:"winding_ohm"` // one motor, at its temperature
	WindingH         float64   `json:"winding_h"`   // one motor
	TorqueConstant   float64   `json:"torque_constant"`
	NoLoadA          float64   `json:"no_load_a"` // one motor
	GearRatio        float64   `json:"gear_ratio"`
	GearEfficiency   float64   `json:"gear_efficiency"`
	WheelRadiusM     float64   `json:"wheel_radius_m"`
	MassKg           float64   `json:"mass_kg"`
	RotorInertiaKgM2 float64   `json:"rotor_inertia"` // one motor
	RollN            float64   `json:"roll_n"`
	GradeN           float64   `json:"grade_n"` // positive uphill
	DragNS2PerM2     float64   `json:"drag_n_s2_m2"`
	GripN            float64   `json:"grip_n"`                  // 0 = not limited
	RampS            float64   `json:"ramp_s"`                  // 0 = full duty at once
	LimitA           float64   `json:"limit_a"`                 // total motor-side current; 0 = none
	ModuleRampS      float64   `json:"module_ramp_s,omitempty"` // 0 = none

	// Limits are only counted against; they change nothing in the launch.
	Limits Limits `json:"-"`
}

// Limits are currents that some part stands. Zero means not known: no time is
// counted above it.
type Limits struct {
	PackA                 float64 // battery current
	JointA                float64 // battery current
	SwitchA               float64 // battery current
	ControllerContinuousA float64 // total motor-side current
	ControllerPeakA       float64 // total motor-side current
}

// LaunchSample is one moment of a launch.
type LaunchSample struct {
	TimeS    float64
	BatteryA float64
	MotorA   float64 // total, motor side
	BusV     float64 // at the motor controller's input, after the path
	Duty     float64
	SpeedMS  float64 // vehicle
	WheelMS  float64 // driven wheels
	WheelN   float64 // push of the driven wheels on the ground
	PackV    float64 // at the pack's terminals
}

// LaunchResult is what a launch came to.
type LaunchResult struct {
	PeakBatteryA   float64
	PeakBatteryAtS float64
	PeakMotorA     float64 // total, motor side
	PeakMotorAtS   float64
	LowestBusV     float64 // at the motor controller's input, after the path
	LowestBusAtS   float64
	PeakWheelN     float64 // push of the driven wheels on the ground
	PeakPinionNM   float64 // torque that one motor's pinion passes on to its gear
	AboveS         Limits  // seconds, not amperes: time spent above each of the case's limits
	SurgeA2S       float64 // battery current squared above steady running's, over time: the pulse that a fuse sees
	ExtraC         float64 // coulombs above what steady running would have taken in the same time
	SteadyMS       float64 // speed the vehicle settles to, pack fully polarised
	SteadyBatteryA float64
	SpeedMS        [speedTimes]float64 // at SpeedTimesS
	EndMS          float64                   // speed at the end of the run
	EndBatteryA    float64                   // at the end of the run
	To90S          float64                   // when 90 % of SteadyMS was reached; 0 = not within the run
	Moved          bool
	Slipped        bool
	Incomplete     bool // the case is not a launch (see LaunchCase.Check) or the run was given up: do not use
}

// speedTimes is how many moments SpeedTimesS has.
const speedTimes = 9

// SpeedTimesS returns the seconds after the start at which a launch notes speed.
func SpeedTimesS() [speedTimes]float64 { return [...]float64{0.25, 0.5, 1, 2, 3, 4, 6, 8, 10} }

// Launch runs a start from rest for durationS seconds.
func Launch(c *LaunchCase, durationS float64, trace func(LaunchSample)) LaunchResult {
	return LaunchResult{Incomplete: true}
}

// SpeedAt returns the vehicle's speed in m/s at a time after the start. Moments
// of [SpeedTimesS] are exact, others lie on straight lines between them.
func (r *LaunchResult) SpeedAt(timeS float64) float64 { return 0 }
