package battery_test

import (
	"fmt"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// One battery drawn, as a report draws a thousand: here every number at its
// middle, where a draw has one of its own.
func ExampleWidthsOf() {
	// A 5S2P tool pack of the maker's own, printed 5 Ah: cells of 2.5 Ah.
	members := chemistry.Shifted(chemistry.Builtin().Members("li-ion"), chemistry.Hint{CellAh: 2.5})
	w := battery.WidthsOf(chemistry.Lithium, "2 years", battery.MakersOwn)
	member := members[chemistry.Pick(members, 0.5)]
	health := w.Health.Likely
	m, err := battery.New(battery.Spec{
		Profile:          member.Profile,
		CellsInSeries:    5,
		Strings:          2,
		CapacityAh:       5 * w.Honesty.Likely,
		Health:           health,
		ResistanceFactor: w.Resistance.Likely * battery.GrowthAt(health, w.GrowthAt80.Likely),
		WeakestShort:     w.Weakest.Likely,
		ClosedShell:      true,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	ohm := m.PulseOhms(m.StateAt(0.5, 20), 20)
	fmt.Printf("%s: %.2f Ah, %.0f mOhm after 1 s, %.0f after 10 s and %.0f more in the tabs\n",
		member.Kind, m.FullAh(), 1000*ohm.Ohm1s, 1000*ohm.Ohm10s, 1000*w.TabsOhm.Likely)
	// Output:
	// power: 4.49 Ah, 145 mOhm after 1 s, 153 after 10 s and 9 more in the tabs
}
