package tables

import (
	"strings"
)

// Ground is what rolls and grips on one kind of ground, in a parent's words.
type Ground struct {
	Name    string
	Words   []string
	Rolling Value // length coefficient c_l of a hard wheel, m: F = W c_l / r
	// RubberRolling is the same for a rubber-faced (or foam-rubber) wheel.
	RubberRolling Value
	GripHard      Value // friction coefficient of hard plastic wheels, dry unless the name says wet
	GripRubber    Value // the same for rubber-faced wheels
	Loose         bool  // soft or loose ground, where the law F = W c_l / r is a stretch
	Source        string
}

// Ground looks a ground up by a parent's word for it: "short grass", "lawn",
// "gravel", "concrete" ...; case, hyphens and plurals do not matter. An
// unknown word fails with the list of the known ones.
func (t *Tables) Ground(word string) (Ground, error) {
	g, err := byWord(t.grounds, "ground", word, func(g Ground) []string { return g.Words })
	return g.copy(), err
}

// Grounds returns all kinds of ground, sorted by name.
func (t *Tables) Grounds() []Ground {
	return valuesOf(t.grounds, Ground.copy)
}

// RollingCoefficient returns the rolling resistance as a share of the weight
// for a wheel of this radius (m, > 0): c_l / r (Al-Eisawi et al. 1999). The
// law was measured on wheels up to [LargestHardWheelTest] across; larger ones
// are an extrapolation.
func (g Ground) RollingCoefficient(wheelRadiusM float64, rubber bool) Value {
	v := g.Rolling
	if rubber {
		v = g.RubberRolling
	}
	return v.Scale(1 / wheelRadiusM)
}

func (g Ground) copy() Ground {
	g.Words = clone(g.Words)
	return g
}

func readGround(t *Tables, w *row) {
	g := Ground{Name: strings.ReplaceAll(w.name(), "-", " "), Words: w.texts("words"), Loose: w.flag("loose"), Source: w.source()}
	millimetres := span{0.1, 200}
	g.Rolling = w.wanted("rolling_mm", millimetres).Scale(1e-3)
	if w.has("rolling_rubber_mm") {
		g.RubberRolling = w.value("rolling_rubber_mm", millimetres).Scale(1e-3)
	} else {
		w.asked = append(w.asked, "rolling_rubber_mm")
		share := t.Figure(RubberRollingShare)
		g.RubberRolling = Value{
			Low: g.Rolling.Low * share.Low, Likely: g.Rolling.Likely * share.Likely, High: g.Rolling.High * share.High,
			Source: share.Source,
		}
	}
	grip := span{0.01, 2}
	g.GripHard, g.GripRubber = w.wanted("grip_hard", grip), w.wanted("grip_rubber", grip)
	for i := range t.grounds {
		had := &t.grounds[i].Value
		for _, word := range append([]string{g.Name}, g.Words...) {
			for _, other := range append([]string{had.Name}, had.Words...) {
				if plainWord(word) == plainWord(other) {
					w.fault("words", word, "a word that is not taken by "+had.Name+" already")
				}
			}
		}
	}
	put(w, &t.grounds, g)
}
