package charge

import "example.org/packcheck/chemistry"

// Caution is a safety line that belongs to every answer about charging or
// storage, whatever else was found.
type Caution struct {
	Text   string // one or two plain sentences
	Source string // ID of the source
}

// Cautions returns the safety lines for charging and keeping a pack of this
// chemistry, most important first.
func Cautions(p chemistry.Profile, toolPack bool) []Caution {
	out := []Caution{
		{"Be there and awake while anything charges; unplug it before you go to bed or leave the house.", "cpsc-charging"},
		{"Use the charger that was made for this pack. A universal charger was tested with none.", "cpsc-universal"},
		{"Charge on a hard surface that does not burn, away from the way out, and never cover charger or pack.", "common-charging"},
		{"Heat, swelling, a smell or hissing: unplug at the wall if that is safe, keep away, and call for help.", "common-charging"},
		{"Charging is a job for a grown-up: ordinary chargers are not made for children, and toy chargers have caught fire.", "charger-recalls-2000"},
	}
	switch p.Family {
	case chemistry.Lithium:
		out = append(out,
			Caution{"Never charge lithium at or below freezing, nor straight from a hot ride.", p.Charge.Source},
			Caution{"Never try to bring back a lithium pack that its own charger refuses.", "lithium-precharge"},
			Caution{"No pack that was opened, rebuilt or made of used cells.", "cpsc-charging"},
		)
	case chemistry.LeadAcid:
		out = append(out,
			Caution{"Charge a lead-acid battery after every ride, in a place with fresh air; its gas can burn.", "lead-sulfation"},
		)
	}
	if toolPack {
		out = append(out,
			Caution{"A tool pack goes on its own charger only, taken off the vehicle; never through the vehicle's jack.", "tool-pack-rule"},
		)
	}
	return append(out,
		Caution{"The instructions of the makers of pack, charger and vehicle, and local codes, come before anything said here.", "common-charging"},
	)
}
