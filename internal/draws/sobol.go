package draws

import (
	"math/bits"
	"math/rand/v2"
)

// sobolBits is the word in which a coordinate is built: 2^32 points at most.
const sobolBits = 32

// sobol is one coordinate of a scrambled Sobol sequence.
type sobol struct {
	direction [sobolBits]uint32
	now       uint32
}

// sobolAxes returns the coordinates of a sequence of n points, scrambled by a
// random lower triangular matrix over GF(2) and a digital shift (J. Matousek,
// On the L2-discrepancy for anchored boxes, J. Complexity 14 (1998) 527-556),
// which keeps every power-of-two prefix as evenly spread as it was.
func sobolAxes(n, dims int, random *rand.Rand) []sobol {
	axes := plainAxes(n, dims)
	for d := range axes {
		axes[d].scramble(random)
	}
	return axes
}

// plainAxes returns the coordinates as published, for n points.
func plainAxes(n, dims int) []sobol {
	axes := make([]sobol, min(dims, sobolDims))
	columns := min(bits.Len(uint(max(n, 1))), sobolBits) // no point up to n uses a later one
	rest := directions
	for d := range axes {
		var m [sobolBits + 1]uint32
		if d == 0 {
			for k := 1; k <= columns; k++ {
				m[k] = 1
			}
		} else {
			rest = initialNumbers(rest, columns, &m)
		}
		for k := 1; k <= columns; k++ {
			axes[d].direction[k-1] = m[k] << (sobolBits - k)
		}
	}
	return axes
}

// scramble multiplies the direction numbers and shifts the start.
func (a *sobol) scramble(random *rand.Rand) {
	var row [sobolBits]uint32
	for i := range row { // bit 31 is the first binary digit
		diagonal := uint32(1) << (31 - i)
		row[i] = random.Uint32()&^(2*diagonal-1) | diagonal
	}
	for k, v := range a.direction {
		if v == 0 {
			break
		}
		var scrambled uint32
		for i, mask := range row {
			scrambled |= uint32(bits.OnesCount32(mask&v)&1) << (31 - i)
		}
		a.direction[k] = scrambled
	}
	a.now = random.Uint32()
}

// initialNumbers reads one row of the table, continues it by the recurrence of
// its polynomial up to the given column, and returns the rows after it.
func initialNumbers(rows string, columns int, m *[sobolBits + 1]uint32) string {
	var number [degreeMost + 1]uint32
	count, i := 0, 0
	for rows[i] == '\n' {
		i++
	}
	for ; rows[i] != '\n'; i++ {
		if rows[i] == ' ' {
			count++
			continue
		}
		number[count] = 10*number[count] + uint32(rows[i]-'0')
	}
	polynomial, degree := number[0], count
	for k := 1; k <= columns; k++ {
		if k <= degree {
			m[k] = number[k]
			continue
		}
		m[k] = m[k-degree] ^ m[k-degree]<<degree
		for j := 1; j < degree; j++ {
			if polynomial>>(degree-j)&1 == 1 {
				m[k] ^= m[k-j] << j
			}
		}
	}
	return rows[i:]
}

// next returns the coordinate of the i-th point (from 0), in Gray code order.
func (a *sobol) next(i int) float64 {
	u := (float64(a.now) + 0.5) / (1 << sobolBits) // never 0, never 1
	if k := bits.TrailingZeros(uint(i + 1)); k < sobolBits {
		a.now ^= a.direction[k]
	}
	return u
}
