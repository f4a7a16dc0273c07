package ride

import (
	"math"

	"example.org/packcheck/battery"
	"example.org/packcheck/drive"
)

// Step lengths. They set the accuracy, not the result: the tests halve them
// and compare.
const (
	firstStepS  = 0.4 // after a start on plain contacts
	growth      = 8   // each step to the one before it
	longestS    = 30  // of a step of driving
	longestRest = 60  // of a pause
	rampSteps   = 8   // over each soft start
	onceBelowS  = 0.5 // shorter steps need no second look at the pack
	gridCap     = 48
)

// slot is one step of the grid, its propagators ready, used repeat times in a
// row.
type slot struct {
	dtS    float64
	duty   float64 // of a soft start at the middle of the step
	repeat int
	pack   battery.Step
	heat   drive.HeatStep
}

// grid is the sequence of steps of one drive or one pause.
type grid struct {
	slots [gridCap]slot
	n     int
}

func (g *grid) add(c *Case, dtS, duty float64, repeat int) {
	if dtS <= 0 || repeat < 1 || g.n == gridCap {
		return
	}
	g.slots[g.n] = newSlot(c, dtS, duty)
	g.slots[g.n].repeat = repeat
	g.n++
}

// newSlot prepares one step. A motor whose heat is not modelled keeps a zero
// propagator, which is never advanced.
func newSlot(c *Case, dtS, duty float64) slot {
	s := slot{dtS: dtS, duty: duty, repeat: 1, pack: c.Pack.Over(dtS)}
	if c.Vehicle.Motor.Thermal.Known() {
		s.heat = c.Vehicle.Motor.Thermal.Over(dtS)
	}
	return s
}

// spread adds lengthS in equal steps of at most stepS.
func (g *grid) spread(c *Case, lengthS, stepS, duty float64) {
	if lengthS <= 0 {
		return
	}
	n := math.Ceil(lengthS / stepS)
	g.add(c, lengthS/n, duty, int(n))
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
func (g *grid) drive(c *Case, stepScale float64) {
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
		if until <= t {
			continue
		}
		steps := math.Ceil(rampSteps / stepScale)
		dt := (until - t) / steps
		for range int(steps) {
			g.add(c, dt, duty(ctl, t+dt/2), 1)
			t += dt
		}
	}
	for dt := firstStepS * stepScale; t < c.DriveS && dt < longestS*stepScale && g.n < gridCap-2; dt *= growth {
		dt = min(dt, c.DriveS-t)
		g.add(c, dt, 1, 1)
		t += dt
	}
	g.spread(c, c.DriveS-t, longestS*stepScale, 1)
}

// pause fills the grid for one lift of the pedal.
func (g *grid) pause(c *Case, stepScale float64) {
	g.n = 0
	g.spread(c, c.PauseS, longestRest*stepScale, 0)
}
