package ride

import (
	"sync"
	"testing"

	"example.org/packcheck/drive"
)

// hour is an outing of an hour with a pack that lasts it.
func hour(b *testing.B) Case {
	c := tractorCase(b)
	c.WantedS = 3600
	c.Pack = pack(b, "li-ion", 5, 20)
	return c
}

// One fully specified case: steady running, one launch, an outing of an hour.
func BenchmarkEvaluate(b *testing.B) {
	c := hour(b)
	b.ReportAllocs()
	for b.Loop() {
		Evaluate(&c)
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
