// Package reckon answers a setup: it draws every vehicle that the setup may
// mean, weighs the draws by what was measured, has each computed and judged, and
// counts what holds in how many of them.
//
// The way is straight: setup, world, draws, one case each, one outcome each, the
// findings of each, shares and quantiles, the answer.
package reckon

import (
	"context"
	"fmt"
	"runtime"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// Options say how much is computed. The zero value is right for most uses.
type Options struct {
	Draws   int  // vehicles drawn; 0 = [UsualDraws]
	Ways    bool // whether ways out are searched where something is to be fixed first
	Workers int  // goroutines; 0 = one for each processor. The answer does not depend on it

	Context context.Context // of the call, looked at before each draw; nil is never done
}

// done is why nothing more is to be computed; nil as long as something is.
func (o Options) done() error {
	if o.Context == nil {
		return nil
	}
	return o.Context.Err()
}

// How many vehicles are drawn, how many of them tell minutes and speed of a way out, and
// how many are judged in full. With 2048 draws the 10, 50 and 90 % points of the main
// figures lie within 2 % of those of a hundred thousand: see "How exact the ends are" in
// DEVELOPERS.md. With 256 a share is known to 3 points (one standard error, at a half).
const (
	UsualDraws   = 2048
	LeastDraws   = 16
	MostDraws    = 1 << 20
	mostPromised = 1024
	mostJudged   = 256
)

// inside is the share of the draws inside a printed range, and lowP and highP
// its ends.
const inside, lowP, highP = 0.8, 0.1, 0.9

func (o Options) check() (Options, error) {
	if o.Draws == 0 {
		o.Draws = UsualDraws
	}
	if o.Draws < LeastDraws || o.Draws > MostDraws {
		return o, fmt.Errorf("packcheck: %d draws (want %d to %d)", o.Draws, LeastDraws, MostDraws)
	}
	if o.Workers <= 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	return o, nil
}

// begin checks what was asked for and draws the vehicles that the setup may mean.
func begin(s *setup.Setup, asked Options) (e *engine, d *drawn, o Options, err error) {
	if e, o, err = prepare(s, asked); err != nil {
		return nil, nil, o, err
	}
	d, err = e.draw(o)
	return e, d, o, err
}

// prepare is begin without the draws.
func prepare(s *setup.Setup, asked Options) (e *engine, o Options, err error) {
	if o, err = asked.check(); err != nil {
		return nil, o, err
	}
	e, err = newEngine(s)
	return e, o, err
}

// Assess answers a setup. What is not understood comes back as [setup.Faults];
// any other error means that the numbers, although each possible, cannot be
// computed together.
func Assess(s *setup.Setup, o Options) (*answer.Assessment, error) {
	return AssessShowing(s, o, func(*answer.Assessment) {})
}

// AssessShowing is [Assess] for somebody who waits: it shows the answer before ways
// out are searched, which take the longer, and again with each that is found.
func AssessShowing(s *setup.Setup, o Options, show func(*answer.Assessment)) (*answer.Assessment, error) {
	e, d, o, err := begin(s, o)
	if err != nil {
		return nil, err
	}
	if o.Ways && e.parts.Original != nil {
		for _, n := range []int{searchDraws, mostJudged} {
			places, _ := d.some(n)
			d.keepOriginals(places)
		}
	}
	t, err := e.compute(d, o)
	if err != nil {
		return nil, err
	}
	a, err := e.answer(s, d, t)
	if err != nil {
		return nil, err
	}
	if !o.Ways {
		return conclude(a), nil
	}
	showWith := func(found []answer.Way) {
		more := *a
		more.Ways, more.Buy = found, forWays(a.Buy, found, s.Values())
		show(conclude(&more))
	}
	showWith(nil)
	a.Ways, err = e.ways(s, d, a, o, showWith)
	a.Buy = forWays(a.Buy, a.Ways, s.Values())
	a.Sought = a.Verdict >= answer.FixFirst && e.parts.Bench == nil
	return conclude(a), err
}

// Representative is the case with every unknown at its median once all readings
// are weighed: what traces are made of.
func Representative(s *setup.Setup, o Options) (*Vehicle, error) {
	e, d, _, err := begin(s, o)
	if err != nil {
		return nil, err
	}
	return e.vehicle(d.median(e.world), nil, computed)
}
