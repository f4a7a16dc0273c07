package wiring_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

func allowed(t *testing.T, p *wiring.Path, form string, d wiring.Demand, ambientC float64) wiring.FuseBand {
	t.Helper()
	row, err := tables.Builtin().Fuse(form)
	if err != nil {
		t.Fatal(err)
	}
	b, err := p.Allowed(tables.Builtin(), row, d, ambientC)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func bare(t *testing.T, size tables.WireSize, insulationC float64) *wiring.Path {
	return path(t, wiring.PathSpec{Runs: []wiring.Run{run(t, wiring.RunSpec{Size: size, OneWayM: 1, InsulationC: insulationC})}})
}

func TestLargestFuseIsHalfAgainTheAmpacity(t *testing.T) {
	// 33 CFR 183.455(c)(1) with Table 5: AWG 14 at 105 degC, 35 A, at most 52.5 A;
	// AWG 16 at 60 degC, 15 A, at most 22.5 A.
	b := allowed(t, bare(t, awg(14), 105), "large blade", wiring.Demand{RunningA: 12}, 30)
	near(t, "AWG 14", b.MostA, 52.5, 1e-9)
	if b.MostBy != "wire" || b.MostSource != "cfr-33-183-455" || !slices.Equal(b.StandardA, []float64{20, 25, 30, 35, 40, 50}) {
		t.Errorf("AWG 14: %+v", b)
	}
	b = allowed(t, bare(t, awg(16), 60), "small blade", wiring.Demand{RunningA: 12}, 30)
	near(t, "AWG 16", b.MostA, 22.5, 1e-9)
	if !slices.Equal(b.StandardA, []float64{20}) {
		t.Errorf("AWG 16: %+v", b)
	}
}

func TestLeastFuseCarriesTheRunningCurrentAtThreeQuarters(t *testing.T) {
	// Fuse glossary: at most 75 percent of the rating; 15 A needs 20 A at 23 degC.
	b := allowed(t, bare(t, awg(10), 105), "small blade", wiring.Demand{RunningA: 15}, 23)
	near(t, "least", b.LeastA, 20, 1e-9)
	if b.LeastBy != "running" {
		t.Errorf("%+v", b)
	}
	// At 65 degC the same fuse has 85 percent left (maker's sheet).
	b = allowed(t, bare(t, awg(10), 105), "small blade", wiring.Demand{RunningA: 15}, 65)
	near(t, "least at 65 degC", b.LeastA, 20/0.85, 1e-9)
}

func TestLaunchSetsTheLeastFuseByItsTime(t *testing.T) {
	// Small blade, 160 percent: not before 0.25 s. A launch of 80 A for 0.25 s
	// needs 50 A, one of 0.15 s (200 percent) 40 A.
	d := wiring.Demand{RunningA: 5, LaunchA: 80, LaunchS: 0.25}
	b := allowed(t, bare(t, awg(6), 105), "small blade", d, 23)
	near(t, "least for 0.25 s", b.LeastA, 50, 1e-6)
	if b.LeastBy != "launch" || b.LeastSource != "small-blade-sheet" {
		t.Errorf("%+v", b)
	}
	d.LaunchS = 0.15
	near(t, "least for 0.15 s", allowed(t, bare(t, awg(6), 105), "small blade", d, 23).LeastA, 40, 1e-6)
}

func TestWeakestPartSetsTheLargestFuse(t *testing.T) {
	wire := run(t, wiring.RunSpec{Size: awg(8), OneWayM: 1, InsulationC: 105})
	tab := wiring.Contact{Name: "tab", SteadyA: 15, Source: "tab-practice"}
	b := allowed(t, path(t, wiring.PathSpec{Runs: []wiring.Run{wire}, Contacts: []wiring.Contact{tab}}), "small blade", wiring.Demand{RunningA: 5}, 30)
	if b.MostA != 15 || b.MostBy != "joint" || b.MostSource != "tab-practice" {
		t.Errorf("joint: %+v", b)
	}
	bareBand := allowed(t, path(t, wiring.PathSpec{Runs: []wiring.Run{wire}}), "small blade", wiring.Demand{RunningA: 5}, 30)
	if bareBand.MostA != 30 || bareBand.MostBy != "holder" || bareBand.MostSource != "blade-holder-sheets" {
		t.Errorf("holder: %+v", bareBand)
	}
	glass := allowed(t, path(t, wiring.PathSpec{Runs: []wiring.Run{wire}}), "quick glass", wiring.Demand{RunningA: 5}, 30)
	if glass.MostA != 10 || glass.MostBy != "largest made" {
		t.Errorf("largest made: %+v", glass)
	}
}

func TestEmptyBandNeverAdvisesALargerFuse(t *testing.T) {
	thick := run(t, wiring.RunSpec{Size: awg(6), OneWayM: 1, InsulationC: 105})
	for name, c := range map[string]struct {
		p    *wiring.Path
		form string
		d    wiring.Demand
		want string
	}{
		"thin wire": {bare(t, awg(18), 60), "small blade", wiring.Demand{RunningA: 18}, "otherwise fit wire that carries 18 A or more."},
		"launch":    {bare(t, awg(16), 60), "small blade", wiring.Demand{RunningA: 5, LaunchA: 120, LaunchS: 1}, "slower ramp"},
		"joint": {
			path(t, wiring.PathSpec{Runs: []wiring.Run{thick}, Contacts: []wiring.Contact{{Name: "tab", SteadyA: 15}}}),
			"small blade",
			wiring.Demand{RunningA: 20},
			"fit tab made for 28 A or more",
		},
		"holder": {path(t, wiring.PathSpec{Runs: []wiring.Run{thick}}), "small blade", wiring.Demand{RunningA: 40}, "fit a kind of fuse and holder made for this current"},
		"wire and holder": {
			bare(t, awg(16), 60), "small blade",
			wiring.Demand{RunningA: 30},
			"Bring the current down with a current limit; otherwise fit wire that carries 30 A or more and a kind of fuse and holder made for this current",
		},
		"gap": {bare(t, awg(16), 60), "small blade", wiring.Demand{RunningA: 15.5}, "no standard rating"},
	} {
		b := allowed(t, c.p, c.form, c.d, 30)
		advice := b.Advice()
		if len(b.StandardA) != 0 || !strings.Contains(advice, c.want) {
			t.Errorf("%s: %+v: %s", name, b, advice)
		}
		if rest := strings.ReplaceAll(advice, "Do not fit a larger fuse", ""); strings.Contains(rest, "larger") || strings.Contains(rest, "bigger") {
			t.Errorf("%s: %s", name, advice)
		}
	}
}

func TestAStandardRatingOfTheBandSuitsRunningLaunchAndWire(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	forms := []string{"small blade", "large blade"}
	found := 0
	for range 500 {
		size := awg([]int{18, 16, 14, 12, 10, 8}[random.IntN(6)])
		d := wiring.Demand{RunningA: 40 * random.Float64(), LaunchA: 120 * random.Float64(), LaunchS: 2 * random.Float64()}
		ambient := 60 * random.Float64()
		p := bare(t, size, 105)
		form := forms[random.IntN(2)]
		b := allowed(t, p, form, d, ambient)
		for _, rating := range b.StandardA {
			found++
			curve := fuseOf(t, form, rating).At(ambient)
			if d.RunningA > 0.75*curve.RatedA()*(1+1e-9) {
				t.Errorf("%g A of %s runs at %g A", rating, form, d.RunningA)
			}
			if d.LaunchA > 0 && curve.Opens(d.LaunchA).EarliestS < d.LaunchS*(1-1e-9) {
				t.Errorf("%g A of %s may open at launch %+v", rating, form, d)
			}
			if rating > 1.5*p.Weakest(ambient).CarriesA(ambient) {
				t.Errorf("%g A on a wire that carries %g A", rating, p.Weakest(ambient).CarriesA(ambient))
			}
		}
	}
	if found < 100 {
		t.Errorf("only %d ratings were tried", found)
	}
}

func TestThickerWireNeverNarrowsTheBand(t *testing.T) {
	last := 0.0
	for area := 0.5; area < 20; area *= 1.1 {
		b := allowed(t, bare(t, tables.WireSize{AreaMM2: area}, 70), "large blade", wiring.Demand{RunningA: 10}, 40)
		if b.MostA < last {
			t.Errorf("%g mm2: %g A after %g A", area, b.MostA, last)
		}
		last = b.MostA
	}
}

func TestShortCircuitIsFullVoltageOverResistance(t *testing.T) {
	p := tractor(t)
	pack := wiring.PackEnd{FullV: 20.5, Ohm: 0.05}
	near1, far, worst := p.Shorts(pack, 25)
	fuse := p.Fuse().ColdOhm()
	near(t, "behind the fuse", near1.CurrentA, 20.5/(0.05+fuse), 1e-9)
	near(t, "far end", far.CurrentA, 20.5/(0.05+fuse+3*8.285326570868261e-3+6*1.5e-3), 1e-6)
	// IEC 60364-5-54: k2 S2 / I2 with k from 105 to 160 degC (87.6, computed by
	// 226 sqrt(ln(394.5/339.5))) and 2.081 mm2.
	k := 226 * math.Sqrt(math.Log(394.5/339.5))
	near(t, "limit", far.LimitS, math.Pow(k*2.080907717098377/far.CurrentA, 2), 1e-9)
	if far.ClearS > 0.5 || !far.Protected() || !worst.Protected() || near1.CurrentA < far.CurrentA {
		t.Errorf("near %+v, far %+v, worst %+v", near1, far, worst)
	}
	if worst.LimitS/worst.ClearS > min(near1.LimitS/near1.ClearS, far.LimitS/far.ClearS) {
		t.Errorf("the worst place %+v is better than an end", worst)
	}
}

// Where neither fuse nor wire has time to lose heat, both times go with one over the
// square of the current: rounding alone would choose the place.
func TestOfPlacesThatStandAShortEquallyTheNearestIsTold(t *testing.T) {
	wire := run(t, wiring.RunSpec{Size: awg(14), OneWayM: 1.2})
	p := path(t, wiring.PathSpec{Runs: []wiring.Run{wire}, Fuse: fuseOf(t, "small blade", 20)})
	for ohm := 0.06; ohm < 0.08; ohm *= 1.003 {
		near1, far, worst := p.Shorts(wiring.PackEnd{FullV: 25, Ohm: ohm}, 25)
		near(t, "margin at the far end", far.LimitS/far.ClearS, near1.LimitS/near1.ClearS, 1e-9)
		if worst.CurrentA != near1.CurrentA {
			t.Fatalf("%g Ohm: %g A told, %g A behind the fuse", ohm, worst.CurrentA, near1.CurrentA)
		}
	}
}

// A wire is no worse in a short circuit for insulation that stands more: what it starts from
// is as warm as the load made it, and not as its rating.
func TestBetterInsulationStandsNoShorterAShort(t *testing.T) {
	for _, loadA := range []float64{2, 8, 15} {
		last := 0.0
		for _, rated := range []float64{60, 70, 80, 90, 105, 125, 200} {
			p := path(t, wiring.PathSpec{Runs: []wiring.Run{run(t, wiring.RunSpec{Size: awg(16), OneWayM: 1, InsulationC: rated})}})
			s, _, _ := p.Shorts(wiring.PackEnd{FullV: 13, Ohm: 0.01, LoadA: loadA}, 30)
			if s.LimitS < last*(1-1e-9) {
				t.Errorf("%g A before: %g degC stands %g s, less gave %g", loadA, rated, s.LimitS, last)
			}
			last = s.LimitS
		}
	}
	// Without a load told it is as hot as its rating, as the standard has it.
	p := path(t, wiring.PathSpec{Runs: []wiring.Run{run(t, wiring.RunSpec{Size: awg(16), OneWayM: 1, InsulationC: 105})}})
	cool, _, _ := p.Shorts(wiring.PackEnd{FullV: 13, Ohm: 0.01, LoadA: 1}, 30)
	hot, _, _ := p.Shorts(wiring.PackEnd{FullV: 13, Ohm: 0.01}, 30)
	// ln((234.5+160)/(234.5+70)) over ln((234.5+160)/(234.5+105)), by hand.
	near(t, "the gain", cool.LimitS/hot.LimitS, math.Log(394.5/304.5)/math.Log(394.5/339.5), 1e-6)
}

func TestShortBehindADistantFuseHasTheWireBeforeIt(t *testing.T) {
	form, err := tables.Builtin().Fuse("small blade")
	if err != nil {
		t.Fatal(err)
	}
	fuse, err := wiring.NewFuse(wiring.FuseSpec{Form: form, RatingA: 20, DistanceM: new(0.5)})
	if err != nil {
		t.Fatal(err)
	}
	r := run(t, wiring.RunSpec{Size: awg(14), OneWayM: 2})
	p := path(t, wiring.PathSpec{Runs: []wiring.Run{r}, Fuse: fuse})
	at, _, _ := p.Shorts(wiring.PackEnd{FullV: 13, Ohm: 0.03}, 25)
	// Half a metre there and back.
	near(t, "behind the fuse", at.CurrentA, 13/(0.03+fuse.ColdOhm()+r.Wire.OhmPerM20C), 1e-9)
}

func TestWireUnprotectedAtTheWorstPlace(t *testing.T) {
	// A large 60 A blade on AWG 18, a weak pack: 150 A for seconds.
	thin := run(t, wiring.RunSpec{Size: awg(18), OneWayM: 1, InsulationC: 60})
	p := path(t, wiring.PathSpec{Runs: []wiring.Run{thin}, Fuse: fuseOf(t, "large blade", 60)})
	_, far, worst := p.Shorts(wiring.PackEnd{FullV: 13, Ohm: 0.05}, 25)
	if far.Protected() || worst.Protected() {
		t.Errorf("far %+v, worst %+v", far, worst)
	}
	// Without a fuse nothing opens.
	p = path(t, wiring.PathSpec{Runs: []wiring.Run{thin}})
	near1, _, _ := p.Shorts(wiring.PackEnd{FullV: 13, Ohm: 0.05}, 25)
	if !math.IsInf(near1.ClearS, 1) || near1.Protected() {
		t.Errorf("no fuse: %+v", near1)
	}
	// A fault current that the wire carries for good does no harm.
	_, far, _ = p.Shorts(wiring.PackEnd{FullV: 13, Ohm: 5}, 25)
	if !far.Protected() {
		t.Errorf("%g A on a wire that carries %g A: %+v", far.CurrentA, far.CarriedA, far)
	}
}
