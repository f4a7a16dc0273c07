package tables_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/tables"
	"github.com/google/go-cmp/cmp"
)

func fuse(t *testing.T, form string) tables.Fuse {
	t.Helper()
	f, err := tables.Builtin().Fuse(form)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestFuseGatesAreThePublishedOnes(t *testing.T) {
	const never = 0
	for form, want := range map[string][]tables.Gate{
		// Maker's sheet to ISO 8820-3 type C / SAE J1284, 2022; 160 percent from its 10 A member.
		"small blade": {{1, 360000, never}, {1.35, 0.75, 600}, {1.6, 0.25, 50}, {2, 0.15, 5}, {3.5, 0.08, 0.5}, {6, 0, 0.15}},
		// Maker's sheet to ISO 8820-3:2002 type E / SAE J1888, 2025.
		"large blade": {{1, 360000, never}, {1.35, 60, 1800}, {2, 2, 50}, {3.5, 0.2, 7}, {6, 0.04, 1}},
		// UL 248-14: 110 percent >= 4 h, 135 <= 60 min, 200 <= 2 min.
		"glass tube": {{1.1, 4 * 3600, never}, {1.35, 0, 3600}, {2, 0, 120}},
		// IEC 60127-2 F.
		"quick glass": {{1.5, 3600, never}, {2.1, 0, 1800}, {2.75, 0.05, 2}, {4, 0.01, 0.3}, {10, 0, 0.02}},
	} {
		if diff := cmp.Diff(want, fuse(t, form).Gates); diff != "" {
			t.Errorf("%s gates (-want +got):\n%s", form, diff)
		}
	}
}

func TestFuseResistanceAndMeltingAreThePublishedOnes(t *testing.T) {
	small, large := fuse(t, "small blade"), fuse(t, "large blade")
	// Makers' sheets, cold, 25 degC; exact at the printed ratings.
	for rating, ohm := range map[float64]float64{10: 7.70e-3, 20: 3.38e-3, 25: 2.52e-3, 40: 1.44e-3} {
		got, ok := small.ResistanceOhm(rating)
		near(t, "small blade", got, ohm, 1e-12)
		if !ok {
			t.Errorf("small blade %g A: not known", rating)
		}
	}
	for rating, ohm := range map[float64]float64{30: 1.9e-3, 35: 1.7e-3, 40: 1.4e-3} {
		got, _ := large.ResistanceOhm(rating)
		near(t, "large blade", got, ohm, 1e-12)
	}
	for rating, a2s := range map[float64]float64{25: 1000, 40: 3300} {
		got, _ := small.MeltingI2t(rating)
		near(t, "small blade melting", got, a2s, 1e-9)
	}
	for rating, a2s := range map[float64]float64{30: 4100, 35: 6000, 40: 8500} {
		got, _ := large.MeltingI2t(rating)
		near(t, "large blade melting", got, a2s, 1e-9)
	}
	lastOhm, lastMelt := math.Inf(1), 0.0
	for rating := 0.5; rating < 200; rating *= 1.1 {
		ohm, _ := small.ResistanceOhm(rating)
		melt, _ := small.MeltingI2t(rating)
		if ohm >= lastOhm || melt <= lastMelt {
			t.Errorf("%g A: %g Ohm, %g A2s: want falling and rising with the rating", rating, ohm, melt)
		}
		lastOhm, lastMelt = ohm, melt
	}
	if _, ok := fuse(t, "glass").ResistanceOhm(10); ok {
		t.Error("the table has a resistance for glass tubes that nobody published")
	}
	if _, ok := small.MeltingI2t(math.NaN()); ok {
		t.Error("a fuse of NaN amps melts")
	}
}

func TestFuseHeatShareIsThePublishedOne(t *testing.T) {
	// Maker's sheet, large blade 40 A: 40 A to 20 degC, 34 at 65, 30 at 85, 25
	// at 110, 22 at 125 degC; exact, but that the 40 A are taken for 23 degC, the
	// temperature of the sheet's opening times (1 percent at 20 degC).
	large := fuse(t, "large blade")
	atTwenty, _ := large.HeatShare(20)
	near(t, "40 A fuse at 20 degC", 40*atTwenty, 40, 0.5)
	for ambient, amps := range map[float64]float64{23: 40, 65: 34, 85: 30, 110: 25, 125: 22} {
		share, ok := large.HeatShare(ambient)
		near(t, "40 A fuse", 40*share, amps, 1e-9)
		if !ok {
			t.Error("no heat curve")
		}
	}
	// Slope 0.33 percent per K at 65 degC, 0.43 at 125 degC over 20 degC (computed).
	atSixtyFive, _ := large.HeatShare(65)
	atHundredTwentyFive, _ := large.HeatShare(125)
	near(t, "per K to 65 degC", (1-atSixtyFive)/45, 0.0033, 0.00005)
	near(t, "per K to 125 degC", (1-atHundredTwentyFive)/105, 0.0043, 0.00005)
	if share, ok := (tables.Fuse{}).HeatShare(80); share != 1 || ok {
		t.Errorf("no curve: %g, %v", share, ok)
	}
	last := math.Inf(1)
	for ambient := -60.0; ambient < 400; ambient += 7 {
		share, _ := large.HeatShare(ambient)
		if share > last || share <= 0 {
			t.Errorf("%g degC: share %g after %g", ambient, share, last)
		}
		last = share
	}
}

func TestPulseSharesAreThePublishedOnes(t *testing.T) {
	// Fuse maker's selection guide, 2017; exact.
	for pulses, share := range map[float64]float64{100: 0.48, 1000: 0.38, 10000: 0.29, 100000: 0.22} {
		got, source := tables.Builtin().PulseShare(pulses)
		near(t, "share", got, share, 1e-12)
		near(t, "pulses", tables.Builtin().PulsesFor(share), pulses, 1e-6*pulses)
		if source != "pulse-guide" {
			t.Errorf("source %q", source)
		}
	}
	for pulses, want := range map[float64]float64{1: 0.48, 0: 0.48, 1e6: 0, math.Inf(1): 0} {
		if got, _ := tables.Builtin().PulseShare(pulses); got != want {
			t.Errorf("%g pulses: %g, want %g", pulses, got, want)
		}
	}
	for share, want := range map[float64]float64{0.5: 0, math.Inf(1): 0, 0.1: 1e5, 0: 1e5} {
		if got := tables.Builtin().PulsesFor(share); got != want {
			t.Errorf("share %g: %g pulses, want %g", share, got, want)
		}
	}
}

func TestFuseFormsAndBounds(t *testing.T) {
	want := []string{"auto-reset-breaker", "glass-tube", "large-blade", "quick-glass-tube", "small-blade"}
	if diff := cmp.Diff(want, tables.Builtin().FuseForms()); diff != "" {
		t.Errorf("forms (-want +got):\n%s", diff)
	}
	b := fuse(t, "Auto-Reset Breaker")
	if !b.Breaker || tables.Builtin().Firm(b.GatesSource) {
		t.Errorf("breaker %+v: want one that closes again, its times remembered", b)
	}
	small, large := fuse(t, "small blade"), fuse(t, "large blade")
	// ISO 8820-3 scope: 32 or 58 V, breaking capacity 1000 A; holders of makers' sheets.
	for _, f := range []tables.Fuse{small, large} {
		if diff := cmp.Diff([]float64{32, 58}, f.VoltagesV); diff != "" || f.BreakingA != 1000 {
			t.Errorf("%s: %v V, %g A", f.Form, f.VoltagesV, f.BreakingA)
		}
	}
	if small.HolderA != 20 || small.HolderMostA != 30 || large.HolderA != 45 || large.HolderMostA != 60 || large.HolderC != 80 {
		t.Error("holder limits are not those of the makers' sheets")
	}
	if !slices.Contains(small.RatingsA, 40) || slices.Contains(small.RatingsA, 50) || !slices.Contains(large.RatingsA, 80) {
		t.Error("standard ratings")
	}
	if _, err := tables.Builtin().Fuse("banana"); !errors.Is(err, tables.ErrNotFound) || !strings.Contains(err.Error(), "small blade") {
		t.Errorf("unknown form: %v", err)
	}
}

func TestJointsHaveTheirPublishedLimits(t *testing.T) {
	// IEC 60947-7-1: 24, 32, 41, 57 A for 2.5, 4, 6, 10 mm2, drop at most 3.2 mV
	// at a tenth of the current, so at most 3.2 mV / (0.1 I).
	for word, amps := range map[string]float64{
		"terminal block 2.5 mm2": 24, "terminal block 4 mm2": 32, "terminal block 6 mm2": 41, "terminal block 10 mm2": 57,
	} {
		j, err := tables.Builtin().Joint(word)
		if err != nil || j.SteadyA.High != amps {
			t.Errorf("%s: %+v, %v", word, j, err)
		}
		near(t, word, j.NewOhm.High, tables.Builtin().Figure(tables.TerminalTestDrop).Likely/(0.1*amps), 0.01e-3)
	}
	// Heat at 30 A of 1, 3, 10 mOhm: 0.9, 2.7, 9 W (computed).
	tab, _ := tables.Builtin().Joint("Crimped-Tabs")
	near(t, "new tab at 30 A", 900*tab.NewOhm.High, 2.7, 1e-9)
	near(t, "aged tab at 30 A", 900*tab.AgedOhm.Likely, 9, 1e-9)
	bullet, _ := tables.Builtin().Joint("3.5 mm bullet")
	near(t, "bullet", bullet.NewOhm.Likely, 0.55e-3, 0)
	if tab.Source == "" || tables.Builtin().Firm(tab.SteadyA.Source) {
		t.Error("the current of a tab is practice, not a limit that was read")
	}
	if _, err := tables.Builtin().Joint("duct tape"); !errors.Is(err, tables.ErrNotFound) {
		t.Errorf("duct tape: %v", err)
	}
}

func TestMotorCanDoesNotFixTheWinding(t *testing.T) {
	// Three 12 V motors of 775 size in the open robotics library: stall 18, 97,
	// 134 A, 5800, 13050, 18730 rpm; winding 90 to 667 mOhm.
	m, err := tables.Builtin().MotorCan("RS-775")
	if err != nil {
		t.Fatal(err)
	}
	for _, stall := range []float64{18, 97, 134} {
		if stall < m.StallA.Low || stall > m.StallA.High {
			t.Errorf("stall %g A lies outside %+v", stall, m.StallA)
		}
	}
	for _, rpm := range []float64{5800, 13050, 18730} {
		if rpm < m.NoLoadRPM.Low || rpm > m.NoLoadRPM.High {
			t.Errorf("%g rpm lies outside %+v", rpm, m.NoLoadRPM)
		}
	}
	// The 550 of the same library: 19000 rpm, 0.4 A, 84 A.
	m, _ = tables.Builtin().MotorCan("550")
	if m.StallA.High < 84 || m.NoLoadRPM.High < 19000 || m.NoLoadA.Low > 0.4 {
		t.Errorf("550: %+v", m)
	}
}

func TestMotorRangesHangTogether(t *testing.T) {
	for _, m := range tables.Builtin().MotorCans() {
		// Blocked current is volts over resistance; the ends of the ranges agree
		// to 15 percent.
		near(t, m.Name+" least stall", m.ClassV/m.WindingOhm.High, m.StallA.Low, 0.15*m.StallA.Low)
		near(t, m.Name+" most stall", m.ClassV/m.WindingOhm.Low, m.StallA.High, 0.35*m.StallA.High)
		near(t, m.Name+" likely stall", m.ClassV/m.WindingOhm.Likely, m.StallA.Likely, 0.15*m.StallA.Likely)
		if m.DiameterMM == 0 || m.SizeSource == "" || !m.MassKG.Known() || !m.RotorKGM2.Known() || !m.AmbientKPerW.Known() {
			t.Errorf("%s lacks figures: %+v", m.Name, m)
		}
	}
	if _, err := tables.Builtin().MotorCan("999"); !errors.Is(err, tables.ErrNotFound) {
		t.Errorf("can 999: %v", err)
	}
}

func TestGroundFollowsTheCartMeasurements(t *testing.T) {
	// Al-Eisawi et al. 1999: c_l 2.2, 2.4, 3.3, 4.5 mm; wheel of 250 mm gives
	// 0.0176, 0.0192, 0.0264, 0.036 (1 percent).
	for word, want := range map[string]float64{"smooth concrete": 0.0176, "tile": 0.0192, "asphalt": 0.0264, "carpet": 0.036} {
		g, err := tables.Builtin().Ground(word)
		if err != nil {
			t.Fatal(err)
		}
		near(t, word, g.RollingCoefficient(0.125, false).Low, want, 0.01*want)
		near(t, word+", half the wheel", g.RollingCoefficient(0.0625, false).Low, 2*want, 0.02*want)
	}
}

func TestGroundIsFoundInAParentsWords(t *testing.T) {
	for word, want := range map[string]string{
		"Short Grass": "short grass", "short-grass": "short grass", "LAWN": "short grass", "lawns": "short grass",
		"grass": "short grass", "tiles": "tile", "Gravel": "gravel", "gravels": "gravel", "driveway": "asphalt",
		"packed_dirt": "packed dirt", "long   grasses": "long grass", "wood chip": "gravel", "paving stone": "asphalt",
	} {
		g, err := tables.Builtin().Ground(word)
		if err != nil || g.Name != want {
			t.Errorf("%q is %q, %v; want %q", word, g.Name, err, want)
		}
	}
	_, err := tables.Builtin().Ground("lava")
	if !errors.Is(err, tables.ErrNotFound) || !strings.Contains(err.Error(), "long grass") {
		t.Errorf("lava: %v; want the known words", err)
	}
}

func TestSoftGroundRollsHarderAndIsMarkedAsAnEstimate(t *testing.T) {
	for _, g := range tables.Builtin().Grounds() {
		if g.Loose == tables.Builtin().Firm(g.Source) {
			t.Errorf("%s: loose %v, firm %v", g.Name, g.Loose, tables.Builtin().Firm(g.Source))
		}
		if g.Loose {
			// Estimates are +-50 percent.
			near(t, g.Name+" low", g.Rolling.Low, 0.5*g.Rolling.Likely, 1e-6)
			near(t, g.Name+" high", g.Rolling.High, 1.5*g.Rolling.Likely, 1e-6)
		}
		if !(g.RubberRolling.Likely < g.Rolling.Likely) || g.GripHard.Likely > g.GripRubber.Likely {
			t.Errorf("%s: rubber should roll easier and grip better: %+v", g.Name, g)
		}
	}
}

// Smooth polyethylene sheet on sand: 17 to 18 degrees (Martin, Koerner and Whitty 1984, from
// memory). Wheels of it grip neither so little nor so much that this is left out, on paving
// and on a lawn; where a tread bites into the sod, not more than textured sheet of 30
// degrees.
func TestWhatPlasticWheelsGripHoldsWhatPlasticSheetDoes(t *testing.T) {
	tan := func(degrees float64) float64 { return math.Tan(degrees * math.Pi / 180) }
	for _, name := range []string{"smooth concrete", "asphalt", "short grass"} {
		g, err := tables.Builtin().Ground(name)
		if err != nil {
			t.Fatal(err)
		}
		if v := g.GripHard; v.Low > 0.8*tan(17) || v.High < 1.2*tan(18) || v.High > tan(30) {
			t.Errorf("%s: %g to %g", name, v.Low, v.High)
		}
	}
}

func TestVehicleClassesAndThermalClasses(t *testing.T) {
	// IEC 60085 classes and IEC 60034-1 rises over 40 degC; exact.
	for letter, want := range map[string][2]float64{"A": {105, 60}, "e": {120, 75}, "B": {130, 80}, "class F": {155, 105}, "H": {180, 125}, "N": {200, 0}} {
		c, err := tables.Builtin().ThermalClass(letter)
		if err != nil || c.LimitC != want[0] || c.RiseK != want[1] {
			t.Errorf("class %s: %+v, %v", letter, c, err)
		}
	}
	for _, c := range []struct {
		volts float64
		seats int
		want  string
	}{{6, 0, "6v-one-seat"}, {12, 0, "12v-one-seat"}, {12, 2, "12v-two-seat"}, {24, 2, "24v-two-seat"}, {18, 2, "24v-two-seat"}} {
		if got := tables.Builtin().VehicleClassFor(c.volts, c.seats); got.Name != c.want {
			t.Errorf("%g V, %d seats: %s, want %s", c.volts, c.seats, got.Name, c.want)
		}
	}
	tables.Builtin().VehicleClassFor(math.NaN(), -1) // must not panic
	for _, v := range tables.Builtin().VehicleClasses() {
		if _, err := tables.Builtin().MotorCan(v.Can); err != nil {
			t.Errorf("%s: %v", v.Name, err)
		}
		if tables.Builtin().Firm(v.Source) {
			t.Errorf("%s: trade figures pass for firm", v.Name)
		}
	}
	if v, err := tables.Builtin().VehicleClass("12 volt"); err != nil || v.Name != "12v-one-seat" {
		t.Errorf("12 volt: %+v, %v", v, err)
	}
	for _, want := range []struct {
		name  tables.FigureName
		value float64
	}{
		{tables.ToyVoltage, 24},          // ASTM F963 4.25.2
		{tables.ToyVoltageEU, 24},        // 2009/48/EC Annex II part IV
		{tables.BatterySurface, 71},      // ASTM F963 4.25.7
		{tables.ChildReaction, 0.465},    // Dev Med Child Neurol 26 (1984) 490
		{tables.DesignDeceleration, 3.4}, // AASHTO
		{tables.FuseShareOfAmpacity, 1.5},
		{tables.FuseReachBare, 0.178},
		{tables.FuseReachSheathed, 1.016}, // 33 CFR 183.455
	} {
		if got := tables.Builtin().Figure(want.name); got.Likely != want.value || !tables.Builtin().Firm(got.Source) {
			t.Errorf("%s = %+v, want %g from a source that was read", want.name, got, want.value)
		}
	}
}

func TestCautionsName(t *testing.T) {
	for _, c := range tables.Builtin().Cautions() {
		if c.Text == "" || !tables.Builtin().Firm(c.Source) {
			t.Errorf("caution %+v", c)
		}
		if got, err := tables.Builtin().Caution(c.Name); err != nil || got != c {
			t.Errorf("%s: %+v, %v", c.Name, got, err)
		}
	}
}

// A ground is found by the words of a home, with an article or without.
func TestAGroundIsFoundByWordsOfAHome(t *testing.T) {
	for word, want := range map[string]string{
		"patio": "asphalt", "street or paving": "asphalt", "the driveway": "asphalt", "a smooth floor": "smooth concrete", "Laminate": "smooth concrete",
		"my back yard": "short grass", "the garden": "short grass", "dirt track": "packed dirt", "gravel path": "gravel", "The Lawn": "short grass",
	} {
		if g, err := tables.Builtin().Ground(word); err != nil || g.Name != want {
			t.Errorf("%q is %q, want %q (%v)", word, g.Name, want, err)
		}
	}
	for _, word := range []string{"the", "the moon", "a", "snow"} {
		if g, err := tables.Builtin().Ground(word); err == nil {
			t.Errorf("%q is %q", word, g.Name)
		}
	}
}
