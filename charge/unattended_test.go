package charge_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
)

// left computes a charge and what becomes of the pack when it is forgotten.
func left(t testing.TB, c charge.Case) (charge.Outcome, []charge.Left) {
	t.Helper()
	out := simulate(t, c)
	l := charge.Unattended(c, out)
	if len(l) != 3 || l[0].Hours != 12 || l[1].Hours != 168 || l[2].Hours != 720 {
		t.Fatalf("%+v: want a night, a week and a month", l)
	}
	return out, l
}

func TestAForgottenChargerIsToldByNightWeekAndMonth(t *testing.T) {
	agm := pack(t, "agm", 6, 7)
	li := pack(t, "li-ion", 5, 5)
	tests := []struct {
		name   string
		c      charge.Case
		levels [3]answer.Level
		says   string // after a month
	}{
		{
			"lead-acid on float",
			charge.Case{Pack: agm, Start: agm.StateAt(0.5, 20), AmbientC: 20, CurrentA: 1, EndV: 13.65, Stops: charge.StopsNever},
			[3]answer.Level{answer.Fine, answer.Fine, answer.Fine},
			"No harm",
		},
		{
			"lead-acid at cycle volts, never stopping",
			charge.Case{Pack: agm, Start: agm.StateAt(0.5, 20), AmbientC: 20, CurrentA: 1, EndV: 14.7, Stops: charge.StopsNever},
			[3]answer.Level{answer.Fine, answer.FixFirst, answer.Danger},
			"dry",
		},
		{
			"plain adaptor, never stopping",
			charge.Case{Pack: agm, Start: agm.StateAt(0.5, 20), AmbientC: 20, CurrentA: 1, EndV: 18, DroopOhm: 6, Stops: charge.StopsNever},
			[3]answer.Level{answer.FixFirst, answer.Danger, answer.Danger},
			"dry",
		},
		{
			"stops by itself",
			charge.Case{Pack: agm, Start: agm.StateAt(0.5, 20), AmbientC: 20, CurrentA: 1, EndV: 14.7, Stops: charge.StopsByItself},
			[3]answer.Level{},
			"ended",
		},
		{
			"lithium, never stopping",
			charge.Case{Pack: li, Start: li.StateAt(0.5, 20), AmbientC: 20, CurrentA: 2, EndV: 21, Stops: charge.StopsNever},
			[3]answer.Level{answer.Danger, answer.Danger, answer.Danger},
			"fire",
		},
		{
			"lithium, stops by itself",
			charge.Case{Pack: li, Start: li.StateAt(0.5, 20), AmbientC: 20, CurrentA: 2, EndV: 21, Stops: charge.StopsByItself},
			[3]answer.Level{answer.Watch, answer.Watch, answer.Watch},
			"do not leave",
		},
	}
	for _, tt := range tests {
		_, l := left(t, tt.c)
		for i := range l {
			if l[i].Level != tt.levels[i] {
				t.Errorf("%s, %s: %v, want %v: %+v", tt.name, l[i].After, l[i].Level, tt.levels[i], l[i])
			}
			if l[i].Words == "" || l[i].OverLeastAh > l[i].OverMostAh {
				t.Errorf("%s, %s: %+v", tt.name, l[i].After, l[i])
			}
			if i > 0 && l[i].OverMostAh < l[i-1].OverMostAh {
				t.Errorf("%s: less overcharge after %s than before", tt.name, l[i].After)
			}
		}
		if !strings.Contains(l[2].Words, tt.says) {
			t.Errorf("%s: %q, want %q in it", tt.name, l[2].Words, tt.says)
		}
	}
}

// Faraday: 0.336 g of water a cell for every ampere-hour of overcharge.
func TestWaterFollowsFaraday(t *testing.T) {
	m := pack(t, "agm", 6, 7)
	_, l := left(t, charge.Case{Pack: m, Start: m.StateAt(0.5, 20), AmbientC: 20, CurrentA: 1, EndV: 18, DroopOhm: 6, Stops: charge.StopsNever})
	for _, x := range l {
		if got := x.WaterMostGPerCell / x.OverMostAh; math.Abs(got-0.336) > 0.0005 {
			t.Errorf("%s: %.4f g/Ah, want 0.336", x.After, got)
		}
	}
}

func TestATimerBoundsTheOvercharge(t *testing.T) {
	m := pack(t, "agm", 6, 7)
	c := charge.Case{Pack: m, Start: m.StateAt(0.5, 20), AmbientC: 20, CurrentA: 1, EndV: 14.7, Stops: charge.StopsByTimer, TimerH: 14}
	_, l := left(t, c)
	if l[1].OverMostAh != l[2].OverMostAh {
		t.Errorf("after the timer ended it goes on: %g, then %g Ah", l[1].OverMostAh, l[2].OverMostAh)
	}
}

// A charger that was read off its label becomes the case that its kind is.
func TestALabelBecomesACase(t *testing.T) {
	p := plugged(t, "agm", 6, 7, "12V 1000Ma lead acid DC")
	c, err := p.Case(p.Pack.StateAt(0.5, 20))
	if err != nil || c.EndV != 18 || math.Abs(c.DroopOhm-6) > 1e-9 || c.CurrentA != 1 {
		t.Errorf("plain adaptor: %+v, %v; want 18 V that sags by 6 Ohm to 12 V at 1 A", c, err)
	}
	p = plugged(t, "li-ion", 5, 5, "21V 2A Li-ion")
	if c, err = p.Case(p.Pack.StateAt(0.5, 20)); err != nil || math.Abs(c.EndV-21) > 1e-9 || c.DroopOhm != 0 {
		t.Errorf("held: %+v, %v", c, err)
	}
	p = plugged(t, "li-ion", 5, 5, "18V 2A Li-ion")
	if _, err = p.Case(p.Pack.StateAt(0.5, 20)); err == nil {
		t.Error("an unknown end voltage was computed with")
	}
	p.Charger.SuppliedWithPack = true
	if c, err = p.Case(p.Pack.StateAt(0.5, 20)); err != nil || math.Abs(c.EndV-21) > 1e-9 {
		t.Errorf("the pack's own charger: %+v, %v; want 21 V", c, err)
	}
	p.Charger.CurrentA = 0
	if _, err = p.Case(p.Pack.StateAt(0.5, 20)); err == nil {
		t.Error("an unknown current was computed with")
	}
	if _, err = (charge.Plugged{}).Case(p.Pack.StateAt(0.5, 20)); err == nil {
		t.Error("no pack was computed with")
	}
}
