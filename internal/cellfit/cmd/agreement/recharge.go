package main

import (
	"fmt"
	"io"
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

const rechargeHead = `| recharge | model | voltage rms, %: bulk | absorption | float and rest | Ah in to 14.3 V: measured | model | hours to the end of absorption: measured | computed | Ah in by then: measured | computed |
|---|---|---|---|---|---|---|---|---|---|---|`

// absorbsV is the voltage of a 12 V block from which a charge counts as
// absorption. The charger of the dataset held about 14.4 V and dipped below
// now and then.
const absorbsV = 14.3

// acceptedAh is the charge between full and empty of the block with which the
// acceptance of package charge was fitted, on the built-in profile.
const acceptedAh = 20.5

// The parts of a recharge, and the whole of it.
const (
	bulk = iota
	absorption
	afterwards
	whole
	phases
)

// recharged says how far a logged recharge and the model of package charge are
// apart.
type recharged struct {
	off       [phases]deviation
	to143     [2]float64 // Ah put in until 14.3 V, measured and model; NaN when not reached
	hours     [2]float64 // until the end of absorption, measured and computed alone
	inAh      [2]float64 // put in until then
	logMaxC   float64
	modelMaxC float64
}

// deviation gathers voltage differences over time.
type deviation struct{ sum, time, worst float64 }

func (d *deviation) add(v, weight float64) {
	d.sum += v * v * weight
	d.time += weight
	d.worst = math.Max(d.worst, math.Abs(v))
}

func (d deviation) rms() float64 { return math.Sqrt(d.sum / d.time) }

// follow runs the model along the charge that a log counted. Of what is put in
// only a part is stored, as package charge has it.
func follow(m *battery.Model, s *battery.State, log *cellfit.Log, each func(row int)) {
	ambientC := s.TempC
	for i := range log.TimeS {
		if i > 0 {
			dt := log.TimeS[i] - log.TimeS[i-1]
			amps := 3600 * (log.ChargeAh[i] - log.ChargeAh[i-1]) / dt
			n := math.Ceil(dt / 20)
			step := m.Over(dt / n)
			for range int(n) {
				through := amps
				if amps < 0 {
					_, stored := charge.Taken(m, *s, -amps)
					through = -stored
				}
				step.Advance(s, through, ambientC)
			}
		}
		each(i)
	}
}

// recharge runs a model along the discharge that came before, from full, and
// then along the recharge; and computes the recharge once more by itself.
func (d dataset) recharge(m *battery.Model, before, log *cellfit.Log) (recharged, error) {
	flows, first, last, err := absorbing(log)
	if err != nil {
		return recharged{}, err
	}
	out, empty := d.along(m, before, log, first, last)
	return out, out.alone(m, empty, log, flows, first, last)
}

// absorbing returns the row from which a recharge flows, and the first and the
// last at which it stands at the absorption's voltage.
func absorbing(log *cellfit.Log) (flows, first, last int, err error) {
	first = slices.IndexFunc(log.Volts, func(v float64) bool { return v >= absorbsV })
	flows = slices.IndexFunc(log.Amps, func(a float64) bool { return a < -0.05 })
	if first < 0 || flows < 0 || flows >= first {
		return 0, 0, 0, fmt.Errorf("not a recharge to %g V", absorbsV)
	}
	last = first
	for i, v := range log.Volts {
		if v >= absorbsV {
			last = i
		}
	}
	return flows, first, last, nil
}

// along runs a model along the discharge that came before, from full, and then
// along the recharge. It also returns the state between the two. The voltages
// are those of charge.Taken.
func (d dataset) along(m *battery.Model, before, log *cellfit.Log, first, last int) (out recharged, empty battery.State) {
	s := m.StateAt(1, d.firstC(before))
	follow(m, &s, before, func(int) {})
	s.TempC = d.firstC(log)
	empty = s
	out = recharged{to143: [2]float64{-log.ChargeAh[first], math.NaN()}, logMaxC: math.NaN(), modelMaxC: s.TempC}
	follow(m, &s, log, func(i int) {
		var weight float64
		if i > 0 {
			weight = log.TimeS[i] - log.TimeS[i-1]
		}
		if i+1 < log.Rows() {
			weight += log.TimeS[i+1] - log.TimeS[i]
		}
		model, _ := charge.Taken(m, s, -log.Amps[i])
		phase := bulk
		switch {
		case i > last:
			phase = afterwards
		case i >= first:
			phase = absorption
		}
		out.off[phase].add(model-log.Volts[i], weight)
		out.off[whole].add(model-log.Volts[i], weight)
		if math.IsNaN(out.to143[1]) && model >= absorbsV {
			out.to143[1] = -log.ChargeAh[i]
		}
		out.modelMaxC = math.Max(out.modelMaxC, s.TempC)
	})
	if log.TempC != nil {
		out.logMaxC = slices.Max(log.TempC)
	}
	return out, empty
}

// alone computes the whole charge without the log, from what a charger's label
// would tell: its current, the voltage it holds and where it ends.
func (out *recharged) alone(m *battery.Model, s battery.State, log *cellfit.Log, flows, first, last int) error {
	between := func(from, to int) (hours, inAh float64) {
		return (log.TimeS[to] - log.TimeS[from]) / 3600, log.ChargeAh[from] - log.ChargeAh[to]
	}
	late := last
	for late > first && log.TimeS[last]-log.TimeS[late] < 1800 {
		late--
	}
	if late == last {
		return fmt.Errorf("the voltage was not held for half an hour")
	}
	bulkH, bulkAh := between(flows, first)
	lateH, lateAh := between(late, last)
	run, err := charge.Simulate(charge.Case{
		Pack: m, Start: s, AmbientC: s.TempC,
		CurrentA: bulkAh / bulkH, EndV: median(log.Volts[first : last+1]), EndA: lateAh / lateH,
	})
	if err != nil {
		return err
	}
	out.hours[0], out.inAh[0] = between(flows, last)
	out.hours[1], out.inAh[1] = run.CCHours+run.CVHours, run.InAh
	return nil
}

// fitAcceptance finds with which acceptance a profile comes closest to the
// recharge that is given for it. Gassing at float volts stays as the profile has
// it; how steeply it grows is found. model makes the block of a profile.
func (d dataset) fitAcceptance(p chemistry.Profile, c curves, model func(chemistry.Profile) (*battery.Model, error)) (chemistry.Profile, error) {
	before, log := c.logs[d.recharges[d.accepted]], c.logs[d.accepted]
	if before == nil || log == nil {
		return p, fmt.Errorf("the acceptance is fitted to %s and %s", d.accepted, d.recharges[d.accepted])
	}
	_, first, last, err := absorbing(log)
	if err != nil {
		return p, err
	}
	start := p.Acceptance
	with := func(x []float64) chemistry.Profile {
		p.Acceptance.OhmAh = start.OhmAh * math.Exp(x[0])
		p.Acceptance.Power = start.Power * math.Exp(x[1])
		p.Acceptance.Offset = start.Offset * math.Exp(x[2])
		p.Acceptance.GasPer100mV = 1 + (start.GasPer100mV-1)*math.Exp(x[3])
		return p
	}
	cost := func(x []float64) float64 {
		m, err := model(with(x))
		if err != nil {
			return math.Inf(1)
		}
		r, _ := d.along(m, before, log, first, last)
		off := 100 * r.off[whole].rms() / m.NominalV()
		return off * off
	}
	result, err := optimize.Minimize(optimize.Problem{Func: cost}, []float64{0, 0, 0, 0}, &optimize.Settings{FuncEvaluations: 300}, &optimize.NelderMead{SimplexSize: 0.3})
	if result == nil {
		return p, err
	}
	return with(result.X), nil
}

// builtin is the dataset's block as the shipped profile makes it.
func (d dataset) builtin(p chemistry.Profile) (*battery.Model, error) {
	return battery.New(battery.Spec{Profile: p, CellsInSeries: d.series, CapacityAh: d.ah, Health: acceptedAh / d.ah, MassKg: d.massKg})
}

// firstC is the temperature with which a log begins.
func (d dataset) firstC(log *cellfit.Log) float64 {
	if log.TempC == nil {
		return d.ambientC
	}
	return log.TempC[0]
}

// rechargeRow is the table's row of a recharge.
func (d dataset) rechargeRow(m *battery.Model, name string, c curves) (row, error) {
	r, err := d.recharge(m, c.logs[d.recharges[name]], c.logs[name])
	if err != nil {
		return row{}, err
	}
	use := keptAside
	if name == d.accepted {
		use = acceptanceFitted
	}
	return row{
		curve: d.cell + "/" + name, note: "charge model", use: use, rms: r.off[whole].rms() / m.NominalV(), worstV: r.off[whole].worst,
		logAh: math.NaN(), modelAh: math.NaN(), logMaxC: r.logMaxC, modelMaxC: r.modelMaxC,
	}, nil
}

// phases prints the recharges part by part, with the fitted block and with the
// built-in profile.
func (d dataset) phases(c curves, out io.Writer) error {
	fitted, err := d.profile()
	if err != nil {
		return err
	}
	builtin, _ := chemistry.Builtin().Profile(d.base)
	for _, name := range c.names {
		before, ok := c.logs[d.recharges[name]]
		if !ok {
			continue
		}
		own, err := d.model(fitted, name, c.logs[name])
		if err != nil {
			return err
		}
		other, err := d.builtin(builtin)
		if err != nil {
			return err
		}
		for _, by := range []struct {
			name string
			m    *battery.Model
		}{
			{d.cell, own},
			{fmt.Sprintf("built-in %s, %g Ah", d.base, acceptedAh), other},
		} {
			r, err := d.recharge(by.m, before, c.logs[name])
			if err != nil {
				return fmt.Errorf("%s: %w", name, err)
			}
			share := func(phase int) string {
				return figure("%.2f", 100*r.off[phase].rms()/by.m.NominalV())
			}
			reached := figure("%.2f", r.to143[1])
			if reached == "" {
				reached = "not reached"
			}
			fmt.Fprintf(out, "| %s | %s | %s | %s | %s | %.2f | %s | %.1f | %.1f | %.2f | %.2f |\n", name, by.name,
				share(bulk), share(absorption), share(afterwards), r.to143[0], reached, r.hours[0], r.hours[1], r.inAh[0], r.inAh[1])
		}
	}
	return nil
}
