package report_test

import (
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/wiring"
)

// The assessments below are made by hand: their figures are plausible, belong
// to no computation, and serve only to show every part of a report.

func ptr[T any](v T) *T { return &v }

// fixtures are the assessments that have golden files, by name.
func fixtures() map[string]*answer.Assessment {
	return map[string]*answer.Assessment{
		"danger":    danger(),
		"fine":      fine(),
		"bench":     bench(),
		"wide-us":   wideUS(),
		"not-a-num": notANumber(),
		"hostile":   hostile(),
	}
}

// danger has something in every section.
func danger() *answer.Assessment {
	return &answer.Assessment{
		Schema:  answer.Schema,
		Title:   "Bramble Lane harvest tractor on an 18 V tool pack",
		Verdict: answer.Danger,
		Headline: [3]string{
			"do not let a child ride this yet",
			"No fuse: a short circuit burns the wire before anything opens, so that the loom burns.",
			"Fit a fuse of 20 to 30 A within 178 mm of the pack.",
		},
		Draws: answer.DrawFigures{
			Count: 1024, Runs: 1792, Effective: 231, Judged: 256, Inside: 0.8, ShareErr: 0.031, Stuck: 0.084, Burnt: 0.02,
		},
		Pack: answer.PackFigures{
			Chemistry: "li-ion", Reading: "5 cells in series, one string, 18 V nominal, 21 V full", CellsInSeries: 5, Strings: 1,
			FullV: 21, NominalV: 18, EmptyV: 14, RatedAh: 5, UsableAh: 4.62, UsableWh: 79.8,
			ResistanceOhm: 0.081, ShortCircuitA: 259, MassKg: 0.64,
		},
		Steady: &answer.SteadyFigures{SpeedKmh: 6.84, BatteryA: 9.3, MotorA: 4.65, BusV: 17.4, Efficiency: 0.61},
		Launch: &answer.LaunchFigures{
			PeakBatteryA: 88.4, PeakBatteryAtS: 0.0021, PeakMotorA: 44.2, LowestBusV: 9.7,
			BlockedBatteryA: 92, BlockedMotorA: 46, BlockedStandsS: ptr(14.2),
			SpeedAfter: []answer.SpeedPoint{{TimeS: 1, Kmh: 4.4}, {TimeS: 3, Kmh: 6.5}},
			Slips:      true,
			AboveS:     []answer.AboveLimit{{Part: "pack", LimitA: 30, Sec: 0.62}},
			ReversalA:  151, SparkA: ptr(210.0), SparkJ: ptr(0.104), PrechargeOhm: ptr(47.0),
			Case: answer.LaunchCase{OCVV: 20.9, R0Ohm: 0.081, Motors: 2, MotorsInSeries: 1},
			CaseGives: answer.CaseGives{
				PeakBatteryA: 86.1, PeakBatteryAtS: 0.0022, PeakMotorA: 43.1, LowestBusV: 9.9, BlockedBatteryA: 90, SpeedKmh: 6.71,
			},
		},
		Path: &answer.PathFigures{
			ResistanceOhm: 0.0314, DropV: 0.292, DropPct: 1.62, AmpacityA: 31.4,
			FuseLeastA: ptr(18.6), FuseMostA: ptr(47.1), FuseSizesA: []float64{20, 25, 30, 40},
			ShortCircuitA: 187, WireLimitS: ptr(1.9),
			Elements: []answer.PathElement{
				{Name: "wire, there and back", Ohm: 0.0124, DropV: 0.115, HeatW: 1.07},
				{Name: "switch", Ohm: 0.015, DropV: 0.14, HeatW: 1.3},
			},
		},
		Ride: answer.RideFigures{
			PedalMin: 29.4, ClockMin: 41.1, DistanceKm: 3.1, EndedBy: "wanted time reached", End: answer.EndWanted,
			EndShare:      []answer.Named{{Name: string(answer.EndWanted), Share: 0.71}, {Name: string(answer.EndCutoff), Share: 0.29}},
			WantedMin:     ptr(45.0),
			LastsPedalMin: 33.3, LastsClockMin: 46.2, LastsUntil: "cutoff in the pack", LastsEnd: answer.EndCutoff, RestVAfter: 15.9, ChargeLeft: 0.076, StartsCharged: 0.85,
			DeliveredAh: 4.62, DeliveredWh: 79.8, MotorCaseC: ptr(71.0), WindingC: ptr(98.0), PackC: 34, Launches: 71,
		},
		Cutoff: answer.CutoffFigures{
			OpensFirst: answer.OpensPack, OpensAtCharge: ptr(0.076),
			OpensShare: []answer.Named{{Name: answer.OpensPack, Share: 0.88}, {Name: answer.OpensNothing, Share: 0.12}}, WeakestCellV: 2.71, ChatterCount: 3, IdleDaysToHarm: ptr(41.0),
			LeftForAWeek: "after a week 5 % of its charge is gone",
			Advised:      &answer.AdvisedCutoff{OpensAtV: 15.5, DelayS: 2, LongestS: 20, ClosesAtV: 18.2},
		},
		Charge: &answer.ChargeFigures{
			Match: answer.MatchNo, Reasons: []string{"Never put this charger on this pack."},
			EndVPerCell: ptr(2.94), Right: "made for li-ion, ends at 21 V and stops by itself",
			Left: []answer.Left{
				{After: "one night", Words: "Some gas is lost."},
				{After: "one week", Words: "It is gassed dry."},
				{After: "one month", Words: "It is gassed dry."},
			},
		},
		Original: &answer.OriginalFigures{
			SpeedRatio: ptr(1.52), LaunchCurrentRatio: ptr(1.9), BlockedCurrentRatio: ptr(1.84), ToothLoadRatio: ptr(1.84),
			MotorHeatRatio: ptr(3.4), RideRatio: ptr(0.71), OriginalSpeedKmh: ptr(4.5), OriginalPedalMin: ptr(41.0),
			OriginalLaunchA: ptr(46.5),
		},
		Storage: &answer.StorageFigures{
			ChargeLeft: 0.31, StoreAt: 0.5,
			Dates: []answer.StorageDate{{Date: "2026-01-15", Do: "Look at the volts and top up to half."}},
		},
		Readings: []answer.Reading{
			{
				Key: "measured.ride_time", Name: "ride time by the clock", Text: "38 min", Unit: "s", Value: 2280, Error: 274,
				Before: answer.Range{Low: 1260, Likely: 2520, High: 10380}, After: answer.Range{Low: 1980, Likely: 2310, High: 2700},
				Explains: "the slow reading of the two",
			},
			{
				Key: "measured.top_speed", Name: "top speed", Text: "18 km/h +- 1 km/h", Unit: "m/s", Value: 5, Error: 0.28, Stated: true,
				Before: answer.Range{Low: 1.4, Likely: 1.9, High: 2.6}, After: answer.Range{Low: 1.7, Likely: 1.9, High: 2.1},
				LeftOut: true, Explains: "three times what it can do",
			},
		},
		Conflict: &answer.Conflict{
			Readings: []string{"measured.top_speed", "measured.ride_time"}, Likeliest: "measured.top_speed",
			Second: "measured.ride_time", LeftOut: []string{"measured.top_speed"}, P: 0.0021,
			Pushed: []answer.Pushed{{Key: "gears.ratio", Value: "42:1", Sigma: 3.1}},
			Words:  "Top speed and ride time cannot both be true.",
		},
		Items: []answer.ItemVerdict{{Item: answer.Fuse, Word: answer.NotKnown, Line: "Not told: kind, amps and place of the fuse."}},
		Measured: []answer.MeasuredFigure{
			{Name: "rest volts", Measured: "18.6 V", Computed: "20.1 to 20.9 V", Says: "the pack was not full"},
		},
		Ranges: map[string]answer.Range{
			"ride.pedal_min":        {Low: 21.6, Likely: 29.4, High: 38.2},
			"ride.clock_min":        {Low: 30.2, Likely: 41.1, High: 53.5},
			"ride.distance_km":      {Low: 2.31, Likely: 3.1, High: 3.98},
			"steady.speed_kmh":      {Low: 6.1, Likely: 6.84, High: 7.5},
			"launch.peak_battery_a": {Low: 71, Likely: 88.4, High: 118},
		},
		Findings: []answer.Finding{
			{
				Code: wiring.CodeNoFuse, Level: answer.Danger, Harm: answer.House, Title: "There is no fuse in the path.", Found: 187, Limit: 31.4,
				Unit: "A", Source: "cfr-183-455", Advice: "Fit one close to the pack before anybody rides.", Topic: answer.TopicPath,
				Item: answer.Fuse, Change: answer.FitFuse, Share: 1,
			},
			{
				Code: "speed-above-walk", Level: answer.Watch, Harm: answer.Child, Title: "It is faster than a walking adult.",
				Found: 1.9, Limit: 1.4, Unit: "m/s", Source: "walking-pace", Advice: "Keep to a fenced place.",
				Topic: answer.TopicSpeed, Item: answer.Rider, Habit: answer.HabitKeepClear, Share: 0.31, Certainty: answer.Possible,
			},
			{
				Code: "board-overvolted", Level: answer.FixFirst, Harm: answer.Part, Title: "The board was made for 12 V and sees 21 V.",
				Found: 21, Limit: 12, Unit: "V", Topic: "no section", Item: answer.Board, Change: answer.FitConverter,
				Advice: "Replace the board by one that stands the pack's full volts.", Share: 0.86, Certainty: answer.Likely,
				Guess: "rider.mass", Decides: []string{"rider.mass"},
			},
			{
				Code: "charger-wrong", Level: answer.Danger, Harm: answer.House, Title: "Never put this charger on this pack.",
				Source: "iec-62133", Topic: answer.TopicCharge, Item: answer.Charger, Change: answer.FitCharger, Share: 1,
			},
			{
				Code: "pedal-welds", Level: answer.Watch, Harm: answer.Child, Title: "The pedal switch can melt shut.", Found: 88, Limit: 60,
				Unit: "A", Source: "vehicle-trade", Advice: "Fit a speed control.", Topic: answer.TopicLaunch, Item: answer.Pedal,
				Change: answer.FitController, LimitA: 40, Share: 0.034, Certainty: answer.Rare,
			},
			{
				Code: "weak-cell", Level: answer.Watch, Harm: answer.Part, Title: "The weakest cell runs low.", Found: 2.71, Limit: 2.8,
				Unit: "V", Want: answer.Above, Source: "iec-62133", Topic: answer.TopicStorage, Item: answer.Battery, Share: 0.95,
			},
			{
				Code: "reading-odd", Level: answer.Fine, Title: "The volts at rest are sound.", Topic: answer.TopicMeasured,
				Item: answer.Battery, Reads: answer.AsTold, Share: 1,
			},
		},
		Notes: []answer.Note{
			{Topic: answer.TopicPack, Text: "20 V max and 18 V nominal are the same pack: full and half full."},
			{Topic: answer.TopicRide, Text: "Amp-hours say how long, not how hard it pulls."},
		},
		Buy: []answer.Purchase{
			{Item: "Fuse", Text: "20 A, the smallest that holds; right at the pack"},
			{Item: "charger", Text: "one for li-ion cells that ends at 21 V"},
		},
		Habits:  []string{"Let go of the pedal at once when the vehicle does not move."},
		Changes: []string{"Fit a fuse of 20 to 30 A within 178 mm of the pack.", "Replace the board."},
		Assumed: []answer.Assumed{
			{Key: "gears.ratio", Value: "60:1 to 110:1", Why: "not given; usual for this can size", Source: "vehicle-trade", Effect: 0.8},
			{Key: "rider.mass", Value: "15 to 24 kg", Why: "age 4 to 6", Source: "child-charts", Effect: 0.3},
			{Key: "pack.charge", Value: "100 %", Source: "walking-pace"},
			{Key: "wire.insulation", Value: "80 C", Why: "the weakest in common use", Source: "walking-pace", Decides: true},
		},
		Measure: []answer.Measurement{
			{
				What: "Current with the wheels blocked for one second", How: "Clamp meter on the red wire", Narrows: "launch and fuse",
				Key: "measured.blocked_current", Minutes: 0.12, Speed: 0.08, Amps: 0.55, Verdict: 0.21,
			},
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
		System: answer.Metric,
	}
}

// fine has nothing wrong and nothing assumed.
func fine() *answer.Assessment {
	a := danger()
	a.Title = "Bramble Lane tractor with controller, cutoff and fuse"
	a.Verdict = answer.Fine
	a.Headline = [3]string{"fits", "Nothing above watch.", "Ride, and measure the time."}
	a.Findings, a.Notes, a.Changes, a.Assumed, a.Measure, a.Measured, a.Storage = nil, nil, nil, nil, nil, nil, nil
	a.Habits, a.Buy, a.Readings, a.Conflict, a.Ride.EndShare, a.Cutoff.OpensShare = nil, nil, nil, nil, nil, nil
	a.Draws.Stuck, a.Draws.Burnt = 0, 0
	a.Ranges = nil
	a.Launch.Slips, a.Launch.AboveS, a.Launch.SparkA, a.Launch.SparkJ, a.Launch.PrechargeOhm = false, nil, nil, nil, nil
	a.Path.ShortCircuitClearS = ptr(0.011)
	a.Cutoff.ChatterCount = 0
	a.Cutoff.Advised = &answer.AdvisedCutoff{OpensAtV: 15.5, DelayS: 2, LongestS: 20}
	a.Ride.WantedMin = nil
	a.Charge = &answer.ChargeFigures{Match: answer.MatchYes, HoursTo80: ptr(1.6), HoursToFull: ptr(2.2), UnplugAfterH: ptr(3.0), EndVPerCell: ptr(4.2)}
	return a
}

// bench has no vehicle: everything that may be nil is nil.
func bench() *answer.Assessment {
	a := danger()
	a.Title = "Bench discharge at 5 A"
	a.Verdict = answer.Watch
	a.Headline = [3]string{"works as a bench load", "", ""}
	a.Steady, a.Launch, a.Path, a.Charge, a.Original, a.Storage, a.Measured = nil, nil, nil, nil, nil, nil, nil
	a.Readings, a.Conflict, a.Buy, a.Ride.EndShare = nil, nil, nil, nil
	a.Draws.Stuck, a.Draws.Burnt = 0, 0
	a.Ride.MotorCaseC, a.Ride.WindingC, a.Ride.DistanceKm, a.Ride.Launches = nil, nil, 0, 0
	a.Cutoff = answer.CutoffFigures{OpensFirst: answer.OpensNothing, WeakestCellV: 2.4}
	a.Findings, a.Notes, a.Changes, a.Cautions, a.Sources, a.Habits, a.CautionSources = nil, nil, nil, nil, nil, nil, nil
	return a
}

// wideUS has wide ranges, no path to a fuse, and a user who writes pounds.
func wideUS() *answer.Assessment {
	a := danger()
	a.Title = "Two-seater, 24 V, two tired blocks"
	a.System = answer.Customary
	a.Path.FuseLeastA, a.Path.FuseMostA, a.Path.FuseSizesA = nil, nil, []float64{}
	a.Launch.BlockedStandsS = nil
	a.Cutoff.Advised.MustLatch = true
	a.Cutoff.IdleDaysToHarm = nil
	a.Path.FuseUnknown, a.Draws.Rough = true, true
	a.Ranges = map[string]answer.Range{
		"ride.pedal_min":            {Low: 4.2, Likely: 29.4, High: 131},
		"ride.clock_min":            {Low: 6, Likely: 41.1, High: 190},
		"ride.distance_km":          {Low: 0.31, Likely: 3.1, High: 9.8},
		"steady.speed_kmh":          {Low: 2.1, Likely: 6.84, High: 11},
		"ride.pack_c":               {Low: 22, Likely: 34, High: 55},
		"ride.charge_left":          {Low: 0, Likely: 0.076, High: 0.4},
		"ride.starts_charged":       {Low: 0.8, Likely: 0.85, High: 0.9},
		"cutoff.idle_days_to_harm":  {Low: 3, Likely: 9, High: 40},
		"original.motor_heat_ratio": {Low: 1.1, Likely: 3.4, High: 6},
		"pack.mass_kg":              {Low: 0.64, Likely: 0.64, High: 0.64},
	}
	return a
}

// notANumber has figures that did not come out.
func notANumber() *answer.Assessment {
	a := danger()
	a.Title = "Figures that did not come out"
	a.Steady.SpeedKmh = math.NaN()
	a.Pack.MassKg = math.Inf(1)
	a.Path.WireLimitS = ptr(math.Inf(1))
	a.Original.SpeedRatio = ptr(math.NaN())
	a.Findings[0].Found = math.NaN()
	a.Path.FuseSizesA = []float64{math.NaN(), 20}
	a.Ranges["ride.pedal_min"] = answer.Range{Low: math.NaN(), Likely: 29.4, High: math.Inf(1)}
	a.Launch.Case.LimitA = math.Inf(1)
	return a
}

// hostile carries what somebody might put into a setup to break a report.
func hostile() *answer.Assessment {
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
	a.Assumed[0] = answer.Assumed{Key: evil, Value: evil, Why: evil}
	a.Measured[0].Name = evil
	a.Findings[2].Guess, a.Findings[2].Item = evil, answer.Item(evil)
	a.Readings[0].Name, a.Readings[1].Text, a.Conflict.Words, a.Conflict.Pushed[0].Key = evil, evil, evil, evil
	a.Buy[0] = answer.Purchase{Item: evil, Text: evil}
	a.Charge.Right, a.Charge.Left[0].After, a.Ride.EndShare[0].Name, a.Measure[0].Key = evil, evil, evil, evil
	a.Cautions[0] = evil
	return a
}
