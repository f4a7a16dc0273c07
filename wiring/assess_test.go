package wiring_test

import (
	"maps"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
	"github.com/google/go-cmp/cmp"
)

// build is a case in short form, for the table of findings.
type build struct {
	gauge       int
	areaMM2     float64 // in place of gauge where above 0
	insulationC float64
	fuse        wiring.FuseSpec // Form is filled in from form
	form        string          // "" means no fuse
	contacts    []wiring.Contact
	demand      wiring.Demand
	pack        wiring.PackEnd
	ambientC    float64
	fuseUnknown bool
}

// sound is a case without fault: 12 A on AWG 14 with a 20 A fuse.
func sound() build {
	return build{
		gauge: 14, insulationC: 105, form: "small blade", fuse: wiring.FuseSpec{RatingA: 20, DistanceM: new(0.0)},
		contacts: []wiring.Contact{{Name: "plug", Kind: wiring.Joint, Ohm: 1e-3}, {Name: "pedal switch", Kind: wiring.Switch, Ohm: 5e-3}},
		demand:   wiring.Demand{RunningA: 12, LaunchA: 30, LaunchS: 0.1, LaunchI2t: 60, Launches: 5000, BlockedA: 60},
		pack:     wiring.PackEnd{FullV: 13, Ohm: 0.03}, ambientC: 25,
	}
}

func (b build) assess(t *testing.T) wiring.Result {
	t.Helper()
	size := awg(b.gauge)
	if b.areaMM2 > 0 {
		size = tables.WireSize{AreaMM2: b.areaMM2}
	}
	spec := wiring.PathSpec{
		Runs:     []wiring.Run{run(t, wiring.RunSpec{Size: size, OneWayM: 1, InsulationC: b.insulationC})},
		Contacts: b.contacts,
	}
	if b.form != "" {
		form, err := tables.Builtin().Fuse(b.form)
		if err != nil {
			t.Fatal(err)
		}
		b.fuse.Form = form
		if spec.Fuse, err = wiring.NewFuse(b.fuse); err != nil {
			t.Fatal(err)
		}
	}
	r, err := wiring.Assess(wiring.Case{
		Path: path(t, spec), Pack: b.pack, Demand: b.demand, AmbientC: b.ambientC, FuseUnknown: b.fuseUnknown,
	})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// levels maps code to level.
func levels(findings []answer.Finding) map[string]answer.Level {
	m := map[string]answer.Level{}
	for _, f := range findings {
		m[f.Code] = f.Level
	}
	return m
}

func TestASoundPathIsFine(t *testing.T) {
	r := sound().assess(t)
	want := map[string]answer.Level{wiring.CodeFuseFits: answer.Fine, wiring.CodeWireCarries: answer.Fine, wiring.CodeShortCleared: answer.Fine}
	if diff := cmp.Diff(want, levels(r.Findings)); diff != "" {
		t.Errorf("findings (-want +got):\n%s", diff)
	}
}

// fault is what spoils the sound case, and the finding that it gives.
type fault struct {
	code  string
	level answer.Level
	spoil func(*build)
}

func faults() []fault {
	return []fault{
		{wiring.CodeNoFuse, answer.Danger, func(b *build) { b.form = "" }},
		{wiring.CodeFuseUnknown, answer.FixFirst, func(b *build) { b.form, b.fuseUnknown = "", true }},
		{wiring.CodeFuseAboveWire, answer.Danger, func(b *build) { b.gauge, b.insulationC, b.demand.RunningA = 18, 60, 5 }},
		{wiring.CodeFuseAboveJoint, answer.FixFirst, func(b *build) { b.contacts[0].SteadyA = 15 }},
		{wiring.CodeFuseNoneFits, answer.FixFirst, func(b *build) { b.gauge, b.insulationC, b.demand.RunningA = 18, 60, 14 }},
		{wiring.CodeFuseOpensRunning, answer.FixFirst, func(b *build) { b.demand.RunningA = 22 }},
		{wiring.CodeFuseLoaded, answer.Watch, func(b *build) { b.demand.RunningA = 17 }},
		{wiring.CodeFuseMayOpenAtLaunch, answer.Watch, func(b *build) { b.demand.LaunchA, b.demand.LaunchS = 60, 0.4 }},
		{wiring.CodeFuseOpensAtLaunch, answer.FixFirst, func(b *build) { b.demand.LaunchA, b.demand.LaunchS = 80, 3 }},
		{wiring.CodeFuseSlowWhenBlocked, answer.Watch, func(b *build) { b.demand.BlockedA = 28 }},
		{wiring.CodeBlockedOverloadsWire, answer.FixFirst, func(b *build) { b.fuse.RatingA, b.gauge, b.demand.BlockedA = 40, 18, 45 }},
		{wiring.CodeFusePlaceUnknown, answer.Watch, func(b *build) { b.fuse.DistanceM = nil }},
		{wiring.CodeFuseTooFar, answer.FixFirst, func(b *build) { b.fuse.DistanceM = new(0.18) }},
		{wiring.CodeFuseTooFar, answer.FixFirst, func(b *build) { b.fuse.DistanceM, b.fuse.Sheathed = new(1.02), true }},
		{wiring.CodeFuseTooFar, answer.Danger, func(b *build) { b.fuse.DistanceM = new(1.02) }},
		{wiring.CodeFuseVoltage, answer.FixFirst, func(b *build) { b.pack.FullV = 42 }},
		{wiring.CodeFuseVoltage, answer.FixFirst, func(b *build) { b.pack.FullV, b.fuse.VoltageV = 60, 58 }},
		{wiring.CodeFuseHolder, answer.FixFirst, func(b *build) { b.fuse.HolderA = 15 }},
		{wiring.CodeFuseHolder, answer.FixFirst, func(b *build) { b.fuse.RatingA = 40 }},
		{wiring.CodeFuseHolder, answer.Watch, func(b *build) { b.fuse.RatingA = 25 }},
		{wiring.CodeFuseHeat, answer.Watch, func(b *build) { b.ambientC = 65 }},
		{wiring.CodeFuseTires, answer.Watch, func(b *build) { b.demand.LaunchI2t = 400 }},
		{wiring.CodeShortBurnsWire, answer.FixFirst, func(b *build) { b.form, b.gauge, b.fuse.RatingA, b.demand.RunningA = "glass", 20, 10, 4 }},
		{wiring.CodeBreakerAlone, answer.FixFirst, func(b *build) { b.form = "auto-reset breaker" }},
		{wiring.CodeWireOverloaded, answer.FixFirst, func(b *build) { b.gauge, b.insulationC = 18, 60 }},
		{wiring.CodeWireOverloaded, answer.Danger, func(b *build) { b.gauge, b.insulationC, b.demand.RunningA = 18, 60, 25 }},
		{wiring.CodeWireCarries, answer.Watch, func(b *build) { b.areaMM2 = 2.5 }},
		{wiring.CodeFuseFits, answer.Watch, func(b *build) { b.areaMM2 = 2.5 }},
		{wiring.CodeWireThin, answer.Watch, func(b *build) { b.gauge = 18 }},
		{wiring.CodeJointOverloaded, answer.FixFirst, func(b *build) { b.contacts[0].SteadyA = 10 }},
		{wiring.CodeJointWarm, answer.Watch, func(b *build) { b.contacts[0].Ohm = 8e-3 }},
		{wiring.CodeJointHot, answer.FixFirst, func(b *build) { b.contacts[0].Ohm = 25e-3 }},
		{wiring.CodeDropLarge, answer.Watch, func(b *build) { b.contacts = append(b.contacts, wiring.Contact{Kind: wiring.Other, Ohm: 0.1}) }},
		{wiring.CodeShortBurnsWire, answer.Danger, func(b *build) { b.gauge, b.insulationC, b.form, b.fuse.RatingA = 18, 60, "large blade", 60 }},
		{wiring.CodeShortCleared, answer.Watch, func(b *build) { b.form = "auto-reset breaker"; b.fuse.RatingA = 5; b.gauge = 8; b.pack.Ohm = 0.3 }},
		{wiring.CodeShortAboveBreaking, answer.FixFirst, func(b *build) { b.pack.Ohm = 0.001; b.pack.FullV = 20 }},
	}
}

func TestEachFaultHasItsFinding(t *testing.T) {
	for _, c := range faults() {
		b := sound()
		if had, ok := levels(b.assess(t).Findings)[c.code]; ok && had == c.level {
			t.Errorf("%s: the sound case has it already", c.code)
		}
		c.spoil(&b)
		got := levels(b.assess(t).Findings)
		if level, ok := got[c.code]; !ok || level != c.level {
			t.Errorf("%s at %s: got %v", c.code, c.level, got)
		}
	}
}

func TestAFuseIsWithinReachUpToTheLimit(t *testing.T) {
	// 33 CFR 183.455(b): 178 mm, 1016 mm if sheathed.
	b := sound()
	b.fuse.DistanceM = new(0.178)
	if _, ok := levels(b.assess(t).Findings)[wiring.CodeFuseTooFar]; ok {
		t.Error("178 mm is too far")
	}
	b.fuse.DistanceM, b.fuse.Sheathed = new(1.016), true
	if _, ok := levels(b.assess(t).Findings)[wiring.CodeFuseTooFar]; ok {
		t.Error("1016 mm in a sheath is too far")
	}
}

func TestNothingIsFineOnARememberedTable(t *testing.T) {
	// ISO 10133 Annex A is from memory.
	p := path(t, wiring.PathSpec{
		Runs: []wiring.Run{run(t, wiring.RunSpec{Size: tables.WireSize{AreaMM2: 2.5}, OneWayM: 1, InsulationC: 105})},
		Fuse: fuseOf(t, "small blade", 20),
	})
	r, err := wiring.Assess(wiring.Case{Path: p, Pack: wiring.PackEnd{FullV: 13, Ohm: 0.03}, Demand: wiring.Demand{RunningA: 10}, AmbientC: 25})
	if err != nil {
		t.Fatal(err)
	}
	got := levels(r.Findings)
	if got[wiring.CodeWireCarries] != answer.Watch || got[wiring.CodeFuseFits] != answer.Watch {
		t.Errorf("findings %v", got)
	}
	for _, f := range r.Findings {
		if f.Code == wiring.CodeWireCarries && !strings.Contains(f.Advice, "from memory") {
			t.Errorf("%+v does not say that the limit is from memory", f)
		}
	}
}

func TestEveryFindingIsCompletePlainAndSourced(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	forms := append(tables.Builtin().FuseForms(), "")
	codes := map[string]bool{}
	for range 2000 {
		b := sound()
		b.gauge = []int{20, 18, 16, 14, 12, 10, 8, 6}[random.IntN(8)]
		b.insulationC = []float64{0, 60, 80, 105, 125, 200}[random.IntN(6)]
		b.form = forms[random.IntN(len(forms))]
		b.fuse.RatingA = []float64{5, 10, 20, 30, 40, 60}[random.IntN(6)]
		b.fuse.DistanceM = []*float64{new(0.0), new(0.3), nil}[random.IntN(3)]
		b.demand = wiring.Demand{
			RunningA: 60 * random.Float64(), LaunchA: 200 * random.Float64(), LaunchS: 3 * random.Float64(),
			LaunchI2t: 5000 * random.Float64(), Launches: math.Pow(10, 6*random.Float64()), BlockedA: 300 * random.Float64(),
		}
		b.contacts[0].Ohm, b.contacts[0].SteadyA = 0.02*random.Float64(), 40*random.Float64()
		b.contacts[0].Source = "tab-practice"
		b.pack = wiring.PackEnd{FullV: 6 + 50*random.Float64(), Ohm: 0.001 + 0.2*random.Float64()}
		b.ambientC = -20 + 100*random.Float64()
		r := b.assess(t)
		if len(r.Findings) == 0 {
			t.Fatalf("no finding for %+v", b)
		}
		if !slices.IsSortedFunc(r.Findings, func(a, b answer.Finding) int { return int(b.Level) - int(a.Level) }) {
			t.Error("findings are not sorted worst first")
		}
		for _, f := range r.Findings {
			codes[f.Code] = true
			if _, ok := tables.Builtin().Source(f.Source); !ok {
				t.Errorf("%s: source %q does not exist", f.Code, f.Source)
			}
			if math.IsNaN(f.Found) || math.IsInf(f.Found, 0) || math.IsNaN(f.Limit) || math.IsInf(f.Limit, 0) {
				t.Errorf("%s: %g against %g", f.Code, f.Found, f.Limit)
			}
			if !strings.HasSuffix(f.Title, ".") || len(f.Title) > 110 || (f.Level != answer.Fine && f.Advice == "") {
				t.Errorf("%s: title %q, advice %q", f.Code, f.Title, f.Advice)
			}
			for _, c := range f.Title + f.Advice + f.Code {
				if c > 126 {
					t.Errorf("%s is not ASCII", f.Code)
				}
			}
			rest := strings.ReplaceAll(f.Advice, "Do not fit a larger fuse", "")
			if strings.Contains(rest, "larger fuse") || strings.Contains(rest, "bigger fuse") {
				t.Errorf("%s advises: %s", f.Code, f.Advice)
			}
		}
	}
	if len(codes) < 22 {
		t.Errorf("only %d codes came up: %v", len(codes), slices.Sorted(maps.Keys(codes)))
	}
}

func TestThickerWireIsNeverJudgedWorse(t *testing.T) {
	wireCodes := []string{wiring.CodeFuseAboveWire, wiring.CodeWireOverloaded, wiring.CodeShortBurnsWire, wiring.CodeBlockedOverloadsWire, wiring.CodeWireThin, wiring.CodeDropLarge}
	for _, rating := range []float64{10, 20, 30, 40} {
		last := math.MaxInt
		for _, gauge := range []int{20, 18, 16, 14, 12, 10, 8, 6} {
			b := sound()
			b.gauge, b.fuse.RatingA = gauge, rating
			got, count := levels(b.assess(t).Findings), 0
			for _, code := range wireCodes {
				if level, ok := got[code]; ok {
					count += int(level)
				}
			}
			if count > last {
				t.Errorf("%g A, AWG %d: worse than thinner wire", rating, gauge)
			}
			last = count
		}
	}
}

func TestBadCasesAreErrors(t *testing.T) {
	p := tractor(t)
	good := wiring.Case{Path: p, Pack: wiring.PackEnd{FullV: 13, Ohm: 0.03}, AmbientC: 25}
	if _, err := wiring.Assess(good); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*wiring.Case){
		"no path":          func(c *wiring.Case) { c.Path = nil },
		"no voltage":       func(c *wiring.Case) { c.Pack.FullV = 0 },
		"no resistance":    func(c *wiring.Case) { c.Pack.Ohm = 0 },
		"negative running": func(c *wiring.Case) { c.Demand.RunningA = -1 },
		"NaN launch":       func(c *wiring.Case) { c.Demand.LaunchA = math.NaN() },
		"infinite blocked": func(c *wiring.Case) { c.Demand.BlockedA = math.Inf(1) },
		"hot":              func(c *wiring.Case) { c.AmbientC = 500 },
		"NaN ambient":      func(c *wiring.Case) { c.AmbientC = math.NaN() },
	} {
		c := good
		spoil(&c)
		if _, err := wiring.Assess(c); err == nil || !strings.HasPrefix(err.Error(), "wiring: ") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestResultHoldsTheNumbersBehindTheFindings(t *testing.T) {
	r := sound().assess(t)
	near(t, "total", r.Total.DropV, 12*r.Total.Ohm, 1e-12)
	near(t, "ampacity", r.AmpacityA, 35*math.Sqrt(80.0/75), 1e-9)
	near(t, "fuse carries", r.Fuse.CarriesA, 20, 0.2)
	if f := fuseOf(t, "small blade", 20); f.RatingA() != 20 || f.Form().Form != "small-blade" {
		t.Errorf("%g A of %s", f.RatingA(), f.Form().Form)
	}
	if r.Fuse.Blocked.LatestS <= 0 || r.WireC <= 25 || r.Band.MostA <= 0 || !r.Pulses.Known {
		t.Errorf("%+v", r)
	}
	if !math.IsInf(r.Fuse.Running.EarliestS, 1) {
		t.Errorf("running opens the fuse: %+v", r.Fuse)
	}
}

// A fuse of which nobody tells where it sits is not at the pack for that.
func TestTheFuseIsAtThePackOnlyWhereThatIsTold(t *testing.T) {
	for _, c := range []struct {
		name      string
		distanceM *float64
		want      string // the finding on its place, empty for none
	}{
		{"left out", nil, wiring.CodeFusePlaceUnknown},
		{"right at it", new(0.0), ""},
		{"a hand's breadth", new(0.1), ""},
		{"a metre", new(1.0), wiring.CodeFuseTooFar},
	} {
		b := sound()
		b.fuse = wiring.FuseSpec{RatingA: 20, DistanceM: c.distanceM}
		got := ""
		for _, f := range b.assess(t).Findings {
			if f.Code == wiring.CodeFusePlaceUnknown || f.Code == wiring.CodeFuseTooFar {
				got = f.Code
			}
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	form, err := tables.Builtin().Fuse("small blade")
	if err != nil {
		t.Fatal(err)
	}
	near := func(distanceM, afterwardsM float64) wiring.Short {
		fuse, err := wiring.NewFuse(wiring.FuseSpec{Form: form, RatingA: 20, DistanceM: &distanceM})
		if err != nil {
			t.Fatal(err)
		}
		distanceM = afterwardsM
		p := path(t, wiring.PathSpec{Runs: []wiring.Run{run(t, wiring.RunSpec{Size: awg(14), OneWayM: 1})}, Fuse: fuse})
		short, _, _ := p.Shorts(wiring.PackEnd{FullV: 13, Ohm: 0.03}, 25)
		return short
	}
	if kept, want := near(0.1, 0.9), near(0.1, 0.1); kept != want {
		t.Errorf("a distance that was changed once the fuse was made: %+v, want %+v", kept, want)
	}
}

func TestNoTablesAreTheBuiltInOnes(t *testing.T) {
	built := tables.Builtin()
	form, err := built.Fuse("small blade")
	if err != nil {
		t.Fatal(err)
	}
	spec := wiring.RunSpec{Size: tables.WireSize{System: tables.AWG, Gauge: 14}, OneWayM: 1}
	fuse := fuseOf(t, "small blade", 20)
	demand := wiring.Demand{RunningA: 10, LaunchA: 40, LaunchS: 0.3}
	all := func(tb *tables.Tables) []any {
		run, err := wiring.NewRun(tb, spec)
		if err != nil {
			t.Fatal(err)
		}
		p := path(t, wiring.PathSpec{Runs: []wiring.Run{run}, Fuse: fuse})
		band, err := p.Allowed(tb, form, demand, 25)
		if err != nil {
			t.Fatal(err)
		}
		result, err := wiring.Assess(wiring.Case{Path: p, Pack: wiring.PackEnd{FullV: 13, Ohm: 0.05}, Demand: demand, AmbientC: 25, Tables: tb})
		if err != nil {
			t.Fatal(err)
		}
		return []any{
			run, band, result, wiring.WhatOpened(tb, wiring.Return{Seconds: 15}),
			fuse.PulseLife(tb, wiring.Season{I2tA2s: 20, Launches: 5000}),
		}
	}
	if got, want := all(nil), all(built); !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, want %+v", got, want)
	}
}
