package packcheck_test

import (
	"context"
	"encoding/json"
	"fmt"
	"log"
	"slices"
	"strings"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
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
	// Nothing disconnects the pack before it drains to ruin.
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
	// tractor.toml:4: pack: read nothing; want pack.chemistry beside it: "agm", "agm-traction", "gel", "li-ion", "lifepo4" or "nimh"
	// tractor.toml:5: pack.cells_in_serie: read "cells_in_serie"; want "cells_in_series"
}

// Two batteries in one vehicle, side by side: what is not known of the vehicle is the
// same for both, so that a difference is one.
func ExampleCompare() {
	own, err := setup.Of(map[string]string{"rider.age": "4 years", "pack.label": "12 V 7 Ah", "motors.can": "550"})
	if err != nil {
		log.Fatal(err)
	}
	other, err := own.Change(setup.Changes{Pack: "20 V max 5 Ah"})
	if err != nil {
		log.Fatal(err)
	}
	c, err := packcheck.Compare(context.Background(), []*setup.Setup{own, other}, packcheck.Options{Draws: 64})
	if err != nil {
		log.Fatal(err)
	}
	for _, col := range c.Columns {
		fmt.Println(col.Letter, col.Name, col.Answer.Verdict)
	}
	fmt.Println(c.SameDraws, c.Columns[1].Against["steady.speed_kmh"].Low > 0)
	// Output:
	// A 12 V 7 Ah watch
	// B 20 V max 5 Ah danger
	// true true
}

// Every figure that may have a range is listed: a path that is not there is misspelt.
func ExampleRangePaths() {
	paths := packcheck.RangePaths()
	fmt.Println(slices.Contains(paths, "ride.pedal_min"), slices.Contains(paths, "ride.pedal_mins"))
	// Output:
	// true false
}

// A whole assessment as JSON, without a file.
func ExampleAssess_json() {
	var out strings.Builder
	s, err := setup.Of(map[string]string{"load.current": "9 A", "pack.label": "12 V 7 Ah"})
	if err == nil {
		var a *answer.Assessment
		if a, err = packcheck.AssessWith(context.Background(), s, packcheck.Options{Draws: 64}); err == nil {
			err = report.Write(&out, a, report.Options{Format: report.FormatJSON})
		}
	}
	var read struct{ Verdict string }
	fmt.Println(err, json.Unmarshal([]byte(out.String()), &read), read.Verdict != "")
	// Output:
	// <nil> <nil> true
}
