package packcheck

import (
	"fmt"
	"math"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/ride"
	"example.org/packcheck/setup"
	"example.org/packcheck/wiring"
)

// agrees is how far a measured figure may lie from the computed likely one
// before the report remarks on it. Own choice.
const agrees = 0.2

// compared sets single readings beside what the likely case gives.
func (v *view) compared(raw *setup.Measured) []MeasuredFigure {
	var out []MeasuredFigure
	add := func(name string, m setup.Value, kind quantity.Kind, computed float64) {
		if !m.Given || !(computed > 0) {
			return
		}
		f := MeasuredFigure{
			Name: name, Measured: m.Text, Computed: quantity.FormatBoth(kind, computed, v.parts.System),
			Says: "agrees with what was computed",
		}
		switch off := m.Likely/computed - 1; {
		case off > agrees:
			f.Says = "more than computed: something assumed is not so"
		case off < -agrees:
			f.Says = "less than computed: something assumed is not so"
		}
		out = append(out, f)
	}
	// Time and speed were taken with the battery that was in the vehicle.
	was := &v.o
	if v.orig != nil {
		was = v.orig
	}
	add("ride time by the clock", raw.RideTime, quantity.Duration, was.lasts.ClockS)
	if v.parts.Bench != nil {
		return out
	}
	add("top speed", raw.TopSpeed, quantity.Speed, was.Steady.SpeedMS)
	add("current with blocked wheels", raw.BlockedCurrent, quantity.Current, was.blocked.BatteryA)
	add("force to pull it along", raw.PullForce, quantity.Force, was.c.Vehicle.RollN+was.c.Vehicle.GradeN)
	if raw.LoadedCurrent.Given {
		start := was.c.Pack.StateAt(was.c.StartCharge, was.c.PackC)
		add("volts under load", raw.LoadedVoltage, quantity.Voltage, was.c.Pack.TerminalV(&start, raw.LoadedCurrent.Likely))
	}
	return out
}

// opened tells which current opened a fuse, and which device came back by
// itself.
func (v *view) opened(raw *setup.Measured) ([]MeasuredFigure, error) {
	var out []MeasuredFigure
	if raw.FuseSeconds.Given {
		spec, ok := v.parts.FuseSpec(v.pick)
		if !ok {
			form, err := v.parts.Tables.Fuse("small blade")
			if err != nil {
				return nil, fmt.Errorf("packcheck: %w", err)
			}
			spec = wiring.FuseSpec{Form: form, DistanceM: math.NaN()}
		}
		if raw.FuseRating.Given {
			spec.RatingA = raw.FuseRating.Likely
		}
		if spec.RatingA > 0 {
			fuse, err := wiring.NewFuse(spec)
			if err != nil {
				return nil, fmt.Errorf("packcheck: %w", err)
			}
			flowed := fuse.WhatFlowed(wiring.Opening{Seconds: raw.FuseSeconds.Likely, AmbientC: v.o.c.AmbientC + boxRiseK})
			says := fmt.Sprintf("at least %s A flowed", round(flowed.LeastA, 2))
			if !math.IsInf(flowed.MostA, 1) {
				says = fmt.Sprintf("%s to %s A flowed", round(flowed.LeastA, 2), round(flowed.MostA, 2))
			}
			out = append(out, MeasuredFigure{
				Name:     fmt.Sprintf("%s A fuse opened after", round(spec.RatingA, 3)),
				Measured: raw.FuseSeconds.Text, Says: says,
			})
		}
	}
	if raw.ResetSeconds.Given {
		answers := wiring.WhatOpened(v.parts.Tables, wiring.Return{
			Seconds: raw.ResetSeconds.Likely,
			Breaker: v.parts.Fuse.Form.Known && v.parts.Fuse.Form.Text == "auto-reset breaker",
			Lithium: v.parts.Pack.Profile.Family == chemistry.Lithium,
		})
		for i, a := range answers {
			if i == 2 {
				break
			}
			out = append(out, MeasuredFigure{
				Name: "came back after", Measured: raw.ResetSeconds.Text, Says: a.Device + ": " + a.Why + " " + a.Check,
			})
		}
	}
	return out, nil
}

// fitted is how wide a figure stays that was worked out from a measurement:
// what else is uncertain is in it as well. Own choice.
const fitted = 0.25

// calibrate narrows what the setup left open by what was measured on the real
// thing. Time, speed and blocked current belong to the battery that was in the
// vehicle: the original one, where the setup has it.
func calibrate(p *setup.Parts) error {
	raw := &p.Setup.Measured
	if !raw.Given || p.Bench != nil {
		return nil
	}
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
		r.figure.Range = Range{
			Low: max(r.figure.Low, x*(1-fitted)), Likely: x, High: min(r.figure.High, x*(1+fitted)),
		}
		r.figure.Assumed, r.figure.Why = true, r.why
		for i := range p.Assumed {
			if p.Assumed[i].Key == r.figure.Key {
				p.Assumed[i].Why, p.Assumed[i].Value = r.why, r.figure.String()
			}
		}
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
