package charge

import (
	"fmt"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/answer"
)

// endVolts judges the voltage that the charger rises to.
func (m *match) endVolts() {
	c := m.p.Charger
	n := float64(m.p.Pack.Spec().CellsInSeries)
	if c.EndMostV <= 0 && c.SuppliedWithPack {
		return // the maker of the pack answers for it
	}
	if c.EndMostV <= 0 {
		level := answer.FixFirst
		if m.lithium() {
			level = answer.Danger
		}
		why := c.WhyEnd
		if why == "" {
			why = "Its end voltage is not given."
		}
		m.say(Unproven, answer.Finding{
			Code: "charger-end-volts-unknown", Level: level, Unit: "V", Limit: m.v.WantedVPerCell, Source: m.prof.Charge.Source,
			Title:  "It is not known what voltage this charger rises to. " + why,
			Advice: "Find its end voltage in its papers; a pack must not be charged on a guess.",
		})
		return
	}
	m.v.EndLeastVPerCell, m.v.EndMostVPerCell = c.EndLeastV/n, c.EndMostV/n
	if m.tooHigh() || m.tooLow() {
		return
	}
	m.holding()
}

// tooHigh reports an end voltage above the limit.
func (m *match) tooHigh() bool {
	c := m.p.Charger
	held, most := m.heldV(), m.v.MostVPerCell
	if held <= most*(1+1e-9) {
		return false
	}
	f := answer.Finding{Code: "charger-volts-too-high", Unit: "V", Found: held, Limit: most, Source: m.prof.Charge.Source}
	switch {
	case c.Regulated || m.v.EndLeastVPerCell > most:
		f.Level = answer.Danger
		if !m.lithium() && held < most*1.1 {
			f.Level = answer.FixFirst
		}
		f.Title = fmt.Sprintf("The charger drives each cell to %.2f V; %.2f V is the most it may have.", held, most)
		f.Advice = "Do not connect it: it overcharges the pack. Use one whose end voltage fits this pack."
		m.say(Refused, f)
	case m.lithium():
		f.Level = answer.Danger
		f.Title = fmt.Sprintf("The charger may drive each cell to %.2f V; %.2f V is the most it may have.", held, most)
		f.Advice = "A plain adaptor does not hold its voltage. Never use one on a lithium pack."
		m.say(Refused, f)
	case c.Stops == StopsByItself:
		f.Level = answer.Watch
		f.Title = fmt.Sprintf("The charger may rise to %.2f V per cell, above the %.2f V that the battery should see.", held, most)
		f.Advice = "It is said to stop by itself: check once with a meter near the end of a charge that it does."
		m.say(WithCare, f)
	default:
		f.Level = m.unlessSupplied()
		f.Title = fmt.Sprintf("The real end voltage of this adaptor is unknown: it may rise to %.2f V per cell, %.2f V is the most.", held, most)
		f.Advice = "Measure the battery's volts near the end of a charge and unplug when the limit is reached; better, use a charger that stops by itself."
		m.say(Unproven, f)
	}
	return true
}

// unlessSupplied is the level of a fault that the vehicle's maker has built in
// and given hours for: to be fixed when the charger comes from elsewhere, to be
// watched when it came with the battery.
func (m *match) unlessSupplied() answer.Level {
	if m.p.Charger.SuppliedWithPack {
		return answer.Watch
	}
	return answer.FixFirst
}

// tooLow reports an end voltage that cannot fill the pack, with plain words
// for the usual mistake of a 12 V charger on a 24 V pack.
func (m *match) tooLow() bool {
	spec := m.p.Pack.Spec()
	n := float64(spec.CellsInSeries)
	most := m.v.EndMostVPerCell
	f := answer.Finding{
		Code: "charger-volts-too-low", Level: answer.FixFirst, Unit: "V", Found: most, Source: m.prof.Charge.Source,
	}
	switch {
	case most < m.prof.Rest.VoltsAt.At(0.2):
		f.Limit = m.gate.WantedVPerCell
		f.Title = fmt.Sprintf("The charger's %.3g V cannot charge a pack of %.3g V.", m.p.Charger.PrintedV, n*m.prof.NominalV)
		if m.p.Charger.PrintedV == 0 {
			f.Title = "The charger's voltage is far too low for this pack."
		}
		f.Advice = "Use a charger for the whole pack's voltage. Do not charge half of a string through a tap."
		m.say(Refused, f)
		return true
	case most < m.prof.FullV:
		f.Limit = m.prof.FullV
		f.Title = "The charger ends below the volts of a full pack: it never gets full."
		f.Advice = "A pack that is never full wears out early and runs short. Use a charger with the right end voltage."
		if m.lithium() {
			f.Level = answer.Watch
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
	level := answer.Watch
	fit := WithCare
	if m.lithium() {
		level, fit = answer.Danger, Refused
	}
	m.say(fit, answer.Finding{
		Code: "charger-volts-not-held", Level: level, Unit: "V", Found: m.v.EndMostVPerCell, Limit: m.v.MostVPerCell, Source: c.EndSource,
		Title:  "This adaptor does not hold a fixed voltage.",
		Advice: "It charges by the clock: set an alarm, stay near and unplug it.",
	})
}

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
	f := answer.Finding{Source: m.prof.Charge.Source}
	switch {
	case c.Stops == StopsByTimer && !m.lithium():
		f.Code, f.Level = "charger-timer", answer.Watch
		f.Title = "The timer ends the charge by the clock, not by the battery."
		f.Advice = "A half-full battery is overcharged by a full-length timer: unplug it early after a short ride."
		m.say(WithCare, f)
	case c.Stops == StopsUnknown && c.SuppliedWithPack && m.p.ToolPack:
	case c.Stops == StopsUnknown:
		f.Code, f.Level = "charger-stop-unknown", answer.Watch
		if m.lithium() {
			f.Level = answer.FixFirst
		}
		f.Title = "It is not known whether the charger stops by itself."
		f.Advice = "Treat it as one that never stops: stay near and unplug it at the time given."
		m.say(Unproven, f)
	case m.lithium():
		f.Code, f.Level, f.Source = "charger-never-stops", answer.Danger, "lithium-cc-cv"
		f.Title = "A charger that does not stop when the cells are full must not be used on lithium."
		f.Advice = "Use a charger that ends the charge by itself."
		m.say(Refused, f)
	default:
		f.Code, f.Level = "charger-never-stops", m.unlessSupplied()
		f.Title = "The charger never stops: left on, it gasses the battery dry and heats it."
		f.Advice = "Set an alarm and unplug it at the time given, or use a charger that stops by itself."
		m.say(WithCare, f)
	}
}
