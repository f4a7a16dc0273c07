package packcheck

import (
	"fmt"

	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// restRoom is how far above its full, rested voltage a battery may read: a
// lead-acid block stands a seventh above it on its charger. Own choice.
const restRoom = 1.25

// leastRestV stands for a reading of nothing at all, which is a reading: it
// must not pass for one that was never taken.
const leastRestV = 1e-3

// readOn returns the setup whose battery the volts were read on: the old one,
// where the setup has an original.
func readOn(p *setup.Parts) *setup.Parts {
	if p.Original != nil {
		return p.Original
	}
	return p
}

// checkReadings refuses volts that the battery cannot have.
func checkReadings(p *setup.Parts) error {
	pack := &readOn(p).Pack
	most := restRoom * pack.Profile.FullV * float64(pack.CellsInSeries)
	if pack.Joined == "series" {
		most *= 2
	}
	var faults setup.Faults
	for _, v := range []setup.Value{p.Setup.Measured.RestVoltage, p.Setup.Measured.LoadedVoltage} {
		if v.Given && v.High > most {
			faults = append(faults, setup.Fault{
				File: p.Setup.Name, Line: v.Line, Key: v.Key, Read: v.Text,
				Want: fmt.Sprintf("at most %s, which is more than this battery reads even on its charger",
					quantity.Format(quantity.Voltage, most, quantity.Metric)),
			})
		}
	}
	if len(faults) > 0 {
		return faults
	}
	return nil
}

// restV is the resting voltage of the pack that is asked about, of two joined
// ones that of each; 0 when there is no such reading.
func restV(p *setup.Parts) float64 {
	m := p.Setup.Measured.RestVoltage
	if !m.Given || p.Original != nil {
		return 0
	}
	if p.Pack.Joined == "series" {
		return max(m.Likely/2, leastRestV)
	}
	return max(m.Likely, leastRestV)
}

// restFindings are what a resting voltage says against charging a pack at all,
// whatever the charger.
func restFindings(one *battery.Model, v *view) []answer.Finding {
	verdict := charge.Match(charge.Plugged{
		Pack: one, CellC: v.o.c.AmbientC, AmbientC: v.o.c.AmbientC, RestV: restV(v.parts),
	})
	var out []answer.Finding
	for _, f := range verdict.Findings {
		switch f.Code {
		case "pack-never-recharge", "pack-too-low-to-charge", "battery-deeply-flat":
			out = append(out, f)
		}
	}
	return out
}
