// Code generated from data/*.toml by go generate; DO NOT EDIT.

//go:build !generating

package tables

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/rows"
)

var builtin = Tables{
	sources: rows.Rows[answer.Source]{
		{
			Name: "aashto-deceleration",
			Value: answer.Source{
				ID:    "aashto-deceleration",
				Text:  "AASHTO Green Book: design deceleration 11.2 ft/s2 (3.4 m/s2)",
				Known: "copy",
			},
		},
		{
			Name: "aashto-reaction",
			Value: answer.Source{
				ID:    "aashto-reaction",
				Text:  "AASHTO and traffic texts: perception-reaction of adults, unexpected: median 0.90 s, slow 2.7 s, design 2.5 s",
				Known: "copy",
			},
		},
		{
			Name: "abyc-e11-drop",
			Value: answer.Source{
				ID:    "abyc-e11-drop",
				Text:  "ABYC E-11, clause 11.14.2.6: voltage drop 3 percent for critical and 10 percent for other circuits of a boat",
				Known: "copy, a forum post that quotes the clause",
			},
		},
		{
			Name: "al-eisawi-1999",
			Value: answer.Source{
				ID:    "al-eisawi-1999",
				Text:  "Al-Eisawi et al., Factors affecting minimum push and pull forces of manual carts, Applied Ergonomics 30 (1999) 235-245: hard rubber wheels of 51, 102, 153 mm, push force from rest; 2.2 mm smooth concrete, 2.4 tile, 3.3 asphalt, 4.5 industrial carpet",
				Known: "copy of the abstract; the upper ends of the ranges are judgement for toy wheels",
			},
		},
		{
			Name: "astm-b258",
			Value: answer.Source{
				ID:    "astm-b258",
				Text:  "ASTM B258-02, standard nominal diameters of solid round wires as American Wire Gauge: No. 36 is 0.0050 in, No. 4/0 is 0.4600 in, 39 equal ratios between them",
				Known: "copy of the formula",
			},
		},
		{
			Name: "astm-f963-overload",
			Value: answer.Source{
				ID:    "astm-f963-overload",
				Text:  "ASTM F963, clause 4.15: overload of three times the child's weight",
				Known: "memory",
			},
		},
		{
			Name: "astm-f963-stability",
			Value: answer.Source{
				ID:    "astm-f963-stability",
				Text:  "ASTM F963, clause 4.15: stability on a slope of 10 degrees sideways",
				Known: "copy, a news page, partly garbled",
			},
		},
		{
			Name: "astm-f963-surface",
			Value: answer.Source{
				ID:    "astm-f963-surface",
				Text:  "ASTM F963, clause 4.25.7: surface of a battery at most 71 degC (160 degF)",
				Known: "copy of a summary",
			},
		},
		{
			Name: "astm-f963-voltage",
			Value: answer.Source{
				ID:    "astm-f963-voltage",
				Text:  "ASTM F963, clause 4.25.2: 24 V DC nominal at most between any two accessible points",
				Known: "copy of a summary",
			},
		},
		{
			Name: "battery-trade",
			Value: answer.Source{
				ID:    "battery-trade",
				Text:  "Batteries that ride-ons of 12 and 24 V are sold with, 7 to 12 Ah",
				Known: "memory",
			},
		},
		{
			Name: "blade-holder-sheets",
			Value: answer.Source{
				ID:    "blade-holder-sheets",
				Text:  "Makers' data sheets of in-line holders for blade fuses, 32 V: small blade 20 A, heavy 30 A; large blade 45 A continuous, 60 A most, 80 degC",
				Known: "copy",
			},
		},
		{
			Name: "breaker-heat",
			Value: answer.Source{
				ID:    "breaker-heat",
				Text:  "Trip current of bimetal breakers falls by 0.5 to 1 percent per K above 25 degC; the steeper figure is used",
				Known: "memory-LOW: wide default only",
			},
		},
		{
			Name: "breaker-ratings",
			Value: answer.Source{
				ID:    "breaker-ratings",
				Text:  "Common ratings of automotive auto-reset breakers",
				Known: "memory",
			},
		},
		{
			Name: "bullet-sheet",
			Value: answer.Source{
				ID:    "bullet-sheet",
				Text:  "Maker's data sheet of a two-pole 3.5 mm bullet connector: 0.55 mOhm; 30 A rated, 60 A short; rise 27.8 K at 30 A with AWG 12, 85 K with AWG 14",
				Known: "copy",
			},
		},
		{
			Name: "cdc-growth",
			Value: answer.Source{
				ID:    "cdc-growth",
				Text:  "US Centers for Disease Control and Prevention, CDC Growth Charts 2000, weight for age 2-20 years: LMS tables",
				Known: "primary; percentiles computed from L, M, S",
			},
		},
		{
			Name: "cdc-growth-older",
			Value: answer.Source{
				ID:    "cdc-growth-older",
				Text:  "US Centers for Disease Control and Prevention, CDC Growth Charts 2000, weight for age 2-20 years: the 5th, 50th and 95th percentile of 10, 12 and 14 years as the printed charts show them",
				Known: "memory, medians to about 3 %; the ends are rounded outwards. The rows at 8 years are those of cdc-growth",
			},
		},
		{
			Name: "cell-spread",
			Value: answer.Source{
				ID:    "cell-spread",
				Text:  "Wildfeuer & Lienkamp, Quantifiability of inherent cell-to-cell variations: capacity 0.17 % (600 new cells), literature 0.2 to 0.3 %; three standard deviations hold the weakest of a pack",
				Known: "copy",
			},
		},
		{
			Name: "cfr-33-183-425",
			Value: answer.Source{
				ID:    "cfr-33-183-425",
				Text:  "US law, 33 CFR 183.425 Table 5: allowable amperage of conductors under 50 V in boats, surroundings of 30 degC",
				Known: "copy, full table",
			},
		},
		{
			Name: "cfr-33-183-455",
			Value: answer.Source{
				ID:    "cfr-33-183-455",
				Text:  "US law, 33 CFR 183.455: (b) overcurrent protection within 7 in (178 mm) of the source, up to 40 in (1016 mm) if the wire is sheathed all the way; (c)(1) rating at most 150 percent of the ampacity of Table 5 of 183.425",
				Known: "copy",
			},
		},
		{
			Name: "charge-doubt",
			Value: answer.Source{
				ID:    "charge-doubt",
				Text:  "measured hours over computed ones, ten charges of five cells, own fitted cell: 0.98 to 1.12 (seven) and 1.06 to 1.15 (three of an ageing cell, with grown branches), with the plain profile 0.90 to 1.31",
				Known: "computed from the measured curves",
			},
		},
		{
			Name: "child-reaction",
			Value: answer.Source{
				ID:    "child-reaction",
				Text:  "Developmental Medicine and Child Neurology 26 (1984) 490-494: simple reaction time 465 ms at 5 years, 190 ms at 15 years",
				Known: "copy of the abstract",
			},
		},
		{
			Name: "cpsc-1998",
			Value: answer.Source{
				ID:    "cpsc-1998",
				Text:  "US Consumer Product Safety Commission, recall of 22 October 1998 as reported in newspapers: up to 10 million battery ride-on toys; 150 fires, some while parked; 700 reports of overheating; 9 children with minor burns",
				Known: "copy of the reports",
			},
		},
		{
			Name: "cpsc-2000-chargers",
			Value: answer.Source{
				ID:    "cpsc-2000-chargers",
				Text:  "US Consumer Product Safety Commission, recalls of chargers of about 294 000 and 113 000 ride-on toys, about 2000, as reported",
				Known: "copy of a news page",
			},
		},
		{
			Name: "cpsc-2024-chargers",
			Value: answer.Source{
				ID:    "cpsc-2024-chargers",
				Text:  "US Consumer Product Safety Commission, 2024: 156 reports of fire or overheating with universal chargers, 1 January 2023 to 16 May 2024",
				Known: "copy",
			},
		},
		{
			Name: "cpsc-2025-packs",
			Value: answer.Source{
				ID:    "cpsc-2025-packs",
				Text:  "US Consumer Product Safety Commission, warning on micromobility devices of 4 September 2025",
				Known: "copy",
			},
		},
		{
			Name: "cpsc-92-008",
			Value: answer.Source{
				ID:    "cpsc-92-008",
				Text:  "US Consumer Product Safety Commission, Release 92-008 (25 October 1991): ride-on toy with an 18 V system; the foot-switch contacts, unlike with the 12 V battery, may weld together during the initial surge and the vehicle cannot be stopped; about 12 000 units",
				Known: "copy of the release",
			},
		},
		{
			Name: "crimp-trade",
			Value: answer.Source{
				ID:    "crimp-trade",
				Text:  "Resistance of crimped flat quick-connects, new and aged (tests of the IEC 60512-2 kind, trade)",
				Known: "memory",
			},
		},
		{
			Name: "en-71-1-brakes",
			Value: answer.Source{
				ID:    "en-71-1-brakes",
				Text:  "EN 71-1:2005+A8:2009, rationale: electric cars slower than 1 m/s with free feet need no brake; free-wheel test on 10 degrees with (M + 25) x 1.70 N",
				Known: "copy",
			},
		},
		{
			Name: "eu-toy-voltage",
			Value: answer.Source{
				ID:    "eu-toy-voltage",
				Text:  "Directive 2009/48/EC, Annex II part IV: rated and internal voltage at most 24 V DC",
				Known: "copy",
			},
		},
		{
			Name: "fuse-glossary",
			Value: answer.Source{
				ID:    "fuse-glossary",
				Text:  "Fuse glossary of a trade body: a fuse should last indefinitely if operated at no more than 75 percent of its rating at 25 degC",
				Known: "copy",
			},
		},
		{
			Name: "fuse-inside-manuals",
			Value: answer.Source{
				ID:    "fuse-inside-manuals",
				Text:  "Manuals of a 6 V and of a 12 V two-seat ride-on: a thermal fuse inside the battery that resets itself after about 25 s; older 6 V batteries with a replaceable 25 A fuse in their top (repair guides)",
				Known: "copy",
			},
		},
		{
			Name: "gear-stage-2007",
			Value: answer.Source{
				ID:    "gear-stage-2007",
				Text:  "MIT course 2.007, motor notes: about 85 percent per gear stage, measured",
				Known: "copy",
			},
		},
		{
			Name: "glass-heat",
			Value: answer.Source{
				ID:    "glass-heat",
				Text:  "Re-rating of glass tube fuses by temperature, 0.1 to 0.15 percent per K, from fuse makers' guides; the steeper figure is used",
				Known: "memory",
			},
		},
		{
			Name: "glass-ratings",
			Value: answer.Source{
				ID:    "glass-ratings",
				Text:  "Common ratings and voltages of glass tube fuses",
				Known: "memory",
			},
		},
		{
			Name: "grip-noon",
			Value: answer.Source{
				ID:    "grip-noon",
				Text:  "R. K. Noon, Engineering Analysis of Vehicular Accidents, CRC Press 1994: sliding car tyres, dry asphalt 0.65, dry concrete 0.75, wet grass 0.2",
				Known: "copy",
			},
		},
		{
			Name: "grip-plastic",
			Value: answer.Source{
				ID:    "grip-plastic",
				Text:  "Friction of hard plastic wheels (polyethylene, polypropylene) on paved ground; no table found. Smooth polyethylene sheet slides on sand at 17 to 18 degrees, 0.31 to 0.32 (J. P. Martin, R. M. Koerner, J. E. Whitty, Int. Conf. on Geomembranes, Denver 1984, as in Koerner, Designing with Geosynthetics); less where it is polished or dusty, more where stones bite into it",
				Known: "memory-LOW: wide default only",
			},
		},
		{
			Name: "grip-plastic-turf",
			Value: answer.Source{
				ID:    "grip-plastic-turf",
				Text:  "Hard plastic wheels on short dry grass; no measurement found. Between plastic that slides and a tread that shears the sod: smooth polyethylene sheet on sand 0.31 to 0.32, textured sheet about 30 degrees, 0.58 (Martin, Koerner, Whitty 1984, and Koerner, Designing with Geosynthetics); lugged tractor tyres on firm soil push 0.7 of their load at 20 percent slip (W. W. Brixius, ASAE Paper 87-1622, 1987), which a small plastic tread does not reach; blades of grass between wheel and soil are slippery",
				Known: "memory-LOW: wide default only",
			},
		},
		{
			Name: "grip-rubber",
			Value: answer.Source{
				ID:    "grip-rubber",
				Text:  "Sliding friction of rubber on concrete, dry 0.6 to 0.85, wet 0.45 to 0.75, tables collected by M. Matthews, The Physics Factbook, 2006",
				Known: "copy",
			},
		},
		{
			Name: "grip-soft-guess",
			Value: answer.Source{
				ID:    "grip-soft-guess",
				Text:  "Friction of wheels on dry grass, gravel, dirt, sand, carpet, tile: no table for toy wheels found",
				Known: "memory-LOW: wide default only",
			},
		},
		{
			Name: "ground-judgement",
			Value: answer.Source{
				ID:    "ground-judgement",
				Text:  "Judgement from published coefficients of tyres and steel wheels on soft ground; no published measurement of a toy wheel on this ground was found",
				Known: "estimate +-50 %",
			},
		},
		{
			Name: "growth-measured",
			Value: answer.Source{
				ID:    "growth-measured",
				Text:  "ARTS-Lab, Dataset Cycling with Strain Monitoring for Samsung 30Q Cell, CC BY-SA 4.0: the first second of resistance up 62 % at 80 % of the charge, 78 % at 81 % (another cell), 84 % at 72 %; what a lasting current meets grows about 0.6 times as much, which the low point stands for",
				Known: "computed from the measured curves",
			},
		},
		{
			Name: "heat-doubt",
			Value: answer.Source{
				ID:    "heat-doubt",
				Text:  "highest temperatures of 29 discharges of seven cells, own fitted cell and the laboratory's own cooling: measured less computed is -2.9 to 4.1 K, one in twenty below -2.0 and one above 2.7; entropic heat is not computed",
				Known: "computed from the measured curves",
			},
		},
		{
			Name: "iec-60028",
			Value: answer.Source{
				ID:    "iec-60028",
				Text:  "IEC 60028, International standard of resistance for copper: 1/58 Ohm mm2/m at 20 degC, printed as 17.241 Ohm mm2/km",
				Known: "memory; reproduces the published AWG table of sizes 8 to 22 to 0.09 percent",
			},
		},
		{
			Name: "iec-60034-1",
			Value: answer.Source{
				ID:    "iec-60034-1",
				Text:  "IEC 60034-1: rise of windings over 40 degC by class",
				Known: "copy",
			},
		},
		{
			Name: "iec-60085",
			Value: answer.Source{
				ID:    "iec-60085",
				Text:  "IEC 60085, thermal classes of electrical insulation",
				Known: "copy, maintenance manuals that quote it",
			},
		},
		{
			Name: "iec-60127-2-f",
			Value: answer.Source{
				ID:    "iec-60127-2-f",
				Text:  "IEC 60127-2, quick-acting (F) miniature fuse-links 125 mA to 10 A: 150 percent at least 60 min, 210 percent at most 30 min, 275 percent 50 ms to 2 s, 400 percent 10 to 300 ms, 1000 percent at most 20 ms",
				Known: "copy",
			},
		},
		{
			Name: "iec-60228-t1",
			Value: answer.Source{
				ID:    "iec-60228-t1",
				Text:  "IEC 60228:2004, Tables 1 and 2: largest resistance of solid and stranded conductors, classes 1 and 2, plain copper, at 20 degC",
				Known: "copy",
			},
		},
		{
			Name: "iec-60228-t3",
			Value: answer.Source{
				ID:    "iec-60228-t3",
				Text:  "IEC 60228:2004 (DIN VDE 0295), Table 3: largest resistance of flexible conductors, class 5, at 20 degC",
				Known: "copy, three agreeing copies",
			},
		},
		{
			Name: "iec-60364-4-43",
			Value: answer.Source{
				ID:    "iec-60364-4-43",
				Text:  "IEC 60364-4-43, clause on short-circuit: t = (k S / I)2, for times up to 5 s",
				Known: "copy",
			},
		},
		{
			Name: "iec-60364-5-54",
			Value: answer.Source{
				ID:    "iec-60364-5-54",
				Text:  "IEC 60364-5-54 and BS 7671, factor k of protective conductors by insulation",
				Known: "copy",
			},
		},
		{
			Name: "iec-60947-7-1",
			Value: answer.Source{
				ID:    "iec-60947-7-1",
				Text:  "IEC 60947-7-1, terminal blocks: test currents 24, 32, 41, 57 A for 2.5, 4, 6, 10 mm2; drop at most 3.2 mV at a tenth of the current",
				Known: "copy, a page that quotes the standard",
			},
		},
		{
			Name: "iec-60949",
			Value: answer.Source{
				ID:    "iec-60949",
				Text:  "IEC 60949:1988, calculation of thermally permissible short-circuit currents: copper K = 226 A sqrt(s)/mm2, beta = 234.5 degC",
				Known: "copy of a summary",
			},
		},
		{
			Name: "iec-61210",
			Value: answer.Source{
				ID:    "iec-61210",
				Text:  "IEC 61210:2010, scope: flat quick-connects 2.8, 4.8, 6.3, 9.5 mm; flexible conductors up to 6 mm2",
				Known: "copy of the scope",
			},
		},
		{
			Name: "iec-62115-touch",
			Value: answer.Source{
				ID:    "iec-62115-touch",
				Text:  "IEC 62115:2003, clause 9: rise of parts held in the hand: metal 25 K, glass 30 K, plastic and wood 35 K; other accessible parts 45, 50, 55 K",
				Known: "copy",
			},
		},
		{
			Name: "iso-10133",
			Value: answer.Source{
				ID:    "iso-10133",
				Text:  "ISO 10133:2012, extra-low-voltage DC installations of small craft, clause 7.7: a single wire longer than 200 mm has at least 1 mm2, 0.75 mm2 only inside a sheath",
				Known: "copy",
			},
		},
		{
			Name: "iso-10133-a",
			Value: answer.Source{
				ID:    "iso-10133-a",
				Text:  "ISO 10133 / ISO 13297 Annex A: continuous current of wires of small craft, 105 degC insulation, surroundings of 30 degC",
				Known: "memory",
			},
		},
		{
			Name: "iso-13732-burns",
			Value: answer.Source{
				ID:    "iso-13732-burns",
				Text:  "ISO 13732-1:2006, burn thresholds of skin on hot smooth bare metal: 65 to 70 degC for 1 s, about 55 to 57 for 10 s, 51 for 1 min, 48 for 10 min, 43 for 8 h and longer",
				Known: "memory",
			},
		},
		{
			Name: "iso-16750-2",
			Value: answer.Source{
				ID:    "iso-16750-2",
				Text:  "ISO 16750-2, supply of electric equipment of road vehicles: up to 16 V where the nominal voltage is 12 V, up to 32 V where it is 24 V",
				Known: "memory",
			},
		},
		{
			Name: "iso-8820-3-ratings",
			Value: answer.Source{
				ID:    "iso-8820-3-ratings",
				Text:  "ISO 8820-3, standard ratings of blade fuses; 35 and 40 A small blades and 30 to 40 A large blades seen on makers' sheets",
				Known: "memory",
			},
		},
		{
			Name: "iso-8820-3-scope",
			Value: answer.Source{
				ID:    "iso-8820-3-scope",
				Text:  "GB/T 31465.3-2015 (ISO 8820-3:2010 modified), scope: types C, E, F; 32 V or 58 V; up to 100 A; breaking capacity 1000 A",
				Known: "copy of the abstract",
			},
		},
		{
			Name: "joint-heat-own",
			Value: answer.Source{
				ID:    "joint-heat-own",
				Text:  "Own warning levels of packcheck for the heat in one joint: 1 W makes a small terminal warm to the touch, 3 W discolours plastic in time",
				Known: "common practice, no published source",
			},
		},
		{
			Name: "lab-cooling",
			Value: answer.Source{
				ID:    "lab-cooling",
				Text:  "cooling that fits the highest temperatures of eight open sets, bare single cells: 17 W/(m2 K) lying free in a room, 18, 21, 33, 33, 38, 55 and 57 in chambers with fans; 10 in the Chen et al. 2020 set of PyBaMM",
				Known: "computed from the measured curves",
			},
		},
		{
			Name: "large-blade-drop",
			Value: answer.Source{
				ID:    "large-blade-drop",
				Text:  "Voltage drop of blade fuses at rated current over cold resistance times current, from makers' data sheets (96 mV against 57.6 mV at 40 A small blade, 75 mV against 56 mV large blade)",
				Known: "computed from the sheets",
			},
		},
		{
			Name: "large-blade-heat-borrowed",
			Value: answer.Source{
				ID:    "large-blade-heat-borrowed",
				Text:  "Re-rating by temperature of a 40 A large blade fuse (maker's data sheet, January 2025), used for the small blade as well: none was found for that",
				Known: "computed from the large blade's sheet",
			},
		},
		{
			Name: "large-blade-sheet",
			Value: answer.Source{
				ID:    "large-blade-sheet",
				Text:  "Maker's data sheet of large blade fuses (ISO 8820-3:2002 type E, SAE J1888), revision of January 2025: opening times, cold resistance, melting I2t, re-rating by temperature",
				Known: "copy",
			},
		},
		{
			Name: "lead-growth",
			Value: answer.Source{
				ID:    "lead-growth",
				Text:  "resistance of a sealed lead-acid block at 80 % health 1.2 to 2.5 times that when new: from memory, no published source",
				Known: "memory",
			},
		},
		{
			Name: "lead-growth-spent",
			Value: answer.Source{
				ID:    "lead-growth-spent",
				Text:  "own choice, no published source: a sealed block that dried out or stood flat shows its full volts at rest and has several times the resistance that its lost charge alone would tell",
				Known: "judgement, no published source",
			},
		},
		{
			Name: "lead-hour-shares",
			Value: answer.Source{
				ID:    "lead-hour-shares",
				Text:  "charge of the 1 h rate over that of the 20 h rate, makers' sheets of eleven blocks: 0.58, 0.60 (five), 0.61, 0.66, 0.68, 0.70, 0.75",
				Known: "computed from copies",
			},
		},
		{
			Name: "lead-label",
			Value: answer.Source{
				ID:    "lead-label",
				Text:  "12 V 17 Ah block of Sulzer et al., Faster Lead-Acid Battery Simulations, 2019, BSD 3-Clause: the first specimen gave 1.14 of the label at 0.18C, the second 0.82; makers' sheets allow nothing below 0.95 when new, of cheap blocks it is remembered that they give less",
				Known: "memory, but for one dataset",
			},
		},
		{
			Name: "lead-ohm-sheets",
			Value: answer.Source{
				ID:    "lead-ohm-sheets",
				Text:  "makers' sheets of six blocks: 1 kHz resistance of 12 V times Ah 0.130 to 0.189 Ohm*Ah about 0.150; that working resistance lies 1.5 to 2.5 times above it is remembered",
				Known: "copy and memory",
			},
		},
		{
			Name: "lead-spent",
			Value: answer.Source{
				ID:    "lead-spent",
				Text:  "own choice, no published source: a sealed block that stood flat, or of which a cell is gone, gives a twentieth to two fifths of its charge before its volts break down",
				Known: "judgement, no published source",
			},
		},
		{
			Name: "lead-steepness",
			Value: answer.Source{
				ID:    "lead-steepness",
				Text:  "exponent between the 20 h and the 1 h rate of ten blocks from their makers' sheets: 1.220, 1.206, 1.206, 1.206, 1.199, 1.158, 1.146, 1.133, 1.106, and 1.234 over all rates between",
				Known: "computed from copies",
			},
		},
		{
			Name: "lead-years",
			Value: answer.Source{
				ID:    "lead-years",
				Text:  "health by age, put together from reports of owners and standby service of 3 to 4 years to 80 % (two sheets): new 0.95 to 1, after one year 0.75 to 0.95, two 0.5 to 0.85, three 0.2 to 0.7. Worn: IEEE's criterion of replacement is 80 %, and people replace later. A seller: two to three years of service where it is kept charged",
				Known: "memory and derived",
			},
		},
		{
			Name: "left-behind-lithium",
			Value: answer.Source{
				ID:    "left-behind-lithium",
				Text:  "seven lithium cells of open datasets, each fitted to its discharge at one current and foretold at its others (20 h, 10 h, 2 h, 1 h, 30 and 20 min): what they gave less in 2 h and under than in 20 h, beside what their resistance explains, was 0 to 2 % of three cells, 5 % of one and 7 to 10 % of three (PyBOP LG_M50_ECM, BSD 3-Clause; Li-ion Battery Electro-Thermal Dataset, MIT; About:Energy BPX parameterisations, CC BY-SA 4.0; BatEst example data, MIT; the 2.9 Ah and 3.0 Ah cells named with the members)",
				Known: "computed from the measured curves",
			},
		},
		{
			Name: "lithium-years",
			Value: answer.Source{
				ID:    "lithium-years",
				Text:  "charge over that of cycle 2 in ARTS-Lab, Dataset Cycling with Strain Monitoring for Samsung 30Q Cell, CC BY-SA 4.0: 0.93 and 0.94 at cycle 100, 0.90 at 200, 0.86 and 0.89 at 300, 0.80 at 480, 0.67 at 660; packs at 9 to 16 A (Fricke et al. 2023, MIT) 0.69 to 0.82 after 161 to 820 discharges. That fifty to a hundred cycles make a year, and what the calendar adds, is an assumption",
				Known: "computed; the years are an assumption",
			},
		},
		{
			Name: "load-manuals",
			Value: answer.Source{
				ID:    "load-manuals",
				Text:  "Manuals of ride-ons: riders up to 29.5 kg (6 V, one seat), 59 kg (12 V, two seats), 25 kg (12 V with a board, 37 to 95 months); 30 kg for 12 V with one seat and 59 kg for 24 V are judgement",
				Known: "copy",
			},
		},
		{
			Name: "lookalike-bench",
			Value: answer.Source{
				ID:    "lookalike-bench",
				Text:  "summary of a bench video: three no-name packs printed 108 Wh gave 63, 40 and 54 Wh at 150 W: 59, 37 and 50 %. IBM research abstract on 18650 cells: cheap ones frequently offer less than a fifth of the rating. That one may hold 0.9: memory",
				Known: "copy of a summary",
			},
		},
		{
			Name: "magnet-trade",
			Value: answer.Source{
				ID:    "magnet-trade",
				Text:  "Reversible loss of flux of ferrite magnets, about 0.2 percent per K",
				Known: "memory",
			},
		},
		{
			Name: "member-blocks",
			Value: answer.Source{
				ID:    "member-blocks",
				Text:  "seven blocks and tables that this program's lead-acid members are fitted to: share of the bound well over that of the free one, over the same of a general block of 7.5 Ah: 0.54, 0.55, 0.78, 0.84, 1.23, 1.26, 1.27",
				Known: "computed from copies and one dataset",
			},
		},
		{
			Name: "montsinger",
			Value: answer.Source{
				ID:    "montsinger",
				Text:  "Montsinger's rule: 10 K more halve the life of winding insulation",
				Known: "copy",
			},
		},
		{
			Name: "motor-540-sheet",
			Value: answer.Source{
				ID:    "motor-540-sheet",
				Text:  "Maker's sheet of a 540-size motor (35.8 x 50 mm, 153 g): 12 V, 16 800 rpm, 1.0 A, stall 42 A, as posted by users of a student robotics forum",
				Known: "copy",
			},
		},
		{
			Name: "motor-775-size",
			Value: answer.Source{
				ID:    "motor-775-size",
				Text:  "Sheet of a 775-size motor: 42 mm can (44.5 mm with flux ring) x 66.7 mm, 350 g",
				Known: "copy",
			},
		},
		{
			Name: "motor-brush-trade",
			Value: answer.Source{
				ID:    "motor-brush-trade",
				Text:  "Voltage drop of both carbon brushes together",
				Known: "memory",
			},
		},
		{
			Name: "motor-heat-guess",
			Value: answer.Source{
				ID:    "motor-heat-guess",
				Text:  "Sheets of closed precision motors of 25 to 35 mm, from memory: 17, 7.7 and 8.2 K/W from winding to air, which times their outside is 0.06 to 0.09 m2 K/W. A can with slots and a fan of its own has about half of that while it turns, one that sits in a gearbox of plastic hardly less than all: from 0.45 of 0.06 to all of 0.09 over its outside, estimated. Of the case 0.5 J/K each gram, as the closed ones have, times what lies between it and the air; of the winding estimated",
				Known: "memory-LOW: wide default only",
			},
		},
		{
			Name: "motor-library",
			Value: answer.Source{
				ID:    "motor-library",
				Text:  "WPILib, DCMotor.java (open robotics library, BSD licence): measured 12 V curves of a 550-size and three 775-size motors",
				Known: "primary; resistance and constants computed from it",
			},
		},
		{
			Name: "motor-ride-on-390",
			Value: answer.Source{
				ID:    "motor-ride-on-390",
				Text:  "Motors of size 390 of 12 V ride-on vehicles with a board: label 15 000 rpm; two in parallel drew 22 A blocked on an 18 V pack, which is 1.5 Ohm each with leads, and the board may have limited it; four ran for years behind a 10 A fuse. No-load current from memory",
				Known: "copy of the reports; ends judgement",
			},
		},
		{
			Name: "motor-ride-on-550",
			Value: answer.Source{
				ID:    "motor-ride-on-550",
				Text:  "Motors of size 550 out of 12 V ride-on vehicles, as student robotics contests handed them out: 57 A stall, 15 000 rpm (1999); 70 A, 15 600 rpm, 1.0 to 1.25 A free (2006); 64 A, 16 000 rpm; an earlier one 20 326 rpm. Resistance 0.211, 0.171 and 0.188 Ohm: the ends are the 90 % prediction interval of three (Student, 2 degrees of freedom). With gears and wheels turning free two were seen to draw 3 A",
				Known: "copy of the reports; ends computed",
			},
		},
		{
			Name: "motor-rotor-guess",
			Value: answer.Source{
				ID:    "motor-rotor-guess",
				Text:  "Rotor inertia and inductance by can size, estimated",
				Known: "memory-LOW: wide default only",
			},
		},
		{
			Name:  "motor-sizes",
			Value: answer.Source{ID: "motor-sizes", Text: "Outside sizes of common motor cans", Known: "memory"},
		},
		{
			Name: "motor-stall-torque",
			Value: answer.Source{
				ID:    "motor-stall-torque",
				Text:  "Printed stall torque over stall current times generator constant of five 12 V motors (WPILib DCMotor.java and a maker's sheet): 0.76 to 1.02",
				Known: "computed",
			},
		},
		{
			Name: "motor-trade",
			Value: answer.Source{
				ID:    "motor-trade",
				Text:  "Ride-on versions of the can size: speed, currents and resistance as the trade gives them",
				Known: "memory-LOW: wide default only",
			},
		},
		{
			Name: "nec-210-20",
			Value: answer.Source{
				ID:    "nec-210-20",
				Text:  "NEC 210.20 and 215.3: overcurrent device at least 125 percent of the continuous load (80 percent loading)",
				Known: "memory",
			},
		},
		{
			Name: "new-motor-rise",
			Value: answer.Source{
				ID:    "new-motor-rise",
				Text:  "Makers and sellers tell an hour and more flat out of their vehicles, which their motors then live through: windings of class A are allowed 60 K over 40 degC (IEC 60034-1) and 105 degC (IEC 60085), 80 K over a room of 25. That half stay below 55 K, and one in twenty passes 85 K, is own choice",
				Known: "judgement",
			},
		},
		{
			Name: "onderdonk",
			Value: answer.Source{
				ID:    "onderdonk",
				Text:  "I. M. Onderdonk's equation for the melting of copper wire; earliest trace E. R. Stauffacher, General Electric Review, 1928",
				Known: "copy of the formula with a slip of sign put right; checked against IEC 60949 constants",
			},
		},
		{
			Name: "other-blocks",
			Value: answer.Source{
				ID:    "other-blocks",
				Text:  "exponent less one of ten blocks from their makers' sheets over the middle, 0.20: 0.53 to 1.17, a standard deviation of 0.26 of the logarithm. An eleventh is foretold within 0.26*sqrt(1+1/10); the members, drawn by their shares, have 0.20 of it, and the root of the difference of the squares, 0.19, is added to each. The depth of the well gives 0.85 as much in the exponent: 0.22. Above, the steepest block of all (1.17) leaves room for 1.25",
				Known: "computed from copies",
			},
		},
		{
			Name: "other-models",
			Value: answer.Source{
				ID:    "other-models",
				Text:  "resistance of ten seconds of five power cell models in chemistry/data/members, times their Ah: 0.040, 0.044, 0.064, 0.075 and 0.111 Ohm*Ah, a standard deviation of 0.42 of the logarithm. A sixth is foretold within 0.42*sqrt(1+1/5); the five, drawn by their shares, have 0.39 of it, and the root of the difference of the squares, 0.25, is added to each",
				Known: "computed from the measured curves",
			},
		},
		{
			Name: "own-cells-measured",
			Value: answer.Source{
				ID:    "own-cells-measured",
				Text:  "charge over five hours over what is printed, of new cells in ten open datasets (chemistry/data/members, nmc_pouch_12p5ah, leaf_lmo_pouch_33ah): 1.04, 1.04, 1.03, 1.02, 1.02, 1.01, 0.98, 0.98, and two of 0.83 and 0.85 whose age is not told; over twenty hours up to 1.06. A sheet promises its label at 0.2C (INR18650-25R: at least 2500 mAh), so the two have aged or were made badly: their lack is counted as health, and one new pack in twenty is given less than 0.90 (own choice). The others spread by 0.024 of the logarithm; the next of such eight lies between 0.97 and 1.06 in nine cases of ten",
				Known: "computed from the measured curves",
			},
		},
		{
			Name: "own-clearing-floor",
			Value: answer.Source{
				ID:    "own-clearing-floor",
				Text:  "Own caution of packcheck: above the highest gate the opening time is taken to fall with constant I2t, and never below 10 ms, to leave time for the arc",
				Known: "common practice, no published source",
			},
		},
		{
			Name: "pack-tabs",
			Value: answer.Source{
				ID:    "pack-tabs",
				Text:  "tabs and terminals of a tool pack 5 to 15 mOhm: from memory; no measurement of a whole pack was found",
				Known: "memory",
			},
		},
		{
			Name: "plastic-trade",
			Value: answer.Source{
				ID:    "plastic-trade",
				Text:  "Nylon brush holders, end bells and plastic gears soften at about 100 to 130 degC",
				Known: "memory, common practice",
			},
		},
		{
			Name: "preece",
			Value: answer.Source{
				ID:    "preece",
				Text:  "W. H. Preece, fusing currents of wires, 1880s: I = 10244 d^1.5 for copper, d in inches; table of wire diameters by fusing current",
				Known: "copy of the table",
			},
		},
		{
			Name: "pulse-guide",
			Value: answer.Source{
				ID:    "pulse-guide",
				Text:  "Fuse maker's selection guide, 2017: pulse I2t at most 22, 29, 38, 48 percent of the melting I2t for 100 000, 10 000, 1 000, 100 pulses, at least 10 s apart",
				Known: "copy",
			},
		},
		{
			Name: "ramp-trade",
			Value: answer.Source{
				ID:    "ramp-trade",
				Text:  "Soft-start ramps of toy controllers, 0.5 to 2 s",
				Known: "memory",
			},
		},
		{
			Name: "reset-times",
			Value: answer.Source{
				ID:    "reset-times",
				Text:  "Times after which self-resetting devices close again: bimetal breakers, resettable polymer fuses, the electronics of packs",
				Known: "memory-LOW: common practice, no published source",
			},
		},
		{
			Name: "rubber-face-judgement",
			Value: answer.Source{
				ID:    "rubber-face-judgement",
				Text:  "Foam-rubber or rubber-faced toy wheels roll 10 to 20 percent easier than hard plastic",
				Known: "judgement, no published source",
			},
		},
		{
			Name: "run-time-reports",
			Value: answer.Source{
				ID:    "run-time-reports",
				Text:  "How long vehicles last when new: sellers of 12 V ones 45 to 75 min, about 1 h flat out, 1 h and more; the maker of a 24 V one 1 to 2 h; the manual of a 6 V one only says that less than 1 to 3 h is short, which tells too little. The ends of 12 V lie somewhat outside of what was told",
				Known: "copy of the reports",
			},
		},
		{
			Name: "sae-j1128",
			Value: answer.Source{
				ID:    "sae-j1128",
				Text:  "SAE J1127 / J1128 automotive primary wire: least conductor areas, as printed in a wire maker's catalogue table beside the AWG areas",
				Known: "copy",
			},
		},
		{
			Name: "sae-j553-scope",
			Value: answer.Source{
				ID:    "sae-j553-scope",
				Text:  "SAE J553 (2016, 2022), circuit breakers: type 1 cycles by itself, type 2 stays open while there is voltage, type 3 by hand; 12 and 24 V; type 1 must be used with self-limiting means, e.g. a main fuse",
				Known: "copy of the abstract",
			},
		},
		{
			Name: "sae-j553-times",
			Value: answer.Source{
				ID:    "sae-j553-times",
				Text:  "SAE J553, calibration of automotive circuit breakers: holds 100 percent; opens within 1 h at 135 percent; 10 to 60 s at 200 percent",
				Known: "memory-LOW: wide default only",
			},
		},
		{
			Name: "screw-trade",
			Value: answer.Source{
				ID:    "screw-trade",
				Text:  "Resistance of soldered joints and of screwed terminals, trade",
				Known: "memory-LOW: wide default only",
			},
		},
		{
			Name: "seat-estimate",
			Value: answer.Source{
				ID:    "seat-estimate",
				Text:  "Moments of a vehicle of 15 kg that rests evenly on axles 0.7 m apart, 22 cm up, and a child of 20 kg: its centre of mass 22 cm above the seat (as in the stability test of ASTM F963), 47 cm above the ground, and 0.15 to 0.3 m before the rear axle, by how far the seat lies from it. No published axle loads were found; of seats above the rear axle up to 0.7 is allowed for, of a battery and feet far in front down to 0.48",
				Known: "estimate, no published source",
			},
		},
		{
			Name: "shell-cooling",
			Value: answer.Source{
				ID:    "shell-cooling",
				Text:  "common practice, no published source: a closed shell leaves a fifth to a half of the cooling in free air; 16 A in an insulated housing take an INR18650-P28A to 75 degC (tayvoy.com)",
				Known: "common practice",
			},
		},
		{
			Name: "six-energy-cells",
			Value: answer.Source{
				ID:    "six-energy-cells",
				Text:  "PyBOP data LG_M50_ECM, BSD 3-Clause: six cells of one model at 50 % and 25 degC have 31.7 to 37.4 mOhm after 10 s; three specimens and two laboratories of one power cell, first second: 29.4 to 34.5 mOhm (ARTS-Lab, Dataset Electrothermal Deformation and Dataset Cycling with Strain Monitoring for Samsung 30Q Cell, CC BY-SA 4.0)",
				Known: "computed from the measured curves",
			},
		},
		{
			Name: "small-blade-sheet",
			Value: answer.Source{
				ID:    "small-blade-sheet",
				Text:  "Maker's data sheet of small blade fuses (ISO 8820-3 type C, SAE J1284), revision of August 2022: opening times, cold resistance, melting I2t at 23 degC",
				Known: "copy, two independent transcriptions",
			},
		},
		{
			Name: "speed-reports",
			Value: answer.Source{
				ID:    "speed-reports",
				Text:  "US CPSC recalls of 1989 and 1998 (12 V: up to 5 mph; 6 V: 1 to 5), owners (6 V 2.5 to 3.5 mph; 12 V 3, slow gear, and 5), a seller (rarely above 6 mph), the engineer of a 24 V vehicle (8 mph); middle values are judgement",
				Known: "copy",
			},
		},
		{
			Name: "still-cooling",
			Value: answer.Source{
				ID:    "still-cooling",
				Text:  "17 and 18 W/(m2 K) fitted to single cells lying free in a room (two of eight open sets; the others lay in chambers with fans), 10 in the Chen et al. 2020 set of PyBaMM; a larger body in still air is cooled less by the area: the low end is from memory",
				Known: "computed from the measured curves; low end from memory",
			},
		},
		{
			Name: "switch-contact-trade",
			Value: answer.Source{
				ID:    "switch-contact-trade",
				Text:  "Contact resistance of a pedal switch, new and used: no published figure for toys was found",
				Known: "memory-LOW: wide default only",
			},
		},
		{
			Name: "switch-guides",
			Value: answer.Source{
				ID:    "switch-guides",
				Text:  "Switch makers' guides: inrush of a DC motor is its stall current; take a switch of at least six times the running current",
				Known: "memory",
			},
		},
		{
			Name: "tab-practice",
			Value: answer.Source{
				ID:    "tab-practice",
				Text:  "Practical rule of the trade: a 6.3 mm flat tab carries 15 to 20 A continuously with 1.5 to 2.5 mm2 wire",
				Known: "memory, common practice",
			},
		},
		{
			Name: "ul-248-14",
			Value: answer.Source{
				ID:    "ul-248-14",
				Text:  "UL 248-14, supplemental fuses: 110 percent at least 4 h, 135 percent at most 60 min, 200 percent at most 2 min",
				Known: "copy",
			},
		},
		{
			Name: "unknown-seller",
			Value: answer.Source{
				ID:    "unknown-seller",
				Text:  "common practice, no published source: three packs in four are the maker's own or honest, the fourth is a look-alike; points of the mixture of the two rows",
				Known: "common practice",
			},
		},
		{
			Name: "used-pack-spread",
			Value: answer.Source{
				ID:    "used-pack-spread",
				Text:  "Wiggins (BatterySim), 2017 pack tests at ORNL, MIT: in a 6S pack of used modules the weakest cell is empty when the strongest still has about a tenth of its charge (3.52 V at rest or so). That there are better and worse: memory",
				Known: "memory, but for one dataset",
			},
		},
		{
			Name: "vde-0298-4-t11",
			Value: answer.Source{
				ID:    "vde-0298-4-t11",
				Text:  "DIN VDE 0298-4:2023-06, Table 11: flexible cables up to 1000 V, 70 degC conductor, surroundings of 30 degC; holds for direct current too",
				Known: "copy",
			},
		},
		{
			Name: "vehicle-trade",
			Value: answer.Source{
				ID:    "vehicle-trade",
				Text:  "Masses, wheels and gear ratios of battery ride-on toys as the trade gives them",
				Known: "memory",
			},
		},
		{
			Name: "wells-refitted",
			Value: answer.Source{
				ID:    "wells-refitted",
				Text:  "share of the bound well of four lithium cells of open datasets, fitted to all their currents and to all but one in turn: 0.070 and 0.066 to 0.071; 0.11 and 0.07 to 0.17; 0.019 and 0.018 to 0.052; 0.006 and 0.038 to 0.043, of which the last two are too little to matter",
				Known: "computed from the measured curves",
			},
		},
		{
			Name: "wheelchair-carpet",
			Value: answer.Source{
				ID:    "wheelchair-carpet",
				Text:  "Hoffman et al., Am J Phys Med Rehabil 82 (2003) 880-889: carpet adds 0.0118 to the rolling coefficient of a wheelchair over linoleum",
				Known: "copy of the abstract",
			},
		},
		{
			Name: "who-growth",
			Value: answer.Source{
				ID:    "who-growth",
				Text:  "World Health Organization, Child Growth Standards (2006), weight for age 0-5 years, and WHO Reference 2007, weight for age 5-10 years: LMS tables",
				Known: "primary; percentiles computed from L, M, S",
			},
		},
	},
	figures: rows.Rows[Figure]{
		{
			Name: "adiabatic-constant",
			Value: Figure{
				Name:  "adiabatic-constant",
				What:  "factor of the short-circuit constant k for copper, in A sqrt(s)/mm2",
				Unit:  "A sqrt(s)/mm2",
				Value: Value{Low: 226, Likely: 226, High: 226, Source: "iec-60949"},
			},
		},
		{
			Name: "adiabatic-longest",
			Value: Figure{
				Name:  "adiabatic-longest",
				What:  "longest time for which the short-circuit law without heat loss is meant",
				Unit:  "s",
				Value: Value{Low: 5, Likely: 5, High: 5, Source: "iec-60364-4-43"},
			},
		},
		{
			Name: "adult-reaction",
			Value: Figure{
				Name:  "adult-reaction",
				What:  "perception and reaction of an adult who does not expect it",
				Unit:  "s",
				Value: Value{Low: 0.9, Likely: 0.9, High: 2.7, Source: "aashto-reaction"},
			},
		},
		{
			Name: "auto-reset-time",
			Value: Figure{
				Name:  "auto-reset-time",
				What:  "time until a self-resetting bimetal breaker closes again",
				Unit:  "s",
				Value: Value{Low: 2, Likely: 15, High: 120, Source: "reset-times"},
			},
		},
		{
			Name: "automotive-extra",
			Value: Figure{
				Name:  "automotive-extra",
				What:  "resistance of automotive primary wire over AWG of the same number, sizes 18 to 8",
				Unit:  "x",
				Value: Value{Low: 1.057, Likely: 1.11, High: 1.119, Source: "sae-j1128"},
			},
		},
		{
			Name: "awg-ratio",
			Value: Figure{
				Name:  "awg-ratio",
				What:  "ratio of the diameters of successive AWG sizes, the 39th root of 92",
				Unit:  "x",
				Value: Value{Low: 1.1229322, Likely: 1.1229322, High: 1.1229322, Source: "astm-b258"},
			},
		},
		{
			Name: "battery-surface",
			Value: Figure{
				Name:  "battery-surface",
				What:  "hottest surface of a battery in a toy",
				Unit:  "degC",
				Value: Value{Low: 71, Likely: 71, High: 71, Source: "astm-f963-surface"},
			},
		},
		{
			Name: "brake-free-speed",
			Value: Figure{
				Name:  "brake-free-speed",
				What:  "speed under which an electric toy car with free feet needs no brake",
				Unit:  "m/s",
				Value: Value{Low: 1, Likely: 1, High: 1, Source: "en-71-1-brakes"},
			},
		},
		{
			Name: "brush-drop",
			Value: Figure{
				Name:  "brush-drop",
				What:  "voltage across both brushes",
				Unit:  "V",
				Value: Value{Likely: 1, High: 2, Source: "motor-brush-trade"},
			},
		},
		{
			Name: "burns-in-10min",
			Value: Figure{
				Name:  "burns-in-10min",
				What:  "bare metal that burns skin which lies on it for 10 minutes",
				Unit:  "degC",
				Value: Value{Low: 48, Likely: 48, High: 48, Source: "iso-13732-burns"},
			},
		},
		{
			Name: "burns-in-10s",
			Value: Figure{
				Name:  "burns-in-10s",
				What:  "bare metal that burns skin which lies on it for 10 seconds",
				Unit:  "degC",
				Value: Value{Low: 55, Likely: 56, High: 57, Source: "iso-13732-burns"},
			},
		},
		{
			Name: "burns-in-1min",
			Value: Figure{
				Name:  "burns-in-1min",
				What:  "bare metal that burns skin which lies on it for 1 minute",
				Unit:  "degC",
				Value: Value{Low: 51, Likely: 51, High: 51, Source: "iso-13732-burns"},
			},
		},
		{
			Name: "burns-in-1s",
			Value: Figure{
				Name:  "burns-in-1s",
				What:  "bare metal that burns skin which lies on it for 1 second",
				Unit:  "degC",
				Value: Value{Low: 65, Likely: 67.5, High: 70, Source: "iso-13732-burns"},
			},
		},
		{
			Name: "burns-in-8h",
			Value: Figure{
				Name:  "burns-in-8h",
				What:  "bare metal that burns skin which lies on it for 8 hours and longer",
				Unit:  "degC",
				Value: Value{Low: 43, Likely: 43, High: 43, Source: "iso-13732-burns"},
			},
		},
		{
			Name: "carpet-adds",
			Value: Figure{
				Name:  "carpet-adds",
				What:  "rolling coefficient that carpet adds over linoleum, wheelchairs",
				Unit:  "x",
				Value: Value{Low: 0.0118, Likely: 0.0118, High: 0.0118, Source: "wheelchair-carpet"},
			},
		},
		{
			Name: "charge-hours-doubt",
			Value: Figure{
				Name:  "charge-hours-doubt",
				What:  "hours of a lithium charge over the computed ones",
				Unit:  "x",
				Value: Value{Low: 0.9, Likely: 1.05, High: 1.3, Source: "charge-doubt"},
			},
		},
		{
			Name: "child-reaction",
			Value: Figure{
				Name:  "child-reaction",
				What:  "simple reaction time of a child of 5 years",
				Unit:  "s",
				Value: Value{Low: 0.465, Likely: 0.465, High: 0.465, Source: "child-reaction"},
			},
		},
		{
			Name: "class-half-life",
			Value: Figure{
				Name:  "class-half-life",
				What:  "rise that halves the life of a winding's insulation",
				Unit:  "K",
				Value: Value{Low: 10, Likely: 10, High: 10, Source: "montsinger"},
			},
		},
		{
			Name: "class-rise-reference",
			Value: Figure{
				Name:  "class-rise-reference",
				What:  "surroundings over which IEC 60034-1 counts the rise of windings",
				Unit:  "degC",
				Value: Value{Low: 40, Likely: 40, High: 40, Source: "iec-60034-1"},
			},
		},
		{
			Name: "continuous-load",
			Value: Figure{
				Name:  "continuous-load",
				What:  "steady current over fuse rating at which a fuse lasts",
				Unit:  "x",
				Value: Value{Low: 0.75, Likely: 0.75, High: 0.75, Source: "fuse-glossary"},
			},
		},
		{
			Name: "continuous-load-most",
			Value: Figure{
				Name:  "continuous-load-most",
				What:  "steady current over the rating of a protective device, upper rule",
				Unit:  "x",
				Value: Value{Low: 0.8, Likely: 0.8, High: 0.8, Source: "nec-210-20"},
			},
		},
		{
			Name: "cooling-bare",
			Value: Figure{
				Name:  "cooling-bare",
				What:  "cooling of a bare battery in air",
				Unit:  "W/(m2 K)",
				Value: Value{Low: 8, Likely: 20, High: 60, Source: "lab-cooling"},
			},
		},
		{
			Name: "cooling-shell",
			Value: Figure{
				Name:  "cooling-shell",
				What:  "cooling in a closed shell over that in free air",
				Unit:  "x",
				Value: Value{Low: 0.2, Likely: 0.33, High: 0.5, Source: "shell-cooling"},
			},
		},
		{
			Name: "cooling-still",
			Value: Figure{
				Name:  "cooling-still",
				What:  "cooling of a bare battery in still air, without a fan",
				Unit:  "W/(m2 K)",
				Value: Value{Low: 7, Likely: 12, High: 19, Source: "still-cooling"},
			},
		},
		{
			Name: "copper-melts",
			Value: Figure{
				Name:  "copper-melts",
				What:  "melting point of copper as Onderdonk's equation takes it",
				Unit:  "degC",
				Value: Value{Low: 1083, Likely: 1083, High: 1083, Source: "onderdonk"},
			},
		},
		{
			Name: "copper-resistivity",
			Value: Figure{
				Name:  "copper-resistivity",
				What:  "resistivity of annealed copper at 20 degC",
				Unit:  "Ohm m",
				Value: Value{Low: 1.7241e-08, Likely: 1.7241e-08, High: 1.7241e-08, Source: "iec-60028"},
			},
		},
		{
			Name: "copper-zero-below",
			Value: Figure{
				Name:  "copper-zero-below",
				What:  "degrees below 0 degC at which copper's resistance would vanish on the straight line of IEC 60949",
				Unit:  "K",
				Value: Value{Low: 234.5, Likely: 234.5, High: 234.5, Source: "iec-60949"},
			},
		},
		{
			Name: "design-deceleration",
			Value: Figure{
				Name:  "design-deceleration",
				What:  "deceleration that roads are designed for",
				Unit:  "m/s2",
				Value: Value{Low: 3.4, Likely: 3.4, High: 3.4, Source: "aashto-deceleration"},
			},
		},
		{
			Name: "drop-critical",
			Value: Figure{
				Name:  "drop-critical",
				What:  "voltage drop allowed in a critical circuit of a boat, share of the full voltage",
				Unit:  "x",
				Value: Value{Low: 0.03, Likely: 0.03, High: 0.03, Source: "abyc-e11-drop"},
			},
		},
		{
			Name: "drop-ordinary",
			Value: Figure{
				Name:  "drop-ordinary",
				What:  "voltage drop allowed in any other circuit of a boat, share of the full voltage",
				Unit:  "x",
				Value: Value{Low: 0.1, Likely: 0.1, High: 0.1, Source: "abyc-e11-drop"},
			},
		},
		{
			Name: "fuse-hot-factor",
			Value: Figure{
				Name:  "fuse-hot-factor",
				What:  "fuse resistance at rated current over cold resistance",
				Unit:  "x",
				Value: Value{Low: 1.3, Likely: 1.5, High: 1.7, Source: "large-blade-drop"},
			},
		},
		{
			Name: "fuse-reach-bare",
			Value: Figure{
				Name:  "fuse-reach-bare",
				What:  "longest wire from the pack to the fuse",
				Unit:  "m",
				Value: Value{Low: 0.178, Likely: 0.178, High: 0.178, Source: "cfr-33-183-455"},
			},
		},
		{
			Name: "fuse-reach-sheathed",
			Value: Figure{
				Name:  "fuse-reach-sheathed",
				What:  "longest wire from the pack to the fuse when it is sheathed all the way",
				Unit:  "m",
				Value: Value{Low: 1.016, Likely: 1.016, High: 1.016, Source: "cfr-33-183-455"},
			},
		},
		{
			Name: "fuse-share-of-ampacity",
			Value: Figure{
				Name:  "fuse-share-of-ampacity",
				What:  "largest fuse rating over the ampacity of the wire",
				Unit:  "x",
				Value: Value{Low: 1.5, Likely: 1.5, High: 1.5, Source: "cfr-33-183-455"},
			},
		},
		{
			Name: "fuse-time-not-below",
			Value: Figure{
				Name:  "fuse-time-not-below",
				What:  "shortest clearing time that is credited to a fuse",
				Unit:  "s",
				Value: Value{Low: 0.01, Likely: 0.01, High: 0.01, Source: "own-clearing-floor"},
			},
		},
		{
			Name: "gear-stage-efficiency",
			Value: Figure{
				Name:  "gear-stage-efficiency",
				What:  "efficiency of one plastic gear stage",
				Unit:  "x",
				Value: Value{Low: 0.8, Likely: 0.85, High: 0.9, Source: "gear-stage-2007"},
			},
		},
		{
			Name: "growth-lead",
			Value: Figure{
				Name:  "growth-lead",
				What:  "resistance at 80 % health over that when new, sealed lead-acid",
				Unit:  "x",
				Value: Value{Low: 1.2, Likely: 1.5, High: 2.5, Source: "lead-growth"},
			},
		},
		{
			Name: "growth-lead-spent",
			Value: Figure{
				Name:  "growth-lead-spent",
				What:  "resistance at 80 % health over that when new, sealed lead-acid that dried out or stood flat",
				Unit:  "x",
				Value: Value{Low: 2, Likely: 4, High: 10, Source: "lead-growth-spent"},
			},
		},
		{
			Name: "growth-lithium",
			Value: Figure{
				Name:  "growth-lithium",
				What:  "resistance at 80 % health over that when new, lithium",
				Unit:  "x",
				Value: Value{Low: 1.35, Likely: 1.65, High: 1.9, Source: "growth-measured"},
			},
		},
		{
			Name: "health-lead-1y",
			Value: Figure{
				Name:  "health-lead-1y",
				What:  "health of a sealed lead-acid battery: one year",
				Unit:  "x",
				Value: Value{Low: 0.75, Likely: 0.87, High: 0.95, Source: "lead-years"},
			},
		},
		{
			Name: "health-lead-2y",
			Value: Figure{
				Name:  "health-lead-2y",
				What:  "health of a sealed lead-acid battery: two years",
				Unit:  "x",
				Value: Value{Low: 0.5, Likely: 0.7, High: 0.85, Source: "lead-years"},
			},
		},
		{
			Name: "health-lead-3y",
			Value: Figure{
				Name:  "health-lead-3y",
				What:  "health of a sealed lead-acid battery: three years",
				Unit:  "x",
				Value: Value{Low: 0.2, Likely: 0.48, High: 0.7, Source: "lead-years"},
			},
		},
		{
			Name: "health-lead-new",
			Value: Figure{
				Name:  "health-lead-new",
				What:  "health of a sealed lead-acid battery: new",
				Unit:  "x",
				Value: Value{Low: 0.95, Likely: 0.98, High: 1, Source: "lead-years"},
			},
		},
		{
			Name: "health-lead-spent",
			Value: Figure{
				Name:  "health-lead-spent",
				What:  "health of a sealed lead-acid battery: all but dead",
				Unit:  "x",
				Value: Value{Low: 0.04, Likely: 0.15, High: 0.4, Source: "lead-spent"},
			},
		},
		{
			Name: "health-lead-worn",
			Value: Figure{
				Name:  "health-lead-worn",
				What:  "health of a sealed lead-acid battery: worn",
				Unit:  "x",
				Value: Value{Low: 0.2, Likely: 0.5, High: 0.75, Source: "lead-years"},
			},
		},
		{
			Name: "health-lithium-1y",
			Value: Figure{
				Name:  "health-lithium-1y",
				What:  "health of a lithium pack: one year",
				Unit:  "x",
				Value: Value{Low: 0.87, Likely: 0.94, High: 0.98, Source: "lithium-years"},
			},
		},
		{
			Name: "health-lithium-2y",
			Value: Figure{
				Name:  "health-lithium-2y",
				What:  "health of a lithium pack: two years",
				Unit:  "x",
				Value: Value{Low: 0.78, Likely: 0.89, High: 0.96, Source: "lithium-years"},
			},
		},
		{
			Name: "health-lithium-3y",
			Value: Figure{
				Name:  "health-lithium-3y",
				What:  "health of a lithium pack: three years",
				Unit:  "x",
				Value: Value{Low: 0.68, Likely: 0.84, High: 0.94, Source: "lithium-years"},
			},
		},
		{
			Name: "health-lithium-new",
			Value: Figure{
				Name:  "health-lithium-new",
				What:  "health of a lithium pack: new",
				Unit:  "x",
				Value: Value{Low: 0.97, Likely: 0.99, High: 1, Source: "lithium-years"},
			},
		},
		{
			Name: "health-lithium-worn",
			Value: Figure{
				Name:  "health-lithium-worn",
				What:  "health of a lithium pack: worn",
				Unit:  "x",
				Value: Value{Low: 0.4, Likely: 0.67, High: 0.81, Source: "lithium-years"},
			},
		},
		{
			Name: "height-over-wheelbase",
			Value: Figure{
				Name:  "height-over-wheelbase",
				What:  "height of the centre of mass of vehicle and child over the wheelbase",
				Unit:  "x",
				Value: Value{Low: 0.4, Likely: 0.5, High: 0.6, Source: "seat-estimate"},
			},
		},
		{
			Name: "hottest-doubt",
			Value: Figure{
				Name:  "hottest-doubt",
				What:  "highest temperature over the computed one",
				Unit:  "K",
				Value: Value{Low: -2.5, High: 3, Source: "heat-doubt"},
			},
		},
		{
			Name: "hour-share-lead",
			Value: Figure{
				Name:  "hour-share-lead",
				What:  "charge at the 1 h rate over that at the 20 h rate, sealed lead-acid",
				Unit:  "x",
				Value: Value{Low: 0.58, Likely: 0.61, High: 0.74, Source: "lead-hour-shares"},
			},
		},
		{
			Name: "joint-heat-replace",
			Value: Figure{
				Name:  "joint-heat-replace",
				What:  "heat in one joint at which to replace it",
				Unit:  "W",
				Value: Value{Low: 3, Likely: 3, High: 3, Source: "joint-heat-own"},
			},
		},
		{
			Name: "joint-heat-watch",
			Value: Figure{
				Name:  "joint-heat-watch",
				What:  "heat in one joint at which to look at it",
				Unit:  "W",
				Value: Value{Low: 1, Likely: 1, High: 1, Source: "joint-heat-own"},
			},
		},
		{
			Name: "label-honesty-lead",
			Value: Figure{
				Name:  "label-honesty-lead",
				What:  "charge of a new sealed lead-acid battery over its label",
				Unit:  "x",
				Value: Value{Low: 0.82, Likely: 0.98, High: 1.14, Source: "lead-label"},
			},
		},
		{
			Name: "label-honesty-lithium",
			Value: Figure{
				Name:  "label-honesty-lithium",
				What:  "charge of a new lithium pack of the tool's maker over its label",
				Unit:  "x",
				Value: Value{Low: 0.9, Likely: 1.01, High: 1.06, Source: "own-cells-measured"},
			},
		},
		{
			Name: "label-honesty-lookalike",
			Value: Figure{
				Name:  "label-honesty-lookalike",
				What:  "charge of a new look-alike lithium pack over its label",
				Unit:  "x",
				Value: Value{Low: 0.35, Likely: 0.5, High: 0.9, Source: "lookalike-bench"},
			},
		},
		{
			Name: "label-honesty-unknown",
			Value: Figure{
				Name:  "label-honesty-unknown",
				What:  "charge of a new lithium pack over its label, maker's own or look-alike",
				Unit:  "x",
				Value: Value{Low: 0.42, Likely: 0.98, High: 1.06, Source: "unknown-seller"},
			},
		},
		{
			Name: "largest-hard-wheel-test",
			Value: Figure{
				Name:  "largest-hard-wheel-test",
				What:  "largest wheel diameter for which the rolling length was measured",
				Unit:  "m",
				Value: Value{Low: 0.153, Likely: 0.153, High: 0.153, Source: "al-eisawi-1999"},
			},
		},
		{
			Name: "left-behind-lithium",
			Value: Figure{
				Name:  "left-behind-lithium",
				What:  "share of its charge that a lithium cell keeps from a fast discharge until it has rested",
				Unit:  "x",
				Value: Value{Low: 0.004, Likely: 0.04, High: 0.12, Source: "left-behind-lithium"},
			},
		},
		{
			Name: "magnet-flux-loss",
			Value: Figure{
				Name:  "magnet-flux-loss",
				What:  "share of its flux that a ferrite magnet loses per K, reversibly",
				Unit:  "1/K",
				Value: Value{Low: 0.002, Likely: 0.002, High: 0.002, Source: "magnet-trade"},
			},
		},
		{
			Name: "motor-torque-share",
			Value: Figure{
				Name:  "motor-torque-share",
				What:  "printed stall torque over stall current times generator constant",
				Unit:  "x",
				Value: Value{Low: 0.76, Likely: 0.89, High: 1.02, Source: "motor-stall-torque"},
			},
		},
		{
			Name: "new-motor-rise",
			Value: Figure{
				Name:  "new-motor-rise",
				What:  "how much hotter than the air windings run in a vehicle as it was made, on hard level ground",
				Unit:  "K",
				Value: Value{Low: 30, Likely: 55, High: 85, Source: "new-motor-rise"},
			},
		},
		{
			Name: "overload-factor",
			Value: Figure{
				Name:  "overload-factor",
				What:  "load that a ride-on toy must bear, over the child's weight",
				Unit:  "x",
				Value: Value{Low: 3, Likely: 3, High: 3, Source: "astm-f963-overload"},
			},
		},
		{
			Name: "pack-reset-time",
			Value: Figure{
				Name:  "pack-reset-time",
				What:  "time until a pack's electronics let current through again once the load is off",
				Unit:  "s",
				Value: Value{Low: 0.1, Likely: 5, High: 60, Source: "reset-times"},
			},
		},
		{
			Name: "pack-tabs",
			Value: Figure{
				Name:  "pack-tabs",
				What:  "resistance of tabs and terminals of a tool pack",
				Unit:  "Ohm",
				Value: Value{Low: 0.005, Likely: 0.009, High: 0.015, Source: "pack-tabs"},
			},
		},
		{
			Name: "peukert-lead",
			Value: Figure{
				Name:  "peukert-lead",
				What:  "Peukert's exponent of sealed lead-acid between 20 h and 1 h",
				Value: Value{Low: 1.11, Likely: 1.2, High: 1.23, Source: "lead-steepness"},
			},
		},
		{
			Name: "plastic-softening-point",
			Value: Figure{
				Name:  "plastic-softening-point",
				What:  "temperature at which plastic end bells and gears soften",
				Unit:  "degC",
				Value: Value{Low: 100, Likely: 115, High: 130, Source: "plastic-trade"},
			},
		},
		{
			Name: "polymer-reset-time",
			Value: Figure{
				Name:  "polymer-reset-time",
				What:  "time until a resettable polymer fuse has cooled enough to carry the load again",
				Unit:  "s",
				Value: Value{Low: 10, Likely: 60, High: 600, Source: "reset-times"},
			},
		},
		{
			Name: "preece-copper",
			Value: Figure{
				Name:  "preece-copper",
				What:  "Preece's constant for copper, A per inch^1.5",
				Unit:  "A/in^1.5",
				Value: Value{Low: 10244, Likely: 10244, High: 10244, Source: "preece"},
			},
		},
		{
			Name: "pulse-rest",
			Value: Figure{
				Name:  "pulse-rest",
				What:  "time between pulses that a fuse counts one by one",
				Unit:  "s",
				Value: Value{Low: 10, Likely: 10, High: 10, Source: "pulse-guide"},
			},
		},
		{
			Name: "rear-axle-share",
			Value: Figure{
				Name:  "rear-axle-share",
				What:  "share of the weight that the rear wheels carry on the level, child in the seat",
				Unit:  "x",
				Value: Value{Low: 0.48, Likely: 0.58, High: 0.7, Source: "seat-estimate"},
			},
		},
		{
			Name: "resistance-other-lithium",
			Value: Figure{
				Name:  "resistance-other-lithium",
				What:  "resistance of a new lithium cell of any model over that of the member drawn",
				Unit:  "x",
				Value: Value{Low: 0.66, Likely: 1, High: 1.51, Source: "other-models"},
			},
		},
		{
			Name: "resistance-within-lead",
			Value: Figure{
				Name:  "resistance-within-lead",
				What:  "resistance of a new sealed lead-acid block over that of its kind",
				Unit:  "x",
				Value: Value{Low: 0.75, Likely: 1, High: 1.4, Source: "lead-ohm-sheets"},
			},
		},
		{
			Name: "resistance-within-lithium",
			Value: Figure{
				Name:  "resistance-within-lithium",
				What:  "resistance of a new lithium cell over that of its model",
				Unit:  "x",
				Value: Value{Low: 0.87, Likely: 1, High: 1.15, Source: "six-energy-cells"},
			},
		},
		{
			Name: "rubber-rolling-share",
			Value: Figure{
				Name:  "rubber-rolling-share",
				What:  "rolling of a rubber-faced wheel over a hard one",
				Unit:  "x",
				Value: Value{Low: 0.8, Likely: 0.85, High: 0.9, Source: "rubber-face-judgement"},
			},
		},
		{
			Name: "smallest-wire-outside",
			Value: Figure{
				Name:  "smallest-wire-outside",
				What:  "least cross-section of a single wire outside a sheath",
				Unit:  "mm2",
				Value: Value{Low: 1, Likely: 1, High: 1, Source: "iso-10133"},
			},
		},
		{
			Name: "soft-start-ramp",
			Value: Figure{
				Name:  "soft-start-ramp",
				What:  "soft-start ramp of a toy controller",
				Unit:  "s",
				Value: Value{Low: 0.5, Likely: 1, High: 2, Source: "ramp-trade"},
			},
		},
		{
			Name: "stability-slope",
			Value: Figure{
				Name:  "stability-slope",
				What:  "sideways slope on which a ride-on toy must stand",
				Unit:  "deg",
				Value: Value{Low: 10, Likely: 10, High: 10, Source: "astm-f963-stability"},
			},
		},
		{
			Name: "steepness-lead",
			Value: Figure{
				Name:  "steepness-lead",
				What:  "depth of the bound well of a block of any kind over that of the member drawn",
				Unit:  "x",
				Value: Value{Low: 0.7, Likely: 1, High: 1.25, Source: "other-blocks"},
			},
		},
		{
			Name: "steepness-own-lead",
			Value: Figure{
				Name:  "steepness-own-lead",
				What:  "depth of the bound well of a block that was tested at one current over that of general blocks",
				Unit:  "x",
				Value: Value{Low: 0.52, Likely: 0.98, High: 1.27, Source: "member-blocks"},
			},
		},
		{
			Name: "steepness-own-lithium",
			Value: Figure{
				Name:  "steepness-own-lithium",
				What:  "depth of the bound well of a lithium cell that was tested at several currents over the fitted one",
				Unit:  "x",
				Value: Value{Low: 0.5, Likely: 1, High: 1.7, Source: "wells-refitted"},
			},
		},
		{
			Name: "switch-contact-resistance",
			Value: Figure{
				Name:  "switch-contact-resistance",
				What:  "resistance of a used pedal switch",
				Unit:  "Ohm",
				Value: Value{Low: 0.005, Likely: 0.02, High: 0.06, Source: "switch-contact-trade"},
			},
		},
		{
			Name: "switch-inrush",
			Value: Figure{
				Name:  "switch-inrush",
				What:  "current that a switch for a DC motor should bear, over the running current",
				Unit:  "x",
				Value: Value{Low: 6, Likely: 6, High: 6, Source: "switch-guides"},
			},
		},
		{
			Name: "tab-wire-most",
			Value: Figure{
				Name:  "tab-wire-most",
				What:  "thickest flexible conductor of a flat quick-connect",
				Unit:  "mm2",
				Value: Value{Low: 6, Likely: 6, High: 6, Source: "iec-61210"},
			},
		},
		{
			Name: "terminal-test-drop",
			Value: Figure{
				Name:  "terminal-test-drop",
				What:  "largest voltage across a terminal block in its test at a tenth of the rated current",
				Unit:  "V",
				Value: Value{Low: 0.0032, Likely: 0.0032, High: 0.0032, Source: "iec-60947-7-1"},
			},
		},
		{
			Name: "touch-rise-metal",
			Value: Figure{
				Name:  "touch-rise-metal",
				What:  "temperature rise of metal parts held in the hand",
				Unit:  "K",
				Value: Value{Low: 25, Likely: 25, High: 25, Source: "iec-62115-touch"},
			},
		},
		{
			Name: "touch-rise-plastic",
			Value: Figure{
				Name:  "touch-rise-plastic",
				What:  "temperature rise of plastic parts held in the hand",
				Unit:  "K",
				Value: Value{Low: 35, Likely: 35, High: 35, Source: "iec-62115-touch"},
			},
		},
		{
			Name: "toy-voltage",
			Value: Figure{
				Name:  "toy-voltage",
				What:  "largest nominal voltage of a toy (US and EU)",
				Unit:  "V",
				Value: Value{Low: 24, Likely: 24, High: 24, Source: "astm-f963-voltage"},
			},
		},
		{
			Name: "toy-voltage-eu",
			Value: Figure{
				Name:  "toy-voltage-eu",
				What:  "largest rated voltage of a toy in the EU",
				Unit:  "V",
				Value: Value{Low: 24, Likely: 24, High: 24, Source: "eu-toy-voltage"},
			},
		},
		{
			Name: "weakest-cell-new",
			Value: Figure{
				Name:  "weakest-cell-new",
				What:  "share of the charge that the weakest cell of a new pack lacks",
				Unit:  "x",
				Value: Value{Low: 0.003, Likely: 0.007, High: 0.015, Source: "cell-spread"},
			},
		},
		{
			Name: "weakest-cell-used",
			Value: Figure{
				Name:  "weakest-cell-used",
				What:  "share of the charge that the weakest cell of a used pack lacks",
				Unit:  "x",
				Value: Value{Low: 0.02, Likely: 0.08, High: 0.2, Source: "used-pack-spread"},
			},
		},
	},
	conductors: rows.Rows[conductor]{
		{
			Name: "class2-plain",
			Value: conductor{
				ohmPerKM: []Point{
					{X: 0.5, Y: 36}, {X: 0.75, Y: 24.5}, {X: 1, Y: 18.1}, {X: 1.5, Y: 12.1},
					{X: 2.5, Y: 7.41}, {X: 4, Y: 4.61}, {X: 6, Y: 3.08}, {X: 10, Y: 1.83}, {X: 16, Y: 1.15},
				},
				source: "iec-60228-t1",
			},
		},
		{
			Name: "class5-plain",
			Value: conductor{
				ohmPerKM: []Point{
					{X: 0.5, Y: 39}, {X: 0.75, Y: 26}, {X: 1, Y: 19.5}, {X: 1.5, Y: 13.3}, {X: 2.5, Y: 7.98},
					{X: 4, Y: 4.95}, {X: 6, Y: 3.3}, {X: 10, Y: 1.91}, {X: 16, Y: 1.21},
				},
				source: "iec-60228-t3",
			},
		},
		{
			Name: "class5-tinned",
			Value: conductor{
				ohmPerKM: []Point{
					{X: 0.5, Y: 40.1}, {X: 0.75, Y: 26.7}, {X: 1, Y: 20}, {X: 1.5, Y: 13.7},
					{X: 2.5, Y: 8.21}, {X: 4, Y: 5.09}, {X: 6, Y: 3.39}, {X: 10, Y: 1.95}, {X: 16, Y: 1.24},
				},
				source: "iec-60228-t3",
			},
		},
	},
	gauges: rows.Rows[gauge]{
		{Name: "automotive-10", Value: gauge{number: 10, areaMM2: 4.734167977207922, source: "sae-j1128"}},
		{Name: "automotive-12", Value: gauge{number: 12, areaMM2: 2.9556247255757047, source: "sae-j1128"}},
		{Name: "automotive-14", Value: gauge{number: 14, areaMM2: 1.8758310876189368, source: "sae-j1128"}},
		{Name: "automotive-16", Value: gauge{number: 16, areaMM2: 1.1836686711717548, source: "sae-j1128"}},
		{Name: "automotive-18", Value: gauge{number: 18, areaMM2: 0.7788093953728541, source: "sae-j1128"}},
		{Name: "automotive-8", Value: gauge{number: 8, areaMM2: 7.5043377654339425, source: "sae-j1128"}},
	},
	ampacities: rows.Rows[ampacityCurve]{
		{
			Name: "boat-105",
			Value: ampacityCurve{
				system:      1,
				insulationC: 105,
				ambientC:    30,
				amps: []Point{
					{X: 0.8230468337313146, Y: 20}, {X: 1.3086957277552633, Y: 25},
					{X: 2.080907717098377, Y: 35}, {X: 3.3087728761114765, Y: 45},
					{X: 5.261154954510377, Y: 60}, {X: 8.365564060081022, Y: 80},
					{X: 13.301767890969138, Y: 120},
				},
				source: "cfr-33-183-425",
			},
		},
		{
			Name: "boat-125",
			Value: ampacityCurve{
				system:      1,
				insulationC: 125,
				ambientC:    30,
				amps: []Point{
					{X: 0.8230468337313146, Y: 25}, {X: 1.3086957277552633, Y: 30},
					{X: 2.080907717098377, Y: 40}, {X: 3.3087728761114765, Y: 50},
					{X: 5.261154954510377, Y: 70}, {X: 8.365564060081022, Y: 90},
					{X: 13.301767890969138, Y: 125},
				},
				source: "cfr-33-183-425",
			},
		},
		{
			Name: "boat-200",
			Value: ampacityCurve{
				system:      1,
				insulationC: 200,
				ambientC:    30,
				amps: []Point{
					{X: 0.8230468337313146, Y: 25}, {X: 1.3086957277552633, Y: 35},
					{X: 2.080907717098377, Y: 45}, {X: 3.3087728761114765, Y: 55},
					{X: 5.261154954510377, Y: 70}, {X: 8.365564060081022, Y: 100},
					{X: 13.301767890969138, Y: 135},
				},
				source: "cfr-33-183-425",
			},
		},
		{
			Name: "boat-60",
			Value: ampacityCurve{
				system:      1,
				insulationC: 60,
				ambientC:    30,
				amps: []Point{
					{X: 0.8230468337313146, Y: 10}, {X: 1.3086957277552633, Y: 15},
					{X: 2.080907717098377, Y: 20}, {X: 3.3087728761114765, Y: 25},
					{X: 5.261154954510377, Y: 40}, {X: 8.365564060081022, Y: 55},
					{X: 13.301767890969138, Y: 80},
				},
				source: "cfr-33-183-425",
			},
		},
		{
			Name: "boat-75",
			Value: ampacityCurve{
				system:      1,
				insulationC: 75,
				ambientC:    30,
				amps: []Point{
					{X: 0.8230468337313146, Y: 10}, {X: 1.3086957277552633, Y: 15},
					{X: 2.080907717098377, Y: 20}, {X: 3.3087728761114765, Y: 25},
					{X: 5.261154954510377, Y: 40}, {X: 8.365564060081022, Y: 65},
					{X: 13.301767890969138, Y: 95},
				},
				source: "cfr-33-183-425",
			},
		},
		{
			Name: "boat-80",
			Value: ampacityCurve{
				system:      1,
				insulationC: 80,
				ambientC:    30,
				amps: []Point{
					{X: 0.8230468337313146, Y: 15}, {X: 1.3086957277552633, Y: 20},
					{X: 2.080907717098377, Y: 25}, {X: 3.3087728761114765, Y: 35},
					{X: 5.261154954510377, Y: 50}, {X: 8.365564060081022, Y: 70},
					{X: 13.301767890969138, Y: 100},
				},
				source: "cfr-33-183-425",
			},
		},
		{
			Name: "boat-90",
			Value: ampacityCurve{
				system:      1,
				insulationC: 90,
				ambientC:    30,
				amps: []Point{
					{X: 0.8230468337313146, Y: 20}, {X: 1.3086957277552633, Y: 25},
					{X: 2.080907717098377, Y: 30}, {X: 3.3087728761114765, Y: 40},
					{X: 5.261154954510377, Y: 55}, {X: 8.365564060081022, Y: 70},
					{X: 13.301767890969138, Y: 100},
				},
				source: "cfr-33-183-425",
			},
		},
		{
			Name: "metric-105",
			Value: ampacityCurve{
				insulationC: 105,
				ambientC:    30,
				amps: []Point{
					{X: 0.75, Y: 16}, {X: 1, Y: 20}, {X: 1.5, Y: 25}, {X: 2.5, Y: 35}, {X: 4, Y: 45},
					{X: 6, Y: 60}, {X: 10, Y: 90}, {X: 16, Y: 130},
				},
				source: "iso-10133-a",
			},
		},
		{
			Name: "metric-70-in-sheath",
			Value: ampacityCurve{
				insulationC: 70,
				ambientC:    30,
				amps: []Point{
					{X: 0.75, Y: 12}, {X: 1, Y: 15}, {X: 1.5, Y: 18}, {X: 2.5, Y: 26}, {X: 4, Y: 34},
					{X: 6, Y: 44}, {X: 10, Y: 61}, {X: 16, Y: 82},
				},
				source: "vde-0298-4-t11",
			},
		},
		{
			Name: "metric-70-single-free",
			Value: ampacityCurve{
				freeAir:     true,
				insulationC: 70,
				ambientC:    30,
				amps: []Point{
					{X: 0.75, Y: 15}, {X: 1, Y: 19}, {X: 1.5, Y: 24}, {X: 2.5, Y: 32}, {X: 4, Y: 42},
					{X: 6, Y: 54}, {X: 10, Y: 73}, {X: 16, Y: 98},
				},
				source: "vde-0298-4-t11",
			},
		},
	},
	adiabatics: rows.Rows[Insulation]{
		{
			Name: "pvc-70",
			Value: Insulation{
				Name:   "pvc-70",
				Words:  []string{"pvc", "thermoplastic"},
				K:      115,
				StartC: 70,
				FinalC: 160,
				Source: "iec-60364-5-54",
			},
		},
		{
			Name: "pvc-90",
			Value: Insulation{
				Name:   "pvc-90",
				Words:  []string{"heat resistant pvc"},
				K:      100,
				StartC: 90,
				FinalC: 160,
				Source: "iec-60364-5-54",
			},
		},
		{
			Name: "rubber-60",
			Value: Insulation{
				Name:   "rubber-60",
				Words:  []string{"rubber"},
				K:      141,
				StartC: 60,
				FinalC: 200,
				Source: "iec-60364-5-54",
			},
		},
		{
			Name:  "rubber-85",
			Value: Insulation{Name: "rubber-85", K: 134, StartC: 85, FinalC: 220, Source: "iec-60364-5-54"},
		},
		{
			Name: "silicone-180",
			Value: Insulation{
				Name:   "silicone-180",
				Words:  []string{"silicone", "silicone rubber"},
				K:      132,
				StartC: 180,
				FinalC: 350,
				Source: "iec-60364-5-54",
			},
		},
		{
			Name: "xlpe-90",
			Value: Insulation{
				Name:   "xlpe-90",
				Words:  []string{"xlpe", "epr", "cross-linked"},
				K:      143,
				StartC: 90,
				FinalC: 250,
				Source: "iec-60364-5-54",
			},
		},
	},
	fuses: rows.Rows[Fuse]{
		{
			Name: "auto-reset-breaker",
			Value: Fuse{
				Form: "auto-reset-breaker",
				Words: []string{
					"auto reset", "breaker", "circuit breaker", "auto-reset", "thermal breaker",
					"self-resetting breaker",
				},
				What:    "thermal breaker that closes again by itself (SAE J553 type 1)",
				Breaker: true,
				Source:  "sae-j553-scope",
				Gates: []Gate{
					{Ratio: 1, EarliestS: 360000},
					{Ratio: 1.35, EarliestS: 10, LatestS: 3600},
					{Ratio: 2, EarliestS: 10, LatestS: 60},
				},
				ReferenceC:    25,
				GatesSource:   "sae-j553-times",
				RatingsA:      []float64{5, 6, 8, 10, 15, 20, 25, 30, 40, 50},
				RatingsSource: "breaker-ratings",
				Heat:          []Point{{X: 25, Y: 1}, {X: 75, Y: 0.5}},
				HeatSource:    "breaker-heat",
				VoltagesV:     []float64{16, 32},
				VoltageSource: "iso-16750-2",
			},
		},
		{
			Name: "glass-tube",
			Value: Fuse{
				Form:          "glass-tube",
				Words:         []string{"glass", "glass fuse", "tube"},
				What:          "glass tube fuse (UL 248-14)",
				Source:        "ul-248-14",
				Gates:         []Gate{{Ratio: 1.1, EarliestS: 14400}, {Ratio: 1.35, LatestS: 3600}, {Ratio: 2, LatestS: 120}},
				ReferenceC:    25,
				GatesSource:   "ul-248-14",
				RatingsA:      []float64{1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30},
				RatingsSource: "glass-ratings",
				Heat:          []Point{{X: 25, Y: 1}, {X: 85, Y: 0.91}},
				HeatSource:    "glass-heat",
				VoltagesV:     []float64{32, 250},
				VoltageSource: "glass-ratings",
			},
		},
		{
			Name: "large-blade",
			Value: Fuse{
				Form:   "large-blade",
				Words:  []string{"big blade", "large blade fuse", "type e"},
				What:   "large blade fuse, 29 mm (ISO 8820-3 type E)",
				Source: "large-blade-sheet",
				Gates: []Gate{
					{Ratio: 1, EarliestS: 360000},
					{Ratio: 1.35, EarliestS: 60, LatestS: 1800},
					{Ratio: 2, EarliestS: 2, LatestS: 50},
					{Ratio: 3.5, EarliestS: 0.2, LatestS: 7},
					{Ratio: 6, EarliestS: 0.04, LatestS: 1},
				},
				ReferenceC:    23,
				GatesSource:   "large-blade-sheet",
				RatingsA:      []float64{20, 25, 30, 35, 40, 50, 60, 70, 80, 100},
				RatingsSource: "iso-8820-3-ratings",
				ColdOhm:       []Point{{X: 30, Y: 0.0019}, {X: 35, Y: 0.0017}, {X: 40, Y: 0.0014}},
				ColdSource:    "large-blade-sheet",
				MeltingA2s:    []Point{{X: 30, Y: 4100}, {X: 35, Y: 6000}, {X: 40, Y: 8500}},
				MeltingSource: "large-blade-sheet",
				Heat: []Point{
					{X: 20, Y: 1}, {X: 65, Y: 0.85}, {X: 85, Y: 0.75}, {X: 110, Y: 0.625}, {X: 125, Y: 0.55},
				},
				HeatSource:    "large-blade-sheet",
				VoltagesV:     []float64{32, 58},
				BreakingA:     1000,
				VoltageSource: "iso-8820-3-scope",
				HolderA:       45,
				HolderMostA:   60,
				HolderC:       80,
				HolderSource:  "blade-holder-sheets",
			},
		},
		{
			Name: "quick-glass-tube",
			Value: Fuse{
				Form:   "quick-glass-tube",
				Words:  []string{"quick glass", "fast glass", "5x20 f"},
				What:   "quick-acting miniature fuse-link (IEC 60127-2, F)",
				Source: "iec-60127-2-f",
				Gates: []Gate{
					{Ratio: 1.5, EarliestS: 3600},
					{Ratio: 2.1, LatestS: 1800},
					{Ratio: 2.75, EarliestS: 0.05, LatestS: 2},
					{Ratio: 4, EarliestS: 0.01, LatestS: 0.3},
					{Ratio: 10, LatestS: 0.02},
				},
				ReferenceC:    23,
				GatesSource:   "iec-60127-2-f",
				RatingsA:      []float64{0.125, 0.25, 0.5, 1, 2, 3.15, 4, 5, 6.3, 8, 10},
				RatingsSource: "glass-ratings",
				Heat:          []Point{{X: 25, Y: 1}, {X: 85, Y: 0.91}},
				HeatSource:    "glass-heat",
				VoltagesV:     []float64{250},
				VoltageSource: "glass-ratings",
			},
		},
		{
			Name: "small-blade",
			Value: Fuse{
				Form: "small-blade",
				Words: []string{
					"blade", "standard blade", "regular blade", "small blade fuse", "blade fuse", "type c",
				},
				What:   "small blade fuse, 19 mm (ISO 8820-3 type C)",
				Source: "small-blade-sheet",
				Gates: []Gate{
					{Ratio: 1, EarliestS: 360000},
					{Ratio: 1.35, EarliestS: 0.75, LatestS: 600},
					{Ratio: 1.6, EarliestS: 0.25, LatestS: 50},
					{Ratio: 2, EarliestS: 0.15, LatestS: 5},
					{Ratio: 3.5, EarliestS: 0.08, LatestS: 0.5},
					{Ratio: 6, LatestS: 0.15},
				},
				ReferenceC:    23,
				GatesSource:   "small-blade-sheet",
				RatingsA:      []float64{1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40},
				RatingsSource: "iso-8820-3-ratings",
				ColdOhm:       []Point{{X: 10, Y: 0.0077}, {X: 20, Y: 0.00338}, {X: 25, Y: 0.00252}, {X: 40, Y: 0.00144}},
				ColdSource:    "small-blade-sheet",
				MeltingA2s:    []Point{{X: 25, Y: 1000}, {X: 40, Y: 3300}},
				MeltingSource: "small-blade-sheet",
				Heat: []Point{
					{X: 20, Y: 1}, {X: 65, Y: 0.85}, {X: 85, Y: 0.75}, {X: 110, Y: 0.625}, {X: 125, Y: 0.55},
				},
				HeatSource:    "large-blade-heat-borrowed",
				VoltagesV:     []float64{32, 58},
				BreakingA:     1000,
				VoltageSource: "iso-8820-3-scope",
				HolderA:       20,
				HolderMostA:   30,
				HolderSource:  "blade-holder-sheets",
			},
		},
	},
	pulses: rows.Rows[pulseLife]{
		{
			Name: "blade",
			Value: pulseLife{
				shares: []Point{{X: 100, Y: 0.48}, {X: 1000, Y: 0.38}, {X: 10000, Y: 0.29}, {X: 100000, Y: 0.22}},
				source: "pulse-guide",
			},
		},
	},
	joints: rows.Rows[Joint]{
		{
			Name: "bullet-3.5",
			Value: Joint{
				Name:    "bullet-3.5",
				Words:   []string{"bullet", "bullet connector", "3.5 mm bullet"},
				What:    "two-pole 3.5 mm bullet connector; the wire, not the contact, sets its temperature",
				NewOhm:  Value{Low: 0.00055, Likely: 0.00055, High: 0.00055, Source: "bullet-sheet"},
				SteadyA: Value{Low: 30, Likely: 30, High: 30, Source: "bullet-sheet"},
				Source:  "bullet-sheet",
			},
		},
		{
			Name: "crimped-tab",
			Value: Joint{
				Name:    "crimped-tab",
				Words:   []string{"tab", "quick connect", "flat quick-connect", "crimp", "crimped terminal", "tab 6.3"},
				What:    "crimped flat quick-connect on a 6.3 mm tab",
				NewOhm:  Value{Low: 0.0005, Likely: 0.0015, High: 0.003, Source: "crimp-trade"},
				AgedOhm: Value{Low: 0.005, Likely: 0.01, High: 0.02, Source: "crimp-trade"},
				SteadyA: Value{Low: 15, Likely: 15, High: 20, Source: "tab-practice"},
				MostMM2: 6,
				Source:  "crimp-trade",
			},
		},
		{
			Name: "pedal-switch",
			Value: Joint{
				Name:    "pedal-switch",
				Words:   []string{"pedal", "foot switch", "switch"},
				What:    "pedal switch of a ride-on toy, its contacts",
				NewOhm:  Value{Low: 0.005, Likely: 0.01, High: 0.02, Source: "switch-contact-trade"},
				AgedOhm: Value{Low: 0.01, Likely: 0.025, High: 0.06, Source: "switch-contact-trade"},
				Source:  "switch-contact-trade",
			},
		},
		{
			Name: "soldered",
			Value: Joint{
				Name:   "soldered",
				Words:  []string{"solder", "solder joint"},
				What:   "soldered joint",
				NewOhm: Value{Low: 5e-05, Likely: 0.0002, High: 0.0005, Source: "screw-trade"},
				Source: "screw-trade",
			},
		},
		{
			Name: "terminal-block-10",
			Value: Joint{
				Name:    "terminal-block-10",
				Words:   []string{"terminal block 10 mm2"},
				What:    "terminal block for 10 mm2",
				NewOhm:  Value{Likely: 0.0003, High: 0.00056, Source: "iec-60947-7-1"},
				SteadyA: Value{Low: 57, Likely: 57, High: 57, Source: "iec-60947-7-1"},
				MostMM2: 10,
				Source:  "iec-60947-7-1",
			},
		},
		{
			Name: "terminal-block-2.5",
			Value: Joint{
				Name:    "terminal-block-2.5",
				Words:   []string{"terminal block 2.5 mm2"},
				What:    "terminal block for 2.5 mm2",
				NewOhm:  Value{Likely: 0.0006, High: 0.00133, Source: "iec-60947-7-1"},
				SteadyA: Value{Low: 24, Likely: 24, High: 24, Source: "iec-60947-7-1"},
				MostMM2: 2.5,
				Source:  "iec-60947-7-1",
			},
		},
		{
			Name: "terminal-block-4",
			Value: Joint{
				Name:    "terminal-block-4",
				Words:   []string{"terminal block 4 mm2"},
				What:    "terminal block for 4 mm2",
				NewOhm:  Value{Likely: 0.0005, High: 0.001, Source: "iec-60947-7-1"},
				SteadyA: Value{Low: 32, Likely: 32, High: 32, Source: "iec-60947-7-1"},
				MostMM2: 4,
				Source:  "iec-60947-7-1",
			},
		},
		{
			Name: "terminal-block-6",
			Value: Joint{
				Name:    "terminal-block-6",
				Words:   []string{"terminal block 6 mm2"},
				What:    "terminal block for 6 mm2",
				NewOhm:  Value{Likely: 0.0004, High: 0.00078, Source: "iec-60947-7-1"},
				SteadyA: Value{Low: 41, Likely: 41, High: 41, Source: "iec-60947-7-1"},
				MostMM2: 6,
				Source:  "iec-60947-7-1",
			},
		},
	},
	motors: rows.Rows[MotorCan]{
		{
			Name: "380",
			Value: MotorCan{
				Name:         "380",
				Words:        []string{"rs380", "rs 380", "390", "size 380"},
				ClassV:       6,
				DiameterMM:   27.7,
				LengthMM:     37.8,
				SizeSource:   "motor-sizes",
				NoLoadRPM:    Value{Low: 6000, Likely: 9000, High: 12000, Source: "motor-trade"},
				NoLoadA:      Value{Low: 0.3, Likely: 0.6, High: 1.2, Source: "motor-trade"},
				StallA:       Value{Low: 10, Likely: 18, High: 30, Source: "motor-trade"},
				WindingOhm:   Value{Low: 0.15, Likely: 0.33, High: 0.6, Source: "motor-trade"},
				WindingH:     Value{Low: 0.0001, Likely: 0.0003, High: 0.0006, Source: "motor-rotor-guess"},
				RotorKGM2:    Value{Low: 1e-06, Likely: 1.2e-06, High: 1.5e-06, Source: "motor-rotor-guess"},
				MassKG:       Value{Low: 0.06, Likely: 0.07, High: 0.08, Source: "motor-trade"},
				AmbientKPerW: Value{Low: 6, Likely: 11, High: 18, Source: "motor-heat-guess"},
				WindingTauS:  Value{Low: 10, Likely: 20, High: 40, Source: "motor-heat-guess"},
				CaseTauS:     Value{Low: 150, Likely: 220, High: 450, Source: "motor-heat-guess"},
				Source:       "motor-trade",
			},
		},
		{
			Name: "540",
			Value: MotorCan{
				Name:         "540",
				Words:        []string{"rs540", "rs 540", "size 540"},
				ClassV:       12,
				DiameterMM:   35.8,
				LengthMM:     50,
				SizeSource:   "motor-540-sheet",
				NoLoadRPM:    Value{Low: 10000, Likely: 14000, High: 16800, Source: "motor-540-sheet"},
				NoLoadA:      Value{Low: 0.4, Likely: 1, High: 2, Source: "motor-540-sheet"},
				StallA:       Value{Low: 20, Likely: 42, High: 60, Source: "motor-540-sheet"},
				WindingOhm:   Value{Low: 0.2, Likely: 0.286, High: 0.6, Source: "motor-540-sheet"},
				WindingH:     Value{Low: 6e-05, Likely: 0.0001, High: 0.0002, Source: "motor-rotor-guess"},
				RotorKGM2:    Value{Low: 3e-06, Likely: 4e-06, High: 6e-06, Source: "motor-rotor-guess"},
				MassKG:       Value{Low: 0.15, Likely: 0.153, High: 0.18, Source: "motor-540-sheet"},
				AmbientKPerW: Value{Low: 3.6, Likely: 6.3, High: 11, Source: "motor-heat-guess"},
				WindingTauS:  Value{Low: 10, Likely: 20, High: 40, Source: "motor-heat-guess"},
				CaseTauS:     Value{Low: 200, Likely: 290, High: 550, Source: "motor-heat-guess"},
				Source:       "motor-trade",
			},
		},
		{
			Name: "550",
			Value: MotorCan{
				Name:         "550",
				Words:        []string{"rs550", "rs 550", "size 550"},
				ClassV:       12,
				DiameterMM:   35.8,
				LengthMM:     57,
				SizeSource:   "motor-sizes",
				NoLoadRPM:    Value{Low: 12000, Likely: 15000, High: 19000, Source: "motor-library"},
				NoLoadA:      Value{Low: 0.4, Likely: 1.5, High: 2.5, Source: "motor-library"},
				StallA:       Value{Low: 20, Likely: 55, High: 85, Source: "motor-library"},
				WindingOhm:   Value{Low: 0.14, Likely: 0.22, High: 0.6, Source: "motor-library"},
				WindingH:     Value{Low: 6e-05, Likely: 0.00012, High: 0.0002, Source: "motor-rotor-guess"},
				RotorKGM2:    Value{Low: 5e-06, Likely: 6e-06, High: 8e-06, Source: "motor-rotor-guess"},
				MassKG:       Value{Low: 0.2, Likely: 0.215, High: 0.23, Source: "motor-trade"},
				AmbientKPerW: Value{Low: 3.2, Likely: 5.7, High: 10, Source: "motor-heat-guess"},
				WindingTauS:  Value{Low: 10, Likely: 20, High: 40, Source: "motor-heat-guess"},
				CaseTauS:     Value{Low: 250, Likely: 370, High: 700, Source: "motor-heat-guess"},
				Source:       "motor-trade",
			},
		},
		{
			Name: "570",
			Value: MotorCan{
				Name:         "570",
				Words:        []string{"rs570", "rs 570", "size 570"},
				ClassV:       12,
				DiameterMM:   37,
				LengthMM:     61,
				SizeSource:   "motor-sizes",
				NoLoadRPM:    Value{Low: 11000, Likely: 13500, High: 16000, Source: "motor-trade"},
				NoLoadA:      Value{Low: 0.8, Likely: 1.6, High: 2.8, Source: "motor-trade"},
				StallA:       Value{Low: 20, Likely: 40, High: 60, Source: "motor-trade"},
				WindingOhm:   Value{Low: 0.2, Likely: 0.3, High: 0.6, Source: "motor-trade"},
				WindingH:     Value{Low: 6e-05, Likely: 0.0001, High: 0.0002, Source: "motor-rotor-guess"},
				RotorKGM2:    Value{Low: 6e-06, Likely: 8e-06, High: 1e-05, Source: "motor-rotor-guess"},
				MassKG:       Value{Low: 0.22, Likely: 0.24, High: 0.26, Source: "motor-trade"},
				AmbientKPerW: Value{Low: 2.9, Likely: 5.2, High: 9.2, Source: "motor-heat-guess"},
				WindingTauS:  Value{Low: 10, Likely: 20, High: 40, Source: "motor-heat-guess"},
				CaseTauS:     Value{Low: 250, Likely: 370, High: 700, Source: "motor-heat-guess"},
				Source:       "motor-trade",
			},
		},
		{
			Name: "775",
			Value: MotorCan{
				Name:         "775",
				Words:        []string{"rs775", "rs 775", "size 775"},
				ClassV:       12,
				DiameterMM:   42,
				LengthMM:     66.7,
				SizeSource:   "motor-775-size",
				NoLoadRPM:    Value{Low: 5800, Likely: 12000, High: 18730, Source: "motor-library"},
				NoLoadA:      Value{Low: 0.7, Likely: 1.6, High: 2.7, Source: "motor-library"},
				StallA:       Value{Low: 18, Likely: 75, High: 134, Source: "motor-library"},
				WindingOhm:   Value{Low: 0.09, Likely: 0.16, High: 0.667, Source: "motor-library"},
				WindingH:     Value{Low: 5e-05, Likely: 0.00012, High: 0.0003, Source: "motor-rotor-guess"},
				RotorKGM2:    Value{Low: 2e-05, Likely: 3e-05, High: 4e-05, Source: "motor-rotor-guess"},
				MassKG:       Value{Low: 0.34, Likely: 0.35, High: 0.35, Source: "motor-775-size"},
				AmbientKPerW: Value{Low: 2.2, Likely: 3.9, High: 6.8, Source: "motor-heat-guess"},
				WindingTauS:  Value{Low: 10, Likely: 25, High: 40, Source: "motor-heat-guess"},
				CaseTauS:     Value{Low: 280, Likely: 410, High: 750, Source: "motor-heat-guess"},
				Source:       "motor-trade",
			},
		},
		{
			Name: "ride-on-390",
			Value: MotorCan{
				Name:         "ride-on-390",
				ClassV:       12,
				DiameterMM:   27.7,
				LengthMM:     37.8,
				SizeSource:   "motor-sizes",
				NoLoadRPM:    Value{Low: 11000, Likely: 15000, High: 18000, Source: "motor-ride-on-390"},
				NoLoadA:      Value{Low: 0.2, Likely: 0.4, High: 0.8, Source: "motor-ride-on-390"},
				StallA:       Value{Low: 5.5, Likely: 8, High: 12, Source: "motor-ride-on-390"},
				WindingOhm:   Value{Low: 1, Likely: 1.5, High: 2.2, Source: "motor-ride-on-390"},
				WindingH:     Value{Low: 0.0004, Likely: 0.0012, High: 0.0024, Source: "motor-rotor-guess"},
				RotorKGM2:    Value{Low: 1e-06, Likely: 1.2e-06, High: 1.5e-06, Source: "motor-rotor-guess"},
				MassKG:       Value{Low: 0.06, Likely: 0.07, High: 0.08, Source: "motor-trade"},
				AmbientKPerW: Value{Low: 6, Likely: 11, High: 18, Source: "motor-heat-guess"},
				WindingTauS:  Value{Low: 10, Likely: 20, High: 40, Source: "motor-heat-guess"},
				CaseTauS:     Value{Low: 150, Likely: 220, High: 450, Source: "motor-heat-guess"},
				Source:       "motor-ride-on-390",
			},
		},
		{
			Name: "ride-on-550",
			Value: MotorCan{
				Name:         "ride-on-550",
				ClassV:       12,
				DiameterMM:   35.8,
				LengthMM:     57,
				SizeSource:   "motor-sizes",
				NoLoadRPM:    Value{Low: 13000, Likely: 15800, High: 20300, Source: "motor-ride-on-550"},
				NoLoadA:      Value{Low: 0.9, Likely: 1.3, High: 1.8, Source: "motor-ride-on-550"},
				StallA:       Value{Low: 44, Likely: 63, High: 89, Source: "motor-ride-on-550"},
				WindingOhm:   Value{Low: 0.135, Likely: 0.19, High: 0.27, Source: "motor-ride-on-550"},
				WindingH:     Value{Low: 6e-05, Likely: 0.00012, High: 0.0002, Source: "motor-rotor-guess"},
				RotorKGM2:    Value{Low: 5e-06, Likely: 6e-06, High: 8e-06, Source: "motor-rotor-guess"},
				MassKG:       Value{Low: 0.2, Likely: 0.215, High: 0.23, Source: "motor-trade"},
				AmbientKPerW: Value{Low: 3.2, Likely: 5.7, High: 10, Source: "motor-heat-guess"},
				WindingTauS:  Value{Low: 10, Likely: 20, High: 40, Source: "motor-heat-guess"},
				CaseTauS:     Value{Low: 250, Likely: 370, High: 700, Source: "motor-heat-guess"},
				Source:       "motor-ride-on-550",
			},
		},
	},
	grounds: rows.Rows[Ground]{
		{
			Name: "asphalt",
			Value: Ground{
				Name: "asphalt",
				Words: []string{
					"tarmac", "blacktop", "road", "street", "pavement", "sidewalk", "driveway", "paved",
					"paving", "paving stones", "street or paving", "patio", "terrace", "parking lot",
					"car park", "rough concrete",
				},
				Rolling: Value{Low: 0.0033, Likely: 0.004, High: 0.005, Source: "al-eisawi-1999"},
				RubberRolling: Value{
					Low:    0.00264,
					Likely: 0.0034,
					High:   0.0045000000000000005,
					Source: "rubber-face-judgement",
				},
				GripHard:   Value{Low: 0.2, Likely: 0.3, High: 0.45, Source: "grip-plastic"},
				GripRubber: Value{Low: 0.55, Likely: 0.65, High: 0.8, Source: "grip-noon"},
				Source:     "al-eisawi-1999",
			},
		},
		{
			Name: "carpet",
			Value: Ground{
				Name:    "carpet",
				Words:   []string{"rug", "industrial carpet"},
				Rolling: Value{Low: 0.0045000000000000005, Likely: 0.005, High: 0.007, Source: "al-eisawi-1999"},
				RubberRolling: Value{
					Low:    0.0036000000000000008,
					Likely: 0.00425,
					High:   0.0063,
					Source: "rubber-face-judgement",
				},
				GripHard:   Value{Low: 0.25, Likely: 0.35, High: 0.5, Source: "grip-soft-guess"},
				GripRubber: Value{Low: 0.4, Likely: 0.6, High: 0.8, Source: "grip-soft-guess"},
				Source:     "al-eisawi-1999",
			},
		},
		{
			Name: "gravel",
			Value: Ground{
				Name: "gravel",
				Words: []string{
					"loose gravel", "pea gravel", "shingle", "wood chips", "bark", "mulch", "stones",
					"gravel path", "gravel drive", "gravel road",
				},
				Rolling: Value{
					Low:    0.007200000000000001,
					Likely: 0.014400000000000001,
					High:   0.0216,
					Source: "ground-judgement",
				},
				RubberRolling: Value{
					Low:    0.005760000000000001,
					Likely: 0.012240000000000001,
					High:   0.019440000000000002,
					Source: "rubber-face-judgement",
				},
				GripHard:   Value{Low: 0.2, Likely: 0.35, High: 0.5, Source: "grip-soft-guess"},
				GripRubber: Value{Low: 0.3, Likely: 0.45, High: 0.6, Source: "grip-soft-guess"},
				Loose:      true,
				Source:     "ground-judgement",
			},
		},
		{
			Name: "long-grass",
			Value: Ground{
				Name:    "long grass",
				Words:   []string{"tall grass", "high grass", "meadow", "field", "uncut grass"},
				Rolling: Value{Low: 0.0078, Likely: 0.0156, High: 0.0234, Source: "ground-judgement"},
				RubberRolling: Value{
					Low:    0.00624,
					Likely: 0.01326,
					High:   0.021060000000000002,
					Source: "rubber-face-judgement",
				},
				GripHard:   Value{Low: 0.2, Likely: 0.3, High: 0.45, Source: "grip-soft-guess"},
				GripRubber: Value{Low: 0.25, Likely: 0.4, High: 0.55, Source: "grip-soft-guess"},
				Loose:      true,
				Source:     "ground-judgement",
			},
		},
		{
			Name: "packed-dirt",
			Value: Ground{
				Name: "packed dirt",
				Words: []string{
					"dirt", "hard dirt", "earth", "packed earth", "trail", "path", "clay", "farm track",
					"dirt track", "dirt road", "dirt path", "forest path", "soil",
				},
				Rolling:       Value{Low: 0.00375, Likely: 0.0075, High: 0.01125, Source: "ground-judgement"},
				RubberRolling: Value{Low: 0.003, Likely: 0.006375, High: 0.010125, Source: "rubber-face-judgement"},
				GripHard:      Value{Low: 0.2, Likely: 0.35, High: 0.5, Source: "grip-soft-guess"},
				GripRubber:    Value{Low: 0.35, Likely: 0.55, High: 0.7, Source: "grip-soft-guess"},
				Loose:         true,
				Source:        "ground-judgement",
			},
		},
		{
			Name: "sand",
			Value: Ground{
				Name:    "sand",
				Words:   []string{"soft sand", "beach", "loose sand"},
				Rolling: Value{Low: 0.0156, Likely: 0.0312, High: 0.0468, Source: "ground-judgement"},
				RubberRolling: Value{
					Low:    0.01248,
					Likely: 0.02652,
					High:   0.042120000000000005,
					Source: "rubber-face-judgement",
				},
				GripHard:   Value{Low: 0.2, Likely: 0.35, High: 0.5, Source: "grip-soft-guess"},
				GripRubber: Value{Low: 0.25, Likely: 0.4, High: 0.55, Source: "grip-soft-guess"},
				Loose:      true,
				Source:     "ground-judgement",
			},
		},
		{
			Name: "short-grass",
			Value: Ground{
				Name: "short grass",
				Words: []string{
					"grass", "lawn", "short dry grass", "mown grass", "cut grass", "turf", "garden", "yard",
					"back yard",
				},
				Rolling:       Value{Low: 0.005, Likely: 0.01, High: 0.015, Source: "ground-judgement"},
				RubberRolling: Value{Low: 0.004, Likely: 0.0085, High: 0.0135, Source: "rubber-face-judgement"},
				GripHard:      Value{Low: 0.2, Likely: 0.35, High: 0.55, Source: "grip-plastic-turf"},
				GripRubber:    Value{Low: 0.3, Likely: 0.45, High: 0.6, Source: "grip-soft-guess"},
				Loose:         true,
				Source:        "ground-judgement",
			},
		},
		{
			Name: "smooth-concrete",
			Value: Ground{
				Name: "smooth concrete",
				Words: []string{
					"concrete", "garage floor", "smooth floor", "indoor floor", "wood floor", "parquet",
					"wooden floor", "laminate", "vinyl floor", "linoleum", "hard floor",
				},
				Rolling: Value{Low: 0.0022, Likely: 0.0026000000000000003, High: 0.00375, Source: "al-eisawi-1999"},
				RubberRolling: Value{
					Low:    0.0017600000000000003,
					Likely: 0.00221,
					High:   0.003375,
					Source: "rubber-face-judgement",
				},
				GripHard:   Value{Low: 0.2, Likely: 0.3, High: 0.45, Source: "grip-plastic"},
				GripRubber: Value{Low: 0.6, Likely: 0.7, High: 0.85, Source: "grip-rubber"},
				Source:     "al-eisawi-1999",
			},
		},
		{
			Name: "tile",
			Value: Ground{
				Name:    "tile",
				Words:   []string{"tiles", "tiled floor", "stone floor"},
				Rolling: Value{Low: 0.0024, Likely: 0.0028, High: 0.00375, Source: "al-eisawi-1999"},
				RubberRolling: Value{
					Low:    0.0019199999999999998,
					Likely: 0.0023799999999999997,
					High:   0.003375,
					Source: "rubber-face-judgement",
				},
				GripHard:   Value{Low: 0.15, Likely: 0.25, High: 0.35, Source: "grip-plastic"},
				GripRubber: Value{Low: 0.4, Likely: 0.6, High: 0.8, Source: "grip-soft-guess"},
				Source:     "al-eisawi-1999",
			},
		},
		{
			Name: "wet-grass",
			Value: Ground{
				Name:    "wet grass",
				Words:   []string{"wet lawn", "damp grass"},
				Rolling: Value{Low: 0.0078, Likely: 0.0156, High: 0.0234, Source: "ground-judgement"},
				RubberRolling: Value{
					Low:    0.00624,
					Likely: 0.01326,
					High:   0.021060000000000002,
					Source: "rubber-face-judgement",
				},
				GripHard:   Value{Low: 0.1, Likely: 0.15, High: 0.25, Source: "grip-soft-guess"},
				GripRubber: Value{Low: 0.15, Likely: 0.2, High: 0.3, Source: "grip-noon"},
				Loose:      true,
				Source:     "ground-judgement",
			},
		},
	},
	children: rows.Rows[growth]{
		{
			Name: "cdc-boys",
			Value: growth{
				p5: []Point{
					{X: 2, Y: 10.6}, {X: 3, Y: 12}, {X: 4, Y: 13.5}, {X: 5, Y: 15.2}, {X: 6, Y: 16.9},
					{X: 7, Y: 18.7}, {X: 8, Y: 20.6},
				},
				p50: []Point{
					{X: 2, Y: 12.7}, {X: 3, Y: 14.3}, {X: 4, Y: 16.2}, {X: 5, Y: 18.4}, {X: 6, Y: 20.7},
					{X: 7, Y: 23.1}, {X: 8, Y: 25.6},
				},
				p95: []Point{
					{X: 2, Y: 15.2}, {X: 3, Y: 17.4}, {X: 4, Y: 20.2}, {X: 5, Y: 23.4}, {X: 6, Y: 26.9},
					{X: 7, Y: 30.7}, {X: 8, Y: 35.1},
				},
				source: "cdc-growth",
			},
		},
		{
			Name: "cdc-girls",
			Value: growth{
				p5: []Point{
					{X: 2, Y: 10.2}, {X: 3, Y: 11.6}, {X: 4, Y: 13}, {X: 5, Y: 14.6}, {X: 6, Y: 16.4},
					{X: 7, Y: 18.2}, {X: 8, Y: 20.1},
				},
				p50: []Point{
					{X: 2, Y: 12.1}, {X: 3, Y: 13.9}, {X: 4, Y: 15.8}, {X: 5, Y: 17.9}, {X: 6, Y: 20.2},
					{X: 7, Y: 22.8}, {X: 8, Y: 25.6},
				},
				p95: []Point{
					{X: 2, Y: 14.6}, {X: 3, Y: 17.2}, {X: 4, Y: 20.3}, {X: 5, Y: 23.6}, {X: 6, Y: 27.2},
					{X: 7, Y: 31.3}, {X: 8, Y: 36},
				},
				source: "cdc-growth",
			},
		},
		{
			Name: "cdc-older-boys",
			Value: growth{
				p5:     []Point{{X: 8, Y: 20.6}, {X: 10, Y: 24}, {X: 12, Y: 29}, {X: 14, Y: 36.5}},
				p50:    []Point{{X: 8, Y: 25.6}, {X: 10, Y: 32}, {X: 12, Y: 40.5}, {X: 14, Y: 51}},
				p95:    []Point{{X: 8, Y: 35.1}, {X: 10, Y: 47}, {X: 12, Y: 61}, {X: 14, Y: 76}},
				source: "cdc-growth-older",
			},
		},
		{
			Name: "cdc-older-girls",
			Value: growth{
				p5:     []Point{{X: 8, Y: 20.1}, {X: 10, Y: 23.7}, {X: 12, Y: 29.5}, {X: 14, Y: 36.5}},
				p50:    []Point{{X: 8, Y: 25.6}, {X: 10, Y: 33}, {X: 12, Y: 41.7}, {X: 14, Y: 49.5}},
				p95:    []Point{{X: 8, Y: 36}, {X: 10, Y: 49}, {X: 12, Y: 63}, {X: 14, Y: 74}},
				source: "cdc-growth-older",
			},
		},
		{
			Name: "who-boys",
			Value: growth{
				p5: []Point{
					{X: 2, Y: 10.1}, {X: 3, Y: 11.8}, {X: 4, Y: 13.3}, {X: 5, Y: 14.9}, {X: 6, Y: 16.6},
					{X: 7, Y: 18.4}, {X: 8, Y: 20.4},
				},
				p50: []Point{
					{X: 2, Y: 12.1}, {X: 3, Y: 14.3}, {X: 4, Y: 16.3}, {X: 5, Y: 18.3}, {X: 6, Y: 20.5},
					{X: 7, Y: 22.9}, {X: 8, Y: 25.4},
				},
				p95: []Point{
					{X: 2, Y: 14.7}, {X: 3, Y: 17.5}, {X: 4, Y: 20.2}, {X: 5, Y: 22.8}, {X: 6, Y: 25.8},
					{X: 7, Y: 29.1}, {X: 8, Y: 32.7},
				},
				source: "who-growth",
			},
		},
		{
			Name: "who-girls",
			Value: growth{
				p5: []Point{
					{X: 2, Y: 9.4}, {X: 3, Y: 11.3}, {X: 4, Y: 12.9}, {X: 5, Y: 14.5}, {X: 6, Y: 16},
					{X: 7, Y: 17.6}, {X: 8, Y: 19.5},
				},
				p50: []Point{
					{X: 2, Y: 11.5}, {X: 3, Y: 13.9}, {X: 4, Y: 16.1}, {X: 5, Y: 18.1}, {X: 6, Y: 20.2},
					{X: 7, Y: 22.4}, {X: 8, Y: 25},
				},
				p95: []Point{
					{X: 2, Y: 14.2}, {X: 3, Y: 17.3}, {X: 4, Y: 20.4}, {X: 5, Y: 23.2}, {X: 6, Y: 26.2},
					{X: 7, Y: 29.5}, {X: 8, Y: 33.4},
				},
				source: "who-growth",
			},
		},
	},
	vehicles: rows.Rows[VehicleClass]{
		{
			Name: "12v-one-seat",
			Value: VehicleClass{
				Name:           "12v-one-seat",
				Words:          []string{"12 V one seat", "12v", "12 volt"},
				DesignV:        12,
				Seats:          1,
				MassKG:         Value{Low: 10, Likely: 14, High: 18, Source: "vehicle-trade"},
				WheelDiameterM: Value{Low: 0.24, Likely: 0.27, High: 0.33, Source: "vehicle-trade"},
				GearRatio:      Value{Low: 60, Likely: 100, High: 150, Source: "vehicle-trade"},
				TopSpeedMS: Value{
					Low:    1.1666666666666667,
					Likely: 1.8611111111111112,
					High:   2.694444444444444,
					Source: "speed-reports",
				},
				Motors:    Value{Low: 1, Likely: 2, High: 2, Source: "vehicle-trade"},
				LoadKG:    Value{Low: 30, Likely: 30, High: 30, Source: "load-manuals"},
				RideS:     Value{Low: 2520, Likely: 3600, High: 4920, Source: "run-time-reports"},
				BatteryAh: Value{Low: 7, Likely: 9, High: 12, Source: "battery-trade"},
				Can:       "ride-on 550",
				Source:    "vehicle-trade",
			},
		},
		{
			Name: "12v-two-seat",
			Value: VehicleClass{
				Name:           "12v-two-seat",
				Words:          []string{"12 V two seats"},
				DesignV:        12,
				Seats:          2,
				MassKG:         Value{Low: 20, Likely: 27, High: 40, Source: "vehicle-trade"},
				WheelDiameterM: Value{Low: 0.24, Likely: 0.29, High: 0.33, Source: "vehicle-trade"},
				GearRatio:      Value{Low: 60, Likely: 100, High: 150, Source: "vehicle-trade"},
				TopSpeedMS: Value{
					Low:    1.1666666666666667,
					Likely: 1.8611111111111112,
					High:   2.694444444444444,
					Source: "speed-reports",
				},
				Motors:    Value{Low: 2, Likely: 2, High: 2, Source: "vehicle-trade"},
				LoadKG:    Value{Low: 59, Likely: 59, High: 59, Source: "load-manuals"},
				RideS:     Value{Low: 2520, Likely: 3600, High: 4920, Source: "run-time-reports"},
				BatteryAh: Value{Low: 7, Likely: 9, High: 12, Source: "battery-trade"},
				Can:       "ride-on 550",
				Source:    "vehicle-trade",
			},
		},
		{
			Name: "24v-two-seat",
			Value: VehicleClass{
				Name:           "24v-two-seat",
				Words:          []string{"24 V two seats", "24v", "24 volt"},
				DesignV:        24,
				Seats:          2,
				MassKG:         Value{Low: 20, Likely: 30, High: 40, Source: "vehicle-trade"},
				WheelDiameterM: Value{Low: 0.24, Likely: 0.3, High: 0.33, Source: "vehicle-trade"},
				GearRatio:      Value{Low: 60, Likely: 100, High: 150, Source: "vehicle-trade"},
				TopSpeedMS: Value{
					Low:    1.6666666666666667,
					Likely: 2.2222222222222223,
					High:   3.5833333333333335,
					Source: "speed-reports",
				},
				Motors:    Value{Low: 2, Likely: 2, High: 4, Source: "vehicle-trade"},
				LoadKG:    Value{Low: 59, Likely: 59, High: 59, Source: "load-manuals"},
				RideS:     Value{Low: 3600, Likely: 5100, High: 7200, Source: "run-time-reports"},
				BatteryAh: Value{Low: 7, Likely: 9, High: 12, Source: "battery-trade"},
				Can:       "775",
				Source:    "vehicle-trade",
			},
		},
		{
			Name: "6v-one-seat",
			Value: VehicleClass{
				Name:           "6v-one-seat",
				Words:          []string{"6 V one seat", "6v", "6 volt"},
				DesignV:        6,
				Seats:          1,
				MassKG:         Value{Low: 4, Likely: 6.5, High: 9, Source: "vehicle-trade"},
				WheelDiameterM: Value{Low: 0.16, Likely: 0.19, High: 0.22, Source: "vehicle-trade"},
				GearRatio:      Value{Low: 60, Likely: 100, High: 150, Source: "vehicle-trade"},
				TopSpeedMS: Value{
					Low:    0.4444444444444445,
					Likely: 1.1111111111111112,
					High:   1.5555555555555556,
					Source: "speed-reports",
				},
				Motors: Value{Low: 1, Likely: 1, High: 2, Source: "vehicle-trade"},
				LoadKG: Value{Low: 29.5, Likely: 29.5, High: 29.5, Source: "load-manuals"},
				Can:    "380",
				Source: "vehicle-trade",
			},
		},
	},
	thermal: rows.Rows[ThermalClass]{
		{Name: "A", Value: ThermalClass{Letter: "A", LimitC: 105, RiseK: 60, Source: "iec-60085"}},
		{Name: "B", Value: ThermalClass{Letter: "B", LimitC: 130, RiseK: 80, Source: "iec-60085"}},
		{Name: "E", Value: ThermalClass{Letter: "E", LimitC: 120, RiseK: 75, Source: "iec-60085"}},
		{Name: "F", Value: ThermalClass{Letter: "F", LimitC: 155, RiseK: 105, Source: "iec-60085"}},
		{Name: "H", Value: ThermalClass{Letter: "H", LimitC: 180, RiseK: 125, Source: "iec-60085"}},
		{Name: "N", Value: ThermalClass{Letter: "N", LimitC: 200, Source: "iec-60085"}},
	},
	cautions: rows.Rows[Caution]{
		{
			Name: "changed-packs",
			Value: Caution{
				Name:   "changed-packs",
				Text:   "Be there while a pack charges and never charge while people sleep; use only the charger that belongs to it; never use a pack that was opened or rebuilt by somebody who is not qualified.",
				Source: "cpsc-2025-packs",
			},
		},
		{
			Name: "charger-recalls",
			Value: Caution{
				Name:   "charger-recalls",
				Text:   "Chargers of about 400 000 ride-on toys were recalled about the year 2000 because chargers or wires overheated.",
				Source: "cpsc-2000-chargers",
			},
		},
		{
			Name: "fuse-inside",
			Value: Caution{
				Name:   "fuse-inside",
				Text:   "Many factory batteries of ride-ons have a self-resetting thermal fuse inside, which comes back after some 25 seconds: with another battery it is gone.",
				Source: "fuse-inside-manuals",
			},
		},
		{
			Name: "ride-on-fires",
			Value: Caution{
				Name:   "ride-on-fires",
				Text:   "Up to 10 million battery ride-on toys were recalled in 1998 after 150 fires, some of them while parked, and 700 reports of overheating.",
				Source: "cpsc-1998",
			},
		},
		{
			Name: "universal-chargers",
			Value: Caution{
				Name:   "universal-chargers",
				Text:   "Do not use a universal charger unless it was tested for the very device: 156 fires or overheatings were reported within 17 months.",
				Source: "cpsc-2024-chargers",
			},
		},
		{
			Name: "welded-pedal",
			Value: Caution{
				Name:   "welded-pedal",
				Text:   "A ride-on toy was recalled because, with an 18 V system in place of a 12 V one, the contacts of its foot switch could weld together in the first surge: the motor keeps running and the vehicle cannot be stopped.",
				Source: "cpsc-92-008",
			},
		},
	},
}
