package charge

import (
	"fmt"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/answer"
)

// Limits of the match that are not the chemistry's.
const (
	// farTooMuch is the current, over the greatest allowed, from which a
	// mismatch counts as dangerous whatever the chemistry (source
	// "common-charging").
	farTooMuch = 3.0
	// tooSlowC is the current over capacity below which a lead-acid charger
	// takes more than a day and a half: the least that makers' hours reach
	// down to (source "common-charging").
	tooSlowC = 0.05
)

// match collects the judgement of one charger on one pack.
type match struct {
	p    Plugged
	prof chemistry.Profile
	gate Gate
	v    Verdict
}

// Match judges whether the charger may be used on the pack as it is plugged
// in. Everything that speaks against it is found, not only the first thing;
// what is unknown counts against it too and makes the answer at best
// [Unproven]. A pack of nil gives Refused.
func Match(p Plugged) Verdict {
	if p.Pack == nil {
		return Verdict{Fit: Refused}
	}
	if p.NotSupplied() != "" {
		p.Charger.SuppliedWithPack = false
	}
	prof := p.Pack.Spec().Profile
	m := &match{p: p, prof: prof, gate: GateAt(prof, p.CellC), v: Verdict{Fit: Matches}}
	m.v.WantedVPerCell = m.gate.WantedVPerCell
	m.v.MostVPerCell = m.gate.MostVPerCell
	m.v.MostA = prof.Charge.MaxC * p.Pack.RatedAh() * m.gate.CurrentShare
	m.kind()
	m.place()
	m.output()
	m.endVolts()
	m.current()
	m.ending()
	m.state()
	answer.Sort(m.v.Findings)
	return m.v
}

// NotSupplied says why the charger cannot have come with the pack although
// SuppliedWithPack says so: its maker's word then counts for nothing, and
// [Match] judges it like any other. Empty when it can, or when nobody says so.
func (p Plugged) NotSupplied() string {
	c := &p.Charger
	if p.Pack == nil || !c.SuppliedWithPack {
		return ""
	}
	spec := p.Pack.Spec()
	limits, n := spec.Profile.Charge, float64(spec.CellsInSeries)
	switch {
	case c.PrintedV > 0 && (c.PrintedV < p.Pack.EmptyV() || c.PrintedV > 1.05*limits.CellMaxV*n):
		return fmt.Sprintf("A charger of %.4g V did not come with this pack, which is charged to %.4g V: it is judged like any other.", c.PrintedV, limits.CellV*n)
	case p.reversed():
		return "A charger whose plug is reversed did not come with this pack: it is judged like any other."
	}
	return ""
}

// reversed reports whether plug and jack are known to be of opposite polarity.
func (p *Plugged) reversed() bool {
	return p.Charger.Polarity != PolarityUnknown && p.Jack != PolarityUnknown && p.Charger.Polarity != p.Jack
}

// say records a finding and what it makes of the fit.
func (m *match) say(fit Fit, f answer.Finding) {
	m.v.Fit = min(m.v.Fit, fit)
	m.v.Findings = append(m.v.Findings, f)
}

// lithium reports whether a mistake on this pack can set it on fire.
func (m *match) lithium() bool { return m.prof.Family == chemistry.Lithium }

// wants returns the purpose that a charger for this pack must have.
func wants(p chemistry.Profile) Purpose {
	switch p.Family {
	case chemistry.LeadAcid:
		return ForLeadAcid
	case chemistry.Nickel:
		return ForNickel
	case chemistry.Lithium:
		if p.Charge.CellMaxV < 3.9 {
			return ForLithiumIronPhosphate
		}
		return ForLithiumIon
	}
	return PurposeUnknown
}

// kind judges what the charger is made for.
func (m *match) kind() {
	c := m.p.Charger
	want := wants(m.prof)
	f := answer.Finding{Source: m.prof.Charge.Source}
	switch {
	case c.MadeFor == PowerSupply:
		m.powerSupply("A power supply is not a charger.")
		return
	case c.MadeFor == PurposeUnknown && looksLikeLaptop(c.PrintedV):
		m.powerSupply(fmt.Sprintf("%g V is a laptop supply's voltage: this is most likely no charger.", c.PrintedV))
		return
	case c.MadeFor == PurposeUnknown && c.SuppliedWithPack:
	case want == PurposeUnknown || c.MadeFor == PurposeUnknown:
		f.Code, f.Level = "charger-purpose-unknown", answer.FixFirst
		f.Title = "The charger does not say what kind of battery it is made for."
		f.Advice = "Do not go by volts alone: find the charger's maker and type, or use the charger that came with the pack."
		m.say(Unproven, f)
	case c.MadeFor != want:
		f.Code, f.Level = "charger-wrong-chemistry", answer.Danger
		f.Title = fmt.Sprintf("This charger is made for %s, the pack is %s.", c.MadeFor, m.prof.Title)
		f.Advice = "Do not connect them. Use a charger made for this kind of pack and this voltage."
		m.say(Refused, f)
	}
	if m.p.ToolPack && !c.SuppliedWithPack && c.MadeFor == want {
		m.say(Unproven, answer.Finding{
			Code: "tool-pack-foreign-charger", Level: answer.FixFirst, Source: "tool-pack-rule",
			Title:  "A tool pack is charged on the charger that its maker sells for it.",
			Advice: "Take the pack off the vehicle and charge it on its own charger, which reads the pack's temperature and cells.",
		})
	}
}

// powerSupply refuses anything that was not made to charge.
func (m *match) powerSupply(title string) {
	m.say(Refused, answer.Finding{
		Code: "charger-is-power-supply", Level: answer.Danger, Source: "laptop-volts",
		Title:  title,
		Advice: "It neither limits the charge nor ends it. Do not connect it to a pack, not even for a short while.",
	})
}

// place judges where the charger is plugged in and what hangs on it.
func (m *match) place() {
	if m.p.Port == PortVehicle && (m.lithium() || m.p.ToolPack) {
		m.say(Refused, answer.Finding{
			Code: "charge-through-vehicle-jack", Level: answer.Danger, Source: "jack-practice",
			Title:  "A tool or lithium pack must never be charged through the vehicle's jack.",
			Advice: "The jack leads past the pack's protection and was made for the old lead-acid charger. Take the pack out and close the jack off.",
		})
	} else if m.p.Port == PortVehicle {
		m.say(WithCare, answer.Finding{
			Code: "charge-in-vehicle", Level: answer.Watch, Source: "charging-in-toy",
			Title:  "Charging in the vehicle is only right with the charger and battery it was built for.",
			Advice: "Make sure that it cannot be driven while it charges, and that the replacement has the same kind and voltage.",
		})
	}
	f := answer.Finding{Source: "series-string-rule"}
	switch {
	case m.p.Joined == Single:
		return
	case m.lithium() || m.p.ToolPack:
		f.Level = answer.Danger
		f.Code, f.Title = "charge-packs-in-series", "Two packs in series must not be charged as one."
		f.Advice = "The fuller pack is overcharged before the other is full. Take them apart and charge each on its own charger."
		if m.p.Joined == InParallel {
			f.Code, f.Title = "charge-packs-in-parallel", "Two packs in parallel must not be charged as one."
			f.Advice = "The current splits as it likes and one pack drives the other. Take them apart and charge each on its own charger."
		}
		m.say(Refused, f)
	default:
		f.Level = answer.FixFirst
		f.Code, f.Title = "charge-packs-in-series", "Separate batteries in series drift apart when charged as one."
		f.Advice = "Charge each battery by itself, unless both are the same type and age and the charger is made for the pair."
		if m.p.Joined == InParallel {
			f.Code, f.Title = "charge-packs-in-parallel", "Separate batteries in parallel share the charge unevenly."
			f.Advice = "Charge each battery by itself before joining them."
		}
		m.say(Unproven, f)
	}
}

// output judges the kind of current and the polarity.
func (m *match) output() {
	c := m.p.Charger
	switch c.Output {
	case AC:
		m.say(Refused, answer.Finding{
			Code: "charger-gives-ac", Level: answer.Danger, Source: "common-charging",
			Title:  "This adaptor gives alternating current, which cannot charge a battery.",
			Advice: "Do not connect it. A charger's output is marked DC.",
		})
	case OutputUnknown:
		if c.SuppliedWithPack {
			break
		}
		m.say(Unproven, answer.Finding{
			Code: "charger-output-unknown", Level: answer.FixFirst, Source: "common-charging",
			Title:  "The label does not say whether the output is AC or DC.",
			Advice: "Read the output line of the label again, or measure it with a meter set to DC volts.",
		})
	}
	if c.SuppliedWithPack {
		return
	}
	switch {
	case m.p.reversed():
		m.say(Refused, answer.Finding{
			Code: "charger-polarity-reversed", Level: answer.Danger, Source: "common-charging",
			Title:  "The plug's polarity is the reverse of what the jack wants.",
			Advice: "Do not connect it: the battery would be connected backwards.",
		})
	case c.Polarity == PolarityUnknown || m.p.Jack == PolarityUnknown:
		m.say(WithCare, answer.Finding{
			Code: "charger-polarity-unchecked", Level: answer.Watch, Source: "common-charging",
			Title:  "The polarity of plug and jack is not known.",
			Advice: "Check plus and minus with a meter before the plug goes in for the first time.",
		})
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

// current judges the charging current.
func (m *match) current() {
	a, most := m.p.Charger.CurrentA, m.v.MostA
	lim := m.prof.Charge
	f := answer.Finding{Unit: "A", Found: a, Limit: most, Source: lim.Source}
	switch {
	case most <= 0: // the gate is closed and says so
	case a <= 0:
		f.Code, f.Level = "charger-current-unknown", answer.Watch
		if m.lithium() {
			f.Level = answer.FixFirst
		}
		f.Title = "The charger's current is not known."
		f.Advice = "Read the amps or milliamps on its label; without them neither heat nor time can be told."
		m.say(Unproven, f)
	case a > most:
		f.Code, f.Level = "charger-current-too-high", answer.FixFirst
		if m.lithium() || a > farTooMuch*most {
			f.Level = answer.Danger
		}
		f.Title = "The charger pushes more current than the pack may take."
		f.Advice = "Use a charger with at most the amps given as the limit."
		m.say(Refused, f)
	case m.prof.Family == chemistry.LeadAcid && a < tooSlowC*m.p.Pack.RatedAh():
		f.Code, f.Level, f.Limit = "charger-slow", answer.Watch, tooSlowC*m.p.Pack.RatedAh()
		f.Source = "common-charging"
		f.Title = "The charger is small for this battery: a charge takes more than a day."
		f.Advice = "It does no harm if it stops by itself; do not cut the charge short, since a part charge wears the battery."
		m.say(WithCare, f)
	}
}

// state judges the pack itself: its temperature and its rested voltage.
func (m *match) state() {
	w := WaitFor(m.p.Pack, m.p.CellC, m.p.AmbientC)
	for _, f := range w.Findings {
		fit := WithCare
		if f.Level >= answer.FixFirst {
			fit = Refused
		}
		m.say(fit, f)
	}
	for _, f := range restFindings(m.prof, m.p.Pack.Spec().CellsInSeries, m.p.RestV) {
		fit := WithCare
		if f.Level == answer.Danger {
			fit = Refused
		}
		m.say(fit, f)
	}
}

// restFindings judges a rested voltage before a charge; none when restV is 0.
func restFindings(p chemistry.Profile, cells int, restV float64) []answer.Finding {
	if restV <= 0 || cells <= 0 {
		return nil
	}
	per := restV / float64(cells)
	f := answer.Finding{Unit: "V", Found: per, Source: p.LadderSource}
	switch {
	case p.NeverRechargeV > 0 && per < p.NeverRechargeV:
		f.Code, f.Level, f.Limit = "pack-never-recharge", answer.Danger, p.NeverRechargeV
		f.Title = "The cells were drained so far that the pack must never be charged again."
		f.Advice = "Do not try to bring it back. Keep it away from anything that burns and hand it in where batteries are collected."
	case p.Family == chemistry.Lithium && p.Charge.PrechargeV > 0 && per < p.Charge.PrechargeV:
		f.Code, f.Level, f.Limit, f.Source = "pack-too-low-to-charge", answer.Danger, p.Charge.PrechargeV, "lithium-precharge"
		f.Title = "The cells are too low for an ordinary charge."
		f.Advice = "Only the pack's own charger may decide on it; if that refuses, the pack is finished. Never help it along with another charger."
	case p.Family == chemistry.LeadAcid && per < p.EmptyV:
		f.Code, f.Level, f.Limit = "battery-deeply-flat", answer.Watch, p.EmptyV
		f.Title = "The battery rests below the volts of an empty one: it has stood flat or a cell is bad."
		f.Advice = "Charge it now, at its right charger, and stay near. If it grows hot, or does not hold its volts afterwards, replace it."
	default:
		return nil
	}
	return []answer.Finding{f}
}
