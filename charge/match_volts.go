package charge

import (
	"fmt"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
)

// Codes of the findings on the voltage that a charger rises to.
const (
	CodeEndVoltsUnknown = "charger-end-volts-unknown" // nobody knows what it rises to
	CodeVoltsTooHigh    = "charger-volts-too-high"    // above what a cell may have
	CodeVoltsTooLow     = "charger-volts-too-low"     // cannot fill the pack
	CodeVoltsNotHeld    = "charger-volts-not-held"    // right, but not held by the adaptor
)

// decidesVolts are the keys that a charger's and a pack's volts come from.
func decidesVolts() []string {
	return []string{
		answer.KeyChargerLabel, answer.KeyChargerVoltage, answer.KeyPackLabel, answer.KeyPackCells, answer.KeyPackChemistry,
	}
}

// heldV returns the charger's end voltage per cell that is held against the
// limit: the middle of a held voltage, whose tolerance the limits allow for,
// and the highest of one that is not held.
func (m *match) heldV() float64 {
	c := m.p.Charger
	n := float64(m.p.Pack.Spec().CellsInSeries)
	if c.Regulated {
		return (c.EndLeastV + c.EndMostV) / 2 / n
	}
	return c.EndMostV / n
}

// endVolts judges the voltage that the charger rises to.
func (m *match) endVolts() {
	c := m.p.Charger
	n := float64(m.p.Pack.Spec().CellsInSeries)
	if c.EndMostV <= 0 && c.SuppliedWithPack {
		return // the maker of the pack answers for it
	}
	if c.EndMostV <= 0 && m.leastTooHigh() {
		return
	}
	if c.EndMostV <= 0 {
		why := c.WhyEnd
		if why == "" {
			why = "Its end voltage is not given."
		}
		m.say(Unproven, answer.Finding{
			Code: CodeEndVoltsUnknown, Level: answer.FixFirst, Harm: answer.House, Unit: "V",
			Limit: m.v.WantedVPerCell, Reads: answer.AsUnknown, Source: m.prof.Charge.Source,
			Title:  "It is not known what voltage this charger rises to. " + why,
			Advice: "Find its end voltage in its papers; a pack must not be charged on a guess.",
			Change: answer.FitCharger, Decides: decidesVolts(),
		})
		return
	}
	m.v.EndLeastVPerCell, m.v.EndMostVPerCell = c.EndLeastV/n, c.EndMostV/n
	if m.tooHigh() || m.tooLow() {
		return
	}
	m.holding()
}

// leastTooHigh reports an end voltage of which only the least is known, and that
// already lies above the limit.
func (m *match) leastTooHigh() bool {
	least, most := m.p.Charger.EndLeastV/float64(m.p.Pack.Spec().CellsInSeries), m.v.MostVPerCell
	if least <= most*(1+rounding) {
		return false
	}
	m.v.EndLeastVPerCell = least
	rises, bound := quantity.SaidBeside(quantity.Voltage, least, most)
	f := answer.Finding{
		Code: CodeVoltsTooHigh, Gravity: 2, Unit: "V", Found: least, Limit: most, Source: m.prof.Charge.Source,
		Title:  fmt.Sprintf("The charger drives each cell to %s or more; %s is the most it may have.", rises, bound),
		Advice: "Do not connect it: it is made for more cells, and overcharges these. Use one whose end voltage fits this pack.",
		Change: answer.FitCharger, Decides: decidesVolts(),
	}
	f.Level, f.Harm = m.overcharged(least)
	m.say(Refused, f)
	return true
}

// overcharged is how bad it is to drive each cell to volts above the limit.
func (m *match) overcharged(surelyV float64) (answer.Level, answer.Harm) {
	if !m.lithium() && surelyV < m.v.MostVPerCell*1.1 {
		return answer.FixFirst, answer.Part
	}
	return answer.Danger, answer.House
}

// tooHigh reports an end voltage above the limit.
func (m *match) tooHigh() bool {
	c := m.p.Charger
	held, most := m.heldV(), m.v.MostVPerCell
	if held <= most*(1+rounding) {
		return false
	}
	f := answer.Finding{
		Code: CodeVoltsTooHigh, Gravity: 2, Unit: "V", Found: held, Limit: most, Source: m.prof.Charge.Source,
		Change: answer.FitCharger, Decides: decidesVolts(),
	}
	rises, bound := quantity.SaidBeside(quantity.Voltage, held, most)
	if lim := m.prof.Charge; lim.HotCellV > 0 && m.p.CellC >= lim.HotAboveC && held <= lim.CellMaxV*(1+rounding) {
		if !m.gate.Open || c.SuppliedWithPack { // the heat is told by itself, and their own charger feels it
			return false
		}
		f.Level, f.Harm, f.Change = answer.FixFirst, answer.House, answer.WaitBeforeCharge
		f.Title = fmt.Sprintf("The charger drives each cell to %s; as hot as they are, %s is the most they may have.", rises, bound)
		f.Advice = "Let the pack cool to the warmth of a room before it is charged."
		f.Decides = append(f.Decides, answer.KeyOutingChargedAt, answer.KeyPackTemperature)
		m.say(Refused, f)
		return true
	}
	switch {
	case c.Regulated || m.v.EndLeastVPerCell > most*(1+rounding):
		surely := held // of volts that are not held only the least is certain
		f.Title = fmt.Sprintf("The charger drives each cell to %s; %s is the most it may have.", rises, bound)
		if !c.Regulated {
			surely = m.v.EndLeastVPerCell
			f.Found = surely
			f.Title = fmt.Sprintf("The charger drives each cell to %s, and may rise to %s: it does not hold what it prints; %s is the most it may have.",
				volts(surely), volts(held), bound)
		}
		f.Level, f.Harm = m.overcharged(surely)
		f.Advice = "Do not connect it: it overcharges the pack. Use one whose end voltage fits this pack."
		m.say(Refused, f)
	case m.lithium():
		f.Level, f.Harm = answer.Danger, answer.House
		f.Title = fmt.Sprintf("The charger may drive each cell to %s; %s is the most it may have.", rises, bound)
		f.Advice = "A plain adaptor does not hold its voltage: as its current falls it rises above its print, by up to half. Never use one on a lithium pack."
		m.say(Refused, f)
	case c.Stops == StopsByItself:
		f.Level, f.Harm = answer.Watch, answer.Wear
		f.Title = fmt.Sprintf("The charger may rise to %s per cell, above the %s that the battery should see.", rises, bound)
		f.Advice = "It is said to stop by itself: check once with a meter near the end of a charge that it does."
		m.say(WithCare, f)
	default:
		f.Level, f.Harm = m.unlessSupplied()
		f.Habit, f.Decides = answer.HabitWatchCharge, append(f.Decides, answer.KeyChargerCameWithPack)
		f.Title = fmt.Sprintf("The real end voltage of this adaptor is unknown: it may rise to %s per cell, %s is the most.", rises, bound)
		f.Advice = "Measure the battery's volts near the end of a charge and unplug when the limit is reached; better, use a charger that stops by itself."
		m.say(Unproven, f)
	}
	return true
}

// tooLow reports an end voltage that cannot fill the pack, with plain words
// for the usual mistake of a 12 V charger on a 24 V pack.
func (m *match) tooLow() bool {
	spec := m.p.Pack.Spec()
	n := float64(spec.CellsInSeries)
	most := m.v.EndMostVPerCell
	f := answer.Finding{
		Code: CodeVoltsTooLow, Level: answer.FixFirst, Harm: answer.Part, Unit: "V", Found: most, Want: answer.Above,
		Source: m.prof.Charge.Source, Change: answer.FitCharger, Decides: decidesVolts(),
	}
	switch {
	case most < m.prof.Rest.VoltsAt.At(0.2):
		f.Limit = m.gate.WantedVPerCell
		f.Title = fmt.Sprintf("The charger's %s cannot charge a pack of %s.", volts(m.p.Charger.PrintedV), volts(n*m.prof.NominalV))
		if m.p.Charger.PrintedV == 0 {
			f.Title = "The charger's voltage is far too low for this pack."
		}
		f.Advice = "Use a charger for the whole pack's voltage. Do not charge half of a string through a tap."
		m.say(Refused, f)
		return true
	case most < m.prof.FullV*(1-rounding):
		f.Limit = m.prof.FullV
		f.Title = "The charger ends below the volts of a full pack: it never gets full."
		f.Advice = "A pack that is never full wears out early and runs short. Use a charger with the right end voltage."
		if m.lithium() {
			f.Level, f.Harm = answer.Watch, answer.Wear
			f.Advice = "It does the cells no harm, but part of the ride is missing."
			m.say(WithCare, f)
			return true
		}
		m.say(Unproven, f)
		return true
	}
	return false
}

// holding notes a right voltage that leaves something to say.
func (m *match) holding() {
	c := m.p.Charger
	if c.Regulated || m.prof.Family == chemistry.LeadAcid && c.Stops == StopsByItself {
		return
	}
	f := answer.Finding{
		Code: CodeVoltsNotHeld, Level: answer.Watch, Harm: answer.Wear, Unit: "V", Found: m.v.EndMostVPerCell, Limit: m.v.MostVPerCell,
		Reads: answer.AsTold, Source: c.EndSource,
		Title:  "This adaptor does not hold a fixed voltage.",
		Advice: "It charges by the clock: set an alarm, stay near and unplug it.",
		Habit:  answer.HabitWatchCharge, Decides: decidesVolts(),
	}
	if m.lithium() {
		f.Level, f.Harm, f.Change, f.Habit = answer.Danger, answer.House, answer.FitCharger, ""
		f.Advice = "Do not connect it: lithium needs a charger that holds its end voltage and ends the charge."
		m.say(Refused, f)
		return
	}
	m.say(WithCare, f)
}

// volts prints volts in a sentence as reports print those of a finding.
func volts(v float64) string { return quantity.Said(quantity.Voltage, v) }
