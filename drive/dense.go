package drive

import (
	"math"

	"example.org/packcheck/internal/portable"
)

// parts is how many equal parts of a piece are looked at: five points, enough
// for Boole's rule.
const parts = 4

// dense is a stretch of the solution, and the piece of it that is being looked at.
type dense struct {
	x      expansion
	terms  [states]series // that of the vehicle's speed only where it is apart
	fading state          // what dies out, at the beginning
	apart  bool           // the vehicle's speed is not that of its wheels
	reach  float64        // how long the series hold

	t, h  float64            // beginning and length of the piece
	from  float64            // its beginning, since that of the stretch
	lefts [parts + 1]float64 // what is left of what dies out there and at the ends of the parts
	calm  bool               // that is not worth mentioning
	y0    state              // the state at the beginning ...
	seen  [parts]state       // ... and at the ends of the parts
}

// little is a share of the current that the vehicle would draw blocked.
const little = 1e-4

// cut sets the length of the next piece: all or half of what the series reach, in which
// little happens, but first short ones while something dies out.
func (p *plant) cut(d *dense) {
	const gentle = 0.1 // so small a term leaves Boole's rule an error of 4e-5
	least := little
	if p.full && p.motion == held {
		least = 1e-8 // it may stay so: its top is where no more comes
	}
	d.h = d.reach
	i, cube := &d.terms[motorAmps], d.reach*d.reach*d.reach
	if p.limited {
		i = &d.x.limiter.own
	}
	if math.Abs(i[6])*cube*cube > gentle*math.Abs(i[0]) {
		d.h /= 2
	}
	d.lefts[0] = d.left(d.from)
	if d.calm = !(math.Abs(d.fading[motorAmps])*d.lefts[0] > least*p.scale[motorAmps]); !d.calm {
		d.h = min(d.h, 1.5/d.x.fastest.rate+1.2*d.from)
	}
	if rest := d.reach - d.from; d.h > 0.999*rest {
		d.h = rest
	}
}

// look finds the states at the ends of the parts.
func (d *dense) look() {
	const fourth = 0.25
	x1, x2, x3, x4 := d.from+fourth*d.h, d.from+2*fourth*d.h, d.from+3*fourth*d.h, d.from+d.h
	fall := 0.0
	if d.lefts[0] > 0 {
		fall = d.left(fourth * d.h)
	}
	e1 := d.lefts[0] * fall
	e2 := e1 * fall
	e3 := e2 * fall
	e4 := e3 * fall
	d.lefts[1], d.lefts[2], d.lefts[3], d.lefts[4] = e1, e2, e3, e4
	for k := range d.terms {
		if k == vehicleSpeed && !d.apart {
			for s := range d.seen {
				d.seen[s][k] = d.seen[s][wheelSpeed]
			}
			break
		}
		c, f := &d.terms[k], d.fading[k]
		y1, y2, y3, y4 := c[order], c[order], c[order], c[order]
		for n := order - 1; n >= 0; n-- {
			a := c[n]
			y1, y2, y3, y4 = y1*x1+a, y2*x2+a, y3*x3+a, y4*x4+a
		}
		d.seen[0][k], d.seen[1][k], d.seen[2][k], d.seen[3][k] = y1+f*e1, y2+f*e2, y3+f*e3, y4+f*e4
	}
}

// end and middle are the states there in the piece.
func (d *dense) end() *state    { return &d.seen[parts-1] }
func (d *dense) middle() *state { return &d.seen[parts/2-1] }

// at returns one state at a share s of the piece, from 0 to 1.
func (d *dense) at(k int, s float64) float64 {
	if k == vehicleSpeed && !d.apart {
		k = wheelSpeed
	}
	x := d.from + s*d.h
	return d.terms[k].at(x) + d.fading[k]*d.left(x)
}

// all returns every state at a share s of the piece.
func (d *dense) all(s float64) (y state) {
	x := d.from + s*d.h
	left := d.left(x)
	d.moving(x, left, &y)
	for k := firstBranch; k <= secondBranch; k++ {
		y[k] = d.terms[k].at(x) + d.fading[k]*left
	}
	return y
}

// moving sets the current and the speeds x seconds after the beginning of the stretch, when
// left is left of what dies out.
func (d *dense) moving(x, left float64, y *state) {
	y[motorAmps] = d.terms[motorAmps].at(x) + d.fading[motorAmps]*left
	y[wheelSpeed] = d.terms[wheelSpeed].at(x) + d.fading[wheelSpeed]*left
	y[vehicleSpeed] = y[wheelSpeed]
	if d.apart {
		y[vehicleSpeed] = d.terms[vehicleSpeed].at(x)
	}
}

// slope is the slope of one state that the series carry, x seconds after the beginning of
// the stretch, where what dies out falls by fall of itself at first.
func (d *dense) slope(k int, x, fall float64) float64 {
	return d.terms[k].slopeAt(x) - d.fading[k]*fall
}

// left is the share of what dies out that is left x seconds after the beginning of the
// stretch.
func (d *dense) left(x float64) float64 {
	const gone = 40
	x *= d.x.fastest.rate
	switch {
	case d.fading[motorAmps] == 0 || x > gone:
		return 0
	case x == 0:
		return 1
	}
	return portable.Exp(-x)
}
