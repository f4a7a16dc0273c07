package battery

import (
	"fmt"

	"example.org/packcheck/answer"
)

// Codes of the findings on what a label says.
const (
	CodeLabelMaxVolts = "label-max-volts" // "max" volts on the label are not the nominal ones
	CodeLabelUnclear  = "label-unclear"   // the label can mean more than one pack
)

// Findings corrects what a label makes people believe: nothing when there is
// nothing to correct.
func (l Label) Findings() []answer.Finding {
	var out []answer.Finding
	if l.MaxV > 0 && l.NominalV > 0 && l.MaxV > l.NominalV+0.5 {
		out = append(out, onPack(answer.Finding{
			Code: CodeLabelMaxVolts, Level: answer.Fine, Harm: answer.Wear,
			Title: fmt.Sprintf("%g V max on the label is a pack of %g V nominal.", l.MaxV, l.NominalV),
			Found: l.MaxV, Limit: l.NominalV, Unit: "V", Reads: answer.AsTold, Source: srcLabels,
			Advice:  "Compare nominal volts with nominal volts; but hold what the vehicle can stand against the full voltage.",
			Decides: []string{answer.KeyPackLabel},
		}))
	}
	if len(l.Others) > 0 || l.CellsInSeries == 0 {
		out = append(out, onPack(answer.Finding{
			Code: CodeLabelUnclear, Level: answer.Watch, Harm: answer.Wear,
			Title:  "The words on the pack can be read in more than one way.",
			Source: srcLabels,
			Advice: "Look for the chemistry and the number of cells on the pack, and write both into the setup.",
			Change: answer.LookUp, Decides: []string{answer.KeyPackLabel},
		}))
	}
	return out
}
