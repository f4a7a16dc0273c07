package setup

import (
	"fmt"

	"example.org/packcheck/internal/quantity"
)

// meterRoom is how far above the highest volts of its cells a pack may seem to
// stand by an ordinary meter.
const meterRoom = 1.02

// measured turns volts read on one of two packs in series into those of both,
// so that everything behind it knows one meaning. Which of the two was read
// follows from the volts: one pack cannot stand above what its cells may be
// charged to, and two that stand together below that are drained to ruin.
func (p *Parts) measured() error {
	pack := &p.Pack
	if p.Original != nil { // the readings are its battery's
		pack = &p.Original.Pack
	}
	if pack.Joined != "series" {
		return nil
	}
	s, asRead := *p.Setup, &p.Setup.Measured
	m := &s.Measured
	p.Setup = &s
	cells := float64(pack.CellsInSeries)
	for _, v := range []*Value{&m.RestVoltage, &m.LoadedVoltage} {
		if !v.Given || v.Likely <= 0 {
			continue
		}
		volts := func(x float64) string { return quantity.Format(quantity.Voltage, x, quantity.Metric) }
		text := fmt.Sprintf("%s %q is taken as read over both packs in series, %s each: one alone cannot have so much.",
			v.Key, v.Text, volts(v.Likely/2))
		if v.Likely <= meterRoom*pack.Profile.Charge.CellMaxV*cells {
			text = fmt.Sprintf("%s %q is taken as read on one of the two packs. If it was read over both in series, each stands at only %s",
				v.Key, v.Text, volts(v.Likely/2))
			if v == &m.RestVoltage && v.Likely/2 < pack.Profile.HarmV*cells {
				text += ", below what harms it: then do not charge them"
			}
			text += "."
			v.Text = fmt.Sprintf("%s each, %s both", v.Text, volts(2*v.Likely))
			v.Range = v.Range.Scale(2)
		}
		p.Notes = append(p.Notes, text)
	}
	if m.RestVoltage.Given && m.LoadedVoltage.Given && m.LoadedVoltage.Low > m.RestVoltage.High {
		return Faults{loadedAboveRest(s.Name, asRead)}
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
