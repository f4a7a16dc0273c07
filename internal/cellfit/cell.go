package cellfit

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/diff/fd"
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
	FitKiloJ      bool      // the logs cover enough temperatures to find activation energies; else Base's factors stay
	KiloJ         float64   // where the search for that of the resistance begins, kJ/mol; 0 = 20
	FastKiloJ     float64   // the same of the fast branch; 0 = as the resistance
	SlowKiloJ     float64   // the same of the slow branch; 0 = as the resistance
	FullAh        float64   // 0 = fitted
	LikelyFullAh  float64   // where FullAh is fitted, what it lies near; 0 = the longest discharge
	FullAhSpread  float64   // how far the full charge may lie from that, relative; 0 = 0.015
	OhmSpread     float64   // how far a resistance may lie from Base's, of its logarithm; 0 = 1
	Ohms          []OhmAt   // resistances of the whole pack that were measured otherwise, such as from steps
	FitWells      bool      // find the two wells too: for cells that give less at a higher current than resistance explains
	DepthSpread   float64   // how far the depth of the wells may lie from Base's, of its logarithm, or from a usual cell's where Base has no bound well; 0 = as of a cell like Base
	StartFull     []bool    // per log: it began full, whatever its first voltage says
	Weights       []float64 // per log; nil = all 1
	Unit          []int     // per log: which specimen, from 0; each has a capacity of its own. nil = all the same
	UnitShare     []float64 // per specimen: its capacity over the first's, as far as known; nil = all 1
	UnitSpread    float64   // relative spread of those capacities; 0 = 0.02
	OneCurrent    bool      // the logs cannot tell a resistance that changes with the charge from the rest curve: it keeps Base's shape
	Searches      int       // from how many places the search starts, 1 to 4; 0 = 4
	CutoffV       float64   // V per cell: what follows a voltage clearly below is left out; 0 = nothing
}

// CellFit is a fitted cell.
type CellFit struct {
	Profile       chemistry.Profile
	FullAh        float64   // charge between empty and full
	FullAhSigma   float64   // its standard uncertainty
	ChargeAtStart []float64 // per log
	RMSV          []float64 // per log, V per cell, row by row
	UnitAh        []float64 // full charge of each specimen
	OhmSigma      []float64 // per knot of Profile.Resistance.OhmAh, Ohm*Ah
	KiloJ         float64   // with FitKiloJ: activation energy of the resistance, kJ/mol
	FastKiloJ     float64   // of the fast branch; 0 = as the resistance
	SlowKiloJ     float64   // of the slow branch; 0 = as the resistance
}

// roomC is the temperature where a log tells none.
const roomC = 25

// FitCell finds the open-circuit curve, the resistance over charge and
// temperature, the two branches and what else the options ask for with which
// the battery model, run along the logs, comes closest to their voltages. The
// base profile is the prior: what a log does not show stays as it was.
//
// It is a least-squares fit by Gauss and Newton's method, of the very model
// that the cell will be used in; only the temperature is taken from the log.
func FitCell(logs []*Log, o CellOptions) (CellFit, error) {
	if len(logs) == 0 {
		return CellFit{}, errors.New("cellfit: no logs to fit")
	}
	if o.CellsInSeries < 1 || !(o.CapacityAh > 0) {
		return CellFit{}, fmt.Errorf("cellfit: %d cells of %g Ah, want at least one cell and a capacity", o.CellsInSeries, o.CapacityAh)
	}
	o.fillIn()
	f := newFitter(logs, o)
	var best []float64
	least := math.Inf(1)
	for _, start := range f.startingPoints() {
		x, cost, err := f.search(start)
		if err != nil {
			return CellFit{}, err
		}
		if cost < least {
			best, least = x, cost
		}
	}
	if best == nil {
		return CellFit{}, errors.New("cellfit: no cell comes near the logs")
	}
	return f.result(best)
}

// fillIn puts the defaults where nothing was said.
func (o *CellOptions) fillIn() {
	orElse := func(value *float64, otherwise float64) {
		if *value == 0 {
			*value = otherwise
		}
	}
	orElse(&o.AmbientC, roomC)
	orElse(&o.RestSpreadV, 0.05)
	orElse(&o.BottomSpreadV, 0.4*o.RestSpreadV)
	orElse(&o.KiloJ, 20)
	orElse(&o.OhmSpread, ohmSpread)
	orElse(&o.FullAhSpread, 0.015)
	orElse(&o.UnitSpread, 0.02)
	if o.Searches == 0 {
		o.Searches = 4
	}
}

// share is the capacity of a specimen over the first's, as far as known.
func (o *CellOptions) share(unit int) float64 {
	if unit < len(o.UnitShare) {
		return o.UnitShare[unit]
	}
	return 1
}

// search goes downhill from one place.
func (f *fitter) search(start []float64) (x []float64, cost float64, err error) {
	n := len(start)
	var at []float64 // where residuals and jacobian were last taken
	residuals := make([]float64, f.residuals)
	jacobian := mat.NewDense(f.residuals, n, nil)
	look := func(x []float64) {
		if slices.Equal(at, x) {
			return
		}
		at = slices.Clone(x)
		f.slopes(jacobian, residuals, x)
	}
	trial := make([]float64, f.residuals)
	problem := optimize.Problem{
		Func: func(x []float64) float64 {
			f.off(trial, x)
			return squares(trial)
		},
		Grad: func(grad, x []float64) {
			look(x)
			g := mat.NewVecDense(n, grad)
			g.MulVec(jacobian.T(), mat.NewVecDense(f.residuals, residuals))
			g.ScaleVec(2, g)
		},
		Hess: func(hess *mat.SymDense, x []float64) {
			look(x)
			hess.SymOuterK(2, jacobian.T())
		},
	}
	result, err := optimize.Minimize(problem, start,
		&optimize.Settings{MajorIterations: 60, Converger: &optimize.FunctionConverge{Absolute: 0.02, Iterations: 3}},
		&optimize.Newton{Linesearcher: &optimize.Backtracking{}})
	if result == nil {
		return nil, 0, fmt.Errorf("cellfit: the search failed: %w", err)
	}
	return result.X, result.F, nil // where a line search found nothing better is the end too
}

// slopes writes the residuals at a vector of unknowns and how each of them
// changes with each unknown.
func (f *fitter) slopes(jacobian *mat.Dense, residuals, x []float64) {
	f.off(residuals, x)
	fd.Jacobian(jacobian, f.off, x, &fd.JacobianSettings{Formula: fd.Forward, Step: 1e-4, OriginValue: residuals, Concurrent: true})
}

func squares(x []float64) float64 {
	var sum float64
	for _, v := range x {
		sum += v * v
	}
	return sum
}

// result writes the solution into a profile.
func (f *fitter) result(x []float64) (CellFit, error) {
	d := f.drafted(x)
	fit := CellFit{
		Profile: d.profile, FullAh: d.fullAh, UnitAh: []float64{d.fullAh},
		KiloJ: d.kiloJ, FastKiloJ: d.fastKiloJ, SlowKiloJ: d.slowKiloJ,
	}
	for _, share := range d.unit {
		fit.UnitAh = append(fit.UnitAh, d.fullAh*share)
	}
	models, err := f.models(d)
	if err != nil {
		return CellFit{}, err
	}
	for _, c := range f.curves {
		var sum float64
		start := c.run(models[c.unit], func(_ int, offV float64) { sum += offV * offV })
		fit.ChargeAtStart = append(fit.ChargeAtStart, start)
		fit.RMSV = append(fit.RMSV, math.Sqrt(sum/float64(c.log.Rows())))
	}
	f.doubts(&fit, d, x)
	return fit, nil
}

// doubts works out the standard uncertainties.
func (f *fitter) doubts(fit *CellFit, d draft, x []float64) {
	jacobian := mat.NewDense(f.residuals, len(x), nil)
	f.slopes(jacobian, make([]float64, f.residuals), x)
	var curvature, covariance mat.SymDense
	curvature.SymOuterK(1, jacobian.T())
	var chol mat.Cholesky
	if !chol.Factorize(&curvature) || chol.InverseTo(&covariance) != nil {
		return
	}
	sigma := func(k int) float64 { return math.Sqrt(covariance.At(k, k)) }
	if f.o.FullAh == 0 {
		fit.FullAhSigma = fit.FullAh * f.o.FullAhSpread * sigma(0)
	}
	for k, ohm := range d.profile.Resistance.OhmAh.Y {
		fit.OhmSigma = append(fit.OhmSigma, ohm*sigma(f.ohmAt+k))
	}
}
