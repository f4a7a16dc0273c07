// Package cellfit reads logged discharges and finds out what the battery is
// like: capacity, resistance over charge, Peukert exponent, health, and a
// whole chemistry that package chemistry loads.
//
// For most uses call [Read], then [Fit]; [Replay] runs a model along a log and
// says how far apart they are.
package cellfit
