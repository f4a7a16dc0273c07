package wiring

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/tables"
)

// A finding needs more than the error of what it was computed from.
const (
	// demandMargin is for what the vehicle draws and how long: peaks of a launch
	// are right within 5e-4, times within 5e-3, sums within 1e-2 (package drive).
	demandMargin = 1e-2
	// roundMargin is for what is printed, read or looked up, on both sides.
	roundMargin = 1e-9
)

// drawsOver reports whether a demand is above its limit for certain.
func drawsOver(demand, limit float64) bool { return demand > limit*(1+demandMargin) }

// over reports whether a printed figure is above its limit, rounding aside.
func over(figure, limit float64) bool { return figure > limit*(1+roundMargin) }

// wireKeys are the keys that say which wire it is.
func wireKeys() []string { return []string{answer.KeyWireGauge, answer.KeyWireArea} }

// usualHottestC is the highest rating that insulation of vehicle wire usually
// has. Common practice, no published source.
const usualHottestC = 105

// wireDecides lists what a finding on a run hangs on. Its insulation is among
// them only where the finding would not hold for the best that is usual.
func (j *judge) wireDecides(run Run, holds func(Run) bool) []string {
	keys := wireKeys()
	if run.Ampacity.InsulationC >= usualHottestC {
		return keys
	}
	best := run
	var err error
	if best.Ampacity, err = j.Tables.Ampacity(tables.AmpacityQuery{Wire: run.Wire, InsulationC: usualHottestC}); err != nil {
		return keys
	}
	if best.Insulation, err = j.Tables.InsulationFor(usualHottestC); err != nil {
		return keys
	}
	if !holds(best) {
		keys = append(keys, answer.KeyWireInsulation)
	}
	return keys
}
