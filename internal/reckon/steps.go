package reckon

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
	"example.org/packcheck/chemistry"
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
	{alikeName, nil, joinedUnread, alikeStep},
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

// chargerStep is another charger, described as it is advised: where it is plugged in, and
// what hangs on that, stays as told.
func chargerStep(a *answer.Assessment, p *setup.Parts) step {
	if len(unread(a)) > 0 {
		return step{}
	}
	right := a.Charge.Advised
	s := step{text: "another charger: " + right.Brief, sets: map[string]string{
		answer.KeyChargerLabel: "", answer.KeyChargerMadeFor: "", answer.KeyChargerVoltage: "", answer.KeyChargerCurrent: "", answer.KeyChargerStops: "",
		"charger.timer": "", answer.KeyChargerOutput: "", answer.KeyChargerPolarity: "", answer.KeyChargerCameWithPack: "",
	}}
	switch {
	case right.Own:
		s.sets[answer.KeyChargerCameWithPack], s.sets[answer.KeyChargerJack] = "true", "pack" // which is taken off for it
		s.sets[answer.KeyChargerBlocksDriving] = ""
		return s
	case right.EndV > 0: // of others nobody can tell the volts
		s.sets[answer.KeyChargerVoltage], s.sets[answer.KeyChargerCurrent] = fmt.Sprintf("%.4g V", right.EndV), fmt.Sprintf("%.3g A", right.MostA)
		s.sets[answer.KeyChargerMadeFor], s.sets[answer.KeyChargerStops], s.sets[answer.KeyChargerOutput] = right.MadeFor, "by itself", "dc"
	}
	told := &p.Setup.Charger
	closed := closesJack(p)
	switch {
	case told.JackPolarity.Given && !closed:
		s.text += ", plug " + told.JackPolarity.Text + " as jack"
		if right.EndV > 0 {
			s.sets[answer.KeyChargerPolarity] = told.JackPolarity.Text
		}
	case told.Jack.Text == "vehicle" && !closed:
		s.text += ", plug's poles as the jack's"
	}
	return s
}

// unread are the keys that a look at the charger's label or sheet settles, where nothing
// else is wrong with it; none where another is needed anyhow.
func unread(a *answer.Assessment) []string {
	settled := [...]string{answer.KeyChargerOutput, answer.KeyChargerMadeFor, answer.KeyChargerStops}
	var keys []string
	for i := range a.Findings {
		f := &a.Findings[i]
		if f.Level < answer.FixFirst || f.Item != answer.Charger || f.Change != answer.FitCharger && f.Change != answer.LookUp {
			continue
		}
		k := slices.IndexFunc(f.Decides, func(key string) bool { return slices.Contains(settled[:], key) })
		switch {
		case k >= 0 && (f.Blocks() || f.Change == answer.LookUp):
			keys = append(keys, f.Decides[k])
		case f.Change == answer.FitCharger:
			return nil
		}
	}
	return keys
}

// labelStep keeps the charger where its label says what nobody told: nobody buys another
// for that.
func labelStep(a *answer.Assessment, _ *setup.Parts) step {
	right, keys := a.Charge.Advised, unread(a)
	if len(keys) == 0 || right.Own {
		return step{}
	}
	var label, says []string
	s := step{sets: map[string]string{}}
	if slices.Contains(keys, answer.KeyChargerOutput) {
		label, s.sets[answer.KeyChargerOutput] = append(label, "DC"), "dc"
	}
	if slices.Contains(keys, answer.KeyChargerMadeFor) {
		label, s.sets[answer.KeyChargerMadeFor] = append(label, right.MadeFor), right.MadeFor
	}
	if len(label) > 0 {
		says = append(says, "its label says "+strings.Join(label, " and "))
	}
	if slices.Contains(keys, answer.KeyChargerStops) {
		says, s.sets[answer.KeyChargerStops] = append(says, "its maker says that it stops by itself"), "by itself"
	}
	s.text = "keep the charger if " + strings.Join(says, " and ") + "; if not, another: " + right.Brief
	return s
}

// lithium reports whether the battery must not be charged through the vehicle's jack.
func lithium(p *setup.Parts) bool { return p.Pack.Profile.Family == chemistry.Lithium }

// closesJack reports whether charging off the vehicle closes its jack off: lithium hangs on it.
func closesJack(p *setup.Parts) bool { return p.Setup.Charger.Jack.Text == "vehicle" && lithium(p) }

// offStep charges where nobody can drive off, and where each pack is by itself.
func offStep(a *answer.Assessment, p *setup.Parts) step {
	asks := func(key string) bool {
		return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
			return f.Level >= answer.FixFirst && f.Change == answer.ChargeElsewhere && slices.Contains(f.Decides, key)
		})
	}
	jack, drives, joined := asks(answer.KeyChargerJack), asks(answer.KeyChargerBlocksDriving), asks(answer.KeyPackJoined)
	var parts []string
	s := step{sets: map[string]string{}}
	switch {
	case joined:
		parts = append(parts, "take the two apart to charge each by itself")
	case jack || drives && lithium(p):
		parts = append(parts, "take the battery out to charge it")
	case drives:
		s.text = "take the battery out to charge it, or fit a charging socket that cuts the motors off while it charges"
		s.sets[answer.KeyChargerBlocksDriving] = "true"
		return s
	default:
		return step{}
	}
	if closesJack(p) {
		parts = append(parts, "close the vehicle's jack off")
		if p.Setup.Charger.JackPolarity.Given {
			s.sets[answer.KeyChargerJackPolarity] = "" // which was that of the vehicle's
		}
	}
	s.text = strings.Join(parts, ", and ")
	s.sets[answer.KeyChargerJack] = "pack"
	if p.Setup.Charger.BlocksDriving.Given {
		s.sets[answer.KeyChargerBlocksDriving] = "true" // what is taken out drives nothing
	}
	return s
}

// roomStep takes the battery into a room to be charged, where the cold or the heat of
// the place is in the way.
func roomStep(a *answer.Assessment, _ *setup.Parts) step {
	if !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level >= answer.FixFirst && f.Change == answer.ChargeElsewhere && slices.Contains(f.Decides, answer.KeyOutingChargedAt)
	}) {
		return step{}
	}
	const room = "15 to 25 C"
	return step{text: "charge the battery in a room of " + room + ", once it has warmed up or cooled down there", sets: map[string]string{"outing.charged_at": room}}
}

// joinedUnread reports whether something is to be put right because nobody read the volts of
// two packs that are joined.
func joinedUnread(a *answer.Assessment) bool {
	return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level >= answer.FixFirst && slices.Contains(f.Decides, answer.KeySecondRestVoltage)
	})
}

// alikeStep joins two packs side by side only where both show the volts of full ones.
func alikeStep(a *answer.Assessment, p *setup.Parts) step {
	if p.Pack.Joined != "parallel" {
		return step{}
	}
	full := fmt.Sprintf("%.4g V", a.Pack.FullV)
	return step{
		text: "charge each of the two by itself to full, read both the next day, and join them only at the same volts and if their maker allows it",
		sets: map[string]string{answer.KeyMeasuredRestVoltage: full, answer.KeySecondRestVoltage: full, answer.KeyMeasuredHoursRested: "12 h", "pack.charge": ""},
	}
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
