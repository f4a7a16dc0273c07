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
	files, err := filepath.Glob(filepath.Join(dir, file))
	if err != nil || len(files) != 1 {
		t.Skipf("%s: found %v, %v; would have checked %s", file, files, err, wouldCheck)
	}
	f, err := os.Open(files[0])
	if err != nil {
		t.Fatal(err)
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
	sum := 0.0
	for i := 1; i < len(rows); i++ {
		dtS := rows[i].timeS - rows[i-1].timeS
		if dtS <= 0 {
			continue
		}
		amps := (rows[i].inAh - rows[i-1].inAh) * 3600 / dtS
		_, stored := charge.Taken(m, s, amps)
		step := m.Over(dtS)
		step.Advance(&s, -stored, ambientC)
		if amps < leastA || rows[i].timeS-rows[0].timeS < 600 {
			continue
		}
		volts, _ := charge.Taken(m, s, amps)
		e := volts - rows[i].volts
		sum += e * e
		n++
	}
	return math.Sqrt(sum / float64(n)), n
}

// measuredBlock is the sealed 12 V 17 Ah block of Sulzer et al. 2019 as the
// built-in profile makes it, with 20.5 Ah between full and empty and with the
// acceptance that was fitted to its recharge after 3.04 A
// (go run ./internal/cellfit/cmd/agreement -refit prints it).
func measuredBlock(t testing.TB) battery.Spec {
	p := profile(t, "agm")
	p.Acceptance.OhmAh, p.Acceptance.Power, p.Acceptance.Offset = 0.1466, 1.081, 0.0095
	p.Acceptance.GasPer100mV = 9.54
	return battery.Spec{Profile: p, CellsInSeries: 6, CapacityAh: 17, Health: 20.5 / 17}
}

// Voltage over whole measured charges, current as measured. The first lead-acid
// run is the one that the acceptance was fitted to; the second was kept aside.
func TestVoltageOnChargeAgreesWithMeasuredCurves(t *testing.T) {
	lead := model(t, measuredBlock(t))
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
		{"vrla_12v_17ah/unit_a_charge_after_2p0a.csv", lead, 1 - 19.691/20.5, 0.25, 25, 0.20, "Sulzer et al. 2019, kept aside"},
		{"*_2p9ah/cccv_1c_charge_25c.csv", lithium, chargeAtRest(lithium, 3.22), 0.3, 25, 0.04, "Kollmeyer 2018, doi 10.17632/wykht8y7tg.1"},
	} {
		rows := curve(t, tt.file, "the voltage on charge within "+strconv.FormatFloat(tt.mostV, 'g', 3, 64)+" V RMS of "+tt.source)
		rms, n := voltsRMS(tt.m, tt.m.StateAt(tt.charge, tt.tempC), rows, tt.leastA, tt.tempC)
		t.Logf("%s: %.3f V RMS over %d rows", tt.file, rms, n)
		if !(rms <= tt.mostV) || n < 50 {
			t.Errorf("%s: %.3f V RMS over %d rows, want at most %g V (%s)", tt.file, rms, n, tt.mostV, tt.source)
		}
	}
}
