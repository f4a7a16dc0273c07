package drive

import "math"

// ClassLimitC returns the highest winding temperature of an insulation class
// (IEC 60085) in degrees C: A 105, E 120, B 130, F 155, H 180, N 200. It
// reports false for any other letter.
func ClassLimitC(letter string) (limitC float64, ok bool) {
	switch letter {
	case "A":
		return 105, true
	case "E":
		return 120, true
	case "B":
		return 130, true
	case "F":
		return 155, true
	case "H":
		return 180, true
	case "N":
		return 200, true
	}
	return 0, false
}

// ClassRiseK returns the rise over 40 degrees C, by resistance, that a machine
// of an insulation class may have in use (IEC 60034-1): A 60, E 75, B 80, F
// 105, H 125 K. It reports false for any other letter.
func ClassRiseK(letter string) (riseK float64, ok bool) {
	switch letter {
	case "A":
		return 60, true
	case "E":
		return 75, true
	case "B":
		return 80, true
	case "F":
		return 105, true
	case "H":
		return 125, true
	}
	return 0, false
}

// LifeShare returns what is left of the insulation's life when it runs aboveK
// warmer than its limit: half for every 10 K (Montsinger's rule).
func LifeShare(aboveK float64) float64 { return math.Exp2(-aboveK / 10) }

// PlasticSoftensC and PlasticSoftC bound the temperatures at which the nylon
// of brush holders and end bells and the plastic of gears soften. From memory,
// no published source at hand: for warnings only.
const (
	PlasticSoftensC = 100
	PlasticSoftC    = 130
)

// DutyCycle is a load that comes and goes for ever, or once.
type DutyCycle struct {
	OnS      float64
	OffS     float64 // not used with Once
	HeatTauS float64 // time constant while running
	CoolTauS float64 // time constant at rest; longer when a fan stands still
	Once     bool    // a long rest before and after
}

// PowerRatio returns how many times its continuous power a motor may give in
// the cycle with the same hottest moment, heat going with power squared and
// losses at no load left out:
//
//	once:   1/sqrt(1 - exp(-on/heat))
//	always: sqrt((1 - exp(-on/heat - off/cool))/(1 - exp(-on/heat)))
func (d DutyCycle) PowerRatio() float64 {
	on := d.OnS / d.HeatTauS
	if d.Once {
		return math.Sqrt(-1 / math.Expm1(-on))
	}
	return math.Sqrt(math.Expm1(-on-d.OffS/d.CoolTauS) / math.Expm1(-on))
}
