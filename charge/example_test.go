package charge_test

import (
	"fmt"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
)

func ExampleParseLabel() {
	l, err := charge.ParseLabel("INPUT: AC 100-240V~ 50/60Hz OUTPUT: DC 12V 1000mA")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%g V, %g A\n", l.PrintedV, l.PrintedA)
	fmt.Println(l.Unclear[0])
	fmt.Println(l.Charger().WhyEnd)
	// Output:
	// 12 V, 1 A
	// The label does not say what kind of battery it charges.
	// 12 V is not an end voltage: an adaptor printed 12 V can rise to about 18 V when the battery is full.
}

// Somebody at the allotments wants to charge the tractor's new tool pack with
// the charger of the old battery, through the old jack.
func ExampleMatch() {
	p, ok := chemistry.Builtin().Profile("li-ion")
	if !ok {
		fmt.Println("no such chemistry")
		return
	}
	m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: 5, CapacityAh: 5})
	if err != nil {
		fmt.Println(err)
		return
	}
	l, err := charge.ParseLabel("lead acid charger 14.4V DC 1A automatic")
	if err != nil {
		fmt.Println(err)
		return
	}
	v := charge.Match(charge.Plugged{
		Pack: m, Charger: l.Charger(), CellC: 18, AmbientC: 18, ToolPack: true, Port: charge.PortVehicle,
	})
	fmt.Println(v.Fit)
	for _, f := range v.Findings[:2] {
		fmt.Printf("%v: %s\n", f.Level, f.Title)
	}
	// Output:
	// no
	// danger: Never charge a tool or lithium pack through the jack.
	// danger: Wrong charger: it is made for lead-acid, the pack is lithium-ion (tool pack, nickel-rich).
}

func ExampleKeep() {
	p, ok := chemistry.Builtin().Profile("agm")
	if !ok {
		fmt.Println("no such chemistry")
		return
	}
	m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: 6, CapacityAh: 7})
	if err != nil {
		fmt.Println(err)
		return
	}
	out, err := charge.Keep(charge.Store{
		Pack: m, Charge: 1, TempC: 12,
		From: charge.Date{Year: 2026, Month: 10, Day: 18}, Until: charge.Date{Year: 2027, Month: 5, Day: 1},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("left %.0f %%\n", out.LeftLikely*100)
	for _, t := range out.Tasks {
		fmt.Println(t.On, t.What)
	}
	// Output:
	// left 92 %
	// 2026-10-18 Take the pack off the vehicle, so that nothing draws from it. It is full: put it away like this.
	// 2027-04-16 Charge it full again.
	// 2027-04-30 Charge it full, let it rest overnight and measure its volts before the first ride.
}
