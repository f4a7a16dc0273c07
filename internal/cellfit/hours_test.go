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

// The capacity over the rated hours is on a curve through what was logged, in any order, and
// that of the nearest beyond it.
func TestTheCapacityOverTheRatedHoursLiesBetweenTheLogs(t *testing.T) {
	const at = 4
	for name, c := range map[string]struct{ hours, ah []float64 }{
		"one":                        {[]float64{2}, []float64{at}},
		"two":                        {[]float64{20, 1}, []float64{at + 1, at - 1}}, // the middle of their logarithms
		"it was logged itself":       {[]float64{1, 20, math.Sqrt(20)}, []float64{3, 6, at}},
		"twice the same":             {[]float64{1, 20, 1, 20}, []float64{at - 1, at + 1, at - 1, at + 1}},
		"all are shorter":            {[]float64{0.5, 1, 0.2}, []float64{3, at, 2}},
		"all are longer":             {[]float64{30, 10, 20}, []float64{6, at, 5}},
		"the same over hours of all": {[]float64{30, 10, 1, 2}, []float64{at, at, at, at}},
	} {
		if got := cellfit.CapacityOver(math.Sqrt(20), c.hours, c.ah); math.Abs(got-at) > 1e-9 {
			t.Errorf("%s: %g Ah, want %d", name, got, at)
		}
	}
	if got := cellfit.CapacityOver(4, []float64{1, 2, 8, 20}, []float64{1, 3, 5, 6}); !(got > 3 && got < 5) {
		t.Errorf("%g Ah do not lie between its neighbours", got)
	}
}
