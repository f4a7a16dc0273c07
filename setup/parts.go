package setup

import (
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/tables"
)

// Parts is a setup with every gap filled: what was given as it is, everything
// else as a range with its reason. Rider, Vehicle, Motors and Gears are nil on a
// bench load; Bench is nil otherwise; Wire is nil on a bench load without a
// [wire] table.
type Parts struct {
	// Setup is as read, for what needs no filling: Storage, where the charger is plugged in.
	Setup  *Setup
	Title  string
	System answer.System // in which most of the setup was written

	Rider      *RiderPart
	Vehicle    *VehiclePart
	Motors     *MotorPart
	Gears      *GearPart
	Controller ControllerPart
	Wire       *WirePart
	Fuse       FusePart
	Pack       PackPart
	Charger    ChargerPart
	Cutoffs    []CutoffPart // from the cells outwards
	Bench      *BenchPart
	Outing     OutingPart
	StoreC     Figure // temperature where the pack is put away; Known only when given

	// Measured is what was read on this vehicle with this battery, nil when nothing
	// was; of two packs in series its volts are those of both.
	Measured *Measured

	Assumed  []Assumption // in the order in which they were made; none with other choices than the likeliest
	AsMade   bool         // with a battery of its own kind and volts: the vehicle has survived this
	Untold   []string     // keys of which nothing is known and nothing was assumed
	Notes    []string     // what a reader should know about labels and words
	Original *Parts       // nil without [original]

	Tables    *tables.Tables // built in, with the user's own rows
	Chemistry *chemistry.Set // built in, with the user's own

	figures []*Figure
}

// Figures returns every figure that can stand at more than one value, in the
// order in which they were settled, those of the original last; a figure that
// the original shares is listed once.
func (p *Parts) Figures() []*Figure {
	var out []*Figure
	seen := map[string]bool{}
	add := func(list []*Figure) {
		for _, f := range list {
			if f.Uncertain() && !seen[f.Key] {
				seen[f.Key] = true
				out = append(out, f)
			}
		}
	}
	add(p.figures)
	if p.Original != nil {
		add(p.Original.figures)
	}
	return out
}

// Source returns the source that a figure, choice or assumption names.
func (p *Parts) Source(id string) (answer.Source, bool) {
	own := sources.Get()
	if i := slices.IndexFunc(own, func(s answer.Source) bool { return s.ID == id }); i >= 0 {
		return own[i], true
	}
	if p.Tables != nil {
		if s, ok := p.Tables.Source(id); ok {
			return s, true
		}
	}
	if p.Chemistry == nil {
		return answer.Source{}, false
	}
	return p.Chemistry.Source(id)
}

// RiderPart is the child.
type RiderPart struct {
	MassKg   Figure
	AgeYears Figure // Known only when given
}

// VehiclePart is the vehicle without battery and rider.
type VehiclePart struct {
	MassKg         Figure
	WheelDiameterM Figure
	DrivenShare    Figure  // share of the weight on driven wheels on the level, 0 to 1
	HeightShare    float64 // of the centre of mass over the wheelbase, where a climb shifts weight onto the driven wheels
	Tyres          Choice  // "hard" or "rubber"
	Ground         Choice  // name of a row of the ground table
	RollingM       Figure  // length coefficient of rolling resistance, m: force = weight * RollingM / wheel radius
	Grip           Figure  // friction coefficient between driven wheels and ground
	Slope          Figure  // rise per run
	DragAreaM2     Figure  // drag coefficient times frontal area, m2
	DesignV        Figure
	Board          Choice  // "yes" or "no"; not Known when the setup does not say
	WeakestPartV   Figure  // Known only when given
	RatedLoadKg    Figure  // Known only when given
	Remote         bool    // a remote control drives it and still works
	Brake          Choice  // "motors", "pedal" or "none"; not Known when the setup does not say
	Accessories    Choice  // "on the pack", "own supply" or "none"; not Known when the setup does not say
	UsualLoadKg    float64 // of the class, 0 when the table has none
	Class          string  // name of the vehicle class that defaults came from
}

// MotorPart is one motor, of Count alike. A thermal figure that the can table
// does not have is not Known.
type MotorPart struct {
	Count  Figure
	Wiring Choice // "parallel" or "series"
	Can    Choice // name of a row of the can table; not Known when nothing needed it
	RatedV Figure // Known only where a printed figure needed it

	TorqueConstant   Figure // N m/A
	WindingOhm       Figure // at 20 C
	NoLoadA          Figure
	WindingH         Figure
	RotorInertiaKgM2 Figure

	// Coupled says that constant and resistance both come from the can size:
	// they go together, because turns that raise the one raise the other with
	// the square. TorqueConstant then holds for the likely resistance, and
	// [Parts.DriveVehicle] moves it with the root of the resistance picked.
	Coupled bool
	LeastK  float64 // bounds of the torque constant when Coupled
	MostK   float64

	AmbientKPerW Figure // winding to the air, K/W, of a motor that turns
	WindingTauS  Figure
	CaseTauS     Figure
}

// GearPart is what lies between motor and wheel.
type GearPart struct {
	Ratio      Figure
	Efficiency Figure
	// Fitted says that the ratio follows from motor, wheel and the speed that the
	// vehicle had when new; Ratio then only shows where it lies.
	Fitted     bool
	NewSpeedMS Figure // level, with its own battery; Known only when Fitted
	// NewRideS is how long vehicles of the class last when new, on the battery that
	// is usual for it; Known where it is weighed (see [asNew]).
	NewRideS  Figure
	RideDoubt Figure // by what factor that may be worth less as a reading
	// NewRiseK is how much hotter than the air the windings of such vehicles run, warm
	// through on hard level ground; Known where it is weighed.
	NewRiseK Figure

	told    *newRide
	fittedV float64 // volts that one motor runs on, when new
	runKg   float64 // mass with half of the greatest load ...
	runNM   float64 // ... torque of the wheels with it on asphalt ...
	startNM float64 // ... and that with which they must start; 0 = not known
}

// ControllerPart is what switches the motors. Limits that are not Known are
// unknown, not absent.
type ControllerPart struct {
	Kind              Choice // "contacts" or "chopper"
	Ohm               Figure
	RampS             Figure
	LimitA            Figure // not Known: none that anybody told
	MaxV              Figure
	ContinuousA       Figure
	PeakA             Figure
	InputF            Figure
	StandbyA          Figure
	ConverterV        Figure // Known only with a converter
	ConverterLimitA   Figure
	InferredFromRamps bool // kind was not given but a ramp or limit was
}

// WirePart is the way from pack to controller and back. One of Gauge and
// AreaMM2 is Known.
type WirePart struct {
	Gauge       Figure // AWG or automotive number
	AreaMM2     Figure
	Automotive  bool
	OneWayM     Figure
	InsulationC Figure
	Joints      Figure // number of them
	JointOhm    Figure // each
	JointKind   Choice // Known only when given

	joint tables.Joint // of JointKind
}

// FusePart is the fuse or breaker nearest to the pack. When neither Absent nor
// Form.Known nor RatingA.Known, nothing is known: it may or may not be there.
type FusePart struct {
	Absent    bool   // the setup says that there is none
	Form      Choice // name of a row of the fuse table
	RatingA   Figure
	MaxV      Figure
	DistanceM Figure

	row tables.Fuse // of the form, or of the usual one
}

// PackPart is the battery that is asked about. When Joined it is one of two
// alike.
type PackPart struct {
	Profile       chemistry.Profile
	Chemistry     Choice
	Reading       string // what the label was understood to mean; empty without a label
	CellsInSeries int
	Strings       int
	CapacityAh    Figure
	RateS         Figure // time over which the capacity is rated, s
	ResistanceOhm Figure // whole pack; Known only when given
	// ResistanceFactor multiplies the profile's resistance, before age; Known
	// only when ResistanceOhm is not.
	ResistanceFactor Figure
	Health           Figure
	TemperatureC     Figure       // not Known: the same as the air
	Charge           Figure       // state of charge at the start
	ToldCharge       answer.Range // the same before volts at rest told it
	MaxCurrentA      Figure
	MaxChargeA       float64 // what its own sheet allows, of a range the lower end; 0 = not told
	ClosedShell      bool
	Housing          Choice
	MassKg           Figure
	Joined           string      // "", "series" or "parallel"
	Second           *SecondPart // the other of two joined packs; nil where it is like the first
	SeveralMeanings  bool        // the label can mean more than one kind of cell; the likeliest was taken
	LithiumAnyway    bool        // of those meanings all are lithium
	LiquidAcid       bool        // lead-acid that is not sealed, by its label
	Starter          bool        // lead-acid that starts engines, which mostly is not sealed
	BlocksUnclear    bool        // the label names several blocks but not how they are joined; series was taken
	SelfDischarge    Figure      // share per month

	// Members are the measured cells or blocks that it may be made of, by rising
	// resistance, and CellsAt says from 0 to 1 where in their shares it lies. One
	// member and no CellsAt where the chemistry has no family.
	Members      []chemistry.Member
	CellsAt      Figure
	Honesty      Figure  // charge when new over the label; Known only with a family
	GrowthAt80   Figure  // factor on the resistance at 80 % health; not Known: the profile's
	Steepness    Figure  // of a lead-acid block, see chemistry.Profile.Steeper; not Known: 1
	LeftBehind   Figure  // share that a lithium cell keeps from a fast discharge, see chemistry.Profile.Leaving; Known where its charge was logged at one current
	TestedHours  float64 // that the charge is known over; 0 = those of the rate
	Weakest      Figure  // share of the charge that the weakest cell lacks; not Known: the profile's
	TabsOhm      Figure  // of the pack beside its cells
	CoolingWM2K  Figure  // in still air, W/(m2 K); not Known: the profile's
	ShellShare   Figure  // of it in a closed shell; Known only in one
	HottestK     Figure  // what the highest temperature may be off
	ChargeHours  Figure  // hours of a charge over the computed ones
	WatchesCells bool    // its electronics disconnect for the weakest cell
	MayWatch     bool    // nobody told whether they do, of a battery that is mostly sold so or whose label names some
	ToolPack     bool    // cordless-tool pack with electronics of its own, as far as words and chemistry tell

	unsettled bool // its kind or volts are not told rightly: nothing can be held against them
}

// SecondPart is the other of two joined packs.
type SecondPart struct {
	Profile       chemistry.Profile
	CellsInSeries int
	CapacityAh    Figure
	Health        Figure // not Known: as the first

	mayWatch bool // as MayWatch of the first, by its own label
}

// CutoffPart is one thing that disconnects the pack; only what was given is
// here.
type CutoffPart struct {
	Where     string // "pack", "module" or "controller"
	OpensAtV  Figure // not Known: this device only has a ramp or a standby current
	DelayS    Figure
	ClosesAtV Figure // not Known: it stays open
	StandbyA  Figure
	RampS     Figure // soft start in the module
}

// BenchPart is any other load in place of a vehicle.
type BenchPart struct {
	CurrentA Figure // one of CurrentA, PowerW and Pattern is there
	PowerW   Figure
	Pattern  []Demand
	UntilV   Figure // Known only when given
}

// Demand is one piece of a pattern: so many amperes for so many seconds.
type Demand struct {
	Seconds  float64
	CurrentA float64 // negative charges
}

// OutingPart is how it is driven.
type OutingPart struct {
	AirC       Figure
	ChargedAtC Figure // of the air where it is charged; Known only when given
	DriveS     Figure
	PauseS     Figure
	WantedS    Figure // Known only when given
}
