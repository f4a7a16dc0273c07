package wiring_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

var inf = math.Inf(1)

func TestFuseOpensWithinItsGates(t *testing.T) {
	// Makers' sheets to ISO 8820-3: type C 135/160/200/350/600 percent, type E
	// 135/200/350/600 percent, at 23 degC; exact at the gates.
	for _, c := range []struct {
		form             string
		percent          float64
		earliest, latest float64
	}{
		{"small blade", 135, 0.75, 600},
		{"small blade", 160, 0.25, 50},
		{"small blade", 200, 0.15, 5},
		{"small blade", 350, 0.08, 0.5},
		{"large blade", 135, 60, 1800},
		{"large blade", 200, 2, 50},
		{"large blade", 350, 0.2, 7},
		{"large blade", 600, 0.04, 1},
	} {
		curve := fuseOf(t, c.form, 30).At(23)
		band := curve.Opens(30 * c.percent / 100)
		near(t, c.form+" earliest", band.EarliestS, c.earliest, 1e-9*c.earliest)
		near(t, c.form+" latest", band.LatestS, c.latest, 1e-6*c.latest)
	}
	// 600 percent of a small blade: within 0.15 s, no earliest time printed.
	small := fuseOf(t, "small blade", 30).At(23)
	band := small.Opens(180)
	near(t, "latest at 600 percent", band.LatestS, 0.15, 1e-6)
	if band.EarliestS <= 0 || band.EarliestS > 0.08 {
		t.Errorf("earliest at 600 percent %g s", band.EarliestS)
	}
	// 100 percent must hold for 100 h.
	if band := small.Opens(30); band != (wiring.Band{EarliestS: inf, LatestS: inf}) {
		t.Errorf("100 percent: %+v", band)
	}
	if band := small.Opens(33); band.EarliestS < 600 || !math.IsInf(band.LatestS, 1) {
		t.Errorf("110 percent: %+v, want long and never by force", band)
	}
	near(t, "holds", small.HoldsA(), 30, 1e-9)
	near(t, "must open", small.MustOpenA(), 40.5, 1e-9)
}

func TestBlockedMotorMayLeaveAFuseSeconds(t *testing.T) {
	// 30 A small blade, 84 A blocked motor (280 percent): anything from about
	// 0.08 to 5 s; 40 A large blade, the same motor (210 percent): up to about 50 s.
	band := fuseOf(t, "small blade", 30).At(23)
	small := band.Opens(84)
	if small.EarliestS < 0.08 || small.EarliestS > 0.15 || small.LatestS < 0.5 || small.LatestS > 5 {
		t.Errorf("30 A small blade at 84 A: %+v", small)
	}
	band = fuseOf(t, "large blade", 40).At(23)
	large := band.Opens(84)
	if large.LatestS > 50 || large.LatestS < 35 {
		t.Errorf("40 A large blade at 84 A: %+v", large)
	}
}

func TestHeatReRatesTheFuse(t *testing.T) {
	// Maker's sheet, large blade 40 A: 34 A at 65, 30 at 85, 25 at 110, 22 at 125 degC.
	f := fuseOf(t, "large blade", 40)
	for ambient, amps := range map[float64]float64{23: 40, 65: 34, 85: 30, 110: 25, 125: 22} {
		near(t, "carries", f.CarriesA(ambient), amps, 1e-9)
	}
	// The gates move with it: 200 percent at 85 degC is 60 A.
	curve := f.At(85)
	near(t, "latest at 60 A, 85 degC", curve.Opens(60).LatestS, 50, 1e-6)
}

func TestInterpolationIsStraightOnLogarithmicAxes(t *testing.T) {
	// Halfway between 200 and 350 percent on the logarithmic axis, both times
	// are the geometric means of the gates.
	curve := fuseOf(t, "large blade", 10).At(23)
	band := curve.Opens(10 * math.Sqrt(2*3.5))
	near(t, "earliest", band.EarliestS, math.Sqrt(2*0.2), 1e-9)
	near(t, "latest", band.LatestS, math.Sqrt(50*7), 1e-6)
}

func TestMoreCurrentNeverOpensLaterAndHeatNeverHelps(t *testing.T) {
	for _, form := range tables.Builtin().FuseForms() {
		f := fuseOf(t, form, 20)
		lastHot := inf
		for _, ambient := range []float64{-20, 0, 23, 40, 65, 85, 110, 125, 150} {
			if carries := f.CarriesA(ambient); carries > lastHot || carries <= 0 {
				t.Errorf("%s at %g degC carries %g A, cooler %g", form, ambient, carries, lastHot)
			} else {
				lastHot = carries
			}
			curve := f.At(ambient)
			last := wiring.Band{EarliestS: inf, LatestS: inf}
			for amps := 1.0; amps < 20000; amps *= 1.01 {
				band := curve.Opens(amps)
				if band.EarliestS > last.EarliestS || band.LatestS > last.LatestS*(1+1e-12) || band.EarliestS > band.LatestS || band.EarliestS < 0 || math.IsNaN(band.LatestS) {
					t.Fatalf("%s at %g degC, %g A: %+v after %+v", form, ambient, amps, band, last)
				}
				last = band
			}
			if last.LatestS > 0.02+1e-9 && !f.Form().Breaker && form != "glass-tube" {
				t.Errorf("%s: still %g s at 20 kA", form, last.LatestS)
			}
		}
	}
}

func TestNoClearingTimeUnderTenMillisecondsIsCredited(t *testing.T) {
	curve := fuseOf(t, "small blade", 10).At(23)
	near(t, "latest at 5 kA", curve.Opens(5000).LatestS, 0.01, 0)
	// Above the last gate the I2t stays that of the gate, here 60 A for 0.15 s.
	near(t, "I2t at 120 A", 120*120*curve.Opens(120).LatestS, 60*60*0.15, 1e-6)
}

func TestEarliestTimeFallsWithTheCubeWhereHeatStillEscapes(t *testing.T) {
	// The breaker's highest gate is 10 to 60 s at 200 percent; own continuation.
	curve := fuseOf(t, "auto-reset breaker", 10).At(25)
	near(t, "earliest at 400 percent", curve.Opens(40).EarliestS, 10.0/8, 1e-9)
	near(t, "latest at 400 percent", curve.Opens(40).LatestS, 60.0/4, 1e-9)
	// A small blade's is adiabatic: 0.08 s at 350 percent, then constant I2t.
	small := fuseOf(t, "small blade", 10).At(23)
	near(t, "earliest at 700 percent", small.Opens(70).EarliestS, 0.08/4, 1e-9)
}

func TestAFuseOpensWhicheverWayTheCurrentFlows(t *testing.T) {
	curve := fuseOf(t, "small blade", 10).At(23)
	for _, amps := range []float64{0, 5, 11, 20, 60, 1000, inf} {
		if there, back := curve.Opens(amps), curve.Opens(-amps); there != back {
			t.Errorf("%g A: %+v there and %+v back", amps, there, back)
		}
	}
	if band := curve.Opens(0); band != (wiring.Band{EarliestS: inf, LatestS: inf}) {
		t.Errorf("no current: %+v", band)
	}
}

// Nobody knows when a current that is no number opens a fuse, so it may have.
func TestACurrentThatIsNoNumberOpensAFuseNobodyKnowsWhen(t *testing.T) {
	for name, band := range map[string]wiring.Band{
		"no current":      fuseOf(t, "small blade", 10).At(23).Opens(math.NaN()),
		"no surroundings": fuseOf(t, "small blade", 10).At(math.NaN()).Opens(5),
	} {
		if !math.IsNaN(band.EarliestS) || !math.IsNaN(band.LatestS) {
			t.Errorf("%s: %+v", name, band)
		}
	}
	curve := fuseOf(t, "small blade", 10).At(23)
	var s wiring.FuseState
	s.Step(&curve, 5, 1)
	if s.MayHaveOpened() {
		t.Error("half of its rating may have opened it")
	}
	s.Step(&curve, math.NaN(), 1)
	s.Step(&curve, 5, 1)
	if !s.MayHaveOpened() || s.MustHaveOpened() {
		t.Errorf("may: %v, must: %v", s.MayHaveOpened(), s.MustHaveOpened())
	}
}

func TestBadFusesAreErrors(t *testing.T) {
	row, err := tables.Builtin().Fuse("small blade")
	if err != nil {
		t.Fatal(err)
	}
	for name, spec := range map[string]wiring.FuseSpec{
		"no form":           {RatingA: 10},
		"no rating":         {Form: row},
		"NaN rating":        {Form: row, RatingA: math.NaN()},
		"huge rating":       {Form: row, RatingA: 1e6},
		"negative distance": {Form: row, RatingA: 10, DistanceM: new(-1.0)},
		"infinite distance": {Form: row, RatingA: 10, DistanceM: new(inf)},
		"NaN distance":      {Form: row, RatingA: 10, DistanceM: new(math.NaN())},
		"negative holder":   {Form: row, RatingA: 10, HolderA: -1},
		"NaN voltage":       {Form: row, RatingA: 10, VoltageV: math.NaN()},
	} {
		if _, err := wiring.NewFuse(spec); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func TestSteadyCurrentUsesTheFuseUpAtItsTimes(t *testing.T) {
	curve := fuseOf(t, "small blade", 30).At(23)
	band := curve.Opens(60) // 0.15 to 5 s
	var s wiring.FuseState
	const dt = 0.001
	mayAt, mustAt := 0.0, 0.0
	for step := 1; mustAt == 0 && step < 20000; step++ {
		s.Step(&curve, 60, dt)
		if mayAt == 0 && s.MayHaveOpened() {
			mayAt = float64(step) * dt
		}
		if s.MustHaveOpened() {
			mustAt = float64(step) * dt
		}
	}
	near(t, "may have opened at", mayAt, band.EarliestS, 2*dt)
	near(t, "must have opened at", mustAt, band.LatestS, 2*dt)
	near(t, "effective current", s.EffectiveA(), 60, 1e-6)
}

func TestStepSizeDoesNotMatterToTheFuse(t *testing.T) {
	curve := fuseOf(t, "large blade", 30).At(40)
	duty := []struct{ amps, seconds float64 }{{80, 1}, {20, 3}, {60, 2}, {10, 4}, {150, 0.2}}
	follow := func(parts int) (s wiring.FuseState) {
		for _, d := range duty {
			for range parts {
				s.Step(&curve, d.amps, d.seconds/float64(parts))
			}
		}
		return s
	}
	coarse, fine := follow(1), follow(1000)
	near(t, "early", coarse.Early(), fine.Early(), 1e-9)
	near(t, "late", coarse.Late(), fine.Late(), 1e-9)
	near(t, "effective", coarse.EffectiveA(), fine.EffectiveA(), 1e-9)
}

func TestPulsesTenSecondsApartCountAlone(t *testing.T) {
	// Fuse maker's guide: pulses at least 10 s apart; then 5 percent are left.
	curve := fuseOf(t, "small blade", 30).At(23)
	var s wiring.FuseState
	s.Step(&curve, 75, 0.05)
	before := s.Early()
	s.Step(&curve, 10, 10)
	near(t, "left after 10 s", s.Early()/before, 0.05, 0.001)
	// A hundred such launches do not add up ...
	for range 100 {
		s.Step(&curve, 75, 0.05)
		s.Step(&curve, 10, 10)
	}
	if s.MayHaveOpened() {
		t.Errorf("launches 10 s apart add up to %g", s.Early())
	}
	// ... but launches in quick succession do.
	for range 10 {
		s.Step(&curve, 75, 0.05)
		s.Step(&curve, 10, 0.1)
	}
	if !s.MayHaveOpened() || s.MustHaveOpened() {
		t.Errorf("launches without rest: early %g, late %g", s.Early(), s.Late())
	}
	s.Reset()
	if s != (wiring.FuseState{}) || s.EffectiveA() != 0 {
		t.Error("a fuse that was reset is not cold")
	}
}

// UL 248-14: at 200 % it opens within two minutes, and at 135 % within the hour. Heat goes
// with the square of the current, so pauses of ten seconds do not save it, and what it
// holds in the mean it holds.
func TestPausesDoNotSaveAFuseThatMustOpenInTheMean(t *testing.T) {
	for _, tt := range []struct {
		form               string
		rating, amps       float64
		fromMin, withinMin float64 // 0 = it need not open within two hours
	}{
		{"glass", 3, 6.9, 0.5, 5}, // 5.8 A in the mean
		{"glass", 3, 5.0, 5, 60},  // 4.2 A, 141 %
		{"glass", 3, 4.6, 0, 0},   // 3.9 A, 130 %
		{"glass", 10, 6.9, 0, 0},
		{"small blade", 3, 6.9, 0, 0.5},
	} {
		curve := fuseOf(t, tt.form, tt.rating).At(25)
		var s wiring.FuseState
		openedMin := math.Inf(1)
		for clock := 0.0; clock < 120*60 && math.IsInf(openedMin, 1); clock += 35 {
			for i := range 25 {
				if s.Step(&curve, tt.amps, 1); s.MustHaveOpened() {
					openedMin = (clock + float64(i)) / 60
					break
				}
			}
			s.Step(&curve, 0, 10)
		}
		switch {
		case tt.withinMin == 0 && !math.IsInf(openedMin, 1):
			t.Errorf("%s of %g A at %g A: must have opened after %.1f min", tt.form, tt.rating, tt.amps, openedMin)
		case tt.withinMin > 0 && (openedMin < tt.fromMin || openedMin > tt.withinMin):
			t.Errorf("%s of %g A at %g A: must have opened after %.1f min, want %g to %g", tt.form, tt.rating, tt.amps, openedMin, tt.fromMin, tt.withinMin)
		}
	}
}

func TestEarlyIsNeverBehindLate(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		forms := tables.Builtin().FuseForms()
		curve := fuseOf(t, forms[random.IntN(len(forms))], 20).At(random.Float64() * 80)
		var s wiring.FuseState
		for range 100 {
			s.Step(&curve, random.Float64()*100, random.Float64())
			if s.Early() < s.Late() || s.Late() < 0 || math.IsNaN(s.Early()) {
				t.Fatalf("early %g, late %g", s.Early(), s.Late())
			}
		}
	}
}

func TestEffectiveCurrentIsTheRootMeanSquare(t *testing.T) {
	curve := fuseOf(t, "small blade", 30).At(23)
	var s wiring.FuseState
	if s.EffectiveA() != 0 {
		t.Error("current before the first step")
	}
	s.Step(&curve, 40, 1)
	s.Step(&curve, 0, 3)
	near(t, "effective", s.EffectiveA(), 20, 1e-12)
}

func TestPulseLifeFollowsTheGuide(t *testing.T) {
	// 25 A small blade: melting 1000 A2s (maker's sheet); 22, 29, 38, 48 percent
	// for 100 000 ... 100 pulses (fuse maker's guide).
	f := fuseOf(t, "small blade", 25)
	for launches, share := range map[float64]float64{100: 0.48, 1000: 0.38, 10000: 0.29, 100000: 0.22} {
		life := f.PulseLife(tables.Builtin(), wiring.Season{I2tA2s: 1000 * share, Launches: launches})
		near(t, "share", life.Share, share, 1e-12)
		near(t, "allowed", life.Allowed, share, 1e-12)
		near(t, "launches", life.LaunchesFor, launches, 1e-6*launches)
		if !life.Known || life.MeltingA2s != 1000 {
			t.Errorf("%+v", life)
		}
	}
	if life := fuseOf(t, "glass", 10).PulseLife(tables.Builtin(), wiring.Season{I2tA2s: 1, Launches: 1}); life.Known || life.LaunchesFor != 0 {
		t.Errorf("glass tube: %+v, nobody published its melting I2t", life)
	}
}

// ISO 16750-2 (from memory): 12 V systems are supplied with up to 16 V, 24 V ones with
// up to 32 V.
func TestTheVoltsPrintedOnABreakerAreNominal(t *testing.T) {
	for _, c := range []struct {
		form          string
		printed, want float64
	}{
		{"auto-reset breaker", 0, 16},
		{"auto-reset breaker", 12, 16},
		{"auto-reset breaker", 24, 32},
		{"auto-reset breaker", 30, 30},
		{"small blade", 0, 32},
		{"small blade", 12, 12},
	} {
		form, err := tables.Builtin().Fuse(c.form)
		if err != nil {
			t.Fatal(err)
		}
		f, err := wiring.NewFuse(wiring.FuseSpec{Form: form, RatingA: 20, VoltageV: c.printed})
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.form, f.VoltageV(), c.want, 0)
	}
}
