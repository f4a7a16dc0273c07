package cellfit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/battery"
)

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
	options.Ohms, options.OneCurrent = f.Ohms, !f.severalCurrents() && !f.stepsNearEmpty()
	if !f.tellsOhms() {
		options.OhmSpread = o.Chemistry.Resistance.Uncertainty
	}
	if f.oneCapacity(m, options) {
		return
	}
	firstAh := f.fullCharge(&options)
	err = f.curves(m, options)
	if f.CellKnown = err == nil; !f.CellKnown {
		f.Cell = CellFit{}
		f.NoCell = strings.TrimPrefix(strings.TrimPrefix(err.Error(), "cellfit: "), "battery: ")
		f.Notes = append(f.Notes, "No cell could be fitted: "+f.NoCell+".")
		return
	}
	// The first log's charge was fitted; the cell has that of the battery.
	if f.FullAh.Known {
		f.Cell.Profile.Capacity.Ratio *= f.FullAh.Value / firstAh
	}
}

// oneCapacity fits one battery to discharges at several currents, which at the higher ones
// gives less because charge stays behind. It reports false where it does not follow them:
// the battery changed between the logs, or they did not begin equally full.
func (f *finder) oneCapacity(m *battery.Model, o CellOptions) bool {
	if !f.FullAh.Known || !f.severalCurrents() {
		return false
	}
	for i := range f.whole {
		o.LikelyFullAh = max(o.LikelyFullAh, 1.005*spread(f.whole[i].log.ChargeAh))
	}
	for i := range f.runs {
		o.LikelyFullAh = max(o.LikelyFullAh, f.ratedAh(f.runs[i].fullAh)*o.Base.Capacity.Ratio)
	}
	o.FullAhSpread, o.FitWells, o.DepthSpread = oneSpread, true, anyDepth
	f.CellKnown = f.curves(m, o) == nil && slices.Max(f.Cell.RMSV) <= offShare*o.Base.NominalV
	f.uneven = f.uneven && !f.CellKnown
	return f.CellKnown
}

// curves fits the cell to the logs, in which the battery is as warm as its losses make it.
func (f *finder) curves(m *battery.Model, options CellOptions) (err error) {
	logs := f.warmed(m)
	for range 3 {
		if f.Cell, err = FitCell(logs, options); err != nil {
			return err
		}
		if slices.Max(f.Cell.RMSV) > offShare*options.Base.NominalV && options.RestSpreadV < strangeV {
			// Another kind of cell than the chemistry's: let the curve go where
			// the logs say.
			options.RestSpreadV = strangeV
			continue
		}
		if err = f.misses(); err != nil {
			return err
		}
		f.CellKnown = true
		if m, err = f.Model(); err != nil {
			return err
		}
		// What is lost as heat hangs on the rested voltage.
		before := logs
		if logs = f.warmed(m); warmthMoved(before, logs) < sameK {
			return nil
		}
	}
	return nil
}

// How far the full charge may lie from what is known of it, relative: of a
// discharge from full to the cutoff, and of a label when no log tells what is
// left of it (common practice, no published source).
const (
	knownSpread = 0.02
	oneSpread   = 0.05 // of what the slowest of several gave
	labelSpread = 0.25
)

// fullCharge says what is known of the charge between empty and full. Several
// logs may be years apart, so each has a capacity of its own; a log that covers
// a part of the charge says little about the rest, so the label counts. It returns what
// the battery held at the first log, as [Result.FullAh] counts.
func (f *finder) fullCharge(o *CellOptions) float64 {
	ratio := o.Base.Capacity.Ratio
	known := map[string]float64{}
	for _, r := range f.runs {
		known[r.Log] = max(known[r.Log], r.fullAh)
	}
	held, all := make([]float64, len(f.whole)), make([]float64, len(f.whole))
	for i := range f.whole {
		r := &f.whole[i]
		ah := known[r.Log]
		if ah == 0 {
			ah = f.packAh
		}
		held[i] = ah
		all[i] = max(f.ratedAh(ah)*ratio, 1.005*spread(r.log.ChargeAh))
	}
	switch {
	case !f.FullAh.Known:
		o.LikelyFullAh, o.FullAhSpread = all[0], labelSpread
	case len(all) == 1:
		o.FullAh = all[0]
		return held[0]
	default:
		o.LikelyFullAh, o.FullAhSpread, o.UnitSpread = all[0], knownSpread, knownSpread
	}
	for i, ah := range all {
		o.Unit, o.UnitShare = append(o.Unit, i), append(o.UnitShare, ah/all[0])
	}
	return held[0]
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
