package drive

import "math"

// mode is something that dies out by itself: an eigenvalue of the Jacobian and its
// eigenvectors. All states are coupled to the current only, so that each of their entries
// is one quotient and the eigenvalue's equation a short sum.
type mode struct {
	rate        float64    // the eigenvalue is minus that
	left, right state      // eigenvectors; their entries for the current are 1
	along       float64    // both multiplied
	steepOhm    [2]float64 // volts per ampere more at which the branches settle ...
	fixedV      [2]float64 // ... and those that they have besides
}

// findFastest finds what dies out fastest, at a state. It reports false where nothing does
// by itself: where the current is no faster than what it drives.
func (x *expansion) findFastest(p *plant, y *state) bool {
	f := &x.fastest
	d, rest := x.duty[0], p.ocv-y[firstBranch]-y[secondBranch]
	// Branches that bend are taken as straight at the current that merely follows.
	amps := d * (d*rest - p.backEMF*y[wheelSpeed]) / x.ohm[0]
	var fill [2]float64
	for k, b := range p.branch {
		f.steepOhm[k] = b.steep(amps)
		f.fixedV[k] = b.settled(amps) - f.steepOhm[k]*amps
		fill[k] = f.steepOhm[k] * d * p.decay[k]
	}
	alone := x.ohm[0] * p.perHenry
	slow := 2 * x.drag * y[wheelSpeed]
	f.rate = alone
	const (
		most  = 8   // two or three are enough where it is much faster
		least = 0.2 // at zero it would be as fast as another
	)
	for range most {
		wheel, first, second := 1/(f.rate-slow), 1/(f.rate-p.decay[0]), 1/(f.rate-p.decay[1])
		f.left = state{1, p.backEMF * p.perHenry * wheel, d * p.perHenry * first, d * p.perHenry * second}
		f.right = state{1, -x.gain * wheel, -fill[0] * first, -fill[1] * second}
		byWheel := f.left[wheelSpeed] * f.right[wheelSpeed]
		byFirst := f.left[firstBranch] * f.right[firstBranch]
		bySecond := f.left[secondBranch] * f.right[secondBranch]
		f.along = 1 + byWheel + byFirst + bySecond
		if !(f.along > least) || !(f.rate > 2*max(slow, p.decay[0], p.decay[1])) {
			return false
		}
		// Newton's step to where the eigenvalue's own equation is met: along is its slope.
		off := f.rate - alone - byWheel*(f.rate-slow) - byFirst*(f.rate-p.decay[0]) - bySecond*(f.rate-p.decay[1])
		f.rate -= off / f.along
		if math.Abs(off) < 1e-7*f.rate {
			return true
		}
	}
	return false
}
