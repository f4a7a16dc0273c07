package main

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"example.org/packcheck/internal/cellfit"
)

// measured returns the folder of measured curves.
func measured(t *testing.T, what string) string {
	t.Helper()
	dir := os.Getenv("PACKCHECK_REFDATA")
	if dir == "" {
		t.Skip("PACKCHECK_REFDATA is not set: would have " + what)
	}
	return dir
}

// curve is the one file that a pattern names.
func curve(t *testing.T, dir, pattern string) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, pattern))
	if err != nil || len(files) != 1 {
		t.Fatalf("%s: found %v, %v", pattern, files, err)
	}
	return files[0]
}

// The figures were computed from the same curves by other means (numpy, linear
// interpolation between rows).
//
// Sources of the curves: ARTS-Lab, University of South Carolina, Dataset
// Electrothermal Deformation Characterization for Samsung 30Q Cell, 2023-2026,
// CC BY-SA 4.0; Kollmeyer, Panasonic 18650PF Li-ion Battery Data, Mendeley Data
// V1, 2018, CC BY 4.0; Wiggins (BatterySim), Equivalent circuit model,
// 2017-2020, MIT.
func TestFitReadsMeasuredDischargesAsOthersDo(t *testing.T) {
	dir := measured(t, "fitted measured discharges and compared charge and Peukert exponent with figures computed by numpy")
	for _, c := range []struct {
		name    string
		files   []string
		args    []string
		ah      []float64 // per file, to the cutoff
		peukert float64   // 0 = one rate only
	}{
		{
			"18650 3.0 Ah to 3.0 V",
			[]string{"*_18650_3ah/s001_cc_c10_rt", "*_18650_3ah/s001_cc_1c_rt", "*_18650_3ah/s001_cc_3c_rt"},
			[]string{"--label", "3.6 V 3 Ah", "--cutoff", "3.0 V"},
			[]float64{2.805, 2.720, 2.542},
			1.0265,
		},
		{
			"18650 3.0 Ah to 3.3 V",
			[]string{"*_18650_3ah/s001_cc_c10_rt", "*_18650_3ah/s001_cc_1c_rt", "*_18650_3ah/s001_cc_3c_rt"},
			[]string{"--label", "3.6 V 3 Ah", "--cutoff", "3.3 V"},
			[]float64{2.517, 2.329, 1.683},
			1.1053,
		},
		{
			"18650 2.9 Ah to 2.5 V",
			[]string{"*_2p9ah/c20_discharge_25c", "*_2p9ah/cc_1c_25c_fresh"},
			[]string{"--label", "3.6 V 2.9 Ah", "--cutoff", "2.5 V", "--full"},
			[]float64{2.997, 2.798},
			1.0229,
		},
		{
			"33 Ah pouch to 3.0 V",
			[]string{"*_lmo_pouch_33ah/cell_cc_1c_25c", "*_lmo_pouch_33ah/cell_cc_3c_25c"},
			[]string{"--chemistry", "li-ion", "--cells", "1", "--cutoff", "3.0 V"},
			[]float64{30.340, 28.710},
			1.0503,
		},
		{
			"6S pack to 20.2 V",
			[]string{"*_6s_pack_65ah/pack6s_cc_0p3c_22c"},
			[]string{"--chemistry", "li-ion", "--cutoff", "20.2 V"},
			[]float64{54.825},
			0,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			args := c.args
			for _, f := range c.files {
				args = append(args, curve(t, dir, f+".csv"))
			}
			r := fitInJSON(t, "", args...)
			if len(r.Runs) != len(c.ah) {
				t.Fatalf("%d discharges, want %d", len(r.Runs), len(c.ah))
			}
			for i, run := range r.Runs {
				if math.Abs(run.Ah/c.ah[i]-1) > 0.002 {
					t.Errorf("%s: %.3f Ah, numpy %.3f Ah", run.Log, run.Ah, c.ah[i])
				}
			}
			switch {
			case c.peukert == 0:
			case r.Peukert == nil || math.Abs(r.Peukert.Value-c.peukert) > 0.003:
				t.Errorf("Peukert exponent %v, numpy %.4f", r.Peukert, c.peukert)
			}
		})
	}
}

// What a fresh cell holds is printed on it; the data sets' own counters at a
// tenth and a twentieth of the rate say 2.969 of 3.0 Ah and 2.997 of 2.9 Ah.
func TestHealthOfFreshCellsHoldsWhatTheirSlowDischargeGave(t *testing.T) {
	dir := measured(t, "fitted discharges at 1C of fresh cells and compared their health with the slow discharge of the same cell")
	for _, c := range []struct {
		file, label string
		full        float64
	}{
		{"*_18650_3ah/s001_cc_1c_rt.csv", "3.6 V 3 Ah", 2.969},
		{"*_18650_3ah/s001_cc_3c_rt.csv", "3.6 V 3 Ah", 2.969},
		{"*_2p9ah/cc_1c_25c_fresh.csv", "3.6 V 2.9 Ah", 2.997},
	} {
		r := fitInJSON(t, "", curve(t, dir, c.file), "--label", c.label, "--full")
		if !r.FullAh.holds(c.full) {
			t.Errorf("%s: %v Ah, the slow discharge gave %.3f Ah", c.file, r.FullAh, c.full)
		}
	}
}

// Resistance one second after the load comes on, from a pulse test of one of
// the cells at 20 degC (table by numpy): 34.3, 34.5 and 35.9 mOhm at 90, 50 and
// 20 % charge.
func TestStepsOfAMeasuredPulseTest(t *testing.T) {
	dir := measured(t, "read the steps of a measured pulse test and compared them with a table computed by numpy")
	f, err := os.Open(curve(t, dir, "*_18650_3ah/dnn01_hppc_1c_20c_trace.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	l, err := cellfit.Read(f, cellfit.Options{Name: f.Name()})
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []struct{ charge, ohm float64 }{{0.90, 0.0343}, {0.50, 0.0345}, {0.20, 0.0359}} {
		var sum, n float64
		for _, s := range l.Parts().Steps {
			on := l.Amps[s.Row] > 2.5 && math.Abs(l.Amps[s.Row-1]) < 0.1 && l.TimeS[s.Row]-l.TimeS[s.Row-1] < 1.5
			if charge := 1 - s.Ah/2.969; on && math.Abs(charge-want.charge) < 0.03 {
				sum, n = sum+s.Ohm, n+1
			}
		}
		if n == 0 || math.Abs(sum/n/want.ohm-1) > 0.03 {
			t.Errorf("%.0f %% charged: %.1f mOhm from %.0f steps, numpy %.1f mOhm", 100*want.charge, 1000*sum/n, n, 1000*want.ohm)
		}
	}
}
