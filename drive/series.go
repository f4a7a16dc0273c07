package drive

import (
	"math"

	"example.org/packcheck/internal/bend"
)

// order is the highest power that a series is summed up to. More would reach a little
// further and cost as much more.
const order = 12

// series holds the coefficients of powers of a time.
type series [order + 1]float64

// at returns the sum at a time; even and odd powers apart, so that neither waits for the
// other.
func (c *series) at(x float64) float64 {
	square := x * x
	even, odd := c[order], c[order-1]
	for n := order - 2; n > 0; n -= 2 {
		even = even*square + c[n]
		odd = odd*square + c[n-1]
	}
	return (even*x+odd)*x + c[0]
}

// slopeAt returns the sum's slope at a time.
func (c *series) slopeAt(x float64) float64 {
	square := x * x
	even, odd := order*c[order], (order-1)*c[order-1]
	for n := order - 2; n > 0; n -= 2 {
		even = even*square + float64(n)*c[n]
		odd = odd*square + float64(n-1)*c[n-1]
	}
	return even*x + odd
}

// square is the term n of the series squared, but for what its first terms add to it.
func (c *series) square(n, first int) float64 {
	sum, low, high := 0.0, first, n-first
	for ; low < high; low, high = low+1, high-1 {
		sum += c[low] * c[high]
	}
	sum *= 2
	if low == high {
		sum += c[low] * c[low]
	}
	return sum
}

// size is a bound for the sum up to a time.
func (c *series) size(x float64) float64 {
	sum := 0.0
	for n := order; n >= 0; n-- {
		sum = sum*x + math.Abs(c[n])
	}
	return sum
}

// curve makes asinh(x) of the series x, of which it takes one term after the other. With
// r = sqrt(1 + x^2) its slope is dx/r.
type curve struct{ x, r, asinh series }

// rest is the term n, above 0, without what the term n of x adds, which is 1/r[0] of it.
func (b *curve) rest(n int) float64 {
	sum := 0.0
	for j := 1; j < n; j++ {
		sum += float64(j) * b.asinh[j] * b.r[n-j]
	}
	return -sum / (float64(n) * b.r[0])
}

func (b *curve) take(n int, x float64) (asinh float64) {
	b.x[n] = x
	if n == 0 {
		b.r[0], b.asinh[0] = math.Sqrt(1+x*x), bend.Asinh(x)
	} else {
		b.asinh[n] = b.rest(n) + x/b.r[0]
		b.r[n] = (b.x.square(n, 0) - b.r.square(n, 1)) / (2 * b.r[0])
	}
	return b.asinh[n]
}
