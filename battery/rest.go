package battery

import "example.org/packcheck/chemistry"

// ChargeFromRest returns the state of charge (0..1) of a cell from its
// voltage at rest, as a range with the likeliest value: hoursRested since the
// last charge or discharge, at tempC.
func ChargeFromRest(p chemistry.Profile, cellV, hoursRested, tempC float64) (low, likely, high float64) {
	return 0, 0.5, 1
}
