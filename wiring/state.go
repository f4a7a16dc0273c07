package wiring

import (
	"math"

	"example.org/packcheck/internal/portable"
)

// FuseState follows a fuse through a duty. The zero value is a cold fuse.
//
// Above the hold current each step uses up the share dt/t of the fuse's life
// at that current, once with the earliest and once with the latest opening
// time (the linear damage rule); at and below it both shares fade within the
// rest that makers ask between pulses, 10 s to 5 percent. From 1 on, a fuse at
// the early edge of its band may have opened, one at the late edge must have.
//
// This is bookkeeping, not a heat model: gates are for steady currents, and
// no source gives them for changing ones. It errs to both sides on purpose,
// early in Early and late in Late. What fades in pauses that are short beside the
// opening times of a slow fuse would never open it, though; heat goes with the square of
// the current, so a fuse has opened at the latest when it would have at the root mean
// square of all that has flowed.
type FuseState struct {
	early, late float64
	mean        float64 // share used up at the late edge, at the root mean square
	a2s, timeS  float64
}

// fadeTauS makes a used-up share fall to 5 percent in 10 s, the rest between
// pulses of the fuse maker's selection guide (tables.PulseRest).
const fadeTauS = 10.0 / 3

// Step takes the fuse through dtS seconds (0 or more) at currentA. It does
// not allocate.
func (s *FuseState) Step(c *Curve, currentA, dtS float64) {
	s.a2s += currentA * currentA * dtS
	s.timeS += dtS
	s.mean = 0
	if most := c.MustOpenA(); s.a2s > most*most*s.timeS {
		s.mean = s.timeS / c.Opens(s.EffectiveA()).LatestS
	}
	band := c.Opens(currentA)
	if math.IsInf(band.EarliestS, 1) {
		fade := portable.Exp(-dtS / fadeTauS)
		s.early *= fade
		s.late *= fade
		return
	}
	if dtS > 0 {
		s.early += dtS / band.EarliestS
		s.late += dtS / band.LatestS
	}
}

// Early returns the share used up of a fuse at the early edge of its band.
func (s *FuseState) Early() float64 { return max(s.early, s.mean) }

// Late returns the share used up of a fuse at the late edge of its band.
func (s *FuseState) Late() float64 { return max(s.late, s.mean) }

// MayHaveOpened reports whether a fuse at the early edge has opened by now.
// It does not remember: note the first time it turns true. After a current that is
// no number it may have.
func (s *FuseState) MayHaveOpened() bool { return !(s.Early() < 1) }

// MustHaveOpened reports whether even a fuse at the late edge has opened.
func (s *FuseState) MustHaveOpened() bool { return s.Late() >= 1 }

// Lasts returns for how many rounds like the one since before the fuse stays as it
// is taken to be: neither edge opens, were what a round adds never to fade. +Inf
// where the round added nothing.
func (s *FuseState) Lasts(before *FuseState) float64 {
	rounds := math.Inf(1)
	for _, x := range [...][2]float64{{before.early, s.early}, {before.late, s.late}, {before.mean, s.mean}} {
		if was, now := x[0], x[1]; now > was && now < 1 {
			rounds = min(rounds, (1-now)/(now-was))
		}
	}
	return rounds
}

// Repeat takes the fuse through k more rounds like the one since before: what the
// round added is added again each time, what faded is gone. Of shares that near
// what the rounds keep them at that is too much, and fades again in the next.
func (s *FuseState) Repeat(before *FuseState, k int) {
	n := float64(k)
	s.early += n * max(s.early-before.early, 0)
	s.late += n * max(s.late-before.late, 0)
	s.mean += n * max(s.mean-before.mean, 0)
	s.a2s += n * (s.a2s - before.a2s)
	s.timeS += n * (s.timeS - before.timeS)
}

// EffectiveA returns the root mean square of the current so far: what heats
// wire and joints; 0 before the first step.
func (s *FuseState) EffectiveA() float64 {
	if !(s.timeS > 0) {
		return 0
	}
	return math.Sqrt(s.a2s / s.timeS)
}

// Reset makes the fuse cold again, as after a breaker has closed.
func (s *FuseState) Reset() { *s = FuseState{} }
