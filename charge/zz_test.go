package charge_test

import (
	"fmt"
	"testing"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
)

func mk(name string, n int, ah float64, f func(*battery.Spec)) *battery.Model {
	p, ok := chemistry.Builtin().Profile(name)
	if !ok {
		panic(name)
	}
	sp := battery.Spec{Profile: p, CellsInSeries: n, CapacityAh: ah}
	if f != nil {
		f(&sp)
	}
	m, err := battery.New(sp)
	if err != nil {
		panic(err)
	}
	return m
}

func TestZZ(t *testing.T) {
	m := mk("li-ion", 1, 2.9, nil)
	for _, a := range []float64{0.5 * 2.9, 2.9, 1.5 * 2.9} {
		o, err := charge.Simulate(charge.Case{Pack: m, Start: m.StateAt(0, 25), AmbientC: 25, CurrentA: a, EndV: 4.2, EndA: 0.05})
		fmt.Printf("li %.2f: cc %.1f min %.3f Ah (%.0f%%) cv %.1f min in %.3f full %+v T %.1f err %v\n", a, o.CCHours*60, o.CCAh, 100*o.CCAh/o.InAh, o.CVHours*60, o.InAh, o.HoursToFull, o.PeakC, err)
	}

	for _, out := range []float64{19.775, 19.691} {
		m := mk("agm", 6, 17, func(s *battery.Spec) { s.Health = 21.5 / 17 / 1.045 })
		fmt.Println(m.FullAh())
		for _, ev := range []float64{14.3, 14.43} {
			o, err := charge.Simulate(charge.Case{Pack: m, Start: m.StateAt(1-out/m.FullAh(), 24), AmbientC: 24, CurrentA: 2.63, EndV: ev, EndA: 0.30})
			fmt.Printf("agm  %.2f V: cc %.2f h %.3f Ah (%.0f%%) cv %.2f h in %.3f endA %.2f full %+v ch %.3f T %.1f err %v\n", ev, o.CCHours, o.CCAh, 100*o.CCAh/o.InAh, o.CVHours, o.InAh, o.EndA, o.HoursToFull, o.ChargeAtEnd, o.PeakC, err)
		}
	}
	m = mk("agm", 6, 5, nil)
	for _, z := range []float64{0, .5} {
		for _, a := range []float64{.1, .25, .3} {
			o, err := charge.Simulate(charge.Case{Pack: m, Start: m.StateAt(z, 25), AmbientC: 25, CurrentA: a * 5, EndV: 14.7})
			fmt.Printf("agm  %g %g: cc %.2f h %.3f Ah (%.0f%%) cv %.2f h in %.3f endA %.2f full %+v ch %.3f err %v\n", a, z, o.CCHours, o.CCAh, 100*o.CCAh/o.InAh, o.CVHours, o.InAh, o.EndA, o.HoursToFull, o.ChargeAtEnd, err)
		}
	}
}

func TestZD(t *testing.T) {
	m := mk("agm", 6, 7, nil)
	for _, e := range []charge.Evidence{
		{RestV: 12.8, HoursRested: 24},
		{RestV: 11.6, HoursRested: 24},
		{RestV: 12.5, HoursRested: 24, LoadedV: 9, LoadedA: 10},
		{RestV: 12.7, HoursRested: 24, LoadedV: 12.0, LoadedA: 10},
		{RestV: 12.7, HoursRested: 24, LoadedV: 3, LoadedA: 0},
		{RestV: 10.6, HoursRested: 24},
		{RestV: 10.6, HoursRested: 24, LoadedV: 9.8, LoadedA: 10},
		{RestV: 6, HoursRested: 24},
		{RestV: 12.6, HoursRested: 24, LoadedV: 9},
		{RestV: 11.9, HoursRested: 24, LoadedV: 8, LoadedA: 8},
		{RestV: 12.7, HoursRested: 0, LoadedV: 0.5},
	} {
		e.Pack, e.TempC = m, 20
		d, err := charge.Diagnose(e)
		fmt.Println(e.RestV, e.LoadedV, e.LoadedA, err)
		for _, s := range d.Suspicions {
			fmt.Printf("    %-18s %.3f %s\n", s.Condition, s.Share, s.Words)
		}
		fmt.Println("   ", d.NextTest)
	}
}
