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

// watch gathers a LaunchResult piece by piece.
type watch struct {
	out      LaunchResult
	limits   Limits
	steadyA  float64
	nextMark int     // into SpeedTimesS ...
	markS    float64 // ... and when that is, or before
}

// moments are what the watch looks at, at five points of a piece.
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

// see takes in one piece.
func (w *watch) see(p *plant, d *dense) {
	var all moments
	m := &all
	m[batteryCurrent][0], m[motorCurrent][0], m[busSag][0] = p.momentOf(d.t, &d.y0)
	for k := range d.seen {
		t := d.t + float64(k+1)/parts*d.h
		m[batteryCurrent][k+1], m[motorCurrent][k+1], m[busSag][k+1] = p.momentOf(t, &d.seen[k])
	}
	w.integrate(p, d, &m[batteryCurrent])
	w.peaks(p, d, m)
	if w.limits != (Limits{}) {
		w.above(p, d, m)
	}
	w.speeds(d)
	if d.end()[vehicleSpeed] > 1e-9*p.scale[vehicleSpeed] {
		w.out.Moved = true
	}
}

// above adds the piece's share of time above each limit.
func (w *watch) above(p *plant, d *dense, m *moments) {
	l, a := &w.limits, &w.out.Above
	a.PackS += d.h * above(p, d, m, batteryCurrent, l.PackA)
	a.JointS += d.h * above(p, d, m, batteryCurrent, l.JointA)
	a.SwitchS += d.h * above(p, d, m, batteryCurrent, l.SwitchA)
	a.ControllerContinuousS += d.h * above(p, d, m, motorCurrent, l.ControllerContinuousA)
	a.ControllerPeakS += d.h * above(p, d, m, motorCurrent, l.ControllerPeakA)
}

// weights are those of Boole's rule.
var weights = [parts + 1]float64{7. / 90, 32. / 90, 12. / 90, 32. / 90, 7. / 90}

// integrate adds the piece's share of charge and of the fuse's pulse.
func (w *watch) integrate(p *plant, d *dense, amps *[parts + 1]float64) {
	base := w.steadyA * w.steadyA
	charge, pulse, over := 0.0, 0.0, 0
	for k, a := range amps {
		charge += weights[k] * (a - w.steadyA)
		if more := a*a - base; more > 0 {
			pulse += weights[k] * more
			over++
		}
	}
	if over > 0 && over <= parts {
		pulse = p.pulse(d, amps, w.steadyA)
	}
	w.out.ExtraC += d.h * charge
	w.out.SurgeA2S += d.h * pulse
}

// pulse is the mean square of the battery current above steadyA in a piece in which it
// passes that: Simpson's rule between the places where it does.
func (p *plant) pulse(d *dense, amps *[parts + 1]float64, steadyA float64) float64 {
	const near = 1e-2 // there is next to nothing there
	more := func(s float64) float64 {
		a := p.quantityAt(d, s, batteryCurrent)
		return a*a - steadyA*steadyA
	}
	sum := 0.0
	for k := range parts {
		low, high := float64(k)/parts, float64(k+1)/parts
		at, to := amps[k]*amps[k]-steadyA*steadyA, amps[k+1]*amps[k+1]-steadyA*steadyA
		switch {
		case at <= 0 && to <= 0:
			continue
		case at <= 0:
			low, at = solve.Narrow(solve.Bracket{Lo: low, Hi: high, FLo: at, FHi: to}, near, more).Hi, 0
		case to <= 0:
			high, to = solve.Narrow(solve.Bracket{Lo: high, Hi: low, FLo: to, FHi: at}, near, more).Hi, 0
		}
		sum += (high - low) / 6 * (at + 4*more((low+high)/2) + to)
	}
	return sum
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
	w.out.PeakWheelN = max(w.out.PeakWheelN, p.pushOn(&d.y0), p.pushOn(d.end()))
}

// highest returns the piece's highest value of a quantity and where in the piece
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
	const rounding = 1e-8
	// At an end of the piece the slope there tells whether a top lies beside it. No need to
	// ask where nothing dies out and it has hardly become less steep towards there.
	beside := func(k int) float64 { return p.climb(d, q, float64(k)/parts, d.lefts[k]) }
	switch {
	case best == parts && (d.calm && values[parts]-values[parts-1] > (values[parts-1]-values[parts-2])/2 || beside(parts) > 0):
	case best == 0 && beside(0) <= 0:
	default:
		low, high := max(0, best-1), min(parts, best+1)
		within := solve.Bracket{Lo: float64(low) / parts, Hi: float64(high) / parts, FLo: -beside(low), FHi: -beside(high)}
		width := 1e-4 * max(1e-6, min(1, d.t/d.h)) // of the time since the start
		s = solve.Narrow(within, width, func(s float64) float64 { return -p.climb(d, q, s, d.left(d.from+s*d.h)) }).Hi
		value = max(value, p.quantityAt(d, s, q))
	}
	return value, s, value > floor+rounding*math.Abs(floor)
}

// climb is positive where a quantity is on its way up at a share s of a piece, where left is
// left of what dies out. Where that is little it may be less than the error allowed, and yet
// it falls steeply.
func (p *plant) climb(d *dense, q quantity, s, left float64) float64 {
	x, fall := d.from+s*d.h, 0.0
	if math.Abs(d.fading[motorAmps]) > little*p.scale[motorAmps] {
		fall = left * d.x.fastest.rate
	}
	if p.full {
		amps := d.slope(motorAmps, x, fall)
		if q == busSag {
			return d.slope(firstBranch, x, fall) + d.slope(secondBranch, x, fall) + p.feedOhm*amps
		}
		return amps
	}
	const little = 1e-4
	t, y := d.t+s*d.h, d.all(s)
	now := p.quantityOf(t, &y, q)
	for k := range carried {
		y[k] += little * d.h * d.slope(k, x, fall)
	}
	return p.quantityOf(t+little*d.h, &y, q) - now
}

// above returns the share of the piece during which a quantity is above limit,
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
			sign := 1.0
			if from {
				sign = -1
			}
			passes := solve.Bracket{Lo: low, Hi: high, FLo: sign * (m[q][k] - limit), FHi: sign * (m[q][k+1] - limit)}
			at := solve.Narrow(passes, 1e-6, func(s float64) float64 { return sign * (p.quantityAt(d, s, q) - limit) }).Hi
			if from {
				share += at - low
			} else {
				share += high - at
			}
		}
	}
	return share
}

// speeds notes the speed at the marks that the piece passes, and when nine
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
	if w.out.To90S == 0 && goal > 0 && d.end()[vehicleSpeed] >= goal {
		passes := solve.Bracket{Hi: 1, FLo: d.y0[vehicleSpeed] - goal, FHi: d.end()[vehicleSpeed] - goal}
		at := solve.Narrow(passes, 1e-9, func(s float64) float64 { return d.at(vehicleSpeed, s) - goal }).Hi
		w.out.To90S = d.t + at*d.h
	}
}
