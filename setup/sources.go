package setup

import (
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/later"
)

// Sources of the defaults that no table holds.
const (
	srcOuting   = "outing-practice"
	srcUse      = "use-practice"
	srcWire     = "wiring-practice"
	srcBoard    = "board-practice"
	srcPackWear = "pack-wear-practice"
	srcPackSize = "pack-size-practice"
	srcCutoff   = "cutoff-practice"
	srcModule   = "cutoff-module-listings"
	srcWinding  = "winding-law"
	srcDrag     = "drag-estimate"
	srcGiven    = "setup-file"
	srcWiring   = "motor-wiring-reports"
	srcFamilies = "motor-family-reports"
	srcClaim    = "claimed-speed"
)

// Sources returns the sources that this package itself defines, sorted by ID.
func Sources() []answer.Source { return slices.Clone(sources.Get()) }

// sources are the same, made once, and not to be changed.
var sources = later.Value[[]answer.Source]{Make: func() []answer.Source {
	return []answer.Source{
		{ID: srcBoard, Text: "Resistance and standby current of small motor boards; common practice, no published source", Known: "common practice"},
		{ID: srcCutoff, Text: "Delay and own current of low-voltage cutoffs where the maker gives none; common practice, no published source", Known: "common practice"},
		{ID: srcModule, Text: "Own current of added low-voltage cutoffs: four listings of one widely sold module for 12 to 36 V give less than 1.5 W, and a builder found that it goes on drawing once it has opened; a plain transistor switch draws some 0.1 mA; that 10 mA is likely is common practice, no published source", Known: "copy of the listings; the rest from memory"},
		{ID: srcDrag, Text: "Air drag of a child sitting upright on a small vehicle, drag coefficient 0.8 to 1.2 on 0.3 to 0.7 m2; estimate, no published source", Known: "estimate"},
		{ID: srcOuting, Text: "How children drive: some 25 s with the pedal down, some 10 s without, on a mild day; common practice, no published source", Known: "common practice"},
		{ID: srcPackSize, Text: "Capacities in which packs of a chemistry are usually sold for tools and ride-on vehicles; common practice, no published source", Known: "common practice"},
		{ID: srcPackWear, Text: "A used pack keeps 80 to 100 percent of its capacity until it is given up (80 percent is the usual limit of replacement, IEEE 1188, from memory); common practice", Known: "common practice"},
		{ID: srcClaim, Text: "How far vehicles reach the speed that their box claims: makers round up, a light child on smooth ground exceeds it; common practice, no published source", Known: "common practice"},
		{ID: srcFamilies, Text: "Reports of owners and builders: a 12 V vehicle with four motors of size 390 behind a board has a 10 A fuse, one with two motors drew 22 A blocked on 18 V, while two motors of size 550 behind a pedal switch stall at 55 to 72 A each; the shares are common practice, no published source", Known: "copy of the reports; shares from memory"},
		{ID: srcWiring, Text: "Reports of owners and builders: parallel is the rule, series the slow gear of two-speed vehicles and the only way in some with two 6 V motors at 12 V; the share is common practice, no published source", Known: "copy of the reports; share from memory"},
		{ID: srcGiven, Text: "Follows from other keys of the setup file", Known: "computed"},
		{ID: srcUse, Text: "How such vehicles are built and used: hard plastic wheels, two of four driven, a 12 V system; common practice, no published source", Known: "common practice"},
		{ID: srcWinding, Text: "In one can size resistance goes with the square of the torque constant, because both follow from the turns; spread from the motors of the can table", Known: "computed"},
		{ID: srcWire, Text: "Thickness, length and number of joints of the loom of small ride-on vehicles; common practice, no published source", Known: "common practice"},
	}
}}
