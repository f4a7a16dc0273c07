package battery_test

import (
	"math"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

var nan, inf = math.NaN(), math.Inf(1)

// Of what is no number nothing can be told, and nobody is told anything.
func TestWhatIsNoNumberGivesNoNumber(t *testing.T) {
	for _, name := range names {
		m := model(t, name, 6, 7)
		after := func(amps, ambientC float64) battery.State {
			step, s := m.Over(10), m.StateAt(0.5, 20)
			for range 3 {
				step.Advance(&s, amps, ambientC)
				step.AdvanceLong(&s, amps, ambientC)
			}
			return s
		}
		volts := func(s battery.State) float64 { return m.TerminalV(&s, 5) }
		run := func(s battery.State, amps, endV, ambientC float64) float64 {
			r := m.Discharge(s, amps, endV, ambientC)
			if math.IsNaN(r.Hours) != math.IsNaN(r.Ah) || math.IsNaN(r.Hours) != math.IsNaN(r.Wh) {
				t.Errorf("%s: %g h, %g Ah, %g Wh", name, r.Hours, r.Ah, r.Wh)
			}
			return r.Hours
		}
		rest := func(v, hours, tempC float64) float64 {
			low, _, _ := battery.ChargeFromRest(profile(t, name), v, hours, tempC)
			return low
		}
		half := m.StateAt(0.5, 20)
		for _, c := range []struct {
			what string
			got  float64
		}{
			{"volts at no temperature", volts(m.StateAt(0.5, nan))},
			{"volts at minus infinity", volts(m.StateAt(0.5, -inf))},
			{"volts of no charge", volts(m.StateAt(nan, 20))},
			{"rested volts", m.RestedV(m.StateAt(0.5, nan))},
			{"available charge", m.AvailableAh(m.StateAt(0.5, nan))},
			{"the weakest cell", func() float64 { s := m.StateAt(0.5, nan); return m.WeakestCellV(&s, 5) }()},
			{"volts after no current", volts(after(nan, 20))},
			{"volts after an infinite current", volts(after(inf, 20))},
			{"volts after an infinite charge", volts(after(-inf, 20))},
			{"temperature in no surroundings", after(5, nan).TempC},
			{"volts in no surroundings", volts(after(5, nan))},
			{"a pulse of no current", m.PulseOhms(half, nan).Ohm1s},
			{"a pulse of an infinite current", m.PulseOhms(half, inf).Ohm10s},
			{"a run in no surroundings", run(half, 5, 9, nan)},
			{"a run in infinite surroundings", run(half, 5, 9, inf)},
			{"a run in surroundings of minus infinity", run(half, 5, 9, -inf)},
			{"a run at no current", run(half, nan, 9, 20)},
			{"a run at an infinite current", run(half, inf, 9, 20)},
			{"a run to no voltage", run(half, 5, nan, 20)},
			{"a run from no charge", run(m.StateAt(nan, 20), 5, 9, 20)},
			{"a run from no temperature", run(m.StateAt(0.5, nan), 5, 9, 20)},
			{"usable charge at no current", m.UsableAh(nan)},
			{"charge of no volts", rest(nan, 24, 20)},
			{"charge after no hours", rest(3, nan, 20)},
			{"charge at no temperature", rest(3, 24, nan)},
		} {
			if !math.IsNaN(c.got) {
				t.Errorf("%s: %s is %g", name, c.what, c.got)
			}
		}
		for _, s := range []battery.State{m.StateAt(nan, 20), m.StateAt(0.5, nan), after(inf, 20)} {
			if !m.Empty(&s) || !m.Look(&s).Empty {
				t.Errorf("%s: %+v is not empty", name, s)
			}
		}
		m.Discharge(half, math.SmallestNonzeroFloat64, 9, 20)
		m.Discharge(half, math.MaxFloat64, 9, 20)
	}
}

// A profile that was not found has no rest curve to read a charge off.
func TestTheChargeOfAChemistryThatIsNotThereIsNoNumber(t *testing.T) {
	p, ok := chemistry.Builtin().Profile("lead-acid")
	if ok {
		t.Fatal("there is one now: take another name")
	}
	low, likely, high := battery.ChargeFromRest(p, 8.0/6, 24, 20)
	if !math.IsNaN(low) || !math.IsNaN(likely) || !math.IsNaN(high) {
		t.Errorf("%g, %g to %g", likely, low, high)
	}
}

func TestACurrentThatTakesNothingLeavesTheStateAsItWas(t *testing.T) {
	m := model(t, "agm", 6, 7)
	s := m.StateAt(0.5, 20)
	for _, amps := range []float64{0, -3, -inf} {
		if got := m.Discharge(s, amps, 9, 20); got != (battery.Run{End: s}) {
			t.Errorf("%g A: %+v", amps, got)
		}
	}
}

// A use that is no number is neither fine nor a danger.
func TestAUseThatIsNoNumberIsToldToBeNone(t *testing.T) {
	m := model(t, "li-ion", 5, 4)
	warm := func(coldestC, hottestC float64) battery.Use {
		return battery.Use{HasTemps: true, ColdestC: coldestC, HottestC: hottestC}
	}
	read := func(surfaceC, hottestC float64) battery.Use {
		return battery.Use{HasTemps: true, ColdestC: 20, HottestC: hottestC, SurfaceC: surfaceC, Read: true}
	}
	half := m.StateAt(0.5, 20)
	for _, c := range []struct {
		name string
		fs   []answer.Finding
		code string
	}{
		{"lasting current", m.Judge(battery.Use{LastingA: nan}), battery.CodeCurrentLasting},
		{"infinite lasting current", m.Judge(battery.Use{LastingA: inf}), battery.CodeCurrentLasting},
		{"peak", m.Judge(battery.Use{PeakA: nan}), battery.CodeCurrentPeak},
		{"coldest", m.Judge(warm(nan, 20)), battery.CodeTooCold},
		{"hottest", m.Judge(warm(20, nan)), battery.CodeTooHot},
		{"surface", m.Judge(read(nan, 30)), battery.CodeTooHot},
		{"old battery", battery.JudgeOld(nan), battery.CodeOldHot},
		{"joined in parallel at no charge", battery.Joint{A: m, B: m, StateA: half, StateB: m.StateAt(nan, 20)}.JudgeParallel(), battery.CodeParallelEqualising},
		{"no pack beside it", battery.Joint{A: m, StateA: half}.JudgeParallel(), battery.CodeUnlikePacks},
		{"no pack behind it", battery.Joint{B: m, StateB: half}.JudgeSeries(), battery.CodeUnlikePacks},
	} {
		if len(c.fs) != 1 || c.fs[0].Code != c.code || c.fs[0].Level != answer.Watch || c.fs[0].Reads != answer.AsUnknown || c.fs[0].Found != 0 {
			t.Errorf("%s: %+v", c.name, c.fs)
		}
	}
	if fs := m.Judge(read(85, nan)); len(fs) != 1 || fs[0].Level != answer.Danger {
		t.Errorf("read at 85 degC: %+v", fs)
	}
	if e, s := (battery.Joint{A: m}).Parallel(), (battery.Joint{B: m}).Series(); !math.IsNaN(e.CurrentA) || !math.IsNaN(s.EndsAt) {
		t.Errorf("a pack joined to none: %+v, %+v", e, s)
	}
}
