// Package charge judges a charger on a pack, computes the charge, plans the
// keeping of a pack in store and weighs what ails an old sealed battery.
//
// For most uses call [ParseLabel] on the charger's label and [Label.Charger]
// on the result, [Match] to hear whether it may be used at all, and
// [Plugged.Case] with [Simulate] for hours to full and when to unplug.
// [Unattended] tells what happens when nobody does; [WaitFor] how long a hot or
// cold pack must stand first; [Keep] what is left after a winter and what to do
// when; [Diagnose] whether an old battery is flat, worn or badly connected.
// [Cautions] belong to every answer.
//
// # Model
//
// A charge is stepped with the cell model of the battery package: constant
// current up to the charger's voltage, then the current that just keeps it.
// Lead-acid takes less and less as it fills, and the higher its voltage the more
// of the current goes into gas ([Taken]); other cells store the share 1/return
// factor of it. A plain adaptor is a source whose volts sag with its current.
// Full is when the end current of the profile is reached or all the charge is
// back. A pack in store loses a constant share of its full charge a day,
// doubling with the profile's kelvins. A diagnosis averages, for each condition,
// how well it explains the readings, and weighs that by how common the condition
// is.
//
// # Assumptions
//
// What a label leaves open is not guessed: it becomes a range, or counts
// against the charger. A printed charging time of the cells' makers is never
// undercut: the computation alone, without the slow diffusion of a real cell,
// ends too early, so it is given as the least and the printed hours as likely.
//
// # Limits
//
// The tail of a lithium charge, the gas of a lead-acid one and the odds of a
// diagnosis are estimates and marked as such. Pulse, equalising and repair
// programmes of chargers are not modelled. Nickel chargers that end on a fall
// of the voltage are only known as stopping by themselves.
//
// # Sources
//
// Limits are those of the chemistry's profile, whose source each finding
// names; [Sources] has the rest.
package charge
