package cellfit

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
)

// finish settles units that were not said, the sign, and the charge.
func (p *parser) finish() (*Log, error) {
	p.hold.end()
	l := p.log
	if l.Rows() < 2 {
		return nil, ReadError{p.o.Name, 0, 0, fmt.Sprintf("rows of numbers: %d", l.Rows()), "at least two"}
	}
	l.doubt()
	if !p.any[tempColumn] {
		l.TempC = nil
	}
	if !p.any[ambientColumn] {
		l.AmbientC = nil
	}
	p.unsaid()
	sign := float64(p.o.Discharging)
	switch {
	case sign != 0:
	case l.Volts == nil:
		sign = 1
	default:
		sign = dischargeSign(l)
	}
	if sign < 0 {
		l.Columns.Flipped = true
		divide(l.Amps, -1)
		divide(l.ChargeAh, -1)
	}
	l.counter()
	if gap := l.gap(); gap != "" {
		l.Notes = append(l.Notes, "In "+filepath.Base(l.called())+" "+gap+": the current on both sides was taken to have flowed all that time. Where it did not, the capacity is less.")
	}
	if l.Sampled {
		l.Notes = append(l.Notes, "The current changes more often than is kept of so long a log: some of the changes are used, and the mean current counts the pauses between them.")
	}
	return l, nil
}

// unsaid scales columns whose titles give no unit and whose numbers leave no
// doubt.
func (p *parser) unsaid() {
	l := p.log
	if c := p.use[p.index[timeColumn]]; !c.said && p.clock.first > 1e11 {
		l.thousandth(l.TimeS)
		l.Notes = append(l.Notes, "Time was taken as milliseconds since 1970.")
	}
	if l.Volts == nil {
		return
	}
	if c := p.use[p.index[voltColumn]]; !c.said && slices.Max(l.Volts) > 1000 {
		divide(l.Volts, 1000)
		l.Notes = append(l.Notes, "Voltage was taken as millivolts.")
		if a := p.use[p.index[ampColumn]]; !a.said && l.mostA() >= 20 {
			l.thousandth(l.Amps)
			l.Notes = append(l.Notes, "Current was taken as milliamperes.")
		}
	}
}

// thousandth turns milliseconds or milliamperes into the whole, and the charge
// with them.
func (l *Log) thousandth(column []float64) {
	divide(column, 1000)
	divide(l.ChargeAh, 1000)
	divide(l.suddenAh, 1000)
	divide(l.noiseAh2, 1e6)
}

func divide(x []float64, by float64) {
	for i := range x {
		x[i] /= by
	}
}

// dischargeSign returns +1 when the file counts a discharge as positive. A
// battery's voltage falls when its discharge current rises; without any change
// of current, it falls while it is being discharged.
func dischargeSign(l *Log) float64 {
	most := 0.0
	for _, a := range l.Amps {
		most = max(most, math.Abs(a))
	}
	var steps, trend float64
	for i := 1; i < l.Rows(); i++ {
		da, dv := l.Amps[i]-l.Amps[i-1], l.Volts[i]-l.Volts[i-1]
		if math.Abs(da) > 0.2*most {
			steps += da * dv
		} else if math.Abs(l.Amps[i]) > 0.05*most {
			trend += math.Copysign(dv, dv*l.Amps[i])
		}
	}
	switch {
	case steps != 0:
		return -math.Copysign(1, steps)
	case trend != 0:
		return -math.Copysign(1, trend)
	}
	return 1
}

// counter uses the log's own charge counter when it agrees with the current:
// it knows what happened between the rows, unless it is no more than their
// integral.
func (l *Log) counter() {
	counted := l.counterAh
	l.counterAh = nil
	if counted == nil {
		return
	}
	first, last := counted[0], counted[l.Rows()-1]
	span := spread(l.ChargeAh)
	if span == 0 || math.IsNaN(first) || math.IsNaN(last) {
		return
	}
	sign := 1.0
	if (last-first)*l.ChargeAh[l.Rows()-1] < 0 {
		sign = -1
	}
	off := 0.0
	for i, c := range counted {
		off = max(off, math.Abs(sign*(c-first)-l.ChargeAh[i])) // NaN where a count is missing
	}
	if !(off <= 0.15*span) {
		return
	}
	l.knows = off > 1e-6*span
	for i, c := range counted {
		l.ChargeAh[i] = sign * (c - first)
	}
}
