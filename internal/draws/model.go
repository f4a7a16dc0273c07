package draws

import (
	"errors"
	"fmt"
	"math"
	"runtime"
	"sync"
	"sync/atomic"
)

// Model foretells the readings of one draw: z is the draw, one standard normal
// number for each unknown, within [Clip] either way; out takes one prediction
// for each reading, in the scale of [Reading]. It reports whether the thing
// that was read runs at all: a draw that does not run cannot have been read
// and gets the weight 0, as does one with a prediction that is not finite.
//
// It is called from several goroutines at once, never twice at once with the
// same worker, which counts from 0 to below [Options].Workers; it must give
// the same predictions for the same z, whatever the worker. It must not keep
// or change z.
type Model func(worker int, z, out []float64) bool

// Reading is something that was read, in the scale in which its error is the
// same everywhere: the logarithm of a positive figure with a relative error,
// volts as they are.
type Reading struct {
	Value float64 // finite
	Err   float64 // standard error, above 0; of the middle of the law where the tails are heavy
}

// ErrStandsStill says that not one draw runs, so that nothing can have been
// read.
var ErrStandsStill = errors.New("none of the draws runs, so none can have given the readings: give the figures that keep it from running")

// check returns what is wrong with a question.
func check(dims int, m Model, readings []Reading) error {
	if dims < 0 {
		return fmt.Errorf("%d unknowns: want 0 or more", dims)
	}
	if m == nil && len(readings) > 0 {
		return fmt.Errorf("%d readings and no model: want one that foretells them", len(readings))
	}
	for i, r := range readings {
		switch {
		case math.IsNaN(r.Value) || math.IsInf(r.Value, 0):
			return fmt.Errorf("reading %d is %v: want a finite number", i, r.Value)
		case !(r.Err > 0) || math.IsInf(r.Err, 0):
			return fmt.Errorf("reading %d has a standard error of %v: want a finite number above 0", i, r.Err)
		}
	}
	return nil
}

// workersOf is the number of goroutines: 0 or less means one for each core.
func workersOf(n int) int {
	if n <= 0 {
		return runtime.GOMAXPROCS(0)
	}
	return n
}

// batch is how many draws a worker takes at once: few enough that none waits
// long for another, many enough that taking costs nothing.
const batch = 8

// runAll foretells the readings of every draw, on the given number of
// goroutines, and stores by position. ok tells which draws run.
func runAll(m Model, z, out [][]float64, ok []bool, workers int) {
	one := func(worker, i int) {
		ok[i] = m(worker, z[i], out[i])
		for _, v := range out[i] {
			ok[i] = ok[i] && !math.IsNaN(v) && !math.IsInf(v, 0)
		}
	}
	workers = min(workers, (len(z)+batch-1)/batch)
	if workers <= 1 {
		for i := range z {
			one(0, i)
		}
		return
	}
	var next atomic.Int64
	var all sync.WaitGroup
	for worker := range workers {
		all.Go(func() {
			for {
				start := int(next.Add(batch)) - batch
				if start >= len(z) {
					return
				}
				for i := start; i < min(start+batch, len(z)); i++ {
					one(worker, i)
				}
			}
		})
	}
	all.Wait()
}
