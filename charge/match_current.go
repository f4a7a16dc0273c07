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
	// farTooMuch is the current, over the greatest for such cells, from which a
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

// What the sheets at hand print as the greatest charging current, over the printed
// capacity, of any cell of its kind: a told one above that was misread, mostly
// from the line of the discharging current.
const (
	leadPrintsC    = 0.4     // source "charge-current-sheets"
	lithiumPrintsC = 6 / 2.8 // source "charge-current-sheets"
	ironPrintsC    = 1.0     // from memory
)

// printsC is the greatest that is taken for a charging current of such cells.
func printsC(p chemistry.Profile) float64 {
	most := p.Charge.KindMostC()
	switch PurposeFor(p) {
	case ForLeadAcid:
		most = max(most, leadPrintsC)
	case ForLithiumIon:
		most = max(most, lithiumPrintsC)
	case ForLithiumIronPhosphate:
		most = max(most, ironPrintsC)
	}
	return most
}

// sheetMostA is the greatest current that the pack's own sheet allows it, A: as much of
// what is told as it holds of its label. 0 when none is told, or one that no sheet of
// such cells prints.
func (p *Plugged) sheetMostA() float64 {
	label := p.LabelAh
	if label <= 0 {
		label = p.Pack.RatedAh()
	}
	if p.SheetA > printsC(p.Pack.Spec().Profile)*label*(1+rounding) {
		return 0
	}
	return p.SheetA * p.sheetAh() / label
}

// suppliedMostA is the greatest current that whoever made the pack may have chosen for
// the charger that came with it.
func (m *match) suppliedMostA() float64 {
	if m.told > 0 {
		return m.told
	}
	return m.prof.Charge.KindMostC() * m.ah
}

// current judges the charging current.
func (m *match) current() {
	a, most := m.p.Charger.CurrentA, m.v.MostA
	lim, ah := m.prof.Charge, m.ah
	f := answer.Finding{
		Unit: "A", Found: a, Limit: most, Source: lim.Source,
		Decides: []string{answer.KeyChargerLabel, answer.KeyChargerCurrent, answer.KeyPackCapacity, answer.KeyPackChemistry},
	}
	if m.p.SheetA > 0 {
		f.Decides = append(f.Decides, answer.KeyPackMaxCharge)
	}
	if ah < m.p.LabelAh && a <= lim.MaxC*m.p.LabelAh*m.gate.CurrentShare*(1+rounding) { // by its label it is right
		f.Decides = append(f.Decides, answer.KeyPackMaker)
	}
	if m.told > 0 {
		f.Source = answer.PartRating
	}
	if m.gate.CurrentShare < 1 {
		f.Decides = append(f.Decides, answer.KeyOutingChargedAt) // in warmer air it may take more
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
	case m.p.Charger.SuppliedWithPack && a <= m.suppliedMostA()*(1+rounding): // whoever made the pack chose it for these cells, cold or not
	case a > most*(1+rounding):
		f.Code, f.Level, f.Harm, f.Change = CodeCurrentTooHigh, answer.FixFirst, answer.Part, answer.FitCharger
		if m.lithium() || a > farTooMuch*lim.MaxC*ah*m.gate.CurrentShare { // a cautious sheet makes no fire
			f.Level, f.Harm = answer.Danger, answer.House
		}
		f.Title = "The charger pushes more current than the pack may take."
		if m.gate.CurrentShare < 1 && a <= m.warm { // too much only for as long as they are cold
			f.Level, f.Change, f.Habit = answer.FixFirst, answer.WarmUp, answer.HabitChargeWarm
			f.Title = "The charger pushes more current than cells as cold as these may take."
			f.Advice = "Warm the pack up indoors before it is charged, and charge it there."
			m.say(Refused, f)
			return
		}
		if m.p.Charger.SuppliedWithPack {
			f.Limit = m.suppliedMostA()
			if a <= littleTooMuch*f.Limit {
				f.Level, f.Harm, f.Change = answer.Watch, answer.Wear, answer.LookUp
				f.Advice = "Look whether pack and charger are of one maker and name each other."
				m.say(WithCare, f)
				return
			}
		}
		f.Advice = fmt.Sprintf("Use a charger of at most %s A.", quantity.Digits(math.Floor(m.p.AdvisedA()*m.gate.CurrentShare*10+rounding)/10, 3))
		if m.p.SheetA > 0 && m.told == 0 {
			f.Advice += fmt.Sprintf(" No sheet of such cells allows the %s A told for charging: read it again.", quantity.Digits(m.p.SheetA, 3))
		}
		m.say(Refused, f)
	case m.prof.Family == chemistry.LeadAcid && a < tooSlowC*ah*(1-rounding):
		f.Code, f.Level, f.Harm, f.Want = CodeSlow, answer.Watch, answer.Wear, answer.Above
		f.Limit, f.Source = tooSlowC*ah, "common-charging"
		f.Title = "The charger is small for this battery: a charge takes more than a day."
		f.Advice = fmt.Sprintf("One of up to %s A is sooner done. With this one unplug it overnight and go on next day until it is full: pauses do no harm, a part charge for good does.",
			quantity.Digits(roundedDown(m.p.AdvisedA()), 3))
		m.say(WithCare, f)
	}
}

// advisedC is the greatest current over capacity of which a charger for lithium is
// advised: some cells take more, and the next pack may not be made of them (source
// "common-charging").
const advisedC = 1.0

// AdvisedA returns the greatest current of which a charger for the pack is advised, A;
// NaN without a pack.
//
// Whose pack may be one that holds half of its label is advised for that one: the charger
// is bought before anybody knows.
func (p *Plugged) AdvisedA() float64 {
	if p.Pack == nil {
		return math.NaN()
	}
	ah, share := p.sheetAh(), 1.0
	if p.LeastAh > 0 && p.LeastAh < honest*p.LabelAh && p.LeastAh < ah {
		share = p.LeastAh / ah
	}
	if told := p.sheetMostA(); told > 0 {
		return told * share
	}
	prof := p.Pack.Spec().Profile
	c := prof.Charge.MaxC
	if prof.Family == chemistry.Lithium {
		c = min(c, advisedC)
	}
	return c * ah * share
}
