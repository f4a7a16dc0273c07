package cellfit

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

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

// OhmAt is the resistance of the whole pack at one charge.
type OhmAt struct {
	Charge float64 // 0..1
	Ohm    Estimate
	Steps  int // sudden changes of current that it was read from; 0 = from the fitted curves
}

// RunFound is one discharge that was found.
type RunFound struct {
	Log           string
	CurrentA      float64 // mean while a current flowed
	Ah            float64 // to the cutoff, or to the end when that was not reached
	Hours         float64
	ReachedCutoff bool
	StartCharge   float64 // by the first voltage
	TempC         float64 // at the start: logged, else that of the surroundings
}

// Result is what the logs say.
type Result struct {
	Options    FitOptions
	Runs       []RunFound
	Rests      int
	Pulses     int
	CapacityAh Estimate // to the cutoff, at the current of the longest run
	FullAh     Estimate // over the rated hours, to the normal end
	Health     Estimate // FullAh over the label
	Peukert    Estimate // exponent; needs runs at several currents
	Ohms       []OhmAt  // by charge, rising
	MidOhm     Estimate // at half charge
	Cell       CellFit  // curves of a chemistry of its own
	CellKnown  bool
	Notes      []string
}

// Uncertainties that no log shows, relative (common practice, no published
// source): a hall or shunt ammeter that nobody calibrated, and what the model
// is off by when a run at one rate is turned into another.
const (
	ammeterSigma = 0.01
	modelSigma   = 0.02
)

// Fit finds capacity, resistance over charge, health and (when there are runs
// at several currents) the Peukert exponent of the pack that the logs were
// taken from, each with its uncertainty, and fits a chemistry of its own.
func Fit(logs []*Log, o FitOptions) (Result, error) {
	if len(logs) == 0 {
		return Result{}, errors.New("cellfit: no logs to fit")
	}
	if o.CellsInSeries < 1 {
		return Result{}, fmt.Errorf("cellfit: %d cells in series, want at least 1", o.CellsInSeries)
	}
	for _, l := range logs {
		if l == nil || l.Rows() < 3 || len(l.Volts) != l.Rows() || len(l.Amps) != l.Rows() || len(l.ChargeAh) != l.Rows() {
			return Result{}, errors.New("cellfit: a log of fewer than three rows, or not made by Read")
		}
	}
	if o.CutoffV == 0 {
		o.CutoffV = float64(o.CellsInSeries) * o.Chemistry.EmptyV
	}
	if o.RateHours == 0 {
		o.RateHours = o.Chemistry.Capacity.RatedHours
	}
	r := Result{Options: o}
	progress := func(share float64, what string) {
		if o.Progress != nil {
			o.Progress(share, what)
		}
	}
	progress(0, "finding rests, pulses and discharges")
	for _, l := range logs {
		r.Notes = append(r.Notes, l.Notes...)
		parts := l.Parts()
		r.Rests += len(parts.Rests)
		r.Pulses += len(parts.Pulses)
		for _, d := range parts.Discharges {
			r.Runs = append(r.Runs, r.run(l, d))
		}
	}
	if err := r.plausible(logs); err != nil {
		return r, err
	}
	r.peukert()
	// Health needs the resistance, which also ends a discharge early, and the
	// resistance needs the capacity, which tells how full the pack was.
	var inside []followed
	for round := range 2 {
		progress(0.2+0.1*float64(round), "capacity, health and resistance")
		if err := r.capacity(); err != nil {
			return r, err
		}
		inside = r.follow(logs)
		r.steps(inside)
		r.settleMidOhm()
	}
	progress(0.4, "curves of the cell")
	r.cell(logsOf(inside, logs))
	r.fillOhms()
	r.settleMidOhm()
	progress(1, "done")
	return r, nil
}

// run measures one discharge to the cutoff.
func (r *Result) run(l *Log, d Part) RunFound {
	out := RunFound{Log: l.Name, CurrentA: d.MeanA, Ah: d.Ah, Hours: d.Hours}
	for i := d.From + 1; i <= d.To; i++ {
		if l.Volts[i] <= r.Options.CutoffV && l.Amps[i] > 0 {
			f := 1.0
			if dv := l.Volts[i-1] - l.Volts[i]; dv > 0 {
				f = min(max((l.Volts[i-1]-r.Options.CutoffV)/dv, 0), 1)
			}
			out.Ah = l.ChargeAh[i-1] + f*(l.ChargeAh[i]-l.ChargeAh[i-1]) - l.ChargeAh[d.From]
			out.Hours = (l.TimeS[i-1] + f*(l.TimeS[i]-l.TimeS[i-1]) - l.TimeS[d.From]) / 3600
			out.ReachedCutoff = true
			break
		}
	}
	switch {
	case l.TempC != nil:
		out.TempC = l.TempC[d.From]
	case r.Options.AmbientC != 0:
		out.TempC = r.Options.AmbientC
	default:
		out.TempC = roomC
	}
	n := float64(r.Options.CellsInSeries)
	_, out.StartCharge, _ = battery.ChargeFromRest(r.Options.Chemistry, l.Volts[d.From]/n, 1, 25)
	return out
}

// plausible catches a wrong cell count or chemistry before anything is
// computed from it.
func (r *Result) plausible(logs []*Log) error {
	n := float64(r.Options.CellsInSeries)
	p := r.Options.Chemistry
	most := 0.0
	for _, l := range logs {
		for i, v := range l.Volts {
			if l.Amps[i] >= 0 {
				most = max(most, v)
			}
		}
	}
	top := p.Rest.VoltsAt.Y[len(p.Rest.VoltsAt.Y)-1]
	if cell := most / n; cell > 1.15*max(p.FullV, top) || cell < 0.85*p.NominalV {
		return fmt.Errorf("cellfit: %d cells of %s cannot stand at %.2f V (%.2f V a cell); the number of cells or the chemistry is wrong", r.Options.CellsInSeries, p.Name, most, cell)
	}
	return nil
}

// capacity finds what the longest full run gave, and what a new pack of the
// same label would have given there.
func (r *Result) capacity() error {
	r.CapacityAh, r.FullAh, r.Health = Estimate{}, Estimate{}, Estimate{}
	var best *RunFound
	for i := range r.Runs {
		if run := &r.Runs[i]; run.ReachedCutoff && run.StartCharge > 0.9 && (best == nil || run.Ah > best.Ah) {
			best = run
		}
	}
	if best == nil {
		if note := "No discharge goes from full to the cutoff, so capacity and health cannot be told."; !slices.Contains(r.Notes, note) {
			r.Notes = append(r.Notes, note)
		}
		return nil
	}
	// How full it was shows in the first voltage, to a few per cent.
	startSigma := 0.25 * (1 - min(best.StartCharge, 1))
	sigma := math.Hypot(ammeterSigma, startSigma)
	r.CapacityAh = Estimate{best.Ah, best.Ah * sigma, true}
	full, err := r.fullAt(*best)
	if err != nil {
		return err
	}
	sigma = math.Hypot(sigma, modelSigma)
	r.FullAh = Estimate{full, full * sigma, true}
	if r.Options.LabelAh > 0 {
		h := full / r.Options.LabelAh
		r.Health = Estimate{h, h * sigma, true}
	}
	return nil
}

// fullAt finds the rated capacity of the pack that would have given as much as
// a run did at its current and cutoff: the cell model turns one rate into
// another.
func (r *Result) fullAt(run RunFound) (float64, error) {
	o := r.Options
	gives := func(ah float64) (float64, error) {
		m, err := battery.New(battery.Spec{
			Profile: o.Chemistry, CellsInSeries: o.CellsInSeries, CapacityAh: ah, RateHours: o.RateHours, ResistanceOhm: r.MidOhm.Value,
		})
		if err != nil {
			return 0, err
		}
		return m.Discharge(m.StateAt(min(run.StartCharge, 1), run.TempC), run.CurrentA, o.CutoffV, run.TempC).Ah, nil
	}
	lo, hi := 0.2*run.Ah, 6*run.Ah
	for range 40 {
		mid := math.Sqrt(lo * hi)
		ah, err := gives(mid)
		if err != nil {
			return 0, err
		}
		if ah < run.Ah {
			lo = mid
		} else {
			hi = mid
		}
	}
	return math.Sqrt(lo * hi), nil
}

// peukert fits ln t = a - k ln I over the full runs.
func (r *Result) peukert() {
	var x, y []float64
	lo, hi := math.Inf(1), 0.0
	for _, run := range r.Runs {
		if run.ReachedCutoff && run.StartCharge > 0.9 && run.CurrentA > 0 {
			// Pauses do not count: time with the current flowing.
			x, y = append(x, math.Log(run.CurrentA)), append(y, math.Log(run.Ah/run.CurrentA))
			lo, hi = min(lo, run.CurrentA), max(hi, run.CurrentA)
		}
	}
	if len(x) < 2 || hi < 1.3*lo {
		return
	}
	_, slope := stat.LinearRegression(x, y, nil, false)
	// Each run's charge is uncertain by the ammeter's spread between runs and
	// the start of each; half a per cent each is what repeats.
	mean := stat.Mean(x, nil)
	var sxx float64
	for _, v := range x {
		sxx += (v - mean) * (v - mean)
	}
	scatter := 0.007
	if len(x) > 2 {
		a, _ := stat.LinearRegression(x, y, nil, false)
		var ss float64
		for i := range x {
			d := y[i] - a - slope*x[i]
			ss += d * d
		}
		scatter = max(scatter, math.Sqrt(ss/float64(len(x)-2)))
	}
	r.Peukert = Estimate{-slope, scatter / math.Sqrt(sxx), true}
}

// cell fits the curves; too little in the logs is no error, only noted.
func (r *Result) cell(logs []*Log) {
	o := r.Options
	ah := o.LabelAh
	if ah <= 0 {
		ah = r.FullAh.Value
	}
	if ah <= 0 || len(r.Runs) == 0 {
		r.Notes = append(r.Notes, "Too little was logged for curves of a chemistry of its own.")
		return
	}
	options := CellOptions{
		Base: o.Chemistry, CapacityAh: ah, CellsInSeries: o.CellsInSeries, AmbientC: o.AmbientC,
		RestSpreadV: 2.5 * o.Chemistry.Rest.SpreadV, CutoffV: 0.9 * o.CutoffV / float64(o.CellsInSeries), Searches: 1,
	}
	if r.FullAh.Known {
		options.FullAh = r.FullAh.Value * o.Chemistry.Capacity.Ratio
	}
	fit, err := FitCell(logs, options)
	if err != nil {
		r.Notes = append(r.Notes, err.Error())
		return
	}
	r.Cell, r.CellKnown = fit, true
}
