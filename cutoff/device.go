package cutoff

import (
	"fmt"
	"math"
)

// Place says where along the path a device sits. Devices act in this order,
// cells first.
type Place int

// The three places, from the cells outwards.
const (
	Pack       Place = iota // inside the pack: its own protection board
	Module                  // an added low-voltage disconnect behind the pack
	Controller              // the vehicle's controller or board
)

// placeNames is indexed by Place.
var placeNames = [...]string{"pack", "module", "controller"}

// String returns "pack", "module" or "controller".
func (p Place) String() string {
	if p < Pack || p > Controller {
		return fmt.Sprintf("place %d", int(p))
	}
	return placeNames[p]
}

// cutoff names the one that sits there as somebody would who has it in hand.
func (p Place) cutoff() string {
	switch p {
	case Pack:
		return "the battery's own cutoff"
	case Module:
		return "the added cutoff"
	}
	return "the vehicle's own cutoff"
}

// Device is one thing that disconnects the load when the voltage is low.
type Device struct {
	Where     Place   // where it sits
	OpensAtV  float64 // whole-pack volts at or below which it opens; > 0
	DelayS    float64 // seconds without a break at or below OpensAtV; >= 0
	ClosesAtV float64 // volts at which it closes again, > OpensAtV; 0 = latches
	StandbyA  float64 // amps that it draws itself, open or closed; >= 0
	Packs     int     // packs in series that each have one such; its volts here are of all; 0 = one
}

// Latches reports whether the device stays open once it has opened.
func (d Device) Latches() bool { return d.ClosesAtV == 0 }

// Check returns an error that names the field when a value is out of its
// range, nil when the device can be used.
func (d Device) Check() error {
	if d.Where < Pack || d.Where > Controller {
		return fmt.Errorf("cutoff: unknown %v", d.Where)
	}
	for _, v := range []struct {
		name  string
		value float64
	}{
		{"OpensAtV", d.OpensAtV},
		{"DelayS", d.DelayS},
		{"ClosesAtV", d.ClosesAtV},
		{"StandbyA", d.StandbyA},
	} {
		if math.IsNaN(v.value) || math.IsInf(v.value, 0) || v.value < 0 {
			return fmt.Errorf("cutoff: %v: %s is %g (want a finite number, not negative)", d.Where, v.name, v.value)
		}
	}
	if d.OpensAtV == 0 {
		return fmt.Errorf("cutoff: %v: OpensAtV is 0 (want volts above 0; leave the device out when nothing disconnects)", d.Where)
	}
	if !d.Latches() && d.ClosesAtV <= d.OpensAtV {
		return fmt.Errorf("cutoff: %v: ClosesAtV %g V is not above OpensAtV %g V (want more, or 0 for a latch)", d.Where, d.ClosesAtV, d.OpensAtV)
	}
	return nil
}
