package setup

import (
	"fmt"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
)

// chargeApart is how far a stated charge may lie outside what the resting volts
// tell, before one of the two must be wrong. Own choice.
const chargeApart = 0.25

// meterRoom is how far above the highest volts of its cells a pack may seem to
// stand by an ordinary meter.
const meterRoom = 1.02

// OnOriginal follows the name of what was measured on the original battery.
const OnOriginal = " (original battery)"

// measured hands what was measured to the battery that it was measured on:
// [measured] is of the original battery where the setup describes one, unless
// [original.measured] is there as well. The volts at rest of two joined packs that were
// both read are always of those.
func (p *Parts) measured() (faults Faults) {
	s := p.Setup
	owner := p
	if o := p.Original; o != nil {
		if m := s.Original.Measured; m.Given {
			o.Measured = &m
		} else if s.Original.Pack.Given {
			owner = o
		}
	}
	if m := s.Measured; m.Given {
		if owner != p && m.SecondRest.Given && m.RestVoltage.Given && p.Pack.Joined != "" {
			p.Measured = &Measured{Place: m.Place, RestVoltage: m.RestVoltage, HoursRested: m.HoursRested, SecondRest: m.SecondRest}
			m.RestVoltage, m.HoursRested = Value{}, Value{}
		}
		if owner != p {
			m.SecondRest = Value{} // is always of the pack that is asked about
		}
		if m != (Measured{Place: m.Place}) {
			owner.Measured = &m
		}
	}
	for _, q := range []*Parts{p, p.Original} {
		if q != nil && q.Measured != nil && !q.Pack.unsettled {
			faults = slices.Concat(faults, q.ofBoth(p), q.readable(p))
		}
	}
	return append(faults, p.charged()...)
}

// restRoom is how far above its full, rested voltage a battery may read: a
// lead-acid block stands a seventh above it on its charger. Own choice.
const restRoom = 1.25

// readable refuses volts that the battery cannot have, and says which battery that is.
func (p *Parts) readable(top *Parts) (faults Faults) {
	whose := "this battery"
	if p != top {
		whose = "the original battery"
	}
	most := restRoom * p.Pack.volts(func(c *chemistry.Profile) float64 { return c.FullV })
	for _, v := range []Value{p.Measured.RestVoltage, p.Measured.LoadedVoltage} {
		if v.Given && v.High > most {
			want := fmt.Sprintf("at most %s, which is more than %s reads even on its charger",
				quantity.Format(quantity.Voltage, most, quantity.Metric), whose)
			if p != top && !strings.HasPrefix(v.Key, originalPrefix) {
				want += ": beside [original.pack], [measured] is of that one"
			}
			faults = append(faults, Fault{File: p.Setup.Name, Line: v.Line, Key: v.Key, Read: v.Text, Want: want})
		}
	}
	return faults
}

// charged reads the charge to start from off the resting voltage of the
// battery that is asked about, of two joined packs off both that were read; a stated
// charge that is far from it is a fault. An original battery's volts tell nothing of it.
func (p *Parts) charged() Faults {
	p.Pack.ToldCharge = p.Pack.Charge.Range
	read := p.Setup.Measured.SecondRest
	if m := p.Measured; m != nil && m.RestVoltage.Given {
		read = m.RestVoltage
	}
	if !read.Given || p.Pack.unsettled || p.Pack.Joined == "" && read.Key == answer.KeySecondRestVoltage {
		return nil
	}
	first, _, both := p.ChargesAtRest(Likely)
	if said := p.Setup.Pack.Charge; said.Given { // of two joined packs it is the first one's
		if first.High+chargeApart < said.Low || first.Low-chargeApart > said.High {
			return Faults{{
				File: p.Setup.Name, Line: said.Line, Key: said.Key, Read: said.Text,
				Want: fmt.Sprintf("what %s (%s) tells, %s to %s, or another reading: they cannot both be true",
					read.Key, read.Text, quantity.Format(quantity.Fraction, first.Low, quantity.Metric), quantity.Format(quantity.Fraction, first.High, quantity.Metric)),
			}}
		}
		if !both {
			return nil
		}
	}
	low, likely, high := p.ChargeAtRest(Likely)
	f := &p.Pack.Charge
	f.Range, f.Law, f.Why = quantity.Spread(low, likely, high), Limits, "Follows from the measured volts at rest."
	for i := range p.Assumed {
		if p.Assumed[i].Key == f.Key {
			p.Assumed[i].Why, p.Assumed[i].Value = f.Why, f.String()
		}
	}
	return nil
}

// ChargeAtRest returns the state of charge that the measured resting voltage
// tells, which must be there: least, likeliest and most. Where both of two joined packs
// were read, it is that of the two as one: in series the emptier ends the ride, in
// parallel what both hold is shared.
func (p *Parts) ChargeAtRest(pick Pick) (low, likely, high float64) {
	first, second, both := p.ChargesAtRest(pick)
	if !both {
		return first.Low, first.Likely, first.High
	}
	a := p.OnePackSpec(pick)
	b, unlike := p.SecondPackSpec(pick)
	if !unlike {
		b = a
	}
	fullA, fullB := a.CapacityAh*a.Health, b.CapacityAh*b.Health
	asOne := func(a, b float64) float64 {
		if p.Pack.Joined == "series" {
			return min(a*fullA, b*fullB) / min(fullA, fullB)
		}
		return (a*fullA + b*fullB) / (fullA + fullB)
	}
	return asOne(first.Low, second.Low), asOne(first.Likely, second.Likely), asOne(first.High, second.High)
}

// SecondRead reports whether the volts at rest of the second of two joined packs were
// read.
func (p *Parts) SecondRead() bool {
	m := p.Measured
	return p.Pack.Joined != "" && (m == nil || m.SecondRest.Given) && p.Setup != nil && p.Setup.Measured.SecondRest.Given
}

// ChargesAtRest returns what the volts at rest tell of each of two joined packs. Where
// only the other one was read, the first is as charged as was told or assumed; where only
// the first was, or there is one pack, both is false.
func (p *Parts) ChargesAtRest(pick Pick) (first, second answer.Range, both bool) {
	m, tempC := p.Measured, p.PackC(pick)
	if p.SecondRead() {
		other := p.Setup.Measured
		spec, unlike := p.SecondPackSpec(pick)
		if !unlike {
			spec = p.OnePackSpec(pick)
		}
		second, both = chargeOf(spec, other.SecondRest.Range, other.HoursRested.Likely, tempC), true
	}
	switch {
	case m == nil || !m.RestVoltage.Given:
		return p.Pack.ToldCharge, second, both
	case both:
		return chargeOf(p.OnePackSpec(pick), p.FirstRest(), m.HoursRested.Likely, tempC), second, both
	}
	return chargeOf(p.PackSpec(pick), m.RestVoltage.Range, m.HoursRested.Likely, tempC), second, both
}

// chargeOf is what volts at rest tell of a battery.
func chargeOf(spec battery.Spec, volts answer.Range, restedS, tempC float64) answer.Range {
	cells, hours := float64(spec.CellsInSeries), restedS/3600
	low, likely, high := battery.ChargeFromRest(spec.Profile, volts.Likely/cells, hours, tempC)
	if !volts.IsExact() {
		low, _, _ = battery.ChargeFromRest(spec.Profile, volts.Low/cells, hours, tempC)
		_, _, high = battery.ChargeFromRest(spec.Profile, volts.High/cells, hours, tempC)
	}
	return quantity.Spread(low, likely, high)
}

// readings is what was measured; nothing where nobody did.
func (p *Parts) readings() *Measured {
	if p.Measured == nil {
		return &Measured{}
	}
	return p.Measured
}

// FirstRest is the volts at rest that were read of the battery, of two joined packs those of the
// first; zero where none were.
func (p *Parts) FirstRest() answer.Range {
	volts := p.readings().RestVoltage
	if p.Pack.Joined == "series" {
		return volts.Scale(0.5)
	}
	return volts.Range
}

// LeastRestV is the volts at rest that were read of the battery, of two joined packs those of
// one; where both of one voltage were read, of the emptier. Zero where none were.
func (p *Parts) LeastRestV() float64 {
	m, volts := p.readings(), p.FirstRest().Likely
	if b := p.Pack.Second; p.Pack.Joined != "" && m.SecondRest.Given && (b == nil || b.CellsInSeries == p.Pack.CellsInSeries) {
		volts = min(volts, m.SecondRest.Likely)
	}
	return volts
}

// ofBoth turns volts read on one of two packs in series into those of both, so
// that everything behind it knows one meaning. Which of the two was read
// follows from the volts: one pack cannot stand above what its cells may be
// charged to, and two that stand together below that are drained to ruin.
func (p *Parts) ofBoth(top *Parts) Faults {
	pack := &p.Pack
	if pack.Joined != "series" {
		return nil
	}
	packs := "packs"
	if p != top {
		packs = "packs of the original battery"
	}
	asRead := *p.Measured
	m := p.Measured
	cells := float64(pack.CellsInSeries)
	for _, v := range []*Value{&m.RestVoltage, &m.LoadedVoltage} {
		if !v.Given || v.Likely <= 0 {
			continue
		}
		volts := func(x float64) string { return quantity.Format(quantity.Voltage, x, quantity.Metric) }
		text := fmt.Sprintf("%s %q is taken as read over both %s in series, %s each: one alone cannot have so much.",
			v.Key, v.Text, packs, volts(v.Likely/2))
		ofOne := v == &m.RestVoltage && m.SecondRest.Given // the other was read by itself
		if v.Likely <= meterRoom*pack.Profile.Charge.CellMaxV*cells {
			text = fmt.Sprintf("%s %q is taken as read on one of the two %s. If it was read over both in series, each stands at only %s",
				v.Key, v.Text, packs, volts(v.Likely/2))
			if v == &m.RestVoltage && v.Likely/2 < pack.Profile.HarmV*cells {
				text += ", below what harms it: then do not charge them"
			}
			text += "."
			if !ofOne {
				v.Text = fmt.Sprintf("%s each, %s both", v.Text, volts(2*v.Likely))
			}
			v.Range = v.Range.Scale(2)
		} else if ofOne {
			second := m.SecondRest.Range
			first := quantity.Spread(max(0, v.Low-second.High), max(0, v.Likely-second.Likely), max(0, v.High-second.Low))
			text = fmt.Sprintf("%s %q is taken as read over both %s in series, so that the first has %s: one alone cannot have so much.",
				v.Key, v.Text, packs, volts(first.Likely))
			v.Text, v.Range = volts(first.Likely), first.Scale(2)
		}
		top.Notes = append(top.Notes, text)
	}
	if m.RestVoltage.Given && m.LoadedVoltage.Given && m.LoadedVoltage.Low > m.RestVoltage.High {
		return Faults{loadedAboveRest(p.Setup.Name, &asRead)}
	}
	return nil
}

// loadedAboveRest is the fault of a load that seems to push the voltage up.
func loadedAboveRest(file string, m *Measured) Fault {
	return Fault{
		File: file, Line: m.LoadedVoltage.Line, Key: m.LoadedVoltage.Key, Read: m.LoadedVoltage.Text,
		Want: "at most " + m.RestVoltage.Key + ": a load pulls the voltage down",
	}
}

// joinedInSeries reports whether the battery that was measured is two packs.
func (s *Setup) joinedInSeries() bool {
	word := s.Pack.Joined.Text
	if s.Original != nil && s.Original.Pack.Given {
		word = s.Original.Pack.Joined.Text
	}
	return fold(word) == "series"
}

// MotorCaseC returns what was read of a motor's case after a drive, in degC, and
// the key that tells it: the hotter of a thermometer and of how long a hand stood it.
func (p *Parts) MotorCaseC() (caseC float64, key string) {
	m := p.Measured
	if m == nil {
		return 0, ""
	}
	if t := m.MotorTemperature; t.Given {
		caseC, key = t.Likely, t.Key
	}
	if t := p.TouchedC(); t.Given && (key == "" || t.Likely > caseC) {
		caseC, key = t.Likely, t.Key
	}
	return caseC, key
}

// TouchedC is what the seconds that a hand stood on a motor's case tell of it, in
// degC: the temperature from which on bare metal burns in that time.
func (p *Parts) TouchedC() Value {
	t := p.readings().MotorTouch
	if t.Given {
		t.Range = quantity.Spread(p.Tables.BurnsAfter(t.High).Likely, p.Tables.BurnsAfter(t.Likely).Likely, p.Tables.BurnsAfter(t.Low).Likely)
	}
	return t
}
