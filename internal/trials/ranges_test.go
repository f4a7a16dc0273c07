package trials_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"
)

// Whatever somebody then finds out about what was not known, inside what was
// allowed for, the figures stay inside the ranges that were promised.
func TestTheRangesHoldWhatIsLaterFoundOut(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	within := func(low, high float64, unit string) string {
		return fmt.Sprintf(`"%.4f %s"`, low+(high-low)*random.Float64(), unit)
	}
	bases := map[string]sheet{
		"lead-acid on grass": labelsOnly().with("vehicle.ground", `"short grass"`),
		"tool pack":          labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`),
	}
	for _, name := range slices.Sorted(maps.Keys(bases)) { // the same order of draws every time
		base := bases[name]
		promised := assess(t, base)
		for range 24 {
			s := base.with(
				"pack.health", within(80, 100, "%"), "gears.efficiency", within(52, 72, "%"), "vehicle.mass", within(10, 18, "kg"),
				"wire.gauge", fmt.Sprintf(`"%d AWG"`, 14+2*random.IntN(3)), "wire.one_way_length", within(0.6, 1.8, "m"),
				"wire.joints", strconv.Itoa(6+random.IntN(7)), "wire.joint_resistance", within(0.5, 10, "mOhm"),
				"controller.resistance", within(5, 60, "mOhm"), "motors.no_load_current", within(0.4, 2.5, "A"),
				"outing.air", within(10, 30, "C"), "outing.drive", within(15, 40, "s"), "outing.pause", within(5, 20, "s"))
			found := figures(t, assess(t, s))
			for _, path := range []string{"ride.lasts_pedal_min", "ride.lasts_clock_min", "ride.distance_km", "steady.speed_kmh", "steady.battery_a", "launch.peak_battery_a", "launch.blocked_battery_a", "pack.usable_ah"} {
				if r := promised.Ranges[path]; !r.Contains(found["."+path]) {
					t.Errorf("%s: %s turns out as %.4g, promised was %.4g to %.4g\n%s", name, path, found["."+path], r.Low, r.High, s.toml())
				}
			}
		}
	}
}
