package ask

import (
	"errors"
	"fmt"

	"example.org/packcheck/internal/build"
)

// roomC stands in for a temperature that was not told, deg C. Common practice, no published
// source.
const roomC = 20

// inputs collects what is wrong with a question, all of it at once.
type inputs struct{ faults []error }

// within checks a number that must be there.
func (in *inputs) within(name string, v, low, high float64, unit string) {
	if !(v >= low && v <= high) { // NaN too
		in.fault("%s is %g; want %g to %g %s", name, v, low, high, unit)
	}
}

// unless checks a number of which 0 means that it is not known.
func (in *inputs) unless(name string, v, low, high float64, unit string) {
	if v != 0 {
		in.within(name, v, low, high, unit)
	}
}

// launch checks a current from leastA on and how long it lasts, both told or neither.
func (in *inputs) launch(amps, s, leastA float64) {
	in.unless("LaunchA", amps, leastA, 5000, "A")
	in.unless("LaunchS", s, 0.001, 60, "s")
	if (amps == 0) != (s == 0) {
		in.fault("a launch is a current and a time; want both, such as 60 A for 1 s, or neither")
	}
}

// celsius returns a temperature, checked; nil is the usual one.
func (in *inputs) celsius(a *Answer, name string, v *float64, usual float64) float64 {
	if v == nil {
		a.assume("at %g C", usual)
		return usual
	}
	in.within(name, *v, -40, 150, "degC")
	return *v
}

// around returns the temperature around wire and fuse, from that of the air, checked; nil is
// a room. In the closed battery box of a vehicle it is warmer, as a report has it.
func (in *inputs) around(a *Answer, airC *float64) float64 {
	c := in.celsius(a, "AirC", airC, roomC)
	a.assume("%d K warmer around wire and fuse than in the air", build.BoxRiseK)
	return c + build.BoxRiseK
}

func (in *inputs) fault(format string, args ...any) {
	in.faults = append(in.faults, fmt.Errorf("ask: "+format, args...))
}

// add takes over an error of another package.
func (in *inputs) add(err error) {
	if err != nil {
		in.faults = append(in.faults, err)
	}
}

// battery reads the battery behind all other inputs: what is wrong with any of
// them comes back, too.
func (in *inputs) battery(b Battery) (*batteries, error) {
	found, err := b.find()
	in.add(err)
	return found, in.err()
}

// err is all faults as one error, one line each.
func (in *inputs) err() error { return errors.Join(in.faults...) }

// share returns a share from 0 to 1, checked; nil is all of it.
func (in *inputs) share(a *Answer, name string, v *float64) float64 {
	if v == nil {
		a.assume("full at first")
		return 1
	}
	in.within(name, *v, 0, 1, "")
	return *v
}
