package charge

import (
	"cmp"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on a rested voltage.
const (
	CodeNeverRecharge = "pack-never-recharge"    // below the last rung
	CodeTooLow        = "pack-too-low-to-charge" // lithium below an ordinary charge
	CodeDeeplyFlat    = "battery-deeply-flat"    // lead-acid below the volts of an empty one: flat for long, or a dead cell
	CodeDeadBlock     = "block-dead"             // lead-acid with next to nothing
	CodeOvercharged   = "rests-above-full"       // more volts than such cells can rest at
	CodeFallsFar      = "falls-far-under-load"   // below what a sound one shows under load
)

// state judges the pack itself: its temperature and its rested voltage.
func (m *match) state() {
	w := WaitFor(m.p.Pack, m.p.CellC, m.p.AmbientC)
	for _, f := range waitFindings(m.prof, w, m.p.CellC, m.p.AmbientC, true) {
		fit := WithCare
		switch {
		case f.Level >= answer.FixFirst || !m.gate.Open:
			fit = Refused
		case f.Reads == answer.AsUnknown:
			fit = Unproven
		}
		m.say(fit, f)
	}
	for _, f := range JudgeResting(m.prof, m.p.Pack.Spec().CellsInSeries, Resting{V: m.p.RestV, Hours: m.p.HoursRested}) {
		fit := WithCare
		switch {
		case f.Level == answer.Danger:
			fit = Refused
		case f.Reads == answer.AsUnknown, f.Level == answer.FixFirst:
			fit = Unproven
		}
		m.say(fit, f)
	}
}

// deadCellV is the mean volts of a lead-acid cell at rest below which its block
// is not to be charged any more: a sound one keeps 1.8 V and more even when it is
// flat, so that half of the cells have nothing. Common practice, no published
// source.
const deadCellV = 1.0

// emptyRestV is the mean volts of a lead-acid cell at rest below which no sound one
// lies: empty it rests at 1.97 V (makers' tables, source of the profile's rested
// volts), and volts that have not come up yet and the meter are off by less. Five of six
// cells with charge come to it where one is shorted (source "diagnosis-odds"). Own choice.
const emptyRestV = 1.9

// restsDead reports whether a lead-acid cell rests so low that one of its battery is
// probably dead, or all are harmed.
func restsDead(p chemistry.Profile, cellV float64) bool {
	return p.Family == chemistry.LeadAcid && cellV < emptyRestV*(1-rounding)
}

// surfaceV is what a lead-acid cell may stand above its rested volts soon after
// the charger (source of the profile's rested volts).
const surfaceV = 0.12

// mostAtRest returns the highest volts that a cell can rest at: what lithium may
// be charged to with a meter's error, what lead-acid shows fresh from a charger.
func mostAtRest(p chemistry.Profile) float64 {
	full := max(p.FullV, p.Rest.VoltsAt.At(1))
	switch p.Family {
	case chemistry.Lithium:
		return 1.02 * p.Charge.CellMaxV
	case chemistry.LeadAcid:
		return full + surfaceV
	}
	return 1.15 * full
}

// harmBelowEndV is how far below the maker's end under a load a cell at least is
// before it counts as harmed. Own choice.
const harmBelowEndV = 0.1

// Loaded is a voltage that was read under load.
type Loaded struct {
	V       float64 // of the whole pack
	RateC   float64 // the load, times its capacity per hour
	Charged bool    // it rested at half of its charge or more
	Name    string  // what findings call it where it is one of several, such as "the battery that it came with"; empty = it
}

// JudgeLoaded judges the voltage of a pack of so many cells in series under load.
// None when the volts are below 0; where volts or load are no number, that is told.
func JudgeLoaded(p chemistry.Profile, cells int, l Loaded) []answer.Finding {
	if l.V < 0 || cells <= 0 {
		return nil
	}
	per := l.V / float64(cells)
	last := p.End.At(l.RateC)
	harm := min(p.HarmV, last-harmBelowEndV)
	it := cmp.Or(l.Name, "it")
	known := !math.IsNaN(l.V) && !math.IsNaN(l.RateC)
	if known && per >= last*(1-rounding) {
		return nil
	}
	f := answer.Finding{
		Code: CodeFallsFar, Level: answer.Watch, Harm: answer.Wear, Topic: answer.TopicPack, Item: answer.Battery, Unit: "V",
		Found: per, Limit: last, Want: answer.Above, Source: p.End.Source, Habit: answer.HabitPackOff,
		Decides: []string{answer.KeyMeasuredLoadedVoltage, answer.KeyPackLabel, answer.KeyPackCells, answer.KeyPackChemistry},
		Title:   "Under load " + it + " falls below where its maker ends a discharge.",
		Advice:  "Stop when it gets this low and charge it; if it was full, it is worn, cold or badly connected.",
	}
	if !known {
		return []answer.Finding{f.Unread("Whether " + it + " falls too far under load is not known.")}
	}
	if l.Charged {
		f.Level, f.Harm, f.Change = answer.FixFirst, answer.Part, answer.FitPack
		f.Title = "Charged, and yet under load " + it + " falls below where its maker ends a discharge: it is worn out, or a contact is bad."
		f.Advice = "Measure at the battery's own posts while the motors pull: if they fall as far, replace the battery; if not, look for the bad contact, which grows hot."
	}
	if per < harm*(1-rounding) {
		f.Level, f.Harm, f.Limit, f.Source, f.Change = answer.FixFirst, answer.Part, harm, p.LadderSource, answer.FitPack
		f.Title = "Under load " + it + " falls below its harm limit: a cell is dead or driven backwards, or a contact is bad."
		f.Advice = "Do not drive on. Measure at the battery's own posts: if they fall as far, replace the battery; if not, look for the bad contact, which grows hot."
		if p.Family == chemistry.Lithium {
			f.Harm = answer.House
			if per < p.NeverRechargeV { // some run backwards, whatever the contacts do
				f.Level, f.Limit, f.Gravity = answer.Danger, p.NeverRechargeV, 1
			}
		}
	}
	return []answer.Finding{f}
}

// finished sets whether the battery of a finding is: then nobody charges or rides with it,
// and it is seen to today.
func finished(f *answer.Finding, is bool) { f.Finished, f.NeverRidden, f.Today = is, is, is }

// JudgeRest judges the rested voltage restV of a whole pack (V, so many cells
// in series) before a charge: drained past saving, too low for an ordinary
// charge, more than such cells can have, or a lead-acid battery that stood flat
// or is dead. None when restV is 0; that it is no number is told. It errs to no
// side: a meter's own error is not allowed for.
func JudgeRest(p chemistry.Profile, cells int, restV float64) []answer.Finding {
	return JudgeResting(p, cells, Resting{V: restV})
}

// Resting are the volts of a pack with nothing connected.
type Resting struct {
	V     float64 // of the whole pack
	Hours float64 // since it was last charged or used; 0 = not known
	Name  string  // what findings call it at the beginning of a sentence, where it is one of several; empty = It
}

// JudgeResting is [JudgeRest] with how long it rested, and by a name: whoever has waited a
// night is not sent to wait for one.
func JudgeResting(p chemistry.Profile, cells int, r Resting) []answer.Finding {
	name, restV, waited := r.Name, r.V, r.Hours >= restedH
	it, block, pack := cmp.Or(name, "It"), cmp.Or(name, "The battery"), cmp.Or(name, "The pack")
	if restV <= 0 || cells <= 0 {
		return nil
	}
	per := restV / float64(cells)
	below := func(limit float64) bool { return limit > 0 && per < limit*(1-rounding) }
	f := answer.Finding{
		Topic: answer.TopicCharge, Item: answer.Battery, Unit: "V", Found: per, Want: answer.Above, Source: p.LadderSource,
		Decides: []string{answer.KeyMeasuredRestVoltage, answer.KeyPackLabel, answer.KeyPackCells, answer.KeyPackChemistry},
	}
	if math.IsNaN(restV) {
		f.Code, f.Limit = CodeDeeplyFlat, p.HarmV
		return []answer.Finding{f.Unread("Whether it may be charged at the volts that it rests at is not known.")}
	}
	if most := mostAtRest(p); per > most*(1+rounding) {
		f.Code, f.Level, f.Harm, f.Gravity, f.Limit, f.Want = CodeOvercharged, answer.Danger, answer.House, 3, most, answer.Below
		finished(&f, true)
		f.Title = it + " rests above what such cells may ever have: it was overcharged, or it is another pack than the label says."
		f.Advice = "Do not charge, use or move it about. Let lithium lie outside, away from anything that burns, and ask where batteries are collected; then find out what the pack really is."
		if p.Family != chemistry.Lithium {
			f.Level, f.Gravity = answer.FixFirst, 1
			finished(&f, false)
			f.Title = it + " stands above what such a battery rests at: it comes straight from the charger, was overcharged, or is another one than the label says."
			f.Advice = "Take it off the charger, and measure again next morning. If it still stands so high, look what battery it really is."
			if waited {
				f.Title = it + " stands above what such a battery rests at: it was overcharged, or is another one than the label says."
				f.Advice = "Look what battery it really is, and measure once more, with a fresh battery in the meter or with another meter."
			}
		}
		return []answer.Finding{f}
	}
	switch {
	case p.Family == chemistry.Lithium && per > p.Charge.CellMaxV*(1+rounding): // a meter's error may lie between
		f.Code, f.Level, f.Harm, f.Limit, f.Want = CodeOvercharged, answer.FixFirst, answer.House, p.Charge.CellMaxV, answer.Below
		f.Title = it + " rests above what a charger may leave in such cells: it was overcharged, or the meter reads high."
		f.Advice = "Measure once more, with a fresh battery in the meter or with another meter. Until then do not charge or use it, and keep it away from what burns."
	case p.Family == chemistry.LeadAcid && per < deadCellV:
		f.Code, f.Level, f.Harm, f.Gravity, f.Limit, f.Source = CodeDeadBlock, answer.Danger, answer.House, 2, deadCellV, "common-charging"
		f.Change = answer.FitPack
		finished(&f, true)
		f.Title = block + " is dead. Cells are shorted or were driven backwards, and a charger boils what is left."
		f.Advice = "Do not charge it: hand it in and replace it. Ask where batteries are collected."
	case below(p.NeverRechargeV):
		f.Code, f.Level, f.Harm, f.Gravity = CodeNeverRecharge, answer.Danger, answer.House, 3
		f.Limit, f.Change = p.NeverRechargeV, answer.FitPack
		finished(&f, true)
		f.Title = pack + " was drained too far: never charge it again."
		f.Advice = "Keep it away from what burns, and hand it in. Ask where batteries are collected; never try to bring it back."
	case p.Family == chemistry.Lithium && below(p.Charge.PrechargeV):
		f.Code, f.Level, f.Harm, f.Gravity = CodeTooLow, answer.Danger, answer.House, 3
		f.Limit, f.Source = p.Charge.PrechargeV, "lithium-precharge"
		finished(&f, true)
		if !below(p.Charge.PrechargeV - harmBelowEndV) { // a meter's error, or a night's rest, may lie between
			f.Level, f.Gravity = answer.FixFirst, 0
			finished(&f, false)
		}
		f.Title = "The cells are too low for an ordinary charge."
		if name != "" {
			f.Title = name + " is too low for an ordinary charge."
		}
		f.Advice = "Keep it away from what burns, and hand it in. Never help it along with any charger."
		if !f.Finished {
			f.Advice = "Only the pack's own charger may decide on it; if that refuses, the pack is finished. Never help it along with another charger."
		}
	case p.Family != chemistry.Lithium && below(p.HarmV):
		f.Code, f.Level, f.Harm, f.Limit = CodeDeeplyFlat, answer.FixFirst, answer.Part, p.HarmV
		f.Title = block + " rests below its harm limit: it has stood flat for long, or a cell is dead."
		f.Advice = "Try one charge at its right charger and stay near. If it grows hot, or does not hold its volts afterwards, replace it."
		f.Habit = answer.HabitWatchCharge
	case restsDead(p, per):
		f.Code, f.Level, f.Harm, f.Limit, f.Source = CodeDeeplyFlat, answer.FixFirst, answer.Part, emptyRestV, p.Rest.Source
		f.Title = block + " rests lower than an empty one: probably a cell is dead, or it stood flat and is harmed; do not leave it alone on a charger."
		f.Advice = "Just drained: measure again next morning. Else try one charge with somebody beside it: if it grows hot, or rests 2 V short of full again, replace it."
		if waited {
			f.Advice = "Try one charge with somebody beside it: if it grows hot, or rests 2 V short of full again, replace it."
		}
		f.Habit = answer.HabitWatchCharge
	default:
		return nil
	}
	return []answer.Finding{f}
}
