package quantity_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.org/packcheck/internal/quantity"
)

func exactly(v float64) quantity.Range { return quantity.Exactly(v) }

// near compares to the last bits that a change of unit may cost.
var near = cmpopts.EquateApprox(1e-12, 0)

func TestParseReadsWhatPeopleWrite(t *testing.T) {
	const lb, in = 0.45359237, 0.0254 // by definition, 1959
	us, metric := quantity.Customary, quantity.Metric
	for _, c := range []struct {
		kind   quantity.Kind
		text   string
		want   quantity.Range
		unit   string
		system quantity.System
		why    string
	}{
		{quantity.Current, "1000Ma", exactly(1), "mA", 0, "charger labels print Ma; a megaampere is absurd"},
		{quantity.Current, "1000 MA", exactly(1), "mA", 0, "the same in capitals"},
		{quantity.Current, "1.5A", exactly(1.5), "A", 0, "no blank"},
		{quantity.Current, "3 amps", exactly(3), "A", 0, "the word"},
		{quantity.Charge, "7 Ah", exactly(7), "Ah", 0, ""},
		{quantity.Charge, "7000 mAh", exactly(7), "mAh", 0, ""},
		{quantity.Charge, "7000 MAH", exactly(7), "mAh", 0, "capitals on a label"},
		{quantity.Charge, "5 amp hours", exactly(5), "Ah", 0, "two words"},
		{quantity.Charge, "12ha", exactly(12), "Ah", 0, "letters swapped on a keyboard"},
		{quantity.Current, "2.322 A", exactly(2.322), "A", 0, "three decimals of a meter: 2322 A would be absurd"},
		{quantity.Ratio, "1:115", exactly(115), "", 0, "the same gears as 115:1"},
		{quantity.Age, "5 yo", exactly(5), "years", 0, "as people post it"},
		{quantity.RotationalSpeed, "12V 30000RPM", exactly(1000 * math.Pi), "rpm", 0, "a motor's label"},
		{quantity.RotationalSpeed, "30k rpm", exactly(1000 * math.Pi), "krpm", 0, "as people write thousands"},
		{quantity.RotationalSpeed, "15000 rpm @ 12 V", exactly(500 * math.Pi), "rpm", 0, "the same the other way round"},
		{quantity.Voltage, "\u201c12 V\u201d", exactly(12), "V", 0, "quotes of a word processor"},
		{quantity.Voltage, "12 V", exactly(12), "V", 0, ""},
		{quantity.Voltage, "12 volts", exactly(12), "V", 0, ""},
		{quantity.Voltage, "12 V DC", exactly(12), "V", 0, "direct current is what there is"},
		{quantity.Voltage, "12.850 V", exactly(12.85), "V", 0, "three decimals of a meter: 12850 V would be absurd"},
		{quantity.Voltage, "12,850 V", exactly(12.85), "V", 0, "the same with a comma"},
		{quantity.Resistance, "80 mOhm", exactly(0.08), "mOhm", 0, ""},
		{quantity.Resistance, "80 m\u03a9", exactly(0.08), "mOhm", 0, "Greek capital omega"},
		{quantity.Resistance, "80 m\u2126", exactly(0.08), "mOhm", 0, "the Ohm sign"},
		{quantity.Resistance, "80 mohm", exactly(0.08), "mOhm", 0, "small letters: m is milli"},
		{quantity.Resistance, "0,5 Ohm", exactly(0.5), "Ohm", 0, "decimal comma"},
		{quantity.Resistance, "0,500 Ohm", exactly(0.5), "Ohm", 0, "a leading zero cannot part thousands"},
		{quantity.Energy, "90 Wh", exactly(90), "Wh", 0, ""},
		{quantity.Energy, "3600 J", exactly(1), "J", 0, "1 Wh = 3600 J"},
		{quantity.Power, "1 hp", exactly(745.6998715822702), "hp", us, "550 ft lbf/s"},
		{quantity.Mass, "44 lb", exactly(44 * lb), "lb", us, ""},
		{quantity.Mass, "44lbs", exactly(44 * lb), "lb", us, ""},
		{quantity.Mass, "29,5 kg", exactly(29.5), "kg", metric, "decimal comma"},
		{quantity.Mass, "1 st 8 lb", exactly(22 * lb), "st", us, "a stone is 14 lb"},
		{quantity.Mass, "2 lb 8 oz", exactly(2.5 * lb), "lb", us, ""},
		{quantity.Mass, "20 to 26 kg", quantity.Range{Low: 20, Likely: 23, High: 26}, "kg", metric, "likely is the middle"},
		{quantity.Mass, "20-26 kg", quantity.Range{Low: 20, Likely: 23, High: 26}, "kg", metric, ""},
		{quantity.Mass, "20 \u2013 26 kg", quantity.Range{Low: 20, Likely: 23, High: 26}, "kg", metric, "en dash"},
		{quantity.Mass, "20 kg to 26 kg", quantity.Range{Low: 20, Likely: 23, High: 26}, "kg", metric, ""},
		{quantity.Mass, "20 kg to 26", quantity.Range{Low: 20, Likely: 23, High: 26}, "kg", metric, "one unit for both"},
		{quantity.Mass, "500 g to 1 kg", quantity.Range{Low: 0.5, Likely: 0.75, High: 1}, "g", metric, "a unit each"},
		{quantity.Mass, "20 to 26 kg, likely 22", quantity.Range{Low: 20, Likely: 22, High: 26}, "kg", metric, "a likely value of its own"},
		{quantity.Mass, "about 20 kg", quantity.Range{Low: 18, Likely: 20, High: 22}, "kg", metric, "about: a tenth either way"},
		{quantity.Mass, "~20 kg", quantity.Range{Low: 18, Likely: 20, High: 22}, "kg", metric, ""},
		{quantity.Length, `10"`, exactly(10 * in), "in", us, ""},
		{quantity.Length, "10 in", exactly(10 * in), "in", us, ""},
		{quantity.Length, "10 in.", exactly(10 * in), "in", us, ""},
		{quantity.Length, "9 1/2 in", exactly(9.5 * in), "in", us, "fractions of an inch"},
		{quantity.Length, "9\u00bd in", exactly(9.5 * in), "in", us, "the sign for a half"},
		{quantity.Length, "3/4 in", exactly(0.75 * in), "in", us, ""},
		{quantity.Length, `5' 6"`, exactly(66 * in), "ft", us, ""},
		{quantity.Length, "250 mm", exactly(0.25), "mm", metric, ""},
		{quantity.Area, "2.5 mm2", exactly(2.5), "mm2", metric, ""},
		{quantity.Area, "2.5 mm\u00b2", exactly(2.5), "mm2", metric, ""},
		{quantity.Area, "2,5mm^2", exactly(2.5), "mm2", metric, ""},
		{quantity.Gauge, "14 AWG", exactly(14), "AWG", us, ""},
		{quantity.Gauge, "AWG 14", exactly(14), "AWG", us, "unit in front"},
		{quantity.Gauge, "#14", exactly(14), "AWG", us, ""},
		{quantity.Gauge, "12 ga", exactly(12), "AWG", us, ""},
		{quantity.Gauge, "14", exactly(14), "", us, "a bare gauge number is an AWG number"},
		{quantity.Gauge, "1/0", exactly(0), "", us, "one aught"},
		{quantity.Gauge, "4/0 AWG", exactly(-3), "AWG", us, "four aught"},
		{quantity.Gauge, "10 to 14", quantity.Range{Low: 10, Likely: 12, High: 14}, "", us, ""},
		{quantity.Gauge, "00", exactly(-1), "", us, "the same spelt with noughts"},
		{quantity.Gauge, "14 to 12 AWG", quantity.Range{Low: 12, Likely: 13, High: 14}, "AWG", us, "thin to thick"},
		{quantity.Temperature, "41 F", exactly(5), "F", us, ""},
		{quantity.Temperature, "41 \u00b0F", exactly(5), "F", us, ""},
		{quantity.Temperature, "-5 to 5 C", quantity.Range{Low: -5, Likely: 0, High: 5}, "C", metric, "below freezing"},
		{quantity.Temperature, "\u22125 \u00b0C", exactly(-5), "C", metric, "the minus sign of typesetting"},
		{quantity.Temperature, "about 20 C", quantity.Range{Low: 17, Likely: 20, High: 23}, "C", metric, "about: 3 degrees"},
		{quantity.Temperature, "-5--3 C", quantity.Range{Low: -5, Likely: -4, High: -3}, "C", metric, "range of negatives"},
		{quantity.Fraction, "85 %", exactly(0.85), "%", 0, ""},
		{quantity.Fraction, "0.85", exactly(0.85), "", 0, ""},
		{quantity.Fraction, "40 to 70 %", quantity.Range{Low: 0.4, Likely: 0.55, High: 0.7}, "%", 0, ""},
		{quantity.Grade, "3 %", exactly(0.03), "%", 0, ""},
		{quantity.Grade, "45 to 45 %", exactly(0.45), "%", 0, ""},
		{quantity.Grade, "2 deg", exactly(math.Tan(2 * math.Pi / 180)), "deg", 0, "an angle"},
		{quantity.Grade, "1 in 20", exactly(0.05), "", 0, "road sign"},
		{quantity.Grade, "1:20", exactly(0.05), "", 0, ""},
		{quantity.Duration, "25 s", exactly(25), "s", 0, ""},
		{quantity.Duration, "180 ms", exactly(0.18), "ms", 0, ""},
		{quantity.Duration, "1h30", exactly(5400), "h", 0, "minutes follow hours"},
		{quantity.Duration, "1 h 30 min", exactly(5400), "h", 0, ""},
		{quantity.Duration, "1:30 h", exactly(5400), "h", 0, ""},
		{quantity.Duration, "1:30 min", exactly(90), "min", 0, ""},
		{quantity.Duration, "1m30", exactly(90), "min", 0, ""},
		{quantity.Duration, "90 min", exactly(5400), "min", 0, ""},
		{quantity.Duration, "half an hour", exactly(1800), "h", 0, "as people say it"},
		{quantity.Duration, "half hour", exactly(1800), "h", 0, ""},
		{quantity.Duration, "an hour", exactly(3600), "h", 0, ""},
		{quantity.Duration, "An hour and a half", exactly(5400), "h", 0, ""},
		{quantity.Duration, "one hour and a quarter", exactly(4500), "h", 0, ""},
		{quantity.Duration, "one and a half hours", exactly(5400), "h", 0, ""},
		{quantity.Duration, "two and a half hours", exactly(9000), "h", 0, ""},
		{quantity.Duration, "quarter of an hour", exactly(900), "h", 0, ""},
		{quantity.Duration, "a quarter of an hour", exactly(900), "h", 0, ""},
		{quantity.Duration, "three quarters of an hour", exactly(2700), "h", 0, ""},
		{quantity.Duration, "half a minute", exactly(30), "min", 0, ""},
		{quantity.Duration, "a minute and a half", exactly(90), "min", 0, ""},
		{quantity.Duration, "2 days", exactly(172800), "days", 0, ""},
		{quantity.Speed, "36 km/h", exactly(10), "km/h", metric, ""},
		{quantity.Speed, "5 MPH", exactly(2.2352), "mph", us, "1 mph = 0.44704 m/s by definition"},
		{quantity.RotationalSpeed, "30 rpm", exactly(math.Pi), "rpm", 0, ""},
		{quantity.RotationalSpeed, "15 000 rpm", exactly(500 * math.Pi), "rpm", 0, "a blank parts thousands and nothing else"},
		{quantity.TorqueConstant, "0.006 N m/A", exactly(0.006), "N m/A", 0, ""},
		{quantity.TorqueConstant, "6 mNm/A", exactly(0.006), "mN m/A", 0, ""},
		{quantity.TorqueConstant, "1000 rpm/V", exactly(30 / (1000 * math.Pi)), "rpm/V", 0, "speed per volt is its inverse"},
		{
			quantity.TorqueConstant, "500 to 1000 rpm/V",
			quantity.Range{Low: 30 / (1000 * math.Pi), Likely: 45 / (1000 * math.Pi), High: 60 / (1000 * math.Pi)},
			"rpm/V", 0, "more turns per volt is less torque: the ends change places",
		},
		{quantity.Inertia, "80 g cm2", exactly(8e-6), "g cm2", 0, ""},
		{quantity.Inertia, "8e-6 kg m2", exactly(8e-6), "kg m2", 0, "a power of ten"},
		{quantity.Inertia, "8e-6 kg*m^2", exactly(8e-6), "kg m2", 0, ""},
		{quantity.Inductance, "0.1 mH", exactly(1e-4), "mH", 0, ""},
		{quantity.Capacitance, "1000 uF", exactly(1e-3), "uF", 0, ""},
		{quantity.Capacitance, "1000 \u00b5F", exactly(1e-3), "uF", 0, "micro sign"},
		{quantity.Force, "20 lb", exactly(20 * lb * 9.80665), "lbf", us, "a spring scale reads pounds"},
		{quantity.Force, "4 kg", exactly(4 * 9.80665), "kgf", metric, "a luggage scale reads kilograms"},
		{quantity.Age, "5 years", exactly(5), "years", 0, ""},
		{quantity.Age, "18 months", exactly(1.5), "months", 0, ""},
		{quantity.Age, "5", exactly(5), "", 0, ""},
		{quantity.Age, "four", exactly(4), "", 0, ""},
		{quantity.Age, "she is four", exactly(4), "", 0, ""},
		{quantity.Age, "He's twelve years old", exactly(12), "years", 0, ""},
		{quantity.Age, "a three-year-old", exactly(3), "years", 0, ""},
		{quantity.Age, "four to six", quantity.Range{Low: 4, Likely: 5, High: 6}, "", 0, ""},
		{quantity.Age, "4 to 6", quantity.Range{Low: 4, Likely: 5, High: 6}, "", 0, ""},
		{quantity.Ratio, "110:1", exactly(110), "", 0, ""},
		{quantity.Ratio, "110", exactly(110), "", 0, ""},
		{quantity.Count, "2", exactly(2), "", 0, ""},
	} {
		got, written, err := quantity.Parse(c.kind, c.text)
		if err != nil {
			t.Errorf("Parse(%v, %q): %v (%s)", c.kind, c.text, err, c.why)
			continue
		}
		if d := cmp.Diff(c.want, got, near); d != "" {
			t.Errorf("Parse(%v, %q) (%s): -want +got\n%s", c.kind, c.text, c.why, d)
		}
		if want := (quantity.Written{Unit: c.unit, System: c.system}); written != want {
			t.Errorf("Parse(%v, %q) was written in %+v, want %+v", c.kind, c.text, written, want)
		}
	}
}

func TestParseSaysWhatWouldBeRight(t *testing.T) {
	for _, c := range []struct {
		kind quantity.Kind
		text string
		want string
		why  string
	}{
		{quantity.Charge, "7", `read "7"; want a charge with its unit (Ah, mAh), such as "7 Ah"`, "no unit"},
		{quantity.Charge, "", `read ""; want a charge with its unit (Ah, mAh), such as "7 Ah"`, "empty"},
		{quantity.Charge, "7 kg", `read "7 kg"; want a charge with its unit (Ah, mAh), such as "7 Ah"; "kg" is no unit of it`, "another kind"},
		{quantity.Current, "1,000 mA", `read "1,000 mA"; want "1 mA" or "1000 mA"; "1,000" can be read in two ways`, "one thousand, or one"},
		{quantity.RotationalSpeed, "15.000 rpm", `read "15.000 rpm"; want "15 rpm" or "15000 rpm"; "15.000" can be read in two ways`, "a German catalogue"},
		{quantity.Mass, "1.000,5 kg", `read "1.000,5 kg"; want at most one decimal mark and none between thousands; "1.000,5" can be read in more than one way`, "two marks"},
		{quantity.Resistance, "80 MOhm", `read "80 MOhm"; want a resistance from 0 Ohm to 10000 Ohm; MOhm is a million Ohm, mOhm a thousandth of one`, "mega for milli"},
		{quantity.Voltage, "12 MV", `read "12 MV"; want a voltage with its unit (V, mV, kV), such as "12 V"; "MV" is no unit of it`, "mega is not taken for milli here"},
		{quantity.Voltage, "-12 V", `read "-12 V"; want a voltage from 0 V to 1000 V`, "negative"},
		{quantity.Voltage, "0x10 V", `read "0x10 V"; want a voltage with its unit (V, mV, kV), such as "12 V"; "x" is no unit of it`, "hexadecimal"},
		{quantity.Voltage, "NaN", `read "NaN"; want a voltage with its unit (V, mV, kV), such as "12 V"`, "not a number"},
		{quantity.Voltage, "inf V", `read "inf V"; want a voltage with its unit (V, mV, kV), such as "12 V"`, "infinite"},
		{quantity.Voltage, "1e400 V", `read "1e400 V"; want a plain number, such as "12 V"`, "beyond a float"},
		{quantity.Voltage, "20 to 12 V", `read "20 to 12 V"; want the smaller value first`, "backwards"},
		{quantity.Voltage, "12 V or so", `read "12 V or so"; want a voltage with its unit (V, mV, kV), such as "12 V"; "V or so" is no unit of it`, "words behind"},
		{quantity.Voltage, "12 V to 14 V to 16 V", `read "12 V to 14 V to 16 V"; want a voltage with its unit (V, mV, kV), such as "12 V"; "to" is not understood`, "three ends"},
		{quantity.Mass, "20 to 26 kg, likely 30", `read "20 to 26 kg, likely 30"; want a likely value inside the range`, ""},
		{quantity.Mass, "2 lb 20 oz", `read "2 lb 20 oz"; want a mass with its unit (kg, lb, g, oz), such as "20 kg"; "20" does not follow on`, "more ounces than a pound"},
		{quantity.Mass, "2 lb 3 g", `read "2 lb 3 g"; want a mass with its unit (kg, lb, g, oz), such as "20 kg"; "3" does not follow on`, "two systems in one value"},
		{quantity.Duration, "1:30", `read "1:30"; want a time with its unit (s, min, h, ms), such as "25 s"`, "hours or minutes"},
		{quantity.Duration, "1:75 h", `read "1:75 h"; want hours and minutes such as "1:30 h", or minutes and seconds such as "1:30 min"`, ""},
		{quantity.Fraction, "85", `read "85"; want a fraction from 0 to 1 or a percentage, such as "85 %"`, "percent forgotten"},
		{quantity.Fraction, "105 %", `read "105 %"; want a fraction from 0 % to 100 %`, ""},
		{quantity.Grade, "3", `read "3"; want a slope with its unit (%, deg), such as "3 %"`, ""},
		{quantity.Gauge, "60", `read "60"; want a wire gauge from 4/0 AWG to 40 AWG`, ""},
		{quantity.Gauge, "about 14", `read "about 14"; want a wire gauge with its unit (AWG), such as "14 AWG" without "about"`, "a size is stepped"},
		{quantity.Area, "14 AWG", `read "14 AWG"; want a wire area with its unit (mm2, cmil, kcmil), such as "2.5 mm2"; "AWG" is no unit of it`, ""},
		{quantity.Count, "a few", `read "a few"; want a whole number, such as "2"`, ""},
		{quantity.Gauge, "2.5", `read "2.5"; want a whole gauge number, such as "14 AWG", or square millimetres as an area, such as "2.5 mm2"`, ""},
		{quantity.Count, "2.5", `read "2.5"; want a whole number, such as "2"`, ""},
		{quantity.Count, "2 to 3", `read "2 to 3"; want one whole number, such as "2"`, ""},
		{quantity.TorqueConstant, "0 rpm/V", `read "0 rpm/V"; want a torque constant with its unit (N m/A, mN m/A, V s/rad, V/krpm), such as "0.006 N m/A"`, "division by zero"},
		{quantity.Inductance, "1 F", `read "1 F"; want an inductance with its unit (mH, uH, H, nH), such as "0.1 mH"; "F" is no unit of it`, "an before a vowel"},
		{quantity.NoKind, "1", `read "1"; want a known kind of quantity`, "programming mistake, still no panic"},
		{quantity.Kind(99), "1", `read "1"; want a known kind of quantity`, ""},
		{quantity.Mass, strings.Repeat("9", 5000) + " kg", "read \"" + strings.Repeat("9", 60) + "...\"; want a mass with its unit (kg, lb, g, oz), such as \"20 kg\"", "very long"},
		{quantity.Mass, "20 kg\x00", "read \"20 kg\\x00\"; want a mass with its unit (kg, lb, g, oz), such as \"20 kg\"", "control character"},
		{quantity.Mass, "20 \xff kg", "read \"20 \\xff kg\"; want a mass with its unit (kg, lb, g, oz), such as \"20 kg\"", "not UTF-8"},
	} {
		r, _, err := quantity.Parse(c.kind, c.text)
		if err == nil {
			t.Errorf("Parse(%v, %.80q) = %v, want an error (%s)", c.kind, c.text, r, c.why)
			continue
		}
		if got := err.Error(); got != c.want {
			t.Errorf("Parse(%v, %.80q) (%s)\ngot  %s\nwant %s", c.kind, c.text, c.why, got, c.want)
		}
	}
}

func TestParseInNamesTheCallersBounds(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"400 g", `read "400 g"; want a mass from 500 g to 500 kg`},
		{"0.5 lb", `read "0.5 lb"; want a mass from 1.1 lb to 1102 lb`},
		{"1,200 kg", `read "1,200 kg"; want a mass from 500 g to 500 kg`},
	} {
		_, _, err := quantity.ParseIn(quantity.Mass, c.text, 0.5, 500)
		if c.text == "1,200 kg" {
			// 1200 kg is out of bounds, so the comma can only be a decimal mark.
			if err != nil {
				t.Errorf("ParseIn(%q): %v, want 1.2 kg", c.text, err)
			}
			continue
		}
		if err == nil || err.Error() != c.want {
			t.Errorf("ParseIn(%q)\ngot  %v\nwant %s", c.text, err, c.want)
		}
	}
	_, _, err := quantity.ParseIn(quantity.RotationalSpeed, "12,500 rpm", 10, 10000)
	const want = `read "12,500 rpm"; want "12500 rpm"; the mark in "12,500" could part thousands or decimals`
	if err == nil || err.Error() != want {
		t.Errorf("only the thousands make sense\ngot  %v\nwant %s", err, want)
	}
	// A bound met in another unit is met, though its last bit may differ.
	r, _, err := quantity.ParseIn(quantity.Length, "10 in", 0.254, 1)
	if err != nil || r.Low < 0.254 {
		t.Errorf("10 in against a least of 0.254 m: %v, %v", r, err)
	}
}

func TestAMarginMakesARangeAroundItsMiddle(t *testing.T) {
	for _, c := range []struct {
		kind              quantity.Kind
		text              string
		low, likely, high float64
	}{
		{quantity.Duration, "25 min +- 3", 22 * 60, 25 * 60, 28 * 60},
		{quantity.Duration, "25 +- 3 min", 22 * 60, 25 * 60, 28 * 60},
		{quantity.Voltage, "11.8 V \u00b1 0.1 V", 11.7, 11.8, 11.9},
		{quantity.Force, "40 N +/- 20 %", 32, 40, 48},
		{quantity.Temperature, "20 C +- 3 C", 17, 20, 23},
		{quantity.Fraction, "80 % +- 10 %", 0.7, 0.8, 0.9},
		{quantity.Speed, "5 km/h+-1 km/h", 4 / 3.6, 5 / 3.6, 6 / 3.6},
	} {
		r, _, err := quantity.Parse(c.kind, c.text)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		want := quantity.Spread(c.low, c.likely, c.high)
		if math.Abs(r.Low-want.Low)+math.Abs(r.Likely-want.Likely)+math.Abs(r.High-want.High) > 1e-9 {
			t.Errorf("%q is %v, want %v", c.text, r, want)
		}
	}
	for _, text := range []string{"25 min +-", "25 min +- -3", "about 25 min +- 3", "25 +- 3", "25 min +- 3 V", "+- 3 min"} {
		if r, _, err := quantity.Parse(quantity.Duration, text); err == nil {
			t.Errorf("%q is read as %v, want an error", text, r)
		}
	}
}
