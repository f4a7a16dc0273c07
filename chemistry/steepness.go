package chemistry

import "math"

// Steeper returns the profile with a bound well that is by times as deep, so
// that a fast discharge leaves more behind (by > 1) or less (by < 1), and the
// charge over some hours stays as it is: those that the charge is known over. It is how
// the steepness of a lead-acid block (Peukert's exponent less one, roughly) is drawn. A
// profile without a bound well comes back unchanged, as does any with by <= 0.
func (p Profile) Steeper(by, hours float64) Profile {
	w := p.Wells
	if w.C >= 1 || w.KPerS <= 0 || !(by > 0) {
		return p
	}
	settles := w.KPerS / (w.C * (1 - w.C)) // k' of the closed form, 1/s
	before := w.sharesOver(settles, hours)
	w.C = 1 / (1 + by*(1-w.C)/w.C)
	w.KPerS = settles * w.C * (1 - w.C)
	p.Capacity.Ratio *= before / w.sharesOver(settles, hours)
	p.Wells = w
	return p
}

// SettlesHours is how long a lithium cell takes to give what a fast discharge has left
// behind: between those of seven cells at 20 h, 2 h, 1 h and 30 min (source
// "left-behind-lithium" of package tables).
const SettlesHours = 2.0

// Leaving returns a profile without a bound well with one that keeps such a share of the
// charge, from 0 to less than 1, from a discharge at once, while the charge over some
// hours stays as it is. A profile that has a bound well comes back unchanged.
func (p Profile) Leaving(share, hours float64) Profile {
	if p.Wells.C < 1 || !(share > 0 && share < 1) {
		return p
	}
	const settles = 1 / (SettlesHours * 3600)
	p.Wells.C = 1 - share
	p.Wells.KPerS = settles * p.Wells.C * share
	p.Capacity.Ratio /= p.Wells.sharesOver(settles, hours)
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
