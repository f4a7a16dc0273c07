package main

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/packcheck/battery"
)

// outOfScope are curves that are shown in the table but not held to its
// targets, each with the reason.
var outOfScope = map[string]string{
	"c20_charge_25c":           "the tester's counter takes 2.995 Ah out and puts 2.614 Ah back although the cell rests at 4.16 V afterwards: the charge does not close",
	"unit_a_charge_after_3p0a": "the charging overvoltage of lead-acid is not modelled; the model is for discharge and for the charge taken in",
	"unit_a_charge_after_2p0a": "as above",
}

func dataset0(t *testing.T, folder string) dataset {
	t.Helper()
	for _, d := range datasets {
		if d.folder == folder {
			return d
		}
	}
	t.Fatalf("no dataset %s", folder)
	return dataset{}
}

// Fitted curves: voltage within 1.5 % of nominal and charge to the cutoff
// within 3 %; curves kept aside: 2.5 % and 5 %.
func TestEveryCurveIsWithinTheTargets(t *testing.T) {
	dir := os.Getenv("PACKCHECK_REFDATA")
	if dir == "" {
		t.Skip("PACKCHECK_REFDATA is not set: would have run the fitted cells along every measured curve, voltage within 1.5 % and charge within 3 % (2.5 % and 5 % where not fitted to)")
	}
	for _, d := range datasets {
		c, err := d.read(dir)
		if err != nil {
			t.Fatal(err)
		}
		p, err := d.profile()
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range c.names {
			if _, ok := outOfScope[name]; ok {
				continue
			}
			m, err := d.model(p, name, c.logs[name])
			if err != nil {
				t.Fatal(err)
			}
			a := d.replay(m, name, c.logs[name])
			volts, charge := 0.015, 0.03
			if d.use(name, d.fit) != "fitted" {
				volts, charge = 0.025, 0.05
			}
			if rms := a.RMSV / m.NominalV(); rms > volts {
				t.Errorf("%s/%s: voltage %.2f %% rms, want %.1f %%", d.folder, name, 100*rms, 100*volts)
			}
			if off := a.ModelAh/a.LogAh - 1; math.Abs(off) > charge {
				t.Errorf("%s/%s: charge to the cutoff off by %.1f %%, want %.0f %%", d.folder, name, 100*off, 100*charge)
			}
		}
	}
}

// A handful of figures of the datasets, so that the fitted cells are held to
// measurements also where the datasets are not at hand: charge from the first
// loaded sample to the stated voltage under load, and mean voltage.
func TestFittedCellsGiveTheMeasuredCharge(t *testing.T) {
	for _, c := range []struct {
		folder      string
		restV       float64 // of one cell before the discharge; 0 = full
		amps, toV   float64
		health      float64
		ah, meanV   float64
		tempC       float64
		within      float64
		explanation string
	}{
		{"samsung30q_18650_3ah", 4.1419, 0.300, 2.5, 1, 2.969, 3.647, 22, 0.03, ""},
		{"samsung30q_18650_3ah", 4.1432, 3.001, 2.5, 1, 2.956, 3.529, 22.5, 0.03, ""},
		{"samsung30q_18650_3ah", 4.1442, 9.001, 2.5, 1, 2.923, 3.344, 22.6, 0.03, ""},
		{"panasonic18650pf_2p9ah", 4.1840, 0.1450, 2.5, 1, 2.997, 3.683, 25, 0.03, ""},
		{"panasonic18650pf_2p9ah", 0, 2.900, 2.5, 1, 2.798, 3.510, 25, 0.03, ""},
		{"leaf_lmo_pouch_33ah", 4.191, 30.6, 3.0, 1, 30.340, 3.759, 25, 0.03, ""},
		{"leaf_lmo_pouch_33ah", 4.191, 91.8, 3.0, 1, 28.710, 3.555, 25, 0.03, ""},
		{"leaf_6s_pack_65ah", 24.86 / 6, 19.5, 20.2, 1, 54.825, 23.150, 22.5, 0.03, ""},
		{"vrla_12v_17ah", 0, 3.043, 10.8, 1, 19.369, 11.909, 24, 0.03, "the first of the runs"},
		{"vrla_12v_17ah", 0, 0.529, 10.8, 1 - 6*vrlaFade, 18.268, 12.039, 22, 0.03, "the seventh"},
	} {
		d := dataset0(t, c.folder)
		p, err := d.profile()
		if err != nil {
			t.Fatal(err)
		}
		m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: d.series, CapacityAh: d.ah, MassKg: d.massKg, Health: c.health, ResistanceFactor: 1})
		if err != nil {
			t.Fatal(err)
		}
		start := 1.0
		if c.restV > 0 {
			_, start, _ = battery.ChargeFromRest(p, c.restV, 1000, 25)
		}
		run := m.Discharge(m.StateAt(start, c.tempC), c.amps, c.toV, c.tempC)
		if off := run.Ah/c.ah - 1; math.Abs(off) > c.within {
			t.Errorf("%s at %g A: %.3f Ah, measured %.3f (%+.1f %%)", c.folder, c.amps, run.Ah, c.ah, 100*off)
		}
		if mean := run.Wh / run.Ah; math.Abs(mean/c.meanV-1) > 0.015 {
			t.Errorf("%s at %g A: %.3f V in the mean, measured %.3f", c.folder, c.amps, mean, c.meanV)
		}
	}
}

func TestTheTableIsWritten(t *testing.T) {
	dir := t.TempDir()
	var out strings.Builder
	if err := run([]string{"-data", dir}, &out); err == nil || !strings.Contains(err.Error(), "no curves in "+filepath.Join(dir, datasets[0].folder)) {
		t.Errorf("an empty directory: %v", err)
	}
	folder := filepath.Join(dir, "vrla_12v_17ah")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	text := "time_s,current_a,voltage_v\n0,0,12.85\n60,2,12.6\n600,2,12.5\n3600,2,12.3\n"
	if err := os.WriteFile(filepath.Join(folder, "unit_c_short.csv"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	out.Reset()
	if err := run([]string{"-data", dir, "-only", "vrla"}, &out); err != nil {
		t.Fatal(err)
	}
	if got := out.String(); !strings.HasPrefix(got, tableHead) || !strings.Contains(got, "| block-vrla-17ah/unit_c_short | kept aside |") {
		t.Errorf("table:\n%s", got)
	}
}
