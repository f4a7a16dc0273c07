package cutoff

import (
	"fmt"
	"math"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// The reference follows the load second by second.
func TestAPackThatRunsDownIsKnownAtAnyVoltsFromItsFewKnots(t *testing.T) {
	for _, p := range []struct {
		name  string
		cells int
		ah    float64
	}{{"agm", 6, 7}, {"gel", 6, 12}, {"li-ion", 5, 5}, {"lifepo4", 4, 10}, {"nimh", 10, 4}} {
		profile, ok := chemistry.Builtin().Profile(p.name)
		if !ok {
			t.Fatal(p.name)
		}
		m, err := battery.New(battery.Spec{Profile: profile, CellsInSeries: p.cells, CapacityAh: p.ah})
		if err != nil {
			t.Fatal(err)
		}
		for _, tempC := range []float64{-5, 20} {
			for _, rate := range []float64{0.3, 1, 3} {
				w := Wish{Case: Case{Pack: m, Start: m.StateAt(1, tempC), LoadA: rate * p.ah, AmbientC: tempC}}
				f := w.falling()
				full := m.TerminalV(&w.Start, w.LoadA)
				s, second, after := w.Start, m.Over(1), 0.0
				for _, share := range []float64{0.95, 0.9, 0.85, 0.8, 0.75} {
					v := share * full
					for m.TerminalV(&s, w.LoadA) > v {
						second.Advance(&s, w.LoadA, tempC)
						after++
					}
					name := fmt.Sprintf("%s at %g C, %g degC, %.2f V", p.name, rate, tempC, v)
					if got := f.until(v); math.Abs(got-after) > 1+0.002*after {
						t.Errorf("%s: after %.1f s, want %.1f s", name, got, after)
					}
					if got, want := m.Charge(f.to(v)), m.Charge(s); math.Abs(got-want) > 0.002 {
						t.Errorf("%s: %.4f of the charge left, want %.4f", name, got, want)
					}
				}
			}
		}
	}
}
