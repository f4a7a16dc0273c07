package cutoff

import (
	"fmt"
	"math"
)

// maxDevices is one per [Place].
const maxDevices = 3

// Chain is up to three devices in series, cells first, with their timers.
// The zero value has no device and never opens. A Chain is a plain value:
// copying it copies its timers, and no method allocates.
type Chain struct {
	devices  [maxDevices]Device
	states   [maxDevices]state
	n        int
	clockS   float64 // time stepped so far
	first    int     // 1 + index of the device that opened first, 0 when none has
	firstAtS float64 // clockS at that moment
}

// state is what one device remembers.
type state struct {
	belowS   float64 // unbroken seconds at or below OpensAtV
	open     bool
	openings int // times it has opened
	recloses int // times it has closed again by itself
}

// Sample is what the devices see during one step. Voltages are taken as
// constant over the step.
type Sample struct {
	PackV float64 // volts at the pack's terminals: device in the pack, added module
	BusV  float64 // volts at the controller, behind wire, joints and fuse
	DtS   float64 // seconds that the step lasts; >= 0
}

// NewChain returns the chain of these devices, put in order from the cells
// outwards. It returns an error when a device is out of range or when two sit
// in the same place. No device at all is allowed.
func NewChain(devices ...Device) (Chain, error) {
	var c Chain
	for place := Pack; place <= Controller; place++ {
		found := false
		for _, d := range devices {
			if d.Where != place {
				continue
			}
			if found {
				return Chain{}, fmt.Errorf("cutoff: two devices in the %v", place)
			}
			found = true
			c.devices[c.n] = d
			c.n++
		}
	}
	for _, d := range devices {
		if err := d.Check(); err != nil {
			return Chain{}, err
		}
	}
	return c, nil
}

// Len returns how many devices the chain has.
func (c *Chain) Len() int { return c.n }

// At returns the i-th device, 0 being the one nearest the cells. It returns
// the zero Device when i is out of range.
func (c *Chain) At(i int) Device {
	if i < 0 || i >= c.n {
		return Device{}
	}
	return c.devices[i]
}

// sees returns the voltage that the i-th device sees when it has a supply.
func (c *Chain) sees(i int, s Sample) float64 {
	if c.devices[i].Where == Controller {
		return s.BusV
	}
	return s.PackV
}

// below reports whether v makes the device count down. Not-a-number counts as
// below, so that a broken reading disconnects rather than drains.
func (d *Device) below(v float64) bool { return !(v > d.OpensAtV) }

// Step advances every device by one sample and reports whether the chain is
// open at the end of it. When several devices would open within the step the
// one whose delay runs out first does, and the load being gone stops the
// others; on a tie it is the one nearest the cells. [Chain.First] tells the
// exact moment.
func (c *Chain) Step(s Sample) (open bool) {
	var counting [maxDevices]bool
	trip, tripS := -1, math.Inf(1)
	supplied := true
	for i := range c.n {
		d, st := &c.devices[i], &c.states[i]
		v := c.sees(i, s)
		switch {
		case !supplied:
			st.open, st.belowS = false, 0
		case st.open && !d.Latches() && v >= d.ClosesAtV:
			st.open = false
			st.recloses++
			// The volts of this step were those without load: what stands
			// behind sees its supply from the next step on.
			supplied = false
		case st.open:
			open, supplied = true, false
		case d.below(v):
			counting[i] = true
			if left := d.DelayS - st.belowS; left <= s.DtS && left < tripS {
				trip, tripS = i, max(left, 0)
			}
		default:
			st.belowS = 0
		}
	}
	for i := range c.n {
		if counting[i] {
			c.states[i].belowS += min(s.DtS, tripS)
		}
	}
	if trip >= 0 {
		c.opened(trip, c.clockS+tripS)
		open = true
	}
	c.clockS += s.DtS
	return open
}

// Counting reports whether any closed device has been counting down: it last
// saw volts at or below those at which it opens.
func (c *Chain) Counting() bool {
	for i := range c.n {
		if c.states[i].belowS > 0 {
			return true
		}
	}
	return false
}

// HighestV returns the highest opening voltages of the devices that see the
// pack's volts and of those that see the controller's; minus infinity for none.
// While the volts stay above both and nothing is [Chain.Counting], nothing opens.
func (c *Chain) HighestV() (packV, busV float64) {
	packV, busV = math.Inf(-1), math.Inf(-1)
	for i := range c.n {
		if d := &c.devices[i]; d.Where == Controller {
			busV = max(busV, d.OpensAtV)
		} else {
			packV = max(packV, d.OpensAtV)
		}
	}
	return packV, busV
}

// UntilTrip returns the seconds until the chain would next open if the volts
// of the sample stayed as they are, infinity when it would not. DtS is not
// used. An engine that picks its own steps can so end one exactly there.
func (c *Chain) UntilTrip(s Sample) float64 {
	soonest := math.Inf(1)
	for i := range c.n {
		d, st := &c.devices[i], &c.states[i]
		if st.open {
			break
		}
		if d.below(c.sees(i, s)) {
			soonest = min(soonest, max(d.DelayS-st.belowS, 0))
		}
	}
	return soonest
}

// closesAt returns the volts at which the first open device closes again,
// +Inf when it latches or none is open. What stands behind it has no supply.
func (c *Chain) closesAt() float64 {
	for i := range c.n {
		if !c.states[i].open {
			continue
		}
		if c.devices[i].Latches() {
			break
		}
		return c.devices[i].ClosesAtV
	}
	return math.Inf(1)
}

// opened records that device i opened at the given time. The load being gone,
// every timer starts afresh.
func (c *Chain) opened(i int, atS float64) {
	st := &c.states[i]
	st.open = true
	st.openings++
	for j := range c.n {
		c.states[j].belowS = 0
	}
	if c.first == 0 {
		c.first, c.firstAtS = i+1, atS
	}
}

// Open reports whether any device is open now.
func (c *Chain) Open() bool {
	for i := range c.n {
		if c.states[i].open {
			return true
		}
	}
	return false
}

// First returns the place of the device that opened first and the moment, in
// seconds stepped since the start or the last [Chain.Reset]; ok is false when
// none has opened.
func (c *Chain) First() (where Place, atS float64, ok bool) {
	if c.first == 0 {
		return 0, 0, false
	}
	return c.devices[c.first-1].Where, c.firstAtS, true
}

// Openings returns how many times any device opened, and Recloses how many
// times one closed again by itself: the count of chatter.
func (c *Chain) Openings() int {
	n := 0
	for i := range c.n {
		n += c.states[i].openings
	}
	return n
}

// Recloses returns how many times a device closed again by itself.
func (c *Chain) Recloses() int {
	n := 0
	for i := range c.n {
		n += c.states[i].recloses
	}
	return n
}

// StandbyA returns the amps that the chain's own electronics draw from the
// cells now: every device up to and including the first open one. What stands
// behind an open device has no supply and draws nothing.
func (c *Chain) StandbyA() float64 {
	a := 0.0
	for i := range c.n {
		a += c.devices[i].StandbyA
		if c.states[i].open {
			break
		}
	}
	return a
}

// Reset closes every device and clears timers, counts and the clock, as when
// the pack has been taken off, charged and put back.
func (c *Chain) Reset() {
	c.states = [maxDevices]state{}
	c.clockS, c.first, c.firstAtS = 0, 0, 0
}
