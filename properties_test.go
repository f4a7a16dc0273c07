package packcheck_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/report"
	"example.org/packcheck/tables"
)

// answer assesses a sheet that must be in order.
func answer(t testing.TB, s sheet) *packcheck.Assessment {
	t.Helper()
	return read(t, s.toml())
}

// doneProperly is the setup that says everything: converter, current limit,
// soft start, cutoff, fuse.
func doneProperly(t testing.TB) sheet { return sheetOf(t, "examples/tractor-done-properly.toml") }

// onContacts is the same tractor with a plain pedal switch and nothing else
// between pack and motors but a cutoff.
func onContacts(t testing.TB) sheet {
	return doneProperly(t).without("fuse", "charger", "controller", "original.pack", "original.controller").
		with("controller.kind", `"contacts"`, "controller.resistance", `"10 mOhm"`)
}

// series is one figure over several values of one key.
type series struct {
	name   string
	base   sheet
	key    string
	values []string
	of     func(*packcheck.Assessment) float64
}

// falls and rises check the order of a series; equal neighbours pass, and so
// does what rounding of steps may do.
func (c series) falls(t *testing.T) { t.Helper(); c.ordered(t, -1) }
func (c series) rises(t *testing.T) { t.Helper(); c.ordered(t, +1) }

func (c series) ordered(t *testing.T, sign float64) {
	t.Helper()
	last, at := 0.0, ""
	for i, value := range c.values {
		now := c.of(answer(t, c.base.with(c.key, strconv.Quote(value))))
		if i > 0 && sign*(now-last) < -2e-3*math.Abs(last) {
			t.Errorf("%s: %s = %s gives %.6g, %s gave %.6g", c.name, c.key, value, now, at, last)
		}
		last, at = now, value
	}
}

func lasts(a *packcheck.Assessment) float64 { return a.Ride.LastsPedalMin }
func speed(a *packcheck.Assessment) float64 { return a.Steady.SpeedKmh }
func peak(a *packcheck.Assessment) float64  { return a.Launch.PeakBatteryA }
func left(a *packcheck.Assessment) float64  { return a.Ride.ChargeLeft }

func TestMoreOfAThingNeverHelpsWhereItCannot(t *testing.T) {
	t.Parallel()
	full, plain, lead := doneProperly(t), onContacts(t), labelsOnly()
	hill := func(s sheet) sheet { return s.with("vehicle.slope", `"4 %"`) }
	for name, base := range map[string]sheet{"done properly": full, "contacts": plain, "lead-acid": lead} {
		kids := []string{"10 kg", "15 kg", "20 kg", "30 kg", "45 kg"}
		series{name + ", heavier child", hill(base), "rider.mass", kids, lasts}.falls(t)
		series{name + ", heavier child", hill(base), "rider.mass", kids, speed}.falls(t)
		series{name + ", steeper", base, "vehicle.slope", []string{"0 %", "1 %", "2 %", "4 %", "6 %"}, lasts}.falls(t)
		series{name + ", steeper", base, "vehicle.slope", []string{"0 %", "1 %", "2 %", "4 %", "6 %"}, speed}.falls(t)
		series{name + ", larger pack", base, "pack.capacity", []string{"3 Ah", "5 Ah", "7 Ah", "12 Ah", "20 Ah"}, lasts}.rises(t)
		series{name + ", healthier pack", base, "pack.health", []string{"30 %", "50 %", "70 %", "85 %", "100 %"}, lasts}.rises(t)
		series{name + ", fuller pack", base, "pack.charge", []string{"40 %", "60 %", "80 %", "100 %"}, lasts}.rises(t)
		series{name + ", more resistance", base, "pack.resistance", []string{"30 mOhm", "60 mOhm", "90 mOhm", "150 mOhm"}, speed}.falls(t)
		series{name + ", more resistance", base, "pack.resistance", []string{"30 mOhm", "60 mOhm", "90 mOhm", "150 mOhm"}, func(a *packcheck.Assessment) float64 { return a.Pack.ShortCircuitA }}.falls(t)
	}
}

func wireHeat(a *packcheck.Assessment) float64 {
	for _, e := range a.Path.Elements {
		if e.Name == "wire" {
			return e.HeatW
		}
	}
	return math.NaN()
}

// Thicker wire is cooler at the same load, loses less and never slows down. It
// lets more through at launch, and so the motors may get hotter: that is no
// contradiction.
func TestThickerWireIsNeverHotterOrSlower(t *testing.T) {
	t.Parallel()
	gauges := []string{"20 AWG", "18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG"}
	areas := []string{"0.5 mm2", "0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2"}
	for _, base := range []sheet{doneProperly(t), onContacts(t)} {
		bare := base.with("wire.gauge", "")
		for _, c := range []series{
			{"gauge", base, "wire.gauge", gauges, nil}, {"area", bare, "wire.area", areas, nil},
		} {
			c.of = speed
			c.rises(t)
			c.of = wireHeat
			c.falls(t)
			c.of = func(a *packcheck.Assessment) float64 { return a.Path.DropV }
			c.falls(t)
			c.of = func(a *packcheck.Assessment) float64 { return a.Path.AmpacityA }
			c.rises(t)
		}
	}
}

func TestALowerLimitOrALongerRampNeverRaisesThePeak(t *testing.T) {
	t.Parallel()
	for name, base := range map[string]sheet{
		"done properly": doneProperly(t),
		"no converter":  onContacts(t).with("controller.kind", `"chopper"`, "controller.max_voltage", `"30 V"`),
		"lead-acid":     labelsOnly().with("controller.kind", `"chopper"`),
	} {
		limits := []string{"12 A", "16 A", "20 A", "30 A", "50 A", "80 A"}
		series{name, base.with("controller.ramp", ""), "controller.current_limit", limits, peak}.rises(t)
		series{name, base.with("controller.ramp", ""), "controller.current_limit", limits, func(a *packcheck.Assessment) float64 { return a.Launch.PeakMotorA }}.rises(t)
		series{name, base.with("controller.ramp", ""), "controller.current_limit", limits, func(a *packcheck.Assessment) float64 { return a.Launch.BlockedMotorA }}.rises(t)
		// A free launch: on level ground, no limit.
		ramps := []string{"0 s", "0.1 s", "0.3 s", "1 s", "3 s", "10 s", "30 s"}
		series{name, base.with("controller.current_limit", ""), "controller.ramp", ramps, peak}.falls(t)
	}
}

// Common practice, no published source: a second cutoff in the chain never
// makes things worse. What a device draws itself is the one exception, and so
// is one that opens on a full pack; neither is tried here.
func TestASecondCutoffNeverMakesThingsWorse(t *testing.T) {
	t.Parallel()
	base := doneProperly(t)
	one := answer(t, base)
	days := func(a *packcheck.Assessment) float64 {
		if a.Cutoff.IdleDaysToHarm == nil {
			return math.Inf(1)
		}
		return *a.Cutoff.IdleDaysToHarm
	}
	for _, place := range []string{"pack", "controller"} {
		for _, volts := range []string{"10 V", "13 V", "15 V", "16 V", "16.5 V", "17 V", "18 V"} {
			two := answer(t, base.with("cutoff."+place+".opens_at", strconv.Quote(volts), "cutoff."+place+".delay", `"2 s"`,
				"cutoff."+place+".standby_current", `"0 A"`))
			what := fmt.Sprintf("a second cutoff in the %s at %s", place, volts)
			if two.Verdict > one.Verdict {
				t.Errorf("%s: %v, alone %v: %+v", what, two.Verdict, one.Verdict, two.Findings[0])
			}
			if left(two) < left(one)-1e-3 || two.Cutoff.WeakestCellV < one.Cutoff.WeakestCellV-1e-3 || days(two) < days(one)*0.999 {
				t.Errorf("%s: %.3f left, weakest cell %.3f V, %.1f days; alone %.3f, %.3f V, %.1f days", what,
					left(two), two.Cutoff.WeakestCellV, days(two), left(one), one.Cutoff.WeakestCellV, days(one))
			}
		}
	}
}

func TestAHigherCutoffLeavesMoreCharge(t *testing.T) {
	series{"tool pack", doneProperly(t), "cutoff.module.opens_at", []string{"14 V", "15 V", "16 V", "17 V", "18 V", "19 V"}, left}.rises(t)
	series{"lead-acid", labelsOnly(), "cutoff.module.opens_at", []string{"9 V", "10 V", "10.5 V", "11 V", "11.5 V"}, left}.rises(t)
}

// A colder pack never lasts longer, where a cutoff or the wells of a lead-acid
// block end the ride. (A lithium pack that nothing stops gives all its charge
// at any temperature, and the slower ride of a cold one even takes a little
// longer: that is not tried here.)
func TestAColderPackNeverLastsLonger(t *testing.T) {
	t.Parallel()
	temps := []string{"-15 C", "-5 C", "0 C", "10 C", "20 C", "30 C"}
	series{"tool pack", doneProperly(t), "pack.temperature", temps, lasts}.rises(t)
	series{"lead-acid", labelsOnly(), "pack.temperature", temps, lasts}.rises(t)
	bench := benchLoad().with("load.until", `"10.5 V"`, "outing.air", `"20 C"`)
	series{"bench", bench, "pack.temperature", temps, lasts}.rises(t)
}

func near(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: got %.6g, want %.6g within %g %%", what, got, want, 100*share)
	}
}

func TestSeriesDoublesTheVoltsAndParallelTheAmpHours(t *testing.T) {
	t.Parallel()
	for _, chemistry := range []string{"li-ion", "lifepo4", "agm", "nimh"} {
		bench := sheet{
			"pack.chemistry": strconv.Quote(chemistry), "pack.cells_in_series": "6", "pack.capacity": `"4 Ah"`,
			"pack.health": `"100 %"`, "load.current": `"2 A"`, "pack.max_current": `"20 A"`,
		}
		one := answer(t, bench)
		twelve := answer(t, bench.with("pack.cells_in_series", "12"))
		series := answer(t, bench.with("pack.joined", `"series"`))
		parallel := answer(t, bench.with("pack.joined", `"parallel"`, "load.current", `"4 A"`))
		twice := answer(t, bench.with("pack.capacity", `"8 Ah"`, "load.current", `"4 A"`, "pack.max_current", `"40 A"`))
		for name, two := range map[string]*packcheck.Assessment{"twice the cells": twelve, "two joined in series": series} {
			near(t, chemistry+", "+name+", full", two.Pack.FullV, 2*one.Pack.FullV, 1e-9)
			near(t, chemistry+", "+name+", nominal", two.Pack.NominalV, 2*one.Pack.NominalV, 1e-9)
			near(t, chemistry+", "+name+", empty", two.Pack.EmptyV, 2*one.Pack.EmptyV, 1e-9)
			near(t, chemistry+", "+name+", charge", two.Pack.RatedAh, one.Pack.RatedAh, 1e-9)
			near(t, chemistry+", "+name+", resistance", two.Pack.ResistanceOhm, 2*one.Pack.ResistanceOhm, 1e-6)
			near(t, chemistry+", "+name+", energy at the same amps", two.Pack.UsableWh, 2*one.Pack.UsableWh, 0.01)
		}
		for name, two := range map[string]*packcheck.Assessment{"two joined in parallel": parallel, "one of twice the charge": twice} {
			near(t, chemistry+", "+name+", charge", two.Pack.RatedAh, 2*one.Pack.RatedAh, 1e-9)
			near(t, chemistry+", "+name+", volts", two.Pack.FullV, one.Pack.FullV, 1e-9)
			near(t, chemistry+", "+name+", resistance", two.Pack.ResistanceOhm, one.Pack.ResistanceOhm/2, 1e-6)
			near(t, chemistry+", "+name+", time at twice the amps", two.Ride.PedalMin, one.Ride.PedalMin, 0.01)
		}
	}
}

// A pack of two strings is one string of cells of twice the charge.
func TestTwoStringsAreOneOfTwiceTheCharge(t *testing.T) {
	one := answer(t, doneProperly(t).with("pack.strings", "1", "pack.label", ""))
	two := answer(t, doneProperly(t).with("pack.strings", "2", "pack.label", ""))
	two.Pack.Strings = one.Pack.Strings
	sameFigures(t, "strings", one, two, 1e-12)
	short := answer(t, labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"5S1P 21700 4 Ah"`))
	long := answer(t, labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"5S2P 21700 4 Ah"`))
	near(t, "charge of 5S2P", long.Pack.RatedAh, 2*short.Pack.RatedAh, 1e-9)
}

// figures flattens the numbers of an assessment.
func figures(t testing.TB, a *packcheck.Assessment) map[string]float64 {
	t.Helper()
	text, err := json.Marshal(a)
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal(text, &tree); err != nil {
		t.Fatal(err)
	}
	out := map[string]float64{}
	var walk func(string, any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for key, one := range v {
				walk(path+"."+key, one)
			}
		case []any:
			for i, one := range v {
				walk(fmt.Sprintf("%s.%d", path, i), one)
			}
		case float64:
			out[path] = v
		}
	}
	walk("", tree)
	return out
}

// sameFigures compares every number of two assessments and their findings.
func sameFigures(t *testing.T, what string, a, b *packcheck.Assessment, share float64) {
	t.Helper()
	fa, fb := figures(t, a), figures(t, b)
	for _, path := range slices.Sorted(maps.Keys(fa)) {
		if v, ok := fb[path]; !ok || math.Abs(v-fa[path]) > share*max(math.Abs(v), 1e-9) {
			t.Errorf("%s: %s is %.12g and %.12g", what, path, fa[path], v)
		}
	}
	if len(fa) != len(fb) || a.Verdict != b.Verdict || len(a.Findings) != len(b.Findings) {
		t.Errorf("%s: %d and %d figures, %v and %v, %d and %d findings", what, len(fa), len(fb), a.Verdict, b.Verdict, len(a.Findings), len(b.Findings))
	}
}

// Exact by definition: 1 lb = 0.45359237 kg, 1 in = 25.4 mm (international
// yard and pound, 1959); 77 F = 25 C, 64.4 F = 18 C.
func TestMetricAndCustomaryUnitsGiveTheSameFigures(t *testing.T) {
	metric := doneProperly(t).with("rider.mass", `"20.41165665 kg"`, "vehicle.mass", `"15.87573295 kg"`,
		"vehicle.wheel_diameter", `"254 mm"`, "wire.one_way_length", `"0.9144 m"`, "fuse.distance_from_pack", `"101.6 mm"`)
	customary := metric.with("rider.mass", `"45 lb"`, "vehicle.mass", `"35 lb"`,
		"vehicle.wheel_diameter", `"10 in"`, "wire.one_way_length", `"3 ft"`, "fuse.distance_from_pack", `"4 in"`,
		"wire.insulation", `"221 F"`, "pack.temperature", `"64.4 F"`, "outing.air", `"64.4 F"`)
	a, b := answer(t, metric), answer(t, customary)
	// A short anywhere along the wire leaves it the same margin to the last
	// digit (both times go with the square of the current), so which place is
	// shown hangs on rounding; the margin does not.
	near(t, "margin in a short circuit", *a.Path.WireLimitS / *a.Path.ShortCircuitClearS, *b.Path.WireLimitS / *b.Path.ShortCircuitClearS, 1e-9)
	for _, x := range []*packcheck.Assessment{a, b} {
		x.Path.ShortCircuitA, x.Path.ShortCircuitClearS, x.Path.WireLimitS = 0, nil, nil
		for i := range x.Findings {
			if x.Findings[i].Code == "short-cleared" {
				x.Findings[i].Found, x.Findings[i].Limit = 0, 0
			}
		}
	}
	sameFigures(t, "units", a, b, 1e-9)
}

func TestADecimalCommaIsAPoint(t *testing.T) {
	point := doneProperly(t).with("rider.mass", `"20.5 kg"`, "wire.one_way_length", `"0.95 m"`, "motors.no_load_current", `"1.45 A"`)
	comma := doneProperly(t).with("rider.mass", `"20,5 kg"`, "wire.one_way_length", `"0,95 m"`, "motors.no_load_current", `"1,45 A"`)
	sameFigures(t, "comma", answer(t, point), answer(t, comma), 0)
}

func TestOrderAndLayoutOfAFileDoNotMatter(t *testing.T) {
	base := doneProperly(t).with("title", "", "pack.health", `"80 to 95 %"`, "wire.joints", "")
	want := everyByte(t, base.toml())
	random := rand.New(rand.NewPCG(3, 4))
	for range 5 {
		byTable := map[string][]string{}
		for _, key := range slices.Sorted(maps.Keys(base)) {
			i := strings.LastIndexByte(key, '.')
			byTable[key[:i]] = append(byTable[key[:i]], key[i+1:]+"="+base[key])
		}
		names := slices.Sorted(maps.Keys(byTable))
		random.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
		var b strings.Builder
		for _, name := range names {
			lines := byTable[name]
			random.Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
			fmt.Fprintf(&b, "\r\n  [ %s ]   # a remark\r\n\t%s\r\n", name, strings.Join(lines, " # x\r\n\r\n"))
		}
		if got := everyByte(t, "\ufeff"+b.String()); got != want {
			t.Errorf("another order gives another report:\n%s", b.String())
		}
	}
	dotted := strings.Builder{}
	for _, key := range slices.Sorted(maps.Keys(base)) {
		fmt.Fprintf(&dotted, "%s = %s\n", key, base[key])
	}
	if everyByte(t, dotted.String()) != want {
		t.Error("dotted keys give another report")
	}
}

// everyByte is the report in every format.
func everyByte(t testing.TB, text string) string {
	t.Helper()
	a := read(t, text)
	var out bytes.Buffer
	for _, format := range report.Formats() {
		for _, short := range []bool{false, true} {
			if err := report.Write(&out, a, report.Options{Format: format, Short: short}); err != nil {
				t.Fatal(err)
			}
		}
	}
	return out.String()
}

func TestTablesThatDoNotConcernTheRideDoNotChangeIt(t *testing.T) {
	for name, base := range map[string]sheet{"full": doneProperly(t).without("charger"), "labels": labelsOnly(), "bench": benchLoad()} {
		before := answer(t, base)
		after := answer(t, base.with(
			"title", `"x"`, "storage.from", "2026-11-01", "storage.until", "2027-03-01", "storage.temperature", `"-5 C"`,
			"charger.label", `"12 V 1000 mA"`, "charger.stops", `"never"`, "measured.fuse_rating", `"10 A"`, "measured.fuse_seconds", `"3 s"`,
			"measured.reset_seconds", `"20 s"`))
		for _, pair := range [][2]any{{before.Ride, after.Ride}, {before.Steady, after.Steady}, {before.Launch, after.Launch}, {before.Pack, after.Pack}, {before.Path, after.Path}, {before.Cutoff, after.Cutoff}} {
			x, _ := json.Marshal(pair[0])
			y, _ := json.Marshal(pair[1])
			if !bytes.Equal(x, y) {
				t.Errorf("%s:\n%s\n%s", name, x, y)
			}
		}
	}
}

// The power of a bench load is what its rows say: volts at the load times
// amperes.
func TestAPowerLoadDrawsThatPower(t *testing.T) {
	for _, s := range []sheet{
		benchLoad().with("load.current", "", "load.power", `"60 W"`),
		benchLoad().with("load.current", "", "load.power", `"60 W"`, "wire.gauge", `"18 AWG"`, "wire.one_way_length", `"2 m"`),
		benchLoad().with("load.current", "", "load.power", `"200 W"`, "pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`),
	} {
		loaded, err := packcheck.Read(strings.NewReader(s.toml()), "power.toml")
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := packcheck.Trace(loaded, &out); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(&out).ReadAll()
		if err != nil || len(rows) < 50 {
			t.Fatalf("%d rows, %v", len(rows), err)
		}
		watts, _ := strconv.ParseFloat(strings.Fields(strings.Trim(s["load.power"], `"`))[0], 64)
		for _, row := range rows[1 : len(rows)-2] { // the last steps are cut short at the end
			amps, _ := strconv.ParseFloat(row[1], 64)
			volts, _ := strconv.ParseFloat(row[3], 64)
			near(t, "at "+row[0]+" s", amps*volts, watts, 0.005)
		}
		a := answer(t, s)
		if s["wire.gauge"] == "" {
			near(t, "energy over time", a.Ride.DeliveredWh, watts*a.Ride.PedalMin/60, 0.005)
		} else if a.Ride.DeliveredWh <= watts*a.Ride.PedalMin/60 {
			t.Errorf("the wire takes nothing: %g Wh", a.Ride.DeliveredWh)
		}
	}
}

// A tiny load takes out nearly all the energy that is there; nothing takes
// more.
func TestNoLoadTakesMoreEnergyThanAPackHolds(t *testing.T) {
	t.Parallel()
	for chemistry, label := range map[string]string{"li-ion": "18 V 5 Ah", "lifepo4": "12.8 V 7 Ah", "agm": "12 V 7 Ah", "gel": "12 V 7 Ah", "nimh": "12 V 3 Ah"} {
		pack := benchLoad().with("pack.chemistry", strconv.Quote(chemistry), "pack.label", strconv.Quote(label), "pack.health", `"100 %"`)
		most := answer(t, pack.with("load.current", `"20 mA"`)).Pack.UsableWh
		last := most
		for _, amps := range []string{"0.3 A", "1 A", "3 A", "10 A", "20 A"} {
			wh := answer(t, pack.with("load.current", strconv.Quote(amps))).Pack.UsableWh
			if wh > last*1.01 { // a pack that warms itself gains a little back
				t.Errorf("%s at %s gives %.1f Wh, at less current %.1f", chemistry, amps, wh, last)
			}
			last = wh
		}
	}
}

// Common practice, no published source: with the same load, time goes with
// amp-hours; 12 Ah against 1.5 Ah at 18 V is about eight times. At a current
// that neither minds it is eight times exactly.
func TestTimeGoesWithAmpHoursOnTheBench(t *testing.T) {
	at := func(ah string) float64 {
		return answer(t, sheet{"pack.chemistry": `"li-ion"`, "pack.label": strconv.Quote("18 V " + ah), "load.current": `"0.3 A"`, "load.until": `"15 V"`}).Ride.PedalMin
	}
	near(t, "12 Ah over 1.5 Ah", at("12 Ah")/at("1.5 Ah"), 8, 0.05)
}

// Common practice, no published source: a motor with the higher printed
// no-load speed can be slower on the ground, because it has less torque per
// ampere or more resistance.
func TestTheMotorWithTheHigherPrintedSpeedCanBeSlower(t *testing.T) {
	grass := onContacts(t).with("vehicle.ground", `"long grass"`)
	weak := answer(t, grass.with("motors.no_load_speed", `"16000 rpm"`, "motors.stall_current", `"12 A"`))
	strong := answer(t, grass.with("motors.no_load_speed", `"13000 rpm"`, "motors.stall_current", `"60 A"`))
	if weak.Steady.SpeedKmh >= strong.Steady.SpeedKmh {
		t.Errorf("16000 rpm drives %.2f km/h, 13000 rpm %.2f", weak.Steady.SpeedKmh, strong.Steady.SpeedKmh)
	}
}

// Common practice, no published source: lithium hits harder at launch than
// sealed lead-acid of the same voltage, and every chemistry harder the larger
// the pack.
func TestLithiumHitsHarderThanLeadAcidWhateverTheGround(t *testing.T) {
	for _, ground := range []string{"smooth concrete", "short grass", "packed dirt"} {
		lead := labelled(t, "20 kg", ground, "12 V 7 Ah", "agm").Launch.PeakBatteryA
		lithium := labelled(t, "20 kg", ground, "12.8 V 7 Ah", "lifepo4").Launch.PeakBatteryA
		if lithium <= lead {
			t.Errorf("%s: lithium %.1f A, lead-acid %.1f A", ground, lithium, lead)
		}
	}
	series{"larger block", labelsOnly(), "pack.capacity", []string{"4 Ah", "7 Ah", "12 Ah", "20 Ah"}, peak}.rises(t)
}

// The figures by hand, from what the file says: force balance for the current,
// back-EMF for the speed, charge over current for the time.
func TestTheFiguresAgreeWithTheBackOfAnEnvelope(t *testing.T) {
	s := onContacts(t).with("outing.drive", `"10 min"`, "outing.pause", `"0 s"`)
	a := answer(t, s)

	grass, err := tables.Builtin().Ground("short grass")
	if err != nil {
		t.Fatal(err)
	}
	const (
		gravity    = 9.80665
		ratio, eff = 115.0, 0.60
		radius     = 0.13
		ratedV     = 12.0
		stallA     = 38.0
		noLoadA    = 1.4
		noLoadRPM  = 13000.0
	)
	mass := 20 + 16 + a.Pack.MassKg
	winding := ratedV / stallA
	torquePerA := (ratedV - noLoadA*winding) / (noLoadRPM * math.Pi / 30)
	v := a.Steady.SpeedKmh / 3.6
	drag := 0.5 * 1.2 * 0.5 * v * v // half the density of air times the drag area assumed
	force := mass*gravity*grass.Rolling.Likely/radius + drag
	perMotor := force*radius/(ratio*eff)/torquePerA/2 + noLoadA
	near(t, "current by the force balance", a.Steady.MotorA, 2*perMotor, 0.01)
	near(t, "battery current on contacts", a.Steady.BatteryA, 2*perMotor, 0.01)
	near(t, "speed by the back-EMF", v, (a.Steady.BusV-perMotor*winding)/torquePerA/ratio*radius, 0.01)
	inside := a.Launch.Case.R0Ohm + a.Launch.Case.RC[0].Ohm + a.Launch.Case.RC[1].Ohm // polarisation grown in
	near(t, "volts behind pack and path", a.Steady.BusV, a.Pack.FullV-a.Steady.BatteryA*(inside+a.Path.ResistanceOhm), 0.02)
	near(t, "blocked current", a.Launch.BlockedBatteryA, a.Pack.FullV/(a.Launch.Case.R0Ohm+a.Path.ResistanceOhm+winding/2), 0.02)
	near(t, "minutes by charge over current", a.Ride.PedalMin, a.Pack.UsableAh/a.Steady.BatteryA*60, 0.04)
	near(t, "distance by speed and time", a.Ride.DistanceKm, a.Steady.SpeedKmh*a.Ride.PedalMin/60, 0.12)
	near(t, "power out over power in", a.Steady.Efficiency, force*v/(a.Pack.FullV*a.Steady.BatteryA), 0.05)
	// 12 AWG: 2.053 mm diameter (ASTM B258), copper 0.0172 Ohm mm2/m, there and back.
	wire := 0.0172 * 2 * 0.9 / (math.Pi / 4 * 2.053 * 2.053)
	near(t, "resistance of wire, joints and switch", a.Path.ResistanceOhm, wire+6*0.001+0.010, 0.05)
}

// The same input gives the same bytes, whatever runs beside it.
func TestTheSameSetupGivesTheSameBytes(t *testing.T) {
	for _, file := range []string{"examples/tractor-tool-pack.toml", "examples/two-seater-tired-blocks.toml"} {
		text := sheetOf(t, file).toml()
		want := everyByte(t, text)
		for _, threads := range []int{1, 2} {
			was := runtime.GOMAXPROCS(threads)
			done := make(chan string)
			for range 10 {
				go func() { done <- everyByte(t, text) }()
			}
			for range 10 {
				if got := <-done; got != want {
					t.Errorf("%s: another report on %d threads", file, threads)
				}
			}
			runtime.GOMAXPROCS(was)
		}
	}
}

// has reports the worst level at which any of the codes was found.
func has(a *packcheck.Assessment, codes ...string) answer.Level {
	worst := answer.Fine
	for _, f := range a.Findings {
		if slices.Contains(codes, f.Code) {
			worst = max(worst, f.Level)
		}
	}
	return worst
}

// Whatever somebody then finds out about what was not known, inside what was
// allowed for, the figures stay inside the ranges that were promised.
func TestTheRangesHoldWhatIsLaterFoundOut(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	within := func(low, high float64, unit string) string {
		return fmt.Sprintf(`"%.4f %s"`, low+(high-low)*random.Float64(), unit)
	}
	bases := map[string]sheet{
		"lead-acid on grass": labelsOnly().with("vehicle.ground", `"short grass"`),
		"tool pack":          labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`),
	}
	for _, name := range slices.Sorted(maps.Keys(bases)) { // the same order of draws every time
		base := bases[name]
		promised := answer(t, base)
		for range 24 {
			s := base.with(
				"pack.health", within(80, 100, "%"), "gears.efficiency", within(52, 72, "%"), "vehicle.mass", within(10, 18, "kg"),
				"wire.gauge", fmt.Sprintf(`"%d AWG"`, 14+2*random.IntN(3)), "wire.one_way_length", within(0.6, 1.8, "m"),
				"wire.joints", strconv.Itoa(6+random.IntN(7)), "wire.joint_resistance", within(0.5, 10, "mOhm"),
				"controller.resistance", within(5, 60, "mOhm"), "motors.no_load_current", within(0.4, 2.5, "A"),
				"outing.air", within(10, 30, "C"), "outing.drive", within(15, 40, "s"), "outing.pause", within(5, 20, "s"))
			found := figures(t, answer(t, s))
			for _, path := range []string{"ride.lasts_pedal_min", "ride.lasts_clock_min", "ride.distance_km", "steady.speed_kmh", "steady.battery_a", "launch.peak_battery_a", "launch.blocked_battery_a", "pack.usable_ah"} {
				if r := promised.Ranges[path]; !r.Contains(found["."+path]) {
					t.Errorf("%s: %s turns out as %.4g, promised was %.4g to %.4g\n%s", name, path, found["."+path], r.Low, r.High, s.toml())
				}
			}
		}
	}
}

// A vehicle that is as it left the factory is once itself in everything.
func TestAnOriginalLikeTodaysIsOnceTheSame(t *testing.T) {
	for name, base := range map[string]sheet{
		"done properly": doneProperly(t).without("original.pack", "original.controller"),
		"labels":        labelsOnly().with("pack.health", `"100 %"`, "pack.resistance", `"30 mOhm"`),
	} {
		s := base.with()
		for key, value := range base {
			if table, _, _ := strings.Cut(key, "."); slices.Contains([]string{"pack", "cutoff", "controller"}, table) {
				s["original."+key] = value
			}
		}
		a := answer(t, s)
		for what, ratio := range map[string]*float64{
			"speed": a.Original.SpeedRatio, "launch": a.Original.LaunchCurrentRatio, "blocked": a.Original.BlockedCurrentRatio,
			"teeth": a.Original.ToothLoadRatio, "heat": a.Original.MotorHeatRatio, "ride": a.Original.RideRatio, "fault": a.Original.FaultCurrentRatio,
		} {
			if ratio == nil {
				t.Errorf("%s: no ratio of %s", name, what)
				continue
			}
			near(t, name+", "+what, *ratio, 1, 1e-6)
		}
		if has(a, "faster-than-original", "tooth-load", "tooth-load-blocked") > answer.Fine {
			t.Errorf("%s: it is held against itself", name)
		}
	}
}

// The rows of the time series are the ride that the report tells of.
func TestTheTraceIsTheRideOfTheReport(t *testing.T) {
	for name, s := range map[string]sheet{"done properly": doneProperly(t), "labels": labelsOnly(), "wanted": doneProperly(t).with("outing.wanted", `"20 min"`), "bench": benchLoad()} {
		loaded, err := packcheck.Read(strings.NewReader(s.toml()), "trace.toml")
		if err != nil {
			t.Fatal(err)
		}
		a, err := packcheck.Assess(loaded)
		if err != nil {
			t.Fatal(err)
		}
		var out bytes.Buffer
		if err := packcheck.Trace(loaded, &out); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(&out).ReadAll()
		if err != nil || len(rows) < 10 {
			t.Fatalf("%s: %d rows, %v", name, len(rows), err)
		}
		column := map[string]int{}
		for i, head := range rows[0] {
			column[head] = i
		}
		at := func(row []string, head string) float64 {
			v, err := strconv.ParseFloat(row[column[head]], 64)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
		last := rows[len(rows)-1]
		near(t, name+", end", at(last, "time_s"), a.Ride.ClockMin*60, 1e-3)
		if d := at(last, "charge") - a.Ride.ChargeLeft; math.Abs(d) > 2e-3 && a.Ride.ChargeLeft > 0 {
			t.Errorf("%s: %s of charge in the last row, the report says %g", name, last[column["charge"]], a.Ride.ChargeLeft)
		}
		before, hottest := -1.0, -100.0
		for _, row := range rows[1:] {
			if now := at(row, "time_s"); now < before {
				t.Errorf("%s: time goes back at %g s", name, now)
			} else {
				before = now
			}
			hottest = max(hottest, at(row, "pack_c"))
		}
		near(t, name+", hottest pack", hottest, a.Ride.PackC, 5e-3)
	}
}

// What the setup does not say is told, whoever assumed it.
func TestHiddenDefaultsAreListed(t *testing.T) {
	full := doneProperly(t).without("original.pack", "original.controller")
	for key, s := range map[string]sheet{
		"fuse.form":                  full.with("fuse.form", ""),
		"pack.chemistry":             full.with("pack.chemistry", ""),
		"pack.rate":                  full.with("pack.rate", ""),
		"pack.max_current":           full.with("pack.max_current", ""),
		"wire.insulation":            full.with("wire.insulation", ""),
		"vehicle.slope":              full.with("vehicle.slope", ""),
		"controller.ramp":            full.with("controller.ramp", "", "controller.current_limit", ""),
		"cutoff.module.delay":        full.with("cutoff.module.delay", ""),
		"outing.drive":               benchLoad().with("outing.pause", `"10 s"`),
		"vehicle.design_voltage":     full.with("vehicle.design_voltage", ""),
		"controller.resistance":      full.with("controller.resistance", ""),
		"vehicle.wheels":             full.with("vehicle.wheels", ""),
		"motors.wiring":              full.with("motors.wiring", ""),
		"gears.efficiency":           full.with("gears.efficiency", ""),
		"motors.no_load_current":     full.with("motors.no_load_current", ""),
		"pack.housing":               full.with("pack.housing", ""),
		"controller.kind":            full.with("controller.kind", ""),
		"motors.torque_constant":     full.with("motors.no_load_speed", ""),
		"motors.rated_voltage":       full.with("motors.rated_voltage", ""),
		"wire.joints":                full.with("wire.joints", ""),
		"wire.one_way_length":        full.with("wire.one_way_length", ""),
		"controller.standby_current": full.with("controller.standby_current", ""),
	} {
		a := answer(t, s)
		if !slices.ContainsFunc(a.Assumed, func(x packcheck.Assumed) bool { return x.Key == key }) {
			t.Errorf("%s is left out and not listed as assumed", key)
		}
	}
}

// A breaker that came back by itself is taken for the breaker that the setup
// describes.
func TestABreakerThatCameBackIsTheOneThatIsThere(t *testing.T) {
	says := func(s sheet) string {
		for _, m := range answer(t, s.with("measured.reset_seconds", `"45 s"`)).Measured {
			if m.Name == "came back after" {
				return m.Says
			}
		}
		return ""
	}
	plain := labelsOnly().with("pack.chemistry", `"li-ion"`, "pack.label", `"20 V max 5 Ah"`)
	breaker := plain.with("fuse.form", `"auto-reset breaker"`, "fuse.rating", `"30 A"`)
	if got := says(breaker); !strings.HasPrefix(got, "auto-reset breaker") {
		t.Errorf("with a breaker in the setup: %s", got)
	}
}

// Who takes the advice must not be told afterwards that it was wrong.
func TestTheAdvisedCutoffAndFusePassTheirOwnJudgement(t *testing.T) {
	t.Parallel()
	bare := doneProperly(t).without("pack", "charger", "cutoff.module", "original.pack", "original.controller")
	advised := 0
	for _, pack := range []string{"agm|12 V 7 Ah", "agm|24 V 12 Ah", "gel|12 V 7 Ah", "li-ion|20 V max 5 Ah", "li-ion|18 V 1.5 Ah", "lifepo4|12.8 V 6 Ah", "nimh|12 V 3 Ah"} {
		chemistry, label, _ := strings.Cut(pack, "|")
		for name, base := range map[string]sheet{"labels": labelsOnly(), "described": bare, "bench": benchLoad()} {
			for _, health := range []string{"100 %", "70 %"} {
				s := base.with("pack.chemistry", strconv.Quote(chemistry), "pack.label", strconv.Quote(label), "pack.health", strconv.Quote(health))
				what := fmt.Sprintf("%s, %s, %s healthy", pack, name, health)
				a := answer(t, s)
				v := a.Cutoff.Advised
				if v == nil {
					if has(a, "cutoff-cannot-protect") < answer.Watch {
						t.Errorf("%s: neither advice nor why there is none", what)
					}
					continue
				}
				advised++
				if v.OpensAtV >= a.Pack.FullV || v.ClosesAtV > 0 && v.ClosesAtV <= v.OpensAtV || v.MustLatch && v.ClosesAtV > 0 {
					t.Errorf("%s: advice %+v for a pack of %g V", what, *v, a.Pack.FullV)
				}
				taken := s.with("cutoff.module.opens_at", fmt.Sprintf(`"%g V"`, v.OpensAtV), "cutoff.module.delay", fmt.Sprintf(`"%g s"`, v.DelayS),
					"cutoff.module.standby_current", `"0 A"`)
				if v.ClosesAtV > 0 {
					taken = taken.with("cutoff.module.closes_at", fmt.Sprintf(`"%g V"`, v.ClosesAtV))
				}
				for _, f := range answer(t, taken).Findings {
					if f.Level >= answer.FixFirst && (f.Topic == packcheck.TopicCutoff || strings.HasPrefix(f.Code, "weakest-cell")) && !strings.HasPrefix(f.Title, "Possibly") {
						t.Errorf("%s: opened at %g V after %g s as advised: %v, %s", what, v.OpensAtV, v.DelayS, f.Level, f.Title)
					}
				}
				if a.Path == nil {
					continue
				}
				for _, amps := range a.Path.FuseSizesA {
					fused := answer(t, s.with("fuse.form", `"small blade"`, "fuse.rating", fmt.Sprintf(`"%g A"`, amps), "fuse.distance_from_pack", `"100 mm"`))
					for _, f := range fused.Findings {
						if slices.Contains([]string{"fuse-above-wire", "fuse-above-joint", "fuse-none-fits", "fuse-opens-running", "fuse-opens-at-launch", "short-burns-wire"}, f.Code) &&
							f.Level >= answer.FixFirst && !strings.HasPrefix(f.Title, "Possibly") {
							t.Errorf("%s: with %g A of the sizes %v: %v, %s", what, amps, a.Path.FuseSizesA, f.Level, f.Title)
						}
					}
				}
			}
		}
	}
	if advised < 30 {
		t.Errorf("advice for %d setups only", advised)
	}
}

// Who buys the charger that is described as the right one must not be told
// afterwards that it is wrong. (Of a tool pack's only its maker's own is.)
func TestTheRightChargerIsRight(t *testing.T) {
	t.Parallel()
	for chemistry, c := range map[string]struct{ label, madeFor, volts string }{
		"agm":     {"12 V 7 Ah", "agm", "14.7 V"},
		"gel":     {"12 V 7 Ah", "gel", ""},
		"lifepo4": {"12.8 V 6 Ah", "lifepo4", "14.6 V"},
		"li-ion":  {"18 V 5 Ah", "li-ion", "21 V"},
		"nimh":    {"12 V 3 Ah", "nimh", ""},
	} {
		s := benchLoad().with("pack.chemistry", strconv.Quote(chemistry), "pack.label", strconv.Quote(c.label), "outing.air", `"20 C"`,
			"charger.made_for", strconv.Quote(c.madeFor), "charger.current", `"0.6 A"`, "charger.stops", `"by itself"`, "charger.output", `"dc"`,
			"charger.polarity", `"centre positive"`, "charger.jack_polarity", `"centre positive"`, "charger.jack", `"pack"`)
		if chemistry == "li-ion" {
			s = s.with("charger.came_with_pack", "true")
		}
		a := answer(t, s.with("charger.voltage", `"1 V"`))
		if a.Charge.Match == "yes" {
			t.Errorf("%s: a charger of 1 V suits", chemistry)
		}
		volts := c.volts
		if volts == "" { // as the note of the report says it
			for _, n := range a.Notes {
				if _, rest, ok := strings.Cut(n.Text, "ends at "); ok {
					volts, _, _ = strings.Cut(rest, " V ")
					volts += " V"
				}
			}
		}
		if volts != "" {
			s = s.with("charger.voltage", strconv.Quote(volts))
		}
		a = answer(t, s)
		for _, f := range a.Findings {
			if f.Level >= answer.FixFirst && strings.HasPrefix(f.Code, "charge") && chemistry != "nimh" {
				t.Errorf("%s at %s: %v, %s", chemistry, volts, f.Level, f.Title)
			}
		}
		if h := a.Charge; h.HoursTo80 != nil && h.HoursToFull != nil && (*h.HoursTo80 > *h.HoursToFull || h.UnplugAfterH != nil && *h.UnplugAfterH < *h.HoursTo80) {
			t.Errorf("%s: %g h to 80 %%, %g h to full", chemistry, *h.HoursTo80, *h.HoursToFull)
		}
		// Nothing charges faster than its amps: charge over current, 80 % of it.
		if h := a.Charge.HoursToFull; h != nil && *h < 0.9*a.Ride.DeliveredAh/0.6 {
			t.Errorf("%s: full after %g h, %g Ah at 0.6 A take longer", chemistry, *h, a.Ride.DeliveredAh)
		}
	}
}

// One setup may be assessed again and by many at once; nothing of it changes.
func TestASetupSurvivesBeingAssessed(t *testing.T) {
	for _, file := range []string{"examples/tractor-tool-pack.toml", "examples/two-seater-tired-blocks.toml"} {
		text := sheetOf(t, file).with("measured.top_speed", `"4 km/h"`, "measured.pull_force", `"30 N"`).toml()
		s, err := packcheck.Read(strings.NewReader(text), "shared.toml")
		if err != nil {
			t.Fatal(err)
		}
		before := fmt.Sprintf("%+v", *s)
		done := make(chan string)
		for range 4 {
			go func() {
				var out bytes.Buffer
				a, err := packcheck.Assess(s)
				if err == nil {
					err = report.JSON(&out, a)
				}
				if err == nil {
					err = packcheck.Trace(s, &out)
				}
				if err != nil {
					out.WriteString(err.Error())
				}
				done <- out.String()
			}()
		}
		first := <-done
		for range 3 {
			if again := <-done; again != first {
				t.Errorf("%s: another answer for the same setup", file)
			}
		}
		if fmt.Sprintf("%+v", *s) != before {
			t.Errorf("%s: assessing changed the setup", file)
		}
	}
}
