package battery_test

import (
	"fmt"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// How long a small sealed block runs a tractor that takes eight amperes, and
// how much more it gives when the driver pauses.
func Example() {
	agm, ok := chemistry.Builtin().Profile("agm")
	if !ok {
		fmt.Println("no such chemistry")
		return
	}
	pack, err := battery.New(battery.Spec{Profile: agm, CellsInSeries: 6, CapacityAh: 12})
	if err != nil {
		fmt.Println(err)
		return
	}
	run := pack.Discharge(pack.StateAt(1, 25), 8, 10.2, 25)
	fmt.Printf("without a pause: %.0f min, %.1f Ah\n", run.Hours*60, run.Ah)

	s, drive, pause := pack.StateAt(1, 25), pack.Over(25), pack.Over(10)
	minutes := 0.0
	for pack.TerminalV(&s, 8) > 10.2 {
		drive.Advance(&s, 8, 25)
		pause.Advance(&s, 0, 25)
		minutes += 25. / 60
	}
	fmt.Printf("pausing 10 s after every 25 s: %.0f min of driving\n", minutes)
	// Output:
	// without a pause: 54 min, 7.2 Ah
	// pausing 10 s after every 25 s: 58 min of driving
}

func ExampleParseLabel() {
	l, _ := battery.ParseLabel("20 V max 5 Ah", "")
	fmt.Printf("%d cells of %s, %g V nominal, %g V full, %g Wh\n", l.CellsInSeries, l.Chemistry, l.NominalV, l.FullV, l.EnergyWh)
	fmt.Println(l.Notes[0])
	// Output:
	// 5 cells of li-ion, 18 V nominal, 21 V full, 90 Wh
	// 20 V max and 18 V nominal are one pack, 5 cells; 20 V is what it reads just after charging, not under load.
}

// Jongerden et al., DSN 2009: c = 0.166, k' = 0.122 /min, 5.5 A min, 0.5 A
// lasts 2.02 min.
func ExampleWells_LastsS() {
	w := battery.WellsFromKPrime(5.5/60, 0.166, 0.122/60)
	fmt.Printf("%.2f min\n", w.LastsS(w.Full(), 0.5)/60)
	// Output: 2.02 min
}

func ExampleChargeFromRest() {
	agm, ok := chemistry.Builtin().Profile("agm")
	if !ok {
		fmt.Println("no such chemistry")
		return
	}
	for _, hours := range []float64{1, 24} {
		low, likely, high := battery.ChargeFromRest(agm, 12.4/6, hours, 15)
		fmt.Printf("12.4 V after %g h: %.0f to %.0f %%, likely %.0f %%\n", hours, 100*low, 100*high, 100*likely)
	}
	// Output:
	// 12.4 V after 1 h: 26 to 78 %, likely 58 %
	// 12.4 V after 24 h: 52 to 65 %, likely 58 %
}

// Peukert's time of a 7 Ah block, rated over 20 h, at 9 A.
func ExamplePeukert_LastsH() {
	hours := battery.Peukert{CapacityAh: 7, Hours: 20, Exponent: 1.2}.LastsH(9)
	fmt.Printf("%.1f min\n", 60*hours)
	// Output:
	// 24.4 min
}
