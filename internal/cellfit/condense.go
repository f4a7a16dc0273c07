package cellfit

import "math"

// Condense returns the log in about n rows: single rows where the current
// changes, longer and longer stretches where nothing happens. Charge is kept
// exactly; rows are chosen, not averaged, so voltages stay measured ones. Where
// the current changes more often than n times, some of its changes are kept.
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
	// choose stops where an edge finds no room.
	choose := func(every int) (keep []int, all bool) {
		keep = make([]int, 1, n+2)
		part, edges := 0.0, 0
		for i := 1; i < rows-1; i++ {
			before := part
			part += weight(i)
			edge := false
			if most > 0 && math.Abs(l.Amps[i]-l.Amps[i-1]) > 0.2*most {
				edges++
				edge = edges%every == 0
			}
			if edge && before > 0 && keep[len(keep)-1] != i-1 && len(keep) < n {
				keep = append(keep, i-1) // the last row before the edge
				part = weight(i)
			}
			if edge || part >= sum/float64(n) {
				if len(keep) == 2*n {
					return keep, false
				}
				keep = append(keep, i)
				part = 0
			}
		}
		return append(keep, rows-1), true
	}
	// Of more edges than there is room for, every third counts, or every seventh
	// and so on; an odd number, so that ups and downs take turns.
	keep, whole := choose(1)
	all := whole
	for every := 3; !all && every <= rows; every = 2*every + 1 {
		keep, all = choose(every)
	}
	out := l.pick(keep)
	out.Sampled = l.Sampled || !whole
	return out
}

func spread(x []float64) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, v := range x {
		lo, hi = min(lo, v), max(hi, v)
	}
	return hi - lo
}
