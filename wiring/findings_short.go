package wiring

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
)

// What is found of a short circuit.
const (
	CodeShortCleared       = "short-cleared"
	CodeShortBurnsWire     = "short-burns-wire"
	CodeShortAboveBreaking = "short-above-breaking"
)

// rememberedTwice is how far opening times that are only remembered may be off: within
// it nothing is to be fixed for them, and beyond it they make no danger. Own choice.
const rememberedTwice = 2

// toldUpTo is to how many times the current of its last gate an opening time is still taken
// to be told, where so much time passes at that gate that heat is lost meanwhile: what
// follows from it at far more amps is no more than a bound. Own choice.
const toldUpTo = 3

// boundOnly reports whether the opening time in a short circuit is far beyond what its
// maker or standard tells.
func (j *judge) boundOnly() bool {
	fuse := &j.Path.fuse.spec
	last := fuse.Form.Gates[len(fuse.Form.Gates)-1]
	return last.LatestS > adiabaticS && j.Worst.CurrentA > toldUpTo*last.Ratio*fuse.RatingA
}

// short judges the short circuit that leaves the wire the least margin, and
// the largest current against what the fuse may interrupt.
func (j *judge) short() {
	w, form, weakest := j.Worst, j.Path.fuse.spec.Form, j.Path.Weakest(j.AmbientC)
	f := answer.Finding{
		Code: CodeShortCleared, Level: j.fineIf(form.GatesSource), Item: answer.Fuse, About: AboutFuse,
		Decides: append(wireKeys(), answer.KeyFuseRating, answer.KeyFuseForm),
		Title:   "In a short circuit the fuse opens before the wire is harmed.",
		Found:   finite(w.ClearS), Limit: finite(w.LimitS), Unit: "s", Source: weakest.Insulation.Source,
	}
	if f.Level != answer.Fine {
		f.Advice = "Look the fuse up in its maker's sheet: the opening times used here are from memory."
	}
	switch {
	case w.Protected():
		j.add(f)
	case over(w.ClearS, w.LimitS) && over(w.CurrentA, w.CarriedA):
		f.Code, f.Level, f.Harm, f.Gravity = CodeShortBurnsWire, answer.Danger, answer.House, 2
		f.Decides = j.wireDecides(weakest, func(best Run) bool {
			return over(w.ClearS, best.warmed(j.Demand.RunningA, j.AmbientC).WithstandS(best.Wire.AreaMM2*best.wires(), w.CurrentA)) && over(w.CurrentA, best.CarriesA(j.AmbientC))
		})
		f.Decides = append(f.Decides, answer.KeyFuseRating, answer.KeyFuseForm)
		f.Title = "A short circuit may burn the wire before the fuse opens."
		f.Advice, f.Change = "Fit a smaller or faster fuse, or thicker wire.", j.Band.change()
		remembered, far := j.fineIf(form.GatesSource) != answer.Fine, j.boundOnly()
		if remembered || far {
			f.Level, f.Gravity = answer.FixFirst, 0
			if remembered && w.ClearS <= rememberedTwice*w.LimitS || j.AsMade {
				f.Level = answer.Watch
			}
			why := "how soon such a fuse opens is known from memory only"
			if !remembered {
				why = "how soon it opens then is not published"
			}
			f.Title = "A short circuit may burn the wire before the fuse opens; " + why + "."
			f.Advice = "Look up its opening times in its maker's sheet, or put a blade fuse that suits the wire in line with it."
			f.Change = answer.LookUp
		}
		j.add(f)
	}
	if form.BreakingA > 0 && over(j.Near.CurrentA, form.BreakingA) {
		j.add(answer.Finding{
			Code: CodeShortAboveBreaking, Level: answer.FixFirst, Harm: answer.House, Item: answer.Fuse, Decides: []string{answer.KeyFuseForm},
			Title: "A short circuit draws more than the fuse can interrupt.",
			Found: j.Near.CurrentA, Limit: form.BreakingA, Unit: "A", Source: form.VoltageSource,
			Advice: fmt.Sprintf("Fit a fuse made to interrupt %.0f A or more.", math.Ceil(j.Near.CurrentA)),
		})
	}
}
