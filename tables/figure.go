package tables

import (
	"math"
)

// FigureName names a single published number.
type FigureName string

// The single figures; each one has a row, with its source, in data/figures.toml
// or in the file of its subject.
const (
	CopperResistivity    FigureName = "copper-resistivity"        // Ohm m at 20 degC
	CopperZeroBelow      FigureName = "copper-zero-below"         // K: R goes with (this + degC)
	AdiabaticConstant    FigureName = "adiabatic-constant"        // A sqrt(s)/mm2, copper
	AdiabaticLongest     FigureName = "adiabatic-longest"         // s: the law holds up to here
	PreeceCopper         FigureName = "preece-copper"             // A per inch^1.5
	CopperMelts          FigureName = "copper-melts"              // degC
	AutomotiveExtra      FigureName = "automotive-extra"          // x: resistance over AWG of the same number
	FuseShareOfAmpacity  FigureName = "fuse-share-of-ampacity"    // x: largest fuse over ampacity
	FuseReachBare        FigureName = "fuse-reach-bare"           // m of wire from the pack to the fuse
	FuseReachSheathed    FigureName = "fuse-reach-sheathed"       // m, wire sheathed all the way
	ContinuousLoad       FigureName = "continuous-load"           // x: steady current over fuse rating
	PulseRest            FigureName = "pulse-rest"                // s between pulses that count one by one
	DropCritical         FigureName = "drop-critical"             // x of the full voltage
	DropOrdinary         FigureName = "drop-ordinary"             // x of the full voltage
	JointWatch           FigureName = "joint-heat-watch"          // W in one joint
	JointHot             FigureName = "joint-heat-replace"        // W in one joint
	SwitchInrush         FigureName = "switch-inrush"             // x running current that a switch should bear
	AutoResetTime        FigureName = "auto-reset-time"           // s until a self-resetting breaker closes
	PackResetTime        FigureName = "pack-reset-time"           // s until a pack's electronics let go again
	PolymerResetTime     FigureName = "polymer-reset-time"        // s until a polymer resettable fuse has cooled
	ToyVoltage           FigureName = "toy-voltage"               // V DC nominal, largest
	BatterySurface       FigureName = "battery-surface"           // degC, largest
	TouchRiseMetal       FigureName = "touch-rise-metal"          // K, metal parts held in the hand
	TouchRisePlastic     FigureName = "touch-rise-plastic"        // K, plastic parts held in the hand
	BurnsIn1s            FigureName = "burns-in-1s"               // degC, bare metal on skin for so long
	BurnsIn10s           FigureName = "burns-in-10s"              // degC
	BurnsIn1min          FigureName = "burns-in-1min"             // degC
	BurnsIn10min         FigureName = "burns-in-10min"            // degC
	BurnsIn8h            FigureName = "burns-in-8h"               // degC, and longer
	ChildReaction        FigureName = "child-reaction"            // s at 5 years
	AdultReaction        FigureName = "adult-reaction"            // s, unexpected
	DesignDeceleration   FigureName = "design-deceleration"       // m/s2
	BrakeFreeSpeed       FigureName = "brake-free-speed"          // m/s: slower electric cars need no brake
	StabilitySlope       FigureName = "stability-slope"           // degrees sideways
	OverloadFactor       FigureName = "overload-factor"           // x child weight
	MotorTorqueShare     FigureName = "motor-torque-share"        // x: printed stall torque over stall current times K
	ClassHalfLife        FigureName = "class-half-life"           // K of rise that halve winding life
	PlasticSoftens       FigureName = "plastic-softening-point"   // degC, end bells and gears
	NewMotorRise         FigureName = "new-motor-rise"            // K over the air, windings in a vehicle as it was made
	GearStageEfficiency  FigureName = "gear-stage-efficiency"     // x per stage
	MagnetFluxLoss       FigureName = "magnet-flux-loss"          // x per K
	SoftStartRamp        FigureName = "soft-start-ramp"           // s
	CarpetAdds           FigureName = "carpet-adds"               // x, rolling coefficient carpet over linoleum
	LargestHardWheelTest FigureName = "largest-hard-wheel-test"   // m, wheel diameter up to which c_l was measured
	TerminalTestDrop     FigureName = "terminal-test-drop"        // V at a tenth of the rated current
	BrushDrop            FigureName = "brush-drop"                // V, both brushes
	SmallestWireOutside  FigureName = "smallest-wire-outside"     // mm2, a single wire outside a sheath
	FuseTimeNotBelow     FigureName = "fuse-time-not-below"       // s: no shorter clearing time is credited
	FuseHotFactor        FigureName = "fuse-hot-factor"           // x: resistance at rated current over cold
	SwitchContactOhm     FigureName = "switch-contact-resistance" // Ohm, a used pedal switch
	TabWireMost          FigureName = "tab-wire-most"             // mm2, thickest wire of a flat quick-connect
	ToyVoltageEU         FigureName = "toy-voltage-eu"            // V, largest
	ContinuousLoadMost   FigureName = "continuous-load-most"      // x: the more generous rule
	ClassRiseReference   FigureName = "class-rise-reference"      // degC that rises are counted over
	AWGRatio             FigureName = "awg-ratio"                 // x: diameter of one size over the next
	RubberRollingShare   FigureName = "rubber-rolling-share"      // x: rolling of a rubber-faced wheel over a hard one
	RearAxleShare        FigureName = "rear-axle-share"           // x: weight on the rear wheels, child in the seat, over all of it
	HeightOverWheelbase  FigureName = "height-over-wheelbase"     // x: of the centre of mass of vehicle and child
)

// What batteries spread over, as the 5, 50 and 95 % points; rows in
// data/battery.toml. Health by age is meant for what a battery still holds over
// what it held when new, honesty for that over the label.
const (
	LabelHonestyLithium     FigureName = "label-honesty-lithium"     // x: charge of a new lithium pack of the tool's maker over its label
	LabelHonestyLookalike   FigureName = "label-honesty-lookalike"   // x: charge of a new look-alike lithium pack over its label
	LabelHonestyUnknown     FigureName = "label-honesty-unknown"     // x: charge of a new lithium pack over its label, maker's own or look-alike
	LabelHonestyLead        FigureName = "label-honesty-lead"        // x: charge of a new sealed lead-acid battery over its label
	PeukertLead             FigureName = "peukert-lead"              // exponent: Peukert's exponent of sealed lead-acid between 20 h and 1 h
	HourShareLead           FigureName = "hour-share-lead"           // x: charge at the 1 h rate over that at the 20 h rate, sealed lead-acid
	ResistanceWithinLithium FigureName = "resistance-within-lithium" // x: resistance of a new lithium cell over that of its model
	ResistanceOtherLithium  FigureName = "resistance-other-lithium"  // x: resistance of a new lithium cell of any model over that of the member drawn
	SteepnessLead           FigureName = "steepness-lead"            // x: depth of the bound well of a block of any kind over that of the member drawn
	SteepnessOwnLead        FigureName = "steepness-own-lead"        // x: depth of the bound well of a block over that of general blocks
	SteepnessOwnLithium     FigureName = "steepness-own-lithium"     // x: depth of the bound well of a lithium cell over the fitted one
	LeftBehindLithium       FigureName = "left-behind-lithium"       // x: share that a lithium cell keeps from a fast discharge
	HottestDoubt            FigureName = "hottest-doubt"             // K: highest temperature over the computed one
	ChargeHoursDoubt        FigureName = "charge-hours-doubt"        // x: hours of a lithium charge over the computed ones
	ResistanceWithinLead    FigureName = "resistance-within-lead"    // x: resistance of a new sealed lead-acid block over that of its kind
	PackTabs                FigureName = "pack-tabs"                 // Ohm: resistance of tabs and terminals of a tool pack
	WeakestCellNew          FigureName = "weakest-cell-new"          // x: share of the charge that the weakest cell of a new pack lacks
	WeakestCellUsed         FigureName = "weakest-cell-used"         // x: share of the charge that the weakest cell of a used pack lacks
	HealthLeadNew           FigureName = "health-lead-new"           // x: health of a sealed lead-acid battery: new
	HealthLeadYear1         FigureName = "health-lead-1y"            // x: health of a sealed lead-acid battery: one year
	HealthLeadYear2         FigureName = "health-lead-2y"            // x: health of a sealed lead-acid battery: two years
	HealthLeadYear3         FigureName = "health-lead-3y"            // x: health of a sealed lead-acid battery: three years
	HealthLeadWorn          FigureName = "health-lead-worn"          // x: health of a sealed lead-acid battery: worn
	HealthLeadSpent         FigureName = "health-lead-spent"         // x: health of a sealed lead-acid battery: all but dead
	HealthLithiumNew        FigureName = "health-lithium-new"        // x: health of a lithium pack: new
	HealthLithiumYear1      FigureName = "health-lithium-1y"         // x: health of a lithium pack: one year
	HealthLithiumYear2      FigureName = "health-lithium-2y"         // x: health of a lithium pack: two years
	HealthLithiumYear3      FigureName = "health-lithium-3y"         // x: health of a lithium pack: three years
	HealthLithiumWorn       FigureName = "health-lithium-worn"       // x: health of a lithium pack: worn
	GrowthLithium           FigureName = "growth-lithium"            // x: resistance at 80 % health over that when new, lithium
	GrowthLead              FigureName = "growth-lead"               // x: resistance at 80 % health over that when new, sealed lead-acid
	GrowthLeadSpent         FigureName = "growth-lead-spent"         // x: resistance at 80 % health over that when new, sealed lead-acid that dried out or stood flat
	CoolingBare             FigureName = "cooling-bare"              // W/(m2 K): cooling of a bare battery in air
	CoolingStill            FigureName = "cooling-still"             // W/(m2 K): cooling of a bare battery where no fan blows
	CoolingShell            FigureName = "cooling-shell"             // x: cooling in a closed shell over that in free air
)

// Figure is one published number (or range) with its unit and source.
type Figure struct {
	Name FigureName
	What string // what it is, in words
	Unit string // SI, as in findings
	Value
}

// Figure returns the figure of this name. Every FigureName of this package
// has a row; for any other name all numbers are NaN, so that the mistake
// cannot pass for a limit.
func (t *Tables) Figure(name FigureName) Figure {
	f, ok := t.figures.Get(string(name))
	if !ok {
		nan := math.NaN()
		return Figure{Name: name, Value: Value{Low: nan, Likely: nan, High: nan}}
	}
	return f
}

// Figures returns all figures, sorted by name.
func (t *Tables) Figures() []Figure {
	return valuesOf(t.figures, func(f Figure) Figure { return f })
}

func readFigure(t *Tables, w *row) {
	f := Figure{Name: FigureName(w.name()), What: w.text("what"), Unit: w.textOr("unit", "")}
	w.source()
	anything := span{-1e6, 1e9}
	if w.has("range") {
		f.Value = w.value("range", anything)
	} else {
		x := w.number("value", anything)
		f.Value = Value{Low: x, Likely: x, High: x, Source: w.origin}
	}
	put(w, &t.figures, f)
}
