package drive

// unfold finds the terms of the series, one power after the other.
func (p *plant) unfold(d *dense) {
	x := &d.x
	f := &x.fastest
	i, w, v1, v2 := &d.terms[motorAmps], &d.terms[wheelSpeed], &d.terms[firstBranch], &d.terms[secondBranch]
	amp, speed, volts1, volts2 := d.y0[motorAmps], d.y0[wheelSpeed], d.y0[firstBranch], d.y0[secondBranch]
	d.fading = state{}
	ocv, brake := p.ocv, x.brake
	bends := p.branch[0].KneeV != 0 || p.branch[1].KneeV != 0
	var perRate, byVolts, byBrake, by1, by2 float64
	if x.follows {
		perRate = 1 / f.rate
		byVolts, byBrake = p.perHenry*perRate, f.left[wheelSpeed]*perRate
		by1, by2 = f.left[firstBranch]*p.decay[0]*perRate, f.left[secondBranch]*p.decay[1]*perRate
	}
	for n := range order + 1 {
		w[n], v1[n], v2[n] = speed, volts1, volts2
		if x.drag != 0 {
			square := speed * speed
			if n > 0 {
				square = w.square(n, 1) + 2*w[0]*speed
			}
			brake += x.drag * square
		}
		rest := ocv - volts1 - volts2
		x.rest[n] = rest
		// The volts across the inductance and the battery current, but for what the
		// current's own term adds.
		volts, battery := x.duty[0]*rest-p.backEMF*speed, 0.0
		if !p.full {
			for j := 1; j <= min(n, x.powers); j++ {
				volts -= x.ohm[j] * i[n-j]
				if j < len(x.duty) {
					volts += x.duty[j] * x.rest[n-j]
					battery += x.duty[j] * i[n-j]
				}
			}
		}
		next := 0.0
		switch {
		case p.limited:
			if n > 0 {
				amp = 0
			}
			battery = p.limit * x.limiter.share(p, x, n, speed)
		case x.follows:
			settled1, settled2 := f.steepOhm[0]*battery, f.steepOhm[1]*battery
			if bends {
				settled1, settled2 = x.settledRest(p, 0, n, battery), x.settledRest(p, 1, n, battery)
			}
			was := amp
			amp = volts*byVolts - brake*byBrake + by1*(settled1-volts1) + by2*(settled2-volts2) - x.late[n]
			if n == 0 { // what the state has beyond it dies out
				amount := (was - amp) / f.along
				d.fading = state{amount, amount * f.right[wheelSpeed], amount * f.right[firstBranch], amount * f.right[secondBranch]}
				amp = was - amount
				speed -= d.fading[wheelSpeed]
				volts1 -= d.fading[firstBranch]
				volts2 -= d.fading[secondBranch]
				w[0], v1[0], v2[0] = speed, volts1, volts2
				x.rest[0] = ocv - volts1 - volts2
				brake = x.brake + x.drag*speed*speed
			}
			battery += x.duty[0] * amp
		default:
			battery += x.duty[0] * amp
			next = (volts - x.ohm[0]*amp) * p.perHenry * perNext[n]
		}
		i[n] = amp
		settled1, settled2 := battery*p.branch[0].Ohm, battery*p.branch[1].Ohm
		if bends {
			settled1, settled2 = x.settled(p, 0, n, battery), x.settled(p, 1, n, battery)
		}
		speed = (x.gain*amp - brake) * perNext[n]
		volts1 = (settled1 - volts1) * (p.decay[0] * perNext[n])
		volts2 = (settled2 - volts2) * (p.decay[1] * perNext[n])
		amp, ocv, brake = next, 0, 0
	}
}

// perNext is 1/(n+1): what makes the term n of a slope the term n+1 of the sum.
var perNext = [order + 1]float64{1, 1. / 2, 1. / 3, 1. / 4, 1. / 5, 1. / 6, 1. / 7, 1. / 8, 1. / 9, 1. / 10, 1. / 11, 1. / 12, 1. / 13}

// settled is the term n of the volts at which a branch settles.
func (x *expansion) settled(p *plant, k, n int, amps float64) float64 {
	b := &p.branch[k]
	if b.KneeV == 0 {
		return amps * b.Ohm
	}
	return b.KneeV * x.bent[k].take(n, amps*b.Ohm/b.KneeV)
}

// settledRest is the same without what the current's own term adds, amps being what the
// others add to the battery current.
func (x *expansion) settledRest(p *plant, k, n int, amps float64) float64 {
	b := &p.branch[k]
	straight := x.fastest.steepOhm[k] * amps
	switch {
	case b.KneeV == 0:
		return straight
	case n == 0:
		return x.fastest.fixedV[k]
	default:
		return b.KneeV*x.bent[k].rest(n) + straight
	}
}

// limiter is the duty that holds the current: drop own^2 - volts own + need = 0, as
// [plant.supplyAt] has it.
type limiter struct {
	drop               [3]float64 // in powers of time
	slope              float64    // of the whole by own
	own, square, volts series
}

// share is the term n of the share of the limited current that the battery gives.
func (l *limiter) share(p *plant, x *expansion, n int, speed float64) float64 {
	m := &x.module
	need := p.backEMF * speed
	l.volts[n] = m[0] * x.rest[n]
	if n == 0 {
		l.drop = [3]float64{(m[0]*m[0]*p.r0 + p.path) * p.limit, 2 * m[0] * m[1] * p.r0 * p.limit, m[1] * m[1] * p.r0 * p.limit}
		l.own[0] = smallerRoot(l.drop[0], l.volts[0], need+p.ohm*p.limit)
		l.square[0] = l.own[0] * l.own[0]
		l.slope = 2*l.drop[0]*l.own[0] - l.volts[0]
		return m[0] * l.own[0]
	}
	l.volts[n] += m[1] * x.rest[n-1]
	l.square[n] = l.own.square(n, 1)
	sum := need + l.drop[0]*l.square[n] + l.drop[1]*l.square[n-1] - l.volts[n]*l.own[0]
	if n > 1 {
		sum += l.drop[2] * l.square[n-2]
	}
	for j := 1; j < n; j++ {
		sum -= l.volts[j] * l.own[n-j]
	}
	l.own[n] = 0 // at the point of greatest power no duty gives more
	if l.slope < 0 {
		l.own[n] = -sum / l.slope
	}
	l.square[n] += 2 * l.own[0] * l.own[n]
	return m[0]*l.own[n] + m[1]*l.own[n-1]
}
