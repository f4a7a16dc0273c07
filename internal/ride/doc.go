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
// The pack is a [example.org/packcheck/battery.Model], advanced by its exact
// propagator. Within one step the supply's electromotive force runs along a
// straight line; within that the motion of the vehicle is exact: constant force
// while the current sits at its limit or at the grip of the wheels, an
// exponential approach to the running speed after that. The winding inductance
// (milliseconds) is left to [example.org/packcheck/drive.Launch]; it moves no
// charge that an outing would notice.
//
// A press takes a short step and longer ones, a pause one. What the resistances of
// warming windings and of a soft start do within a step is a parabola, and the pack's
// branches follow a current that falls within it. Where sagging volts or warming
// windings would change the speed by too much, or the volts miss the line they were
// taken along, or something may end the outing, a step is taken in parts, and the
// moment of the end is found by a root search. The last two rounds are followed once
// more in finer steps. From the sixth press on most rounds are counted and not
// followed, as many at a time as the last such gap, once it was corrected, shows to be
// bearable.
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
// to [example.org/packcheck/drive.Launch]. Against steps sixteen times finer
// the time with the pedal down agrees within 0.1 % over the cases of the tests.
// Of 9216 draws of nine setups, against steps sixty-four times finer, 99.4 % did, and
// all but 4 of the 56 others were off by what 5 mV of a cutoff, or 0.05 % of the charge
// or of the length of a press, make of the reference: an outing ends at the end of one
// press or well into the next (PACKCHECK_SLOW=1 go test -v -run TimeOfDraws
// ./internal/ride). Against an independent integration of the same equations the
// ride time agrees within 0.5 %.
package ride
