package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/battery"
	"example.org/packcheck/internal/cellfit"
	"example.org/packcheck/internal/pattern"
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

// rows runs the fitted cell along every curve.
func (d dataset) rows(c curves) ([]row, error) {
	p, err := d.profile()
	if err != nil {
		return nil, err
	}
	var out []row
	for _, name := range c.names {
		m, err := d.model(p, name, c.logs[name])
		if err != nil {
			return nil, err
		}
		if err := c.needs(name, d.recharges[name], d.closesWith[name]); err != nil {
			return nil, err
		}
		var r row
		if d.recharges[name] != "" {
			r, err = d.rechargeRow(m, name, c)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", name, err)
			}
		} else {
			r = d.curveRow(m, name, c)
		}
		out = append(out, r)
	}
	m, err := d.model(p, "", nil)
	if err != nil {
		return nil, err
	}
	for _, name := range sortedKeys(c.pulses) {
		out = append(out, d.pulsesRow(m, name, c.pulses[name]))
	}
	return out, nil
}

// needs reports which of the other curves that a curve is run with are missing.
func (c curves) needs(name string, others ...string) error {
	for _, other := range others {
		if other != "" && c.logs[other] == nil {
			return fmt.Errorf("%s cannot be run without %s beside it", name, other)
		}
	}
	return nil
}

// curveRow is the row of a logged curve.
func (d dataset) curveRow(m *battery.Model, name string, c curves) row {
	log, note := c.logs[name], ""
	if other := d.closesWith[name]; other != "" {
		var by float64
		log, by = closed(log, c.logs[other])
		note = fmt.Sprintf("charge scaled by %.3f", by)
	}
	a := d.replay(m, name, log)
	return row{
		curve: d.cell + "/" + name, note: note, use: d.use(name, d.fit), rms: a.RMSV / m.NominalV(), worstV: a.WorstV,
		logAh: a.LogAh, modelAh: a.ModelAh, logMaxC: a.LogMaxC, modelMaxC: a.ModelMaxC,
	}
}

// closed returns a log whose charge is scaled so that altogether it puts back
// what the other took out; currents and voltages stay as they were logged.
func closed(log, other *cellfit.Log) (scaledLog *cellfit.Log, by float64) {
	by = -other.ChargeAh[other.Rows()-1] / log.ChargeAh[log.Rows()-1]
	out := *log
	out.ChargeAh = scaled(log.ChargeAh, by)
	return &out, by
}

// pulsesRow is the row of a table of pulses.
func (d dataset) pulsesRow(m *battery.Model, name string, pulses []*cellfit.Log) row {
	none := math.NaN()
	out := row{
		curve: d.cell + "/" + name, note: fmt.Sprintf("%d pulses", len(pulses)), use: d.use(name, d.pulses),
		logAh: none, modelAh: none, logMaxC: none, modelMaxC: none,
	}
	var sum float64
	ambientC := d.ambientOf(name)
	for _, pulse := range pulses {
		a := cellfit.Replay(m, pulse, cellfit.ReplayOptions{AmbientC: ambientC})
		sum += a.RMSV * a.RMSV
		out.worstV = math.Max(out.worstV, a.WorstV)
	}
	out.rms = math.Sqrt(sum/float64(len(pulses))) / m.NominalV()
	return out
}

// inName finds a temperature in the name of a table of pulses.
var inName = pattern.New(`_(n?)(\d+)c$`)

// ambientOf is how warm it was where a table of pulses tells no temperature.
func (d dataset) ambientOf(name string) float64 {
	found := inName.Get().FindStringSubmatch(name)
	if found == nil {
		return d.ambientC
	}
	tempC, _ := strconv.ParseFloat(found[2], 64)
	if found[1] != "" {
		tempC = -tempC
	}
	return tempC
}

// use says whether a curve was fitted to.
func (d dataset) use(name string, fitted []string) string {
	if slices.Contains(fitted, name) {
		return fittedTo
	}
	return keptAside
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
