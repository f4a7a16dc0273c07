package draws_test

import (
	"math"
	"testing"

	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/portable"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// The laws are those of a published library (gonum's distuv), wherever that is
// asked.
func TestTheLawsAreThoseOfTheLibrary(t *testing.T) {
	for degrees := 1; degrees <= 24; degrees++ {
		for x := 0.01; x < 120; x *= 1.3 {
			want := distuv.ChiSquared{K: float64(degrees)}.Survival(x)
			if got := draws.ChiSquareBeyond(x, degrees); math.Abs(got-want) > 1e-12*want+1e-300 {
				t.Errorf("beyond %v with %d degrees: %v, want %v", x, degrees, got, want)
			}
		}
	}
	for p := 1.0 / 256; p < 1; p += 1.0 / 128 {
		want := distuv.StudentsT{Sigma: 1, Nu: draws.DefaultFreedom}.Quantile(p)
		if got := draws.StudentQuantile(p); math.Abs(got-want) > 1e-9*(1+math.Abs(want)) {
			t.Errorf("Student's quantile at %v: %v, want %v", p, got, want)
		}
	}
	for x := -8.0; x <= 8; x += 0.37 {
		want := distuv.UnitNormal.CDF(x)
		if got := portable.NormalBelow(x); math.Abs(got-want) > 1e-12*want {
			t.Errorf("a normal number below %v: %v, want %v", x, got, want)
		}
	}
}

func TestAChiSquareHasItsEnds(t *testing.T) {
	for _, c := range []struct {
		x       float64
		degrees int
		want    float64
	}{{5, 0, 1}, {0, 3, 1}, {-1, 2, 1}, {math.Inf(1), 5, 0}, {1e6, 4, 0}} {
		if got := draws.ChiSquareBeyond(c.x, c.degrees); got != c.want {
			t.Errorf("beyond %v with %d degrees: %v, want %v", c.x, c.degrees, got, c.want)
		}
	}
	if !math.IsNaN(draws.ChiSquareBeyond(math.NaN(), 2)) {
		t.Error("what is no number has a chance")
	}
}

// Equations are solved as gonum's mat solves them, to the last few bits.
func TestEquationsAreSolvedAsByTheLibrary(t *testing.T) {
	for n := 1; n <= 40; n += 3 {
		points := draws.Points(3*n, n)
		m := mat.NewSymDense(n, nil)
		for i := range n {
			m.SetSym(i, i, 0.1)
		}
		for _, z := range points {
			m.SymRankOne(m, 1, mat.NewVecDense(n, z))
		}
		var c mat.Cholesky
		if !c.Factorize(m) {
			t.Fatal("the matrix is not positive definite")
		}
		flat := make([]float64, 0, n*n)
		for i := range n {
			flat = append(flat, mat.Row(nil, i, m)...)
		}
		right := points[0]
		x, inverse, logDet, ok := draws.Solved(flat, right)
		var want mat.VecDense
		var whole mat.SymDense
		if err := c.SolveVecTo(&want, mat.NewVecDense(n, right)); err != nil {
			t.Fatal(err)
		}
		if err := c.InverseTo(&whole); err != nil {
			t.Fatal(err)
		}
		if !ok || math.Abs(logDet-c.LogDet()) > 1e-11*float64(n) {
			t.Errorf("%d rows: the logarithm of the determinant is %v, want %v", n, logDet, c.LogDet())
		}
		for i := range n {
			if math.Abs(x[i]-want.AtVec(i)) > 1e-11 {
				t.Errorf("%d rows: x %d is %v, want %v", n, i, x[i], want.AtVec(i))
			}
			for j := range n {
				if math.Abs(inverse[i*n+j]-whole.At(i, j)) > 1e-11 {
					t.Errorf("%d rows: the inverse at %d, %d is %v, want %v", n, i, j, inverse[i*n+j], whole.At(i, j))
				}
			}
		}
	}
	for _, bad := range [][]float64{{-1}, {0}, {1, 2, 2, 1}, {math.NaN()}, {math.Inf(1)}} {
		if _, _, _, ok := draws.Solved(bad, make([]float64, int(math.Sqrt(float64(len(bad)))))); ok {
			t.Errorf("%v is taken for positive definite", bad)
		}
	}
}

// Tables of either law: two-sided 50, 10, 5, 1 and 0.1 % points of Student's law with four
// degrees of freedom, and of the normal.
func TestAResidualCountsAsTheNormalThatIsAsRare(t *testing.T) {
	for _, c := range [][2]float64{{0, 0}, {0.741, 0.674}, {2.132, 1.645}, {2.776, 1.960}, {4.604, 2.576}, {8.610, 3.291}} {
		if got := draws.NormalScore(c[0]); math.Abs(got-c[1]) > 0.001 || draws.NormalScore(-c[0]) != -got {
			t.Errorf("a residual of %g counts as %.4f, want %g", c[0], got, c[1])
		}
	}
	last := 0.0
	for r := 0.5; r < 1e7; r *= 2 {
		if got := draws.NormalScore(r); got < last || got > r {
			t.Errorf("a residual of %g counts as %g, one of half as %g", r, got, last)
		} else {
			last = got
		}
	}
}
