package charge

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on how a charge ends.
const (
	CodeTimer       = "charger-timer"        // ends by the clock
	CodeStopUnknown = "charger-stop-unknown" // nobody knows whether it ends
	CodeNeverStops  = "charger-never-stops"  // does not end
)

// slowNickelC is the current over capacity that cells of nickel stand for the hours of a
// standard charge, in which they end full (source of the profile's charge). That more than that
// makes full ones hot and vent is from memory.
const slowNickelC = 0.1

// ending judges whether and how the charge ends.
func (m *match) ending() {
	c := m.p.Charger
	if c.Stops == StopsByItself || c.MadeFor == PowerSupply {
		return
	}
	floats := c.EndMostV > 0 && m.heldV() <= m.gate.FloatVPerCell*floatRoom
	if floats && m.prof.Family == chemistry.LeadAcid {
		return
	}
	f := answer.Finding{
		Source: m.prof.Charge.Source, Habit: answer.HabitWatchCharge,
		Decides: []string{answer.KeyChargerLabel, answer.KeyChargerStops, answer.KeyPackChemistry},
	}
	switch {
	case c.Stops == StopsByTimer && !m.lithium():
		f.Code, f.Level, f.Harm = CodeTimer, answer.Watch, answer.Wear
		f.Title = "The timer ends the charge by the clock, not by the battery."
		f.Advice = "A half-full battery is overcharged by a full-length timer: unplug it early after a short ride."
		m.say(WithCare, f)
	case c.Stops == StopsUnknown && c.SuppliedWithPack && m.p.ToolPack:
	case c.Stops == StopsUnknown:
		f.Code, f.Reads, f.Change = CodeStopUnknown, answer.AsUnknown, answer.LookUp
		f.Level, f.Harm = m.unlessLithium()
		f.Title = "It is not known whether the charger stops by itself."
		f.Advice = "Treat it as one that never stops: stay near and unplug it at the time given."
		m.say(Unproven, f)
	case m.lithium():
		f.Code, f.Level, f.Harm, f.Gravity = CodeNeverStops, answer.Danger, answer.House, 1
		f.Source, f.Change, f.Habit = "lithium-cc-cv", answer.FitCharger, ""
		f.Title = "This charger does not stop when the cells are full; it must not be used on lithium."
		f.Advice = "Use a charger that ends the charge by itself."
		m.say(Refused, f)
	default:
		f.Code, f.Gravity, f.Change = CodeNeverStops, 1, answer.FitCharger
		f.Level, f.Harm = m.unlessSupplied()
		f.Decides = append(f.Decides, answer.KeyChargerCameWithPack)
		f.Title = "The charger never stops: left on, it gasses the battery dry and heats it."
		f.Advice = "Set an alarm and unplug it at the time given, or use a charger that stops by itself."
		if m.prof.Family == chemistry.Nickel {
			f.Title = "The charger never stops: full cells of nickel turn all that flows into heat."
			if f.Level == answer.FixFirst && m.p.Charger.CurrentA > slowNickelC*m.ah*(1+rounding) {
				f.Harm, f.Title = answer.House, "The charger never stops: full cells of nickel turn all that flows into heat, and vent gas that burns."
				f.Advice = "Use a charger that notices when the cells are full; until then be there, and unplug it at the time given."
			}
		}
		m.say(WithCare, f)
	}
}
