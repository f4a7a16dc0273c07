package ride

import (
	"fmt"
	"math"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
)

// varied returns cases that differ in whatever might mislead the steps: packs,
// temperatures, health, soft starts, limits, cutoffs with and without delay,
// rhythms, and slopes that the vehicle hardly climbs.
func varied(t testing.TB) map[string]Case {
	cases := map[string]Case{}
	add := func(name string, change func(c *Case)) {
		c := tractorCase(t)
		change(&c)
		if _, there := cases[name]; there {
			t.Fatalf("two cases %q", name)
		}
		cases[name] = c
	}
	worn := func(name string, cells int, ah, health float64) *battery.Model {
		p, _ := chemistry.Builtin().Profile(name)
		m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: cells, CapacityAh: ah, Health: health})
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	for _, p := range []struct {
		name  string
		cells int
		ah    float64
	}{{"agm", 6, 7}, {"agm", 6, 12}, {"gel", 6, 10}, {"li-ion", 5, 2}, {"li-ion", 5, 5}, {"lifepo4", 4, 6}, {"nimh", 10, 4}} {
		add(fmt.Sprintf("%s %g Ah to empty", p.name, p.ah), func(c *Case) { c.Pack = pack(t, p.name, p.cells, p.ah) })
		add(fmt.Sprintf("%s %g Ah at -5 degC", p.name, p.ah), func(c *Case) {
			c.Pack, c.PackC, c.AmbientC = pack(t, p.name, p.cells, p.ah), -5, -5
		})
		add(fmt.Sprintf("%s %g Ah, cutoff after 2 s", p.name, p.ah), func(c *Case) {
			c.Pack = pack(t, p.name, p.cells, p.ah)
			c.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Module, OpensAtV: 0.97 * c.Pack.EmptyV(), DelayS: 2})
		})
	}
	for _, delayS := range []float64{0, 0.5, 1, 5, 10} {
		for _, v := range []float64{12.5, 15} {
			add(fmt.Sprintf("cutoff at %g V after %g s", v, delayS), func(c *Case) {
				c.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Pack, OpensAtV: v, DelayS: delayS})
			})
		}
	}
	add("three cutoffs in the cold", func(c *Case) {
		c.PackC, c.AmbientC = 0, 0
		c.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Pack, OpensAtV: 12.5, DelayS: 0.1},
			cutoff.Device{Where: cutoff.Module, OpensAtV: 14.2, DelayS: 4}, cutoff.Device{Where: cutoff.Controller, OpensAtV: 13, DelayS: 1})
	})
	for _, health := range []float64{0.3, 0.5, 0.7} {
		add(fmt.Sprintf("tired block of %g", health), func(c *Case) { c.Pack = worn("agm", 6, 7, health) })
		add(fmt.Sprintf("tired block of %g with a cutoff", health), func(c *Case) {
			c.Pack = worn("agm", 6, 7, health)
			c.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Controller, OpensAtV: 9.5, DelayS: 3})
		})
	}
	for _, ctl := range []struct {
		name string
		drive.Controller
	}{
		{"ramp", drive.Controller{Chopper: true, RampS: 1.5}},
		{"limit", drive.Controller{Chopper: true, LimitA: 25}},
		{"ramp and limit", drive.Controller{Chopper: true, RampS: 2, LimitA: 30}},
		{"two ramps", drive.Controller{Chopper: true, RampS: 1, ModuleRampS: 3}},
		{"converter", drive.Controller{Chopper: true, RampS: 1, LimitA: 24, Converter: drive.Converter{OutV: 12, LimitA: 30}}},
	} {
		add(ctl.name, func(c *Case) { c.Controller = ctl.Controller })
		add(ctl.name+" with a cutoff", func(c *Case) {
			c.Controller = ctl.Controller
			c.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Module, OpensAtV: 15, DelayS: 1})
		})
	}
	// The share of the push that full volts give at rest which ground and slope
	// take.
	for _, share := range []float64{0.5, 0.7, 0.8, 0.85, 0.9, 0.95} {
		for _, p := range []struct {
			name  string
			cells int
			ah    float64
		}{{"agm", 6, 7}, {"li-ion", 5, 5}} {
			uphill := func(c *Case) {
				c.Pack, c.Vehicle.GripN = pack(t, p.name, p.cells, p.ah), 0
				e := c.Vehicle.Equivalent(20)
				p := c.Circuit()
				c.Vehicle.GradeN = share*(e.NewtonPerA*p.OCVV/(p.R0Ohm+p.PathOhm+e.Ohm)-e.LossN) - c.Vehicle.RollN
			}
			add(fmt.Sprintf("%s, hardly climbs: %g of its push", p.name, share), uphill)
			if share < 0.9 {
				add(fmt.Sprintf("%s, hardly climbs: %g, long drives", p.name, share), func(c *Case) { uphill(c); c.DriveS, c.PauseS = 300, 20 })
			}
		}
	}
	for _, r := range [][2]float64{{3, 2}, {60, 60}, {600, 30}, {3600, 0}, {0.7, 5}} {
		add(fmt.Sprintf("%g s down, %g s up", r[0], r[1]), func(c *Case) { c.DriveS, c.PauseS = r[0], r[1] })
	}
	add("a day of short presses", func(c *Case) {
		c.Pack, c.DriveS, c.PauseS = pack(t, "agm", 6, 40), 3, 9
		c.Cutoffs = chain(t, cutoff.Device{Where: cutoff.Module, OpensAtV: 11, DelayS: 1})
	})
	add("a large pack", func(c *Case) { c.Pack = pack(t, "lifepo4", 4, 100) })
	add("a tired large pack in the cold", func(c *Case) { c.Pack, c.PackC, c.AmbientC = worn("agm", 6, 60, 0.6), 0, 0 })
	return cases
}

// The reference follows every round in steps a sixteenth as long.
func TestThePedalTimeIsThatOfStepsSixteenTimesFiner(t *testing.T) {
	cases := varied(t)
	if len(cases) < 40 {
		t.Fatalf("%d cases", len(cases))
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			fine := outing{c: &c, every: true}
			want, got := fine.run(1./16), Run(&c, nil)
			t.Logf("%s %.1f s: off by %+.3f %%, distance %+.3f %%, charge %+.3f %%, energy %+.3f %%, rms %+.3f %%, winding %+.2f K",
				want.EndedBy, want.PedalS, 100*(got.PedalS/want.PedalS-1), 100*(got.DistanceM/want.DistanceM-1),
				100*(got.DeliveredAh/want.DeliveredAh-1), 100*(got.DeliveredWh/want.DeliveredWh-1), 100*(got.RMSA/want.RMSA-1), got.WindingC-want.WindingC)
			if got.EndedBy != want.EndedBy || got.OpenedFirst != want.OpenedFirst {
				t.Errorf("ends with %v, want %v", got.EndedBy, want.EndedBy)
			}
			if !(math.Abs(got.PedalS-want.PedalS) <= 0.001*want.PedalS) {
				t.Errorf("%.2f s, want %.2f s within 0.1 %%: off by %.2f %%", got.PedalS, want.PedalS, 100*(got.PedalS/want.PedalS-1))
			}
		})
	}
}
