package drive

import "math"

// How long a series holds is asked of each, and no figure hangs on its last digits: the
// logarithm and the power for it are right to some 2e-4 and cost a fifth of those that are
// right to the last. Every product is rounded by itself, so that they are the same on every
// processor.

// roughLog2 is the binary logarithm of a positive number, within 3e-4: that of its leading
// digits by the series of (x-1)/(x+1). Of zero it is some -1023.
func roughLog2(x float64) float64 {
	const (
		digits = 52
		bias   = 1023
		first  = 2 * math.Log2E
		third  = first / 3
		fifth  = first / 5
	)
	if !(x <= math.MaxFloat64) {
		return x
	}
	bits := math.Float64bits(x)
	m := math.Float64frombits(bits&(1<<digits-1) | bias<<digits) // 1 to 2
	s := (m - 1) / (m + 1)
	q := float64(s * s)
	return float64(int(bits>>digits)-bias) + float64(s*(first+float64(q*(third+float64(q*fifth)))))
}

// roughExp2 is 2 to the power of x between -1000 and 1000, within 6e-5 of itself: that of
// what x is beyond a whole number by the exponential series.
func roughExp2(x float64) float64 {
	if !(math.Abs(x) < 1000) {
		return math.Exp2(x)
	}
	whole := math.Floor(x + 0.5)
	r := float64((x - whole) * math.Ln2)
	q := float64(r * r)
	value := 1 + r + float64(q*(1./2+float64(r*(1./6))+float64(q*(1./24))))
	return value * math.Float64frombits(uint64(int(whole)+1023)<<52)
}
