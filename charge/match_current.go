package charge

import (
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
)

// Codes of the findings on a charger's current.
const (
	CodeCurrentUnknown = "charger-current-unknown"  // no amps are printed
	CodeCurrentTooHigh = "charger-current-too-high" // more than the pack may take
	CodeSlow           = "charger-slow"             // takes more than a day
)

// Limits of the current that are not the chemistry's.
const (
	// farTooMuch is the current, over the greatest allowed, from which a
	// mismatch counts as dangerous whatever the chemistry (source
	// "common-charging").
	farTooMuch = 3.0
	// honest is from what share of its label on a pack is made of cells that their
	// sheets speak for: ten measured cells held 0.82 to 1.06 of it (source of the label's
	// honesty in package tables), look-alikes half.
	honest = 0.75
	// littleTooMuch is the current, over the greatest allowed, up to which a pack
	// that holds less than its label explains a charger that came with it. Own
	// choice.
	littleTooMuch = 1.5
	// tooSlowC is the current over capacity below which a lead-acid charger
	// takes more than a day and a half: the least that makers' hours reach
	// down to (source "common-charging").
	tooSlowC = 0.05
)

// sheetAh is the capacity that limits over it are told of: what is printed on the pack,
// unless it holds so much less that its cells are others.
func (p *Plugged) sheetAh() float64 {
	if rated := p.Pack.RatedAh(); p.LabelAh <= 0 || rated < honest*p.LabelAh {
		return rated
	}
	return p.LabelAh
}

// current judges the charging current.
func (m *match) current() {
	a, most := m.p.Charger.CurrentA, m.v.MostA
	lim, ah := m.prof.Charge, m.ah
	f := answer.Finding{
		Unit: "A", Found: a, Limit: most, Source: lim.Source,
		Decides: []string{answer.KeyChargerLabel, answer.KeyChargerCurrent, answer.KeyPackCapacity, answer.KeyPackChemistry},
	}
	if m.gate.CurrentShare < 1 {
		f.Decides = append(f.Decides, answer.KeyOutingAir) // in warmer air it may take more
	}
	switch {
	case most <= 0: // the gate is closed and says so
	case a <= 0 && m.p.Charger.SuppliedWithPack: // the maker of the pack answers for it
	case a <= 0:
		f.Code, f.Reads, f.Change = CodeCurrentUnknown, answer.AsUnknown, answer.LookUp
		f.Level, f.Harm = m.unlessLithium()
		f.Title = "The charger's current is not known."
		f.Advice = "Read the amps or milliamps on its label; without them neither heat nor time can be told."
		m.say(Unproven, f)
	case m.p.Charger.SuppliedWithPack && a <= lim.KindMostC()*ah*(1+rounding): // whoever made the pack chose it for these cells, cold or not
	case a > most*(1+rounding):
		f.Code, f.Level, f.Harm, f.Change = CodeCurrentTooHigh, answer.FixFirst, answer.Part, answer.FitCharger
		if m.lithium() || a > farTooMuch*most {
			f.Level, f.Harm = answer.Danger, answer.House
		}
		f.Title = "The charger pushes more current than the pack may take."
		if m.gate.CurrentShare < 1 && a <= lim.MaxC*ah { // too much only for as long as they are cold
			f.Level, f.Change, f.Habit = answer.FixFirst, answer.WarmUp, answer.HabitChargeWarm
			f.Title = "The charger pushes more current than cells as cold as these may take."
			f.Advice = "Warm the pack up indoors before it is charged, and charge it there."
			m.say(Refused, f)
			return
		}
		if m.p.Charger.SuppliedWithPack {
			f.Limit = lim.KindMostC() * ah
			if a <= littleTooMuch*f.Limit {
				f.Level, f.Harm, f.Change = answer.Watch, answer.Wear, answer.LookUp
				f.Advice = "Look whether pack and charger are of one maker and name each other."
				m.say(WithCare, f)
				return
			}
		}
		f.Advice = fmt.Sprintf("Use a charger of at most %s A.", quantity.Digits(math.Floor(AdvisedC(m.prof)*ah*m.gate.CurrentShare*10+rounding)/10, 3))
		m.say(Refused, f)
	case m.prof.Family == chemistry.LeadAcid && a < tooSlowC*ah*(1-rounding):
		f.Code, f.Level, f.Harm, f.Want = CodeSlow, answer.Watch, answer.Wear, answer.Above
		f.Limit, f.Source = tooSlowC*ah, "common-charging"
		f.Title = "The charger is small for this battery: a charge takes more than a day."
		f.Advice = "It does no harm if it stops by itself; do not cut the charge short, since a part charge wears the battery."
		m.say(WithCare, f)
	}
}

// advisedC is the greatest current over capacity of which a charger for lithium is
// advised: some cells take more, and the next pack may not be made of them (source
// "common-charging").
const advisedC = 1.0

// AdvisedC returns the greatest current, over capacity, of which a charger for such
// cells is advised, 1/h.
func AdvisedC(p chemistry.Profile) float64 {
	if p.Family == chemistry.Lithium {
		return min(p.Charge.MaxC, advisedC)
	}
	return p.Charge.MaxC
}
