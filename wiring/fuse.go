package wiring

import (
	"fmt"
	"math"

	"example.org/packcheck/tables"
)

// FuseSpec says which fuse is fitted and where.
type FuseSpec struct {
	Form      tables.Fuse // from [tables.Tables.Fuse]
	RatingA   float64     // 0.01 to 1000 A
	VoltageV  float64     // printed voltage rating; 0 when unknown: the form's lowest
	DistanceM *float64    // wire from the pack's terminal to the fuse, 0 right at it; nil when unknown
	Sheathed  bool        // that wire is sheathed all the way
	HolderA   float64     // printed limit of the holder; 0 when unknown: the form's
}

// Fuse is one fuse or breaker. It does not change after [NewFuse].
type Fuse struct {
	spec    FuseSpec
	coldOhm float64
	hot     float64
	floorS  float64

	distanceM float64 // NaN when unknown
}

// NewFuse checks a fuse. It fails for a form without gates or a rating out of
// range.
func NewFuse(spec FuseSpec) (*Fuse, error) {
	if len(spec.Form.Gates) == 0 {
		return nil, fmt.Errorf("wiring: fuse form %q has no opening times (look it up in package tables)", spec.Form.Form)
	}
	if !(spec.RatingA >= 0.01 && spec.RatingA <= 1000) {
		return nil, fmt.Errorf("wiring: fuse rating %g A is out of range (want 0.01 to 1000 A)", spec.RatingA)
	}
	distanceM := math.NaN()
	if spec.DistanceM != nil {
		distanceM = *spec.DistanceM
		if !(distanceM >= 0) || math.IsInf(distanceM, 1) {
			return nil, fmt.Errorf("wiring: fuse distance %g m is out of range (want 0 or more)", distanceM)
		}
	}
	if !(spec.VoltageV >= 0 && spec.HolderA >= 0) {
		return nil, fmt.Errorf("wiring: voltage rating and holder limit of a fuse must be 0 or more")
	}
	t := tables.Builtin()
	f := &Fuse{spec: spec, distanceM: distanceM, hot: t.Figure(tables.FuseHotFactor).Likely, floorS: t.Figure(tables.FuseTimeNotBelow).Likely}
	f.coldOhm, _ = spec.Form.ResistanceOhm(spec.RatingA)
	return f, nil
}

// Form returns the fuse's form.
func (f *Fuse) Form() tables.Fuse { return f.spec.Form }

// RatingA returns the printed rating.
func (f *Fuse) RatingA() float64 { return f.spec.RatingA }

// ColdOhm returns the resistance of the cold fuse; 0 where the form's is not
// known.
func (f *Fuse) ColdOhm() float64 { return f.coldOhm }

// Ohm returns the resistance at a steady current: the cold value at none,
// 1.5 times that (1.3 to 1.7 on makers' sheets) at the rating and above.
func (f *Fuse) Ohm(currentA float64) float64 {
	share := min(1, currentA/f.spec.RatingA)
	return f.coldOhm * (1 + (f.hot-1)*share*share)
}

// VoltageV returns the voltage that the fuse may be used at: the printed one,
// or the lowest that the form is made for; 0 when neither is known.
//
// What is printed on a breaker for road vehicles, 12 or 24 V, is nominal: it may be
// used in any system of that name.
func (f *Fuse) VoltageV() float64 {
	printed, made := f.spec.VoltageV, f.spec.Form.VoltagesV
	switch {
	case len(made) == 0:
		return printed
	case printed <= 0:
		return made[0]
	case f.spec.Form.Breaker && printed == 12:
		return made[0]
	case f.spec.Form.Breaker && printed == 24 && len(made) > 1:
		return made[1]
	}
	return printed
}

// CarriesA returns the rating that is left in surroundings of ambientC.
func (f *Fuse) CarriesA(ambientC float64) float64 {
	share, _ := f.spec.Form.HeatShare(ambientC)
	return f.spec.RatingA * share
}

// At returns the fuse's opening times in surroundings of ambientC.
func (f *Fuse) At(ambientC float64) Curve {
	return newCurve(f.spec.Form.Gates, f.CarriesA(ambientC), f.floorS)
}
