package tables_test

import (
	"fmt"
	"strings"

	"example.org/packcheck/tables"
)

func ExampleTables_Wire() {
	t := tables.Builtin()
	american, _ := t.Wire(tables.WireSize{System: tables.AWG, Gauge: 14})
	automotive, _ := t.Wire(tables.WireSize{System: tables.Automotive, Gauge: 14})
	fmt.Printf("%s: %.2f Ohm/km\n", american.Name, 1000*american.OhmPerM(20))
	fmt.Printf("%s: %.2f Ohm/km\n", automotive.Name, 1000*automotive.OhmPerM(20))
	// Output:
	// AWG 14: 8.29 Ohm/km
	// automotive 14 gauge: 9.19 Ohm/km
}

func ExampleTables_Ground() {
	t := tables.Builtin()
	lawn, _ := t.Ground("Lawn")
	crr := lawn.RollingCoefficient(0.14, false)
	source, _ := t.Source(crr.Source)
	fmt.Printf("%s: %.3f, %.3f to %.3f (%s)\n", lawn.Name, crr.Likely, crr.Low, crr.High, source.Known)
	_, err := t.Ground("moon dust")
	fmt.Println(err)
	// Output:
	// short grass: 0.071, 0.036 to 0.107 (estimate +-50 %)
	// tables: ground "moon dust" not in the table (known: asphalt, carpet, gravel, long grass, packed dirt, sand, short grass, smooth concrete, tile, wet grass)
}

func ExampleTables_Extend() {
	own := `
[source.coast-down]
text = "Coast-down on the green of Bramble Lane, three runs each way"
known = "measured"

[ground.allotment-green]
words = ["the green"]
rolling_mm = [7.0, 9.0, 11.0]
grip_hard = [0.2, 0.3, 0.4]
grip_rubber = [0.3, 0.45, 0.6]
source = "coast-down"
`
	t, err := tables.Builtin().Extend(strings.NewReader(own), "own.toml")
	if err != nil {
		fmt.Println(err)
		return
	}
	green, _ := t.Ground("the green")
	fmt.Printf("%s: %.1f mm\n", green.Name, 1000*green.Rolling.Likely)
	// Output:
	// allotment green: 9.0 mm
}
