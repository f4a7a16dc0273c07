package cellfit

import "math"

// heldRows is how many rows of a log are held at most, and fewestRows the least
// that one may ask for.
const (
	heldRows   = 1 << 17
	fewestRows = 64
)

// Thinning leaves half of the rows that are held at most: a quarter for two rows
// of each step, a quarter for four of each stretch.
const (
	stepsShare     = 1. / 8
	stretchesShare = 1. / 16
	leastStep      = 0.05 // over the greatest current
)

// reading is one row of a file, by quantity.
type reading [chargeColumn + 1]float64

// holder takes the rows of a file as they come and holds no more than so many;
// [Log] says which.
type holder struct {
	log  *Log
	room int                    // rows
	has  [chargeColumn + 1]bool // which columns the file has
	keep []bool                 // rows that thinning leaves; nil = nothing was thinned
	most float64                // greatest current of the rows held, A
	left float64                // changes of current by as much were not all kept, A

	// A row waits for the next: of two within the clock's resolution the later
	// one counts.
	row     reading
	waiting bool
}

// add takes the next row, which is no earlier than the one before.
func (h *holder) add(r *reading) {
	if h.waiting && r[timeColumn] > h.row[timeColumn] {
		h.take()
	}
	h.row, h.waiting = *r, true
}

// end takes the last row, and has those that came last as far apart as the
// others. Which changes of current are great is known only now: that of a log
// that begins at rest was its noise.
func (h *holder) end() {
	if h.waiting {
		h.take()
	}
	if h.keep != nil {
		h.thin()
		h.log.Sampled = h.left > jumpShare*h.most
	}
}

// take puts the waiting row into the log and counts the charge up to it: the
// current between two rows is their mean, without volts that of the first.
func (h *holder) take() {
	l, r := h.log, &h.row
	if l.Rows() == h.room {
		h.thin()
	}
	charge := 0.0
	if last := l.Rows() - 1; last >= 0 {
		amps := l.Amps[last]
		if h.has[voltColumn] {
			amps = (r[ampColumn] + amps) / 2
		}
		charge = l.ChargeAh[last] + amps*(r[timeColumn]-l.TimeS[last])/3600
	}
	l.ChargeAh = append(l.ChargeAh, charge)
	for q, column := range l.read() {
		if h.has[q] {
			*column = append(*column, r[q])
		}
	}
	l.FileRows++
}

// thin leaves the rows that [Log] tells of.
func (h *holder) thin() {
	l := h.log
	l.doubt()
	if h.keep == nil {
		h.keep = make([]bool, h.room)
	}
	rows := l.Rows()
	keep := h.keep[:rows]
	clear(keep)
	h.extremes()
	h.most = l.mostA()
	step := h.step()
	h.left = max(h.left, min(step, 2*h.most))
	var movedAh float64
	for i := 1; i < rows; i++ {
		movedAh += math.Abs(l.ChargeAh[i] - l.ChargeAh[i-1])
		if h.change(i) >= step {
			keep[i-1], keep[i] = true, true
		}
	}
	// Half of the stretches go by time and half by charge.
	half := stretchesShare / 2 * float64(h.room)
	perS, perAh := half/(l.TimeS[rows-1]-l.TimeS[0]), 0.0
	if movedAh > 0 {
		perAh = half / movedAh
	}
	at, kept := 0.0, 0.0 // in stretches, of the row before and the last that is kept
	first := 1
	for i := 1; i < rows; i++ {
		next := at + perS*(l.TimeS[i]-l.TimeS[i-1]) + perAh*math.Abs(l.ChargeAh[i]-l.ChargeAh[i-1])
		if next-kept > 1 {
			keep[i-1], kept = true, at
		}
		if int(next) > int(at) {
			h.greatest(first, i)
			first = i
		}
		at = next
	}
	h.greatest(first, rows)
	keep[0] = true
	keep[rows-1] = true
	for _, column := range l.columns() {
		if x := *column; x != nil {
			n := 0
			for i, kept := range keep {
				if kept {
					x[n] = x[i]
					n++
				}
			}
			*column = x[:n]
		}
	}
}

// step is the least change of current between two rows that counts as a step:
// doubled until there are no more steps than there is room for.
func (h *holder) step() float64 {
	l := h.log
	least := leastStep * h.most
	if least == 0 {
		return math.Inf(1)
	}
	var doubling [6]int // how many steps bear how many; none bears more, as it would be above twice the greatest current
	for i := 1; i < l.Rows(); i++ {
		if times := h.change(i) / least; times >= 1 {
			doubling[math.Ilogb(times)]++
		}
	}
	k, left := len(doubling), int(stepsShare*float64(h.room))
	for k > 0 && doubling[k-1] <= left {
		k--
		left -= doubling[k]
	}
	return math.Ldexp(least, k)
}

// change is by how much the current differs from that of the row before. A small
// one must be seen by the rows on either side as well: the noise of a meter is
// not.
func (h *holder) change(i int) float64 {
	amps := h.log.Amps
	by := math.Abs(amps[i] - amps[i-1])
	if by < jumpShare*h.most {
		by = min(by, math.Abs(amps[min(i+1, len(amps)-1)]-amps[max(i-2, 0)]))
	}
	return by
}

// greatest keeps both sides of the greatest change of current that leads to rows
// from to (excluded) and shows resistance.
func (h *holder) greatest(from, to int) {
	amps := h.log.Amps
	step, most := 0, jumpShare*h.most
	for i := from; i < to; i++ {
		if by := math.Abs(amps[i] - amps[i-1]); by > most {
			step, most = i, by
		}
	}
	if step > 0 {
		h.keep[step-1], h.keep[step] = true, true
	}
}

// extremes keeps the rows with the highest and the lowest current and voltage;
// a charger lifts the voltage, so the highest while it does is one for itself.
func (h *holder) extremes() {
	l := h.log
	least := func(of func(i int) float64) {
		at, low := 0, math.Inf(1)
		for i := range l.TimeS {
			if x := of(i); x < low {
				at, low = i, x
			}
		}
		h.keep[at] = true
	}
	least(func(i int) float64 { return l.Amps[i] })
	least(func(i int) float64 { return -l.Amps[i] })
	if l.Volts == nil {
		return
	}
	least(func(i int) float64 { return l.Volts[i] })
	for _, sign := range []float64{-1, 1} {
		least(func(i int) float64 {
			if sign*l.Amps[i] < 0 {
				return math.Inf(1)
			}
			return -l.Volts[i]
		})
	}
}
