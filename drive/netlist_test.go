package drive_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/drive"
)

// spiceFigures is what both computations of one launch are held to.
type spiceFigures struct {
	PeakBatteryA   float64 `json:"peak_battery_a"`
	PeakBatteryAtS float64 `json:"peak_battery_at_s"`
	LowestBusV     float64 `json:"lowest_bus_v"`
	Speed1MS       float64 `json:"speed_1_ms"`
	Speed3MS       float64 `json:"speed_3_ms"`
	Speed6MS       float64 `json:"speed_6_ms"`
}

// netlists returns the names of the netlists under testdata/launch, sorted.
func netlists(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("testdata/launch/*.cir")
	if err != nil || len(files) == 0 {
		t.Fatalf("no netlists: %v", err)
	}
	slices.Sort(files)
	for i, f := range files {
		files[i] = strings.TrimSuffix(filepath.Base(f), ".cir")
	}
	return files
}

// netlistCase reads the launch that a netlist describes from its own
// parameters, which carry the names of the report's launch.case. So a netlist
// and its case cannot drift apart; a parameter that the case does not know, or
// one that is missing, fails the test.
func netlistCase(t testing.TB, name string) drive.LaunchCase {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata/launch", name+".cir"))
	if err != nil {
		t.Fatal(err)
	}
	values := map[string]any{}
	rc := [2]map[string]float64{{}, {}}
	for line := range strings.Lines(string(text)) {
		if !strings.HasPrefix(line, ".param ") {
			continue
		}
		for _, pair := range strings.Fields(line)[1:] {
			key, number, _ := strings.Cut(pair, "=")
			value, err := strconv.ParseFloat(number, 64)
			if err != nil {
				t.Fatalf("%s.cir: %s: %v", name, pair, err)
			}
			if branch, part, ok := strings.Cut(strings.TrimPrefix(key, "rc_"), "_"); strings.HasPrefix(key, "rc_") && ok {
				rc[branch[0]-'1'][part] = value
				continue
			}
			values[key] = value
		}
	}
	values["rc"] = rc
	packed, err := json.Marshal(values)
	if err != nil {
		t.Fatal(err)
	}
	var c drive.LaunchCase
	decoder := json.NewDecoder(bytes.NewReader(packed))
	decoder.DisallowUnknownFields()
	if err := decoder.Decode(&c); err != nil {
		t.Fatalf("%s.cir: %v", name, err)
	}
	if err := c.Check(); err != nil {
		t.Fatalf("%s.cir: %v", name, err)
	}
	all, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	var expected map[string]any
	if err := json.Unmarshal(all, &expected); err != nil {
		t.Fatal(err)
	}
	for key := range expected {
		if _, ok := values[key]; !ok {
			t.Fatalf("%s.cir does not give %s", name, key)
		}
	}
	return c
}

func figuresOf(r drive.LaunchResult) spiceFigures {
	return spiceFigures{
		PeakBatteryA: r.PeakBatteryA, PeakBatteryAtS: r.PeakBatteryAtS, LowestBusV: r.LowestBusV,
		Speed1MS: r.SpeedAt(1), Speed3MS: r.SpeedAt(3), Speed6MS: r.SpeedAt(6),
	}
}

// each calls f with every figure of both.
func (s spiceFigures) each(other spiceFigures, f func(name string, a, b float64)) {
	f("peak battery current, A", s.PeakBatteryA, other.PeakBatteryA)
	f("time of the peak, s", s.PeakBatteryAtS, other.PeakBatteryAtS)
	f("lowest bus voltage, V", s.LowestBusV, other.LowestBusV)
	f("speed after 1 s, m/s", s.Speed1MS, other.Speed1MS)
	f("speed after 3 s, m/s", s.Speed3MS, other.Speed3MS)
	f("speed after 6 s, m/s", s.Speed6MS, other.Speed6MS)
}

var measureLine = regexp.MustCompile(`(?m)^(\w+)\s*=\s*(\S+)`)

// parseSpice reads the measurements out of what ngspice printed.
func parseSpice(t testing.TB, out []byte) spiceFigures {
	t.Helper()
	values := map[string]float64{}
	for _, m := range measureLine.FindAllSubmatch(out, -1) {
		if v, err := strconv.ParseFloat(string(m[2]), 64); err == nil {
			values[string(m[1])] = v
		}
	}
	// The fine look at the first milliseconds knows the time of a top there better.
	if values["early_battery_a"] > values["peak_battery_a"]*(1-1e-3) {
		values["peak_battery_a"], values["peak_battery_at_s"] = values["early_battery_a"], values["early_battery_at_s"]
	}
	packed, err := json.Marshal(values)
	if err != nil {
		t.Fatal(err)
	}
	var s spiceFigures
	if err := json.Unmarshal(packed, &s); err != nil {
		t.Fatal(err)
	}
	if s.PeakBatteryA == 0 || s.PeakBatteryAtS == 0 || s.LowestBusV == 0 || s.Speed1MS == 0 || s.Speed3MS == 0 || s.Speed6MS == 0 {
		t.Fatalf("ngspice did not measure everything:\n%s", out)
	}
	return s
}
