package wiring

import (
	"fmt"
	"math"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/tables"
)

// What is found on wire, joints and switch, and of a fuse that is not there.
const (
	CodeWireCarries     = "wire-carries"
	CodeWireOverloaded  = "wire-overloaded"
	CodeWireThin        = "wire-thin"
	CodeJointOverloaded = "joint-overloaded"
	CodeJointHot        = "joint-hot"
	CodeJointWarm       = "joint-warm"
	CodeDropLarge       = "drop-large"
	CodeNoFuse          = "no-fuse"
	CodeFuseUnknown     = "fuse-unknown"
)

// The questions that findings of this package answer. Who judges the fuse
// elsewhere, as over an outing, answers [AboutFuse] too.
const (
	aboutWire = "wire"
	AboutFuse = "fuse"
)

// usualFindings is how many most cases have at the most.
const usualFindings = 12

// judge collects the findings on wire, joints, switch and fuse.
func (c Case) judge(r Result) []answer.Finding {
	j := &judge{Case: c, Result: r, found: make([]answer.Finding, 0, usualFindings)}
	j.wire()
	j.joints()
	j.drop()
	if c.Path.fuse == nil {
		j.noFuse()
		return j.found
	}
	j.fuseSize()
	j.fuseLoad()
	j.fuseBlocked()
	j.fusePlace()
	j.fuseVoltage()
	j.fuseHolder()
	j.fuseHeat()
	j.fuseLife()
	j.breaker()
	j.short()
	return j.found
}

// judge is a case with its numbers while findings are being made.
type judge struct {
	Case
	Result
	found []answer.Finding
}

func (j *judge) add(f answer.Finding) {
	f.Topic = answer.TopicPath
	j.found = append(j.found, f)
}

// fineIf is Fine for a limit that was read, Watch for one that is remembered
// or estimated: nothing is fine on a guess.
func (j *judge) fineIf(source string) answer.Level {
	if j.Tables.Firm(source) {
		return answer.Fine
	}
	return answer.Watch
}

// wire judges the running current against the ampacity of every run, and
// wires too thin to stand alone.
func (j *judge) wire() {
	least := j.Tables.Figure(tables.SmallestWireOutside)
	for _, run := range j.Path.runs {
		j.carries(run)
		if run.Wire.AreaMM2 < least.Likely*thinnestShare {
			j.add(answer.Finding{
				Code: CodeWireThin, Level: answer.Watch, Item: answer.Wire, About: aboutWire, Decides: wireKeys(),
				Title: "The " + run.Name + " is thin enough to break from handling.",
				Found: run.Wire.AreaMM2, Limit: least.Likely, Want: answer.Above, Unit: "mm2", Source: least.Source,
				Advice: "Keep the " + run.Name + " inside a sheath, or fit thicker wire.",
			})
		}
	}
}

// carries judges the running current on one run. In between, where a hair
// would decide, it says nothing.
func (j *judge) carries(run Run) {
	running, carries := j.Demand.RunningA, run.CarriesA(j.AmbientC)
	f := answer.Finding{
		Code: CodeWireCarries, Level: j.fineIf(run.Ampacity.Source), Item: answer.Wire, About: aboutWire, Decides: wireKeys(),
		Title: "The running current is within what the " + run.Name + " can take.",
		Found: running, Limit: carries, Unit: "A", Source: run.Ampacity.Source,
	}
	if f.Level != answer.Fine {
		f.Title = "That the " + run.Name + " takes the running current rests on a limit from memory."
		f.Advice = "Look the wire up in its maker's sheet: the limit used here is from memory."
	}
	switch melts := run.meltsA(j.AmbientC); {
	// Motors that warm, and easier ground, take less than that: the fuse must open at
	// what melts it, not only at more.
	case drawsOver(running, melts) && !j.opensWithin(melts, warmsS):
		f.Level, f.Harm, f.Limit, f.Source = answer.Danger, answer.House, melts, run.Insulation.Source
		f.Title = "The running current makes the " + run.Name + " so hot that its insulation melts."
		f.Decides = j.wireDecides(run, func(best Run) bool { return drawsOver(running, best.meltsA(j.AmbientC)) })
	case drawsOver(running, carries):
		f.Level, f.Harm = answer.FixFirst, answer.Part
		f.Title = "The running current is too much for the " + run.Name + "."
		f.Decides = j.wireDecides(run, func(best Run) bool { return drawsOver(running, best.CarriesA(j.AmbientC)) })
	case running > carries:
		return
	default:
		j.add(f)
		return
	}
	f.Code, f.Change, f.Gravity = CodeWireOverloaded, answer.FitWire, 1
	f.Advice = "Fit thicker wire, or limit the current in the controller."
	j.add(f)
}

// warmsS is how long a wire of a ride-on takes to get hot, at least. Own choice.
const warmsS = 60

// opensWithin reports whether a fuse that stays open has surely opened by then.
func (j *judge) opensWithin(amps, seconds float64) bool {
	f := j.Path.fuse
	return f != nil && !f.spec.Form.Breaker && f.At(j.AmbientC).Opens(amps).LatestS < seconds
}

// meltsA returns the steady current at which the run gets as hot as its
// insulation may become only for the seconds of a short circuit.
func (r Run) meltsA(ambientC float64) float64 {
	return r.wires() * r.Ampacity.WarmsToA(r.Insulation.FinalC, ambientC)
}

// thinnestShare lets a wire pass as 1 mm2 that misses it by rounding.
const thinnestShare = 0.99

// farTooHot is by which factor too much heat in a joint sets fire to what is
// around it. Own choice; the recall of 22 October 1998 was for such connectors.
const farTooHot = 2

// joints judges heat and load of every joint and switch.
func (j *judge) joints() {
	watch, hot := j.Tables.Figure(tables.JointWatch), j.Tables.Figure(tables.JointHot)
	for _, c := range j.Path.contacts {
		if c.Kind != Joint && c.Kind != Switch {
			continue
		}
		of := answer.Finding{Level: answer.FixFirst, Harm: answer.Part, Item: answer.Wire, Change: answer.FitJoint}
		load, ohm := []string{answer.KeyWireJoint}, []string{answer.KeyWireJointResistance}
		renew := "Renew the " + c.Name + ": new contacts have a tenth of the resistance of aged ones."
		if c.Kind == Switch {
			of.Item = answer.Pedal
			load, ohm = []string{answer.KeyControllerContinuousCurrent}, []string{answer.KeyControllerResistance}
			renew = "Renew the " + c.Name + ", or let a controller carry the current."
		}
		if c.SteadyA > 0 && drawsOver(j.Demand.RunningA, c.SteadyA) {
			f := of
			f.Code, f.Found, f.Limit, f.Unit, f.Source, f.Decides = CodeJointOverloaded, j.Demand.RunningA, c.SteadyA, "A", c.Source, load
			f.Title = "The running current is too much for the " + c.Name + "."
			f.Advice = "Fit a connector or switch made for this current, or limit the current in the controller."
			j.add(f)
		}
		f := of
		f.Found, f.Unit, f.Decides = j.Demand.RunningA*j.Demand.RunningA*c.Ohm, "W", ohm
		switch {
		case drawsOver(f.Found, hot.Likely):
			f.Code, f.Limit, f.Source = CodeJointHot, hot.Likely, hot.Source
			f.Title, f.Advice = "Too much heat builds up in the "+c.Name+".", renew
			if drawsOver(f.Found, farTooHot*hot.Likely) { // overheated connectors have burned vehicles down
				f.Level, f.Harm, f.Gravity = answer.Danger, answer.House, 1
			}
		case drawsOver(f.Found, watch.Likely):
			f.Code, f.Level, f.Harm, f.Gravity, f.Limit, f.Source = CodeJointWarm, answer.Watch, answer.Wear, -1, watch.Likely, watch.Source
			f.Change, f.Habit = answer.ChangeNone, answer.HabitFeelJoints
			f.Title = "Some heat builds up in the " + c.Name + "."
			f.Advice = "Feel the " + c.Name + " after ten minutes of use; renew what is too warm to hold."
		default:
			continue
		}
		j.add(f)
	}
}

// drop judges the share of the voltage that the path takes.
func (j *judge) drop() {
	limit := j.Tables.Figure(tables.DropOrdinary)
	if drawsOver(j.Total.DropShare, limit.Likely) {
		j.add(answer.Finding{
			Code: CodeDropLarge, Level: answer.Watch, Item: answer.Wire, Change: answer.FitWire,
			Decides: append(wireKeys(), answer.KeyWireOneWayLength, answer.KeyWireJointResistance),
			Title:   "Much of the voltage is lost on the way to the motors.",
			Found:   j.Total.DropShare, Limit: limit.Likely, Unit: "share", Source: limit.Source,
			Advice: "Shorten or thicken the wire, and renew old joints.",
		})
	}
}

// noFuse is the case without any fuse.
func (j *judge) noFuse() {
	rule := j.Tables.Figure(tables.FuseShareOfAmpacity)
	f := answer.Finding{
		Code: CodeNoFuse, Level: answer.Danger, Harm: answer.House, Item: answer.Fuse, Gravity: 2,
		Change: answer.FitFuse, Decides: []string{answer.KeyFuseForm},
		Found: j.Far.CurrentA, Limit: j.Far.CarriedA, Unit: "A", Source: rule.Source,
		Title:  "There is no fuse: a short circuit makes the wire glow.",
		Advice: "Put a fuse in before anything else. " + j.Band.Advice(),
	}
	if j.FuseUnknown {
		f.Code, f.Level, f.Gravity = CodeFuseUnknown, answer.FixFirst, 1
		f.Decides = []string{answer.KeyFuseRating, answer.KeyFuseForm}
		f.Title = "Nothing is known of a fuse: without one a short circuit makes the wire glow."
		if j.OpenedA > 0 && j.CameBack {
			f.Title = fmt.Sprintf("Something of %.3g A opened and came back, and whether a fuse is there as well is not known: without one a short circuit makes the wire glow.", j.OpenedA)
		} else if j.OpenedA > 0 {
			f.Title = fmt.Sprintf("A fuse of %.3g A opened, and what is in its place is not known: without one a short circuit makes the wire glow.", j.OpenedA)
		} else if j.Replaced {
			f.Title = "Nothing is known of a fuse; many batteries of ride-ons have theirs inside, and it left with the old one. A short circuit then makes the wire glow."
			if c, err := j.Tables.Caution("fuse-inside"); err == nil {
				f.Source += ", " + c.Source
			}
		}
		f.Advice = "Look for a fuse by the pack and read its kind and rating. "
		if len(j.Band.StandardA) > 0 {
			f.Advice += "If there is none, or another, " + lowerFirst(j.Band.Advice())
		} else {
			f.Advice += "If there is none, no size suits this wire and this load yet: " + lowerFirst(j.Band.Advice())
		}
	}
	if j.Far.CurrentA <= j.Far.CarriedA { // the way out and back tames it, a short nearer the pack does not
		f.Found, f.Limit = j.Near.CurrentA, j.Near.CarriedA
	}
	j.add(f)
}

// lowerFirst makes a sentence fit to follow a colon.
func lowerFirst(sentence string) string { return strings.ToLower(sentence[:1]) + sentence[1:] }

// finite keeps infinities out of reports: JSON knows none. A year stands for
// "never".
func finite(seconds float64) float64 {
	const year = 365 * 24 * 3600.0
	if math.IsInf(seconds, 1) || seconds > year {
		return year
	}
	return seconds
}
