package reckon

import (
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/ride"
)

// seriesOf follows the representative case once more and keeps its course: the
// outing until something ends it, and the launch.
func seriesOf(v *Vehicle) *answer.Series {
	c := v.Now.Case
	c.WantedS = 0
	s := &answer.Series{Lines: voltLines(v)}
	var outing []answer.OutingPoint
	out := ride.Run(&c, func(x ride.Sample) {
		outing = append(outing, answer.OutingPoint{
			ClockMin: x.ClockS / 60, PackV: x.PackV, BatteryA: x.CurrentA, SpeedKmh: x.SpeedMS * 3.6, Charge: max(x.Charge, 0),
			PackC: x.PackC, WindingC: x.WindingC, CaseC: x.CaseC, Driving: x.Phase == ride.Driving || x.Phase == ride.Loaded,
		})
	})
	s.Outing = thinned(outing, func(p answer.OutingPoint) (x, y float64) { return p.ClockMin, p.PackV })
	s.EndedBy = out.EndedBy.String()
	if c.Load.Kind != ride.NoLoad {
		return s
	}
	s.WindingLimitC = c.Vehicle.Motor.Thermal.LimitC
	l := c.LaunchCase()
	var launch []answer.LaunchPoint
	got := drive.Launch(&l, c.LaunchSeconds(), func(x drive.LaunchSample) {
		launch = append(launch, answer.LaunchPoint{TimeS: x.TimeS, BatteryA: x.BatteryA, BusV: x.BusV, SpeedKmh: x.SpeedMS * 3.6})
	})
	if c.Controller.Converter.OutV > 0 && got.PeakBatteryA > 0 { // seen before the converter, where the pack is
		for i := range launch {
			launch[i].BatteryA *= v.Seen.Launch.PeakBatteryA / got.PeakBatteryA
		}
	}
	s.Launch = thinned(launch, func(p answer.LaunchPoint) (x, y float64) { return p.TimeS, p.BatteryA })
	return s
}

// voltLines are where devices open and where the cells are harmed.
func voltLines(v *Vehicle) []answer.VoltLine {
	c := &v.Now.Case
	var out []answer.VoltLine
	for i := range c.Cutoffs.Len() {
		d := c.Cutoffs.At(i)
		name := "the vehicle's controller stops"
		switch d.Where {
		case cutoff.Pack:
			name = "the pack's own electronics open"
		case cutoff.Module:
			name = "the added cutoff opens"
		}
		out = append(out, answer.VoltLine{Name: name, V: d.OpensAtV})
	}
	spec := c.Pack.Spec()
	if harm := spec.Profile.HarmV * float64(spec.CellsInSeries); harm > 0 {
		out = append(out, answer.VoltLine{Name: "at rest, cells are harmed below", V: harm, Harm: true})
	}
	slices.SortStableFunc(out, func(a, b answer.VoltLine) int {
		switch {
		case a.V > b.V:
			return -1
		case a.V < b.V:
			return 1
		}
		return 0
	})
	return out
}

// thinned keeps at most [answer.MostPoints] points: of each stretch of the first
// axis the one with the least and the one with the greatest value, so that no
// dip or peak is lost.
func thinned[P any](list []P, at func(P) (x, y float64)) []P {
	if len(list) <= answer.MostPoints {
		return list
	}
	const bins = answer.MostPoints / 2
	first, _ := at(list[0])
	last, _ := at(list[len(list)-1])
	width := (last - first) / bins
	if !(width > 0) {
		return list[:answer.MostPoints]
	}
	out := make([]P, 0, answer.MostPoints)
	for from := 0; from < len(list); {
		x, _ := at(list[from])
		bin := math.Min(math.Floor((x-first)/width), bins-1)
		to, low, high := from, from, from
		for ; to < len(list); to++ {
			x, y := at(list[to])
			if math.Min(math.Floor((x-first)/width), bins-1) > bin {
				break
			}
			if _, least := at(list[low]); y < least {
				low = to
			}
			if _, most := at(list[high]); y >= most {
				high = to
			}
		}
		out = append(out, list[min(low, high)])
		if low != high {
			out = append(out, list[max(low, high)])
		}
		from = to
	}
	return out
}
