package ask

import (
	"math"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/tables"
)

// Label asks what is printed on a battery means.
type Label struct {
	Battery Battery
}

// Answer returns the nominal volts, from empty to full; beside them what the
// battery holds.
func (q Label) Answer() (Answer, error) {
	var a Answer
	b, err := q.Battery.find()
	if err != nil {
		return Answer{}, err
	}
	m := b.model
	l, err := battery.ParseLabelOf(q.Battery.Label, b.profile())
	if err != nil {
		return Answer{}, err
	}
	got, err := b.each(2, func(out []float64, m *battery.Model) error {
		out[0] = m.FullAh()
		out[1] = out[0] * m.NominalV()
		return nil
	})
	if err != nil {
		return Answer{}, err
	}
	p := b.profile()
	a.Asked = "what " + q.Battery.Label + " means"
	a.is(Figure{What: "empty, nominal, full", Value: m.NominalV(), Low: m.EmptyV(), High: m.FullV(), Unit: "V"})
	a.beside(spread("holds", got[0], "Ah", 1e6), spread("energy", got[1], "Wh", 1e6))
	full, most := volts(m.FullV())+" when full", m.FullV()
	if end := float64(m.CellsInSeries()) * p.Charge.CellV; end > most { // a charger ends above what it then comes to rest at
		full, most = full+" and rested, up to "+volts(end)+" on its charger", end
	}
	inSeries := " in series"
	if m.CellsInSeries() == 1 {
		inSeries = ""
	}
	a.say("%s of %s%s: %s nominal, %s, %s when empty.", quantity.Cells(m.CellsInSeries()), p.Title, inSeries, volts(m.NominalV()), full, volts(m.EmptyV()))
	const other = 0.06 // 3.7 V or 3.8 V of a cell in the place of 3.6 V; 4 V is "max"
	if n, off := float64(m.CellsInSeries()), math.Abs(l.PrintedV-m.NominalV()); l.PrintedV > 0 && l.Blocks <= 1 && off > 0.05 && off < other*m.NominalV() {
		same := "cells, counted at %.3g V each"
		if n == 1 {
			same = "cell, counted at %.3g V"
		}
		a.say("The printed %s are the same "+same+" instead of %.3g V.", volts(l.PrintedV), l.PrintedV/n, p.NominalV)
	}
	if l.MaxV > m.NominalV()+0.5 {
		a.say("%s max is the reading right after charging, not another voltage.", volts(l.MaxV))
	}
	if free, err := battery.ParseLabel(q.Battery.Label, ""); err == nil && q.Battery.Chemistry == "" && len(free.Others) > 0 {
		var others []string
		for _, o := range free.Others {
			if other, ok := chemistry.Builtin().Profile(o.Chemistry); ok {
				others = append(others, quantity.Cells(o.CellsInSeries)+" of "+other.Title)
			}
		}
		a.say("It can also mean %s: look for the chemistry.", strings.Join(others, " or "))
		if len(free.Unread) > 0 {
			a.say("Not understood: %s.", strings.Join(free.Unread, ", "))
		}
		a.level(answer.Watch, true)
	}
	switch pack := &b.parts.Pack; {
	case pack.LiquidAcid:
		a.say("Its acid is liquid: not for a children's vehicle, which may tip over.")
		a.level(answer.Watch, false)
		a.cite("nonspillable-rule")
	case pack.Starter:
		a.say("A battery that starts engines mostly has liquid acid: not for a children's vehicle, which may tip over, unless AGM or gel is on it.")
		a.level(answer.Watch, false)
		a.cite("nonspillable-rule")
	}
	b.tell(&a)
	toy := tables.Builtin().Figure(tables.ToyVoltage)
	a.Limit = &Limit{What: "a toy, nominal", Value: toy.Likely, Unit: "V"}
	above := drive.ToyCheck{NominalV: m.NominalV()}.Findings()
	if len(above) == 0 && m.NominalV() > toy.Likely {
		a.say("Such packs are sold as %s, and have no more volts than lead-acid of that name has on its charger: they are let pass.", volts(toy.Likely))
	}
	a.judged(above, b.guess)
	a.cite(toy.Source)
	a.cite(p.LadderSource)
	a.beware("Hold what the vehicle stands against "+volts(most)+", the highest volts, and not against the nominal ones.", "label-words")
	return a.checked()
}
