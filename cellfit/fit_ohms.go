package cellfit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"example.org/packcheck/battery"
)

// followed is a log with what the cell model says went on inside.
type followed struct {
	log    *Log      // with a temperature in any case
	charge []float64 // label charge of a rested pack with as much charge available
}

// follow runs the cell model along the logs: for the temperature where none
// was logged (a pack that drives gets warm, and its resistance falls), and for
// the charge that is available at each moment (resistance goes by that, not by
// all the charge). The heat needs the resistance and the resistance the
// warmth, so it goes round until the resistance stays.
func (r *Result) follow(logs []*Log) []followed {
	o := r.Options
	ah := r.FullAh.Value
	if !r.FullAh.Known {
		ah = o.LabelAh
	}
	if ah <= 0 {
		return nil
	}
	ambient := o.AmbientC
	if ambient == 0 {
		ambient = roomC
	}
	factor := o.Chemistry.Resistance.TempFactor.Func()
	spec := battery.Spec{Profile: o.Chemistry, CellsInSeries: o.CellsInSeries, CapacityAh: ah, RateHours: o.RateHours}
	var out []followed
	for range 6 {
		m, err := battery.New(spec)
		if err != nil {
			return nil
		}
		out = out[:0]
		var ohms []float64
		for _, l := range logs {
			f := followLog(m, l, ambient)
			out = append(out, f)
			for _, j := range f.log.jumps(slices.Max(l.Amps)) {
				// At half charge, by the shape of the profile's curve.
				shape := o.Chemistry.Resistance.OhmAh
				z := 1 - (1-f.charge[j.Row-1])/o.Chemistry.Capacity.Ratio
				ohms = append(ohms, j.Ohm/factor(j.TempC)*shape.At(0.5)/shape.At(z))
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

// followLog runs a model along one log.
func followLog(m *battery.Model, l *Log, ambientC float64) followed {
	f := followed{log: l, charge: make([]float64, l.Rows())}
	var temps []float64
	start := ambientC
	if l.TempC == nil {
		temps = make([]float64, l.Rows())
	} else {
		start = l.TempC[0]
	}
	perHead := m.Wells().C * m.Wells().CapacityAh
	ratio := m.Wells().CapacityAh / m.FullAh()
	s := m.StateAt(startCharge(m, l, start), start)
	for i := range l.TimeS {
		if i > 0 {
			dt := l.TimeS[i] - l.TimeS[i-1]
			advance(m, &s, dt, (l.ChargeAh[i]-l.ChargeAh[i-1])/dt*3600, ambientC)
		}
		if temps != nil {
			temps[i] = s.TempC
		}
		f.charge[i] = 1 - (1-s.Y1Ah/perHead)*ratio
	}
	if temps != nil {
		warm := *l
		warm.TempC = temps
		f.log = &warm
	}
	return f
}

// logsOf returns the logs with their temperatures, or the plain ones when they
// could not be followed.
func logsOf(all []followed, plain []*Log) []*Log {
	if len(all) != len(plain) {
		return plain
	}
	out := make([]*Log, len(all))
	for i, f := range all {
		out[i] = f.log
	}
	return out
}

// steps reads resistance from sudden changes of current, by tenths of charge.
func (r *Result) steps(all []followed) {
	r.Ohms = nil
	var bins [10][]float64
	var gaps [10]float64
	p := r.Options.Chemistry
	factor := p.Resistance.TempFactor.Func()
	for _, f := range all {
		for _, j := range f.log.jumps(slices.Max(f.log.Amps)) {
			k := min(max(int(f.charge[j.Row-1]*10), 0), 9)
			bins[k] = append(bins[k], j.Ohm/factor(f.log.TempC[j.Row-1]))
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
		sigma = max(sigma/math.Sqrt(float64(len(b))), 0.03*mean)
		// Between the two rows of a step the fast branch moves as well, and
		// nobody knows where between them the current changed: half of what
		// the branch can do is taken off, and the rest is uncertainty.
		blur := p.Fast.OhmAh.At(0.5) / p.Resistance.OhmAh.At(0.5) * -math.Expm1(-gaps[k]/float64(len(b))/p.Fast.TauS)
		mean /= 1 + blur/2
		sigma = math.Hypot(sigma, 0.3*blur*mean)
		r.Ohms = append(r.Ohms, OhmAt{Charge: (float64(k) + 0.5) / 10, Ohm: Estimate{mean, sigma, true}, Steps: len(b)})
	}
}

// fillOhms takes resistance from the fitted curves where no step shows it.
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
}

// settleMidOhm takes the figure at half charge from those by charge.
func (r *Result) settleMidOhm() {
	nearest := math.Inf(1)
	for _, o := range r.Ohms {
		if d := math.Abs(o.Charge - 0.5); d < nearest {
			nearest, r.MidOhm = d, o.Ohm
		}
	}
}
