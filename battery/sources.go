package battery

import "example.org/packcheck/answer"

// IDs of the sources defined here.
const (
	srcMixing      = "do-not-mix-packs"
	srcSmallest    = "string-of-the-smallest"
	srcElectronics = "series-electronics"
	srcLabels      = "label-words"
	srcSurface     = "astm-f963-surface"
	srcTouched     = "astm-f963-touched"
	srcUnlike      = "astm-f963-mixing"
	srcSpills      = "nonspillable-rule"
)

// Sources returns the sources of the limits that this package itself defines,
// sorted by ID. Limits of a chemistry carry the IDs of package chemistry.
func Sources() []answer.Source {
	return []answer.Source{
		{
			ID:    answer.PartRating,
			Text:  "The rating of the part itself, as its maker or seller prints it",
			Known: "as given in the setup",
		},
		{
			ID:    srcUnlike,
			Text:  "ASTM F963, clause 4.25.6: no batteries of different size or capacity in one circuit",
			Known: "copy of a summary",
		},
		{
			ID:    srcSurface,
			Text:  "ASTM F963, clause 4.25.7: surface of a battery at most 71 degC (160 degF)",
			Known: "copy of a summary",
		},
		{
			ID:    srcTouched,
			Text:  "A test plan built on ASTM F963: surfaces of toy or battery that can be touched at most 54 degC, motor toys stalled meanwhile; a trade forum, one source",
			Known: "copy of a post",
		},
		{
			ID:    srcMixing,
			Text:  "sellers' guidance on batteries in parallel (sunlikebattery.com, ecoenergyvista.com): do not mix brands, models or dates; watch differences of voltage; do not join packs of very different charge",
			Known: "copy",
		},
		{
			ID:    srcLabels,
			Text:  "how cordless-tool packs and sealed blocks are labelled: \"max\" counts 4.0 V per lithium cell, nominal 3.6 V; common practice, no published source",
			Known: "common practice",
		},
		{
			ID:    srcSpills,
			Text:  "49 CFR 173.159: a lead-acid battery counts as nonspillable only when it passes tests of vibration and pressure without a leak; all others travel upright, guarded against spilled acid",
			Known: "memory",
		},
		{
			ID:    srcElectronics,
			Text:  "Each pack's electronics are made for its own volts; one that opens in a pair stands under the volts of both; common practice, no published source",
			Known: "common practice",
		},
		{
			ID:    srcSmallest,
			Text:  "re-wrenches list, 2014-12-19: the capacity of a string is that of its smallest cell, which is empty first, reverses if the discharge goes on, and is overcharged first; encyclopaedia text on battery balancing: stop when any cell is empty",
			Known: "copy",
		},
	}
}
