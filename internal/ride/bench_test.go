package ride

import (
	"sync"
	"testing"

	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
)

// hour is an outing of an hour with a pack that lasts it.
func hour(b *testing.B) Case {
	c := tractorCase(b)
	c.WantedS = 3600
	c.Pack = pack(b, "li-ion", 5, 20)
	return c
}

// One fully specified case: steady running, one launch, blocked wheels, and an
// outing of an hour and on until it ends.
func BenchmarkSee(b *testing.B) {
	c := hour(b)
	b.ReportAllocs()
	for b.Loop() {
		See(&c, nil)
	}
}

// What a vehicle of labels with its 12 V lead-acid block costs, part by
// part and together.
func BenchmarkLeadAcidCase(b *testing.B) {
	c := tractorCase(b)
	c.Pack, c.WantedS = pack(b, "agm", 6, 12), 3600
	c.Controller.Ohm = 0.01
	still := drive.HeatState{WindingC: c.AmbientC, CaseC: c.AmbientC}
	launch := c.LaunchCase()
	var bus cutoff.Recorder
	for _, part := range []struct {
		name string
		run  func()
	}{
		{"steady", func() { drive.SteadyOn(c.Vehicle, c.Controller, c.Circuit(), c.AmbientC) }},
		{"launch", func() { drive.Launch(&launch, c.LaunchSeconds(), nil) }},
		{"outing", func() { Run(&c, nil) }},
		{"blocked", func() { drive.BlockedWheels(c.Vehicle, c.Controller, c.Circuit(), still, c.AmbientC) }},
		{"sag", func() { c.RecordSag(0.3, nil, &bus) }},
		{"all", func() { See(&c, nil) }},
	} {
		b.Run(part.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				part.run()
			}
		})
	}
}

func BenchmarkOutingOfAnHour(b *testing.B) {
	c := hour(b)
	b.ReportAllocs()
	for b.Loop() {
		Run(&c, nil)
	}
}

// One step of driving: motion, heat, pack, cutoffs.
func BenchmarkStep(b *testing.B) {
	c := hour(b)
	o := outing{c: &c}
	o.begin()
	o.phase = Driving
	o.motion = newMotion(&c.Vehicle, &c.Controller, 20)
	s := newSlot(&c, 1)
	start := o.now
	b.ReportAllocs()
	for b.Loop() {
		o.now = start
		o.move(&s)
	}
}

// Ten thousand outings of an hour, shared by two cores.
func BenchmarkTenThousandOutings(b *testing.B) {
	c := hour(b)
	for b.Loop() {
		var wait sync.WaitGroup
		for range 2 {
			wait.Go(func() {
				own := c
				for i := range 5000 {
					own.Vehicle.MassKg = 40 + float64(i)*0.002
					own.Vehicle.RollN = drive.RollingN(drive.Rolling{MassKg: own.Vehicle.MassKg, HardWheelM: 0.006, WheelRadiusM: own.Vehicle.WheelRadiusM})
					Run(&own, nil)
				}
			})
		}
		wait.Wait()
	}
}
