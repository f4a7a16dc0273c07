package main

import (
	"fmt"
	"io"
	"maps"
	"math"
	"slices"

	"example.org/packcheck/battery"
	"example.org/packcheck/internal/cellfit"
)

const currentsHead = `| pulses above half charge | current, A | pulses | mOhm at the end of the pulse: measured | model |
|---|---|---|---|---|`

// atCurrent gathers the resistances that pulses of one current show, ohms.
type atCurrent struct{ measured, model []float64 }

// byCurrent sorts the pulses taken at half charge or more by their current, in
// tenths of an ampere: below, the higher currents are missing from the data,
// and medians would compare different charges.
func (d dataset) byCurrent(m *battery.Model, pulses []*cellfit.Log) map[float64]atCurrent {
	out := map[float64]atCurrent{}
	for _, pulse := range pulses {
		last := pulse.Rows() - 1
		amps := pulse.Amps[last]
		z := cellfit.Replay(m, pulse, cellfit.ReplayOptions{AmbientC: d.ambientC}).StartCharge
		if last < 1 || amps <= 0 || z < 0.5 {
			continue
		}
		s := m.StateAt(z, d.firstC(pulse))
		restV := m.TerminalV(&s, 0)
		follow(m, &s, pulse, func(int) {})
		key := math.Round(10*amps) / 10
		at := out[key]
		at.measured = append(at.measured, (pulse.Volts[0]-pulse.Volts[last])/amps)
		at.model = append(at.model, (restV-m.TerminalV(&s, amps))/amps)
		out[key] = at
	}
	return out
}

// currents prints the resistance by current, for tables of pulses that have
// several.
func (d dataset) currents(c curves, out io.Writer) error {
	p, err := d.profile()
	if err != nil {
		return err
	}
	m, err := d.model(p, "", nil)
	if err != nil {
		return err
	}
	for _, name := range sortedKeys(c.pulses) {
		by := d.byCurrent(m, c.pulses[name])
		if len(by) < 2 {
			continue
		}
		for _, amps := range slices.Sorted(maps.Keys(by)) {
			fmt.Fprintf(out, "| %s | %.1f | %d | %.1f | %.1f |\n", name, amps, len(by[amps].measured), 1000*median(by[amps].measured), 1000*median(by[amps].model))
		}
	}
	return nil
}

// median of at least one value.
func median(x []float64) float64 {
	x = slices.Sorted(slices.Values(x))
	n := len(x)
	return (x[(n-1)/2] + x[n/2]) / 2
}
