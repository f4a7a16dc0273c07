package ask

import (
	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/portable"
)

// Between is how far a reading may lie from what was noted: the ends of the range
// that was typed, of which every value is as likely. The zero value means that it was
// read as people read at home.
type Between struct{ Low, High float64 }

// What readings at home are usually off by, as shares, one standard error. Common
// practice, no published source; the same as where a whole vehicle is measured.
const (
	voltErr = 0.005 // a cheap meter on one scale
	ampErr  = 0.12  // a clamp, or a current that swings
	timeErr = 0.15  // a clock that somebody looked at late
)

// at is the reading at a standard normal z; what was not read stays so.
func (b Between) at(z, value, err float64) float64 {
	switch {
	case value == 0:
		return 0
	case b.Low < b.High:
		return b.Low + (b.High-b.Low)*portable.NormalBelow(z)
	}
	return value * portable.Exp(err*z)
}

// holds checks that a range holds its value.
func (in *inputs) holds(name string, b Between, value float64) {
	if b != (Between{}) && !(b.Low <= value && value <= b.High && b.Low > 0) {
		in.fault("%s is %g to %g; want a range that holds %g", name, b.Low, b.High, value)
	}
}

// around is a figure with its value kept inside the spread of the draws.
func around(what string, value float64, all []float64, unit string) Figure {
	s := draws.SpreadOf(all, nil)
	return Figure{What: what, Value: value, Low: min(s.P10, value), High: max(s.P90, value), Unit: unit}
}
