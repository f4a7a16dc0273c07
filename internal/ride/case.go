package ride

import (
	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/wiring"
)

// Case is one fully specified outing.
//
// With a [Load] the vehicle, the controller and the grip play no part: the
// load is drawn from the far end of the path.
type Case struct {
	Pack        *battery.Model
	StartCharge float64 // 0 to 1
	PackC       float64 // cell temperature at the start, deg C
	AmbientC    float64

	PathOhm  float64      // round trip: wire, joints, switch, fuse, controller
	Fuse     wiring.Curve // at the temperature it sits in
	Fused    bool         // whether there is a fuse at all
	Cutoffs  cutoff.Chain
	StandbyA float64 // drawn all the time beside the motors: board, lights, module

	Vehicle    drive.Vehicle
	Level      *drive.Vehicle // the same on level ground; nil where it does not climb
	Controller drive.Controller
	Limits     drive.Limits // of the parts, for counting seconds above them at launch
	Load       Load

	DriveS  float64 // pedal down, each time; > 0
	PauseS  float64 // pedal up, each time; 0 = none
	WantedS float64 // clock time after which the outing is over; 0 = until something ends it
	UntilV  float64 // bench: pack volts under load that end it; 0 = none
}

// LoadKind says what a bench load holds constant.
type LoadKind int

// The kinds of load. The zero value is a vehicle.
const (
	NoLoad LoadKind = iota
	ConstantCurrent
	ConstantPower
	CurrentPattern
)

// Load is a bench discharge, or any other thing the pack drives.
type Load struct {
	Kind    LoadKind
	Amount  float64  // A or W
	Pattern []Demand // for CurrentPattern: played once, in order
}

// Demand is one piece of a pattern.
type Demand struct {
	Sec      float64 // how long, > 0
	CurrentA float64 // negative charges
}

// End says what ended an outing.
type End int

// The ends of an outing.
const (
	StillGoing     End = iota // never in an Outcome
	CutoffOpened              // see Outcome.OpenedFirst
	PackEmpty                 // no available charge left
	FuseOpened                // the latest time that its band allows
	CannotMove                // the motors no longer overcome ground and slope
	WantedReached             // the wanted time is over
	VoltageReached            // a bench load came to its end voltage
	PatternPlayed             // a pattern was played to its end
	CannotSupply              // the pack cannot give the power or current asked for
	TooLong                   // nothing ended it within MaxClockS
)

// endNames is indexed by End.
var endNames = [...]string{
	"still going", "cutoff opened", "pack empty", "fuse opened", "cannot move",
	"wanted time reached", "end voltage reached", "pattern played", "pack cannot supply it", "time limit",
}

// String returns the end in words.
func (e End) String() string {
	if e < StillGoing || e > TooLong {
		return "unknown end"
	}
	return endNames[e]
}

// MaxClockS is the longest outing that is followed: 30 days. It keeps a load
// of next to nothing from running for ever.
const MaxClockS = 30 * 24 * 3600

// Outcome is what one outing came to.
type Outcome struct {
	PedalS      float64 // seconds with the pedal down
	ClockS      float64 // seconds in all
	DistanceM   float64
	EndedBy     End
	OpenedFirst cutoff.Place // which cutoff, when EndedBy is CutoffOpened

	DeliveredAh  float64
	DeliveredWh  float64 // at the pack's terminals
	ChargeLeft   float64 // 0 to 1
	RestV        float64 // what the pack settles at afterwards
	EndPackV     float64 // under load, at the end
	LowestPackV  float64 // at any moment
	LowestBusV   float64 // at any moment, behind the path
	LowestCellV  float64 // the weakest cell, at the end
	PeakBatteryA float64
	RMSA         float64 // root mean square of the pack's current over the whole time

	PackC       float64 // at the end
	HottestC    float64 // pack, at any moment
	WindingC    float64 // motor winding: hottest moment
	CaseC       float64 // motor case, at the end
	FuseMayOpen bool    // the earliest time that the fuse's band allows was passed
	FuseMayAtS  float64 // clock seconds at which it was
	Launches    int
	FinalSpeed  float64 // m/s at the end of the last full drive
	State       battery.State
	Chain       cutoff.Chain // the cutoffs as the outing left them
}

// Phase is what the vehicle does at a [Sample].
type Phase int

// The phases.
const (
	Driving Phase = iota
	Pausing
	Loaded // bench load
	Ended
)

// String returns the phase in a word.
func (p Phase) String() string {
	switch p {
	case Driving:
		return "driving"
	case Pausing:
		return "pausing"
	case Loaded:
		return "loaded"
	default:
		return "ended"
	}
}

// Sample is one row of an outing's time series, at the end of a step.
type Sample struct {
	ClockS   float64
	CurrentA float64
	PackV    float64
	BusV     float64
	SpeedMS  float64
	Charge   float64
	PackC    float64
	WindingC float64
	CaseC    float64
	Phase    Phase
}
