package packcheck

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/ride"
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
	if p.Bench == nil {
		if err := calibrateVehicle(p, raw); err != nil {
			return err
		}
	}
	return calibratePack(p, raw)
}

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
	low, likely, high := battery.ChargeFromRest(spec.Profile, raw.RestVoltage.Likely/float64(spec.CellsInSeries), hours, tempC)
	if !p.Setup.Pack.Charge.Given && likely > 0 {
		settle(p, &p.Pack.Charge, Range{Low: low, Likely: likely, High: high}, "Follows from the measured volts at rest.")
	}
	drop := raw.RestVoltage.Likely - raw.LoadedVoltage.Likely
	if !raw.LoadedVoltage.Given || !raw.LoadedCurrent.Given || !p.Pack.ResistanceFactor.Known || drop <= 0 {
		return nil
	}
	start := m.StateAt(likely, tempC)
	ohm := m.SourceOhm(&start)
	for _, b := range m.Branches(start, raw.LoadedCurrent.Likely) {
		ohm += b.Ohm // a reading under load is taken after the branches have grown in
	}
	f := &p.Pack.ResistanceFactor
	factor := f.Likely * drop / raw.LoadedCurrent.Likely / ohm
	if factor > 0.2 && factor < 10 {
		settle(p, f, Range{Low: factor * (1 - fitted), Likely: factor, High: factor * (1 + fitted)}, "Follows from the measured volts at rest and under load.")
	}
	return nil
}

// calibrateVehicle reads ground, motors and gears.
func calibrateVehicle(p *setup.Parts, raw *setup.Measured) error {
	was := p
	if p.Original != nil {
		was = p.Original
	}
	type reading struct {
		value  setup.Value
		figure *setup.Figure
		of     func(*outcome) float64
		why    string
	}
	for _, r := range []reading{
		{raw.PullForce, &p.Vehicle.RollingM, func(o *outcome) float64 { return o.c.Vehicle.RollN + o.c.Vehicle.GradeN }, "Follows from the measured pull."},
		{raw.BlockedCurrent, &p.Motors.WindingOhm, func(o *outcome) float64 { return o.blocked.BatteryA }, "Follows from the measured current with blocked wheels."},
		{raw.TopSpeed, &p.Gears.Ratio, func(o *outcome) float64 { return o.Steady.SpeedMS }, "Follows from the measured top speed."},
		{raw.RideTime, &p.Vehicle.RollingM, func(o *outcome) float64 { return o.lasts.ClockS }, "Follows from the measured ride time."},
	} {
		if !r.value.Given || !r.figure.Uncertain() || r.value == raw.RideTime && raw.PullForce.Given {
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
