package trials_test

import (
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
)

// joinedHazards are packs joined to each other.
func joinedHazards() []hazard {
	return []hazard{
		{
			name: "two tool packs in parallel", base: "lithium", set: "pack.joined=parallel", least: fixFirst, codes: battery.CodeParallelEqualising + "|" + charge.CodeChargedInParallel,
			why: "unless both rest at the same volts, tens of amperes flow between them", from: equalising,
		},
		{
			name: "two tool packs in parallel without a fuse", base: "lithium", set: "pack.joined=parallel; -fuse; fuse.form=none", least: danger, codes: noFuse,
			why: "two packs into one fault", from: cfrFuse,
		},
		{
			name: "two tool packs in series", base: "lithium", set: "pack.joined=series; controller.max_voltage=60 V; cutoff.module.opens_at=33 V; fuse.max_voltage=58 V; -charger", least: fixFirst, codes: battery.CodeSeriesElectronics,
			why: "the electronics of each see the volts of both when one opens; 42 V is above what a toy may have", from: toyVolts,
		},
		{
			name: "two tool packs in series, one cutoff for both at 25 V", base: "lithium", set: "pack.joined=series; controller.max_voltage=60 V; cutoff.module.opens_at=25 V; fuse.max_voltage=58 V; -charger", least: danger, codes: weak + "|" + cutoff.CodePastSaving + "|" + battery.CodeSeriesUnequalCharge,
			why: "one full and one empty pack still show 25 V: the empty one is driven backwards", from: weakCell,
		},
		{
			name: "two tool packs in series charged as one", base: "lithium", set: "pack.joined=series; controller.max_voltage=60 V; cutoff.module.opens_at=33 V; fuse.max_voltage=58 V; " + foreign + "charger.voltage=42 V; charger.jack=terminals", least: fixFirst,
			codes: charge.CodeChargedInSeries + "|" + charge.CodeForeignCharger, why: "nothing watches how they share the volts", from: toolPacks,
		},
		{
			name: "two tool packs in parallel charged as one", base: "lithium", set: "pack.joined=parallel; " + foreign + "charger.jack=terminals", least: fixFirst,
			codes: charge.CodeChargedInParallel + "|" + charge.CodeForeignCharger + "|" + battery.CodeParallelEqualising, why: "the emptier one takes what the charger and its neighbour give", from: equalising,
		},
		{
			name: "two LiFePO4 packs in series on 12 V contacts", base: "iron", set: "pack.joined=series; cutoff.module.opens_at=22.4 V; charger.voltage=29.2 V", least: danger, codes: welds,
			why: "29 V on contacts for 12 V", from: cpscWeld,
		},
		{
			name: "two 6 V blocks in series in a 6 V vehicle", base: "labels6", set: "pack.joined=series; controller.kind=contacts", least: fixFirst, codes: welds,
			why: "twice the volts on one small motor", from: practice,
		},
	}
}

// contradictionHazards are labels and readings of which one must be wrong. A
// refusal that shows both is right; an answer must call them to be looked at.
func contradictionHazards() []hazard {
	c := func(name, base, set, why string, also ...string) hazard {
		codes := ""
		for _, code := range also {
			codes += "|" + code
		}
		return hazard{name: name, base: base, set: set, least: fixFirst, codes: disagree + codes, why: why, from: contradicts, refused: true}
	}
	return []hazard{
		c("14.8 V sold as LiFePO4", "iron", "pack.label=14.8 V 10 Ah; -pack.cells_in_series", "four cells of 3.7 V are the other lithium: 3.65 V chargers, other cutoffs"),
		c("Li-ion on the label, LiFePO4 in the setup", "iron", "pack.label=11.1 V 10 Ah Li-ion; -pack.cells_in_series", "the label names the other kind; 12.8 V and \"Li-ion\" are what many iron-phosphate packs print"),
		c("12.8 V called li-ion", "lithium", "pack.label=12.8 V 10 Ah; -pack.cells_in_series; -pack.strings; -pack.capacity", "12.8 V is four cells of LiFePO4; 16.8 V into these is a fire"),
		c("LiFePO4 on the label, li-ion in the setup", "lithium", "pack.label=12.8 V 10 Ah LiFePO4; -pack.cells_in_series; -pack.strings; -pack.capacity", "the label names the other kind"),
		c("LiFePO4 on the label, agm in the setup", "block", "pack.label=12.8 V 10 Ah LiFePO4", "lithium charged as lead-acid"),
		c("Li-Ion on the label, nimh in the setup", "lithium", "pack.chemistry=nimh; pack.label=18 V 5 Ah Li-Ion; -pack.cells_in_series; -pack.strings; -pack.capacity", "lithium charged as NiMH"),
		c("NiMH on the label, li-ion in the setup", "lithium", "pack.label=18 V 2.4 Ah NiMH; -pack.cells_in_series; -pack.strings; -pack.capacity", "NiMH charged as lithium"),
		c("SLA on the label, li-ion in the setup", "lithium", "pack.label=12 V 7 Ah sealed lead-acid; -pack.cells_in_series; -pack.strings; -pack.capacity", "a block charged as lithium"),
		c("18 V printed, ten cells told", "lithium", "pack.label=18 V 5 Ah; pack.cells_in_series=10; -pack.strings", "42 V or 21 V"),
		c("24 V printed, six lead-acid cells told", "pair", "pack.cells_in_series=6", "12 V or 24 V"),
		c("5S2P printed, four cells told", "lithium", "pack.label=5S2P 21700 4 Ah; pack.cells_in_series=4; -pack.strings; -pack.capacity", "16.8 V or 21 V"),
		c("12 V printed, three lead-acid cells told", "block", "pack.cells_in_series=3", "6 V or 12 V"),
		c("5 Ah printed, 50 Ah told", "lithium", "pack.capacity=50 Ah", "one of the two is ten times wrong"),
		c("7 Ah printed, 70 Ah told", "block", "pack.capacity=70 Ah", "one of the two is ten times wrong"),
		c("charger printed 14.7 V, told 29.4 V", "block", "charger.label=14.7 V 1.5 A DC; charger.voltage=29.4 V", "one of the two boils the block"),
		c("charger printed DC, told AC", "block", "charger.label=14.7 V 1.5 A DC; charger.output=ac", "one of the two heats the block", charge.CodeGivesAC),
		c("charger printed for lead-acid, told for lithium", "lithium", foreign+"charger.label=lead-acid battery charger 21 V 2 A; charger.made_for=li-ion", "one of the two is a fire"),
		c("five cells at 12.6 V said to be full", "lithium", "measured.rest_voltage=12.6 V; measured.hours_rested=12 h", "2.5 V per cell is as empty as may be, or it is a pack of three cells", charge.CodeTooLow),
		c("block at 11.6 V said to be full", "block", "measured.rest_voltage=11.6 V; measured.hours_rested=12 h", "below empty: flat, or a cell is dying"),
		c("LiFePO4 at 11 V said to be full", "iron", "measured.rest_voltage=11 V; measured.hours_rested=12 h", "2.75 V per cell is empty"),
		c("13.5 V under load, 12.0 V at rest", "block", "-pack.charge; measured.rest_voltage=12.0 V; measured.hours_rested=12 h; measured.loaded_voltage=13.5 V; measured.loaded_current=8 A", "no battery gives more volts under load"),
		c("15 A running, 5 A blocked", "block", "measured.loaded_current=15 A; measured.loaded_voltage=11.5 V; measured.blocked_current=5 A", "blocked wheels take the most"),
		c("ten hours out of 7 Ah at 9 A", "block", "measured.loaded_current=9 A; measured.loaded_voltage=11.8 V; measured.ride_time=10 h", "more than ten times what is in it"),
		c("no-load current above the stall current", "block", "motors.no_load_current=50 A; motors.stall_current=40 A", "a motor cannot"),
		c("winding of 1 Ohm and a stall current of 60 A at 12 V", "block", "motors.winding_resistance=1 Ohm; motors.stall_current=60 A", "12 V over 1 Ohm are 12 A"),
		c("a cutoff that closes below where it opens", "lithium", "cutoff.module.opens_at=16 V; cutoff.module.closes_at=15 V", "it would never open"),
		c("plain contacts with a soft start", "block", "controller.ramp=1 s", "contacts cannot"),
		c("12 V vehicle whose original battery is 24 V", "proper", "original.pack.label=24 V (two 12 V) 7 Ah", "everything is judged by twice or by half the volts"),
		c("18 km/h measured on gears for 5", "block", "measured.top_speed=18 km/h", "motor and gears as told give a third: a number is wrong, or somebody changed the gears"),
	}
}
