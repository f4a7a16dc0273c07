// Package drive says what a small electric vehicle asks of its battery: motors,
// gears, ground and rider, running steadily, starting from rest, or blocked.
//
// For most uses fill a [Vehicle] (its [Motor] from [MotorFromLabel]), a
// [Controller] and a [PackCircuit], call [Steady] for speed and current,
// [NewLaunchCase] and [Launch] for the first seconds and [BlockedWheels] for the
// worst case, and ask the checks ([LaunchCheck], [BlockedCheck], [BoardCheck],
// ...) for their findings. Circuit of package ask makes the [PackCircuit] of a
// model and a state of package battery.
//
// That figures are those of a vehicle is the caller's to ask, once, of
// [Vehicle.Check] or [LaunchCase.Check]: [Steady], [BlockedWheels] and
// [ReverseAt] compute what they are given. What fails there may give NaN, a pack
// of below 0 V does, and a check of a launch, a motor or an outing finds nothing
// on NaN. The checks of who rides, where and on how many volts say that it is no
// number.
//
// # Model
//
// A motor is v = R i + L di/dt + K w with torque K (i - i0); motors in series
// and parallel, gears and wheels are lumped into one [Equivalent] that pushes
// along the ground. The pack is an open-circuit voltage behind a resistance and
// two resistor-capacitor pairs, the path one resistance. A chopper is averaged
// over its period: motor volts = duty x bus volts, battery amps = duty x motor
// amps. A launch is put together from Taylor series of its states, beside the
// exponential in which the current rises, see [Launch] for the equations. A motor warms as
// two lumps, winding and case, with an exact step.
//
// # Assumptions
//
// All motors are alike and share the load. Friction and iron loss of a motor
// are one constant torque. The gears lose a constant share. The ground is even.
// A standing vehicle does not roll backwards.
//
// # Limits
//
// Not modelled: brush drop (about 1 to 2 V, from memory), magnetic saturation
// (printed stall torque is 5 to 24 % below K V/R for real motors), backlash in
// the gears and the blow it adds, ripple of the chopper (see [Pulses]), weight
// moving to the rear wheels. Resistance is constant during a launch, for the
// winding hardly warms in seconds; [BlockedWheels] follows it.
//
// # Units
//
// SI throughout, the unit in each name; temperatures in degrees C; angles in
// rad, motor speeds in rad/s.
//
// # Sources
//
// Beside each constant; [Sources] lists those that findings cite.
package drive
