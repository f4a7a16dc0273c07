package drive

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
)

// What the checks of motors find.
const (
	CodeBlockedOverPack       = "blocked-over-pack"
	CodeBlockedOverController = "blocked-over-controller"
	CodeBlockedOverSwitch     = "blocked-over-switch"
	CodeBlockedHeatUnknown    = "blocked-heat-unknown"
	CodeBlockedHeat           = "blocked-heat"
	CodeToothLoadBlocked      = "tooth-load-blocked"
	CodeMotorWarm             = "motor-warm" // near its limit
	CodeMotorHot              = "motor-hot"  // above it
	CodePlasticSoftens        = "plastic-softens"
)

// Seconds that a winding must stand blocked wheels: long enough for an adult to
// notice and for a child to be told to lift the foot. Own choice.
const (
	blockedFixS   = 10
	blockedWorse  = 0.8 // of the original's seconds
	blockedWatchS = 60
)

// BlockedCheck is a vehicle with blocked wheels and what to hold it against.
type BlockedCheck struct {
	Blocked  Blocked
	Limits   Limits
	LimitA   float64  // the controller's current limit; 0 = none
	Original *Blocked // nil when not known
	// OwnVolts says that the pack has the volts that the vehicle was made for: its
	// motors have lived with wheels blocked at these, whatever the original was.
	OwnVolts bool
}

// Findings judges blocked wheels: current, and how long the winding stands it.
func (k BlockedCheck) Findings() []answer.Finding {
	return append(append(k.current(), k.heat()...), k.teeth()...)
}

func (k BlockedCheck) current() []answer.Finding {
	var out []answer.Finding
	for _, p := range [...]struct {
		code      string
		item      answer.Item
		key       string // of the limit
		part      string
		a, limitA float64
	}{
		{CodeBlockedOverPack, answer.Battery, answer.KeyPackMaxCurrent, "the pack", k.Blocked.BatteryA, k.Limits.PackA},
		{CodeBlockedOverController, answer.Board, answer.KeyControllerPeakCurrent, "the controller", k.Blocked.MotorA, k.Limits.ControllerPeakA},
		{CodeBlockedOverSwitch, answer.Pedal, answer.KeyControllerContinuousCurrent, "the switch", k.Blocked.BatteryA, k.Limits.SwitchA},
	} {
		if p.limitA <= 0 || !over(p.a, p.limitA) {
			continue
		}
		out = append(out, answer.Finding{
			Code: p.code, Level: answer.FixFirst, Harm: answer.Part, Topic: answer.TopicLaunch, Item: p.item, Source: srcRating,
			Unit: "A", Found: p.a, Limit: p.limitA, Change: answer.LimitCurrent, LimitA: p.limitA,
			Habit: answer.HabitLetGo, Decides: []string{p.key}, LimitKey: p.key,
			Title:  fmt.Sprintf("Blocked wheels draw too many amps for %s: at most %s.", p.part, k.Limits.most(p.item, p.limitA)),
			Advice: currentLimit(p.limitA),
		})
	}
	return out
}

// motorHeatKeys are what the warming of a motor hangs on.
func motorHeatKeys() []string {
	return []string{answer.KeyMotorsCan, answer.KeyMotorsWindingResistance}
}

func (k BlockedCheck) heat() []answer.Finding {
	b := k.Blocked
	f := answer.Finding{
		Topic: answer.TopicLaunch, Item: answer.Motors, Source: srcClass, Gravity: -1,
		Habit: answer.HabitLetGo, Decides: motorHeatKeys(), Advice: answer.HabitLetGo,
	}
	switch {
	case !b.HeatKnown:
		f.Code, f.Level, f.Unit, f.Found, f.Reads = CodeBlockedHeatUnknown, answer.Watch, "A", b.PerMotorA, answer.AsTold
		f.Title = fmt.Sprintf("Blocked wheels draw %s in each motor; how long it stands that is not known.", amps(b.PerMotorA))
		if !isNumber(b.PerMotorA) {
			f = f.Unread("What blocked wheels draw is not known.")
		}
		return []answer.Finding{f}
	case !b.ReachesLimit:
		return nil
	}
	f.Code, f.Unit, f.Found, f.Limit, f.Want = CodeBlockedHeat, "s", b.ToLimitS, blockedWatchS, answer.Above
	f.Title = fmt.Sprintf("Blocked wheels overheat a motor within %s: its winding reaches the limit of its insulation.", seconds(math.Max(1, b.ToLimitS)))
	if shorter(b.ToLimitS, blockedWatchS) {
		f.Level = answer.Watch
	}
	// The vehicle survived with its original: what is no worse than that is no
	// change for the worse. Where the original is not known, it may be one.
	worse := !k.OwnVolts && (k.Original == nil || !k.Original.ReachesLimit || shorter(b.ToLimitS, blockedWorse*k.Original.ToLimitS))
	if shorter(b.ToLimitS, blockedFixS) && worse {
		f.Level, f.Limit = answer.FixFirst, blockedFixS
		f.Change, f.LimitA = answer.LimitCurrent, b.BearableA
		f.Advice = "Fit a controller with a current limit: half the current gives four times as long."
		if k.LimitA > 0 {
			f.Advice = "Lower the current limit: half the current gives four times as long."
		}
		f.Advice += " Even then let go of the pedal at once when the vehicle does not move."
	}
	f.Harm = wearOrPart(f.Level)
	return []answer.Finding{f}
}

func (k BlockedCheck) teeth() []answer.Finding {
	if k.Original == nil {
		return nil
	}
	return toothLoad(toothPair{k.Blocked.PinionNM, k.Original.PinionNM, k.Blocked.MotorA}, answer.Finding{
		Code: CodeToothLoadBlocked, Title: "Blocked wheels load the gears to %.1f times the original.",
		Advice: "Fit a current limit: plastic teeth strip without warning.",
	})
}

// HeatCheck is a motor at the end of an outing.
type HeatCheck struct {
	State    HeatState
	LimitC   float64   // of the winding's insulation; 0 = not known
	Original HeatState // after the same outing with the original; zero when not known
	ReadC    float64   // what was read of the case
	ReadBy   string    // key of that reading; empty: there is none
	Before   bool      // it was read with the original battery
}

// LadderGoing is the ladder from motors that grow too hot to those that cannot turn, or
// hardly get anywhere, which grow hotter still while somebody holds the pedal down.
const LadderGoing = "going"

// nearLimitK is how close to its limit a winding is worth watching. Own choice.
const nearLimitK = 15

// Findings judges a motor's temperature at the end of an outing.
func (k HeatCheck) Findings() []answer.Finding {
	var out []answer.Finding
	hot := answer.Finding{
		Level: answer.Watch, Topic: answer.TopicRide, Item: answer.Motors, Unit: "degC", Gravity: 1,
		Change: answer.LoadLess, Habit: answer.HabitPauses, Decides: motorHeatKeys(), Ladder: LadderGoing, Rung: 1,
	}
	if k.LimitC > 0 && hotter(k.State.WindingC, k.LimitC-nearLimitK) {
		f := hot
		f.Code, f.Source, f.Found, f.Limit, f.Harm = CodeMotorWarm, srcClass, k.State.WindingC, k.LimitC, answer.Wear
		f.Title = "The motor windings end near their heat limit."
		f.Advice = answer.HabitPauses
		if hotter(k.State.WindingC, k.LimitC) {
			f.Code, f.Level, f.Rung = CodeMotorHot, answer.FixFirst, 2
			if !hotter(k.State.WindingC, k.Original.WindingC) { // it has lived with as much
				f.Level = answer.Watch
			}
			f.Harm = wearOrPart(f.Level)
			f.Title = "The motor windings end above their heat limit."
			f.Advice = "Drive shorter, on easier ground or at less voltage. " + lifeWords(LifeShare(k.State.WindingC-k.LimitC))
		}
		out = append(out, f)
	}
	read := k.ReadBy != "" && hotter(k.ReadC, PlasticSoftensC) && !(k.Before && hotter(k.Original.CaseC, k.State.CaseC))
	if read || hotter(k.State.CaseC, PlasticSoftensC) {
		f := hot
		f.Ladder, f.Rung = "", 0
		f.Code, f.Source, f.Found, f.Limit = CodePlasticSoftens, srcPlastic, k.State.CaseC, PlasticSoftensC
		f.Title = "The motor case gets hot enough to soften plastic: its own end and the gears beside it suffer."
		switch {
		case read: // no vehicle has lived with it for long, and what was read is no guess
			f.Level, f.Found, f.Decides, f.Added = answer.FixFirst, k.ReadC, []string{k.ReadBy}, true
			f.Title = fmt.Sprintf("The motor case was read at %.0f C, hot enough to soften plastic: its own end and the gears beside it suffer.", k.ReadC)
			if k.Before {
				f.Title = fmt.Sprintf("The motor case was read at %.0f C with the battery it came with, hot enough to soften plastic, and this one warms it no less.", k.ReadC)
			}
		case hotter(k.State.CaseC, PlasticSoftC):
			f.Limit = PlasticSoftC
			if hotter(k.State.CaseC, k.Original.CaseC) {
				f.Level = answer.FixFirst
			}
		}
		f.Harm = wearOrPart(f.Level)
		f.Advice = "Drive shorter, pause longer, or use less voltage."
		out = append(out, f)
	}
	return out
}

// lifeWords says in plain words what is left of the insulation's life.
func lifeWords(share float64) string {
	if share < 0.02 {
		return "At this heat the windings' insulation fails within hours."
	}
	return fmt.Sprintf("At this heat the windings' insulation lasts about %.0f %% of its normal life.", 100*share)
}
