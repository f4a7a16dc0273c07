package battery

import "math"

// Step advances states by a fixed time; get one from [Model.Over]. It never
// changes, so it may be shared.
type Step struct {
	m              *Model
	hours          float64
	keep, mix, use float64 // y1' = keep y1 + mix (y1+y2) - use I
	fast, slow     float64 // what is left of a branch voltage
	fastM, slowM   float64 // its mean over the step
	warm           float64 // what is left of a temperature difference
	perWatt        float64 // kelvin gained per watt over the step
	bound          bool    // there is a bound well
}

// Over prepares steps of dtS seconds (> 0): every exponential is taken here,
// once. At constant current, temperature and resistance one step of 60 s ends
// where sixty of 1 s end; what differs is only that resistance, its
// temperature factor and the heat are taken at each step's beginning.
func (m *Model) Over(dtS float64) Step {
	c := m.wells.over(dtS)
	tau := m.heatJK / m.coolWK
	fast, slow := m.spec.Profile.Fast.TauS, m.spec.Profile.Slow.TauS
	return Step{
		m: m, hours: dtS / 3600, keep: c.keep, mix: c.mix, use: c.use,
		fast: math.Exp(-dtS / fast), fastM: -math.Expm1(-dtS/fast) * fast / dtS,
		slow: math.Exp(-dtS / slow), slowM: -math.Expm1(-dtS/slow) * slow / dtS,
		warm: math.Exp(-dtS / tau), perWatt: -math.Expm1(-dtS/tau) / m.coolWK,
		bound: m.wells.C < 1,
	}
}

// Advance moves the state on by one step at a constant current (A, positive
// discharging, negative charging) in surroundings of ambientC.
//
// It does not stop at empty or full: ask [Model.Empty] and the voltage.
func (p *Step) Advance(s *State, currentA, ambientC float64) {
	now := p.m.Look(s)
	p.AdvanceFrom(&now, s, currentA, ambientC)
}

// AdvanceFrom is [Step.Advance] for a caller that has already looked at the
// state.
func (p *Step) AdvanceFrom(now *Look, s *State, currentA, ambientC float64) {
	m := p.m
	v1 := p.fast*s.V1 + (1-p.fast)*now.ohm1*currentA
	v2 := p.slow*s.V2 + (1-p.slow)*now.ohm2*currentA
	total := s.Y1Ah + s.Y2Ah
	// The heat is what the current loses on its way: in the resistance, into
	// the branches (which turn it into heat sooner or later) and down from
	// the rested voltage to that of the available charge.
	drop := currentA*now.Ohm + (s.V1+v1+s.V2+v2)/2
	if p.bound {
		drop += m.voltsAt(now.warmth.effective(total/m.wells.CapacityAh)) - now.volts
	}
	s.TempC = ambientC + (s.TempC-ambientC)*p.warm + currentA*drop*p.perWatt
	s.V1, s.V2 = v1, v2
	y1 := p.keep*s.Y1Ah + p.mix*total - p.use*currentA
	s.Y2Ah = total - p.hours*currentA - y1
	s.Y1Ah = y1
}
