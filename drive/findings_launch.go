package drive

import (
	"fmt"

	"example.org/packcheck/answer"
)

// LaunchCheck is a launch and what to hold it against.
type LaunchCheck struct {
	Case     LaunchCase // with its Limits
	Result   LaunchResult
	BlockedA float64       // motor-side current with the wheels blocked, see BlockedWheels
	Original *LaunchResult // the same of the vehicle as it left the factory; nil when not known
}

// The tops that make a launch over some limit merely worth watching: short and
// not far above. Everything else is to be fixed. Own choice, no published limit.
const (
	briefS    = 0.1
	briefOver = 1.5
)

// Tooth load as a multiple of the original's. Nobody publishes what plastic
// teeth stand; the original survived with its own. Own choice.
const (
	toothWatch = 1.2
	toothFix   = 1.6
)

// Findings judges a launch: what it does to pack, joints, switch, controller
// and gears, whether it gets going at all, and what bounds its current.
func (k LaunchCheck) Findings() []answer.Finding {
	if k.Result.Incomplete {
		return []answer.Finding{{
			Code: "launch-unknown", Level: answer.FixFirst, Source: srcOwn,
			Title:  "How hard the launch hits is not known: it could not be computed.",
			Advice: "Check the motor, gear and mass figures of the setup.",
		}}
	}
	var out []answer.Finding
	out = append(out, k.over()...)
	out = append(out, k.bounds()...)
	out = append(out, k.going()...)
	return append(out, k.teeth()...)
}

// over holds the peaks against the ratings.
func (k LaunchCheck) over() []answer.Finding {
	var out []answer.Finding
	r, l := &k.Result, &k.Case.Limits
	for _, p := range [...]struct {
		code, part, advice string
		peakA, limitA, s   float64
	}{
		{"launch-over-pack", "the pack gives at most", currentLimit(l.PackA) + " Without one this pack may switch off at the start, and wears out fast.", r.PeakBatteryA, l.PackA, r.Above.PackS},
		{"launch-over-joint", "a joint stands", "Fit connectors made for the launch current, or limit the current.", r.PeakBatteryA, l.JointA, r.Above.JointS},
		{"launch-over-switch", "the switch is made for", "Let a controller do the switching, or fit a switch made for motors on direct current.", r.PeakBatteryA, l.SwitchA, r.Above.SwitchS},
		{"launch-over-controller-peak", "the controller stands", "Use a larger controller, or one that limits the current below its own peak.", r.PeakMotorA, l.ControllerPeakA, r.Above.ControllerPeakS},
		{"launch-over-controller", "the controller's lasting limit is", "Look up the controller's peak rating: it must be above the launch current.", r.PeakMotorA, l.ControllerContinuousA, r.Above.ControllerContinuousS},
	} {
		if p.limitA <= 0 || p.peakA <= p.limitA {
			continue
		}
		level := answer.FixFirst
		if p.s < briefS && p.peakA < briefOver*p.limitA || p.code == "launch-over-controller" && l.ControllerPeakA >= p.peakA {
			level = answer.Watch
		}
		out = append(out, answer.Finding{
			Code: p.code, Level: level, Source: srcRating, Unit: "A", Found: p.peakA, Limit: p.limitA, Advice: p.advice,
			Title: fmt.Sprintf("The launch takes %.0f A; %s %.0f A%s.", p.peakA, p.part, p.limitA, lasting(p.s)),
		})
	}
	return out
}

// currentLimit advises a limit that spares a part.
func currentLimit(a float64) string {
	return fmt.Sprintf("Fit a controller that limits the current to %.0f A or less.", a)
}

// lasting says for how long a limit is passed, so that a parent can read it;
// nothing where that was not computed.
func lasting(s float64) string {
	switch {
	case s <= 0:
		return ""
	case s < 0.0995:
		return fmt.Sprintf(", passed for %.2g ms", max(1, s*1000))
	}
	return fmt.Sprintf(", passed for %.1f s", s)
}

// bounds says what bounds the current, and what does not.
func (k LaunchCheck) bounds() []answer.Finding {
	var out []answer.Finding
	c := &k.Case
	ramped := c.RampS > 0 || c.ModuleRampS > 0
	if ramped && c.LimitA == 0 {
		level := answer.Watch
		if l := c.Limits; l.PackA > 0 && k.BlockedA > l.PackA || l.ControllerPeakA > 0 && k.BlockedA > l.ControllerPeakA {
			level = answer.FixFirst
		}
		out = append(out, answer.Finding{
			Code: "ramp-bounds-nothing", Level: level, Source: srcMotorLaw, Unit: "A", Found: k.BlockedA, Limit: k.Result.PeakMotorA,
			Title:  fmt.Sprintf("The soft start does not bound the current: %.0f A at a free launch, but %.0f A once the wheels are blocked.", k.Result.PeakMotorA, k.BlockedA),
			Advice: "Fit a controller with a current limit. Without one only the resistance of windings, wires and pack bounds the current.",
		})
	}
	if c.RampS > 0 && c.ModuleRampS > 0 {
		out = append(out, answer.Finding{
			Code: "two-soft-starts", Level: answer.Watch, Source: srcMotorLaw, Unit: "s", Found: min(c.RampS, c.ModuleRampS), Limit: max(c.RampS, c.ModuleRampS),
			Title:  "Two soft starts stand in a row: one in the pack's module, one in the controller.",
			Advice: "Switch one of them off. With both the slower one decides, and the controller may restart or give up while its supply is held down.",
		})
	}
	return out
}

// going says whether the vehicle gets going and stays going.
func (k LaunchCheck) going() []answer.Finding {
	r, c := &k.Result, &k.Case
	resistN := c.RollN + c.GradeN
	switch {
	case !r.Moved && r.Slipped:
		return []answer.Finding{{
			Code: "spins-on-the-spot", Level: answer.FixFirst, Source: srcMotorLaw, Unit: "N", Found: resistN, Limit: c.GripN,
			Title:  "The driven wheels spin on the spot: this ground and slope ask for more push than they can hold.",
			Advice: "Keep to firmer or flatter ground.",
		}}
	case !r.Moved:
		return []answer.Finding{{
			Code: "cannot-start", Level: answer.FixFirst, Source: srcMotorLaw, Unit: "N", Found: r.PeakWheelN, Limit: resistN,
			Title:  "It cannot start on this ground and slope: the motors stand as good as blocked and heat up.",
			Advice: "Keep to easier ground and slopes. A current limit that is set too low can also be the reason.",
		}}
	}
	var out []answer.Finding
	if r.SteadyMS == 0 && !r.Slipped {
		out = append(out, answer.Finding{
			Code: "stalls-soon", Level: answer.FixFirst, Source: srcMotorLaw, Unit: "A", Found: r.SteadyBatteryA, Limit: r.EndBatteryA,
			Title:  "It starts but soon stands still: slope or ground become too much for it as the battery tires.",
			Advice: "Keep to easier ground and slopes.",
		})
	}
	if r.Slipped {
		out = append(out, answer.Finding{
			Code: "wheels-spin", Level: answer.Watch, Source: srcMotorLaw, Unit: "N", Found: r.PeakWheelN, Limit: c.GripN,
			Title:  "The driven wheels spin at the start.",
			Advice: "A soft start or a current limit ends it. Spinning spares the gears a little, but it wears the wheels and digs into grass.",
		})
	}
	return out
}

// teeth compares the load on the gears' teeth at a start with the original's.
func (k LaunchCheck) teeth() []answer.Finding {
	if k.Original == nil || k.Original.Incomplete {
		return nil
	}
	return toothLoad(k.Result.PeakPinionNM, k.Original.PeakPinionNM, answer.Finding{
		Code: "tooth-load", Title: "Starting loads the gears to %.1f times the original.",
		Advice: "Fit a current limit or a soft start: plastic teeth strip without warning.",
	})
}

// toothLoad judges one pinion's torque against the original's, with the words
// of f; its title takes the ratio.
func toothLoad(nm, originalNM float64, f answer.Finding) []answer.Finding {
	if !(originalNM > 0) || nm <= toothWatch*originalNM {
		return nil
	}
	f.Level, f.Source, f.Unit, f.Found, f.Limit = answer.Watch, srcOwn, "x", nm/originalNM, toothWatch
	if f.Found > toothFix {
		f.Level = answer.FixFirst
	}
	f.Title = fmt.Sprintf(f.Title, f.Found)
	return []answer.Finding{f}
}
