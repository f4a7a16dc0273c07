package drive_test

import (
	"math"
	"testing"

	"example.org/packcheck/drive"
)

// The reference follows a blocked winding in steps of a thousandth of its time
// to the limit, by Heun's method on the same two lumps.
func TestTheTimeThatABlockedWindingStandsIsThatOfTinySteps(t *testing.T) {
	for _, limitC := range []float64{60, 105, 155} {
		for _, limitA := range []float64{0, 15, 30} {
			v, p := tractor(), toolPack()
			v.Motor.Thermal.LimitC = limitC
			c := drive.Controller{Chopper: true, LimitA: limitA}
			start := drive.HeatState{WindingC: 20, CaseC: 20}
			got := drive.BlockedWheels(v, c, p, start, 20)
			th, s, clock := v.Motor.Thermal, start, 0.0
			dt := 0.002 * th.WindingJPerK * th.WindingToCaseKPerW
			if got.ReachesLimit {
				dt = got.ToLimitS / 1000
			}
			slope := func(s drive.HeatState) (w, c float64) {
				e := v.Equivalent(s.WindingC)
				a := p.OCVV / (p.R0Ohm + p.PathOhm + e.Ohm)
				if limitA > 0 {
					a = min(a, limitA)
				}
				through := (s.WindingC - s.CaseC) / th.WindingToCaseKPerW
				return (e.Ohm*a*a/float64(v.Motors) - through) / th.WindingJPerK,
					(through - (s.CaseC-20)/th.CaseToAirKPerW) / th.CaseJPerK
			}
			last := s
			for s.WindingC < limitC && clock < 20000 {
				last = s
				w0, c0 := slope(s)
				w1, c1 := slope(drive.HeatState{WindingC: s.WindingC + dt*w0, CaseC: s.CaseC + dt*c0})
				s.WindingC += dt * (w0 + w1) / 2
				s.CaseC += dt * (c0 + c1) / 2
				clock += dt
			}
			if got.ReachesLimit != (s.WindingC >= limitC) {
				t.Errorf("limit of %g degC at %g A: reached is %v, tiny steps come to %.1f degC", limitC, limitA, got.ReachesLimit, s.WindingC)
				continue
			}
			if !got.ReachesLimit {
				if math.Abs(got.CaseC-s.CaseC) > 0.1 {
					t.Errorf("limit of %g degC at %g A: case settles at %.2f degC, want %.2f", limitC, limitA, got.CaseC, s.CaseC)
				}
				continue
			}
			want := clock - dt*(s.WindingC-limitC)/(s.WindingC-last.WindingC)
			if math.Abs(got.ToLimitS/want-1) > 1e-3 || math.Abs(got.CaseC-s.CaseC) > 0.1 {
				t.Errorf("limit of %g degC at %g A: %.4f s and %.3f degC, want %.4f s and %.3f degC", limitC, limitA, got.ToLimitS, got.CaseC, want, s.CaseC)
			}
		}
	}
}
