package charge

import "example.org/packcheck/answer"

// Sources returns the sources of the limits and constants that this package
// itself defines, sorted by ID. Limits of a chemistry carry the IDs of the
// chemistry package.
func Sources() []answer.Source {
	return []answer.Source{
		{
			ID:    "charge-current-sheets",
			Text:  "the greatest charging currents on sheets at hand: 5.6 A of a sealed 12 V 14 Ah block, 6 A of an INR18650-P28A of 2.8 Ah; of lithium iron phosphate 1C, from memory",
			Known: "copy",
		},
		{
			ID:    "charger-recalls-2000",
			Text:  "reports of two US recalls of ride-on toy chargers about the year 2000 (294,000 and 113,000): chargers and wires overheated, five house fires",
			Known: "copy of a news report",
		},
		{
			ID:    "charging-in-toy",
			Text:  "IEC 62115:2003, 14.12: charging in the toy only where the battery is fixed in it, polarity is assured and it cannot be driven while charging",
			Known: "copy of a digest",
		},
		{
			ID:    "coldcharge-ic",
			Text:  "TI BQ25882, register 08h (JEITA defaults): 0 to 10 degC 20 % of the set current; 45 to 60 degC 4.00 V per cell; TI BQ76942: no charging at or above 55 or at or below 0 degC",
			Known: "copy",
		},
		{
			ID:    "common-charging",
			Text:  "common practice, no published source: wait until a pack has the temperature of the room, charge on a surface that does not burn, feel for heat, charge separate packs one at a time",
			Known: "common practice",
		},
		{
			ID:    "cpsc-charging",
			Text:  "US Consumer Product Safety Commission, notice on lithium-ion powered personal vehicles, 4 September 2025: be present while charging, never while asleep, only the supplied charger, no packs reworked by unqualified persons",
			Known: "copy",
		},
		{
			ID:    "cpsc-universal",
			Text:  "US Consumer Product Safety Commission, 2024, on universal chargers: 156 reports of fire or heat in sixteen months; do not use one that was not tested with the device",
			Known: "copy",
		},
		{
			ID:    "diagnosis-odds",
			Text:  "likelihoods of what a flat, worn, badly connected or shorted sealed battery shows: estimates of ours from rested voltage tables and internal resistances, from memory, no published source",
			Known: "memory",
		},
		{
			ID:    "faraday-water",
			Text:  "Faraday's law: 1 Ah of overcharge splits 0.336 g of water in each cell (18.015 g/mol, two electrons, 96485 C/mol); sealed cells turn most of it back at small currents",
			Known: "computed",
		},
		{
			ID:    "float-residual",
			Text:  "current that a full sealed lead-acid battery goes on taking: about 1 mA per Ah at 2.275 V per cell and 25 degC, times 3 for every 0.1 V, doubling every 10 K, uncertain by a factor of 3 either way; of the water split a twentieth is lost on float, perhaps half at cycle volts; about 8 g of water per Ah and cell",
			Known: "memory",
		},
		{
			ID:    "jack-practice",
			Text:  "common practice, no published source: a vehicle's charging jack leads straight to the battery wires, past any charge protection, and was sized for the supplied lead-acid charger",
			Known: "common practice",
		},
		{
			ID:    "keeping-spread",
			Text:  "makers' sheets of sealed lead-acid: 91/82/64 % left after 3/6/12 months, 80/60 % after 6/12, 95/90/81 % after 1/2/3; lithium-ion 2 to 3 % a month, cell specification more than 95 % left after 30 days",
			Known: "copy",
		},
		{
			ID:    "laptop-volts",
			Text:  "common practice, no published source: laptop supplies give 18.5 to 20 V",
			Known: "common practice",
		},
		{
			ID:    "lead-acceptance",
			Text:  "maker's data sheet of a sealed 12 V 5 Ah block: at cycle voltage and 0.25 to 0.3C it is full in 16 h after a full discharge and in 10 h after half",
			Known: "copy",
		},
		{
			ID:    "lead-charge-windows",
			Text:  "data sheets of sealed 12 V blocks: cycle 14.4 to 15.0 V, float 13.4 to 13.9 V per block at 25 degC; compensation not needed from 15 to 35 degC",
			Known: "copy",
		},
		{
			ID:    "lead-freezing",
			Text:  "freezing point of flooded lead-acid electrolyte, about -7 degC discharged (density 1.12) to -58 degC charged (1.27)",
			Known: "memory",
		},
		{
			ID:    "lead-storage-volts",
			Text:  "battery supplier's notes: never below 2 V per cell in store; freshening charge after six months at the latest at 25 degC",
			Known: "copy",
		},
		{
			ID:    "lead-sulfation",
			Text:  "celltech.se, and Hund, Sandia, on sealed lead-acid: left discharged it grows hard sulfate crystals and loses capacity for good; incomplete recharge is the main cause of early loss",
			Known: "copy",
		},
		{
			ID:    "lithium-cc-cv",
			Text:  "charging practice for lithium-ion cells: precharge below about 3.0 V at no more than 0.1C, constant current, then 4.20 V with 1 % either way, end at 0.02 to 0.1C, no trickle afterwards",
			Known: "copy",
		},
		{
			ID:    "lithium-charge-hours",
			Text:  "measured hours over computed ones to 5 % of the capacity per hour, ten charges at 0.33C to 1C and 0 to 45 degC of five cells (Kollmeyer 2018, CC BY 4.0; Raj 2020, MIT; PyBOP LG_M50_ECM, BSD 3-Clause; ARTS-Lab, Dataset Cycling with Strain Monitoring, CC BY-SA 4.0): 0.98 to 1.12 with the fitted cell, 1.06 to 1.23 for three of an ageing cell on a charger whose volts hunt, 0.90 to 1.31 with the profile li-ion; to 80 % 0.93 to 1.05",
			Known: "computed from the measured curves",
		},
		{
			ID:    "lithium-precharge",
			Text:  "TI BQ25895 and BQ25308 data sheets: fast charge only above 3.0 V per cell, charging inhibited far below to keep a dangerously discharged battery from being charged",
			Known: "copy",
		},
		{
			ID:    "phosphate-cell-sheet",
			Text:  "26650 lithium iron phosphate cell specifications: charge 3.65 V, cut-off 2.0 V, nominal 3.2 V",
			Known: "copy",
		},
		{
			ID:    "plain-adaptor",
			Text:  "an unregulated transformer adaptor can stand at up to one and a half times its printed volts without load",
			Known: "memory",
		},
		{
			ID:    "series-string-rule",
			Text:  "charging must stop when any cell is full: in a string the smallest cell fills first and is overcharged (re-wrenches list, 19 December 2014; encyclopaedia on battery balancing)",
			Known: "copy",
		},
		{
			ID:    "storage-lithium",
			Text:  "common practice, no published source: lithium packs are stored cool and at about half charge, with the pack off tool, charger and vehicle",
			Known: "common practice",
		},
		{
			ID:    "supply-band",
			Text:  "common practice, no published source: a regulated supply holds its volts within 5 %, a battery charger within 2 %",
			Known: "common practice",
		},
		{
			ID:    "tool-pack-rule",
			Text:  "general warnings on battery tool use and care, IEC 62841-1: recharge only with the charger that the maker specifies; no modified packs",
			Known: "memory; the tool makers' association says the same (copy)",
		},
	}
}
