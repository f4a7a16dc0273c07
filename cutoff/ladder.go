package cutoff

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on the weakest cell.
const (
	CodeWeakCellReversed = "weak-cell-reversed" // driven backwards when the cutoff opens
	CodeWeakCellHarmed   = "weak-cell-harmed"   // below its harm limit when the cutoff opens
)

// Rung is how far down the ladder of over-discharge a cell has come.
type Rung int

// The rungs, from the top.
const (
	InUse      Rung = iota // at or above the normal end
	PastEnd                // below the normal end, not yet harmed
	Harmed                 // below the harm limit
	NeverAgain             // below the last rung: must not be charged again
)

// rungNames is indexed by Rung.
var rungNames = [...]string{"in use", "past its end", "harmed", "never recharge"}

// String returns "in use", "past its end", "harmed" or "never recharge".
func (r Rung) String() string {
	if r < InUse || r > NeverAgain {
		return fmt.Sprintf("rung %d", int(r))
	}
	return rungNames[r]
}

// RungAt returns where a resting cell of this chemistry stands at cellV; a
// voltage that is not a number counts as the lowest rung. The rungs and their
// sources are the profile's. A chemistry without a last rung (lead-acid,
// nickel) never gets below Harmed.
func RungAt(p chemistry.Profile, cellV float64) Rung {
	switch {
	case math.IsNaN(cellV) || p.NeverRechargeV > 0 && cellV < p.NeverRechargeV:
		return NeverAgain
	case cellV < p.HarmV:
		return Harmed
	case cellV < p.EmptyV:
		return PastEnd
	}
	return InUse
}

// endUnderLoad returns the normal end and the harm limit per cell at a current
// of rateC times the rated capacity per hour. Makers allow a lower end at a
// higher rate, since more of the voltage is lost in the cell's resistance; the
// harm limit, which is that of a slow discharge, gives way to it.
func endUnderLoad(p chemistry.Profile, rateC float64) (endV, harmV float64) {
	endV = p.End.At(rateC)
	return endV, min(p.HarmV, endV)
}

// meterV is below what any meter shows: a cell that is at its limit to within
// this is not past it.
const meterV = 1e-4

// Weakest is the weakest cell of a pack at one moment.
type Weakest struct {
	CellV    float64 // its voltage, under the load of that moment
	RestV    float64 // what it comes to rest at
	MeanV    float64 // what the pack voltage makes one believe: its share of it
	Rung     Rung    // of the weakest cell
	Reversed bool    // it is below zero: the others charge it backwards
	EndV     float64 // normal end per cell at this current
	HarmV    float64 // harm limit per cell at this current
}

// WeakestAt returns the weakest cell of the pack in state s at a current of
// loadA (A, positive discharging), for a cell short of capacity as the model
// has it. Under load it is held against the limits for that load; the rung is
// the worse of loaded and rested. Where there is no pack, or something is no
// number, the volts are NaN and the rung is the lowest.
func WeakestAt(m *battery.Model, s battery.State, loadA float64) Weakest {
	if m == nil {
		nan := math.NaN()
		return Weakest{CellV: nan, RestV: nan, MeanV: nan, EndV: nan, HarmV: nan, Rung: NeverAgain}
	}
	w := Weakest{
		CellV: m.WeakestCellV(&s, loadA),
		MeanV: m.TerminalV(&s, loadA) / float64(m.CellsInSeries()),
	}
	settled := restedState(m, m.Charge(s), s.TempC)
	w.RestV = m.WeakestCellV(&settled, 0)
	w.EndV, w.HarmV = endUnderLoad(*m.Profile(), loadA/m.RatedAh())
	w.Reversed = w.CellV < 0
	w.Rung = RungAt(*m.Profile(), w.RestV)
	switch {
	case math.IsNaN(w.CellV):
		w.Rung = NeverAgain
	case w.CellV < w.HarmV-meterV:
		w.Rung = max(w.Rung, Harmed)
	case w.CellV < w.EndV-meterV:
		w.Rung = max(w.Rung, PastEnd)
	}
	return w
}

// restedState returns the settled state of the given charge, as
// [battery.Model.StateAt] does, but also below empty.
func restedState(m *battery.Model, charge, tempC float64) battery.State {
	w := m.Wells()
	y := w.CapacityAh - (1-charge)*m.FullAh()
	return battery.State{Y1Ah: w.C * y, Y2Ah: (1 - w.C) * y, TempC: tempC}
}

// findings says what the weakest cell suffers at the moment named by when; none
// when all is well. opensAt are the keys of the voltage that brought it there.
// A cutoff stops there each time: below harm a cell wears out soon, and only
// one that is reversed or past its last rung may short inside when charged.
func (w Weakest) findings(p chemistry.Profile, when string, opensAt []string) []answer.Finding {
	f := onCutoff(answer.Finding{
		Level: answer.FixFirst, Harm: answer.Part, Gravity: 1, Unit: "V", Found: w.CellV, Limit: w.HarmV, Want: answer.Above,
		Source: p.LadderSource, Change: answer.FitCutoff, Ladder: ladderCell, Rung: 1, Decides: append([]string{answer.KeyPackChemistry}, opensAt...),
	})
	asMade := w.MeanV >= w.EndV-cellHairV // where makers end a discharge
	if asMade {                           // then it hangs on how far the weakest lags, which nobody has measured
		f.Decides = append(f.Decides, answer.KeyPackWatchesCells)
	}
	switch {
	case w.CellV < -cellHairV:
		f.Code, f.Limit, f.Source, f.Rung = CodeWeakCellReversed, 0, "pack-volts-hide-a-cell", 2
		f.Level, f.Harm = ruin(p)
		f.Title = fmt.Sprintf("A weak cell is driven backwards when %s; the pack's volts still look right then.", when)
		f.Advice = "Let the cutoff open at a higher voltage; replace a pack whose cells have drifted that far apart."
	case w.CellV < w.HarmV-cellHairV || w.RestV < p.HarmV-cellHairV:
		f.Code = CodeWeakCellHarmed
		switch {
		case p.NeverRechargeV > 0 && w.RestV < p.NeverRechargeV:
			f.Level, f.Harm = ruin(p)
			f.Found, f.Limit = w.RestV, p.NeverRechargeV
		case w.CellV >= w.HarmV-cellHairV:
			f.Found, f.Limit = w.RestV, p.HarmV
		}
		f.Title = fmt.Sprintf("A weak cell is harmed already when %s.", when)
		f.Advice = "Let the cutoff open at a higher voltage; pack volts alone do not show a weak cell."
	default:
		return nil
	}
	if asMade && p.Family == chemistry.LeadAcid && f.Code == CodeWeakCellHarmed { // makers' ends allow for blocks as they are
		f.Level, f.Harm = answer.Watch, answer.Wear
	}
	return []answer.Finding{f}
}
