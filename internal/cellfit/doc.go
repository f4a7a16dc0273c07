// Package cellfit reads logged discharges and finds out what the battery is
// like: capacity, resistance over charge, Peukert exponent and health, each
// with its uncertainty, and a whole chemistry that package chemistry loads.
//
// For most uses call [Read], then [Fit], then [Result.WritePack] or
// [Result.WriteChemistry]. [FitCell] fits the curves alone, [FitHourTable] a
// lead-acid profile to a maker's table, and [Replay] runs a model along a log
// and says how far apart they are. Nothing here prints.
//
// # Model
//
// [FitCell] runs the battery model itself along the logs and changes open-circuit
// curve, resistance, branches, full charge, time constants and, if asked,
// activation energies, the bend of the fast branch and the wells, until the sum
// of the squared voltage differences is least (Gauss and Newton's method). The
// base profile is the prior: what a log does not show stays as it was. Steps of
// the open-circuit curve and resistances are searched for by their logarithms,
// so the one never falls and the others stay positive.
//
// [Fit] runs the cell model along the logs as well: capacity and resistance are
// those with which it reaches the cutoff where the log does and jumps as the log
// does when the current changes. So neither pauses nor seconds between the rows
// pass for something else.
//
// # Assumptions
//
// A log begins at rest, or under a load that has just come on; whoever knows
// that the pack was full can say so. Where there is no temperature, it is worked
// out from the current and the surroundings, 25 deg C when nobody says
// otherwise; several cells sit in a closed shell, a single one does not. The
// ammeter is right to 1 %.
//
// # Limits
//
// Capacity and health need a discharge from full to the cutoff; without one the
// label's charge is taken, give or take a quarter. A log at one current cannot
// tell resistance from open-circuit voltage; there the prior decides and no
// resistance is given. Several logs share one cell, each with a capacity of its
// own. A cell further than 3 % of the nominal voltage (rms) from any log is none.
// Logs that end without a rest say little about the last per cent.
//
// # Sources
//
// The method is common; the fitted cells and their sources are in
// cmd/agreement.
package cellfit
