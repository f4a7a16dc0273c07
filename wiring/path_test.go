package wiring_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

// near fails unless got is want to within a tolerance.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.6g, want %.6g +- %.2g", what, got, want, tolerance)
	}
}

func run(t testing.TB, spec wiring.RunSpec) wiring.Run {
	t.Helper()
	r, err := wiring.NewRun(tables.Builtin(), spec)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func awg(gauge int) tables.WireSize { return tables.WireSize{System: tables.AWG, Gauge: gauge} }

// fuseOf is a fuse right at the pack unless the spec says otherwise.
func fuseOf(t testing.TB, form string, ratingA float64) *wiring.Fuse {
	t.Helper()
	row, err := tables.Builtin().Fuse(form)
	if err != nil {
		t.Fatal(err)
	}
	f, err := wiring.NewFuse(wiring.FuseSpec{Form: row, RatingA: ratingA})
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func path(t testing.TB, spec wiring.PathSpec) *wiring.Path {
	t.Helper()
	p, err := wiring.NewPath(spec)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// tractor is the path of the children's tractor: 1.5 m of wire, six joints, a
// pedal switch, a 30 A fuse.
func tractor(t testing.TB) *wiring.Path {
	return path(t, wiring.PathSpec{
		Runs: []wiring.Run{run(t, wiring.RunSpec{Size: awg(14), OneWayM: 1.5, InsulationC: 105})},
		Contacts: []wiring.Contact{
			{Name: "crimped tabs", Kind: wiring.Joint, Ohm: 1.5e-3, Count: 6},
			{Name: "pedal switch", Kind: wiring.Switch, Ohm: 10e-3},
		},
		Fuse: fuseOf(t, "small blade", 30),
	})
}

func TestPartsAddUpToThePath(t *testing.T) {
	p := tractor(t)
	for _, wireC := range []float64{-20, 20, 90} {
		sum := 0.0
		for _, part := range p.Parts(wireC) {
			sum += part.Ohm
		}
		near(t, "sum of parts", p.Ohm(wireC), sum, 1e-15)
	}
	// AWG 14 has 8.285 Ohm/km (ASTM B258, IEC 60028); 3 m there and back; six
	// joints of 1.5 mOhm, 10 mOhm of switch, the fuse between the printed 2.52
	// (25 A) and 1.44 mOhm (40 A).
	without := 3*8.285e-3 + 6*1.5e-3 + 10e-3
	if got := p.Ohm(20); got < without+1.44e-3 || got > without+2.52e-3 {
		t.Errorf("path %g Ohm, want %g and the fuse", got, without)
	}
}

func TestDropAgreesWithTheBoatFormula(t *testing.T) {
	// ABYC E-11 14.2.6: CM = K I L / E with K = 10.75 and L in feet there and
	// back; K is copper at about 30 degC (10.78 computed), so 0.5 percent.
	const feet, amps = 12.0, 20.0
	r := run(t, wiring.RunSpec{Size: awg(12), OneWayM: feet / 2 * 0.3048})
	p := path(t, wiring.PathSpec{Runs: []wiring.Run{r}})
	losses := p.Losses(wiring.Load{CurrentA: amps, FullV: 12, WireC: 30})
	want := 10.75 * amps * feet / 6530
	near(t, "drop", losses[0].DropV, want, 0.005*want)
	near(t, "share", losses[0].DropShare, losses[0].DropV/12, 1e-15)
	near(t, "heat", losses[0].HeatW, losses[0].DropV*amps, 1e-12)
	near(t, "heat per metre", losses[0].HeatWPerM*feet*0.3048, losses[0].HeatW, 1e-12)
}

func TestJointHeatMatchesTheWorkedNumbers(t *testing.T) {
	// I2 R at 30 A: 1, 3, 10 mOhm take 0.9, 2.7, 9 W.
	for ohm, watts := range map[float64]float64{1e-3: 0.9, 3e-3: 2.7, 10e-3: 9} {
		p := path(t, wiring.PathSpec{
			Runs:     []wiring.Run{run(t, wiring.RunSpec{Size: awg(10), OneWayM: 1})},
			Contacts: []wiring.Contact{{Name: "tab", Ohm: ohm}},
		})
		near(t, "heat", p.Losses(wiring.Load{CurrentA: 30, FullV: 12, WireC: 20})[1].HeatW, watts, 1e-12)
	}
}

func TestFuseDropIsNearTheSheets(t *testing.T) {
	// Makers' sheets: 96 mV across a small blade, 75 mV across a large one, both
	// 40 A at 40 A; the factor 1.5 lies between their 1.67 and 1.34 over cold.
	for form, volts := range map[string]float64{"small blade": 0.096, "large blade": 0.075} {
		f := fuseOf(t, form, 40)
		near(t, form, 40*f.Ohm(40), volts, 0.13*volts)
		near(t, form+" cold", f.Ohm(0), f.ColdOhm(), 0)
	}
}

func TestTotalIsTheSumOfTheLosses(t *testing.T) {
	losses := tractor(t).Losses(wiring.Load{CurrentA: 25, FullV: 20, WireC: 40})
	total := wiring.Total(losses)
	near(t, "drop", total.DropV, 25*total.Ohm, 1e-12)
	near(t, "heat", total.HeatW, 25*total.DropV, 1e-9)
	near(t, "share", total.DropShare, total.DropV/20, 1e-12)
	if len(losses) != 4 || losses[3].Name != "fuse" || losses[0].LengthM != 3 {
		t.Errorf("losses %+v", losses)
	}
}

func TestEqualWiresSideBySideShareTheCurrent(t *testing.T) {
	one := run(t, wiring.RunSpec{Size: awg(14), OneWayM: 1})
	two := run(t, wiring.RunSpec{Size: awg(14), OneWayM: 1, Parallel: 2})
	a, b := path(t, wiring.PathSpec{Runs: []wiring.Run{one}}), path(t, wiring.PathSpec{Runs: []wiring.Run{two}})
	near(t, "resistance", b.Ohm(20), a.Ohm(20)/2, 1e-15)
	near(t, "ampacity", two.CarriesA(30), 2*one.CarriesA(30), 1e-12)
	near(t, "temperature", b.WireC(30, 20), a.WireC(15, 20), 1e-9)
	load := wiring.Load{CurrentA: 20, FullV: 12, WireC: 20}
	near(t, "heat per metre", b.Losses(load)[0].HeatWPerM, a.Losses(wiring.Load{CurrentA: 10, WireC: 20})[0].HeatWPerM, 1e-12)
}

func TestWeakestPartsAreFound(t *testing.T) {
	thick, thin := run(t, wiring.RunSpec{Name: "main", Size: awg(10), OneWayM: 1}), run(t, wiring.RunSpec{Name: "lead", Size: awg(18), OneWayM: 0.2})
	p := path(t, wiring.PathSpec{
		Runs:     []wiring.Run{thick, thin},
		Contacts: []wiring.Contact{{Name: "unknown"}, {Name: "plug", SteadyA: 30}, {Name: "tab", SteadyA: 15}},
	})
	if got := p.Weakest(30).Name; got != "lead" {
		t.Errorf("weakest run %q", got)
	}
	if c, ok := p.WeakestContact(); !ok || c.Name != "tab" {
		t.Errorf("weakest contact %+v", c)
	}
	// At 10 A the AWG 18 lead with 60 degC insulation is at its ampacity.
	near(t, "hottest wire", p.WireC(10, 30), 60, 1e-9)
	if p.Fuse() != nil {
		t.Error("a fuse from nowhere")
	}
}

func TestBadPathsAreErrors(t *testing.T) {
	good := run(t, wiring.RunSpec{Size: awg(14), OneWayM: 1})
	long, short := good, good
	long.OneWayM, short.OneWayM = 1000, math.NaN()
	for name, spec := range map[string]wiring.PathSpec{
		"no wire":          {},
		"no size":          {Runs: []wiring.Run{{Name: "x", OneWayM: 1}}},
		"too long":         {Runs: []wiring.Run{long}},
		"NaN long":         {Runs: []wiring.Run{short}},
		"negative joint":   {Runs: []wiring.Run{good}, Contacts: []wiring.Contact{{Ohm: -1}}},
		"NaN joint":        {Runs: []wiring.Run{good}, Contacts: []wiring.Contact{{Ohm: math.NaN()}}},
		"negative current": {Runs: []wiring.Run{good}, Contacts: []wiring.Contact{{SteadyA: -1}}},
	} {
		if _, err := wiring.NewPath(spec); err == nil || !strings.HasPrefix(err.Error(), "wiring: ") {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, spec := range []wiring.RunSpec{{}, {Size: awg(14), InsulationC: 20}, {Size: awg(14), InsulationC: 390}} {
		if _, err := wiring.NewRun(tables.Builtin(), spec); err == nil {
			t.Errorf("%+v: no error", spec)
		}
	}
}

func TestAPathDoesNotChangeWithItsSpec(t *testing.T) {
	spec := wiring.PathSpec{
		Runs:     []wiring.Run{run(t, wiring.RunSpec{Size: awg(14), OneWayM: 1})},
		Contacts: []wiring.Contact{{Name: "tab", Ohm: 1e-3}},
	}
	p := path(t, spec)
	before := p.Parts(20)
	spec.Runs[0].OneWayM, spec.Contacts[0].Ohm = 9, 9
	after := p.Parts(20)
	for i := range before {
		if before[i] != after[i] {
			t.Errorf("part %d changed from %+v to %+v", i, before[i], after[i])
		}
	}
}
