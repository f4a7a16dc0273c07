package drive

import (
	"fmt"
	"math"

	"example.org/packcheck/finding"
)

// Seconds that a winding must stand blocked wheels: long enough for an adult to
// notice and for a child to be told to lift the foot. Own choice.
const (
	blockedFixS   = 10
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
func (k BlockedCheck) Findings() []finding.Finding {
	return append(append(k.current(), k.heat()...), k.teeth()...)
}

func (k BlockedCheck) current() []finding.Finding {
	var out []finding.Finding
	for _, p := range [...]struct {
		code, part string
		a, limitA  float64
	}{
		{"blocked-over-pack", "the pack's greatest current", k.Blocked.BatteryA, k.Limits.PackA},
		{"blocked-over-controller", "the controller's peak current", k.Blocked.MotorA, k.Limits.ControllerPeakA},
		{"blocked-over-switch", "what the switch is made for", k.Blocked.BatteryA, k.Limits.SwitchA},
	} {
		if p.limitA <= 0 || p.a <= p.limitA {
			continue
		}
		out = append(out, finding.Finding{
			Code: p.code, Level: finding.FixFirst, Source: srcRating, Unit: "A", Found: p.a, Limit: p.limitA,
			Title:  fmt.Sprintf("With the wheels blocked %.0f A flow, more than %s of %.0f A.", p.a, p.part, p.limitA),
			Advice: "A current limit in the controller bounds this; nothing else that a child cannot outlast does.",
		})
	}
	return out
}

func (k BlockedCheck) heat() []finding.Finding {
	b := k.Blocked
	switch {
	case !b.HeatKnown:
		return []finding.Finding{{
			Code: "blocked-heat-unknown", Level: finding.Watch, Source: srcClass, Unit: "A", Found: b.PerMotorA,
			Title:  fmt.Sprintf("With the wheels blocked each motor takes %.0f A; how long its winding stands that is not known.", b.PerMotorA),
			Advice: "Let go of the pedal at once when the vehicle does not move.",
		}}
	case !b.ReachesLimit:
		return nil
	}
	level := finding.Fine
	if b.ToLimitS < blockedWatchS {
		level = finding.Watch
	}
	if b.ToLimitS < blockedFixS {
		level = finding.FixFirst
	}
	return []finding.Finding{{
		Code: "blocked-heat", Level: level, Source: srcClass, Unit: "s", Found: b.ToLimitS, Limit: blockedFixS,
		Title:  fmt.Sprintf("With the wheels blocked a motor's winding reaches the limit of its insulation in about %.0f s.", math.Max(1, b.ToLimitS)),
		Advice: "Let go of the pedal at once when the vehicle does not move. A current limit lengthens the time with the square of the current.",
	}}
}

func (k BlockedCheck) teeth() []finding.Finding {
	if k.Original == nil || k.Original.PinionNM <= 0 {
		return nil
	}
	ratio := k.Blocked.PinionNM / k.Original.PinionNM
	if ratio <= toothWatch {
		return nil
	}
	level := finding.Watch
	if ratio > toothFix {
		level = finding.FixFirst
	}
	return []finding.Finding{{
		Code: "tooth-load-blocked", Level: level, Source: srcOwn, Unit: "x", Found: ratio, Limit: toothWatch,
		Title:  fmt.Sprintf("With the wheels blocked the gear teeth bear %.1f times what they bore in the original.", ratio),
		Advice: "A current limit brings it down; plastic teeth strip without warning.",
	}}
}

// HeatCheck is a motor at the end of an outing.
type HeatCheck struct {
	State  HeatState
	LimitC float64 // of the winding's insulation; 0 = not known
}

// nearLimitK is how close to its limit a winding is worth watching. Own choice.
const nearLimitK = 15

// Findings judges a motor's temperature at the end of an outing.
func (k HeatCheck) Findings() []finding.Finding {
	var out []finding.Finding
	if above := k.State.WindingC - k.LimitC; k.LimitC > 0 && above > -nearLimitK {
		f := finding.Finding{
			Code: "motor-hot", Level: finding.Watch, Source: srcClass, Unit: "degC", Found: k.State.WindingC, Limit: k.LimitC,
			Title:  fmt.Sprintf("The motor windings end near their limit: %.0f of %.0f degrees C.", k.State.WindingC, k.LimitC),
			Advice: "Pause now and then, above all after slopes and long grass.",
		}
		if above > 0 {
			f.Level = finding.FixFirst
			f.Title = fmt.Sprintf("The motor windings end above their limit: %.0f against %.0f degrees C.", k.State.WindingC, k.LimitC)
			f.Advice = "Shorter outings, gentler ground or less voltage. " + lifeWords(LifeShare(above))
		}
		out = append(out, f)
	}
	if k.State.CaseC > PlasticSoftensC {
		level := finding.Watch
		if k.State.CaseC > PlasticSoftC {
			level = finding.FixFirst
		}
		out = append(out, finding.Finding{
			Code: "plastic-softens", Level: level, Source: srcPlastic, Unit: "degC", Found: k.State.CaseC, Limit: PlasticSoftensC,
			Title:  fmt.Sprintf("The motor case ends at %.0f degrees C: plastic end bells and gears around it soften.", k.State.CaseC),
			Advice: "Shorter outings, longer pauses, or less voltage.",
		})
	}
	return out
}

// lifeWords says in plain words what is left of the insulation's life.
func lifeWords(share float64) string {
	if share < 0.02 {
		return "At this heat the insulation fails within hours."
	}
	return fmt.Sprintf("At this heat the insulation lives about %.2g times as long as it should.", share)
}
