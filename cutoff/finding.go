package cutoff

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// Margins of computed figures: what lies within them is at its limit, not past
// it.
const (
	nearFull  = 0.98 // of a full pack's volts: from there it opens as soon as anything is drawn; own choice
	packHairV = 0.02 // volts of a pack that meters and labels do not tell apart
	cellHairV = 0.01 // a cell at the knee moves by so much in a second of load
	timeHair  = 0.01 // of a time: several times what the steps of a launch, or of days left alone, move it
)

// The ladders of this package's findings: how soon a pack is harmed, and how far the
// weakest cell has come.
const (
	ladderIdle = "idle"
	ladderCell = "weakest-cell"
)

// onCutoff says that a finding is about cutoffs and concerns the battery.
func onCutoff(f answer.Finding) answer.Finding {
	f.Topic, f.Item = answer.TopicCutoff, answer.Battery
	return f
}

// ruin is how bad it is to drain cells to ruin: lithium may short inside when
// somebody charges it again (source "drained-lithium"), other cells are lost.
func ruin(p chemistry.Profile) (answer.Level, answer.Harm) {
	if p.Family == chemistry.Lithium {
		return answer.Danger, answer.House
	}
	return answer.FixFirst, answer.Part
}

// deviceKeys are the keys of the setup that describe one device.
type deviceKeys struct{ opensAt, delay, closesAt, standby string }

// keysOf returns the keys of the device at a place.
func keysOf(p Place) deviceKeys {
	switch p {
	case Pack:
		return deviceKeys{
			answer.KeyCutoffPackOpensAt, answer.KeyCutoffPackDelay, answer.KeyCutoffPackClosesAt, answer.KeyCutoffPackStandby,
		}
	case Module:
		return deviceKeys{
			answer.KeyCutoffModuleOpensAt, answer.KeyCutoffModuleDelay, answer.KeyCutoffModuleClosesAt, answer.KeyCutoffModuleStandby,
		}
	}
	return deviceKeys{
		answer.KeyCutoffControllerOpensAt, answer.KeyCutoffControllerDelay, answer.KeyCutoffControllerClosesAt, answer.KeyCutoffControllerStandby,
	}
}

// opensAtKeys are the keys of the opening voltages of a chain.
func (c *Chain) opensAtKeys() []string {
	var out []string
	for i := range c.n {
		out = append(out, keysOf(c.devices[i].Where).opensAt)
	}
	return out
}
