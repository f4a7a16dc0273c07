package charge

import (
	"errors"

	"example.org/packcheck/answer"
)

// ErrUnknown is wrapped by the errors of [Plugged.Case] where a figure of the
// charger is not known, so that no charge can be computed.
var ErrUnknown = errors.New("charge: not known")

// What a label leaves open that may be told beside it.
const (
	unclearOutput  = "The label does not say whether the output is AC or DC."
	unclearPurpose = "The label does not say what kind of battery it charges."
)

// UnclearBeside returns what the label leaves open when the kind of current, or
// the kind of battery, is told beside it.
func (l Label) UnclearBeside(outputTold, purposeTold bool) []string {
	var out []string
	for _, text := range l.Unclear {
		if text == unclearOutput && outputTold || text == unclearPurpose && purposeTold {
			continue
		}
		out = append(out, text)
	}
	return out
}

// AtRest judges the rested voltage of a pack before any charger is looked at:
// whether it may be charged at all. It says nothing where RestV is 0.
func AtRest(p Plugged) []answer.Finding {
	if p.Pack == nil {
		return nil
	}
	spec := p.Pack.Spec()
	return restFindings(spec.Profile, spec.CellsInSeries, p.RestV)
}
