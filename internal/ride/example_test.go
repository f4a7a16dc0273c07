package ride_test

import (
	"fmt"
	"log"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/ride"
)

// A bench discharge: 7.5 Ah sealed lead-acid at 4.42 A to 10.5 V, which its
// maker's table gives an hour; the model agrees with that table within 5 %.
func ExampleRun() {
	agm, ok := chemistry.Builtin().Profile("agm")
	if !ok {
		fmt.Println("no such chemistry")
		return
	}
	pack, err := battery.New(battery.Spec{Profile: agm, CellsInSeries: 6, CapacityAh: 7.5})
	if err != nil {
		log.Fatal(err)
	}
	out := ride.Run(&ride.Case{
		Pack: pack, StartCharge: 1, PackC: 25, AmbientC: 25,
		Load: ride.Load{Kind: ride.ConstantCurrent, Amount: 4.42}, UntilV: 10.5,
	}, nil)
	fmt.Printf("%.0f min, %v\n", out.ClockS/60, out.EndedBy)
	// Output: 62 min, end voltage reached
}
