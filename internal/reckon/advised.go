package reckon

import (
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/cutoff"
)

// advice is the setting of a cutoff that does for the draws; nil where none does.
func (j *judgedTable) advice(fullV float64) *answer.AdvisedCutoff {
	one, ok := cutoff.One(j.advised, j.weight, fullV)
	if !ok {
		return nil
	}
	return &answer.AdvisedCutoff{OpensAtV: one.OpensAtV, DelayS: one.DelayS, LongestS: cutoff.LongestDelayS, StandbyA: one.StandbyA, ClosesAtV: one.ClosesAtV, MustLatch: one.MustLatch}
}

// oneCutoff puts the setting that does for the draws into the advice to fit a cutoff.
func oneCutoff(list []answer.Finding, adv *answer.AdvisedCutoff, p chemistry.Profile) {
	if adv == nil {
		return
	}
	for i := range list {
		if f := &list[i]; lacksCutoff(f) {
			f.Advice = cutoff.AdviceToFit(p, fmt.Sprintf("that opens at %s after %s and stays open", volts(adv.OpensAtV), delayOf(adv)))
		}
	}
}

// lacksCutoff reports whether a finding is that the battery has none, and has to get one. Whether
// it has one inside may be a guess, and its advice is to find out.
func lacksCutoff(f *answer.Finding) bool {
	return f.Code == cutoff.CodeNone && f.Level >= answer.FixFirst && !slices.Contains(f.Decides, answer.KeyPackWatchesCells)
}

// sayWhyNone tells of all draws that no one setting does for them, where nothing is
// fitted and none does: that each by itself has one is of no use to who has one of them
// and does not know which.
func (j *judgedTable) sayWhyNone() {
	fitted := 0.0
	for i, opens := range j.opens {
		if opens != answer.OpensNothing {
			fitted += j.weight[i]
		}
	}
	if _, ok := cutoff.One(j.advised, j.weight, math.Inf(1)); ok || fitted >= likelyShare {
		return
	}
	why := cutoff.CannotProtect()
	for i, list := range j.findings {
		for k := range list { // one that nobody can set is no advice
			if lacksCutoff(&list[k]) {
				list[k].Advice = why.Advice
			}
		}
		if !slices.ContainsFunc(list, func(f answer.Finding) bool { return f.Code == why.Code }) {
			j.findings[i] = append(list, why)
		}
	}
}
