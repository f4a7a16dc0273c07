package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
)

// What a battery gives at one current is foretold from its log at another, by the files
// that fit writes; and from all the other logs of it. Its own log comes back.
//
// Sources of the curves: those of [TestFitReadsMeasuredDischargesAsOthersDo]; pybop-team,
// LG_M50_ECM, BSD 3-Clause; Wang et al., Li-ion Battery Electro-Thermal Dataset, 2025,
// MIT; About:Energy, BPX parameterisations, CC BY-SA 4.0; BatEst example data (Raj, 2020),
// MIT. Times to the end volts are read off the same curves.
func TestAFitForetellsWhatTheSameBatteryGivesAtOtherCurrents(t *testing.T) {
	dir := measured(t, "foretold discharges of eight cells from their logs at other currents")
	type one struct {
		folder, label string
		endV, airC    float64
		logs          []string
	}
	cells := []one{
		{"*30q_18650_3ah", "3.6 V 3 Ah Li-ion", 3, 22, []string{"s001_cc_c10_rt", "s001_cc_1c_rt", "s001_cc_3c_rt"}},
		{"energy21700_5ah", "3.6 V 5 Ah Li-ion", 3, 25, []string{"cc_0p1c_25c", "cc_0p5c_25c", "cc_1c_25c"}},
		{"inr18650_2p6ah", "3.6 V 2.6 Ah Li-ion", 3, 25, []string{"cell1_cc_c20_25c", "cell1_cc_0p5c_25c", "cell1_cc_1c_25c", "cell1_cc_2c_25c"}},
		{"lfp18650_2ah", "3.2 V 2 Ah LiFePO4", 2.5, 25, []string{"cc_c20_25c", "cc_0p5c_25c", "cc_2c_25c"}},
		{"nmc_pouch_12p5ah", "3.6 V 12.5 Ah Li-ion", 3, 25, []string{"cc_c20_25c", "cc_1c_25c"}},
		{"energy18650_3p0ah", "3.6 V 3 Ah Li-ion", 3, 24, []string{"pocv_discharge_0p125a_24c", "cc_0p5c_24c"}},
		{"*18650pf_2p9ah", "3.6 V 2.9 Ah Li-ion", 3, 25, []string{"c20_discharge_25c", "cc_1c_25c_fresh"}},
		{"*_lmo_pouch_33ah", "3.6 V 33 Ah Li-ion", 3, 25, []string{"cell_cc_1c_25c", "cell_cc_3c_25c"}},
	}
	var own, other, rest tally
	for _, c := range cells {
		runs := make([]discharge, len(c.logs))
		for i, name := range c.logs {
			runs[i] = dischargeTo(t, curve(t, dir, filepath.Join(c.folder, name+".csv")), c.endV)
		}
		for i := range runs {
			pack := fittedPack(t, c.label, c.airC, runs[i].file)
			for k := range runs {
				to := &other
				if k == i {
					to = &own
				}
				to.hold(t, fmt.Sprintf("%s at %.3g A by %.3g A", c.label, runs[k].amps, runs[i].amps), minutesAt(t, pack, runs[k].amps, c.endV, c.airC), runs[k].minutes)
			}
			if len(runs) < 3 {
				continue
			}
			var files []string
			for k := range runs {
				if k != i {
					files = append(files, runs[k].file)
				}
			}
			rest.hold(t, fmt.Sprintf("%s at %.3g A by all others", c.label, runs[i].amps), minutesAt(t, fittedPack(t, c.label, c.airC, files...), runs[i].amps, c.endV, c.airC), runs[i].minutes)
		}
	}
	t.Logf("its own log: %v; another current: %v; all others: %v", own, other, rest)
	if own.inside < own.n || own.most > 0.03 {
		t.Errorf("its own log does not come back: %v", own)
	}
	for _, x := range []tally{other, rest} {
		if share := float64(x.inside) / float64(x.n); share < 0.75 {
			t.Errorf("%.0f %% inside ranges of 80 %%: %v", 100*share, x)
		}
	}
}

// tally counts what lies inside, and by how much the likely value is off at the most and
// in the root mean square.
type tally struct {
	n, inside     int
	most, squares float64
}

func (x tally) String() string {
	return fmt.Sprintf("%d of %d inside, %.1f %% off, at the most %.1f %%", x.inside, x.n, 100*math.Sqrt(x.squares/float64(x.n)), 100*x.most)
}

func (x *tally) hold(t *testing.T, what string, r answer.Range, minutes float64) {
	t.Helper()
	off := r.Likely/minutes - 1
	x.n++
	x.most, x.squares = max(x.most, math.Abs(off)), x.squares+off*off
	if minutes >= r.Low && minutes <= r.High {
		x.inside++
		return
	}
	t.Logf("%s: measured %.4g min, foretold %.4g to %.4g", what, minutes, r.Low, r.High)
}

// discharge is a measured one at a constant current.
type discharge struct {
	file          string
	amps, minutes float64
}

// dischargeTo reads when a discharge has come down to some volts.
func dischargeTo(t *testing.T, file string, endV float64) discharge {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	read := func(row []string, name string) float64 {
		x, err := strconv.ParseFloat(row[column[name]], 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	from, beforeS, beforeV, as := math.NaN(), 0.0, 0.0, 0.0
	for _, row := range rows[1:] {
		s, v, a := read(row, "time_s"), read(row, "voltage_v"), read(row, "current_a")
		if math.IsNaN(from) {
			if math.Abs(a) < 0.02 {
				continue
			}
			from, beforeS, beforeV = s, s, v
		}
		as += a * (s - beforeS)
		if v <= endV {
			at := s - (s-beforeS)*(endV-v)/max(beforeV-v, 1e-9)
			return discharge{file, as / (s - from), (at - from) / 60}
		}
		beforeS, beforeV = s, v
	}
	t.Fatalf("%s does not come down to %g V", file, endV)
	return discharge{}
}

// fittedPack is the [pack] table that fit writes, with its chemistry beside it.
func fittedPack(t *testing.T, label string, airC float64, files ...string) string {
	t.Helper()
	dir := t.TempDir()
	pack := filepath.Join(dir, "pack.toml")
	args := append([]string{"fit", "--label", label, "--full", "--air", fmt.Sprintf("%g C", airC), "--write-pack", pack, "--write-chemistry", filepath.Join(dir, "cell.toml")}, files...)
	var out, complaints bytes.Buffer
	if code := run(args, strings.NewReader(""), &out, &complaints); code != exitFine {
		t.Fatalf("%v: %s", args, complaints.String())
	}
	return pack
}

// minutesAt is how many minutes a battery gives a current until it has come down to some volts.
func minutesAt(t *testing.T, pack string, amps, endV, airC float64) answer.Range {
	t.Helper()
	text, err := os.ReadFile(pack)
	if err != nil {
		t.Fatal(err)
	}
	text = fmt.Appendf(text, "[load]\ncurrent = \"%.5g A\"\nuntil = \"%g V\"\n[outing]\nair = \"%g C\"\n", amps, endV, airC)
	file := filepath.Join(filepath.Dir(pack), "bench.toml")
	if err := os.WriteFile(file, text, 0o644); err != nil {
		t.Fatal(err)
	}
	s, err := packcheck.Load(file)
	if err != nil {
		t.Fatal(err)
	}
	a, err := packcheck.AssessWith(t.Context(), s, packcheck.Options{Draws: 256})
	if err != nil {
		t.Fatal(err)
	}
	return a.Ranges["ride.lasts_clock_min"]
}
