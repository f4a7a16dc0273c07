package main

import (
	"fmt"
	"io"
	"math"
	"slices"

	"example.org/packcheck/battery"
	"example.org/packcheck/cellfit"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
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
// only the profile's share is stored, as package charge has it.
func follow(m *battery.Model, s *battery.State, log *cellfit.Log, each func(row int)) {
	keep := 1.0
	if f := m.Spec().Profile.Charge.ReturnFactor; f > 1 {
		keep = 1 / f
	}
	ambientC := s.TempC
	for i := range log.TimeS {
		if i > 0 {
			dt := log.TimeS[i] - log.TimeS[i-1]
			amps := 3600 * (log.ChargeAh[i] - log.ChargeAh[i-1]) / dt
			if amps < 0 {
				amps *= keep
			}
			n := math.Ceil(dt / 10)
			step := m.Over(dt / n)
			for range int(n) {
				step.Advance(s, amps, ambientC)
			}
		}
		each(i)
	}
}

// recharge runs a model along the discharge that came before, from full, and
// then along the recharge. The voltages are those of charge.VoltsOn.
func (d dataset) recharge(m *battery.Model, before, log *cellfit.Log) (recharged, error) {
	first := slices.IndexFunc(log.Volts, func(v float64) bool { return v >= absorbsV })
	flows := slices.IndexFunc(log.Amps, func(a float64) bool { return a < -0.05 })
	if first < 0 || flows < 0 || flows >= first {
		return recharged{}, fmt.Errorf("not a recharge to %g V", absorbsV)
	}
	last := first
	for i, v := range log.Volts {
		if v >= absorbsV {
			last = i
		}
	}
	s := m.StateAt(1, d.firstC(before))
	follow(m, &s, before, func(int) {})
	s.TempC = d.firstC(log)
	empty := s

	out := recharged{to143: [2]float64{-log.ChargeAh[first], math.NaN()}, logMaxC: math.NaN(), modelMaxC: s.TempC}
	follow(m, &s, log, func(i int) {
		var weight float64
		if i > 0 {
			weight = log.TimeS[i] - log.TimeS[i-1]
		}
		if i+1 < log.Rows() {
			weight += log.TimeS[i+1] - log.TimeS[i]
		}
		model := charge.VoltsOn(m, s, -log.Amps[i])
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
	return out, out.alone(m, empty, log, flows, first, last)
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
		other, err := battery.New(battery.Spec{Profile: builtin, CellsInSeries: d.series, CapacityAh: d.ah, Health: acceptedAh / d.ah, MassKg: d.massKg})
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
