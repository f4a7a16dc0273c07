package draws_test

import (
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/packcheck/internal/draws"
)

// figuresOf are those of a cart whose ranges are held against the truth.
func figuresOf(c cart) [4]float64 {
	return [4]float64{c.minutes, c.speed, c.blocked, c.pull}
}

var figureNames = [4]string{"minutes", "speed", "blocked amps", "pull"}

// ranksOfTruths hides carts, reads them and returns, for each figure, the
// share of the weight below the truth: evenly spread over 0 to 1 if the draws
// are right (S. Talts and others, Validating Bayesian inference algorithms with
// simulation-based calibration, arXiv 1804.06788). It also returns the mean
// width of all ranges, as a logarithm.
func ranksOfTruths(t *testing.T, truths int, o draws.Options, law func(*rand.Rand) float64, which ...int) (ranks [4][]float64, width float64) {
	t.Helper()
	random := rand.New(rand.NewPCG(77, uint64(len(which))))
	var p *draws.Posterior
	var figures [4][]float64
	mean := 0.0
	for range truths {
		c, _ := hidden(random)
		if readings := read(c, random, law, which...); p == nil || len(readings) > 0 { // else the draws are the same for every truth
			p = condition(t, which, readings, o)
			figures, mean = figuresOfAll(p), 0
			for _, of := range figures {
				s := draws.SpreadOf(of, p.Weight)
				mean += (s.P90 - s.P10) / 4
			}
		}
		width += mean / float64(truths)
		for f, v := range figuresOf(c) {
			below, total, truth := 0.0, 0.0, math.Log(v)
			for i, x := range figures[f] {
				switch {
				case math.IsNaN(x):
					continue
				case x < truth:
					below += p.Weight[i]
				}
				total += p.Weight[i]
			}
			ranks[f] = append(ranks[f], below/total)
		}
	}
	return ranks, width
}

// figuresOfAll gives the logarithms of the figures of all draws, NaN where a cart does
// not run: without readings nothing says that it does; the hidden one does.
func figuresOfAll(p *draws.Posterior) (figures [4][]float64) {
	for _, z := range p.Z {
		d, ok := drive(z)
		for f, v := range figuresOf(d) {
			if !ok {
				v = math.NaN()
			}
			figures[f] = append(figures[f], math.Log(v))
		}
	}
	return figures
}

// flat returns the chance of a histogram of ten bins as uneven as this one, or
// more so, when the ranks are evenly spread (Pearson's chi-square).
func flat(ranks []float64) float64 {
	var held [10]float64
	for _, r := range ranks {
		held[min(9, int(10*r))]++
	}
	want, sum := float64(len(ranks))/10, 0.0
	for _, h := range held {
		sum += (h - want) * (h - want) / want
	}
	return distuv.ChiSquared{K: 9}.Survival(sum)
}

func covered(ranks []float64) float64 {
	inside := 0
	for _, r := range ranks {
		if r > 0.1 && r < 0.9 {
			inside++
		}
	}
	return float64(inside) / float64(len(ranks))
}

// Sixteen histograms are looked at, so that each is held to a sixteenth of 1 %.
// The points are the same for every truth, so that more truths show their own
// error first; the slow run takes more draws too. Of 400 truths 80 % are inside
// within 0.02, one standard deviation.
func TestTruthsAreSpreadEvenlyOverTheDraws(t *testing.T) {
	const truths = 400
	o := draws.Options{Choices: cartChoices()}
	if os.Getenv("PACKCHECK_SLOW") != "" {
		o = draws.Options{Prior: 1024, Round: 1024, Enough: 2000, MostRounds: 12, Choices: cartChoices()}
	}
	before := math.Inf(1)
	for _, which := range [][]int{{}, {0}, {0, 1, 2}, {0, 1, 2, 3, 4, 5}} {
		if len(which) == 0 {
			o.Prior = 4 * 256 // as without readings
		}
		ranks, width := ranksOfTruths(t, truths, o, student, which...)
		for f, name := range figureNames {
			chance, cover := flat(ranks[f]), covered(ranks[f])
			t.Logf("%d readings, %s: %.3f inside the 80 %% range; chance of as uneven a histogram %.3f", len(which), name, cover, chance)
			if chance < 0.01/16 {
				t.Errorf("%d readings, %s: ranks are not spread evenly, chance %.5f", len(which), name, chance)
			}
			if cover < 0.74 || cover > 0.86 {
				t.Errorf("%d readings, %s: %.3f of the truths inside the 80 %% range", len(which), name, cover)
			}
		}
		t.Logf("%d readings: x %.2f from 10 to 90 %%, mean of all figures", len(which), math.Exp(width))
		if width >= before {
			t.Errorf("%d readings: ranges no narrower than with fewer", len(which))
		}
		before = width
		o.Prior = 0
	}
}

// With normal errors the heavy tails make ranges a little wide, never too
// narrow. Of 400 truths 80 % are inside within 0.02, one standard deviation.
func TestNormalErrorsAreCoveredToo(t *testing.T) {
	sets := [][]int{{0, 1, 2, 3, 4, 5}}
	if os.Getenv("PACKCHECK_SLOW") != "" {
		sets = append(sets, []int{0, 1, 2})
	}
	for _, which := range sets {
		ranks, _ := ranksOfTruths(t, 400, draws.Options{}, (*rand.Rand).NormFloat64, which...)
		for f, name := range figureNames {
			cover := covered(ranks[f])
			t.Logf("%d readings, %s: %.3f", len(which), name, cover)
			if cover < 0.74 || cover > 0.90 {
				t.Errorf("%d readings, %s: %.3f of the truths inside the 80 %% range", len(which), name, cover)
			}
		}
	}
}

func TestMoreDrawsGiveTheSameAnswerWithinTheStatedError(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 7))
	var squares, worst, n float64
	for range 24 {
		c, _ := hidden(random)
		which := []int{0, 1, 2}
		readings := read(c, random, student, which...)
		var s [2][4]draws.Spread
		for k, o := range []draws.Options{{}, {Prior: 1024, Round: 1024, Enough: 3000, MostRounds: 12}} {
			p := condition(t, which, readings, o)
			for f, values := range figuresOfAll(p) {
				s[k][f] = draws.SpreadOf(values, p.Weight)
			}
		}
		for f := range figureNames {
			few, many := s[0][f], s[1][f]
			width := many.P90 - many.P10
			for _, e := range []float64{few.P10 - many.P10, few.P50 - many.P50, few.P90 - many.P90} {
				squares, n = squares+e*e/width/width, n+1
				worst = max(worst, math.Abs(e)/width)
			}
		}
	}
	rms := math.Sqrt(squares / n)
	t.Logf("200 against 3,000 effective draws: root mean square %.3f, at worst %.3f of the width", rms, worst)
	// Of 200 independent draws of a normal law the 10 and 90 % points spread by
	// 0.047 of the width, the median by 0.035: sqrt(p(1-p)/200) over the density.
	if rms > 0.047 {
		t.Errorf("root mean square error %.3f of the width, want that of 200 independent draws, 0.047", rms)
	}
}

// A narrower unknown may move a range's ends outwards by no more than the
// error of the draws: here a 10 and 90 % point of 1,024 draws, 3 %.
func TestNarrowerUnknownsStayWithinTheWiderRange(t *testing.T) {
	z := draws.Points(1024, cartUnknowns)
	spread := func(unknown int, share float64) [4]draws.Spread {
		var values [4][]float64
		for _, row := range z {
			narrow := append([]float64(nil), row...)
			narrow[unknown] *= share
			d, ok := drive(narrow)
			for f, v := range figuresOf(d) {
				if !ok {
					v = math.NaN()
				}
				values[f] = append(values[f], math.Log(v))
			}
		}
		var s [4]draws.Spread
		for f := range values {
			s[f] = draws.SpreadOf(values[f], nil)
		}
		return s
	}
	for unknown := range cartUnknowns {
		if unknown == cartGround {
			continue // to know the ground rightly moves the range to that ground's
		}
		wide, narrow := spread(unknown, 1), spread(unknown, 0.3)
		for f, name := range figureNames {
			slack := 0.03 * (wide[f].P90 - wide[f].P10)
			if narrow[f].P10 < wide[f].P10-slack || narrow[f].P90 > wide[f].P90+slack {
				t.Errorf("unknown %d narrowed: %s from %.3f..%.3f to %.3f..%.3f", unknown, name, wide[f].P10, wide[f].P90, narrow[f].P10, narrow[f].P90)
			}
		}
	}
}
