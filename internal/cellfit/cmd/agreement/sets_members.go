package main

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/cellfit"
)

// memberSets are the datasets whose fitted cells are members of a family; their
// ah is what the cell gives over five hours to its own end, and what is printed
// on it stands beside that.
var memberSets = []dataset{
	{
		folder: "energy21700_5ah", cell: "energy-21700-5ah", title: "21700 energy cell, 5.0 Ah", base: "li-ion",
		kind: "energy", printedAh: 5.0, cold: true, ah: 4.90, series: 1, massKg: 0.068, cutoffV: 2.65, ambientC: 25, isThermal: true, labWM2K: 21.2,
		source: answer.Source{
			ID:    "fit-energy-21700-5ah",
			Text:  "fitted to: PyBOP team, data shipped with PyBOP (examples/data/LG_M50_ECM: rate tests and pulses), 2023-2025, BSD 3-Clause (0.1C to 2C at 0 to 45 degC, recharges, pulses of 10 s on six cells)",
			Known: "computed from the measured curves",
		},
		fit: []string{
			"cc_0p1c_25c", "cc_0p5c_25c", "cc_1c_25c", "cc_0p1c_0c", "cc_0p5c_0c", "cc_1c_10c", "cc_2c_10c", "cc_1c_45c",
			"cccv_charge_1p67a_25c_after_1c", "cccv_charge_1p67a_10c_after_1c",
		},
		pulses:  []string{"pulses_25c", "pulses_0c"},
		options: cellfit.CellOptions{FitKiloJ: true, KiloJ: 15, FastKiloJ: 40, SlowKiloJ: 40, FitWells: true, CutoffV: 2.6, BottomSpreadV: 0.25, Searches: 4},
	},
	{
		folder: "energy18650_3p5ah", cell: "energy-18650-3ah5", title: "18650 energy cell, 3.5 Ah", base: "li-ion",
		kind: "energy", printedAh: 3.5, ah: 2.92, series: 1, massKg: 0.049, cutoffV: 2.5, ambientC: 20, isThermal: true, labWM2K: 33.2,
		source: answer.Source{
			ID:    "fit-energy-18650-3ah5",
			Text:  "fitted to: ARTS-Lab, University of South Carolina, dataset-LG-MJ1-INR-18650-cell-characterization, 2023-2024, CC BY-SA 4.0 (pulses and steps of 3 A with rests at 20 and 40 degC)",
			Known: "computed from the measured curves",
		},
		fit:     []string{"hppc_trace_20c", "hppc_trace_40c"},
		pulses:  []string{"hppc_pulses_20c", "hppc_pulses_40c"},
		options: cellfit.CellOptions{FitKiloJ: true, KiloJ: 15, FastKiloJ: 45, SlowKiloJ: 30, CutoffV: 2.5, BottomSpreadV: 0.25, Searches: 2},
	},
	{
		folder: "energy18650_3p0ah", cell: "energy-18650-3ah", title: "18650 energy cell, 3.0 Ah", base: "li-ion",
		kind: "energy", printedAh: 3.0, ah: 3.03, series: 1, massKg: 0.048, cutoffV: 2.5, ambientC: 24, isThermal: true, labWM2K: 54.6,
		source: answer.Source{
			ID:    "fit-energy-18650-3ah",
			Text:  "fitted to: Raj, Path Dependent Battery Degradation Dataset Part 1, University of Oxford, 2020, as example data of BatEst (Courtier, Howey), MIT (0.5C, C/24 and 0.5C charge at 24 degC)",
			Known: "computed from the measured curves",
		},
		fit:     []string{"cc_0p5c_24c", "pocv_discharge_0p125a_24c", "cccv_charge_1p5a_24c"},
		options: cellfit.CellOptions{FitWells: true, CutoffV: 2.5, BottomSpreadV: 0.25, Searches: 2},
	},
	{
		folder: "inr18650_2p6ah", cell: "middle-18650-2ah6", title: "18650 middle cell, 2.6 Ah", base: "li-ion",
		kind: "middle", printedAh: 2.6, ah: 2.70, series: 1, massKg: 0.046, cutoffV: 2.5, ambientC: 25, isThermal: true, labWM2K: 37.6,
		source: answer.Source{
			ID:    "fit-middle-18650-2ah6",
			Text:  "fitted to: Wang et al., Li-ion Battery Electro-Thermal Dataset, 2025, MIT (C/20 to 2C, pulses, steps of 0 to 6 A at 25 degC of two cells)",
			Known: "computed from the measured curves",
		},
		fit: []string{
			"cell1_cc_c20_25c", "cell1_cc_0p5c_25c", "cell1_cc_1c_25c", "cell1_cc_2c_25c", "cell1_pulse_1p3a_10min_25c",
			"cell2_cc_0p5c_25c", "cell2_cc_1c_25c", "cell2_cc_2c_25c",
		},
		units:   []int{0, 0, 0, 0, 0, 1, 1, 1},
		options: cellfit.CellOptions{FitWells: true, CutoffV: 2.5, BottomSpreadV: 0.25, Searches: 2},
	},
	{
		folder: "power18650_3ah_aging", cell: "power-18650-3ah-b", title: "18650 power cell, 3.0 Ah, other specimens", base: "li-ion", like: "power-18650-3ah",
		kind: "power", printedAh: 3.0, ah: 3.00, series: 1, massKg: 0.048, cutoffV: 2.5, ambientC: 21, isThermal: true, labWM2K: 18.5,
		source: answer.Source{
			ID:    "fit-power-18650-3ah-b",
			Text:  "fitted to: ARTS-Lab (Flemming II, Downey, Anthony, Buren), Dataset Cycling with Strain Monitoring for Samsung 30Q Cell, Dataset-1, 2024-2026, CC BY-SA 4.0 (1C at cycles 2 and 100, 1C charge at cycle 100, about 21 degC)",
			Known: "computed from the measured curves",
		},
		fit:   []string{"cella_cc_1c_cycle002", "cellc_cc_1c_cycle002", "cella_cc_1c_cycle100", "cellc_cccv_charge_1c_cycle100"},
		units: []int{0, 1, 2, 3},
		// Charge at 1C over how full it began by the volts at rest, over that of cycle 2:
		// 0.958 full then, 0.912 at cycle 500 of cell A and 0.907 at cycle 660 of cell C,
		// whose charges ended sooner. And all of the resistance: what the first sample
		// shows has grown by 27 to 93 %, which is about 0.6 as much of what a lasting
		// current meets in the new cell.
		health: map[string]float64{
			"cellc_cc_1c_cycle002": 1.012, "cella_cc_1c_cycle100": 0.928, "cella_cc_1c_cycle500": 0.852, "cella_cccv_charge_1c_cycle300": 0.857,
			"cellc_cc_1c_cycle300": 0.906, "cellc_cc_1c_cycle660": 0.719, "cellc_cccv_charge_1c_cycle100": 0.956, "cellc_cccv_charge_1c_cycle660": 0.719,
		},
		grown: map[string]float64{
			"cella_cc_1c_cycle500": 1.46, "cella_cccv_charge_1c_cycle300": 1.22, "cellc_cc_1c_cycle300": 1.16,
			"cellc_cc_1c_cycle660": 1.55, "cellc_cccv_charge_1c_cycle660": 1.55,
		},
		options: cellfit.CellOptions{CutoffV: 2.5, BottomSpreadV: 0.25, UnitShare: []float64{1, 1.02, 0.928, 0.956}, Searches: 2, OhmSpread: 0.2, Ohms: firstSamples},
	},
	{
		folder: "lfp26650_2p6ah", cell: "phosphate-26650-2ah6", title: "26650 iron phosphate cell, 2.6 Ah", base: "lifepo4",
		kind: "energy", printedAh: 2.6, ah: 2.20, series: 1, massKg: 0.082, cutoffV: 2.5, ambientC: 20, isThermal: true,
		source: answer.Source{
			ID:    "fit-phosphate-26650-2ah6",
			Text:  "fitted to: ARTS-Lab (Downey), dataset-K2-26650-cell-characterization, 2023-2026, CC BY-SA 4.0 (pulses of 6 A and steps of 3 A with rests at 20 and 40 degC)",
			Known: "computed from the measured curves",
		},
		fit: []string{"hppc_trace_20c", "hppc_trace_40c"},
		// On a curve as flat as this one a rest voltage does not tell the charge:
		// the traces have the same pulses with the charge counted.
		full:    []string{"hppc_trace_20c", "hppc_trace_40c", "cc_1c_20c", "cc_1c_40c"},
		options: cellfit.CellOptions{FitKiloJ: true, KiloJ: 30, FastKiloJ: 40, SlowKiloJ: 40, CutoffV: 2.4, LikelyFullAh: 2.26, FullAhSpread: 0.01, RestSpreadV: 0.08, BottomSpreadV: 0.6, Searches: 2},
	},
	{
		folder: "lfp18650_2ah", cell: "phosphate-18650-2ah", title: "18650 iron phosphate cell, 2 Ah", base: "lifepo4",
		kind: "power", printedAh: 2, ah: 2.05, series: 1, massKg: 0.042, cutoffV: 2.0, ambientC: 25,
		source: answer.Source{
			ID:    "fit-phosphate-18650-2ah",
			Text:  "fitted to: About:Energy Limited, NMC111|Graphite & LFP|Graphite Cell Parameterisations for Battery Parameter eXchange (BPX), 2022-2023, CC BY-SA 4.0 (C/20, C/2 and 2C at 25 degC)",
			Known: "computed from the measured curves",
		},
		fit:     []string{"cc_c20_25c", "cc_0p5c_25c", "cc_2c_25c"},
		full:    []string{"cc_c20_25c", "cc_0p5c_25c", "cc_2c_25c"},
		options: cellfit.CellOptions{FitWells: true, CutoffV: 2.0, RestSpreadV: 0.08, BottomSpreadV: 0.25, Searches: 2, Ohms: firstMilliseconds},
	},
}

// One current from full to empty does not tell resistance from rest curve. What
// the first sample after the load shows (1 s: 29.4 and 32.0 mOhm at cycle 2) says
// how much comes at once, at full charge; at half charge the same cell model has
// as much in its pulse tests (34.3 and 34.5 mOhm at 90 and 50 %).
var firstSamples = []cellfit.OhmAt{
	{Charge: 0.97, Ohm: cellfit.Estimate{Value: 0.0307, Sigma: 0.002}},
	{Charge: 0.5, Ohm: cellfit.Estimate{Value: 0.0307, Sigma: 0.003}},
}

// The same of the iron phosphate cell: 19.3 mOhm after 2 ms.
var firstMilliseconds = []cellfit.OhmAt{
	{Charge: 0.97, Ohm: cellfit.Estimate{Value: 0.0193, Sigma: 0.001}},
	{Charge: 0.5, Ohm: cellfit.Estimate{Value: 0.0193, Sigma: 0.002}},
}
