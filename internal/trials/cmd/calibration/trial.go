package main

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"sync"
	"sync/atomic"

	"example.org/packcheck/internal/draws"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// paths are the figures that are held against the truth.
var paths = [...]string{"ride.lasts_pedal_min", "steady.speed_kmh", "launch.peak_battery_a", "steady.battery_a", "pack.usable_ah"}

// names of paths, short.
var names = [...]string{"minutes", "speed", "launch A", "lasting A", "usable Ah"}

// settings say how a calibration is done.
type settings struct {
	truths, draws, most, workers int
	normal                       bool    // errors follow the normal law instead of Student's with 4 degrees of freedom
	noise                        float64 // errors over those that the answer assumes
	seed                         uint64
	leastRead, mostRead          int // readings
}

// one is what one answer came to.
type one struct {
	inside [len(paths)]bool
	rank   [len(paths)]float64
	width  [len(paths)]float64
	back   int // readings that came back within their error
	named  int // readings that are named in a conflict
	read   int
	runs   int
	rough  bool
	failed bool // refused or impossible to answer
}

// calibrate answers truths of a subject with the first so many of its readings.
func (c *settings) calibrate(s *subject, count int) ([]one, error) {
	keys := s.reads[:count]
	hidden, err := newHider(s, keys)
	if err != nil {
		return nil, err
	}
	var prior *reckon.Drawn
	if count == 0 { // the same for all truths
		if prior, err = c.answer(s.text, c.draws); err != nil {
			return nil, err
		}
	}
	out, errs := make([]one, c.truths), make([]error, c.truths)
	var next atomic.Int64
	var wait sync.WaitGroup
	for range max(1, c.workers) {
		wait.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= c.truths {
					return
				}
				out[i], errs[i] = c.try(s, keys, hidden, prior, c.random(i))
			}
		})
	}
	wait.Wait()
	return out, errors.Join(errs...)
}

// random are the numbers of one truth.
func (c *settings) random(i int) *rand.Rand {
	var seed [32]byte
	binary.LittleEndian.PutUint64(seed[:], c.seed)
	binary.LittleEndian.PutUint64(seed[8:], uint64(i))
	return rand.New(rand.NewChaCha8(seed))
}

// answer makes the draws of an answer.
func (c *settings) answer(text string, most int) (*reckon.Drawn, error) {
	s, err := setup.Read(strings.NewReader(text), "calibration.toml")
	if err != nil {
		return nil, err
	}
	return reckon.Draw(s, reckon.Options{Draws: c.draws, Workers: 1}, most, paths[:])
}

// try hides one truth, reads it and holds the answer against it.
func (c *settings) try(s *subject, keys []string, h *hider, prior *reckon.Drawn, random *rand.Rand) (one, error) {
	var o one
	z, shown := h.hide(random)
	truth, err := h.trial.Figures(z, paths[:])
	if err != nil {
		return o, err
	}
	drawn := prior
	if len(keys) > 0 {
		drawn, err = c.answer(s.with(keys, c.readOff(shown, random)), c.most)
		var faults setup.Faults
		if errors.As(err, &faults) { // such volts are refused before anything is computed
			o.failed = true
			return o, nil
		}
		if err != nil {
			return o, err
		}
	}
	for k := range paths {
		if math.IsNaN(truth[k]) {
			o.rank[k] = math.NaN()
			continue
		}
		p := draws.SpreadOf(drawn.Values[k], drawn.Weight)
		o.inside[k] = p.P10 <= truth[k] && truth[k] <= p.P90
		o.width[k] = p.P90 - p.P10
		o.rank[k] = rank(drawn.Values[k], drawn.Weight, truth[k], random.Float64())
	}
	o.runs, o.rough = drawn.Runs, drawn.Rough
	for _, r := range drawn.Readings {
		o.read++
		switch {
		case drawn.Conflict != nil && contains(drawn.Conflict.Readings, r.Key):
			o.named++
		case r.Fits:
			o.back++
		}
	}
	return o, nil
}

// readOff is what a vehicle shows, with errors.
func (c *settings) readOff(shown []reckon.Shown, random *rand.Rand) []string {
	values := make([]string, len(shown))
	for i, r := range shown {
		off := c.noise * c.errorOf(random)
		v := r.Value * math.Exp(r.Err*off)
		if r.Linear {
			v = r.Value + r.Err*off
		}
		values[i] = fmt.Sprintf("%.9g %s", v, r.Unit) // three decimals could be read as thousands
	}
	return values
}

func contains(list []string, x string) bool {
	for _, s := range list {
		if s == x {
			return true
		}
	}
	return false
}

// errorOf returns the error of a reading over its standard error.
func (c *settings) errorOf(random *rand.Rand) float64 {
	x := random.NormFloat64()
	if c.normal {
		return x
	}
	square := 0.0
	for range 4 {
		y := random.NormFloat64()
		square += y * y
	}
	return x / math.Sqrt(square/4)
}

// rank is the share of the weight below the truth; what equals it counts in part.
func rank(values, weight []float64, truth, part float64) float64 {
	below, equal, all := 0.0, 0.0, 0.0
	for i, v := range values {
		switch {
		case math.IsNaN(v):
			continue
		case v < truth:
			below += weight[i]
		case v == truth:
			equal += weight[i]
		}
		all += weight[i]
	}
	return (below + part*equal) / all
}

// hider draws truths from the world of a subject.
type hider struct {
	trial *reckon.Trial // with all readings
	volts *reckon.Trial // with all but the current: volts are read at the truth's own
	keys  []string
}

func newHider(s *subject, keys []string) (*hider, error) {
	h := &hider{keys: keys}
	var err error
	if h.trial, err = trialOf(s.placeholders(keys)); err != nil {
		return nil, err
	}
	var rest []string
	for _, k := range keys {
		if k != "measured.loaded_current" {
			rest = append(rest, k)
		}
	}
	h.volts, err = trialOf(s.placeholders(rest))
	return h, err
}

func trialOf(text string) (*reckon.Trial, error) {
	s, err := setup.Read(strings.NewReader(text), "truth.toml")
	if err != nil {
		return nil, err
	}
	return reckon.NewTrial(s)
}

// hide draws a truth. One that was read is one that runs.
func (h *hider) hide(random *rand.Rand) ([]float64, []reckon.Shown) {
	for {
		z := make([]float64, h.trial.Dims())
		for i := range z {
			z[i] = min(max(random.NormFloat64(), -draws.Clip), draws.Clip)
		}
		if len(h.keys) == 0 {
			return z, nil
		}
		list, ok := h.trial.Show(z)
		own, okVolts := h.volts.Show(z)
		if !ok || !okVolts {
			continue
		}
		byKey := map[string]reckon.Shown{}
		for _, r := range list {
			byKey[r.Key] = r
		}
		for _, r := range own {
			if strings.HasSuffix(r.Key, ".loaded_voltage") {
				byKey[r.Key] = r
			}
		}
		out := make([]reckon.Shown, len(h.keys))
		for i, k := range h.keys {
			out[i] = byKey[k]
		}
		return z, out
	}
}
