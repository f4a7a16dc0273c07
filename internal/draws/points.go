package draws

import (
	"math/rand/v2"

	"gonum.org/v1/gonum/stat/distuv"
)

// Clip is the greatest size of a z that a model sees. At a likely value with
// 5 and 95 % points, 2.8 is 1.7 times as far out as those; one draw in 200
// lies beyond and is put there. No quantile between 1 and 99 % feels it, and a
// long logarithmic tail is kept from values that nobody ever sold. Common
// practice, no published source; the coverage figures of [Condition] were
// found with it.
const Clip = 2.8

// The seeds of all random numbers: the same in every run, so that the same
// input gives the same answer.
const (
	seedPoints = 0x9ac5f00d1c0ffee1
	seedRounds = 0x51a7e5ba5eba11ed
	seedErrors = 0x0ff5e7e44a5a1ad5
	seedPicks  = 0x5e1ec7ed5eed5eed
)

// Points returns n low-discrepancy points of dims unknowns, each a standard
// normal number clipped at [Clip]: row i is the i-th draw. The first rows of a
// longer list are the rows of a shorter one, and the first 2^k are themselves
// evenly spread. Rows share one array.
//
// They are scrambled Sobol points; unknowns after the 101st are plain
// pseudo-random. n and dims below 0 count as 0.
func Points(n, dims int) [][]float64 { return PointsAt(n, dims, 0) }

// PointsAt are points placed by another scramble: as evenly spread, elsewhere. Trials
// see by them how much hangs on where the points lie; 0 is [Points].
func PointsAt(n, dims int, scramble uint64) [][]float64 {
	z := normalPoints(n, dims, seedPoints^scramble, 0)
	clip(z)
	return z
}

// normalPoints are the points before clipping.
func normalPoints(n, dims int, seed, stream uint64) [][]float64 {
	n, dims = max(n, 0), max(dims, 0)
	z := rows(n, dims)
	random := rand.New(rand.NewPCG(seed, stream))
	axes := sobolAxes(n, dims, random)
	for i, row := range z {
		for d := range row {
			if d < len(axes) {
				row[d] = distuv.UnitNormal.Quantile(axes[d].next(i))
			} else {
				row[d] = random.NormFloat64()
			}
		}
	}
	return z
}

// rows returns n rows of m numbers in one array.
func rows(n, m int) [][]float64 {
	flat := make([]float64, n*m)
	all := make([][]float64, n)
	for i := range all {
		all[i] = flat[i*m : (i+1)*m : (i+1)*m]
	}
	return all
}

// clip limits every z of the rows.
func clip(z [][]float64) {
	for _, row := range z {
		for i, v := range row {
			row[i] = max(-Clip, min(Clip, v))
		}
	}
}
