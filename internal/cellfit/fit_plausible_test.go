package cellfit_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/packcheck/internal/cellfit"
)

// A wrong unit, a wrong column or a log of something else is refused in words
// that lead to it.
func TestFitRefusesWhatCannotBeOfThisBattery(t *testing.T) {
	t.Parallel()
	head := "Time,Voltage,Current\n"
	// table is a discharge from full to 15 V with amps and rows as far apart as given.
	table := func(everyS, amps float64) string {
		var b strings.Builder
		b.WriteString(head)
		for k := range 100 {
			fmt.Fprintf(&b, "%g,%.3f,%g\n", everyS*float64(k), 20.9-0.06*float64(k), amps*min(1, float64(k)))
		}
		return b.String()
	}
	columns := `time from "Time", volts from "Voltage", amps from "Current"`
	// Four cells where five were said.
	var fourCells strings.Builder
	for k := range 50 {
		fmt.Fprintf(&fourCells, "%d,%.3f,4\n", 60*(k+1), 15.7-0.02*float64(k))
	}
	good := read(t, table(50, 4))
	for _, c := range []struct {
		name  string
		log   string
		o     cellfit.FitOptions
		wants []string
	}{
		{"milliamps taken for amps", table(50, 4000), cellfit.FitOptions{}, []string{"would empty 5 Ah in", "check the units and columns", columns}},
		{"amps taken for milliamps", table(50, 0.004), cellfit.FitOptions{}, []string{"hours to empty 5 Ah", columns}},
		{"minutes taken for seconds", table(0.5, 4), cellfit.FitOptions{}, []string{"of the label's charge", columns}},
		{"seconds taken for minutes", table(3000, 4), cellfit.FitOptions{}, []string{"Ah came out of a battery of 5 Ah", columns}},
		{"a cutoff above the battery", table(50, 4), cellfit.FitOptions{CutoffV: 25}, []string{"a cutoff of 25 V lies above a full battery"}},
		{"only charging", strings.ReplaceAll(table(50, -4), "20.9", "21"), cellfit.FitOptions{}, []string{"log.csv: there is no discharge in it"}},
		{"one cell among packs", head + "0,4.1,0\n1,4.0,3\n2,3.9,3\n", cellfit.FitOptions{}, []string{"log.csv: 5 cells of li-ion cannot stand at 4.10 V", "another battery"}},
		{"a cell too many", head + "0,15.8,0\n" + fourCells.String(), cellfit.FitOptions{}, []string{"log.csv: by its first voltage, 15.8 V, the battery was 5 % full, yet", "the number of cells or the chemistry is wrong"}},
		{"two rows", head + "0,20.9,0\n1,20.5,3\n", cellfit.FitOptions{}, []string{"log.csv: 2 rows of numbers; want at least three"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			l, err := cellfit.Read(strings.NewReader(c.log), cellfit.Options{Name: "log.csv", Discharging: 1})
			if err != nil {
				t.Fatal(err)
			}
			c.o.Chemistry, c.o.CellsInSeries, c.o.LabelAh = profile(t, "li-ion"), 5, 5
			_, err = cellfit.Fit([]*cellfit.Log{good, l}, c.o)
			for _, want := range c.wants {
				if err == nil || !strings.Contains(err.Error(), want) {
					t.Errorf("%v\nwant %q", err, want)
				}
			}
		})
	}
}
