package cellfit

import (
	"fmt"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// FitOptions says what is known about the pack that was logged.
type FitOptions struct {
	Chemistry     chemistry.Profile
	CellsInSeries int
	LabelAh       float64 // 0 = unknown: health cannot be told
	RateHours     float64 // hours that the label is rated over; 0 = the chemistry's
	CutoffV       float64 // whole pack; 0 = the chemistry's normal end
	AmbientC      float64 // where a log has no temperature; 0 = 25
	AmbientSigmaC float64 // standard uncertainty of AmbientC
	BeganFull     bool    // every discharge began with a full pack, whatever its first voltage says

	// Progress is called with the share done (0..1) and what is being done;
	// nil = not.
	Progress func(share float64, what string)
}

// Estimate is a figure with its standard uncertainty.
type Estimate struct {
	Value, Sigma float64
	Known        bool // false: the logs do not tell
}

// Low and High are the ends of the range that holds the true value with about
// 95 %.
func (e Estimate) Low() float64 { return e.Value - 2*e.Sigma }

// High is the upper end; see [Estimate.Low].
func (e Estimate) High() float64 { return e.Value + 2*e.Sigma }

// OhmAt is the ohmic resistance of the whole pack at one charge, at the
// chemistry's reference temperature.
type OhmAt struct {
	Charge float64 // 0..1
	Ohm    Estimate
	Steps  int // sudden changes of current that it was read from; 0 = from the fitted curves
}

// RunFound is one discharge that was found.
type RunFound struct {
	Log           string
	CurrentA      float64 // mean while a current flowed
	Steady        bool    // one current all the time, pauses apart
	Ah            float64 // to the cutoff, or to the end when that was not reached
	Hours         float64 // by the clock
	ReachedCutoff bool
	StartCharge   float64 // by the first voltage
	TempC         float64 // at the start: logged, else that of the surroundings
}

// Result is what the logs say.
type Result struct {
	Options    FitOptions // with the defaults filled in
	Runs       []RunFound
	Rests      int
	Pulses     int
	CapacityAh Estimate   // to the cutoff, as the longest run that began full gave it
	AtLeastAh  float64    // what one discharge took out, less what the meter may be off
	FullAh     Estimate   // over the rated hours, to the normal end
	TestedAh   Estimate   // the same, but for what another current than those logged would change
	OverHours  [2]float64 // the shortest and the longest discharge that they are told by, without pauses
	Health     Estimate   // FullAh over the label
	Peukert    Estimate   // exponent; needs runs at several currents
	Ohms       []OhmAt    // by charge, rising
	MidOhm     Estimate   // at half charge
	Cell       CellFit    // curves of a chemistry of its own, relative to RatedAh
	CellKnown  bool
	NoCell     string  // why there is no cell, where one was tried
	RatedAh    float64 // capacity of the label, or found, over the hours of the chemistry
	Notes      []string
}

// Fit finds capacity, resistance over charge, health and (when there are runs
// at several currents) the Peukert exponent of the pack that the logs were
// taken from, each with its uncertainty, and fits a chemistry of its own.
//
// The battery model of the chemistry is run along the logs; capacity and
// resistance are those with which it does what the logs show. So it does not
// matter whether a log is one long discharge or driving and pausing in turn,
// nor how many seconds lie between its rows: the model shows what such a log
// would have caught of a step.
func Fit(logs []*Log, o FitOptions) (Result, error) {
	if err := checkLogs(logs); err != nil {
		return Result{}, err
	}
	if o.CellsInSeries < 1 {
		return Result{}, fmt.Errorf("cellfit: %d cells in series, want at least 1", o.CellsInSeries)
	}
	if o.CutoffV == 0 {
		o.CutoffV = float64(o.CellsInSeries) * o.Chemistry.EmptyV
	}
	if o.RateHours == 0 {
		o.RateHours = o.Chemistry.Capacity.RatedHours
	}
	if o.AmbientC == 0 {
		o.AmbientC = roomC
	}
	f := &finder{Result: Result{Options: o}, tempFactor: o.Chemistry.Resistance.TempFactor.Func()}
	progress := func(share float64, what string) {
		if o.Progress != nil {
			o.Progress(share, what)
		}
	}
	if err := f.plausible(logs); err != nil {
		return f.Result, err
	}
	progress(0, "finding rests, pulses and discharges")
	for _, l := range logs {
		f.Notes = append(f.Notes, l.Notes...)
		f.find(l)
	}
	progress(0.1, "capacity and resistance")
	if err := f.settle(); err != nil {
		return f.Result, err
	}
	if err := f.plausibleFound(logs); err != nil {
		return f.Result, err
	}
	f.peukert()
	progress(0.4, "curves of the cell")
	f.cell()
	if f.uneven {
		f.Notes = append(f.Notes, "The discharges do not agree on the capacity: the battery changed between them, or they did not begin equally full. The fitted cell follows each with a capacity of its own; its resistance is that of all of them together.")
	}
	f.fillOhms()
	progress(1, "done")
	return f.Result, nil
}

// finder is a fit under way.
type finder struct {
	Result
	runs  []run // what Runs was made of
	whole []run // the logs from end to end, what they hold besides discharges included
	// packAh and packOhm are what is known so far of the pack: its capacity
	// over the rated hours as it now is, and its resistance at half charge.
	packAh, packOhm float64
	tempFactor      func(tempC float64) float64 // on the resistance
	uneven          bool                        // the runs give capacities that differ by more than the meters do
}

// model is the pack as far as it is known.
func (f *finder) model() (*battery.Model, error) { return f.modelOf(f.packAh, f.packOhm) }

// modelOf is the pack with a capacity, over the label's hours, and a resistance;
// 0 = the chemistry's. It weighs what the label stands for: a worn pack is not
// lighter.
func (f *finder) modelOf(ah, ohm float64) (*battery.Model, error) {
	o := f.Options
	spec := battery.Spec{
		Profile: o.Chemistry, CellsInSeries: o.CellsInSeries, CapacityAh: ah, RateHours: o.RateHours, ResistanceOhm: ohm,
		ClosedShell: inShell(o),
	}
	if health := ah / o.LabelAh; health > 0.02 && health < 1.4 { // what package battery takes, with room
		spec.CapacityAh, spec.Health = o.LabelAh, health
	}
	return battery.New(spec)
}

// ratedAh turns a capacity over the label's hours into one over the
// chemistry's, as package battery does.
func (f *finder) ratedAh(ah float64) float64 {
	c := f.Options.Chemistry.Capacity
	if f.Options.RateHours == c.RatedHours {
		return ah
	}
	return ah * c.HourShare.At(c.RatedHours) / c.HourShare.At(f.Options.RateHours)
}
