package drive

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
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
}

// Findings judges blocked wheels: current, and how long the winding stands it.
func (k BlockedCheck) Findings() []answer.Finding {
	return append(append(k.current(), k.heat()...), k.teeth()...)
}

func (k BlockedCheck) current() []answer.Finding {
	var out []answer.Finding
	for _, p := range [...]struct {
		code, part string
		a, limitA  float64
	}{
		{"blocked-over-pack", "the pack gives at most", k.Blocked.BatteryA, k.Limits.PackA},
		{"blocked-over-controller", "the controller stands", k.Blocked.MotorA, k.Limits.ControllerPeakA},
		{"blocked-over-switch", "the switch is made for", k.Blocked.BatteryA, k.Limits.SwitchA},
	} {
		if p.limitA <= 0 || p.a <= p.limitA {
			continue
		}
		out = append(out, answer.Finding{
			Code: p.code, Level: answer.FixFirst, Source: srcRating, Unit: "A", Found: p.a, Limit: p.limitA,
			Title:  fmt.Sprintf("Blocked wheels draw %.0f A; %s %.0f A.", p.a, p.part, p.limitA),
			Advice: currentLimit(p.limitA),
		})
	}
	return out
}

func (k BlockedCheck) heat() []answer.Finding {
	b := k.Blocked
	switch {
	case !b.HeatKnown:
		return []answer.Finding{{
			Code: "blocked-heat-unknown", Level: answer.Watch, Source: srcClass, Unit: "A", Found: b.PerMotorA,
			Title:  fmt.Sprintf("Blocked wheels draw %.0f A in each motor; how long it stands that is not known.", b.PerMotorA),
			Advice: "Let go of the pedal at once when the vehicle does not move.",
		}}
	case !b.ReachesLimit:
		return nil
	}
	level := answer.Fine
	if b.ToLimitS < blockedWatchS {
		level = answer.Watch
	}
	// The vehicle survived with its original: what is no worse than that is no
	// change for the worse. Where the original is not known, it may be one.
	worse := k.Original == nil || !k.Original.ReachesLimit || b.ToLimitS < blockedWorse*k.Original.ToLimitS
	if b.ToLimitS < blockedFixS && worse {
		level = answer.FixFirst
	}
	advice := "Let go of the pedal at once when the vehicle does not move."
	if level == answer.FixFirst {
		limit := "Fit a controller with a current limit: half the current gives four times as long."
		if k.LimitA > 0 {
			limit = "Lower the current limit: half the current gives four times as long."
		}
		advice = limit + " Even then let go of the pedal at once when the vehicle does not move."
	}
	return []answer.Finding{{
		Code: "blocked-heat", Level: level, Source: srcClass, Unit: "s", Found: b.ToLimitS, Limit: blockedFixS, Advice: advice,
		Title: fmt.Sprintf("Blocked wheels overheat a motor in about %.0f s: its winding reaches the limit of its insulation.", math.Max(1, b.ToLimitS)),
	}}
}

func (k BlockedCheck) teeth() []answer.Finding {
	if k.Original == nil {
		return nil
	}
	return toothLoad(k.Blocked.PinionNM, k.Original.PinionNM, answer.Finding{
		Code: "tooth-load-blocked", Title: "Blocked wheels load the gears to %.1f times the original.",
		Advice: "Fit a current limit: plastic teeth strip without warning.",
	})
}

// HeatCheck is a motor at the end of an outing.
type HeatCheck struct {
	State  HeatState
	LimitC float64 // of the winding's insulation; 0 = not known
}

// nearLimitK is how close to its limit a winding is worth watching. Own choice.
const nearLimitK = 15

// Findings judges a motor's temperature at the end of an outing.
func (k HeatCheck) Findings() []answer.Finding {
	var out []answer.Finding
	if above := k.State.WindingC - k.LimitC; k.LimitC > 0 && above > -nearLimitK {
		f := answer.Finding{
			Code: "motor-hot", Level: answer.Watch, Source: srcClass, Unit: "degC", Found: k.State.WindingC, Limit: k.LimitC,
			Title:  "The motor windings end near their heat limit.",
			Advice: "Make pauses, above all after slopes and long grass.",
		}
		if above > 0 {
			f.Level = answer.FixFirst
			f.Title = "The motor windings end above their heat limit."
			f.Advice = "Drive shorter, on easier ground or at less voltage. " + lifeWords(LifeShare(above))
		}
		out = append(out, f)
	}
	if k.State.CaseC > PlasticSoftensC {
		level := answer.Watch
		if k.State.CaseC > PlasticSoftC {
			level = answer.FixFirst
		}
		out = append(out, answer.Finding{
			Code: "plastic-softens", Level: level, Source: srcPlastic, Unit: "degC", Found: k.State.CaseC, Limit: PlasticSoftensC,
			Title:  "The motor case gets hot enough to soften plastic: its own end and the gears beside it suffer.",
			Advice: "Drive shorter, pause longer, or use less voltage.",
		})
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
