package packcheck_test

import (
	"fmt"
	"log"
	"strings"

	"example.org/packcheck"
)

// A setup of which only labels are known. What it leaves out is assumed, and
// the Assessment says so.
func Example() {
	s, err := packcheck.Read(strings.NewReader(`
[rider]
mass = "20 kg"
[vehicle]
design_voltage = "12 V"
ground = "asphalt"
[motors]
count = 2
can = "550"
[pack]
chemistry = "li-ion"
label = "20 V max 5 Ah"
`), "tractor.toml")
	if err != nil {
		log.Fatal(err) // one line for every fault
	}
	a, err := packcheck.Assess(s)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(a.Verdict)
	fmt.Println(a.Headline[1])
	fmt.Println(len(a.Assumed) > 10, a.Pack.CellsInSeries)
	// Output:
	// danger
	// Nothing disconnects the pack before it is drained to ruin.
	// true 5
}

// All faults of a file come back at once.
func ExampleRead_faults() {
	_, err := packcheck.Read(strings.NewReader(`
[rider]
mass = "44"
[pack]
cells_in_serie = 5
`), "tractor.toml")
	fmt.Println(err)
	// Output:
	// tractor.toml:3: rider.mass: read "44"; want a mass with its unit (kg, lb, g, oz), such as "20 kg"
	// tractor.toml:5: pack.cells_in_serie: read "cells_in_serie"; want "cells_in_series"
}
