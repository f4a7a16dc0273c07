package quantity_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/packcheck/internal/quantity"
)

// A figure and the limit that it is past never read alike, as far as anybody measures.
func TestAFigureAndItsLimitReadApart(t *testing.T) {
	for _, c := range []struct {
		kind         quantity.Kind
		value, limit float64
		system       quantity.System
		want         string
	}{
		{quantity.Current, 78.4, 60, quantity.Metric, "78.4 A > 60 A"},
		{quantity.Current, 30.04, 30, quantity.Metric, "30.04 A > 30 A"},
		{quantity.Voltage, 4.204, 4.2, quantity.Metric, "4.204 V > 4.2 V"},
		{quantity.Speed, 13.2 / 3.6, 12.9 / 3.6, quantity.Metric, "13.2 km/h > 12.9 km/h"},
		{quantity.Speed, 13.2 / 3.6, 12.9 / 3.6, quantity.Customary, "8.2 mph > 8 mph"},
		{quantity.Temperature, 71.3, 71, quantity.Metric, "71.3 C > 71 C"},
		{quantity.Current, 30, 30, quantity.Metric, "30 A > 30 A"},
		{quantity.Duration, 3600.2, 3600, quantity.Metric, "1 h > 1 h"},
	} {
		figure, limit := quantity.Apart(c.kind, c.value, c.limit, c.system)
		if got := figure + " > " + limit; got != c.want {
			t.Errorf("%v and %v: %q, want %q", c.value, c.limit, got, c.want)
		}
	}
	if figure, limit := quantity.SaidBeside(quantity.Current, 30.4, 30.1); figure != "30.4 A" || limit != "30.1 A" {
		t.Errorf("a sentence says %s and %s", figure, limit)
	}
	if figure, limit := quantity.SaidBeside(quantity.Current, 78.4, 60); figure != "78 A" || limit != "60 A" {
		t.Errorf("a sentence says %s and %s", figure, limit)
	}
}

func TestFormatPrintsWhatPeopleRead(t *testing.T) {
	const lb = 0.45359237
	metric, us := quantity.Metric, quantity.Customary
	for _, c := range []struct {
		kind  quantity.Kind
		value float64
		first quantity.System
		want  string
	}{
		{quantity.Mass, 20, metric, "20 kg (44 lb)"},
		{quantity.Mass, 44 * lb, us, "44 lb (20 kg)"},
		{quantity.Mass, 29.5, metric, "29.5 kg (65 lb)"},
		{quantity.Mass, 0.65, metric, "650 g (1.4 lb)"},
		{quantity.Temperature, 25, metric, "25 C (77 F)"},
		{quantity.Temperature, 5, us, "41 F (5 C)"},
		{quantity.Temperature, -0.04, metric, "0 C (32 F)"},
		{quantity.Temperature, -20, metric, "-20 C (-4 F)"},
		{quantity.Length, 0.254, us, "10 in (254 mm)"},
		{quantity.Length, 0, metric, "0 m (0 ft)"},
		{quantity.Length, 1.2, metric, "1.2 m (3.94 ft)"},
		{quantity.Length, 3400, metric, "3.4 km (2.11 mi)"},
		{quantity.Speed, 1.5646, metric, "5.6 km/h (3.5 mph)"},
		{quantity.Force, 40, metric, "40 N (9 lbf)"},
		{quantity.Gauge, 14, us, "14 AWG (2.08 mm2)"},
		{quantity.Gauge, 0, us, "1/0 AWG (53.5 mm2)"},
		{quantity.Gauge, -3, us, "4/0 AWG (107 mm2)"},
		{quantity.Area, 2.5, metric, "2.5 mm2 (about 13 AWG)"},
		{quantity.Voltage, 0.0686, metric, "0.069 V"},
		{quantity.Voltage, 12.6, metric, "12.6 V"},
		{quantity.Voltage, 12.85, us, "12.9 V"},
		{quantity.Voltage, 3.65, metric, "3.65 V"},
		{quantity.Voltage, 21, metric, "21 V"},
		{quantity.Current, 84.2, metric, "84.2 A"},
		{quantity.Current, 0.015, metric, "15 mA"},
		{quantity.Current, 0, metric, "0 A"},
		{quantity.Resistance, 0.0703, metric, "70.3 mOhm"},
		{quantity.Resistance, 47, metric, "47 Ohm"},
		{quantity.Charge, 7, metric, "7 Ah"},
		{quantity.Charge, 0.5, metric, "500 mAh"},
		{quantity.Energy, 90, metric, "90 Wh"},
		{quantity.Power, 152.4, metric, "152 W"},
		{quantity.Fraction, 0.875, metric, "88 %"},
		{quantity.Fraction, 0.005, metric, "0.5 %"},
		{quantity.Grade, 0.03, metric, "3 %"},
		{quantity.RotationalSpeed, 500 * math.Pi, metric, "15000 rpm"},
		{quantity.TorqueConstant, 0.00743, metric, "0.00743 N m/A"},
		{quantity.Inertia, 8e-6, metric, "80 g cm2"},
		{quantity.Inductance, 1.2e-4, metric, "0.12 mH"},
		{quantity.Capacitance, 1e-3, metric, "1000 uF"},
		{quantity.Age, 5, metric, "5 years"},
		{quantity.Age, 1, metric, "1 year"},
		{quantity.Age, 1.5, metric, "18 months"},
		{quantity.Ratio, 110, metric, "110:1"},
		{quantity.Count, 2, metric, "2"},
		{quantity.Duration, 0, metric, "0 s"},
		{quantity.Duration, 2e-5, metric, "20 us"},
		{quantity.Duration, 0.18, metric, "180 ms"},
		{quantity.Duration, 25, metric, "25 s"},
		{quantity.Duration, 2.54, metric, "2.5 s"},
		{quantity.Duration, 90, metric, "90 s"},
		{quantity.Duration, 150, metric, "2 min 30 s"},
		{quantity.Duration, 48 * 60, metric, "48 min"},
		{quantity.Duration, 59.7 * 60, metric, "1 h"},
		{quantity.Duration, 5400, metric, "1 h 30 min"},
		{quantity.Duration, 12 * 3600, metric, "12 h"},
		{quantity.Duration, 72 * 3600, metric, "3 days"},
		{quantity.Duration, 365 * 86400, metric, "52 weeks"},
		{quantity.Mass, math.NaN(), metric, "unknown"},
		{quantity.Duration, math.Inf(1), metric, "unlimited"},
	} {
		if got := quantity.FormatBoth(c.kind, c.value, c.first); got != c.want {
			t.Errorf("FormatBoth(%v, %g, %v) = %q, want %q", c.kind, c.value, c.first, got, c.want)
		}
	}
}

func TestFormatRangePrintsUnitsOnce(t *testing.T) {
	for _, c := range []struct {
		kind      quantity.Kind
		low, high float64
		want      string
	}{
		{quantity.Mass, 20, 26, "20 to 26 kg (44 to 57 lb)"},
		{quantity.Mass, 20, 20, "20 kg (44 lb)"},
		{quantity.Voltage, 20.999999, 21.000001, "21 V"},
		{quantity.Current, 0.4, 2.5, "0.4 to 2.5 A"},
		{quantity.Duration, 48 * 60, 65 * 60, "48 min to 1 h 5 min"},
		{quantity.Duration, 1500, 2100, "25 to 35 min"},
		{quantity.Gauge, 14, 18, "0.823 to 2.08 mm2 (18 to 14 AWG)"},
		{quantity.Temperature, -5, 5, "-5 to 5 C (23 to 41 F)"},
		{quantity.Ratio, 60, 150, "60 to 150:1"},
	} {
		got := quantity.FormatRange(c.kind, quantity.Between(c.low, c.high), quantity.Metric)
		if got != c.want {
			t.Errorf("FormatRange(%v, %g to %g) = %q, want %q", c.kind, c.low, c.high, got, c.want)
		}
	}
}

// What Format prints, Parse reads back to the last digit printed, and printing
// that again gives the same text.
func TestParseReadsBackWhatFormatPrints(t *testing.T) {
	for k := quantity.NoKind + 1; k.Known(); k++ {
		low, high := k.Bounds()
		for _, system := range []quantity.System{quantity.Metric, quantity.Customary} {
			for i := range 400 {
				// Powers of ten over the whole range of the kind, both signs.
				share := math.Pow(10, -8*float64(i)/400)
				for _, v := range []float64{high * share, low * share} {
					if v < low {
						continue
					}
					if k == quantity.Count || k == quantity.Gauge {
						v = math.Round(v)
					}
					if k == quantity.Gauge && system == quantity.Metric {
						continue // prints as an area
					}
					kind := k
					if k == quantity.Area && system == quantity.Customary {
						continue // prints as about a gauge
					}
					text := quantity.Format(kind, v, system)
					r, _, err := quantity.Parse(kind, text)
					if err != nil {
						// Rounding may step over the kind's bound.
						if v > 0.99*high || v < low+0.01*math.Abs(low) || v < low*1.01 {
							continue
						}
						t.Fatalf("Parse(%v, %q) of %g: %v", kind, text, v, err)
					}
					again := quantity.Format(kind, r.Likely, system)
					if again != text {
						t.Fatalf("%v %g printed %q, read back and printed %q", kind, v, text, again)
					}
					// Two digits are within 5 percent; an age prints whole months.
					tol := 0.06*math.Abs(v) + 1e-8
					if kind == quantity.Age {
						tol = max(tol, 0.5/12+1e-9)
					}
					if math.Abs(r.Likely-v) > tol && kind != quantity.Temperature {
						t.Fatalf("%v %g printed %q and read back as %g", kind, v, text, r.Likely)
					}
				}
			}
		}
	}
}

func TestFormatIsPlainASCIIWithoutExponent(t *testing.T) {
	for k := quantity.NoKind; k <= quantity.Count; k++ {
		for _, v := range []float64{0, math.Copysign(0, -1), -1e-9, 1e-12, 1e-6, 0.1, 1, 999.9999, 1e6, 1e15, -273, math.NaN(), math.Inf(-1)} {
			for _, s := range []quantity.System{quantity.Either, quantity.Metric, quantity.Customary} {
				text := quantity.FormatBoth(k, v, s)
				for _, r := range text {
					if r < ' ' || r > '~' {
						t.Errorf("FormatBoth(%v, %g) = %q holds %q", k, v, text, r)
					}
				}
				if strings.HasPrefix(text, "-0 ") || text == "-0" || strings.Contains(text, "e+") || strings.Contains(text, "e-") {
					t.Errorf("FormatBoth(%v, %g) = %q", k, v, text)
				}
			}
		}
	}
}

// Published areas: ASTM B258 sizes as tabulated (AWG 10 5.261, 14 2.081, 18
// 0.823 mm2), last printed digit.
func TestGaugeAreaMatchesThePublishedTable(t *testing.T) {
	for gauge, want := range map[float64]float64{8: 8.366, 10: 5.261, 12: 3.309, 14: 2.081, 16: 1.309, 18: 0.823, 20: 0.518, 22: 0.326} {
		if got := quantity.GaugeArea(gauge); math.Abs(got-want) > 0.0006 {
			t.Errorf("GaugeArea(%g) = %.4f mm2, want %g", gauge, got, want)
		}
		if back := quantity.AreaGauge(quantity.GaugeArea(gauge)); math.Abs(back-gauge) > 1e-9 {
			t.Errorf("AreaGauge(GaugeArea(%g)) = %g", gauge, back)
		}
	}
}

func TestRangeKeepsItsOrder(t *testing.T) {
	r := quantity.Spread(1, 2, 4)
	for name, got := range map[string]quantity.Range{
		"scaled":          r.Scale(3),
		"scaled negative": r.Scale(-3),
		"added":           r.Add(quantity.Exactly(1)),
		"multiplied":      r.Mul(r),
		"clamped":         r.Clamp(1.5, 3),
		"hull":            r.Hull(quantity.Between(-1, 9)),
		"ends swapped":    quantity.Spread(4, 9, 1),
		"between":         quantity.Between(5, 2),
	} {
		if !got.Valid() {
			t.Errorf("%s: %v is out of order", name, got)
		}
	}
	if got, want := r.Scale(-1), (quantity.Range{Low: -4, Likely: -2, High: -1}); got != want {
		t.Errorf("Scale(-1) = %v, want %v", got, want)
	}
	if !r.Contains(1) || !r.Contains(4) || r.Contains(4.1) || r.IsExact() || !quantity.Exactly(3).IsExact() {
		t.Error("the ends belong to a range")
	}
	if (quantity.Range{Low: math.NaN()}).Valid() || (quantity.Range{High: math.Inf(1)}).Valid() {
		t.Error("a range must be finite")
	}
}

func ExampleParse() {
	r, written, err := quantity.Parse(quantity.Mass, "44 to 57 lb")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(quantity.FormatRange(quantity.Mass, r, written.System))
	_, _, err = quantity.Parse(quantity.Current, "1,000 mA")
	fmt.Println(err)
	// Output:
	// 44 to 57 lb (20 to 25.9 kg)
	// read "1,000 mA"; want "1 mA" or "1000 mA"; "1,000" can be read in two ways
}

func ExampleFormatBoth() {
	fmt.Println(quantity.FormatBoth(quantity.Temperature, 25, quantity.Metric))
	fmt.Println(quantity.FormatBoth(quantity.Gauge, 14, quantity.Customary))
	fmt.Println(quantity.FormatBoth(quantity.Duration, 5400, quantity.Metric))
	// Output:
	// 25 C (77 F)
	// 14 AWG (2.08 mm2)
	// 1 h 30 min
}

func TestASentenceSaysFiguresAsReportsDo(t *testing.T) {
	for _, tt := range []struct {
		kind  quantity.Kind
		value float64
		want  string
	}{
		{quantity.Voltage, 21, "21 V"},
		{quantity.Voltage, 4.9049, "4.9 V"},
		{quantity.Voltage, 12.64, "12.6 V"},
		{quantity.Current, 73.6, "74 A"},
		{quantity.Current, 9.64, "9.6 A"},
		{quantity.Current, 0.0346, "35 mA"},
		{quantity.Duration, 2.93, "2.9 s"},
	} {
		if got := quantity.Said(tt.kind, tt.value); got != tt.want {
			t.Errorf("%v: %q, want %q", tt.value, got, tt.want)
		}
	}
	for _, x := range []float64{math.Inf(1), math.Inf(-1), 0} {
		if got := quantity.About(x); got != x {
			t.Errorf("%v becomes %v", x, got)
		}
	}
}

// Of a range of many minutes nobody can use the seconds.
func TestWholeMinutes(t *testing.T) {
	const minute, hour = 60, 3600
	for _, c := range []struct{ r, want quantity.Range }{
		{quantity.Spread(0.717, 4.4*minute, 29.3*minute), quantity.Spread(1, 4*minute, 29*minute)},
		{quantity.Spread(0.2, 4.4*minute, 29.3*minute), quantity.Spread(0, 4*minute, 29*minute)},
		{quantity.Spread(44, 100, 29*minute), quantity.Spread(40, 100, 29*minute)},
		{quantity.Spread(10, 20.5, 40), quantity.Spread(10, 20.5, 40)}, // short: all of it counts
		{quantity.Spread(7, 43.6, 72.4), quantity.Spread(7, 45, 70)},   // not 43.6 s of 72.4 s
		{quantity.Spread(38, 138, 264), quantity.Spread(40, 140, 260)}, // nor 2 min 18 s of 4 min 24 s
		{quantity.Spread(7.96*hour, 16.46*hour, 21.2*hour), quantity.Spread(8*hour, 16.46*hour, 21.2*hour)},
	} {
		if got := quantity.WholeMinutes(c.r); got != c.want {
			t.Errorf("%v: %v, want %v", c.r, got, c.want)
		}
	}
}

// A likely value and the range around it stand in one unit, that of the larger end.
func TestALikelyValueHasTheUnitOfItsRange(t *testing.T) {
	const mile = 1609.344
	metric, us := quantity.Metric, quantity.Customary
	for _, c := range []struct {
		kind quantity.Kind
		r    quantity.Range
		in   quantity.System
		want string
	}{
		{quantity.Length, quantity.Spread(0.27*mile, 0.45*mile, 0.67*mile), us, "0.45 mi (0.27 to 0.67 mi)"},
		{quantity.Length, quantity.Spread(0, 0.45*mile, 0.67*mile), us, "0.45 mi (0 to 0.67 mi)"},
		{quantity.Length, quantity.Spread(0, 0.1*mile, 0.4*mile), us, "528 ft (0 to 2112 ft)"},
		{quantity.Length, quantity.Spread(430, 720, 1080), metric, "0.72 km (0.43 to 1.08 km)"},
		{quantity.Length, quantity.Spread(430, 720, 980), metric, "720 m (430 to 980 m)"},
		{quantity.Current, quantity.Spread(0.4, 0.9, 2.5), metric, "0.9 A (0.4 to 2.5 A)"},
		{quantity.Mass, quantity.Spread(0.5, 0.9, 1.2), metric, "0.9 kg (0.5 to 1.2 kg)"},
		{quantity.Duration, quantity.Spread(360, 3000, 11400), metric, "50 min (6 min to 3 h 10 min)"},
		{quantity.Temperature, quantity.Spread(-4, 5, 20), metric, "5 C (-4 to 20 C)"},
		{quantity.Current, quantity.Spread(5, 5, 5), metric, "5 A (5 A)"},
		{quantity.Current, quantity.Range{Low: 0.4, Likely: 0.9, High: math.Inf(1)}, metric, "900 mA (400 mA to unlimited)"},
	} {
		likely, ends := quantity.FormatSpread(c.kind, c.r, c.in)
		if got := likely + " (" + ends + ")"; got != c.want {
			t.Errorf("%v of %v: %q, want %q", c.r, c.kind, got, c.want)
		}
	}
}
