package portable_test

import (
	"math"
	"math/big"
	"testing"

	"example.org/packcheck/internal/portable"
)

// exact is e^x to far more digits than a number has: x in 64ths by itself, e^(1/64)
// by its series, in numbers of 300 bits.
func exact(x float64) *big.Float {
	const bits = 300
	sum, term := big.NewFloat(1).SetPrec(bits), big.NewFloat(1).SetPrec(bits)
	small := new(big.Float).SetPrec(bits).Quo(big.NewFloat(x).SetPrec(bits), big.NewFloat(1024).SetPrec(bits))
	for n := 1; n < 60; n++ {
		term.Mul(term, small).Quo(term, big.NewFloat(float64(n)).SetPrec(bits))
		sum.Add(sum, term)
	}
	for range 10 {
		sum.Mul(sum, sum)
	}
	return sum
}

// The reference is the series of the exponential in long numbers.
func TestTheExponentialIsRightToTheLastDigit(t *testing.T) {
	worst := 0.0
	for i := range 4000 {
		x := -700 + 0.3551*float64(i)
		if x > 700 {
			x = float64(i)/4000 - 0.5
		}
		want := exact(x)
		got := new(big.Float).SetPrec(300).SetFloat64(portable.Exp(x))
		miss, _ := new(big.Float).Quo(new(big.Float).Sub(got, want), want).Float64()
		worst = max(worst, math.Abs(miss))
	}
	t.Logf("the greatest relative error is %.2g", worst)
	if worst > 0x1p-52 { // two units in the last place at most, mostly one half
		t.Errorf("the greatest relative error is %.3g, want at most %.3g", worst, 0x1p-52)
	}
}

// The standard library's own function is within a unit of the last place as well,
// so that the two may differ by no more than their sum.
func TestTheFunctionsAgreeWithTheStandardLibrary(t *testing.T) {
	for _, x := range []float64{0, math.Copysign(0, -1), 1, -1, 0.5, 709.7, 710, 1000, -708.3, -708.5, -740, -745, -745.2, -800, 1e-300, 1e-20, math.Inf(1), math.Inf(-1), math.NaN(), 5e-324, math.MaxFloat64} {
		got, want := portable.Exp(x), math.Exp(x)
		if !(math.Abs(got-want) <= 4e-16*want+5e-324 || got == want || math.IsNaN(got) && math.IsNaN(want)) {
			t.Errorf("Exp(%v) is %v, want %v", x, got, want)
		}
		for _, y := range []float64{0, 1, -1, 2, 3, 0.5, -0.25, 1.3, 40, -33, 2.0 / 3, math.Inf(1), math.NaN(), 1e300} {
			got, want := portable.Pow(x, y), math.Pow(x, y)
			off := 4e-16 * (1 + math.Abs(y*math.Log(math.Abs(x))))
			if x == 0 || math.IsInf(x, 0) {
				off = 0
			}
			if !(math.Abs(got-want) <= off*math.Abs(want)+5e-324 || got == want || math.IsNaN(got) && math.IsNaN(want)) {
				t.Errorf("Pow(%v, %v) is %v, want %v", x, y, got, want)
			}
		}
	}
}

// These are the bits on every processor: written down on one, to be compared by
// whatever runs the tests.
func TestTheBitsAreTheSameEverywhere(t *testing.T) {
	sum := uint64(14695981039346656037)
	add := func(x float64) { sum = (sum ^ math.Float64bits(x)) * 1099511628211 } // FNV-1a
	for i := range 20000 {
		add(portable.Exp(-30 + float64(i)*0.00307))
		add(portable.Pow(0.01+float64(i)*0.0173, 1.3))
	}
	const want = 14921504936558259749
	if sum != want {
		t.Errorf("the sum of the bits is %d, want %d", sum, uint64(want))
	}
}

func BenchmarkExp(b *testing.B) {
	sum := 0.0
	for i := range b.N {
		sum += portable.Exp(-float64(i&1023) * 0.01)
	}
	if math.IsNaN(sum) {
		b.Fatal("no number")
	}
}

// The standard library's error function, on whatever processor this runs, is within
// a unit of the last place of the true one.
func TestTheErrorFunctionAgreesWithTheStandardLibrary(t *testing.T) {
	for i := range 4001 {
		x := float64(i-2000) * 0.004
		if got, want := portable.Erf(x), math.Erf(x); math.Abs(got-want) > 1e-15 {
			t.Errorf("Erf(%v) is %v, want %v", x, got, want)
		}
		if got, want := portable.Erfc(x), math.Erfc(x); math.Abs(got-want) > 1e-15 || math.Abs(got-want) > 1e-13*want {
			t.Errorf("Erfc(%v) is %v, want %v", x, got, want)
		}
	}
	for _, x := range []float64{0, math.Inf(1), math.Inf(-1), 5e-324, 30, -30} {
		if portable.Erf(x) != math.Erf(x) || portable.Erfc(x) != math.Erfc(x) {
			t.Errorf("at %v: %v and %v, want %v and %v", x, portable.Erf(x), portable.Erfc(x), math.Erf(x), math.Erfc(x))
		}
	}
	if !math.IsNaN(portable.Erf(math.NaN())) || !math.IsNaN(portable.Erfc(math.NaN())) {
		t.Error("no number gives one")
	}
}
