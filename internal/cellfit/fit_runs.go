package cellfit

import (
	"cmp"
	"math"
	"slices"

	"example.org/packcheck/battery"
)

// run is one discharge with what is needed to compute it.
type run struct {
	RunFound
	log        *Log    // its rows, condensed; time and charge begin at 0
	fullAh     float64 // rated capacity that follows; 0 = none does
	startSigma float64 // of StartCharge
	ohmSigma   float64 // of the capacity that follows, relative, by what is not known of the resistance
	meterSigma float64 // of Ah, relative: meter, its zero, and what happened between the rows
	// atRateSigma is of the capacity that follows, relative, at this current.
	atRateSigma float64
	endV        float64 // what its capacity is read at: the cutoff, or the lowest volts before it
	endAh       float64 // what had come out by then
}

// runRows is in how many rows a discharge is computed.
const runRows = 4000

// ammeterSigma is a hall or shunt ammeter that nobody calibrated, relative
// (common practice, no published source). No log shows it.
const ammeterSigma = 0.01

// find takes a log apart and adds its discharges.
func (f *finder) find(l *Log) {
	parts := l.Parts()
	f.Rests += len(parts.Rests)
	f.Pulses += len(parts.Pulses)
	f.whole = append(f.whole, run{RunFound: RunFound{Log: l.Name}, log: l.Condense(runRows)})
	for _, d := range parts.Discharges {
		r := run{RunFound: f.measure(l, d)}
		r.endV, r.endAh = f.Options.CutoffV, r.Ah
		if !r.ReachedCutoff {
			r.endV, r.endAh = l.lowest(d)
		}
		r.meterSigma = math.Hypot(ammeterSigma, (l.between(d)+l.zeroAh(d))/max(r.Ah, 1e-9))
		r.log = l.slice(d.From, d.To+1).fromZero().Condense(runRows)
		f.runs = append(f.runs, r)
	}
}

// measure finds the charge of a discharge down to the cutoff.
func (f *finder) measure(l *Log, d Part) RunFound {
	out := RunFound{Log: l.Name, CurrentA: d.MeanA, Steady: l.steady(d), Ah: d.Ah, Hours: d.Hours}
	for i := d.From + 1; i <= d.To; i++ {
		if l.Volts[i] <= f.Options.CutoffV && l.Amps[i] > 0 {
			part := 1.0
			if dv := l.Volts[i-1] - l.Volts[i]; dv > 0 {
				part = min(max((l.Volts[i-1]-f.Options.CutoffV)/dv, 0), 1)
			}
			out.Ah = l.ChargeAh[i-1] + part*(l.ChargeAh[i]-l.ChargeAh[i-1]) - l.ChargeAh[d.From]
			out.Hours = (l.TimeS[i-1] + part*(l.TimeS[i]-l.TimeS[i-1]) - l.TimeS[d.From]) / 3600
			out.ReachedCutoff = true
			break
		}
	}
	return out
}

// lowest returns the lowest volts of a discharge while a current flowed, and what had
// come out by then.
func (l *Log) lowest(d Part) (volts, ah float64) {
	volts = math.Inf(1)
	for i := d.From + 1; i <= d.To; i++ {
		if l.Amps[i] > 0 && l.Volts[i] <= volts {
			volts, ah = l.Volts[i], l.ChargeAh[i]-l.ChargeAh[d.From]
		}
	}
	return volts, ah
}

// steady reports whether a discharge knows one current besides none.
func (l *Log) steady(d Part) bool {
	var flowing []float64
	for i := d.From; i <= d.To; i++ {
		if l.Amps[i] > 0.2*d.MeanA {
			flowing = append(flowing, l.Amps[i])
		}
	}
	if len(flowing) < 3 {
		return false
	}
	slices.Sort(flowing)
	n := len(flowing)
	return flowing[n/20] > 0.9*flowing[n-1-n/20]
}

// between is the standard uncertainty of a discharge's charge that comes from
// not knowing when, between two rows, the current changed. Small changes are as
// often early as late and average out; switching in step with the logger does
// not. A log with a charge counter of its own knows.
func (l *Log) between(d Part) float64 {
	if l.knows {
		return 0
	}
	all := *l
	all.doubt()
	sudden, noise := all.suddenAh[d.To]-all.suddenAh[d.From], all.noiseAh2[d.To]-all.noiseAh2[d.From]
	return (sudden + math.Sqrt(max(noise, 0))) / math.Sqrt(3)
}

// doubt fills suddenAh and noiseAh2 up to the last row. How great a sudden
// change is, is told from the rows that came so far.
func (l *Log) doubt() {
	edge := jumpShare * l.mostA()
	for i := len(l.suddenAh); i < l.Rows(); i++ {
		var sudden, noise float64
		if i > 0 {
			sudden, noise = l.suddenAh[i-1], l.noiseAh2[i-1]
			change := math.Abs(l.Amps[i] - l.Amps[i-1])
			off := change / 2 * (l.TimeS[i] - l.TimeS[i-1]) / 3600
			if change > edge {
				sudden += off
			} else {
				noise += off * off
			}
		}
		l.suddenAh, l.noiseAh2 = append(l.suddenAh, sudden), append(l.noiseAh2, noise)
	}
}

// zeroAh is the charge that the meter's zero may have added: what it shows
// while nothing flows, over the time of the discharge.
func (l *Log) zeroAh(d Part) float64 {
	const enough = 10_000
	limit := restShare * l.mostA()
	var quiet []float64
	for _, a := range l.Amps {
		if math.Abs(a) <= limit && len(quiet) < enough {
			quiet = append(quiet, math.Abs(a))
		}
	}
	if len(quiet) == 0 {
		return 0
	}
	slices.Sort(quiet)
	return quiet[len(quiet)/2] * d.Hours / math.Sqrt(3)
}

// fromZero lets time and charge begin at 0.
func (l *Log) fromZero() *Log {
	out := *l
	out.TimeS, out.ChargeAh = slices.Clone(l.TimeS), slices.Clone(l.ChargeAh)
	for i := range out.TimeS {
		out.TimeS[i] -= l.TimeS[0]
		out.ChargeAh[i] -= l.ChargeAh[0]
	}
	return &out
}

// startC is the temperature at which a run begins.
func (r *run) startC(ambientC float64) float64 {
	if r.log.TempC != nil {
		return r.log.TempC[0]
	}
	return ambientC
}

// fullSigma is how far "full" differs from charge to charge (common practice,
// no published source).
const fullSigma = 0.01

// underLoadSigma is how well a state of charge is known from a voltage under
// load (common practice, no published source).
const underLoadSigma = 0.03

// begin finds how full a run began: from the first voltage, at rest or under
// the current that flowed already.
func (f *finder) begin(m *battery.Model, r *run) {
	temp := r.startC(f.Options.AmbientC)
	r.TempC = temp
	if f.Options.BeganFull && r.discharges() {
		r.StartCharge, r.startSigma = 1, fullSigma
		return
	}
	r.StartCharge = min(startCharge(m, r.log, temp), 1)
	if math.Abs(r.log.Amps[0]) > restShare*slices.Max(r.log.Amps) {
		r.startSigma = underLoadSigma
		return
	}
	low, _, high := battery.ChargeFromRest(f.Options.Chemistry, r.log.Volts[0]/float64(f.Options.CellsInSeries), 1, temp)
	// Four standard deviations from end to end; full is full, which halves it.
	r.startSigma = (high - low) / 4
}

// discharges reports whether the first current of a run is a discharge.
func (r *run) discharges() bool {
	limit := restShare * r.log.mostA()
	for _, a := range r.log.Amps {
		if math.Abs(a) > limit {
			return a > 0
		}
	}
	return false
}

// A stretch between two rows is computed in steps of this length, over which
// charge and temperature change little; a gap of days in no more than so many.
const (
	runStepS  = 20.0
	mostSteps = 200
)

// follow runs a model along a run. Where the log has temperatures the model
// takes them. It calls row with the model's voltage at each row.
func (f *finder) follow(m *battery.Model, r *run, row func(i int, s *battery.State, volts float64)) {
	l, ambient := r.log, f.Options.AmbientC
	temp := r.startC(ambient)
	if l.TempC != nil {
		ambient = temp
	}
	s := m.StateAt(r.StartCharge, temp)
	for i := range l.TimeS {
		if i > 0 {
			if l.AmbientC != nil {
				ambient = l.AmbientC[i]
			}
			dt := l.TimeS[i] - l.TimeS[i-1]
			amps := (l.ChargeAh[i] - l.ChargeAh[i-1]) / dt * 3600
			parts := min(math.Ceil(dt/runStepS), mostSteps)
			step := m.Over(dt / parts)
			for range int(parts) {
				step.Advance(&s, amps, ambient)
			}
		}
		if l.TempC != nil {
			s.TempC = l.TempC[i]
		}
		row(i, &s, m.TerminalV(&s, l.Amps[i]))
	}
}

// warmed returns the whole logs, with temperatures worked out where a log
// has none: a pack that drives gets warm, and its resistance falls.
func (f *finder) warmed(m *battery.Model) []*Log {
	logs := make([]*Log, len(f.whole))
	for i := range f.whole {
		if logs[i] = f.whole[i].log; logs[i].TempC == nil {
			logs[i] = f.warm(m, &f.whole[i])
		}
	}
	return logs
}

// warm works out the temperatures of one run. The heat is what the log itself
// shows as lost, the current times the drop below the rested voltage, so it
// does not hang on a resistance that is yet to be found.
func (f *finder) warm(m *battery.Model, r *run) *Log {
	out := *r.log
	out.TempC = make([]float64, out.Rows())
	h, kg := f.Options.Chemistry.Heat, m.MassKg()
	cooling := h.CoolingWM2K * h.AreaM2PerKg23 * math.Cbrt(kg*kg)
	if inShell(f.Options) {
		cooling *= h.ShellShare
	}
	perS := cooling / (kg * h.SpecificJKgK)
	ambient := f.Options.AmbientC
	temp := ambient
	f.follow(m, r, func(i int, s *battery.State, _ float64) {
		if i > 0 {
			dt := out.TimeS[i] - out.TimeS[i-1]
			amps := (out.ChargeAh[i] - out.ChargeAh[i-1]) / dt * 3600
			lost := max(amps*(m.RestedV(*s)-(out.Volts[i]+out.Volts[i-1])/2), 0)
			if out.AmbientC != nil {
				ambient = out.AmbientC[i]
			}
			end := ambient + lost/cooling // where it would settle
			temp = end + (temp-end)*math.Exp(-perS*dt)
		}
		out.TempC[i] = temp
	})
	return &out
}

func sortOhms(list []OhmAt) {
	slices.SortFunc(list, func(a, b OhmAt) int { return cmp.Compare(a.Charge, b.Charge) })
}
