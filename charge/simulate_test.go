package charge_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
)

func simulate(t testing.TB, c charge.Case) charge.Outcome {
	t.Helper()
	out, err := charge.Simulate(c)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// within fails unless got lies within share of want.
func within(t *testing.T, what string, got, want, share float64, why string) {
	t.Helper()
	if math.Abs(got-want) > share*math.Abs(want) {
		t.Errorf("%s: %.4g, want %.4g within %g %% (%s)", what, got, want, share*100, why)
	}
}

// Kollmeyer, Panasonic 18650PF Li-ion Battery Data (Mendeley Data, 2018, doi
// 10.17632/wykht8y7tg.1, CC BY 4.0): a 2.9 Ah cell rested at 3.22 V is charged
// at 2.9 A to 4.2 V and 50 mA: 48.0 min and 2.318 Ah at constant current, 51.8
// min at constant voltage, 2.735 Ah in all, 85 % of it at constant current.
// Its measured resistance after 1 s is 30.8 mOhm at half charge (same set).
func TestConstantCurrentShareAgreesWithAMeasuredCharge(t *testing.T) {
	m := model(t, battery.Spec{Profile: profile(t, "li-ion"), CellsInSeries: 1, CapacityAh: 2.9, ResistanceOhm: 0.0308, MassKg: 0.0465})
	c := charge.Case{Pack: m, Start: m.StateAt(chargeAtRest(m, 3.22), 26.5), AmbientC: 25, CurrentA: 2.9, EndV: 4.2, EndA: 0.05, Stops: charge.StopsByItself}
	out := simulate(t, c)
	within(t, "minutes at constant current", out.CCHours*60, 48.0, 0.05, "measured")
	within(t, "Ah at constant current", out.CCAh, 2.318, 0.04, "measured")
	within(t, "Ah in all", out.InAh, 2.735, 0.02, "measured")
	within(t, "share at constant current", out.CCAh/out.InAh, 0.85, 0.04, "measured")
}

// Measured charges of the open sets, each from rested volts at constant current
// to 4.2 V and until the current has fallen to 5 % of the capacity per hour (or,
// where the log ends before, to where it ends): hours to 80 % of what went in and
// to that end. Kollmeyer, Panasonic 18650PF, 2018, CC BY 4.0; Raj, Path Dependent
// Battery Degradation Dataset Part 1, 2020, MIT; PyBOP LG_M50_ECM, BSD 3-Clause;
// ARTS-Lab, Dataset Cycling with Strain Monitoring for Samsung 30Q Cell,
// Dataset-1, CC BY-SA 4.0.
func TestMeasuredLithiumChargesTakeAsLongAsComputed(t *testing.T) {
	for _, tt := range []struct {
		name, member       string
		tempC, amps, endA  float64
		inAh, to80H, fullH float64
		source             string
	}{
		{"1C, 25 degC", "energy-18650-2ah9", 26.5, 2.90, 0.145, 2.76, 0.75, 1.42, "Kollmeyer 2018"},
		{"0.5C, 24 degC", "energy-18650-3ah", 24.6, 1.50, 0.151, 2.91, 1.57, 2.33, "Raj 2020"},
		{"0.33C, 25 degC", "energy-21700-5ah", 24.6, 1.67, 0.250, 4.74, 2.27, 3.11, "PyBOP LG_M50_ECM"},
		{"0.33C, 10 degC", "energy-21700-5ah", 10.0, 1.67, 0.250, 4.52, 2.18, 3.15, "PyBOP LG_M50_ECM"},
		{"0.33C, 0 degC", "energy-21700-5ah", -0.4, 1.67, 0.250, 4.29, 2.07, 3.28, "PyBOP LG_M50_ECM"},
		{"0.5C, 45 degC", "energy-21700-5ah", 43.8, 2.50, 0.249, 4.98, 1.60, 2.29, "PyBOP LG_M50_ECM"},
		{"0.67C, 45 degC", "energy-21700-5ah", 42.8, 3.33, 0.250, 4.88, 1.18, 1.87, "PyBOP LG_M50_ECM"},
	} {
		member, ok := chemistry.Builtin().Member(tt.member)
		if !ok {
			t.Fatal(tt.member)
		}
		m := model(t, battery.Spec{Profile: member.Profile, CellsInSeries: 1, CapacityAh: member.CellAh, MassKg: member.CellKg})
		start := m.StateAt(1-tt.inAh/m.FullAh(), tt.tempC)
		out := simulate(t, charge.Case{Pack: m, Start: start, AmbientC: tt.tempC, CurrentA: tt.amps, EndV: 4.2, EndA: tt.endA, Stops: charge.StopsByItself})
		within(t, tt.name+": hours to full", out.HoursToFull.LikelyH, tt.fullH, 0.15, tt.source)
		within(t, tt.name+": hours to 80 %", out.HoursTo80.LikelyH, tt.to80H, 0.10, tt.source)
	}
}

// A cell that was only measured while it was emptied resists near empty what no charge
// meets; the hours that makers print must not be stretched by a charge that stops there.
func TestThePlugIsNotLeftInForDaysWhereAFewHoursFillThePack(t *testing.T) {
	for _, name := range []string{"phosphate-18650-2ah", "phosphate-26650-2ah6", "phosphate-26650-3ah"} {
		member, ok := chemistry.Builtin().Member(name)
		if !ok {
			t.Fatal(name)
		}
		for _, from := range []float64{0.05, 0.1, 0.17} {
			for _, tempC := range []float64{9, 18} {
				m := model(t, battery.Spec{Profile: member.Profile, CellsInSeries: 8, CapacityAh: 10, ResistanceFactor: 1.3, OhmicFactor: 1})
				out := simulate(t, charge.Case{Pack: m, Start: m.StateAt(from, tempC), AmbientC: tempC, CurrentA: 3, EndV: 29.2, Stops: charge.StopsByItself})
				if out.UnplugH > 2.5*out.HoursToFull.LikelyH {
					t.Errorf("%s from %g at %g degC: full after %.1f h, unplugged after %.1f h", name, from, tempC, out.HoursToFull.LikelyH, out.UnplugH)
				}
			}
		}
	}
}

// The same for a power cell that ages. ARTS-Lab, Dataset Cycling with Strain
// Monitoring, cell C at cycle 100, A at 300, C at 660: what the first sample of a
// discharge shows had grown by 10, 38 and 93 %. The charger hunts: at constant
// voltage it swings between 4.19 and 4.21 V and the current with it by half an
// ampere, so the first dip below a twentieth of the capacity per hour, at which
// these logs were held to end, comes while 0.55, 0.88 and 0.44 A flow on average
// over the last six minutes. Computed down to the dip the hours were 18 to 38 %
// long; down to the current that flowed they are 6 to 13 % short.
func TestChargesOfAnAgeingCellAgreeOnceTheChargersHuntingIsSeen(t *testing.T) {
	member, ok := chemistry.Builtin().Member("power-18650-3ah-b")
	if !ok {
		t.Fatal("no member")
	}
	for _, tt := range []struct{ health, ohmic, inAh, amps, endA, to80H, fullH, tol float64 }{
		{0.956, 1.10, 2.77, 3.01, 0.55, 0.74, 1.13, 0.15},
		{0.857, 1.38, 2.47, 3.05, 0.88, 0.66, 0.98, 0.15},
		{0.70, 1.93, 1.99, 3.02, 0.44, 0.57, 1.05, 0.15}, // long past the age at which packs are given up
	} {
		m := model(t, battery.Spec{
			Profile: member.Profile, CellsInSeries: 1, CapacityAh: member.CellAh, MassKg: member.CellKg,
			Health: tt.health, ResistanceFactor: 1, OhmicFactor: tt.ohmic, Grown: tt.ohmic,
		})
		name := fmt.Sprintf("health %g", tt.health)
		out := simulate(t, charge.Case{Pack: m, Start: m.StateAt(1-tt.inAh/m.FullAh(), 21), AmbientC: 21, CurrentA: tt.amps, EndV: 4.2, EndA: tt.endA, Stops: charge.StopsByItself})
		within(t, name+": hours to full", out.HoursToFull.LikelyH, tt.fullH, tt.tol, "ARTS-Lab")
		within(t, name+": hours to 80 %", out.HoursTo80.LikelyH, tt.to80H, 0.15, "ARTS-Lab")
	}
}

// chargeAtRest returns the charge at which the pack rests at v.
func chargeAtRest(m *battery.Model, v float64) float64 {
	lo, hi := 0.0, 1.0
	for range 60 {
		mid := (lo + hi) / 2
		if m.RestedV(m.StateAt(mid, 25)) < v {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// ORNL and BatterySim, cell data of 2013 (equiv-circ-model, MIT): a 33 Ah
// manganese cell rested at 3.183 V is charged at 15.3 A to 4.2 V: 115.0 min and
// 29.309 Ah at constant current, 13.1 min at constant voltage, 30.349 Ah in
// all, 97 % at constant current. Rested volts and the resistance of 1.7 mOhm
// after 1 s from the same set; below a tenth of the charge they were not
// measured and are drawn on to the rested volts before the charge.
func TestConstantCurrentShareAgreesWithASecondMeasuredCharge(t *testing.T) {
	p := profile(t, "li-ion")
	p.Rest.VoltsAt = chemistry.Curve{
		X: []float64{0, 0.10, 0.15, 0.20, 0.25, 0.30, 0.40, 0.50, 0.60, 0.70, 0.80, 0.90, 0.95, 1},
		Y: []float64{3.18, 3.539, 3.634, 3.726, 3.765, 3.804, 3.870, 3.910, 3.950, 3.985, 4.048, 4.087, 4.134, 4.182},
	}
	m := model(t, battery.Spec{Profile: p, CellsInSeries: 1, CapacityAh: 31.5, ResistanceOhm: 0.0017})
	out := simulate(t, charge.Case{Pack: m, Start: m.StateAt(0.01, 25), AmbientC: 25, CurrentA: 15.3, EndV: 4.2, EndA: 1.5})
	within(t, "share at constant current", out.CCAh/out.InAh, 0.97, 0.02, "measured")
	within(t, "minutes at constant current", out.CCHours*60, 115.0, 0.05, "measured")
	within(t, "Ah in all", out.InAh, 30.349, 0.03, "measured")
}

// Sulzer et al. 2019, data of Faster Lead-Acid Battery Simulations from
// Porous-Electrode Theory, Part II (BSD 3-Clause): recharges of a sealed 12 V
// 17 Ah block. After 19.775 Ah taken at 3.04 A: 6.27 h (6.62 h on its clock,
// which starts 0.35 h before the current) and 17.31 Ah to 14.3 V at 2.77 A mean,
// 0.34 A after 10.9 h and 21.21 Ah; the acceptance was fitted to this run.
// After 19.691 Ah taken at 2.04 A: 6.32 h and 16.78 Ah at 2.65 A mean, 0.334 A
// after 10.0 h and 20.09 Ah; this one was kept aside. Full is taken as 20.5 Ah.
func TestLeadAcidRechargeAgreesWithMeasuredOnes(t *testing.T) {
	m := model(t, measuredBlock(t))
	for _, tt := range []struct {
		name                                string
		outAh, amps, endA                   float64
		bulkH, bulkAh, totalH, totalAh, tol float64
	}{
		{"fitted", 19.775, 2.77, 0.34, 6.27, 17.31, 10.9, 21.21, 0.06},
		{"kept aside", 19.691, 2.65, 0.334, 6.32, 16.78, 10.0, 20.09, 0.11},
	} {
		out := simulate(t, charge.Case{
			Pack: m, Start: m.StateAt(1-tt.outAh/m.FullAh(), 24), AmbientC: 24,
			CurrentA: tt.amps, EndV: 14.43, EndA: tt.endA,
		})
		within(t, tt.name+": hours of bulk", out.CCHours, tt.bulkH, tt.tol, "measured")
		within(t, tt.name+": Ah in bulk", out.CCAh, tt.bulkAh, tt.tol, "measured")
		within(t, tt.name+": hours in all", out.BareFullH, tt.totalH, tt.tol, "measured")
		within(t, tt.name+": Ah in all", out.InAh, tt.totalAh, tt.tol, "measured")
	}
}

// Charging times printed in cell specifications, from empty: at 0.5C 180 min
// (ICR18650-26C and -20, INR18650-20R, 21700 4 Ah), at 1C 150 min (26C), at 1.5C
// 60 min (21700 4 Ah at 6 A), at 2C 50 min (20R). They are bounds: what is likely
// must be sooner, and nobody is told to pull the plug before.
func TestChargesAreOverWhenCellMakersSayAtTheLatest(t *testing.T) {
	m := pack(t, "li-ion", 5, 4)
	for _, tt := range []struct{ rate, printedMin float64 }{{0.5, 180}, {1, 150}, {1.5, 60}, {2, 50}} {
		out := simulate(t, charge.Case{Pack: m, Start: m.StateAt(0, 25), AmbientC: 25, CurrentA: tt.rate * 4, EndV: 21, Stops: charge.StopsByItself})
		h := out.HoursToFull
		if h.LikelyH*60 > tt.printedMin {
			t.Errorf("%gC: likely %.0f min, more than the printed %g", tt.rate, h.LikelyH*60, tt.printedMin)
		}
		if out.UnplugH*60 < tt.printedMin-0.01 {
			t.Errorf("%gC: to be unplugged after %.0f min, makers print %g", tt.rate, out.UnplugH*60, tt.printedMin)
		}
		if !(h.LeastH <= h.LikelyH && h.LikelyH <= h.MostH) {
			t.Errorf("%gC: %+v out of order", tt.rate, h)
		}
	}
}

// Data sheet of a sealed 12 V 5 Ah block: at cycle voltage and 0.25 to 0.3C, 16 h
// after a full discharge and 10 h after half, held to 25 %. "At 0.1C then 2.40 V
// per cell more than all the charge is back within 24 h" (battery maker's
// article).
func TestLeadAcidHoursAreThePrintedOnes(t *testing.T) {
	m := pack(t, "agm", 6, 5)
	for _, rate := range []float64{0.25, 0.3} {
		for _, tt := range []struct{ from, printedH float64 }{{0, 16}, {0.5, 10}} {
			out := simulate(t, charge.Case{Pack: m, Start: m.StateAt(tt.from, 25), AmbientC: 25, CurrentA: rate * 5, EndV: 14.7})
			within(t, "hours to full", out.HoursToFull.LikelyH, tt.printedH, 0.25, "data sheet")
			if out.HoursToFull.LeastH > tt.printedH {
				t.Errorf("%gC from %g: computed %.1f h, more than the printed %g", rate, tt.from, out.HoursToFull.LeastH, tt.printedH)
			}
			if full := m.FullAh() * (1 - tt.from); out.InAh < full || out.InAh > 1.1*full*1.001 {
				t.Errorf("%gC from %g: %.2f Ah in for %.2f Ah, makers return about 110 %%", rate, tt.from, out.InAh, full)
			}
		}
	}
	out := simulate(t, charge.Case{Pack: m, Start: m.StateAt(0, 25), AmbientC: 25, CurrentA: 0.5, EndV: 14.4})
	if out.HoursToFull.LikelyH > 24 || out.HoursToFull.LeastH > 24 {
		t.Errorf("0.1C: %+v, within 24 h by the maker's article", out.HoursToFull)
	}
}

// What must hold for every charge.
func TestChargesAreMonotone(t *testing.T) {
	for _, chem := range []string{"agm", "gel", "li-ion", "lifepo4", "nimh"} {
		p := profile(t, chem)
		m := pack(t, chem, 6, 6)
		endV := 6 * p.Charge.CellV
		at := func(from, amps float64) charge.Outcome {
			return simulate(t, charge.Case{Pack: m, Start: m.StateAt(from, 20), AmbientC: 20, CurrentA: amps, EndV: endV})
		}
		last := math.Inf(1)
		for _, from := range []float64{0, 0.2, 0.5, 0.79, 0.9} {
			out := at(from, 1)
			h := out.HoursToFull
			if !out.Full || h.LikelyH > last || h.LeastH <= 0 {
				t.Errorf("%s from %g: full %v, %+v, from less it was %g h", chem, from, out.Full, h, last)
			}
			if from < 0.8 && !(out.HoursTo80.LikelyH > 0 && out.HoursTo80.LikelyH <= h.LikelyH) || from >= 0.8 && out.HoursTo80.LikelyH != 0 {
				t.Errorf("%s from %g: 80 %% after %+v of %+v", chem, from, out.HoursTo80, h)
			}
			if d := math.Abs(out.CCHours + out.CVHours - out.BareFullH); d > 1e-6 {
				t.Errorf("%s from %g: parts and whole differ by %g h", chem, from, d)
			}
			last = h.LikelyH
		}
		last = math.Inf(1)
		for _, amps := range []float64{0.3, 0.6, 1.2, 2.4} {
			h := at(0.1, amps).HoursToFull
			if h.LeastH > last*1.0001 {
				t.Errorf("%s at %g A: %g h, with less current %g", chem, amps, h.LeastH, last)
			}
			last = h.LeastH
		}
	}
}

// Halving the step must not move the result by more than a tenth of a per cent.
func TestTheStepDoesNotMatter(t *testing.T) {
	for _, chem := range []string{"agm", "li-ion"} {
		m := pack(t, chem, 6, 6)
		c := charge.Case{Pack: m, Start: m.StateAt(0.1, 20), AmbientC: 20, CurrentA: 1.5, EndV: 6 * profile(t, chem).Charge.CellV}
		whole := simulate(t, c)
		c.StepS = 5
		fine := simulate(t, c)
		within(t, chem+": hours", whole.HoursToFull.LeastH, fine.HoursToFull.LeastH, 1e-3, "step of 5 s")
		within(t, chem+": Ah", whole.InAh, fine.InAh, 1e-3, "step of 5 s")
		within(t, chem+": hours to 80 %", whole.HoursTo80.LeastH, fine.HoursTo80.LeastH, 1e-3, "step of 5 s")
	}
}

func TestAChargerTooWeakNeverFillsThePack(t *testing.T) {
	m := pack(t, "agm", 6, 7)
	out := simulate(t, charge.Case{Pack: m, Start: m.StateAt(0.3, 20), AmbientC: 20, CurrentA: 1, EndV: 12.2, EndA: 1e-9})
	if out.Full {
		t.Errorf("full at 12.2 V: %+v", out)
	}
	if _, ok := find(out.Findings, charge.CodeNeverFull); !ok {
		t.Errorf("findings %+v", out.Findings)
	}
}

// 12.2 V end a charge long before it is full; 10 mA go on for longer than is computed.
func TestAChargeThatIsGivenUpIsNotSaidToHaveEnded(t *testing.T) {
	m := pack(t, "agm", 6, 7)
	for _, c := range []struct {
		amps, endV float64
		givenUp    bool
		title      string
	}{
		{1, 12.2, false, "This charger never gets the pack full."},
		{0.01, 14.4, true, "This charger takes longer than 5 days to get the pack full, if it ever does."},
	} {
		out := simulate(t, charge.Case{Pack: m, Start: m.StateAt(0.1, 20), AmbientC: 20, CurrentA: c.amps, EndV: c.endV})
		if f, _ := find(out.Findings, charge.CodeNeverFull); out.Full || out.GivenUp != c.givenUp || f.Title != c.title {
			t.Errorf("%g A to %g V: full %v, given up %v, %q", c.amps, c.endV, out.Full, out.GivenUp, f.Title)
		}
	}
}

func TestUnplugTimeFollowsWhatTheChargerDoes(t *testing.T) {
	m := pack(t, "agm", 6, 7)
	c := charge.Case{Pack: m, Start: m.StateAt(0.3, 20), AmbientC: 20, CurrentA: 1, EndV: 14.4}
	never := simulate(t, c)
	c.Stops = charge.StopsByItself
	itself := simulate(t, c)
	c.Stops, c.TimerH = charge.StopsByTimer, 6
	timer := simulate(t, c)
	if never.UnplugH != never.HoursToFull.LikelyH || itself.UnplugH != itself.HoursToFull.MostH || timer.UnplugH != 6 {
		t.Errorf("unplug after %g, %g, %g h", never.UnplugH, itself.UnplugH, timer.UnplugH)
	}
}

func TestImpossibleChargesAreErrors(t *testing.T) {
	m := pack(t, "agm", 6, 7)
	good := charge.Case{Pack: m, Start: m.StateAt(0.3, 20), AmbientC: 20, CurrentA: 1, EndV: 14.4}
	for name, change := range map[string]func(*charge.Case){
		"no pack":          func(c *charge.Case) { c.Pack = nil },
		"no current":       func(c *charge.Case) { c.CurrentA = 0 },
		"negative current": func(c *charge.Case) { c.CurrentA = -1 },
		"no voltage":       func(c *charge.Case) { c.EndV = math.NaN() },
		"infinite droop":   func(c *charge.Case) { c.DroopOhm = math.Inf(1) },
		"no temperature":   func(c *charge.Case) { c.AmbientC = math.NaN() },
		"no start":         func(c *charge.Case) { c.Start.Y1Ah = math.NaN() },
		"a furnace":        func(c *charge.Case) { c.AmbientC = 1e9 },
		"space":            func(c *charge.Case) { c.AmbientC = -200 },
		"red hot cells":    func(c *charge.Case) { c.Start.TempC = 700 },
		"mains volts":      func(c *charge.Case) { c.EndV = 400 },
		"a welder":         func(c *charge.Case) { c.CurrentA = 400 },
	} {
		c := good
		change(&c)
		if _, err := charge.Simulate(c); err == nil || !strings.HasPrefix(err.Error(), "charge: ") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A charger for another battery is computed all the same.
func TestAWrongChargerIsComputed(t *testing.T) {
	m := pack(t, "agm", 3, 7)
	for _, c := range []charge.Case{
		{Pack: m, Start: m.StateAt(0.3, 20), AmbientC: 20, CurrentA: 1, EndV: 29.4},
		{Pack: m, Start: m.StateAt(0.3, 20), AmbientC: battery.MostTempC, CurrentA: 1, EndV: 7.2},
		{Pack: m, Start: m.StateAt(0.3, 20), AmbientC: battery.LeastTempC, CurrentA: 1, EndV: 7.2},
	} {
		if _, err := charge.Simulate(c); err != nil {
			t.Error(err)
		}
	}
}

func BenchmarkSimulateLithium(b *testing.B) {
	m := pack(b, "li-ion", 5, 5)
	c := charge.Case{Pack: m, Start: m.StateAt(0.1, 20), AmbientC: 20, CurrentA: 2, EndV: 21}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := charge.Simulate(c); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSimulateLeadAcid(b *testing.B) {
	m := pack(b, "agm", 6, 12)
	c := charge.Case{Pack: m, Start: m.StateAt(0.1, 20), AmbientC: 20, CurrentA: 1, EndV: 14.4}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := charge.Simulate(c); err != nil {
			b.Fatal(err)
		}
	}
}

// While the voltage is not held, a step is longer the longer the charge will take; the
// hours must not tell.
func TestTheHoursOfAChargeDoNotHangOnTheStep(t *testing.T) {
	for _, p := range []struct {
		name      string
		cells     int
		ah, endV  float64
		shareOfAh []float64
	}{{"agm", 6, 12, 14.7, []float64{0.03, 0.07, 0.2}}, {"li-ion", 5, 5, 21, []float64{0.03, 0.07, 0.2}}, {"nimh", 10, 4, 15.5, []float64{0.1}}} {
		profile, _ := chemistry.Builtin().Profile(p.name)
		m, err := battery.New(battery.Spec{Profile: profile, CellsInSeries: p.cells, CapacityAh: p.ah})
		if err != nil {
			t.Fatal(err)
		}
		for _, share := range p.shareOfAh {
			c := charge.Case{Pack: m, Start: m.StateAt(0.05, 20), CurrentA: share * p.ah, EndV: p.endV, AmbientC: 20}
			got, err := charge.Simulate(c)
			if err != nil {
				t.Fatal(err)
			}
			c.StepS = 2
			want, err := charge.Simulate(c)
			if err != nil {
				t.Fatal(err)
			}
			hours, wantHours := got.CCHours+got.CVHours, want.CCHours+want.CVHours
			if got.Full != want.Full || math.Abs(hours/wantHours-1) > 0.001 || math.Abs(got.HoursTo80.LikelyH/want.HoursTo80.LikelyH-1) > 0.001 {
				t.Errorf("%s at %g A: %.3f h, %.3f h to 80 %%, want %.3f h and %.3f h", p.name, c.CurrentA, hours, got.HoursTo80.LikelyH, wantHours, want.HoursTo80.LikelyH)
			}
		}
	}
}
