package cutoff_test

import (
	"math"
	"slices"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/cutoff"
)

// onWeakest returns what is found on the weakest cell, of a pack whose weakest
// cell is short by a share of its capacity, behind a cutoff.
func onWeakest(t testing.TB, chemistry string, cells int, short, opensV float64) []answer.Finding {
	t.Helper()
	m := pack(t, chemistry, cells, 5, func(s *battery.Spec) { s.WeakestShort = short })
	f := follow(t, under(t, m, 1, 5, opens(cutoff.Pack, opensV)))
	if !f.Opened {
		t.Fatalf("%s, %g short: nothing opens at %g V", chemistry, short, opensV)
	}
	return slices.DeleteFunc(f.Findings, func(f answer.Finding) bool {
		return f.Code != cutoff.CodeWeakCellHarmed && f.Code != cutoff.CodeWeakCellReversed
	})
}

// The pack's volts are the same each time; only the cell that they hide differs.
func TestAWeakerCellIsJudgedNoMilder(t *testing.T) {
	for _, c := range []struct {
		chemistry string
		cells     int
		opensV    float64
		first     float64 // share that is sound
		last      float64 // share at which it is driven backwards
	}{
		{"li-ion", 5, 15, 0.001, 0.15},
		{"lifepo4", 4, 10.8, 0.001, 0.2},
		{"agm", 6, 10.5, 0.01, 0.5},
	} {
		if fs := onWeakest(t, c.chemistry, c.cells, c.first, c.opensV); len(fs) != 0 {
			t.Errorf("%s, a cell %g short: %+v", c.chemistry, c.first, fs)
		}
		rank := map[string]int{cutoff.CodeWeakCellHarmed: 1, cutoff.CodeWeakCellReversed: 2}
		level, code := answer.Fine, 0
		for short := c.first; short <= c.last+1e-9; short += 0.01 {
			fs := onWeakest(t, c.chemistry, c.cells, short, c.opensV)
			if len(fs) > 1 {
				t.Fatalf("%s, %.2f short: one cell is judged twice: %+v", c.chemistry, short, fs)
			}
			now, found := answer.Worst(fs), 0
			if len(fs) == 1 {
				found = rank[fs[0].Code]
			}
			if now < level || found < code {
				t.Errorf("%s: a cell %.2f short is judged milder than one less short: %+v", c.chemistry, short, fs)
			}
			level, code = now, found
		}
		if code != rank[cutoff.CodeWeakCellReversed] {
			t.Errorf("%s: a cell %g short is not found to be driven backwards", c.chemistry, c.last)
		}
	}
}

// Arithmetic: one cell has no others that could hide it or drive it backwards.
func TestASingleCellHasNoWeakerOne(t *testing.T) {
	if fs := onWeakest(t, "li-ion", 1, 0.3, 3); len(fs) != 0 {
		t.Errorf("%+v", fs)
	}
}

// Of a cell that nobody knows the worst is taken.
func TestACellOfNoPackIsOnTheLowestRung(t *testing.T) {
	m := pack(t, "agm", 6, 7, nil)
	for name, w := range map[string]cutoff.Weakest{
		"no pack":        cutoff.WeakestAt(nil, battery.State{}, 5),
		"no charge":      cutoff.WeakestAt(m, m.StateAt(math.NaN(), 20), 5),
		"no temperature": cutoff.WeakestAt(m, m.StateAt(1, math.NaN()), 5),
		"no current":     cutoff.WeakestAt(m, m.StateAt(1, 20), math.NaN()),
	} {
		if w.Rung != cutoff.NeverAgain || !math.IsNaN(w.CellV) || w.Reversed {
			t.Errorf("%s: %+v", name, w)
		}
	}
}
