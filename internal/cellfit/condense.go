package cellfit

import "math"

// Condense returns the log in about n rows: single rows where the current
// changes, longer and longer stretches where nothing happens. Charge is kept
// exactly; rows are chosen, not averaged, so voltages stay measured ones.
func (l *Log) Condense(n int) *Log {
	rows := l.Rows()
	if rows <= n {
		return l
	}
	most := 0.0
	for _, a := range l.Amps {
		most = max(most, math.Abs(a))
	}
	// What the log does between two rows, in units of the whole: change of
	// current (an edge costs as much as a fiftieth of the log), charge, time.
	span := math.Max(spread(l.ChargeAh), 1e-12)
	total := l.TimeS[rows-1]
	weight := func(i int) float64 {
		w := math.Abs(l.ChargeAh[i]-l.ChargeAh[i-1])/span + (l.TimeS[i]-l.TimeS[i-1])/total
		if most > 0 {
			if step := math.Abs(l.Amps[i]-l.Amps[i-1]) / most; step > 0.05 {
				w += 0.02 * step
			}
		}
		return w
	}
	sum := 0.0
	for i := 1; i < rows; i++ {
		sum += weight(i)
	}
	keep := make([]int, 1, n+2)
	part := 0.0
	for i := 1; i < rows; i++ {
		before := part
		part += weight(i)
		edge := most > 0 && math.Abs(l.Amps[i]-l.Amps[i-1]) > 0.2*most
		if edge && before > 0 && keep[len(keep)-1] != i-1 && len(keep) < n {
			keep = append(keep, i-1) // the last row before the edge
			part = weight(i)
		}
		if (edge || part >= sum/float64(n)) && len(keep) < 2*n || i == rows-1 {
			keep = append(keep, i)
			part = 0
		}
	}
	return l.pick(keep)
}

// pick returns the given rows.
func (l *Log) pick(rows []int) *Log {
	take := func(x []float64) []float64 {
		if x == nil {
			return nil
		}
		out := make([]float64, len(rows))
		for i, r := range rows {
			out[i] = x[r]
		}
		return out
	}
	out := *l
	out.TimeS, out.Volts, out.Amps = take(l.TimeS), take(l.Volts), take(l.Amps)
	out.TempC, out.AmbientC, out.ChargeAh = take(l.TempC), take(l.AmbientC), take(l.ChargeAh)
	return &out
}

func spread(x []float64) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range x {
		lo, hi = min(lo, v), max(hi, v)
	}
	return hi - lo
}
