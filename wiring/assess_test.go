package wiring_test

import (
	"maps"
	"math"
	"math/rand/v2"
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
	insulationC float64
	fuse        wiring.FuseSpec // Form is filled in from form
	form        string          // "" means no fuse
	contacts    []wiring.Contact
	demand      wiring.Demand
	pack        wiring.PackEnd
	designV     float64
	ambientC    float64
	fuseUnknown bool
}

// sound is a case without fault: 12 A on AWG 14 with a 20 A fuse.
func sound() build {
	return build{
		gauge: 14, insulationC: 105, form: "small blade", fuse: wiring.FuseSpec{RatingA: 20},
		contacts: []wiring.Contact{{Name: "plug", Kind: wiring.Joint, Ohm: 1e-3}, {Name: "pedal switch", Kind: wiring.Switch, Ohm: 5e-3}},
		demand:   wiring.Demand{RunningA: 12, LaunchA: 30, LaunchS: 0.1, LaunchI2t: 60, Launches: 5000, BlockedA: 60},
		pack:     wiring.PackEnd{FullV: 13, NominalV: 12, Ohm: 0.03}, designV: 12, ambientC: 25,
	}
}

func (b build) assess(t *testing.T) wiring.Result {
	t.Helper()
	spec := wiring.PathSpec{
		Runs:     []wiring.Run{run(t, wiring.RunSpec{Size: awg(b.gauge), OneWayM: 1, InsulationC: b.insulationC})},
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
		Path: path(t, spec), Pack: b.pack, Demand: b.demand, DesignV: b.designV, AmbientC: b.ambientC, FuseUnknown: b.fuseUnknown,
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
	want := map[string]answer.Level{"fuse-fits": answer.Fine, "wire-carries": answer.Fine, "short-cleared": answer.Fine}
	if diff := cmp.Diff(want, levels(r.Findings)); diff != "" {
		t.Errorf("findings (-want +got):\n%s", diff)
	}
}

func TestEachFaultHasItsFinding(t *testing.T) {
	for _, c := range []struct {
		code  string
		level answer.Level
		spoil func(*build)
	}{
		{"no-fuse", answer.Danger, func(b *build) { b.form = "" }},
		{"fuse-unknown", answer.FixFirst, func(b *build) { b.form, b.fuseUnknown = "", true }},
		{"fuse-above-wire", answer.Danger, func(b *build) { b.gauge, b.insulationC, b.demand.RunningA = 18, 60, 5 }},
		{"fuse-above-joint", answer.FixFirst, func(b *build) { b.contacts[0].SteadyA = 15 }},
		{"fuse-none-fits", answer.FixFirst, func(b *build) { b.gauge, b.insulationC, b.demand.RunningA = 18, 60, 14 }},
		{"fuse-opens-running", answer.FixFirst, func(b *build) { b.demand.RunningA = 22 }},
		{"fuse-loaded", answer.Watch, func(b *build) { b.demand.RunningA = 17 }},
		{"fuse-may-open-at-launch", answer.Watch, func(b *build) { b.demand.LaunchA, b.demand.LaunchS = 60, 0.4 }},
		{"fuse-opens-at-launch", answer.FixFirst, func(b *build) { b.demand.LaunchA, b.demand.LaunchS = 80, 3 }},
		{"fuse-slow-when-blocked", answer.Watch, func(b *build) { b.demand.BlockedA = 28 }},
		{"blocked-overloads-wire", answer.FixFirst, func(b *build) { b.fuse.RatingA, b.gauge, b.demand.BlockedA = 40, 18, 45 }},
		{"fuse-place-unknown", answer.Watch, func(b *build) { b.fuse.DistanceM = math.NaN() }},
		{"fuse-too-far", answer.FixFirst, func(b *build) { b.fuse.DistanceM = 0.18 }},
		{"fuse-too-far", answer.FixFirst, func(b *build) { b.fuse.DistanceM, b.fuse.Sheathed = 1.02, true }},
		{"fuse-voltage", answer.FixFirst, func(b *build) { b.pack.FullV = 42 }},
		{"fuse-voltage", answer.FixFirst, func(b *build) { b.pack.FullV, b.fuse.VoltageV = 60, 58 }},
		{"fuse-holder", answer.FixFirst, func(b *build) { b.fuse.HolderA = 15 }},
		{"fuse-holder", answer.FixFirst, func(b *build) { b.fuse.RatingA = 40 }},
		{"fuse-holder", answer.Watch, func(b *build) { b.fuse.RatingA = 25 }},
		{"fuse-heat", answer.Watch, func(b *build) { b.ambientC = 65 }},
		{"fuse-tires", answer.Watch, func(b *build) { b.demand.LaunchI2t = 400 }},
		{"breaker-alone", answer.FixFirst, func(b *build) { b.form = "auto-reset breaker" }},
		{"wire-overloaded", answer.FixFirst, func(b *build) { b.gauge, b.insulationC = 18, 60 }},
		{"wire-thin", answer.Watch, func(b *build) { b.gauge = 18 }},
		{"joint-overloaded", answer.FixFirst, func(b *build) { b.contacts[0].SteadyA = 10 }},
		{"joint-warm", answer.Watch, func(b *build) { b.contacts[0].Ohm = 8e-3 }},
		{"joint-hot", answer.FixFirst, func(b *build) { b.contacts[0].Ohm = 25e-3 }},
		{"drop-large", answer.Watch, func(b *build) { b.contacts = append(b.contacts, wiring.Contact{Kind: wiring.Other, Ohm: 0.1}) }},
		{"pedal-may-weld", answer.Danger, func(b *build) { b.pack.FullV, b.pack.NominalV = 20.5, 18 }},
		{"pedal-may-weld", answer.Danger, func(b *build) { b.pack.FullV, b.pack.NominalV = 20.5, 0 }},
		{"pedal-may-weld", answer.Watch, func(b *build) { b.pack.FullV, b.pack.NominalV = 16.8, 14.4 }},
		{"short-burns-wire", answer.Danger, func(b *build) { b.gauge, b.insulationC, b.form, b.fuse.RatingA = 18, 60, "large blade", 60 }},
		{"short-cleared", answer.Watch, func(b *build) { b.form = "auto-reset breaker"; b.fuse.RatingA = 5; b.gauge = 8; b.pack.Ohm = 0.3 }},
		{"short-above-breaking", answer.FixFirst, func(b *build) { b.pack.Ohm = 0.001; b.pack.FullV = 20 }},
	} {
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
	b.fuse.DistanceM = 0.178
	if _, ok := levels(b.assess(t).Findings)["fuse-too-far"]; ok {
		t.Error("178 mm is too far")
	}
	b.fuse.DistanceM, b.fuse.Sheathed = 1.016, true
	if _, ok := levels(b.assess(t).Findings)["fuse-too-far"]; ok {
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
	if got["wire-carries"] != answer.Watch || got["fuse-fits"] != answer.Watch {
		t.Errorf("findings %v", got)
	}
	for _, f := range r.Findings {
		if f.Code == "wire-carries" && !strings.Contains(f.Advice, "from memory") {
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
		b.fuse.DistanceM = []float64{0, 0.3, math.NaN()}[random.IntN(3)]
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
	wireCodes := []string{"fuse-above-wire", "wire-overloaded", "short-burns-wire", "blocked-overloads-wire", "wire-thin", "drop-large"}
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
