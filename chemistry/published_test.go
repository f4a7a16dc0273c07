package chemistry_test

import (
	"math"
	"testing"

	"example.org/packcheck/chemistry"
)

func profile(t *testing.T, name string) chemistry.Profile {
	t.Helper()
	p, ok := chemistry.Builtin().Profile(name)
	if !ok {
		t.Fatalf("no profile %s", name)
	}
	return p
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %.4f, published %.4f (within %g)", what, got, want, within)
	}
}

// Three makers' data sheets of sealed lead-acid blocks agree on the end of
// discharge by rate.
func TestLeadAcidEndVoltsByRate(t *testing.T) {
	for _, name := range []string{"agm", "agm-traction", "gel"} {
		end := profile(t, name).End
		for rate, volts := range map[float64]float64{0.05: 1.75, 0.19: 1.75, 0.2: 1.70, 0.49: 1.70, 0.5: 1.55, 0.99: 1.55, 1: 1.30, 5: 1.30} {
			near(t, name, end.At(rate), volts, 0)
		}
	}
}

// Battery maker's question page, 12 V blocks after 24 h of rest (AGM
// 12.80-12.90/12.60/12.30/12.00/11.80 V, gel 12.85-12.95/12.65/12.35/12.00/
// 11.80 V); 0 % is where the rated capacity has been taken out.
func TestLeadAcidRestVolts(t *testing.T) {
	for name, volts := range map[string][5]float64{
		"agm": {11.80, 12.00, 12.30, 12.60, 12.85},
		"gel": {11.80, 12.00, 12.35, 12.65, 12.90},
	} {
		p := profile(t, name)
		for i, v := range volts {
			z := 1 - (1-float64(i)/4)/p.Capacity.Ratio
			near(t, name, 6*p.Rest.VoltsAt.At(z), v, 0.05)
		}
	}
}

// bode is the thermodynamic open-circuit voltage of a lead-acid cell over the
// molality of its acid: Bode, Lead-Acid Batteries (1977), as coded in PyBaMM
// (Sulzer2019 parameter set).
func bode(molality float64) float64 {
	x := math.Log10(molality)
	plus := 1.628 + 0.074*x + 0.033*x*x + 0.043*x*x*x + 0.022*x*x*x*x
	minus := -0.294 - 0.074*x - 0.030*x*x - 0.031*x*x*x - 0.012*x*x*x*x
	return plus - minus
}

// Bode's voltages at 1 to 6 mol/kg, and that the rest curves lie between
// those of nearly spent (1 mol/kg) and of strong acid (7 mol/kg, density
// 1.33) wherever a maker counts charge.
func TestLeadAcidRestVoltsAreThoseOfAcid(t *testing.T) {
	for i, want := range []float64{1.9220, 1.9746, 2.0168, 2.0546, 2.0896, 2.1226} {
		near(t, "Bode", bode(float64(i+1)), want, 0.001)
	}
	for _, name := range []string{"agm", "agm-traction", "gel"} {
		p := profile(t, name)
		for soc := 0.0; soc <= 1; soc += 0.1 {
			v := p.Rest.VoltsAt.At(1 - (1-soc)/p.Capacity.Ratio)
			if v < bode(1) || v > bode(7) {
				t.Errorf("%s at %.0f %%: %.3f V, acid gives %.3f to %.3f V", name, 100*soc, v, bode(1), bode(7))
			}
		}
	}
}

// Makers' data sheets of AGM blocks: 40/25/0/-15 degC = 102/100/85/65 %;
// 30/10/-10 degC = 103/90/74 % (another maker).
func TestLeadAcidCapacityOverTemperature(t *testing.T) {
	f := profile(t, "agm").Capacity.TempFactor
	for temp, share := range map[float64]float64{40: 1.02, 30: 1.03, 25: 1, 10: 0.90, 0: 0.85, -10: 0.74, -15: 0.65} {
		near(t, "capacity factor", f.At(temp), share, 0.03)
	}
}

// IEEE 485 Table 1 (numbers copied from a second source; that they are its
// Table 1 is from memory) sizes for currents of hours, where the cold costs
// more than over 20 h. Its reciprocal must not lie above the 20 h factor, and
// the published polynomial through it must give its points.
func TestSizingTableAndItsPolynomialAgree(t *testing.T) {
	f := profile(t, "agm").Capacity.TempFactor
	for fahrenheit, size := range map[float64]float64{40: 1.300, 50: 1.190, 60: 1.110, 70: 1.040, 77: 1.000, 80: 0.980, 90: 0.940, 100: 0.910, 110: 0.880, 120: 0.860} {
		c := (fahrenheit - 32) / 1.8
		x := c / 100
		near(t, "polynomial", ((-2.8117*x+4.1916)*x-2.4941)*x+1.405, size, 0.012)
		if c < 25 && f.At(c) < 1/size-0.03 {
			t.Errorf("%.0f degF: 20 h factor %.3f, sized %.3f", fahrenheit, f.At(c), 1/size)
		}
	}
}

// Sunil, Pattipati & Balasingam, IEEE Trans. Instrum. Meas. 2025: four nickel-
// rich cells lie within 27 mV of one another from 20 to 95 %.
func TestLithiumRestVoltsLieAmongTheMeasuredCells(t *testing.T) {
	p := profile(t, "li-ion")
	charge := []float64{0.05, 0.10, 0.20, 0.30, 0.40, 0.50, 0.60, 0.70, 0.80, 0.90, 0.95, 1}
	cells := map[string][]float64{
		"INR21700-P42A": {3.169, 3.334, 3.475, 3.581, 3.656, 3.742, 3.844, 3.926, 4.034, 4.080, 4.101, 4.193},
		"21700 40T":     {3.192, 3.355, 3.482, 3.590, 3.655, 3.738, 3.843, 3.923, 4.031, 4.085, 4.108, 4.200},
		"INR18650-P28A": {3.194, 3.350, 3.484, 3.585, 3.654, 3.736, 3.837, 3.920, 4.019, 4.083, 4.107, 4.188},
		"21700 M50T":    {3.162, 3.304, 3.475, 3.576, 3.644, 3.717, 3.817, 3.920, 4.018, 4.092, 4.116, 4.194},
	}
	for name, volts := range cells {
		for i, z := range charge {
			within := p.Rest.SpreadV
			if z < 0.2 {
				within = 0.035 // the curve is steep here: a tenth of a per cent is 4 mV
			}
			near(t, name, p.Rest.VoltsAt.At(z), volts[i], within)
		}
	}
}

// Chen et al. 2020, J. Electrochem. Soc. 167:080534 (LG M50): half-cell
// functions and the window 2.5 to 4.2 V. The published check voltages, and
// that the profile lies within 35 mV of it where the curve is flat.
func TestLithiumRestVoltsAgreeWithHalfCells(t *testing.T) {
	up := func(x float64) float64 {
		return -0.8090*x + 4.4875 - 0.0428*math.Tanh(18.5138*(x-0.5542)) - 17.7326*math.Tanh(15.7890*(x-0.3117)) + 17.5842*math.Tanh(15.9308*(x-0.3120))
	}
	un := func(x float64) float64 {
		return 1.9793*math.Exp(-39.3631*x) + 0.2482 - 0.0909*math.Tanh(29.8538*(x-0.1234)) - 0.04472*math.Tanh(14.9108*(x-0.2769)) - 0.0205*math.Tanh(30.4444*(x-0.6103))
	}
	near(t, "Up(0.5)", up(0.5), 3.97196, 1e-4)
	near(t, "Un(0.5)", un(0.5), 0.13309, 1e-4)
	open := func(z float64) float64 {
		return up(0.85397+z*(0.26385-0.85397)) - un(0.02635+z*(0.91062-0.02635))
	}
	p := profile(t, "li-ion")
	for z, volts := range map[float64]float64{0.1: 3.2959, 0.5: 3.7509, 0.9: 4.0967} {
		near(t, "open circuit", open(z), volts, 0.001)
	}
	for z := 0.2; z < 0.96; z += 0.05 {
		near(t, "profile against half cells", p.Rest.VoltsAt.At(z), open(z), 0.035)
	}
}

// The same dataset, APR18650M1B (C/32). Its last point was read with the
// charging current on: a full cell comes back from there to 3.34 to 3.40 V
// (common practice), which is where a rested pack begins.
func TestIronPhosphateRestVolts(t *testing.T) {
	p := profile(t, "lifepo4")
	column := map[float64]float64{0: 2.010, 0.05: 3.072, 0.10: 3.203, 0.20: 3.241, 0.30: 3.278, 0.50: 3.299, 0.70: 3.316, 0.90: 3.341, 0.95: 3.343, 1: 3.598}
	for z, volts := range column {
		if z < 1 {
			near(t, "lifepo4", p.Rest.VoltsAt.At(z), volts, 0.005)
		}
	}
	full := p.Rest.VoltsAt.At(1)
	if full != p.FullV || full < 3.34 || full > 3.40 {
		t.Errorf("a full cell rests at %.3f V on its curve and at %.3f V on the ladder, want one figure of 3.34 to 3.40", full, p.FullV)
	}
	if !(column[0.95] < full && full < column[1] && column[1] < p.Charge.CellV+0.005) {
		t.Errorf("%.3f V lies not between the dataset's 95 %% (%.3f V) and its end under charge (%.3f V), or that above the charger's %.3f V", full, column[0.95], column[1], p.Charge.CellV)
	}
	near(t, "30 to 90 %", p.Rest.VoltsAt.At(0.9)-p.Rest.VoltsAt.At(0.3), 0.063, 0.001)
}

// PyBaMM's demonstration set: 20 kJ/mol gives 4.196, 2.924, 2.093, 1.533, 0.679
// and 0.428 at -20, -10, 0, 10, 40 and 60 degC. The cells of tool packs were
// fitted: 13.4 and 15.0 kJ/mol for the ohmic part, 56 for charge transfer.
func TestLithiumResistanceOverTemperature(t *testing.T) {
	li := profile(t, "li-ion")
	f := profile(t, "lifepo4").Resistance.TempFactor
	arrhenius := func(kiloJ, c float64) float64 {
		return math.Exp(kiloJ / 8.314462618e-3 * (1/(c+273.15) - 1/298.15))
	}
	for temp, want := range map[float64]float64{-20: 4.196, -10: 2.924, 0: 2.093, 10: 1.533, 25: 1, 40: 0.679, 60: 0.428} {
		near(t, "20 kJ/mol", arrhenius(20, temp), want, 0.002)
		near(t, "lifepo4", f.At(temp), want, 0.002)
	}
	for _, temp := range []float64{-20, -10, 0, 10, 20, 25, 30, 40, 50, 60, 70} {
		near(t, "li-ion, ohmic", li.Resistance.TempFactor.At(temp)/arrhenius(14, temp), 1, 0.002)
		near(t, "li-ion, charge transfer", li.Fast.TempFactor.At(temp)/arrhenius(55, temp), 1, 0.002)
	}
}

// From memory: a full sealed lead-acid battery goes on taking about 1 mA per Ah
// at 2.275 V per cell and 25 degC, 3 times as much 0.1 V higher, twice as much
// 10 K warmer.
func TestGassingOfSealedLeadAcid(t *testing.T) {
	a := profile(t, "agm").Acceptance
	near(t, "on float", a.GasA(2.275, 25, 7), 0.007, 1e-9)
	near(t, "0.1 V higher", a.GasA(2.375, 25, 7), 0.021, 1e-9)
	near(t, "10 K warmer", a.GasA(2.275, 35, 7), 0.014, 1e-9)
	near(t, "without the group", chemistry.Acceptance{}.GasA(2.4, 25, 7), 0, 0)
	near(t, "nothing in the way", chemistry.Acceptance{}.Ohm(0.9, 7), 0, 0)
	near(t, "half full", a.Ohm(0.5, 7), a.OhmAh/7/(math.Pow(0.5, a.Power)+a.Offset), 1e-12)
}

// Specification INR18650-15L, 7.5: at 10 A 60/75/80/100/100 % of the capacity
// at -20/-10/0/25/60 degC.
func TestLithiumCapacityOverTemperature(t *testing.T) {
	f := profile(t, "li-ion").Capacity.TempFactor
	for temp, share := range map[float64]float64{-20: 0.60, -10: 0.75, 0: 0.80, 25: 1, 60: 1} {
		near(t, "capacity factor", f.At(temp), share, 0.05)
	}
}

// TI BQ25882 register 08h: below 10 degC a fifth of the current, above 45 degC
// 4.00 V per cell; TI BQ76942: no charge at or below 0 degC.
func TestLithiumChargingTemperatures(t *testing.T) {
	c := profile(t, "li-ion").Charge
	near(t, "reduced below", c.ReducedBelowC, 10, 0)
	near(t, "share", c.ReducedShare, 0.20, 0)
	near(t, "hot above", c.HotAboveC, 45, 0)
	near(t, "hot volts", c.HotCellV, 4.00, 0)
	near(t, "never at or below", c.MinTempC, 0, 0)
}

// Cell specifications: 0.5C 180 min, 1C 150 min, 1.5C 60 min, 2C 50 min
// (upper bounds); an AGM maker: 16 h after a full discharge at 0.25 to 0.3C.
func TestChargingHoursAreTheMakers(t *testing.T) {
	li, agm := profile(t, "li-ion").Charge.FullHoursByC, profile(t, "agm").Charge.FullHoursByC
	for rate, hours := range map[float64]float64{0.5: 3, 1: 2.5, 1.5: 1, 2: 50. / 60} {
		near(t, "lithium", li.At(rate), hours, 0.001)
	}
	near(t, "agm at 0.25C", agm.At(0.25), 16, 0)
}

// Wildfeuer & Lienkamp: 600 new cells, capacity 0.17 %, impedance 0.45 %;
// literature 0.2-0.3 % and 0.7-3.8 %. The profile takes the careful end.
func TestSpreadOfNewCells(t *testing.T) {
	s := profile(t, "li-ion").Spread
	if s.CapacityNew < 0.0017 || s.CapacityNew > 0.003 || s.OhmNew < 0.0045 || s.OhmNew > 0.038 {
		t.Errorf("spread %+v", s)
	}
}

// VARTA button cell handbook p. 49: nominal 1.2 V, open circuit 1.25 to 1.40 V,
// end 1.0 V.
func TestNickelVolts(t *testing.T) {
	p := profile(t, "nimh")
	near(t, "nominal", p.NominalV, 1.2, 0)
	near(t, "end", p.EmptyV, 1.0, 0)
	for z := 0.2; z <= 1; z += 0.1 {
		if v := p.Rest.VoltsAt.At(z); v < 1.25-0.005 || v > 1.40 {
			t.Errorf("at %.0f %%: %.3f V, published 1.25 to 1.40 V", 100*z, v)
		}
	}
}

// Data sheets: 7.2 Ah = 2.30 kg and 7.5 Ah = 2.20 kg (the class runs 2.0 to
// 2.6 kg); the traction block of 20 Ah over 2 h, 25.2 Ah over 20 h, 7.2 kg.
func TestMassRules(t *testing.T) {
	near(t, "7.2 Ah block", 12*7.2/profile(t, "agm").Mass.WhPerKg, 2.30, 0.30)
	near(t, "traction block", 12*25.2/profile(t, "agm-traction").Mass.WhPerKg, 7.2, 0.36)
}
