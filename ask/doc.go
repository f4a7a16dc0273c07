// Package ask answers one question at a time: what a label means, how long a
// battery lasts at a current, which fuse belongs to a wire.
//
// Each question is a struct with what is known; its Answer method computes:
//
//	a, err := ask.Runtime{Battery: ask.Battery{Label: "12 V 7 Ah"}, CurrentA: 9}.Answer()
//
// # Model
//
// Nothing is computed here: batteries, wires, fuses, motors and chargers are
// those of the packages battery, wiring, drive, cutoff and charge. A question on
// a battery is put to many of them, as a label leaves open which cells are
// inside, how honest it is and how worn they are (see [setup.World]); the answer
// is the median with the 10 and 90 % points: eight of ten batteries like this
// lie between.
//
// # Assumptions
//
// What is left out is taken as what an answer that errs would err least with, and
// said in [Answer.Assumed]. A temperature of nil is 20 degrees C.
//
// # Limits
//
// One question sees one part. Whether a battery suits a vehicle is for package
// packcheck, which sees all of it: an answer from here judges nothing but what it
// names, and never calls a vehicle fine.
//
// # Sources
//
// Every answer names those that it rests on; there are none of its own.
package ask
