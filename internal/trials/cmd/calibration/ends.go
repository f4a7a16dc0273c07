package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// points of a range whose error is told.
var points = [...]float64{0.1, 0.5, 0.9}

// ends prints how far the 10, 50 and 90 % points of an answer lie from those of many
// draws, over several placings of the draws: any one of them is lucky or unlucky.
// Readings are those of hidden vehicles.
func (c *settings) ends(out io.Writer, s *subject, placings, many int) error {
	for _, count := range c.counts(s) {
		text, err := c.oneRead(s, s.reads[:count])
		if err != nil {
			return err
		}
		reference, err := c.placed(text, many, 1<<20)
		if err != nil {
			return err
		}
		var list []placing
		for i := range placings {
			got, err := c.placed(text, c.draws, uint64(i))
			if err != nil {
				return err
			}
			list = append(list, offBy(got, reference))
		}
		told(out, s.name, count, list)
	}
	return nil
}

// placing is by what share each point of each figure is off.
type placing struct {
	off  [len(paths)][len(points)]float64
	runs int
}

// oneRead is the setup with readings of one hidden vehicle.
func (c *settings) oneRead(s *subject, keys []string) (string, error) {
	if len(keys) == 0 {
		return s.text, nil
	}
	hidden, err := newHider(s, keys)
	if err != nil {
		return "", err
	}
	random := c.random(0)
	_, shown := hidden.hide(random)
	return s.with(keys, c.readOff(shown, random)), nil
}

// placed makes the draws of an answer from one placing of the points.
func (c *settings) placed(text string, n int, scramble uint64) (*reckon.Drawn, error) {
	s, err := setup.Read(strings.NewReader(text), "ends.toml")
	if err != nil {
		return nil, err
	}
	return reckon.DrawAt(s, reckon.Options{Draws: n, Workers: c.workers}, scramble, n, paths[:])
}

func offBy(got, reference *reckon.Drawn) (p placing) {
	for k := range paths {
		for j, at := range points {
			p.off[k][j] = draws.Quantile(got.Values[k], got.Weight, at)/draws.Quantile(reference.Values[k], reference.Weight, at) - 1
		}
	}
	p.runs = got.Runs
	return p
}

// told writes a row: of each figure the root mean square of what each point is off,
// then the median and the worst placing of the worst point.
func told(out io.Writer, name string, readings int, list []placing) {
	fmt.Fprintf(out, "| %s | %d |", name, readings)
	var worst []float64
	inside, all, runs := 0, 0, 0
	for _, p := range list {
		most := 0.0
		for k := range paths {
			for j := range points {
				if off := math.Abs(p.off[k][j]); !math.IsNaN(off) {
					most = max(most, off)
					all++
					if off <= 0.02 {
						inside++
					}
				}
			}
		}
		worst = append(worst, most)
		runs += p.runs
	}
	for k := range paths {
		for j := range points {
			square := 0.0
			for _, p := range list {
				square += p.off[k][j] * p.off[k][j]
			}
			if rms := math.Sqrt(square / float64(len(list))); math.IsNaN(rms) {
				fmt.Fprint(out, " -")
			} else {
				fmt.Fprintf(out, " %.1f", 100*rms)
			}
		}
		fmt.Fprint(out, " |")
	}
	slices.Sort(worst)
	fmt.Fprintf(out, " %.1f | %.1f | %.0f %% | %d |\n", 100*draws.Quantile(worst, nil, 0.5), 100*worst[len(worst)-1], 100*float64(inside)/float64(all), runs/len(list))
}

func endsHeader(out io.Writer) {
	fmt.Fprint(out, "| setup | readings |")
	for _, name := range names {
		fmt.Fprintf(out, " %s |", name)
	}
	fmt.Fprintln(out, " worst point: median | worst | within 2 % | runs |")
	fmt.Fprintln(out, "|---|---|---|---|---|---|---|---|---|---|---|")
}
