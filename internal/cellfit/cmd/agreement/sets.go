package main

import (
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/cellfit"
)

// dataset is one folder of measured curves, all of one kind of cell, and how
// that cell is fitted.
type dataset struct {
	folder string // under the data directory, as a pattern
	cell   string // name of the fitted chemistry
	title  string
	base   string // built-in profile to start from
	like   string // member that is another specimen of the same cell, to start from instead
	ah     float64
	series int
	massKg float64
	// Of a member of a family: what kind of cell it is, and what is printed on
	// it. Empty: fitted for the table of agreement alone.
	kind      chemistry.Kind
	printedAh float64
	cutoffV   float64 // of the whole pack
	ambientC  float64
	source    answer.Source
	fit       []string // files the cell is fitted to; all others are only compared
	pulses    []string // tables of pulses it is fitted to as well
	units     []int    // per fitted file: which specimen
	full      []string // files that began full although their first row is under load
	// The share of its first capacity that the specimen still had, where the
	// data say that it changed from run to run: by the beginning of the file's
	// name, else by the current of the run (which the currents' order ties to
	// the number of cycles).
	health    map[string]float64
	healthAtA chemistry.Curve
	// The factor on its resistance when new, by the beginning of the file's name,
	// where that was measured apart; 1 elsewhere.
	grown map[string]float64
	// Charges whose counter does not close, each with the discharge before: the
	// charge is scaled to put back what that took out.
	closesWith map[string]string
	// Lead-acid recharges, each with the discharge before: run with package
	// charge, which computes how such a block accepts charge. The acceptance was
	// fitted to the one named in accepted.
	recharges map[string]string
	accepted  string
	cold      bool // there are discharges at 10 degC or less
	// How the laboratory cooled a member, which is none of the cell's own; found
	// by -refit (it prints it) and used to run along the curves alone.
	labWM2K   float64
	isThermal bool   // the temperatures were logged, so that heat can be fitted
	stillAir  string // how the names of curves begin that were taken in a room without a fan; the others are from chambers
	options   cellfit.CellOptions
}

// datasets are all of them.
var datasets = append(slices.Clone(tableSets), memberSets...)

// vrlaFade is the capacity that the lead-acid block lost from one cycle to the
// next, as a share of the first. The currents were run in falling order on
// successive cycles, so rate and age are mixed in the data; the fit gives each
// fitted run a capacity of its own, and these lie on a line with this slope.
const vrlaFade = 0.025

// tableSets are the others, and two members that were here first.
var tableSets = []dataset{
	{
		folder: "*_18650_3ah", cell: "power-18650-3ah", title: "18650 power cell, 3.0 Ah", base: "li-ion",
		kind: "power", printedAh: 3, ah: 3.05, series: 1, massKg: 0.048, cutoffV: 2.5, ambientC: 22, isThermal: true, labWM2K: 16.5,
		source: answer.Source{
			ID:    "fit-18650-3ah",
			Text:  "fitted to: ARTS-Lab, University of South Carolina, Dataset Electrothermal Deformation Characterization for Samsung 30Q Cell, 2023-2026, CC BY-SA 4.0 (constant current C/10, 1C, 3C of one specimen; pulse tests 1C and 2C at 20 and 40 degC of another)",
			Known: "computed from the measured curves",
		},
		fit:      []string{"s001_cc_c10_rt", "s001_cc_1c_rt", "s001_cc_3c_rt", "dnn01_hppc_1c_20c_trace", "dnn01_hppc_2c_20c_trace", "dnn01_hppc_1c_40c_trace"},
		units:    []int{0, 0, 0, 1, 1, 1},
		stillAir: "s001",
		pulses:   []string{"dnn01_hppc_1c_20c_pulses", "dnn01_hppc_1c_40c_pulses"},
		// The fit finds that the specimen of the pulse tests holds less than that
		// of the constant currents. Between 20 and 40 degC one activation energy
		// is all that shows.
		health:  map[string]float64{"dnn01": 0.963},
		options: cellfit.CellOptions{FitKiloJ: true, KiloJ: 9, CutoffV: 2.5},
	},
	{
		folder: "*_2p9ah", cell: "energy-18650-2ah9", title: "18650 energy cell, 2.9 Ah", base: "li-ion",
		kind: "energy", printedAh: 2.9, cold: true, ah: 2.95, series: 1, massKg: 0.048, cutoffV: 2.5, ambientC: 25, isThermal: true, labWM2K: 32.7,
		source: answer.Source{
			ID:    "fit-18650-2ah9",
			Text:  "fitted to: Kollmeyer, Panasonic 18650PF Li-ion Battery Data, Mendeley Data V1, doi 10.17632/wykht8y7tg.1, 2018, CC BY 4.0 (C/20, 1C, 1C charge, 400 s of a drive cycle at 25 degC; pulses at 25 and 0 degC)",
			Known: "computed from the measured curves",
		},
		fit:    []string{"c20_discharge_25c", "cc_1c_25c_fresh", "cccv_1c_charge_25c", "drive_us06_25c_first400s_1s_bins"},
		pulses: []string{"hppc_pulses_25c", "hppc_pulses_0c"},
		full:   []string{"cc_1c_25c_fresh"},
		// The tester counted 2.997 Ah out and 2.614 Ah back, although the cell
		// rested at 4.16 V afterwards.
		closesWith: map[string]string{"c20_charge_25c": "c20_discharge_25c"},
		options:    cellfit.CellOptions{FitKiloJ: true, FastKiloJ: 55, SlowKiloJ: 30, FitWells: true, CutoffV: 2.45, BottomSpreadV: 0.25},
	},
	{
		folder: "*_lmo_pouch_33ah", cell: "cell-lmo-pouch", title: "pouch cell, manganese spinel, 33 Ah", base: "li-ion",
		ah: 33, series: 1, massKg: 0.8, cutoffV: 3.0, ambientC: 25,
		source: answer.Source{
			ID:    "fit-lmo-pouch",
			Text:  "fitted to: Wiggins (BatterySim), Equivalent circuit model, data files of 2013 cell tests at ORNL, 2017-2020, MIT (1C, 3C, 0.46C charge, pulses at 25 degC)",
			Known: "computed from the measured curves",
		},
		fit:     []string{"cell_cc_1c_25c", "cell_cc_3c_25c", "cell_cccv_charge_0p46c_after_1c"},
		pulses:  []string{"cell_hppc_25c"},
		options: cellfit.CellOptions{RestSpreadV: 0.4},
	},
	{
		folder: "*_6s_pack_65ah", cell: "pack-lmo-6s", title: "6S pack of manganese spinel pouch cells, 65 Ah", base: "li-ion",
		ah: 65, series: 6, massKg: 12, cutoffV: 20.2, ambientC: 22, isThermal: true,
		source: answer.Source{
			ID:    "fit-lmo-6s",
			Text:  "fitted to: Wiggins (BatterySim), Equivalent circuit model, data files of 2017 pack tests at ORNL, MIT (0.3C and 2C of a 6S pack)",
			Known: "computed from the measured curves",
		},
		fit:     []string{"pack6s_cc_0p3c_22c", "pack6s_cc_2p0c_22c"},
		options: cellfit.CellOptions{RestSpreadV: 0.4},
	},
	{
		folder: "vrla_12v_17ah", cell: "block-vrla-17ah", title: "sealed lead-acid block, 12 V 17 Ah", base: "agm",
		ah: 17, series: 6, massKg: 6, cutoffV: 10.8, ambientC: 23,
		source: answer.Source{
			ID:    "fit-vrla-17ah",
			Text:  "fitted to: Sulzer et al., Faster Lead-Acid Battery Simulations from Porous-Electrode Theory, Part II (code and data), 2019, BSD 3-Clause (0.53, 1.03, 2.04, 3.04 A with the rests after them)",
			Known: "computed from the measured curves",
		},
		fit:   []string{"unit_a_cc_3p0a", "unit_a_cc_2p0a", "unit_a_cc_1p0a", "unit_a_cc_0p5a"},
		units: []int{0, 1, 2, 3},
		healthAtA: chemistry.Curve{
			X: []float64{0.5, 1, 1.5, 2, 2.5, 3},
			Y: []float64{1 - 6*vrlaFade, 1 - 4.5*vrlaFade, 1 - 3*vrlaFade, 1 - 2*vrlaFade, 1 - vrlaFade, 1},
		},
		// The second specimen, which the dataset calls weaker (14 Ah against
		// the 19.3 Ah of the first at a like current), and the charges.
		health:    map[string]float64{"unit_b": 14 / 19.3, "unit_a_charge_after_3p0a": 1, "unit_a_charge_after_2p0a": 1 - 2*vrlaFade},
		recharges: map[string]string{"unit_a_charge_after_3p0a": "unit_a_cc_3p0a", "unit_a_charge_after_2p0a": "unit_a_cc_2p0a"},
		accepted:  "unit_a_charge_after_3p0a",
		options: cellfit.CellOptions{
			FitWells: true, RestSpreadV: 0.15, FullAhSpread: 0.05,
			UnitShare: []float64{1, 1 - 2*vrlaFade, 1 - 4.5*vrlaFade, 1 - 6*vrlaFade}, UnitSpread: 0.005,
		},
	},
}
