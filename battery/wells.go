package battery

import (
	"math"

	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/solve"
)

// Wells is the kinetic battery model by itself (Manwell & McGowan, Solar
// Energy 50 (1993) 399): charge in an available and a bound well with heads
// h1 = y1/c and h2 = y2/(1-c), and
//
//	dy1/dt = -I + k (h2 - h1),  dy2/dt = -k (h2 - h1)
//
// The closed form contains k' = k/(c(1-c)), see [Wells.KPrimePerS]. Papers
// differ in which of the two they call k; mixing them up is the classic
// error.
type Wells struct {
	CapacityAh float64 // both wells full, Ah
	C          float64 // share of the available well, (0, 1]; 1 = no bound well
	KPerS      float64 // valve constant k, 1/s
}

// WellsFromKPrime makes wells from the k' that papers usually print.
func WellsFromKPrime(capacityAh, c, kPrimePerS float64) Wells {
	return Wells{CapacityAh: capacityAh, C: c, KPerS: kPrimePerS * c * (1 - c)}
}

// KPrimePerS returns k' = k/(c(1-c)), 1/s; 0 when there is no bound well.
func (w Wells) KPrimePerS() float64 {
	if w.C >= 1 {
		return 0
	}
	return w.KPerS / (w.C * (1 - w.C))
}

// Charge is the charge in the two wells.
type Charge struct {
	AvailableAh, BoundAh float64
}

// Full returns both wells full.
func (w Wells) Full() Charge {
	return Charge{w.C * w.CapacityAh, (1 - w.C) * w.CapacityAh}
}

// wellStep holds the closed form over one time at constant current:
// y1' = keep y1 + mix (y1+y2) - use I.
type wellStep struct {
	keep, mix, use float64
}

// over returns the closed form over dtS seconds, for currents in A and charge
// in Ah.
func (w Wells) over(dtS float64) wellStep {
	hours := dtS / 3600
	if w.C >= 1 {
		return wellStep{keep: 0, mix: 1, use: hours}
	}
	x := w.KPrimePerS() * dtS // k' t
	gone := -math.Expm1(-x)
	return wellStep{keep: 1 - gone, mix: w.C * gone, use: hours * (ratio1(x) + w.C*ratio2(x))}
}

// ratio1 is (1-e^-x)/x, 1 at x = 0.
func ratio1(x float64) float64 {
	if x < 1e-9 {
		return 1 - x/2
	}
	return -math.Expm1(-x) / x
}

// ratio2 is (x-1+e^-x)/x, 0 at x = 0.
func ratio2(x float64) float64 {
	if x < 1e-3 { // the difference cancels: take its series
		return x/2 - x*x/6 + x*x*x/24
	}
	return (x + math.Expm1(-x)) / x
}

// After returns the charge after a constant current (A, positive
// discharging) over so many seconds. The available well may come out
// negative: the battery was empty before.
func (w Wells) After(c Charge, currentA, seconds float64) Charge {
	s := w.over(seconds)
	total := c.AvailableAh + c.BoundAh
	y1 := s.keep*c.AvailableAh + s.mix*total - s.use*currentA
	return Charge{y1, total - currentA*seconds/3600 - y1}
}

// MostA returns the greatest constant current that the charge can bear for so
// many seconds (I_dmax of the literature).
func (w Wells) MostA(c Charge, seconds float64) float64 {
	s := w.over(seconds)
	return (s.keep*c.AvailableAh + s.mix*(c.AvailableAh+c.BoundAh)) / s.use
}

// MostChargeA returns the greatest constant charging current, as a positive
// number, that the available well can take in for so many seconds (-I_cmax of
// the literature).
func (w Wells) MostChargeA(c Charge, seconds float64) float64 {
	s := w.over(seconds)
	return (w.C*w.CapacityAh - s.keep*c.AvailableAh - s.mix*(c.AvailableAh+c.BoundAh)) / s.use
}

// LastsS returns how many seconds a constant current (A, > 0) can be drawn
// until the available well is empty; +Inf when it never is.
func (w Wells) LastsS(c Charge, currentA float64) float64 {
	if !(currentA > 0) {
		return math.Inf(1)
	}
	if c.AvailableAh <= 0 {
		return 0
	}
	// All the charge at this current bounds the time from above, and the
	// available charge falls without a turn while a current flows out of a
	// battery whose wells started level or with the bound one higher.
	most := (c.AvailableAh + c.BoundAh) / currentA * 3600
	return solve.Crossing(0, most, 0, func(seconds float64) float64 {
		return -w.After(c, currentA, seconds).AvailableAh
	}).Hi
}

// CapacityAt returns the charge that a full battery gives at the constant
// current that empties it in so many seconds.
func (w Wells) CapacityAt(seconds float64) float64 {
	return w.MostA(w.Full(), seconds) * seconds / 3600
}

// Peukert is the constant-current law with its reference hours (Peukert 1897):
//
//	t = H (C/(I H))^k
//
// It is a statement about one constant current from full to empty. Applied to
// a varying current, or to what is left after another current, it goes wrong
// (Doerffel & Sharkh, J. Power Sources 155 (2006) 395): use a [Model] there.
type Peukert struct {
	CapacityAh float64 // capacity at the reference rate
	Hours      float64 // reference hours H, 20 for most lead-acid labels
	Exponent   float64 // k, 1 = no loss with current
}

// LastsH returns how many hours a constant current lasts; +Inf at no current.
func (p Peukert) LastsH(currentA float64) float64 {
	if !(currentA > 0) {
		return math.Inf(1)
	}
	return p.Hours * portable.Pow(p.CapacityAh/(currentA*p.Hours), p.Exponent)
}

// CapacityAtA returns the charge that a constant current takes out.
func (p Peukert) CapacityAtA(currentA float64) float64 { return currentA * p.LastsH(currentA) }

// PeukertFromTwo finds the exponent from two constant-current runs, and takes
// the slower one for reference. It needs two different currents.
func PeukertFromTwo(currentA1, hours1, currentA2, hours2 float64) Peukert {
	if currentA1 > currentA2 {
		currentA1, hours1, currentA2, hours2 = currentA2, hours2, currentA1, hours1
	}
	return Peukert{
		CapacityAh: currentA1 * hours1, Hours: hours1,
		Exponent: math.Log(hours1/hours2) / math.Log(currentA2/currentA1),
	}
}

// PeukertOneAmpereH is the naive form t = Cp/I^k, in hours, where Cp is the
// capacity at one ampere. It is here because people meet it; giving it a 20 h
// or 10 h rating for Cp is its known misuse and is wrong by a factor of
// (C/H)^(k-1).
func PeukertOneAmpereH(capacityAtOneA, exponent, currentA float64) float64 {
	return capacityAtOneA / portable.Pow(currentA, exponent)
}
