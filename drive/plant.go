package drive

import "math"

// The states of a launch. The vehicle's speed stands last: nothing else hangs on it, so
// the method carries the others only.
const (
	motorAmps = iota
	wheelSpeed
	firstBranch
	secondBranch
	vehicleSpeed
	states

	carried = vehicleSpeed
)

type state [states]float64

// motion is which mechanical equations hold.
type motion uint8

const (
	held     motion = iota // at rest: friction and slope hold it
	rolling                // wheels and vehicle move as one
	spinning               // the driven wheels slip
)

// leastTauS and leastRotorShare keep a case without inductance or rotor
// inertia solvable: both are far below anything that shows in a launch.
const (
	leastTauS       = 1e-7
	leastRotorShare = 1e-6
)

// plant is a [LaunchCase] made ready for its equations.
type plant struct {
	ocv, r0, path float64
	ohm, henry    float64
	backEMF, push float64    // V per m/s, N per A
	loss, base    float64    // motors' own friction; rolling and slope
	drag, grip    float64    //
	mass, rotor   float64    // of the vehicle; of the rotors, kg at the wheels
	branch        [2]Branch  // none when absent
	decay         [2]float64 // 1/(R C) of the branches
	rampS         float64
	moduleRampS   float64
	limit         float64
	contacts      bool    // no duty below 1: battery and motor current are one
	scale         state   // what counts as large, for the error control
	feedOhm       float64 // r0 and path
	aroundOhm     float64 // all that the current meets at full duty
	perHenry      float64 // 1 / henry
	perMass       float64 // 1 / mass of vehicle and rotors

	motion  motion
	limited bool // the current limiter holds the motor current
	full    bool // in the step under way neither it nor a soft start takes anything away
}

func newPlant(c *LaunchCase) plant {
	e := c.Equivalent()
	p := plant{
		ocv: c.OCVV, r0: c.R0Ohm, path: c.PathOhm,
		ohm: e.Ohm, henry: math.Max(e.Henry, leastTauS*e.Ohm),
		backEMF: e.VoltPerMS, push: e.NewtonPerA, loss: e.LossN, base: c.RollN + c.GradeN,
		drag: c.DragNS2PerM2, grip: gripOrNone(c.GripN),
		mass: c.MassKg, rotor: math.Max(e.RotorKg, leastRotorShare*c.MassKg),
		rampS: c.RampS, moduleRampS: c.ModuleRampS, limit: math.Inf(1),
	}
	if c.LimitA > 0 {
		p.limit = c.LimitA
	}
	p.feedOhm, p.perHenry = p.r0+p.path, 1/p.henry
	p.aroundOhm, p.perMass = p.feedOhm+p.ohm, 1/(p.mass+p.rotor)
	p.contacts = p.rampS == 0 && p.moduleRampS == 0 && c.LimitA == 0
	for k, b := range c.RC {
		if !b.absent() {
			p.branch[k], p.decay[k] = b, 1/(b.Ohm*b.Farad)
		}
	}
	amps, speed := p.ocv/(p.r0+p.path+p.ohm), p.ocv/p.backEMF
	p.scale = state{amps, speed, p.ocv, p.ocv, speed}
	if p.loss+p.base < 0 {
		p.motion = rolling // downhill: it rolls off by itself
	}
	return p
}

// duty is a straight line from 0 to 1, and its slope.
func duty(t, rampS float64) (d, slope float64) {
	if t >= rampS {
		return 1, 0
	}
	return t / rampS, 1 / rampS
}

// supply is the electrical side at one moment.
type supply struct {
	own, module float64 // duties of the controller and of the pack's module
	batteryA    float64
}

// supplyAt returns the duties and the battery current. With the limiter at
// work the controller's duty is the one that just holds the current:
//
//	own (module (ocv - V) - own i (module^2 r0 + path)) = R i + k w
func (p *plant) supplyAt(t float64, y *state) supply {
	module, _ := duty(t, p.moduleRampS)
	own, _ := duty(t, p.rampS)
	if p.limited {
		own = smallerRoot(
			(module*module*p.r0+p.path)*p.limit,
			module*(p.ocv-y[firstBranch]-y[secondBranch]),
			p.ohm*p.limit+p.backEMF*y[wheelSpeed])
	}
	return supply{own, module, own * module * y[motorAmps]}
}

// headroom returns the volts that the full duty of the moment would leave for
// the winding's inductance.
func (p *plant) headroom(t float64, y *state) float64 {
	own, _ := duty(t, p.rampS)
	module, _ := duty(t, p.moduleRampS)
	d := own * module
	return d*(p.ocv-y[firstBranch]-y[secondBranch]) -
		(d*d*p.r0+own*own*p.path+p.ohm)*y[motorAmps] - p.backEMF*y[wheelSpeed]
}

// slope writes the time derivatives of the states that the method carries.
func (p *plant) slope(t float64, y, f *state) {
	battery := y[motorAmps]
	switch {
	case p.full:
		f[motorAmps] = (p.ocv - y[firstBranch] - y[secondBranch] - p.aroundOhm*battery - p.backEMF*y[wheelSpeed]) * p.perHenry
	case p.limited:
		battery = p.supplyAt(t, y).batteryA
		f[motorAmps] = 0
	default:
		own, _ := duty(t, p.rampS)
		module, _ := duty(t, p.moduleRampS)
		battery *= own * module
		f[motorAmps] = p.headroom(t, y) * p.perHenry
	}
	f[firstBranch] = (p.branch[0].settled(battery) - y[firstBranch]) * p.decay[0]
	f[secondBranch] = (p.branch[1].settled(battery) - y[secondBranch]) * p.decay[1]
	w := y[wheelSpeed]
	switch p.motion {
	case held:
		f[wheelSpeed] = 0
	case rolling:
		f[wheelSpeed] = (p.push*y[motorAmps] - p.loss - p.base - p.drag*w*w) * p.perMass
	case spinning:
		f[wheelSpeed] = (p.push*y[motorAmps] - p.loss - p.grip) / p.rotor
	}
}

// coast moves the vehicle through a step: with its wheels, or by what they hold while
// they spin, which changes by its drag only.
func (p *plant) coast(d *dense) {
	const v = vehicleSpeed
	if p.motion != spinning {
		d.y1[v], d.c3[v], d.c4[v] = d.y1[wheelSpeed], d.c3[wheelSpeed], d.c4[wheelSpeed]
		return
	}
	gains := func(v float64) float64 {
		g := (p.grip - p.base - p.drag*v*v) / p.mass
		if v <= 0 && g < 0 {
			return 0 // spins on the spot
		}
		return g
	}
	v0, h := d.y0[v], d.h
	k1 := gains(v0)
	k2 := gains(v0 + h/2*k1)
	k3 := gains(v0 + h/2*k2)
	k4 := gains(v0 + h*k3)
	rise := h / 6 * (k1 + 2*k2 + 2*k3 + k4)
	d.y1[v] = v0 + rise
	d.c3[v] = h*k1 - rise // the polynomial rises at both ends as it should
	d.c4[v] = rise - h*gains(d.y1[v]) - d.c3[v]
}

// fill is how much faster the branches fill per ampere more of battery current.
func (p *plant) fill(batteryA float64) (first, second float64) {
	return p.branch[0].steep(batteryA) * p.decay[0], p.branch[1].steep(batteryA) * p.decay[1]
}

// timeSlope writes the partial derivatives of the slopes by time, which only
// the ramps have. It reports false when all are zero.
func (p *plant) timeSlope(t float64, y, ft *state) bool {
	own, ownS := duty(t, p.rampS)
	module, moduleS := duty(t, p.moduleRampS)
	if ownS == 0 && moduleS == 0 || p.limited && moduleS == 0 {
		return false
	}
	i, rest := y[motorAmps], p.ocv-y[firstBranch]-y[secondBranch]
	var battery float64
	if p.limited {
		own = p.supplyAt(t, y).own
		_, _, byModule := p.holdSlopes(own, module, rest)
		battery = p.limit * (own*moduleS + module*byModule*moduleS)
	} else {
		d, ds := own*module, ownS*module+own*moduleS
		ft[motorAmps] = (ds*rest - 2*(d*ds*p.r0+own*ownS*p.path)*i) / p.henry
		battery = ds * i
	}
	fill1, fill2 := p.fill(own * module * i)
	ft[firstBranch], ft[secondBranch] = battery*fill1, battery*fill2
	return true
}

// holdSlopes returns how the duty that holds the current limit changes with
// branch volts, wheel speed and the module's duty.
func (p *plant) holdSlopes(own, module, rest float64) (byVolt, bySpeed, byModule float64) {
	a := (module*module*p.r0 + p.path) * p.limit
	d := 2*a*own - module*rest // negative below the point of greatest power
	if d >= 0 {
		return 0, 0, 0
	}
	return -own * module / d, -p.backEMF / d, (rest*own - 2*module*p.r0*p.limit*own*own) / d
}

// arrow solves (1/(gamma h) - J) k = r for the Jacobian J of the moment. Every
// state is coupled to the motor current only (or, while the limiter holds
// that, to the battery current), so the matrix is an arrow and the solution a
// handful of products.
type arrow struct {
	head, inv                     float64 // first row's own entry; 1 over its Schur complement
	acrossWheel, across1, across2 float64 // first row's other entries
	downWheel, down1, down2       float64 // first column's other entries, over the diagonal
	diagWheel, diag1, diag2       float64 // 1 over the diagonal
	slackAtHead                   bool    // the first unknown is the battery current, not a state
}

// set makes the arrow of the step under way.
func (a *arrow) set(p *plant, t float64, y *state, g float64) {
	*a = arrow{diag1: 1 / (g + p.decay[0]), diag2: 1 / (g + p.decay[1])}
	switch p.motion {
	case held:
		a.diagWheel = 1 / g
	case rolling:
		a.diagWheel = 1 / (g + 2*p.drag*y[wheelSpeed]*p.perMass)
		a.downWheel = p.push * p.perMass
	case spinning:
		a.diagWheel = 1 / g
		a.downWheel = p.push / p.rotor
	}
	if p.limited {
		a.slackAtHead = true
		module, _ := duty(t, p.moduleRampS)
		own := p.supplyAt(t, y).own
		byVolt, bySpeed, _ := p.holdSlopes(own, module, p.ocv-y[firstBranch]-y[secondBranch])
		a.head = 1
		a.downWheel = 0
		a.acrossWheel = p.limit * module * bySpeed
		a.across1 = p.limit * module * byVolt
		a.down1, a.down2 = p.fill(own * module * y[motorAmps])
	} else {
		own, module := 1.0, 1.0
		if !p.full {
			own, _ = duty(t, p.rampS)
			module, _ = duty(t, p.moduleRampS)
		}
		d := own * module
		a.head = g + (d*d*p.r0+own*own*p.path+p.ohm)*p.perHenry
		a.acrossWheel = -p.backEMF * p.perHenry
		a.across1 = -d * p.perHenry
		fill1, fill2 := p.fill(d * y[motorAmps])
		a.down1, a.down2 = d*fill1, d*fill2
	}
	a.across2 = a.across1
	a.downWheel *= a.diagWheel
	a.down1 *= a.diag1
	a.down2 *= a.diag2
	a.inv = 1 / (a.head - a.acrossWheel*a.downWheel - a.across1*(a.down1+a.down2))
}

// solve turns a right-hand side into the solution, in place.
func (a *arrow) solve(r *state) {
	w, b1, b2 := a.diagWheel*r[wheelSpeed], a.diag1*r[firstBranch], a.diag2*r[secondBranch]
	head := a.acrossWheel*w + a.across1*b1 + a.across2*b2
	if a.slackAtHead {
		head *= a.inv
		r[motorAmps] = 0 // the limiter holds the motor current
	} else {
		head = (head + r[motorAmps]) * a.inv
		r[motorAmps] = head
	}
	r[wheelSpeed] = w + a.downWheel*head
	r[firstBranch] = b1 + a.down1*head
	r[secondBranch] = b2 + a.down2*head
}
