package cutoff

import (
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/draws"
)

// One setting has to do for all of the packs that a setup may mean, which differ in how
// far the weakest cell lags and in the volts that the load takes off: it opens no lower
// than protects the cells of so many, and leaves [MostOfRide] to so many. A cell that is
// harmed is worse than a ride that is cut short. Own choices.
const (
	protectsShare = 0.9
	leavesShare   = 2.0 / 3.0
	latchShare    = 0.1 // must it latch in so many, it must
)

// One returns the setting that does for all of the packs that are advised each by
// itself, with the weight of each; nil stands for one of which no setting protects the
// weakest cell. It reports false where no setting both protects the weakest cell and
// leaves most of the ride in nearly all of them: then only electronics that watch every
// cell do. What closes again must stay below the full pack's volts. There must be as many
// weights as packs; else it is false as well.
func One(list []*Advice, weight []float64, fullV float64) (Advice, bool) {
	n := len(list)
	if n == 0 || len(weight) != n {
		return Advice{}, false
	}
	opens, delay, leaves, closes := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	all, latch := 0.0, 0.0
	for i, a := range list {
		all += weight[i]
		if a == nil {
			opens[i], delay[i], leaves[i], closes[i] = math.Inf(1), math.NaN(), math.Inf(-1), math.NaN()
			continue
		}
		opens[i], delay[i], leaves[i], closes[i] = a.OpensAtV, a.DelayS, a.LeavesV, a.ClosesAtV
		if a.MustLatch {
			latch += weight[i]
			closes[i] = math.NaN()
		}
	}
	out := Advice{OpensAtV: roundUp(draws.Quantile(opens, weight, protectsShare), voltsPerV)}
	left := 0.0
	for i, v := range leaves {
		if v >= out.OpensAtV-1/voltsPerV { // to what it is rounded to
			left += weight[i]
		}
	}
	if math.IsNaN(out.OpensAtV) || math.IsInf(out.OpensAtV, 1) || left < leavesShare*all {
		return Advice{}, false
	}
	out.DelayS = roundUp(draws.Quantile(delay, weight, protectsShare), delaysPerS)
	for i, a := range list { // what opens earlier recovers higher
		if a != nil {
			closes[i] += out.OpensAtV - opens[i]
			out.StandbyA = a.StandbyA
		}
	}
	out.ClosesAtV = roundUp(draws.Quantile(closes, weight, protectsShare), voltsPerV)
	// What no setting protects must not come back by itself.
	if out.MustLatch = latch >= latchShare*all || !(out.ClosesAtV < fullV); out.MustLatch {
		out.ClosesAtV = 0
	}
	return out, true
}

// CannotProtect says that no setting saves the weakest cell and leaves most of the ride,
// of one pack or of all that a setup may mean.
func CannotProtect() answer.Finding {
	return onCutoff(answer.Finding{
		Code: CodeCannotProtect, Level: answer.Watch, Harm: answer.Wear, Reads: answer.AsTold, Source: "cutoff-practice",
		Title:  "Switched off by the whole battery's volts alone, its weakest cell is harmed or most of the ride is lost.",
		Advice: "Use a sounder or larger battery, or one whose electronics watch every cell.", Change: answer.FitPack,
	})
}
