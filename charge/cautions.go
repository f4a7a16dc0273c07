package charge

import "example.org/packcheck/chemistry"

// Caution is a safety line that belongs to every answer about charging or
// storage, whatever else was found.
type Caution struct {
	Text   string // one or two plain sentences
	Source string // ID of the source
}

// MakersFirst is the last of the cautions: what comes before all of them.
const MakersFirst = "The instructions of the makers of pack, charger and vehicle, and local codes, come before anything said here."

// Cautions returns the safety lines for charging and keeping a pack of this
// chemistry, most important first.
func Cautions(p chemistry.Profile, toolPack bool) []Caution {
	out := []Caution{
		{"Be there and awake while anything charges; unplug before bed and before you leave, and go on next day where it takes longer.", "cpsc-charging"},
		{"Charge on what does not burn, away from the way out, and cover neither charger nor pack.", "common-charging"},
		{"Heat, swelling, a smell or hissing: unplug at the wall if that is safe, keep away, and call for help.", "common-charging"},
		{"Charging is a job for a grown-up: toy chargers have caught fire.", "charger-recalls-2000"},
	}
	if toolPack {
		out = append(out, Caution{
			"A tool pack goes on its own charger only, taken off the vehicle, never through the vehicle's jack; a universal charger was tested with no pack.",
			"tool-pack-rule, cpsc-universal",
		})
	} else {
		out = append(out, Caution{"Use the charger that was made for this pack; a universal charger was tested with none.", "cpsc-universal"})
	}
	switch p.Family {
	case chemistry.Lithium:
		out = append(out,
			Caution{"Never charge lithium at or below freezing, nor straight from a hot ride.", p.Charge.Source},
			Caution{"Give up a lithium pack that its own charger refuses; use none that was opened, rebuilt or made of used cells.", "lithium-precharge, cpsc-charging"},
		)
	case chemistry.LeadAcid:
		out = append(out,
			Caution{"Charge a lead-acid battery after every ride, in a place with fresh air; its gas can burn.", "lead-sulfation"},
		)
	}
	return append(out,
		Caution{MakersFirst, "common-charging"},
	)
}
