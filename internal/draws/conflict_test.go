package draws_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"example.org/packcheck/internal/draws"
)

// For linear readings the least sum of squares is e'(JJ' + E^2)^-1 e, here by
// hand: two unknowns, each read by itself and both together.
func TestMostProbableDrawOfLinearReadingsIsTheKnownOne(t *testing.T) {
	j := mat.NewDense(1, 2, []float64{1, 1})
	// z1 + z2 = 3 with an error of 1: z = 1 each, residual 1, sum 1 + 1 + 1 = 3.
	best, err := draws.MostProbable(2, linear(j), []draws.Reading{{Value: 3, Err: 1}}, 1)
	if err != nil {
		t.Fatal(err)
	}
	score := distuv.UnitNormal.Quantile(distuv.StudentsT{Sigma: 1, Nu: 4}.CDF(1))
	for what, d := range map[string]float64{
		"first": best.Z[0] - 1, "second": best.Z[1] - 1, "residual": best.Residual[0] - 1, "sum": best.ChiSquare - 3,
		// chance of more than 2 and the square of the normal that is as rare as a residual
		// of 1 by Student's law, with one degree of freedom: 2 (1 - Phi(sqrt ...))
		"chance": best.P - math.Erfc(math.Sqrt(2+score*score)/math.Sqrt2),
	} {
		if math.Abs(d) > 1e-9 {
			t.Errorf("%s is %g off", what, d)
		}
	}
	if best.Degrees != 1 {
		t.Errorf("%d degrees of freedom, want 1", best.Degrees)
	}
}

func TestBentSearchEndsWhereTheGridIsLowest(t *testing.T) {
	least := math.Inf(1)
	var out [2]float64
	for a := -draws.Clip; a <= draws.Clip; a += 0.01 {
		for b := -draws.Clip; b <= draws.Clip; b += 0.01 {
			if !bent(0, []float64{a, b}, out[:]) {
				continue
			}
			s := a*a + b*b
			for i, r := range bentReadings {
				s += (r.Value - out[i]) * (r.Value - out[i]) / r.Err / r.Err
			}
			least = min(least, s)
		}
	}
	best, err := draws.MostProbable(2, bent, bentReadings, 1)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(best.ChiSquare-least) > 0.05 {
		t.Errorf("sum of squares %.3f after %d runs, the grid's least is %.3f", best.ChiSquare, best.Runs, least)
	}
}

func TestSearchStartsElsewhereWhereTheMiddleDoesNotRun(t *testing.T) {
	model := func(_ int, z, out []float64) bool {
		out[0] = z[0]
		return z[1] > 0.7
	}
	best, err := draws.MostProbable(2, model, []draws.Reading{{Value: 0.5, Err: 0.2}}, 1)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(best.Residual[0]) > 1 {
		t.Errorf("the most probable draw misses the reading by %.2f errors", best.Residual[0])
	}
	_, err = draws.MostProbable(2, func(int, []float64, []float64) bool { return false }, []draws.Reading{{Value: 1, Err: 1}}, 1)
	if !errors.Is(err, draws.ErrStandsStill) {
		t.Errorf("nothing runs: %v, want %v", err, draws.ErrStandsStill)
	}
}

// Another ground is a step that no slope at the middle shows; the reading that
// needs it is no conflict.
func TestSearchFindsAStepThatNoSlopeShows(t *testing.T) {
	model := func(_ int, z, out []float64) bool {
		out[0] = 0.2 * z[0]
		if z[1] > 0.9 {
			out[0] += 2
		}
		return true
	}
	// By hand: over the step at z1 = 0.9, the rest is within the error.
	best, err := draws.MostProbable(3, model, []draws.Reading{{Value: 2, Err: 0.2}}, 1)
	if err != nil {
		t.Fatal(err)
	}
	if best.Z[1] < 0.9 || best.ChiSquare > 1.1 || best.ChiSquare < 0.81 {
		t.Errorf("sum of squares %.2f at %.2f, want between 0.81 and 1.1 over the step", best.ChiSquare, best.Z)
	}
}

// Two choices that are both not the likely ones: two steps on top of each other.
func TestSearchFindsTwoStepsOnTopOfEachOther(t *testing.T) {
	model := func(_ int, z, out []float64) bool {
		out[0] = 0.2 * z[0]
		if z[1] > 0.9 {
			out[0] += 2
		}
		if z[2] < -0.8 {
			out[0] += 1.5
		}
		return true
	}
	best, err := draws.MostProbable(5, model, []draws.Reading{{Value: 3.5, Err: 0.2}}, 1)
	if err != nil {
		t.Fatal(err)
	}
	// By hand: 0.81 + 0.64 at the steps, the rest is within the error.
	if best.ChiSquare > 2.1 || best.ChiSquare < 1.45 {
		t.Errorf("sum of squares %.2f at %.2f, want between 1.45 and 2.1 over both steps", best.ChiSquare, best.Z)
	}
}

// wronged counts what becomes of carts of which one of three readings, each in
// turn, is wrong by a factor.
type wronged struct{ trials, seen, named, among, runs, quiet int }

func wrong(t *testing.T, factor float64, trials int, which ...int) wronged {
	t.Helper()
	random := rand.New(rand.NewPCG(11, uint64(len(which))))
	var w wronged
	for i := range trials {
		c, _ := hidden(random)
		readings := read(c, random, (*rand.Rand).NormFloat64, which...)
		bad := i % len(readings)
		readings[bad].Value += math.Log(factor)
		conflict, found, err := draws.FindConflict(cartUnknowns, cartModel(which...), readings, nil, nil, 1)
		if err != nil {
			t.Fatal(err)
		}
		w.trials++
		if !found {
			w.quiet += conflict.Runs
			continue
		}
		w.seen++
		w.runs += conflict.Runs
		if conflict.Readings[0] == bad {
			w.named++
		}
		if slices.Contains(conflict.Readings, bad) {
			w.among++
		}
	}
	return w
}

func TestFalseAlarmsAreRare(t *testing.T) {
	for _, which := range [][]int{{0}, {0, 1, 2}, {0, 1, 2, 3, 4, 5}} {
		w := wrong(t, 1, 300, which...)
		t.Logf("%d readings: %d false alarms of %d; %d runs to see that there is none", len(which), w.seen, w.trials, w.quiet/(w.trials-w.seen))
		if w.seen > w.trials*3/100 {
			t.Errorf("%d readings: %d false alarms of %d, want at most 3 %%", len(which), w.seen, w.trials)
		}
	}
}

func TestAReadingThreeTimesWrongIsNamed(t *testing.T) {
	for _, c := range []struct {
		factor      float64
		seen, named float64 // least shares: of all, and of those seen
	}{{3, 0.5, 0.85}, {1. / 3, 0.5, 0.85}} {
		w := wrong(t, c.factor, 150, 0, 1, 2)
		t.Logf("one of three wrong by %.2f: seen %d of %d, named first %d, among those named %d; %d runs to tell", c.factor, w.seen, w.trials, w.named, w.among, w.runs/w.seen)
		if float64(w.seen) < c.seen*float64(w.trials) || float64(w.named) < c.named*float64(w.seen) {
			t.Errorf("wrong by %.2f: seen %d of %d, named %d", c.factor, w.seen, w.trials, w.named)
		}
	}
}

// A pull that the speed and the amps cannot explain pushes the unknowns that
// alone could: what is pushed must be what the reading hangs on.
func TestPushedUnknownsAreThoseThatTheReadingsHangOn(t *testing.T) {
	model := func(_ int, z, out []float64) bool {
		out[0] = 0.5*z[0] + 0.1*z[1]
		return true
	}
	c, found, err := draws.FindConflict(3, model, []draws.Reading{{Value: 2, Err: 0.1}}, nil, nil, 1)
	if err != nil {
		t.Fatal(err)
	}
	if !found || !slices.Equal(c.Pushed, []int{0}) || !slices.Equal(c.Readings, []int{0}) {
		t.Errorf("found %v, pushed %v, named %v; want unknown 0 and reading 0", found, c.Pushed, c.Readings)
	}
}

// What fits lies where no slope of the middle shows the way: a search from there finds it.
func TestWhatWeighedDrawsHaveFoundIsNoConflict(t *testing.T) {
	model := func(_ int, z, out []float64) bool {
		out[0], out[1] = 3, 0.1*z[1]
		if z[0] < -1.7 { // a kind of its own
			out[0], out[1] = 0.2*z[1], 1+0.1*z[1]
		}
		return true
	}
	readings := []draws.Reading{{Value: 0, Err: 0.3}, {Value: 1, Err: 0.3}}
	for name, from := range map[string][][]float64{"the middle alone": nil, "from where it fits": {{-1.8, 0.4}}, "from another place, too": {{1, 1}, {-1.8, 0.4}}} {
		c, found, err := draws.FindConflict(2, model, readings, from, nil, 1)
		if err != nil {
			t.Fatal(err)
		}
		if from != nil && found {
			t.Errorf("%s: a conflict, chance %.2g", name, c.Best.P)
		}
	}
}

// Just beyond a cut each step towards the middle falls back over it: what a choice picked
// stays picked while the rest is sought.
func TestASearchFromADrawStaysAmongWhatItsChoicesPick(t *testing.T) {
	const cut = -1.2
	model := func(_ int, z, out []float64) bool {
		out[0] = 3 + 0.1*z[1]
		if z[0] < cut {
			out[0] = 0.4 * z[1]
		}
		return true
	}
	readings := []draws.Reading{{Value: 0.8, Err: 0.3}}
	from := []float64{cut - 1e-9, -1.5}
	c, found, err := draws.FindConflict(2, model, readings, [][]float64{from}, []draws.Choice{{Unknown: 0, Cuts: []float64{cut}}}, 1)
	if err != nil {
		t.Fatal(err)
	}
	if found || c.Best.Z[0] != from[0] {
		t.Errorf("conflict %v at %v, want none beside %v", found, c.Best.Z, from[0])
	}
}

func TestTwoReadingsOfOneThingAreBothNamed(t *testing.T) {
	model := func(_ int, z, out []float64) bool {
		out[0], out[1], out[2] = z[0], z[0], z[1]
		return true
	}
	readings := []draws.Reading{{Value: -1, Err: 0.2}, {Value: 1, Err: 0.2}, {Value: 0.3, Err: 0.2}}
	c, found, err := draws.FindConflict(2, model, readings, nil, nil, 1)
	if err != nil {
		t.Fatal(err)
	}
	slices.Sort(c.Readings)
	if !found || !slices.Equal(c.Readings, []int{0, 1}) {
		t.Errorf("found %v, named %v; want both 0 and 1", found, c.Readings)
	}
}

func TestConflictIsTheSameWhateverTheWorkers(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 1))
	which := []int{0, 1, 2}
	h, _ := hidden(random)
	readings := read(h, random, student, which...)
	readings[1].Value += math.Log(4)
	var first draws.Conflict
	for i, workers := range []int{1, 2, 7} {
		c, _, err := draws.FindConflict(cartUnknowns, cartModel(which...), readings, nil, nil, workers)
		if err != nil {
			t.Fatal(err)
		}
		if i == 0 {
			first = c
		} else if !slices.Equal(c.Best.Z, first.Best.Z) || c.Best.ChiSquare != first.Best.ChiSquare || c.Runs != first.Runs {
			t.Errorf("%d workers: another most probable draw", workers)
		}
	}
}
