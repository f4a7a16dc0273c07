package report_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck/answer"
	"example.org/packcheck/report"
)

func TestFiguresThatDoNotExistAreNeverZero(t *testing.T) {
	text := flat(t, notANumber())
	for _, want := range []string{"Speed: 6.8 km/h (6.1 to 7.5;", "Weight: not known", "Wire stands it: not known"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	text = written(t, wideUS(), report.Options{Full: true})
	for _, want := range []string{"no rating suits", "harm not reached in half of the draws or more; otherwise 3 to 40 days"} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
			t.Errorf("lacks %q", want)
		}
	}
}

func TestJSONIsTheAssessmentWithNullForWhatIsNoNumber(t *testing.T) {
	for name, a := range fixtures() {
		text := written(t, a, report.Options{Format: report.FormatJSON})
		var tree map[string]any
		if err := json.Unmarshal([]byte(text), &tree); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		for _, list := range []string{"findings", "notes", "changes", "assumed", "measure", "cautions", "sources"} {
			if _, ok := tree[list].([]any); !ok {
				t.Errorf("%s: %s is %v, want a list", name, list, tree[list])
			}
		}
		var back answer.Assessment
		if err := json.Unmarshal([]byte(text), &back); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if back.Verdict != a.Verdict || back.Headline != a.Headline && name != "hostile" {
			t.Errorf("%s: came back as %v %q", name, back.Verdict, back.Headline)
		}
	}
	var tree struct {
		Steady map[string]any
		Pack   map[string]any
	}
	text := written(t, notANumber(), report.Options{Format: report.FormatJSON})
	if err := json.Unmarshal([]byte(text), &tree); err != nil {
		t.Fatal(err)
	}
	if v, ok := tree.Steady["speed_kmh"]; !ok || v != nil {
		t.Errorf("speed_kmh is %v, want null", v)
	}
	if v, ok := tree.Pack["mass_kg"]; !ok || v != nil {
		t.Errorf("mass_kg is %v, want null", v)
	}
}

// Where every number is finite and short, JSON is what encoding/json writes.
func TestJSONAgreesWithEncodingJSON(t *testing.T) {
	for _, name := range []string{"danger", "wide-us", "hostile"} {
		a := fixtures()[name]
		want, err := json.MarshalIndent(a, "", "  ")
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want)+"\n", written(t, a, report.Options{Format: report.FormatJSON})); diff != "" {
			t.Errorf("%s (-want +got)\n%s", name, diff)
		}
	}
}

func TestJSONOnOneLineIsTheSame(t *testing.T) {
	for name, a := range fixtures() {
		var want bytes.Buffer
		if err := json.Compact(&want, []byte(written(t, a, report.Options{Format: report.FormatJSON}))); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want.String()+"\n", written(t, a, report.Options{Format: report.FormatJSON, OneLine: true})); diff != "" {
			t.Errorf("%s (-want +got)\n%s", name, diff)
		}
	}
}

func TestNumbersAndTextsStandInJSONAsEncodingJSONWritesThem(t *testing.T) {
	for _, x := range []float64{
		0, 1, -1, 0.1, 123456789, 1e-6, -1e-6, 9.99e-7, -9.99e-7, 1e-8, -1e-8, 9.99999999e20, 1e21, -1e21, 1.79769313e308,
	} {
		for _, text := range []string{"", "plain", `a "b" \c`, "a<b>&c", "tab\t", "\x7f", "\x00", "20 °C", "\u2028", "\xff"} {
			a := danger()
			a.Title, a.Draws.Effective = text, x
			want, err := json.Marshal(a)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want)+"\n", written(t, a, report.Options{Format: report.FormatJSON, OneLine: true})); diff != "" {
				t.Errorf("%g, %q (-want +got)\n%s", x, text, diff)
			}
		}
	}
}

// A ride that ends at once lasts no billionth of a second: what is smaller than anything
// that an answer tells is nothing. The smallest rotor is not.
func TestInJSONWhatIsNothingIsZero(t *testing.T) {
	for x, want := range map[float64]string{
		1.66666667e-11: "0", -1.66666667e-11: "0", math.SmallestNonzeroFloat64: "0", 9.9e-9: "0", 1e-8: "1e-8", 5e-6: "0.000005",
	} {
		a := danger()
		a.Ride.PedalMin = x
		if text := written(t, a, report.Options{Format: report.FormatJSON, OneLine: true}); !strings.Contains(text, `"pedal_min":`+want+`,`) {
			t.Errorf("%g: want %s", x, want)
		}
	}
}

func TestUsersUnitsStandFirst(t *testing.T) {
	if text := flat(t, danger()); !strings.Contains(text, "Speed: 6.8 km/h (6.1 to 7.5; 3.8 to 4.7 mph)") {
		t.Errorf("metric user: km/h not first:\n%s", text)
	}
	if text := flat(t, wideUS()); !strings.Contains(text, "Speed: 4.2 mph (1.3 to 6.8; 2.1 to 11 km/h)") {
		t.Errorf("US user: mph not first:\n%s", text)
	}
}

// Feet beside miles are two figures to whoever reads them.
func TestALikelyDistanceHasTheUnitOfItsRange(t *testing.T) {
	a := wideUS()
	a.Ride.DistanceKm, a.Ranges["ride.distance_km"] = 0.72, answer.Spread(0.43, 0.72, 1.08)
	for _, o := range []report.Options{{}, {Full: true}} {
		if text := strings.Join(strings.Fields(written(t, a, o)), " "); !strings.Contains(text, "0.45 mi (0.27 to 0.67") {
			t.Errorf("%+v: lacks the miles:\n%s", o, text)
		}
	}
}

func TestEndsOfATimeKeepTheirUnits(t *testing.T) {
	for _, tt := range []struct {
		low, high float64 // minutes
		want      string
	}{
		{22, 38, "22 min (22 to 38)"},
		{6, 190, "10 min (10 min to 3 h 10 min)"}, // tens of minutes where it takes hours
		{48, 72, "48 min (48 min to 1 h 12 min)"},
		{2.9, 75, "3 min (3 min to 1 h 15 min)"}, // seconds of a wide guess mean nothing
		{1.3, 74, "80 s (80 s to 1 h 14 min)"},
		{0.02, 110, "1 s (1 s to 1 h 50 min)"}, // but never nothing where there is something
		{0, 37, "0 s (0 to 37 min)"},
		{120, 190, "2 h (2 h to 3 h 10 min)"},
		{65, 190, "1 h 10 min (1 h 10 min to 3 h 10 min)"},
	} {
		a := danger()
		a.Ranges["ride.lasts_clock_min"] = answer.Range{Low: tt.low, Likely: tt.low, High: tt.high}
		if text := flat(t, a); !strings.Contains(text, "With the pauses: "+tt.want+". ") {
			t.Errorf("%v to %v min: lacks %q", tt.low, tt.high, tt.want)
		}
	}
}

// An empty pack keeps a trace of charge in the computation; nobody wants to
// read about it. What can be measured must not be rounded twice: 5 mph are
// 2.2352 m/s and must come out as 8 km/h.
func TestOnlyDustIsRoundedAway(t *testing.T) {
	a := danger()
	a.Ride.ChargeLeft = -1.3e-6
	a.Ranges["steady.battery_a"] = answer.Range{Low: -1e-9, Likely: 1e-9, High: 1e-6}
	a.Findings[1].Limit = 2.2352
	text := flat(t, a)
	for _, want := range []string{
		"Charge left: 0 %.",
		"Amps: 0 A; in the motors",
		"at most 8 km/h",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
}

func TestTheWaitUntilHarmIsSaidInWords(t *testing.T) {
	for _, tt := range []struct {
		name   string
		toHarm *float64
		spread answer.Range
		want   string
	}{
		{"known", ptr(41.0), answer.Range{}, "41 days until harm"},
		{"spread", ptr(9.0), answer.Range{Low: 3, Likely: 9, High: 40}, "9 days (3 to 40) until harm"},
		{"never", nil, answer.Range{}, "harm not reached"},
		{"at once", ptr(0.0), answer.Range{}, "harmed already when the ride ends"},
		{"perhaps at once", ptr(0.0), answer.Range{Low: 0, Likely: 0, High: 12}, "0 s (0 to 12 days) until harm"},
	} {
		a := danger()
		a.Cutoff.IdleDaysToHarm = tt.toHarm
		if tt.spread != (answer.Range{}) {
			a.Ranges["cutoff.idle_days_to_harm"] = tt.spread
		}
		text := strings.Join(strings.Fields(written(t, a, report.Options{Full: true})), " ")
		if want := "Left on: " + tt.want; !strings.Contains(text, want) {
			t.Errorf("%s: lacks %q", tt.name, want)
		}
	}
}

// The keys that programs rely on: the design's list, to which may be added.
func TestJSONHasTheKeysThatProgramsRelyOn(t *testing.T) {
	var tree map[string]any
	if err := json.Unmarshal([]byte(written(t, danger(), report.Options{Format: report.FormatJSON})), &tree); err != nil {
		t.Fatal(err)
	}
	for path, keys := range map[string]string{
		"":       "schema title verdict headline pack steady launch path ride cutoff charge original findings assumed sources",
		"pack":   "full_v nominal_v empty_v rated_ah usable_ah usable_wh resistance_ohm resistance_1s_ohm resistance_1ms_ohm short_circuit_a mass_kg",
		"steady": "speed_kmh battery_a motor_a bus_v efficiency",
		"launch": "peak_battery_a peak_battery_at_s peak_motor_a lowest_bus_v blocked_battery_a blocked_motor_a speed_after_s case " +
			"case_gives",
		"launch.speed_after_s.0": "t_s kmh",
		"launch.case": "ocv_v r0_ohm rc path_ohm motors motors_in_series winding_ohm winding_h torque_constant no_load_a gear_ratio " +
			"gear_efficiency wheel_radius_m mass_kg rotor_inertia roll_n grade_n drag_n_s2_m2 grip_n ramp_s limit_a",
		"launch.case.rc.0": "ohm farad",
		"path": "resistance_ohm drop_v drop_pct ampacity_a fuse_least_a fuse_most_a short_circuit_a short_circuit_clear_s " +
			"wire_limit_s",
		"ride":           "pedal_min clock_min distance_km ended_by rest_v_after charge_left delivered_ah motor_case_c pack_c",
		"cutoff":         "opens_first opens_at_charge weakest_cell_v chatter_count idle_days_to_harm advised",
		"cutoff.advised": "opens_at_v delay_s closes_at_v",
		"charge":         "match hours_to_80 hours_to_full unplug_after_h end_v_per_cell",
		"original":       "speed_ratio launch_current_ratio blocked_current_ratio tooth_load_ratio motor_heat_ratio ride_ratio",
		"findings.0":     "code level title found limit unit source advice",
		"assumed.0":      "key value why",
		"sources.0":      "id text",
	} {
		at := any(tree)
		for _, step := range strings.FieldsFunc(path, func(r rune) bool { return r == '.' }) {
			if list, ok := at.([]any); ok && step == "0" {
				at = list[0]
				continue
			}
			at = at.(map[string]any)[step]
		}
		object, ok := at.(map[string]any)
		if !ok {
			t.Errorf("%q is no object", path)
			continue
		}
		for _, key := range strings.Fields(keys) {
			if _, ok := object[key]; !ok {
				t.Errorf("%q has no %q", path, key)
			}
		}
	}
	if h, ok := tree["headline"].([]any); !ok || len(h) != 3 {
		t.Errorf("headline is %v, want three lines", tree["headline"])
	}
}
