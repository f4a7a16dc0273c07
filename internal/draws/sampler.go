package draws

import (
	"math"

	"example.org/packcheck/internal/portable"
)

// sampler holds all draws so far and the laws from which they came.
type sampler struct {
	dims     int
	model    Model
	readings []Reading
	options  Options
	choices  []alternatives

	raw       [][]float64 // before clipping: the laws are exact only there
	z         [][]float64 // clipped
	predicted [][]float64 // nil where the draw does not run
	residual  [][]float64 // (read - predicted) / error; nil where it does not run
	likely    []float64   // logarithm of the likelihood; -Inf where it does not run
	mixture   []float64   // logarithm of sum over laws of count * density / prior density
	laws      []proposal
	counts    []float64 // draws of each proposal
	prior     int       // draws of the prior
	runs      int
	strained  int         // rounds after the first two that left the answer rough
	slope     [][]float64 // last regression: of each residual on unknowns and alternatives
}

// add runs new draws of the latest law (of the prior, when there is none yet)
// and brings the mixture up to date.
func (s *sampler) add(raw [][]float64) {
	n, k := len(raw), len(s.readings)
	z := rows(n, s.dims)
	for i := range raw {
		copy(z[i], raw[i])
	}
	clip(z)
	out, res, ok := rows(n, k), rows(n, k), make([]bool, n)
	if k > 0 {
		runAll(s.model, z, out, ok, s.options.Workers)
		s.runs += n
	}
	old := len(s.raw)
	s.raw, s.z = append(s.raw, raw...), append(s.z, z...)
	for i := range raw {
		if k > 0 && !ok[i] {
			out[i], res[i] = nil, nil
			s.likely = append(s.likely, math.Inf(-1))
		} else {
			for j, r := range s.readings {
				res[i][j] = (r.Value - out[i][j]) / r.Err
			}
			s.likely = append(s.likely, logLikelihood(res[i], s.options.Freedom))
		}
		s.predicted, s.residual = append(s.predicted, out[i]), append(s.residual, res[i])
	}
	s.mix(old)
}

// mix adds the latest law to the mixture at old draws, and all laws at new
// ones (those from the given position on).
func (s *sampler) mix(old int) {
	if len(s.laws) == 0 {
		s.prior = len(s.raw)
		s.mixture = s.mixture[:0]
		for range s.raw {
			s.mixture = append(s.mixture, math.Log(float64(s.prior)))
		}
		return
	}
	latest, space := len(s.laws)-1, newWorkspace(len(s.readings))
	for i := range old {
		s.mixture[i] = logSum(s.mixture[i], math.Log(s.counts[latest])+s.laws[latest].logRatio(s.raw[i], space))
	}
	for i := old; i < len(s.raw); i++ {
		total := math.Log(float64(s.prior))
		for l := range s.laws {
			total = logSum(total, math.Log(s.counts[l])+s.laws[l].logRatio(s.raw[i], space))
		}
		s.mixture = append(s.mixture, total)
	}
}

// extendPrior adds further points of the prior: for questions without readings.
func (s *sampler) extendPrior() {
	all := normalPoints(len(s.raw)+s.options.Round, s.dims, seedPoints^s.options.Scramble, 0)
	s.add(all[len(s.raw):])
}

// round fits a proposal to the draws so far and adds its draws.
func (s *sampler) round(number int, effective float64) {
	if number >= leastRounds && effective < RoughBelow {
		s.strained++
	}
	law := s.fit()
	raw := normalPoints(s.options.Round, s.dims+len(s.readings), seedRounds^s.options.Scramble, uint64(number))
	space := newWorkspace(len(s.readings))
	for i, row := range raw {
		raw[i] = row[:s.dims:s.dims]
		law.draw(raw[i], row[s.dims:], space)
	}
	s.laws, s.counts = append(s.laws, law), append(s.counts, float64(len(raw)))
	s.add(raw)
}

// weights returns the weights with the likelihood raised to the given power,
// and their effective number; 0 when no draw runs.
func (s *sampler) weights(power float64) ([]float64, float64) {
	w := make([]float64, len(s.raw))
	return w, s.weightsInto(w, power)
}

func (s *sampler) weightsInto(w []float64, power float64) float64 {
	most := math.Inf(-1)
	for i, l := range s.likely {
		w[i] = power*l - s.mixture[i]
		if math.IsInf(l, -1) { // also where the power is 0
			w[i] = l
		}
		most = max(most, w[i])
	}
	if math.IsInf(most, -1) {
		clear(w)
		return 0
	}
	var sum, squares float64
	for i := range w {
		w[i] = portable.Exp(w[i] - most)
		sum += w[i]
		squares += w[i] * w[i]
	}
	for i := range w {
		w[i] /= sum
	}
	return sum * sum / squares
}

// logLikelihood of residuals in standard errors, constants left out.
func logLikelihood(residual []float64, freedom float64) float64 {
	var sum float64
	for _, r := range residual {
		if math.IsInf(freedom, 1) {
			sum -= r * r / 2
		} else {
			sum -= (freedom + 1) / 2 * math.Log1p(r*r/freedom)
		}
	}
	return sum
}

// logSum is log(exp(a) + exp(b)).
func logSum(a, b float64) float64 {
	if a < b {
		a, b = b, a
	}
	return a + math.Log1p(portable.Exp(b-a))
}
