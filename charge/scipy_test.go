package charge_test

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
)

// The cells and cases of testdata/onecharge.json, made up for the comparison.
type solverCurve struct {
	X []float64 `json:"x"`
	Y []float64 `json:"y"`
}

type solverCell struct {
	WellsC       float64     `json:"wells_c"`
	WellsKPerS   float64     `json:"wells_k_per_s"`
	Ratio        float64     `json:"ratio"`
	ReturnFactor float64     `json:"return_factor"`
	OverFullV    float64     `json:"over_full_v"`
	OCV          solverCurve `json:"ocv"`
	OhmAh        solverCurve `json:"ohm_ah"`
	TempFactor   solverCurve `json:"temp_factor"`
	FastOhmAh    float64     `json:"fast_ohm_ah"`
	FastTauS     float64     `json:"fast_tau_s"`
	SlowOhmAh    float64     `json:"slow_ohm_ah"`
	SlowTauS     float64     `json:"slow_tau_s"`
	SpecificJKgK float64     `json:"specific_j_kg_k"`
	CoolingWM2K  float64     `json:"cooling_w_m2_k"`
	Area         float64     `json:"area"`
	Acceptance   struct {
		OhmAh        float64 `json:"ohm_ah"`
		Power        float64 `json:"power"`
		Offset       float64 `json:"offset"`
		GasC         float64 `json:"gas_c"`
		GasV         float64 `json:"gas_v"`
		GasPer100mV  float64 `json:"gas_per_100mv"`
		GasDoublingK float64 `json:"gas_doubling_k"`
	} `json:"acceptance"`
}

type solverCase struct {
	Name       string  `json:"name"`
	Cell       string  `json:"cell"`
	Cells      int     `json:"cells"`
	CapacityAh float64 `json:"capacity_ah"`
	MassKg     float64 `json:"mass_kg"`
	Charge     float64 `json:"charge"`
	AmbientC   float64 `json:"ambient_c"`
	CurrentA   float64 `json:"current_a"`
	EndV       float64 `json:"end_v"`
	DroopOhm   float64 `json:"droop_ohm"`
	EndA       float64 `json:"end_a"`
	Recorded   struct {
		HoursTo80   float64 `json:"hours_to_80"`
		HoursToFull float64 `json:"hours_to_full"`
		InAh        float64 `json:"in_ah"`
	} `json:"recorded"`
}

// curve returns the table with so many points that the smooth curve through
// them is the straight lines that the solver's script uses.
func (t solverCurve) curve() chemistry.Curve {
	var c chemistry.Curve
	for i := 1; i < len(t.X); i++ {
		for k := range 100 {
			f := float64(k) / 100
			c.X = append(c.X, t.X[i-1]+f*(t.X[i]-t.X[i-1]))
			c.Y = append(c.Y, t.Y[i-1]+f*(t.Y[i]-t.Y[i-1]))
		}
	}
	c.X, c.Y = append(c.X, t.X[len(t.X)-1]), append(c.Y, t.Y[len(t.Y)-1])
	return c
}

// profile makes a chemistry of a cell.
func (c solverCell) profile() chemistry.Profile {
	p := chemistry.Profile{
		Name: "made up", Family: chemistry.Lithium, NominalV: 3.6, FullV: c.OCV.Y[len(c.OCV.Y)-1],
		End:        chemistry.EndVolts{Volts: []float64{1}},
		Rest:       chemistry.RestCurve{VoltsAt: c.OCV.curve(), OverFullV: c.OverFullV},
		Resistance: chemistry.Resistance{ReferenceC: 25, OhmAh: c.OhmAh.curve(), TempFactor: c.TempFactor.curve(), AtHealth80: 2},
		Fast:       chemistry.Branch{OhmAh: chemistry.Flat(c.FastOhmAh), TauS: c.FastTauS},
		Slow:       chemistry.Branch{OhmAh: chemistry.Flat(c.SlowOhmAh), TauS: c.SlowTauS},
		Wells:      chemistry.WellShape{C: c.WellsC, KPerS: c.WellsKPerS},
		Capacity:   chemistry.Capacity{RatedHours: 5, Ratio: c.Ratio, HourShare: chemistry.Flat(1), TempFactor: chemistry.Flat(1)},
		Heat:       chemistry.Heat{SpecificJKgK: c.SpecificJKgK, CoolingWM2K: c.CoolingWM2K, ShellShare: 1, AreaM2PerKg23: c.Area},
		Mass:       chemistry.Mass{WhPerKg: 100, CellShare: 1},
		Charge:     chemistry.ChargeLimits{CellV: 4.2, CellMaxV: 4.25, MaxC: 1, EndC: 0.05, ReturnFactor: c.ReturnFactor, MinTempC: 0, MaxTempC: 45},
	}
	if c.Acceptance.OhmAh > 0 {
		p.Family, p.NominalV = chemistry.LeadAcid, 2
		a := c.Acceptance
		p.Acceptance = chemistry.Acceptance{
			OhmAh: a.OhmAh, Power: a.Power, Offset: a.Offset,
			GasC: a.GasC, GasV: a.GasV, GasPer100mV: a.GasPer100mV, GasDoublingK: a.GasDoublingK,
		}
	}
	return p
}

// A charge integrated by a general-purpose solver (SciPy's LSODA, script
// testdata/onecharge.py): hours to full within 0.5 %. Without SciPy the figures
// that the script gave are the test.
func TestHoursToFullAgreeWithAGeneralSolver(t *testing.T) {
	raw, err := os.ReadFile("testdata/onecharge.json")
	if err != nil {
		t.Fatal(err)
	}
	var data struct {
		Cells map[string]solverCell `json:"cells"`
		Cases []solverCase          `json:"cases"`
	}
	if err := json.Unmarshal(raw, &data); err != nil {
		t.Fatal(err)
	}
	live := solve(t)
	for _, c := range data.Cases {
		m := model(t, battery.Spec{Profile: data.Cells[c.Cell].profile(), CellsInSeries: c.Cells, CapacityAh: c.CapacityAh, MassKg: c.MassKg})
		out := simulate(t, charge.Case{
			Pack: m, Start: m.StateAt(c.Charge, c.AmbientC), AmbientC: c.AmbientC,
			CurrentA: c.CurrentA, EndV: c.EndV, DroopOhm: c.DroopOhm, EndA: c.EndA,
		})
		want := [3]float64{c.Recorded.HoursTo80, c.Recorded.HoursToFull, c.Recorded.InAh}
		from := "recorded from the script"
		if l, ok := live[c.Name]; ok {
			for i := range l {
				if math.Abs(l[i]-want[i]) > 1e-3 {
					t.Errorf("%s: the script now gives %v, recorded is %v", c.Name, l, want)
				}
			}
			want, from = l, "SciPy, now"
		}
		within(t, c.Name+": hours to 80 %", out.Bare80H, want[0], 0.005, from)
		within(t, c.Name+": hours to full", out.BareFullH, want[1], 0.005, from)
		within(t, c.Name+": Ah in", out.InAh, want[2], 0.005, from)
	}
}

// solve runs the script where that was asked for and SciPy is there; nil
// elsewhere.
func solve(t *testing.T) map[string][3]float64 {
	if os.Getenv("PACKCHECK_SLOW") == "" {
		t.Log("PACKCHECK_SLOW is not set: held against the recorded figures of the script")
		return nil
	}
	for _, python := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(python, "-c", "import scipy").Run() != nil {
			continue
		}
		out, err := exec.Command(python, "testdata/onecharge.py", "testdata/onecharge.json").Output()
		if err != nil {
			t.Fatalf("the script failed: %v", err)
		}
		got := map[string][3]float64{}
		for line := range strings.Lines(string(bytes.TrimSpace(out))) {
			f := strings.Split(strings.TrimSpace(line), "\t")
			var v [3]float64
			for i := range v {
				if v[i], err = strconv.ParseFloat(f[i+1], 64); err != nil {
					t.Fatal(err)
				}
			}
			got[f[0]] = v
		}
		return got
	}
	t.Log("no python3 with scipy: held against the recorded figures of the script")
	return nil
}
