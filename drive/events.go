package drive

import (
	"math"

	"example.org/packcheck/internal/solve"
)

// nextCorner is the next moment at which the equations themselves change.
func (p *plant) nextCorner(t, endS float64) float64 {
	stop := endS
	for _, r := range [...]float64{p.rampS, p.moduleRampS} {
		if t < r && r < stop {
			stop = r
		}
	}
	return stop
}

// event is what makes one set of equations give way to another.
type event uint8

const (
	nothing event = iota
	limitReached
	limitLeft
	breaksAway // from rest
	gripLost
	gripFound
	stands     // comes to rest
	vehicleOff // spinning wheels, the vehicle comes to rest
)

// over is positive when an event has happened.
func (p *plant) over(e event, t float64, y *state) float64 {
	switch e {
	case limitReached:
		return y[motorAmps] - p.limit
	case limitLeft:
		return -p.headroom(t, y)
	case breaksAway:
		return p.push*y[motorAmps] - p.loss - math.Min(p.base, p.grip)
	case gripLost:
		return p.pushOn(y) - p.grip
	case gripFound:
		return y[vehicleSpeed] - y[wheelSpeed]
	case stands:
		return -y[wheelSpeed]
	default:
		return -y[vehicleSpeed]
	}
}

// eventIn returns the event that comes first within the piece, and after which share of it.
func (p *plant) eventIn(d *dense) (first event, share float64) {
	first, share = nothing, 2
	consider := func(e event) {
		slack := p.slack(e)
		if p.over(e, d.t+d.h, d.end()) <= slack && p.over(e, d.t+d.h/2, d.middle()) <= slack {
			return
		}
		if s := p.locate(d, e); s < share {
			first, share = e, s
		}
	}
	if p.limited {
		consider(limitLeft)
	} else if !math.IsInf(p.limit, 1) {
		consider(limitReached)
	}
	switch p.motion {
	case held:
		consider(breaksAway)
	case rolling:
		consider(stands)
		if !math.IsInf(p.grip, 1) {
			consider(gripLost)
		}
	case spinning:
		consider(gripFound)
		if d.y0[vehicleSpeed] > 0 {
			consider(vehicleOff)
		}
	}
	return first, share
}

// slack keeps rounding at the very moment that equations change from being
// taken for the next event.
func (p *plant) slack(e event) float64 {
	const share = 1e-9
	switch e {
	case gripFound, stands, vehicleOff:
		return share * p.scale[wheelSpeed]
	case limitReached:
		return share * p.limit
	case limitLeft:
		return share * p.ocv
	default:
		return share * p.push * p.scale[motorAmps]
	}
}

// locate returns the share of the piece after which an event happens.
func (p *plant) locate(d *dense, e event) float64 {
	within := solve.Bracket{Hi: 0.5, FLo: p.over(e, d.t, &d.y0), FHi: p.over(e, d.t+d.h/2, d.middle())}
	if !(within.FHi > p.slack(e)) {
		within.Hi, within.FHi = 1, p.over(e, d.t+d.h, d.end())
	}
	return solve.Narrow(within, 1e-10, func(s float64) float64 {
		if e == limitLeft { // nothing else looks at the branches
			y := d.all(s)
			return p.over(e, d.t+s*d.h, &y)
		}
		var y state
		x := d.from + s*d.h
		d.moving(x, d.left(x), &y)
		return p.over(e, d.t+s*d.h, &y)
	}).Hi
}

// enter switches to the equations that hold after an event.
func (p *plant) enter(e event, y *state) {
	switch e {
	case limitReached:
		p.limited, y[motorAmps] = true, p.limit
	case limitLeft:
		p.limited = false
	case breaksAway:
		p.motion = rolling
		if p.base >= p.grip {
			p.motion = spinning
		}
	case gripLost:
		p.motion = spinning
	case gripFound:
		p.motion, y[wheelSpeed] = rolling, y[vehicleSpeed]
		if y[vehicleSpeed] <= 0 && p.base >= p.grip {
			p.motion = held // spun on the spot; the ground still holds the vehicle
		}
	case stands:
		p.motion, y[wheelSpeed], y[vehicleSpeed] = held, 0, 0
	case vehicleOff:
		y[vehicleSpeed] = 0
	}
}
