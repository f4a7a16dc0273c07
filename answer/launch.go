package answer

// LaunchCase is one start from rest, complete: a stranger can compute the
// launch from these numbers and the equations in the documentation of package
// drive alone.
type LaunchCase struct {
	OCVV             float64   `json:"ocv_v"`
	R0Ohm            float64   `json:"r0_ohm"`
	RC               [2]Branch `json:"rc"`
	PathOhm          float64   `json:"path_ohm"` // round trip, with the contacts or transistors of the controller
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
}

// Branch is one resistor-capacitor pair of a pack's polarisation; see
// [LaunchCase].
type Branch struct {
	Ohm   float64 `json:"ohm"` // at small currents
	Farad float64 `json:"farad"`
	KneeV float64 `json:"knee_v,omitempty"` // 0 = straight
}

// CaseGives is what the representative launch comes to by itself: its
// [LaunchCase] recomputed gives the same. Behind a converter all currents and
// volts are the board's.
type CaseGives struct {
	PeakBatteryA    float64 `json:"peak_battery_a"`
	PeakBatteryAtS  float64 `json:"peak_battery_at_s"`
	PeakMotorA      float64 `json:"peak_motor_a"`
	LowestBusV      float64 `json:"lowest_bus_v"`
	BlockedBatteryA float64 `json:"blocked_battery_a"`
	SpeedKmh        float64 `json:"speed_kmh"` // steady, with the pack as it starts
}
