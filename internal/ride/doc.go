// Package ride puts pack, path, drive and cutoffs together in time: one whole
// outing of driving and pausing, or one bench discharge, until something ends
// it.
//
// For most uses call [Run] with a fully specified [Case]: plain numbers, no
// ranges, nothing to look up. The same case always gives the same [Outcome],
// on any number of goroutines at once, and nothing is allocated on the way.
//
// # Model
//
// The pack is a [example.org/packcheck/battery.Model], advanced by its exact propagator. Within one
// step the supply (electromotive force and resistance) is held; within that
// the motion of the vehicle is exact: constant force while the current sits
// at its limit or at the grip of the wheels, an exponential approach to the
// running speed after that. The winding inductance (milliseconds) is left to
// [example.org/packcheck/drive.Launch]; it moves no charge that an outing would notice. Steps are
// short after every start and grow, so that the step in which the current is
// large is short. The moment at which a cutoff or a fuse opens, or the pack
// is empty, is found by bisection within its step.
//
// # Assumptions
//
// A pause stops the vehicle: rolling on after the pedal is lifted adds no
// distance. Every drive starts at rest. The ground, the slope and the grip
// stay the same for the whole outing.
//
// # Limits
//
// Steps are quasi-static: what happens within milliseconds of a start belongs
// to [example.org/packcheck/drive.Launch]. Against an independent integration of the same equations
// the ride time agrees within 0.5 %.
package ride
