package cutoff_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
)

// profile returns a built-in chemistry or fails the test.
func profile(t testing.TB, name string) chemistry.Profile {
	t.Helper()
	p, ok := chemistry.Builtin().Profile(name)
	if !ok {
		t.Fatalf("no chemistry %q", name)
	}
	return p
}

// pack makes a model of a built-in chemistry or fails the test.
func pack(t testing.TB, name string, cells int, ah float64, change func(*battery.Spec)) *battery.Model {
	t.Helper()
	s := battery.Spec{Profile: profile(t, name), CellsInSeries: cells, CapacityAh: ah}
	if change != nil {
		change(&s)
	}
	m, err := battery.New(s)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// find returns the finding of the given code, ok when it is there.
func find(fs []answer.Finding, code string) (f answer.Finding, ok bool) {
	for _, f := range fs {
		if f.Code == code {
			return f, true
		}
	}
	return answer.Finding{}, false
}

func follow(t testing.TB, c cutoff.Case) cutoff.Followed {
	t.Helper()
	f, err := cutoff.Follow(c)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func advise(t testing.TB, w cutoff.Wish) cutoff.Advice {
	t.Helper()
	a, err := cutoff.Advise(w)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestTheLadderHasThePublishedRungs(t *testing.T) {
	tests := []struct {
		chemistry string
		cellV     float64
		want      cutoff.Rung
		why       string
	}{
		{"li-ion", 3.10, cutoff.InUse, ""},
		{"li-ion", 2.45, cutoff.Harmed, "cell specifications end at 2.5 V (INR18650-P28A, -25R, -20R); TI BQ77307 default 2500 mV"},
		{"li-ion", 1.45, cutoff.NeverAgain, "encyclopaedia text on a web page: below 1.5 V do not use again (copper bridges)"},
		{"li-ion", 1.55, cutoff.Harmed, "the same, just above"},
		{"lifepo4", 1.95, cutoff.Harmed, "26650 cell specifications: cut-off 2.0 V"},
		{"lifepo4", 2.05, cutoff.PastEnd, "the same, just above"},
		{"agm", 1.72, cutoff.PastEnd, "three makers' sheets: 1.75 V per cell below 0.2C"},
		{"agm", 0.50, cutoff.Harmed, "lead-acid has no published last rung"},
		{"nimh", 0.95, cutoff.PastEnd, "VARTA handbook p. 49: end 1.0 V"},
		{"li-ion", math.NaN(), cutoff.NeverAgain, "a voltage that is none is the worst"},
	}
	for _, tt := range tests {
		if got := cutoff.RungAt(profile(t, tt.chemistry), tt.cellV); got != tt.want {
			t.Errorf("%s at %g V: %v, want %v (%s)", tt.chemistry, tt.cellV, got, tt.want, tt.why)
		}
	}
}

// Makers' data sheets of sealed lead-acid blocks (three agree): 10.5 V below
// 0.2C, 10.2 V to 0.5C, 9.3 V to 1C, 7.8 V above. With equal cells the advised
// voltage is that, or more by what the volts fall within the longest delay, rounded up
// to a tenth of a volt, where the end is also the harm limit.
func TestTheAdvisedVoltageOfEqualCellsIsTheMakersEnd(t *testing.T) {
	m := pack(t, "agm", 6, 7, func(s *battery.Spec) { s.WeakestShort = 1e-9 })
	for _, tt := range []struct{ loadA, wantV float64 }{{0.7, 10.5}, {2.8, 10.2}, {6.3, 9.3}, {10, 7.8}} {
		a := advise(t, cutoff.Wish{Case: cutoff.Case{Pack: m, Start: m.StateAt(1, 25), LoadA: tt.loadA, AmbientC: 25}})
		s := follow(t, under(t, m, 1, tt.loadA, opens(cutoff.Module, tt.wantV))).End
		end := m.TerminalV(&s, tt.loadA)
		wait := m.Over(cutoff.LongestDelayS)
		wait.Advance(&s, tt.loadA, 25)
		if fall := end - m.TerminalV(&s, tt.loadA); a.OpensAtV < tt.wantV-1e-9 || a.OpensAtV > tt.wantV+math.Ceil(10*fall)/10+1e-9 {
			t.Errorf("%g A: opens at %.2f V, want %.1f and up to %.2f V more", tt.loadA, a.OpensAtV, tt.wantV, fall)
		}
	}
}

// Arithmetic: a 12 V block at 10.5 V with five
// cells at 2.05 V leaves 0.25 V; five lithium cells at 12.5 V with four at
// 3.10 V leave 0.10 V. A pack whose weakest cell is that short must make the
// advice go up and the makers' end be found harmful.
func TestAWeakCellRaisesTheAdvisedVoltage(t *testing.T) {
	for _, tt := range []struct {
		chemistry string
		cells     int
		ah, loadA float64
	}{{"agm", 6, 7, 1.4}, {"li-ion", 5, 4, 8}, {"lifepo4", 4, 6, 5}, {"nimh", 15, 3, 6}} {
		last := 0.0
		for _, short := range []float64{1e-9, 0.05, 0.1, 0.2, 0.3} {
			m := pack(t, tt.chemistry, tt.cells, tt.ah, func(s *battery.Spec) { s.WeakestShort = short })
			a := advise(t, cutoff.Wish{Case: cutoff.Case{Pack: m, Start: m.StateAt(1, 20), LoadA: tt.loadA, AmbientC: 20}})
			if a.OpensAtV < last-1e-9 {
				t.Errorf("%s: a cell %g short lowers the advice from %g to %g V", tt.chemistry, short, last, a.OpensAtV)
			}
			if a.Weakest.Rung >= cutoff.Harmed {
				t.Errorf("%s, %g short: the advised %g V leaves the weakest cell %v (%.2f V)", tt.chemistry, short, a.OpensAtV, a.Weakest.Rung, a.Weakest.CellV)
			}
			last = a.OpensAtV
		}
		m := pack(t, tt.chemistry, tt.cells, tt.ah, func(s *battery.Spec) { s.WeakestShort = 0.3 })
		end := chain(t, cutoff.Device{Where: cutoff.Pack, OpensAtV: m.EndV(tt.loadA)})
		f := follow(t, cutoff.Case{Pack: m, Start: m.StateAt(1, 20), LoadA: tt.loadA, AmbientC: 20, Chain: end})
		_, harmed := find(f.Findings, cutoff.CodeWeakCellHarmed)
		_, reversed := find(f.Findings, cutoff.CodeWeakCellReversed)
		if !harmed && !reversed {
			t.Errorf("%s: at the makers' end a cell 30 %% short has %.2f V and nobody says so", tt.chemistry, f.AtOpening.CellV)
		}
	}
}

// A device with the advised setting opens before harm, rides through the
// launch it was made for, and does not chatter, with the latch or with the
// closing voltage.
func TestTheAdvisedSettingDoesWhatItPromises(t *testing.T) {
	for _, tt := range []struct {
		chemistry string
		cells     int
		ah        float64
	}{{"agm", 6, 7}, {"agm", 12, 12}, {"gel", 6, 7}, {"li-ion", 5, 5}, {"li-ion", 10, 4}, {"lifepo4", 4, 8}, {"nimh", 15, 3}} {
		m := pack(t, tt.chemistry, tt.cells, tt.ah, nil)
		for _, rate := range []float64{0.3, 1, 2.5} {
			for _, tempC := range []float64{2, 20, 35} {
				loadA := rate * tt.ah
				c := cutoff.Case{Pack: m, Start: m.StateAt(1, tempC), LoadA: loadA, PathOhm: 0.02, AmbientC: tempC}
				wish := cutoff.Wish{Case: c, Where: cutoff.Controller}
				sag := exponentialSag(advise(t, wish).OpensAtV+0.5, 3, 1.5)
				wish.Sag = sag
				a := advise(t, wish)
				d := a.Device(cutoff.Controller)
				if r := cutoff.ThroughLaunch(d, sag); r.OpensEarly {
					t.Errorf("%s %gC %g degC: the advised %g s at %g V open at the launch (%.2f s)", tt.chemistry, rate, tempC, d.DelayS, d.OpensAtV, r.BelowS)
				}
				for _, closes := range []float64{0, a.ClosesAtV} {
					d.ClosesAtV = closes
					c.Chain = chain(t, d)
					f := follow(t, c)
					if !f.Opened || f.Recloses != 0 {
						t.Errorf("%s %gC %g degC, closing at %g V: opened %v, recloses %d", tt.chemistry, rate, tempC, closes, f.Opened, f.Recloses)
					}
					if _, ok := find(f.Findings, cutoff.CodeMayChatter); ok {
						t.Errorf("%s %gC %g degC: the advised closing voltage %g V is called doubtful", tt.chemistry, rate, tempC, closes)
					}
				}
				if a.MustLatch != (a.ClosesAtV == 0) || !a.MustLatch && (a.ClosesAtV <= a.OpensAtV || a.ClosesAtV >= m.FullV()) {
					t.Errorf("%s: closing voltage %g V beside opening %g and full %g", tt.chemistry, a.ClosesAtV, a.OpensAtV, m.FullV())
				}
			}
		}
	}
}

// exponentialSag is a launch that pulls the volts from endV down by deepV and
// lets them recover with the time constant tauS.
func exponentialSag(endV, deepV, tauS float64) cutoff.Sag {
	return cutoff.Sag{
		LowestV: endV - deepV,
		SecondsBelow: func(v float64) float64 {
			switch {
			case v < endV-deepV:
				return 0
			case v >= endV:
				return math.Inf(1)
			}
			return tauS * math.Log(deepV/(endV-v))
		},
	}
}

func TestALaunchSagOpensADeviceWithoutDelay(t *testing.T) {
	sag := exponentialSag(12, 4, 2) // 8 V at the bottom, below 10 V for 2 ln 2 s
	d := cutoff.Device{Where: cutoff.Controller, OpensAtV: 10, DelayS: 1}
	r := cutoff.ThroughLaunch(d, sag)
	if want := 2 * math.Ln2; !r.OpensEarly || math.Abs(r.BelowS-want) > 1e-12 {
		t.Fatalf("opens early %v, below for %g s; want true, %g s", r.OpensEarly, r.BelowS, want)
	}
	if f, ok := find(r.Findings, cutoff.CodeOpensAtLaunch); !ok || f.Unit != "s" || f.Limit != 1 {
		t.Errorf("finding %+v", r.Findings)
	}
	longer, lower := d, d
	longer.DelayS, lower.OpensAtV = r.WouldDelayS, r.WouldOpenAtV
	for _, d := range []cutoff.Device{longer, lower} {
		if cutoff.ThroughLaunch(d, sag).OpensEarly {
			t.Errorf("%+v was promised to ride through", d)
		}
	}
	if r.WouldDelayS != 3 || r.WouldOpenAtV < 8.9 { // 1.5 times 2 ln 2 s, in whole seconds
		t.Errorf("delay %g s, voltage %g V: more than is needed", r.WouldDelayS, r.WouldOpenAtV)
	}
	if cutoff.ThroughLaunch(d, cutoff.Sag{LowestV: 10.01, SecondsBelow: sag.SecondsBelow}).OpensEarly {
		t.Error("opened although the volts never reach it")
	}
	if cutoff.ThroughLaunch(d, cutoff.Sag{}).OpensEarly {
		t.Error("opened without any sag")
	}
	none := d
	none.DelayS = 0
	if r := cutoff.ThroughLaunch(none, sag); r.WouldOpenAtV >= 8 {
		t.Errorf("without a delay %g V is promised although the launch reaches 8 V", r.WouldOpenAtV)
	}
	w := cutoff.Wish{Case: cutoff.Case{Pack: pack(t, "agm", 6, 7, nil), LoadA: 5, AmbientC: 20}, Sag: exponentialSag(9.4, 3, 60)}
	w.Start = w.Pack.StateAt(1, 20)
	if _, ok := find(advise(t, w).Findings, cutoff.CodeLaunchTooDeep); !ok {
		t.Error("a launch that sags for minutes found no words")
	}
}

// A latch never lets a pack be drained deeper because another device was
// added: the trade's fact that a second cutoff never makes things worse.
func TestASecondCutoffNeverMakesThingsWorse(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for _, name := range []string{"li-ion", "agm"} {
		m := pack(t, name, map[string]int{"li-ion": 5, "agm": 6}[name], 5, nil)
		for range 40 {
			random := func(where cutoff.Place) cutoff.Device {
				return cutoff.Device{
					Where: where, OpensAtV: m.EmptyV() * (0.8 + 0.35*rng.Float64()), DelayS: 10 * rng.Float64(),
				}
			}
			one, other := random(cutoff.Pack), random(cutoff.Controller)
			c := cutoff.Case{Pack: m, Start: m.StateAt(0.6, 20), LoadA: 2 + 10*rng.Float64(), PathOhm: 0.03, AmbientC: 20}
			c.Chain = chain(t, one)
			alone := follow(t, c)
			c.Chain = chain(t, one, other)
			both := follow(t, c)
			if m.Charge(both.End) < m.Charge(alone.End)-1e-9 {
				t.Fatalf("%s: with %+v alone %.4f is left, with %+v as well %.4f", name, one, m.Charge(alone.End), other, m.Charge(both.End))
			}
			if both.LowestCellV < alone.LowestCellV-1e-9 {
				t.Fatalf("%s: the weakest cell falls to %.3f V with both, %.3f V with one", name, both.LowestCellV, alone.LowestCellV)
			}
		}
	}
}

// The trade's fact holds for latches only: a second device that closes again
// cuts every sag short before the latch's delay is over, and so drains the
// pack in scraps. Whenever that happens a finding must say so.
func TestASecondCutoffThatClosesAgainIsFoundWhenItMakesThingsWorse(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	m := pack(t, "agm", 6, 5, nil)
	worse := 0
	for range 60 {
		opens := m.EmptyV() * (0.9 + 0.2*rng.Float64())
		latch := cutoff.Device{Where: cutoff.Pack, OpensAtV: m.EmptyV() * (0.8 + 0.3*rng.Float64()), DelayS: 8 * rng.Float64()}
		back := cutoff.Device{Where: cutoff.Controller, OpensAtV: opens, ClosesAtV: opens + 0.2 + rng.Float64(), DelayS: 2 * rng.Float64()}
		c := cutoff.Case{Pack: m, Start: m.StateAt(0.6, 20), LoadA: 2 + 10*rng.Float64(), PathOhm: 0.03, AmbientC: 20}
		c.Chain = chain(t, latch)
		alone := follow(t, c)
		c.Chain = chain(t, latch, back)
		both := follow(t, c)
		if m.Charge(both.End) >= m.Charge(alone.End)-1e-3 {
			continue
		}
		worse++
		if _, ok := find(both.Findings, cutoff.CodeChatters); !ok {
			t.Fatalf("%+v added to %+v leaves %.3f instead of %.3f and nobody says so", back, latch, m.Charge(both.End), m.Charge(alone.End))
		}
	}
	if worse == 0 {
		t.Error("no case at all got worse: this test shows nothing")
	}
}

func TestALowClosingVoltageChatters(t *testing.T) {
	m := pack(t, "agm", 6, 7, nil)
	c := cutoff.Case{Pack: m, Start: m.StateAt(1, 20), LoadA: 10, AmbientC: 20}
	c.Chain = chain(t, cutoff.Device{Where: cutoff.Controller, OpensAtV: 10.5, DelayS: 1, ClosesAtV: 11.0})
	f := follow(t, c)
	if f.Recloses < 2 || f.UselessMin <= 0 || f.ChatterMin < f.UselessMin-1e-9 {
		t.Errorf("recloses %d, useless %g of %g min", f.Recloses, f.UselessMin, f.ChatterMin)
	}
	if f.ReboundV < 11.0 {
		t.Errorf("the load came back at 11 V though the pack only reached %g V", f.ReboundV)
	}
	if _, ok := find(f.Findings, cutoff.CodeChatters); !ok {
		t.Errorf("no finding: %+v", f.Findings)
	}
	c.Chain = chain(t, cutoff.Device{Where: cutoff.Controller, OpensAtV: 10.5, DelayS: 1})
	latched := follow(t, c)
	if latched.Recloses != 0 || m.Charge(latched.End) < m.Charge(f.End) {
		t.Errorf("the latch left %.3f, the chatter %.3f", m.Charge(latched.End), m.Charge(f.End))
	}
	if latched.AtS != f.AtS || latched.Charge != f.Charge {
		t.Error("closing changed the first opening")
	}
}

// Measured rebounds (source "measured-rebound"): the advised closing voltage
// must stand above what such packs really came back to.
func TestTheAdvisedClosingVoltageIsAboveMeasuredRebounds(t *testing.T) {
	li := pack(t, "li-ion", 1, 2.9, func(s *battery.Spec) { s.ResistanceOhm = 0.031 })
	a := advise(t, cutoff.Wish{Case: cutoff.Case{Pack: li, Start: li.StateAt(1, 25), LoadA: 2.9, AmbientC: 25}})
	if a.ClosesAtV <= 3.208 {
		t.Errorf("2.9 Ah cell at 1C: closes at %.2f V; measured rebound 3.208 V after 300 s (Kollmeyer 2018)", a.ClosesAtV)
	}
	lead := pack(t, "agm", 6, 17, nil)
	a = advise(t, cutoff.Wish{Case: cutoff.Case{Pack: lead, Start: lead.StateAt(1, 24), LoadA: 3.043, AmbientC: 24}})
	if a.ClosesAtV <= 11.445 {
		t.Errorf("12 V 17 Ah block at 3.04 A: closes at %.2f V; measured rebound 11.445 V after 1.7 h (Sulzer et al. 2019)", a.ClosesAtV)
	}
}

// Of two packs in series each opens at its own volts, so that is what is found
// and advised.
func TestACutoffInEachOfTwoPacksIsJudgedByTheVoltsOfOne(t *testing.T) {
	two := pack(t, "li-ion", 10, 5, nil)
	for _, c := range []struct {
		opensAtV, closesAtV float64 // of one pack
		code                string
		found, limit        float64
		says                string
	}{
		{10, 0, cutoff.CodeBelowHarm, 10, 12.5, "at least 14 V in each pack"},
		{22, 0, cutoff.CodeAboveFull, 22, 20.58, "this pack's cells"},
		{15, 0, "", 0, 0, ""},
	} {
		d := cutoff.Device{Where: cutoff.Pack, Packs: 2, OpensAtV: 2 * c.opensAtV, ClosesAtV: 2 * c.closesAtV}
		fs, err := cutoff.Judge(cutoff.Case{Pack: two, Chain: chain(t, d), LoadA: 5, AmbientC: 20})
		if err != nil {
			t.Fatal(err)
		}
		if c.code == "" {
			if len(fs) > 0 {
				t.Errorf("%g V a pack: %+v", c.opensAtV, fs)
			}
			continue
		}
		f, ok := find(fs, c.code)
		if !ok || math.Abs(f.Found-c.found) > 1e-9 || math.Abs(f.Limit-c.limit) > 1e-9 || !strings.Contains(f.Advice, c.says) {
			t.Errorf("%g V a pack: %+v, want %s with %g V, limit %g V, %q", c.opensAtV, fs, c.code, c.found, c.limit, c.says)
		}
	}
}

func TestSettingsThatSuitAnotherPackAreFound(t *testing.T) {
	li := pack(t, "li-ion", 5, 5, nil)
	ag := pack(t, "agm", 6, 7, nil)
	tests := []struct {
		name    string
		m       *battery.Model
		devices []cutoff.Device
		code    string
		level   answer.Level
	}{
		{"lithium without", li, nil, cutoff.CodeNone, answer.Danger},
		{"lead-acid without", ag, nil, cutoff.CodeNone, answer.FixFirst},
		{"a lead-acid board on lithium", li, []cutoff.Device{{Where: cutoff.Controller, OpensAtV: 10}}, cutoff.CodeBelowHarm, answer.Danger},
		{"an 18 V setting on 12 V", ag, []cutoff.Device{{Where: cutoff.Module, OpensAtV: 15}}, cutoff.CodeAboveFull, answer.FixFirst},
	}
	for _, tt := range tests {
		fs, err := cutoff.Judge(cutoff.Case{Pack: tt.m, Chain: chain(t, tt.devices...), LoadA: 5, AmbientC: 20})
		if err != nil {
			t.Fatal(err)
		}
		if f, ok := find(fs, tt.code); !ok || f.Level != tt.level {
			t.Errorf("%s: %+v, want %s at %v", tt.name, fs, tt.code, tt.level)
		}
	}
	fs, err := cutoff.Judge(cutoff.Case{Pack: li, Chain: chain(t, cutoff.Device{Where: cutoff.Pack, OpensAtV: 15}), LoadA: 5, AmbientC: 20})
	if err != nil || len(fs) != 0 {
		t.Errorf("a right setting: %+v, %v", fs, err)
	}
}

func TestCasesOutOfRangeAreErrors(t *testing.T) {
	m := pack(t, "agm", 6, 7, nil)
	for _, c := range []cutoff.Case{
		{},
		{Pack: m},
		{Pack: m, LoadA: -1},
		{Pack: m, LoadA: math.NaN()},
		{Pack: m, LoadA: 1, PathOhm: -1},
		{Pack: m, LoadA: 1, AmbientC: math.NaN()},
		{Pack: m, LoadA: math.Inf(1)},
		{Pack: m, LoadA: 1, AmbientC: 1e9},
		{Pack: m, LoadA: 1, Start: m.StateAt(math.NaN(), 20)},
		{Pack: m, LoadA: 1, Start: m.StateAt(1, math.NaN())},
	} {
		if _, err := cutoff.Follow(c); err == nil || !strings.HasPrefix(err.Error(), "cutoff: ") {
			t.Errorf("Follow %+v: %v", c, err)
		}
		if _, err := cutoff.Advise(cutoff.Wish{Case: c}); err == nil {
			t.Errorf("Advise %+v: no error", c)
		}
		if _, err := cutoff.Judge(c); err == nil {
			t.Errorf("Judge %+v: no error", c)
		}
	}
}

// Every source that a finding or a caution names must be known.
func TestEverySourceIsKnown(t *testing.T) {
	known := map[string]bool{}
	last := ""
	for _, s := range cutoff.Sources() {
		if s.ID <= last || s.Text == "" || s.Known == "" {
			t.Errorf("source %+v out of order or empty", s)
		}
		known[s.ID], last = true, s.ID
	}
	for _, s := range chemistry.Builtin().Sources() {
		known[s.ID] = true
	}
	check := func(ids string) {
		for id := range strings.SplitSeq(ids, ",") {
			if !known[strings.TrimSpace(id)] {
				t.Errorf("unknown source %q", id)
			}
		}
	}
	for _, name := range chemistry.Builtin().Names() {
		p := profile(t, name)
		for _, c := range cutoff.Cautions(p) {
			check(c.Source)
		}
		m := pack(t, name, 4, 5, func(s *battery.Spec) { s.WeakestShort = 0.4 })
		c := cutoff.Case{Pack: m, Start: m.StateAt(1, 20), LoadA: 5, AmbientC: 20}
		fs, _ := cutoff.Judge(c)
		c.Chain = chain(t, cutoff.Device{OpensAtV: m.EmptyV() * 0.9, ClosesAtV: m.EmptyV() * 0.95})
		f := follow(t, c)
		fs = append(fs, f.Findings...)
		for _, z := range []float64{0.02, 0.3} {
			i, err := cutoff.Idle(cutoff.Standing{Pack: m, Start: m.StateAt(z, 20), StandbyA: 0.02, AmbientC: 20})
			if err != nil {
				t.Fatal(err)
			}
			fs = append(fs, i.Findings...)
		}
		if len(fs) < 3 {
			t.Errorf("%s: only %d findings in a case full of faults", name, len(fs))
		}
		for _, f := range fs {
			check(f.Source)
			if f.Title == "" || f.Advice == "" || f.Code == "" {
				t.Errorf("half a finding %+v", f)
			}
		}
	}
}

func BenchmarkFollow(b *testing.B) {
	m := pack(b, "li-ion", 5, 5, nil)
	c := cutoff.Case{Pack: m, Start: m.StateAt(1, 20), LoadA: 10, AmbientC: 20}
	c.Chain = chain(b, cutoff.Device{Where: cutoff.Module, OpensAtV: 14, DelayS: 2})
	b.ReportAllocs()
	for b.Loop() {
		if _, err := cutoff.Follow(c); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAdvise(b *testing.B) {
	m := pack(b, "agm", 6, 7, nil)
	w := cutoff.Wish{Case: cutoff.Case{Pack: m, Start: m.StateAt(1, 20), LoadA: 8, AmbientC: 20}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := cutoff.Advise(w); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkIdle(b *testing.B) {
	m := pack(b, "li-ion", 5, 5, nil)
	s := cutoff.Standing{Pack: m, Start: m.StateAt(0.3, 20), AmbientC: 20, StandbyA: 0.01}
	s.Chain = chain(b, cutoff.Device{Where: cutoff.Controller, OpensAtV: 15, StandbyA: 1e-3})
	b.ReportAllocs()
	for b.Loop() {
		if _, err := cutoff.Idle(s); err != nil {
			b.Fatal(err)
		}
	}
}
