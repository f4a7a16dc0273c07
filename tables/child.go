package tables

import (
	"fmt"
	"math"
	"slices"
)

// ChildMass is how heavy children of one age are.
type ChildMass struct {
	AgeY    float64 // the age asked for
	P5KG    float64 // one in twenty is lighter: the lowest of the growth charts
	P50KG   float64 // the middle of them
	P95KG   float64 // one in twenty is heavier: the highest of the charts
	Clamped bool    // the age lies outside the tables and the nearest one stands in
	Note    string  // what that means, in words; empty otherwise
	Sources []string
}

// ChildMass returns the body mass of children of an age in years, boys and
// girls together: the lowest 5th percentile, the mean median and the highest
// 95th percentile of the growth charts that reach this age, interpolated between
// the ages that they have. Together they cover 2 to 14 years; outside, the nearest
// age stands in, Clamped is set and Note says in which direction that is wrong. It
// fails for an age that is not from 0 to 18.
func (t *Tables) ChildMass(ageY float64) (ChildMass, error) {
	if !(ageY >= 0 && ageY <= 18) {
		return ChildMass{}, fmt.Errorf("tables: child of %g years %w (want 0 to 18)", ageY, ErrNotFound)
	}
	c := ChildMass{AgeY: ageY, P5KG: math.Inf(1)}
	youngest, oldest := math.Inf(1), math.Inf(-1)
	for i := range t.children {
		first, last := t.children[i].Value.ages()
		youngest, oldest = min(youngest, first), max(oldest, last)
	}
	switch {
	case ageY < youngest:
		c.Clamped, c.Note = true, fmt.Sprintf("the growth charts begin at %g years, and a younger child is lighter: weigh the child", youngest)
	case ageY > oldest:
		c.Clamped, c.Note = true, fmt.Sprintf("the growth charts end at %g years, and an older child is heavier: weigh the child", oldest)
	}
	at, charts := min(max(ageY, youngest), oldest), 0.0
	for i := range t.children {
		g := &t.children[i].Value
		if first, last := g.ages(); at < first || at > last {
			continue
		}
		charts++
		c.P5KG = min(c.P5KG, linearInterpolate(g.p5, at))
		c.P50KG += linearInterpolate(g.p50, at)
		c.P95KG = max(c.P95KG, linearInterpolate(g.p95, at))
		if !slices.Contains(c.Sources, g.source) {
			c.Sources = append(c.Sources, g.source)
		}
	}
	c.P50KG /= charts
	return c, nil
}

// GrowthChart returns the percentiles (kg) of one chart at an age inside it:
// "who-boys", "who-girls", "cdc-boys" or "cdc-girls", and of older children
// "cdc-older-boys" and "cdc-older-girls".
func (t *Tables) GrowthChart(chart string, ageY float64) (ChildMass, error) {
	g, ok := t.children.Get(chart)
	if !ok {
		return ChildMass{}, notFound("growth chart", chart, t.children.Names())
	}
	first, last := g.ages()
	if !(ageY >= first && ageY <= last) {
		return ChildMass{}, fmt.Errorf("tables: %g years %w (want %g to %g)", ageY, ErrNotFound, first, last)
	}
	return ChildMass{
		AgeY: ageY, P5KG: linearInterpolate(g.p5, ageY), P50KG: linearInterpolate(g.p50, ageY),
		P95KG: linearInterpolate(g.p95, ageY), Sources: []string{g.source},
	}, nil
}

// growth is one chart: kg by age in years.
type growth struct {
	p5, p50, p95 []Point
	source       string
}

// ages are the first and the last that it has.
func (g *growth) ages() (first, last float64) { return g.p50[0].X, g.p50[len(g.p50)-1].X }

func readGrowth(t *Tables, w *row) {
	g := growth{source: w.source()}
	age, mass := span{0, 20}, span{1, 200}
	g.p5 = w.rising("p5_kg", w.curve("age_y", age, "p5_kg", mass))
	g.p50 = w.rising("p50_kg", w.curve("age_y", age, "p50_kg", mass))
	g.p95 = w.rising("p95_kg", w.curve("age_y", age, "p95_kg", mass))
	for i := range min(len(g.p5), len(g.p50), len(g.p95)) {
		if g.p5[i].Y > g.p50[i].Y || g.p50[i].Y > g.p95[i].Y {
			w.fault("p50_kg", fmt.Sprintf("%g, %g and %g at %g years", g.p5[i].Y, g.p50[i].Y, g.p95[i].Y, g.p5[i].X), "p5 <= p50 <= p95")
		}
	}
	put(w, &t.children, g)
}
