package wiring_test

import (
	"testing"

	"example.org/packcheck/wiring"
)

func TestTheEnginesCallsDoNotAllocate(t *testing.T) {
	p := tractor(t)
	curve := p.Fuse().At(40)
	var s wiring.FuseState
	var sum float64
	for name, call := range map[string]func(){
		"Path.Ohm":       func() { sum += p.Ohm(40) },
		"Curve.Opens":    func() { sum += curve.Opens(50).LatestS },
		"FuseState.Step": func() { s.Step(&curve, 50, 1e-3) },
		"Fuse.Ohm":       func() { sum += p.Fuse().Ohm(20) },
	} {
		if got := testing.AllocsPerRun(100, call); got != 0 {
			t.Errorf("%s allocates %g times", name, got)
		}
	}
}

func BenchmarkPathOhm(b *testing.B) {
	p := tractor(b)
	b.ReportAllocs()
	sum := 0.0
	for b.Loop() {
		sum += p.Ohm(40)
	}
	if sum <= 0 {
		b.Fatal("no resistance")
	}
}

func BenchmarkFuseStep(b *testing.B) {
	curve := fuseOf(b, "small blade", 30).At(40)
	for name, amps := range map[string]float64{"holding": 20, "opening": 75} {
		b.Run(name, func(b *testing.B) {
			var s wiring.FuseState
			b.ReportAllocs()
			for b.Loop() {
				s.Step(&curve, amps, 1e-6)
			}
		})
	}
}

func BenchmarkAssess(b *testing.B) {
	c := wiring.Case{
		Path: tractor(b), Pack: wiring.PackEnd{FullV: 20.5, Ohm: 0.05}, AmbientC: 25,
		Demand: wiring.Demand{RunningA: 14, LaunchA: 50, LaunchS: 0.4, LaunchI2t: 900, Launches: 5000, BlockedA: 110},
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := wiring.Assess(c); err != nil {
			b.Fatal(err)
		}
	}
}
