package packcheck

import (
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/ride"
)

func packFigures(v *view) PackFigures {
	p, m := &v.parts.Pack, v.o.c.Pack
	spec := m.Spec()
	full := m.StateAt(1, v.o.c.PackC)
	reading := p.Reading
	if p.Joined != "" {
		reading = "two packs joined in " + p.Joined + ", each: " + reading
	}
	return PackFigures{
		Chemistry: p.Profile.Name, Reading: reading,
		CellsInSeries: spec.CellsInSeries, Strings: max(1, spec.Strings),
		FullV: m.FullV(), NominalV: m.NominalV(), EmptyV: m.EmptyV(), RatedAh: m.RatedAh(),
		UsableAh: v.o.lasts.DeliveredAh, UsableWh: v.o.lasts.DeliveredWh,
		ResistanceOhm: midOhm(&v.o), ShortCircuitA: m.ShortCircuitA(full), MassKg: m.MassKg(),
	}
}

func steadyFigures(v *view) *SteadyFigures {
	s := &v.o.Steady
	return &SteadyFigures{
		SpeedKmh: s.SpeedMS * 3.6, BatteryA: s.BatteryA, MotorA: s.MotorA, BusV: s.BusV, Efficiency: s.Efficiency,
	}
}

func launchFigures(v *view) *LaunchFigures {
	c, l, b := &v.o.c, &v.o.Launch, &v.o.blocked
	f := &LaunchFigures{
		PeakBatteryA: l.PeakBatteryA, PeakBatteryAtS: l.PeakBatteryAtS, PeakMotorA: l.PeakMotorA, LowestBusV: l.LowestBusV,
		BlockedBatteryA: b.BatteryA, BlockedMotorA: b.MotorA, Slips: l.Slipped,
		ReversalA: v.reversal().MotorA, Case: c.LaunchCase(),
	}
	if b.ReachesLimit {
		f.BlockedStandsS = known(b.ToLimitS)
	}
	for i, t := range drive.SpeedTimesS() {
		f.SpeedAfter = append(f.SpeedAfter, SpeedPoint{TimeS: t, Kmh: l.SpeedMS[i] * 3.6})
	}
	above, limits := l.Above, c.Limits
	for _, part := range []struct {
		name      string
		limitA, s float64
	}{
		{"pack, greatest current", limits.PackA, above.PackS},
		{"weakest joint", limits.JointA, above.JointS},
		{"switch", limits.SwitchA, above.SwitchS},
		{"controller, continuous", limits.ControllerContinuousA, above.ControllerContinuousS},
		{"controller, peak", limits.ControllerPeakA, above.ControllerPeakS},
	} {
		if part.limitA > 0 {
			f.AboveS = append(f.AboveS, AboveLimit{Part: part.name, LimitA: part.limitA, Sec: part.s})
		}
	}
	if s := v.spark(); s.PeakA > 0 {
		f.SparkA, f.SparkJ, f.PrechargeOhm = known(s.PeakA), known(s.EnergyJ), known(s.Precharge.Ohm)
	}
	return f
}

func pathFigures(v *view) *PathFigures {
	if v.wired == nil {
		return nil
	}
	w := v.wired
	f := &PathFigures{
		ResistanceOhm: v.o.c.PathOhm, DropV: w.Total.DropV, DropPct: 100 * w.Total.DropShare, AmpacityA: w.AmpacityA,
		FuseSizesA: w.Band.StandardA, ShortCircuitA: w.Worst.CurrentA,
		ShortCircuitClearS: known(w.Worst.ClearS), WireLimitS: known(w.Worst.LimitS),
	}
	if w.Band.LeastA <= w.Band.MostA {
		f.FuseLeastA, f.FuseMostA = known(w.Band.LeastA), known(w.Band.MostA)
	}
	for _, l := range w.Losses {
		f.Elements = append(f.Elements, PathElement{Name: l.Name, Ohm: l.Ohm, DropV: l.DropV, HeatW: l.HeatW})
	}
	return f
}

func rideFigures(v *view) RideFigures {
	o := &v.o.Outing
	f := RideFigures{
		PedalMin: o.PedalS / 60, ClockMin: o.ClockS / 60, DistanceKm: o.DistanceM / 1000, EndedBy: endWords(o),
		LastsPedalMin: v.o.lasts.PedalS / 60, LastsClockMin: v.o.lasts.ClockS / 60, LastsUntil: endWords(&v.o.lasts),
		RestVAfter: max(o.RestV, 0), ChargeLeft: o.ChargeLeft, DeliveredAh: o.DeliveredAh, DeliveredWh: o.DeliveredWh,
		PackC: o.HottestC, Launches: o.Launches,
	}
	if v.o.c.WantedS > 0 {
		f.WantedMin = known(v.o.c.WantedS / 60)
	}
	if v.parts.Bench == nil && v.o.c.Vehicle.Motor.Thermal.Known() {
		f.MotorCaseC, f.WindingC = known(o.CaseC), known(o.WindingC)
	}
	return f
}

// endWords says what ended an outing.
func endWords(o *ride.Outcome) string {
	if o.EndedBy == ride.CutoffOpened {
		return "cutoff in the " + o.OpenedFirst.String()
	}
	return o.EndedBy.String()
}

// originalFigures compares with the vehicle as it left the factory.
func originalFigures(v *view) *OriginalFigures {
	if v.orig == nil {
		return nil
	}
	now, was := &v.o, v.orig
	ratio := func(a, b float64) *float64 {
		if !(b > 0) {
			return nil
		}
		return known(a / b)
	}
	full := func(o *outcome) float64 { return o.c.Pack.ShortCircuitA(o.c.Pack.StateAt(1, o.c.PackC)) }
	heat := func(o *outcome) float64 { return o.Steady.CopperW + o.Steady.NoLoadW }
	f := &OriginalFigures{
		RideRatio:         ratio(now.lasts.PedalS, was.lasts.PedalS),
		FaultCurrentRatio: ratio(full(now), full(was)),
		OriginalPedalMin:  known(was.lasts.PedalS / 60),
	}
	if v.parts.Bench == nil {
		f.SpeedRatio = ratio(now.Steady.SpeedMS, was.Steady.SpeedMS)
		f.LaunchCurrentRatio = ratio(now.Launch.PeakBatteryA, was.Launch.PeakBatteryA)
		f.BlockedCurrentRatio = ratio(now.blocked.BatteryA, was.blocked.BatteryA)
		f.ToothLoadRatio = ratio(now.Launch.PeakPinionNM, was.Launch.PeakPinionNM)
		f.MotorHeatRatio = ratio(heat(now), heat(was))
		f.OriginalSpeedKmh = known(was.Steady.SpeedMS * 3.6)
		f.OriginalLaunchA = known(was.Launch.PeakBatteryA)
	}
	return f
}
