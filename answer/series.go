package answer

// Series are the time series of the representative case, every unknown at its
// median, thinned out to at most [MostPoints] points each. They show one course
// of things; ranges are in the figures.
type Series struct {
	Outing []OutingPoint `json:"outing"`
	Launch []LaunchPoint `json:"launch"` // empty on a bench load
	// Lines are the voltages of the battery at which something disconnects it or
	// its cells are harmed, highest first.
	Lines []VoltLine `json:"lines"`
	// WindingLimitC is what the motor windings stand for long; 0 = not known.
	WindingLimitC float64 `json:"winding_limit_c"`
	EndedBy       string  `json:"ended_by"` // what ends this course, in words
}

// MostPoints is how many points a series has at most.
const MostPoints = 200

// OutingPoint is one moment of an outing. A pack at rest and a pack under load
// have different volts: PackV is what it shows at that moment.
type OutingPoint struct {
	ClockMin float64 `json:"clock_min"`
	PackV    float64 `json:"pack_v"`
	BatteryA float64 `json:"battery_a"`
	SpeedKmh float64 `json:"speed_kmh"`
	Charge   float64 `json:"charge"` // 0 to 1
	PackC    float64 `json:"pack_c"`
	WindingC float64 `json:"winding_c"`
	CaseC    float64 `json:"case_c"`
	Driving  bool    `json:"driving"` // the pedal is down, or the load on
}

// LaunchPoint is one moment of a start from rest.
type LaunchPoint struct {
	TimeS    float64 `json:"t_s"`
	BatteryA float64 `json:"battery_a"`
	BusV     float64 `json:"bus_v"`
	SpeedKmh float64 `json:"speed_kmh"`
}

// VoltLine is a voltage that means something.
type VoltLine struct {
	Name string  `json:"name"` // "the added cutoff opens", "at rest, cells are harmed below"
	V    float64 `json:"v"`
	Harm bool    `json:"harm"` // a limit of the cells, not of a device
}
