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
	outShare  float64 // its efficiency
	dutyPerS  float64 // how the duty rises during the step under way
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
		if m.outShare = c.Converter.Efficiency; m.outShare == 0 {
			m.outShare = drive.ConverterEfficiency
		}
		if c.Converter.LimitA > 0 {
			m.limitA = min(m.limitA, c.Converter.LimitA)
		}
	}
	return m
}

// warmed takes the motors' resistance at a winding temperature.
func (m *motion) warmed(windingC float64) { m.eq.Ohm = m.coldOhm + m.ohmPerC*windingC }

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

// standing returns what the motors draw at rest, at the beginning, and how it rises
// on its way to what they draw dt seconds on; with the resistance halfway.
func (m *motion) standing(b supply, dt float64) (amps, perS, ohm float64) {
	ohm = m.circuitOhm(b, b.duty)
	amps = b.duty * b.emfV / ohm
	if m.dutyPerS == 0 {
		return amps, b.duty * b.perS / ohm, ohm
	}
	duty := b.duty + m.dutyPerS*dt
	perS = (duty*(b.emfV+b.perS*dt)/m.circuitOhm(b, duty) - amps) / dt
	return amps, perS, m.circuitOhm(b, (b.duty+duty)/2)
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

// regulates reports whether the converter holds its output at speed v.
func (m *motion) regulates(s supply, v float64) bool {
	b := m.board(s)
	amps := min((b.duty*b.emfV-m.eq.VoltPerMS*v)/m.circuitOhm(b, b.duty), m.limitA, m.gripA)
	watts := max(0, amps) * (m.eq.VoltPerMS*v + amps*m.eq.Ohm)
	if (s.emfV-m.outV)*m.outV*m.outShare >= watts*s.ohm {
		return true // even with the bus as low as the output
	}
	in := m.drawn(s, watts)
	bus := s.emfV - in*s.ohm
	return bus >= m.outV && in*bus*m.outShare >= watts*(1-1e-9)
}

// run drives for dt seconds from speed v. The supply's electromotive force runs
// along a straight line, and air drag is taken along its tangent at speed near;
// within that the motion is exact: constant force while the current sits at its
// limit or at the grip of the wheels, an exponential approach after that.
//
// A converter whose supply cannot give what its output would take passes the
// supply straight through, as in [drive.Steady].
func (m *motion) run(out *stretch, s supply, v, near, dt float64) {
	if m.outV > 0 && !m.regulates(s, v) {
		through := *m
		through.outV, through.outShare = 0, 1
		through.run(out, s, v, near, dt)
		return
	}
	*out = stretch{stopsS: math.Inf(1), speedMS: v}
	b := m.board(s)
	standA, standPerS, ohm := m.standing(b, dt)
	capA := min(m.limitA, m.gripA)
	freeA := standA - m.eq.VoltPerMS*v/ohm
	if freeA <= capA {
		out.firstA = m.batteryA(s, v, freeA, false)
		firstA := out.firstA
		lastA := m.approach(out, s, standA, standPerS, ohm, near, dt)
		if m.dutyPerS == 0 || lastA <= capA {
			return
		}
		// The soft start leads to the cap within the step: where its line does, and
		// its line up to there.
		t := dt
		for range 3 {
			t *= (capA - freeA) / (lastA - freeA)
			*out = stretch{stopsS: math.Inf(1), speedMS: v, firstA: firstA}
			lastA = m.approach(out, s, standA, standPerS, ohm, near, t)
		}
		m.capped(out, m.after(s, t), near, dt-t)
		return
	}
	t := dt
	// The free current falls with speed; where it meets the cap this part is over.
	if closing := m.eq.VoltPerMS*m.cappedAcc(near)/ohm - standPerS; closing > 0 {
		t = min(dt, (freeA-capA)/closing)
	}
	out.firstA = m.batteryA(s, v, capA, m.limitA <= m.gripA)
	m.capped(out, s, near, t)
	out.cappedS, out.cappedAs, out.cappedA = t, out.batteryAs, out.lastA
	if dt > t {
		m.approach(out, m.after(s, t), standA+standPerS*t, standPerS, ohm, near, dt-t)
	}
}

// cappedAcc is how fast the vehicle gains speed while the current sits at its limit
// or at the grip of the wheels.
func (m *motion) cappedAcc(near float64) float64 {
	push := m.slipN
	if m.limitA <= m.gripA {
		push = m.eq.NewtonPerA*m.limitA - m.holdN
	}
	return (push - m.dragNS2M2*near*near) / m.eq.InertiaKg
}

// capped adds such a time to out.
func (m *motion) capped(out *stretch, s supply, near, t float64) {
	v, acc, capA, chopped := out.speedMS, m.cappedAcc(near), min(m.limitA, m.gripA), m.limitA <= m.gripA
	out.stuck = v == 0 && acc <= 0
	end, rollsS := v+acc*t, t
	if end < 0 {
		rollsS = -v / acc
		out.stopsS, end = rollsS, 0
	}
	firstA := m.batteryA(s, v, capA, chopped)
	out.batteryAs += m.batteryA(m.after(s, t/2), (v+end)/2, capA, chopped) * t
	out.motorA2s += capA * capA * t
	out.metres += (v + end) / 2 * rollsS
	out.lastA = m.batteryA(m.after(s, t), end, capA, chopped)
	out.speedMS = end
	out.batteryA2s += (firstA*(firstA+out.lastA) + out.lastA*out.lastA) / 3 * t
}

// approach adds the exponential part of a step to out: the current
//
//	i(t) = stand + standPerS t - k v(t) / ohm,  v(t) = running(t) + lag exp(-rate t)
//
// where stand is what the motors would draw at rest, and running is the speed that
// the supply of the moment would lead to, less what it lags behind the line that
// the volts run along. It returns the motors' current at the end.
func (m *motion) approach(out *stretch, s supply, standA, standPerS, ohm, near, dt float64) float64 {
	v := out.speedMS
	pull := m.eq.NewtonPerA*standA - m.holdN
	if pull <= 0 && v == 0 {
		t := dt
		if standPerS*dt > -pull/m.eq.NewtonPerA { // a soft start that moves off within the step
			t = -pull / m.eq.NewtonPerA / standPerS
		}
		m.stand(out, s, standA, standPerS, t)
		if dt -= t; dt <= 0 {
			out.stuck = true
			return standA + standPerS*t
		}
		s, standA, pull = m.after(s, t), standA+standPerS*t, 0
	}
	pull += m.dragNS2M2 * near * near
	damping := m.eq.NewtonPerA*m.eq.VoltPerMS/ohm + 2*m.dragNS2M2*near // N per m/s
	rate := damping / m.eq.InertiaKg
	perS := m.eq.NewtonPerA * standPerS / damping // of the running speed
	running := pull/damping - perS/rate
	lag := v - running
	e := 0.0
	if rate*dt < over {
		e = portable.Exp(-rate * dt)
	}
	share := (1 - e) / (rate * dt) // mean of the exponential over the step
	mean, end := running+perS*dt/2+lag*share, running+perS*dt+lag*e
	if end < 0 {
		out.stopsS = out.cappedS + stops(running, perS, lag, rate, dt)
		mean, end = max(mean, 0), 0
	}

	// The current is a line and an exponential, too.
	k := m.eq.VoltPerMS / ohm
	lineA, linePerS, swingA := standA-k*running, standPerS-k*perS, -k*lag
	meanA, lastA := lineA+linePerS*dt/2+swingA*share, lineA+linePerS*dt+swingA*e
	batteryA := m.batteryA(m.after(s, dt/2), mean, meanA, false)
	if m.dutyPerS != 0 && m.outV == 0 {
		// Duty and current rise together, and the pack gives their product.
		batteryA += m.dutyPerS * dt * (lastA - lineA - swingA) / 12
	}
	ramp := (share - e) / rate // integral of t exp(-rate t), over dt
	motorA2 := lineA*(lineA+linePerS*dt) + linePerS*linePerS*dt*dt/3 +
		2*swingA*(lineA*share+linePerS*ramp) + swingA*swingA*share*(1+e)/2
	out.batteryAs += batteryA * dt
	out.motorA2s += motorA2 * dt
	if meanA != 0 {
		ratio := batteryA / meanA
		out.batteryA2s += ratio * ratio * motorA2 * dt
	}
	out.metres += mean * dt
	out.lastA = m.batteryA(m.after(s, dt), end, lastA, false)
	out.speedMS = end
	return lastA
}

// stand adds a time at rest under full or rising volts to out.
func (m *motion) stand(out *stretch, s supply, standA, standPerS, dt float64) {
	meanA := standA + standPerS*dt/2
	out.lastA = m.batteryA(m.after(s, dt), 0, standA+standPerS*dt, false)
	batteryA := m.batteryA(m.after(s, dt/2), 0, meanA, false)
	if m.outV == 0 {
		batteryA += m.dutyPerS * standPerS * dt * dt / 12
	}
	out.batteryAs += batteryA * dt
	out.batteryA2s += batteryA * batteryA * dt
	out.motorA2s += (meanA*meanA + standPerS*standPerS*dt*dt/12) * dt
}

// over is how many time constants leave nothing that float64 can tell.
const over = 40

// stops returns when running + perS t + lag exp(-rate t), which is below zero
// at dt, comes to zero.
func stops(running, perS, lag, rate, dt float64) float64 {
	b := solve.Crossing(0, dt, 1e-6*dt, func(t float64) float64 {
		return -(running + perS*t + lag*portable.Exp(-rate*t))
	})
	return b.Hi
}
