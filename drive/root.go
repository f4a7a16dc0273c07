package drive

// crossing returns a place between low and high where f changes from not
// positive to positive, to within width, on the positive side. It is regula
// falsi with the Illinois rule (M. Dowell, P. Jarratt, BIT 11 (1971) 168): f
// may have kinks, and a bracket is always kept. f at low is taken as not
// positive and f at high as positive, whatever rounding says.
func crossing(low, high, width float64, f func(s float64) float64) float64 {
	fLow, fHigh := min(f(low), 0), max(f(high), 0)
	side := 0
	for range 60 {
		if high-low <= width {
			break
		}
		mid := (low + high) / 2
		if fHigh > fLow {
			mid = low + (high-low)*(-fLow/(fHigh-fLow))
			// Stay off the ends, or the bracket would close from one side only.
			mid = min(max(mid, low+width/2), high-width/2)
		}
		if v := f(mid); v > 0 {
			high, fHigh = mid, v
			if side > 0 {
				fLow /= 2
			}
			side = 1
		} else {
			low, fLow = mid, v
			if side < 0 {
				fHigh /= 2
			}
			side = -1
		}
	}
	return high
}
