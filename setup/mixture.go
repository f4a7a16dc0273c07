package setup

import (
	"math"

	"example.org/packcheck/internal/portable"
	"example.org/packcheck/internal/quantity"
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
	low, high = math.Log(low), math.Log(high)
	wide := make([]widths, len(kinds))
	for i := range kinds {
		wide[i] = kinds[i].widths()
	}
	below := func(x float64) float64 {
		value, sum := portable.Exp(x), 0.0
		for i := range kinds {
			sum += kinds[i].share * portable.NormalBelow(kinds[i].normal(value, wide[i]))
		}
		return sum
	}
	m := &mixture{}
	const steps = 400 // a straight line between two of them is off by less than the fourth digit
	x, share, last := low, below(low), 0.0
	next := 0
	for i := range m.values {
		p := portable.NormalBelow(-mostSigma + 2*mostSigma*float64(i)/(mixturePoints-1))
		for share < p && next < steps {
			next++
			x, last = low+(high-low)*float64(next)/steps, share
			share = below(x)
		}
		at := x
		if share > p && next > 0 {
			at -= (high - low) / steps * (share - p) / (share - last)
		}
		m.values[i] = portable.Exp(at)
	}
	return m, m.ends()
}

// ends is the range from its 5 to its 95 % point.
func (m *mixture) ends() quantity.Range {
	return quantity.Range{Low: m.at(-endSigma), Likely: m.at(0), High: m.at(endSigma)}
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

// widths are the logarithms of a kind's ends over its likely value.
type widths struct{ low, high float64 }

func (k *kind) widths() widths {
	return widths{low: math.Log(k.Low / k.Likely), high: math.Log(k.High / k.Likely)}
}

// normal is the standard normal at which a kind of these widths has a value.
func (k *kind) normal(x float64, w widths) float64 {
	end, sign := w.high, 1.0
	if x < k.Likely {
		end, sign = w.low, -1
	}
	return sign * endSigma * math.Log(x/k.Likely) / end
}
