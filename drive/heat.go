package drive

import (
	"math"

	"example.org/packcheck/internal/portable"
)

// Thermal is one motor as two lumps of heat: the winding, and the case with
// magnets and bearings, which gives to the air. The zero value means that heat
// is not modelled.
type Thermal struct {
	WindingJPerK       float64 // heat capacity of copper and rotor iron, > 0
	CaseJPerK          float64 // heat capacity of can, magnets, end bells, > 0
	WindingToCaseKPerW float64 // > 0
	CaseToAirKPerW     float64 // > 0
	LimitC             float64 // highest winding temperature its insulation stands, see ClassLimitC; 0 = not known
}

// Known reports whether the four constants are all there.
func (t Thermal) Known() bool {
	return t.WindingJPerK > 0 && t.CaseJPerK > 0 && t.WindingToCaseKPerW > 0 && t.CaseToAirKPerW > 0
}

// ThermalTimes is the same two lumps as makers and benches give them.
type ThermalTimes struct {
	WindingToAirKPerW float64 // all the way, in still air
	WindingShare      float64 // share of that between winding and case, 0 to 1
	WindingTauS       float64 // seconds, winding against case
	CaseTauS          float64 // seconds, case against air
	LimitC            float64
}

// ThermalFromTimes turns resistances and time constants into heat capacities.
func ThermalFromTimes(t ThermalTimes) Thermal {
	inner := t.WindingToAirKPerW * t.WindingShare
	outer := t.WindingToAirKPerW - inner
	return Thermal{
		WindingJPerK: t.WindingTauS / inner, WindingToCaseKPerW: inner,
		CaseJPerK: t.CaseTauS / outer, CaseToAirKPerW: outer, LimitC: t.LimitC,
	}
}

// HeatState is the temperature of one motor.
type HeatState struct {
	WindingC float64
	CaseC    float64
}

// HeatStep carries a motor's temperatures over one fixed length of time,
// exactly for constant losses. Make it once with [Thermal.Over].
type HeatStep struct {
	ww, wc, cw, cc float64 // the exponential of the two-node system
	meanW, meanC   float64 // its winding row, in the mean over the step
	inner, outer   float64 // K/W winding to case, case to air
}

// HeatModes is a [HeatState] taken apart into the two mixtures of winding and
// case that each die away at a rate of their own, see [HeatSplit.Modes].
type HeatModes [2]float64

// HeatSplit takes temperatures of one motor apart. Make it once with
// [Thermal.Split].
type HeatSplit struct {
	Rates  HeatModes // how fast the two modes die away, 1/s, the faster first
	b      float64
	ca, cb float64 // what the case counts for in either
}

// Split prepares to take temperatures apart.
func (t Thermal) Split() HeatSplit {
	a, b := 1/(t.WindingJPerK*t.WindingToCaseKPerW), 1/(t.CaseJPerK*t.WindingToCaseKPerW)
	fast, slow := t.eigenvalues()
	return HeatSplit{Rates: HeatModes{-fast, -slow}, b: b, ca: a + fast, cb: a + slow}
}

// Modes takes a state apart.
func (p *HeatSplit) Modes(s HeatState) HeatModes {
	return HeatModes{p.b*s.WindingC + p.ca*s.CaseC, p.b*s.WindingC + p.cb*s.CaseC}
}

// StateOf puts a state together again.
func (p *HeatSplit) StateOf(x HeatModes) HeatState {
	c := (x[0] - x[1]) / (p.Rates[1] - p.Rates[0])
	return HeatState{WindingC: (x[0] - p.ca*c) / p.b, CaseC: c}
}

// eigenvalues are those of [-a a; b -(b+c)], which are real, distinct and
// negative.
func (t Thermal) eigenvalues() (fast, slow float64) {
	a := 1 / (t.WindingJPerK * t.WindingToCaseKPerW)
	b := 1 / (t.CaseJPerK * t.WindingToCaseKPerW)
	c := 1 / (t.CaseJPerK * t.CaseToAirKPerW)
	half := -(a + b + c) / 2
	fast = half - math.Sqrt(half*half-a*c)
	return fast, a * c / fast // product of eigenvalues; avoids cancellation
}

// Over returns the exact propagator over dtS seconds: the matrix exponential
// of the two-node system, so that one long step equals many short ones.
func (t Thermal) Over(dtS float64) HeatStep {
	a := 1 / (t.WindingJPerK * t.WindingToCaseKPerW)
	b := 1 / (t.CaseJPerK * t.WindingToCaseKPerW)
	c := 1 / (t.CaseJPerK * t.CaseToAirKPerW)
	fast, slow := t.eigenvalues()
	ef, es := portable.Exp(fast*dtS), portable.Exp(slow*dtS)
	p := (ef - es) / (fast - slow)
	q := es - p*slow
	// The mean of the exponential: its integral, by the same two numbers.
	mf, ms := -math.Expm1(fast*dtS)/(-fast*dtS), -math.Expm1(slow*dtS)/(-slow*dtS)
	mp := (mf - ms) / (fast - slow)
	mq := ms - mp*slow
	return HeatStep{
		ww: q - p*a, wc: p * a, cw: p * b, cc: q - p*(b+c),
		meanW: mq - mp*a, meanC: mp * a,
		inner: t.WindingToCaseKPerW, outer: t.CaseToAirKPerW,
	}
}

// Advance moves s forward by the step's time with constant losses in one
// motor: copperW in the winding, otherW (friction, iron) in the case.
func (h HeatStep) Advance(s *HeatState, copperW, otherW, ambientC float64) {
	caseEnd := ambientC + h.outer*(copperW+otherW)
	windingEnd := caseEnd + h.inner*copperW
	w, c := s.WindingC-windingEnd, s.CaseC-caseEnd
	s.WindingC = windingEnd + h.ww*w + h.wc*c
	s.CaseC = caseEnd + h.cw*w + h.cc*c
}

// MeanC returns the winding's mean temperature over the step that begins at s, under
// the losses of [HeatStep.Advance].
func (h *HeatStep) MeanC(s *HeatState, copperW, otherW, ambientC float64) float64 {
	caseEnd := ambientC + h.outer*(copperW+otherW)
	windingEnd := caseEnd + h.inner*copperW
	return windingEnd + h.meanW*(s.WindingC-windingEnd) + h.meanC*(s.CaseC-caseEnd)
}

// SteadyC returns where the temperatures end with constant losses.
func (t Thermal) SteadyC(copperW, otherW, ambientC float64) HeatState {
	c := ambientC + t.CaseToAirKPerW*(copperW+otherW)
	return HeatState{WindingC: c + t.WindingToCaseKPerW*copperW, CaseC: c}
}
