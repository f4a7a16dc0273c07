package reckon

import (
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/later"
	"example.org/packcheck/internal/ride"
)

// metric is one figure of the answer: where it stands, how a draw gives it, and
// where its median goes. Adding a figure is adding a row here and a field in
// package answer.
type metric struct {
	path   string
	of     func(*Vehicle) float64            // NaN where the draw has no such figure
	put    func(*answer.Assessment, float64) // nil: only the range is told
	judged bool                              // only judging brings it

	lasting bool // how long or far a ride is
	lasted  bool // how long one with the original is
}

// The figures by which the weight of an unknown and of a measurement is told.
const (
	minutesPath = "ride.lasts_pedal_min"
	speedPath   = "steady.speed_kmh"
	launchPath  = "launch.peak_battery_a"
	motorPath   = "steady.motor_a"
)

// metrics are all figures, in the order of the answer.
var metrics = later.Value[[]metric]{Make: func() []metric {
	return []metric{
		{path: "pack.full_v", of: func(v *Vehicle) float64 { return v.Now.Pack.FullV() }, put: func(a *answer.Assessment, x float64) { a.Pack.FullV = x }},
		{path: "pack.nominal_v", of: func(v *Vehicle) float64 { return v.Now.Pack.NominalV() }, put: func(a *answer.Assessment, x float64) { a.Pack.NominalV = x }},
		{path: "pack.empty_v", of: func(v *Vehicle) float64 { return v.Now.Pack.EmptyV() }, put: func(a *answer.Assessment, x float64) { a.Pack.EmptyV = x }},
		{path: "pack.rated_ah", of: func(v *Vehicle) float64 { return v.Now.Pack.RatedAh() }, put: func(a *answer.Assessment, x float64) { a.Pack.RatedAh = x }},
		{path: "pack.usable_ah", of: running(func(v *Vehicle) float64 { return max(v.Seen.Lasts.DeliveredAh, 0) }), put: func(a *answer.Assessment, x float64) { a.Pack.UsableAh = x }},
		{path: "pack.usable_wh", of: running(func(v *Vehicle) float64 { return max(v.Seen.Lasts.DeliveredWh, 0) }), put: func(a *answer.Assessment, x float64) { a.Pack.UsableWh = x }},
		{path: "pack.resistance_ohm", of: pulseOhm(10), put: func(a *answer.Assessment, x float64) { a.Pack.ResistanceOhm = x }},
		{path: "pack.resistance_1s_ohm", of: pulseOhm(1), put: func(a *answer.Assessment, x float64) { a.Pack.Resistance1sOhm = x }},
		{path: "pack.resistance_1ms_ohm", of: pulseOhm(0.001), put: func(a *answer.Assessment, x float64) { a.Pack.Resistance1msOhm = x }},
		{path: "pack.short_circuit_a", of: shortA, put: func(a *answer.Assessment, x float64) { a.Pack.ShortCircuitA = x }},
		{path: "pack.mass_kg", of: func(v *Vehicle) float64 { return v.Now.Pack.MassKg() }, put: func(a *answer.Assessment, x float64) { a.Pack.MassKg = x }},

		{path: speedPath, of: driven(func(v *Vehicle) float64 { return v.Seen.Steady.SpeedMS * 3.6 }), put: func(a *answer.Assessment, x float64) { a.Steady.SpeedKmh = x }},
		{path: "steady.battery_a", of: driven(func(v *Vehicle) float64 { return v.Seen.Steady.BatteryA }), put: func(a *answer.Assessment, x float64) { a.Steady.BatteryA = x }},
		{path: motorPath, of: driven(func(v *Vehicle) float64 { return v.Seen.Steady.MotorA }), put: func(a *answer.Assessment, x float64) { a.Steady.MotorA = x }},
		{path: "steady.bus_v", of: driven(func(v *Vehicle) float64 { return v.Seen.Steady.BusV }), put: func(a *answer.Assessment, x float64) { a.Steady.BusV = x }},
		{path: "steady.efficiency", of: driven(func(v *Vehicle) float64 { return max(v.Seen.Steady.Efficiency, 0) }), put: func(a *answer.Assessment, x float64) { a.Steady.Efficiency = x }},

		{path: launchPath, of: driven(func(v *Vehicle) float64 { return v.Seen.Launch.PeakBatteryA }), put: func(a *answer.Assessment, x float64) { a.Launch.PeakBatteryA = x }},
		{path: "launch.peak_battery_at_s", of: driven(func(v *Vehicle) float64 { return v.Seen.Launch.PeakBatteryAtS }), put: func(a *answer.Assessment, x float64) { a.Launch.PeakBatteryAtS = x }},
		{path: "launch.peak_motor_a", of: driven(func(v *Vehicle) float64 { return v.Seen.Launch.PeakMotorA }), put: func(a *answer.Assessment, x float64) { a.Launch.PeakMotorA = x }},
		{path: "launch.lowest_bus_v", of: driven(func(v *Vehicle) float64 { return max(v.Seen.Launch.LowestBusV, 0) }), put: func(a *answer.Assessment, x float64) { a.Launch.LowestBusV = x }},
		{path: "launch.blocked_battery_a", of: driven(func(v *Vehicle) float64 { return v.Seen.Blocked.BatteryA }), put: func(a *answer.Assessment, x float64) { a.Launch.BlockedBatteryA = x }},
		{path: "launch.blocked_motor_a", of: driven(func(v *Vehicle) float64 { return v.Seen.Blocked.MotorA }), put: func(a *answer.Assessment, x float64) { a.Launch.BlockedMotorA = x }},
		{path: "launch.wheels_up_a", of: driven(wheelsUpA), put: func(a *answer.Assessment, x float64) { a.Launch.WheelsUpA = x }},
		{path: "launch.blocked_stands_s", judged: true, of: driven(blockedStandsS), put: func(a *answer.Assessment, x float64) { a.Launch.BlockedStandsS = &x }},
		{path: "launch.reversal_a", judged: true, of: driven(func(v *Vehicle) float64 { return v.Judged.ReverseA }), put: func(a *answer.Assessment, x float64) { a.Launch.ReversalA = x }},
		{path: "launch.spark_a", judged: true, of: driven(func(v *Vehicle) float64 { return positive(v.Judged.Spark.PeakA) }), put: func(a *answer.Assessment, x float64) { a.Launch.SparkA = &x }},
		{path: "launch.spark_j", judged: true, of: driven(func(v *Vehicle) float64 { return positive(v.Judged.Spark.EnergyJ) }), put: func(a *answer.Assessment, x float64) { a.Launch.SparkJ = &x }},
		{path: "launch.precharge_ohm", judged: true, of: driven(func(v *Vehicle) float64 { return positive(v.Judged.Spark.Precharge.Ohm) }), put: func(a *answer.Assessment, x float64) { a.Launch.PrechargeOhm = &x }},

		{path: "path.resistance_ohm", of: func(v *Vehicle) float64 { return positive(v.Now.PathOhm) }, put: onPath(func(p *answer.PathFigures, x float64) { p.ResistanceOhm = x })},
		{path: "path.drop_v", judged: true, of: wired(func(v *Vehicle) float64 { return v.Judged.Wired.Total.DropV }), put: onPath(func(p *answer.PathFigures, x float64) { p.DropV = x })},
		{path: "path.drop_pct", judged: true, of: wired(func(v *Vehicle) float64 { return 100 * v.Judged.Wired.Total.DropShare }), put: onPath(func(p *answer.PathFigures, x float64) { p.DropPct = x })},
		{path: "path.ampacity_a", judged: true, of: wired(func(v *Vehicle) float64 { return v.Judged.Wired.AmpacityA }), put: onPath(func(p *answer.PathFigures, x float64) { p.AmpacityA = x })},
		{path: "path.fuse_least_a", judged: true, of: band(func(v *Vehicle) float64 { return v.Judged.Wired.Band.LeastA }), put: onPath(func(p *answer.PathFigures, x float64) { p.FuseLeastA = &x })},
		{path: "path.fuse_most_a", judged: true, of: band(func(v *Vehicle) float64 { return v.Judged.Wired.Band.MostA }), put: onPath(func(p *answer.PathFigures, x float64) { p.FuseMostA = &x })},
		{path: "path.short_circuit_a", judged: true, of: wired(func(v *Vehicle) float64 { return v.Judged.Wired.Worst.CurrentA }), put: onPath(func(p *answer.PathFigures, x float64) { p.ShortCircuitA = x })},
		{path: "path.short_circuit_clear_s", judged: true, of: wired(func(v *Vehicle) float64 { return finite(v.Judged.Wired.Worst.ClearS) }), put: onPath(func(p *answer.PathFigures, x float64) { p.ShortCircuitClearS = &x })},
		{path: "path.wire_limit_s", judged: true, of: wired(func(v *Vehicle) float64 { return finite(v.Judged.Wired.Worst.LimitS) }), put: onPath(func(p *answer.PathFigures, x float64) { p.WireLimitS = &x })},

		{path: "ride.pedal_min", lasting: true, of: running(func(v *Vehicle) float64 { return v.Seen.Outing.PedalS / 60 }), put: func(a *answer.Assessment, x float64) { a.Ride.PedalMin = x }},
		{path: "ride.clock_min", lasting: true, of: running(func(v *Vehicle) float64 { return v.Seen.Outing.ClockS / 60 }), put: func(a *answer.Assessment, x float64) { a.Ride.ClockMin = x }},
		{path: "ride.distance_km", lasting: true, of: driven(func(v *Vehicle) float64 { return v.Seen.Outing.DistanceM / 1000 }), put: func(a *answer.Assessment, x float64) { a.Ride.DistanceKm = x }},
		{path: minutesPath, lasting: true, of: running(func(v *Vehicle) float64 { return v.Seen.Lasts.PedalS / 60 }), put: func(a *answer.Assessment, x float64) { a.Ride.LastsPedalMin = x }},
		{path: "ride.level_pedal_min", judged: true, of: driven(levelPedalMin), put: func(a *answer.Assessment, x float64) { a.Ride.LevelPedalMin = &x }},
		{path: "ride.lasts_clock_min", lasting: true, of: running(func(v *Vehicle) float64 { return v.Seen.Lasts.ClockS / 60 }), put: func(a *answer.Assessment, x float64) { a.Ride.LastsClockMin = x }},
		{path: "ride.rest_v_after", of: func(v *Vehicle) float64 { return max(v.Seen.Outing.RestV, 0) }, put: func(a *answer.Assessment, x float64) { a.Ride.RestVAfter = x }},
		{path: "ride.starts_charged", of: func(v *Vehicle) float64 { return v.Now.StartCharge }, put: func(a *answer.Assessment, x float64) { a.Ride.StartsCharged = x }},
		{path: "ride.charge_left", of: func(v *Vehicle) float64 { return min(v.Seen.Outing.ChargeLeft, 1) }, put: func(a *answer.Assessment, x float64) { a.Ride.ChargeLeft = x }},
		{path: "ride.delivered_ah", of: running(func(v *Vehicle) float64 { return max(v.Seen.Outing.DeliveredAh, 0) }), put: func(a *answer.Assessment, x float64) { a.Ride.DeliveredAh = x }},
		{path: "ride.delivered_wh", of: running(func(v *Vehicle) float64 { return max(v.Seen.Outing.DeliveredWh, 0) }), put: func(a *answer.Assessment, x float64) { a.Ride.DeliveredWh = x }},
		{path: "ride.motor_case_c", of: heated(func(v *Vehicle) float64 { return v.Seen.Outing.CaseC }), put: func(a *answer.Assessment, x float64) { a.Ride.MotorCaseC = &x }},
		{path: "ride.winding_c", of: heated(func(v *Vehicle) float64 { return v.Seen.Outing.WindingC }), put: func(a *answer.Assessment, x float64) { a.Ride.WindingC = &x }},
		{path: "ride.pack_c", of: func(v *Vehicle) float64 { return v.Seen.Outing.HottestC + v.Now.HottestK }, put: func(a *answer.Assessment, x float64) { a.Ride.PackC = x }},
		{path: "ride.launches", of: func(v *Vehicle) float64 { return float64(v.Seen.Outing.Launches) }, put: func(a *answer.Assessment, x float64) { a.Ride.Launches = int(math.Round(x)) }},

		{path: "cutoff.opens_at_charge", judged: true, of: func(v *Vehicle) float64 { return v.Judged.Cutoff.AtCharge }, put: func(a *answer.Assessment, x float64) { a.Cutoff.OpensAtCharge = &x }},
		{path: "cutoff.weakest_cell_v", judged: true, of: func(v *Vehicle) float64 { return v.Judged.Cutoff.WeakestV }, put: func(a *answer.Assessment, x float64) { a.Cutoff.WeakestCellV = x }},
		{path: "cutoff.chatter_count", judged: true, of: func(v *Vehicle) float64 { return float64(v.Judged.Cutoff.Recloses) }, put: func(a *answer.Assessment, x float64) { a.Cutoff.ChatterCount = int(math.Round(x)) }},
		{path: idlePath, judged: true, of: func(v *Vehicle) float64 { return min(v.Judged.Cutoff.IdleDays, mostDays) }, put: func(a *answer.Assessment, x float64) {
			if x < mostDays {
				a.Cutoff.IdleDaysToHarm = &x
			}
		}},

		{path: "charge.hours_to_80", judged: true, of: func(v *Vehicle) float64 { return v.Judged.Charging.HoursTo80 }, put: func(a *answer.Assessment, x float64) { a.Charge.HoursTo80 = &x }},
		{path: "charge.hours_to_full", judged: true, of: func(v *Vehicle) float64 { return v.Judged.Charging.HoursToFull }, put: func(a *answer.Assessment, x float64) { a.Charge.HoursToFull = &x }},
		{path: "charge.unplug_after_h", judged: true, of: func(v *Vehicle) float64 { return v.Judged.Charging.UnplugH }, put: func(a *answer.Assessment, x float64) { a.Charge.UnplugAfterH = &x }},
		{path: "charge.end_v_per_cell", judged: true, of: func(v *Vehicle) float64 { return v.Judged.Charging.EndVPerCell }, put: func(a *answer.Assessment, x float64) { a.Charge.EndVPerCell = &x }},

		{path: "storage.charge_left", judged: true, of: stored, put: func(a *answer.Assessment, x float64) { a.Storage.ChargeLeft = x }},

		{path: "original.speed_ratio", of: compared(func(s *ride.Seen) float64 { return s.Steady.SpeedMS }), put: onOriginal(func(o *answer.OriginalFigures, x *float64) { o.SpeedRatio = x })},
		{path: "original.launch_current_ratio", of: compared(func(s *ride.Seen) float64 { return s.Launch.PeakBatteryA }), put: onOriginal(func(o *answer.OriginalFigures, x *float64) { o.LaunchCurrentRatio = x })},
		{path: "original.blocked_current_ratio", of: compared(func(s *ride.Seen) float64 { return s.Blocked.BatteryA }), put: onOriginal(func(o *answer.OriginalFigures, x *float64) { o.BlockedCurrentRatio = x })},
		{path: "original.tooth_load_ratio", of: compared(func(s *ride.Seen) float64 { return s.Launch.PeakPinionNM }), put: onOriginal(func(o *answer.OriginalFigures, x *float64) { o.ToothLoadRatio = x })},
		{path: "original.motor_heat_ratio", of: compared(func(s *ride.Seen) float64 { return s.Steady.CopperW + s.Steady.NoLoadW }), put: onOriginal(func(o *answer.OriginalFigures, x *float64) { o.MotorHeatRatio = x })},
		{path: "original.ride_ratio", lasting: true, lasted: true, of: compared(func(s *ride.Seen) float64 { return s.Lasts.PedalS }), put: onOriginal(func(o *answer.OriginalFigures, x *float64) { o.RideRatio = x })},
		{path: "original.fault_current_ratio", of: compared(seenShortA), put: onOriginal(func(o *answer.OriginalFigures, x *float64) { o.FaultCurrentRatio = x })},
		{path: "original.original_speed_kmh", of: originally(func(s *ride.Seen) float64 { return s.Steady.SpeedMS * 3.6 }), put: onOriginal(func(o *answer.OriginalFigures, x *float64) { o.OriginalSpeedKmh = x })},
		{path: "original.original_pedal_min", lasted: true, of: originally(func(s *ride.Seen) float64 { return s.Lasts.PedalS / 60 }), put: onOriginal(func(o *answer.OriginalFigures, x *float64) { o.OriginalPedalMin = x })},
		{path: "original.original_launch_a", of: originally(func(s *ride.Seen) float64 { return s.Launch.PeakBatteryA }), put: onOriginal(func(o *answer.OriginalFigures, x *float64) { o.OriginalLaunchA = x })},
	}
}}

const (
	idlePath = "cutoff.idle_days_to_harm"
	mostDays = 3650.0 // later counts as never, as in package cutoff
)

// RangePaths are the paths of all figures, in the order of the answer.
func RangePaths() []string {
	var paths []string
	for _, m := range metrics.Get() {
		paths = append(paths, m.path)
	}
	return paths
}

// running makes nothing of a figure where the vehicle does not get going.
func running(of func(*Vehicle) float64) func(*Vehicle) float64 {
	return func(v *Vehicle) float64 {
		if v.Seen.Stuck() {
			return 0
		}
		return of(v)
	}
}

// driven limits a figure to vehicles.
func driven(of func(*Vehicle) float64) func(*Vehicle) float64 {
	return func(v *Vehicle) float64 {
		if v.Seen.Case.Load.Kind != ride.NoLoad {
			return math.NaN()
		}
		return of(v)
	}
}

// heated limits a figure to vehicles whose motors' heat is modelled.
func heated(of func(*Vehicle) float64) func(*Vehicle) float64 {
	return driven(func(v *Vehicle) float64 {
		if !v.Now.Vehicle.Motor.Thermal.Known() {
			return math.NaN()
		}
		return min(of(v), ride.BurntC)
	})
}

// wired limits a figure to cases with a path.
func wired(of func(*Vehicle) float64) func(*Vehicle) float64 {
	return func(v *Vehicle) float64 {
		if v.Judged.Wired == nil {
			return math.NaN()
		}
		return of(v)
	}
}

// band limits a figure to paths that some fuse suits.
func band(of func(*Vehicle) float64) func(*Vehicle) float64 {
	return wired(func(v *Vehicle) float64 {
		if b := &v.Judged.Wired.Band; !(b.LeastA <= b.MostA) {
			return math.NaN()
		}
		return of(v)
	})
}

// compared is a figure over that of the original.
func compared(of func(*ride.Seen) float64) func(*Vehicle) float64 {
	return func(v *Vehicle) float64 {
		if v.Was == nil {
			return math.NaN()
		}
		was := of(v.Was)
		if !(was > 0) {
			return math.NaN()
		}
		return of(&v.Seen) / was
	}
}

// originally is a figure of the original vehicle.
func originally(of func(*ride.Seen) float64) func(*Vehicle) float64 {
	return func(v *Vehicle) float64 {
		if v.Was == nil {
			return math.NaN()
		}
		return of(v.Was)
	}
}

func onPath(put func(*answer.PathFigures, float64)) func(*answer.Assessment, float64) {
	return func(a *answer.Assessment, x float64) {
		if a.Path != nil {
			put(a.Path, x)
		}
	}
}

func onOriginal(put func(*answer.OriginalFigures, *float64)) func(*answer.Assessment, float64) {
	return func(a *answer.Assessment, x float64) { put(a.Original, &x) }
}

// pulseOhm is the pack's resistance at half charge so long after an hour's current
// came on.
func pulseOhm(seconds float64) func(*Vehicle) float64 {
	return func(v *Vehicle) float64 {
		pack := v.Now.Pack
		return pack.PulseOhm(pack.StateAt(0.5, v.Now.PackC), pack.RatedAh(), seconds)
	}
}

func shortA(v *Vehicle) float64 { return seenShortA(&v.Seen) }

func seenShortA(s *ride.Seen) float64 {
	return s.Case.Pack.ShortCircuitA(s.Case.Pack.StateAt(1, s.Case.PackC))
}

// wheelsUpA is what the motors take with the wheels in the air.
func wheelsUpA(v *Vehicle) float64 {
	c := v.Now.Vehicle
	return c.Motor.NoLoadA * float64(c.Motors) / float64(max(1, c.MotorsInSeries))
}

// levelPedalMin is how long a vehicle that climbs would ride on the level; none where it
// barely moves there, either.
func levelPedalMin(v *Vehicle) float64 {
	switch s := v.Level; {
	case s == nil || s.Crawls():
		return math.NaN()
	case s.Stuck():
		return 0
	default:
		return s.Lasts.PedalS / 60
	}
}

func blockedStandsS(v *Vehicle) float64 {
	if b := v.Judged.Blocked; b.ReachesLimit {
		return b.ToLimitS
	}
	return math.NaN()
}

func stored(v *Vehicle) float64 {
	if v.Judged.Storage == nil {
		return math.NaN()
	}
	return v.Judged.Storage.ChargeLeft
}

// positive is none for what is not there.
func positive(x float64) float64 {
	if x > 0 {
		return x
	}
	return math.NaN()
}

// finite is none for what never happens.
func finite(x float64) float64 {
	if math.IsInf(x, 0) {
		return math.NaN()
	}
	return x
}
