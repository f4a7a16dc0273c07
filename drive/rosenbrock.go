package drive

import "math"

// The integration method is RODAS: a Rosenbrock method of order 4 with an
// embedded one of order 3 for the error, stiffly accurate and L-stable, so the
// electrical milliseconds die out whatever the step, and steps follow the
// slow seconds. Constants: E. Hairer, G. Wanner, Solving Ordinary Differential
// Equations II (Springer, 1996), section IV.7, as in the authors' code rodas.f
// (method 1). Written from memory of that code; the observed order, the
// L-stability and the dense output are tested.
const (
	gamma = 0.25

	node2, node3, node4 = 0.386, 0.21, 0.63

	time1, time2, time3, time4 = 0.25, -0.1043, 0.1035, -0.0362

	a21 = 1.544000000000000
	a31 = 0.9466785280815826
	a32 = 0.2557011698983284
	a41 = 3.314825187068521
	a42 = 2.896124015972201
	a43 = 0.9986419139977817
	a51 = 1.221224509226641
	a52 = 6.019134481288629
	a53 = 12.53708332932087
	a54 = -0.6878860361058950

	c21 = -5.6688
	c31 = -2.430093356833875
	c32 = -0.2063599157091915
	c41 = -0.1073529058151375
	c42 = -9.594562251023355
	c43 = -20.47028614809616
	c51 = 7.496443313967647
	c52 = -10.24680431464352
	c53 = -33.99990352819905
	c54 = 11.70890893206160
	c61 = 8.083246795921522
	c62 = -7.981132988064893
	c63 = -31.52159432874371
	c64 = 16.31930543123136
	c65 = -6.058818238834054

	d21 = 10.12623508344586
	d22 = -7.487995877610167
	d23 = -34.80091861555747
	d24 = -7.992771707568823
	d25 = 1.025137723295662
	d31 = -0.6762803392801253
	d32 = 6.087714651680015
	d33 = 16.43084320892478
	d34 = 24.76722511418386
	d35 = -6.594389125716872
)

// dense is one step and the polynomial between its ends.
type dense struct {
	t, h           float64
	y0, y1, c3, c4 state
}

// at returns one state at a share s of the step, from 0 to 1.
func (d *dense) at(k int, s float64) float64 {
	r := 1 - s
	return d.y0[k]*r + s*(d.y1[k]+r*(d.c3[k]+s*d.c4[k]))
}

// all returns every state at a share s of the step.
func (d *dense) all(s float64) state {
	r := 1 - s
	var y state
	for k := range y {
		y[k] = d.y0[k]*r + s*(d.y1[k]+r*(d.c3[k]+s*d.c4[k]))
	}
	return y
}

// step tries one step of length d.h from d.t and d.y0, fills the rest of d and
// returns the error over what tol allows: above 1 the step is too long.
func (p *plant) step(d *dense, tol float64) float64 {
	var k1, k2, k3, k4, k5, k6, ft, y, f state
	t, h := d.t, d.h
	p.full = !p.limited && t >= p.rampS && t >= p.moduleRampS
	g := 1 / h
	var a arrow
	a.set(p, t, &d.y0, g/gamma)
	moving := p.timeSlope(t, &d.y0, &ft)

	p.slope(t, &d.y0, &k1)
	if moving {
		for j := range carried {
			k1[j] += h * time1 * ft[j]
		}
	}
	a.solve(&k1)

	for j := range carried {
		y[j] = d.y0[j] + a21*k1[j]
	}
	p.slope(t+node2*h, &y, &f)
	for j := range carried {
		k2[j] = f[j] + g*(c21*k1[j])
	}
	if moving {
		for j := range carried {
			k2[j] += h * time2 * ft[j]
		}
	}
	a.solve(&k2)

	for j := range carried {
		y[j] = d.y0[j] + a31*k1[j] + a32*k2[j]
	}
	p.slope(t+node3*h, &y, &f)
	for j := range carried {
		k3[j] = f[j] + g*(c31*k1[j]+c32*k2[j])
	}
	if moving {
		for j := range carried {
			k3[j] += h * time3 * ft[j]
		}
	}
	a.solve(&k3)

	for j := range carried {
		y[j] = d.y0[j] + a41*k1[j] + a42*k2[j] + a43*k3[j]
	}
	p.slope(t+node4*h, &y, &f)
	for j := range carried {
		k4[j] = f[j] + g*(c41*k1[j]+c42*k2[j]+c43*k3[j])
	}
	if moving {
		for j := range carried {
			k4[j] += h * time4 * ft[j]
		}
	}
	a.solve(&k4)

	for j := range carried {
		y[j] = d.y0[j] + a51*k1[j] + a52*k2[j] + a53*k3[j] + a54*k4[j]
	}
	p.slope(t+h, &y, &f)
	for j := range carried {
		k5[j] = f[j] + g*(c51*k1[j]+c52*k2[j]+c53*k3[j]+c54*k4[j])
	}
	a.solve(&k5)

	for j := range carried {
		y[j] += k5[j]
	}
	p.slope(t+h, &y, &f)
	for j := range carried {
		k6[j] = f[j] + g*(c61*k1[j]+c62*k2[j]+c63*k3[j]+c64*k4[j]+c65*k5[j])
	}
	a.solve(&k6)

	var worst float64
	for j := range carried {
		d.y1[j] = y[j] + k6[j]
		d.c3[j] = d21*k1[j] + d22*k2[j] + d23*k3[j] + d24*k4[j] + d25*k5[j]
		d.c4[j] = d31*k1[j] + d32*k2[j] + d33*k3[j] + d34*k4[j] + d35*k5[j]
		// Comparisons instead of max spare its care for what is not a number, which the
		// last one has.
		large := floorShare * p.scale[j]
		if size := math.Abs(d.y0[j]); size > large {
			large = size
		}
		if size := math.Abs(d.y1[j]); size > large {
			large = size
		}
		if e := math.Abs(k6[j]) / (tol * large); !(e <= worst) {
			worst = e // also takes a NaN, which then fails the step
		}
	}
	p.coast(d)
	return worst
}

// floorShare is the share of a state's natural scale (stall current, no-load
// speed, open-circuit volts) below which its error is no longer relative.
const floorShare = 0.03
