package battery

import (
	"math"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/solve"
)

// restVPerK widens a reading taken away from 25 deg C; the open-circuit
// voltage of all chemistries here moves by a few tenths of a millivolt per
// kelvin and cell (flooded lead-acid 0.1 to 0.5 mV/K in a charging guide's
// table; lithium 0.05 to 0.13 mV/K in the demonstration set of PyBaMM).
const restVPerK = 0.0003

// ChargeFromRest returns the state of charge (0..1) of a cell from its
// voltage at rest, as a range with the likeliest value: hoursRested since the
// last charge or discharge, at tempC. Whether the cell was last charged or
// discharged is not asked, so a short rest widens the range to both sides:
// voltage lies high after a charge and low after a discharge. With a flat
// curve (lifepo4) the range is wide however long the rest. NaN comes of what is
// no number, and of a profile without a rest curve, such as the zero one.
func ChargeFromRest(p chemistry.Profile, cellV, hoursRested, tempC float64) (low, likely, high float64) {
	unsettled := portable.Exp(-max(hoursRested, 0) / p.Rest.SettleH)
	margin := p.Rest.SpreadV + restVPerK*math.Abs(tempC-25)
	ratio := math.Max(p.Capacity.Ratio, 1e-3)
	volts := p.Rest.VoltsAt.Func()
	at := func(v float64) float64 {
		return min(max(1-(1-chargeAtRestV(volts, v))*ratio, 0), 1)
	}
	return at(cellV - margin - p.Rest.SurfaceV*unsettled), at(cellV), at(cellV + margin + p.Rest.UnderV*unsettled)
}

// chargeAtRestV inverts the rest curve, clamped to 0..1; NaN where either is none.
func chargeAtRestV(volts func(charge float64) float64, v float64) float64 {
	switch empty, full := volts(0), volts(1); {
	case v <= empty:
		return 0
	case v >= full:
		return 1
	case !(v > empty && v < full):
		return math.NaN()
	}
	b := solve.Crossing(0, 1, 1e-14, func(z float64) float64 { return volts(z) - v })
	return (b.Lo + b.Hi) / 2
}
