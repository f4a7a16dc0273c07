package packcheck

import (
	"fmt"
	"math"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
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
	if f, ok := v.sagged(raw, was); ok {
		out = append(out, f)
	}
	return out
}

// sagged compares the drop under load, which a comparison of the volts
// themselves would hide.
func (v *view) sagged(raw *setup.Measured, was *outcome) (MeasuredFigure, bool) {
	if !raw.LoadedCurrent.Given || !raw.LoadedVoltage.Given {
		return MeasuredFigure{}, false
	}
	start := was.c.Pack.StateAt(was.c.StartCharge, was.c.PackC)
	restV := was.c.Pack.EMF(&start)
	if raw.RestVoltage.Given {
		restV = raw.RestVoltage.Likely
	}
	amps := raw.LoadedCurrent.Likely
	expected := func(afterS float64) float64 {
		inside, emptier := loadedDrop(was.c.Pack, start, amps, afterS)
		return inside + emptier
	}
	drop := restV - raw.LoadedVoltage.Likely
	f := MeasuredFigure{
		Name: "volts under load", Measured: raw.LoadedVoltage.Text,
		Computed: quantity.FormatBoth(quantity.Voltage, restV-expected(readLikelyS), v.parts.System),
		Says:     "the drop is as expected",
	}
	switch {
	case drop > 1.5*expected(readLateS):
		f.Says = "it drops far more than such a battery does: worn, cold or badly connected"
	case drop < 0.5*expected(readSoonS):
		f.Says = "it drops far less than expected: look whether the load was really on"
	}
	return f, true
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
			Breaker: v.parts.Fuse.Form.Known && v.parts.Fuse.Form.Text == "auto-reset-breaker",
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
