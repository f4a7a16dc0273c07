package drive

import (
	"math"

	"example.org/packcheck/internal/solve"
)

// warming is a motor that stands still under power.
type warming struct {
	q             stalled
	t             Thermal
	ambientC      float64
	perMotor      float64
	coldOhm, perC float64 // of all motors: at 0 degrees C, and more for each degree
}

// heat returns the watts in one motor's winding.
func (w *warming) heat(windingC float64) float64 {
	ohm := w.coldOhm + w.perC*windingC
	a := w.q.volt / (w.q.ohm + ohm)
	if w.q.limitA > 0 && a > w.q.limitA {
		a = w.q.limitA
	}
	return ohm * a * a * w.perMotor
}

// slope is how fast winding and case warm, K/s.
func (w *warming) slope(s HeatState) (windingKPerS, caseKPerS float64) {
	through := (s.WindingC - s.CaseC) / w.t.WindingToCaseKPerW
	return (w.heat(s.WindingC) - through) / w.t.WindingJPerK,
		(through - (s.CaseC-w.ambientC)/w.t.CaseToAirKPerW) / w.t.CaseJPerK
}

// after returns the temperatures after a step, which is exact for constant heat
// and takes the mean heat of each of its halves.
func (w *warming) after(s HeatState, dtS float64) HeatState {
	half := w.t.Over(dtS / 2)
	heat := w.heat(s.WindingC)
	for range 2 {
		now := s
		half.Advance(&s, heat, 0, w.ambientC)
		later := w.heat(s.WindingC)
		s = now
		half.Advance(&s, (heat+later)/2, 0, w.ambientC)
		heat = w.heat(s.WindingC)
	}
	return s
}

// staysBelow reports whether not even the greatest heat on the way to the limit
// leads there, and where the case settles then.
func (w *warming) staysBelow(s HeatState) (caseC float64, never bool) {
	most := max(w.heat(s.WindingC), w.heat(w.t.LimitC))
	if ohm := w.q.ohm; w.coldOhm+w.perC*s.WindingC < ohm && ohm < w.coldOhm+w.perC*w.t.LimitC {
		most = max(most, w.q.volt*w.q.volt/(4*ohm)*w.perMotor) // as much as a source can give
	}
	end := w.t.SteadyC(most, 0, w.ambientC)
	if !(end.WindingC < w.t.LimitC && s.WindingC <= end.WindingC && s.CaseC <= end.CaseC) {
		return 0, false
	}
	settles := solve.Crossing(w.ambientC-1, w.t.LimitC, 1e-6, func(windingC float64) float64 {
		return windingC - w.t.SteadyC(w.heat(windingC), 0, w.ambientC).WindingC
	})
	return w.t.SteadyC(w.heat(settles.Hi), 0, w.ambientC).CaseC, true
}

// Bounds of a step: it warms winding and case by no more than one part in
// warmParts of what the winding may, and grows as both come to rest.
const (
	warmParts  = 28
	warmGrowth = 1.2
	warmShare  = 0.05 // of the sum of both time constants, at the most
	warmSteps  = 2000 // at the most; a hundred are usual
	warmStill  = 1e-7 // of the way to the limit in a step: it has settled
)

// until follows the temperatures to the limit, or to where they settle below
// it.
func (w *warming) until(s HeatState) (seconds, caseC float64, reached bool) {
	if c, never := w.staysBelow(s); never {
		return 0, c, false
	}
	rise := (w.t.LimitC - s.WindingC) / warmParts
	slowS := w.t.WindingJPerK*w.t.WindingToCaseKPerW + w.t.CaseJPerK*w.t.CaseToAirKPerW
	dt := 0.0
	for range warmSteps {
		rate, caseRate := w.slope(s)
		dt = min(rise/math.Abs(rate), rise/math.Abs(caseRate), max(warmGrowth*dt, slowS/200), warmShare*slowS)
		next := w.after(s, dt)
		if next.WindingC >= w.t.LimitC {
			dt = solve.Narrow(solve.Bracket{Lo: 0, Hi: dt, FLo: s.WindingC - w.t.LimitC, FHi: next.WindingC - w.t.LimitC},
				1e-6*dt, func(after float64) float64 { return w.after(s, after).WindingC - w.t.LimitC }).Hi
			return seconds + dt, w.after(s, dt).CaseC, true
		}
		still := dt == warmShare*slowS && math.Abs(next.WindingC-s.WindingC)+math.Abs(next.CaseC-s.CaseC) < warmStill*(w.t.LimitC-w.ambientC)
		seconds += dt
		s = next
		if still {
			break
		}
	}
	return 0, s.CaseC, false
}
