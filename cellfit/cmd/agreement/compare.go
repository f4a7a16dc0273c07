package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/cellfit"
)

const tableHead = `| curve | used | voltage rms, % of nominal | worst, V | Ah to cutoff: measured | model | off, % | highest degC: measured | model |
|---|---|---|---|---|---|---|---|---|`

const crossHead = `| curve left out | voltage rms, % of nominal | Ah to cutoff: measured | model | off, % |
|---|---|---|---|---|`

// replay runs a model along one of the dataset's curves.
func (d dataset) replay(m *battery.Model, name string, log *cellfit.Log) cellfit.Agreement {
	o := cellfit.ReplayOptions{AmbientC: d.ambientC}
	if steady(log) {
		o.CutoffV = d.cutoffV
	}
	if slices.Contains(d.full, name) {
		o.StartCharge = 1
	}
	// What follows a voltage below the cutoff is no use of a battery.
	return cellfit.Replay(m, log.Until(0.98*d.cutoffV), o)
}

// steady reports whether a log is one discharge at one current, so that
// "charge to the cutoff" means something.
func steady(log *cellfit.Log) bool {
	amps := loaded(log)
	n := len(amps)
	return n >= 10 && amps[n/20] > 0.9*amps[n-1-n/20] && log.ChargeAh[log.Rows()-1] > 0
}

// loaded returns the currents of the rows under load, rising.
func loaded(log *cellfit.Log) []float64 {
	most := slices.Max(log.Amps)
	out := make([]float64, 0, log.Rows())
	for _, a := range log.Amps {
		if a > 0.02*most && a > 0.05 {
			out = append(out, a)
		}
	}
	slices.Sort(out)
	return out
}

// compare prints one row per curve.
func (d dataset) compare(c curves, out io.Writer) error {
	p, err := d.profile()
	if err != nil {
		return err
	}
	for _, name := range c.names {
		m, err := d.model(p, name, c.logs[name])
		if err != nil {
			return err
		}
		a := d.replay(m, name, c.logs[name])
		fmt.Fprintf(out, "| %s/%s | %s | %.2f | %.3f | %s | %s | %s | %s | %s |\n", d.cell, name, d.use(name, d.fit),
			100*a.RMSV/m.NominalV(), a.WorstV, figure("%.3f", a.LogAh), figure("%.3f", a.ModelAh), figure("%+.1f", 100*(a.ModelAh/a.LogAh-1)),
			figure("%.1f", a.LogMaxC), figure("%.1f", a.ModelMaxC))
	}
	m, err := d.model(p, "", nil)
	if err != nil {
		return err
	}
	for _, name := range sortedKeys(c.pulses) {
		var sum float64
		worst := 0.0
		for _, pulse := range c.pulses[name] {
			a := cellfit.Replay(m, pulse, cellfit.ReplayOptions{AmbientC: d.ambientC})
			sum += a.RMSV * a.RMSV
			worst = math.Max(worst, a.WorstV)
		}
		rms := math.Sqrt(sum / float64(len(c.pulses[name])))
		fmt.Fprintf(out, "| %s/%s (%d pulses) | %s | %.2f | %.3f | | | | | |\n", d.cell, name, len(c.pulses[name]), d.use(name, d.pulses), 100*rms/m.NominalV(), worst)
	}
	return nil
}

// use says whether a curve was fitted to.
func (d dataset) use(name string, fitted []string) string {
	if slices.Contains(fitted, name) {
		return "fitted"
	}
	return "kept aside"
}

// crossCheck leaves each fitted curve out in turn.
func (d dataset) crossCheck(c curves, out io.Writer) error {
	for _, name := range d.fit {
		log, ok := c.logs[name]
		if !ok {
			continue
		}
		fit, err := d.fitCell(c, name)
		if err != nil {
			return err
		}
		m, err := d.model(fit.Profile, name, log)
		if err != nil {
			return err
		}
		a := d.replay(m, name, log)
		fmt.Fprintf(out, "| %s/%s | %.2f | %s | %s | %s |\n", d.cell, name, 100*a.RMSV/m.NominalV(),
			figure("%.3f", a.LogAh), figure("%.3f", a.ModelAh), figure("%+.1f", 100*(a.ModelAh/a.LogAh-1)))
	}
	return nil
}

// figure prints a number, nothing where there is none.
func figure(format string, x float64) string {
	if math.IsNaN(x) {
		return ""
	}
	return strings.Replace(fmt.Sprintf(format, x), "-0.0", "+0.0", 1)
}

func sortedKeys(m map[string][]*cellfit.Log) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
