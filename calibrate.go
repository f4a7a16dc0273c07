package packcheck

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// fitted is how wide a figure stays that was worked out from a measurement:
// what else is uncertain is in it as well. Own choice.
const fitted = 0.25

// calibrate narrows what the setup left open by what was measured on the real
// thing. Time, speed and blocked current belong to the battery that was in the
// vehicle: the original one, where the setup has it.
func calibrate(p *setup.Parts) error {
	raw := &p.Setup.Measured
	if !raw.Given {
		return nil
	}
	// Times and speeds were taken with a full battery, so they come before its
	// charge.
	if err := explain(p, readings(p, raw)); err != nil {
		return err
	}
	return calibratePack(p, raw)
}

// reading is a measured value and the figure that it tells.
type reading struct {
	value  setup.Value
	figure *setup.Figure
	of     func(*outcome) float64
	why    string
}

func clockS(o *outcome) float64 { return o.lasts.ClockS }

// settle gives a figure the range that follows from a measurement.
func settle(p *setup.Parts, f *setup.Figure, r Range, why string) {
	f.Range, f.Known, f.Assumed, f.Why = r, true, true, why
	for i := range p.Assumed {
		if p.Assumed[i].Key == f.Key {
			p.Assumed[i].Why, p.Assumed[i].Value = why, f.String()
		}
	}
}

// calibratePack reads charge and resistance of the pack that is asked about.
// With an original in the setup the readings are its old battery's, and say
// nothing of this one.
func calibratePack(p *setup.Parts, raw *setup.Measured) error {
	if p.Original != nil || !raw.RestVoltage.Given {
		return nil
	}
	m, err := newBuilder(p).pack(setup.Likely)
	if err != nil {
		return err
	}
	spec := m.Spec()
	hours := 0.0
	if raw.HoursRested.Given {
		hours = raw.HoursRested.Likely / 3600
	}
	tempC := p.PackC(setup.Likely)
	low, likely, high := chargeAtRest(spec, raw.RestVoltage, hours, tempC)
	if !p.Setup.Pack.Charge.Given {
		settle(p, &p.Pack.Charge, Range{Low: low, Likely: likely, High: high}, "Follows from the measured volts at rest.")
	}
	drop := raw.RestVoltage.Likely - raw.LoadedVoltage.Likely
	if !raw.LoadedVoltage.Given || !raw.LoadedCurrent.Given || !p.Pack.ResistanceFactor.Known || drop <= 0 {
		return nil
	}
	start := m.StateAt(likely, tempC)
	f := &p.Pack.ResistanceFactor
	factor := func(afterS float64) float64 {
		inside, emptier := loadedDrop(m, start, raw.LoadedCurrent.Likely, afterS)
		return f.Likely * max(drop-emptier, 0.1*drop) / inside
	}
	r := Range{Low: factor(readLateS) * (1 - fitted), Likely: factor(readLikelyS), High: factor(readSoonS) * (1 + fitted)}
	if r.Likely > 0.2 && r.Likely < 10 {
		settle(p, f, r, "Follows from the measured volts at rest and under load, read some seconds to some minutes after the load came on; as a multiple of the usual.")
	}
	return nil
}

// Seconds after the load came on at which somebody reads a meter. Own choice.
const readSoonS, readLikelyS, readLateS = 5, 30, 300

// loadedDrop is by how many volts a rested pack has dropped so many seconds
// after a load of amps came on: inside its resistance and branches, and because
// it is emptier.
func loadedDrop(m *battery.Model, rested battery.State, amps, afterS float64) (inside, emptier float64) {
	const parts = 30
	s, step := rested, m.Over(afterS/parts)
	for range parts {
		step.Advance(&s, amps, rested.TempC)
	}
	inside = amps*m.SourceOhm(&s) + s.V1 + s.V2
	return inside, m.TerminalV(&rested, 0) - m.TerminalV(&s, amps) - inside
}

// chargeAtRest reads the state of charge from a resting voltage that may be a
// range itself.
func chargeAtRest(spec battery.Spec, rest setup.Value, hours, tempC float64) (low, likely, high float64) {
	cells := float64(spec.CellsInSeries)
	low, _, _ = battery.ChargeFromRest(spec.Profile, rest.Low/cells, hours, tempC)
	_, likely, _ = battery.ChargeFromRest(spec.Profile, rest.Likely/cells, hours, tempC)
	_, _, high = battery.ChargeFromRest(spec.Profile, rest.High/cells, hours, tempC)
	return low, likely, high
}

// readings lists what tells ground, motors and gears; on a bench what tells the
// pack's health.
func readings(p *setup.Parts, raw *setup.Measured) []reading {
	if p.Bench != nil {
		return []reading{{raw.RideTime, &p.Pack.Health, clockS, "Follows from the measured time under this load."}}
	}
	list := []reading{
		{raw.PullForce, &p.Vehicle.RollingM, func(o *outcome) float64 { return o.c.Vehicle.RollN + o.c.Vehicle.GradeN }, "Follows from the measured pull."},
		{raw.BlockedCurrent, &p.Motors.WindingOhm, func(o *outcome) float64 { return o.blocked.BatteryA }, "Follows from the measured current with blocked wheels."},
		{raw.TopSpeed, &p.Gears.Ratio, func(o *outcome) float64 { return o.Steady.SpeedMS }, "Follows from the measured top speed."},
	}
	if !raw.PullForce.Given {
		list = append(list, reading{raw.RideTime, &p.Vehicle.RollingM, clockS, "Follows from the measured ride time."})
	}
	return list
}

// explain finds for each reading, in their order, the value of its figure with
// which the battery that it was taken with leads to it.
func explain(p *setup.Parts, list []reading) error {
	was := readOn(p)
	for _, r := range list {
		if !r.value.Given || !r.figure.Uncertain() {
			continue
		}
		x, ok, err := solve(was, r.figure, r.of, r.value.Likely)
		if err != nil {
			return err
		}
		if !ok {
			continue // beyond what this figure can explain; compared says so
		}
		settle(p, r.figure, Range{
			Low: max(r.figure.Low, x*(1-fitted)), Likely: x, High: min(r.figure.High, x*(1+fitted)),
		}, r.why)
	}
	return nil
}

// solve finds the value of one figure, within its range, at which an output of
// the likely case comes to what was measured. Outputs are monotone in the
// figures that this is used for.
func solve(p *setup.Parts, f *setup.Figure, of func(*outcome) float64, want float64) (x float64, ok bool, err error) {
	b := newBuilder(p)
	at := func(x float64) float64 {
		c, buildErr := b.build(func(g *setup.Figure) float64 {
			if g.Key == f.Key {
				return x
			}
			return g.Likely
		})
		if buildErr != nil {
			err = buildErr
			return math.NaN()
		}
		if c.Load.Kind == ride.NoLoad && c.Vehicle.Check() != nil {
			return math.NaN()
		}
		o := evaluate(c)
		return of(&o)
	}
	low, high := f.Low, f.High
	atLow, atHigh := at(low)-want, at(high)-want
	if err != nil || math.IsNaN(atLow) || math.IsNaN(atHigh) || atLow*atHigh > 0 {
		return 0, false, err
	}
	for range 40 {
		middle := (low + high) / 2
		if d := at(middle) - want; d*atLow > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2, true, err
}
