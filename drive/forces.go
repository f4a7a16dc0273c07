package drive

import "math"

// GravityMS2 is standard gravity (ISO 80000-3: 9.80665 m/s2).
const GravityMS2 = 9.80665

// AirKgPerM3 is the density of dry air at 15 degrees C and sea level
// (International Standard Atmosphere, ISO 2533: 1.225 kg/m3).
const AirKgPerM3 = 1.225

// Rolling is what rolling resistance depends on. Give either Coefficient or
// HardWheelM with WheelRadiusM; a Coefficient above zero goes first.
type Rolling struct {
	MassKg       float64 // all that rolls
	Coefficient  float64 // Crr, for wheels of the size it was measured on
	HardWheelM   float64 // coefficient of length of a hard wheel, metres (0.0022 on smooth concrete)
	WheelRadiusM float64
	SlopeRad     float64 // the ground carries only the cosine of the weight
}

// RollingN returns the rolling resistance in newtons. For hard wheels it is
//
//	F = W c / r
//
// proportional to load, inverse to radius, independent of width: Al-Eisawi et
// al. 1999, Applied Ergonomics 30:235-245, measured as the least push from rest
// on wheels of 51 to 153 mm; larger wheels are extrapolation.
func RollingN(r Rolling) float64 {
	weight := r.MassKg * GravityMS2 * math.Cos(r.SlopeRad)
	if r.Coefficient > 0 {
		return weight * r.Coefficient
	}
	if r.WheelRadiusM <= 0 {
		return 0
	}
	return weight * r.HardWheelM / r.WheelRadiusM
}

// Slope is a mass on a slope.
type Slope struct {
	MassKg   float64
	SlopeRad float64 // positive uphill; math.Atan(0.05) for 5 %
}

// SlopeN returns the force with which a slope pulls back, in newtons.
func SlopeN(s Slope) float64 { return s.MassKg * GravityMS2 * math.Sin(s.SlopeRad) }

// Air is a body in still air.
type Air struct {
	DragFactor float64 // cd
	FrontalM2  float64
	AirKgPerM3 float64 // 0 = AirKgPerM3 at sea level
}

// DragCoefficient returns what is multiplied by speed squared to give air drag
// in newtons: rho cd A / 2.
func DragCoefficient(a Air) float64 {
	rho := a.AirKgPerM3
	if rho == 0 {
		rho = AirKgPerM3
	}
	return rho * a.DragFactor * a.FrontalM2 / 2
}

// Grip is what the driven wheels can hold on to.
type Grip struct {
	Friction    float64 // between tyre and ground; hard plastic on asphalt is low
	MassKg      float64
	DrivenShare float64 // share of the weight on driven wheels on the level, 0 to 1
	SlopeRad    float64 // positive uphill

	// HeightShare is the height of the centre of mass over the wheelbase where the
	// driven wheels are the rear ones: a climb shifts so much of its sine onto them.
	// 0 = nothing shifts; below 0 where they are the front ones.
	HeightShare float64
}

// GripLimitN returns the greatest force in newtons that the driven wheels can
// pass to the ground: friction times the weight that they carry. On a slope of a
// that is, by the moments about the other axle,
//
//	W (DrivenShare cos a + HeightShare sin a)
//
// and neither less than nothing nor more than all of W cos a. What a launch shifts
// besides is left out: it lasts a second.
func GripLimitN(g Grip) float64 {
	all := math.Cos(g.SlopeRad)
	carried := min(max(g.DrivenShare*all+g.HeightShare*math.Sin(g.SlopeRad), 0), all)
	return g.Friction * carried * g.MassKg * GravityMS2
}
