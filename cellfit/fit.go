package cellfit

import (
	"fmt"
	"math"
	"slices"
	"strings"

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
	CapacityAh Estimate // to the cutoff, as the longest run that began full gave it
	FullAh     Estimate // over the rated hours, to the normal end
	Health     Estimate // FullAh over the label
	Peukert    Estimate // exponent; needs runs at several currents
	Ohms       []OhmAt  // by charge, rising
	MidOhm     Estimate // at half charge
	Cell       CellFit  // curves of a chemistry of its own, relative to RatedAh
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

// offShare is how far a fitted cell may be off a log, over its nominal voltage,
// before the chemistry is taken for another; strangeV is how far the rest curve
// may then lie from that of the chemistry, V per cell.
const (
	offShare = 0.008
	strangeV = 0.4
)

// cell fits the curves; too little in the logs is no error, only noted.
func (f *finder) cell() {
	o := f.Options
	label := o.LabelAh
	if label <= 0 {
		label = f.FullAh.Value
	}
	if label <= 0 || len(f.runs) == 0 {
		f.Notes = append(f.Notes, "Too little was logged for curves of a chemistry of its own.")
		return
	}
	f.RatedAh = f.ratedAh(label)
	m, err := f.model()
	if err != nil {
		f.Notes = append(f.Notes, strings.TrimPrefix(err.Error(), "battery: "))
		return
	}
	options := CellOptions{
		Base: o.Chemistry, CapacityAh: f.RatedAh, CellsInSeries: o.CellsInSeries, AmbientC: o.AmbientC,
		RestSpreadV: 2.5 * o.Chemistry.Rest.SpreadV, CutoffV: 0.9 * o.CutoffV / float64(o.CellsInSeries), Searches: 1,
	}
	for i := range f.whole {
		f.begin(m, &f.whole[i])
		options.StartFull = append(options.StartFull, f.whole[i].StartCharge >= 1)
	}
	f.fullCharge(&options)
	options.Ohms = f.Ohms
	if !f.tellsOhms() {
		options.OhmSpread = o.Chemistry.Resistance.Uncertainty
	}
	logs := f.warmed(m)
	for range 3 {
		if f.Cell, err = FitCell(logs, options); err != nil {
			break
		}
		if slices.Max(f.Cell.RMSV) > offShare*o.Chemistry.NominalV && options.RestSpreadV < strangeV {
			// Another kind of cell than the chemistry's: let the curve go where
			// the logs say.
			options.RestSpreadV = strangeV
			continue
		}
		if err = f.misses(); err != nil {
			break
		}
		f.CellKnown = true
		if m, err = f.Model(); err != nil {
			break
		}
		// What is lost as heat hangs on the rested voltage.
		before := logs
		if logs = f.warmed(m); warmthMoved(before, logs) < sameK {
			break
		}
	}
	if f.CellKnown = err == nil; !f.CellKnown {
		f.Cell = CellFit{}
		f.NoCell = strings.TrimPrefix(strings.TrimPrefix(err.Error(), "cellfit: "), "battery: ")
		f.Notes = append(f.Notes, "No cell could be fitted: "+f.NoCell+".")
		return
	}
	// The first log's charge was fitted; the cell has that of the battery.
	if f.FullAh.Known {
		f.Cell.Profile.Capacity.Ratio = f.ratedAh(f.FullAh.Value) * o.Chemistry.Capacity.Ratio / f.RatedAh
	}
}

// How far the full charge may lie from what is known of it, relative: of a
// discharge from full to the cutoff, and of a label when no log tells what is
// left of it (common practice, no published source).
const (
	knownSpread = 0.02
	labelSpread = 0.25
)

// fullCharge says what is known of the charge between empty and full. Several
// logs may be years apart, so each has a capacity of its own; a log that covers
// a part of the charge says little about the rest, so the label counts.
func (f *finder) fullCharge(o *CellOptions) {
	ratio := o.Base.Capacity.Ratio
	known := map[string]float64{}
	for _, r := range f.runs {
		if r.complete() {
			known[r.Log] = max(known[r.Log], r.fullAh)
		}
	}
	all := make([]float64, len(f.whole))
	for i := range f.whole {
		r := &f.whole[i]
		ah := known[r.Log]
		if ah == 0 {
			ah = f.packAh
		}
		all[i] = max(f.ratedAh(ah)*ratio, 1.005*spread(r.log.ChargeAh))
	}
	switch {
	case !f.FullAh.Known:
		o.LikelyFullAh, o.FullAhSpread = all[0], labelSpread
	case len(all) == 1:
		o.FullAh = all[0]
		return
	default:
		o.LikelyFullAh, o.FullAhSpread, o.UnitSpread = all[0], knownSpread, knownSpread
	}
	for i, ah := range all {
		o.Unit, o.UnitShare = append(o.Unit, i), append(o.UnitShare, ah/all[0])
	}
}

// missShare is how far a fitted cell may be off any log, rms over its nominal
// voltage, before it is none (common practice, no published source). Cells that
// are of the kind that was said come within a third of it.
const missShare = 0.03

// leastHeld is the least charge that a log may begin with, over what it takes
// out (common practice, no published source).
const leastHeld = 0.8

// misses says which log the fitted cell does not follow.
func (f *finder) misses() error {
	limit := missShare * f.Options.Chemistry.NominalV
	for i, rms := range f.Cell.RMSV {
		if !(rms <= limit) {
			n := float64(f.Options.CellsInSeries)
			return fmt.Errorf("cellfit: the best one is %.2g V off %s on average, more than %.2g V; something in the logs is not as was said: the chemistry, the label, the cells in series, --full, or a battery that is faulty",
				rms*n, f.whole[i].log.called(), limit*n)
		}
	}
	for i, begun := range f.Cell.ChargeAtStart {
		taken := slices.Max(f.whole[i].log.ChargeAh) - f.whole[i].log.ChargeAh[0]
		if held := max(begun, 0) * f.Cell.FullAh; held < leastHeld*taken && len(f.Cell.UnitAh) == 1 {
			return fmt.Errorf("cellfit: %.3g Ah came out in %s, but by its first voltage the battery held no more than %.2g Ah; the chemistry or the cells in series are wrong, or the log begins long after the load came on",
				taken, f.whole[i].log.called(), held)
		}
	}
	return nil
}

// sameK is a difference of temperature that resistance does not mind.
const sameK = 2

// warmthMoved is the greatest difference of temperature between two versions of
// the same logs.
func warmthMoved(a, b []*Log) float64 {
	most := 0.0
	for i := range a {
		for j := range a[i].TempC {
			most = max(most, math.Abs(a[i].TempC[j]-b[i].TempC[j]))
		}
	}
	return most
}

// Model is the fitted pack, with the fitted cell; it fails when none could be
// fitted.
func (r Result) Model() (*battery.Model, error) {
	if err := r.noCell(); err != nil {
		return nil, err
	}
	return battery.New(battery.Spec{
		Profile: r.Cell.Profile, CellsInSeries: r.Options.CellsInSeries, CapacityAh: r.RatedAh, ClosedShell: inShell(r.Options),
	})
}

// ModelOf is the fitted pack as it was at one of the logs, counted from 0, with
// what it held then, and how full that log began.
func (r Result) ModelOf(log int) (m *battery.Model, startCharge float64, err error) {
	if m, err = r.Model(); err != nil {
		return nil, 0, err
	}
	ah := r.Cell.UnitAh[0]
	if log < len(r.Cell.UnitAh) {
		ah = r.Cell.UnitAh[log]
	}
	health := ah / (r.Cell.Profile.Capacity.Ratio * r.RatedAh)
	m, err = m.With(battery.Spec{
		Profile: r.Cell.Profile, CellsInSeries: r.Options.CellsInSeries, CapacityAh: r.RatedAh, ClosedShell: inShell(r.Options),
		Health: health, ResistanceFactor: 1,
	})
	return m, r.Cell.ChargeAtStart[log], err
}

// inShell reports whether the logged cells are taken to sit in a closed shell:
// a pack does, a cell on a bench does not.
func inShell(o FitOptions) bool { return o.CellsInSeries > 1 }

// cellOhm is the resistance of the fitted cell at one charge, for the whole
// pack.
func (r *Result) cellOhm(z float64) Estimate {
	perAh := float64(r.Options.CellsInSeries) / r.RatedAh
	value := r.Cell.Profile.Resistance.OhmAh.At(z) * perAh
	k, f := hat(ohmKnots, z)
	sigma := math.Inf(1)
	if k+1 < len(r.Cell.OhmSigma) {
		sigma = (r.Cell.OhmSigma[k]*(1-f) + r.Cell.OhmSigma[k+1]*f) * perAh
	}
	return Estimate{value, max(sigma, 0.05*value), true}
}

// vague is the relative uncertainty above which a fitted resistance is worth
// nothing.
const vague = 0.35

// tellsOhms reports whether the logs show resistance: by steps, or by discharges
// from full at several currents. One current alone cannot tell resistance from
// open-circuit voltage, nor from how full the battery began.
func (f *finder) tellsOhms() bool { return len(f.Ohms) > 0 || f.severalCurrents() }

// severalCurrents reports whether there are full discharges at currents that
// differ enough to compare.
func (f *finder) severalCurrents() bool {
	lo, hi := math.Inf(1), 0.0
	for i := range f.runs {
		if r := &f.runs[i]; r.complete() && r.Steady && r.CurrentA > 0 {
			lo, hi = min(lo, r.CurrentA), max(hi, r.CurrentA)
		}
	}
	return hi >= severalFrom*lo
}

// severalFrom is the ratio of currents from which on they count as several.
const severalFrom = 1.3

// fillOhms takes resistance from the fitted curves where no step shows it. The
// figure at half charge is the fitted cell's, which has followed the steps too:
// one battery has one resistance, whoever asks.
func (f *finder) fillOhms() {
	if !f.CellKnown || !f.tellsOhms() {
		return
	}
	mid := f.cellOhm(0.5)
	if steps := f.MidOhm; steps.Known {
		mid.Sigma = max(mid.Value*steps.Sigma/steps.Value, math.Abs(mid.Value-steps.Value)/2)
	}
	f.MidOhm = Estimate{}
	if mid.Sigma <= vague*mid.Value {
		f.MidOhm = mid
	}
	if len(f.Ohms) >= 3 {
		return
	}
	var out []OhmAt
	for _, z := range []float64{0.1, 0.25, 0.5, 0.75, 0.9} {
		e := f.cellOhm(z)
		if z == 0.5 {
			e = f.MidOhm
		}
		if e.Known && e.Sigma <= vague*e.Value {
			out = append(out, OhmAt{Charge: z, Ohm: e})
		}
	}
	f.Ohms = merged(f.Ohms, out)
}

// merged puts both lists in order of charge; what was read from steps stands
// before what was fitted nearby.
func merged(steps, fitted []OhmAt) []OhmAt {
	out := append([]OhmAt{}, steps...)
	for _, o := range fitted {
		near := false
		for _, s := range steps {
			near = near || math.Abs(s.Charge-o.Charge) < 0.1
		}
		if !near {
			out = append(out, o)
		}
	}
	sortOhms(out)
	return out
}
