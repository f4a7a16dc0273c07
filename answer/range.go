package answer

import "math"

// Range is a value that is known only between Low and High, with Likely the
// best single guess. Low <= Likely <= High; all three are equal when the value
// is known exactly.
type Range struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// Exactly returns the range that holds v alone.
func Exactly(v float64) Range { return Range{v, v, v} }

// Between returns the range from low to high with its middle as the likely
// value. The ends may come in either order.
func Between(low, high float64) Range {
	if low > high {
		low, high = high, low
	}
	return Range{low, low + (high-low)/2, high}
}

// Spread returns the range low to high with its own likely value. The ends may
// come in either order; a likely value outside them is moved to the nearer end.
func Spread(low, likely, high float64) Range {
	if low > high {
		low, high = high, low
	}
	return Range{low, min(max(likely, low), high), high}
}

// IsExact reports whether the range holds one value only.
func (r Range) IsExact() bool { return r.Low == r.High }

// Contains reports whether v lies in the range, ends included.
func (r Range) Contains(v float64) bool { return r.Low <= v && v <= r.High }

// Valid reports whether all three values are finite and in order.
func (r Range) Valid() bool {
	return !math.IsInf(r.Low, 0) && !math.IsInf(r.High, 0) && r.Low <= r.Likely && r.Likely <= r.High
}

// Scale returns the range multiplied by a factor. A negative factor swaps the
// ends, so that the result is in order again.
func (r Range) Scale(by float64) Range {
	if by < 0 {
		return Range{r.High * by, r.Likely * by, r.Low * by}
	}
	return Range{r.Low * by, r.Likely * by, r.High * by}
}

// Add returns the sum of two ranges, ends added to ends: the widest result that
// the two allow.
func (r Range) Add(o Range) Range {
	return Range{r.Low + o.Low, r.Likely + o.Likely, r.High + o.High}
}

// Mul returns the product of two ranges of values that are not negative, ends
// times ends.
func (r Range) Mul(o Range) Range {
	return Range{r.Low * o.Low, r.Likely * o.Likely, r.High * o.High}
}

// Clamp returns the range with all three values moved between low and high.
func (r Range) Clamp(low, high float64) Range {
	c := func(v float64) float64 { return min(max(v, low), high) }
	return Range{c(r.Low), c(r.Likely), c(r.High)}
}

// Hull returns the smallest range that holds both, with the likely value of r.
func (r Range) Hull(o Range) Range {
	return Range{min(r.Low, o.Low), r.Likely, max(r.High, o.High)}
}
