package charge

import (
	"fmt"
	"math"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on what a charger is made for.
const (
	CodePurposeUnknown = "charger-purpose-unknown"   // it does not say what it charges
	CodeWrongChemistry = "charger-wrong-chemistry"   // made for other cells
	CodeForeignCharger = "tool-pack-foreign-charger" // a tool pack on a charger of another maker
	CodePowerSupply    = "charger-is-power-supply"   // no charger at all
)

// rounding is the error of a few multiplications: a printed figure that meets
// its limit exactly is not past it.
const rounding = 1e-9

// match collects the judgement of one charger on one pack.
type match struct {
	p    Plugged
	prof chemistry.Profile
	gate Gate
	ah   float64 // that limits go by
	told float64 // greatest current of the pack's own sheet, see [Plugged.sheetMostA]; 0 = of no use
	warm float64 // greatest current where it is warm enough
	v    Verdict
}

// Match judges whether the charger may be used on the pack as it is plugged
// in. Everything that speaks against it is found, not only the first thing;
// what is unknown counts against it too and makes the answer at best
// [Unproven]; a figure that is no number is unknown. A pack of nil gives Refused.
func Match(p Plugged) Verdict {
	if p.Pack == nil {
		return Verdict{Fit: Refused}
	}
	c := &p.Charger
	for _, v := range []*float64{&c.PrintedV, &c.EndLeastV, &c.EndMostV, &c.CurrentA, &c.TimerH, &c.FloatV, &p.LabelAh, &p.SheetA} {
		if math.IsNaN(*v) || math.IsInf(*v, 0) {
			*v = 0
		}
	}
	p = p.Settled()
	prof := p.Pack.Spec().Profile
	m := &match{p: p, prof: prof, gate: GateAt(prof, p.CellC), ah: p.sheetAh(), v: Verdict{Fit: Matches}}
	m.v.WantedVPerCell = m.gate.WantedVPerCell
	m.v.MostVPerCell = m.gate.MostVPerCell
	m.told, m.warm = p.sheetMostA(), prof.Charge.MaxC*m.ah
	if m.told > 0 {
		m.warm = m.told
	}
	m.v.MostA = m.warm * m.gate.CurrentShare
	m.kind()
	m.place()
	m.output()
	m.endVolts()
	m.current()
	m.ending()
	m.state()
	if c.Output == AC { // of its volts, amps and end nothing counts
		m.v.Findings = slices.DeleteFunc(m.v.Findings, func(f answer.Finding) bool {
			return f.Change == answer.FitCharger && f.Code != CodeGivesAC
		})
	}
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

// Settled is the same with what the charger's coming with the pack tells of it: a tool pack's
// own is made for its cells, whether its label says so or not, and prints the pack's volts
// where a plain adaptor prints its own. One that cannot have come with it is like any other.
func (p Plugged) Settled() Plugged {
	c := &p.Charger
	switch {
	case p.NotSupplied() != "":
		c.SuppliedWithPack = false
	case p.Pack != nil && c.SuppliedWithPack && p.ToolPack && c.MadeFor == PurposeUnknown:
		c.MadeFor = PurposeFor(p.Pack.Spec().Profile)
		read := Label{PrintedV: c.PrintedV, MadeFor: c.MadeFor}.Charger()
		c.EndLeastV, c.EndMostV, c.Regulated, c.EndSource, c.WhyEnd = read.EndLeastV, read.EndMostV, read.Regulated, read.EndSource, read.WhyEnd
	}
	return p
}

// reversed reports whether plug and jack are known to be of opposite polarity.
func (p *Plugged) reversed() bool {
	return p.Charger.Polarity != PolarityUnknown && p.Jack != PolarityUnknown && p.Charger.Polarity != p.Jack
}

// say records a finding and what it makes of the fit; it concerns the charger
// unless it says otherwise.
func (m *match) say(fit Fit, f answer.Finding) {
	f.Topic = answer.TopicCharge
	if f.Item == "" {
		f.Item = answer.Charger
	}
	m.v.Fit = min(m.v.Fit, fit)
	m.v.Findings = append(m.v.Findings, f)
}

// lithium reports whether a mistake on this pack can set it on fire.
func (m *match) lithium() bool { return m.prof.Family == chemistry.Lithium }

// unlessLithium is how bad something unknown is that may set lithium on fire
// and at worst wears out other cells. What nobody told is no danger by itself.
func (m *match) unlessLithium() (answer.Level, answer.Harm) {
	if m.lithium() {
		return answer.FixFirst, answer.House
	}
	return answer.Watch, answer.Wear
}

// unlessSupplied is how bad a fault is that the vehicle's maker has built in
// and given hours for: to be fixed when the charger comes from elsewhere, to be
// watched when it came with the battery.
func (m *match) unlessSupplied() (answer.Level, answer.Harm) {
	if m.p.Charger.SuppliedWithPack {
		return answer.Watch, answer.Wear
	}
	return answer.FixFirst, answer.Part
}

// PurposeFor returns the purpose that a charger for cells of a profile must have, [PurposeUnknown] for cells of no known family.
func PurposeFor(p chemistry.Profile) Purpose {
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
	want := PurposeFor(m.prof)
	f := answer.Finding{
		Source: m.prof.Charge.Source, Change: answer.FitCharger,
		Decides: []string{answer.KeyChargerLabel, answer.KeyChargerMadeFor},
	}
	switch {
	case c.MadeFor == PowerSupply:
		m.powerSupply("A power supply is not a charger.")
		return
	case c.MadeFor == PurposeUnknown && looksLikeLaptop(c.PrintedV):
		m.powerSupply(fmt.Sprintf("%g V is a laptop supply's voltage: this is most likely no charger.", c.PrintedV))
		return
	case c.MadeFor == PurposeUnknown && c.SuppliedWithPack:
	case want == PurposeUnknown || c.MadeFor == PurposeUnknown:
		f.Code, f.Level, f.Harm, f.Reads = CodePurposeUnknown, answer.FixFirst, answer.House, answer.AsUnknown
		f.Title = "The charger does not say for what kind of battery it is."
		f.Advice = "Do not go by volts alone: find the charger's maker and type, or use the charger that came with the pack."
		m.say(Unproven, f)
	case c.MadeFor != want:
		f.Code, f.Level, f.Harm, f.Gravity = CodeWrongChemistry, answer.Danger, answer.House, 2
		if want == ForLeadAcid && c.MadeFor != ForNickel { // a lithium charger holds its volts and stops: it only does not suit
			f.Level, f.Harm = answer.FixFirst, answer.Part
		}
		f.Title = fmt.Sprintf("Wrong charger: it is made for %s, the pack is %s.", c.MadeFor, m.prof.Title)
		f.Advice = "Do not connect them; use a charger made for this kind of pack and this voltage."
		f.Decides = append(f.Decides, answer.KeyPackChemistry)
		m.say(Refused, f)
	}
	if m.p.ToolPack && !c.SuppliedWithPack && c.MadeFor == want {
		m.say(Unproven, answer.Finding{
			Code: CodeForeignCharger, Level: answer.FixFirst, Harm: answer.House, Gravity: 2, Source: "tool-pack-rule",
			Title:  "A tool pack belongs on its own maker's charger.",
			Advice: "Take the pack off and charge it on its own charger; that one reads the pack's temperature and cells.",
			Change: answer.FitCharger, Decides: []string{answer.KeyPackChemistry, answer.KeyPackLabel},
		})
	}
}

// powerSupply refuses anything that was not made to charge.
func (m *match) powerSupply(title string) {
	m.say(Refused, answer.Finding{
		Code: CodePowerSupply, Level: answer.Danger, Harm: answer.House, Gravity: 2, Source: "laptop-volts",
		Title:  title,
		Advice: "It neither limits the charge nor ends it. Do not connect it to a pack, not even for a short while.",
		Change: answer.FitCharger, Decides: []string{answer.KeyChargerLabel, answer.KeyChargerMadeFor, answer.KeyChargerVoltage},
	})
}
