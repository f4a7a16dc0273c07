package charge

import "errors"

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
		if text == unclearOutput && (outputTold || l.MadeFor.GivesDC()) || text == unclearPurpose && purposeTold {
			continue
		}
		out = append(out, text)
	}
	return out
}
