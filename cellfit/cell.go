package cellfit

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"

	"example.org/packcheck/chemistry"
)

// CellOptions says what is known before a cell is fitted.
type CellOptions struct {
	Base          chemistry.Profile // starting point and prior; limits and sources are kept from it
	CapacityAh    float64           // label capacity of the pack that was logged
	CellsInSeries int
	AmbientC      float64   // where a log has no temperature; 0 = 25
	RestSpreadV   float64   // how far the rest curve may lie from Base's, V per cell; 0 = 0.05
	BottomSpreadV float64   // the same for the very bottom of the curve; 0 = 0.4 RestSpreadV
	KiloJ         float64   // activation energy of resistance where the logs cannot tell, kJ/mol; 0 = 20
	FitKiloJ      bool      // the logs cover enough temperatures to fit it
	FullAh        float64   // 0 = fitted
	OneWell       bool      // all charge is available at once, whatever Base says
	FitWells      bool      // find the two wells too: for cells that give less at a higher current than resistance explains
	StartFull     []bool    // per log: it began full, whatever its first voltage says
	Weights       []float64 // per log; nil = all 1
	Unit          []int     // per log: which specimen, from 0; each has a capacity of its own. nil = all the same
	FullAhSpread  float64   // how far the full charge may lie from the longest discharge, relative; 0 = 0.015
	MeanUnit      bool      // the profile gets the mean capacity of the logs' specimens, not the first's
	UnitSpread    float64   // relative spread of those capacities; 0 = 0.02
	EndWeight     float64   // weight of the last stretch of a discharge; 0 = 1
	Searches      int       // from how many places the search starts, 1 to 4; 0 = 4
	CutoffV       float64   // V per cell: what follows a voltage clearly below is left out; 0 = nothing
}

// CellFit is a fitted cell.
type CellFit struct {
	Profile       chemistry.Profile
	FullAh        float64   // charge between empty and full
	FullAhSigma   float64   // its standard uncertainty
	ChargeAtStart []float64 // per log
	RMSV          []float64 // per log, V per cell, of the equations (not of a replay)
	UnitAh        []float64 // full charge of each specimen
	OhmSigma      []float64 // per knot of Profile.Resistance.OhmAh, Ohm*Ah
	KiloJ         float64
}

// curve is one log made ready.
type curve struct {
	log    *Log
	temp   []float64
	cells  float64
	weight float64
	heavy  []float64 // per row: further weight
	full   bool
	unit   int
}

// stressEnd gives the last stretch of a long discharge more weight: there the
// voltage decides how much charge comes out before a cutoff.
func (c *curve) stressEnd(weight float64) {
	l := c.log
	c.heavy = slices.Repeat([]float64{1}, l.Rows())
	if l.Rows() < 20 {
		return // a single pulse
	}
	span, most := spread(l.ChargeAh), slices.Max(l.Amps)
	for end := l.Rows() - 1; end > 0; end-- {
		if l.Amps[end] < 0.05*most || end+1 < l.Rows() && l.Amps[end+1] > 0.05*most {
			continue
		}
		first := end
		for first > 0 && l.Amps[first-1] > 0.05*most {
			first--
		}
		if l.ChargeAh[end]-l.ChargeAh[first] < 0.5*span {
			continue
		}
		for i := first; i <= end; i++ {
			if l.ChargeAh[end]-l.ChargeAh[i] < 0.02*span {
				c.heavy[i] = weight
			}
		}
	}
}

// roomC is the temperature where a log tells none.
const roomC = 25

// noiseV is how far a voltage may lie off because the model is not the cell,
// per cell. It sets the weight of the logs against the prior.
const noiseV = 0.010

// rowsPerLog is how many independent measurements a log is counted as:
// neighbouring rows share their model error.
const rowsPerLog = 120

// FitCell finds the open-circuit curve, the resistance over charge and
// temperature and the two branches that explain the logs best, starting from a
// base profile. The curves enter the voltage linearly and are solved for in
// one least-squares step (with the base as prior, so that what a log does not
// show stays as it was); capacity, time constants and activation energy are
// searched for around that.
func FitCell(logs []*Log, o CellOptions) (CellFit, error) {
	if len(logs) == 0 {
		return CellFit{}, errors.New("cellfit: no logs to fit")
	}
	if o.CellsInSeries < 1 || !(o.CapacityAh > 0) {
		return CellFit{}, fmt.Errorf("cellfit: %d cells of %g Ah, want at least one cell and a capacity", o.CellsInSeries, o.CapacityAh)
	}
	if o.AmbientC == 0 {
		o.AmbientC = roomC
	}
	if o.RestSpreadV == 0 {
		o.RestSpreadV = 0.05
	}
	if o.UnitSpread == 0 {
		o.UnitSpread = 0.02
	}
	if o.Searches == 0 {
		o.Searches = 4
	}
	if o.FullAhSpread == 0 {
		o.FullAhSpread = 0.015
	}
	if o.EndWeight == 0 {
		o.EndWeight = 1
	}
	if o.BottomSpreadV == 0 {
		o.BottomSpreadV = 0.4 * o.RestSpreadV
	}
	if o.KiloJ == 0 {
		o.KiloJ = 20
	}
	f := &fitter{o: o}
	for i, l := range logs {
		c := &curve{log: l.Condense(600), cells: float64(o.CellsInSeries)}
		if i < len(o.Unit) {
			c.unit = o.Unit[i]
		}
		c.log = c.log.Until(0.98 * o.CutoffV * c.cells)
		c.full = i < len(o.StartFull) && o.StartFull[i]
		c.temp = c.log.TempC
		if c.temp == nil {
			c.temp = slices.Repeat([]float64{o.AmbientC}, c.log.Rows())
		}
		c.weight = math.Sqrt(rowsPerLog/float64(max(c.log.Rows(), 1))) / noiseV
		if i < len(o.Weights) {
			c.weight *= math.Sqrt(o.Weights[i])
		}
		c.stressEnd(o.EndWeight)
		f.curves = append(f.curves, c)
	}
	f.prior()
	return f.run()
}

// fitter is a fit under way.
type fitter struct {
	o      CellOptions
	curves []*curve
	mean   []float64 // prior
	sigma  []float64
	lower  []float64 // resistances do not fall below
	best   []float64 // last solution
	normal *mat.SymDense
	starts []float64
	rms    []float64
}

// prior makes the base profile the starting point.
func (f *fitter) prior() {
	f.mean, f.sigma, f.lower = make([]float64, unknowns), make([]float64, unknowns), make([]float64, unknowns)
	p := f.o.Base
	fill := func(at int, knots []float64, c chemistry.Curve, scale, relative, absolute float64) {
		value := c.Func()
		for k, z := range knots {
			x := value(z) * scale
			f.mean[at+k], f.sigma[at+k] = x, max(relative*x, absolute)
			f.lower[at+k] = 0.05 * x
		}
	}
	perAh := 1 / f.o.CapacityAh
	fill(0, restKnots, p.Rest.VoltsAt, 1, 0, f.o.RestSpreadV)
	fill(ohmAt, ohmKnots, p.Resistance.OhmAh, perAh, 2, 0.005*perAh)
	fill(fastAt, fastKnots, p.Fast.OhmAh, perAh, 2, 0.005*perAh)
	fill(slowAt, slowKnots, p.Slow.OhmAh, perAh, 2, 0.01*perAh)
	// Near empty anything may happen.
	for k := range f.sigma {
		if knotOf(k) < 0.2 {
			f.sigma[k] *= 5
		}
	}
	// The ends of the rest curve are what full and empty mean.
	f.sigma[0], f.sigma[len(restKnots)-1] = f.o.BottomSpreadV, 0.1*f.o.RestSpreadV
	f.best = slices.Clone(f.mean)
}

// startingPoints are the first n places to search from: time constants, full
// charge, activation energy, depth and time of the wells, all as logarithms
// against the base.
func startingPoints(n int) [][]float64 {
	all := [][]float64{
		{},
		{-0.7, 0, 0, 0, 0.5, 0},
		{0.5, 0.5, 0, 0, -0.5, 0.5},
		{-1.5, -0.5, 0, 0, 0.3, 0.5},
	}
	return all[:min(n, len(all))]
}

// knotOf returns the charge that unknown k belongs to.
func knotOf(k int) float64 {
	switch {
	case k < ohmAt:
		return restKnots[k]
	case k < fastAt:
		return ohmKnots[k-ohmAt]
	case k < slowAt:
		return fastKnots[k-fastAt]
	}
	return slowKnots[k-slowAt]
}

// run searches for the shape.
func (f *fitter) run() (CellFit, error) {
	most := 0.0
	for _, c := range f.curves {
		most = max(most, slices.Max(c.log.ChargeAh)-slices.Min(c.log.ChargeAh))
	}
	full := f.o.FullAh
	if full == 0 {
		full = max(most*1.01, f.o.CapacityAh*0.3)
	}
	units := 0 // besides the first
	for _, c := range f.curves {
		units = max(units, c.unit)
	}
	// Without a bound well to start from, a shallow one.
	depth0, tau0 := 0.03, 0.3
	if w := f.o.Base.Wells; w.C < 1 && w.KPerS > 0 {
		tau0 = w.C * (1 - w.C) / w.KPerS / 3600
		depth0 = (1 - w.C) / w.C * tau0
	}
	at := func(x []float64) shape {
		s := shape{full, f.o.Base.Fast.TauS * math.Exp(x[0]), f.o.Base.Slow.TauS * math.Exp(x[1]), f.o.KiloJ, make([]float64, units), chemistry.WellShape{}}
		if f.o.FullAh == 0 {
			s.fullAh = full * math.Exp(x[2])
		}
		if f.o.FitKiloJ {
			s.kiloJ = f.o.KiloJ * math.Exp(x[3])
		}
		s.wells = f.o.Base.Wells
		if f.o.OneWell {
			s.wells.C, s.wells.KPerS = 1, 0
		}
		if f.o.FitWells {
			depth, tau := depth0*math.Exp(x[4]), tau0*math.Exp(x[5]) // hours
			s.wells.C = 1 / (1 + depth/tau)
			s.wells.KPerS = s.wells.C * (1 - s.wells.C) / tau / 3600
		}
		for u := range s.unit {
			s.unit[u] = math.Exp(x[6+u])
		}
		return s
	}
	// Wide priors keep the search out of places where nothing is measured.
	width := append([]float64{0.5, 0.7, f.o.FullAhSpread, 0.4, 1, 1}, slices.Repeat([]float64{f.o.UnitSpread}, units)...)
	cost := func(x []float64) float64 {
		// Always from the same place, so that the same x costs the same.
		f.best = slices.Clone(f.mean)
		total := f.solve(at(x), 5)
		for i := range x {
			total += (x[i] / width[i]) * (x[i] / width[i])
		}
		return total
	}
	// The valley has side arms in the time constants and the wells, so the
	// search starts from several places, and a simplex that has shrunk is
	// started afresh.
	free := f.free(units)
	all := func(x []float64) []float64 {
		out := make([]float64, 6+units)
		for i, at := range free {
			out[at] = x[i]
		}
		return out
	}
	best, least := make([]float64, 6+units), math.Inf(1)
	for _, seed := range startingPoints(f.o.Searches) {
		start := make([]float64, len(free))
		for i, at := range free {
			if at < len(seed) {
				start[i] = seed[at]
			}
		}
		for range 2 {
			result, err := optimize.Minimize(optimize.Problem{Func: func(x []float64) float64 { return cost(all(x)) }}, start,
				&optimize.Settings{MajorIterations: 200, Converger: &optimize.FunctionConverge{Absolute: 0.05, Iterations: 30}},
				&optimize.NelderMead{SimplexSize: 0.15})
			if result == nil {
				return CellFit{}, fmt.Errorf("cellfit: the search failed: %w", err)
			}
			if start = result.X; result.F < least {
				least, best = result.F, all(result.X)
			}
		}
	}
	s := at(best)
	cost(best)
	return f.result(s, cost, best), nil
}

// free lists the places of what is searched for: time constants, full charge,
// activation energy, both figures of the wells, specimens. With the full charge
// searched for the whole list is, as it always was, so that the shipped cells
// come out the same again; without, nothing is searched that cannot matter.
func (f *fitter) free(units int) []int {
	var out []int
	for i := range 6 + units {
		matters := i < 2 || i == 3 && f.o.FitKiloJ || (i == 4 || i == 5) && f.o.FitWells || i > 5
		if matters || f.o.FullAh == 0 {
			out = append(out, i)
		}
	}
	return out
}
