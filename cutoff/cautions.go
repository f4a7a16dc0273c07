package cutoff

import "example.org/packcheck/chemistry"

// Caution is a safety line that belongs to every answer about a cutoff.
type Caution struct {
	Text   string // one or two plain sentences
	Source string // ID of the source
}

// Cautions returns the safety lines for draining a pack of this chemistry.
func Cautions(p chemistry.Profile) []Caution {
	out := []Caution{
		{"Never bypass or bridge a cutoff to get home: push.", "cutoff-practice"},
		{"A cutoff is no off switch: take the pack off the vehicle after the ride.", "cutoff-practice"},
	}
	switch p.Family {
	case chemistry.Lithium:
		out = append(out,
			Caution{"A lithium pack drained too far may short inside when charged: never bring it back.", "drained-lithium"},
			Caution{"Pack volts do not show a weak cell; only electronics that watch every cell do.", "pack-volts-hide-a-cell"},
		)
	case chemistry.LeadAcid:
		out = append(out, Caution{"A lead-acid battery that stands flat for days loses capacity for good.", "sulfation"})
	}
	return out
}
