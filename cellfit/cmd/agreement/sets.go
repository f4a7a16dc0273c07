package main

import "example.org/packcheck/cellfit"

// dataset is one folder of measured curves, all of one kind of cell.
type dataset struct {
	folder   string // under the data directory
	cell     string // name of the fitted chemistry
	title    string
	base     string // profile to start from
	ah       float64
	series   int
	massKg   float64
	cutoffV  float64 // of the pack
	ambientC float64
	fit      []string // files the cell is fitted to
	full     []string // files that began full although their first row is under load
	options  cellfit.CellOptions
}

var datasets = []dataset{
	{
		folder: "samsung30q_18650_3ah", cell: "cell-18650-3ah", title: "18650 power cell, 3.0 Ah", base: "li-ion",
		ah: 3, series: 1, massKg: 0.048, cutoffV: 2.5, ambientC: 22,
		fit:     []string{"s001_cc_c10_rt", "s001_cc_1c_rt", "s001_cc_3c_rt", "dnn01_hppc_1c_20c_trace", "dnn01_hppc_2c_20c_trace", "dnn01_hppc_1c_40c_trace"},
		options: cellfit.CellOptions{FitKiloJ: true, KiloJ: 15, Unit: []int{0, 0, 0, 1, 1, 1}, CutoffV: 2.5},
	},
	{
		folder: "panasonic18650pf_2p9ah", cell: "cell-18650-2ah9", title: "18650 cell, 2.9 Ah", base: "li-ion",
		ah: 2.9, series: 1, massKg: 0.048, cutoffV: 2.5, ambientC: 25,
		fit:     []string{"c20_discharge_25c", "cc_1c_25c_fresh", "cccv_1c_charge_25c", "drive_us06_25c_first400s_1s_bins", "hppc_pulses_25c", "hppc_pulses_0c"},
		full:    []string{"cc_1c_25c_fresh"},
		options: cellfit.CellOptions{FitKiloJ: true, FitWells: true, CutoffV: 2.45},
	},
	{
		folder: "leaf_lmo_pouch_33ah", cell: "cell-lmo-pouch", title: "pouch cell, manganese spinel, 33 Ah", base: "li-ion",
		ah: 33, series: 1, massKg: 0.8, cutoffV: 3.0, ambientC: 25,
		fit:     []string{"cell_cc_1c_25c", "cell_cc_3c_25c", "cell_cccv_charge_0p46c_after_1c", "cell_hppc_25c"},
		options: cellfit.CellOptions{RestSpreadV: 0.4},
	},
	{
		folder: "leaf_6s_pack_65ah", cell: "pack-lmo-6s", title: "6S pack of manganese spinel pouch cells, 65 Ah", base: "li-ion",
		ah: 65, series: 6, massKg: 12, cutoffV: 20.2, ambientC: 22,
		fit:     []string{"pack6s_cc_0p3c_22c", "pack6s_cc_2p0c_22c"},
		options: cellfit.CellOptions{RestSpreadV: 0.4},
	},
}
