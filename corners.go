package packcheck

import (
	"cmp"
	"math"
	"slices"
)

// side says where in its range a figure stands in one computation.
type side int8

const (
	atLow    side = -1
	atLikely side = 0
	atHigh   side = 1
)

// in returns the value of the range at that side.
func (s side) in(r Range) float64 {
	switch s {
	case atLow:
		return r.Low
	case atHigh:
		return r.High
	default:
		return r.Likely
	}
}

// jointly is how many figures are moved together when a corner is formed.
// More would describe a day on which everything goes wrong at once.
const jointly = 4

// spread is what the unknowns do to every output of a computation.
type spread struct {
	likely []float64
	ranges []Range
	// drivers lists, for each output, the figures that move it, most first.
	drivers [][]driver
	// high and low are the corners: where the figures stand when the output is
	// at its largest and smallest.
	high, low [][]side
}

// driver is one figure's effect on one output, as a share of the likely value
// (or in the output's own unit where that is zero).
type driver struct {
	figure int
	effect float64
}

// spreadOf runs a computation with n uncertain figures: once with all of them
// likely, twice for each figure alone, and at the corners that matter: for
// each output the few figures that move it most, all at the end that raises it
// and all at the end that lowers it.
//
// It takes run(sides) to return the outputs; NaN marks one that does not
// exist in that computation. The first lead outputs get corners of their own,
// the others share them.
func spreadOf(n, lead int, run func([]side) []float64) spread {
	sides := make([]side, n)
	base := run(sides)
	low, high := make([][]float64, n), make([][]float64, n)
	for i := range n {
		sides[i] = atLow
		low[i] = run(sides)
		sides[i] = atHigh
		high[i] = run(sides)
		sides[i] = atLikely
	}
	out := spread{
		likely:  base,
		ranges:  make([]Range, len(base)),
		drivers: make([][]driver, len(base)),
		high:    make([][]side, len(base)),
		low:     make([][]side, len(base)),
	}
	computed := slices.Concat([][]float64{base}, low, high)
	corners := map[string]bool{}
	add := func(sides []side) {
		if key := sidesKey(sides); !corners[key] {
			corners[key] = true
			computed = append(computed, run(sides))
		}
	}
	for m, likely := range base[:min(lead, len(base))] {
		out.drivers[m] = drivers(m, likely, low, high)
		out.high[m] = corner(m, likely, out.drivers[m], low, high, +1)
		out.low[m] = corner(m, likely, out.drivers[m], low, high, -1)
		add(out.high[m])
		add(out.low[m])
	}
	// A corner that was computed for one output counts for all of them.
	for m, likely := range base {
		r := Range{Low: likely, Likely: likely, High: likely}
		for _, v := range computed {
			if !math.IsNaN(v[m]) && !math.IsNaN(likely) {
				r.Low, r.High = min(r.Low, v[m]), max(r.High, v[m])
			}
		}
		out.ranges[m] = r
	}
	return out
}

// drivers sorts the figures by how far they move output m.
func drivers(m int, likely float64, low, high [][]float64) []driver {
	scale := math.Abs(likely)
	if scale == 0 {
		scale = 1
	}
	if math.IsNaN(likely) {
		return nil
	}
	var list []driver
	for i := range low {
		effect := 0.0
		for _, v := range [2]float64{low[i][m], high[i][m]} {
			if !math.IsNaN(v) {
				effect = max(effect, math.Abs(v-likely)/scale)
			}
		}
		if effect > 1e-3 {
			list = append(list, driver{figure: i, effect: effect})
		}
	}
	slices.SortStableFunc(list, func(a, b driver) int { return cmp.Compare(b.effect, a.effect) })
	return list
}

// corner puts the strongest drivers of output m where they push it up (+1) or
// down (-1).
func corner(m int, likely float64, list []driver, low, high [][]float64, sign float64) []side {
	sides := make([]side, len(low))
	moved := 0
	for _, d := range list {
		best, gain := atLikely, 0.0
		if g := sign * (low[d.figure][m] - likely); g > gain {
			best, gain = atLow, g
		}
		if g := sign * (high[d.figure][m] - likely); g > gain {
			best = atHigh
		}
		if best == atLikely {
			continue
		}
		sides[d.figure] = best
		if moved++; moved == jointly {
			break
		}
	}
	return sides
}

// sidesKey makes sides usable as a map key.
func sidesKey(sides []side) string {
	b := make([]byte, len(sides))
	for i, s := range sides {
		b[i] = byte(s + 1)
	}
	return string(b)
}
