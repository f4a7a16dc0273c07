package drive

import (
	"math"

	"example.org/packcheck/internal/solve"
)

// LaunchSample is one moment of a launch.
type LaunchSample struct {
	TimeS    float64
	BatteryA float64
	MotorA   float64 // total, motor side
	PackV    float64 // at the pack's terminals, before a module's own soft start
	BusV     float64 // at the motor controller's input, after all of the path
	Duty     float64 // motor volts over bus volts, without a module's own soft start
	SpeedMS  float64 // vehicle
	WheelMS  float64 // driven wheels
	WheelN   float64 // push of the driven wheels on the ground
}

// TimeAbove is how long a launch was above each of its [Limits], in seconds.
type TimeAbove struct {
	PackS                 float64
	JointS                float64
	SwitchS               float64
	ControllerContinuousS float64
	ControllerPeakS       float64
}

// LaunchResult is what a launch came to.
type LaunchResult struct {
	PeakBatteryA   float64
	PeakBatteryAtS float64 // where a limiter makes two tops alike, the later one, which lasts
	PeakMotorA     float64 // total, motor side
	PeakMotorAtS   float64
	LowestBusV     float64 // at the motor controller's input; the time of a module's own ramp is left out
	LowestBusAtS   float64
	PeakWheelN     float64 // push of the driven wheels on the ground
	PeakPinionNM   float64 // torque that one motor's pinion passes on to its gear
	Above          TimeAbove
	SurgeA2S       float64 // integral of battery current squared above steady running's: the pulse that a fuse sees
	ExtraC         float64 // coulombs above what steady running would have taken in the same time
	SteadyMS       float64 // speed the vehicle settles to, pack fully polarised
	SteadyBatteryA float64
	SpeedMS        [speedTimes]float64 // at SpeedTimesS; moments after the run's end hold the last speed
	EndMS          float64             // speed at the end of the run
	EndBatteryA    float64             // at the end of the run
	To90S          float64             // when 90 % of SteadyMS was reached; 0 = not within the run
	Moved          bool
	Slipped        bool
	Spinning       bool // the driven wheels slip to the very end of the run
	Incomplete     bool // the case is no launch (see LaunchCase.Check) or could not be carried through: use nothing else
}

// speedTimes is how many moments SpeedTimesS has.
const speedTimes = 9

// SpeedTimesS returns the seconds after the start at which a launch notes speed.
func SpeedTimesS() [speedTimes]float64 {
	return [...]float64{0.25, 0.5, 1, 2, 3, 4, 6, 8, 10}
}

// SpeedAt returns the vehicle's speed in m/s at a time after the start. Moments
// of [SpeedTimesS] are exact, others lie on straight lines between them, and
// what lies after the last of them or after the run holds the last speed.
func (r *LaunchResult) SpeedAt(timeS float64) float64 {
	if !(timeS > 0) {
		return 0
	}
	before, speed := 0.0, 0.0
	for k, at := range SpeedTimesS() {
		if timeS <= at {
			return speed + (r.SpeedMS[k]-speed)*(timeS-before)/(at-before)
		}
		before, speed = at, r.SpeedMS[k]
	}
	return speed
}

// watch gathers a LaunchResult step by step.
type watch struct {
	out      LaunchResult
	limits   Limits
	steadyA  float64
	nextMark int     // into SpeedTimesS ...
	markS    float64 // ... and when that is, or before
	seen     moments
	goesOn   bool // seen are those of the step before, and nothing has changed since
}

// parts is how many equal parts of a step are looked at: five points, enough
// for Boole's rule.
const parts = 4

// moments are what the watch looks at, at five points of a step.
type moments [quantities][parts + 1]float64

// quantity picks one of them; higher is what is sought.
type quantity int

const (
	batteryCurrent quantity = iota
	motorCurrent
	busSag // minus the bus voltage
	quantities
)

// limitLeft notes that the limiter gives way. It made the current touch the
// limit for an instant when it took hold; of the two equal tops of the battery
// current the later one lasts.
func (w *watch) limitLeft(now LaunchSample) {
	if now.BatteryA > 0.999*w.out.PeakBatteryA {
		w.out.PeakBatteryA, w.out.PeakBatteryAtS = max(now.BatteryA, w.out.PeakBatteryA), now.TimeS
	}
}

// see takes in one accepted step. What it ends with is what the next one begins with,
// where nothing changes between them.
func (w *watch) see(p *plant, d *dense) {
	m, from := &w.seen, 0
	if w.goesOn {
		for q := range m {
			m[q][0] = m[q][parts]
		}
		from = 1
	}
	for k := from; k <= parts; k++ {
		m[batteryCurrent][k], m[motorCurrent][k], m[busSag][k] = p.momentAt(d, float64(k)/parts)
	}
	w.integrate(&m[batteryCurrent], d.h)
	w.peaks(p, d, m)
	if w.limits != (Limits{}) {
		w.above(p, d, m)
	}
	w.speeds(d)
	if d.y1[vehicleSpeed] > 1e-9*p.scale[vehicleSpeed] {
		w.out.Moved = true
	}
}

// above adds the step's share of time above each limit.
func (w *watch) above(p *plant, d *dense, m *moments) {
	l, a := &w.limits, &w.out.Above
	a.PackS += d.h * above(p, d, m, batteryCurrent, l.PackA)
	a.JointS += d.h * above(p, d, m, batteryCurrent, l.JointA)
	a.SwitchS += d.h * above(p, d, m, batteryCurrent, l.SwitchA)
	a.ControllerContinuousS += d.h * above(p, d, m, motorCurrent, l.ControllerContinuousA)
	a.ControllerPeakS += d.h * above(p, d, m, motorCurrent, l.ControllerPeakA)
}

// integrate adds the step's share of charge and of the fuse's pulse (Boole's
// rule, exact for the step's own polynomials).
func (w *watch) integrate(amps *[parts + 1]float64, h float64) {
	weights := [parts + 1]float64{7. / 90, 32. / 90, 12. / 90, 32. / 90, 7. / 90}
	base := w.steadyA * w.steadyA
	charge, pulse := 0.0, 0.0
	for k, a := range amps {
		charge += weights[k] * (a - w.steadyA)
		if more := a*a - base; more > 0 {
			pulse += weights[k] * more
		}
	}
	w.out.ExtraC += h * charge
	w.out.SurgeA2S += h * pulse
}

// peaks keeps the greatest currents, the lowest bus voltage and the greatest
// push.
func (w *watch) peaks(p *plant, d *dense, m *moments) {
	if v, s, ok := highest(p, d, m, motorCurrent, w.out.PeakMotorA); ok {
		w.out.PeakMotorA, w.out.PeakMotorAtS = v, d.t+s*d.h
		w.out.PeakWheelN = max(w.out.PeakWheelN, p.pushAt(d, s))
	}
	if p.contacts {
		w.out.PeakBatteryA, w.out.PeakBatteryAtS = w.out.PeakMotorA, w.out.PeakMotorAtS
	} else if v, s, ok := highest(p, d, m, batteryCurrent, w.out.PeakBatteryA); ok {
		w.out.PeakBatteryA, w.out.PeakBatteryAtS = v, d.t+s*d.h
	}
	if d.t >= p.moduleRampS {
		if v, s, ok := highest(p, d, m, busSag, -w.out.LowestBusV); ok {
			w.out.LowestBusV, w.out.LowestBusAtS = -v, d.t+s*d.h
		}
	}
	if !w.goesOn {
		w.out.PeakWheelN = max(w.out.PeakWheelN, p.pushOn(&d.y0))
	}
	w.out.PeakWheelN = max(w.out.PeakWheelN, p.pushOn(&d.y1))
}

// highest returns the step's highest value of a quantity and where in the step
// it lies, if it is above floor.
func highest(p *plant, d *dense, m *moments, q quantity, floor float64) (value, s float64, ok bool) {
	best := 0
	values := &m[q]
	for k := 1; k <= parts; k++ {
		if values[k] > values[best] {
			best = k
		}
	}
	value, s = values[best], float64(best)/parts
	if value < floor {
		return 0, 0, false
	}
	// At an end of the step the slope there tells whether a top lies beside it.
	if best == parts && p.climb(d, q, 1) > 0 || best == 0 && p.climb(d, q, 0) <= 0 {
		return value, s, value > floor
	}
	low, high := max(0, s-1./parts), min(1, s+1./parts)
	s = solve.Crossing(low, high, 1e-4, func(s float64) float64 { return -p.climb(d, q, s) }).Hi
	return max(value, p.quantityAt(d, s, q)), s, true
}

// climb is positive where a quantity is on its way up at a share s of a step.
// While a step is short against the winding's time constant the equations
// themselves tell best, for the top of a launch is flat and the step's
// polynomial has a small kink at its ends. On a long step they would magnify
// the error of a current that merely follows the speed: there the polynomial
// tells.
func (p *plant) climb(d *dense, q quantity, s float64) float64 {
	const little = 1e-4
	if d.h*p.ohm > shortStep*p.henry {
		from, to := max(0, s-little), min(1, s+little)
		return p.quantityAt(d, to, q) - p.quantityAt(d, from, q)
	}
	t, y := d.t+s*d.h, d.all(s)
	var f state
	p.slope(t, &y, &f)
	if p.full {
		if q == busSag {
			return f[firstBranch] + f[secondBranch] + p.feedOhm*f[motorAmps]
		}
		return f[motorAmps]
	}
	now := p.quantityOf(t, &y, q)
	for k := range carried {
		y[k] += little * d.h * f[k]
	}
	return p.quantityOf(t+little*d.h, &y, q) - now
}

// shortStep is the length of a step in electrical time constants up to which
// it counts as short.
const shortStep = 5

// above returns the share of the step during which a quantity is above limit,
// 0 when there is no limit.
func above(p *plant, d *dense, m *moments, q quantity, limit float64) float64 {
	share := 0.0
	if limit <= 0 {
		return 0
	}
	for k := range parts {
		from, to := m[q][k] > limit, m[q][k+1] > limit
		switch {
		case from && to:
			share += 1. / parts
		case from != to:
			low, high := float64(k)/parts, float64(k+1)/parts
			at := solve.Crossing(low, high, 1e-6, func(s float64) float64 {
				over := p.quantityAt(d, s, q) - limit
				if from {
					return -over
				}
				return over
			}).Hi
			if from {
				share += at - low
			} else {
				share += high - at
			}
		}
	}
	return share
}

// speeds notes the speed at the marks that the step passes, and when nine
// tenths of the final speed are reached.
func (w *watch) speeds(d *dense) {
	if end := d.t + d.h; end >= w.markS {
		marks := SpeedTimesS()
		for ; w.nextMark < speedTimes && marks[w.nextMark] <= end; w.nextMark++ {
			w.out.SpeedMS[w.nextMark] = d.at(vehicleSpeed, (marks[w.nextMark]-d.t)/d.h)
		}
		if w.markS = math.Inf(1); w.nextMark < speedTimes {
			w.markS = marks[w.nextMark]
		}
	}
	goal := 0.9 * w.out.SteadyMS
	if w.out.To90S == 0 && goal > 0 && d.y1[vehicleSpeed] >= goal {
		at := solve.Crossing(0, 1, 1e-9, func(s float64) float64 { return d.at(vehicleSpeed, s) - goal }).Hi
		w.out.To90S = d.t + at*d.h
	}
}
