package cellfit

import (
	"maps"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/solve"
)

// fullFrom is the state of charge from which on a run counts as begun full.
const fullFrom = 0.9

// complete reports whether a run goes from full to the cutoff.
func (r *run) complete() bool { return r.ReachedCutoff && r.StartCharge > fullFrom }

// A discharge from full that ended up to nearV above the cutoff, as a share of it, tells
// the capacity nearly as well as one that went on, where volts fall steeply. How far
// real cells' volts lie from the model's so near the end is curveSpreads times the
// spread of the chemistry at rest, and the doubt that it and the resistance leave must be
// below nearlySigma. Own choices, made by ending 25 measured discharges of lithium,
// iron-phosphate and lead-acid cells early: capacities lay 1 to 4 % off those to the
// cutoff, and far off where one of the three did not hold.
const (
	nearV        = 0.05
	curveSpreads = 4
	nearlySigma  = 0.04
)

// nearly finds the capacity of a run that began full and ended shortly before the
// cutoff: that with which the model has its lowest volts where the run had them.
func (f *finder) nearly(r *run) (e Estimate, err error) {
	if r.ReachedCutoff || r.StartCharge <= fullFrom || !(r.endAh > 0) || r.endV > (1+nearV)*f.Options.CutoffV {
		return Estimate{}, nil
	}
	if e, err = f.fullOf(r); err != nil {
		return e, err
	}
	higher := *r
	higher.endV += curveSpreads * float64(f.Options.CellsInSeries) * f.Options.Chemistry.Rest.SpreadV
	other, err := f.solveFull(&higher, f.packOhm)
	curveSigma := other/e.Value - 1
	r.atRateSigma = math.Hypot(r.atRateSigma, curveSigma)
	e.Sigma = math.Hypot(e.Sigma, curveSigma*e.Value)
	e.Known = math.Hypot(r.ohmSigma, curveSigma) <= nearlySigma && !(e.Value > mostOfLabel*f.Options.LabelAh && f.Options.LabelAh > 0)
	return e, err
}

// settleRounds is where the search for capacity and resistance gives up, and
// settled the relative change at which it is done. Lead-acid needs a dozen
// rounds, lithium three.
const (
	settleRounds = 40
	settled      = 0.002
)

// settle finds capacity and resistance together, because each shows in the
// other: a higher resistance brings the cutoff forward, and a step is read at
// the charge that the capacity says.
func (f *finder) settle() error {
	ah, err := f.guessAh()
	if err != nil || !(ah > 0) {
		return err
	}
	f.packAh = ah
	for range settleRounds {
		ah, ohm := f.packAh, f.packOhm
		m, err := f.model()
		if err != nil {
			return err
		}
		for i := range f.runs {
			f.begin(m, &f.runs[i])
		}
		f.Ohms, f.MidOhm = f.steps(m)
		if f.MidOhm.Known {
			f.packOhm = f.MidOhm.Value
		}
		if err := f.capacity(); err != nil {
			return err
		}
		if math.Abs(f.packAh-ah) <= settled*ah && math.Abs(f.packOhm-ohm) <= settled*ohm {
			break
		}
	}
	if err := f.blur(); err != nil {
		return err
	}
	for _, r := range f.runs {
		f.Runs = append(f.Runs, r.RunFound)
	}
	if f.BoundedOnly() {
		f.Notes = append(f.Notes, "No discharge goes from full to the cutoff, or nearly there: the log bounds capacity and health from below only, by what came out, and does not tell how much more there is. Minutes computed from it rest on the label, or on what is usual.")
		if f.Options.LabelAh <= 0 {
			f.Notes = append(f.Notes, "How full the battery was at each moment is told from its voltage alone.")
		}
	}
	return nil
}

// leastSpan is the least share of the charge from which the whole of it is
// guessed.
const leastSpan = 0.02

// guessAh is the capacity to begin with: the label's, or what the voltages at
// both ends of a discharge say of the charge between them.
func (f *finder) guessAh() (float64, error) {
	if f.Options.LabelAh > 0 {
		return f.Options.LabelAh, nil
	}
	guess := 0.0
	for i := range f.runs {
		r := &f.runs[i]
		last := r.log.Rows() - 1
		removed := r.log.ChargeAh[last]
		ah := removed
		for range 5 {
			m, err := f.modelOf(ah, 0)
			if err != nil {
				return 0, err
			}
			f.begin(m, r)
			end := r.log.slice(last, last+1)
			temp := f.Options.AmbientC
			if end.TempC != nil {
				temp = end.TempC[0]
			}
			ah = removed / max(r.StartCharge-startCharge(m, end, temp), leastSpan)
		}
		guess = max(guess, ah)
	}
	return guess, nil
}

// capacity finds what the deepest full run gave, and the rated capacity with
// which the model gives as much. Without such a run, one that nearly got there tells it.
func (f *finder) capacity() error {
	var best *run
	var all, tested []Estimate
	f.OverHours = [2]float64{math.Inf(1), 0}
	tells := func(r *run, full Estimate) {
		all = append(all, full)
		tested = append(tested, Estimate{full.Value, full.Value * r.atRateSigma, true})
		hours := r.endAh / r.CurrentA
		f.OverHours = [2]float64{min(f.OverHours[0], hours), max(f.OverHours[1], hours)}
	}
	for i := range f.runs {
		r := &f.runs[i]
		f.AtLeastAh = max(f.AtLeastAh, r.Ah*(1-2*r.meterSigma))
		if !r.complete() {
			continue
		}
		if err := f.plausibleRun(r); err != nil {
			return err
		}
		if best == nil || r.Ah > best.Ah {
			best = r
		}
		full, err := f.fullOf(r)
		if err != nil {
			return err
		}
		r.fullAh = full.Value
		tells(r, full)
	}
	if best != nil {
		f.CapacityAh = Estimate{best.Ah, best.Ah * math.Hypot(best.meterSigma, best.startSigma), true}
	}
	for i := range f.runs {
		r := &f.runs[i]
		if best != nil {
			break
		}
		full, err := f.nearly(r)
		if err != nil {
			return err
		}
		if r.fullAh = 0; full.Known {
			r.fullAh = full.Value
			tells(r, full)
		}
	}
	if f.FullAh, f.TestedAh, f.Health = (Estimate{}), (Estimate{}), (Estimate{}); len(all) == 0 {
		return nil
	}
	f.FullAh, f.TestedAh = pooled(all), pooled(tested)
	if f.severalCurrents() {
		f.FullAh.Value = f.overRated()
		f.TestedAh.Value = f.FullAh.Value
	}
	f.uneven = all[len(all)-1].Value > (1+unevenFrom)*all[0].Value // pooled has sorted them
	f.packAh = f.FullAh.Value
	if f.Options.LabelAh > 0 {
		f.Health = f.FullAh
		f.Health.Value /= f.Options.LabelAh
		f.Health.Sigma /= f.Options.LabelAh
	}
	return nil
}

// unevenFrom is the relative difference of capacities from which on a battery
// is taken to have changed between its logs (common practice, no published
// source).
const unevenFrom = 0.05

// pooled sorts several estimates and returns the middle one. What they have in common, such as
// the meter, does not average out; where they differ by more than that, the
// difference counts.
func pooled(all []Estimate) Estimate {
	slices.SortFunc(all, func(a, b Estimate) int {
		if a.Value < b.Value {
			return -1
		}
		return 1
	})
	n := len(all)
	out := all[n/2]
	if n%2 == 0 {
		out.Value = (all[n/2-1].Value + all[n/2].Value) / 2
		out.Sigma = max(all[n/2-1].Sigma, all[n/2].Sigma)
	}
	out.Sigma = max(out.Sigma, (all[n-1].Value-all[0].Value)/3)
	return out
}

// overRated is the capacity over the rated hours by discharges at several currents: on the
// curve, over the logarithm of the hours, through all of them, or that of the nearest.
func (f *finder) overRated() float64 {
	ah := map[float64]float64{}
	for i := range f.runs {
		if r := &f.runs[i]; r.fullAh > 0 {
			ah[math.Log(r.endAh/r.CurrentA)] = r.fullAh
		}
	}
	c := chemistry.Curve{X: slices.Sorted(maps.Keys(ah))}
	for _, hours := range c.X {
		c.Y = append(c.Y, ah[hours])
	}
	return c.At(math.Log(f.Options.RateHours))
}

// rateSigma is how far batteries of one family differ, relative and per factor
// e in time, when the charge given at one rate is turned into that at another.
//
// Lead-acid: small blocks give 0.81 to 0.94 of their 20 h capacity in 5 h and
// 0.58 to 0.75 in 1 h (makers' data sheets of 12 V blocks of 5 to 65 Ah).
// Others: two fresh lithium cells of 2.9 and 3.0 Ah, discharged in 20 and 10 h
// and in 1 h and 20 min, come out 1 to 7 % apart (data sets named in
// cmd/agreement).
func rateSigma(family chemistry.Family) float64 {
	if family == chemistry.LeadAcid {
		return 0.03
	}
	return 0.02
}

// modelSigma is what the model is off by at any rate, relative (common
// practice, no published source).
const modelSigma = 0.02

// fullOf finds the rated capacity with which the model reaches the cutoff when
// a run did, drawing what the run drew.
func (f *finder) fullOf(r *run) (Estimate, error) {
	full, err := f.solveFull(r, f.packOhm)
	if err != nil {
		return Estimate{}, err
	}
	// Resistance decides when the cutoff comes; what is not known of it is not
	// known of the capacity either.
	m, err := f.model()
	if err != nil {
		return Estimate{}, err
	}
	more := m.MidOhm() * (1 + f.Options.Chemistry.Resistance.Uncertainty/2)
	if f.MidOhm.Known {
		more = f.packOhm + f.MidOhm.Sigma
	}
	other, err := f.solveFull(r, more)
	if err != nil {
		return Estimate{}, err
	}
	r.ohmSigma = math.Abs(other/full - 1)
	byRate := rateSigma(f.Options.Chemistry.Family) * math.Log(f.Options.RateHours*r.CurrentA/r.endAh)
	var sum float64
	for _, part := range []float64{r.meterSigma, r.startSigma, modelSigma, r.ohmSigma} {
		sum += part * part
	}
	r.atRateSigma = math.Sqrt(sum)
	return Estimate{full, full * math.Hypot(r.atRateSigma, byRate), true}, nil
}

// solveFull finds the capacity for one resistance; 0 = the chemistry's.
func (f *finder) solveFull(r *run, ohm float64) (float64, error) {
	var failed error
	b := solve.Crossing(math.Log(0.2*r.endAh), math.Log(6*r.endAh), 1e-6, func(logAh float64) float64 {
		m, err := f.modelOf(math.Exp(logAh), ohm)
		if err != nil {
			failed = err
			return 0
		}
		return f.gives(m, r) - r.endAh
	})
	return math.Exp((b.Lo + b.Hi) / 2), failed
}

// gives is the charge that a model gives along a run until it falls to the
// volts that the run is read at; when it lasts longer than the run, more than the run gave.
func (f *finder) gives(m *battery.Model, r *run) float64 {
	at := math.NaN()
	var before float64
	l := r.log
	f.follow(m, r, func(i int, s *battery.State, volts float64) {
		if i > 0 && l.Amps[i] > 0 && math.IsNaN(at) {
			crossing(&at, r.endV, before, volts, l.ChargeAh[i-1], l.ChargeAh[i])
			if math.IsNaN(at) && m.Empty(s) {
				at = l.ChargeAh[i]
			}
		}
		before = volts
	})
	if math.IsNaN(at) {
		return math.Inf(1)
	}
	return at
}

// repeatSigma is how well a discharge repeats, relative (common practice, no
// published source).
const repeatSigma = 0.007

// peukert fits ln t = a - k ln I over the full runs at one current each.
func (f *finder) peukert() {
	var x, y []float64
	for i := range f.runs {
		if r := &f.runs[i]; r.complete() && r.Steady && r.CurrentA > 0 {
			// Pauses do not count: time with the current flowing.
			x, y = append(x, math.Log(r.CurrentA)), append(y, math.Log(r.Ah/r.CurrentA))
		}
	}
	if !f.severalCurrents() {
		return
	}
	a, slope := stat.LinearRegression(x, y, nil, false)
	mean := stat.Mean(x, nil)
	var sxx, ss float64
	for i := range x {
		sxx += (x[i] - mean) * (x[i] - mean)
		d := y[i] - a - slope*x[i]
		ss += d * d
	}
	scatter := repeatSigma
	if len(x) > 2 {
		scatter = max(scatter, math.Sqrt(ss/float64(len(x)-2)))
	}
	f.Peukert = Estimate{-slope, scatter / math.Sqrt(sxx), true}
}
