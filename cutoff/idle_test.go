package cutoff_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
)

func idle(t testing.TB, s cutoff.Standing) cutoff.Idled {
	t.Helper()
	i, err := cutoff.Idle(s)
	if err != nil {
		t.Fatal(err)
	}
	return i
}

// byHand walks a standing pack down minute by minute, as a check on the legs
// of [cutoff.Idle]: the charge falls by standby and self-discharge (the
// profile's monthly loss, doubling with its kelvins, at the fast end of what
// makers print: 6.3 % a month where the lead-acid profile has 3, 5 % for lithium), a cutoff opens at its voltage, and the
// first moment is taken at which the weakest cell is at or below cellV.
func byHand(s cutoff.Standing, cellV float64) float64 {
	p := s.Pack.Spec().Profile
	w := s.Pack.Wells()
	fast := 1.7
	if p.Family == chemistry.LeadAcid {
		fast = 2.2
	}
	loss := fast * p.Keeping.LossPerMonth * math.Exp2((s.AmbientC-p.Keeping.AtC)/p.Keeping.DoublingK) / 30
	z := s.Pack.Charge(s.Start)
	const stepDays = 1.0 / 1440
	for i := range 1440 * 400 {
		y := w.CapacityAh - (1-z)*s.Pack.FullAh()
		st := battery.State{Y1Ah: w.C * y, Y2Ah: (1 - w.C) * y, TempC: s.AmbientC}
		if s.Pack.WeakestCellV(&st, 0) <= cellV {
			return float64(i) * stepDays
		}
		v := s.Pack.RestedV(st)
		s.Chain.Step(cutoff.Sample{PackV: v, BusV: v, DtS: stepDays * 86400})
		amps := s.Chain.StandbyA()
		if !disconnects(&s.Chain) {
			amps += s.StandbyA
		}
		z -= (loss + amps*24/s.Pack.FullAh()) * stepDays
	}
	return math.Inf(1)
}

// disconnects reports whether something between pack and controller is open.
func disconnects(c *cutoff.Chain) bool {
	all := 0.0
	for i := range c.Len() {
		all += c.At(i).StandbyA
	}
	// Behind a controller's own cutoff the board still hangs on the pack, until
	// something nearer to the cells opens and takes the cutoff's own draw away.
	return c.Open() && (c.At(c.Len()-1).Where != cutoff.Controller || c.StandbyA() < all)
}

func TestIdleDaysAgreeWithWalkingThroughTheHours(t *testing.T) {
	for _, tt := range []struct {
		name, chemistry string
		cells           int
		ah, charge      float64
		standbyA        float64
		devices         []cutoff.Device
	}{
		{"nothing disconnects", "li-ion", 5, 5, 0.3, 0.03, nil},
		{"full pack, small standby", "li-ion", 5, 5, 1, 0.002, nil},
		{"a controller's cutoff saves nothing", "li-ion", 5, 4, 0.4, 0.05, []cutoff.Device{{Where: cutoff.Controller, OpensAtV: 16, StandbyA: 0.001}}},
		{"a cutoff saves it", "li-ion", 5, 4, 0.4, 0.05, []cutoff.Device{{Where: cutoff.Module, OpensAtV: 16, StandbyA: 0.001}}},
		{"two cutoffs in turn", "li-ion", 5, 4, 0.4, 0.05, []cutoff.Device{
			{Where: cutoff.Pack, OpensAtV: 14.5, StandbyA: 1e-3}, // a minute of the board, as long as a step, is then an hour of it
			{Where: cutoff.Controller, OpensAtV: 16.5, StandbyA: 0.005, DelayS: 10},
		}},
		{"lead-acid after a ride", "agm", 6, 7, 0.35, 0.01, nil},
		{"lead-acid, loss by itself only", "agm", 6, 7, 0.2, 0, nil},
	} {
		m := pack(t, tt.chemistry, tt.cells, tt.ah, nil)
		s := cutoff.Standing{Pack: m, Start: m.StateAt(tt.charge, 20), AmbientC: 20, StandbyA: tt.standbyA, Chain: chain(t, tt.devices...)}
		got := idle(t, s)
		p := m.Spec().Profile
		for _, r := range []struct {
			rung      string
			cellV     float64
			got, hand float64
		}{
			{"end", p.EmptyV, got.DaysToEnd, 0},
			{"harm", p.HarmV, got.DaysToHarm, 0},
			{"never", p.NeverRechargeV, got.DaysToNever, 0},
		} {
			if r.cellV == 0 {
				if !math.IsInf(r.got, 1) {
					t.Errorf("%s: %g days to a rung that is not there", tt.name, r.got)
				}
				continue
			}
			r.hand = byHand(s, r.cellV)
			if math.Abs(r.got-r.hand) > 0.01+0.002*r.hand {
				t.Errorf("%s, %s: %.3f days, walked %.3f", tt.name, r.rung, r.got, r.hand)
			}
		}
		if !(got.DaysToEnd <= got.DaysToHarm && got.DaysToHarm <= got.DaysToNever) {
			t.Errorf("%s: rungs out of order: %+v", tt.name, got)
		}
	}
}

func TestAWeekInTheToyIsAnsweredInDays(t *testing.T) {
	li := pack(t, "li-ion", 5, 5, nil)
	for _, tt := range []struct {
		name string
		s    cutoff.Standing
		says string
		code string
	}{
		{"drained, board on", cutoff.Standing{Pack: li, Start: li.StateAt(0.03, 20), AmbientC: 20, StandbyA: 0.02}, "finished", cutoff.CodeIdleWeek},
		{"drained, nothing draws", cutoff.Standing{Pack: li, Start: li.StateAt(0.03, 20), AmbientC: 20}, "that begins after", cutoff.CodeIdleMonth},
		{"half full, nothing draws", cutoff.Standing{Pack: li, Start: li.StateAt(0.5, 20), AmbientC: 20}, "no harm", ""},
		{"already too low", cutoff.Standing{Pack: li, Start: below(li, -0.05), AmbientC: 20}, "never be charged again", cutoff.CodePastSaving},
	} {
		got := idle(t, tt.s)
		if !strings.Contains(got.Words, tt.says) {
			t.Errorf("%s: %q, want %q in it (%+v)", tt.name, got.Words, tt.says, got)
		}
		if _, ok := find(got.Findings, tt.code); tt.code != "" && !ok {
			t.Errorf("%s: findings %+v, want %s", tt.name, got.Findings, tt.code)
		}
		if tt.code == "" && len(got.Findings) != 0 {
			t.Errorf("%s: findings %+v, want none", tt.name, got.Findings)
		}
	}
}

// With nothing to disconnect it the load runs on to where the motors stall, and
// from there the days are counted. One cutoff that suits the pack changes that.
func TestNothingDisconnectsIsWorseThanACutoff(t *testing.T) {
	for _, tt := range []struct {
		chemistry string
		cells     int
	}{{"li-ion", 5}, {"lifepo4", 4}, {"agm", 6}, {"nimh", 15}} {
		m := pack(t, tt.chemistry, tt.cells, 5, nil)
		c := cutoff.Case{Pack: m, Start: m.StateAt(1, 20), LoadA: 5, AmbientC: 20}
		none := follow(t, c)
		d := advise(t, cutoff.Wish{Case: c}).Device(cutoff.Module)
		c.Chain = chain(t, d)
		one := follow(t, c)
		if none.Opened || !one.Opened || one.LowestCellV <= none.LowestCellV || m.Charge(one.End) <= m.Charge(none.End) {
			t.Fatalf("%s: without %+v, with %+v", tt.chemistry, none, one)
		}
		bare := idle(t, cutoff.Standing{Pack: m, Start: none.End, AmbientC: 20, StandbyA: 0.01})
		saved := idle(t, cutoff.Standing{Pack: m, Start: one.End, AmbientC: 20, StandbyA: 0.01, Chain: openChain(t, d)})
		if !(bare.DaysToHarm < saved.DaysToHarm) {
			t.Errorf("%s: harmed after %g days without, %g with a cutoff", tt.chemistry, bare.DaysToHarm, saved.DaysToHarm)
		}
		if saved.DaysToHarm < 7 && tt.chemistry != "nimh" { // nickel may stand empty
			t.Errorf("%s: with the advised cutoff open, harmed after %g days: a week must be safe", tt.chemistry, saved.DaysToHarm)
		}
	}
}

// openChain is the chain of one device that has opened.
func openChain(t testing.TB, d cutoff.Device) cutoff.Chain {
	t.Helper()
	c := chain(t, d)
	if !c.Step(at(0, d.DelayS+1)) {
		t.Fatal("did not open")
	}
	return c
}

// below is a state of the given charge, which may be less than nothing.
func below(m *battery.Model, charge float64) battery.State {
	w := m.Wells()
	y := w.CapacityAh - (1-charge)*m.FullAh()
	return battery.State{Y1Ah: y * w.C, Y2Ah: y * (1 - w.C), TempC: 20}
}

func TestMoreStandbyAndMoreWarmthNeverGiveMoreDays(t *testing.T) {
	for _, name := range []string{"agm", "li-ion", "lifepo4", "nimh"} {
		m := pack(t, name, 5, 5, nil)
		last := math.Inf(1)
		for _, a := range []float64{0, 1e-4, 1e-3, 0.01, 0.1, 1} {
			d := idle(t, cutoff.Standing{Pack: m, Start: m.StateAt(0.5, 20), AmbientC: 20, StandbyA: a}).DaysToHarm
			if d > last {
				t.Errorf("%s: %g A gives %g days, less gave %g", name, a, d, last)
			}
			last = d
		}
		last = math.Inf(1)
		for _, c := range []float64{5, 15, 25, 35} {
			d := idle(t, cutoff.Standing{Pack: m, Start: m.StateAt(0.5, c), AmbientC: c}).DaysToHarm
			if d > last {
				t.Errorf("%s: %g degC gives %g days, cooler gave %g", name, c, d, last)
			}
			last = d
		}
	}
}

// A cutoff's own current drains the pack too: a thirsty one may be worse than
// none that matters.
func TestTheCutoffsOwnCurrentIsCounted(t *testing.T) {
	m := pack(t, "li-ion", 5, 5, nil)
	s := cutoff.Standing{Pack: m, Start: m.StateAt(0.3, 20), AmbientC: 20}
	s.Chain = chain(t, cutoff.Device{Where: cutoff.Module, OpensAtV: 15})
	frugal := idle(t, s).DaysToHarm
	s.Chain = chain(t, cutoff.Device{Where: cutoff.Module, OpensAtV: 15, StandbyA: 0.02})
	thirsty := idle(t, s).DaysToHarm
	if !(thirsty < frugal/5) {
		t.Errorf("20 mA of its own: %g days, without %g", thirsty, frugal)
	}
}

func TestStandingOutOfRangeIsAnError(t *testing.T) {
	m := pack(t, "agm", 6, 7, nil)
	for _, s := range []cutoff.Standing{
		{}, {Pack: m, StandbyA: -1}, {Pack: m, StandbyA: math.NaN()}, {Pack: m, AmbientC: math.Inf(1)},
	} {
		if _, err := cutoff.Idle(s); err == nil {
			t.Errorf("%+v: no error", s)
		}
	}
}

// A time is printed as it is said: no tenth of nought, and one day is no days.
func TestTheDaysOfAPackLeftAloneAreSaidAsPeopleDo(t *testing.T) {
	for days, want := range map[float64]string{
		0.01: "less than an hour", 1.01 / 24: "1 hour", 4.79 / 24: "4.7 hours", 14.03 / 24: "14 hours", 1.05: "1 day", 4.02: "4 days", 4.79: "4.7 days", 14.9: "14 days",
	} {
		got := cutoff.Idled{DaysToHarm: days, DaysToNever: math.Inf(1)}.Week()
		if !strings.Contains(got, " after "+want+".") {
			t.Errorf("%g days: %s, want %s", days, got, want)
		}
	}
}
