package cellfit

import (
	"fmt"
	"math"
	"slices"
)

// finish settles units that were not said, the sign, and the charge.
func (p *parser) finish() (*Log, error) {
	l := p.log
	if l.Rows() < 2 {
		return nil, ReadError{p.o.Name, 0, 0, fmt.Sprintf("rows of numbers: %d", l.Rows()), "at least two"}
	}
	if !p.anyTemp {
		l.TempC = nil
	}
	if !p.anyAmb {
		l.AmbientC = nil
	}
	if p.index[voltColumn] < 0 {
		l.Volts = nil
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
		for i := range l.Amps {
			l.Amps[i] = -l.Amps[i]
		}
	}
	l.integrate()
	p.counter()
	return l, nil
}

// unsaid scales columns whose titles give no unit and whose numbers leave no
// doubt.
func (p *parser) unsaid() {
	l := p.log
	if c := p.use[p.index[timeColumn]]; !c.said && p.clock.first > 1e11 {
		for i := range l.TimeS {
			l.TimeS[i] /= 1000
		}
		l.Notes = append(l.Notes, "Time was taken as milliseconds since 1970.")
	}
	if l.Volts == nil {
		return
	}
	if c := p.use[p.index[voltColumn]]; !c.said && slices.Max(l.Volts) > 1000 {
		for i := range l.Volts {
			l.Volts[i] /= 1000
		}
		l.Notes = append(l.Notes, "Voltage was taken as millivolts.")
		if a := p.use[p.index[ampColumn]]; !a.said && max(slices.Max(l.Amps), -slices.Min(l.Amps)) >= 20 {
			for i := range l.Amps {
				l.Amps[i] /= 1000
			}
			l.Notes = append(l.Notes, "Current was taken as milliamperes.")
		}
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
// it knows what happened between the rows.
func (p *parser) counter() {
	l := p.log
	if len(p.charge) != l.Rows() {
		return
	}
	first, last := p.charge[0], p.charge[l.Rows()-1]
	span := slices.Max(l.ChargeAh) - slices.Min(l.ChargeAh)
	if span == 0 || math.IsNaN(first) || math.IsNaN(last) {
		return
	}
	sign := 1.0
	if (last-first)*l.ChargeAh[l.Rows()-1] < 0 {
		sign = -1
	}
	for i, c := range p.charge {
		if !(math.Abs(sign*(c-first)-l.ChargeAh[i]) <= 0.15*span) {
			return
		}
	}
	for i, c := range p.charge {
		l.ChargeAh[i] = sign * (c - first)
	}
}
