package main

import (
	"bytes"
	"math"
	"strings"
	"testing"
)

// examples is where the command finds its setups, seen from here.
const examples = "../../../../examples"

// The whole way from readings to ranges, briefly: forty hidden vehicles of a
// stock 12 V one with no, one and three readings. Of eight in ten inside, 65 to
// 93 % pass: three standard errors of forty truths and five figures that hang
// together. The command does the same at length.
func TestHiddenVehiclesLieInsideTheirRanges(t *testing.T) {
	list, err := subjects(examples)
	if err != nil {
		t.Fatal(err)
	}
	c := settings{truths: 40, draws: 256, most: 100, workers: 2, noise: 1, seed: 3}
	const least, most = 0.65, 0.93
	last := math.Inf(1)
	for _, count := range []int{0, 1, 3} {
		ones, err := c.calibrate(&list[0], count)
		if err != nil {
			t.Fatal(err)
		}
		s := sum(ones)
		share := mean(s.inside)
		if share < least || share > most {
			t.Errorf("%d readings: %.0f %% of the truths inside the 80 %% range", count, 100*share)
		}
		if s.failed > 4 {
			t.Errorf("%d readings: %d of %d truths cannot be answered", count, s.failed, c.truths)
		}
		// It would not pass with ranges of half the width, nor with ones that hold
		// nearly everything.
		if narrow, wide := within(ones, 0.3, 0.7), within(ones, 0.01, 0.99); narrow >= least || wide <= most {
			t.Errorf("%d readings: ranges that are too narrow hold %.0f %%, too wide ones %.0f %%: the trial sees neither", count, 100*narrow, 100*wide)
		}
		if s.width[0] >= last {
			t.Errorf("minutes are no narrower with %d readings: %.1f, %.1f before", count, s.width[0], last)
		}
		last = s.width[0]
	}
}

func mean(list [len(paths)]float64) float64 {
	total := 0.0
	for _, x := range list {
		total += x
	}
	return total / float64(len(list))
}

// within is the share of all ranks between two ends.
func within(ones []one, low, high float64) float64 {
	in, all := 0.0, 0.0
	for i := range ones {
		for _, r := range ones[i].rank {
			if ones[i].failed || math.IsNaN(r) {
				continue
			}
			all++
			if low <= r && r <= high {
				in++
			}
		}
	}
	return in / all
}

func TestEvenRanksPassAndUnevenOnesDoNot(t *testing.T) {
	even, low := make([]one, 200), make([]one, 200)
	for i := range even {
		for k := range paths {
			even[i].rank[k] = (float64(i) + 0.5) / 200
			low[i].rank[k] = even[i].rank[k] * 0.8
		}
	}
	if p := sum(even).p[0]; p < 0.99 {
		t.Errorf("even ranks: p = %g", p)
	}
	if p := sum(low).p[0]; p > 0.01 {
		t.Errorf("ranks that are all too low: p = %g", p)
	}
}

func TestTheTableNamesEverySetupAndNumberOfReadings(t *testing.T) {
	var out bytes.Buffer
	if err := run([]string{"-examples", examples, "-truths", "4", "-draws", "64", "-most", "16", "-readings", "0"}, &out); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"stock 12 V by labels", "bench discharge", "tractor-tool-pack", "tractor-done-properly", "two-seater-tired-blocks"} {
		if !strings.Contains(out.String(), "| "+name+" | 0 | 4 |") {
			t.Errorf("no row of %s in\n%s", name, out.String())
		}
	}
}
