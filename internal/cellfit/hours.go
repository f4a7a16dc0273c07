package cellfit

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/optimize"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// HourTable is a maker's constant-current table: the current that takes a full
// block to an end voltage in so many hours, at 25 deg C.
type HourTable struct {
	CellsInSeries int
	CapacityAh    float64         // that Amps lead to over the base profile's rated hours
	Hours         []float64       // rows, rising
	EndV          []float64       // columns, V per cell, rising
	Amps          [][]float64     // [row][column]; 0 = not given
	Weight        [][]float64     // [row][column]; nil = all 1
	RestedV       chemistry.Curve // published rest voltage per cell over label charge 0..1
}

// HourFit is a profile fitted to an hour table.
type HourFit struct {
	Profile chemistry.Profile
	Off     [][]float64 // relative error in time, [row][column]; NaN = not given
}

// hourScale is the error in time that counts as one; the fourth power of it is
// what is made small, so that the worst points are what the fit works on.
const hourScale = 0.035

// FitHourTable finds two wells, rest curve, resistance and branches with
// which the whole cell model, its heat included, lasts as long as the table
// says at every current and end voltage. Rest voltages stay at the published
// ones, and the base profile's resistances and time constants are the prior
// for what the table leaves open.
func FitHourTable(t HourTable, base chemistry.Profile, evaluations int) (HourFit, error) {
	if err := t.check(); err != nil {
		return HourFit{}, err
	}
	f := hourFitter{t: t, base: base}
	start := f.pack(base)
	cost := func(x []float64) float64 {
		p := f.unpack(x)
		off, err := f.off(p)
		if err != nil {
			return math.Inf(1)
		}
		total := f.penalty(p)
		for i, row := range off {
			for j, e := range row {
				if math.IsNaN(e) {
					continue
				}
				if t.Weight != nil {
					e *= t.Weight[i][j]
				}
				total += math.Pow(math.Abs(e)/hourScale, 4)
			}
		}
		return total
	}
	gradient := func(g, x []float64) { fd.Gradient(g, cost, x, &fd.Settings{Formula: fd.Central, Step: 1e-4}) }
	result, err := optimize.Minimize(optimize.Problem{Func: cost, Grad: gradient}, start,
		&optimize.Settings{GradientThreshold: 1e-3, FuncEvaluations: evaluations, Converger: &optimize.FunctionConverge{Relative: 1e-4, Iterations: 10}}, &optimize.BFGS{})
	if result == nil {
		return HourFit{}, fmt.Errorf("cellfit: the search failed: %w", err)
	}
	p := f.unpack(result.X)
	off, err := f.off(p)
	return HourFit{Profile: p, Off: off}, err
}

// check says what is wrong with a table.
func (t HourTable) check() error {
	if t.CellsInSeries < 1 || !(t.CapacityAh > 0) || len(t.Hours) == 0 || len(t.Amps) != len(t.Hours) {
		return errors.New("cellfit: an hour table needs cells, a capacity and one row of amps per row of hours")
	}
	for _, row := range t.Amps {
		if len(row) != len(t.EndV) {
			return errors.New("cellfit: an hour table needs one column of amps per end voltage")
		}
	}
	return nil
}

type hourFitter struct {
	t    HourTable
	base chemistry.Profile
}

// The unknowns: logit of c, log of k' in 1/h, log of the ratio, top of the rest
// curve, logs of its steps, logs of the resistances, logs of branch ohms and
// times.
func (f *hourFitter) pack(p chemistry.Profile) []float64 {
	c := p.Wells.C
	x := []float64{math.Log(c / (1 - c)), math.Log(p.Wells.KPerS * 3600 / (c * (1 - c))), math.Log(p.Capacity.Ratio)}
	v := p.Rest.VoltsAt.Y
	x = append(x, v[len(v)-1])
	for i := 1; i < len(v); i++ {
		x = append(x, math.Log(v[i]-v[i-1]))
	}
	for _, r := range p.Resistance.OhmAh.Y {
		x = append(x, math.Log(r))
	}
	for _, b := range []chemistry.Branch{p.Fast, p.Slow} {
		x = append(x, math.Log(b.OhmAh.Y[0]), math.Log(b.TauS))
	}
	return x
}

func (f *hourFitter) unpack(x []float64) chemistry.Profile {
	p := f.base
	c := 1 / (1 + math.Exp(-x[0]))
	p.Wells.C, p.Wells.KPerS = c, math.Exp(x[1])*c*(1-c)/3600
	p.Capacity.Ratio = math.Exp(x[2])
	n := len(p.Rest.VoltsAt.X)
	volts := make([]float64, n)
	volts[n-1] = x[3]
	for i := n - 1; i > 0; i-- {
		volts[i-1] = volts[i] - math.Exp(x[3+i])
	}
	p.Rest.VoltsAt = chemistry.Curve{X: p.Rest.VoltsAt.X, Y: volts}
	x = x[3+n:]
	m := len(p.Resistance.OhmAh.X)
	ohm := make([]float64, m)
	for i := range ohm {
		ohm[i] = math.Exp(x[i])
	}
	p.Resistance.OhmAh = chemistry.Curve{X: p.Resistance.OhmAh.X, Y: ohm}
	x = x[m:]
	p.Fast.OhmAh, p.Fast.TauS = chemistry.Flat(math.Exp(x[0])), math.Exp(x[1])
	p.Slow.OhmAh, p.Slow.TauS = chemistry.Flat(math.Exp(x[2])), math.Exp(x[3])
	return p
}

// off runs every discharge of the table.
func (f *hourFitter) off(p chemistry.Profile) ([][]float64, error) {
	m, err := battery.New(battery.Spec{Profile: p, CellsInSeries: f.t.CellsInSeries, CapacityAh: f.t.CapacityAh})
	if err != nil {
		return nil, err
	}
	full := m.StateAt(1, 25)
	off := make([][]float64, len(f.t.Hours))
	for i, hours := range f.t.Hours {
		off[i] = slices.Repeat([]float64{math.NaN()}, len(f.t.EndV))
		for j, end := range f.t.EndV {
			if amps := f.t.Amps[i][j]; amps > 0 {
				run := m.Discharge(full, amps, float64(f.t.CellsInSeries)*end, 25)
				off[i][j] = math.Log(math.Max(run.Hours, 1e-6) / hours)
			}
		}
	}
	return off, nil
}

// penalty keeps the fit where the rest of what is known is: rest voltages
// within 5 mV per cell, resistance falling with charge, branches near the
// base's.
func (f *hourFitter) penalty(p chemistry.Profile) float64 {
	var sum float64
	add := func(x float64) { sum += x * x }
	rest := p.Rest.VoltsAt.Func()
	for i, charge := range f.t.RestedV.X {
		d := (rest(1-(1-charge)/p.Capacity.Ratio) - f.t.RestedV.Y[i]) / 0.005
		add(d * d)
	}
	r := p.Resistance.OhmAh.Y
	for i := 1; i < len(r); i++ {
		add(30 * math.Max(math.Log(r[i]/r[i-1]), 0))
		if i+1 < len(r) {
			add(0.3 * math.Log(r[i+1]*r[i-1]/(r[i]*r[i])))
		}
	}
	near := func(x, prior, weight float64) { add(weight * math.Log(x/prior)) }
	b := f.base
	near(r[len(r)-1], b.Resistance.OhmAh.Y[len(r)-1], 0.3)
	near(p.Fast.OhmAh.Y[0], b.Fast.OhmAh.Y[0], 0.3)
	near(p.Fast.TauS, b.Fast.TauS, 3)
	near(p.Slow.OhmAh.Y[0], b.Slow.OhmAh.Y[0], 0.3)
	near(p.Slow.TauS, b.Slow.TauS, 3)
	v, z := p.Rest.VoltsAt.Y, p.Rest.VoltsAt.X
	for i := 2; i < len(v); i++ {
		before, here := (v[i-1]-v[i-2])/(z[i-1]-z[i-2]), (v[i]-v[i-1])/(z[i]-z[i-1])
		add(0.15 * math.Log((here+1e-3)/(before+1e-3)))
	}
	return sum
}
