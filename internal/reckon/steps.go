package reckon

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// step is one change of a way out, in words and as keys of a setup.
type step struct {
	name string // each is taken once
	text string
	sets map[string]string
}

// remedy is a kind of step: which changes it answers, what else asks for it where no
// other step was found yet, and how it is worked out from the answer that does. An empty
// step does not apply.
type remedy struct {
	name    string
	answers []answer.Change
	also    func(*answer.Assessment) bool // nil: nothing
	make    func(*answer.Assessment, *setup.Parts) step
}

// remedies is the catalogue of changes that a way out is put together from.
// What is sized follows from the answer; how it is wired, and the margins, are
// common practice, no published source.
var remedies = [...]remedy{
	{packName, []answer.Change{answer.FitPack}, restsBadly, packStep},
	{converterName, []answer.Change{answer.LimitSpeed, answer.FitConverter}, nil, converterStep},
	{controllerName, []answer.Change{answer.FitController, answer.LimitCurrent}, nil, controllerStep},
	{watchName, []answer.Change{answer.FitCutoff}, nil, watchStep},
	{cutoffName, []answer.Change{answer.FitCutoff}, nil, cutoffStep},
	{wireName, []answer.Change{answer.FitWire, answer.FitJoint}, nil, wireStep},
	{fuseName, []answer.Change{answer.FitFuse, answer.LookUp}, nil, fuseStep},
	{labelName, []answer.Change{answer.FitCharger, answer.LookUp}, nil, labelStep},
	{fusePlaceName, []answer.Change{answer.MoveFuse}, nil, fusePlaceStep},
	{chargerName, []answer.Change{answer.FitCharger}, nil, chargerStep},
	{roomName, []answer.Change{answer.ChargeElsewhere}, nil, roomStep},
	{offName, []answer.Change{answer.ChargeElsewhere}, nil, offStep},
	{alikeName, nil, joinedUnlike, alikeStep},
}

// The steps whose places on the way from battery to motors are told.
const converterName, controllerName, cutoffName, fuseName, fusePlaceName, wireName = "converter", "controller", "cutoff", "fuse", "fuse place", "wire"

// The steps that concern the charging alone.
const labelName, chargerName, roomName, offName, alikeName = "label of the charger", "charger", "charging place", "charging off the vehicle", "volts alike"

// toCharge are those steps.
var toCharge = [...]string{labelName, chargerName, roomName, offName, alikeName}

// toWire are the steps that somebody has to wire in.
var toWire = [...]string{converterName, controllerName, cutoffName, fuseName, fusePlaceName, wireName}

// stepsFor lists the steps that what is left to fix asks for and that were not taken
// yet. A fuse is chosen anew where what was changed since asks for another.
func stepsFor(a *answer.Assessment, p *setup.Parts, taken []step) []step {
	var out []step
	for _, r := range remedies {
		was := slices.IndexFunc(taken, func(s step) bool { return s.name == r.name })
		asked := wants(a, r.answers...) || len(out) == 0 && r.also != nil && r.also(a)
		if !asked || was >= 0 && r.name != fuseName {
			continue
		}
		if s := r.make(a, p); s.text != "" && (was < 0 || s.text != taken[was].text) {
			s.name = r.name
			out = append(out, s)
		}
	}
	if len(out) == 0 && wants(a, answer.FitFuse) && len(fuseSizes(a, p)) == 0 {
		return soThatAFuseSuits(a, p, taken)
	}
	return out
}

// soThatAFuseSuits is the step that lets one fuse both protect the wire and carry the
// ride: wire that stands more, and where that is there a start that asks for less.
func soThatAFuseSuits(a *answer.Assessment, p *setup.Parts, taken []step) []step {
	has := func(name string) bool { return slices.ContainsFunc(taken, func(s step) bool { return s.name == name }) }
	var s step
	switch {
	case !has(wireName) && !standsAsMuch(p):
		s = wireStep(a, p)
		s.name = wireName
	case !has(controllerName):
		s = controllerStep(a, p)
		s.name = controllerName
	default:
		return nil
	}
	return []step{s}
}

// standsAsMuch reports whether the wire is known to be no less than that of a way out:
// 12 AWG for 105 C.
func standsAsMuch(p *setup.Parts) bool {
	const areaMM2, insulationC = 3.3, 105
	w := p.Wire
	if w.Gauge.Assumed || w.InsulationC.Assumed || w.InsulationC.Likely < insulationC {
		return false
	}
	wire, err := p.Tables.Wire(w.Size(setup.Likely))
	return err == nil && wire.AreaMM2 >= areaMM2
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
	most := 1.25 * limitA(a)
	if told := p.Controller.LimitA; told.Known { // that is what a start takes then
		most = max(most, told.Likely)
	}
	limit := up(most)
	s := step{
		text: fmt.Sprintf("a %s V step-down converter for %s A", design, limit),
		sets: map[string]string{"controller.converter_voltage": design + " V", "controller.converter_limit": limit + " A"},
	}
	if own := without(p.Setup.Values(), "cutoff.controller"); len(own) > 0 { // it sees the converter's volts alone
		s.text += "; switch off the speed control's own cutoff, which no longer sees the battery"
		maps.Copy(s.sets, own)
	}
	return s
}

// leftoversStep takes out what was set for the volts of the battery that was.
func leftoversStep(values map[string]string) step {
	s := step{name: "leftovers", sets: map[string]string{}}
	var parts []string
	for _, part := range []struct {
		name   string
		tables []string
	}{
		{"step-down converter", []string{"controller.converter_voltage", "controller.converter_limit"}},
		{"cutoff", []string{"cutoff.module"}},
		{"cutoff of the speed control", []string{"cutoff.controller"}},
	} {
		if keys := without(values, part.tables...); len(keys) > 0 {
			parts = append(parts, part.name)
			maps.Copy(s.sets, keys)
		}
	}
	if len(parts) > 0 {
		s.text = "take out or switch off what was set for other volts: " + strings.Join(parts, ", ")
	}
	return s
}

// controllerStep puts a speed control where contacts or an unlimited board are.
func controllerStep(a *answer.Assessment, p *setup.Parts) step {
	limit := down(limitA(a))
	full := a.Pack.FullV
	if p.Controller.ConverterV.Known {
		full = blockOverName * p.Controller.ConverterV.Likely // as from a battery of so many volts
	}
	volts := fmt.Sprintf("%.0f", drive.MadeForV(full))
	s := step{
		text: fmt.Sprintf("a speed control for %s V or more, %s A limit, gentle start, stop before reverse", volts, limit),
		sets: map[string]string{
			"controller.kind": "chopper", "controller.max_voltage": volts + " V", "controller.current_limit": limit + " A", "controller.ramp": "1 s",
			"controller.continuous_current": up(1.2*limitA(a)) + " A", "controller.peak_current": up(2*limitA(a)) + " A",
			"controller.reverses": "after a stop",
		},
	}
	if p.Vehicle.Remote {
		s.text += "; with the old electronics go lights, sound and the remote control"
		s.sets["vehicle.remote_control"] = "false"
	}
	return s
}

// blockOverName is how far above its name a lead-acid block on its charger comes.
// Common practice, no published source.
const blockOverName = 1.25

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

// watchName is the step that looks whether the battery watches its cells.
const watchName = "electronics of the battery"

// watchStep keeps a battery that mostly watches every cell where it is one that does.
func watchStep(_ *answer.Assessment, p *setup.Parts) step {
	if !p.Pack.MayWatch {
		return step{}
	}
	return step{
		text: "make sure that by its maker's word the battery watches every cell and switches itself off; if not, get one that does",
		sets: map[string]string{answer.KeyPackWatchesCells: "true"},
	}
}

func cutoffStep(a *answer.Assessment, p *setup.Parts) step {
	adv := a.Cutoff.Advised
	if adv == nil || p.Pack.MayWatch { // one that sees the whole battery alone is not enough for its cells
		return step{}
	}
	volts, delay, standby := fmt.Sprintf("%.4g V", adv.OpensAtV), delayOf(adv), fmt.Sprintf("%.3g mA", 1000*adv.StandbyA)
	return step{
		text: fmt.Sprintf("a cutoff that acts at %s after %s, stays off and draws %s at most", volts, delay, standby),
		sets: map[string]string{
			"cutoff.module.opens_at": volts, "cutoff.module.delay": delay, "cutoff.module.closes_at": "", "cutoff.module.standby_current": standby,
		},
	}
}

// fuseSizes are the standard sizes to choose from: where the fuse that is fitted opens in
// use, or may, only larger ones of those that protect the wire.
func fuseSizes(a *answer.Assessment, p *setup.Parts) []float64 {
	if a.Path == nil {
		return nil
	}
	opens := opensInUse(a) >= possibleShare
	return slices.DeleteFunc(slices.Clone(a.Path.FuseSizesA), func(size float64) bool { return opens && size <= p.Fuse.RatingA.Likely })
}

func wireStep(_ *answer.Assessment, p *setup.Parts) step {
	s := step{
		text: "wire of 12 AWG (4 mm2) for 105 C, and new crimped joints",
		sets: map[string]string{
			"wire.gauge": "", "wire.area": "4 mm2", "wire.insulation": "105 C", "wire.joints": "6", "wire.joint_resistance": "1 mOhm",
		},
	}
	if p.System == quantity.Customary { // the way keeps the units of the setup
		s.sets["wire.gauge"], s.sets["wire.area"], s.sets["wire.insulation"] = "12 AWG", "", "221 F"
	}
	return s
}

func fuseStep(a *answer.Assessment, p *setup.Parts) step {
	sizes := fuseSizes(a, p)
	if len(sizes) == 0 {
		return step{}
	}
	rating := fmt.Sprintf("%g A", sizes[(len(sizes)-1)/2]) // neither the one that opens for nothing nor the one that just protects
	volts := "32 V"                                        // ISO 8820-3 and, for 36 V systems, its 58 V form
	if a.Pack.FullV > 32 {
		volts = "58 V"
	}
	near, distance := nearBattery(p)
	return step{
		text: fmt.Sprintf("a %s blade fuse (%s) within %s of the battery", rating, volts, near),
		sets: map[string]string{
			"fuse.form": setup.UsualFuseForm, "fuse.rating": rating, "fuse.max_voltage": volts, "fuse.distance_from_pack": distance,
		},
	}
}

// nearBattery is how far from the battery a fuse sits at the most, in words and as a value.
func nearBattery(p *setup.Parts) (words, value string) {
	if p.System == quantity.Customary {
		return "4 in", "4 in"
	}
	return "10 cm", "100 mm"
}

// fusePlaceStep puts the fuse that is there where it protects the wire.
func fusePlaceStep(_ *answer.Assessment, p *setup.Parts) step {
	near, distance := nearBattery(p)
	return step{text: "the fuse moved to within " + near + " of the battery", sets: map[string]string{"fuse.distance_from_pack": distance}}
}

// packName is the step that puts another battery in.
const packName = "pack"

// restsBadly reports whether it is the resting battery itself that is not in order.
func restsBadly(a *answer.Assessment) bool {
	return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool { return f.RestsBadly() })
}

// packStep is a sound one of the same kind in the place of one that is told to be worn,
// or of which something was read.
func packStep(a *answer.Assessment, p *setup.Parts) step {
	told := p.Setup.Pack
	unlike := without(p.Setup.Values(), "pack.second")
	if !told.Health.Given && (!told.Age.Given || told.Age.Text == newAge) && p.Measured == nil && len(unlike) == 0 {
		return step{}
	}
	s := step{text: "a new battery of the same kind", sets: map[string]string{"pack.health": "", "pack.charge": "", "pack.age": newAge}}
	switch {
	case len(unlike) > 0:
		s.text = "two new batteries of the same kind, both as the first (" + told.Label.Text + ")"
		maps.Copy(s.sets, unlike)
	case told.Joined.Given:
		s.text = "two new batteries of the same kind"
	}
	if first := a.TriedFirst(); first != nil && len(unlike) == 0 {
		s.text += unlessRight(first)
	}
	return s
}

// unlessRight is what may put right a battery that a finding is on, so that none is bought.
func unlessRight(f *answer.Finding) string {
	switch f.Code {
	case charge.CodeDeeplyFlat, charge.CodeOldDeadCell:
		return ", unless one charge with somebody beside it puts this one right"
	case charge.CodeOvercharged:
		return ", if this one still rests so high after a night off the charger"
	case charge.CodeTooLow:
		return ", if its own charger refuses this one"
	}
	return ""
}

// newAge is the word for a battery that is new.
const newAge = "new"

// up and down print a number without decimals, rounded up or down.
func up(x float64) string   { return fmt.Sprintf("%.0f", math.Ceil(x-1e-9)) }
func down(x float64) string { return fmt.Sprintf("%.0f", math.Floor(x+1e-9)) }
