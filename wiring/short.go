package wiring

import (
	"math"

	"example.org/packcheck/tables"
)

// PackEnd is the pack as a fault sees it.
type PackEnd struct {
	FullV float64 // fully charged, at rest
	Ohm   float64 // of the whole pack, at its lowest
	LoadA float64 // that flowed for good before the fault and warmed the wire; 0: the wire is as hot as its rating
}

// Short is a short circuit at one place of the path.
type Short struct {
	Where    string  // "behind the fuse", "along the wire", "far end"
	CurrentA float64 // prospective: full voltage over all resistance up to there
	ClearS   float64 // latest time for the fuse to open; +Inf without one, or if it need not
	LimitS   float64 // time that the weakest wire in the loop stands it, k2 S2 / I2
	CarriedA float64 // what that wire carries for good, in the surroundings
}

// Protected reports whether the wire outlasts the fault: the fuse opens in
// time, or the current is one that the wire carries for good.
func (s Short) Protected() bool { return s.ClearS <= s.LimitS || s.CurrentA <= s.CarriedA }

// margin is the wire's limit over the clearing time; larger is safer.
func (s Short) margin() float64 {
	if s.CurrentA <= s.CarriedA {
		return math.Inf(1)
	}
	return s.LimitS / s.ClearS
}

// warmed is what the insulation of a run stands in a fault after a lasting current.
func (r *Run) warmed(loadA, ambientC float64) tables.Insulation {
	if !(loadA > 0) {
		return r.Insulation
	}
	return r.Insulation.From(r.Ampacity.ConductorC(loadA/r.wires(), ambientC))
}

// shortPlaces is the number of places along the wire that are tried.
const shortPlaces = 33

// sameMargin is how near margins count as the same, of which the nearest place is told:
// where the fuse melts as the wire does, without losing heat, that is all of them.
const sameMargin = 1e-9

// Shorts returns the short circuit right behind the fuse (largest current),
// the one at the far end of the wire (smallest current), and the one along
// the way that leaves the wire the least margin. The fault itself has no
// resistance; switch, controller and motors lie beyond it. The wire is cold
// for the current, so that it is the largest, and as warm as the load made it,
// at most at its rated temperature, for what it stands. Resistance of the pack must be above 0 or the current
// right behind the fuse is taken as infinite.
func (p *Path) Shorts(pack PackEnd, ambientC float64) (near, far, worst Short) {
	var fuseOhm, reach float64
	if p.fuse != nil {
		fuseOhm = p.fuse.ColdOhm()
		if d := p.fuse.distanceM; d > 0 {
			reach = d
		}
	}
	var wireOhm, lengthM, jointOhm float64
	var weakest tables.Insulation // of the run that stands the least, and its area
	weakestMM2 := math.Inf(1)
	for i := range p.runs {
		r := &p.runs[i]
		wireOhm += r.ohm20()
		lengthM += r.OneWayM
		if in, mm2 := r.warmed(pack.LoadA, ambientC), r.Wire.AreaMM2*r.wires(); i == 0 || in.K*mm2 < weakest.K*weakestMM2 {
			weakest, weakestMM2 = in, mm2
		}
	}
	for _, c := range p.contacts {
		if c.Kind == Joint {
			jointOhm += c.Ohm * c.count()
		}
	}
	var opens Curve
	if p.fuse != nil {
		opens = p.fuse.At(ambientC)
	}
	carriedA := math.Inf(1)
	for _, r := range p.runs {
		carriedA = min(carriedA, r.CarriesA(ambientC))
	}
	first := 0.0
	if lengthM > 0 {
		first = min(1, reach/lengthM)
	}
	for i := range shortPlaces {
		share := first + (1-first)*float64(i)/(shortPlaces-1)
		s := Short{
			Where:    "along the wire",
			CurrentA: pack.FullV / (pack.Ohm + fuseOhm + share*(wireOhm+jointOhm)), ClearS: math.Inf(1), LimitS: math.Inf(1), CarriedA: carriedA,
		}
		if p.fuse != nil {
			s.ClearS = opens.Opens(s.CurrentA).LatestS
		}
		if len(p.runs) > 0 {
			s.LimitS = weakest.WithstandS(weakestMM2, s.CurrentA)
		}
		switch i {
		case 0:
			s.Where = "behind the fuse"
			near, worst = s, s
		case shortPlaces - 1:
			s.Where = "far end"
			far = s
		}
		if s.margin() < worst.margin()*(1-sameMargin) {
			worst = s
		}
	}
	return near, far, worst
}
