package trials_test

import (
	"cmp"
	"context"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// answeredSetup is one valid setup of the search with what its answer took.
type answeredSetup struct {
	values map[string]string
	ms, mb float64 // of processor time; allocated, given back on the way or not
}

// The dearest valid setups, sought at random over all keys and then by changing the
// dearest so far. PACKCHECK_CORNERS says how many are tried, PACKCHECK_SEED where to
// begin:
//
//	PACKCHECK_CORNERS=600 go test -run '^$' -bench DearestSetups -benchtime 1x ./internal/trials
//
// Each is answered from 64 draws, on one core (own choice). What counts is the ten
// dearest over the middle one with the usual number of draws, which are answered again
// for that.
func BenchmarkDearestSetups(b *testing.B) {
	n, err := strconv.Atoi(os.Getenv("PACKCHECK_CORNERS"))
	if err != nil {
		b.Skip("PACKCHECK_CORNERS=600 would have sought the dearest of 600 setups")
	}
	seed, _ := strconv.ParseUint(os.Getenv("PACKCHECK_SEED"), 10, 64)
	r := rand.New(rand.NewPCG(seed, 14))
	keys := slices.DeleteFunc(setup.Keys(), func(k setup.Key) bool { return k.What == "file" || k.What == "date" || k.What == "text" })
	names := slices.Sorted(maps.Keys(rigs()))
	var list []answeredSetup
	refused := 0
	for b.Loop() {
		for len(list) < n {
			values := maps.Clone(map[string]string(rigs()[names[r.IntN(len(names))]]))
			if len(list) > n/2 && r.IntN(8) > 0 { // the dearest come first
				values = maps.Clone(list[min(r.IntN(24), r.IntN(24))].values)
			}
			for range 1 + r.IntN(6) {
				k := keys[r.IntN(len(keys))]
				values[k.Path()] = anyValue(r, &k)
			}
			t, ok := answeredFrom(b, values, fewDraws)
			if !ok {
				refused++
				continue
			}
			at, _ := slices.BinarySearchFunc(list, t, func(a, b answeredSetup) int { return cmp.Compare(b.ms, a.ms) })
			list = slices.Insert(list, at, t)
		}
	}
	byMB := func(a, b answeredSetup) int { return cmp.Compare(a.mb, b.mb) }
	b.ReportMetric(list[0].ms/list[len(list)/2].ms, "dearest-over-median")
	b.ReportMetric(slices.MaxFunc(list, byMB).mb, "most-MB")
	b.Logf("%d setups answered, %d refused", len(list), refused)
	usual := func(from, to int) (all []answeredSetup) {
		for _, t := range list[max(0, from):min(to, len(list))] {
			t, _ = answeredFrom(b, t.values, reckon.UsualDraws)
			all = append(all, t)
		}
		slices.SortFunc(all, func(a, b answeredSetup) int { return cmp.Compare(b.ms, a.ms) })
		return all
	}
	middle := usual(len(list)/2-4, len(list)/2+5)
	median := middle[len(middle)/2].ms
	for i, t := range usual(0, 10) {
		if i == 0 {
			b.ReportMetric(t.ms/median, "dearest-over-median-usual")
		}
		b.Logf("%.1f ms (%.1f times the median), %.0f MB: %s", t.ms, t.ms/median, t.mb, keysAndValues(t.values))
	}
}

// fewDraws are enough to tell what takes long.
const fewDraws = 64

// answeredFrom answers a setup; ok is false where it is refused.
func answeredFrom(b *testing.B, values map[string]string, draws int) (t answeredSetup, ok bool) {
	b.Helper()
	s, err := setup.Of(values)
	if err != nil {
		return t, false
	}
	var before, after runtime.MemStats
	var from, to syscall.Rusage
	runtime.ReadMemStats(&before)
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &from); err != nil {
		b.Fatal(err)
	}
	if _, err = packcheck.AssessWith(context.Background(), s, packcheck.Options{Draws: draws, Workers: 1, Ways: true}); err != nil {
		return t, false
	}
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &to); err != nil {
		b.Fatal(err)
	}
	runtime.ReadMemStats(&after)
	t = answeredSetup{values: values, ms: float64(to.Utime.Nano()-from.Utime.Nano()) / 1e6, mb: float64(after.TotalAlloc-before.TotalAlloc) / (1 << 20)}
	return t, true
}

// amount is the first number of an example.
var amount = regexp.MustCompile(`[0-9]+(\.[0-9]+)?`)

// anyValue is a value that a key may have: a word, or its example times anything
// between a fifteenth and fifteen.
func anyValue(r *rand.Rand, k *setup.Key) string {
	switch {
	case len(k.Words) > 0:
		return k.Words[r.IntN(len(k.Words))]
	case k.What == "yes or no":
		return strconv.FormatBool(r.IntN(2) == 0)
	}
	factor := math.Exp(math.Log(15) * (2*r.Float64() - 1))
	return amount.ReplaceAllStringFunc(k.Example, func(x string) string {
		v, err := strconv.ParseFloat(x, 64)
		if err != nil {
			return x
		}
		if !strings.Contains(x, ".") && v < 20 {
			return fmt.Sprintf("%.0f", math.Ceil(v*factor))
		}
		return fmt.Sprintf("%.3g", v*factor)
	})
}

// keysAndValues lists keys and values.
func keysAndValues(values map[string]string) string {
	var out []string
	for _, key := range slices.Sorted(maps.Keys(values)) {
		out = append(out, key+" = "+values[key])
	}
	return strings.Join(out, "; ")
}
