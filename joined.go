package packcheck

import (
	"example.org/packcheck/battery"
	"example.org/packcheck/answer"
)

// joined judges two packs used as one.
func (v *view) joined() []answer.Finding {
	how, one := v.parts.Pack.Joined, v.one
	if how == "" {
		return nil
	}
	start := one.StateAt(v.o.c.StartCharge, v.o.c.PackC)
	j := battery.Joint{A: one, B: one, StateA: start, StateB: start}
	if how == "series" {
		return j.JudgeSeries()
	}
	// Nobody has two packs at the very same charge: a tenth between them is
	// what two chargers leave.
	j.StateB = one.StateAt(max(0, v.o.c.StartCharge-0.1), v.o.c.PackC)
	return j.JudgeParallel()
}

// unclearBlocks warns of blocks that may be wired either way: the volts of all
// that is judged here hang on it.
func (v *view) unclearBlocks() []answer.Finding {
	if !v.parts.Pack.BlocksUnclear {
		return nil
	}
	return []answer.Finding{{
		Code: "blocks-unclear", Level: answer.FixFirst, Source: srcCommon, Unit: "V", Found: v.o.c.Pack.NominalV(),
		Title:  "The label names several blocks but not how they are joined; they are taken to be in series.",
		Advice: "Look at the links between them, and write the volts of the whole or \"in parallel\" into the label.",
	}}
}
