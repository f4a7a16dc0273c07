package wiring_test

import (
	"math"
	"testing"

	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

func TestOpeningTimeTellsTheCurrent(t *testing.T) {
	// 30 A small blade at 23 degC, gates of the maker's sheet. After 5 s: the
	// largest current is that of 200 percent, whose latest time is 5 s. After
	// 0.25 s the smallest is that of 160 percent, whose earliest time is 0.25 s.
	f := fuseOf(t, "small blade", 30)
	flowed := f.WhatFlowed(wiring.Opening{Seconds: 5, AmbientC: 23})
	near(t, "most after 5 s", flowed.MostA, 60, 1e-6)
	near(t, "least after 0.25 s", f.WhatFlowed(wiring.Opening{Seconds: 0.25, AmbientC: 23}).LeastA, 48, 1e-6)
	// 600 s: between the hold current and 135 percent.
	flowed = f.WhatFlowed(wiring.Opening{Seconds: 600, AmbientC: 23})
	near(t, "most after 600 s", flowed.MostA, 40.5, 1e-6)
	if flowed.LeastA < 30 || flowed.LeastA > 40.5 {
		t.Errorf("600 s: %+v", flowed)
	}
	// Under 10 ms there is no upper end.
	if got := f.WhatFlowed(wiring.Opening{Seconds: 0.005, AmbientC: 23}); !math.IsInf(got.MostA, 1) || got.LeastA < 150 {
		t.Errorf("5 ms: %+v", got)
	}
}

func TestTheCurrentToldOpensTheFuseInThatTime(t *testing.T) {
	for _, form := range tables.Builtin().FuseForms() {
		f := fuseOf(t, form, 15)
		lastLeast := math.Inf(1)
		for seconds := 0.02; seconds < 3000; seconds *= 1.7 {
			for _, ambient := range []float64{0, 40} {
				got := f.WhatFlowed(wiring.Opening{Seconds: seconds, AmbientC: ambient})
				curve := f.At(ambient)
				if band := curve.Opens(got.LeastA * 1.0001); band.EarliestS > seconds {
					t.Errorf("%s, %g s: %g A opens no sooner than %g s", form, seconds, got.LeastA, band.EarliestS)
				}
				if band := curve.Opens(got.LeastA * 0.999); band.EarliestS <= seconds {
					t.Errorf("%s, %g s: %g A is not the least", form, seconds, got.LeastA)
				}
				if band := curve.Opens(got.MostA * 0.999); band.LatestS < seconds {
					t.Errorf("%s, %g s: %g A would have opened by %g s", form, seconds, got.MostA, band.LatestS)
				}
				if got.LeastA > got.MostA {
					t.Errorf("%s, %g s: %+v", form, seconds, got)
				}
				if ambient == 40 {
					if got.LeastA > lastLeast*(1+1e-9) {
						t.Errorf("%s, %g s: %g A, more than for a shorter time", form, seconds, got.LeastA)
					}
					lastLeast = got.LeastA
				}
			}
		}
	}
}

func TestTimeToComeBackRanksTheDevices(t *testing.T) {
	for name, c := range map[string]struct {
		r    wiring.Return
		want string
	}{
		"never":                    {wiring.Return{Seconds: math.Inf(1)}, "one-time fuse"},
		"after a charger":          {wiring.Return{Seconds: math.Inf(1), AfterCharger: true, Lithium: true}, "electronics in the pack"},
		"15 s, pedal held":         {wiring.Return{Seconds: 15}, "auto-reset breaker"},
		"15 s, breaker known":      {wiring.Return{Seconds: 15, Breaker: true, Lithium: true}, "auto-reset breaker"},
		"1 s after release":        {wiring.Return{Seconds: 1, AfterRelease: true, Lithium: true}, "electronics in the pack"},
		"15 s after release, lead": {wiring.Return{Seconds: 15, AfterRelease: true}, "breaker that waits for release"},
		"3 minutes":                {wiring.Return{Seconds: 180}, "polymer resettable fuse"},
	} {
		answers := wiring.WhatOpened(tables.Builtin(), c.r)
		if answers[0].Device != c.want {
			t.Errorf("%s: %+v, want %s first", name, answers[0], c.want)
		}
		for i, a := range answers {
			if a.Fit < 0 || a.Fit > 1 || (i > 0 && a.Fit > answers[i-1].Fit) {
				t.Errorf("%s: fit %g in place %d", name, a.Fit, i)
			}
			if a.Why == "" || a.Check == "" {
				t.Errorf("%s: %s has no words", name, a.Device)
			}
			if _, ok := tables.Builtin().Source(a.Source); !ok || tables.Builtin().Firm(a.Source) {
				t.Errorf("%s: source %q: want one that says it is remembered", name, a.Source)
			}
		}
	}
	if a := wiring.WhatOpened(tables.Builtin(), wiring.Return{Seconds: 15}); a[len(a)-1].Device != "one-time fuse" {
		t.Errorf("what came back was no one-time fuse, yet it is not last: %+v", a)
	}
}
