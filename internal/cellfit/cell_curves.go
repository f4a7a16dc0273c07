package cellfit

import (
	"math"
	"slices"

	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// noiseV is how far a voltage may lie off because the model is not the cell,
// per cell. It sets the weight of the logs against the prior.
const noiseV = 0.010

// rowsPerLog is how many independent measurements a log is counted as:
// neighbouring rows share their model error.
const rowsPerLog = 120

// mostRows is in how many rows a log is computed.
const mostRows = 600

// fitter is a fit under way.
type fitter struct {
	o          CellOptions
	curves     []*curve
	units      int // specimens besides the first
	fullAh     float64
	topSpreadV float64
	// What the unknowns are factors on.
	depthH, tauH        float64
	rest0               []float64
	ohm0, fast0, slow0  chemistry.Curve
	knob                []knob
	restAt, ohmAt       int // where a curve's unknowns begin
	fastAt, slowAt      int
	unknowns, residuals int
}

// newFitter makes logs and base profile ready.
func newFitter(logs []*Log, o CellOptions) *fitter {
	f := &fitter{o: o, topSpreadV: 0.1 * o.RestSpreadV, fullAh: o.FullAh}
	most, rows := 0.0, 0
	for i, l := range logs {
		c := newCurve(l, o)
		if i < len(o.Unit) {
			c.unit = o.Unit[i]
		}
		c.full = i < len(o.StartFull) && o.StartFull[i]
		if i < len(o.Weights) {
			c.scale(math.Sqrt(o.Weights[i]))
		}
		f.units = max(f.units, c.unit)
		most = max(most, spread(c.log.ChargeAh)/o.share(c.unit))
		rows += c.log.Rows()
		f.curves = append(f.curves, c)
	}
	switch {
	case f.fullAh > 0:
	case o.LikelyFullAh > 0:
		f.fullAh = max(o.LikelyFullAh, most*1.005)
	default:
		f.fullAh = max(most*1.01, o.CapacityAh*0.3)
	}
	// Without a bound well to start from, a shallow one.
	f.depthH, f.tauH = 0.03, 0.3
	if o.DepthSpread > 0 {
		f.depthH, f.tauH = usualDepthH, chemistry.SettlesHours
	}
	if w := o.Base.Wells; w.C < 1 && w.KPerS > 0 {
		f.tauH = w.C * (1 - w.C) / w.KPerS / 3600
		f.depthH = (1 - w.C) / w.C * f.tauH
	}
	onKnots := func(c chemistry.Curve, knots []float64, least float64) chemistry.Curve {
		value, y := c.Func(), make([]float64, len(knots))
		for k, z := range knots {
			y[k] = max(value(z), least)
		}
		return chemistry.Curve{X: knots, Y: y}
	}
	p := o.Base
	f.rest0 = onKnots(p.Rest.VoltsAt, restKnots, 0).Y
	f.ohm0 = onKnots(p.Resistance.OhmAh, ohmKnots, leastOhmAh)
	f.fast0 = onKnots(p.Fast.OhmAh, branchKnots, leastOhmAh)
	f.slow0 = onKnots(p.Slow.OhmAh, branchKnots, leastOhmAh)
	f.knob = f.knobs(f.units)
	f.restAt = len(f.knob)
	f.ohmAt = f.restAt + len(restKnots)
	f.fastAt = f.ohmAt + len(ohmKnots)
	f.slowAt = f.fastAt + len(branchKnots)
	f.unknowns = f.slowAt + len(branchKnots)
	f.residuals = f.prior(nil, make([]float64, f.unknowns)) + rows
	return f
}

// models are the specimens as a cell makes them: equal but for their capacity.
func (f *fitter) models(d draft) ([]*battery.Model, error) {
	spec := battery.Spec{
		Profile: d.profile, CellsInSeries: f.o.CellsInSeries, CapacityAh: f.o.CapacityAh, Health: 1, ResistanceFactor: 1,
	}
	first, err := battery.New(spec)
	if err != nil {
		return nil, err
	}
	out := []*battery.Model{first}
	for _, share := range d.unit {
		spec.Health = share
		m, err := first.With(spec)
		if err != nil {
			return nil, err
		}
		out = append(out, m)
	}
	return out, nil
}

// farOff stands for the residuals of a cell that cannot be.
const farOff = 1e3

// off writes what is to be made small at a vector of unknowns: the distance
// from the prior, and every row's voltage against the model's. It may be
// called by several goroutines at a time.
func (f *fitter) off(out, x []float64) {
	n := f.prior(out, x)
	models, err := f.models(f.drafted(x))
	if err != nil {
		for i := n; i < len(out); i++ {
			out[i] = farOff
		}
		return
	}
	for _, c := range f.curves {
		c.run(models[c.unit], func(row int, offV float64) { out[n+row] = min(max(offV*c.weight[row], -farOff), farOff) })
		n += c.log.Rows()
	}
}

// curve is one log made ready.
type curve struct {
	log    *Log
	temp   []float64
	cells  float64
	weight []float64 // of each row, 1/V
	full   bool
	unit   int
}

func newCurve(l *Log, o CellOptions) *curve {
	c := &curve{cells: float64(o.CellsInSeries)}
	c.log = l.Condense(mostRows).Until(0.98 * o.CutoffV * c.cells)
	c.temp = c.log.TempC
	rows := c.log.Rows()
	if c.temp == nil {
		c.temp = slices.Repeat([]float64{o.AmbientC}, rows)
	}
	// Rows stand close where the voltage bends. Half of the weight goes by rows
	// and half by time, so that the ends count and the long middle does too.
	t := c.log.TimeS
	whole := max(t[rows-1]-t[0], 1e-9)
	for i := range rows {
		around := (t[min(i+1, rows-1)] - t[max(i-1, 0)]) / 2
		share := 0.5/float64(rows) + 0.5*around/whole
		c.weight = append(c.weight, math.Sqrt(rowsPerLog*share)/noiseV)
	}
	return c
}

func (c *curve) scale(by float64) {
	for i := range c.weight {
		c.weight[i] *= by
	}
}

// run takes a model along the log, as warm as the log says, and returns the
// charge that it began at. each gets by how much the model's voltage lies above
// the log's, V per cell.
func (c *curve) run(m *battery.Model, each func(row int, offV float64)) (start float64) {
	l := c.log
	start = 1
	if !c.full {
		start = startCharge(m, l, c.temp[0])
	}
	s := m.StateAt(start, c.temp[0])
	// A pulse comes with one temperature, that at its start.
	asLogged := l.TimeS[l.Rows()-1]-l.TimeS[0] > pulseS
	for i := range l.TimeS {
		if i > 0 {
			dt := l.TimeS[i] - l.TimeS[i-1]
			if asLogged {
				s.TempC = (c.temp[i] + c.temp[i-1]) / 2
			}
			advance(m, &s, dt, (l.ChargeAh[i]-l.ChargeAh[i-1])/dt*3600, c.temp[i])
		}
		if asLogged {
			s.TempC = c.temp[i]
		}
		each(i, (m.TerminalV(&s, l.Amps[i])-l.Volts[i])/c.cells)
	}
	return start
}
