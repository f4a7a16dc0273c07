package draws_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"example.org/packcheck/internal/draws"
)

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
	if p.Runs != 0 || p.Effective != 1024 {
		t.Errorf("%d runs, effective %v; want 0, 1024", p.Runs, p.Effective)
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
