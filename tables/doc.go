// Package tables holds the published reference figures that packcheck judges
// by: wire, fuses, joints, motor cans, ground, child mass, vehicles and the
// single limits of laws and standards, each row with its source.
//
// For most uses call [Builtin] and one of its accessors: [Tables.Wire],
// [Tables.Ampacity], [Tables.Fuse], [Tables.Joint], [Tables.MotorCan],
// [Tables.Ground], [Tables.ChildMass], [Tables.VehicleClass],
// [Tables.ThermalClass], [Tables.Figure]. [Tables.Extend] adds rows of a
// user's own file.
//
// # Model
//
// The rows live in embedded TOML files, one per table, each with the sources
// it draws on. A row without a source that exists does not load. A user's
// file goes through the same loader and the same rules; it adds rows and may
// not replace a built-in one, so that a report that names a built-in row
// always means the published figure.
//
//	[source.my-test]
//	text = "Coast-down on our lawn, three runs"
//	known = "measured"
//
//	[ground.our-lawn]
//	words = ["our lawn"]
//	rolling_mm = [7.0, 9.0, 11.0]
//	grip_hard = [0.2, 0.3, 0.4]
//	grip_rubber = [0.3, 0.45, 0.6]
//	source = "my-test"
//
// A quantity that is not one number is a [Value]: low, likely, high and the
// source. How far a source may be trusted is in its Known text; [Tables.Firm]
// tells a figure that was read from one that is remembered or estimated.
//
// # Assumptions
//
// Wire is copper. Where a size lies between two rows, the value is
// interpolated on logarithmic axes; beyond the last row it is continued on
// the side that carries less. Accessors return copies: nothing that a caller
// does changes a table.
//
// # Limits
//
// Rows "from memory" and estimates are wide defaults and never a reason to
// call something fine. No measured rolling resistance of a toy wheel on lawn
// or gravel was found; those rows are estimates of +-50 percent. Child mass
// covers 2 to 14 years, from 8 on from memory.
//
// # Units
//
// SI throughout (V, A, Ohm, s, kg, m, degC), with the unit in the field's
// name; mm2 and mm where the trade says so. The TOML columns carry their unit
// as a suffix too.
//
// # Sources
//
// [Tables.Sources] lists them all. Where a Go comment states a formula it
// names the standard beside it.
package tables
