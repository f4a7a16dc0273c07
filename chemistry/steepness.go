package chemistry

import "math"

// Steeper returns the profile with a bound well that is by times as deep, so
// that a fast discharge leaves more behind (by > 1) or less (by < 1), and the
// charge over the rated hours stays as it is. It is how the steepness of a
// lead-acid block (Peukert's exponent less one, roughly) is drawn. A profile
// without a bound well comes back unchanged, as does any with by <= 0.
func (p Profile) Steeper(by float64) Profile {
	w := p.Wells
	if w.C >= 1 || w.KPerS <= 0 || !(by > 0) {
		return p
	}
	settles := w.KPerS / (w.C * (1 - w.C)) // k' of the closed form, 1/s
	before := w.sharesOver(settles, p.Capacity.RatedHours)
	w.C = 1 / (1 + by*(1-w.C)/w.C)
	w.KPerS = settles * w.C * (1 - w.C)
	p.Capacity.Ratio *= before / w.sharesOver(settles, p.Capacity.RatedHours)
	p.Wells = w
	return p
}

// sharesOver is the share of all the charge that two wells give at a constant
// current that empties the available one in so many hours: Manwell & McGowan,
// Solar Energy 50 (1993) 399.
func (w WellShape) sharesOver(settlesPerS, hours float64) float64 {
	x := settlesPerS * hours * 3600
	gone := -math.Expm1(-x)
	return x * w.C / (gone + w.C*(x-gone))
}
