package battery_test

import (
	"math"
	"testing"

	"example.org/packcheck/battery"
)

// dsn2009 are the two batteries of Jongerden, Bohnenkamp, Haverkort & Katoen,
// "Maximizing system lifetime by battery scheduling", DSN 2009: c = 0.166,
// k' = 0.122 /min, 5.5 and 11 A*min. Lifetimes from memory, all of them
// reproduced from the published constants.
func dsn2009(ampereMinutes float64) battery.Wells {
	return battery.WellsFromKPrime(ampereMinutes/60, 0.166, 0.122/60)
}

// lasts runs a repeating pattern of (amperes, seconds) until the available
// well is empty and returns the seconds.
func lasts(w battery.Wells, pattern ...[2]float64) float64 {
	c, at := w.Full(), 0.0
	for i := 0; ; i++ {
		amps, seconds := pattern[i%len(pattern)][0], pattern[i%len(pattern)][1]
		if amps > 0 {
			if left := w.LastsS(c, amps); left <= seconds {
				return at + left
			}
		}
		c = w.After(c, amps, seconds)
		at += seconds
	}
}

func TestWellsReproducePublishedLifetimes(t *testing.T) {
	const minute = 60
	on := func(amps float64) [2]float64 { return [2]float64{amps, minute} }
	off := func(minutes float64) [2]float64 { return [2]float64{0, minutes * minute} }
	for _, c := range []struct {
		name    string
		charge  float64 // A*min
		load    [][2]float64
		minutes float64
	}{
		{"B1, 0.25 A", 5.5, [][2]float64{on(0.25)}, 4.53},
		{"B1, 0.5 A", 5.5, [][2]float64{on(0.5)}, 2.02},
		{"B2, 0.25 A", 11, [][2]float64{on(0.25)}, 12.16},
		{"B2, 0.5 A", 11, [][2]float64{on(0.5)}, 4.53},
		{"B1, 0.25 A, 1 min on, 1 off", 5.5, [][2]float64{on(0.25), off(1)}, 10.80},
		{"B1, 0.5 A, 1 min on, 1 off", 5.5, [][2]float64{on(0.5), off(1)}, 4.30},
		{"B2, 0.25 A, 1 min on, 1 off", 11, [][2]float64{on(0.25), off(1)}, 44.78},
		{"B2, 0.5 A, 1 min on, 1 off", 11, [][2]float64{on(0.5), off(1)}, 10.80},
		{"B1, 0.25 A, 1 min on, 2 off", 5.5, [][2]float64{on(0.25), off(2)}, 21.86},
		{"B1, 0.5 A, 1 min on, 2 off", 5.5, [][2]float64{on(0.5), off(2)}, 6.53},
		{"B2, 0.25 A, 1 min on, 2 off", 11, [][2]float64{on(0.25), off(2)}, 84.90},
		{"B2, 0.5 A, 1 min on, 2 off", 11, [][2]float64{on(0.5), off(2)}, 21.86},
		{"B1, 0.5 and 0.25 A in turn", 5.5, [][2]float64{on(0.5), on(0.25)}, 2.58},
		{"B2, 0.5 and 0.25 A in turn", 11, [][2]float64{on(0.5), on(0.25)}, 6.45},
		{"B1, in turn with rests", 5.5, [][2]float64{on(0.5), off(1), on(0.25), off(1)}, 4.80},
		{"B2, in turn with rests", 11, [][2]float64{on(0.5), off(1), on(0.25), off(1)}, 16.93},
	} {
		if got := lasts(dsn2009(c.charge), c.load...) / minute; math.Abs(got-c.minutes) > 0.005 {
			t.Errorf("%s: %.4f min, DSN 2009 prints %.2f", c.name, got, c.minutes)
		}
	}
}

// Cloth, Jongerden & Haverkort, "Computing battery lifetime distributions",
// DSN 2007 (from memory, reproduced): 7200 A*s, c = 0.625, k = 4.5e-5 /s,
// 0.96 A continuously 91 min, as a square wave of 1 Hz and of 0.2 Hz 203 min.
// These come out only when the printed k is the valve constant and the closed
// form gets k/(c(1-c)).
func TestWellsTakeTheValveConstantForWhatItIs(t *testing.T) {
	w := battery.Wells{CapacityAh: 2, C: 0.625, KPerS: 4.5e-5}
	for _, c := range []struct {
		name    string
		load    [][2]float64
		minutes float64
	}{
		{"continuous", [][2]float64{{0.96, 60}}, 91},
		{"1 Hz", [][2]float64{{0.96, 0.5}, {0, 0.5}}, 203},
		{"0.2 Hz", [][2]float64{{0.96, 2.5}, {0, 2.5}}, 203},
	} {
		if got := lasts(w, c.load...) / 60; math.Abs(got-c.minutes) > 0.5 {
			t.Errorf("%s: %.2f min, DSN 2007 prints %.0f", c.name, got, c.minutes)
		}
	}
	if wrong := lasts(battery.WellsFromKPrime(2, 0.625, 4.5e-5), [2]float64{0.96, 60}) / 60; math.Abs(wrong-81) > 0.5 {
		t.Errorf("taking k for k' gives %.1f min, should give the telltale 81", wrong)
	}
}

// What is left in the bound well of an empty battery, and how it comes back
// at rest; computed from the DSN 2009 constants by an independent program.
func TestRestRefillsTheAvailableWell(t *testing.T) {
	const perAh = 60 // A*min
	w := dsn2009(5.5)
	for _, c := range []struct{ amps, left float64 }{{0.5, 4.4915}, {0.25, 4.3685}} {
		empty := w.After(w.Full(), c.amps, w.LastsS(w.Full(), c.amps))
		if got := empty.BoundAh * perAh; math.Abs(got-c.left) > 1e-3 {
			t.Errorf("at %.2f A %.4f A*min stay bound, want %.4f", c.amps, got, c.left)
		}
	}
	empty := w.After(w.Full(), 0.5, w.LastsS(w.Full(), 0.5))
	for minutes, want := range map[float64]float64{1: 0.0856, 5: 0.3405, 10: 0.5255, 30: 0.7264, 60: 0.7451} {
		if got := w.After(empty, 0, 60*minutes).AvailableAh * perAh; math.Abs(got-want) > 1e-3 {
			t.Errorf("after %.0f min of rest %.4f A*min, want %.4f", minutes, got, want)
		}
	}
}

// NREL SAM, unit test of the battery simulation core: a lead-acid battery with
// 60 Ah at 1 h, 93 Ah at 10 h and 100 Ah at 20 h (read in a stored copy;
// reproduced by root finding).
var samRatings = [3]battery.Rating{{Hours: 1, Ah: 60}, {Hours: 10, Ah: 93}, {Hours: 20, Ah: 100}}

func TestWellsAreIdentifiedFromThreeRatings(t *testing.T) {
	w, err := battery.WellsFromRatings(samRatings)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(w.C-0.47511) > 0.0005 || math.Abs(w.KPrimePerS()*3600-0.67696) > 0.001 || math.Abs(w.CapacityAh-108.160) > 0.02 {
		t.Errorf("c = %.5f, k' = %.5f /h, Qmax = %.3f Ah; SAM has 0.47511, 0.67696, 108.160", w.C, w.KPrimePerS()*3600, w.CapacityAh)
	}
	for hours, ah := range map[float64]float64{0.25: 53.64, 0.5: 55.83, 1: 60, 2: 67.38, 3: 73.45, 5: 82.23, 10: 93, 20: 100, 100: 106.42} {
		if got := w.CapacityAt(3600 * hours); math.Abs(got-ah) > 0.02 {
			t.Errorf("capacity in %g h: %.3f Ah, want %.2f", hours, got, ah)
		}
	}
	if _, err := battery.WellsFromRatings([3]battery.Rating{{1, 100}, {10, 93}, {20, 100}}); err == nil {
		t.Error("a battery that gives more in one hour than in ten is accepted")
	}
}

// The same unit test steps the battery from half charge: 1.5, 3, 490, 490 A
// for an hour each, where only what the wells can give is drawn.
func TestWellsStepAsTheReferenceDoes(t *testing.T) {
	w := battery.WellsFromKPrime(108.16, 0.47511, 0.677/3600)
	c := battery.Charge{AvailableAh: 25.694, BoundAh: 54.08 - 25.694}
	for i, step := range []struct{ wanted, given, left float64 }{
		{1.5, 1.5, 52.58}, {3, 3, 49.58}, {490, 26.65, 22.927}, {490, 6.25, 16.67},
	} {
		given := math.Min(step.wanted, w.MostA(c, 3600))
		c = w.After(c, given, 3600)
		if math.Abs(given-step.given) > 0.01 || math.Abs(c.AvailableAh+c.BoundAh-step.left) > 0.01 {
			t.Errorf("step %d: %.3f A, %.3f Ah left; SAM has %.2f A, %.3f Ah", i+1, given, c.AvailableAh+c.BoundAh, step.given, step.left)
		}
	}
}

// Computed from the same battery's constants by an independent program.
func TestIntermittentUseGivesMore(t *testing.T) {
	w := battery.WellsFromKPrime(108.159, 0.47511, 0.677/3600)
	empty := w.After(w.Full(), 60, 3600)
	if math.Abs(empty.AvailableAh) > 0.002 || math.Abs(empty.BoundAh-48.160) > 0.003 {
		t.Errorf("after 1 h at 60 A: %.4f and %.4f Ah, want 0 and 48.160", empty.AvailableAh, empty.BoundAh)
	}
	rested := w.After(empty, 0, 3600)
	if math.Abs(rested.AvailableAh-11.254) > 0.002 {
		t.Errorf("after 1 h of rest %.4f Ah, want 11.254", rested.AvailableAh)
	}
	if again := w.LastsS(rested, 60) / 3600; math.Abs(again-0.2232) > 0.002 {
		t.Errorf("then %.4f h more, want 0.2232", again)
	}
	if h := lasts(w, [2]float64{60, 60}, [2]float64{0, 60}) / 3600; math.Abs(h-2.3074) > 0.003 {
		t.Errorf("one minute on, one off: %.4f h, want 2.3074", h)
	}
}

func TestWellsKeepTheirChargeAndTheirLimits(t *testing.T) {
	for _, c := range []float64{0.1, 0.5, 0.9, 1} {
		for _, kPrime := range []float64{0, 1e-9, 1e-4, 1} {
			w := battery.WellsFromKPrime(10, c, kPrime)
			start := battery.Charge{AvailableAh: 0.7 * 10 * c, BoundAh: 0.7 * 10 * (1 - c)}
			for _, amps := range []float64{-3, 0, 0.1, 5} {
				one := w.After(start, amps, 600)
				if sum := one.AvailableAh + one.BoundAh; math.Abs(sum-(7-amps/6)) > 1e-12 {
					t.Errorf("c=%g k'=%g at %g A: %.15f Ah left, want %.15f", c, kPrime, amps, sum, 7-amps/6)
				}
				many := start
				for range 60 {
					many = w.After(many, amps, 10)
				}
				if math.Abs(many.AvailableAh-one.AvailableAh) > 1e-9 {
					t.Errorf("c=%g k'=%g at %g A: one step gives %.12f, sixty give %.12f", c, kPrime, amps, one.AvailableAh, many.AvailableAh)
				}
			}
			if most := w.MostA(start, 600); most > 0 {
				if end := w.After(start, most, 600); math.Abs(end.AvailableAh) > 1e-9 {
					t.Errorf("c=%g k'=%g: the greatest current leaves %g Ah", c, kPrime, end.AvailableAh)
				}
			}
			if most := w.MostChargeA(start, 600); most > 0 {
				if end := w.After(start, -most, 600); math.Abs(end.AvailableAh-10*c) > 1e-9 {
					t.Errorf("c=%g k'=%g: the greatest charging current fills to %g of %g Ah", c, kPrime, end.AvailableAh, 10*c)
				}
			}
		}
	}
}

func TestPeukertWithReferenceHours(t *testing.T) {
	// Algebra of t = H (C/(I H))^k for 100 Ah over 20 h, k = 1.2.
	p := battery.Peukert{CapacityAh: 100, Hours: 20, Exponent: 1.2}
	for amps, hours := range map[float64]float64{5: 20.000, 10: 8.7055, 20: 3.7893} {
		if got := p.LastsH(amps); math.Abs(got-hours) > 1e-3 {
			t.Errorf("%g A: %.4f h, want %.4f", amps, got, hours)
		}
		if got := math.Pow(amps, 1.2) * p.LastsH(amps); math.Abs(got-137.973) > 1e-3 {
			t.Errorf("%g A: I^k t = %.3f, want 137.973", amps, got)
		}
	}
	back := battery.PeukertFromTwo(5, 20, 20, p.LastsH(20))
	if math.Abs(back.Exponent-1.2) > 1e-12 || math.Abs(back.CapacityAh-100) > 1e-9 {
		t.Errorf("from two runs: %+v", back)
	}
}

// electrotechnik.net, "Peukert law and discharge of lead acid batteries":
// 100 Ah at one ampere, k = 1.2, 5 A: 14.5 h. It is wrong for a battery whose
// 100 Ah are a 20 h rating, which lasts 20 h there.
func TestNaivePeukertIsKeptApart(t *testing.T) {
	if got := battery.PeukertOneAmpereH(100, 1.2, 5); math.Abs(got-14.4956) > 1e-3 {
		t.Errorf("naive form: %.4f h, want 14.4956", got)
	}
	if rated := (battery.Peukert{CapacityAh: 100, Hours: 20, Exponent: 1.2}).LastsH(5); math.Abs(rated-20) > 1e-9 {
		t.Errorf("reference-hour form: %.4f h at the rated current, want 20", rated)
	}
}
