package draws_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.org/packcheck/internal/draws"
)

// moments returns mean and covariance of the draws, by weight.
func moments(p *draws.Posterior) (mean []float64, cov *mat.SymDense) {
	d := len(p.Z[0])
	mean, cov = make([]float64, d), mat.NewSymDense(d, nil)
	for i, z := range p.Z {
		for a, v := range z {
			mean[a] += p.Weight[i] * v
		}
	}
	for i, z := range p.Z {
		for a := range d {
			for b := a; b < d; b++ {
				cov.SetSym(a, b, cov.At(a, b)+p.Weight[i]*(z[a]-mean[a])*(z[b]-mean[b]))
			}
		}
	}
	return mean, cov
}

// linear is a model whose predictions are the rows of j times z.
func linear(j *mat.Dense) draws.Model {
	k, d := j.Dims()
	return func(_ int, z, out []float64) bool {
		var v mat.VecDense
		v.MulVec(j, mat.NewVecDense(d, slices.Clone(z)))
		for i := range k {
			out[i] = v.AtVec(i)
		}
		return true
	}
}

// The normal posterior in closed form: precision I + J'E^-2 J (any textbook, for
// instance C. M. Bishop, Pattern Recognition and Machine Learning, Springer
// 2006, 2.116 and 2.117).
func TestLinearReadingsWithNormalErrorsGiveTheKnownPosterior(t *testing.T) {
	const dims = 12
	random := rand.New(rand.NewPCG(1, 2))
	for _, k := range []int{1, 3, 6} {
		j := mat.NewDense(k, dims, nil)
		readings := make([]draws.Reading, k)
		precision := mat.NewSymDense(dims, nil)
		right := mat.NewVecDense(dims, nil)
		for i := range k {
			for d := range dims {
				j.Set(i, d, 0.5*random.NormFloat64())
			}
			readings[i] = draws.Reading{Value: random.NormFloat64(), Err: 0.3 + 0.1*float64(i)}
			row := mat.NewVecDense(dims, mat.Row(nil, i, j))
			precision.SymRankOne(precision, 1/(readings[i].Err*readings[i].Err), row)
			right.AddScaledVec(right, readings[i].Value/(readings[i].Err*readings[i].Err), row)
		}
		for d := range dims {
			precision.SetSym(d, d, precision.At(d, d)+1)
		}
		var c mat.Cholesky
		c.Factorize(precision)
		var want mat.VecDense
		var wantCov mat.SymDense
		if err := errors.Join(c.SolveVecTo(&want, right), c.InverseTo(&wantCov)); err != nil {
			t.Fatal(err)
		}
		p, err := draws.Condition(dims, linear(j), readings, draws.Options{Enough: 4000, MostRounds: 60, Freedom: math.Inf(1)})
		if err != nil {
			t.Fatal(err)
		}
		if p.Effective < 4000 {
			t.Fatalf("%d readings: effective number %.0f after %d rounds", k, p.Effective, p.Rounds)
		}
		mean, cov := moments(p)
		sigma := 1 / math.Sqrt(p.Effective) // of a mean, in standard deviations
		for a := range dims {
			sd := math.Sqrt(wantCov.At(a, a))
			if e := (mean[a] - want.AtVec(a)) / sd; math.Abs(e) > 4*sigma {
				t.Errorf("%d readings: mean of unknown %d is %+.3f standard deviations off", k, a, e)
			}
			for b := range a + 1 {
				sdB := math.Sqrt(wantCov.At(b, b))
				// a product of two normal numbers spreads by up to sqrt(2)
				if e := (cov.At(a, b) - wantCov.At(a, b)) / sd / sdB; math.Abs(e) > 4*math.Sqrt2*sigma {
					t.Errorf("%d readings: covariance of %d and %d is %+.3f off", k, a, b, e)
				}
			}
		}
		for i := range k { // where the readings speak, the answer is narrow: the place to err
			row := mat.NewVecDense(dims, mat.Row(nil, i, j))
			var got, exact mat.VecDense
			got.MulVec(cov, row)
			exact.MulVec(&wantCov, row)
			ratio := mat.Dot(&got, row) / mat.Dot(&exact, row)
			if math.Abs(ratio-1) > 4*math.Sqrt2*sigma {
				t.Errorf("%d readings: variance of prediction %d is %.3f times the known one", k, i, ratio)
			}
		}
	}
}

// studentDensity is Student's law with 4 degrees of freedom, unscaled.
func studentDensity(r float64) float64 { return math.Pow(1+r*r/4, -2.5) }

func TestOneReadingWithStudentErrorsGivesTheIntegratedPosterior(t *testing.T) {
	for _, value := range []float64{0, 1, 2.5, -4} {
		const slope, e = 1.0, 0.5
		var w, m, s float64 // by the trapezium rule, fine enough for 6 digits
		for z := -8.0; z <= 8; z += 1e-3 {
			seen := max(-draws.Clip, min(draws.Clip, z))
			f := math.Exp(-z*z/2) * studentDensity((value-slope*seen)/e)
			w, m, s = w+f, m+f*seen, s+f*seen*seen
		}
		mean := m / w
		sd := math.Sqrt(s/w - mean*mean)
		model := func(_ int, z, out []float64) bool {
			out[0] = slope * z[0]
			return true
		}
		p, err := draws.Condition(1, model, []draws.Reading{{Value: value, Err: e}}, draws.Options{Enough: 4000, MostRounds: 60})
		if err != nil {
			t.Fatal(err)
		}
		got, cov := moments(p)
		sigma := 1 / math.Sqrt(p.Effective)
		if d := (got[0] - mean) / sd; math.Abs(d) > 4*sigma {
			t.Errorf("read %v: mean %.4f, integrated %.4f", value, got[0], mean)
		}
		// The variance of a heavy-tailed answer wanders more: kurtosis up to 9.
		if ratio := math.Sqrt(cov.At(0, 0)) / sd; math.Abs(ratio-1) > 4*math.Sqrt2*sigma {
			t.Errorf("read %v: standard deviation %.4f, integrated %.4f", value, math.Sqrt(cov.At(0, 0)), sd)
		}
	}
}

// bent is a case of two unknowns whose answer is a bow, as a speed and a time
// make of a resistance and a capacity.
func bent(_ int, z, out []float64) bool {
	out[0] = math.Log(1+math.Exp(0.8*z[0])) + 0.4*z[1]
	out[1] = 0.6*z[0]*z[0] - 0.5*z[1]
	return z[1] < 2.2 // the rest does not run
}

var bentReadings = []draws.Reading{{Value: 1.1, Err: 0.2}, {Value: 0.5, Err: 0.3}}

// bentPosterior has mean and standard deviation of both unknowns, and the
// chance that the first is above 0, on a dense grid.
func bentPosterior(step float64) [5]float64 {
	var w, m0, m1, s0, s1, above float64
	var out [2]float64
	for a := -6.0; a <= 6; a += step {
		for b := -6.0; b <= 6; b += step {
			z := [2]float64{max(-draws.Clip, min(draws.Clip, a)), max(-draws.Clip, min(draws.Clip, b))}
			if !bent(0, z[:], out[:]) {
				continue
			}
			f := math.Exp(-(a*a + b*b) / 2)
			for i, r := range bentReadings {
				f *= studentDensity((r.Value - out[i]) / r.Err)
			}
			w, m0, m1 = w+f, m0+f*z[0], m1+f*z[1]
			s0, s1 = s0+f*z[0]*z[0], s1+f*z[1]*z[1]
			if z[0] > 0 {
				above += f
			}
		}
	}
	m0, m1 = m0/w, m1/w
	return [5]float64{m0, m1, math.Sqrt(s0/w - m0*m0), math.Sqrt(s1/w - m1*m1), above / w}
}

// agreesWithBent conditions the bent case and compares.
func agreesWithBent(t *testing.T, want [5]float64, source string) {
	t.Helper()
	p, err := draws.Condition(2, bent, bentReadings, draws.Options{Enough: 6000, MostRounds: 80})
	if err != nil {
		t.Fatal(err)
	}
	mean, cov := moments(p)
	above := 0.0
	for i, z := range p.Z {
		if z[0] > 0 {
			above += p.Weight[i]
		}
	}
	sigma := 1 / math.Sqrt(p.Effective)
	got := [5]float64{mean[0], mean[1], math.Sqrt(cov.At(0, 0)), math.Sqrt(cov.At(1, 1)), above}
	for i, scale := range []float64{want[2], want[3], want[2], want[3], math.Sqrt(want[4] * (1 - want[4]))} {
		if math.Abs(got[i]-want[i]) > 4*sigma*scale {
			t.Errorf("figure %d: %.4f, %s has %.4f (one standard error is %.4f)", i, got[i], source, want[i], sigma*scale)
		}
	}
}

func TestBentCaseOfTwoUnknownsAgreesWithADenseGrid(t *testing.T) {
	agreesWithBent(t, bentPosterior(0.01), "the grid")
}
