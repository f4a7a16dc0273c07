package tables_test

import (
	"errors"
	"math"
	"testing"

	"example.org/packcheck/tables"
)

// near fails unless got is want to within a tolerance.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.6g, want %.6g +- %.2g", what, got, want, tolerance)
	}
}

func wire(t *testing.T, size tables.WireSize) tables.Wire {
	t.Helper()
	w, err := tables.Builtin().Wire(size)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestAWGDiameterFollowsASTMB258(t *testing.T) {
	// ASTM B258-02, No. 36 = 0.0050 in, No. 4/0 = 0.4600 in.
	for _, c := range []struct {
		gauge int
		mm    float64
	}{{36, 0.1270}, {18, 1.0237}, {14, 1.6277}, {12, 2.0525}, {10, 2.5882}, {8, 3.2636}, {-3, 0.46 * 25.4}} {
		near(t, "diameter", tables.AWGDiameterMM(c.gauge), c.mm, 0.00005)
	}
}

func TestAWGResistanceMatchesThePublishedTable(t *testing.T) {
	// Wire table for solid copper at 20 degC, wp.1728.org/?p=4314; 0.1 percent.
	for _, c := range []struct {
		gauge int
		perKM float64
	}{{8, 2.06}, {10, 3.28}, {12, 5.21}, {14, 8.28}, {16, 13.17}, {18, 20.94}, {20, 33.29}, {22, 52.94}} {
		w := wire(t, tables.WireSize{System: tables.AWG, Gauge: c.gauge})
		near(t, w.Name, w.OhmPerM20C*1000, c.perKM, 0.001*c.perKM)
	}
}

func TestFlexibleConductorsFollowIEC60228(t *testing.T) {
	// IEC 60228:2004 Table 3 (class 5) and Tables 1, 2; exact.
	sizes := []float64{0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16}
	classes := map[string][]float64{
		"class5-plain":  {39.0, 26.0, 19.5, 13.3, 7.98, 4.95, 3.30, 1.91, 1.21},
		"class5-tinned": {40.1, 26.7, 20.0, 13.7, 8.21, 5.09, 3.39, 1.95, 1.24},
		"class2-plain":  {36.0, 24.5, 18.1, 12.1, 7.41, 4.61, 3.08, 1.83, 1.15},
	}
	for class, values := range classes {
		for i, size := range sizes {
			got, err := tables.Builtin().ConductorOhmPerKM(class, size)
			if err != nil || got != values[i] {
				t.Errorf("%s %g mm2 = %g, %v; want %g", class, size, got, err, values[i])
			}
		}
	}
	for i, size := range sizes {
		near(t, "plain", wire(t, tables.WireSize{AreaMM2: size}).OhmPerM20C*1000, classes["class5-plain"][i], 1e-9)
		near(t, "tinned", wire(t, tables.WireSize{AreaMM2: size, Tinned: true}).OhmPerM20C*1000, classes["class5-tinned"][i], 1e-9)
	}
	for _, bad := range []struct {
		class string
		area  float64
	}{{"class9", 1}, {"class5-plain", 1.2}} {
		if _, err := tables.Builtin().ConductorOhmPerKM(bad.class, bad.area); !errors.Is(err, tables.ErrNotFound) {
			t.Errorf("%s %g: %v", bad.class, bad.area, err)
		}
	}
}

func TestNominalAreaOfFlexibleWireIsUpToSixteenPercentGenerous(t *testing.T) {
	// Ratio of IEC 60228 class 5 to ideal copper, 17.241 Ohm mm2/km (computed).
	for size, ratio := range map[float64]float64{0.5: 1.131, 1: 1.131, 1.5: 1.157, 2.5: 1.157, 4: 1.148, 6: 1.148, 10: 1.108, 16: 1.123} {
		near(t, "ratio", wire(t, tables.WireSize{AreaMM2: size}).OhmPerM20C*1000*size/17.241, ratio, 0.001)
	}
}

func TestAutomotiveGaugeHasMoreResistanceThanAWG(t *testing.T) {
	// SAE J1127/J1128 least areas against AWG areas, a wire maker's catalogue.
	for gauge, ratio := range map[int]float64{18: 1.057, 16: 1.106, 14: 1.109, 12: 1.119, 10: 1.111, 8: 1.115} {
		a := wire(t, tables.WireSize{System: tables.AWG, Gauge: gauge})
		s := wire(t, tables.WireSize{System: tables.Automotive, Gauge: gauge})
		near(t, s.Name, s.OhmPerM20C/a.OhmPerM20C, ratio, 0.001)
	}
}

func TestHotCopperHasMoreResistance(t *testing.T) {
	// IEC 60028/60949: R(120)/R(20) = 1.393 +- 0.2 percent.
	w := wire(t, tables.WireSize{System: tables.AWG, Gauge: 12})
	near(t, "R(120)/R(20)", w.OhmPerM(120)/w.OhmPerM(20), 1.393, 0.002*1.393)
	near(t, "R(20)", w.OhmPerM(20), w.OhmPerM20C, 1e-15)
	if w.OhmPerM(-273) <= 0 {
		t.Error("resistance vanishes in the cold")
	}
}

func TestSizesOutsideTheTablesAreErrors(t *testing.T) {
	for _, size := range []tables.WireSize{
		{},
		{AreaMM2: -1},
		{AreaMM2: math.NaN()},
		{AreaMM2: math.Inf(1)},
		{AreaMM2: 1000},
		{System: tables.AWG, Gauge: -4},
		{System: tables.AWG, Gauge: 41},
		{System: tables.Automotive, Gauge: 13},
		{System: 9},
	} {
		if _, err := tables.Builtin().Wire(size); !errors.Is(err, tables.ErrNotFound) {
			t.Errorf("%+v: %v", size, err)
		}
	}
}

func TestThickerWireHasLessResistance(t *testing.T) {
	last := math.Inf(1)
	for area := 0.05; area < 240; area *= 1.07 {
		ohm := wire(t, tables.WireSize{AreaMM2: area}).OhmPerM20C
		if ohm >= last {
			t.Errorf("%g mm2: %g Ohm/m, not less than thinner wire", area, ohm)
		}
		last = ohm
	}
}

func TestWireNames(t *testing.T) {
	for want, size := range map[string]tables.WireSize{
		"AWG 14":              {System: tables.AWG, Gauge: 14},
		"AWG 1/0":             {System: tables.AWG, Gauge: 0},
		"AWG 4/0":             {System: tables.AWG, Gauge: -3},
		"2.5 mm2":             {AreaMM2: 2.5},
		"automotive 14 gauge": {System: tables.Automotive, Gauge: 14},
	} {
		if got := wire(t, size).Name; got != want {
			t.Errorf("name %q, want %q", got, want)
		}
	}
}
