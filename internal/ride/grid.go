package ride

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/drive"
)

// Step lengths. They set the accuracy, not the result: the tests take them
// finer and compare.
const (
	firstStepS  = 0.7  // behind a start ...
	growth      = 3.0  // ... and how much longer each of the next ones is
	longestS    = 30.0 // of a step of driving
	longestRest = 60.0 // of a pause
	rampSteps   = 2    // over each soft start
	gridCap     = 8
	leastS      = 1e-6 // what rounding has left is no step
)

// slot is one step of the grid, its propagators ready, used repeat times in a
// row.
type slot struct {
	dtS    float64
	perS   float64 // 1 / dtS
	repeat int
	pack   battery.Step
	heat   drive.HeatStep
	heated bool // the motors' heat is modelled
	told   foretold
	rough  bool // too much changed within it for one step
}

// halve makes two steps of each.
func (s *slot) halve(c *Case) {
	repeat, told := 2*s.repeat, s.told.share(0.5)
	*s = newSlot(c, s.dtS/2)
	s.repeat, s.told = repeat, told
}

// grid is the sequence of steps of one drive or one pause.
type grid struct {
	slots [gridCap]slot
	n     int
}

// add appends a step, so many times in a row.
func (g *grid) add(c *Case, dtS float64, repeat int) {
	if dtS <= 0 || repeat < 1 || g.n == gridCap {
		return
	}
	g.slots[g.n] = newSlot(c, dtS)
	g.slots[g.n].repeat = repeat
	g.n++
}

// newSlot prepares one step. A motor whose heat is not modelled keeps a zero
// propagator, which is never advanced.
func newSlot(c *Case, dtS float64) slot {
	s := slot{dtS: dtS, perS: 1 / dtS, repeat: 1, pack: c.Pack.Over(dtS), heated: c.Load.Kind == NoLoad && c.Vehicle.Motor.Thermal.Known()}
	if s.heated {
		s.heat = c.Vehicle.Motor.Thermal.Over(dtS)
	}
	return s
}

// spread adds lengthS in equal steps of at most stepS, each parted finer.
func (g *grid) spread(c *Case, lengthS, stepS float64, finer int) {
	if lengthS < leastS {
		return
	}
	n := math.Ceil(lengthS/stepS) * float64(finer)
	g.add(c, lengthS/n, int(n))
}

// ramp adds a soft start of such a length. Its steps differ much, so that each keeps
// its own memory of what it came to.
func (g *grid) ramp(c *Case, lengthS float64, finer int) {
	for range rampSteps {
		g.spread(c, lengthS/rampSteps, lengthS, finer)
	}
}

// duty is what the soft starts of module and controller let through together
// at time t after the pedal went down.
func duty(c *drive.Controller, tS float64) float64 {
	d := 1.0
	if c.Chopper && c.RampS > 0 {
		d *= min(1, tS/c.RampS)
	}
	if c.ModuleRampS > 0 {
		d *= min(1, tS/c.ModuleRampS)
	}
	return d
}

// drive fills the grid for one press of the pedal.
func (g *grid) drive(c *Case, finer int) {
	g.n = 0
	ctl := &c.Controller
	rampA, rampB := 0.0, ctl.ModuleRampS
	if ctl.Chopper {
		rampA = ctl.RampS
	}
	if rampA > rampB {
		rampA, rampB = rampB, rampA
	}
	t := 0.0
	for _, until := range [2]float64{min(rampA, c.DriveS), min(rampB, c.DriveS)} {
		if until > t {
			g.ramp(c, until-t, finer)
			t = until
		}
	}
	for step := firstStepS; g.n < gridCap-1 && step < longestS && t < c.DriveS; step *= growth {
		step = min(step, c.DriveS-t)
		g.spread(c, step, step, finer)
		t += step
	}
	g.spread(c, c.DriveS-t, longestS, finer)
}

// pause fills the grid for one lift of the pedal.
func (g *grid) pause(c *Case, finer int) {
	g.n = 0
	g.spread(c, c.PauseS, longestRest, finer)
}
