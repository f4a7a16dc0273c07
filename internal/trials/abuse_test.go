package trials_test

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// Every key at the ends of its bounds, on a setup of labels, on one that says
// everything, and on a bench load.
func TestAnyOneKeyAtItsExtremesGivesFaultsOrAConsistentAnswer(t *testing.T) {
	// The original would be computed again each time; the keys at random have it.
	full := doneProperly(t).without("original.pack", "original.controller")
	bases := map[string]sheet{"labels": labelsOnly(), "full": full, "bench": benchLoad()}
	// Where everything else is a guess, or there is no vehicle, the ends of
	// what matters there will do.
	ends := func(i int) bool { return i == 0 || i == 2 }
	forBench := []string{"pack", "load", "cutoff.module", "outing", "charger", "measured"}
	byTable := map[string][]setup.Key{}
	for _, k := range setup.Keys() {
		byTable[k.Table] = append(byTable[k.Table], k)
	}
	for _, table := range slices.Sorted(maps.Keys(byTable)) {
		t.Run(table, func(t *testing.T) {
			t.Parallel()
			count, row := 0, -1
			for _, k := range byTable[table] {
				for i, value := range extremes(t, k) {
					for _, name := range slices.Sorted(maps.Keys(bases)) {
						if name == "labels" && !ends(i) || name == "full" && i != 2 && quantity.KindNamed(k.What) != quantity.NoKind || name == "bench" && (!ends(i) || !slices.Contains(forBench, table)) {
							continue
						}
						if row++; !tried(row) {
							continue
						}
						what := name + " with " + k.Path() + " = " + value
						a := assessed(t, what, bases[name].with(k.Path(), value).toml())
						if a == nil {
							continue
						}
						consistent(t, what, a)
						if count++; count%10 == 1 {
							everyFormat(t, what, a)
						}
					}
				}
			}
		})
	}
}

// Several keys at once, drawn at random but the same on every run.
func TestManyKeysAtRandomGiveFaultsOrAConsistentAnswer(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(1, 2))
	full := doneProperly(t)
	tired := sheetOf(t, "../../examples/two-seater-tired-blocks.toml")
	bases := []sheet{labelsOnly(), full, tired, benchLoad(), full.without("fuse", "charger", "cutoff.module")}
	keys := setup.Keys()
	n, answered := 25, 0
	if os.Getenv("PACKCHECK_SLOW") != "" {
		n = 80
	}
	for i := range n {
		s := bases[i%len(bases)]
		var what []string
		for range 1 + random.IntN(6) {
			k := keys[random.IntN(len(keys))]
			values := extremes(t, k)
			if len(values) == 0 {
				continue
			}
			value := values[random.IntN(len(values))]
			if low, high := bounds(t, k); quantity.KindNamed(k.What) != quantity.NoKind && quantity.KindNamed(k.What) != quantity.Count && quantity.KindNamed(k.What) != quantity.Gauge && random.IntN(2) == 0 {
				at := func() float64 { return low + (high-low)*math.Pow(random.Float64(), 6) }
				a, b := at(), at()
				value = written(k, a)
				if random.IntN(3) == 0 {
					value = written(k, min(a, b), max(a, b))
				}
			}
			path := k.Path()
			if k.Table != "" && random.IntN(4) == 0 {
				path = "original." + path
			}
			s = s.with(path, value)
			what = append(what, path+" = "+value)
		}
		name := fmt.Sprintf("%d: %s", i%len(bases), strings.Join(what, "; "))
		a := assessed(t, name, s.toml())
		if a == nil {
			continue
		}
		answered++
		consistent(t, name, a)
		if i%10 == 0 {
			everyFormat(t, name, a)
		}
	}
	t.Logf("%d of %d answered", answered, n)
}
