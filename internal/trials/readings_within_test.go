package trials_test

import (
	"fmt"
	"math"
	"testing"
)

// What is printed as a range of what a vehicle may do must not be called impossible when
// somebody reads it: between two kinds of motor lie others that nobody told of.
func TestAReadingWithinThePrintedRangeFits(t *testing.T) {
	t.Parallel()
	const steps = 12
	for name, vehicle := range map[string]sheet{
		"two motors":    block(),
		"motors untold": block().with("motors.can", "", "motors.count", ""),
		"on a lawn":     block().with("motors.can", "", "vehicle.ground", `"short grass"`),
		"a board":       block().with("motors.can", "", "vehicle.has_board", "true"),
	} {
		labels := briefly(t, vehicle)
		for _, r := range []struct {
			path, key, unit string
			least           float64 // that anybody reads
		}{
			{"launch.blocked_battery_a", "measured.blocked_current", "A", 1},
			{"steady.speed_kmh", "measured.top_speed", "km/h", 1},
		} {
			within, ok := labels.Ranges[r.path]
			if !ok || !(within.Low > 0) {
				t.Fatalf("%s: %s is %v", name, r.path, within)
			}
			for i := range steps + 1 {
				value := max(r.least, within.Low*math.Pow(within.High/within.Low, float64(i)/steps))
				text := fmt.Sprintf("%.3g %s", value, r.unit)
				if a := briefly(t, vehicle.with(r.key, `"`+text+`"`)); a.Conflict != nil {
					t.Errorf("%s: %s = %s, of %.3g to %.3g: %s", name, r.key, text, within.Low, within.High, a.Conflict.Words)
				}
			}
		}
	}
}
