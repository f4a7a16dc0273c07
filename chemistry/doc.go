// Package chemistry says what one kind of cell can do and may not do: voltage
// over charge, resistance, the two wells of the kinetic battery model,
// derating with temperature, and the limits of charge and discharge.
//
// For most uses call [Builtin] and [Set.Profile]; a user's own chemistry is
// added with [Set.Extend].
//
// # Families
//
// A battery is one of many: [Set.Members] gives the measured and published cells
// that one of its chemistry may be made of, each with its share. [Shifted] moves
// the shares by what is known (kind, printed Ah of a cell, resistance, mass),
// [Pick] draws one, and its Profile goes into a battery.Spec as it is. Curves and
// resistances of a member are per ampere-hour of what it gave when new over the
// profile's rated hours, so a battery that holds less than its label says gets a
// smaller CapacityAh and with it more resistance; age goes into Health and
// ResistanceFactor. How far labels, health and resistance spread stands in
// package tables.
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
