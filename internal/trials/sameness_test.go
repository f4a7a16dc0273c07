package trials_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math/rand/v2"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/report"
	"example.org/packcheck/wiring"
)

// Exact by definition: 1 lb = 0.45359237 kg, 1 in = 25.4 mm (international
// yard and pound, 1959); 77 F = 25 C, 64.4 F = 18 C.
func TestMetricAndCustomaryUnitsGiveTheSameFigures(t *testing.T) {
	metric := doneProperly(t).with("rider.mass", `"20.41165665 kg"`, "vehicle.mass", `"15.87573295 kg"`,
		"vehicle.wheel_diameter", `"254 mm"`, "wire.one_way_length", `"0.9144 m"`, "fuse.distance_from_pack", `"101.6 mm"`)
	customary := metric.with("rider.mass", `"45 lb"`, "vehicle.mass", `"35 lb"`,
		"vehicle.wheel_diameter", `"10 in"`, "wire.one_way_length", `"3 ft"`, "fuse.distance_from_pack", `"4 in"`,
		"wire.insulation", `"221 F"`, "pack.temperature", `"64.4 F"`, "outing.air", `"64.4 F"`)
	a, err := freshly(metric.toml(), some) // both are changed below
	if err != nil {
		t.Fatal(err)
	}
	b, err := freshly(customary.toml(), some)
	if err != nil {
		t.Fatal(err)
	}
	// A short anywhere along the wire leaves it the same margin to the last
	// digit (both times go with the square of the current), so which place is
	// shown hangs on rounding; the margin does not.
	near(t, "margin in a short circuit", *a.Path.WireLimitS / *a.Path.ShortCircuitClearS, *b.Path.WireLimitS / *b.Path.ShortCircuitClearS, 1e-9)
	for _, x := range []*answer.Assessment{a, b} {
		x.Path.ShortCircuitA, x.Path.ShortCircuitClearS, x.Path.WireLimitS = 0, nil, nil
		for _, path := range []string{"path.short_circuit_a", "path.short_circuit_clear_s", "path.wire_limit_s"} {
			delete(x.Ranges, path)
		}
		for i := range x.Findings {
			if x.Findings[i].Code == wiring.CodeShortCleared {
				x.Findings[i].Found, x.Findings[i].Limit = 0, 0
			}
		}
	}
	sameFigures(t, "units", a, b, 1e-9)
}

func TestADecimalCommaIsAPoint(t *testing.T) {
	point := doneProperly(t).with("rider.mass", `"20.5 kg"`, "wire.one_way_length", `"0.95 m"`, "motors.no_load_current", `"1.45 A"`)
	comma := doneProperly(t).with("rider.mass", `"20,5 kg"`, "wire.one_way_length", `"0,95 m"`, "motors.no_load_current", `"1,45 A"`)
	sameFigures(t, "comma", assess(t, point), assess(t, comma), 0)
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

func TestTablesThatDoNotConcernTheRideDoNotChangeIt(t *testing.T) {
	for name, base := range map[string]sheet{"full": doneProperly(t).without("charger"), "labels": labelsOnly(), "bench": benchLoad()} {
		before := assess(t, base)
		after := assess(t, base.with(
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

// The same input gives the same bytes, whatever runs beside it.
func TestTheSameSetupGivesTheSameBytes(t *testing.T) {
	for _, file := range []string{"../../examples/tractor-tool-pack.toml", "../../examples/two-seater-tired-blocks.toml"} {
		text := sheetOf(t, file).toml()
		want := everyByte(t, text)
		for _, threads := range []int{1, 2} {
			was := runtime.GOMAXPROCS(threads)
			done := make(chan string)
			for range 3 {
				go func() { done <- everyByte(t, text) }()
			}
			for range 3 {
				if got := <-done; got != want {
					t.Errorf("%s: another report on %d threads", file, threads)
				}
			}
			runtime.GOMAXPROCS(was)
		}
	}
}

// One setup may be assessed again and by many at once; nothing of it changes.
func TestASetupSurvivesBeingAssessed(t *testing.T) {
	for file, s := range map[string]sheet{"labels": labelsOnly(), "tool pack": sheetOf(t, examples+"tractor-tool-pack.toml")} {
		text := s.with("measured.top_speed", `"4 km/h"`, "measured.pull_force", `"30 N"`).toml()
		s, err := packcheck.Read(strings.NewReader(text), "shared.toml")
		if err != nil {
			t.Fatal(err)
		}
		before := fmt.Sprintf("%+v", *s)
		done := make(chan string)
		for range 4 {
			go func() {
				var out bytes.Buffer
				a, err := packcheck.AssessWith(t.Context(), s, packcheck.Options{Draws: few})
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

// Who typed miles and pounds reads them first, whichever battery they were read with.
func TestTheUsersUnitsAreThoseOfAllThatWasTyped(t *testing.T) {
	base := labelsOnly().with("rider.mass", "", "rider.age", `"5 years"`, "original.pack.label", `"12 V 7 Ah"`, "original.pack.chemistry", `"agm"`)
	for _, c := range []struct {
		key, value string
		want       answer.System
	}{
		{"original.measured.top_speed", `"4 mph"`, answer.Customary},
		{"measured.top_speed", `"4 mph"`, answer.Customary},
		{"original.measured.top_speed", `"6.4 km/h"`, answer.Metric},
	} {
		a := assess(t, base.with(c.key, c.value))
		if a.System != c.want {
			t.Errorf("%s = %s: answered in %v, want %v", c.key, c.value, a.System, c.want)
		}
		var text strings.Builder
		if err := report.Write(&text, a, report.Options{Full: true}); err != nil {
			t.Fatal(err)
		}
		if feet := regexp.MustCompile(`stands\s+after\s+[0-9.]+\s+ft`).MatchString(text.String()); feet != (c.want == answer.Customary) {
			t.Errorf("%s = %s: the way to stop is told in feet first: %t", c.key, c.value, feet)
		}
	}
}
