package trials_test

import (
	"fmt"
	"testing"

	"example.org/packcheck/answer"
)

// A steeper slope is never told milder, whatever brakes: the motors that a vehicle of labels
// has are a guess, and the slope is none.
func TestASteeperSlopeIsNeverToldMilder(t *testing.T) {
	t.Parallel()
	for _, brake := range []string{"", "motors", "pedal"} {
		worst, at := answer.Fine, 0.0
		for _, slope := range []float64{2, 8, 11, 14, 17, 18, 18.5, 19, 19.5, 20, 21, 23, 25, 27, 30} {
			values := []string{"vehicle.slope", fmt.Sprintf(`"%g %%"`, slope), "rider.age", `"5 years"`, "rider.mass", "", "motors.count", "", "motors.can", "", "motors.rated_voltage", "", "vehicle.ground", ""}
			if brake != "" {
				values = append(values, "vehicle.brake", fmt.Sprintf("%q", brake))
			}
			a := readWith(t, labelsOnly().with(values...).toml(), 512)
			if a.Verdict < worst {
				t.Errorf("brake %q: %s at %g %%, %s at %g %%", brake, worst, at, a.Verdict, slope)
			}
			worst, at = max(worst, a.Verdict), slope
		}
		if worst != answer.Danger {
			t.Errorf("brake %q: 30 %% is %s", brake, worst)
		}
	}
}
