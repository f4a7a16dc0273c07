package draws_test

import (
	"math"
	"strings"
	"testing"

	"example.org/packcheck/internal/draws"
)

// expect is what one reading would change.
func expect(foretold []float64, err float64, figures [][]float64, verdict []int, weight []float64) (draws.Gain, error) {
	p, fault := draws.NewProspects(len(foretold), figures, verdict, weight)
	if fault != nil {
		return draws.Gain{}, fault
	}
	return p.Expect(foretold, err)
}

// A reading of x with an error e that hides t4 noise leaves about
// sqrt(1 - 1/(1 + s^2)) of the width of x, s^2 between e^2 and 2 e^2; integrated
// here for the law in question.
func TestWidthAfterAReadingIsTheIntegratedOne(t *testing.T) {
	z := draws.Points(2048, 3)
	x := figureOf(z, func(z []float64) float64 { return z[0] })
	other := figureOf(z, func(z []float64) float64 { return z[1] })
	sum := figureOf(z, func(z []float64) float64 { return z[0] + z[1] })
	for _, e := range []float64{0.3, 1, 3} {
		g, err := expect(x, e, [][]float64{x, other, sum}, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		want := widthAfter(e)
		if math.Abs(g.Width[0]-want) > 0.04 {
			t.Errorf("error %v: width of what is read %.3f, integrated %.3f", e, g.Width[0], want)
		}
		if math.Abs(g.Width[1]-1) > 0.06 {
			t.Errorf("error %v: width of what has nothing to do with it %.3f", e, g.Width[1])
		}
		if !(g.Width[2] > g.Width[0] && g.Width[2] < 1) {
			t.Errorf("error %v: width of the sum %.3f, want between %.3f and 1", e, g.Width[2], g.Width[0])
		}
		if g.Readable != 1 || g.WrongNow != 0 || g.Turns != 0 {
			t.Errorf("error %v: readable %v, wrong %v, turns %v; want 1, 0, 0", e, g.Readable, g.WrongNow, g.Turns)
		}
	}
}

// widthAfter integrates the mean width of the 10 to 90 % range of a standard
// normal number after a reading with Student errors of scale e, over the width
// before.
func widthAfter(e float64) float64 {
	const step = 0.02
	var mean, all float64
	for y := -12.0; y <= 12; y += 10 * step {
		var density, upTo, low, high float64
		weight := func(x float64) float64 { return math.Exp(-x*x/2) * studentDensity((y-x)/e) }
		for x := -6.0; x <= 6; x += step {
			density += weight(x)
		}
		low = math.NaN()
		for x := -6.0; x <= 6; x += step {
			upTo += weight(x)
			if math.IsNaN(low) && upTo >= 0.1*density {
				low = x
			}
			if upTo >= 0.9*density {
				high = x
				break
			}
		}
		mean, all = mean+density*(high-low), all+density
	}
	return mean / all / (2 * 1.2815516)
}

func TestAReadingOfWhatDecidesSettlesTheVerdict(t *testing.T) {
	z := draws.Points(1024, 3)
	x := figureOf(z, func(z []float64) float64 { return z[0] })
	verdict := make([]int, len(z))
	for i := range z {
		if z[i][0] > 0.4 {
			verdict[i] = 1
		}
	}
	precise, err1 := expect(x, 0.1, nil, verdict, nil)
	coarse, err2 := expect(x, 2, nil, verdict, nil)
	useless, err3 := expect(figureOf(z, func(z []float64) float64 { return z[1] }), 0.1, nil, verdict, nil)
	if err1 != nil || err2 != nil || err3 != nil {
		t.Fatal(err1, err2, err3)
	}
	const above = 0.3446 // 1 - Phi(0.4)
	for name, g := range map[string]draws.Gain{"precise": precise, "coarse": coarse, "useless": useless} {
		if math.Abs(g.WrongNow-above) > 0.005 {
			t.Errorf("%s: wrong now in %.3f, want %.3f", name, g.WrongNow, above)
		}
	}
	if precise.WrongThen > 0.06 || math.Abs(precise.Turns-above) > 0.05 {
		t.Errorf("precise: wrong then %.3f, turns %.3f; want about 0.03 and %.3f", precise.WrongThen, precise.Turns, above)
	}
	if want := turnsAt(2); math.Abs(coarse.Turns-want) > 0.05 {
		t.Errorf("coarse: turns %.3f, integrated %.3f", coarse.Turns, want)
	}
	if !(precise.WrongThen < coarse.WrongThen && coarse.WrongThen < useless.WrongThen+0.01) {
		t.Errorf("wrong then: precise %.3f, coarse %.3f, useless %.3f; want rising", precise.WrongThen, coarse.WrongThen, useless.WrongThen)
	}
	if math.Abs(useless.WrongThen-above) > 0.03 || useless.Turns > 0.05 {
		t.Errorf("useless: wrong then %.3f, turns %.3f; want %.3f and none", useless.WrongThen, useless.Turns, above)
	}
}

// turnsAt integrates the chance that a reading of a standard normal number with
// Student errors of scale e makes it likelier than not that it is above 0.4.
func turnsAt(e float64) float64 {
	const step = 0.05
	var turned, all float64
	for y := -80.0; y <= 80; y += step {
		var above, total float64
		for x := -6.0; x <= 6; x += step {
			w := math.Exp(-x*x/2) * studentDensity((y-x)/e)
			total += w
			if x > 0.4 {
				above += w
			}
		}
		all += total
		if above > total/2 {
			turned += total
		}
	}
	return turned / all
}

// Of two draws the other one alone is left to say what it would be: each turns
// the verdict into that of the other.
func TestTheDrawTakenForTheTruthDoesNotAgreeWithItself(t *testing.T) {
	g, err := expect([]float64{0, 10}, 1, nil, []int{0, 1}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if g.Turns != 0.5 || g.WrongThen != 0 {
		t.Errorf("turns %v, wrong then %v; want 0.5 and 0", g.Turns, g.WrongThen)
	}
}

// That it does not run at all, and so cannot be read, tells which half it is.
func TestThatNothingCanBeReadAlsoTells(t *testing.T) {
	z := draws.Points(1024, 2)
	foretold := make([]float64, len(z))
	verdict := make([]int, len(z))
	for i := range z {
		if z[i][0] > 0 {
			foretold[i], verdict[i] = math.NaN(), 1
		}
	}
	g, err := expect(foretold, 0.1, nil, verdict, nil)
	if err != nil {
		t.Fatal(err)
	}
	if g.WrongThen > 1e-9 || math.Abs(g.Readable-0.5) > 0.01 {
		t.Errorf("wrong then %v, readable %v; want 0 and 0.5", g.WrongThen, g.Readable)
	}
}

func TestFigureWithoutAWidthHasNoGain(t *testing.T) {
	z := draws.Points(256, 1)
	x := figureOf(z, func(z []float64) float64 { return z[0] })
	same := make([]float64, len(z))
	never := figureOf(z, func(z []float64) float64 {
		if z[0] > 0 {
			return math.Inf(1)
		}
		return z[0]
	})
	absent := figureOf(z, func([]float64) float64 { return math.NaN() })
	g, err := expect(x, 0.5, [][]float64{same, never, absent}, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	for f, w := range g.Width {
		if !math.IsNaN(w) {
			t.Errorf("figure %d: width %v, want NaN", f, w)
		}
	}
}

func TestQuestionsAboutReadingsThatCannotBeAnsweredSayWhy(t *testing.T) {
	two := []float64{1, 2}
	for _, c := range []struct {
		want             string
		foretold, weight []float64
		err              float64
		figures          [][]float64
		verdict          []int
	}{
		{want: "standard error of 0", foretold: two},
		{want: "draw 1 foretells +Inf", foretold: []float64{1, math.Inf(1)}, err: 1},
		{want: "1 weights for 2 draws", foretold: two, err: 1, weight: []float64{1}},
		{want: "figure 0 has 1 values for 2 draws", foretold: two, err: 1, figures: [][]float64{{1}}},
		{want: "1 verdicts for 2 draws", foretold: two, err: 1, verdict: []int{0}},
		{want: "verdict -1", foretold: two, err: 1, verdict: []int{0, -1}},
	} {
		_, err := expect(c.foretold, c.err, c.figures, c.verdict, c.weight)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
}

func BenchmarkExpect(b *testing.B) {
	z := draws.Points(1024, 40)
	x := figureOf(z, func(z []float64) float64 { return z[0] })
	sum := figureOf(z, func(z []float64) float64 { return z[0] + z[1] })
	verdict := make([]int, len(z))
	for b.Loop() {
		if _, err := expect(x, 0.1, [][]float64{x, sum, sum}, verdict, nil); err != nil {
			b.Fatal(err)
		}
	}
}
