package setup

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
)

// pack settles the battery.
func (r *resolver) pack() {
	p := &r.parts.Pack
	raw := r.setup.Pack
	if !raw.Given {
		p.unsettled = true
		if !r.wrong("pack") && !unknownTable(r.noted) {
			r.fault(0, "pack", "", `a [pack] table, with at least a label such as label = "20 V max 5 Ah"`)
		}
		return
	}
	label, ok := r.packIdentity(raw)
	p.unsettled = !ok
	for _, key := range []string{"label", "chemistry", "cells_in_series", "joined"} {
		p.unsettled = p.unsettled || r.wrong(r.key("pack", key))
	}
	r.apartFromLabel(raw, label)
	if !ok {
		r.second(raw.Second)
		return
	}
	p.Strings = 1
	switch {
	case raw.Strings.Given:
		p.Strings = int(raw.Strings.Likely)
	case label.Strings > 0:
		p.Strings = label.Strings
	}
	if raw.Tested.Yes && !raw.Health.Given && !r.wrong(r.key("pack", "health")) {
		r.fault(raw.Tested.Line, raw.Tested.Key, "true", "pack.health beside it, of the same discharge")
	}
	if over := raw.TestedOver; over.Given && !raw.Tested.Yes && !r.wrong(r.key("pack", "tested")) {
		r.fault(over.Line, over.Key, over.Text, "pack.tested = true beside it, as packcheck fit writes it")
	}
	r.packCharge(raw, label)
	r.family(raw)
	p.Health = r.or(raw.Health, r.healthDefault())
	if !raw.Health.Given {
		p.Health.mix = r.leadHealth()
	}
	p.TemperatureC = r.orUnknown("pack", "temperature", quantity.Temperature, raw.Temperature)
	if key := r.key("pack", "temperature"); !raw.Temperature.Given {
		r.note(key, r.parts.Outing.AirC.String(), "Not given; the pack is taken to be as warm as the air.", srcOuting)
		if r.setup.Outing.Air.Given { // then it is as good as told
			r.parts.Untold = slices.DeleteFunc(r.parts.Untold, func(k string) bool { return k == key })
			r.firm(key)
		}
	}
	p.Charge = r.or(raw.Charge, blank{
		table: "pack", name: "charge", kind: quantity.Fraction, Range: quantity.Exactly(1),
		why: "Not given; the pack is taken to be fully charged.", source: srcOuting,
	})
	p.Housing = r.choose(raw.Housing, "pack", "housing", "closed shell",
		"Not given; a closed shell cools worst.", srcPackWear)
	p.ClosedShell = p.Housing.Text == "closed shell"
	r.cooling()
	p.Joined = raw.Joined.Text
	p.WatchesCells = raw.WatchesCells.Yes
	r.second(raw.Second)
	mostly := mayWatch(p.Profile, label, p.ClosedShell) && (p.Second == nil || p.Second.mayWatch)
	p.MayWatch = mostly && !raw.WatchesCells.Given && (label.Electronics || !p.SeveralMeanings)
	p.ToolPack = toolCells(p.Profile) && p.ClosedShell && !ofItsOwn(label) // bare cells have no maker with a charger for them
	if raw.Resistance.Given {
		p.ResistanceOhm = r.given(quantity.Resistance, raw.Resistance)
	}
	m, err := battery.New(r.parts.OnePackSpec(Likely))
	if err != nil {
		if !r.wrong(strings.TrimSuffix(r.key("pack", ""), ".")) {
			r.fault(raw.Line, "pack", "these keys together", strings.TrimPrefix(err.Error(), "battery: "))
		}
		return
	}
	r.packResistance(m)
	r.packLimits(raw, label, m.MassKg())
	r.track(&p.CellsAt, &p.Honesty, &p.GrowthAt80, &p.Steepness, &p.LeftBehind, &p.Weakest, &p.TabsOhm, &p.HottestK, &p.ChargeHours)
	r.track(&p.CapacityAh, &p.RateS, &p.ResistanceOhm, &p.ResistanceFactor, &p.Health,
		&p.TemperatureC, &p.Charge, &p.MaxCurrentA, &p.MassKg, &p.SelfDischarge)
}

// second settles the other of two joined packs.
func (r *resolver) second(raw Second) {
	p := &r.parts.Pack
	if !raw.Given {
		return
	}
	if joined := r.setup.Pack.Joined; !joined.Given {
		if r.wrong(r.key("pack", "joined")) {
			return
		}
		r.fault(raw.Line, r.key("pack", "second"), "", `pack.joined = "series" or "parallel" beside it`)
		return
	}
	s := &SecondPart{Profile: p.Profile, CellsInSeries: p.CellsInSeries, CapacityAh: p.CapacityAh}
	if raw.Chemistry.Given {
		profile, ok := r.named(raw.Chemistry.Text)
		if !ok {
			r.noWord(raw.Chemistry, raw.Chemistry.Text, r.chem.Names())
		}
		s.Profile = profile
		if ok && raw.Label.Given && r.otherLithium(raw.Chemistry, raw.Label, profile) {
			return
		}
	} else if means, sure := r.meant(raw.Label.Text); raw.Label.Given && sure == battery.Stated && !chargedAlike(means, p.Profile) {
		s.Profile = means // its words name another kind than the first is of
	}
	s.mayWatch = s.like(p)
	if w := raw.Label; w.Given {
		l, err := r.label(w.Text, s.Profile) // without a name nothing tells of which kind it is
		if err != nil {
			r.fault(w.Line, w.Key, w.Text, wantLabel(err))
			return
		}
		s.CellsInSeries, s.mayWatch = max(l.CellsInSeries, 1), mayWatch(s.Profile, l, p.ClosedShell)
		if l.CapacityAh > 0 {
			s.CapacityAh = r.derived(blank{
				table: "pack.second", name: "capacity", kind: quantity.Charge, Range: quantity.Exactly(l.CapacityAh),
				why: "Read from the label.", source: srcGiven,
			})
		}
	}
	if raw.Capacity.Given {
		s.CapacityAh = r.given(quantity.Charge, raw.Capacity)
	}
	s.Health = r.orUnknown("pack.second", "health", quantity.Fraction, raw.Health)
	p.Second = s
	r.track(&s.CapacityAh, &s.Health)
}

// farApart is from which ratio on two statements of one thing are not two ways
// of measuring it (hours of rating, warmth, rounding) but a mistake. Own choice.
const farApart = 2.5

// apartFromLabel refuses a capacity that is far from the one on the label.
func (r *resolver) apartFromLabel(raw Pack, label battery.Label) {
	c, ah := raw.Capacity, label.CapacityAh
	if c.Given && ah > 0 && (c.Low > farApart*ah || c.High < ah/farApart) {
		r.fault(c.Line, c.Key, c.Text, fmt.Sprintf("about the %s of the label %q, or another label: they cannot both be true",
			quantity.Format(quantity.Charge, ah, quantity.Metric), raw.Label.Text))
	}
}

// packCharge settles capacity and the hours that it is rated over.
func (r *resolver) packCharge(raw Pack, label battery.Label) {
	p := &r.parts.Pack
	switch {
	case raw.Capacity.Given:
		p.CapacityAh = r.given(quantity.Charge, raw.Capacity)
		if ah := label.CapacityAh; ah > 0 && !raw.Capacity.Contains(ah) {
			r.parts.Notes = append(r.parts.Notes, fmt.Sprintf("The label means %s but %s says %s; the latter is used.",
				quantity.Format(quantity.Charge, ah, quantity.Metric), raw.Capacity.Key, raw.Capacity.Text))
		}
	case label.CapacityAh > 0:
		p.CapacityAh = r.derived(blank{
			table: "pack", name: "capacity", kind: quantity.Charge, Range: quantity.Exactly(label.CapacityAh),
			why: "Read from the label.", source: srcGiven,
		})
	default:
		p.CapacityAh = r.assume(blank{
			table: "pack", name: "capacity", kind: quantity.Charge, Range: usualCapacity(p.Profile),
			why: "Neither given nor on the label; from the smallest to the largest usual pack.", source: srcPackSize,
		})
	}
	switch {
	case raw.Rate.Given:
		p.RateS = r.given(quantity.Duration, raw.Rate)
	case label.RateHours > 0:
		p.RateS = r.derived(blank{
			table: "pack", name: "rate", kind: quantity.Duration, Range: quantity.Exactly(label.RateHours * 3600),
			why: "Read from the label.", source: srcGiven,
		})
	default:
		p.RateS = r.assume(blank{
			table: "pack", name: "rate", kind: quantity.Duration, Range: quantity.Exactly(p.Profile.Capacity.RatedHours * 3600),
			why:    "Not given; makers of such packs rate the capacity over this time.",
			source: firstSource(p.Profile.Capacity.Source),
		})
	}
}

// toolCells reports whether cells are of the kind that cordless-tool packs are
// made of: lithium of more volts than iron phosphate has. Going by the name
// would leave out a user's own chemistry, and the cautions with it.
func toolCells(p chemistry.Profile) bool {
	return p.Family == chemistry.Lithium && p.NominalV > 3.4
}

// Phosphate reports whether the pack is of iron phosphate, as whole batteries are sold.
func (b *PackPart) Phosphate() bool {
	return b.Profile.Family == chemistry.Lithium && !toolCells(b.Profile)
}

// mayWatch reports whether a battery of such cells and such a label mostly watches every cell,
// as whole ones of iron phosphate and those of electric bicycles do, or its label names electronics.
func mayWatch(p chemistry.Profile, l battery.Label, closedShell bool) bool {
	return p.Family == chemistry.Lithium && (l.Electronics || closedShell && (l.Ridden && !l.NoElectronics || !toolCells(p) && wholeBattery(l)))
}

// wholeBattery reports whether a label names a battery by its volts, and not by how its
// cells are put together, as those who build one do. What is sold as a whole to replace a
// lead-acid block mostly has electronics inside that watch every cell (common practice, no
// published source).
func wholeBattery(l battery.Label) bool {
	ofCells := l.CellsInSeries == max(l.Blocks, 1) // the volts are those of one cell
	return l.PrintedV > 0 && !l.OfCells && !l.NoElectronics && !ofCells
}

// ofItsOwn reports whether a label is that of a battery that is sold by itself, and not for a tool: it
// names electronics, and counts 3.7 V for each cell. Makers of tools print 3.6 V, or 4 V as the most
// (common practice, no published source).
func ofItsOwn(l battery.Label) bool {
	const cellV, near = 3.7, 0.05
	return l.Electronics && l.MaxV == 0 && l.CellsInSeries > 0 && math.Abs(l.PrintedV/float64(l.CellsInSeries)-cellV) < near
}

// usualCapacity is what packs of a chemistry are usually sold with.
func usualCapacity(p chemistry.Profile) quantity.Range {
	switch {
	case p.Family == chemistry.LeadAcid:
		return quantity.Spread(4.5, 7, 14)
	case toolCells(p):
		return quantity.Spread(1.5, 4, 9)
	case p.Family == chemistry.Lithium:
		return quantity.Spread(4, 7, 20)
	}
	return quantity.Spread(1.3, 2, 5)
}

// oldPack reports whether the pack is the original's own.
func (r *resolver) oldPack() bool { return r.original != nil && r.original.Pack.Given }

// wearRead reports whether something was read with the pack that its wear shows by, such
// as the time of a ride. Of which battery [measured] is, [Parts.measured] says.
func (r *resolver) wearRead() bool {
	today := r.today.Measured.TellsWear()
	switch o := r.today.Original; {
	case o == nil:
		return today
	case !o.Pack.Given: // there is one battery
		return today || o.Measured.TellsWear()
	case !o.Measured.Given:
		return r.oldPack() && today
	case r.oldPack():
		return o.Measured.TellsWear()
	}
	return today
}

// leadHealth is the health of a block that may be of one age or another, or dead before
// its time; nil for others.
func (r *resolver) leadHealth() *mixture {
	switch read, is := r.leadWear(); {
	case r.parts.Pack.Profile.Family != chemistry.LeadAcid:
		return nil
	case is:
		return read.health
	case r.setup.Pack.Age.Given, r.oldPack():
		return nil
	}
	return anyAge.Get()
}

// leadWear is how worn a block may be of which something was read that says how it does. Not of
// a new one, and of no other kind.
func (r *resolver) leadWear() (wear, bool) {
	if r.parts.Pack.Profile.Family != chemistry.LeadAcid || !r.wearRead() {
		return wear{}, false
	}
	read, is := wearByWord.Get()[r.setup.Pack.Age.Text]
	return read, is
}

// healthDefault is the wear of a pack of which nothing is known. The original
// pack was new, unless it was measured on.
func (r *resolver) healthDefault() blank {
	age, w := r.setup.Pack.Age, r.widths().Health
	b := blank{
		table: "pack", name: "health", kind: quantity.Fraction, Range: span(w),
		why: "Not given; anything from new to worn out.", source: w.Source,
	}
	mix := r.leadHealth()
	if mix != nil {
		b.Range = mix.ends()
	}
	switch {
	case age.Given && mix != nil && age.Text != "worn":
		b.why = fmt.Sprintf("Not measured; usual for a battery that is %q, and what wear shows by was read: one in ten worn out, one in twenty all but dead.", age.Text)
	case age.Given:
		b.why = fmt.Sprintf("Not measured; usual for a battery that is %q.", age.Text)
	case mix != nil && r.wearRead():
		b.why = "Not given; what wear shows by was read: half of them nearly new, the others older, one in ten worn out, one in twenty all but dead."
	case mix != nil:
		b.why = "Not given; half of them new, the others of any age up to the two to three years that they serve."
	case r.oldPack() && (r.setup.Measured.Given || r.today.Measured.Given): // then it is the old one that was measured
		b.Range = quantity.Spread(0.5, 0.9, 1)
		b.why = "Not given; what was measured on the original pack was measured when it was new or old."
	case r.oldPack():
		b.Range = quantity.Spread(0.95, 1, 1)
		b.why = "Not given; the original pack is taken as new."
	}
	return b
}

// packResistance settles the resistance: measured, or by the profile with the
// profile's own spread.
func (r *resolver) packResistance(m *battery.Model) {
	p := &r.parts.Pack
	if p.ResistanceOhm.Known {
		return
	}
	u := p.Profile.Resistance.Uncertainty
	b := blank{
		table: "pack", name: "resistance", kind: quantity.NoKind, Range: quantity.Spread(max(1-u, 0.05), 1, 1+u),
		why:    "Not measured; usual for such a pack of this capacity and wear.",
		source: firstSource(p.Profile.Resistance.Source),
	}
	if w := r.widths().Resistance; len(p.Members) > 1 {
		b.Range, b.source = span(w), w.Source
	}
	b.shown = quantity.FormatRange(quantity.Resistance, b.Range.Scale(m.MidOhm()), r.parts.System)
	p.ResistanceFactor = r.assume(b)
}

// packLimits settles mass (kg as the profile has it), current limit and
// self-discharge.
func (r *resolver) packLimits(raw Pack, label battery.Label, kg float64) {
	p := &r.parts.Pack
	// Mass and self-discharge follow from chemistry and capacity, like the rest
	// of the profile; they count as assumed only where those are.
	guessed := p.Chemistry.Assumed || p.CapacityAh.Assumed
	p.MassKg = r.orProfile(raw.Mass, guessed, blank{
		table: "pack", name: "mass", kind: quantity.Mass, Range: quantity.Spread(0.8*kg, kg, 1.2*kg),
		why: "Not weighed; follows from the energy that it holds.", source: firstSource(p.Profile.Mass.Source),
	})
	limit := blank{
		table: "pack", name: "max_current", kind: quantity.Current,
		Range:  quantity.Exactly(p.Profile.Discharge.ContinuousC * p.CapacityAh.Likely),
		why:    "Not given; what such cells can give for long.",
		source: firstSource(p.Profile.Discharge.Source),
	}
	if a := label.LastingA; a > 0 && !raw.MaxCurrent.Given && p.Profile.Family != chemistry.LeadAcid {
		limit.Range, limit.why, limit.source = quantity.Exactly(a), "Read from the label.", srcGiven
		p.MaxCurrentA = r.derived(limit)
	} else {
		p.MaxCurrentA = r.or(raw.MaxCurrent, limit)
	}
	if raw.MaxCharge.Given {
		p.MaxChargeA = raw.MaxCharge.Low
	}
	month := p.Profile.Keeping.LossPerMonth
	p.SelfDischarge = r.orProfile(raw.SelfDischarge, guessed, blank{
		table: "pack", name: "self_discharge", kind: quantity.Fraction, Range: quantity.Exactly(math.Min(month, 1)),
		why: "Not given; what such packs lose in a month.", source: firstSource(p.Profile.Keeping.Source),
	})
}

// orProfile returns the value when it was given and otherwise what follows from
// the profile, marked as assumed when the profile itself is a guess.
func (r *resolver) orProfile(v Value, guessed bool, b blank) Figure {
	if v.Given || guessed {
		return r.or(v, b)
	}
	return r.derived(b)
}

// firstSource returns the first of several source IDs parted by commas.
func firstSource(ids string) string {
	id, _, _ := strings.Cut(ids, ",")
	return strings.TrimSpace(id)
}
