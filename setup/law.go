package setup

import (
	"math"

	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/quantity"
)

// Law is how the values that an open figure may have are spread over its range.
//
// Every figure that a setup leaves open is drawn from a law. This file is all
// there is of laws; the numbers that go in stand beside their reasons and
// sources where each figure is settled.
//
// What is known of a figure decides its law, after JCGM 101:2008, Evaluation of
// measurement data, Supplement 1, clause 6.4:
//
//   - A range that somebody typed gives limits and nothing else: every value
//     between them is as likely as any other (6.4.2, rectangular). Where a likely
//     value was typed as well, as many draws lie below it as above.
//   - A default from a table or from practice gives a best estimate and how far
//     it is usually off (6.4.7, normal): the likely value is the median, the ends
//     are the 5 and 95 % points, and one in ten lies beyond. Figures that cannot
//     be negative are normal in their logarithm, and either side has a width of
//     its own. This is the wide side to err on: ends taken as hard limits cover
//     the truth too seldom when a table was too narrow.
//   - A figure of something that is of one kind or of another, each with a share
//     and a law of its own, has the law of the mixture (6.4.1): see mixture.
//   - A choice between kinds of part has a share for each (6.4.1, any available
//     information): see [Choosing].
type Law int

// The laws. The zero value is Estimated.
const (
	Estimated Law = iota // 5 %, 50 % and 95 % points
	Limits               // nothing outside the two ends
)

// String returns the law in a word.
func (l Law) String() string {
	if l == Limits {
		return "limits"
	}
	return "estimated"
}

// endSigma is the standard normal at the 95 % point.
const endSigma = 1.6448536269514722

// mostSigma is as far out as a figure is drawn: one in four hundred draws lies
// beyond, where neither tables nor practice say anything.
const mostSigma = 2.8

// At returns the figure at a standard normal z: its likely value at 0, its ends
// at the 5 and 95 % points or, under Limits, at the far ends.
func (f *Figure) At(z float64) float64 {
	if f.IsExact() {
		return f.Likely
	}
	z = min(max(z, -mostSigma), mostSigma)
	if f.mix != nil {
		return f.held(f.mix.at(z))
	}
	end, t := f.High, z/endSigma
	if z < 0 {
		end, t = f.Low, -t
	}
	if f.Law == Limits {
		return f.Likely + (end-f.Likely)*math.Abs(portable.Erf(z/math.Sqrt2))
	}
	if f.Low > 0 && f.kind != quantity.Temperature && f.kind != quantity.Gauge {
		return f.held(f.Likely * portable.Pow(end/f.Likely, t))
	}
	return f.held(f.Likely + (end-f.Likely)*t)
}

// held keeps a drawn value to what can be: no share above one, and nothing
// negative of what its ends say is never negative.
func (f *Figure) held(v float64) float64 {
	if f.kind == quantity.Fraction {
		v = min(v, 1)
	}
	if f.Low >= 0 {
		v = max(v, 0)
	}
	return v
}

// Choosing is a choice between kinds of part that the setup leaves open, the
// likeliest first.
type Choosing struct {
	Key     string
	Options []Option
	Why     string
	Source  string
}

// Option is one answer to a choice.
type Option struct {
	Text  string
	Share float64 // of all vehicles that the setup may mean; the shares of a choice add up to 1
}

// Commonest returns the likeliest standard normal that falls on the option on which most of
// the weight of some draws of this choice did.
func (c *Choosing) Commonest(z, weight []float64) float64 {
	share := make([]float64, len(c.Options))
	for i := range z {
		share[c.number(z[i])] += weight[i]
	}
	best := 0
	for k := range share {
		if share[k] > share[best] {
			best = k
		}
	}
	return c.likeliest(best)
}

// likeliest is the standard normal nearest to the middle that falls on an option.
func (c *Choosing) likeliest(option int) float64 {
	const beyond = 1e-6 // a cut, which rounding may take for either side
	cuts := append(append([]float64{math.Inf(-1)}, c.Cuts()...), math.Inf(1))
	return min(max(0, cuts[option]+beyond), cuts[option+1]-beyond)
}

// Cuts returns the standard normals at which one option gives way to the next,
// rising.
func (c *Choosing) Cuts() []float64 {
	var cuts []float64
	sum := 0.0
	for _, o := range c.Options[:len(c.Options)-1] {
		sum += o.Share
		cuts = append(cuts, math.Sqrt2*math.Erfinv(2*sum-1))
	}
	return cuts
}

// at returns the option that a standard normal z falls on.
func (c *Choosing) at(z float64) string { return c.Options[c.number(z)].Text }

// number is that of the option, from 0.
func (c *Choosing) number(z float64) int {
	p := portable.NormalBelow(z)
	for i, o := range c.Options {
		if p -= o.Share; p < 0 {
			return i
		}
	}
	return len(c.Options) - 1
}
