package trials_test

import (
	"encoding/json"
	"path/filepath"
	"testing"

	"example.org/packcheck/drive"
)

// Whoever recomputes the representative launch from the numbers in the JSON gets
// what stands beside them. The keys are those of the report, read with no type of
// ours between.
func TestTheLaunchCaseRecomputedGivesWhatStandsBesideIt(t *testing.T) {
	files, err := filepath.Glob(examples + "*.toml")
	if err != nil || len(files) < 3 {
		t.Fatalf("%d examples: %v", len(files), err)
	}
	sheets := map[string]sheet{
		"labels": labelsOnly(), "soft start": labelsOnly().with("controller.kind", `"chopper"`, "controller.ramp", `"2 s"`),
		"limited": onContacts(t).with("controller.kind", `"chopper"`, "controller.current_limit", `"20 A"`),
	}
	for _, file := range files {
		sheets[filepath.Base(file)] = sheetOf(t, file)
	}
	for name, s := range sheets {
		text, err := json.Marshal(assess(t, s).Launch)
		if err != nil {
			t.Fatal(err)
		}
		var told struct {
			Case  map[string]any     `json:"case"`
			Gives map[string]float64 `json:"case_gives"`
		}
		if err := json.Unmarshal(text, &told); err != nil {
			t.Fatal(err)
		}
		c := caseFrom(told.Case)
		if err := c.Check(); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		const longS = 5 // more than any peak takes
		r := drive.Launch(&c, longS, nil)
		for key, got := range map[string]float64{
			"peak_battery_a": r.PeakBatteryA, "peak_battery_at_s": r.PeakBatteryAtS, "peak_motor_a": r.PeakMotorA,
			"lowest_bus_v": r.LowestBusV, "blocked_battery_a": c.Blocked().BatteryA, "speed_kmh": c.Steady().SpeedMS * 3.6,
		} {
			near(t, name+", "+key, got, told.Gives[key], 1e-3)
		}
	}
}

// caseFrom makes a launch of the keys of the report.
func caseFrom(told map[string]any) drive.LaunchCase {
	at := func(key string) float64 { x, _ := told[key].(float64); return x }
	c := drive.LaunchCase{
		OCVV: at("ocv_v"), R0Ohm: at("r0_ohm"), PathOhm: at("path_ohm"), Motors: int(at("motors")), MotorsInSeries: int(at("motors_in_series")),
		WindingOhm: at("winding_ohm"), WindingH: at("winding_h"), TorqueConstant: at("torque_constant"), NoLoadA: at("no_load_a"),
		GearRatio: at("gear_ratio"), GearEfficiency: at("gear_efficiency"), WheelRadiusM: at("wheel_radius_m"), MassKg: at("mass_kg"),
		RotorInertiaKgM2: at("rotor_inertia"), RollN: at("roll_n"), GradeN: at("grade_n"), DragNS2PerM2: at("drag_n_s2_m2"), GripN: at("grip_n"),
		RampS: at("ramp_s"), LimitA: at("limit_a"), ModuleRampS: at("module_ramp_s"),
	}
	if pairs, ok := told["rc"].([]any); ok {
		for i, p := range pairs {
			b := p.(map[string]any)
			of := func(key string) float64 { x, _ := b[key].(float64); return x }
			c.RC[i] = drive.Branch{Ohm: of("ohm"), Farad: of("farad"), KneeV: of("knee_v")}
		}
	}
	return c
}
