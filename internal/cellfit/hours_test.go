package cellfit_test

import (
	"math"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// A table is made from a model whose wells are known; a fit that starts from
// other wells must bring the table back.
func TestFitHourTableBringsATableBack(t *testing.T) {
	base := profile(t, "agm")
	made := base
	made.Wells.C, made.Wells.KPerS = 0.42, 7e-5
	made.Resistance.OhmAh = chemistry.Curve{X: base.Resistance.OhmAh.X, Y: scaled(base.Resistance.OhmAh.Y, 1.2)}
	m, err := battery.New(battery.Spec{Profile: made, CellsInSeries: 6, CapacityAh: 7})
	if err != nil {
		t.Fatal(err)
	}
	table := cellfit.HourTable{
		CellsInSeries: 6, CapacityAh: 7, EndV: []float64{1.75},
		RestedV: chemistry.Curve{X: []float64{0, 0.5, 1}, Y: []float64{1.9643, 2.0491, 2.1420}},
	}
	for _, amps := range []float64{0.36, 1.2, 4, 12} {
		run := m.Discharge(m.StateAt(1, 25), amps, 10.5, 25)
		table.Hours = append(table.Hours, run.Hours)
		table.Amps = append(table.Amps, []float64{amps})
	}
	fit, err := cellfit.FitHourTable(table, base, 90)
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range fit.Off {
		if math.Abs(row[0]) > 0.02 {
			t.Errorf("%.2f h: off by %.1f %%", table.Hours[i], 100*row[0])
		}
	}
	if _, err := cellfit.FitHourTable(cellfit.HourTable{}, base, 1); err == nil {
		t.Error("an empty table is accepted")
	}
}

func scaled(x []float64, by float64) []float64 {
	out := make([]float64, len(x))
	for i, v := range x {
		out[i] = v * by
	}
	return out
}
