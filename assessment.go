package packcheck

import (
	"example.org/packcheck/drive"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// Schema names the shape of an [Assessment] written as JSON. Keys are added
// under the same name; a renamed or removed key makes a new one.
const Schema = "packcheck/1"

// Range is a figure with its spread: Low <= Likely <= High.
type Range = quantity.Range

// Topics group findings and notes by the part of the report they belong to.
const (
	TopicPack     = "pack"
	TopicRide     = "ride"
	TopicSpeed    = "speed"
	TopicLaunch   = "launch"
	TopicPath     = "path"
	TopicCutoff   = "cutoff"
	TopicCharge   = "charge"
	TopicOriginal = "original"
)

// Assessment is the whole answer for one setup. Every report is a rendering
// of this one value.
//
// Plain numbers are the likely case. Ranges holds the spread of those figures
// that the unknowns move, under the figure's JSON path ("ride.pedal_min"). A
// nil pointer is a figure that does not exist for this setup, never a zero.
type Assessment struct {
	Schema   string           `json:"schema"`
	Title    string           `json:"title"`
	Verdict  answer.Level    `json:"verdict"`
	Headline [3]string        `json:"headline"` // verdict, largest risk, next step
	Pack     PackFigures      `json:"pack"`
	Steady   *SteadyFigures   `json:"steady"` // nil on a bench load
	Launch   *LaunchFigures   `json:"launch"` // nil on a bench load
	Path     *PathFigures     `json:"path"`   // nil when no path was described and none is assumed
	Ride     RideFigures      `json:"ride"`
	Cutoff   CutoffFigures    `json:"cutoff"`
	Charge   *ChargeFigures   `json:"charge"`   // nil without [charger]
	Original *OriginalFigures `json:"original"` // nil without [original]
	Storage  *StorageFigures  `json:"storage,omitempty"`
	Measured []MeasuredFigure `json:"measured,omitempty"`

	Ranges   map[string]Range  `json:"ranges"`
	Findings []answer.Finding `json:"findings"` // worst first
	Notes    []Note            `json:"notes"`    // common misreadings, each beside its topic
	Changes  []string          `json:"changes"`  // what to change, in order
	Habits   []string          `json:"habits"`   // how to use it as it is judged; they put nothing right
	Assumed  []Assumed         `json:"assumed"`  // most important first
	Measure  []Measurement     `json:"measure"`  // at most three, most useful first
	Cautions []string          `json:"cautions"` // in every format and length
	Sources  []answer.Source  `json:"sources"`  // those that this answer rests on

	// CautionSources are the sources of the cautions, in their order.
	CautionSources []string `json:"caution_sources"`

	// System is the unit system the user wrote in; reports print it first.
	System quantity.System `json:"-"`
}

// PackFigures describes the pack itself.
type PackFigures struct {
	Chemistry     string  `json:"chemistry"`
	Reading       string  `json:"reading"` // what the label was understood to mean
	CellsInSeries int     `json:"cells_in_series"`
	Strings       int     `json:"strings"`
	FullV         float64 `json:"full_v"`
	NominalV      float64 `json:"nominal_v"`
	EmptyV        float64 `json:"empty_v"`
	RatedAh       float64 `json:"rated_ah"`
	UsableAh      float64 `json:"usable_ah"` // at this load, to its end
	UsableWh      float64 `json:"usable_wh"`
	ResistanceOhm float64 `json:"resistance_ohm"` // at mid charge and the setup's temperature
	ShortCircuitA float64 `json:"short_circuit_a"`
	MassKg        float64 `json:"mass_kg"`
}

// SteadyFigures describes level running with a charged pack.
type SteadyFigures struct {
	SpeedKmh   float64 `json:"speed_kmh"`
	BatteryA   float64 `json:"battery_a"`
	MotorA     float64 `json:"motor_a"`
	BusV       float64 `json:"bus_v"`
	Efficiency float64 `json:"efficiency"` // wheel power over pack power, 0 to 1
}

// SpeedPoint is the speed at a time after the pedal went down.
type SpeedPoint struct {
	TimeS float64 `json:"t_s"`
	Kmh   float64 `json:"kmh"`
}

// LaunchFigures describes one start from rest with a full, rested pack.
type LaunchFigures struct {
	PeakBatteryA    float64          `json:"peak_battery_a"`
	PeakBatteryAtS  float64          `json:"peak_battery_at_s"`
	PeakMotorA      float64          `json:"peak_motor_a"`
	LowestBusV      float64          `json:"lowest_bus_v"`
	BlockedBatteryA float64          `json:"blocked_battery_a"`
	BlockedMotorA   float64          `json:"blocked_motor_a"`
	BlockedStandsS  *float64         `json:"blocked_stands_s"` // until the winding reaches its limit
	SpeedAfter      []SpeedPoint     `json:"speed_after_s"`
	Slips           bool             `json:"slips"`
	AboveS          []AboveLimit     `json:"above_s,omitempty"`
	ReversalA       float64          `json:"reversal_a"`
	SparkA          *float64         `json:"spark_a"`       // plug-in spark, nil without an input capacitor
	SparkJ          *float64         `json:"spark_j"`       // energy of the spark
	PrechargeOhm    *float64         `json:"precharge_ohm"` // resistor that tames it
	Case            drive.LaunchCase `json:"case"`          // what the launch was computed from
}

// AboveLimit is how long a launch stays above a part's limit.
type AboveLimit struct {
	Part   string  `json:"part"`
	LimitA float64 `json:"limit_a"`
	Sec    float64 `json:"s"`
}

// PathElement is one part of the way from pack to motors.
type PathElement struct {
	Name  string  `json:"name"`
	Ohm   float64 `json:"ohm"`
	DropV float64 `json:"drop_v"` // at running current
	HeatW float64 `json:"heat_w"` // at running current
}

// PathFigures describes wire, joints, switch and fuse.
type PathFigures struct {
	ResistanceOhm      float64       `json:"resistance_ohm"`
	DropV              float64       `json:"drop_v"`
	DropPct            float64       `json:"drop_pct"`
	AmpacityA          float64       `json:"ampacity_a"`
	FuseLeastA         *float64      `json:"fuse_least_a"` // nil when no rating suits
	FuseMostA          *float64      `json:"fuse_most_a"`
	FuseSizesA         []float64     `json:"fuse_sizes_a"` // standard sizes that lie in the band
	ShortCircuitA      float64       `json:"short_circuit_a"`
	ShortCircuitClearS *float64      `json:"short_circuit_clear_s"` // nil when nothing clears it
	WireLimitS         *float64      `json:"wire_limit_s"`
	Elements           []PathElement `json:"elements"`
}

// RideFigures describes one outing.
type RideFigures struct {
	PedalMin   float64  `json:"pedal_min"` // minutes with the pedal down
	ClockMin   float64  `json:"clock_min"`
	DistanceKm float64  `json:"distance_km"`
	EndedBy    string   `json:"ended_by"`
	WantedMin  *float64 `json:"wanted_min"` // by the clock; nil when no time was asked for
	// What the pack would give with no wanted time to stop it.
	LastsPedalMin float64  `json:"lasts_pedal_min"`
	LastsClockMin float64  `json:"lasts_clock_min"`
	LastsUntil    string   `json:"lasts_until"`
	RestVAfter    float64  `json:"rest_v_after"`
	ChargeLeft    float64  `json:"charge_left"` // 0 to 1
	DeliveredAh   float64  `json:"delivered_ah"`
	DeliveredWh   float64  `json:"delivered_wh"`
	MotorCaseC    *float64 `json:"motor_case_c"` // nil on a bench load
	WindingC      *float64 `json:"winding_c"`
	PackC         float64  `json:"pack_c"`
	Launches      int      `json:"launches"`
}

// AdvisedCutoff is a setting that suits this pack and this launch.
type AdvisedCutoff struct {
	OpensAtV  float64 `json:"opens_at_v"`
	DelayS    float64 `json:"delay_s"`
	ClosesAtV float64 `json:"closes_at_v"` // 0 = it should stay open
	MustLatch bool    `json:"must_latch"`
}

// CutoffFigures describes what disconnects the pack.
type CutoffFigures struct {
	OpensFirst     string         `json:"opens_first"` // "pack", "module", "controller" or "nothing"
	OpensAtCharge  *float64       `json:"opens_at_charge"`
	WeakestCellV   float64        `json:"weakest_cell_v"`
	ChatterCount   int            `json:"chatter_count"`
	IdleDaysToHarm *float64       `json:"idle_days_to_harm"` // nil when it never gets there
	LeftForAWeek   string         `json:"left_for_a_week"`   // in words; empty on a bench
	Advised        *AdvisedCutoff `json:"advised"`
}

// ChargeFigures describes the charger on the pack.
type ChargeFigures struct {
	Match        string   `json:"match"` // "yes", "no" or "unknown"
	Reasons      []string `json:"reasons"`
	HoursTo80    *float64 `json:"hours_to_80"`
	HoursToFull  *float64 `json:"hours_to_full"`
	UnplugAfterH *float64 `json:"unplug_after_h"`
	EndVPerCell  *float64 `json:"end_v_per_cell"`
}

// OriginalFigures compares with the vehicle as it left the factory: each
// figure is this setup's value over the original's, nil where either has none.
type OriginalFigures struct {
	SpeedRatio          *float64 `json:"speed_ratio"`
	LaunchCurrentRatio  *float64 `json:"launch_current_ratio"`
	BlockedCurrentRatio *float64 `json:"blocked_current_ratio"`
	ToothLoadRatio      *float64 `json:"tooth_load_ratio"`
	MotorHeatRatio      *float64 `json:"motor_heat_ratio"`
	RideRatio           *float64 `json:"ride_ratio"`
	FaultCurrentRatio   *float64 `json:"fault_current_ratio"`
	OriginalSpeedKmh    *float64 `json:"original_speed_kmh"`
	OriginalPedalMin    *float64 `json:"original_pedal_min"`
	OriginalLaunchA     *float64 `json:"original_launch_a"`
}

// StorageDate is one thing to do while the pack is put away.
type StorageDate struct {
	Date string `json:"date"` // year-month-day
	Do   string `json:"do"`
}

// StorageFigures describes the winter.
type StorageFigures struct {
	ChargeLeft float64       `json:"charge_left"` // at the end, with nothing done
	StoreAt    float64       `json:"store_at"`    // charge to put it away at
	Dates      []StorageDate `json:"dates"`
}

// MeasuredFigure sets something the user measured beside what was computed.
type MeasuredFigure struct {
	Name     string `json:"name"`
	Measured string `json:"measured"`
	Computed string `json:"computed"`
	Says     string `json:"says"`
}

// Note corrects a common misreading beside the number it concerns.
type Note struct {
	Topic string `json:"topic"`
	Text  string `json:"text"`
}

// Assumed is a value the setup did not give.
type Assumed struct {
	Key   string `json:"key"`
	Value string `json:"value"`
	Why   string `json:"why"`
	// Source is the ID of its source.
	Source string `json:"source"`
	// Effect is how far it moves ride time, speed and launch current, as shares
	// of their likely values added up; 0 where it was assumed without a range or
	// where its range moves none of them.
	Effect float64 `json:"effect"`
}

// Measurement is something to measure next, and what it would narrow.
type Measurement struct {
	What    string `json:"what"`
	How     string `json:"how"`
	Narrows string `json:"narrows"`
}
