package report_test

import (
	"math"

	"example.org/packcheck"
	"example.org/packcheck/drive"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// The assessments below are made by hand: their figures are plausible, belong
// to no computation, and serve only to show every part of a report.

func ptr[T any](v T) *T { return &v }

// fixtures are the assessments that have golden files, by name.
func fixtures() map[string]*packcheck.Assessment {
	return map[string]*packcheck.Assessment{
		"danger":    danger(),
		"fine":      fine(),
		"bench":     bench(),
		"wide-us":   wideUS(),
		"not-a-num": notANumber(),
		"hostile":   hostile(),
	}
}

// danger has something in every section.
func danger() *packcheck.Assessment {
	return &packcheck.Assessment{
		Schema:  packcheck.Schema,
		Title:   "Bramble Lane harvest tractor on an 18 V tool pack",
		Verdict: answer.Danger,
		Headline: [3]string{
			"danger: do not let a child ride this yet",
			"No fuse: a short circuit burns the wire before anything opens, so that the loom burns.",
			"Fit a fuse of 20 to 30 A within 178 mm of the pack.",
		},
		Pack: packcheck.PackFigures{
			Chemistry: "li-ion", Reading: "5 cells in series, one string, 18 V nominal, 21 V full", CellsInSeries: 5, Strings: 1,
			FullV: 21, NominalV: 18, EmptyV: 14, RatedAh: 5, UsableAh: 4.62, UsableWh: 79.8,
			ResistanceOhm: 0.081, ShortCircuitA: 259, MassKg: 0.64,
		},
		Steady: &packcheck.SteadyFigures{SpeedKmh: 6.84, BatteryA: 9.3, MotorA: 4.65, BusV: 17.4, Efficiency: 0.61},
		Launch: &packcheck.LaunchFigures{
			PeakBatteryA: 88.4, PeakBatteryAtS: 0.0021, PeakMotorA: 44.2, LowestBusV: 9.7,
			BlockedBatteryA: 92, BlockedMotorA: 46, BlockedStandsS: ptr(14.2),
			SpeedAfter: []packcheck.SpeedPoint{{TimeS: 1, Kmh: 4.4}, {TimeS: 3, Kmh: 6.5}},
			Slips:      true,
			AboveS:     []packcheck.AboveLimit{{Part: "pack", LimitA: 30, Sec: 0.62}},
			ReversalA:  151, SparkA: ptr(210.0), SparkJ: ptr(0.104), PrechargeOhm: ptr(47.0),
			Case: drive.LaunchCase{OCVV: 20.9, R0Ohm: 0.081, Motors: 2, MotorsInSeries: 1},
		},
		Path: &packcheck.PathFigures{
			ResistanceOhm: 0.0314, DropV: 0.292, DropPct: 1.62, AmpacityA: 31.4,
			FuseLeastA: ptr(18.6), FuseMostA: ptr(47.1), FuseSizesA: []float64{20, 25, 30, 40},
			ShortCircuitA: 187, WireLimitS: ptr(1.9),
			Elements: []packcheck.PathElement{
				{Name: "wire, there and back", Ohm: 0.0124, DropV: 0.115, HeatW: 1.07},
				{Name: "switch", Ohm: 0.015, DropV: 0.14, HeatW: 1.3},
			},
		},
		Ride: packcheck.RideFigures{
			PedalMin: 29.4, ClockMin: 41.1, DistanceKm: 3.1, EndedBy: "wanted time reached", WantedMin: ptr(45.0),
			LastsPedalMin: 33.3, LastsClockMin: 46.2, LastsUntil: "cutoff in the pack", RestVAfter: 15.9, ChargeLeft: 0.076,
			DeliveredAh: 4.62, DeliveredWh: 79.8, MotorCaseC: ptr(71.0), WindingC: ptr(98.0), PackC: 34, Launches: 71,
		},
		Cutoff: packcheck.CutoffFigures{
			OpensFirst: "pack", OpensAtCharge: ptr(0.076), WeakestCellV: 2.71, ChatterCount: 3, IdleDaysToHarm: ptr(41.0),
			LeftForAWeek: "after a week 5 % of its charge is gone",
			Advised:      &packcheck.AdvisedCutoff{OpensAtV: 15.5, DelayS: 2, ClosesAtV: 18.2},
		},
		Charge: &packcheck.ChargeFigures{
			Match: "no", Reasons: []string{"The charger is made for lead-acid.", "It never stops by itself."},
			EndVPerCell: ptr(2.94),
		},
		Original: &packcheck.OriginalFigures{
			SpeedRatio: ptr(1.52), LaunchCurrentRatio: ptr(1.9), BlockedCurrentRatio: ptr(1.84), ToothLoadRatio: ptr(1.84),
			MotorHeatRatio: ptr(3.4), RideRatio: ptr(0.71), OriginalSpeedKmh: ptr(4.5), OriginalPedalMin: ptr(41.0),
			OriginalLaunchA: ptr(46.5),
		},
		Storage: &packcheck.StorageFigures{
			ChargeLeft: 0.31, StoreAt: 0.5,
			Dates: []packcheck.StorageDate{{Date: "2026-01-15", Do: "Look at the volts and top up to half."}},
		},
		Measured: []packcheck.MeasuredFigure{
			{Name: "rest volts", Measured: "18.6 V", Computed: "20.1 to 20.9 V", Says: "the pack was not full"},
		},
		Ranges: map[string]packcheck.Range{
			"ride.pedal_min":        {Low: 21.6, Likely: 29.4, High: 38.2},
			"ride.clock_min":        {Low: 30.2, Likely: 41.1, High: 53.5},
			"ride.distance_km":      {Low: 2.31, Likely: 3.1, High: 3.98},
			"steady.speed_kmh":      {Low: 6.1, Likely: 6.84, High: 7.5},
			"launch.peak_battery_a": {Low: 71, Likely: 88.4, High: 118},
		},
		Findings: []answer.Finding{
			{
				Code: "no-fuse", Level: answer.Danger, Title: "There is no fuse in the path.", Found: 187, Limit: 31.4, Unit: "A",
				Source: "cfr-183-455", Advice: "Fit one close to the pack before anybody rides.", Topic: packcheck.TopicPath,
			},
			{
				Code: "speed-above-walk", Level: answer.Watch, Title: "It is faster than a walking adult.", Found: 1.9, Limit: 1.4,
				Unit: "m/s", Source: "walking-pace", Advice: "Keep to a fenced place.", Topic: packcheck.TopicSpeed,
			},
			{
				Code: "board-overvolted", Level: answer.FixFirst, Title: "The board was made for 12 V and sees 21 V.", Found: 21,
				Limit: 12, Unit: "V", Topic: "board", Advice: "Replace the board by one that stands the pack's full volts.",
			},
			{
				Code: "charger-wrong", Level: answer.Danger, Title: "Never put this charger on this pack.", Source: "iec-62133",
				Topic: packcheck.TopicCharge,
			},
		},
		Notes: []packcheck.Note{
			{Topic: packcheck.TopicPack, Text: "20 V max and 18 V nominal are the same pack: full and half full."},
			{Topic: packcheck.TopicRide, Text: "Amp-hours say how long, not how hard it pulls."},
		},
		Habits:  []string{"Let go of the pedal at once when the vehicle does not move."},
		Changes: []string{"Fit a fuse of 20 to 30 A within 178 mm of the pack.", "Replace the board."},
		Assumed: []packcheck.Assumed{
			{Key: "gears.ratio", Value: "60:1 to 110:1", Why: "not given; usual for this can size", Source: "vehicle-trade", Effect: 0.8},
			{Key: "rider.mass", Value: "15 to 24 kg", Why: "age 4 to 6", Source: "child-charts", Effect: 0.3},
			{Key: "pack.charge", Value: "100 %", Source: "walking-pace"},
		},
		Measure: []packcheck.Measurement{
			{What: "Current with the wheels blocked for one second", How: "Clamp meter on the red wire", Narrows: "launch and fuse"},
		},
		Cautions: []string{
			"Follow the instructions of the makers of the vehicle and the pack, local codes and licensed practice.",
			"A changed vehicle no longer is the one that was tested.",
		},
		CautionSources: []string{"walking-pace", "changed-toy"},
		Sources: []answer.Source{
			{ID: "cfr-183-455", Text: "33 CFR 183.455, overcurrent protection", Known: "primary"},
			{ID: "changed-toy", Text: "a standard on toys", Known: "memory"},
			{ID: "child-charts", Text: "a chart", Known: "copy"},
			{ID: "iec-62133", Text: "a standard on packs", Known: "memory"},
			{ID: "nobody-cites", Text: "a table that only a small figure rests on", Known: "copy"},
			{ID: "vehicle-trade", Text: "the trade", Known: "memory"},
			{ID: "walking-pace", Text: "common practice, no published source", Known: "common practice"},
		},
		System: quantity.Metric,
	}
}

// fine has nothing wrong and nothing assumed.
func fine() *packcheck.Assessment {
	a := danger()
	a.Title = "Bramble Lane tractor with controller, cutoff and fuse"
	a.Verdict = answer.Fine
	a.Headline = [3]string{"fits", "Nothing above watch.", "Ride, and measure the time."}
	a.Findings, a.Notes, a.Changes, a.Assumed, a.Measure, a.Measured, a.Storage = nil, nil, nil, nil, nil, nil, nil
	a.Habits = nil
	a.Ranges = nil
	a.Launch.Slips, a.Launch.AboveS, a.Launch.SparkA, a.Launch.SparkJ, a.Launch.PrechargeOhm = false, nil, nil, nil, nil
	a.Path.ShortCircuitClearS = ptr(0.011)
	a.Cutoff.ChatterCount = 0
	a.Cutoff.Advised = &packcheck.AdvisedCutoff{OpensAtV: 15.5, DelayS: 2}
	a.Ride.WantedMin = nil
	a.Charge = &packcheck.ChargeFigures{Match: "yes", HoursTo80: ptr(1.6), HoursToFull: ptr(2.2), UnplugAfterH: ptr(3.0), EndVPerCell: ptr(4.2)}
	return a
}

// bench has no vehicle: everything that may be nil is nil.
func bench() *packcheck.Assessment {
	a := danger()
	a.Title = "Bench discharge at 5 A"
	a.Verdict = answer.Watch
	a.Headline = [3]string{"watch: works as a bench load", "", ""}
	a.Steady, a.Launch, a.Path, a.Charge, a.Original, a.Storage, a.Measured = nil, nil, nil, nil, nil, nil, nil
	a.Ride.MotorCaseC, a.Ride.WindingC, a.Ride.DistanceKm, a.Ride.Launches = nil, nil, 0, 0
	a.Cutoff = packcheck.CutoffFigures{OpensFirst: "nothing", WeakestCellV: 2.4}
	a.Findings, a.Notes, a.Changes, a.Cautions, a.Sources, a.Habits, a.CautionSources = nil, nil, nil, nil, nil, nil, nil
	return a
}

// wideUS has wide ranges, no path to a fuse, and a user who writes pounds.
func wideUS() *packcheck.Assessment {
	a := danger()
	a.Title = "Two-seater, 24 V, two tired blocks"
	a.System = quantity.Customary
	a.Path.FuseLeastA, a.Path.FuseMostA, a.Path.FuseSizesA = nil, nil, []float64{}
	a.Launch.BlockedStandsS = nil
	a.Cutoff.Advised.MustLatch = true
	a.Cutoff.IdleDaysToHarm = nil
	a.Ranges = map[string]packcheck.Range{
		"ride.pedal_min":            {Low: 4.2, Likely: 29.4, High: 131},
		"ride.clock_min":            {Low: 6, Likely: 41.1, High: 190},
		"ride.distance_km":          {Low: 0.31, Likely: 3.1, High: 9.8},
		"steady.speed_kmh":          {Low: 2.1, Likely: 6.84, High: 11},
		"ride.pack_c":               {Low: 22, Likely: 34, High: 55},
		"ride.charge_left":          {Low: 0, Likely: 0.076, High: 0.4},
		"cutoff.idle_days_to_harm":  {Low: 3, Likely: 9, High: 40},
		"original.motor_heat_ratio": {Low: 1.1, Likely: 3.4, High: 6},
		"pack.mass_kg":              {Low: 0.64, Likely: 0.64, High: 0.64},
	}
	return a
}

// notANumber has figures that did not come out.
func notANumber() *packcheck.Assessment {
	a := danger()
	a.Title = "Figures that did not come out"
	a.Steady.SpeedKmh = math.NaN()
	a.Pack.MassKg = math.Inf(1)
	a.Path.WireLimitS = ptr(math.Inf(1))
	a.Original.SpeedRatio = ptr(math.NaN())
	a.Findings[0].Found = math.NaN()
	a.Path.FuseSizesA = []float64{math.NaN(), 20}
	a.Ranges["ride.pedal_min"] = packcheck.Range{Low: math.NaN(), Likely: 29.4, High: math.Inf(1)}
	a.Launch.Case.LimitA = math.Inf(1)
	return a
}

// hostile carries what somebody might put into a setup to break a report.
func hostile() *packcheck.Assessment {
	a := danger()
	const evil = "`[/code]</pre>[url=http://x]~~~ *_<script>\x1b[31m @everyone \u202egnp \u00fcber\u2026 25\u00b0C\r\n# $x$ www.x &amp;"
	a.Title = evil
	a.Headline[1] = evil
	a.Pack.Reading = evil
	a.Path.Elements[0].Name = evil
	a.Findings[0].Title = evil
	a.Findings[0].Unit = evil
	a.Notes[0].Text = evil
	a.Changes[0] = "- # 1. " + evil
	a.Assumed[0] = packcheck.Assumed{Key: evil, Value: evil, Why: evil}
	a.Measured[0].Name = evil
	a.Cautions[0] = evil
	return a
}
