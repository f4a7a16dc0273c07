package drive

import "math"

// The equations of a launch are sums and products of its states and of time, so the
// Taylor series of a solution follow term by term from where it stands (E. Hairer, S. P.
// Norsett, G. Wanner, Solving Ordinary Differential Equations I, Springer, 1993, section
// I.8). They hold for as long as their last terms are below the error allowed: about as
// long as speed and branches take to follow.
//
// The motor current follows these a thousand times faster, within the time constant of
// the windings, and a series that had to show it would reach no further. So what dies out
// is taken out first. With J the Jacobian at the beginning, -rate its fastest eigenvalue,
// u and l the eigenvectors to its right and left,
//
//	y(t) = series(t) + C u e^(-rate t)
//
// and the series are those of the solution in which nothing dies out (the slow manifold:
// E. Hairer, G. Wanner, Solving Ordinary Differential Equations II, Springer, 1996,
// chapter VI). On it
//
//	rate l y = what drives l y - d(l y)/dt
//
// where the last is nothing but for what bends and what a ramp changes: it is taken from
// the pass before.

// expansion is what the terms of the series are made of.
type expansion struct {
	module [2]float64 // duty of the pack's module and its slope
	duty   [3]float64 // multiplied by the controller's, in powers of time
	ohm    [5]float64 // all that the current meets
	powers int        // the highest that is not zero

	gain, brake, drag float64 // the wheels' speed w: dw/dt = gain i - brake - drag w^2

	follows bool // the current merely follows: what dies out is taken out
	fastest mode
	late    series // d(l y)/dt of the pass before, over the rate
	rest    series // open-circuit volts less the branches'
	bent    [2]curve
	limiter limiter
}

// begin notes what holds from a moment on.
func (x *expansion) begin(p *plant, t float64) {
	own, ownS := duty(t, p.rampS)
	module, moduleS := duty(t, p.moduleRampS)
	x.module = [2]float64{module, moduleS}
	d := [3]float64{own * module, own*moduleS + ownS*module, ownS * moduleS}
	x.duty = d
	x.ohm = [5]float64{
		d[0]*d[0]*p.r0 + own*own*p.path + p.ohm,
		2 * (d[0]*d[1]*p.r0 + own*ownS*p.path),
		(d[1]*d[1]+2*d[0]*d[2])*p.r0 + ownS*ownS*p.path,
		2 * d[1] * d[2] * p.r0,
		d[2] * d[2] * p.r0,
	}
	x.powers = 2
	if ownS != 0 && moduleS != 0 {
		x.powers = 4
	}
	x.gain, x.brake, x.drag = 0, 0, 0
	switch p.motion {
	case rolling:
		x.gain, x.brake, x.drag = p.push*p.perMass, (p.loss+p.base)*p.perMass, p.drag*p.perMass
	case spinning:
		x.gain, x.brake = p.push/p.rotor, (p.loss+p.grip)/p.rotor
	}
}

// expand makes the series from d.y0 on, for most seconds at most. It reports false where
// they hold for no time at all.
func (p *plant) expand(d *dense, most, tol float64) bool {
	x := &d.x
	x.begin(p, d.t)
	p.full = !p.limited && d.t >= p.rampS && d.t >= p.moduleRampS
	if d.apart = p.motion == spinning; d.apart {
		p.coast(d)
	}
	x.follows = !p.limited && x.findFastest(p, &d.y0)
	if !x.follows || !p.follow(d, most, tol) {
		x.follows = false
		p.unfold(d)
		d.reach = p.holds(d, most, tol)
	}
	d.from = 0
	return d.reach > 1e-13
}

// follow makes the series in which nothing dies out, pass by pass. It reports false where
// there is no such, or none that it comes near to.
func (p *plant) follow(d *dense, most, tol float64) bool {
	const (
		passes = 5
		least  = 30  // series that hold less long, in times of what dies out, may as well show it
		far    = 100 // a duty that stands still and a current this much faster: one pass is exact
	)
	x := &d.x
	x.late = series{}
	for pass := range passes {
		change := d.terms[motorAmps]
		p.unfold(d)
		if pass == 0 {
			d.reach = p.holds(d, most, tol)
		}
		if x.fastest.rate*d.reach < least || p.bendsMeanwhile(d, tol) {
			return false
		}
		if p.full && x.fastest.rate*d.reach > far {
			return true
		}
		now := &d.terms[motorAmps]
		for n := range order + 1 {
			change[n] -= now[n]
		}
		// What the next pass would change is to this as this is to the whole.
		moved, whole := change.size(d.reach), max(now.size(d.reach), floorShare*p.scale[motorAmps])
		if pass > 0 && moved*moved < tol*whole*whole {
			return true
		}
		for n := 1; n <= order; n++ {
			ly := now[n] + x.fastest.left[wheelSpeed]*d.terms[wheelSpeed][n] +
				x.fastest.left[firstBranch]*d.terms[firstBranch][n] + x.fastest.left[secondBranch]*d.terms[secondBranch][n]
			x.late[n-1] = float64(n) * ly / x.fastest.rate
		}
	}
	return false
}

// bendsMeanwhile reports whether branches that bend would fill noticeably otherwise than
// straight ones while much dies out: by their knee at most, for as long as that takes.
func (p *plant) bendsMeanwhile(d *dense, tol float64) bool {
	return math.Abs(d.fading[motorAmps]) > little*p.scale[motorAmps] &&
		p.branch[0].KneeV*p.decay[0]+p.branch[1].KneeV*p.decay[1] > tol*p.ocv*d.x.fastest.rate
}

// holds returns for how many seconds the series hold: until one of their last two terms
// is what tol allows.
func (p *plant) holds(d *dense, most, tol float64) float64 {
	var last, before float64
	for k := range d.terms {
		if k == vehicleSpeed && !d.apart {
			break
		}
		large := tol * max(math.Abs(d.y0[k]), floorShare*p.scale[k])
		last = max(last, math.Abs(d.terms[k][order])/large)
		before = max(before, math.Abs(d.terms[k][order-1])/large)
	}
	if own := &d.x.limiter.own; p.limited {
		large := tol * max(own[0], leastDuty)
		last = max(last, math.Abs(own[order])/large)
		before = max(before, math.Abs(own[order-1])/large)
	}
	reach := roughExp2(min(-roughLog2(before)/(order-1), -roughLog2(last)/order))
	switch {
	case reach > most:
		return most
	case reach > most/2:
		return most / 2
	}
	return reach
}

// leastDuty is where the error of the limiter's duty is no longer relative.
const leastDuty = 1e-6

// floorShare is the share of a state's natural scale (stall current, no-load
// speed, open-circuit volts) below which its error is no longer relative.
const floorShare = 0.03

// coast makes the series of the vehicle's speed while its wheels spin: what they hold
// moves it, less its drag.
func (p *plant) coast(d *dense) {
	v := &d.terms[vehicleSpeed]
	*v = series{d.y0[vehicleSpeed]}
	gain, drag := (p.grip-p.base)/p.mass, p.drag/p.mass
	if v[0] <= 0 && gain < 0 {
		return // spins on the spot
	}
	for n := range order {
		v[n+1] = (gain - drag*v.square(n, 0)) * perNext[n]
		gain = 0
	}
}
