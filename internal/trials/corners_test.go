package trials_test

import (
	"testing"

	"example.org/packcheck/internal/build"
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// The dearest valid setups that a search through keys, words and bounds came upon:
// hundreds of thousands of short presses. Before they were mended one of their
// rides took up to 300 times as many steps as the usual ones.
func corners() map[string]map[string]string {
	return map[string]map[string]string{
		"a huge pack that its cutoff ends after 200 000 presses": {
			"pack.chemistry": "lifepo4", "pack.label": "25.6 V 10 Ah", "pack.strings": "27", "pack.mass": "200 kg",
			"cutoff.pack.opens_at": "20 V", "cutoff.pack.closes_at": "23.8 V", "cutoff.module.opens_at": "18.5 V",
			"controller.converter_voltage": "1.24 V", "motors.no_load_current": "4.5 A", "gears.efficiency": "17 %",
			"vehicle.design_voltage": "24 V", "outing.drive": "500 ms",
		},
		"a tiny fuse that each of 17 000 presses uses up a little": {
			"pack.chemistry": "li-ion", "pack.label": "20 V max 5 Ah", "pack.capacity": "4.26 Ah", "pack.joined": "parallel",
			"cutoff.module.opens_at": "17.5 V", "cutoff.module.closes_at": "22.8 V", "cutoff.module.delay": "2.1 s",
			"controller.converter_limit": "17.5 A", "fuse.rating": "462 mA", "motors.torque_constant": "0.00105 N m/A",
			"motors.no_load_current": "960 mA", "vehicle.design_voltage": "12 V", "vehicle.ground": "asphalt", "outing.drive": "1.7 s",
		},
	}
}

// mostSteps is some five times what these take now and a tenth of what they took.
// Own choice.
const mostSteps = 20_000

func TestNoValidSetupTakesManyMoreStepsThanTheUsualOnes(t *testing.T) {
	for name, values := range corners() {
		s, err := setup.Of(values)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		w, err := s.World()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		presses, most := 0, 0
		for _, z := range draws.Points(16, w.Dims()) {
			p, err := w.Parts(z)
			if err != nil {
				t.Fatal(err)
			}
			b, err := build.New(p)
			if err != nil {
				t.Fatal(err)
			}
			c, err := b.Case(w.Pick(z))
			if err != nil {
				t.Fatal(err)
			}
			c.WantedS = 0 // until something ends it
			steps := 0
			out := ride.Run(&c.Case, func(ride.Sample) { steps++ })
			presses, most = max(presses, out.Launches), max(most, steps)
		}
		if presses < 10_000 {
			t.Errorf("%s: only %d presses: no corner any more, the test looks in the wrong place", name, presses)
		}
		if most > mostSteps {
			t.Errorf("%s: %d steps followed, want at most %d", name, most, mostSteps)
		}
		t.Logf("%s: %d presses in %d steps", name, presses, most)
	}
}
