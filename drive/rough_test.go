package drive

import (
	"math"
	"testing"
)

// The reference is the standard library.
func TestTheRoughLogarithmAndPowerAreAsRightAsTheySay(t *testing.T) {
	var log, power float64
	for i := range 20000 {
		x := math.Ldexp(1+math.Mod(0.37*float64(i), 1), i%2000-1000)
		log = max(log, math.Abs(roughLog2(x)-math.Log2(x)))
		y := float64(i)/20 - 500
		power = max(power, math.Abs(roughExp2(y)/math.Exp2(y)-1))
	}
	t.Logf("logarithm within %.2g, power within %.2g of itself", log, power)
	if log > 3e-4 {
		t.Errorf("the logarithm is %.3g off, said to be 3e-4 at most", log)
	}
	if power > 6e-5 {
		t.Errorf("the power is %.3g of itself off, said to be 6e-5 at most", power)
	}
	for _, row := range []struct{ got, most, least float64 }{
		{roughLog2(0), -1000, -1100},
		{roughLog2(math.Inf(1)), math.Inf(1), math.Inf(1)},
		{roughExp2(-2000), 0, 0},
		{roughExp2(2000), math.Inf(1), math.Inf(1)},
	} {
		if !(row.got >= row.least && row.got <= row.most) {
			t.Errorf("at an end: %v, want %v to %v", row.got, row.least, row.most)
		}
	}
	if !math.IsNaN(roughLog2(math.NaN())) || !math.IsNaN(roughExp2(math.NaN())) {
		t.Error("what is not a number becomes one")
	}
}
