package cutoff

import "example.org/packcheck/answer"

// Sources returns the sources of the limits and constants that this package
// itself defines, sorted by ID. Limits of a chemistry carry the IDs of the
// chemistry package.
func Sources() []answer.Source {
	return []answer.Source{
		{
			ID:    "cutoff-practice",
			Text:  "common practice, no published source: a delay half as long again as the longest sag it has to ride through, at least 2 s and at most 15 s, in whole seconds, and any longer one up to 20 s, because listings of added modules name no delay of opening; a latch rather than a reclosing voltage; a device needs at least 0.1 s to act",
			Known: "common practice",
		},
		{
			ID:    "drained-lithium",
			Text:  "Guo et al., Sci. Rep. 6:30248 (2016), and J. Electrochem. Soc. 165 (2018) A1639: lithium-ion forced far below empty dissolves copper and shorts inside; encyclopaedia text quoted on a web page: below 1.5 V per cell do not use again",
			Known: "copy, the last secondary",
		},
		{
			ID:    "idle-steps",
			Text:  "how soon a drained pack is worth a warning: within a week danger or fix first, within a month watch; steps of ours, no published source",
			Known: "common practice",
		},
		{
			ID:    "keeping-spread",
			Text:  "makers' sheets of sealed lead-acid: 91/82/64 % left after 3/6/12 months, 80/60 % after 6/12, 95/90/81 % after 1/2/3; lithium-ion 2 to 3 % a month, cell specification more than 95 % left after 30 days",
			Known: "copy",
		},
		{
			ID:    "measured-rebound",
			Text:  "Kollmeyer 2018 (Mendeley Data 10.17632/wykht8y7tg.1): a 2.9 Ah cell stopped at 2.499 V at 1C stood at 3.208 V after 300 s; ORNL and BatterySim 2013-2020: a 33 Ah manganese cell stopped at 3.000 V stood at 3.177 V after 30 min at 1C and 3.515 V after 50 min at 3C; Sulzer et al. 2019: a 12 V 17 Ah block stopped at 10.56 V at 3.04 A stood at 11.36 V after half an hour and 11.45 V later",
			Known: "copy",
		},
		{
			ID:    "pack-volts-hide-a-cell",
			Text:  "arithmetic: a 12 V block at 10.5 V with five cells at 2.05 V leaves 0.25 V for the sixth; five lithium cells at 12.5 V with four at 3.10 V leave 0.10 V",
			Known: "computed",
		},
		{
			ID:    "protector-boards",
			Text:  "open-hardware 3 to 5 cell protector on the TI BQ77915: 2.9 V per cell, trips at 15 A after 180 ms and at 30 A after 1 ms; TI BQ77307: 2.5 V per cell by default",
			Known: "copy",
		},
		{
			ID:    "sulfation",
			Text:  "celltech.se, and Hund, Sandia, on sealed lead-acid: left discharged it grows hard sulfate crystals and loses capacity for good",
			Known: "copy",
		},
	}
}
