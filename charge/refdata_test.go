package charge_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
)

// row is one row of a measured curve: charge put in is positive.
type row struct{ timeS, volts, inAh float64 }

// curve reads a measured charge from the directory in PACKCHECK_REFDATA, or
// skips, saying what it would have checked.
func curve(t *testing.T, file, wouldCheck string) []row {
	t.Helper()
	dir := os.Getenv("PACKCHECK_REFDATA")
	if dir == "" {
		t.Skip("PACKCHECK_REFDATA is not set; would have checked " + wouldCheck)
	}
	f, err := os.Open(filepath.Join(dir, file))
	if err != nil {
		t.Skipf("%v; would have checked %s", err, wouldCheck)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil || len(lines) < 50 {
		t.Fatalf("%s: %d rows, %v", file, len(lines), err)
	}
	at := map[string]int{}
	for i, name := range lines[0] {
		at[name] = i
	}
	var rows []row
	for _, l := range lines[1:] {
		num := func(name string) float64 {
			v, err := strconv.ParseFloat(l[at[name]], 64)
			if err != nil {
				t.Fatalf("%s: %v", file, err)
			}
			return v
		}
		rows = append(rows, row{num("time_s"), num("voltage_v"), -num("capacity_ah")})
	}
	return rows
}

// voltsRMS drives the model with the measured current and returns the root
// mean square of the voltage error while at least leastA flows.
func voltsRMS(m *battery.Model, s battery.State, rows []row, leastA, ambientC float64) (rms float64, n int) {
	keep := 1.0
	if f := m.Spec().Profile.Charge.ReturnFactor; f > 1 {
		keep = 1 / f
	}
	sum := 0.0
	for i := 1; i < len(rows); i++ {
		dtS := rows[i].timeS - rows[i-1].timeS
		if dtS <= 0 {
			continue
		}
		amps := (rows[i].inAh - rows[i-1].inAh) * 3600 / dtS
		step := m.Over(dtS)
		step.Advance(&s, -amps*keep, ambientC)
		if amps < leastA || rows[i].timeS-rows[0].timeS < 600 {
			continue
		}
		e := charge.VoltsOn(m, s, amps) - rows[i].volts
		sum += e * e
		n++
	}
	return math.Sqrt(sum / float64(n)), n
}

// Voltage over whole measured charges, current as measured. The first lead-acid
// run is the one that the acceptance was fitted to; the second was kept aside
// and took back less than it had given (1.036 times instead of 1.096), which
// the profile's 1.10 does not know: its absorption phase lies 0.4 V off and is
// not held here.
func TestVoltageOnChargeAgreesWithMeasuredCurves(t *testing.T) {
	lead := model(t, battery.Spec{Profile: profile(t, "agm"), CellsInSeries: 6, CapacityAh: 17, Health: 20.5 / 17})
	lithium := model(t, battery.Spec{Profile: profile(t, "li-ion"), CellsInSeries: 1, CapacityAh: 2.9, ResistanceOhm: 0.0308, MassKg: 0.0465})
	for _, tt := range []struct {
		file   string
		m      *battery.Model
		charge float64
		leastA float64
		tempC  float64
		mostV  float64 // per pack
		source string
	}{
		{"vrla_12v_17ah/unit_a_charge_after_3p0a.csv", lead, 1 - 19.775/20.5, 0.25, 25, 0.15, "Sulzer et al. 2019, fitted"},
		{"vrla_12v_17ah/unit_a_charge_after_2p0a.csv", lead, 1 - 19.691/20.5, 1.5, 25, 0.20, "Sulzer et al. 2019, kept aside, bulk"},
		{"panasonic18650pf_2p9ah/cccv_1c_charge_25c.csv", lithium, chargeAtRest(lithium, 3.22), 0.3, 25, 0.04, "Kollmeyer 2018, doi 10.17632/wykht8y7tg.1"},
	} {
		rows := curve(t, tt.file, "the voltage on charge within "+strconv.FormatFloat(tt.mostV, 'g', 3, 64)+" V RMS of "+tt.source)
		rms, n := voltsRMS(tt.m, tt.m.StateAt(tt.charge, tt.tempC), rows, tt.leastA, tt.tempC)
		t.Logf("%s: %.3f V RMS over %d rows", tt.file, rms, n)
		if !(rms <= tt.mostV) || n < 50 {
			t.Errorf("%s: %.3f V RMS over %d rows, want at most %g V (%s)", tt.file, rms, n, tt.mostV, tt.source)
		}
	}
}
