package ride_test

import (
	"testing"

	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// Setups that a search came upon, of which one outing of 32 draws took 2900 to 33,000
// steps, a hundred times what the usual ones take: a converter on a weak pack came to
// regulate and fell back within milliseconds, or what the pack lost was looked at
// closely though the converter's output stayed.
func TestNoConverterHasAnOutingFollowedInThousandsOfSteps(t *testing.T) {
	const most = 2000
	for name, values := range map[string]map[string]string{
		"at the volts below which it regulates no more": {
			"controller.converter_limit": "28.7 A", "cutoff.pack.opens_at": "12 V",
			"motors.can": "550", "motors.count": "3", "motors.stall_current": "7.6 A", "outing.drive": "146 s",
			"pack.health": "23.4 to 29.2 %", "pack.label": "20 V max 5 Ah", "pack.maker": "look-alike", "pack.resistance": "781 mOhm",
			"pack.temperature": "1.65 C", "pack.watches_cells": "true", "rider.mass": "20 kg",
			"vehicle.claimed_speed": "1 km/h", "vehicle.ground": "short grass", "wire.gauge": "3 AWG",
		},
		"of a vehicle that creeps for hours": {
			"controller.converter_limit": "8.06 A", "motors.can": "550", "motors.rated_voltage": "12 V",
			"motors.winding_resistance": "567 mOhm", "outing.drive": "171 s", "pack.label": "20 V max 5 Ah",
			"pack.resistance": "649 mOhm", "vehicle.design_voltage": "3 V", "vehicle.ground": "short grass",
		},
		"on a pack that comes down to its volts": {
			"controller.converter_voltage": "1 V", "gears.ratio": "13:1", "motors.no_load_speed": "1.55e+03 rpm",
			"motors.rated_voltage": "15 V", "motors.winding_resistance": "368 mOhm", "outing.air": "3.66 C",
			"pack.cells": "energy", "pack.housing": "bare cells", "pack.label": "20 V max 5 Ah",
			"pack.resistance": "511 mOhm", "vehicle.wheel_diameter": "50 mm",
		},
	} {
		s, err := setup.Of(values)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		steps := 0
		for _, c := range casesOf(t, s, 32) {
			steps = max(steps, ride.Steps(&c))
		}
		t.Logf("a converter %s: %d steps", name, steps)
		if steps > most {
			t.Errorf("a converter %s: %d steps, want at most %d", name, steps, most)
		}
	}
}
