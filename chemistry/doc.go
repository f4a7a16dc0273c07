// Package chemistry says what one kind of cell can do and may not do: voltage
// over charge, resistance, the two wells of the kinetic battery model,
// derating with temperature, and the limits of charge and discharge.
//
// For most uses call [Builtin] and [Set.Profile]; a user's own chemistry is
// added with [Set.Extend].
//
// # Model
//
// Everything is per cell and for a cell of one ampere-hour: voltages in V,
// resistance in Ohm*Ah. A profile only holds figures; package battery turns
// them into a pack.
//
// # Sources
//
// Every group of figures in the data files names its source, and a group
// without one does not load. [Set.Sources] lists them; Known tells whether
// the source was read or is remembered.
package chemistry
