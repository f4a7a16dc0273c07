package trials_test

import (
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/wiring"
)

// Advice that several findings give, as keys of a setup.
const (
	fitControl = "controller.kind=chopper; controller.ramp=1 s; controller.reverses=after a stop; "
	ownCharger = "-charger; charger.label=14.7 V 1.5 A DC centre positive; charger.made_for=agm; charger.stops=by itself; charger.jack=terminals; charger.jack_polarity=centre positive"
	packsOwn   = "-charger; charger.came_with_pack=true; charger.jack=pack"
	oneCutoff  = "-cutoff; cutoff.module.opens_at={opens}; cutoff.module.delay={delay}; cutoff.module.standby_current=0.1 mA"
	oneFuse    = "-fuse; fuse.form=small blade; fuse.rating={fuse}; fuse.distance_from_pack=100 mm"
	nineOfTen  = "the setting is for nine draws of ten"
	newPack    = "pack.health=100 %"
)

func takens() []taken {
	return slices.Concat(takensPack(), takensCharge(), takensCutoff(), takensDrive(), takensPath())
}

func takensPack() []taken {
	return []taken{
		{code: battery.CodeCurrentLasting, change: answer.FitPack, base: "direct", set: "pack.max_current=8 A; -controller.current_limit; vehicle.slope=6 %", take: "pack.max_current=40 A"},
		{code: battery.CodeCurrentPeak, change: answer.LimitCurrent, base: "direct", set: "pack.max_current=6 A; -controller.current_limit; -controller.ramp", take: "controller.current_limit={limit_a}"},
		{code: battery.CodeTooCold, change: answer.WarmUp, base: "lithium", set: "pack.temperature=-25 C; outing.air=-25 C", take: "pack.temperature=20 C; outing.air=5 C"},
		{code: battery.CodeTooHot, change: answer.LoadLess, base: "lithium", set: "pack.temperature=85 C", take: "pack.temperature=20 C"},
		{code: battery.CodeOldHot, change: answer.LookUp, base: "proper", set: "measured.pack_temperature=60 C", take: "measured.pack_temperature=40 C"},
		{code: judge.CodeHotterThanDriven, change: answer.LookUp, base: "block", set: "measured.pack_temperature=48 C", take: "measured.pack_temperature=28 C"},
		{code: battery.CodeTooHot, change: answer.LookUp, base: "block", set: "measured.pack_temperature=58 C", take: "measured.pack_temperature=40 C"},
		{code: battery.CodeSeriesElectronics, change: answer.FitPack, base: "iron", set: "pack.joined=series; cutoff.module.opens_at=22.4 V; charger.voltage=29.2 V", take: "-pack.joined; cutoff.module.opens_at=12 V; charger.voltage=14.6 V"},
		{code: battery.CodeUnlikePacks, change: answer.FitPack, base: "pair", set: "pack.label=12 V 12 Ah; pack.joined=series; pack.second.label=12 V 7 Ah", take: "-pack.second"},
		{code: battery.CodeParallelUnlikeVolts, change: answer.FitPack, base: "labels", set: "pack.joined=parallel; pack.second.label=6 V 4 Ah", take: "-pack.joined; -pack.second"},
		{code: judge.CodeBareCells, change: answer.ChangeNone, base: "lithium", set: "pack.housing=bare cells", take: "pack.housing=closed shell"},
		{code: judge.CodeAcidSpills, change: answer.FitPack, base: "block", set: "pack.label=12 V 7 Ah flooded", take: "pack.label=12 V 7 Ah AGM"},
		{code: judge.CodeBlocksUnclear, change: answer.LookUp, base: "pair", set: "pack.label=2 x 12 V 12 Ah; vehicle.design_voltage=24 V", take: "pack.label=24 V (two 12 V) 12 Ah"},
		{code: judge.CodeCellsAssumed, change: answer.LookUp, base: "iron", set: "pack.chemistry=lithium; pack.label=12 V 10 Ah; -pack.cells_in_series", take: "pack.chemistry=lifepo4"},
		{code: judge.CodePackNotInTray, change: answer.FitPack, base: "lithium", set: "pack.size=180 x 80 x 80 mm; vehicle.tray=155 x 100 x 100 mm", take: "pack.size=150 x 80 x 80 mm"},
		{code: judge.CodePackOnItsSide, change: answer.LookUp, base: "block", set: "pack.size=151 x 65 x 94 mm; vehicle.tray=155 x 100 x 70 mm", take: "pack.size=151 x 94 x 65 mm"},
		{code: judge.CodePackWorn, change: answer.FitPack, base: "lithium", set: "pack.health=40 %", take: newPack},
		{code: judge.CodeCannotSupply, change: answer.FitPack, base: "bench", set: "load.current=2000 A; fuse.rating=5 A", take: "load.current=3 A"},
		{code: judge.CodeReadingsDisagree, change: answer.LookUp, base: "bench", set: "measured.ride_time=6 h", take: "measured.ride_time=2 h"},
		{code: judge.CodeNotTold, change: answer.LookUp, base: "labels", set: "", take: "wire.gauge=14 AWG; vehicle.slope=0 %; vehicle.brake=motors"},
	}
}

func takensCharge() []taken {
	store := "storage.from=2026-11-01; storage.until=2027-03-31; "
	return []taken{
		{code: charge.CodeDrivesPlugged, change: answer.ChargeElsewhere, base: "iron", set: "charger.jack=terminals; charger.blocks_driving=false", take: "charger.blocks_driving=true"},
		{code: charge.CodeVehicleJack, change: answer.ChargeElsewhere, base: "iron", set: "charger.jack=vehicle", take: "charger.jack=pack"},
		{
			code: charge.CodeChargedInSeries, change: answer.ChargeElsewhere, base: "pair", set: "pack.label=12 V 12 Ah; pack.joined=series; -charger.voltage; charger.jack=terminals",
			take: "charger.voltage=14.7 V; charger.jack=pack", left: answer.Watch, why: "each time they have to be taken apart",
		},
		{
			code: charge.CodeChargedInSeries, change: answer.FitCharger, base: "iron", set: "pack.joined=series; cutoff.module.opens_at=24 V; charger.voltage=29.2 V; charger.jack=pack",
			take: "charger.voltage=14.6 V", left: answer.Watch, why: "each time they have to be taken apart",
		},
		{
			code: charge.CodeChargedInParallel, change: answer.ChargeElsewhere, base: "block", set: "pack.joined=parallel", take: "charger.jack=pack",
			left: answer.Watch, why: "each time they have to be taken apart",
		},
		{code: charge.CodeStoredConnected, change: answer.KeepCharged, base: "block", set: store + "storage.connected=true; controller.standby_current=15 mA", take: "storage.connected=false"},
		{code: charge.CodeDeadBlock, change: answer.FitPack, base: "block", set: "-pack.charge; measured.rest_voltage=0 V; measured.hours_rested=12 h", take: "-measured; pack.charge=100 %"},
		{code: charge.CodeNeverFull, change: answer.FitCharger, base: "block", set: "charger.current=10 mA", take: ownCharger},
		{code: charge.CodePlaceNoGood, change: answer.ChargeElsewhere, base: "lithium", set: "outing.air=-3 C; pack.temperature=-3 C", take: "outing.air=20 C; pack.temperature=20 C"},
		{code: charge.CodeSlowInCold, change: answer.WarmUp, base: "lithium", set: "outing.air=3 C; pack.temperature=3 C", take: "outing.air=20 C; pack.temperature=20 C"},
		{code: charge.CodeTooCold, change: answer.ChargeElsewhere, base: "lithium", set: "outing.air=-3 C; pack.temperature=-3 C", take: "outing.air=20 C; pack.temperature=20 C"},
		{code: charge.CodeTooCold, change: answer.WaitBeforeCharge, base: "lithium", set: "outing.air=-12 C; pack.temperature=-12 C; outing.charged_at=20 C", take: "pack.temperature=20 C; outing.air=20 C"},
		{code: charge.CodeTooHot, change: answer.ChargeElsewhere, base: "lithium", set: "outing.air=58 C; pack.temperature=58 C", take: "outing.air=20 C; pack.temperature=20 C"},
		{code: charge.CodeTooHot, change: answer.WaitBeforeCharge, base: "lithium", set: "pack.temperature=55 C", take: "pack.temperature=18 C"},
		{code: charge.CodeCurrentTooHigh, change: answer.FitCharger, base: "block", set: "charger.current=10 A", take: "charger.current={1} A"},
		{code: charge.CodeCurrentTooHigh, change: answer.WarmUp, base: "lithium", set: foreign + "charger.current=4.5 A; outing.air=5 C; pack.temperature=5 C", take: "outing.air=20 C; pack.temperature=20 C"},
		{code: charge.CodeCurrentTooHigh, change: answer.LookUp, base: "lithium", set: "charger.current=12 A", take: "charger.current=2 A"},
		{code: charge.CodeCurrentUnknown, change: answer.LookUp, base: "block", set: "-charger.current", take: "charger.current=1.5 A"},
		{code: charge.CodeEndVoltsUnknown, change: answer.FitCharger, base: "block", set: "-charger.voltage", take: "charger.voltage=14.7 V"},
		{code: charge.CodeGivesAC, change: answer.FitCharger, base: "block", set: "charger.output=ac", take: "charger.output=dc"},
		{code: charge.CodePowerSupply, change: answer.FitCharger, base: "block", set: "charger.made_for=power supply; charger.voltage=15 V; charger.current=5 A; charger.stops=never", take: ownCharger},
		{code: charge.CodeNeverStops, change: answer.FitCharger, base: "lithium", set: foreign + "charger.stops=never", take: packsOwn},
		{code: charge.CodeOutputUnknown, change: answer.FitCharger, base: "block", set: "-charger.output", take: "charger.output=dc"},
		{code: charge.CodePolarityReversed, change: answer.FitCharger, base: "block", set: "charger.polarity=centre negative", take: ownCharger},
		{code: charge.CodePolarityUnchecked, change: answer.LookUp, base: "block", set: "-charger.polarity", take: "charger.polarity=centre positive"},
		{code: charge.CodePurposeUnknown, change: answer.FitCharger, base: "block", set: "-charger.made_for", take: "charger.made_for=agm"},
		{code: charge.CodeStopUnknown, change: answer.LookUp, base: "block", set: "-charger.stops", take: "charger.stops=by itself"},
		{code: charge.CodeVoltsNotHeld, change: answer.FitCharger, base: "iron", set: "-charger.made_for; charger.voltage=9.5 V", take: "charger.made_for=lifepo4; charger.voltage=14.6 V"},
		{code: charge.CodeVoltsTooHigh, change: answer.FitCharger, base: "block", set: "charger.voltage=29.4 V", take: "charger.voltage=14.7 V"},
		{code: charge.CodeVoltsTooLow, change: answer.FitCharger, base: "pair", set: "charger.voltage=14.7 V", take: "charger.voltage=29.4 V"},
		{code: charge.CodeWrongChemistry, change: answer.FitCharger, base: "iron", set: "charger.made_for=li-ion; charger.voltage=16.8 V", take: "charger.made_for=lifepo4; charger.voltage=14.6 V"},
		{code: charge.CodeForeignCharger, change: answer.FitCharger, base: "lithium", set: foreign, take: packsOwn},
		{code: charge.CodeFallsFar, change: answer.FitPack, base: "lithium", set: "measured.loaded_voltage=3 V; measured.loaded_current=8 A", take: "-measured"},
		{code: charge.CodeNeverRecharge, change: answer.FitPack, base: "lithium", set: "-pack.charge; measured.rest_voltage=0 V; measured.hours_rested=12 h", take: "-measured; pack.charge=100 %"},
		{code: charge.CodeStoredMayFreeze, change: answer.KeepCharged, base: "block", set: store + "pack.charge=5 %; storage.temperature=-15 C", take: "pack.charge=100 %"},
		{code: charge.CodeStoredNeedsTopUp, change: answer.KeepCharged, base: "block", set: store + "storage.temperature=25 C", take: "storage.until=2027-01-31"},
		{code: charge.CodeStoredNotFull, change: answer.KeepCharged, base: "block", set: store + "pack.charge=50 %; storage.temperature=10 C", take: "pack.charge=100 %"},
		{code: charge.CodeStoredRunsEmpty, change: answer.KeepCharged, base: "lithium", set: store + "storage.temperature=20 C; pack.charge=5 %", take: "pack.charge=50 %"},
		{code: charge.CodeStoredTooHot, change: answer.KeepCharged, base: "lithium", set: store + "storage.temperature=70 C", take: "storage.temperature=12 C; pack.charge=50 %"},
	}
}

func takensCutoff() []taken {
	return []taken{
		{code: cutoff.CodeAboveFull, change: answer.FitCutoff, base: "lithium", set: "cutoff.module.opens_at=21 V", take: oneCutoff},
		{code: cutoff.CodeBelowHarm, change: answer.FitCutoff, base: "iron", set: "cutoff.module.opens_at=4 V", take: oneCutoff},
		{code: cutoff.CodeBelowHarm, change: answer.FitCutoff, base: "block", set: "cutoff.module.opens_at=4 V", take: "cutoff.module.opens_at={1} V"},
		{code: cutoff.CodeChatters, change: answer.FitCutoff, base: "lithium", set: "cutoff.module.opens_at=16.5 V; cutoff.module.closes_at=16.6 V; cutoff.module.delay=0 s", take: "cutoff.module.closes_at={1} V"},
		{code: cutoff.CodeChatters, change: answer.FitCutoff, base: "block", set: "cutoff.module.closes_at=10.6 V; cutoff.module.delay=0 s", take: "-cutoff.module.closes_at"},
		{code: cutoff.CodeEndsRide, change: answer.FitCutoff, base: "lithium", set: "cutoff.module.opens_at=19.5 V; cutoff.module.delay=0 s", take: oneCutoff},
		{code: cutoff.CodeMayChatter, change: answer.FitCutoff, base: "block", set: "cutoff.module.opens_at=11 V; cutoff.module.closes_at=12.4 V; cutoff.module.delay=5 s", take: "cutoff.module.closes_at={1} V"},
		{code: cutoff.CodeMustLatch, change: answer.FitCutoff, base: "bench", set: "load.current=20 A; fuse.rating=30 A; cutoff.module.opens_at=9.5 V; cutoff.module.delay=2 s; cutoff.module.closes_at=12 V", take: "-cutoff.module.closes_at"},
		{code: cutoff.CodeNeverOpens, change: answer.FitCutoff, base: "lithium", set: "cutoff.module.delay=1 h", take: oneCutoff},
		{code: cutoff.CodeNone, change: answer.FitCutoff, base: "lithium", set: "-cutoff", take: oneCutoff},
		{code: cutoff.CodeNone, change: answer.FitCutoff, base: "block", set: "-cutoff", take: oneCutoff},
		{code: cutoff.CodeNone, change: answer.FitCutoff, base: "iron", set: "-cutoff", take: oneCutoff},
		{code: cutoff.CodeOpensAtLaunch, change: answer.FitCutoff, base: "direct", set: "cutoff.module.opens_at=17 V; cutoff.module.delay=0 s; -controller.ramp; -controller.current_limit; vehicle.ground=asphalt", take: "cutoff.module.delay={1} s"},
		{code: cutoff.CodePastSaving, change: answer.FitCutoff, base: "lithium", set: "-cutoff", take: oneCutoff, left: answer.Watch, why: nineOfTen},
		{code: cutoff.CodePastSaving, change: answer.FitCutoff, base: "iron", set: "-cutoff", take: oneCutoff, left: answer.Watch, why: nineOfTen},
		{code: cutoff.CodeIdleMonth, change: answer.KeepCharged, base: "lithium", set: "pack.watches_cells=true; cutoff.module.standby_current=3 mA", take: "", left: answer.Watch, why: "taking the battery off after each ride is a habit, no key"},
		{code: cutoff.CodeIdleWeek, change: answer.FitCutoff, base: "lithium", set: "cutoff.module.standby_current=50 mA", take: oneCutoff, left: answer.Watch, why: nineOfTen},
		{code: cutoff.CodeWeakCellHarmed, change: answer.FitCutoff, base: "lithium", set: "cutoff.module.delay=10 min", take: oneCutoff, left: answer.Watch, why: nineOfTen},
		{code: cutoff.CodeWeakCellHarmed, change: answer.FitCutoff, base: "block", set: "cutoff.module.standby_current=5 mA", take: oneCutoff, left: answer.Watch, why: nineOfTen},
		{code: cutoff.CodeWeakCellReversed, change: answer.FitCutoff, base: "iron", set: "cutoff.module.opens_at=4 V", take: oneCutoff, left: answer.Watch, why: nineOfTen},
		{code: cutoff.CodeCannotProtect, change: answer.FitPack, base: "block", set: "-pack.charge; measured.rest_voltage=0 V; measured.hours_rested=12 h", take: "-measured; pack.charge=100 %"},
		{code: judge.CodeToAStandstill, change: answer.FitCutoff, base: "labels", set: "vehicle.ground=gravel", take: oneCutoff},
	}
}

func takensDrive() []taken {
	const fast = "gears.ratio=40:1; rider.age=4 years; "
	return []taken{
		{code: drive.CodeAboveToyVolts, change: answer.FitPack, base: "labels24", set: "pack.chemistry=li-ion; pack.label=36 V 5 Ah", take: "pack.chemistry=agm; pack.label=24 V (two 12 V) 9 Ah"},
		{code: drive.CodeAccessoryVolts, change: answer.FitConverter, base: "lithium", set: "vehicle.accessories=on the pack", take: "vehicle.accessories=own supply"},
		{code: drive.CodeAccessoryUnread, change: answer.LookUp, base: "lithium", set: "", take: "vehicle.accessories=own supply"},
		{code: drive.CodeBlockedHeat, change: answer.LimitCurrent, base: "swap", set: "", take: fitControl + "controller.max_voltage=30 V; controller.current_limit={limit_a}", left: answer.Watch, why: "half the current gives four times as long: it still burns when somebody keeps the pedal down"},
		{code: drive.CodeBlockedOverController, change: answer.LimitCurrent, base: "direct", set: "-controller.current_limit; measured.blocked_current=200 A", take: "-measured; controller.current_limit={limit_a}"},
		{code: drive.CodeBlockedOverPack, change: answer.LimitCurrent, base: "direct", set: "pack.max_current=10 A; -controller.current_limit; -controller.ramp", take: "controller.current_limit={limit_a}"},
		{code: drive.CodeBlockedOverSwitch, change: answer.LimitCurrent, base: "block", set: "controller.continuous_current=10 A; gears.ratio=130:1", take: fitControl + "controller.max_voltage=30 V; controller.continuous_current=30 A; controller.peak_current=60 A; controller.current_limit={limit_a}"},
		{code: drive.CodeBoardOvervoltage, change: answer.FitConverter, base: "lithium", set: "controller.converter_voltage=18 V; vehicle.weakest_part_voltage=15 V", take: "controller.converter_voltage={1} V"},
		{code: drive.CodeBoardOvervoltage, change: answer.FitConverter, base: "swap", set: "", take: "controller.kind=chopper; controller.current_limit=60 A; controller.converter_voltage=12 V; controller.converter_limit=160 A"},
		{code: drive.CodeCannotStart, change: answer.LoadLess, base: "lithium", set: "controller.current_limit=3 A; vehicle.slope=8 %", take: "controller.current_limit=24 A; vehicle.slope=0 %"},
		{code: drive.CodeContactsMayWeld, change: answer.FitController, base: "block", set: "pack.label=24 V (two 12 V) 7 Ah; cutoff.module.opens_at=21 V; -charger", take: fitControl + "controller.current_limit=20 A; controller.max_voltage={1} V; vehicle.weakest_part_voltage={1} V"},
		{code: drive.CodeConverterLimitUnknown, change: answer.LookUp, base: "lithium", set: "-controller.converter_limit", take: "controller.converter_limit=30 A"},
		{code: drive.CodeConverterTooSmall, change: answer.FitConverter, base: "lithium", set: "controller.converter_limit=4 A", take: "controller.converter_limit={2}.5 A"},
		{code: drive.CodeFastForARideOn, change: answer.LimitSpeed, base: "block", set: "measured.top_speed=18 km/h; gears.ratio=40:1", take: "measured.top_speed={1} km/h", left: answer.Watch, why: "brisk, and a grown-up walks beside it"},
		{code: drive.CodeFastForARideOn, change: answer.LimitSpeed, base: "direct", set: fast, take: "controller.converter_voltage=6 V; controller.converter_limit=30 A"},
		{code: drive.CodeTooYoung, change: answer.LimitSpeed, base: "block", set: "rider.age=2 years; rider.mass=12 kg", take: "rider.age=4 years; rider.mass=17 kg"},
		{code: drive.CodeFasterThanOriginal, change: answer.LimitSpeed, base: "swap", set: "", take: "controller.kind=chopper; controller.current_limit=60 A; controller.converter_voltage=12 V; controller.converter_limit=160 A", left: answer.Watch, why: "the converter holds its volts where the old block sagged"},
		{code: drive.CodeLaunchOverController, change: answer.LimitCurrent, base: "direct", set: "-controller.current_limit; -controller.ramp; controller.peak_current=30 A; controller.continuous_current=20 A", take: "controller.current_limit={limit_a}", left: answer.Watch, why: "its peak rating allows that for seconds"},
		{code: drive.CodeLaunchOverController, change: answer.LookUp, base: "direct", set: "controller.continuous_current=8 A; -controller.peak_current", take: "controller.peak_current=60 A"},
		{code: drive.CodeLaunchOverControllerPeak, change: answer.LimitCurrent, base: "direct", set: "-controller.current_limit; -controller.ramp; controller.peak_current=30 A; controller.continuous_current=20 A", take: "controller.current_limit={limit_a}"},
		{code: drive.CodeLaunchOverJoint, change: answer.FitJoint, base: "block", set: "wire.gauge=8 AWG; wire.joint=crimped tab; fuse.form=large blade; fuse.rating=60 A", take: "-wire.joint"},
		{code: drive.CodeLaunchOverPack, change: answer.LimitCurrent, base: "direct", set: "pack.max_current=10 A; -controller.current_limit; -controller.ramp", take: "controller.current_limit={limit_a}"},
		{code: drive.CodeLaunchOverSwitch, change: answer.LimitCurrent, base: "block", set: "controller.continuous_current=10 A", take: fitControl + "controller.max_voltage=30 V; controller.continuous_current=30 A; controller.peak_current=60 A; controller.current_limit={limit_a}"},
		{code: drive.CodeMotorHot, change: answer.LoadLess, base: "swap", set: "", take: "controller.kind=chopper; controller.current_limit=60 A; controller.converter_voltage=12 V; controller.converter_limit=160 A; vehicle.ground=asphalt; outing.wanted=20 min; outing.drive=20 s; outing.pause=20 s", left: answer.Watch, why: "what ages a little sooner stays"},
		{code: drive.CodeMotorWarm, change: answer.LoadLess, base: "swap", set: "controller.kind=chopper; controller.current_limit=60 A; controller.converter_voltage=12 V; controller.converter_limit=160 A; vehicle.ground=asphalt; outing.wanted=40 min; outing.drive=60 s; outing.pause=10 s", take: "outing.wanted=10 min; outing.drive=10 s; outing.pause=60 s"},
		{code: drive.CodeNoBrake, change: answer.FitBrake, base: "labels", set: "vehicle.brake=none", take: "vehicle.brake=motors"},
		{code: drive.CodeOverloaded, change: answer.LoadLess, base: "block", set: "rider.mass=80 kg; rider.age=30 years; vehicle.rated_load=25 kg", take: "rider.mass=25 kg; rider.age=7 years"},
		{code: drive.CodePlasticSoftens, change: answer.LoadLess, base: "block", set: "measured.motor_temperature=140 C", take: "measured.motor_temperature=60 C"},
		{code: drive.CodePlasticSoftens, change: answer.LoadLess, base: "board", set: "pack.label=24 V (two 12 V) 7 Ah", take: "pack.label=12 V 7 Ah", left: answer.Watch, why: "as it was made"},
		{code: drive.CodeRampBoundsNothing, change: answer.LimitCurrent, base: "direct", set: "-controller.current_limit; pack.max_current=20 A", take: "controller.current_limit={limit_a}"},
		{code: drive.CodeRemoteOnFaster, change: answer.LimitSpeed, base: "swap", set: "vehicle.remote_control=true", take: "vehicle.remote_control=false"},
		{code: drive.CodeReversal, change: answer.FitController, base: "direct", set: "pack.max_current=10 A; -controller.current_limit; -controller.reverses", take: "controller.reverses=after a stop"},
		{code: drive.CodeRollsBack, change: answer.LoadLess, base: "block", set: "vehicle.slope=30 %", take: "vehicle.slope=0 %"},
		{code: drive.CodeRunningOverController, change: answer.FitController, base: "direct", set: "controller.continuous_current=3 A", take: "controller.continuous_current=40 A"},
		{code: drive.CodeSpinsOnTheSpot, change: answer.LoadLess, base: "block", set: "vehicle.slope=30 %", take: "vehicle.slope=0 %"},
		{code: drive.CodeStallsSoon, change: answer.LoadLess, base: "labels6", set: "rider.mass=60 kg; rider.age=14 years", take: "rider.mass=15 kg; rider.age=3 years"},
		{code: drive.CodeToothLoad, change: answer.LimitCurrent, base: "proper", set: noConverter + "-controller.current_limit; -controller.ramp; vehicle.ground=asphalt; original.controller.kind=chopper; original.controller.current_limit=14 A; original.controller.ramp=2 s", take: "controller.current_limit={limit_a}"},
		{code: drive.CodeToothLoadBlocked, change: answer.LimitCurrent, base: "swap", set: "", take: fitControl + "controller.max_voltage=30 V; controller.current_limit={limit_a}"},
		{code: judge.CodeCannotKeepGoing, change: answer.FitConverter, base: "lithium", set: "pack.resistance=2 Ohm; -pack.max_current", take: "pack.resistance=75 mOhm"},
		{code: judge.CodeBarelyMoves, change: answer.LoadLess, base: "labels6", set: "rider.mass=45 kg; rider.age=12 years", take: "rider.mass=15 kg; rider.age=3 years"},
		{code: judge.CodeDoesNotGo, change: answer.LoadLess, base: "block", set: "vehicle.slope=30 %", take: "vehicle.slope=0 %"},
	}
}

func takensPath() []taken {
	return []taken{
		{code: wiring.CodeBlockedOverloadsWire, change: answer.FitWire, base: "labels", set: "wire.gauge=18 AWG; wire.insulation=60 C; fuse.form=small blade; fuse.rating=40 A", take: "wire.gauge=10 AWG; wire.insulation=105 C"},
		{code: wiring.CodeBreakerAlone, change: answer.FitFuse, base: "lithium", set: "fuse.form=auto-reset breaker; fuse.rating=30 A", take: oneFuse},
		{code: wiring.CodeDropLarge, change: answer.FitWire, base: "block", set: "wire.gauge=20 AWG; wire.one_way_length=3 m; fuse.rating=7.5 A", take: "wire.gauge=12 AWG; wire.one_way_length=1 m"},
		{code: wiring.CodeFuseAboveJoint, change: answer.FitWire, base: "block", set: "wire.gauge=8 AWG; wire.joint=crimped tab; fuse.form=large blade; fuse.rating=60 A; measured.loaded_current=40 A; measured.loaded_voltage=10 V", take: "-wire.joint; -measured"},
		{code: wiring.CodeFuseAboveJoint, change: answer.FitFuse, base: "block", set: "rider.mass=12 kg; vehicle.ground=asphalt; wire.gauge=10 AWG; wire.joint=crimped tab; fuse.form=small blade; fuse.rating=40 A", take: "fuse.rating={fuse}"},
		{code: wiring.CodeFuseAboveWire, change: answer.FitFuse, base: "lithium", set: "fuse.form=large blade; fuse.rating=100 A", take: oneFuse},
		{code: wiring.CodeFuseAboveWire, change: answer.FitWire, base: "lithium", set: "wire.gauge=22 AWG; wire.insulation=60 C", take: "wire.gauge=12 AWG; wire.insulation=105 C"},
		{code: wiring.CodeFuseMayOpenAtLaunch, change: answer.FitFuse, base: "block", set: "fuse.rating=10 A", take: "fuse.rating={fuse}", left: answer.Watch, why: nineOfTen},
		{code: wiring.CodeFuseMayOpenAtLaunch, change: answer.FitWire, base: "board", set: "motors.count=4; wire.gauge=20 AWG; wire.insulation=60 C", take: "wire.gauge=12 AWG; wire.insulation=105 C; fuse.rating=25 A"},
		{code: wiring.CodeFuseNoneFits, change: answer.FitWire, base: "lithium", set: "wire.gauge=22 AWG; wire.insulation=60 C", take: "wire.gauge=12 AWG; wire.insulation=105 C"},
		{code: wiring.CodeFuseOpensAtLaunch, change: answer.FitFuse, base: "block", set: "fuse.rating=5 A", take: "fuse.rating={fuse}"},
		{code: wiring.CodeFuseOpensRunning, change: answer.FitFuse, base: "block", set: "fuse.rating=5 A", take: "fuse.rating={fuse}"},
		{code: wiring.CodeFuseTooFar, change: answer.MoveFuse, base: "block", set: "fuse.distance_from_pack=500 mm", take: "fuse.distance_from_pack=100 mm"},
		{code: wiring.CodeFuseOpensAtLaunch, change: answer.FitWire, base: "block", set: "wire.gauge=24 AWG; wire.insulation=60 C; fuse.rating=3 A", take: "wire.gauge=12 AWG; wire.insulation=105 C; fuse.rating=20 A"},
		{code: wiring.CodeFuseOpensRunning, change: answer.FitWire, base: "block", set: "wire.gauge=24 AWG; wire.insulation=60 C; fuse.rating=3 A", take: "wire.gauge=12 AWG; wire.insulation=105 C; fuse.rating=20 A"},
		{code: wiring.CodeFusePlaceUnknown, change: answer.LookUp, base: "block", set: "-fuse.distance_from_pack", take: "fuse.distance_from_pack=50 mm"},
		{code: wiring.CodeShortBurnsWire, change: answer.FitFuse, base: "block", set: "wire.gauge=16 AWG; wire.insulation=105 C; fuse.form=large blade; fuse.rating=80 A", take: oneFuse},
		{code: wiring.CodeShortBurnsWire, change: answer.FitWire, base: "block", set: "wire.gauge=22 AWG; wire.insulation=60 C; fuse.form=large blade; fuse.rating=60 A", take: "wire.gauge=10 AWG; wire.insulation=105 C; fuse.form=small blade; fuse.rating=30 A"},
		{code: wiring.CodeShortBurnsWire, change: answer.LookUp, base: "block", set: "wire.gauge=16 AWG; fuse.form=auto-reset breaker; fuse.rating=20 A", take: "fuse.form=small blade"},
		{code: wiring.CodeFuseHolder, change: answer.LookUp, base: "lithium", set: "", take: "", left: answer.Watch, why: "the holder is read, no key tells it"},
		{code: wiring.CodeFuseUnknown, change: answer.FitFuse, base: "block", set: "-fuse", take: oneFuse},
		{code: wiring.CodeNoFuse, change: answer.FitFuse, base: "block", set: "-fuse; fuse.form=none", take: oneFuse},
		{code: wiring.CodeJointHot, change: answer.FitJoint, base: "block", set: "controller.resistance=300 mOhm", take: "controller.resistance=5 mOhm"},
		{code: wiring.CodeJointOverloaded, change: answer.FitJoint, base: "block", set: "wire.gauge=8 AWG; wire.joint=crimped tab; measured.loaded_current=25 A; measured.loaded_voltage=11 V; fuse.form=large blade; fuse.rating=40 A", take: "-wire.joint"},
		{code: wiring.CodeWireOverloaded, change: answer.FitWire, base: "lithium", set: "wire.gauge=18 AWG; wire.insulation=60 C; fuse.rating=30 A; measured.loaded_current=25 A; measured.loaded_voltage=18 V", take: "wire.gauge=10 AWG; wire.insulation=105 C"},
		{code: judge.CodeBareBench, change: answer.FitFuse, base: "bench", set: "-fuse; -wire; fuse.form=none", take: "-fuse; fuse.form=small blade; fuse.rating=5 A; fuse.distance_from_pack=50 mm; wire.gauge=14 AWG"},
		{code: judge.CodePathUnknown, change: answer.LookUp, base: "bench", set: "-fuse; -wire", take: "fuse.form=small blade; fuse.rating=5 A; fuse.distance_from_pack=50 mm; wire.gauge=14 AWG"},
		{code: judge.CodeFuseEndsRide, change: answer.FitFuse, base: "lithium", set: "fuse.rating=3 A", take: "fuse.rating={fuse}"},
		{code: judge.CodeFuseMayEndRide, change: answer.FitFuse, base: "block", set: "fuse.rating=7.5 A", take: "fuse.rating={fuse}"},
		{code: judge.CodeFuseOpened, change: answer.LookUp, base: "block", set: "fuse.rating=30 A; measured.fuse_rating=30 A; measured.fuse_seconds=3 s", take: "-measured"},
	}
}
