package cutoff

import (
	"fmt"
	"math"
	"sort"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on an advised setting.
const (
	CodeLaunchTooDeep = "launch-too-deep-for-cutoff" // no delay rides the launch through
	CodeMustLatch     = "cutoff-must-latch"          // no closing voltage is high enough
	CodeCannotProtect = "cutoff-cannot-protect"      // no setting saves the weakest cell and leaves most of the ride
)

// How an advised setting is rounded and with what room.
const (
	voltsPerV = 10.0 // an advised voltage is rounded up to tenths
	// closeRoom is what a closing voltage stands above the rebound, of the
	// nominal voltage, beside the spread of the rested curve.
	closeRoom = 0.01
	// reboundCharge is the charge that may still be there although the model
	// says that it is not (source "measured-rebound").
	reboundCharge = 0.10
)

// Wish is what a cutoff is wanted for.
type Wish struct {
	Case             // the pack near full, its running load, the path; Chain is not used
	Where    Place   // where the device is to sit
	Sag      Sag     // the launch at that place, at a low charge
	StandbyA float64 // what the device itself goes on drawing when open; >= 0
}

// AdvisedStandbyA is what a device that is bought may go on drawing once it has opened:
// 0.2 Ah in a forgotten week. Transistor switches that are sold for it draw less,
// modules with a relay or a display far more (source "cutoff-practice"). Own choice.
const AdvisedStandbyA = 0.001

// MostOfRide is the share of a ride that a cutoff has to leave to be of use. Own choice.
const MostOfRide = 0.5

// Advice is a setting: the first three fields are what a device is set to.
type Advice struct {
	OpensAtV  float64 // whole-pack volts, as the device sees them
	DelayS    float64 // the shortest that rides through the launch; up to [LongestDelayS] it protects as well
	StandbyA  float64 // at most, once it has opened
	LeavesV   float64 // the highest opening voltage that leaves [MostOfRide]
	ClosesAtV float64 // only for a device that cannot latch: above any rebound
	// MustLatch: no closing voltage below the full pack's keeps it from
	// chattering; ClosesAtV is then 0.
	MustLatch bool
	Weakest   Weakest // weakest cell when it opens, under the running load
	Charge    float64 // state of charge at that moment
	ReboundV  float64 // pack volts long after it has opened
	Why       []string
	Findings  []answer.Finding
}

// Advise returns the setting for this pack and this launch. The opening
// voltage is the maker's end for the running current, raised until the weakest
// cell is above its harm limit, at the end of the delay and after a forgotten
// week, less what is lost on the way to the device.
// The delay rides through the launch. A latch is preferred; the closing voltage
// for a device that has none lies above the highest rebound.
func Advise(w Wish) (Advice, error) {
	if err := w.check(); err != nil {
		return Advice{}, err
	}
	m := w.Pack
	a := Advice{}
	rate := w.LoadA / m.RatedAh()
	end := m.EndV(w.LoadA)
	if !(w.StandbyA >= 0) || math.IsInf(w.StandbyA, 0) {
		return Advice{}, fmt.Errorf("%w: StandbyA is %g (want at least 0)", errCase, w.StandbyA)
	}
	f := w.falling()
	makers := roundUp(end-w.lost(), voltsPerV)
	a.OpensAtV = w.opensAt(&f, makers)
	atEnd := f.to(a.OpensAtV + w.lost())
	a.Weakest = WeakestAt(m, atEnd, w.LoadA)
	a.Charge = m.Charge(atEnd)
	a.DelayS, a.StandbyA = w.delay(a.OpensAtV), w.StandbyA
	most := f.after(MostOfRide * f.until(makers+w.lost()))
	a.LeavesV = m.TerminalV(&most, w.LoadA) - w.lost()
	a.close(&w, atEnd)

	a.Why = append(a.Why, fmt.Sprintf("The maker's end at %.2f times the capacity per hour is %.2f V per cell, %.1f V for the pack.",
		rate, m.Spec().Profile.End.At(rate), end))
	if a.OpensAtV > makers {
		a.Why = append(a.Why, fmt.Sprintf("It is raised to %.1f V because the weakest cell runs out before the others and must last through a forgotten week.", a.OpensAtV+w.lost()))
	}
	if w.lost() > 0.01 {
		a.Why = append(a.Why, fmt.Sprintf("On the way to the device %.2f V are lost at the running current.", w.lost()))
	}
	a.Why = append(a.Why, fmt.Sprintf("The launch stays below that for %.1f s; the delay is half as long again, at least %.0f s.", w.Sag.below(a.OpensAtV), leastDelayS))
	a.Findings = w.adviceFindings(a)
	return a, nil
}

// Costs returns what is left in the pack, as a share of its full charge, when a device that is set
// to these volts opens, and after how many seconds of the running load that is. The wish
// is one that [Advise] takes; of any other both are NaN.
func (w Wish) Costs(opensAtV float64) (left, seconds float64) {
	if w.Case.check() != nil {
		return math.NaN(), math.NaN()
	}
	f := w.falling()
	seconds = f.until(opensAtV + w.lost())
	s := f.after(seconds)
	return min(max(w.Pack.Charge(s), 0), 1), seconds
}

// lost returns the volts between pack and device at the running current.
func (w *Wish) lost() float64 {
	if w.Where == Controller {
		return w.LoadA * w.PathOhm
	}
	return 0
}

// opensAt raises the opening voltage, of a device, in steps of what it is rounded to,
// until the weakest cell stays above its harm limit, loaded and rested: at the end of
// any delay that it may be set to, and still after a week in which everybody has
// forgotten the pack. Where none of a pack under load does, it is that of the full one.
func (w *Wish) opensAt(f *falling, makers float64) float64 {
	m := w.Pack
	raised := func(steps int) float64 { return roundUp(makers+float64(steps)/voltsPerV, voltsPerV) }
	ok := func(steps int) bool { return w.protects(f, raised(steps)) }
	full := m.TerminalV(&w.Start, w.LoadA) - w.lost()
	most := int(math.Ceil((full - makers) * voltsPerV))
	if most <= 0 || ok(0) {
		return makers
	}
	if !ok(most) {
		return raised(most)
	}
	return raised(1 + sort.Search(most-1, func(i int) bool { return ok(i + 1) }))
}

// protects reports whether the weakest cell stays above its harm limit with a device that is
// set to so many volts and waits as long as any may.
func (w *Wish) protects(f *falling, opensAtV float64) bool {
	if w.CellsWatched {
		return true
	}
	m := w.Pack
	s := f.to(opensAtV + w.lost())
	delay := m.Over(LongestDelayS + 1)
	delay.Advance(&s, w.LoadA, w.AmbientC)
	if WeakestAt(m, s, w.LoadA).Rung >= Harmed {
		return false
	}
	forgotten := restedState(m, m.Charge(s)-w.weekLoss(), w.AmbientC)
	return WeakestAt(m, forgotten, 0).Rung < Harmed
}

// weekLoss returns the share of the full charge that goes in a forgotten week.
// A nickel cell is harmed by being driven backwards, not by standing empty.
func (w *Wish) weekLoss() float64 {
	p := w.Pack.Profile()
	if p.Family == chemistry.Nickel {
		return 0
	}
	_, _, fastest := p.MonthlyLoss(w.AmbientC)
	return weekDays * (fastest/monthDays + w.StandbyA*24/w.Pack.FullAh())
}

// delay returns the delay that rides through the launch.
func (w *Wish) delay(opensAtV float64) float64 {
	need := roundUp(delayMargin*w.Sag.below(opensAtV), delaysPerS)
	return min(max(need, leastDelayS), mostDelayS)
}

// close sets the closing voltage above the highest voltage that the pack can
// come back to.
func (a *Advice) close(w *Wish, s battery.State) {
	m := w.Pack
	a.ReboundV = m.RestedV(s)
	closes := roundUp(mostReboundV(m, s), voltsPerV)
	if closes >= m.FullV() {
		a.MustLatch = true
		return
	}
	a.ClosesAtV = max(closes, a.OpensAtV+1/voltsPerV)
}

// mostReboundV returns the highest volts that a pack left in state s may
// recover to, whatever the model says: measured cells came back to the rested
// volts of 6 and of 9 % charge after discharges to their very end (source
// "measured-rebound"), so a tenth of the charge is added, and the spread of
// the rested curve, and a warm room.
func mostReboundV(m *battery.Model, s battery.State) float64 {
	p := m.Profile()
	most := restedState(m, min(m.Charge(s)+reboundCharge, 1), max(s.TempC, 25))
	return m.RestedV(most) + float64(m.CellsInSeries())*p.Rest.SpreadV + closeRoom*m.NominalV()
}

// Device returns the advised setting as a device that latches.
func (a Advice) Device(where Place) Device {
	return Device{Where: where, OpensAtV: a.OpensAtV, DelayS: a.DelayS}
}

// adviceFindings says where no good setting exists.
func (w *Wish) adviceFindings(a Advice) []answer.Finding {
	p := w.Pack.Spec().Profile
	var fs []answer.Finding
	if !w.CellsWatched {
		fs = a.Weakest.findings(p, "the advised cutoff opens", nil)
	}
	if below := w.Sag.below(a.OpensAtV); delayMargin*below > mostDelayS*(1+timeHair) {
		fs = append(fs, onCutoff(answer.Finding{
			Code: CodeLaunchTooDeep, Level: answer.FixFirst, Harm: answer.Part, Unit: "s", Found: below, Limit: mostDelayS / delayMargin, Source: "cutoff-practice",
			Title:  "The launch pulls the volts down for so long that no sensible delay rides it through.",
			Advice: "Soften the launch, or use a pack that holds its volts better.",
		}))
	}
	if a.MustLatch {
		fs = append(fs, onCutoff(answer.Finding{
			Code: CodeMustLatch, Level: answer.Watch, Harm: answer.Wear, Unit: "V", Found: a.ReboundV, Limit: w.Pack.FullV(),
			Reads: answer.AsTold, Source: "cutoff-practice",
			Title:  "Only a cutoff that latches will do: the rested volts come back close to those of a full pack.",
			Advice: "Choose one that stays open until it is switched on again by hand.",
			Change: answer.FitCutoff, Decides: []string{answer.KeyPackChemistry},
		}))
	}
	answer.Sort(fs)
	return fs
}
