package charge

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on a rested voltage.
const (
	CodeNeverRecharge = "pack-never-recharge"    // below the last rung
	CodeTooLow        = "pack-too-low-to-charge" // lithium below an ordinary charge
	CodeDeeplyFlat    = "battery-deeply-flat"    // lead-acid below the volts of an empty one
)

// state judges the pack itself: its temperature and its rested voltage.
func (m *match) state() {
	w := WaitFor(m.p.Pack, m.p.CellC, m.p.AmbientC)
	for _, f := range waitFindings(m.prof, w, m.p.CellC, m.p.AmbientC, true) {
		fit := WithCare
		if f.Level >= answer.FixFirst {
			fit = Refused
		}
		m.say(fit, f)
	}
	for _, f := range JudgeRest(m.prof, m.p.Pack.Spec().CellsInSeries, m.p.RestV) {
		fit := WithCare
		if f.Level == answer.Danger {
			fit = Refused
		}
		m.say(fit, f)
	}
}

// JudgeRest judges the rested voltage restV of a whole pack (V, so many cells
// in series) before a charge: drained past saving, too low for an ordinary
// charge, or a lead-acid battery that stood flat. None when restV is 0. It errs
// to no side: a meter's own error is not allowed for.
func JudgeRest(p chemistry.Profile, cells int, restV float64) []answer.Finding {
	if restV <= 0 || cells <= 0 {
		return nil
	}
	per := restV / float64(cells)
	below := func(limit float64) bool { return limit > 0 && per < limit*(1-rounding) }
	f := answer.Finding{
		Topic: answer.TopicCharge, Item: answer.Battery, Unit: "V", Found: per, Want: answer.Above, Source: p.LadderSource,
		Decides: []string{answer.KeyMeasuredRestVoltage, answer.KeyPackLabel, answer.KeyPackCells, answer.KeyPackChemistry},
	}
	switch {
	case below(p.NeverRechargeV):
		f.Code, f.Level, f.Harm, f.Gravity = CodeNeverRecharge, answer.Danger, answer.House, 3
		f.Limit, f.Change = p.NeverRechargeV, answer.FitPack
		f.Title = "The cells were drained so far that the pack must never be charged again."
		f.Advice = "Do not try to bring it back. Keep it away from anything that burns and hand it in where batteries are collected."
	case p.Family == chemistry.Lithium && below(p.Charge.PrechargeV):
		f.Code, f.Level, f.Harm, f.Gravity = CodeTooLow, answer.Danger, answer.House, 3
		f.Limit, f.Source = p.Charge.PrechargeV, "lithium-precharge"
		f.Title = "The cells are too low for an ordinary charge."
		f.Advice = "Only the pack's own charger may decide on it; if that refuses, the pack is finished. Never help it along with another charger."
	case p.Family == chemistry.LeadAcid && below(p.HarmV):
		f.Code, f.Level, f.Harm, f.Limit = CodeDeeplyFlat, answer.FixFirst, answer.Part, p.HarmV
		f.Title = "The battery rests below its harm limit: it has stood flat for long, or a cell is dead."
		f.Advice = "Try one charge at its right charger and stay near. If it grows hot, or does not hold its volts afterwards, replace it."
		f.Habit = answer.HabitWatchCharge
	case p.Family == chemistry.LeadAcid && below(p.EmptyV):
		f.Code, f.Level, f.Harm, f.Limit = CodeDeeplyFlat, answer.Watch, answer.Wear, p.EmptyV
		f.Title = "The battery rests below the volts of an empty one: it has stood flat or a cell is bad."
		f.Advice = "Charge it now, at its right charger, and stay near. If it grows hot, or does not hold its volts afterwards, replace it."
		f.Habit = answer.HabitWatchCharge
	default:
		return nil
	}
	return []answer.Finding{f}
}
