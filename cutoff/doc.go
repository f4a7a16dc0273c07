// Package cutoff says what disconnects a pack from the vehicle, in what order
// and when, and what becomes of the pack when nothing does.
//
// For most uses build a [Chain] from the devices that are fitted and step it
// with the voltages of an outing; call [Advise] for the setting that this pack
// and this launch want, and [Idle] for the days until harm when the toy is
// left standing.
//
// # Model
//
// A [Device] opens when the voltage it sees has stayed at or below OpensAtV
// for DelayS without a break, and closes again as soon as the voltage it sees
// has come back to ClosesAtV; a ClosesAtV of zero means that it latches. Up to
// three devices stand in series between cells and motor: in the pack, in a
// module added behind it, in the controller. A device behind an open one has
// no supply: it forgets its timer and its latch, which is what a device
// without memory does when the pack in front of it drops out.
//
// # Assumptions
//
// Over one [Chain.Step] each voltage is constant, so timers are exact for a
// voltage that is a staircase. A device in the pack and a module beside it see
// the pack's terminals; a controller sees the bus behind wire, joints and
// fuse. Closing has no delay of its own.
//
// # Limits
//
// Thermal and over-current trips are not here: the wiring package judges fuses
// and breakers. A protector that watches single cells is entered as a device
// whose OpensAtV is the pack voltage at which it would act; what the weakest
// cell then has is reported beside it. The days of [Idle] are for the weakest
// cell and for a loss by itself at the fast end of what makers print.
//
// # Sources
//
// The ladder of over-discharge is the chemistry profile's, whose source each
// finding names; [Sources] has the rest.
package cutoff
