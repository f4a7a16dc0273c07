package drive

import (
	"math"

	"example.org/packcheck/internal/portable"
)

// BumpRatio returns how much more energy a bump has when the speed changes by a
// ratio: its square.
func BumpRatio(speedRatio float64) float64 { return speedRatio * speedRatio }

// ReactionS returns the mean time in seconds in which a child of an age in
// years answers a simple sound: 0.465 s at 5 years and 0.190 s at 15, a
// straight line on log-log paper between (56 children of 4 to 14 years, Dev.
// Med. Child Neurol. 26 (1984) 490-494). Below 4 the line is not drawn on but
// held, above 16 the adult's value is. A child who has to understand first
// what happens takes two or three times as long.
func ReactionS(ageYears float64) float64 {
	slope := math.Log(0.190/0.465) / math.Log(15./5)
	age := min(max(ageYears, 4), 16)
	return 0.465 * portable.Pow(age/5, slope)
}

// Stop is a stop from driving speed.
type Stop struct {
	SpeedMS   float64
	ReactionS float64 // until the pedal is let go; see ReactionS
	DecelMS2  float64 // how hard it slows down
}

// Distances returns the metres rolled before anything happens and while slowing
// down: v t and v^2/(2 a).
func (s Stop) Distances() (reactM, brakeM float64) {
	return s.SpeedMS * s.ReactionS, s.SpeedMS * s.SpeedMS / (2 * s.DecelMS2)
}

// FreeRoll is rolling out on level ground with nothing braking.
type FreeRoll struct {
	SpeedMS     float64
	Coefficient float64 // rolling resistance over weight
}

// Metres returns how far it rolls: v^2/(2 g Crr).
func (f FreeRoll) Metres() float64 {
	return f.SpeedMS * f.SpeedMS / (2 * GravityMS2 * f.Coefficient)
}
