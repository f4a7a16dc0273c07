package cellfit_test

import (
	"fmt"
	"os"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// A worn 18 V pack was logged while the tractor of the harvest fair ran until
// its board stopped it.
func Example() {
	li, ok := chemistry.Builtin().Profile("li-ion")
	if !ok {
		fmt.Println("no such chemistry")
		return
	}
	worn, _ := battery.New(battery.Spec{Profile: li, CellsInSeries: 5, CapacityAh: 5, Health: 0.8, ClosedShell: true})
	var csv strings.Builder
	csv.WriteString("Time (s);Voltage (V);Current (A)\n")
	s, step := worn.StateAt(1, 25), worn.Over(1)
	for k, amps := 0, 0.0; worn.TerminalV(&s, amps) > 15; k++ {
		fmt.Fprintf(&csv, "%d;%.3f;%.2f\n", k, worn.TerminalV(&s, amps), amps)
		step.Advance(&s, amps, 25)
		amps = 8
		if k%35 >= 25 {
			amps = 0
		}
	}

	log, err := cellfit.Read(strings.NewReader(csv.String()), cellfit.Options{Name: "tractor.csv"})
	if err != nil {
		fmt.Println(err)
		return
	}
	found, err := cellfit.Fit([]*cellfit.Log{log}, cellfit.FitOptions{Chemistry: li, CellsInSeries: 5, LabelAh: 5, CutoffV: 15.2})
	if err != nil {
		fmt.Println(err)
		return
	}
	_ = found.WritePack(os.Stdout)
	// Output:
	// [pack]
	// chemistry = "li-ion"
	// cells_in_series = 5
	// capacity = "5 Ah"
	// rate = "5 h"
	// health = "74.7 to 85.1 %, likely 79.9"
	// tested = true
	// tested_over = "28 min"
	// resistance = "77.6 to 102 mOhm, likely 89.9"
}
