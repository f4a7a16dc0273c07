package wiring_test

import (
	"fmt"
	"math"

	"example.org/packcheck/tables"
	"example.org/packcheck/wiring"
)

// The children's tractor at the harvest fair: an 18 V pack on the wire and
// pedal switch of a 12 V vehicle.
func ExampleAssess() {
	t := tables.Builtin()
	wire, err := wiring.NewRun(t, wiring.RunSpec{
		Size: tables.WireSize{System: tables.AWG, Gauge: 16}, OneWayM: 1.2, InsulationC: 80,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	form, _ := t.Fuse("small blade")
	fuse, _ := wiring.NewFuse(wiring.FuseSpec{Form: form, RatingA: 40, DistanceM: new(0.1)})
	path, _ := wiring.NewPath(wiring.PathSpec{
		Runs: []wiring.Run{wire},
		Contacts: []wiring.Contact{
			{Name: "crimped tabs", Kind: wiring.Joint, Ohm: 1.5e-3, Count: 4},
			{Name: "pedal switch", Kind: wiring.Switch, Ohm: 10e-3},
		},
		Fuse: fuse,
	})
	result, err := wiring.Assess(wiring.Case{
		Path: path, AmbientC: 30,
		Pack:   wiring.PackEnd{FullV: 20.5, Ohm: 0.06},
		Demand: wiring.Demand{RunningA: 14, LaunchA: 60, LaunchS: 0.4, BlockedA: 120},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("drop %.2f V, %.0f W\n", result.Total.DropV, result.Total.HeatW)
	for _, f := range result.Findings {
		fmt.Printf("%s: %s (%.3g %s, limit %.3g)\n", f.Level, f.Title, f.Found, f.Unit, f.Limit)
	}
	fmt.Println(result.Band.Advice())
	// Output:
	// drop 0.75 V, 10 W
	// danger: The fuse is too large for the wire: the copper could burn before it opens. (40 A, limit 30)
	// fix first: No standard fuse suits both load and wire. (41.4 A, limit 30)
	// fix first: The fuse is too large for its holder. (40 A, limit 30)
	// watch: The fuse may open at launch. (0.4 s, limit 0.322)
	// watch: Some heat builds up in the pedal switch. (1.96 W, limit 1)
	// fine: In a short circuit the fuse opens before the wire is harmed. (0.197 s, limit 0.529)
	// fine: The running current is within what the wire can take. (14 A, limit 20)
	// Soften the launch with a current limit or a slower ramp; otherwise fit wire that carries 28 A or more and a kind of fuse and holder made for this current. Do not fit a larger fuse on this path; once it is changed, see anew which one suits.
}

func ExampleFuse_WhatFlowed() {
	form, _ := tables.Builtin().Fuse("small blade")
	fuse, _ := wiring.NewFuse(wiring.FuseSpec{Form: form, RatingA: 30})
	flowed := fuse.WhatFlowed(wiring.Opening{Seconds: 4, AmbientC: 25})
	fmt.Printf("%.0f to %.0f A\n", flowed.LeastA, flowed.MostA)
	// Output:
	// 39 to 63 A
}

func ExampleWhatOpened() {
	answers := wiring.WhatOpened(tables.Builtin(), wiring.Return{Seconds: math.Inf(1)})
	fmt.Println(answers[0].Device)
	fmt.Println(answers[0].Check)
	// Output:
	// one-time fuse
	// Look at the fuse. Find what drew the current before a fuse of the same rating goes in.
}

// A season of launches on a fuse, stepped as an engine does.
func ExampleFuseState() {
	form, _ := tables.Builtin().Fuse("small blade")
	fuse, _ := wiring.NewFuse(wiring.FuseSpec{Form: form, RatingA: 30})
	curve := fuse.At(35)
	var state wiring.FuseState
	for range 20 { // 20 times: 0.1 s of launch, then driving
		state.Step(&curve, 70, 0.1)
		state.Step(&curve, 12, 25)
	}
	fmt.Printf("may have opened: %v, effective current %.0f A\n", state.MayHaveOpened(), state.EffectiveA())
	// Output:
	// may have opened: false, effective current 13 A
}
