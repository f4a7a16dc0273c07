// Package wiring judges the path between the pack and the motors: what the
// wire, joints, switch and fuse take away, what they carry, when the fuse
// opens and what happens in a short circuit.
//
// For most uses build a [Path] with [NewPath] and a [Fuse] with [NewFuse],
// put both into a [Case] and call [Assess]. An engine that steps through time
// takes [Path.Ohm] for the resistance and a [FuseState] with a [Curve] for
// the fuse; neither allocates. Wherever tables are asked for, nil means the
// built-in ones.
//
// # Model
//
// Every part of the path is a resistance: copper by size, length there and
// back, and temperature; joints, contacts, fuse and controller one by one.
//
//	drop = I R              V
//	heat = I^2 R            W
//
// A wire carries its tabulated ampacity, re-rated for the surroundings with
// sqrt((Tmax - Ta)/(Tmax - T0)).
//
// A fuse is a band in time, never a line: at a multiple of its rating it may
// open from the earliest and must open by the latest time of its gates,
// interpolated on logarithmic axes. Below the first gate it does not open;
// where no latest time is given it need not. Above the highest gate both
// times fall with constant I2t (see [Curve.Opens]).
//
// A wire outlasts a short circuit when the fuse opens within k2 S2 / I2.
//
// # Assumptions
//
// One current flows through every part of the path, apart from equal wires
// side by side. A short circuit has no resistance of its own, the pack gives
// its full voltage behind its resistance. The wire is at its rated
// temperature when a fault begins.
//
// # Limits
//
// A fuse protects the wire, not the motor. Nothing here knows how well a
// joint was made; the resistance of joints is the caller's. The inductance of
// the loop is left out: it slows a fault's rise by less than a millisecond.
// What opened, and what came back, is told in likelihoods.
//
// # Sources
//
// All limits come from package tables, by source ID in each finding: 33 CFR
// 183.425 and 183.455, DIN VDE 0298-4, IEC 60228, IEC 60364-5-54, makers'
// sheets to ISO 8820-3, and others named there.
package wiring
