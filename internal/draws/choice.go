package draws

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/packcheck/internal/portable"
)

// Choice says that an unknown picks one of several alternatives (a motor
// family, a kind of ground): below the first cut the first, and so on. Readings
// may then leave far-apart alternatives standing, which no single normal law
// covers; told of them, [Condition] draws every alternative by itself.
type Choice struct {
	Unknown int       // position in z
	Cuts    []float64 // rising z at which one alternative gives way to the next
}

// alternatives is a choice with what is known of its alternatives beforehand.
type alternatives struct {
	unknown int
	cuts    []float64
	share   []float64 // of the prior
	before  []float64 // prior share of all alternatives before
	scale   []float64 // of an indicator with this share, its standard deviation
	first   int       // column of the first alternative in a regression
}

// checkChoices returns the choices, or what is wrong with them.
func checkChoices(choices []Choice, dims int) ([]alternatives, error) {
	var all []alternatives
	taken := map[int]bool{}
	column := dims
	for i, c := range choices {
		switch {
		case c.Unknown < 0 || c.Unknown >= dims:
			return nil, fmt.Errorf("choice %d is of unknown %d: want 0 to %d", i, c.Unknown, dims-1)
		case taken[c.Unknown]:
			return nil, fmt.Errorf("choice %d is of unknown %d, which has one already", i, c.Unknown)
		case len(c.Cuts) == 0:
			return nil, fmt.Errorf("choice %d has no cut: want one or more", i)
		}
		taken[c.Unknown] = true
		a := alternatives{unknown: c.Unknown, cuts: slices.Clone(c.Cuts), first: column}
		last, upTo := math.Inf(-1), 0.0
		for _, cut := range append(slices.Clone(c.Cuts), math.Inf(1)) {
			if !(cut > last) {
				return nil, fmt.Errorf("choice %d has cuts %v: want them rising", i, c.Cuts)
			}
			end := portable.NormalBelow(cut)
			share := end - upTo
			a.share, a.before = append(a.share, share), append(a.before, upTo)
			a.scale = append(a.scale, math.Sqrt(max(share*(1-share), 1e-6)))
			last, upTo = cut, end
		}
		column += len(a.share)
		all = append(all, a)
	}
	return all, nil
}

// of returns which alternative a z picks.
func (a *alternatives) of(z float64) int {
	n := 0
	for n < len(a.cuts) && z >= a.cuts[n] {
		n++
	}
	return n
}

// place turns a standard normal number into a z whose alternatives have the
// given chances instead of the prior's shares, and within an alternative the
// prior's law.
func (a *alternatives) place(x float64, chance []float64) float64 {
	u := portable.NormalBelow(x)
	n := 0
	for n < len(chance)-1 && u >= chance[n] {
		u -= chance[n]
		n++
	}
	inside := a.before[n] + min(1, u/chance[n])*a.share[n]
	z := distuv.UnitNormal.Quantile(max(smallest, min(1-smallest, inside)))
	// Rounding must not carry it over a cut.
	if n > 0 {
		z = max(z, a.cuts[n-1])
	}
	if n < len(a.cuts) {
		z = min(z, math.Nextafter(a.cuts[n], math.Inf(-1)))
	}
	return z
}

// smallest chance from which a quantile is taken: far beyond the clip.
const smallest = 1e-12

// chances returns how often a proposal is to pick each alternative, by the
// weights of the draws, with a part of the prior so that none is given up.
func (a *alternatives) chances(z [][]float64, weight []float64) []float64 {
	chance := make([]float64, len(a.share))
	for i, w := range weight {
		if w > 0 {
			chance[a.of(z[i][a.unknown])] += (1 - keptOpen) * w
		}
	}
	for n, share := range a.share {
		chance[n] += keptOpen * share
	}
	return chance
}

// keptOpen is the part of a proposal's picks that goes by the prior. Common
// practice, no published source.
const keptOpen = 0.25
