package draws_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/packcheck/internal/draws"
)

// families is a model with three alternatives that lie far apart beside a
// common unknown.
func families(_ int, z, out []float64) bool {
	out[0] = 0.5 * z[0]
	switch {
	case z[1] >= 1:
		out[0] += 3
	case z[1] >= -0.5:
		out[0]++
	}
	return true
}

var familyCuts = []float64{-0.5, 1}

// The chance of each alternative is its prior share times the integral of the
// likelihood over the other unknown.
func TestAlternativesGetTheirIntegratedChances(t *testing.T) {
	cdf := func(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }
	prior := []float64{cdf(-0.5), cdf(1) - cdf(-0.5), 1 - cdf(1)}
	for _, value := range []float64{0.4, 1.9, 3.2} {
		reading := []draws.Reading{{Value: value, Err: 0.25}}
		var want [3]float64
		var sum float64
		for n, at := range []float64{-1, 0, 2} {
			for z := -8.0; z <= 8; z += 1e-3 {
				var out [1]float64
				families(0, []float64{max(-draws.Clip, min(draws.Clip, z)), at}, out[:])
				f := prior[n] * math.Exp(-z*z/2) * studentDensity((value-out[0])/0.25)
				want[n] += f
				sum += f
			}
		}
		p, err := draws.Condition(3, families, reading, draws.Options{
			Enough: 3000, MostRounds: 60, Choices: []draws.Choice{{Unknown: 1, Cuts: familyCuts}},
		})
		if err != nil {
			t.Fatal(err)
		}
		if p.Effective < 3000 {
			t.Errorf("read %v: effective number %.0f after %d rounds", value, p.Effective, p.Rounds)
		}
		var got [3]float64
		for i, z := range p.Z {
			switch {
			case z[1] >= 1:
				got[2] += p.Weight[i]
			case z[1] >= -0.5:
				got[1] += p.Weight[i]
			default:
				got[0] += p.Weight[i]
			}
		}
		for n := range want {
			chance := want[n] / sum
			if e := math.Abs(got[n] - chance); e > 4*math.Sqrt(chance*(1-chance)/p.Effective) {
				t.Errorf("read %v: alternative %d has a chance of %.4f, integrated %.4f", value, n, got[n], chance)
			}
		}
		// Within an alternative nothing was read: its z follows the prior.
		mean, sd := truncated(-0.5, 1)
		var w, m, squares float64
		for i, z := range p.Z {
			if z[1] >= -0.5 && z[1] < 1 {
				w, m, squares = w+p.Weight[i], m+p.Weight[i]*z[1], squares+p.Weight[i]*z[1]*z[1]
			}
		}
		if ratio := math.Sqrt(squares/w-m*m/w/w) / sd; math.Abs(ratio-1) > 4/math.Sqrt(p.Effective*w) {
			t.Errorf("read %v: standard deviation within the middle alternative %.3f times the prior's", value, ratio)
		}
		if e := math.Abs(m/w - mean); e > 4*sd/math.Sqrt(p.Effective*w) {
			t.Errorf("read %v: mean z of the middle alternative %.3f, want %.3f", value, m/w, mean)
		}
	}
}

// truncated returns mean and standard deviation of a standard normal number
// between a and b, by the trapezium rule.
func truncated(a, b float64) (mean, sd float64) {
	var w, m, s float64
	for z := a; z <= b; z += 1e-4 {
		f := math.Exp(-z * z / 2)
		w, m, s = w+f, m+f*z, s+f*z*z
	}
	m /= w
	return m, math.Sqrt(s/w - m*m)
}

func TestToldOfChoicesMoreDrawsStayAlive(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 8))
	which := []int{0, 1, 2, 3, 4, 5}
	var plain, told []float64
	for range 60 {
		c, _ := hidden(random)
		readings := read(c, random, student, which...)
		plain = append(plain, condition(t, which, readings, draws.Options{MostRounds: 2}).Effective)
		told = append(told, condition(t, which, readings, draws.Options{MostRounds: 2, Choices: cartChoices()}).Effective)
	}
	a, b := draws.SpreadOf(plain, nil), draws.SpreadOf(told, nil)
	t.Logf("effective number after two rounds, P10 and P50: %.0f %.0f, told of the ground %.0f %.0f", a.P10, a.P50, b.P10, b.P50)
	if b.P50 < 1.2*a.P50 {
		t.Errorf("median effective number %.0f, told of the choice %.0f: want a fifth more", a.P50, b.P50)
	}
}

func TestChoicesThatCannotBeAreRefused(t *testing.T) {
	for want, c := range map[string][]draws.Choice{
		"unknown 3: want 0 to 2":    {{Unknown: 3, Cuts: []float64{0}}},
		"unknown -1: want 0 to 2":   {{Unknown: -1, Cuts: []float64{0}}},
		"has one already":           {{Unknown: 1, Cuts: []float64{0}}, {Unknown: 1, Cuts: []float64{1}}},
		"no cut":                    {{Unknown: 1}},
		"cuts [1 0]: want them ris": {{Unknown: 1, Cuts: []float64{1, 0}}},
		"cuts [NaN]: want them ris": {{Unknown: 1, Cuts: []float64{math.NaN()}}},
	} {
		_, err := draws.Condition(3, families, []draws.Reading{{Value: 1, Err: 1}}, draws.Options{Choices: c})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}
