package battery

import (
	"math"

	"example.org/packcheck/internal/portable"
)

// Step advances states by a fixed time; get one from [Model.Over]. It never
// changes, so it may be shared. The zero value is a step of no time: it moves nothing.
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
		fast: portable.Exp(-dtS / fast), fastM: -math.Expm1(-dtS/fast) * fast / dtS,
		slow: portable.Exp(-dtS / slow), slowM: -math.Expm1(-dtS/slow) * slow / dtS,
		warm: portable.Exp(-dtS / tau), perWatt: -math.Expm1(-dtS/tau) / m.coolWK,
		bound: m.wells.C < 1,
	}
}

// Advance moves the state on by one step at a constant current (A, positive
// discharging, negative charging) in surroundings of ambientC.
//
// It does not stop at empty: ask [Model.Empty] and the voltage. Charge that
// neither well can take (the available one overfills until its cells stand at
// the profile's greatest charge voltage) is lost: it goes into gas and heat.
func (p *Step) Advance(s *State, currentA, ambientC float64) {
	m := p.m
	if m == nil {
		return
	}
	w := m.warmth(s.TempC)
	z := m.filled(s)
	i, f := place(w.effective(s.Y1Ah*m.headOf, z))
	r := &m.cell.byCharge[i]
	scaled := m.ohms * currentA // volts over one cell's Ohm*Ah
	drop := (r.at.ohm0 + f*r.over.ohm0) * w.ohm * scaled
	if p.bound {
		drop += m.voltsAt(w.effective(z, z)) - m.cells*(r.at.volts+f*r.over.volts)
	}
	settled1, settled2 := m.settled(&w, (r.at.ohm1+f*r.over.ohm1)*w.ohm1*scaled, (r.at.ohm2+f*r.over.ohm2)*w.ohm2*scaled)
	p.move(s, currentA, ambientC, drop, settled1, settled2)
}

// AdvanceFrom is [Step.Advance] for a caller that has already looked at the
// state.
func (p *Step) AdvanceFrom(now *Look, s *State, currentA, ambientC float64) {
	if p.m == nil {
		return
	}
	drop := now.Ohm*currentA + now.fallV
	settled1, settled2 := p.m.settled(&now.warmth, now.ohm1*currentA, now.ohm2*currentA)
	p.move(s, currentA, ambientC, drop, settled1, settled2)
}

// Warm adds heat that came beside the mean current of a step, watts over all of
// it: a current that swings heats a resistance more than its mean does.
func (p *Step) Warm(s *State, watts float64) { s.TempC += watts * p.perWatt }

// Straighten corrects a state that [Step.AdvanceFrom] has led from now to end: it
// takes the resistances, and what is lost between the wells, along straight lines between
// the two, where that takes those of the beginning, and the current along one that rises
// by so many amps over the step, where that takes its mean.
func (p *Step) Straighten(now, end *Look, s *State, currentA, risesA float64) {
	if p.m == nil {
		return
	}
	from1, from2 := p.m.settled(&now.warmth, now.ohm1*currentA, now.ohm2*currentA)
	to1, to2 := p.m.settled(&end.warmth, end.ohm1*currentA, end.ohm2*currentA)
	more1, more2 := (to1-from1)*(1-p.fastM), (to2-from2)*(1-p.slowM)
	if risesA != 0 {
		steep1, steep2 := p.m.steep(&now.warmth, now.ohm1, now.ohm2, currentA)
		more1 += steep1 * risesA * ((1+p.fast)/2 - p.fastM)
		more2 += steep2 * risesA * ((1+p.slow)/2 - p.slowM)
	}
	s.V1 += more1
	s.V2 += more2
	end.EMFV -= more1 + more2
	s.TempC += currentA * (currentA*(end.Ohm-now.Ohm) + end.fallV - now.fallV) / 2 * p.perWatt
}

// SwingOhm is by how many volts an ampere more at the end of the step than in its
// mean may move the branches.
func (p *Step) SwingOhm(now *Look) float64 {
	if p.m == nil {
		return 0
	}
	return now.ohm1*(1-p.fast) + now.ohm2*(1-p.slow)
}

// move advances a state; drop is what the current loses in the resistance and
// between the wells, settled1 and settled2 are where the branches tend to.
func (p *Step) move(s *State, currentA, ambientC, drop, settled1, settled2 float64) {
	v1 := settled1 + (s.V1-settled1)*p.fast
	v2 := settled2 + (s.V2-settled2)*p.slow
	// The heat is what the current loses on its way: in the resistance, into
	// the branches (which turn it into heat sooner or later) and down from
	// the rested voltage to that of the available charge.
	drop += settled1 + (s.V1-settled1)*p.fastM + settled2 + (s.V2-settled2)*p.slowM
	s.TempC = ambientC + (s.TempC-ambientC)*p.warm + currentA*drop*p.perWatt
	s.V1, s.V2 = v1, v2
	total := s.Y1Ah + s.Y2Ah
	y1 := p.keep*s.Y1Ah + p.mix*total - p.use*currentA
	y2 := total - p.hours*currentA - y1
	if currentA < 0 {
		y1, y2 = min(y1, p.m.most1Ah), min(y2, p.m.most2Ah)
	}
	s.Y1Ah, s.Y2Ah = y1, y2
}
