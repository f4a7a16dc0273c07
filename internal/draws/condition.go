package draws

import (
	"fmt"
	"math"
)

// Options say how much work [Condition] takes on. The zero value of each field
// stands for the figure beside it.
type Options struct {
	Prior      int     // draws from what was known before any reading; 256
	Round      int     // draws of each later round; 256
	MostRounds int     // rounds after the first draws, at most, and three times as many where the answer would be rough; 8
	Enough     float64 // effective number of draws that ends the rounds; 200
	Workers    int     // goroutines; one for each core
	Freedom    float64 // degrees of freedom of the errors' Student law; 4; +Inf for normal errors

	Choices  []Choice // unknowns that pick alternatives; none
	Scramble uint64   // where the points lie, see [PointsAt]
}

// RoughBelow is the effective number of draws below which an answer is rough: common
// practice, no published source, and tried on vehicles.
const RoughBelow = 100

// The defaults of [Options]: from the same.
const (
	defaultPrior   = 256
	defaultRound   = 256
	defaultRounds  = 8
	defaultEnough  = 200
	defaultFreedom = 4
	leastRounds    = 2
	patience       = 3 // times as many rounds at most where the answer would still be rough
)

func (o Options) filled() (Options, error) {
	switch {
	case o.Prior < 0 || o.Round < 0 || o.MostRounds < 0:
		return o, fmt.Errorf("%d first draws, %d in a round, %d rounds: want 0 or more of each", o.Prior, o.Round, o.MostRounds)
	case o.Enough < 0 || math.IsNaN(o.Enough):
		return o, fmt.Errorf("%v effective draws wanted: want 0 or more", o.Enough)
	case o.Freedom < 0 || math.IsNaN(o.Freedom):
		return o, fmt.Errorf("%v degrees of freedom: want a number above 0", o.Freedom)
	}
	for _, f := range []struct {
		is  *int
		def int
	}{{&o.Prior, defaultPrior}, {&o.Round, defaultRound}, {&o.MostRounds, defaultRounds}} {
		if *f.is == 0 {
			*f.is = f.def
		}
	}
	if o.Enough == 0 {
		o.Enough = defaultEnough
	}
	if o.Freedom == 0 {
		o.Freedom = defaultFreedom
	}
	o.Workers = workersOf(o.Workers)
	return o, nil
}

// Posterior is what is known after the readings: draws with weights.
type Posterior struct {
	Z         [][]float64 // the draws, clipped at [Clip]; a row each
	Weight    []float64   // of each draw, sum 1
	Predicted [][]float64 // what each draw foretells of the readings; nil where it does not run
	Effective float64     // number of equal draws that would tell as much: 1 / sum of squared weights
	Runs      int         // how often the model was asked
	Rounds    int         // rounds after the first draws

	from *sampler
}

// Condition weighs draws of dims unknowns by how well the model foretells the
// readings. Before any reading every unknown is a standard normal number of
// its own. Without readings all draws weigh the same, and the model is not
// asked; ask for 1,024 first draws then.
//
// The errors of the readings follow Student's law, so that a gross error loses
// its hold instead of bending everything else. The first draws are [Points];
// then each round draws from the normal law that a regression of all draws so
// far gives, widened where the readings speak, and all draws are weighed
// together by the mixture from which they came (J.-M. Cornuet, J.-M. Marin,
// A. Mira and C. Robert, Adaptive multiple importance sampling, Scand. J.
// Statist. 39 (2012) 798-812), so that no early draw is lost and no weight runs
// away. It ends after two rounds or more, when the effective number is enough.
//
// The same question gives the same answer, bit for bit, whatever the workers.
// It fails on a reading that is not finite or has no error, and with
// [ErrStandsStill] when no draw runs.
func Condition(dims int, m Model, readings []Reading, o Options) (*Posterior, error) {
	if err := check(dims, m, readings); err != nil {
		return nil, err
	}
	o, err := o.filled()
	if err != nil {
		return nil, err
	}
	choices, err := checkChoices(o.Choices, dims)
	if err != nil {
		return nil, err
	}
	s := &sampler{dims: dims, model: m, readings: readings, options: o, choices: choices}
	s.add(normalPoints(o.Prior, dims, seedPoints^o.Scramble, 0))
	p := &Posterior{from: s}
	return p, p.Grow(o.Enough, o.MostRounds)
}

// Grow adds rounds until the effective number reaches enough or the posterior
// has had mostRounds altogether; without readings a round is so many more
// [Points]. Growing in two steps gives the same draws as growing in one.
func (p *Posterior) Grow(enough float64, mostRounds int) error {
	s := p.from
	for {
		p.Weight, p.Effective = s.weights(1)
		if p.Effective == 0 {
			return ErrStandsStill
		}
		if p.Rounds >= mostRounds && (p.Effective >= RoughBelow || p.Rounds >= patience*mostRounds) || len(s.readings) == 0 && p.Effective >= enough ||
			p.Effective >= enough && p.Rounds >= leastRounds {
			break
		}
		if len(s.readings) == 0 {
			s.extendPrior()
		} else {
			s.round(p.Rounds, p.Effective)
		}
		p.Rounds++
	}
	p.Z, p.Predicted, p.Runs = s.z, s.predicted, s.runs
	return nil
}
