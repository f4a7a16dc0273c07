package cutoff_test

import (
	"fmt"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
)

// The children's tractor of the Bramble Lane allotments runs on five lithium
// cells behind a module that opens at 15 V after two seconds.
func ExampleChain_Step() {
	c, err := cutoff.NewChain(cutoff.Device{Where: cutoff.Module, OpensAtV: 15, DelayS: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Step(cutoff.Sample{PackV: 18.2, BusV: 17.9, DtS: 60}))
	fmt.Println(c.Step(cutoff.Sample{PackV: 14.8, BusV: 14.5, DtS: 5}))
	where, atS, _ := c.First()
	fmt.Printf("%v opened after %g s\n", where, atS)
	// Output:
	// false
	// true
	// module opened after 62 s
}

// At the harvest fair the tractor's pack is ridden down and nobody thinks of
// it until the next Saturday.
func ExampleIdle() {
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
	left, err := cutoff.Idle(cutoff.Standing{
		Pack: m, Start: m.StateAt(0.03, 18), AmbientC: 18,
		StandbyA: 0.015, // the controller's own
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(left.WeekRung)
	fmt.Println(left.Findings[0].Code == cutoff.CodeIdleWeek, left.Findings[0].Level)
	// Output:
	// never recharge
	// true danger
}

func ExampleAdvise() {
	p, ok := chemistry.Builtin().Profile("agm")
	if !ok {
		fmt.Println("no such chemistry")
		return
	}
	m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: 6, CapacityAh: 12, WeakestShort: 0.02})
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := cutoff.Advise(cutoff.Wish{
		Case:  cutoff.Case{Pack: m, Start: m.StateAt(1, 20), LoadA: 4, PathOhm: 0.05, AmbientC: 20},
		Where: cutoff.Controller,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.OpensAtV < m.EmptyV()+1.5, a.DelayS, a.ClosesAtV > a.ReboundV)
	// Output: true 2 true
}
