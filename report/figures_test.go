package report_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/packcheck"
	"example.org/packcheck/report"
)

func TestFiguresThatDoNotExistAreNeverZero(t *testing.T) {
	text := written(t, notANumber(), report.Options{})
	for _, want := range []string{"Speed                 6.1 to 7.5 km/h", "Weight                not known", "Wire stands it for    not known"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q", want)
		}
	}
	text = written(t, wideUS(), report.Options{})
	for _, want := range []string{"no rating suits", "harm not reached in the likely case; otherwise 3"} {
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
		var back packcheck.Assessment
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

func TestUsersUnitsStandFirst(t *testing.T) {
	if text := written(t, danger(), report.Options{}); !strings.Contains(text, "6.1 to 7.5 km/h (3.8 to 4.7 mph)") {
		t.Errorf("metric user: km/h not first:\n%s", text)
	}
	if text := written(t, wideUS(), report.Options{}); !strings.Contains(text, "1.3 to 6.8 mph (2.1 to 11 km/h)") {
		t.Errorf("US user: mph not first:\n%s", text)
	}
}

func TestEndsOfATimeKeepTheirUnits(t *testing.T) {
	for _, tt := range []struct {
		low, high float64 // minutes
		want      string
	}{
		{22, 38, "22 to 38 min"},
		{6, 190, "6 min to 3 h 10 min"},
		{48, 72, "48 min to 1 h 12 min"},
		{2.9, 75, "3 min to 1 h 15 min"}, // seconds of a wide guess mean nothing
		{1.3, 74, "80 s to 1 h 14 min"},
		{0.02, 110, "1 s to 1 h 50 min"}, // but never nothing where there is something
		{120, 190, "2 h to 3 h 10 min"},
		{65, 190, "1 h 5 min to 3 h 10 min"},
	} {
		a := danger()
		a.Ranges["ride.clock_min"] = packcheck.Range{Low: tt.low, Likely: tt.low, High: tt.high}
		if text := written(t, a, report.Options{}); !strings.Contains(text, "With the pauses       "+tt.want+", likely") {
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
	a.Ranges["steady.battery_a"] = packcheck.Range{Low: -1e-9, Likely: 1e-9, High: 1e-6}
	a.Findings[1].Limit = 2.2352
	text := written(t, a, report.Options{})
	for _, want := range []string{
		"Charge left           0 %\n",
		"Amps from the pack    0 A\n",
		"limit 8 km/h (5 mph)",
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
		spread packcheck.Range
		want   string
	}{
		{"known", ptr(41.0), packcheck.Range{}, "41 days until harm"},
		{"spread", ptr(9.0), packcheck.Range{Low: 3, Likely: 9, High: 40}, "3 to 40 days, likely 9 days until harm"},
		{"never", nil, packcheck.Range{}, "harm not reached"},
		{"at once", ptr(0.0), packcheck.Range{}, "harmed already when the ride ends"},
		{"perhaps at once", ptr(0.0), packcheck.Range{Low: 0, Likely: 0, High: 12}, "0 s to 12 days, likely 0 s until harm"},
	} {
		a := danger()
		a.Cutoff.IdleDaysToHarm = tt.toHarm
		if tt.spread != (packcheck.Range{}) {
			a.Ranges["cutoff.idle_days_to_harm"] = tt.spread
		}
		text := strings.Join(strings.Fields(written(t, a, report.Options{})), " ")
		if want := "Left switched on " + tt.want; !strings.Contains(text, want) {
			t.Errorf("%s: lacks %q", tt.name, want)
		}
	}
}
