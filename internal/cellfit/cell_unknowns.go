package cellfit

import (
	"cmp"
	"math"
	"sort"

	"example.org/packcheck/chemistry"
)

// knots of the four curves over charge. The open-circuit voltage needs them
// dense near empty, where it drops by a volt.
var (
	restKnots   = []float64{0, 0.01, 0.02, 0.035, 0.05, 0.075, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 0.98, 1}
	ohmKnots    = []float64{0, 0.03, 0.06, 0.1, 0.15, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 1}
	branchKnots = []float64{0, 0.05, 0.1, 0.25, 0.5, 0.75, 1}
)

// The prior: how far what is searched for may lie from the base profile.
const (
	tau1Spread    = 0.5   // of the logarithm of a time constant
	tau2Spread    = 0.7   //
	kiloJSpread   = 0.1   // of that of an activation energy
	kneeSpread    = 0.2   // of that of the fast branch's knee
	wellsSpread   = 0.25  // of that of depth and time of the wells
	ohmSpread     = 1.0   // of that of a resistance, where nothing else is said
	bendV         = 0.006 // how much a shift of the rest curve may bend from knot to knot, V
	bendOhm       = 0.3   // the same of the logarithm of a resistance
	stepSpread    = 3.0   // of the logarithm of a step of the rest curve; it only keeps the search in bounds
	leastOhmAh    = 0.002 // where the base has no resistance, Ohm*Ah
	leastStepV    = 2e-4  // of the base's rest curve from knot to knot
	leastOhmSigma = 0.05  // to which a measured resistance is believed, relative
	usualDepthH   = 0.08  // depth of the wells of a lithium cell that settle in [chemistry.SettlesHours], hours: 4 % left behind (source "left-behind-lithium" of package tables)
	anyDepth      = 0.9   // of the logarithm of the depth: what cells differ by
	nearEmpty     = 0.2   // charge below which anything may happen
	looser        = 5     // how much wider the prior is there
	steepBelow    = 0.15  // charge below which the rest curve may bend sharply ...
	kneeBelow     = 0.3   // ... and where the resistance may not
)

// knob is one figure that is searched for, as a factor on what the base has.
type knob struct {
	spread float64 // of its logarithm
	turn   func(d *draft, factor float64)
}

// draft is a cell being tried.
type draft struct {
	profile                     chemistry.Profile
	fullAh                      float64
	kiloJ, fastKiloJ, slowKiloJ float64
	depthH, tauH                float64   // of the wells: charge per ampere that stays behind, and its time, hours
	unit                        []float64 // capacities of further specimens over the first's
}

// knobs lists what is searched for besides the curves. The first is the full
// charge, unless that is known.
func (f *fitter) knobs(units int) []knob {
	var out []knob
	if f.o.FullAh == 0 {
		out = append(out, knob{f.o.FullAhSpread, func(d *draft, x float64) { d.fullAh *= x }})
	}
	out = append(out,
		knob{tau1Spread, func(d *draft, x float64) { d.profile.Fast.TauS *= x }},
		knob{tau2Spread, func(d *draft, x float64) { d.profile.Slow.TauS *= x }})
	if f.o.FitWells {
		out = append(out,
			knob{f.depthSpread(), func(d *draft, x float64) { d.depthH *= x }},
			knob{wellsSpread, func(d *draft, x float64) { d.tauH *= x }})
	}
	if f.o.FitKiloJ {
		out = append(out, knob{kiloJSpread, func(d *draft, x float64) { d.kiloJ *= x }})
		if f.o.FastKiloJ > 0 {
			out = append(out, knob{kiloJSpread, func(d *draft, x float64) { d.fastKiloJ *= x }})
		}
		if f.o.SlowKiloJ > 0 {
			out = append(out, knob{kiloJSpread, func(d *draft, x float64) { d.slowKiloJ *= x }})
		}
		if f.o.Base.Fast.KneeV > 0 {
			out = append(out, knob{kneeSpread, func(d *draft, x float64) { d.profile.Fast.KneeV *= x }})
		}
	}
	for u := range units {
		out = append(out, knob{f.o.UnitSpread, func(d *draft, x float64) { d.unit[u] *= x }})
	}
	return out
}

func (f *fitter) depthSpread() float64 { return cmp.Or(f.o.DepthSpread, wellsSpread) }

// startingPoints are the places to search from: the base, and others in time
// constants and wells, where the valley has side arms.
func (f *fitter) startingPoints() [][]float64 {
	seeds := []struct{ tau1, tau2, depth, tau float64 }{
		{1, 1, 1, 1},
		{1, 3, 1.6, 1},
		{3, 5, 0.6, 1.6},
		{0.5, 0.5, 1.3, 1.6},
	}
	var out [][]float64
	for _, s := range seeds[:min(f.o.Searches, len(seeds))] {
		x := make([]float64, f.unknowns)
		k := 0
		set := func(factor, spread float64) { x[k], k = math.Log(factor)/spread, k+1 }
		if f.o.FullAh == 0 {
			set(1, 1)
		}
		set(s.tau1, tau1Spread)
		set(s.tau2, tau2Spread)
		if f.o.FitWells {
			set(s.depth, f.depthSpread())
			set(s.tau, wellsSpread)
		}
		out = append(out, x)
	}
	return out
}

// drafted turns a vector of unknowns into a cell.
func (f *fitter) drafted(x []float64) draft {
	d := draft{
		profile: f.o.Base, fullAh: f.fullAh, kiloJ: f.o.KiloJ, fastKiloJ: f.o.FastKiloJ, slowKiloJ: f.o.SlowKiloJ,
		depthH: f.depthH, tauH: f.tauH, unit: make([]float64, f.units),
	}
	for u := range d.unit {
		d.unit[u] = f.o.share(u + 1)
	}
	for i, k := range f.knob {
		k.turn(&d, bounded(x[i]*k.spread))
	}
	p := &d.profile
	p.Rest.VoltsAt = straight(chemistry.Curve{X: restKnots, Y: f.restV(x)})
	p.Resistance.OhmAh = f.ohms(x, f.ohmAt, f.ohm0)
	p.Fast.OhmAh = f.ohms(x, f.fastAt, f.fast0)
	p.Slow.OhmAh = f.ohms(x, f.slowAt, f.slow0)
	if f.o.FitKiloJ {
		p.Resistance.ReferenceC = roomC
		p.Resistance.TempFactor = arrheniusCurve(d.kiloJ)
		p.Fast.TempFactor, p.Slow.TempFactor = chemistry.Curve{}, chemistry.Curve{}
		if d.fastKiloJ > 0 {
			p.Fast.TempFactor = arrheniusCurve(d.fastKiloJ)
		}
		if d.slowKiloJ > 0 {
			p.Slow.TempFactor = arrheniusCurve(d.slowKiloJ)
		}
	}
	p.Capacity.Ratio = d.fullAh / f.o.CapacityAh
	if f.o.FitWells {
		p.Wells.C = 1 / (1 + d.depthH/d.tauH)
		p.Wells.KPerS = p.Wells.C * (1 - p.Wells.C) / d.tauH / 3600
	}
	return d
}

// bounded is the exponential, held where nothing overflows.
func bounded(x float64) float64 { return math.Exp(min(max(x, -12), 12)) }

// restV is the rest curve at its knots. Each step from knot to knot is a factor
// on the base's, so the curve never falls.
func (f *fitter) restV(x []float64) []float64 {
	n := len(restKnots)
	v := make([]float64, n)
	v[n-1] = f.rest0[n-1] + f.topSpreadV*x[f.restAt+n-1]
	for k := n - 2; k >= 0; k-- {
		v[k] = v[k+1] - max(f.rest0[k+1]-f.rest0[k], leastStepV)*bounded(x[f.restAt+k])
	}
	return v
}

// ohms is a resistance curve: at every knot a factor on the base's.
func (f *fitter) ohms(x []float64, at int, base chemistry.Curve) chemistry.Curve {
	y := make([]float64, len(base.X))
	for k, ohm := range base.Y {
		y[k] = ohm * bounded(x[at+k])
	}
	return chemistry.Curve{X: base.X, Y: y}
}

// prior writes how far a vector lies from the base profile, and returns how
// many figures that is.
func (f *fitter) prior(off, x []float64) int {
	n := 0
	add := func(v float64) {
		if off != nil {
			off[n] = v
		}
		n++
	}
	for i := range f.knob {
		add(x[i])
	}
	rest := f.restV(x)
	shift := func(k int) float64 { return rest[k] - f.rest0[k] }
	last := len(restKnots) - 1
	add(shift(last) / f.topSpreadV)
	add(shift(0) / f.o.BottomSpreadV)
	for k := 1; k < last; k++ {
		spread, bend := f.o.RestSpreadV, bendV
		if restKnots[k] < nearEmpty {
			spread *= looser
		}
		if restKnots[k] < steepBelow || f.o.OneCurrent && restKnots[k] < kneeBelow {
			bend *= 10
		}
		add(shift(k) / spread)
		add((shift(k-1) - 2*shift(k) + shift(k+1)) / bend)
	}
	for k := range last {
		add(x[f.restAt+k] / stepSpread)
	}
	for _, m := range f.o.Ohms {
		k, share := hat(ohmKnots, m.Charge)
		base := f.ohm0.Y[k]*bounded(x[f.ohmAt+k])*(1-share) + f.ohm0.Y[k+1]*bounded(x[f.ohmAt+k+1])*share
		pack := base * float64(f.o.CellsInSeries) / f.o.CapacityAh
		add(math.Log(pack/m.Ohm.Value) / max(m.Ohm.Sigma/m.Ohm.Value, leastOhmSigma))
	}
	for _, c := range []struct {
		at    int
		knots []float64
	}{{f.ohmAt, ohmKnots}, {f.fastAt, branchKnots}, {f.slowAt, branchKnots}} {
		for k, z := range c.knots {
			spread, bend := f.o.OhmSpread, bendOhm
			switch {
			case f.o.OneCurrent:
				spread, bend = spread/2, bend/4
			case z < nearEmpty:
				spread, bend = 2*spread, 10*bend
			}
			add(x[c.at+k] / spread)
			if k > 0 && k+1 < len(c.knots) {
				add((x[c.at+k-1] - 2*x[c.at+k] + x[c.at+k+1]) / bend)
			}
		}
	}
	return n
}

// straight adds points inside every segment, so that the smooth curve that the
// cell model draws through a table stays close to straight lines between the
// knots, also where it bends sharply.
func straight(c chemistry.Curve) chemistry.Curve {
	out := chemistry.Curve{X: []float64{c.X[0]}, Y: []float64{c.Y[0]}}
	for i := 1; i < len(c.X); i++ {
		for _, f := range []float64{0.2, 0.8, 1} {
			out.X = append(out.X, c.X[i-1]+f*(c.X[i]-c.X[i-1]))
			out.Y = append(out.Y, c.Y[i-1]+f*(c.Y[i]-c.Y[i-1]))
		}
	}
	return out
}

// gasConstant is the molar gas constant, kJ/(mol K) (exact since the 2019 SI).
const gasConstant = 8.314462618e-3

// arrheniusCurve is the factor on resistance over temperature in deg C, against
// that at 25 deg C.
func arrheniusCurve(kiloJ float64) chemistry.Curve {
	c := chemistry.Curve{X: []float64{-20, -10, 0, 10, 20, 25, 30, 40, 50, 60, 70}}
	for _, t := range c.X {
		c.Y = append(c.Y, math.Exp(kiloJ/gasConstant*(1/(t+273.15)-1/298.15)))
	}
	return c
}

// hat returns the piecewise linear weights of z among knots: i and i+1 with
// weights 1-f and f, the end values held outside.
func hat(knots []float64, z float64) (i int, f float64) {
	i = sort.SearchFloat64s(knots, z) - 1
	i = min(max(i, 0), len(knots)-2)
	return i, min(max((z-knots[i])/(knots[i+1]-knots[i]), 0), 1)
}
