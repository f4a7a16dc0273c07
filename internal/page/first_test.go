package page_test

import (
	"maps"
	"math"
	"slices"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/internal/page"
	"example.org/packcheck/setup"
)

// The first answer, from few vehicles, lies where the last one does: the likely
// values move by less than a share of their range that goes with the error stated,
// and no danger goes away.
func TestTheFirstAnswerIsNotFarFromTheLast(t *testing.T) {
	slow(t)
	all := twenty()
	turned := 0
	for _, name := range slices.Sorted(maps.Keys(all)) {
		s, err := setup.Of(all[name])
		if err != nil {
			t.Fatal(err)
		}
		few, err := packcheck.AssessWith(t.Context(), s, packcheck.Options{Draws: page.FewDraws})
		if err != nil {
			t.Fatal(err)
		}
		many, err := packcheck.AssessWith(t.Context(), s, packcheck.Options{Draws: page.ManyDraws})
		if err != nil {
			t.Fatal(err)
		}
		for _, path := range []string{"ride.lasts_pedal_min", "steady.speed_kmh", "launch.peak_battery_a"} {
			a, b := few.Ranges[path], many.Ranges[path]
			if !(b.High > b.Low) {
				continue
			}
			// The median is off by one standard error of a share of a half, in ranks; a
			// range holds 0.8 of them. Three such errors.
			if moved := math.Abs(a.Likely-b.Likely) / (b.High - b.Low); moved > 3*few.Draws.ShareErr/0.8 {
				t.Errorf("%s: %s moves from %.3g to %.3g, by %.2f of its range", name, path, a.Likely, b.Likely, moved)
			}
		}
		if few.Verdict != many.Verdict {
			turned++
			t.Logf("%s: first %v, then %v", name, few.Verdict, many.Verdict)
		}
	}
	if turned > 2 {
		t.Errorf("the verdict of %d in %d turns from the first answer to the last", turned, len(all))
	}
}
