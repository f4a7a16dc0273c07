package drive

import (
	"fmt"

	"example.org/packcheck/answer"
)

// What the checks of a launch find.
const (
	CodeLaunchUnknown            = "launch-unknown"
	CodeLaunchOverPack           = "launch-over-pack"
	CodeLaunchOverJoint          = "launch-over-joint"
	CodeLaunchOverSwitch         = "launch-over-switch"
	CodeLaunchOverControllerPeak = "launch-over-controller-peak"
	CodeLaunchOverController     = "launch-over-controller" // over the lasting rating
	CodeRampBoundsNothing        = "ramp-bounds-nothing"
	CodeTwoSoftStarts            = "two-soft-starts"
	CodeSpinsOnTheSpot           = "spins-on-the-spot"
	CodeCannotStart              = "cannot-start"
	CodeStallsSoon               = "stalls-soon"
	CodeWheelsSpin               = "wheels-spin"
	CodeToothLoad                = "tooth-load"
)

// LaunchCheck is a launch and what to hold it against.
type LaunchCheck struct {
	Case      LaunchCase // with its Limits
	Result    LaunchResult
	BlockedA  float64       // motor-side current with the wheels blocked, see BlockedWheels
	BlockedNM float64       // torque of one pinion then; 0 = not known
	Original  *LaunchResult // the same of the vehicle as it left the factory; nil when not known
	Added     bool          // the controller may have been added to a vehicle that is as it was made otherwise
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
			Code: CodeLaunchUnknown, Level: answer.FixFirst, Harm: answer.Part, Topic: answer.TopicLaunch, Source: srcOwn,
			Reads: answer.AsUnknown, Change: answer.LookUp,
			Decides: []string{answer.KeyMotorsWindingResistance, answer.KeyMotorsTorqueConstant, answer.KeyGearsRatio, answer.KeyVehicleMass},
			Title:   "How hard the launch hits is not known: it could not be computed.",
			Advice:  "Check the motor, gear and mass figures of the setup.",
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
		code             string
		item             answer.Item
		key              string // of the limit
		what, advice     string
		change           answer.Change
		peakA, limitA, s float64
	}{
		{
			CodeLaunchOverPack, answer.Battery, answer.KeyPackMaxCurrent, "takes too many amps for the pack",
			currentLimit(l.PackA) + " Without one this pack may switch off at the start, and wears out fast.",
			answer.LimitCurrent, r.PeakBatteryA, l.PackA, r.Above.PackS,
		},
		{
			CodeLaunchOverJoint, answer.Wire, answer.KeyWireJoint, "takes too many amps for a joint",
			"Fit connectors made for the launch current, or limit the current.",
			answer.FitJoint, r.PeakBatteryA, l.JointA, r.Above.JointS,
		},
		{
			CodeLaunchOverSwitch, answer.Pedal, answer.KeyControllerContinuousCurrent, "takes too many amps for the switch",
			"Let a controller do the switching, or fit a switch made for motors on direct current.",
			answer.LimitCurrent, r.PeakBatteryA, l.SwitchA, r.Above.SwitchS,
		},
		{
			CodeLaunchOverControllerPeak, answer.Board, answer.KeyControllerPeakCurrent, "takes too many amps for the controller",
			largerController, answer.LimitCurrent, r.PeakMotorA, l.ControllerPeakA, r.Above.ControllerPeakS,
		},
		{
			CodeLaunchOverController, answer.Board, answer.KeyControllerContinuousCurrent, "takes more than the controller gives for good",
			"Look up the controller's peak rating: it must be above the launch current.",
			answer.LookUp, r.PeakMotorA, l.ControllerContinuousA, r.Above.ControllerContinuousS,
		},
	} {
		if p.limitA <= 0 || !over(p.peakA, p.limitA) {
			continue
		}
		f := answer.Finding{
			Code: p.code, Level: answer.FixFirst, Topic: answer.TopicLaunch, Item: p.item, Source: srcRating,
			Unit: "A", Found: p.peakA, Limit: p.limitA, Advice: p.advice, Change: p.change, Decides: []string{p.key}, LimitKey: p.key,
			Title: fmt.Sprintf("The launch %s: at most %s%s.", p.what, l.most(p.item, p.limitA), lasting(p.s)),
		}
		if f.Change == answer.LimitCurrent {
			f.LimitA = p.limitA
		}
		if !longer(p.s, briefS) && !over(p.peakA, briefOver*p.limitA) {
			f.Level = answer.Watch
		}
		if p.code == CodeLaunchOverController && l.ControllerPeakA > 0 {
			k.knownPeak(&f)
		}
		f.Harm = wearOrPart(f.Level)
		if p.code == CodeLaunchOverControllerPeak && f.Level == answer.FixFirst && k.Added {
			drivesOn(&f)
		}
		out = append(out, f)
	}
	return out
}

// drivesOn is a start that is too much for a controller which may have been added: how it
// fails is harm to a child. How strong the motors are that ask so much of it decides, too.
func drivesOn(f *answer.Finding) {
	f.Harm, f.Decides = answer.Child, append(f.Decides, answer.KeyMotorsWindingResistance)
	f.Title = fmt.Sprintf("Unless original, the controller may fail and drive on: it stands %s, a start takes %s.", amps(f.Limit), amps(f.Found))
	f.Advice += " If it came with the vehicle, write it under [original.controller] too: then the vehicle has lived with such starts."
}

const largerController = "Use a larger controller, or one that limits the current below its own peak."

// knownPeak settles what is over a controller's lasting rating by its peak
// rating: nothing is left to be looked up.
func (k LaunchCheck) knownPeak(f *answer.Finding) {
	peakA := k.Case.Limits.ControllerPeakA
	f.Decides = append(f.Decides, answer.KeyControllerPeakCurrent)
	if over(f.Found, peakA) {
		f.Change, f.LimitA, f.Advice = answer.LimitCurrent, peakA, largerController
		return
	}
	f.Level, f.Change = answer.Watch, answer.ChangeNone
	f.Advice = "Its peak rating allows that for seconds: pause between hard starts."
}

// currentLimit advises a limit that spares a part.
func currentLimit(a float64) string {
	return "Fit a controller that limits the current to " + amps(a) + " or less."
}

// most says what a part stands; of a battery that this is for seconds, and what its label
// tells it to stand for good.
func (l *Limits) most(item answer.Item, limitA float64) string {
	switch {
	case item != answer.Battery:
		return amps(limitA)
	case l.PackLastingA > 0 && over(limitA, l.PackLastingA):
		return amps(limitA) + " for seconds (" + amps(l.PackLastingA) + " for good)"
	}
	return amps(limitA) + " for seconds"
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
		f := answer.Finding{
			Code: CodeRampBoundsNothing, Level: answer.Watch, Topic: answer.TopicLaunch, Item: answer.Board, Source: srcMotorLaw,
			Unit: "A", Found: k.BlockedA, Limit: k.Result.PeakMotorA, Change: answer.LimitCurrent,
			Decides: []string{answer.KeyControllerCurrentLimit},
			Title:   "The soft start does not bound the current: with the wheels blocked more flows than at a free launch.",
			Advice:  "Fit a controller with a current limit. Without one only the resistance of windings, wires and pack bounds the current.",
		}
		for _, limitA := range [...]float64{c.Limits.PackA, c.Limits.ControllerPeakA} {
			if limitA > 0 && over(k.BlockedA, limitA) && (f.LimitA == 0 || limitA < f.LimitA) {
				f.Level, f.LimitA = answer.FixFirst, limitA
			}
		}
		f.Harm = wearOrPart(f.Level)
		out = append(out, f)
	}
	if c.RampS > 0 && c.ModuleRampS > 0 {
		out = append(out, answer.Finding{
			Code: CodeTwoSoftStarts, Level: answer.Watch, Topic: answer.TopicLaunch, Item: answer.Board, Source: srcMotorLaw,
			Unit: "s", Found: min(c.RampS, c.ModuleRampS), Limit: max(c.RampS, c.ModuleRampS), Reads: answer.AsTold,
			Decides: []string{answer.KeyControllerRamp, answer.KeyCutoffModuleRamp},
			Title:   "Two soft starts stand in a row: one in the pack's module, one in the controller.",
			Advice:  "Switch one of them off. With both the slower one decides, and the controller may restart or give up while its supply is held down.",
		})
	}
	return out
}

// going says whether the vehicle gets going and stays going.
func (k LaunchCheck) going() []answer.Finding {
	r, c := &k.Result, &k.Case
	resistN := c.RollN + c.GradeN
	stuck := answer.Finding{
		Level: answer.FixFirst, Harm: answer.Part, Topic: answer.TopicLaunch, Source: srcMotorLaw, Unit: "N",
		Change: answer.LoadLess, Habit: answer.HabitFirmGround, Decides: []string{answer.KeyVehicleGround, answer.KeyVehicleSlope},
		Ladder: LadderGoing, Rung: 4,
	}
	switch {
	case !r.Moved && r.Slipped:
		stuck.Code, stuck.Found, stuck.Limit = CodeSpinsOnTheSpot, resistN, c.GripN
		stuck.Title = "The driven wheels spin on the spot: this ground and slope ask for more push than they can hold."
		stuck.Advice = "Keep to firmer or flatter ground."
		return []answer.Finding{stuck}
	case !r.Moved:
		stuck.Code, stuck.Item, stuck.Found, stuck.Limit, stuck.Want = CodeCannotStart, answer.Motors, r.PeakWheelN, resistN, answer.Above
		stuck.Title = "It cannot start on this ground and slope: the motors stand as good as blocked and heat up."
		stuck.Advice = "Keep to easier ground and slopes. A current limit that is set too low can also be the reason."
		return []answer.Finding{stuck}
	}
	var out []answer.Finding
	if r.SteadyMS == 0 && !r.Slipped {
		stuck.Code, stuck.Item, stuck.Unit, stuck.Reads = CodeStallsSoon, answer.Motors, "A", answer.AsTold
		stuck.Found, stuck.Limit = r.SteadyBatteryA, r.EndBatteryA
		stuck.Title = "It starts but soon stands still: slope or ground become too much for it as the battery tires."
		stuck.Advice = "Keep to easier ground and slopes."
		out = append(out, stuck)
	}
	if r.Slipped {
		out = append(out, answer.Finding{
			Code: CodeWheelsSpin, Level: answer.Watch, Topic: answer.TopicLaunch, Source: srcMotorLaw, Gravity: -1,
			Unit: "N", Found: r.PeakWheelN, Limit: c.GripN, Decides: []string{answer.KeyVehicleGround},
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
	// Wheels that spin hold the torque down and not the current: what blocked
	// wheels would draw for the same torque is what a limit has to cut.
	atTorqueA := k.Result.PeakMotorA
	if k.BlockedNM > 0 {
		atTorqueA = min(atTorqueA, k.BlockedA*k.Result.PeakPinionNM/k.BlockedNM)
	}
	return toothLoad(toothPair{k.Result.PeakPinionNM, k.Original.PeakPinionNM, atTorqueA}, answer.Finding{
		Code: CodeToothLoad, Title: "Starting loads the gears to %.1f times the original.",
		Advice: "Fit a current limit or a soft start: plastic teeth strip without warning.",
	})
}

// toothPair is one pinion's torque, that of the original, and the motor-side
// current that makes the first.
type toothPair struct{ nm, originalNM, motorA float64 }

// toothLoad judges one pinion's torque against the original's, with the words
// of f; its title takes the ratio.
func toothLoad(p toothPair, f answer.Finding) []answer.Finding {
	if !(p.originalNM > 0) || !over(p.nm, toothWatch*p.originalNM) {
		return nil
	}
	f.Level, f.Source, f.Unit, f.Found, f.Limit = answer.Watch, srcOwn, "x", p.nm/p.originalNM, toothWatch
	if over(f.Found, toothFix) {
		f.Level = answer.FixFirst
	}
	f.Harm, f.Topic, f.Item, f.Change = wearOrPart(f.Level), answer.TopicLaunch, answer.Gears, answer.LimitCurrent
	// Torque falls faster than the current that also turns the motor itself, so
	// current in proportion to torque is on the low side.
	f.LimitA = p.motorA * toothWatch / f.Found
	f.Title = fmt.Sprintf(f.Title, f.Found)
	return []answer.Finding{f}
}
