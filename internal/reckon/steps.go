package reckon

import (
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// step is one change of a way out, in words and as keys of a setup.
type step struct {
	name string // each is taken once
	text string
	sets map[string]string
}

// remedy is a kind of step: which changes it answers, and how it is worked out
// from the answer that asks for it. An empty step does not apply.
type remedy struct {
	name    string
	answers []answer.Change
	make    func(*answer.Assessment, *setup.Parts) step
}

// remedies is the catalogue of changes that a way out is put together from.
// What is sized follows from the answer; how it is wired, and the margins, are
// common practice, no published source.
var remedies = [...]remedy{
	{converterName, []answer.Change{answer.LimitSpeed, answer.FitConverter}, converterStep},
	{controllerName, []answer.Change{answer.FitController, answer.LimitCurrent}, controllerStep},
	{cutoffName, []answer.Change{answer.FitCutoff}, cutoffStep},
	{wireName, []answer.Change{answer.FitWire, answer.FitJoint}, wireStep},
	{fuseName, []answer.Change{answer.FitFuse, answer.LookUp}, fuseStep},
	{"charger", []answer.Change{answer.FitCharger}, chargerStep},
	{packName, []answer.Change{answer.FitPack}, packStep},
}

// The steps whose places on the way from battery to motors are told.
const converterName, controllerName, cutoffName, fuseName, wireName = "converter", "controller", "cutoff", "fuse", "wire"

// toWire are the steps that somebody has to wire in.
var toWire = [...]string{converterName, controllerName, cutoffName, fuseName, wireName}

// stepsFor lists the steps that what is left to fix asks for and that were not
// taken yet.
func stepsFor(a *answer.Assessment, p *setup.Parts, taken []step) []step {
	var out []step
	for _, r := range remedies {
		if !wants(a, r.answers...) || slices.ContainsFunc(taken, func(s step) bool { return s.name == r.name }) {
			continue
		}
		if s := r.make(a, p); s.text != "" {
			s.name = r.name
			out = append(out, s)
		}
	}
	return out
}

// wants reports whether something that has to be put right asks for one of these
// changes.
func wants(a *answer.Assessment, changes ...answer.Change) bool {
	return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level >= answer.FixFirst && slices.Contains(changes, f.Change)
	})
}

// converterStep gives board and motors the volts that they were made for.
func converterStep(a *answer.Assessment, p *setup.Parts) step {
	if !p.Vehicle.DesignV.Known || a.Pack.NominalV < 1.1*p.Vehicle.DesignV.Likely {
		return step{}
	}
	design := down(p.Vehicle.DesignV.Likely)
	limit := up(1.25 * limitA(a))
	return step{
		text: fmt.Sprintf("a %s V step-down converter for %s A", design, limit),
		sets: map[string]string{"controller.converter_voltage": design + " V", "controller.converter_limit": limit + " A"},
	}
}

// controllerStep puts a speed control where contacts or an unlimited board are.
func controllerStep(a *answer.Assessment, p *setup.Parts) step {
	limit := down(limitA(a))
	volts := up(1.2 * a.Pack.FullV)
	if p.Controller.ConverterV.Known {
		volts = up(1.5 * p.Controller.ConverterV.Likely)
	}
	return step{
		text: fmt.Sprintf("a speed control for %s V or more, %s A limit, gentle start, stop before reverse", volts, limit),
		sets: map[string]string{
			"controller.kind": "chopper", "controller.max_voltage": volts + " V", "controller.current_limit": limit + " A", "controller.ramp": "1 s",
			"controller.continuous_current": up(1.2*limitA(a)) + " A", "controller.peak_current": up(2*limitA(a)) + " A",
			"controller.reverses": "after a stop", "vehicle.weakest_part_voltage": volts + " V",
		},
	}
}

// limitA is the current limit that the findings ask for, but no less than what
// nearly all vehicles like this need to get going: half more than running takes
// in the draws that take most.
func limitA(a *answer.Assessment) float64 {
	most := leastLimitA(a)
	if a.Steady != nil {
		running := rangeOf(a, motorPath, a.Steady.MotorA)
		most = max(min(most, 3*running.Likely), 1.5*running.High)
	}
	if math.IsInf(most, 1) {
		return 20
	}
	return max(most, 3)
}

func cutoffStep(a *answer.Assessment, _ *setup.Parts) step {
	adv := a.Cutoff.Advised
	if adv == nil {
		return step{}
	}
	volts, delay := fmt.Sprintf("%.4g V", adv.OpensAtV), fmt.Sprintf("%.3g s", adv.DelayS)
	return step{
		text: fmt.Sprintf("a cutoff that acts at %s after %s and stays off", volts, delay),
		sets: map[string]string{
			"cutoff.module.opens_at": volts, "cutoff.module.delay": delay, "cutoff.module.closes_at": "", "cutoff.module.standby_current": "0.1 mA",
		},
	}
}

func wireStep(*answer.Assessment, *setup.Parts) step {
	return step{
		text: "wire of 12 AWG (4 mm2) for 105 C, and new crimped joints",
		sets: map[string]string{
			"wire.gauge": "12 AWG", "wire.area": "", "wire.insulation": "105 C", "wire.joints": "6", "wire.joint_resistance": "1 mOhm",
		},
	}
}

func fuseStep(a *answer.Assessment, _ *setup.Parts) step {
	if a.Path == nil || len(a.Path.FuseSizesA) == 0 {
		return step{}
	}
	sizes := a.Path.FuseSizesA
	rating := fmt.Sprintf("%g A", sizes[(len(sizes)-1)/2]) // neither the one that opens for nothing nor the one that just protects
	volts := "32 V"                                        // ISO 8820-3 and, for 36 V systems, its 58 V form
	if a.Pack.FullV > 32 {
		volts = "58 V"
	}
	return step{
		text: fmt.Sprintf("a %s blade fuse (%s) within 10 cm of the battery", rating, volts),
		sets: map[string]string{
			"fuse.form": setup.UsualFuseForm, "fuse.rating": rating, "fuse.max_voltage": volts, "fuse.distance_from_pack": "100 mm",
		},
	}
}

func chargerStep(a *answer.Assessment, _ *setup.Parts) step {
	return step{
		text: "another charger: " + a.Charge.Right,
		sets: map[string]string{
			"charger.label": "", "charger.made_for": "", "charger.voltage": "", "charger.current": "", "charger.stops": "", "charger.timer": "",
			"charger.output": "", "charger.polarity": "", "charger.jack_polarity": "", "charger.jack": "", "charger.came_with_pack": "",
			"charger.blocks_driving": "",
		},
	}
}

// packName is the step that puts another battery in.
const packName = "pack"

// packStep is a sound one of the same kind in the place of a worn one.
func packStep(_ *answer.Assessment, p *setup.Parts) step {
	if !p.Setup.Gives("pack.health") && !p.Setup.Gives("pack.age") {
		return step{}
	}
	return step{text: "a new battery of the same kind", sets: map[string]string{"pack.health": "", "pack.age": "new"}}
}

// up and down print a number without decimals, rounded up or down.
func up(x float64) string   { return fmt.Sprintf("%.0f", math.Ceil(x-1e-9)) }
func down(x float64) string { return fmt.Sprintf("%.0f", math.Floor(x+1e-9)) }
