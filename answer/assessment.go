package answer

import (
	"fmt"
	"slices"
	"strings"
)

// Schema names the shape of an [Assessment] written as JSON. Keys are added
// under the same name; a renamed or removed key makes a new one.
const Schema = "packcheck/1"

// Assessment is the whole answer for one setup. Every report is a rendering
// of this one value.
//
// Plain numbers are medians over the draws. Ranges holds, for every figure that
// the unknowns move, the range in which eight of ten draws lie, under the
// figure's JSON path ("ride.pedal_min"); packcheck.RangePaths lists these. A path that it
// does not have is of a figure that is exact or that no draw has, or is no path at all:
// ask for r, ok. A nil pointer is a figure that does not
// exist in at least half of the draws, never a zero.
type Assessment struct {
	Schema   string           `json:"schema"`
	Title    string           `json:"title"`
	Verdict  Level            `json:"verdict"`
	Headline [3]string        `json:"headline"` // verdict without its level; first reason, with how sure it is; next step
	Draws    DrawFigures      `json:"draws"`
	Pack     PackFigures      `json:"pack"`
	Steady   *SteadyFigures   `json:"steady"` // nil on a bench load
	Launch   *LaunchFigures   `json:"launch"` // nil on a bench load
	Path     *PathFigures     `json:"path"`   // nil when no path was described and none is assumed
	Ride     RideFigures      `json:"ride"`
	Cutoff   CutoffFigures    `json:"cutoff"`
	Charge   *ChargeFigures   `json:"charge"`
	Original *OriginalFigures `json:"original"` // nil without [original]
	Storage  *StorageFigures  `json:"storage,omitempty"`
	Readings []Reading        `json:"readings,omitempty"` // what conditions the draws
	Conflict *Conflict        `json:"conflict,omitempty"` // readings that cannot all be true
	Measured []MeasuredFigure `json:"measured,omitempty"` // what else follows from what was measured

	Series   *Series          `json:"series,omitempty"` // the course of the representative case
	Ranges   map[string]Range `json:"ranges"`
	Findings []Finding        `json:"findings"`              // worst first
	Items    []ItemVerdict    `json:"by_part"`               // what each thing comes to, one word and one line
	Notes    []Note           `json:"notes"`                 // common misreadings, each beside its topic
	Changes  []string         `json:"changes"`               // what to change, in order
	Buy      []Purchase       `json:"buy"`                   // what may have to be bought
	Ways     []Way            `json:"ways,omitempty"`        // ways out that were computed, best first; of what is only to be watched a new battery
	Sought   bool             `json:"ways_sought,omitempty"` // ways out were searched: where there are none then, nothing that was tried helps
	Habits   []string         `json:"habits"`                // how to use it as it is judged; they put nothing right
	Assumed  []Assumed        `json:"assumed"`               // most important first
	Measure  []Measurement    `json:"measure"`               // at most five, see [Measurement]
	Cautions []string         `json:"cautions"`              // in every format and length
	Sources  []Source         `json:"sources"`               // those that this answer rests on

	// CautionSources are the sources of the cautions, in their order.
	CautionSources []string `json:"caution_sources"`

	// System is the unit system the user wrote in; reports print it first.
	System System `json:"-"`
}

// ChargerOut reports whether what was found keeps the charger from being used.
func (a *Assessment) ChargerOut() bool {
	return slices.ContainsFunc(a.Findings, func(f Finding) bool { return f.ChargerOut() })
}

// TooYoung is the finding that whoever drives is too young for it, where that stands
// plainly and no way out was found; nil where it does not. No question is left then that
// could change it.
func (a *Assessment) TooYoung() *Finding {
	i := slices.IndexFunc(a.Findings, func(f Finding) bool {
		return f.OfAge && f.Level >= FixFirst && f.Certainty == Plain
	})
	if i < 0 || len(a.Ways) > 0 {
		return nil
	}
	return &a.Findings[i]
}

// Finished reports whether the battery is one that nobody charges or uses any more.
func (a *Assessment) Finished() bool {
	return slices.ContainsFunc(a.Findings, func(f Finding) bool { return f.Finished && f.Level == Danger })
}

// NeverRidden reports whether the battery is one that nobody rides with, so that minutes,
// speed and what a start takes are of no use. They are computed all the same; reports for
// people leave them out.
func (a *Assessment) NeverRidden() bool {
	return slices.ContainsFunc(a.Findings, func(f Finding) bool {
		return f.NeverRidden && f.Level >= FixFirst && (f.Certainty == Plain || f.Certainty == Likely)
	})
}

// First is the finding that is told first: the gravest, but whose child is too young is told
// that before what must be changed to ride, though not before a danger of charging or of
// today, which harms without a ride. Where nothing is a danger, what was read on a battery
// that rests badly comes before the rest: for its sake somebody asks. Nil without findings.
func (a *Assessment) First() *Finding {
	if len(a.Findings) == 0 {
		return nil
	}
	gravest := &a.Findings[0]
	if young := a.TooYoung(); young != nil && !a.Urgent() && !(gravest.Level == Danger && gravest.Topic == TopicCharge) {
		return young
	}
	if gravest.Level == FixFirst {
		if i := slices.IndexFunc(a.Findings, func(f Finding) bool { return f.RestsBadly() }); i >= 0 {
			return &a.Findings[i]
		}
	}
	return gravest
}

// PassedOver counts, by whom they may hurt, the findings that are graver than the first of
// [Assessment.First] where that is a battery that rests badly: "child: 1, fire: 2". Whoever tells
// only that one first names them beside it. Empty where there are none.
func (a *Assessment) PassedOver() string {
	first := a.First()
	if first == nil || !first.RestsBadly() {
		return ""
	}
	var harmed [Child + 1]int
	for i := 0; &a.Findings[i] != first; i++ {
		harmed[a.Findings[i].Harm]++
	}
	var parts []string
	for h := Child; h >= House; h-- {
		if n := harmed[h]; n > 0 {
			parts = append(parts, fmt.Sprintf("%s: %d", h.AtRisk(), n))
		}
	}
	return strings.Join(parts, ", ")
}

// Urgent reports whether the gravest finding is a danger to be ended today: then that is
// the next step, whichever way out is taken later.
func (a *Assessment) Urgent() bool {
	return len(a.Findings) > 0 && a.Findings[0].Level == Danger && a.Findings[0].Today
}

// TriedFirst is the finding on a battery that rests badly whose advice may put it right, so
// that nobody buys another before; nil where nothing does.
func (a *Assessment) TriedFirst() *Finding {
	var first *Finding
	for i := range a.Findings {
		switch f := &a.Findings[i]; {
		case !f.RestsBadly():
		case f.Change == FitPack, f.Level > FixFirst: // it is finished
			return nil
		case first == nil && f.Change == ChangeNone && f.Advice != "":
			first = f
		}
	}
	return first
}

// BeforeWays reports whether the next step comes before any way out is taken: a danger of
// today is ended, or the battery tried that another would be bought for.
func (a *Assessment) BeforeWays() bool {
	tried := a.TriedFirst()
	return a.Urgent() || tried != nil && tried == a.First()
}

// DrawFigures says how the unknowns were drawn.
type DrawFigures struct {
	Count     int     `json:"count"`     // different vehicles that the figures are counted over; of those weighed by readings, the ones picked
	Runs      int     `json:"runs"`      // engine runs in all, those that readings were weighed with included
	Effective float64 `json:"effective"` // how many draws of equal weight would tell as much as these; at most Count
	Judged    int     `json:"judged"`    // draws of which every finding was made
	Rough     bool    `json:"rough"`     // Effective is below a hundred: ranges are rough
	Inside    float64 `json:"inside"`    // share of the draws inside a range: 0.8
	ShareErr  float64 `json:"share_err"` // standard error of a share of a half
	Stuck     float64 `json:"stuck"`     // share in which it does not get going, or spins its wheels and hardly does
	Crawls    float64 `json:"crawls"`    // share in which it barely moves; where most do ride, minutes and distance are without them
	Burnt     float64 `json:"burnt"`     // share in which the motors burn out on the way
	CutShort  float64 `json:"cut_short"` // share in which a cutoff ends the ride with three tenths of the charge or more left
}

// Reading is something read on the real thing, with what the draws foretell
// of it once all readings are weighed.
type Reading struct {
	Key      string  `json:"key"`      // "measured.ride_time"
	Name     string  `json:"name"`     // in words
	Text     string  `json:"text"`     // as written
	Unit     string  `json:"unit"`     // of Value and Error: "s", "m/s", "A", "V", "N"
	Value    float64 `json:"value"`    // as read
	Error    float64 `json:"error"`    // its standard error
	Stated   bool    `json:"stated"`   // the setup gave the error
	Before   Range   `json:"before"`   // what labels alone would have foretold
	After    Range   `json:"after"`    // what all readings together foretell, those left out aside
	Fits     bool    `json:"fits"`     // it was used, and what the draws foretell lies within twice its standard error
	Explains string  `json:"says"`     // one clause where there is something to say
	LeftOut  bool    `json:"left_out"` // it contradicts the others and was not used
}

// Conflict tells of readings that cannot all be true.
type Conflict struct {
	Readings  []string `json:"readings"`         // keys of those that cannot all be true
	Likeliest string   `json:"likeliest"`        // key of the one whose absence mends it most; it was left out
	Second    string   `json:"second,omitempty"` // key of another that mends it nearly as well
	LeftOut   []string `json:"left_out"`         // keys of all that the answer does without
	Name      string   `json:"name"`             // what the likeliest is called, and what was read
	Also      []string `json:"also,omitempty"`   // the same of others that were left out
	P         float64  `json:"p"`                // how often honest readings would disagree this much
	Pushed    []Pushed `json:"pushed"`           // unknowns that the readings push to their ends
	Words     string   `json:"words"`
}

// Pushed is an unknown that readings push beyond what it plausibly is.
type Pushed struct {
	Key   string  `json:"key"`
	Value string  `json:"value"` // printed
	Sigma float64 `json:"sigma"` // standard deviations from its middle
}

// PackFigures describes the pack itself.
type PackFigures struct {
	Chemistry     string  `json:"chemistry"` // of two joined packs of unlike cells "agm and lifepo4"
	Reading       string  `json:"reading"`   // what the label was understood to mean
	CellsInSeries int     `json:"cells_in_series"`
	Strings       int     `json:"strings"`
	FullV         float64 `json:"full_v"`
	NominalV      float64 `json:"nominal_v"`
	EmptyV        float64 `json:"empty_v"`
	RatedAh       float64 `json:"rated_ah"`
	UsableAh      float64 `json:"usable_ah"` // at this load, to its end
	UsableWh      float64 `json:"usable_wh"`
	// ResistanceOhm is at half charge and the setup's temperature, ten seconds after
	// a current of the rated charge over an hour came on: what a launch meets. One
	// second shows what a load step does, one thousandth what a meter with 1 kHz does.
	ResistanceOhm    float64 `json:"resistance_ohm"`
	Resistance1sOhm  float64 `json:"resistance_1s_ohm"`
	Resistance1msOhm float64 `json:"resistance_1ms_ohm"`
	ShortCircuitA    float64 `json:"short_circuit_a"`
	MassKg           float64 `json:"mass_kg"`
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
	PeakBatteryA    float64      `json:"peak_battery_a"`
	PeakBatteryAtS  float64      `json:"peak_battery_at_s"`
	PeakMotorA      float64      `json:"peak_motor_a"`
	LowestBusV      float64      `json:"lowest_bus_v"`
	BlockedBatteryA float64      `json:"blocked_battery_a"`
	WheelsUpA       float64      `json:"wheels_up_a"` // what the motors take with the wheels in the air
	BlockedMotorA   float64      `json:"blocked_motor_a"`
	BlockedStandsS  *float64     `json:"blocked_stands_s"` // until the winding reaches its limit
	SpeedAfter      []SpeedPoint `json:"speed_after_s"`
	Slips           bool         `json:"slips"`
	AboveS          []AboveLimit `json:"above_s,omitempty"`
	ReversalA       float64      `json:"reversal_a"`
	SparkA          *float64     `json:"spark_a"`       // plug-in spark, nil without an input capacitor
	SparkJ          *float64     `json:"spark_j"`       // energy of the spark
	PrechargeOhm    *float64     `json:"precharge_ohm"` // resistor that tames it
	Case            LaunchCase   `json:"case"`          // the representative launch: every unknown at its median
	CaseGives       CaseGives    `json:"case_gives"`    // what that one launch comes to, to be recomputed
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
	FuseUnknown        bool          `json:"fuse_unknown"`          // the setup does not say whether there is a fuse
	WireLimitS         *float64      `json:"wire_limit_s"`
	Elements           []PathElement `json:"elements"`
}

// RideFigures describes one outing.
type RideFigures struct {
	PedalMin   float64  `json:"pedal_min"` // minutes with the pedal down
	ClockMin   float64  `json:"clock_min"`
	DistanceKm float64  `json:"distance_km"`
	EndedBy    string   `json:"ended_by"`
	End        End      `json:"end"`        // the same as a word for programs
	EndShare   []Named  `json:"end_share"`  // what ends it, in what share of the draws
	WantedMin  *float64 `json:"wanted_min"` // by the clock; nil when no time was asked for
	// What the pack would give with no wanted time to stop it.
	LastsPedalMin float64 `json:"lasts_pedal_min"`
	LastsClockMin float64 `json:"lasts_clock_min"`
	LastsUntil    string  `json:"lasts_until"`
	LastsEnd      End     `json:"lasts_end"` // the same as a word for programs
	// LevelPedalMin is how long it lasts on the level; nil where no slope was told. All
	// other figures of the ride are then for climbing all the time.
	LevelPedalMin *float64 `json:"level_pedal_min,omitempty"`
	RestVAfter    float64  `json:"rest_v_after"`
	ChargeLeft    float64  `json:"charge_left"`           // 0 to 1
	StartsCharged float64  `json:"starts_charged"`        // 0 to 1; below 1 where less was told, or its volts at rest say so
	SpoilsFlat    bool     `json:"spoils_flat,omitempty"` // left charged so little it loses capacity for good
	DeliveredAh   float64  `json:"delivered_ah"`
	DeliveredWh   float64  `json:"delivered_wh"`
	MotorCaseC    *float64 `json:"motor_case_c"` // nil on a bench load
	WindingC      *float64 `json:"winding_c"`
	PackC         float64  `json:"pack_c"`
	Launches      int      `json:"launches"`
}

// WantedShare is in what share of the draws the time that was asked for is reached.
func (r *RideFigures) WantedShare() float64 {
	for _, n := range r.EndShare {
		if End(n.Name) == EndWanted {
			return n.Share
		}
	}
	if len(r.EndShare) == 0 && r.End == EndWanted {
		return 1
	}
	return 0
}

// AdvisedCutoff is a setting that suits this pack and this launch.
type AdvisedCutoff struct {
	OpensAtV  float64 `json:"opens_at_v"`
	DelayS    float64 `json:"delay_s"`      // at least: shorter ones open at the launch
	LongestS  float64 `json:"delay_most_s"` // at most: longer ones no longer protect the weakest cell
	StandbyA  float64 `json:"standby_a"`    // at most, once it has opened
	ClosesAtV float64 `json:"closes_at_v"`  // 0 = it should stay open
	MustLatch bool    `json:"must_latch"`
}

// CutoffFigures describes what disconnects the pack.
type CutoffFigures struct {
	OpensFirst     string         `json:"opens_first"` // [OpensPack] or another of its kind
	OpensAtCharge  *float64       `json:"opens_at_charge"`
	OpensShare     []Named        `json:"opens_share"` // which opens first, in what share of the draws
	WeakestCellV   float64        `json:"weakest_cell_v"`
	ChatterCount   int            `json:"chatter_count"`
	IdleDaysToHarm *float64       `json:"idle_days_to_harm"` // nil when it never gets there
	LeftForAWeek   string         `json:"left_for_a_week"`   // in words; empty on a bench
	Advised        *AdvisedCutoff `json:"advised"`
}

// ChargeFigures describes the charger on the pack.
type ChargeFigures struct {
	Match        string   `json:"match"`   // [MatchYes] or another of its kind
	Reasons      []string `json:"reasons"` // titles of the findings on charging that are worse than fine
	HoursTo80    *float64 `json:"hours_to_80"`
	HoursToFull  *float64 `json:"hours_to_full"`
	UnplugAfterH *float64 `json:"unplug_after_h"`
	EndVPerCell  *float64 `json:"end_v_per_cell"`
	Right        string   `json:"right"` // the charger that belongs to this pack, in words
	Left         []Left   `json:"left"`  // what becomes of a pack that is forgotten on it

	TimerH  float64         `json:"timer_h,omitempty"` // hours after which its timer ends the charge; 0 = no timer, or not told
	Advised *AdvisedCharger `json:"advised,omitempty"` // the right one in figures
}

// AwakeH are the hours in which somebody can be there and awake while a battery charges: a
// charge that takes longer goes on next day. Own choice.
const AwakeH = 14.0

// Overnight reports whether a charge takes longer than somebody can be awake beside it.
func (c *ChargeFigures) Overnight() bool { return c.UnplugAfterH != nil && *c.UnplugAfterH > AwakeH }

// CutShort reports whether a timer ends the charge before the battery is full.
func (c *ChargeFigures) CutShort() bool {
	return c.TimerH > 0 && c.HoursToFull != nil && c.TimerH < *c.HoursToFull
}

// AdvisedCharger is the charger that belongs to a pack.
type AdvisedCharger struct {
	Brief   string  `json:"brief"`           // in so few words that no report has to cut its limits off
	Own     bool    `json:"own,omitempty"`   // the one of the pack's maker: nothing else is told
	MadeFor string  `json:"made_for"`        // as the setup key charger.made_for says it
	EndV    float64 `json:"end_v,omitempty"` // of whatever hangs on it; 0 = it ends by what it sees of the cells
	MostA   float64 `json:"most_a,omitempty"`
	Each    bool    `json:"each,omitempty"` // of two packs, for each of them by itself
}

// OriginalFigures compares with the vehicle as it left the factory: each
// figure is this setup's value over the original's, nil where either has none. Where
// something was read on the original battery they are of that, as worn as it is.
type OriginalFigures struct {
	Read                bool     `json:"read,omitempty"` // something was read on the original battery
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

// Left is what becomes of a pack that stays on its charger.
type Left struct {
	After string `json:"after"`
	Words string `json:"words"`
}

// Named is a word and the share of the draws in which it is the answer.
type Named struct {
	Name  string  `json:"name"`
	Share float64 `json:"share"`
}

// End is what ends a ride or a discharge.
type End string

// The ends.
const (
	EndCutoff     End = "cutoff"
	EndEmpty      End = "empty"
	EndFuse       End = "fuse"
	EndStandstill End = "standstill"
	EndWanted     End = "wanted"
	EndVoltage    End = "voltage"
	EndPattern    End = "pattern"
	EndCannotGive End = "cannot give"
	EndTooLong    End = "too long"
)

// Purchase is something that may have to be bought, as somebody would ask for
// it over a counter.
type Purchase struct {
	Item string `json:"item"` // "Controller", "Fuse" ...
	Text string `json:"text"`
}

// MeasuredFigure sets something the user measured beside what was computed.
type MeasuredFigure struct {
	Name     string `json:"name"`
	Measured string `json:"measured"`
	Computed string `json:"computed"`
	Says     string `json:"says"`
}

// NotKnown is the word of an item of which something that matters was not told.
const NotKnown = "not known"

// ItemVerdict is one thing that somebody can point at, in a word and a line.
type ItemVerdict struct {
	Item   Item     `json:"item"`
	Word   string   `json:"word"`             // a level's name, or [NotKnown]
	Line   string   `json:"line"`             // one plain sentence
	Code   string   `json:"code,omitempty"`   // of the finding behind it
	Untold []string `json:"untold,omitempty"` // keys that matter and were not given
}

// Note corrects a common misreading beside the number it concerns.
type Note struct {
	Topic Topic  `json:"topic"`
	Text  string `json:"text"`
}

// Assumed is a value the setup did not give.
type Assumed struct {
	Key   string `json:"key"`
	Value string `json:"value"`
	Why   string `json:"why"`
	// Source is the ID of its source.
	Source string `json:"source"`
	// Effect is how much of the spread of ride time, speed and launch current
	// goes with it: the largest of the three shares, 0 to 1.
	Effect float64 `json:"effect"`
	// Decides says that a finding rests on it.
	Decides bool `json:"decides"`
}

// Measurement is something to look at or measure next, and what it would
// narrow. They stand in the order in which somebody is asked: guesses that the gravest
// findings rest on, what may turn the verdict, what narrows a range; what needs a meter
// last. None is there that would have somebody drive what must not be driven. What
// narrows minutes or speed most, by a fifth or more, is among them and not crowded out by
// what narrows nothing, but for what may hide a danger or settle what is to be fixed.
// Which of them helps most with a figure its share says.
type Measurement struct {
	What    string `json:"what"`
	Asks    string `json:"asks"`             // the same as a question to whoever owns the thing
	How     string `json:"how"`              // how it is looked up or measured
	Enter   string `json:"enter"`            // where it stands in a setup file: "mass under [rider]"
	Drives  bool   `json:"drives,omitempty"` // it has to run for that
	Narrows string `json:"narrows"`          // in words
	Key     string `json:"key"`              // the setup key that it fills in

	// What it is expected to do: the shares by which the ranges of minutes,
	// speed and launch current shrink, and the chance that the verdict changes.
	Minutes float64 `json:"minutes"`
	Speed   float64 `json:"speed"`
	Amps    float64 `json:"amps"`
	Verdict float64 `json:"verdict"`
}
