package cellfit

import "math"

// Part is a stretch of a log, rows From to To (included).
type Part struct {
	From, To int
	Hours    float64
	Ah       float64 // charge taken out
	MeanA    float64 // mean current while one flowed
}

// Parts is what a log consists of.
type Parts struct {
	Rests      []Part // nothing flows for a minute or longer
	Pulses     []Part // a current for at most two minutes between rests
	Discharges []Part // from the row before a current begins to the last before a recharge or the end, rests included
	Steps      []Jump // sudden changes of current
}

// Jump is a sudden change of current and what the voltage did.
type Jump struct {
	Row   int     // first row after it
	Ohm   float64 // -dV/dI
	Ah    float64 // charge taken out before it, since the log's beginning
	TempC float64 // NaN when not logged
	GapS  float64 // between the two rows
}

// Thresholds of the parts.
const (
	restShare     = 0.02 // of the greatest current: below nothing flows
	restS         = 60.0 // s
	pulseS        = 120.0
	jumpShare     = 0.2  // of the greatest current
	jumpS         = 5.0  // s between the two rows at most
	rechargeShare = 0.02 // of all the charge that moves
	leastShare    = 0.3  // of all the charge that moves
)

// Parts takes a log apart.
func (l *Log) Parts() Parts {
	var p Parts
	most := 0.0
	for _, a := range l.Amps {
		most = max(most, math.Abs(a))
	}
	quiet := func(i int) bool { return math.Abs(l.Amps[i]) <= restShare*most }
	for from := 0; from < l.Rows(); {
		to := from
		for to+1 < l.Rows() && quiet(to+1) == quiet(from) {
			to++
		}
		part := l.part(from, to)
		seconds := part.Hours * 3600
		switch {
		case quiet(from) && seconds >= restS:
			p.Rests = append(p.Rests, part)
		case !quiet(from) && seconds <= pulseS && from > 0 && to+1 < l.Rows():
			p.Pulses = append(p.Pulses, part)
		}
		from = to + 1
	}
	p.Discharges = l.discharges(most)
	p.Steps = l.jumps(most)
	return p
}

// part measures rows from to to.
func (l *Log) part(from, to int) Part {
	p := Part{From: from, To: to, Hours: (l.TimeS[to] - l.TimeS[from]) / 3600, Ah: l.ChargeAh[to] - l.ChargeAh[from]}
	var flow, time float64
	most := 0.0
	for i := from; i <= to; i++ {
		most = max(most, l.Amps[i])
	}
	for i := from + 1; i <= to; i++ {
		if l.Amps[i] > 0.05*most {
			dt := l.TimeS[i] - l.TimeS[i-1]
			flow += (l.ChargeAh[i] - l.ChargeAh[i-1]) * 3600
			time += dt
		}
	}
	if time > 0 {
		p.MeanA = flow / time
	}
	return p
}

// discharges finds the stretches that take out a good part of the charge: from
// the row before the current begins to the last before a recharge or the end,
// rests between included.
func (l *Log) discharges(most float64) []Part {
	span := spread(l.ChargeAh)
	var out []Part
	first, last := -1, -1 // rows with a discharge current
	end := func() {
		if first < 0 {
			return
		}
		if from := max(first-1, 0); l.ChargeAh[last]-l.ChargeAh[from] > leastShare*span {
			out = append(out, l.part(from, last))
		}
		first = -1
	}
	peak := l.ChargeAh[0]
	for i := range l.TimeS {
		if peak-l.ChargeAh[i] > rechargeShare*span {
			end()
			peak = l.ChargeAh[i]
		}
		if l.Amps[i] > restShare*most {
			if first < 0 {
				first, peak = i, l.ChargeAh[i]
			}
			last = i
		}
		peak = max(peak, l.ChargeAh[i])
	}
	end()
	return out
}

// jumps finds the sudden changes of current. The difference of neighbouring
// rows is compared with the change over the row before, so that a slow drift
// is not taken for one.
func (l *Log) jumps(most float64) []Jump {
	var out []Jump
	for i := 1; i < l.Rows(); i++ {
		da, dt := l.Amps[i]-l.Amps[i-1], l.TimeS[i]-l.TimeS[i-1]
		if math.Abs(da) < jumpShare*most || dt > jumpS {
			continue
		}
		ohm := -(l.Volts[i] - l.Volts[i-1]) / da
		if !(ohm > 0) {
			continue
		}
		j := Jump{Row: i, Ohm: ohm, Ah: l.ChargeAh[i-1], TempC: math.NaN(), GapS: dt}
		if l.TempC != nil {
			j.TempC = l.TempC[i-1]
		}
		out = append(out, j)
	}
	return out
}
