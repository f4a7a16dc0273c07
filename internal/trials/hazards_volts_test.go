package trials_test

import (
	"example.org/packcheck/battery"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
)

const (
	noConverter = "-controller.converter_voltage; -controller.converter_limit; "
	contacts    = noConverter + "-controller; controller.kind=contacts; controller.resistance=8 mOhm; "
	welds       = drive.CodeContactsMayWeld
	boardVolts  = drive.CodeBoardOvervoltage
	boardAsked  = drive.CodeBoardOvervoltage + "|" + drive.CodeBoardVoltsUnknown
)

// voltHazards are packs of too many volts for board, switch or a part.
func voltHazards() []hazard {
	return []hazard{
		{
			name: "18 V pack on a board printed 15 V", base: "lithium", set: noConverter + "controller.max_voltage=15 V", least: danger, codes: boardVolts,
			why: "a transistor that breaks down conducts: the vehicle drives by itself", from: practice,
		},
		{
			name: "18 V pack on a board printed 12 to 15 V, original told", base: "proper", set: noConverter + "controller.max_voltage=12 to 15 V", least: danger, codes: boardVolts,
			why: "every value that was printed lies far below 21 V", from: practice,
		},
		{
			name: "24 V of lead-acid on a board printed 15 V", base: "block", set: "pack.label=24 V (two 12 V) 7 Ah; controller.kind=chopper; controller.max_voltage=15 V; vehicle.has_board=true", least: danger, codes: boardVolts,
			why: "26 V at rest, 29 V on the charger", from: practice,
		},
		{
			name: "18 V NiMH on a board printed 15 V", base: "lithium", set: noConverter + "controller.max_voltage=15 V; pack.chemistry=nimh; pack.label=18 V 3 Ah NiMH; -pack.cells_in_series; -pack.strings; -pack.capacity; -charger; cutoff.module.opens_at=15 V", least: danger, codes: boardVolts,
			why: "fifteen full cells rest above 20 V whatever their kind", from: practice,
		},
		{
			name: "36 V pack on a board printed 30 V", base: "lithium", set: noConverter + "pack.label=36 V 5 Ah; pack.cells_in_series=10; -pack.strings; controller.max_voltage=30 V; cutoff.module.opens_at=33 V; fuse.max_voltage=58 V; charger.voltage=42 V", least: danger, codes: boardVolts,
			why: "42 V full on 30 V", from: practice,
		},
		{
			name: "36 V pack on 24 V contacts", base: "pair", set: "pack.chemistry=li-ion; pack.label=36 V 5 Ah; pack.cells_in_series=10; -pack.rate; fuse.max_voltage=58 V; cutoff.module.opens_at=33 V; -charger", least: danger, codes: welds,
			why: "one and a half times the volts that the switch was made for, and direct current above 24 V holds an arc", from: cpscWeld,
		},
		{
			name: "36 V in a children's vehicle", base: "pair", set: "controller.kind=chopper; controller.max_voltage=60 V; controller.current_limit=20 A; controller.ramp=1 s; pack.chemistry=li-ion; pack.label=36 V 5 Ah; pack.cells_in_series=10; -pack.rate; fuse.max_voltage=58 V; cutoff.module.opens_at=33 V; -charger", least: fixFirst, codes: wantToyVolts,
			why: "above the volts that any toy may have", from: toyVolts,
		},
		{
			name: "18 V pack on 12 V contacts", base: "lithium", set: contacts, least: danger, codes: welds,
			why: "the case of the recall: the pedal welds and nothing stops the vehicle", from: cpscWeld,
		},
		{
			name: "20 V max pack on 12 V contacts, original told", base: "proper", set: contacts, least: danger, codes: welds,
			why: "the same, 21 V full", from: cpscWeld,
		},
		{
			name: "20 V max pack on 12 V contacts by labels", base: "labels", set: "controller.kind=contacts; pack.chemistry=li-ion; pack.label=20 V max 5 Ah; cutoff.module.opens_at=16 V", least: danger, codes: welds,
			why: "volts and contacts are both told", from: cpscWeld,
		},
		{
			name: "24 V of blocks on 12 V contacts", base: "block", set: "pack.label=24 V (two 12 V) 7 Ah; cutoff.module.opens_at=21 V; charger.voltage=29.4 V", least: danger, codes: welds,
			why: "twice the volts, four times the energy of each arc", from: cpscWeld,
		},
		{
			name: "two 12 V blocks in series on 12 V contacts", base: "block", set: "pack.joined=series; cutoff.module.opens_at=21 V; charger.voltage=29.4 V", least: danger, codes: welds,
			why: "the same as 24 V", from: cpscWeld,
		},
		{
			name: "12 V block in a 6 V vehicle, contacts", base: "labels6", set: "controller.kind=contacts; pack.label=12 V 7 Ah", least: fixFirst, codes: welds + "|" + drive.CodeMotorHot,
			why: "twice the speed and four times the heat for one small motor", from: practice,
		},
		{
			name: "18 V pack in a 6 V vehicle, contacts", base: "labels6", set: "controller.kind=contacts; pack.chemistry=li-ion; pack.label=20 V max 5 Ah; cutoff.module.opens_at=16 V", least: danger, codes: welds,
			why: "three and a half times the volts: the switch, the motor and the speed", from: cpscWeld,
		},
		{
			name: "18 V pack on a board of unknown volts", base: "lithium", set: noConverter + "-controller.max_voltage; vehicle.has_board=true", least: fixFirst, codes: boardAsked,
			why: "a 12 V board rarely stands 21 V, but nobody read it", from: practice,
		},
		{
			name: "18 V pack on a chopper of unknown volts", base: "lithium", set: noConverter + "-controller.max_voltage", least: fixFirst, codes: boardAsked,
			why: "a 12 V chopper rarely stands 21 V, but nobody read it", from: practice,
		},
		{
			name: "20 V max pack in a board vehicle by labels", base: "board", set: "pack.chemistry=li-ion; pack.label=20 V max 5 Ah; cutoff.module.opens_at=16 V", least: fixFirst, codes: boardAsked,
			why: "the board is told, its volts are not", from: practice,
		},
		{
			name: "20 V max pack, nothing told of switch or board", base: "labels", set: "-vehicle.has_board; pack.chemistry=li-ion; pack.label=20 V max 5 Ah; cutoff.module.opens_at=16 V", least: fixFirst, codes: welds + "|" + boardAsked,
			why: "either a switch that may weld or a board that may burn", from: cpscWeld,
		},
		{
			name: "24 V of blocks in a board vehicle by labels", base: "board", set: "pack.label=24 V (two 12 V) 7 Ah", least: fixFirst, codes: boardAsked,
			why: "twice the volts", from: practice,
		},
		{
			name: "18 V pack on a board for 18 to 30 V", base: "lithium", set: noConverter + "controller.max_voltage=18 to 30 V", least: watch, codes: boardVolts,
			why: "a quarter of what it may stand is below 21 V, by a seventh at most: possible, one level milder", from: practice,
		},
		{
			name: "four lithium cells on a board printed 15 V", base: "lithium", set: noConverter + "pack.label=14.8 V 5 Ah; pack.cells_in_series=4; -pack.strings; controller.max_voltage=15 V; cutoff.module.opens_at=13 V; charger.voltage=16.8 V", least: fixFirst, codes: boardVolts,
			why: "16.8 V full on 15 V", from: practice,
		},
		{
			name: "a part printed 16 V on an 18 V pack", base: "lithium", set: noConverter + "vehicle.weakest_part_voltage=16 V", least: fixFirst, codes: boardVolts,
			why: "a capacitor printed 16 V bursts at 21 V", from: practice,
		},
		{
			name: "a part printed 16 to 25 V on an 18 V pack", base: "lithium", set: noConverter + "vehicle.weakest_part_voltage=16 to 25 V", least: fixFirst, codes: boardVolts,
			why: "the lower half of what was read is below 21 V", from: practice,
		},
		{
			name: "a converter set to 18 V before a 15 V part", base: "lithium", set: "controller.converter_voltage=18 V; vehicle.weakest_part_voltage=15 V", least: fixFirst, codes: boardVolts,
			why: "the converter gives what it is set to", from: practice,
		},
		{
			name: "a converter too small for the launch", base: "lithium", set: "controller.converter_limit=4 A", least: fixFirst, codes: drive.CodeConverterTooSmall + "|" + drive.CodeCannotStart + "|" + judge.CodeCannotKeepGoing,
			why: "it shuts off at the first push of the pedal", from: practice,
		},
		{
			name: "two tool packs in series in a 24 V vehicle", base: "pair", set: "pack.chemistry=li-ion; pack.label=20 V max 5 Ah; pack.cells_in_series=5; -pack.rate; pack.joined=series; -charger; fuse.max_voltage=58 V; cutoff.module.opens_at=33 V", least: danger, codes: welds + "|" + boardVolts + "|" + battery.CodeSeriesElectronics,
			why: "42 V on contacts made for 24 V, and above 24 V for any toy", from: cpscWeld + "; " + toyVolts,
		},
		{
			name: "two tool packs in series in a 12 V board vehicle", base: "board", set: "pack.chemistry=li-ion; pack.label=20 V max 5 Ah; pack.joined=series; cutoff.module.opens_at=33 V; controller.max_voltage=15 V; controller.kind=chopper", least: danger, codes: boardVolts,
			why: "42 V on 15 V", from: practice,
		},
		{
			name: "24 V vehicle on 48 V of blocks", base: "pair", set: "pack.label=48 V (four 12 V) 12 Ah; pack.cells_in_series=24; cutoff.module.opens_at=42 V; -charger; fuse.max_voltage=58 V", least: danger, codes: welds,
			why: "twice the volts on contacts; more than a toy may have", from: cpscWeld + "; " + toyVolts,
		},
	}
}
