package ride

import (
	"math"

	"example.org/packcheck/drive"
	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/solve"
)

// supply is what stands behind the motor-side terminals during one step: the
// pack's electromotive force, every ohm up to the controller, and the share of
// the volts that a soft start lets through.
//
// How the duty rises stands in [motion]: with four numbers it is kept in registers,
// with five it is not, and a step takes twice as long.
type supply struct {
	emfV float64 // at the step's beginning ...
	perS float64 // ... and how it rises
	ohm  float64 // pack and path together
	duty float64 // 0 to 1, at the step's beginning
}

// stretch is what one step of driving came to.
type stretch struct {
	batteryAs  float64 // charge taken from the pack, ampere-seconds
	batteryA2s float64 // square of that current over time
	motorA2s   float64 // square of the motor-side current over time
	atS        float64 // how long it is so far
	batteryAs2 float64 // the pack's current times the time since the beginning, over time
	metres     float64
	speedMS    float64 // at the end
	firstA     float64 // battery current at the beginning ...
	lastA      float64 // ... and at the end
	cappedS    float64 // how long the current sat at its limit or at the grip ...
	cappedAs   float64 // ... the charge taken in that time ...
	cappedA    float64 // ... and the battery current at its end
	stopsS     float64 // when the vehicle comes to rest, +Inf when it does not
	stuck      bool    // at rest, and the motors cannot change that
}

// motion moves the vehicle: motors, gears and ground seen as one linear
// circuit with a mass behind it.
type motion struct {
	eq        drive.Equivalent
	coldOhm   float64 // of the motors with the windings at 0 degrees C ...
	ohmPerC   float64 // ... and how it rises
	rubN      float64 // the motors' own friction before the gears, of which LossN is left behind them
	perMotor  float64 // 1 over how many there are
	holdA     float64 // the current that holdN takes
	holdN     float64 // resistance that is always there: ground, slope, the motors' own friction
	dragNS2M2 float64
	slipN     float64 // push left over for the mass while the wheels slip
	gripA     float64 // motor-side current at which they do, +Inf when never
	limitA    float64 // motor-side current limit, +Inf when there is none
	outV      float64 // step-down converter, 0 = none
	outShare  float64 // what comes through
	dutyPerS  float64 // how the duty rises during the step under way ...
	ohmPerS   float64 // ... and the motors' resistance, whose mean stands in eq
	endMS     float64 // about how fast the vehicle is at the end of it
}

// after is the supply so many seconds on.
func (m *motion) after(s supply, t float64) supply {
	s.emfV += s.perS * t
	s.duty += m.dutyPerS * t
	return s
}

func newMotion(v *drive.Vehicle, c *drive.Controller, windingC float64) motion {
	m := motion{
		eq:        v.Equivalent(windingC),
		coldOhm:   v.Equivalent(0).Ohm,
		dragNS2M2: v.DragNS2PerM2,
		gripA:     math.Inf(1),
		limitA:    math.Inf(1),
		outV:      c.Converter.OutV,
		outShare:  1,
	}
	m.ohmPerC = v.Equivalent(1).Ohm - m.coldOhm // copper's resistance is a straight line
	m.rubN, m.perMotor = m.eq.LossN/v.GearEfficiency, 1/float64(v.Motors)
	m.holdN = m.eq.LossN + v.RollN + v.GradeN
	m.holdA = m.holdN / m.eq.NewtonPerA
	if v.GripN > 0 {
		m.gripA = (v.GripN + m.eq.LossN) / m.eq.NewtonPerA
		m.slipN = v.GripN - v.RollN - v.GradeN
	}
	if c.Chopper && c.LimitA > 0 {
		m.limitA = c.LimitA
	}
	if m.outV > 0 {
		m.outShare = c.Converter.Passes()
		if c.Converter.LimitA > 0 {
			m.limitA = min(m.limitA, c.Converter.LimitA)
		}
	}
	return m
}

// warmed takes the motors' resistance over a step that begins at one winding
// temperature and has another in its mean.
func (m *motion) warmed(beginC, meanC, perS float64) {
	m.eq.Ohm = m.coldOhm + m.ohmPerC*meanC
	m.ohmPerS = 0
	if more := m.ohmPerC * (meanC - beginC); math.Abs(more) > sameOhm*m.eq.Ohm {
		m.ohmPerS = 2 * more * perS
	}
}

// sameOhm is by how much of itself the motors' resistance may be off at the ends of a
// step before its way there is followed.
const sameOhm = 1e-3

// board is the supply as the motors' side sees it: behind a converter its
// regulated volts, stiff up to its limit.
func (m *motion) board(s supply) supply {
	if m.outV == 0 {
		return s
	}
	s.ohm = 0
	if s.emfV >= m.outV {
		s.emfV, s.perS = m.outV, 0
	}
	return s
}

// circuitOhm is all resistance in the motors' way at some duty. A chopper reflects
// the supply's by the square of it.
func (m *motion) circuitOhm(b supply, duty float64) float64 { return m.eq.Ohm + duty*duty*b.ohm }

// pull is what the motors would draw at rest, with the resistance that they meet
// halfway through a step: amps + perS t + perS2 t^2. What another resistance at
// another moment does to the current of a moving motor is counted in.
type pull struct {
	amps, perS, perS2, ohm float64
}

// after is the pull so many seconds on.
func (p pull) after(t float64) pull {
	p.amps += (p.perS + p.perS2*t) * t
	p.perS += 2 * p.perS2 * t
	return p
}

// standing returns the pull of a step of dt seconds from speed v on.
func (m *motion) standing(b supply, v, dt float64) pull {
	if m.dutyPerS == 0 && m.ohmPerS == 0 {
		ohm := m.circuitOhm(b, b.duty)
		return pull{amps: b.duty * b.emfV / ohm, perS: b.duty * b.perS / ohm, ohm: ohm}
	}
	// A parabola through its beginning, middle and end. In the middle the resistance
	// is the one that it is counted with, and speed does not matter.
	mid, end := b.duty+m.dutyPerS*dt/2, b.duty+m.dutyPerS*dt
	more := m.ohmPerS * dt / 2
	ohm0, ohm, ohm1 := m.circuitOhm(b, b.duty)-more, m.circuitOhm(b, mid), m.circuitOhm(b, end)+more
	k := m.eq.VoltPerMS
	first := b.duty*b.emfV/ohm0 + k*v*(1/ohm-1/ohm0)
	middle := mid * (b.emfV + b.perS*dt/2) / ohm
	last := end*(b.emfV+b.perS*dt)/ohm1 + k*m.endMS*(1/ohm-1/ohm1)
	return pull{amps: first, perS: (4*middle - 3*first - last) / dt, perS2: 2 * (first - 2*middle + last) / (dt * dt), ohm: ohm}
}

// batteryA is what the pack gives for a motor-side current at speed v. Where
// a chopper or a converter sets the motors' volts the current follows from
// the power; elsewhere it is duty times the motors' current.
func (m *motion) batteryA(s supply, v, motorA float64, chopped bool) float64 {
	if !chopped && m.outV == 0 {
		return s.duty * motorA
	}
	return m.drawn(s, motorA*(m.eq.VoltPerMS*v+motorA*m.eq.Ohm))
}

// drawn is the current at which the supply gives so many watts to the motors,
// with what a converter loses on top; what the supply can give at the most
// where that is less.
func (m *motion) drawn(s supply, watts float64) float64 {
	watts /= m.outShare
	under := s.emfV*s.emfV - 4*s.ohm*watts
	if under <= 0 {
		return s.emfV / (2 * s.ohm)
	}
	// The form that keeps its digits when ohm is small, and works at zero.
	return 2 * watts / (s.emfV + math.Sqrt(under))
}

// swings is by how much more than for its mean power the supply of a converter gives in
// the mean of a current of such a variance: its volts fall with the current.
func (m *motion) swings(s supply, meanA, variance float64) float64 {
	// Near the most that the supply can give, its bend is no longer a matter of a variance.
	return s.ohm * variance / max(s.emfV-2*s.ohm*meanA, s.emfV/4)
}

// regulates reports whether the converter holds its output at speed v.
func (m *motion) regulates(s supply, v float64) bool {
	b := m.board(s)
	amps := min((b.duty*b.emfV-m.eq.VoltPerMS*v)/m.circuitOhm(b, b.duty), m.limitA, m.gripA)
	watts := max(0, amps) * (m.eq.VoltPerMS*v + amps*m.eq.Ohm)
	lowestV := m.outV / m.outShare
	if (s.emfV-lowestV)*m.outV >= watts*s.ohm {
		return true // even with the bus as low as can be
	}
	in := m.drawn(s, watts)
	bus := s.emfV - in*s.ohm
	return bus >= lowestV && in*bus*m.outShare >= watts*(1-1e-9)
}

// run drives for dt seconds from speed v. The supply's electromotive force runs
// along a straight line, and air drag is taken along its tangent at speed near;
// within that the motion is exact: constant force while the current sits at its
// limit or at the grip of the wheels, an exponential approach after that.
//
// A converter whose supply cannot give what its output would take passes on what comes
// through of the supply's volts, as in [drive.Steady].
func (m *motion) run(out *stretch, s supply, v, near, dt float64) {
	if m.outV > 0 && !m.regulates(s, v) {
		through := *m
		through.outV, through.outShare = 0, 1
		s.emfV, s.perS, s.ohm = s.emfV*m.outShare, s.perS*m.outShare, s.ohm*m.outShare
		through.run(out, s, v, near, dt)
		return
	}
	*out = stretch{stopsS: math.Inf(1), speedMS: v}
	stand := m.standing(m.board(s), v, dt)
	capA := min(m.limitA, m.gripA)
	freeA := stand.amps - m.eq.VoltPerMS*v/stand.ohm
	if freeA <= capA {
		out.firstA = m.batteryA(s, v, freeA, false)
		firstA := out.firstA
		lastA := m.approach(out, s, stand, near, dt)
		if m.dutyPerS == 0 || lastA <= capA {
			return
		}
		// The soft start leads to the cap within the step.
		t := solve.Narrow(solve.Bracket{Lo: 0, Hi: dt, FLo: freeA - capA, FHi: lastA - capA}, whenCapped*dt, func(t float64) float64 {
			*out = stretch{stopsS: math.Inf(1), speedMS: v, firstA: firstA}
			return m.approach(out, s, stand, near, t) - capA
		}).Hi
		*out = stretch{stopsS: math.Inf(1), speedMS: v, firstA: firstA}
		m.approach(out, s, stand, near, t)
		if t < dt {
			m.capped(out, m.after(s, t), dt-t)
		}
		return
	}
	// The free current falls with speed; where it meets the cap this part is over.
	first, bends := m.cappedRise(v, dt)
	over, closing, curls := freeA-capA, m.eq.VoltPerMS/stand.ohm*first-stand.perS, stand.perS2-m.eq.VoltPerMS/stand.ohm*bends
	t := min(dt, soonest(over, closing, -curls))
	out.firstA = m.batteryA(s, v, capA, m.limitA <= m.gripA)
	if t > 0 {
		m.capped(out, s, t)
		out.cappedS, out.cappedAs, out.cappedA = t, out.batteryAs, out.lastA
	}
	if dt > t {
		m.approach(out, m.after(s, t), stand.after(t), near, dt-t)
	}
}

// whenCapped is how exactly that is, as a share of the step.
const whenCapped = 1e-3

// cappedRise is how the vehicle gains speed from v on while the current sits at its
// limit or at the grip of the wheels, over such a time: v + first t + bends t^2. It ends
// as fast as the mean drag of a speed that rises along a line lets it.
func (m *motion) cappedRise(v, t float64) (first, bends float64) {
	push := m.slipN
	if m.limitA <= m.gripA {
		push = m.eq.NewtonPerA*m.limitA - m.holdN
	}
	push -= m.dragNS2M2 * v * v
	first = push / m.eq.InertiaKg
	b := m.eq.InertiaKg + m.dragNS2M2*v*t
	mean := 2 * push / (b + math.Sqrt(max(b*b+4./3*m.dragNS2M2*t*t*push, 0)))
	return first, (mean - first) / t
}

// capped adds such a time to out.
func (m *motion) capped(out *stretch, s supply, t float64) {
	v, capA, chopped := out.speedMS, min(m.limitA, m.gripA), m.limitA <= m.gripA
	first, bends := m.cappedRise(v, t)
	out.stuck = v == 0 && first <= 0
	rises, bow := (first+bends*t)*t, -bends*t*t // bow: four times by how much it is faster halfway than a line has it
	end, mean, mid, rollsS := v+rises, v+rises/2+bow/6, v+rises/2+bow/4, t
	if end < 0 {
		rollsS = -v / (first + bends*t)
		out.stopsS, end, mean, mid = rollsS, 0, v/2, v/2
	}
	firstA := m.batteryA(s, v, capA, chopped)
	out.lastA = m.batteryA(m.after(s, t), end, capA, chopped)
	meanA := (firstA + 4*m.batteryA(m.after(s, t/2), mid, capA, chopped) + out.lastA) / 6 // Simpson's rule
	out.motorA2s += capA * capA * t
	out.metres += mean * rollsS
	out.draws(meanA, (out.lastA-firstA)/12, t)
	out.speedMS = end
	out.batteryA2s += (firstA*(firstA+out.lastA) + out.lastA*out.lastA) / 3 * t
}

// approach adds the exponential part of a step to out: the current
//
//	i(t) = stand(t) - k v(t) / ohm,  v(t) = running(t) + lag exp(-rate t)
//
// where stand is what the motors would draw at rest, and running is the speed that
// the supply of the moment would lead to, less what it lags behind the parabola that
// it runs along. It returns the motors' current at the end.
func (m *motion) approach(out *stretch, s supply, stand pull, near, dt float64) float64 {
	v := out.speedMS
	push := m.eq.NewtonPerA*stand.amps - m.holdN
	if push <= 0 && v == 0 {
		t := min(dt, stand.comesTo(m.holdA)) // within a soft start it may yet move off
		m.stand(out, s, stand, t)
		if dt -= t; dt <= 0 {
			out.stuck = true
			return stand.after(t).amps
		}
		s, stand, push = m.after(s, t), stand.after(t), 0
	}
	push += m.dragNS2M2 * near * near
	damping := m.eq.NewtonPerA*m.eq.VoltPerMS/stand.ohm + 2*m.dragNS2M2*near // N per m/s
	rate := damping / m.eq.InertiaKg
	perS2 := m.eq.NewtonPerA * stand.perS2 / damping
	perS := m.eq.NewtonPerA*stand.perS/damping - 2*perS2/rate // of the running speed
	running := push/damping - perS/rate
	lag := v - running
	x, e := rate*dt, 0.0
	if x < over {
		e = portable.Exp(-x)
	}
	// Means over the step: of the exponential, of it times the share of the time that is
	// over, and of it times that share squared.
	share, ramp, square := 1-x/2+x*x/6, 1./2-x/3+x*x/8, 1./3-x/4+x*x/10
	if x > 1e-3 { // below, the differences cancel
		share = (1 - e) / x
		ramp = (share - e) / x
		square = (2*ramp - e) / x
	}
	mean, end := running+(perS/2+perS2*dt/3)*dt+lag*share, running+(perS+perS2*dt)*dt+lag*e
	if end < 0 {
		out.stopsS = out.cappedS + stops(running, perS, perS2, lag, rate, dt)
		mean, end = max(mean, 0), 0
	}

	// The current is a parabola and an exponential, too.
	k := m.eq.VoltPerMS / stand.ohm
	lineA, risesA, bendsA, swingA := stand.amps-k*running, (stand.perS-k*perS)*dt, (stand.perS2-k*perS2)*dt*dt, -k*lag
	meanA, lastA := lineA+risesA/2+bendsA/3+swingA*share, lineA+risesA+bendsA+swingA*e
	batteryA := m.batteryA(m.after(s, dt/2), mean, meanA, false)
	moreA := risesA + bendsA + 12*swingA*(ramp-share/2) // of the line that the current runs along
	if m.dutyPerS != 0 {
		// Duty and current rise together, and the pack gives their product.
		more := m.dutyPerS * dt * moreA / 12
		if m.outV > 0 {
			more *= m.outV / (m.outShare * s.emfV)
		}
		batteryA += more
	}
	motorA2 := lineA*(lineA+risesA) + risesA*risesA/3 + 2*swingA*(lineA*share+risesA*ramp) + swingA*swingA*share*(1+e)/2
	if bendsA != 0 {
		motorA2 += bendsA * (2./3*lineA + risesA/2 + bendsA/5 + 2*swingA*square)
	}
	out.motorA2s += motorA2 * dt
	ratio := 0.0
	if meanA != 0 {
		ratio = batteryA / meanA
		if m.outV > 0 && s.emfV > 0 {
			batteryA += m.swings(s, batteryA, ratio*ratio*max(motorA2-meanA*meanA, m.dutyPerS*m.dutyPerS*dt*dt*meanA*meanA/3))
			ratio = batteryA / meanA
		}
		out.batteryA2s += ratio * ratio * motorA2 * dt
	}
	out.draws(batteryA, (ratio*moreA+m.dutyPerS*dt*meanA)/12, dt)
	out.metres += mean * dt
	out.lastA = m.batteryA(m.after(s, dt), end, lastA, false)
	out.speedMS = end
	return lastA
}

// comesTo is when the pull reaches so many amps, which it begins below; +Inf when it
// does not.
func (p pull) comesTo(amps float64) float64 { return soonest(amps-p.amps, p.perS, p.perS2) }

// soonest is when perS t + perS2 t^2 first makes up for what is short; +Inf when it
// never does.
func soonest(short, perS, perS2 float64) float64 {
	under := perS*perS + 4*perS2*short
	if !(under >= 0 && perS+math.Sqrt(under) > 0) {
		return math.Inf(1)
	}
	return 2 * short / (perS + math.Sqrt(under))
}

// stand adds a time at rest under full or rising volts to out.
func (m *motion) stand(out *stretch, s supply, stand pull, dt float64) {
	risesA, bendsA := stand.perS*dt, stand.perS2*dt*dt
	meanA := stand.amps + risesA/2 + bendsA/3
	out.lastA = m.batteryA(m.after(s, dt), 0, stand.amps+risesA+bendsA, false)
	batteryA := m.batteryA(m.after(s, dt/2), 0, meanA, false)
	if m.outV == 0 {
		batteryA += m.dutyPerS * dt * (risesA + bendsA) / 12
	}
	out.draws(batteryA, out.lastA/12, dt)
	out.batteryA2s += batteryA * batteryA * dt
	out.motorA2s += (stand.amps*(stand.amps+risesA+2./3*bendsA) + risesA*(risesA/3+bendsA/2) + bendsA*bendsA/5) * dt
}

// draws adds such a time to what is taken from the pack; more is a twelfth of how much
// the current rises in it.
func (s *stretch) draws(meanA, more, dt float64) {
	as := meanA * dt
	s.batteryAs += as
	s.batteryAs2 += as*(s.atS+dt/2) + more*dt*dt
	s.atS += dt
}

// risesA is how much the pack's current rises along its line over all of the stretch.
func (s *stretch) risesA() float64 {
	return 12 * (s.batteryAs2 - s.batteryAs*s.atS/2) / (s.atS * s.atS)
}

// over is how many time constants leave nothing that float64 can tell.
const over = 40

// stops returns when running + perS t + perS2 t^2 + lag exp(-rate t), which is below
// zero at dt, comes to zero.
func stops(running, perS, perS2, lag, rate, dt float64) float64 {
	b := solve.Crossing(0, dt, 1e-6*dt, func(t float64) float64 {
		return -(running + (perS+perS2*t)*t + lag*portable.Exp(-rate*t))
	})
	return b.Hi
}
