package draws_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"sync/atomic"
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

func TestSixReadingsDoNotCollapseTheDraws(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 8))
	which := []int{0, 1, 2, 3, 4, 5}
	var plain, ours, runs []float64
	for range 60 {
		c, _ := hidden(random)
		readings := read(c, random, (*rand.Rand).NormFloat64, which...)
		p := condition(t, which, readings, draws.Options{})
		q := condition(t, which, readings, draws.Options{Prior: 1024, MostRounds: 1, Round: 1})
		ours, plain = append(ours, p.Effective), append(plain, q.Effective)
		runs = append(runs, float64(p.Runs))
	}
	got, before := draws.SpreadOf(ours, nil), draws.SpreadOf(plain, nil)
	t.Logf("effective P10/P50 %.0f/%.0f after %.0f runs, of 1024 weighted prior draws %.1f/%.1f", got.P10, got.P50, draws.Quantile(runs, nil, 0.5), before.P10, before.P50)
	if got.P10 < 200 {
		t.Errorf("effective number %.0f in one case of ten, want 200", got.P10)
	}
	if before.P10 > 10 {
		t.Errorf("prior draws keep %.1f in one case of ten: the case is too easy to tell anything", before.P10)
	}
}

func TestAGrossErrorDoesNotCollapseTheDraws(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 9))
	which := []int{0, 1, 2, 3, 4, 5}
	var effective []float64
	for i := range 60 {
		c, _ := hidden(random)
		readings := read(c, random, (*rand.Rand).NormFloat64, which...)
		readings[i%5].Value += math.Log(3) // not the volts
		p := condition(t, which, readings, draws.Options{Choices: cartChoices()})
		if p.Rough != (p.Effective < 100) {
			t.Errorf("effective number %.0f, rough %v", p.Effective, p.Rough)
		}
		effective = append(effective, p.Effective)
	}
	s := draws.SpreadOf(effective, nil)
	t.Logf("one of six readings three times wrong: effective P10 %.0f, P50 %.0f", s.P10, s.P50)
	if s.P50 < 200 || s.P10 < 100 {
		t.Errorf("effective number %.0f in one case of ten and %.0f in the middle, want 100 and 200", s.P10, s.P50)
	}
}

func TestNoWorkerIsAskedTwiceAtOnce(t *testing.T) {
	var busy [7]atomic.Int32
	var clashes, used atomic.Int32
	model := func(worker int, z, out []float64) bool {
		if busy[worker].Add(1) > 1 {
			clashes.Add(1)
		}
		if worker > 0 {
			used.Add(1)
		}
		for range 200 { // long enough to meet
			out[0] += math.Sin(z[0])
		}
		busy[worker].Add(-1)
		return true
	}
	if _, err := draws.Condition(1, model, []draws.Reading{{Value: 0, Err: 50}}, draws.Options{Workers: 7}); err != nil {
		t.Fatal(err)
	}
	if clashes.Load() > 0 || used.Load() == 0 {
		t.Errorf("%d clashes, %d runs by other workers than the first", clashes.Load(), used.Load())
	}
}

// condition asks for the cart.
func condition(t *testing.T, which []int, readings []draws.Reading, o draws.Options) *draws.Posterior {
	t.Helper()
	p, err := draws.Condition(cartUnknowns, cartModel(which...), readings, o)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestSameDrawsWhateverTheWorkers(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	which := []int{0, 1, 2, 4}
	c, _ := hidden(random)
	readings := read(c, random, student, which...)
	var first *draws.Posterior
	for _, workers := range []int{1, 2, 7} {
		p := condition(t, which, readings, draws.Options{Workers: workers, Choices: cartChoices()})
		if first == nil {
			first = p
			continue
		}
		if !slices.Equal(p.Weight, first.Weight) {
			t.Errorf("%d workers: other weights than one", workers)
		}
		for i := range p.Z {
			if !slices.Equal(p.Z[i], first.Z[i]) || !slices.Equal(p.Predicted[i], first.Predicted[i]) {
				t.Fatalf("%d workers: draw %d differs from that of one", workers, i)
			}
		}
	}
}

func TestGrowingLaterIsGrowingAtOnce(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 9))
	which := []int{0, 1, 2}
	c, _ := hidden(random)
	readings := read(c, random, student, which...)
	atOnce := condition(t, which, readings, draws.Options{Enough: 1200, MostRounds: 30})
	later := condition(t, which, readings, draws.Options{})
	before := later.Effective
	if err := later.Grow(1200, 30); err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(later.Weight, atOnce.Weight) || later.Runs != atOnce.Runs {
		t.Error("growing in two steps gives other draws than growing in one")
	}
	if later.Effective < 1200 || before >= later.Effective {
		t.Errorf("effective number %.0f grew to %.0f, want 1200", before, later.Effective)
	}
}

func TestWithoutReadingsAllDrawsWeighTheSame(t *testing.T) {
	p, err := draws.Condition(5, nil, nil, draws.Options{Enough: 1000})
	if err != nil {
		t.Fatal(err)
	}
	points := draws.Points(1024, 5)
	for i := range p.Z {
		if p.Weight[i] != 1./1024 || !slices.Equal(p.Z[i], points[i]) {
			t.Fatalf("draw %d of %d: weight %v, want the point with 1/1024", i, len(p.Z), p.Weight[i])
		}
	}
	if p.Runs != 0 || p.Effective != 1024 || p.Rough {
		t.Errorf("%d runs, effective %v, rough %v; want 0, 1024, false", p.Runs, p.Effective, p.Rough)
	}
}

func TestDrawsThatDoNotRunWeighNothing(t *testing.T) {
	p, err := draws.Condition(2, bent, bentReadings, draws.Options{})
	if err != nil {
		t.Fatal(err)
	}
	stood := 0
	for i, z := range p.Z {
		if z[1] < 2.2 {
			continue
		}
		stood++
		if p.Weight[i] != 0 || p.Predicted[i] != nil {
			t.Errorf("draw %d stands still but weighs %v and foretells %v", i, p.Weight[i], p.Predicted[i])
		}
	}
	if stood == 0 {
		t.Error("no draw stood still: the case tells nothing")
	}
}

func TestWeightsAddUpToOne(t *testing.T) {
	p, err := draws.Condition(2, bent, bentReadings, draws.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var sum, squares float64
	for _, w := range p.Weight {
		sum, squares = sum+w, squares+w*w
	}
	if math.Abs(sum-1) > 1e-12 || math.Abs(p.Effective*squares-1) > 1e-9 {
		t.Errorf("weights add up to %v, effective number %v of squares %v", sum, p.Effective, squares)
	}
}

func TestQuestionsThatCannotBeAnsweredSayWhy(t *testing.T) {
	stands := func(int, []float64, []float64) bool { return false }
	nan := func(_ int, _, out []float64) bool { out[0] = math.NaN(); return true }
	one := []draws.Reading{{Value: 1, Err: 0.1}}
	for _, c := range []struct {
		name     string
		dims     int
		model    draws.Model
		readings []draws.Reading
		options  draws.Options
		want     string
	}{
		{"stands still", 3, stands, one, draws.Options{}, "none of the draws runs"},
		{"nonsense", 3, nan, one, draws.Options{}, "none of the draws runs"},
		{"no model", 3, nil, one, draws.Options{}, "1 readings and no model"},
		{"no error", 2, bent, []draws.Reading{{Value: 1}}, draws.Options{}, "reading 0 has a standard error of 0"},
		{"not read", 2, bent, []draws.Reading{{Value: math.Inf(1), Err: 1}}, draws.Options{}, "reading 0 is +Inf"},
		{"fewer than none", -1, bent, one, draws.Options{}, "-1 unknowns"},
		{"fewer draws than none", 2, bent, one, draws.Options{Prior: -1}, "-1 first draws"},
		{"no freedom", 2, bent, one, draws.Options{Freedom: -1}, "-1 degrees of freedom"},
	} {
		_, err := draws.Condition(c.dims, c.model, c.readings, c.options)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}

// The overhead alone: 40 unknowns, 6 readings, 1,024 draws, a model that costs
// next to nothing.
func BenchmarkConditionWithoutTheModel(b *testing.B) {
	readings := make([]draws.Reading, 6)
	for i := range readings {
		readings[i] = draws.Reading{Value: 0.4 * float64(i%3), Err: 0.2}
	}
	model := func(_ int, z, out []float64) bool {
		for i := range out {
			out[i] = 0.5*z[i] + 0.3*z[i+6] + 0.1*z[i+12]
		}
		return true
	}
	for b.Loop() {
		p, err := draws.Condition(40, model, readings, draws.Options{MostRounds: 3, Enough: 1e6, Workers: 1})
		if err != nil || len(p.Z) != 1024 {
			b.Fatal(err, len(p.Z))
		}
	}
}
