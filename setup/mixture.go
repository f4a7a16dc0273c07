package setup

import (
	"math"

	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/internal/solve"
)

// mixture is the law of a figure that is estimated apart for each of several
// kinds, of which a share each is: one smooth law for all, whose likely value may
// belong to the commoner kind and whose low end to the other. Drawn through its
// three points alone, the quarter of packs that hold half of their label would
// pull a third of the others down.
type mixture struct {
	values [mixturePoints]float64 // at evenly spread standard normals from -mostSigma to mostSigma
}

const mixturePoints = 57 // every tenth of a standard normal

// kind is one of what a mixture is made of; its range is positive.
type kind struct {
	quantity.Range
	share float64 // the shares add up to 1
}

// mixed makes a mixture, and the range from its 5 to its 95 % point.
func mixed(kinds ...kind) (*mixture, quantity.Range) {
	low, high := math.Inf(1), 0.0
	for i := range kinds {
		low, high = min(low, kinds[i].beyond(-mostSigma)), max(high, kinds[i].beyond(mostSigma))
	}
	quantile := func(z float64) float64 {
		p := normalShare(z)
		return portable.Exp(solve.Crossing(math.Log(low), math.Log(high), 1e-9, func(x float64) float64 {
			below := 0.0
			for i := range kinds {
				below += kinds[i].share * normalShare(kinds[i].normal(portable.Exp(x)))
			}
			return below - p
		}).Hi)
	}
	m := &mixture{}
	for i := range m.values {
		m.values[i] = quantile(-mostSigma + 2*mostSigma*float64(i)/(mixturePoints-1))
	}
	return m, quantity.Range{Low: quantile(-endSigma), Likely: quantile(0), High: quantile(endSigma)}
}

// at returns the value at a standard normal within mostSigma.
func (m *mixture) at(z float64) float64 {
	x := (z + mostSigma) / (2 * mostSigma) * (mixturePoints - 1)
	i := min(int(x), mixturePoints-2)
	return m.values[i] + (m.values[i+1]-m.values[i])*(x-float64(i))
}

// beyond is the value of a kind at a standard normal, as in [Figure.At].
func (k *kind) beyond(z float64) float64 {
	f := Figure{Range: k.Range, Known: true}
	return f.At(z)
}

// normal is the standard normal at which a kind has a value.
func (k *kind) normal(x float64) float64 {
	end, sign := k.High, 1.0
	if x < k.Likely {
		end, sign = k.Low, -1
	}
	return sign * endSigma * math.Log(x/k.Likely) / math.Log(end/k.Likely)
}

// normalShare is the share of a normal law below a standard normal.
func normalShare(z float64) float64 { return 0.5 * portable.Erfc(-z/math.Sqrt2) }
