package trials_test

import "example.org/packcheck/charge"

const (
	volts   = charge.CodeVoltsTooHigh + "|" + charge.CodeEndVoltsUnknown + "|" + charge.CodeWrongChemistry
	wrong   = charge.CodeWrongChemistry + "|" + charge.CodeVoltsTooHigh
	cold    = charge.CodeTooCold + "|" + charge.CodePlaceNoGood
	hot     = charge.CodeTooHot + "|" + charge.CodePlaceNoGood
	foreign = "charger.came_with_pack=false; "
)

// chargerHazards are chargers that do not belong to the pack, or charge where
// nobody should.
func chargerHazards() []hazard {
	return []hazard{
		{
			name: "12 V lead-acid charger on three lithium cells", base: "labels", set: "pack.chemistry=li-ion; pack.label=11.1 V 5 Ah Li-ion; cutoff.pack.opens_at=9.6 V; charger.label=14.7 V 1 A DC; charger.made_for=lead-acid", least: danger, codes: wrong,
			why: "4.9 V per cell: fire", from: "arithmetic: 0.6 to 0.8 V per cell too much (computed); " + overFull,
		},
		{
			name: "24 V lead-acid charger on a tool pack", base: "lithium", set: foreign + "charger.made_for=lead-acid; charger.voltage=29.4 V", least: danger, codes: wrong,
			why: "5.9 V per cell", from: overFull,
		},
		{
			name: "24 V lead-acid charger on a tool pack, said to have come with it", base: "lithium", set: "charger.made_for=lead-acid; charger.voltage=29.4 V", least: danger, codes: wrong,
			why: "the print on it says otherwise", from: overFull,
		},
		{
			name: "24 V charger of unknown purpose on a tool pack", base: "lithium", set: foreign + "-charger.made_for; charger.voltage=24 V", least: danger, codes: volts,
			why: "4.8 V per cell whatever it was made for", from: overFull,
		},
		{
			name: "12 V lead-acid charger on a tool pack", base: "lithium", set: foreign + "charger.made_for=lead-acid; charger.voltage=14.7 V", least: fixFirst, codes: charge.CodeWrongChemistry,
			why: "it does not charge it, and the next one that is tried will", from: toolPacks,
		},
		{
			name: "six-cell lithium charger on five cells", base: "lithium", set: foreign + "charger.voltage=25.2 V", least: danger, codes: volts,
			why: "5.04 V per cell", from: overFull,
		},
		{
			name: "a charger somewhere from 20 to 25.2 V on five cells", base: "lithium", set: foreign + "charger.voltage=20 to 25.2 V", least: fixFirst, codes: volts,
			why: "most of the range overcharges", from: overFull,
		},
		{
			name: "lithium charger of 21 V on a 12 V block", base: "block", set: "charger.made_for=li-ion; charger.voltage=21 V", least: danger, codes: wrong,
			why: "3.5 V per cell: it boils and gives off hydrogen", from: blockSheets,
		},
		{
			name: "24 V charger on a 12 V block", base: "block", set: "charger.voltage=29.4 V", least: danger, codes: volts,
			why: "4.9 V per cell: it boils and gives off hydrogen", from: blockSheets,
		},
		{
			name: "12 V charger on a 6 V block", base: "labels6", set: "charger.label=14.7 V 1 A DC; charger.made_for=lead-acid; charger.stops=never", least: danger, codes: volts,
			why: "4.9 V per cell", from: blockSheets,
		},
		{
			name: "12 V charger on two blocks in series", base: "pair", set: "charger.voltage=14.7 V", least: fixFirst, codes: charge.CodeVoltsTooLow,
			why: "it never fills the pair; the blocks sulphate", from: blockSheets,
		},
		{
			name: "lithium-ion charger on four LiFePO4 cells", base: "iron", set: "charger.made_for=li-ion; charger.voltage=16.8 V", least: danger, codes: wrong,
			why: "4.2 V per cell of at most 3.65 V", from: ironSheets,
		},
		{
			name: "lead-acid charger with a repair mode on LiFePO4", base: "iron", set: "charger.made_for=lead-acid; charger.voltage=15 V", least: fixFirst, codes: wrong,
			why: "3.75 V per cell is over 3.65 V", from: "arithmetic: 15.0 V = 3.75 V per cell (computed)",
		},
		{
			name: "five-cell charger on four LiFePO4 cells", base: "iron", set: "charger.made_for=lifepo4; charger.voltage=18.25 V", least: danger, codes: volts,
			why: "4.56 V per cell", from: ironSheets,
		},
		{
			name: "a lithium charger that never stops", base: "lithium", set: foreign + "charger.stops=never", least: danger, codes: charge.CodeNeverStops,
			why: "lithium takes no trickle charge", from: "junleepower.com, hysincere.com: no trickle afterwards (copy)",
		},
		{
			name: "a lithium charger of which nobody knows whether it stops", base: "lithium", set: foreign + "-charger.stops", least: fixFirst, codes: charge.CodeStopUnknown + "|" + charge.CodeForeignCharger,
			why: "the same may be true", from: "junleepower.com, hysincere.com: no trickle afterwards (copy)",
		},
		{
			name: "a charger for NiMH on lithium", base: "lithium", set: foreign + "charger.made_for=nimh; charger.stops=never; charger.voltage=24 V", least: danger, codes: wrong,
			why: "it pushes its current at any volts", from: toolPacks,
		},
		{
			name: "a lithium charger on NiMH", base: "lithium", set: noConverter + "pack.chemistry=nimh; pack.label=18 V 3 Ah NiMH; -pack.cells_in_series; -pack.strings; -pack.capacity; cutoff.module.opens_at=15 V", least: fixFirst, codes: charge.CodeWrongChemistry,
			why: "constant volts do not end the charge of NiMH: it heats and vents", from: "VARTA handbook p. 49: end of charge 1.45 V at 0.1 C (copy, mirror); " + practice,
		},
		{
			name: "a laptop supply on a tool pack", base: "lithium", set: foreign + "charger.made_for=power supply; charger.voltage=19 V; charger.current=4.7 A", least: danger, codes: charge.CodePowerSupply,
			why: "nothing bounds the current and nothing ends it", from: cpscPacks,
		},
		{
			name: "a 24 V power supply on a tool pack", base: "lithium", set: foreign + "charger.made_for=power supply; charger.voltage=24 V; charger.current=5 A", least: danger, codes: charge.CodePowerSupply + "|" + volts,
			why: "4.8 V per cell without an end", from: overFull,
		},
		{
			name: "a 15 V power supply on a block", base: "block", set: "charger.made_for=power supply; charger.voltage=15 V; charger.current=5 A; charger.stops=never", least: fixFirst, codes: charge.CodePowerSupply + "|" + charge.CodeNeverStops,
			why: "cycle volts for ever dry the block out", from: blockSheets,
		},
		{
			name: "a 12 V power supply of 30 A on a small lithium pack", base: "labels", set: "pack.chemistry=li-ion; pack.label=11.1 V 2 Ah Li-ion; cutoff.pack.opens_at=9.6 V; charger.made_for=power supply; charger.voltage=13.8 V; charger.current=30 A", least: danger, codes: charge.CodePowerSupply + "|" + volts,
			why: "4.6 V per cell and fifteen times its charging current", from: overFull,
		},
		{
			name: "an AC adaptor on a tool pack", base: "lithium", set: foreign + "charger.output=ac", least: danger, codes: charge.CodeGivesAC,
			why: "half of every wave drives the cells backwards", from: practice,
		},
		{
			name: "an AC adaptor on a block", base: "block", set: "charger.output=ac", least: danger, codes: charge.CodeGivesAC,
			why: "it heats the block and charges nothing", from: practice,
		},
		{
			name: "a reversed plug on a tool pack", base: "lithium", set: "charger.polarity=centre negative; charger.jack_polarity=centre positive", least: danger, codes: charge.CodePolarityReversed,
			why: "it drives the cells backwards, or burns the charger", from: practice,
		},
		{
			name: "a reversed plug on a block", base: "block", set: "charger.polarity=centre negative", least: danger, codes: charge.CodePolarityReversed,
			why: "pack and charger in series into a short circuit", from: cpscCharger,
		},
		{
			name: "charging lithium at -3 C", base: "lithium", set: "outing.air=-3 C; outing.charged_at=-3 C; pack.temperature=-3 C", least: danger, codes: cold,
			why: "metallic lithium plates out; the short comes later", from: gates,
		},
		{
			name: "charging lithium at -15 C", base: "lithium", set: "outing.air=-15 C; outing.charged_at=-15 C; pack.temperature=-15 C", least: danger, codes: cold,
			why: "the same, worse", from: jeita,
		},
		{
			name: "charging LiFePO4 at -5 C", base: "iron", set: "outing.air=-5 C; outing.charged_at=-5 C; pack.temperature=-5 C", least: danger, codes: cold,
			why: "the same for all graphite cells", from: gates,
		},
		{
			name: "charging lithium where it may freeze", base: "lithium", set: "outing.air=-10 to 20 C; outing.charged_at=-10 to 20 C; -pack.temperature", least: fixFirst, codes: cold,
			why: "a third of the range plates lithium", from: gates,
		},
		{
			name: "charging lithium at 58 C", base: "lithium", set: "outing.air=58 C; outing.charged_at=58 C; pack.temperature=58 C", least: danger, codes: hot,
			why: "above 55 C no charger of its kind starts", from: gates,
		},
		{
			name: "tool pack charged through the vehicle's jack", base: "lithium", set: foreign + "charger.jack=vehicle", least: danger, codes: charge.CodeVehicleJack,
			why: "the jack leads past whatever watches the cells, and takes the old charger too", from: toolPacks,
		},
		{
			name: "tool pack charged through the vehicle's jack by its old charger", base: "swap", set: "charger.label=14.7 V 1 A DC; charger.made_for=lead-acid; charger.jack=vehicle", least: danger, codes: charge.CodeVehicleJack + "|" + charge.CodeWrongChemistry,
			why: "the same with the wrong charger", from: toolPacks,
		},
		{
			name: "20 A into a 5 Ah tool pack", base: "lithium", set: foreign + "charger.current=20 A", least: danger, codes: charge.CodeCurrentTooHigh,
			why: "four times the capacity in an hour, twice the most of power cells", from: "INR18650-P28A: at most 6 A of 2.8 Ah (copy)",
		},
		{
			name: "12 A into a 5 Ah tool pack", base: "lithium", set: foreign + "charger.current=12 A", least: fixFirst, codes: charge.CodeCurrentTooHigh,
			why: "2.4 C, above the most of power cells", from: "INR18650-P28A: at most 6 A of 2.8 Ah (copy)",
		},
		{
			name: "10 A into a 7 Ah block", base: "block", set: "charger.current=10 A", least: fixFirst, codes: charge.CodeCurrentTooHigh,
			why: "1.4 C of at most 0.3 C", from: blockSheets,
		},
		{
			name: "20 A car charger on a 4.5 Ah block", base: "labels6", set: "charger.made_for=lead-acid; charger.voltage=7.3 V; charger.current=20 A; charger.stops=by itself", least: fixFirst, codes: charge.CodeCurrentTooHigh,
			why: "4.4 C of at most 0.3 C", from: blockSheets,
		},
		{
			name: "a bare adaptor on a tool pack, nothing printed of lithium", base: "lithium", set: "-charger; charger.label=21 V 2 A DC", least: fixFirst, codes: charge.CodePurposeUnknown + "|" + charge.CodeStopUnknown + "|" + charge.CodeForeignCharger,
			why: "nobody knows that it ends the charge", from: cpscPacks,
		},
		{
			name: "a 24 V charger printed AC on a tool pack", base: "lithium", set: "-charger; charger.label=24 V 1 A AC", least: danger, codes: charge.CodeGivesAC + "|" + volts,
			why: "the print says it", from: practice,
		},
		{
			name: "a block left for weeks on a charger that never stops at 16 V", base: "block", set: "charger.voltage=16 V; charger.stops=never", least: fixFirst, codes: charge.CodeNeverStops + "|" + charge.CodeVoltsTooHigh,
			why: "2.67 V per cell for ever: dry, hot, hydrogen", from: blockSheets,
		},
	}
}
