package cellfit

import (
	"math"
	"slices"

	"example.org/packcheck/battery"
)

// stepFound is a sudden change of current, held against the model.
type stepFound struct {
	charge float64 // state of charge of a rested pack with as much charge available
	ratio  float64 // the step of the log over that of the model
	when   float64 // standard uncertainty of ratio from not knowing when, between two rows, the current changed
	warm   float64 // the same from not knowing how warm the cells were
	ohm    float64 // of the model at that charge and the reference temperature
}

// stepSigma is what a single step is read to, and metersSigma what is left
// however many there are: voltmeter and ammeter, relative (common practice, no
// published source).
const (
	stepSigma   = 0.1
	metersSigma = 0.03
)

// steps reads resistance from the sudden changes of current. A log shows the
// drop at its next row, when the slower parts of the cell have begun to follow;
// so does the model at the same rows, and the ratio of the two is the ratio of
// the resistances.
func (f *finder) steps(m *battery.Model) (ohms []OhmAt, mid Estimate) {
	var all []stepFound
	for i := range f.runs {
		all = append(all, f.stepsOf(m, &f.runs[i])...)
	}
	var bins [10][]stepFound
	var middle []stepFound
	for _, s := range all {
		k := min(max(int(s.charge*10), 0), 9)
		bins[k] = append(bins[k], s)
		if s.charge > 0.25 && s.charge < 0.75 {
			middle = append(middle, s)
		}
	}
	atCharge := func(s stepFound) float64 { return s.ohm }
	for k, b := range bins {
		if len(b) > 0 {
			ohms = append(ohms, OhmAt{Charge: (float64(k) + 0.5) / 10, Ohm: typical(b, atCharge), Steps: len(b)})
		}
	}
	atHalf := func(stepFound) float64 { return m.MidOhm() }
	switch {
	case len(middle) > 0:
		mid = typical(middle, atHalf)
	case len(all) > 0:
		// The shape of the chemistry's curve carries the figure to the middle.
		mid = typical(all, atHalf)
		mid.Sigma = math.Hypot(mid.Sigma, stepSigma*mid.Value)
	}
	return ohms, mid
}

// blur widens the resistances by what they would be if the pack held as much
// more as its capacity is uncertain: they would have been read at another
// charge.
func (f *finder) blur() error {
	rel := 0.0
	for _, r := range f.runs {
		if r.fullAh > 0 {
			rel = max(rel, math.Hypot(r.meterSigma, r.ohmSigma))
		}
	}
	if rel == 0 || !f.MidOhm.Known {
		return nil
	}
	m, err := f.modelOf(f.packAh*(1+rel), f.packOhm)
	if err != nil {
		return err
	}
	ohms, mid := f.steps(m)
	f.MidOhm.Sigma = math.Hypot(f.MidOhm.Sigma, mid.Value-f.MidOhm.Value)
	for i := range f.Ohms {
		for _, o := range ohms {
			if o.Charge == f.Ohms[i].Charge {
				f.Ohms[i].Ohm.Sigma = math.Hypot(f.Ohms[i].Ohm.Sigma, o.Ohm.Value-f.Ohms[i].Ohm.Value)
			}
		}
	}
	return nil
}

// stepsOf finds the steps of one run.
func (f *finder) stepsOf(m *battery.Model, r *run) []stepFound {
	l := r.log
	jumps := l.jumps(slices.Max(l.Amps))
	if len(jumps) == 0 {
		return nil
	}
	wells := m.Wells()
	head := wells.C * wells.CapacityAh // available charge of a full pack
	share := wells.CapacityAh / m.FullAh()
	var out []stepFound
	next := 0
	f.follow(m, r, func(i int, s *battery.State, volts float64) {
		if next == len(jumps) || jumps[next].Row != i+1 {
			return
		}
		j := jumps[next]
		next++
		before, after, dt := l.Amps[i], l.Amps[i+1], l.TimeS[i+1]-l.TimeS[i]
		// The new current flows since the row before at the earliest, since
		// this moment at the latest.
		early, late := *s, *s
		advance(m, &early, dt, after, s.TempC)
		advance(m, &late, dt, before, s.TempC)
		most := (volts - m.TerminalV(&early, after)) / (after - before)
		least := (volts - m.TerminalV(&late, after)) / (after - before)
		model := (most + least) / 2
		if !(model > 0) {
			return
		}
		at := *s
		at.TempC = f.Options.Chemistry.Resistance.ReferenceC
		ratio := j.Ohm / model
		out = append(out, stepFound{
			// Resistance goes by the charge that is available.
			charge: 1 - (1-s.Y1Ah/head)*share, ratio: ratio, ohm: m.SourceOhm(&at),
			when: ratio * math.Abs(most-least) / model / 2 / math.Sqrt(3),
			warm: ratio * f.warmSigma(l.TempC != nil, s.TempC),
		})
	})
	return out
}

// How well temperatures are known, deg C and share (common practice, no
// published source): a sensor sits on the outside; without one, the warmth that
// the cells make themselves hangs on housing and mass.
const (
	sensorSigmaC = 1
	selfShare    = 0.3
)

// warmSigma is the relative uncertainty of a resistance at the reference
// temperature that was read at another one.
func (f *finder) warmSigma(logged bool, tempC float64) float64 {
	off := float64(sensorSigmaC)
	if !logged {
		off = math.Hypot(f.Options.AmbientSigmaC, selfShare*(tempC-f.Options.AmbientC))
	}
	factor := f.tempFactor
	return math.Abs(factor(tempC+off)-factor(tempC-off)) / 2 / factor(tempC)
}

// typical is the median of steps, each times an Ohm, with its standard
// uncertainty. A single step is read to a tenth; more steps average, down to
// what the meters are worth. When the current changed does not average (a logger
// may be late by the same time always), nor how warm it was.
func typical(steps []stepFound, ohm func(stepFound) float64) Estimate {
	n := len(steps)
	values, common := make([]float64, n), make([]float64, n)
	for i, s := range steps {
		values[i], common[i] = s.ratio*ohm(s), math.Hypot(s.when, s.warm)*ohm(s)
	}
	mid := median(values)
	away := make([]float64, n)
	for i, v := range values {
		away[i] = math.Abs(v - mid)
	}
	sigma := median(away) / 0.6745 // of a normal distribution
	if n < 4 {
		sigma = max(sigma, stepSigma*mid)
	}
	sigma = max(sigma/math.Sqrt(float64(n)), metersSigma*mid)
	return Estimate{mid, math.Hypot(sigma, median(common)), true}
}

// median sorts x and returns its middle.
func median(x []float64) float64 {
	slices.Sort(x)
	if n := len(x); n%2 == 0 {
		return (x[n/2-1] + x[n/2]) / 2
	}
	return x[len(x)/2]
}

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
	return hi >= SeveralFrom*lo
}

// stepsNearEmpty reports whether steps show the resistance where it may rise.
func (f *finder) stepsNearEmpty() bool {
	return slices.ContainsFunc(f.Ohms, func(o OhmAt) bool { return o.Charge <= nearEmpty })
}

// SeveralFrom is the ratio of currents, or of the times that they take, from which on they
// count as several: they then say themselves what a battery gives at others. Own choice.
const SeveralFrom = 1.3

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
