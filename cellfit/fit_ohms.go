package cellfit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"example.org/packcheck/battery"
)

// warmed gives logs that carry no temperature the one that the cell model works
// out from their current: a pack that drives gets warm, and its resistance
// falls. The heat needs the resistance and the resistance the warmth, so it
// goes round until the resistance stays.
func (r *Result) warmed(logs []*Log) []*Log {
	o := r.Options
	ah := o.LabelAh
	if ah <= 0 {
		ah = r.FullAh.Value
	}
	ambient := o.AmbientC
	if ambient == 0 {
		ambient = roomC
	}
	out := make([]*Log, len(logs))
	copy(out, logs)
	if ah <= 0 {
		return out
	}
	spec := battery.Spec{Profile: o.Chemistry, CellsInSeries: o.CellsInSeries, CapacityAh: ah, RateHours: o.RateHours}
	for range 6 {
		m, err := battery.New(spec)
		if err != nil {
			return out
		}
		var ohms []float64
		for i, l := range logs {
			if l.TempC == nil {
				warm := *l
				warm.TempC = temperatures(m, l, ambient)
				out[i] = &warm
			}
			factor := o.Chemistry.Resistance.TempFactor.Func()
			for _, j := range out[i].jumps(slices.Max(l.Amps)) {
				ohms = append(ohms, j.Ohm/factor(j.TempC))
			}
		}
		if len(ohms) == 0 {
			return out
		}
		slices.Sort(ohms)
		before := spec.ResistanceOhm
		if spec.ResistanceOhm = ohms[len(ohms)/2]; math.Abs(spec.ResistanceOhm-before) < 0.01*before {
			return out
		}
	}
	return out
}

// temperatures runs a model along a log for the warmth of its cells.
func temperatures(m *battery.Model, l *Log, ambientC float64) []float64 {
	out := make([]float64, l.Rows())
	out[0] = ambientC
	s := m.StateAt(startCharge(m, l, ambientC), ambientC)
	for i := 1; i < l.Rows(); i++ {
		dt := l.TimeS[i] - l.TimeS[i-1]
		advance(m, &s, dt, (l.ChargeAh[i]-l.ChargeAh[i-1])/dt*3600, ambientC)
		out[i] = s.TempC
	}
	return out
}

// steps reads resistance from sudden changes of current, by tenths of charge.
func (r *Result) steps(logs []*Log, parts []Parts) {
	full := r.FullAh.Value
	if !r.FullAh.Known {
		full = r.Options.LabelAh
	}
	if full <= 0 {
		return
	}
	var bins [10][]float64
	var gaps [10]float64
	for i, l := range logs {
		n := float64(r.Options.CellsInSeries)
		if l.TempC == nil {
			continue
		}
		_, start, _ := battery.ChargeFromRest(r.Options.Chemistry, l.Volts[0]/n, 1, 25)
		factor := r.Options.Chemistry.Resistance.TempFactor.Func()
		for _, j := range parts[i].Steps {
			z := start - j.Ah/full
			ohm := j.Ohm / factor(l.TempC[j.Row-1])
			k := min(max(int(z*10), 0), 9)
			bins[k] = append(bins[k], ohm)
			gaps[k] += j.GapS
		}
	}
	for k, b := range bins {
		if len(b) == 0 {
			continue
		}
		mean, sigma := stat.MeanStdDev(b, nil)
		// A single step is read to a tenth; more steps average, down to the
		// three per cent of a voltmeter and an ammeter.
		if len(b) == 1 {
			sigma = 0.1 * mean
		}
		// Seconds between the rows blur the step with what the cell does on its
		// own in that time, a hundredth and a half of the step per second.
		sigma = max(sigma/math.Sqrt(float64(len(b))), 0.03*mean, stepBlurPerS*gaps[k]/float64(len(b))*mean)
		r.Ohms = append(r.Ohms, OhmAt{Charge: (float64(k) + 0.5) / 10, Ohm: Estimate{mean, sigma, true}, Steps: len(b)})
	}
}

// fillOhms takes resistance from the fitted curves where no step shows it, and
// settles the figure at half charge.
func (r *Result) fillOhms() {
	n := float64(r.Options.CellsInSeries)
	if len(r.Ohms) < 3 && r.CellKnown {
		ah := r.Options.LabelAh
		if ah <= 0 {
			ah = r.FullAh.Value
		}
		curve := r.Cell.Profile.Resistance.OhmAh
		var out []OhmAt
		for _, z := range []float64{0.1, 0.25, 0.5, 0.75, 0.9} {
			k, f := clampHat(ohmKnots, z)
			sigma := 0.0
			if k+1 < len(r.Cell.OhmSigma) {
				sigma = r.Cell.OhmSigma[k]*(1-f) + r.Cell.OhmSigma[k+1]*f
			}
			out = append(out, OhmAt{Charge: z, Ohm: Estimate{curve.At(z) * n / ah, max(sigma*n/ah, 0.05*curve.At(z)*n/ah), true}})
		}
		r.Ohms = out
	}
	nearest := math.Inf(1)
	for _, o := range r.Ohms {
		if d := math.Abs(o.Charge - 0.5); d < nearest {
			nearest, r.MidOhm = d, o.Ohm
		}
	}
}
