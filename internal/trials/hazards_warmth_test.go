package trials_test

import (
	"fmt"
	"os"
	"slices"
	"testing"

	"example.org/packcheck/answer"
)

// Away from the mild, to either side, a battery that was read after a drive is never
// told milder.
func TestABatteryReadHotterOrColderIsNeverToldMilder(t *testing.T) {
	t.Parallel()
	stepC := 10
	if os.Getenv("PACKCHECK_LADDER") != "" {
		stepC = 1
	}
	for i, base := range []string{"lithium", "iron", "block", "labels", "pair", "swap"} {
		if !tried(i) {
			continue
		}
		t.Run(base, func(t *testing.T) {
			t.Parallel()
			const mildC, coldC, hotC = 25, -20, 90
			var colder, hotter []int
			for c := mildC; c >= coldC; c -= stepC {
				colder = append(colder, c)
			}
			for c := mildC; c <= hotC; c += stepC {
				hotter = append(hotter, c)
			}
			for _, ladder := range [][]int{colder, hotter} {
				above, aboveC := answer.Fine, mildC
				for _, tempC := range ladder {
					a, err := rigNamed(t, base).but(fmt.Sprintf("measured.pack_temperature=%d C", tempC)).assess(16)
					if err != nil {
						t.Fatal(err)
					}
					level := answer.Worst(slices.DeleteFunc(slices.Clone(a.Findings), func(f answer.Finding) bool {
						return !slices.Contains(f.Decides, answer.KeyMeasuredPackTemperature)
					}))
					if level < above {
						t.Errorf("%d C: %v, but %v at %d C", tempC, level, above, aboveC)
					}
					if level != above || tempC == mildC {
						t.Logf("%d C: %v %v", tempC, level, findingsAt(a, watch))
					}
					above, aboveC = level, tempC
				}
			}
		})
	}
}
